#include "wedge.h"

#include <utility>

#include "joint_rules.h"
#include "marks.h"

namespace haunch {
namespace {

constexpr Rule kFit{"wedge-fit", "between wedge and mortise",
                    "a wedge holds by bearing along the whole of its slope (trade practice)"};
constexpr Measure kBuilt[] = {{Figure::edge, &kFit}};

/// A wedge that fills what is between the tenon's edge and the flared end of its mortise, beside
/// the tenon's upper edge or its lower one. At its thin end it is as thick as the play at that
/// edge.
std::size_t add_wedge(Assembly& assembly, const Junction& junction, const Joint& joint,
                      Length tenon_edge, bool above) {
  const Flare& flare = *joint.mortise->flare;
  const Length thin = floor_half(*joint.design.edges);
  const Length thick = thin + flare.width;
  const Length out = junction.blank(assembly.pieces[joint.receives]).high[kIn];
  const Length from_face = joint.tenon->from_face;
  const Length low = above ? tenon_edge : tenon_edge - thick;
  const Box room{{out - flare.depth, low, from_face},
                 {out, low + thick, from_face + joint.tenon->thickness}};
  const std::size_t number = add_piece_of(
      assembly, "wedge", joint.enters, Role::wedge, {flare.depth, joint.tenon->thickness, thick},
      {junction.in_assembly(room).low,
       {junction.axes[kIn], junction.axes[kThrough], junction.axes[kAcross]}});
  Piece& piece = assembly.pieces[number];
  const Length outside = above ? room.high[kAcross] : room.low[kAcross];
  const Length slope = above ? room.low[kAcross] + thin : room.high[kAcross] - thin;
  const Prism taper{kThrough,
                    room.low[kThrough],
                    room.high[kThrough],
                    {{out, outside}, {out - flare.depth, outside}, {out - flare.depth, slope}}};
  piece.features.push_back({FeatureKind::taper,
                            {},
                            {},
                            {{SizeName::thickness, thin}},
                            {junction.own(taper, piece.place)}});
  return number;
}

}  // namespace

const Measures kWedgeMeasures{kBuilt, {}};

void Wedges::add_own_pieces(Assembly& assembly, const End& end) const {
  const Joint joint = assembly.joints[end.joint];
  const Junction& junction = end.junction;
  for (const TenonSpan& tenon : joint.tenon->each)
    for (const bool above : {false, true}) {
      const Length edge = above ? tenon.from_edge + tenon.width : tenon.from_edge;
      const std::size_t wedge = add_wedge(assembly, junction, joint, edge, above);
      const Heading driven{joint.heading.axis, !joint.heading.upwards};
      Joint its =
          Junction(assembly, joint.receives, wedge, driven).joint(JointKind::wedge, kWedgeMeasures);
      its.design.edge = Length();
      its.has_shoulder = false;
      assembly.pieces[wedge].features.front().joints = {assembly.joints.size()};
      assembly.joints.push_back(std::move(its));
    }
}

}  // namespace haunch
