// Lines on standard error, all of one layout.
#pragma once

#include <string>

#include "file_fault.h"
#include "spec_source.h"

namespace haunch {

/// `FILE:LINE:COLUMN: error: /path: what is wrong; what is right`
std::string error_line(const PlacedProblem& problem);
/// `FILE: error: what is wrong`
std::string error_line(const FileFault& fault);

}  // namespace haunch
