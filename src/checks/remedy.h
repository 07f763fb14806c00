// Remedies for what a check found: tried, not guessed.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "allowance.h"
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

/// What was found for each of some findings, in their order.
struct Remedies {
  std::vector<std::optional<Remedy>> of;
  /// Whether the search of each came to its end. Where it did not, that there is no remedy, or no
  /// smaller one, was not seen.
  std::vector<bool> all_tried;

  bool complete() const;
};

/// What of an item's effort goes into remedies of single findings.
inline constexpr std::int64_t kEffortOfRemedies = kEffortOfItem / 4 * 3;

/// For each of `findings` that is not ok: the smallest change of one size of `job` that makes it ok
/// and no other check worse, found by working and checking the job again at every step of the way;
/// or none.
///
/// `findings` are those of check_job for the job as it is, `one_try` the effort that this took.
/// Changes are whole steps of the lever. Each lever is moved a little first; what answers is
/// followed at the pace it showed, and narrowed down until the step before the one found does not
/// do. A change that does only in a narrow range, against the pace, may be missed. A joint of
/// another kind (a stub in place of a mortise) is no remedy. What a fitting clashes with is left as
/// it is, if moving a fitting does.
///
/// No more is tried than `most` effort allows: what fails comes before what is doubted, each
/// finding has a share, and what one leaves goes to the next.
Remedies find_remedies(const Job& job, const std::vector<Finding>& findings,
                       std::int64_t one_try = 0, std::int64_t most = kEffortOfRemedies);

}  // namespace haunch
