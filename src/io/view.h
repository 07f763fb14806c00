// What of a report is wanted, and how.
#pragma once

#include <cstddef>
#include <optional>

#include "haunch/length_text.h"

namespace haunch {

/// The whole sheet, or one part of it.
enum class Section { sheet, cutlist, joints, check, season };

/// Drawings of rods and boards are SVG, sheets of labels and what customers read HTML.
enum class Format { table, json, csv, svg, html };

/// What a result is made of: what is shown to people and programs, in which nothing is left that a
/// terminal could act on; pages, the same with form feeds between them, as no text of a spec has
/// one; pages with words that stand out (emphasis.h); or data (CSV), which go out byte by byte.
enum class Content { shown, pages, emphasised, data };

/// How a CSV is laid out: as RFC 4180 has it; with CRLF and a byte order mark, as spreadsheets take
/// it; or so with semicolons and decimal commas, as they take it where a comma is the decimal sign.
enum class CsvProfile : unsigned char { plain, spreadsheet, semicolon };

/// How lengths stand in tables. JSON and CSV are always decimal.
struct LengthStyle {
  int inch_denominator = 64;  // fractions to this; 0: decimal inches
  int decimals = 3;           // of millimetres, at most
  bool all_left_over = true;  // beside a fraction; else only what is more than a joiner marks

  /// With all that there is to tell: to 0.001 mm, "~" before what needs more.
  constexpr bool is_exact() const { return decimals == 3 && all_left_over; }
};

/// What can be marked with a rule and set at a machine: what fits go by is printed finer.
inline constexpr LengthStyle kBenchLengths{64, 1, false};

struct View {
  Section section = Section::sheet;
  Format format = Format::table;
  std::optional<Unit> unit;  // as asked for; else the spec's own
  LengthStyle lengths;
  CsvProfile csv = CsvProfile::plain;
  bool full = false;      // a sheet with all that passes, was given and assumed
  bool on_paper = false;  // each sheet of a batch on a page of its own
  bool emphasis = false;  // of what fails, and cautions
  std::size_t page_width = 80;
};

constexpr Content content_of(const View& view) {
  switch (view.format) {
    case Format::table:
      return view.emphasis ? Content::emphasised : Content::pages;
    case Format::json:
    case Format::svg:
    case Format::html:
      return Content::shown;
    case Format::csv:
      return Content::data;
  }
  return Content::shown;
}

}  // namespace haunch
