#include "housing.h"

#include <utility>

namespace haunch {
namespace {

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

void Housing::cut(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  Joint joint = junction.joint(JointKind::housing);
  joint.design.cheeks = housing_.allowance;
  Box cut = junction.blank(assembly.pieces[junction.receives]);
  cut.high[kIn] = housing_.depth;
  const Length thickness = junction.blank(assembly.pieces[junction.enters]).extent(kThrough);
  cut.low[kThrough] = -floor_half(housing_.allowance);
  cut.high[kThrough] = cut.low[kThrough] + thickness + housing_.allowance;
  add(assembly, junction, std::move(joint), cut, FeatureKind::housing);
}

void RebatedCorner::cut(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  Joint joint = junction.joint(JointKind::rebated_corner);
  joint.design.bearing = Length();
  Box cut = junction.blank(assembly.pieces[junction.receives]);
  cut.high[kIn] = depth_;
  cut.low[kThrough] = Length();
  add(assembly, junction, std::move(joint), cut, FeatureKind::rebate);
}

}  // namespace haunch
