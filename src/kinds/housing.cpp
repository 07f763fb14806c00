#include "housing.h"

#include <utility>

namespace haunch {
namespace {

void add(Assembly& assembly, const Junction& junction, Joint joint, const Box& cut,
         std::string_view kind) {
  joint.design.bottom = Length();
  joint.has_shoulder = false;
  Piece& receiver = assembly.pieces[junction.receives];
  receiver.features.push_back({kind,
                               {assembly.joints.size()},
                               {junction.own(cut, receiver.place)},
                               {{"width", cut.extent(kThrough)}, {"depth", cut.extent(kIn)}}});
  assembly.joints.push_back(std::move(joint));
}

}  // namespace

void house_end(Assembly& assembly, const Junction& junction, const HousingDesign& housing) {
  Joint joint = junction.joint("housing");
  joint.design.cheeks = housing.allowance;
  Box cut = junction.blank(assembly.pieces[junction.receives]);
  cut.high[kIn] = housing.depth;
  const Length thickness = junction.blank(assembly.pieces[junction.enters]).extent(kThrough);
  cut.low[kThrough] = -floor_half(housing.allowance);
  cut.high[kThrough] = cut.low[kThrough] + thickness + housing.allowance;
  add(assembly, junction, std::move(joint), cut, "housing");
}

void rebate_end(Assembly& assembly, const Junction& junction, Length depth) {
  Joint joint = junction.joint("rebated-corner");
  joint.design.bearing = Length();
  Box cut = junction.blank(assembly.pieces[junction.receives]);
  cut.high[kIn] = depth;
  cut.low[kThrough] = Length();
  add(assembly, junction, std::move(joint), cut, "rebate");
}

}  // namespace haunch
