#include "season_spec.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "moisture.h"

namespace haunch {
namespace {

const std::vector<std::string_view> kRoleWords = {"frame", "stile", "rail", "muntin", "panel"};
const std::vector<std::string_view> kSawnWords = {"flat-sawn", "quarter-sawn", "mixed"};
const std::vector<std::string_view> kMoistureWords = {"low", "build", "high"};
const std::vector<std::string_view> kAirWords = {"temperature", "humidity", "degrees"};
const std::vector<std::string_view> kDegreeWords = {"celsius", "fahrenheit"};

constexpr double kDriestWood = 1;
constexpr double kWettestWood = kFibreSaturation;

/// Where nothing is said. Built at 8 %: wood for use indoors, average at installation over most of
/// the United States (Wood Handbook 2010, figure 13-1). 6 to 12 %: heated dwellings run from under
/// 6 in winter to 12 in summer (Swedish trade handbook; Eurocode 5 takes 12 % as the most of
/// service class 1).
constexpr double kUsualBuild = 8;
constexpr double kUsualLow = 6;
constexpr double kUsualHigh = 12;

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

std::optional<double> read_percent(ValueReader& read, const Value& value, const std::string& path) {
  if (value.kind == Value::Kind::object) return read_air(read, value, path);
  return read.number(value, path, kDriestWood, kWettestWood,
                     "percent of moisture, or the air: {\"temperature\": 21, \"humidity\": 45}");
}

void read_moisture(ValueReader& read, const Value& value, SeasonSpec& spec) {
  spec.of_moisture = true;
  if (!read.is_object(value, "/moisture",
                      "an object; write such as {\"build\": 8, \"low\": 6, \"high\": 13}"))
    return;
  for (const Entry& entry : value.entries) {
    const std::string path = child_path("/moisture", entry.key);
    if (entry.key == "low")
      spec.low = read_percent(read, entry.value, path);
    else if (entry.key == "build")
      spec.build = read_percent(read, entry.value, path);
    else if (entry.key == "high")
      spec.high = read_percent(read, entry.value, path);
    else
      read.unknown_key(entry, path, kMoistureWords);
  }
}

/// One value for all, or an object of roles; "frame" stands for all that have none of their own.
template <typename Value_, typename ReadOne>
void read_roles(ValueReader& read, const Value& value, const std::string& path,
                OfRoles<Value_>& into, ReadOne read_one) {
  if (value.kind != Value::Kind::object) {
    into.all = read_one(value, path);
    return;
  }
  for (const Entry& entry : value.entries) {
    const std::string entry_path = child_path(path, entry.key);
    if (std::find(kRoleWords.begin(), kRoleWords.end(), entry.key) == kRoleWords.end())
      read.unknown_key(entry, entry_path, kRoleWords);
    else if (entry.key == "frame")
      into.all = read_one(entry.value, entry_path);
    else
      into.own[entry.key] = read_one(entry.value, entry_path);
  }
}

// ---- a shop's own woods

struct WoodFigure {
  std::string_view key;
  std::optional<double> Species::*figure;
  double most;
};
constexpr WoodFigure kWoodFigures[] = {{"radial", &Species::radial, 0.02},
                                       {"tangential", &Species::tangential, 0.02},
                                       {"radial_shrinkage", &Species::radial_shrinkage, 30},
                                       {"tangential_shrinkage", &Species::tangential_shrinkage, 30},
                                       {"gravity_12", &Species::gravity_12, 1.5},
                                       {"gravity_green", &Species::gravity_green, 1.5}};
constexpr double kLeastFigure = 0.0001;

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
      wood.*figure.figure =
          read.number(entry.value, path, kLeastFigure, figure.most, "such a figure");
      return;
    }
  if (entry.key == "name")
    wood.name = read.text(entry.value, path).value_or("");
  else if (entry.key == "source")
    wood.source = read.text(entry.value, path).value_or("");
  else
    read.unknown_key(entry, path, wood_words());
}

