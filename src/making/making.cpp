#include "making.h"

#include <algorithm>

#include "across.h"
#include "feature_work.h"
#include "joint_work.h"

namespace haunch {

Making making_of(const Assembly& wood) {
  Making making{shoulders_of(wood), {}};
  for (std::size_t joint = 0; joint < wood.joints.size(); ++joint)
    add_joint_work(making, wood, joint);
  for (std::size_t piece = 0; piece < wood.pieces.size(); ++piece)
    add_feature_work(making, wood, piece);
  tell_across(making, wood);
  std::stable_sort(making.operations.begin(), making.operations.end(),
                   [](const Operation& a, const Operation& b) { return a.makes < b.makes; });
  return making;
}

void add_run(Making& making, const Operation& setting, Run run) {
  auto& all = making.operations;
  auto its = std::find_if(all.begin(), all.end(),
                          [&](const Operation& other) { return set_alike(other, setting); });
  if (its == all.end()) its = all.insert(all.end(), setting);
  its->runs.push_back(run);
}

}  // namespace haunch
