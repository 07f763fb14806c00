// Proportions: of tenons, as measured in the wood, and of the leaf.
#include <algorithm>
#include <array>
#include <map>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kDepth{"tenon-depth", "of tenon beyond its shoulder",
                      "a tenon wants to be at least 3 times as deep as it is thick "
                      "(woodworking-school rule, after Moxon)"};
constexpr Rule kStubDepth{
    "stub-depth", "of stub tenon beyond its shoulder",
    "a stub in a groove of 3/8 in (9 mm), 1/32 in (1 mm) short of it, holds cabinet doors of about "
    "3/4 in and up to 8 sq ft (0.74 m2), and larger ones with board glued in all round; else it "
    "wants a groove of 3/4 in (19 mm) (how-to articles; size of the door: trade practice), and a "
    "thicker frame wants tenons 3 times as deep as thick (after Moxon)"};
constexpr Rule kBelowStub{"stub-bottom", "left below a stub tenon in its groove",
                          "with nothing left the stub meets the bottom before its shoulder closes; "
                          "leave 1/64 to 1/32 in (how-to articles)"};
constexpr Rule kThickness{"tenon-thickness", "of tenon thickness",
                          "a tenon wants to be from a quarter to half of the thickness; a third is "
                          "the rule (Fairham 1917, Noyes 1910)"};
constexpr Rule kTwinThickness{"twin-thickness", "of tenon thickness, of each side by side",
                              "the two together want to be from a quarter to half of the "
                              "thickness, each about a fifth (trade "
                              "practice)"};
constexpr Rule kDowelDepth{"dowel-depth", "of dowel in the piece",
                           "a dowel wants to go 3 times its thickness into each piece (trade "
                           "practice)"};
constexpr Rule kDowelInFace{"dowel-depth", "of dowel in the piece",
                            "into a face a dowel wants to go one and a half times its thickness "
                            "(trade practice)"};
constexpr Rule kDowelThickness{
    "dowel-thickness", "of dowel thickness",
    "a dowel wants to be from a third to half of the thickness (trade practice)"};
constexpr Rule kDowelRow{"dowel-row", "of an end held, over its dowels",
                         "one dowel alone lets the end turn on it; two at least (trade practice)"};
constexpr Rule kLapThickness{
    "half-lap-thickness", "of lap thickness, of what is cut from the face side",
    "each lap wants to be half of the thickness; under a third one of them is weak (trade "
    "practice)"};
constexpr Rule kGluedLap{"glued-half-lap",
                         "of lap glued across the grain, the lesser of its two ways",
                         "over 100 mm (4 in) the wood moves more than the glue bears (shop rule)"};
constexpr Rule kWidth{"tenon-width", "of tenon width",
                      "under 3 mm of tenon there is none (trade practice)"};
constexpr Rule kTongue{"panel-tongue", "of panel edge thickness",
                       "an edge under 3 mm breaks out of its groove (trade practice)"};
constexpr Rule kGlued{
    "glued-width", "of tenon glued across the grain",
    "over 100 mm (4 in) in one tenon the wood moves more than the glue bears (shop rule)"};
constexpr Rule kLockRail{
    "lock-rail-height", "from the leaf's foot to the top of the lock rail",
    "a lock rail's top stands 3 ft 2 in above the floor (Building Construction, panelled doors)"};

void check_dowel(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  if (found.widths.empty()) return;
  const Length thickness = bench.assembly.pieces[joint.receives].blank[2];
  const Length least = bench.limits.least_wood;
  // A dowel is thinner than its hole by its fit.
  const Length fit = joint.design.cheeks.value_or(Length());
  const Place& place = bench.assembly.pieces[joint.receives].place;
  const bool in_face = joint.heading.axis == place.axes[2];
  report(bench, in_face ? kDowelInFace : kDowelDepth, {joint.enters}, number, found.reach,
         Bounds{least,
                {},
                in_face ? found.thickness + floor_half(found.thickness) : found.thickness * 3,
                {}});
  report(bench, kDowelThickness, {joint.enters}, number, found.thickness,
         Bounds{least, {}, floor_divide(thickness, 3) - fit, floor_half(thickness)});
}

void check_lap(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  if (found.widths.empty()) return;
  const Length thickness = bench.assembly.pieces[joint.receives].blank[2];
  const Length third = floor_divide(thickness, 3);
  const Bounds bounds{bench.limits.least_wood, thickness - bench.limits.least_wood, third,
                      thickness - third};
  report(bench, kLapThickness, {joint.enters}, number, found.thickness, bounds);
  report(bench, kGluedLap, {joint.receives, joint.enters}, number,
         std::min(found.widths.front(), found.reach),
         Bounds{{}, {}, {}, bench.limits.widest_glued});
}

/// From the first dowel in an end to the last, over both; and how thick each is.
struct Row {
  Length low, high, each;
};

/// The dowels that hold the ends of pieces, end by end.
void check_dowel_rows(Bench& bench) {
  using End = std::array<std::size_t, 3>;  // of which piece, along which axis, at its high end
  std::map<End, Row> rows;
  for (const Joint& joint : bench.assembly.joints) {
    const Piece& held = bench.assembly.pieces[joint.receives];
    if (joint.kind != JointKind::dowel || held.place.axes[0] != joint.heading.axis) continue;
    const auto across = static_cast<std::size_t>(held.place.axes[1]);
    const Box room = room_of(bench.solids[joint.enters].wood);
    const Row one{room.low[across], room.high[across], room.extent(across)};
    const auto axis = static_cast<std::size_t>(joint.heading.axis);
    const auto [row, first] =
        rows.try_emplace({joint.receives, axis, joint.heading.upwards ? 0U : 1U}, one);
    if (first) continue;
    row->second.low = std::min(row->second.low, one.low);
    row->second.high = std::max(row->second.high, one.high);
  }
  for (const auto& [end, row] : rows)
    report(bench, kDowelRow, {end[0]}, {}, row.high - row.low, Bounds{{}, {}, row.each * 2, {}});
}

