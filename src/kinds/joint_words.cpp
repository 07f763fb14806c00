#include "joint_words.h"

namespace haunch {

bool has_tenons(JointWord joint) {
  return joint != JointWord::dowel && joint != JointWord::half_lap && joint != JointWord::mitre;
}

}  // namespace haunch
