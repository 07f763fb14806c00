// Lines on standard error, all of one layout.
#pragma once

#include <string>

#include "file_fault.h"
#include "spec_source.h"

namespace haunch {

/// Text from a file as one line of a terminal: its control characters become spaces.
std::string one_line(std::string text);

/// `FILE:LINE:COLUMN: error: /path: what is wrong; what is right`, with its newline.
std::string error_line(const PlacedProblem& problem);
/// `FILE: error: what is wrong`, with its newline.
std::string error_line(const FileFault& fault);

}  // namespace haunch
