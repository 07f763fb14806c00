#include "loose_tenon.h"

#include "marks.h"
#include "round_ends.h"

namespace haunch {
namespace {

/// One tenon, across a strip of the width of the piece whose end it holds.
Piece loose_tenon(const Assembly& assembly, const Piece& held, const Strip& strip, Heading heading,
                  const TenonDesign& tenon, Length from_face) {
  const auto in = static_cast<std::size_t>(heading.axis);
  const auto across = static_cast<std::size_t>(held.place.axes[1]);
  const Box blank = placed_blank(held);
  Piece piece;
  piece.mark = piece_mark(assembly.pieces.size());
  piece.name = "loose tenon of " + held.name;
  piece.role = "loose-tenon";
  piece.blank = {tenon.depth * 2, strip.high - strip.low, tenon.thickness};
  piece.place.axes = held.place.axes;
  piece.place.origin[in] = (heading.upwards ? blank.high[in] : blank.low[in]) - tenon.depth;
  piece.place.origin[across] = blank.low[across] + strip.low;
  piece.place.origin[2] = from_face;
  return piece;
}

/// Rounds both edges of the tenon that was let in last, all along.
void round_edges(Assembly& assembly, std::size_t number, Length radius) {
  if (radius == Length()) return;
  Piece& piece = assembly.pieces[number];
  const std::size_t joints = assembly.joints.size();
  Feature feature{"rounding", {joints - 2, joints - 1}, {}, {{"radius", radius}}};
  const Outline outline{Length(), piece.blank[1], Length(), piece.blank[2]};
  for (const bool high : {false, true})
    for (Prism& prism : rounded_edge(outline, high, radius, Length(), piece.blank[0]))
      feature.prisms.push_back(std::move(prism));
  piece.features.push_back(std::move(feature));
}

}  // namespace

void butt(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading) {
  Joint joint;
  joint.kind = "butt";
  joint.receives = receives;
  joint.enters = enters;
  joint.heading = heading;
  assembly.joints.push_back(std::move(joint));
}

void join_by_loose_tenons(Assembly& assembly, std::size_t receives, std::size_t enters,
                          Heading heading, const TenonDesign& tenon, const MortiseDesign& mortise,
                          std::optional<Length> receiver_shoulder) {
  for (const Strip& strip : tenon.layout.tenons) {
    const std::size_t number = assembly.pieces.size();
    assembly.pieces.push_back(
        loose_tenon(assembly, assembly.pieces[enters], strip, heading, tenon, tenon.from_face));
    TenonDesign own = tenon;
    own.layout = {{{Length(), strip.high - strip.low}}, {}};
    own.from_face = Length();
    house_tenons(assembly, "loose-tenon", receives, number, heading, own, mortise,
                 receiver_shoulder);
    house_tenons(assembly, "loose-tenon", enters, number, {heading.axis, !heading.upwards}, own,
                 mortise, {});
    round_edges(assembly, number, tenon_edge_radius(own, mortise));
  }
}

}  // namespace haunch
