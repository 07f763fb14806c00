#include "end_joint.h"

#include "joint_rules.h"

namespace haunch {

const Measures kButtMeasures{kShouldersHome, kShouldersShut};

void butt(Assembly& assembly, const End& end) {
  assembly.joints.push_back(end.junction.joint(JointKind::butt, kButtMeasures));
}

void join(Assembly& assembly, End& end, const EndJoints& joints) {
  end.joint = assembly.joints.size();
  for (const auto& joint : joints)
    joint->cut(assembly, end);
}

}  // namespace haunch
