#include "door_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "door_plan_steps.h"

namespace haunch {
namespace {

/// Settles what the spec can bear. A step whose ground is faulty is not taken, so that one fault is
/// told once.
void settle(DoorLedger& ledger, DoorPlan& plan, const std::vector<SeasonGaps>& gaps,
            WhichLeaf leaf) {
  settle_leaf(ledger, plan.frame, leaf);
  if (ledger.clean()) settle_rails(ledger, plan.frame);
  if (ledger.clean()) settle_tiers(ledger, plan.frame);
  if (ledger.clean()) choose_joints(ledger, plan);
  settle_edge(ledger, plan);
  if (ledger.clean()) settle_depths(ledger, plan);
  if (ledger.clean()) settle_joints(ledger, plan);
  if (ledger.clean()) settle_fit(ledger, plan);
  if (!ledger.clean()) return;
  // What is left can be faulty each for itself.
  settle_places(ledger, plan);
  settle_twins(ledger, plan);
  settle_laps(ledger, plan);
  if (plan.edge.rebated() && ledger.clean()) settle_rebate(ledger, plan);
  demand_room_for_moulding(ledger, plan);
  settle_loose_tenons(ledger, plan);
  settle_ends(ledger, plan);
  settle_clearances(ledger, plan);
  settle_over(ledger, plan);
  settle_wedges(ledger, plan);
  settle_tenons(ledger, plan);
  settle_dowels(ledger, plan);
  settle_pins(ledger, plan);
  settle_mitres(ledger, plan);
  settle_panels(ledger, plan, gaps);
  settle_fittings(ledger, plan);
}

bool is_clean(const std::vector<Problem>& problems, std::string_view path) {
  return std::none_of(problems.begin(), problems.end(),
                      [&](const Problem& problem) { return problem.path.starts_with(path); });
}

/// As even a number across each tier as can be, the more below.
std::vector<int> shared_over(int panels, int tiers) {
  std::vector<int> across(static_cast<std::size_t>(tiers), std::max(panels / tiers, 1));
  for (int left = panels > tiers ? panels % tiers : 0; left > 0; --left)
    ++across[static_cast<std::size_t>(tiers - left)];
  return across;
}

std::optional<Problem> panels_contradiction(const Spec& spec, int tiers) {
  const auto* panels = std::get_if<PanelCount>(&spec.panels);
  if (panels != nullptr && panels->count % tiers != 0)
    return Problem{
        "/panels",
        fmt::format("{} cannot be shared evenly over {} tiers; give a multiple of "
                    "{}, or say how many in each tier from the "
                    "top: {{\"across\": [{}]}}",
                    panels->count == 1 ? "1 panel" : fmt::format("{} panels", panels->count), tiers,
                    tiers, tiers_words(shared_over(panels->count, tiers))),
        {}};
  const auto* across = std::get_if<PanelsAcross>(&spec.panels);
  if (across == nullptr || across->each.size() == 1 || std::ssize(across->each) == tiers) return {};
  return Problem{
      "/panels/across",
      fmt::format(
          "gives {} tiers, but {} rails make {}; give one number for each tier from the top",
          across->each.size(), tiers + 1, tiers),
      {}};
}

std::optional<Problem> tiers_contradiction(const Spec& spec, int tiers) {
  if (spec.tiers.empty() || std::ssize(spec.tiers) == tiers) return {};
  return Problem{
      "/panel/tiers",
      fmt::format("gives panels for {}, but {} rails make {}; give one object for each "
                  "tier from the top, {{}} where nothing is otherwise",
                  spec.tiers.size() == 1 ? "1 tier" : fmt::format("{} tiers", spec.tiers.size()),
                  tiers + 1, tiers),
      {}};
}

}  // namespace

Length FramePlan::narrow_stile() const {
  return std::min(stile_left - off_left, stile_right - off_right);
}

Length FramePlan::widest_rebate() const {
  const Length ends = opening.meets == Meets::rebate ? std::max(lip.head, lip.foot) : Length();
  return std::max({off_left, off_right, ends});
}

Length FramePlan::wide_stile() const {
  if (!pair) return std::max(stile_left, stile_right);
  return std::max(pair->is_right ? stile_right : stile_left, pair->meeting_stile);
}

Length FramePlan::worked_over_end(Length depth, Length in, bool right) const {
  if (!arch) return depth;
  // Panel and glass go on beyond the sight edge, and half of an arch may rise there.
  const Length end = arch->end(right);
  const Length highest =
      std::clamp(arch->middle(), end - (right ? in : depth), end + (right ? depth : in));
  return arch->height_at(depth, highest) - arch->foot();
}

Length FramePlan::rebate_of_rail(std::size_t rail) const {
  if (opening.meets != Meets::rebate || !is_end_rail(rail)) return {};
  return rail == 0 ? lip.head : lip.foot;
}

bool FramePlan::has_muntins() const {
  return std::any_of(tiers.begin(), tiers.end(),
                     [](const TierPlan& tier) { return tier.has_muntins(); });
}

bool FramePlan::takes_muntins(std::size_t rail) const {
  return (rail > 0 && tiers[rail - 1].has_muntins()) ||
         (rail + 1 < rails.size() && tiers[rail].has_muntins());
}

Length FramePlan::width_over_muntins(std::size_t rail) const {
  const Length its = rails[rail].width;
  if (rail > 0 || !head || !tiers.front().has_muntins()) return its;
  const auto& sights = tiers.front().sights;
  return its - (height - head->lowest_wood(sights.front().high, sights.back().low));
}

bool DoorPlan::is_stub(JointPlace place) const {
  return joint_at(place).tenons &&
         (place == JointPlace::muntin ? join.muntin_stub : join.rail_stub);
}

bool DoorPlan::has_mortises_at(JointPlace place) const {
  return occurs(place) && joint_at(place).tenons && !is_stub(place);
}

bool DoorPlan::occurs(JointPlace place) const {
  if (place == JointPlace::muntin) return frame.has_muntins();
  return place == JointPlace::corner || frame.rails.size() > 2;
}

bool DoorPlan::has(JointWord joint) const {
  return std::any_of(kJointPlaces.begin(), kJointPlaces.end(),
                     [&](JointPlace place) { return has_at(place, joint); });
}

bool DoorPlan::has(bool DoorJoint::*what) const {
  return std::any_of(kJointPlaces.begin(), kJointPlaces.end(),
                     [&](JointPlace place) { return occurs(place) && joint_at(place).*what; });
}

bool DoorPlan::has_blind_tenons() const {
  return std::any_of(kJointPlaces.begin(), kJointPlaces.end(),
                     [&](JointPlace place) { return occurs(place) && joint_at(place).is_blind(); });
}

bool DoorPlan::has_glass() const {
  return std::any_of(glass_rebates.begin(), glass_rebates.end(),
                     [](Length rebate) { return rebate > Length(); });
}

Length DoorPlan::deepest_edge() const {
  Length deepest = groove.depth;
  for (const Length rebate : glass_rebates)
    deepest = std::max(deepest, rebate);
  return deepest;
}

Strip DoorPlan::level_at_end() const {
  const Length thickness = frame.thickness;
  const Length wall = groove.from_face;
  if (edge.rebated()) return wall * 2 > thickness ? Strip{Length(), wall} : Strip{wall, thickness};
  return {edge.depth, thickness - (edge.moulded_back() ? edge.depth : Length())};
}

bool DoorPlan::tenons_before_rebate() const {
  const Length behind_cheek = join.fit_allowance - floor_half(join.fit_allowance);
  return edge.rebated() &&
         groove.from_face >= join.mortise.from_face + join.mortise.width - behind_cheek;
}

Length DoorPlan::muntin_edge() const {
  Length deepest = groove.depth;
  for (std::size_t tier = 0; tier < frame.tiers.size(); ++tier)
    if (frame.tiers[tier].has_muntins()) deepest = std::max(deepest, edge_depth(tier));
  return deepest;
}

std::vector<Problem> contradictions(const Spec& spec, const std::vector<Problem>& reading) {
  for (const std::string_view path : {"/rail_widths", "/panels", "/opening", "/panel/tiers"})
    if (!is_clean(reading, path)) return {};
  if (!spec.size("opening.height")) return {};
  const auto defaults = door_defaults(spec.units.value_or(Unit::mm), use_of(spec));
  const std::size_t usual_rails = std::max<std::size_t>(defaults.rails.size(), 2);
  const std::size_t rails = spec.rails.empty() ? usual_rails : spec.rails.size();
  std::vector<Problem> problems;
  for (const auto& problem : {panels_contradiction(spec, static_cast<int>(rails) - 1),
                              tiers_contradiction(spec, static_cast<int>(rails) - 1)})
    if (problem) problems.push_back(*problem);
  return problems;
}

PlannedDoor plan_door(const Spec& spec, const std::vector<SeasonGaps>& gaps, WhichLeaf leaf) {
  DoorLedger ledger(spec);
  PlannedDoor planned;
  settle(ledger, planned.plan, gaps, leaf);
  planned.take(ledger);
  return planned;
}

}  // namespace haunch
