#include "season_spec.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "moisture.h"
#include "rounding.h"

namespace haunch {
namespace {

const std::vector<std::string_view> kAirWords = {"temperature", "humidity", "degrees"};
const std::vector<std::string_view> kDegreeWords = {"celsius", "fahrenheit"};

constexpr double kDriestWood = 1;
constexpr double kWettestWood = kFibreSaturation;

/// Movement of most hardwoods for 1 % of moisture, flat-sawn (white oak, Wood Handbook 2010).
constexpr double kMostHardwoods = 0.00365;

// ---- reading

/// The moisture that air of an object's temperature and humidity brings wood to.
std::optional<double> read_air(ValueReader& read, const Value& air, const std::string& path) {
  std::optional<double> temperature;
  std::optional<double> humidity;
  bool fahrenheit = false;
  if (const Value* degrees = air.find("degrees"); degrees != nullptr)
    fahrenheit = read.choice(*degrees, path + "/degrees", kDegreeWords) == std::size_t{1};
  for (const Entry& entry : air.entries) {
    const std::string entry_path = child_path(path, entry.key);
    if (entry.key == "humidity")
      humidity = read.number(entry.value, entry_path, kDriestAir, kDampestAir, "percent");
    else if (entry.key == "temperature")
      temperature = fahrenheit ? read.number(entry.value, entry_path, 30, 270, "°F")
                               : read.number(entry.value, entry_path, -1.1, 132.2, "°C");
    else if (entry.key != "degrees")
      read.unknown_key(entry, entry_path, kAirWords);
  }
  for (const std::string_view key : {"temperature", "humidity"})
    if (air.find(key) == nullptr && !read.was_meant(path + "/" + std::string(key)))
      read.problem(path,
                   fmt::format("\"{}\" is missing; air has a temperature and a humidity", key));
  if (!temperature || !humidity) return {};
  const double celsius = fahrenheit ? to_celsius(*temperature) : *temperature;
  return equilibrium_moisture(std::clamp(celsius, kColdestCelsius, kHottestCelsius), *humidity);
}

// ---- a shop's own woods

// What does not move to matter (engineered lumber, board) has a movement of 0.
constexpr double kLeastFigure = 0.0001;
constexpr WoodFigure kWoodFigures[] = {
    {"radial", &Species::radial, 0, 0.02},
    {"tangential", &Species::tangential, 0, 0.02},
    {"radial_shrinkage", &Species::radial_shrinkage, kLeastFigure, 30},
    {"tangential_shrinkage", &Species::tangential_shrinkage, kLeastFigure, 30},
    {"gravity_12", &Species::gravity_12, kLeastFigure, 1.5},
    {"gravity_green", &Species::gravity_green, kLeastFigure, 1.5},
    {"density", &Species::gravity_12, 50, 1680, "kg/m3 at 12 % moisture (lb/ft3 times 16)"}};
/// A kilogram in a cubic metre at 12 % moisture is a specific gravity of so much: density is 1000
/// times that times 1.12.
constexpr double kGravityOfDensity = 1 / 1120.0;

std::vector<std::string_view> wood_words() {
  std::vector<std::string_view> words{"name", "source"};
  for (const WoodFigure& figure : kWoodFigures)
    words.push_back(figure.key);
  return words;
}

void read_wood_entry(ValueReader& read, const Entry& entry, const std::string& path,
                     Species& wood) {
  for (const WoodFigure& figure : kWoodFigures)
    if (figure.key == entry.key) {
      wood.*figure.figure = read.number(entry.value, path, figure.least, figure.most, figure.what);
      if (figure.key == "density" && wood.gravity_12) *wood.gravity_12 *= kGravityOfDensity;
      return;
    }
  if (entry.key == "name")
    wood.name = read.text(entry.value, path).value_or("");
  else if (entry.key == "source")
    wood.source = read.text(entry.value, path).value_or("");
  else
    read.unknown_key(entry, path, wood_words());
}

// ---- settling

OfRoles<Sawn> sawn_of(const Spec& spec) {
  OfRoles<Sawn> sawn;
  sawn.all = spec.word<Sawn>("grain.frame").value_or(Sawn::flat);
  for (const RoleKeys& role : kRoles)
    if (const auto word = spec.word(role.sawn)) sawn.own[std::string(role.role)] = *word;
  return sawn;
}

class Settler {
 public:
  explicit Settler(const Spec& spec) : spec_(spec) {}

