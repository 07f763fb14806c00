// What helps work whose wood does not bear its seasons: tried, each with its figure.
#pragma once

#include <string>
#include <vector>

#include "allowance.h"
#include "finding.h"
#include "kind.h"

namespace haunch {

/// One thing changed.
struct SeasonRemedy {
  std::string key;       // as in the spec, dotted
  std::string from, to;  // in words: the least change that helps, else the furthest tried
  bool helps = false;
};

/// What was tried, and whether that is all there is to try.
struct SeasonRemedies {
  std::vector<SeasonRemedy> tried;
  bool all_tried = true;
};

/// What of an item's effort goes into remedies of its seasons.
inline constexpr std::int64_t kEffortOfSeasonRemedies = kEffortOfItem / 4;

/// Where a panel or a joint fails at another moisture than the wood is built at: a deeper groove,
/// other stock, one more muntin, a drier or wetter build, as far as the job knows of them. Each was
/// tried by working and checking the job again; it helps if none fails so any more, and no more
/// than before besides. Empty where nothing fails so. `one_try` is the effort of checking the job
/// as it is; no more is tried than `most` allows.
SeasonRemedies find_season_remedies(const Job& job, const std::vector<Finding>& findings,
                                    std::int64_t one_try = 0,
                                    std::int64_t most = kEffortOfSeasonRemedies);

}  // namespace haunch
