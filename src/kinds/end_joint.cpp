#include "end_joint.h"

namespace haunch {

void butt(Assembly& assembly, const End& end) {
  assembly.joints.push_back(end.junction.joint(JointKind::butt));
}

void join(Assembly& assembly, End& end, const EndJoints& joints) {
  end.joint = assembly.joints.size();
  for (const auto& joint : joints)
    joint->cut(assembly, end);
}

}  // namespace haunch
