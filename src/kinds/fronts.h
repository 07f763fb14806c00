// What closes the openings of a cabinet: leaves sized by what they close, and plain fronts.
#pragma once

#include <optional>
#include <vector>

#include "cabinet_plan.h"
#include "carcase_set_out.h"
#include "haunch/wood.h"
#include "kind.h"
#include "runner_holes.h"

namespace haunch {

/// A front as it is made, its zero at its own lower left corner at its face.
struct MadeFront {
  const FrontPlan* plan = nullptr;
  Assembly wood;
  Triple at;                       // where its zero lies in the cabinet
  Length travel;                   // of a drawer
  Length behind;                   // of a drawer that stands in the case: from its rear to the back
  std::optional<Sides> room = {};  // of a drawer whose front runs in the opening: what it has there
  std::optional<RunnerHoles> holes = {};  // of a drawer's runners, where they are said
};

struct MadeFronts {
  std::vector<MadeFront> all;
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;
  std::vector<Caution> cautions;
};

/// Makes all fronts of a plan, which must outlive them.
MadeFronts make_fronts(const CabinetSpec& spec, const CabinetPlan& plan, const Job& job);

/// Hangs them in the cabinet, or fixes them there, and tells what cannot be. `carcase`: which of
/// its pieces they hang on.
std::vector<Problem> hang_fronts(Assembly& cabinet, std::vector<MadeFront> fronts,
                                 const CabinetPlan& plan, const SetOutCarcase& carcase);

}  // namespace haunch