void read_woods(ValueReader& read, const Value& value, SeasonSpec& spec) {
  if (value.kind != Value::Kind::list) {
    read.wrong_type(value, "/woods",
                    "a list of woods; write such as [{\"name\": \"mill oak\", \"radial\": 0.0018, "
                    "\"tangential\": 0.0036, \"gravity_12\": 0.68}]");
    return;
  }
  for (std::size_t i = 0; i < value.list.size(); ++i) {
    const std::string path = child_path("/woods", i);
    if (!read.is_object(value.list[i], path, "a wood; write an object with its \"name\"")) continue;
    Species wood;
    wood.group = "shop";
    wood.source = "the shop file";
    for (const Entry& entry : value.list[i].entries)
      read_wood_entry(read, entry, child_path(path, entry.key), wood);
    if (wood.name.empty() && !read.was_meant(path + "/name"))
      read.problem(path, "\"name\" is missing; a wood has a name");
    if (find_species(wood.name, spec.woods) != nullptr && !wood.name.empty() &&
        find_species(wood.name) != find_species(wood.name, spec.woods))
      read.problem(path + "/name", "\"" + wood.name + "\" stands here twice; keep one");
    spec.woods.push_back(std::move(wood));
  }
}

// ---- settling

bool states_any(const OfRoles<std::string>& species) {
  return !species.all.empty() || !species.own.empty();
}

class Settler {
 public:
  Settler(const SeasonSpec& spec, const SeasonSpec& shop) : spec_(spec), shop_(shop) {}

  SettledSeason settle() {
    settled_.species_by_shop = !states_any(spec_.species) && states_any(shop_.species);
    settled_.species = settled_.species_by_shop ? shop_.species : spec_.species;
    if (!spec_.of_moisture && !shop_.of_moisture) return std::move(settled_);
    settled_.season.emplace();
    settle_moisture();
    settle_sawn();
    settle_species();
    if (!settled_.problems.empty()) settled_.season.reset();
    return std::move(settled_);
  }

 private:
  void assume(std::string key, std::string value, std::string_view why) {
    settled_.assumed.push_back({std::move(key), std::move(value), std::string(why)});
  }

  double take(std::string_view key, const std::optional<double>& own,
              const std::optional<double>& shops, double usual, std::string_view why) {
    const double value = own ? *own : shops.value_or(usual);
    if (!own)
      assume("moisture." + std::string(key), percent_words(value), shops ? "the shop file" : why);
    return value;
  }

  void settle_moisture() {
    Moisture& moisture = settled_.season->moisture;
    const auto low = spec_.low ? spec_.low : shop_.low;
    const auto high = spec_.high ? spec_.high : shop_.high;
    const double usual_build =
        std::max(std::min(kUsualBuild, high.value_or(kUsualBuild)), low.value_or(kDriestWood));
    moisture.build = take("build", spec_.build, shop_.build, usual_build,
                          "wood for indoors, at installation (Wood Handbook 2010, fig. 13-1)");
    moisture.low = take("low", spec_.low, shop_.low, std::min(kUsualLow, moisture.build),
                        "a heated house in winter");
    moisture.high = take("high", spec_.high, shop_.high, std::max(kUsualHigh, moisture.build),
                         "a house in a damp summer");
    check_order(moisture);
  }

  void check_order(const Moisture& moisture) {
    if (moisture.low > moisture.high)
      disorder("low", moisture.low, "above", "high", moisture.high);
    else if (moisture.build < moisture.low)
      disorder("build", moisture.build, "below", "low", moisture.low);
    else if (moisture.build > moisture.high)
      disorder("build", moisture.build, "above", "high", moisture.high);
  }

  /// Told at the spec's own value, if it has one of the two.
  void disorder(std::string_view key, double value, std::string_view side, std::string_view other,
                double limit) {
    const auto by_spec = [this](std::string_view it) {
      return (it == "low" ? spec_.low : it == "build" ? spec_.build : spec_.high).has_value();
    };
    const std::string_view place = by_spec(key) || !by_spec(other) ? key : other;
    settled_.problems.push_back(
        {"/moisture/" + std::string(place),
         fmt::format("\"{}\", {:.4g} %{}, is {} \"{}\", {:.4g} %{}; they must rise from \"low\" "
                     "over \"build\" to \"high\"",
                     key, value, by_spec(key) ? "" : " (not the spec's own)", side, other, limit,
                     by_spec(other) ? "" : " (not the spec's own)"),
         {}});
  }

