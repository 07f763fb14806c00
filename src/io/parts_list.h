// A plain cut list, from wherever it comes, as parts for lumber.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "document.h"
#include "lumber_report.h"

namespace haunch {

struct PartsReading {
  std::vector<LumberPart> parts;  // nothing with problems
  std::optional<Unit> unit;       // of the file's bare numbers
  std::vector<Problem> problems;
};

/// {"units": "mm", "parts": [{"name", "quantity", "length", …}]}
PartsReading read_parts(const Value& document);

/// Columns name, quantity, length_mm, width_mm, thickness_mm, material, and if wanted grain and
/// rough; _in for inches. Each problem has an offset, and as its path the column in words.
PartsReading read_parts_csv(std::string_view text);

}  // namespace haunch
