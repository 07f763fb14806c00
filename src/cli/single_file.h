// Files that hold one object: a shop file, the readings of a trial.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "spec_source.h"

namespace haunch {

/// The one object of a file, or what is wrong with the file.
struct SingleObject {
  std::optional<Record> record;
  std::vector<PlacedProblem> problems;
  std::vector<FileFault> faults;
};

/// Reads the one object of `file`, "-" being the descriptor `standard_input`. `what` it should be
/// stands in messages: "a shop file". `may_be_listed`: a list of one is taken too.
SingleObject read_single(const std::string& file, const std::string& what, bool may_be_listed,
                         int standard_input, const SourceWays& ways = {});

}  // namespace haunch
