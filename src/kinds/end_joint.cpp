#include "end_joint.h"

#include <utility>

#include "joint_rules.h"
#include "scribe.h"

namespace haunch {

const Measures kButtMeasures{kShouldersHome, kShouldersShut};

namespace {

/// Fits an end over what is worked on the edge that it goes on past.
void scribe(Assembly& assembly, const Junction& junction, Joint& joint) {
  Piece& enterer = assembly.pieces[junction.enters];
  Box past = junction.blank(enterer);
  past.low[kIn] = Length();
  if (past.low[kIn] >= past.high[kIn]) return;
  const EdgeProfile edge = worked_edge(assembly, junction);
  const Waste waste = beyond(edge, past);
  if (waste.empty()) return;
  joint.scribed = ScribedEnd{edge.at_face(), edge.at_back()};
  Feature feature{FeatureKind::scribed_end, {assembly.joints.size()}, {}, {}};
  feature.sizes = {{SizeName::longer_in_front, edge.at_face()},
                   {SizeName::longer_at_back, edge.at_back()}};
  std::erase_if(feature.sizes, [](const NamedSize& size) { return size.size == Length(); });
  cut_off(feature, waste, junction, enterer.place);
  enterer.features.push_back(std::move(feature));
}

}  // namespace

void butt(Assembly& assembly, const End& end) {
  Joint joint = end.junction.joint(JointKind::butt, kButtMeasures);
  scribe(assembly, end.junction, joint);
  assembly.joints.push_back(std::move(joint));
}

void join(Assembly& assembly, End& end, const EndJoints& joints) {
  end.joint = assembly.joints.size();
  for (const auto& joint : joints)
    joint->cut(assembly, end);
}

}  // namespace haunch