  SettledSeason settle() {
    if (!spec_.speaks_of("moisture")) return std::move(settled_);
    settled_.season.emplace();
    settled_.season->woods = spec_.woods;
    settle_moisture();
    settle_sawn();
    settle_species();
    if (!settled_.problems.empty()) settled_.season.reset();
    return std::move(settled_);
  }

 private:
  void assume(Key key, std::string value, std::string_view why) {
    const bool shop = spec_[key].by_shop;
    settled_.assumed.push_back({std::string(key.path()), std::move(value),
                                std::string(shop ? std::string_view("the shop file") : why)});
  }

  double take(Key key, double usual, std::string_view why) {
    const KeyValue& its = spec_[key];
    const double value = its.stated ? its.figure : usual;
    if (!its.by_spec()) assume(key, percent_words(value), why);
    return value;
  }

  void settle_moisture() {
    Moisture& moisture = settled_.season->moisture;
    const KeyValue& low = spec_["moisture.low"];
    const KeyValue& high = spec_["moisture.high"];
    const double usual_build =
        std::max(std::min(kUsualYear.build, high.stated ? high.figure : kUsualYear.build),
                 low.stated ? low.figure : kDriestWood);
    moisture.build = take("moisture.build", usual_build,
                          "wood for indoors, at installation (Wood Handbook 2010, fig. 13-1)");
    moisture.low =
        take("moisture.low", std::min(kUsualYear.low, moisture.build), "a heated house in winter");
    moisture.high = take("moisture.high", std::max(kUsualYear.high, moisture.build),
                         "a house in a damp summer");
    check_order(moisture);
  }

  /// One figure of the three, as it is told.
  struct Told {
    Key key;
    std::string_view name;
    double percent;
  };

  void check_order(const Moisture& moisture) {
    const Told low{"moisture.low", "low", moisture.low};
    const Told build{"moisture.build", "build", moisture.build};
    const Told high{"moisture.high", "high", moisture.high};
    if (moisture.low > moisture.high)
      disorder(low, "above", high);
    else if (moisture.build < moisture.low)
      disorder(build, "below", low);
    else if (moisture.build > moisture.high)
      disorder(build, "above", high);
  }

  /// Told at the spec's own value, if it has one of the two.
  void disorder(const Told& one, std::string_view side, const Told& other) {
    const auto whose = [this](const Told& it) {
      return spec_[it.key].by_spec() ? "" : " (not the spec's own)";
    };
    const bool at_one = spec_[one.key].by_spec() || !spec_[other.key].by_spec();
    settled_.problems.push_back(
        {"/moisture/" + std::string(at_one ? one.name : other.name),
         fmt::format("\"{}\", {:.4g} %{}, is {} \"{}\", {:.4g} %{}; they must rise from \"low\" "
                     "over \"build\" to \"high\"",
                     one.name, one.percent, whose(one), side, other.name, other.percent,
                     whose(other)),
         {}});
  }

  void settle_sawn() {
    const OfRoles<Sawn>& sawn = settled_.season->sawn = sawn_of(spec_);
    bool all_own = true;
    for (const RoleKeys& role : kRoles) {
      // A leaf may have all of its own and need no word for the rest; a frame's jambs always do.
      const bool of_leaf = role.species.row().of & kOfDoor;
      all_own = all_own && (!of_leaf || spec_[role.sawn].by_spec());
    }
    if (!spec_["grain.frame"].by_spec() && !all_own)
      settled_.assumed.push_back(
          {"grain", std::string(word_of(sawn.all)),
           spec_["grain.frame"].by_shop ? "the shop file" : "most boards are; it moves the most"});
  }

