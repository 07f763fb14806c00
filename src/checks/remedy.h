// Remedies for what a check found: tried, not guessed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "finding.h"
#include "kind.h"

namespace haunch {

/// One key of the spec, changed.
struct Remedy {
  std::string key;
  std::string what;  // as of the lever
  Length from;
  Length to;
  Moves moves = Moves::nothing;  // as of the lever
};

/// Whether so many pieces or slopes are to be measured that no remedies are sought: it would take
/// minutes.
bool too_much_to_search(const Job& job);

/// For each of `findings` that is not ok: the smallest change of one size of `job` that makes it ok
/// and no other check worse, found by working and checking the job again at every step of the way;
/// or none.
///
/// `findings` are those of check_job for the job as it is. Changes are whole steps of the
/// lever. Each lever is moved a little first; what answers is followed at the pace it showed, and
/// narrowed down until the step before the one found does not do. A change that does only in a
/// narrow range, against the pace, may be missed. A joint of another kind (a stub in place of a
/// mortise) is no remedy. What a fitting clashes with is left as it is, if moving a fitting does.
std::vector<std::optional<Remedy>> find_remedies(const Job& job,
                                                 const std::vector<Finding>& findings);

}  // namespace haunch
