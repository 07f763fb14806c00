#include "finger.h"

#include <algorithm>
#include <utility>

#include "joint_rules.h"

namespace haunch {
namespace {

constexpr Rule kFit{"finger-fit", "of play between a finger and what stands beside it, one side",
                    "fingers tighter than none will not go in, looser than 0.010 in they fail in "
                    "glue (as tenons do)"};
constexpr Rule kInside{"finger-inside", "between the finger's inner side and the slot's end",
                       "a finger that does not reach the end of its slot shows a hole"};

constexpr Measure kBuilt[] = {{Figure::edge, &kFit, Asked::as_designed, &Limits::loosest_fit},
                              {Figure::bearing, &kInside},
                              {Figure::seat, &kSeat}};
constexpr Measure kMoved[] = {kShouldersShut[0]};

}  // namespace

const Measures kFingerMeasures{kBuilt, kMoved, {}, true};

std::vector<Strip> share_fingers(Strip between, Length width) {
  const Length room = between.high - between.low;
  // The odd number whose share is nearest to the width: of n and n + 2 shares the one or the other.
  const std::int64_t pairs = std::max<std::int64_t>(0, floor_half(room - width).steps()) /
                             std::max<std::int64_t>(1, width.steps());
  const auto share = [&](std::int64_t shares) { return floor_divide(room, shares); };
  std::int64_t shares = pairs * 2 + 1;
  if (width - share(shares + 2) < share(shares) - width) shares += 2;
  std::vector<Strip> fingers;
  for (std::int64_t i = 0; i < shares; i += 2)
    fingers.push_back({between.low + floor_divide(room * i, shares),
                       between.low + floor_divide(room * (i + 1), shares)});
  return fingers;
}

void Fingers::cut(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  const Box receiver = junction.blank(assembly.pieces[junction.receives]);
  const Box enterer = junction.blank(assembly.pieces[junction.enters]);
  Joint joint = junction.joint(JointKind::finger, kFingerMeasures);
  joint.design.edge = floor_half(fingers_.allowance);
  joint.design.bearing = Length();
  cut_tails(assembly, junction,
            {fingers_.fingers,
             {std::max(receiver.low[kAcross], enterer.low[kAcross]),
              std::min(receiver.high[kAcross], enterer.high[kAcross])},
             length_,
             {},
             fingers_.allowance},
            std::move(joint), FeatureKind::fingers, FeatureKind::fingers);
}

}  // namespace haunch
