#include "housing.h"

#include <utility>

namespace haunch {
namespace {

/// The receiver's blank to a depth from where the other piece comes in, in the assembly.
Box let_in(const Assembly& assembly, const Joint& joint, Length depth) {
  Box box = placed_blank(assembly.pieces[joint.receives]);
  const auto in = static_cast<std::size_t>(joint.heading.axis);
  if (joint.heading.upwards)
    box.high[in] = box.low[in] + depth;
  else
    box.low[in] = box.high[in] - depth;
  return box;
}

/// The axis along the receiver, across what stands in it.
std::size_t along(const Assembly& assembly, const Joint& joint) {
  return static_cast<std::size_t>(assembly.pieces[joint.receives].place.axes[0]);
}

void add(Assembly& assembly, Joint joint, const Box& box, std::string_view kind) {
  Piece& receiver = assembly.pieces[joint.receives];
  const Box cut = in_own_axes(box, receiver.place);
  receiver.features.push_back({kind,
                               {assembly.joints.size()},
                               {cut},
                               {{"width", cut.extent(0)}, {"depth", cut.extent(2)}}});
  assembly.joints.push_back(std::move(joint));
}

}  // namespace

void house_end(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
               const HousingDesign& housing) {
  Joint joint;
  joint.kind = "housing";
  joint.receives = receives;
  joint.enters = enters;
  joint.heading = heading;
  joint.design.cheeks = housing.allowance;
  joint.design.bottom = Length();
  joint.has_shoulder = false;
  Box box = let_in(assembly, joint, housing.depth);
  const std::size_t axis = along(assembly, joint);
  const Box stands = placed_blank(assembly.pieces[enters]);
  box.low[axis] = stands.low[axis] - floor_half(housing.allowance);
  box.high[axis] = box.low[axis] + stands.extent(axis) + housing.allowance;
  add(assembly, std::move(joint), box, "housing");
}

void rebate_end(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
                Length depth) {
  Joint joint;
  joint.kind = "rebated-corner";
  joint.receives = receives;
  joint.enters = enters;
  joint.heading = heading;
  joint.design.bottom = Length();
  joint.has_shoulder = false;
  joint.design.bearing = Length();
  Box box = let_in(assembly, joint, depth);
  const std::size_t axis = along(assembly, joint);
  box.low[axis] = placed_blank(assembly.pieces[enters]).low[axis];
  add(assembly, std::move(joint), box, "rebate");
}

}  // namespace haunch
