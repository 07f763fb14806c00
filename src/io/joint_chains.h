// What is dimensioned on a section through a joint: the edges of its pieces and of what is cut in
// them for it, exact, as the report tells them.
#pragma once

#include <vector>

#include "joint_views.h"
#include "member_chains.h"

namespace haunch {

/// Only what is drawn there is told. The sides are those where its pieces stand on the view.
std::vector<PlacedChain> joint_chains(const NotedView& view, const JointView& joint,
                                      const CutAway& cut);

}  // namespace haunch
