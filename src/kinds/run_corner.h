// Inside corners: a run that begins beside the fronts of another, which goes through to the wall.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "other_items.h"
#include "run_work.h"

namespace haunch {

class Ledger;
struct Caution;
struct Problem;
struct RunSpec;
struct WallRunPlan;

/// The run of that id, worked where it stands; null where it is none, of which a problem tells.
/// `own`: the id of the run that asks for it, which begins beside it.
std::shared_ptr<const RunWork> run_in_corner(const std::string& id, const std::string& path,
                                             const std::string& own, const OtherItems* others,
                                             std::vector<Problem>& problems);

/// How far what stands in a corner comes out of it, from the wall at that end of a run.
struct RunCornerPlan {
  std::string with;    // the other run's id
  Length cases;        // the fronts of its cases, at which this run's filler ends
  Length fronts;       // what lies over them
  Length worktop;      // its front edge; without one as the fronts
  Length toe;          // the face of its toe boards; without one as the cases
  Length handle;       // how far its handles stand before its fronts
  bool blind = false;  // the case of it that stands in the corner has a blind part there

  /// The narrowest filler beside which fronts are drawn out past its handles.
  Length least_filler(Length play) const { return fronts - cases + handle + play; }
};

/// What a run has at an end, where one goes through there. Without problems of it.
std::optional<RunCornerPlan> plan_corner(const RunWork* through, bool at_right, Ledger& ledger);

/// The run's blind case at that end of its wood, which goes into a corner: at it no filler closes
/// what is left beside the wall.
bool is_blind(const Assembly& cabinet, bool at_right);

/// As it stands in the corner at an end of this run.
ThroughRun through_run(const RunWork& through, bool at_right);

std::optional<Caution> corner_caution(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
