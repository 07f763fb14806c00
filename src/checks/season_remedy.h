// What helps work whose wood does not bear its seasons: tried, each with its figure.
#pragma once

#include <string>
#include <vector>

#include "finding.h"
#include "kind.h"

namespace haunch {

/// One thing changed.
struct SeasonRemedy {
  std::string key;       // as in the spec, dotted
  std::string from, to;  // in words: the least change that helps, else the furthest tried
  bool helps = false;
};

/// Where a panel or a joint fails at another moisture than the wood is built at: a deeper groove,
/// other stock, one more muntin, a drier or wetter build, as far as the job knows of them. Each was
/// tried by working and checking the job again; it helps if none fails so any more, and no more
/// than before besides. Empty where nothing fails so.
std::vector<SeasonRemedy> find_season_remedies(const Job& job,
                                               const std::vector<Finding>& findings);

}  // namespace haunch
