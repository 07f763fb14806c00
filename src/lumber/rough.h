// Rough sizes: how large a part is sawn so that it can be planed and cut to its finished size, and
// from which thickness of stock.
//
//   allow   Allowances, usual_allowances, rough_length, rough_width
//   choose  StockThickness, ways_to_thickness
//   name    quarters_thickness, usual_thicknesses
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "haunch/length.h"
#include "haunch/length_text.h"

namespace haunch::lumber {

/// What a rough part has more than the finished one.
struct Allowances {
  Length length;
  Length width;
  Length face;  // of the thickness, for each planed face
};

/// 25 mm, 6 mm and 2.5 mm a face, in inches 1, 1/4 and 3/32. Printed figures differ: length and
/// width are chosen from the middle of them, the face is that of a furniture-making textbook.
Allowances usual_allowances(Unit unit);

/// A part as the cut list has it.
struct FinishedPart {
  Length length, width, thickness;
  Length horn;  // left on at each end, not part of the length
};

Length rough_length(const FinishedPart& part, const Allowances& allowances);
Length rough_width(const FinishedPart& part, const Allowances& allowances);

/// What there is to take parts from.
struct StockThickness {
  Length thickness;
  bool surfaced = false;  // planed on both faces: no allowance is taken off
  bool sheet = false;     // used as thick as it is, within kSheetTolerance

  friend bool operator==(const StockThickness&, const StockThickness&) = default;
};

/// How far a sheet may be off the thickness that a part asks for.
inline constexpr Length kSheetTolerance = Length::from_mm_thousandths(500);

/// A part out of one stock thickness: one layer, or two or three glued face to face.
struct ThicknessWay {
  std::size_t stock = 0;  // index into the thicknesses
  int layers = 1;
  std::vector<Length> glue_lines;  // from the face side of the finished part
};

/// All that give `finished` with at most three layers: fewest layers first, then thinnest stock;
/// of each stock the fewest layers only.
std::vector<ThicknessWay> ways_to_thickness(Length finished,
                                            const std::vector<StockThickness>& stock, Length face);

/// "5/4" and the like from 4/4 on: the thickness of the board, rough or surfaced on two sides
/// (3/16 in. less up to 6/4, 1/4 in. above). Nothing for other words.
std::optional<Length> quarters_thickness(std::string_view name, bool surfaced);

/// What yards usually have, rough, thinnest first: quarters in inches; in millimetres the softwood
/// sizes of EN 1313-1, or an importer's sizes of oak for hardwood.
std::vector<StockThickness> usual_thicknesses(Unit unit, bool hardwood);

}  // namespace haunch::lumber
