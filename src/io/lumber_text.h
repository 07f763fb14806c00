// A lumber report as a page for the workshop, as JSON (format haunch-lumber-1) and as CSV.
#pragma once

#include <string>
#include <vector>

#include "lumber_report.h"
#include "page_part.h"
#include "text_table.h"
#include "view.h"

namespace haunch {

/// What a page tells of it.
struct LumberText {
  PageText head;
  PageParts parts;
};
LumberText lumber_text(const LumberReport& report, const LengthPrinter& lengths);
std::string lumber_page(const LumberReport& report, const LengthPrinter& lengths);
/// Of that page what tells of parts that found no place, a heading first; nothing where all did.
std::vector<std::string> unplaced_texts(const LumberReport& report, const LengthPrinter& lengths);

/// Lengths in `unit`, areas in its square; money as in the stock file.
std::string lumber_json(const LumberReport& report, Unit unit);

/// The cuts, one a row; without a stock file the rough pieces.
std::string lumber_csv(const LumberReport& report, Unit unit, CsvProfile profile);

/// "12.50 EUR"
std::string money_words(std::int64_t hundredths, const std::string& currency);

/// What a piece is called: "side-door/A", and of several "side-door/H (2 of 3)".
std::string piece_name(const LumberReport& report, const LumberPiece& piece);

}  // namespace haunch