  void settle_sawn() {
    OfRoles<Sawn>& sawn = settled_.season->sawn;
    sawn.all = spec_.sawn.all.value_or(shop_.sawn.all.value_or(Sawn::flat));
    for (const OfRoles<std::optional<Sawn>>* source : {&shop_.sawn, &spec_.sawn})
      for (const auto& [role, word] : source->own)
        if (word) sawn.own[role] = *word;
    if (!spec_.sawn.all && spec_.sawn.own.size() + 1 < kRoleWords.size())
      assume("grain", std::string(sawn_word(sawn.all)),
             shop_.sawn.all ? "the shop file" : "most boards are; it moves the most");
  }

  void settle_species() {
    OfRoles<Species>& species = settled_.season->species;
    if (settled_.species.all.empty() && settled_.species.own.size() + 1 < kRoleWords.size()) {
      settled_.problems.push_back(
          {"",
           "\"species\" is missing; wood moves by its species, so write it, such as "
           "\"species\": \"white oak\"",
           {}});
      return;
    }
    if (!settled_.species.all.empty())
      species.all = look_up(settled_.species.all,
                            settled_.species.own.empty() ? "/species" : "/species/frame");
    for (const auto& [role, name] : settled_.species.own)
      species.own[role] = look_up(name, "/species/" + role);
  }

  Species look_up(const std::string& name, const std::string& path) {
    const Species* found = find_species(name, shop_.woods);
    const std::string whose = settled_.species_by_shop ? " (the shop file's)" : "";
    if (found == nullptr) {
      settled_.problems.push_back({path, "\"" + name + "\"" + whose + unknown_words(name), {}});
      return {};
    }
    if (!coefficients_of(*found)) {
      settled_.problems.push_back(
          {path,
           "\"" + name + "\"" + whose +
               " has no figures of movement in print, so its seasons cannot be worked; give them "
               "in a shop file under \"woods\", or name a wood that has",
           {}});
      return {};
    }
    return *found;
  }

  std::string unknown_words(const std::string& name) const {
    const std::vector<const Species*> several = search_species(name, shop_.woods);
    if (several.size() > 1) {
      std::string some;
      for (std::size_t i = 0; i < std::min<std::size_t>(several.size(), 3); ++i)
        some += (some.empty() ? "\"" : ", \"") + several[i]->name + "\"";
      return fmt::format(
          " may be any of {} woods, {}{}; write which ('haunch species {}' lists "
          "them)",
          several.size(), some, several.size() > 3 ? " …" : "", name);
    }
    const std::string nearest = nearest_species(name);
    return " is no wood whose movement is known; " +
           (nearest.empty() ? "'haunch species' lists those that are; a shop file may add others "
                              "under \"woods\""
                            : "did you mean \"" + nearest + "\"?");
  }

  const SeasonSpec& spec_;
  const SeasonSpec& shop_;
  SettledSeason settled_;
};

}  // namespace

const std::vector<std::string_view>& role_words() {
  return kRoleWords;
}

SeasonSpec read_season_spec(ValueReader& read, const Value& document) {
  SeasonSpec spec;
  if (const Value* moisture = document.find("moisture"); moisture != nullptr)
    read_moisture(read, *moisture, spec);
  if (const Value* grain = document.find("grain"); grain != nullptr)
    read_roles(read, *grain, "/grain", spec.sawn,
               [&](const Value& value, const std::string& path) -> std::optional<Sawn> {
                 const auto word = read.choice(value, path, kSawnWords);
                 if (!word) return {};
                 return static_cast<Sawn>(*word);
               });
  if (const Value* species = document.find("species"); species != nullptr)
    read_roles(read, *species, "/species", spec.species,
               [&](const Value& value, const std::string& path) {
                 return read.text(value, path).value_or("");
               });
  if (const Value* woods = document.find("woods"); woods != nullptr) read_woods(read, *woods, spec);
  return spec;
}

std::vector<Species> woods_of(const Value& shop) {
  ValueReader read({});
  SeasonSpec spec;
  if (const Value* woods = shop.find("woods"); woods != nullptr) read_woods(read, *woods, spec);
  return std::move(spec.woods);
}

SettledSeason settle_season(const SeasonSpec& spec, const SeasonSpec& shop) {
  return Settler(spec, shop).settle();
}

}  // namespace haunch
