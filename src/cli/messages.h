// Lines on standard error, all of one layout.
#pragma once

#include <string>

#include "file_fault.h"
#include "spec_source.h"
#include "tally.h"

namespace haunch {

/// `FILE:LINE:COLUMN: error: /path: what is wrong; what is right`
std::string error_line(const PlacedProblem& problem);
/// `FILE: error: what is wrong`
std::string error_line(const FileFault& fault);

/// `12 worked, 1 of them failed a check, 2 refused`
std::string tally_words(const Tally& tally);

}  // namespace haunch
