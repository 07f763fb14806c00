#include "shoulders.h"

#include <algorithm>

#include "own_axes.h"

namespace haunch {
namespace {

EndShoulders end_shoulders(const TenonSizes& tenon) {
  return {tenon.depth, tenon.depth - tenon.longer_at_face, tenon.depth - tenon.longer_at_back};
}

/// Of a flat end, which goes on as far as the longer of its shoulders.
EndShoulders end_shoulders(const ScribedEnd& end) {
  const Length line = std::max(end.longer_at_face, end.longer_at_back);
  return {line, line - end.longer_at_face, line - end.longer_at_back};
}

/// The shoulders at the end of what enters; nothing where a joint closes on none, or on a flat end.
std::optional<EndShoulders> end_shoulders(const Joint& joint) {
  if (!joint.has_shoulder) return {};
  if (joint.tenon) return end_shoulders(*joint.tenon);
  if (joint.scribed) return end_shoulders(*joint.scribed);
  return {};
}

/// The line that one tenon's depth is from; a piece takes that of an end with a long and a short
/// one.
ShoulderLine line_of(const EndShoulders& end) {
  const bool face = end.face < end.line;
  const bool back = end.back < end.line;
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
  const auto end = end_shoulders(joint);
  if (!end) return {};
  return JointShoulders{!own_upwards(enters.place, joint.heading),
                        shoulders.between(&EndShoulders::face, enters.blank[0]),
                        shoulders.between(&EndShoulders::back, enters.blank[0]),
                        end->face == end->line && end->back == end->line};
}

std::vector<Shoulders> shoulders_of(const Assembly& wood) {
  std::vector<Shoulders> all(wood.pieces.size());
  for (const Joint& joint : wood.joints) {
    const auto end = end_shoulders(joint);
    if (!end) continue;
    Shoulders& its = all[joint.enters];
    const bool high = own_upwards(wood.pieces[joint.enters].place, joint.heading);
    (high ? its.high : its.low) = *end;
    its.line = std::max(its.line, line_of(*end));
  }
  return all;
}

}  // namespace haunch
