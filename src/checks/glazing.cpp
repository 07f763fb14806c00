// Glass: its cover, its clearance, its bedding, and the beads that hold it.
#include <algorithm>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kBite{"glass-bite", "of glass behind the sight edge",
                     "with less than 3 mm (1/8 in) glass is not held (trade practice)"};
constexpr Rule kClearance{"glass-clearance", "from the glass's edge to the rebate's bottom",
                          "glass that touches the wood breaks when the wood moves"};
constexpr Rule kBedding{"glass-bedding", "of bedding between the glass and its rebate or bead",
                        "glass is bedded on both faces"};
constexpr Rule kUnitRebate{"unit-rebate", "of rebate for a sealed unit",
                           "NHBC Standards 6.7 (UK) ask for rebates at least 15 mm deep for "
                           "sealed units in timber, so that their edge seal is covered"};
constexpr Rule kBeadHome{"bead-home", "between the bead and the rebate's bottom",
                         "a bead that stands off shows, and does not lie in its mitres"};
constexpr Rule kBeadThick{"bead-thickness", "of bead behind the glass",
                          "under 6 mm (1/4 in) a bead splits at its pins (trade practice)"};
constexpr Rule kTongue{"bar-tongue", "of glazing bar between its two rebates",
                       "under 6 mm (1/4 in) it breaks as the glass goes in (trade practice)"};
constexpr Rule kMachining{
    "glass-machining", "of wood between what is let in and the glass's rebate",
    "AWS 1st ed. 4.4.6.10.1.8 asks for 3/8 in (9.5 mm) between any machining for hardware and a "
    "cut-out for glass"};

bool is_glass(const Bench& bench, const Joint& joint) {
  return bench.assembly.pieces[joint.enters].matter == Matter::glass;
}

bool is_bead(const Bench& bench, const Joint& joint) {
  return bench.assembly.pieces[joint.enters].role == Role::bead;
}

Bounds exactly(std::optional<Length> design) {
  return {design, design, {}, {}};
}

void check_edge(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  report(bench, kBite, parts, number, found.reach, {bench.limits.least_bite, {}, {}, {}});
  // Under an arch it is measured upright, and least where the curve is level if it is so anywhere.
  report(bench, kClearance, parts, number, found.bottom,
         joint.arched ? Bounds{joint.design.bottom, {}, {}, {}} : exactly(joint.design.bottom));
  report(bench, kBedding, parts, number, found.bearing, exactly(joint.design.bearing));
  if (joint.kind == JointKind::sealed_unit_in_rebate && found.bottom)
    report(bench, kUnitRebate, parts, number, found.reach + *found.bottom,
           {{}, {}, bench.limits.least_unit_rebate, {}});
}

void check_bead(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  report(bench, kBeadHome, parts, number, bench.measures[number].bottom,
         exactly(joint.design.bottom));
  report(bench, kBeadThick, {joint.enters}, {}, bench.measures[number].thickness,
         {{}, {}, bench.limits.least_bead, {}});
}

/// From the back of the glass to the beads behind it.
void check_behind(Bench& bench, std::size_t pane, std::size_t number) {
  constexpr std::size_t kThrough = 2;
  std::optional<Length> least;
  std::vector<std::size_t> parts{pane};
  for (const Joint& joint : bench.assembly.joints) {
    if (!is_bead(bench, joint)) continue;
    const auto room =
        gap(bench.solids[pane].wood, bench.solids[joint.enters].wood, Way{kThrough, true});
    if (!room) continue;
    parts.push_back(joint.enters);
    least = least ? std::min(*least, *room) : *room;
  }
  report(bench, kBedding, parts, {}, least, exactly(bench.assembly.joints[number].design.bearing));
}

/// What is let in near a rebate for glass. What stands in it is a clash, and told as one.
void check_machining(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const Piece& piece = bench.assembly.pieces[joint.receives];
  const Box* rebate = cut_for(bench.assembly, number);
  std::optional<Length> least;
  for (const Feature& feature : piece.features) {
    if (!feature.fitting || rebate == nullptr) continue;
    for (const Box& cut : bounds_of(taken_away(feature, Place()))) {
      const Length wood = apart_by(cut, *rebate);
      least = std::min(least.value_or(wood), wood);
    }
  }
  if (least && *least >= bench.limits.thin_wood)
    report(bench, kMachining, {joint.receives, joint.enters}, number, least,
           {{}, {}, bench.limits.thin_at_hole, {}});
}

/// What the rebates leave of a bar, at its back.
void check_bar(Bench& bench, std::size_t bar) {
  const Piece& piece = bench.assembly.pieces[bar];
  Box back = placed_blank(piece);
  back.low[2] = back.high[2] - Length::from_steps(1);
  const Wood wood = clipped(bench.solids[bar].wood, back);
  std::optional<Length> tongue;
  if (!wood.empty()) tongue = room_of(wood).extent(static_cast<std::size_t>(piece.place.axes[1]));
  report(bench, kTongue, {bar}, {}, tongue,
         {bench.limits.least_wood, {}, bench.limits.least_bead, {}});
}

}  // namespace

bool is_glazing(const Bench& bench, const Joint& joint) {
  return is_glass(bench, joint) || is_bead(bench, joint);
}

void check_glazing(Bench& bench) {
  std::vector<std::size_t> seen;
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (is_bead(bench, joint)) check_bead(bench, number);
    if (!is_glass(bench, joint)) continue;
    check_edge(bench, number);
    check_machining(bench, number);
    if (std::find(seen.begin(), seen.end(), joint.enters) != seen.end()) continue;
    seen.push_back(joint.enters);
    check_behind(bench, joint.enters, number);
  }
  for (std::size_t piece = 0; piece < bench.assembly.pieces.size(); ++piece)
    if (bench.assembly.pieces[piece].role == Role::glazing_bar) check_bar(bench, piece);
}

void check_moved_glazing(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (!is_glass(bench, joint)) continue;
    const JointMeasure& found = bench.measures[number];
    const std::vector<std::size_t> parts{joint.receives, joint.enters};
    report(bench, kBite, parts, number, found.reach, {bench.limits.least_bite, {}, {}, {}});
    report(bench, kClearance, parts, number, found.bottom, {Length(), {}, {}, {}});
  }
}

std::vector<const Rule*> rules_of_glazing() {
  return {&kBite,     &kClearance, &kBedding, &kUnitRebate,
          &kBeadHome, &kBeadThick, &kTongue,  &kMachining};
}

}  // namespace haunch