/// Whether its panels hold a frame together: board all over, which is glued in.
bool has_board_glued_in(const Bench& bench, std::size_t group) {
  bool any = false;
  for (const std::size_t piece : pieces_of(bench.assembly, group)) {
    const Piece& its = bench.assembly.pieces[piece];
    if (its.role != Role::panel) continue;
    if (its.matter != Matter::board) return false;
    any = true;
  }
  return any;
}

/// The most that stubs in its grooves hold together without more.
constexpr double kLargestStubbed = 8 * 144;

double square_inches(const Box& leaf) {
  constexpr auto kStepsPerInch = static_cast<double>(Length::from_inch_parts(1).steps());
  return static_cast<double>(leaf.extent(0).steps()) / kStepsPerInch *
         (static_cast<double>(leaf.extent(1).steps()) / kStepsPerInch);
}

/// How deep a stub must be to hold what it is of. A muntin has rails at both ends, and holds
/// nothing together.
Length stub_wanted(const Bench& bench, const Joint& joint, Length thickness) {
  const Limits& limits = bench.limits;
  const Piece& enters = bench.assembly.pieces[joint.enters];
  if (enters.role == Role::muntin) return limits.least_stub;
  if (enters.blank[2] > limits.thickest_stubbed) return thickness * 3;
  const bool small = square_inches(placed_blanks(bench.assembly, enters.group)) <= kLargestStubbed;
  return small || has_board_glued_in(bench, enters.group) ? limits.least_stub
                                                          : limits.least_stub_alone;
}

void check_stub(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const Limits& limits = bench.limits;
  report(bench, kStubDepth, {joint.enters}, number, found.reach,
         Bounds{limits.least_wood, {}, stub_wanted(bench, joint, found.thickness), {}});
  if (found.bottom)
    report(bench, kBelowStub, {joint.enters}, number, *found.bottom,
           Bounds{{}, {}, limits.least_below_stub, {}});
}

/// A glazing bar holds nothing together: both ends stand in the frame, and their tenons are as
/// thick as is left between its rebates.
bool is_of_bar(const Bench& bench, const Joint& joint) {
  return bench.assembly.pieces[joint.enters].role == Role::glazing_bar;
}

void check_tenon(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  if (found.widths.empty()) return;
  const Length least = bench.limits.least_wood;
  // A loose tenon is all tenon; what it is in goes by the piece that it holds.
  const Length thickness =
      bench.assembly.pieces[joint.has_shoulder ? joint.enters : joint.receives].blank[2];
  const std::vector<std::size_t> parts{joint.enters};
  const bool stub = !joint.mortise;
  const auto side_by_side = static_cast<std::int64_t>(found.side_by_side);
  if (stub)
    check_stub(bench, number);
  else
    report(bench, kDepth, parts, number, found.reach,
           Bounds{least,
                  {},
                  is_of_bar(bench, joint) ? bench.limits.least_stub : found.thickness * 3,
                  {}});
  Bounds thick{least,
               {},
               floor_divide(thickness, 4 * side_by_side),
               floor_divide(thickness, 2 * side_by_side)};
  if (is_of_bar(bench, joint)) thick = {least, {}, {}, {}};
  report(bench, side_by_side > 1 ? kTwinThickness : kThickness, parts, number, found.thickness,
         thick);
  const auto [narrowest, widest] = std::minmax_element(found.widths.begin(), found.widths.end());
  report(bench, kWidth, parts, number, *narrowest, Bounds{least, {}, {}, {}});
  report(bench, kGlued, parts, number, *widest, Bounds{{}, {}, {}, bench.limits.widest_glued});
}

/// The edge of a panel, once a panel.
void check_tongue(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const bool told = number > 0 && bench.assembly.joints[number - 1].enters == joint.enters;
  if (told || found.widths.empty()) return;
  report(bench, kTongue, {joint.enters}, {}, found.thickness,
         Bounds{{}, {}, bench.limits.least_wood, {}});
}

/// The foot of the leaf that a piece is of.
Length foot_below(const Bench& bench, std::size_t piece) {
  const Fit* hung = hanging_of(bench.assembly, piece);
  return hung == nullptr ? Length() : placed_blanks(bench.assembly, hung->group).low[1];
}

}  // namespace

void check_proportions(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (joint.kind == JointKind::dowel)
      check_dowel(bench, number);
    else if (joint.kind == JointKind::half_lap)
      check_lap(bench, number);
    else if (joint.tenon)
      check_tenon(bench, number);
    if (joint.design.bite && !is_glazing(bench, joint)) check_tongue(bench, number);
  }
  check_dowel_rows(bench);
  for (std::size_t number = 0; number < bench.assembly.pieces.size(); ++number)
    if (bench.assembly.pieces[number].is_lock_rail)
      report(bench, kLockRail, {number}, {},
             bench.solids[number].blank.high[1] - foot_below(bench, number),
             Bounds{{}, {}, {}, bench.limits.highest_lock_rail});
}

std::vector<const Rule*> rules_of_proportions() {
  return {&kDepth,    &kStubDepth,  &kBelowStub,      &kThickness, &kTwinThickness,
          &kWidth,    &kGlued,      &kTongue,         &kLockRail,  &kLapThickness,
          &kGluedLap, &kDowelDepth, &kDowelThickness, &kDowelRow};
}

}  // namespace haunch
