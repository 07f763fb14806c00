#include "wedge.h"

#include <utility>

#include "marks.h"

namespace haunch {
namespace {

/// Where a wedge stands: beside which edge of its tenon, and from which side it is driven.
struct WedgePlace {
  Length tenon_edge;  // in the assembly
  bool above;         // the tenon's upper edge
  bool from_low;      // driven upwards along its length
};

/// A wedge that fills what is between the tenon's edge and the flared end of its mortise. At its
/// thin end it is as thick as the play at that edge.
Piece wedge_piece(const Assembly& assembly, const Joint& joint, const WedgePlace& place) {
  const Flare& flare = *joint.mortise->flare;
  const Length thin = floor_half(*joint.design.edges);
  const Length thick = thin + flare.width;
  const Box receives = placed_blank(assembly.pieces[joint.receives]);
  const Piece& enters = assembly.pieces[joint.enters];
  const auto in = static_cast<std::size_t>(joint.heading.axis);
  const std::size_t across = in == 0 ? 1 : 0;
  Piece piece;
  piece.mark = piece_mark(assembly.pieces.size());
  piece.name = "wedge of " + enters.name;
  piece.role = "wedge";
  piece.blank = {flare.depth, joint.tenon->thickness, thick};
  piece.place.axes = {joint.heading.axis, Axis::z, static_cast<Axis>(across)};
  piece.place.origin[in] = place.from_low ? receives.low[in] : receives.high[in] - flare.depth;
  piece.place.origin[across] = place.above ? place.tenon_edge : place.tenon_edge - thick;
  piece.place.origin[2] = enters.place.origin[2] + joint.tenon->from_face;
  const Length thin_end = place.from_low ? flare.depth : Length();
  const Length thick_end = flare.depth - thin_end;
  const Length outside = place.above ? thick : Length();
  const Length slope = place.above ? thin : thick - thin;
  const Prism taper{
      1, Length(), piece.blank[1], {{thick_end, outside}, {thin_end, outside}, {thin_end, slope}}};
  piece.features.push_back({"taper", {}, {}, {{"thickness", thin}}, {taper}});
  return piece;
}

}  // namespace

void add_wedges(Assembly& assembly, std::size_t number) {
  const Joint joint = assembly.joints[number];
  const Piece enters = assembly.pieces[joint.enters];
  const auto across = static_cast<std::size_t>(enters.place.axes[1]);
  for (const TenonSpan& tenon : joint.tenon->each)
    for (const bool above : {false, true}) {
      const Length edge = enters.place.origin[across] + tenon.from_edge;
      Piece piece = wedge_piece(assembly, joint,
                                {above ? edge + tenon.width : edge, above, !joint.heading.upwards});
      Joint its;
      its.kind = "wedge";
      its.receives = joint.receives;
      its.enters = assembly.pieces.size();
      its.heading = {joint.heading.axis, !joint.heading.upwards};
      its.design.edge = Length();
      its.has_shoulder = false;
      piece.features.front().joints = {assembly.joints.size()};
      assembly.pieces.push_back(std::move(piece));
      assembly.joints.push_back(std::move(its));
    }
}

}  // namespace haunch
