// Sizes that are round in the job's own unit.
#pragma once

#include <cstdint>

#include "haunch/length_text.h"

namespace haunch {

/// So many thousandths of a millimetre in a metric job; in an inch job `parts`/`of` of an inch (see
/// Length::from_inch_parts).
constexpr Length usual_size(Unit unit, std::int64_t thousandths_of_mm, std::int64_t parts,
                            std::int64_t of = 1) {
  return unit == Unit::mm ? Length::from_mm_thousandths(thousandths_of_mm)
                          : Length::from_inch_parts(parts, of);
}

}  // namespace haunch
