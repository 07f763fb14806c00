// Documents written as JSON again.
#pragma once

#include <string>

#include "document.h"

namespace haunch {

/// On one line. Read again it is the same document; numbers stand as they were written.
std::string spec_line(const Value& document);

/// A key a line, as a spec is written by hand.
std::string spec_text(const Value& document);

}  // namespace haunch
