#include "door.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <utility>

#include "cautions.h"
#include "door_cautions.h"
#include "door_defaults.h"
#include "door_set_out.h"
#include "fittings.h"
#include "opening_spec.h"
#include "season_gaps.h"
#include "season_spec.h"
#include "shop.h"
#include "spec_reader.h"
#include "tolerance_spec.h"

namespace haunch {
namespace {

constexpr std::string_view kRailKey = "rail_widths.";
constexpr std::string_view kTiersKey = "panel.tiers.";
constexpr std::string_view kHingeKey = "hinges.at.";

/// The number that a key goes on with.
std::size_t number_after(std::string_view key, std::string_view start) {
  std::size_t number = 0;
  std::from_chars(key.data() + start.size(), key.data() + key.size(), number);
  return number;
}

bool has_solid_panels(const Spec& spec) {
  if (spec.tiers.empty()) return panel_kind(spec) == PanelKind::solid;
  for (std::size_t i = 0; i < spec.tiers.size(); ++i)
    if (panel_kind(panels_of_tier(spec, i)) == PanelKind::solid) return true;
  return false;
}

/// Whether the gap at some panel's edges is left to be chosen.
bool leaves_gaps_open(const Spec& spec) {
  const auto open = [](const KeyValues& panel) {
    return !panel.size("panel.gap.across_grain") || !panel.size("panel.gap.along_grain");
  };
  if (spec.tiers.empty()) return open(spec);
  for (std::size_t i = 0; i < spec.tiers.size(); ++i)
    if (open(panels_of_tier(spec, i))) return true;
  return false;
}

/// `place` is what follows "panel.tiers.": a number, and what of that tier's panels is set.
void set_tier(Spec& changed, std::string_view place, Length value) {
  const std::size_t dot = place.find('.');
  const std::size_t number = number_after(place, "");
  set_size(changed.tiers.at(number), "panel" + std::string(place.substr(dot)), value);
}

}  // namespace

Worked DoorJob::work() const {
  auto [planned, set_out] = plan();
  Worked worked = planned.take_work();
  if (!worked.problems.empty()) return worked;
  const bool pair = planned.plan.frame.pair.has_value();
  const DoorPlan right = pair ? plan(WhichLeaf::right).door.plan : DoorPlan();
  worked.assembly = pair      ? set_out_pair(planned.plan, right)
                    : set_out ? *std::move(set_out)
                              : set_out_door(planned.plan);
  worked.problems = let_in_described(worked.assembly, spec, unit);
  if (season) add(worked.problems, missing_woods(worked.assembly, *season));
  const bool lock_is_right = pair && right.fittings.lock.has_value();
  if (worked.problems.empty())
    worked.cautions = door_cautions(spec, lock_is_right ? right : planned.plan);
  if (const auto by = disagreement(spec, kLeafOpening); by && worked.problems.empty())
    worked.cautions.push_back(opening_disagrees(*by, unit));
  return worked;
}

namespace {

/// Where a tenon is divided goes by plain figures: 50 to 200 mm by 25, or 2 to 8 in.
std::vector<Length> plain_limits(Unit unit) {
  std::vector<Length> limits;
  for (int i = 2; i <= 8; ++i)
    limits.push_back(unit == Unit::mm ? Length::from_mm(25) * i : Length::from_inch_parts(i));
  return limits;
}

/// Tenons that fit the mortises of these cutters.
std::vector<Length> tenons_for(std::vector<Length> cutters, Length fit) {
  for (Length& cutter : cutters)
    cutter -= fit;
  return cutters;
}

/// Tenons that leave a mortise room for glue, and no more than glue bridges: 0.25 to 0.05 mm, 0.010
/// to 0.002 in.
std::vector<Length> tenons_in(Length mortise, Unit unit) {
  const bool mm = unit == Unit::mm;
  const Length loosest = mm ? Length::from_mm_thousandths(250) : Length::from_inch_parts(1, 100);
  const Length tightest = mm ? Length::from_mm_thousandths(50) : Length::from_inch_parts(1, 500);
  const Length step = mm ? Length::from_mm_thousandths(10) : Length::from_inch_parts(1, 2000);
  std::vector<Length> tenons;
  for (Length fit = loosest; fit >= tightest; fit -= step)
    if (fit < mortise) tenons.push_back(mortise - fit);
  return tenons;
}

/// What a lever stands at; nothing, where there is none of that name.
std::optional<Length> value_of(const std::vector<Lever>& levers, std::string_view key) {
  for (const Lever& lever : levers)
    if (lever.key == key) return lever.value;
  return {};
}

}  // namespace

std::vector<Lever> DoorJob::levers() const {
  std::vector<Lever> levers = plan().door.levers;
  const std::vector<Length> cutters =
      spec.cutters.empty() ? door_defaults(unit, use_of(spec)).cutters : spec.cutters;
  const auto fit = value_of(levers, "fit_allowance");
  for (Lever& lever : levers) {
    // Where the mortise goes by its tenon, a cutter has to make it.
    if (lever.key == "tenon.thickness" && fit && !spec["mortise.width"].stated)
      lever.only = tenons_for(cutters, *fit);
    if (const auto mortise = spec.size("mortise.width"); mortise && lever.key == "tenon.thickness")
      lever.only = tenons_in(*mortise, unit);
    if (lever.key == "mortise.width" || lever.key == "groove.width") lever.only = cutters;
    if (lever.key == "tenon.width_limit") lever.only = plain_limits(unit);
  }
  return levers;
}

std::unique_ptr<Job> DoorJob::with(const Lever& lever, Length value) const {
  auto changed = std::make_unique<DoorJob>(*this);
  Spec& its = changed->spec;
  if (lever.key.starts_with(kRailKey))
    set_rail(its, lever.key.substr(kRailKey.size()), value);
  else if (lever.key.starts_with(kTiersKey))
    set_tier(its, lever.key.substr(kTiersKey.size()), value);
  else if (lever.key.starts_with(kHingeKey))
    its.hinge_places.at(number_after(lever.key, kHingeKey)).distance = value;
  else if (!set_fitting_place(its, lever.key, value))
    set_size(its, muntin_name(lever.key), value);
  return changed;
}

std::vector<Alternative> DoorJob::alternatives() const {
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

DoorJob::PlannedLeaf DoorJob::plan(WhichLeaf leaf) const {
  PlannedLeaf planned{plan_door(spec, {}, leaf)};
  const Season* moves = season ? &*season : usual_year ? &*usual_year : nullptr;
  if (moves == nullptr || !leaves_gaps_open(spec) || !planned.door.problems.empty()) return planned;
  planned.set_out = set_out_door(planned.door.plan);
  std::vector<SeasonGaps> gaps = gaps_for(planned.door.plan, *planned.set_out, *moves,
                                          door_defaults(unit, use_of(spec)), !spec.tiers.empty());
  for (SeasonGaps& each : gaps)
    if (!season) each.along.reset();  // what a usual year does there, the usual gap bears
  const bool asked = std::any_of(gaps.begin(), gaps.end(),
                                 [](const SeasonGaps& each) { return each.across || each.along; });
  if (asked) return {plan_door(spec, gaps, leaf)};
  return planned;
}

std::optional<Alternative> DoorJob::quarter_sawn() const {
  const Sawn now = season->sawn.of(Role::panel);
  if (now == Sawn::quarter) return {};
  auto changed = std::make_unique<DoorJob>(*this);
  changed->season->sawn.own["panel"] = Sawn::quarter;
  return Alternative{"grain.panel", std::string(word_of(now)), std::string(word_of(Sawn::quarter)),
                     std::move(changed)};
}

Alternative DoorJob::one_more_muntin() const {
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
void DoorJob::add_builds(std::vector<Alternative>& all, bool drier) const {
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

/// `place` is what follows "rail_widths.": a number, or a number and what of that rail is set.
void DoorJob::set_rail(Spec& changed, std::string_view place, Length value) const {
  if (changed.rails.empty()) changed.rails = planned_rails();
  RailSpec& rail = changed.rails.at(number_after(place, ""));
  const std::size_t dot = std::min(place.find('.'), place.size());
  for (const RailLine line : {RailLine::top, RailLine::centre, RailLine::bottom}) {
    if (place.substr(dot) != "." + std::string(word_of(line))) continue;
    rail.line = line;
    rail.height = value;
    return;
  }
  rail.width = value;
}

std::vector<RailSpec> DoorJob::planned_rails() const {
  std::vector<RailSpec> rails;
  for (const RailPlan& planned : plan_door(spec).plan.frame.rails) {
    RailSpec rail;
    rail.width = planned.width;
    rail.plain = true;
    rails.push_back(rail);
  }
  return rails;
}

std::optional<Season> usual_year_of(const Spec& leaf) {
  if (leaf.speaks_of("moisture") || !has_solid_panels(leaf)) return {};
  return usual_season(leaf);
}

void take_usual_year(Job& job, const Spec& leaf) {
  job.usual_year = usual_year_of(leaf);
  if (job.usual_year) job.assumed_season = assumed_of_usual(leaf, *job.usual_year);
}

JobReading read_door(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  SpecReading reading = read_spec(item, {.of = kOfDoor}, units_of(shop));
  Spec& spec = reading.spec;
  std::vector<Problem>& problems = reading.problems;
  if (problems.empty()) add(problems, take_found_opening(spec, kLeafOpening));
  if (shop != nullptr)
    overlay(spec, shop->of_use(use_of(spec, *shop, spec.size("opening.height").value_or(Length()))),
            kOfDoor);
  add(problems, contradictions(spec, problems));
  auto job = std::make_unique<DoorJob>();
  if (problems.empty()) {
    SettledSeason season = settle_season(spec);
    add(problems, std::move(season.problems));
    job->season = std::move(season.season);
    job->assumed_season = std::move(season.assumed);
    take_usual_year(*job, spec);
  }
  if (problems.empty()) take_tolerances(*job, spec, problems);
  if (!problems.empty()) return {nullptr, std::move(problems)};
  job->kind = "door";
  job->service = {use_of(spec) == Use::cabinet, false, spec.says("accessible")};
  name_job(*job, spec, default_id);
  job->given = std::move(reading.given);
  job->spec = std::move(spec);
  return {std::move(job), {}};
}

}  // namespace haunch
