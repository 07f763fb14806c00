#include "door.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <utility>

#include "door_cautions.h"
#include "door_plan.h"
#include "door_set_out.h"
#include "door_spec.h"
#include "fittings.h"
#include "season_gaps.h"
#include "shop.h"

namespace haunch {
namespace {

constexpr std::string_view kRailKey = "rail_widths.";
constexpr std::string_view kTiersKey = "panel.tiers.";
constexpr std::string_view kHingeKey = "hinges.at.";
constexpr std::string_view kFittingKey = "fittings.";

/// The number that a key goes on with.
std::size_t number_after(std::string_view key, std::string_view start) {
  std::size_t number = 0;
  std::from_chars(key.data() + start.size(), key.data() + key.size(), number);
  return number;
}

bool has_solid_panels(const DoorSpec& spec) {
  if (spec.tiers.empty()) return spec.its_kind() == PanelKind::solid;
  for (std::size_t i = 0; i < spec.tiers.size(); ++i)
    if (panels_of_tier(spec, i).its_kind() == PanelKind::solid) return true;
  return false;
}

/// Whether the gap at some panel's edges is left to be chosen.
bool leaves_gaps_open(const DoorSpec& spec) {
  const auto open = [](const PanelSpec& panel) {
    return !panel.panel_gap_across.size || !panel.panel_gap_along.size;
  };
  if (spec.tiers.empty()) return open(spec);
  for (std::size_t i = 0; i < spec.tiers.size(); ++i)
    if (open(panels_of_tier(spec, i))) return true;
  return false;
}

class DoorJob : public Job {
 public:
  DoorSpec spec;

  Worked work() const override {
    PlannedDoor planned = plan();
    Worked worked;
    worked.assumed = std::move(planned.assumed);
    worked.problems = std::move(planned.problems);
    if (!worked.problems.empty()) return worked;
    const bool pair = planned.plan.frame.pair.has_value();
    const DoorPlan right = pair ? plan(WhichLeaf::right).plan : DoorPlan();
    worked.assembly = pair ? set_out_pair(planned.plan, right) : set_out_door(planned.plan);
    worked.problems = let_in_described(worked.assembly, spec.fittings, unit);
    const bool lock_is_right = pair && right.fittings.lock.has_value();
    if (worked.problems.empty())
      worked.cautions = door_cautions(spec, lock_is_right ? right : planned.plan,
                                      !pair           ? nullptr
                                      : lock_is_right ? &planned.plan
                                                      : &right,
                                      season.has_value());
    return worked;
  }

  std::vector<Lever> levers() const override { return plan().levers; }

  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    auto changed = std::make_unique<DoorJob>(*this);
    if (lever.key.starts_with(kRailKey))
      set_rail(changed->spec, lever.key.substr(kRailKey.size()), value);
    else if (lever.key.starts_with(kTiersKey))
      set_tier(changed->spec, lever.key.substr(kTiersKey.size()), value);
    else if (lever.key.starts_with(kHingeKey))
      changed->spec.hinge_places.at(number_after(lever.key, kHingeKey)).distance = value;
    else if (lever.key.starts_with(kFittingKey))
      changed->spec.fittings.each.at(number_after(lever.key, kFittingKey)).at = value;
    else
      set_size(changed->spec, muntin_key(lever.key), value);
    return changed;
  }

  std::vector<Alternative> alternatives() const override {
    std::vector<Alternative> all;
    if (!season) return all;
    if (has_solid_panels(spec)) {
      if (auto quarter = quarter_sawn()) all.push_back(std::move(*quarter));
      all.push_back(one_more_muntin());
    }
    for (const bool drier : {true, false})
      add_builds(all, drier);
    return all;
  }

 private:
  /// The leaves of a pair are planned alike; what the one assumes the other does.
  PlannedDoor plan(WhichLeaf leaf = WhichLeaf::left) const {
    PlannedDoor planned = plan_door(spec, {}, leaf);
    if (!season || !leaves_gaps_open(spec) || !planned.problems.empty()) return planned;
    const std::vector<SeasonGaps> gaps = gaps_for(planned.plan, *season, unit, !spec.tiers.empty());
    const bool asked = std::any_of(
        gaps.begin(), gaps.end(), [](const SeasonGaps& each) { return each.across || each.along; });
    return asked ? plan_door(spec, gaps, leaf) : planned;
  }