  void settle_species() {
    OfRoles<Species>& species = settled_.season->species;
    const OfRoles<std::string> names = species_of(spec_);
    if (!names.all.empty())
      species.all = look_up(names.all, names.own.empty() ? "/species" : "/species/frame");
    for (const auto& [role, name] : names.own)
      species.own[role] = look_up(name, "/species/" + in_spec(role));
  }

  /// "drawer_side": a role as keys name it.
  static std::string in_spec(std::string role) {
    std::replace(role.begin(), role.end(), '-', '_');
    return role;
  }

  Species look_up(const std::string& name, const std::string& path) {
    auto found = find_species(name, spec_.woods);
    const std::string whose = spec_.said_by("species") == SaidBy::shop ? " (the shop file's)" : "";
    if (!found) {
      settled_.problems.push_back({path, "\"" + name + "\"" + whose + unknown_words(name), {}});
      return {};
    }
    if (!coefficients_of(*found)) {
      settled_.problems.push_back(
          {path,
           "\"" + name + "\"" + whose +
               " has no figures of movement in print, so its seasons cannot be worked; give them "
               "under \"woods\", or name a wood that has",
           {}});
      return {};
    }
    return *std::move(found);
  }

  std::string unknown_words(const std::string& name) const {
    const std::vector<Species> several = search_species(name, spec_.woods);
    if (several.size() > 1) {
      std::string some;
      for (std::size_t i = 0; i < std::min<std::size_t>(several.size(), 3); ++i)
        some += (some.empty() ? "\"" : ", \"") + several[i].name + "\"";
      return fmt::format(
          " may be any of {} woods, {}{}; write which ('haunch species {}' lists "
          "them)",
          several.size(), some, several.size() > 3 ? " …" : "", name);
    }
    const std::string nearest = nearest_species(name);
    return " is no wood whose movement is known; " +
           (nearest.empty() ? "'haunch species' lists those that are; write the figures of others "
                              "under \"woods\", in the spec or a shop file"
                            : "did you mean \"" + nearest + "\"?");
  }

