#include "housing.h"

#include <cmath>
#include <numbers>
#include <utility>

#include "joint_rules.h"
#include "round_ends.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr Rule kFit{"housing-fit", "of play between what is housed and its housing",
                    "a housing tighter than none will not go home, one looser than 0.010 in shows "
                    "and rocks (trade practice)"};
constexpr Rule kBearing{"housed-bearing", "between what is housed and the ledge it rests on",
                        "a head must rest on its jambs over their whole width"};
constexpr Rule kHome{"housed-home", "from the housed end to the housing's bottom",
                     "the joint is home when its end stands on the bottom"};

constexpr Measure kBuilt[] = {{Figure::cheeks, &kFit, Asked::as_designed, &Limits::loosest_fit},
                              {Figure::bearing, &kBearing},
                              {Figure::bottom, &kHome}};
constexpr Measure kMoved[] = {kCheeksUnpressed, kEndStillFree};

void add(Assembly& assembly, const Junction& junction, Joint joint, const Box& cut,
         FeatureKind kind) {
  joint.design.bottom = Length();
  joint.has_shoulder = false;
  Piece& receiver = assembly.pieces[junction.receives];
  receiver.features.push_back(
      {kind,
       {assembly.joints.size()},
       {junction.own(cut, receiver.place)},
       {{SizeName::width, cut.extent(kThrough)}, {SizeName::depth, cut.extent(kIn)}}});
  assembly.joints.push_back(std::move(joint));
}

}  // namespace

const Measures kHousingMeasures{kBuilt, kMoved};

namespace {

/// Half a circle before the straight part of a housing, on the side of the wood.
Prism round_end(const Box& straight) {
  const Length radius = floor_half(straight.extent(kThrough));
  const Corner middle{straight.low[kAcross], straight.low[kThrough] + radius};
  Prism end{kIn, straight.low[kIn], straight.high[kIn], {{middle.u, straight.low[kThrough]}}};
  constexpr int kParts = kPartsOfQuarter * 2;
  for (int i = 1; i < kParts; ++i) {
    const double turn = std::numbers::pi * i / kParts;
    const auto reach = static_cast<double>(radius.steps());
    end.outline.push_back({middle.u - nearest_step(reach * std::sin(turn)),
                           middle.v - nearest_step(reach * std::cos(turn))});
  }
  end.outline.push_back({middle.u, straight.high[kThrough]});
  return end;
}

/// The corner that a stopped housing leaves whole is taken off what stands in it.
void notch_for_stop(Assembly& assembly, const Junction& junction, Length depth, Length stop) {
  Piece& enters = assembly.pieces[junction.enters];
  Box corner = junction.blank(enters);
  corner.low[kIn] = Length();
  corner.high[kAcross] = corner.low[kAcross] + stop;
  enters.features.push_back({FeatureKind::notch,
                             {assembly.joints.size()},
                             {junction.own(corner, enters.place)},
                             {{SizeName::length, depth}, {SizeName::width, stop}}});
}

}  // namespace

void Housing::cut(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  const Box enters = junction.blank(assembly.pieces[junction.enters]);
  Box cut = junction.blank(assembly.pieces[junction.receives]);
  // What begins behind the stop, such as a rear rail, is housed across the whole of it.
  const bool stopped =
      housing_.stop > Length() && cut.low[kAcross] < enters.low[kAcross] + housing_.stop;
  Joint joint =
      junction.joint(stopped ? JointKind::stopped_housing : JointKind::housing, kHousingMeasures);
  joint.design.cheeks = housing_.allowance;
  cut.high[kIn] = housing_.depth;
  cut.low[kThrough] = -floor_half(housing_.allowance);
  cut.high[kThrough] = cut.low[kThrough] + enters.extent(kThrough) + housing_.allowance;
  const bool round = stopped && housing_.round;
  const Length radius = round ? floor_half(cut.extent(kThrough)) : Length();
  if (stopped) {
    notch_for_stop(assembly, junction, housing_.depth, housing_.stop + radius);
    cut.low[kAcross] = enters.low[kAcross] + housing_.stop + radius;
  }
  add(assembly, junction, std::move(joint), cut, FeatureKind::housing);
  if (!round) return;
  Piece& receiver = assembly.pieces[junction.receives];
  Feature& housing = receiver.features.back();
  housing.prisms = {junction.own(round_end(cut), receiver.place)};
  housing.sizes.push_back({SizeName::radius, radius});
}

void RebatedCorner::cut(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  Joint joint = junction.joint(JointKind::rebated_corner, kHousingMeasures);
  joint.design.bearing = Length();
  Box cut = junction.blank(assembly.pieces[junction.receives]);
  cut.high[kIn] = depth_;
  if (at_low_end_)
    cut.high[kThrough] = junction.blank(assembly.pieces[junction.enters]).high[kThrough];
  else
    cut.low[kThrough] = Length();
  add(assembly, junction, std::move(joint), cut, FeatureKind::rebate);
}

}  // namespace haunch
