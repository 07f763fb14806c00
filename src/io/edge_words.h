// How edges and panels are moulded, and where, in words.
#pragma once

#include <map>
#include <string>

#include "machine_sets.h"
#include "making.h"
#include "report.h"
#include "text_table.h"

namespace haunch {

/// "face edge", "lower edge", "face side"
std::string edge_of(const Run& run, const Piece& piece);
/// The same of a moulding: "arched lower edge"
std::string moulded_edge(const Run& run, const Piece& piece);
/// "face side" or "back"
std::string face_of(const Run& run, const Piece& piece);

/// "face edge of A B; lower edge of C": where an operation is run. `where` tells a run's edge or
/// face, nothing where it is told elsewhere.
template <typename Where>
std::string runs_text(const Assembly& wood, const Operation& operation, Where where) {
  std::map<std::string, Marks> rows;
  for (const Run& run : operation.runs) {
    const Piece& piece = wood.pieces[run.piece];
    const std::string place = where(run, piece);
    if (!place.empty()) add_once(rows[place], piece.mark);
  }
  std::string text;
  for (const auto& [edge, marks] : rows)
    text += (text.empty() ? "" : "; ") + edge + " of " + joined(marks);
  return text;
}

/// "ovolo of radius 8, 8 wide on the face and 9 deep …"
std::string moulding_text(const Operation& moulding, const LengthPrinter& lengths);

/// The corners of a moulding that the shop drew: "corners, from the sight edge x from the face: 9
/// x 0; 9 x 1; round 4.5 to 4.5 x 5.5"; nothing of one that haunch has.
std::string corners_text(const Feature& moulding, const LengthPrinter& lengths);

/// "60 wide and 7 deep: from the edge 10 of flat tongue, then a bevel 50 wide that rises 7 …"
std::string raise_text(const Operation& raise, const LengthPrinter& lengths);

}  // namespace haunch