  const Spec& spec_;
  SettledSeason settled_;
};

}  // namespace

std::span<const WoodFigure> wood_figures() {
  return kWoodFigures;
}

std::optional<double> read_percent(ValueReader& read, const Value& value, const std::string& path) {
  if (value.kind == Value::Kind::object) return read_air(read, value, path);
  return read.number(value, path, kDriestWood, kWettestWood,
                     "percent of moisture, or the air: {\"temperature\": 21, \"humidity\": 45}");
}

std::vector<Species> read_woods(ValueReader& read, const Value& value, const std::string& path,
                                bool by_shop) {
  std::vector<Species> woods;
  if (value.kind != Value::Kind::list) {
    read.wrong_type(value, path,
                    "a list of woods; write such as [{\"name\": \"mill oak\", \"radial\": 0.0018, "
                    "\"tangential\": 0.0036, \"density\": 720}]");
    return woods;
  }
  for (std::size_t i = 0; i < value.list.size(); ++i) {
    const std::string its_path = child_path(path, i);
    if (!read.is_object(value.list[i], its_path, "a wood; write an object with its \"name\""))
      continue;
    Species wood;
    wood.group = by_shop ? "shop" : "spec";
    wood.source = by_shop ? "the shop file" : "the spec";
    for (const Entry& entry : value.list[i].entries)
      read_wood_entry(read, entry, child_path(its_path, entry.key), wood);
    if (wood.name.empty() && !read.was_meant(its_path + "/name"))
      read.problem(its_path, "\"name\" is missing; a wood has a name");
    if (!wood.name.empty() && find_own_species(wood.name, woods) != nullptr)
      read.problem(its_path + "/name", "\"" + wood.name + "\" stands here twice; keep one");
    if (value.list[i].find("density") != nullptr && value.list[i].find("gravity_12") != nullptr)
      read.problem(its_path + "/density", "says the same as \"gravity_12\"; keep one of the two");
    woods.push_back(std::move(wood));
  }
  return woods;
}

SettledSeason settle_season(const Spec& spec) {
  return Settler(spec).settle();
}

Length SeasonalPart::either_way(Length width) const {
  return nearest_step(static_cast<double>(width.steps()) * std::max({upwards, downwards, 0.0}));
}

Length SeasonalPart::swells(Length width) const {
  return nearest_step(static_cast<double>(width.steps()) * std::max(upwards, 0.0));
}

Length SeasonalPart::shrinks(Length width) const {
  return nearest_step(static_cast<double>(width.steps()) * std::max(downwards, 0.0));
}

SeasonalPart seasonal_part(const Spec& spec, const std::string& name) {
  const auto percent = [&](Key key, double usual) {
    const KeyValue& its = spec[key];
    return its.stated ? its.figure : usual;
  };
  const double build = percent("moisture.build", kUsualYear.build);
  const auto wood = find_species(name, spec.woods);
  const auto part = [&](double to) {
    const auto moves =
        wood ? movement_ratio(*wood, Direction::tangential, build, to) : std::nullopt;
    return moves.value_or(kMostHardwoods * (to - build));
  };
  return {part(percent("moisture.high", kUsualYear.high)),
          -part(percent("moisture.low", kUsualYear.low)), wood.has_value()};
}

std::optional<Season> usual_season(const Spec& spec) {
  const auto wood = find_species(species_of(spec).of(Role::panel), spec.woods);
  if (!wood || !coefficients_of(*wood)) return {};
  Season usual;
  usual.moisture = kUsualYear;
  usual.species.own["panel"] = *wood;  // the frame is taken to stand still
  usual.sawn = sawn_of(spec);
  return usual;
}

Season usual_season_of_case(const Spec& spec) {
  Season usual;
  usual.moisture = kUsualYear;
  usual.woods = spec.woods;
  usual.sawn = sawn_of(spec);
  const OfRoles<std::string> names = species_of(spec);
  usual.species.all = find_species(names.all, spec.woods).value_or(Species());
  for (const auto& [role, name] : names.own)
    usual.species.own[role] = find_species(name, spec.woods).value_or(Species());
  return usual;
}

std::vector<Assumed> assumed_of_usual(const Spec& spec, const Season& usual) {
  std::vector<Assumed> assumed;
  const KeyValue& sawn = spec[spec["grain.panel"].stated ? Key("grain.panel") : Key("grain.frame")];
  if (!sawn.by_spec())
    assumed.push_back({"grain", std::string(word_of(usual.sawn.of(Role::panel))),
                       sawn.by_shop ? "the shop file" : "most boards are; it moves the most"});
  const Moisture& moisture = usual.moisture;
  assumed.push_back(
      {"moisture", fmt::format("{:.0f} to {}", moisture.low, percent_words(moisture.high)),
       fmt::format("of solid panels alone, built at {}: a heated house over a usual year (Wood "
                   "Handbook 2010, Swedish trade handbook)",
                   percent_words(moisture.build))});
  return assumed;
}

std::vector<Problem> missing_woods(const Assembly& wood, const Season& season) {
  std::string roles;
  for (const RoleKeys& role : kRoles) {
    const bool missing = season.species.of(role.role).name.empty() &&
                         std::any_of(wood.pieces.begin(), wood.pieces.end(), [&](const Piece& it) {
                           return it.matter == Matter::wood && word_of(it.role) == role.role;
                         });
    if (missing) roles += (roles.empty() ? "" : ", ") + std::string(role.role);
  }
  if (roles.empty()) return {};
  if (season.species.own.empty())
    return {{"",
             "\"species\" is missing; wood moves by its species, so write it, such as "
             "\"species\": \"white oak\"",
             {}}};
  return {{"/species",
           "names no wood for: " + roles +
               "; wood moves by its species, so add it, or \"frame\" for all that are not named",
           {}}};
}

}  // namespace haunch
