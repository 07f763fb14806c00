#include "joint_words.h"

namespace haunch {
namespace {

struct Kind {
  JointWord joint;
  std::string_view word;
  std::array<bool, 3> can_be;  // at a corner, at a middle rail, at a muntin
  bool tenons = true;
};

/// Every joint; in the order of JointWord.
constexpr std::array kKinds = {
    Kind{JointWord::haunched, "haunched", {true, true, true}},
    Kind{JointWord::twin, "twin", {true, true, true}},
    Kind{JointWord::loose, "loose", {true, true, true}},
    Kind{JointWord::through, "through", {true, true, false}},
    Kind{JointWord::bridle, "bridle", {true, false, false}},
    Kind{JointWord::dowel, "dowel", {true, true, true}, false},
    Kind{JointWord::half_lap, "half-lap", {true, true, false}, false},
    Kind{JointWord::mitre, "mitre", {true, false, false}, false},
};

}  // namespace

std::string_view joint_place_word(JointPlace place) {
  constexpr std::string_view kWords[] = {"corner", "middle", "muntin"};
  return kWords[static_cast<std::size_t>(place)];
}

std::string_view joint_word(JointWord joint) {
  return kKinds.at(static_cast<std::size_t>(joint)).word;
}

bool has_tenons(JointWord joint) {
  return kKinds.at(static_cast<std::size_t>(joint)).tenons;
}

std::vector<JointWord> all_joints() {
  std::vector<JointWord> joints;
  for (const Kind& kind : kKinds)
    joints.push_back(kind.joint);
  return joints;
}

std::vector<JointWord> joints_at(JointPlace place) {
  std::vector<JointWord> joints;
  for (const Kind& kind : kKinds)
    if (kind.can_be[static_cast<std::size_t>(place)]) joints.push_back(kind.joint);
  return joints;
}

}  // namespace haunch
