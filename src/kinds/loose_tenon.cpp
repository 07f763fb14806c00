#include "loose_tenon.h"

#include "marks.h"
#include "round_ends.h"
#include "scribe.h"

namespace haunch {
namespace {

/// One tenon, across a strip of the width of the piece whose end it holds; `meet`: where that
/// stands, past the sight edge.
std::size_t add_loose_tenon(Assembly& assembly, const Junction& junction, const Strip& strip,
                            const TenonDesign& tenon, Length meet) {
  const Box room{{meet - tenon.depth, strip.low, tenon.from_face},
                 {meet + tenon.depth, strip.high, tenon.from_face + tenon.thickness}};
  return add_piece_of(assembly, "loose tenon", junction.enters, Role::loose_tenon,
                      {room.extent(kIn), room.extent(kAcross), tenon.thickness},
                      {junction.in_assembly(room).low, junction.axes});
}

/// Rounds both edges of the tenon that was let in last, all along.
void round_edges(Assembly& assembly, std::size_t number, Length radius) {
  if (radius == Length()) return;
  Piece& piece = assembly.pieces[number];
  const std::size_t joints = assembly.joints.size();
  Feature feature{
      FeatureKind::rounding, {joints - 2, joints - 1}, {}, {{SizeName::radius, radius}}};
  const Outline outline{Length(), piece.blank[1], Length(), piece.blank[2]};
  for (const bool high : {false, true})
    for (Prism& prism : rounded_edge(outline, high, radius, Length(), piece.blank[0]))
      feature.prisms.push_back(std::move(prism));
  piece.features.push_back(std::move(feature));
}

}  // namespace

void LooseTenons::add_own_pieces(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  const Heading in = junction.heading;
  const Length meet =
      stands_at(assembly, junction, {mortise_.from_face, mortise_.from_face + mortise_.width});
  MortiseDesign in_end = mortise_;
  in_end.opens_at = flat_.reach - meet;
  for (const Strip& strip : tenon_.layout.tenons) {
    const std::size_t number = add_loose_tenon(assembly, junction, strip, tenon_, meet);
    TenonDesign own = tenon_;
    own.layout = {{{Length(), strip.high - strip.low}}, {}};
    own.from_face = Length();
    const auto house = [&](std::size_t receives, Heading heading, const MortiseDesign& mortise,
                           std::optional<Length> shoulder) {
      const Junction at(assembly, receives, number, heading);
      house_tenons(assembly, at.joint(JointKind::loose_tenon, kLooseTenonMeasures), own, mortise,
                   shoulder);
    };
    own.set_back = meet;
    house(junction.receives, in, mortise_, end.receiver_shoulder);
    own.set_back = Length();
    house(junction.enters, {in.axis, !in.upwards}, in_end, {});
    round_edges(assembly, number, tenon_edge_radius(own, mortise_));
  }
}

}  // namespace haunch
