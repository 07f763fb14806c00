// What changes, as a page for the bench.
#pragma once

#include <string>

#include "comparison.h"
#include "text_table.h"

namespace haunch {

/// `was`, `is`: what was compared, by the names that it goes by on the command line.
struct ComparedNames {
  std::string was, is;
};

std::string comparison_page(const Comparison& comparison, const ComparedNames& names,
                            const LengthPrinter& lengths);

}  // namespace haunch