  std::optional<Alternative> quarter_sawn() const {
    const Sawn now = season->sawn.of(Role::panel);
    if (now == Sawn::quarter) return {};
    auto changed = std::make_unique<DoorJob>(*this);
    changed->season->sawn.own["panel"] = Sawn::quarter;
    return Alternative{"grain.panel", std::string(sawn_word(now)),
                       std::string(sawn_word(Sawn::quarter)), std::move(changed)};
  }

  Alternative one_more_muntin() const {
    PanelsAcross across;
    std::string from;
    std::string to;
    for (const TierPlan& tier : plan_door(spec).plan.frame.tiers) {
      const int now = static_cast<int>(tier.sights.size());
      across.each.push_back(now + 1);
      from += (from.empty() ? "" : ", ") + std::to_string(now);
      to += (to.empty() ? "" : ", ") + std::to_string(now + 1);
    }
    auto changed = std::make_unique<DoorJob>(*this);
    changed->spec.panels = std::move(across);
    return {"panels.across", from, to, std::move(changed)};
  }

  /// Builds drier or wetter by half a percent and more, within the seasons.
  void add_builds(std::vector<Alternative>& all, bool drier) const {
    constexpr double kStep = 0.5;
    constexpr int kMost = 40;
    const Moisture& moisture = season->moisture;
    for (int i = 1; i <= kMost; ++i) {
      const double build = moisture.build + (drier ? -kStep : kStep) * i;
      if (build < moisture.low || build > moisture.high) return;
      auto changed = std::make_unique<DoorJob>(*this);
      changed->season->moisture.build = build;
      all.push_back({drier ? "moisture.build (drier)" : "moisture.build (wetter)",
                     percent_words(moisture.build), percent_words(build), std::move(changed)});
    }
  }

  static void set_size(DoorSpec& spec, std::string_view key, Length value) {
    for (const SizeKey& size : door_size_keys())
      if (size.key == key || size.key.starts_with(std::string(key) + "."))
        spec.*size.size = {value, false};
  }

  /// `place` is what follows "rail_widths.": a number, or a number and what of that rail is set.
  void set_rail(DoorSpec& changed, std::string_view place, Length value) const {
    if (changed.rails.rails.empty()) changed.rails.rails = planned_rails();
    std::size_t number = 0;
    const auto [end, fault] = std::from_chars(place.data(), place.data() + place.size(), number);
    RailSpec& rail = changed.rails.rails.at(number);
    const std::string_view what(end, static_cast<std::size_t>(place.data() + place.size() - end));
    for (const RailLine line : {RailLine::top, RailLine::centre, RailLine::bottom}) {
      if (what != "." + std::string(rail_line_word(line))) continue;
      rail.line = line;
      rail.height = value;
      return;
    }
    rail.width = value;
  }

  /// `place` is what follows "panel.tiers.": a number, and what of that tier's panels is set.
  static void set_tier(DoorSpec& changed, std::string_view place, Length value) {
    std::size_t number = 0;
    const auto [end, fault] = std::from_chars(place.data(), place.data() + place.size(), number);
    const std::string key =
        "panel" + std::string(place.substr(static_cast<std::size_t>(end - place.data())));
    for (const SizeKey& size : door_size_keys())
      if (size.key == key || size.key.starts_with(key + "."))
        panel_size(changed.tiers.at(number), size) = {value, false};
  }

