#include "screwed_on.h"

#include <utility>

#include "end_joint.h"
#include "round_bore.h"

namespace haunch {
namespace {

Feature hole_at(const ScrewPlace& screw, const ScrewedOnDesign& design, const Junction& junction,
                const Piece& piece) {
  Box box = junction.blank(piece);
  const Length depth = box.extent(kIn);
  box.low[kAcross] = screw.across - floor_half(design.hole);
  box.high[kAcross] = box.low[kAcross] + design.hole;
  box.low[kThrough] = screw.through - floor_half(design.hole + design.slot);
  box.high[kThrough] = box.low[kThrough] + design.hole + design.slot;
  const Box own = junction.own(box, piece.place);
  Feature feature{FeatureKind::screw_hole,
                  {},
                  {},
                  {{SizeName::diameter, design.hole}, {SizeName::depth, depth}}};
  if (design.slot > Length()) {
    feature.kind = FeatureKind::slot;
    feature.sizes = {{SizeName::length, design.hole + design.slot},
                     {SizeName::width, design.hole},
                     {SizeName::depth, depth}};
    feature.cuts = {own};
  } else {
    feature.prisms = {
        round_hole(own, junction.own_axis(kIn, piece.place), bore_corners(design.hole))};
  }
  return feature;
}

}  // namespace

void bore_screws(Assembly& assembly, const Junction& junction, const ScrewedOnDesign& design,
                 std::size_t joint) {
  Piece& bored = assembly.pieces[design.from_receiver ? junction.receives : junction.enters];
  for (const ScrewPlace& screw : design.screws) {
    Feature feature = hole_at(screw, design, junction, bored);
    feature.joints = {joint};
    bored.features.push_back(std::move(feature));
  }
}

void screw_on(Assembly& assembly, const Junction& junction, const ScrewedOnDesign& design) {
  bore_screws(assembly, junction, design, assembly.joints.size());
  assembly.joints.push_back(junction.joint(JointKind::screws, kButtMeasures));
}

}  // namespace haunch
