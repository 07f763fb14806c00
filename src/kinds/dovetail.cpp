#include "dovetail.h"

#include <algorithm>
#include <utility>

#include "joint_rules.h"

namespace haunch {
namespace {

constexpr Rule kFit{"dovetail-fit", "of play at the edges of a tail, both together",
                    "tails and pins are marked from each other, and fit off the saw"};
constexpr Rule kHome{"dovetail-home", "from the tail's end to the lap",
                     "the joint is home when its tails stand on the lap"};
constexpr Rule kInside{"dovetail-inside", "between the tail's inner side and the socket's end",
                       "a tail that does not reach the end of its socket shows a hole"};

constexpr Measure kLapped[] = {{Figure::edges, &kFit},
                               {Figure::bottom, &kHome},
                               {Figure::bearing, &kInside},
                               {Figure::seat, &kSeat}};
constexpr Measure kRightThrough[] = {
    {Figure::edges, &kFit}, {Figure::bearing, &kInside}, {Figure::seat, &kSeat}};
constexpr Measure kMoved[] = {kShouldersShut[0]};

/// So many tails, if they have room.
std::vector<Strip> tails_in(const TailSpacing& spacing, std::int64_t number) {
  const Length room = spacing.between.high - spacing.between.low;
  const Length left = room - spacing.pin * (number - 1) - spacing.half_pin * 2;
  const Length tail = floor_multiple(floor_divide(left, number), spacing.whole);
  if (tail <= spacing.spread * 2) return {};
  const Length over = left - tail * number;
  Length low = spacing.between.low + spacing.half_pin;
  if (spacing.half_pin_is_least) low += floor_half(over);
  std::vector<Strip> tails;
  for (std::int64_t i = 0; i < number; ++i) {
    tails.push_back({low, low + tail});
    low += tail + spacing.pin;
  }
  return tails;
}

/// The least number of tails of which none is wider than it may be.
std::int64_t least_number(const TailSpacing& spacing) {
  const Length room = spacing.between.high - spacing.between.low;
  const Length pitch = spacing.widest + spacing.pin;
  const Length left = room + spacing.pin - spacing.half_pin * 2;
  return std::max<std::int64_t>(1, (left.steps() + pitch.steps() - 1) / pitch.steps());
}

}  // namespace

const Measures kDovetailMeasures{kRightThrough, kMoved, {}, true};
const Measures kLappedDovetailMeasures{kLapped, kMoved, {}, true};

bool is_in_a_tail(const std::vector<Strip>& tails, Length spread, const Strip& groove) {
  return std::any_of(tails.begin(), tails.end(), [&](const Strip& tail) {
    return tail.low + spread <= groove.low && groove.high <= tail.high - spread;
  });
}

std::vector<Strip> space_tails(const TailSpacing& spacing) {
  if (spacing.number) return tails_in(spacing, *spacing.number);
  const std::int64_t most = least_number(spacing);
  for (std::int64_t number = most; number > 0 && spacing.groove; --number) {
    std::vector<Strip> tails = tails_in(spacing, number);
    if (is_in_a_tail(tails, spacing.spread, *spacing.groove)) return tails;
  }
  return tails_in(spacing, most);
}

void Dovetail::cut(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  const Box receiver = junction.blank(assembly.pieces[junction.receives]);
  const Box enterer = junction.blank(assembly.pieces[junction.enters]);
  const bool lapped = dovetail_.length < receiver.extent(kIn);
  Joint joint = lapped ? junction.joint(JointKind::lapped_dovetail, kLappedDovetailMeasures)
                       : junction.joint(JointKind::dovetail, kDovetailMeasures);
  joint.design.edges = joint.design.bearing = Length();
  if (lapped) joint.design.bottom = Length();
  cut_tails(assembly, junction,
            {dovetail_.tails,
             {std::max(receiver.low[kAcross], enterer.low[kAcross]),
              std::min(receiver.high[kAcross], enterer.high[kAcross])},
             dovetail_.length,
             dovetail_.spread,
             {}},
            std::move(joint), FeatureKind::tails, FeatureKind::sockets);
}

}  // namespace haunch