  std::vector<RailSpec> planned_rails() const {
    std::vector<RailSpec> rails;
    for (const RailPlan& planned : plan_door(spec).plan.frame.rails) {
      RailSpec rail;
      rail.width = planned.width;
      rail.plain = true;
      rails.push_back(rail);
    }
    return rails;
  }
};

void add(std::vector<Problem>& problems, std::vector<Problem> more) {
  for (Problem& problem : more)
    problems.push_back(std::move(problem));
}

std::unique_ptr<Job> make_job(DoorSpec spec, std::vector<Given> given,
                              std::string_view default_id) {
  auto job = std::make_unique<DoorJob>();
  job->kind = "door";
  job->id = spec.id.empty() ? std::string(default_id) : spec.id;
  if (spec.id.empty())
    job->assumed_names.push_back({"id", job->id, "made from the name of its file"});
  if (!spec.quantity) job->assumed_names.push_back({"quantity", 1, "one, where nothing is said"});
  job->name = spec.name.empty() ? "door" : spec.name;
  job->note = spec.note;
  job->species = spec.species;
  job->quantity = spec.quantity.value_or(1);
  job->unit = spec.units.value_or(Unit::mm);
  job->given = std::move(given);
  job->spec = std::move(spec);
  return job;
}

/// Seasons of what slopes where it is joined or meets its opening.
void refuse_unworked_seasons(const DoorSpec& spec, std::vector<Problem>& problems) {
  if (spec.arch_at.word.value_or(ArchAt::underside) != ArchAt::underside)
    problems.push_back({"/moisture",
                        "seasons are not worked of a leaf whose top is arched; take it out, or "
                        "say \"arch\": {\"at\": \"underside\"}",
                        {}});
  const bool mitred = std::any_of(spec.joints.begin(), spec.joints.end(), [](const auto& chosen) {
    return chosen.word == JointWord::mitre;
  });
  if (mitred) problems.push_back({"/moisture", std::string(kNoSeasonsOfMitres), {}});
}

}  // namespace

JobReading read_door(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  DoorReading reading =
      read_door_spec(item, Reader::spec, shop != nullptr ? shop->units() : std::nullopt);
  std::optional<ToleranceSpec> shop_tolerances;
  SeasonSpec shop_season;
  if (shop != nullptr) {
    DoorReading shops = read_door_spec(shop->values(), Reader::shop, {});
    overlay(reading.spec, shops.spec);
    shop_tolerances = std::move(shops.tolerances);
    shop_season = std::move(shops.season);
  }
  std::vector<Problem>& problems = reading.problems;
  add(problems, contradictions(reading.spec, problems));
  SettledSeason season;
  if (problems.empty()) {
    season = settle_season(reading.season, shop_season);
    reading.spec.species = season.species;
    reading.spec.species_by_shop = season.species_by_shop;
    add(problems, std::move(season.problems));
    if (season.season) refuse_unworked_seasons(reading.spec, problems);
  }
  SettledTolerances settled;
  const bool speaks_of_them = reading.tolerances || shop_tolerances;
  if (speaks_of_them && problems.empty())
    settled = settle_tolerances(reading.tolerances.value_or(ToleranceSpec()),
                                shop_tolerances ? &*shop_tolerances : nullptr,
                                reading.spec.units.value_or(Unit::mm));
  add(problems, std::move(settled.problems));
  if (!problems.empty()) return {nullptr, std::move(problems)};
  auto job = make_job(std::move(reading.spec), std::move(reading.given), default_id);
  if (speaks_of_them) job->tolerances = settled.tolerances;
  job->assumed_tolerances = std::move(settled.assumed);
  job->season = std::move(season.season);
  job->assumed_season = std::move(season.assumed);
  return {std::move(job), {}};
}

std::vector<Problem> door_shop_problems(const Value& shop) {
  DoorReading reading = read_door_spec(shop, Reader::shop, {});
  const DoorSpec& spec = reading.spec;
  const bool three =
      spec.mortise_width.size && spec.tenon_thickness.size && spec.fit_allowance.size;
  if (three && *spec.mortise_width.size - *spec.tenon_thickness.size != *spec.fit_allowance.size)
    reading.problems.push_back(
        {"/fit_allowance",
         "does not agree with mortise.width and tenon.thickness; give two of the three",
         {}});
  if (reading.tolerances && reading.problems.empty())
    add(reading.problems,
        settle_tolerances(*reading.tolerances, nullptr, spec.units.value_or(Unit::mm)).problems);
  return std::move(reading.problems);
}

}  // namespace haunch
