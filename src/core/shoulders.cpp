#include "shoulders.h"

#include <algorithm>

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

std::string_view shoulder_line_word(ShoulderLine line) {
  constexpr std::string_view kWords[] = {"shoulder", "face shoulder", "back shoulder",
                                         "sight line"};
  return kWords[static_cast<std::size_t>(line)];
}

Length Shoulders::between(Length EndShoulders::*which, Length piece) const {
  if (low) piece -= *low.*which;
  if (high) piece -= *high.*which;
  return piece;
}

std::vector<Shoulders> shoulders_of(const Assembly& wood) {
  std::vector<Shoulders> all(wood.pieces.size());
  for (const Joint& joint : wood.joints) {
    if (!joint.tenon || !joint.has_shoulder) continue;
    Shoulders& its = all[joint.enters];
    (joint.heading.upwards ? its.high : its.low) = end_shoulders(*joint.tenon);
    its.line = std::max(its.line, line_of(*joint.tenon));
  }
  return all;
}

}  // namespace haunch
