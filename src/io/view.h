// What of a report is wanted, and how.
#pragma once

#include <optional>

#include "haunch/length_text.h"

namespace haunch {

/// The whole sheet, or one part of it.
enum class Section { sheet, cutlist, joints, check, season };

enum class Format { table, json, csv };

/// How lengths stand in tables. JSON and CSV are always decimal.
struct LengthStyle {
  int inch_denominator = 64;  // fractions to this; 0: decimal inches
};

struct View {
  Section section = Section::sheet;
  Format format = Format::table;
  std::optional<Unit> unit;  // as asked for; else the spec's own
  LengthStyle lengths;
  bool for_spreadsheet = false;  // CSV: CRLF and a byte order mark
};

}  // namespace haunch
