#include "shoulders.h"

#include <algorithm>

#include "own_axes.h"

namespace haunch {
namespace {

EndShoulders end_shoulders(const TenonSizes& tenon) {
  return {tenon.depth, tenon.depth - tenon.longer_at_face, tenon.depth - tenon.longer_at_back};
}

/// The line that one tenon's depth is from; a piece takes that of an end with a long and a short
/// one.
ShoulderLine line_of(const TenonSizes& tenon) {
  const bool face = tenon.longer_at_face > Length();
  const bool back = tenon.longer_at_back > Length();
  if (face && back) return ShoulderLine::sight_line;
  if (face) return ShoulderLine::back_shoulder;
  return back ? ShoulderLine::face_shoulder : ShoulderLine::shoulder;
}

}  // namespace

ShoulderLine Shoulders::line_at_low_end() const {
  const bool equal = !low || (low->face == low->line && low->back == low->line);
  return equal ? ShoulderLine::shoulder : line;
}

Length Shoulders::between(Length EndShoulders::*which, Length piece) const {
  if (low) piece -= *low.*which;
  if (high) piece -= *high.*which;
  return piece;
}

std::optional<JointShoulders> shoulders_at(const Joint& joint, const Piece& enters,
                                           const Shoulders& shoulders) {
  if (!joint.tenon || !joint.has_shoulder) return {};
  return JointShoulders{!own_upwards(enters.place, joint.heading),
                        shoulders.between(&EndShoulders::face, enters.blank[0]),
                        shoulders.between(&EndShoulders::back, enters.blank[0]),
                        joint.tenon->straight()};
}

std::vector<Shoulders> shoulders_of(const Assembly& wood) {
  std::vector<Shoulders> all(wood.pieces.size());
  for (const Joint& joint : wood.joints) {
    if (!joint.tenon || !joint.has_shoulder) continue;
    Shoulders& its = all[joint.enters];
    const bool high = own_upwards(wood.pieces[joint.enters].place, joint.heading);
    (high ? its.high : its.low) = end_shoulders(*joint.tenon);
    its.line = std::max(its.line, line_of(*joint.tenon));
  }
  return all;
}

}  // namespace haunch
