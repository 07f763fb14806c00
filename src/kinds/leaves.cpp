#include "leaves.h"

#include <utility>

#include "marks.h"

namespace haunch {

void add_leaf(Assembly& whole, Assembly leaf, const Triple& place,
              const std::string& before_names) {
  const std::size_t pieces = whole.pieces.size();
  const std::size_t joints = whole.joints.size();
  for (Piece& piece : leaf.pieces) {
    piece.mark = piece_mark(whole.pieces.size());
    piece.name.insert(0, before_names);
    for (std::size_t axis = 0; axis < 3; ++axis)
      piece.place.origin[axis] += place[axis];
    for (Feature& feature : piece.features)
      for (std::size_t& joint : feature.joints)
        joint += joints;
    whole.pieces.push_back(std::move(piece));
  }
  for (Joint& joint : leaf.joints) {
    joint.receives += pieces;
    joint.enters += pieces;
    whole.joints.push_back(std::move(joint));
  }
  for (Meeting& meeting : leaf.meetings) {
    meeting.left += pieces;
    meeting.right += pieces;
    whole.meetings.push_back(meeting);
  }
}

}  // namespace haunch
