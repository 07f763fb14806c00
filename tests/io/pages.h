// The parts of the joinery page, of specs that are worked here, and what they tell.
#pragma once

#include <cctype>
#include <string>
#include <string_view>

#include "joinery_parts.h"
#include "making.h"
#include "text_table.h"
#include "vocabulary.h"

namespace haunch::test {

/// A cabinet door 400 x 700, 20 thick; stiles 60, rails 60 and 80; grooves 8 wide, 9 deep.
inline std::string cupboard(std::string_view more = {}, std::string_view rails = "[60, 80]") {
  return door_spec(R"("units": "mm", "opening": {"width": 406, "height": 706}, "clearance": 3,
                      "thickness": 20, "stile_width": 60, "rail_widths": )" +
                       std::string(rails),
                   more);
}

/// A house door 924 x 2054, 44 thick; stiles 100, rails 100 and 200; tenons 65 deep, 15 mortises.
inline std::string house(std::string_view more = R"("groove_depth": 12)") {
  return house_mm(R"("clearance": 3, "thickness": 44, "stile_width": 100,
                     "rail_widths": [100, 200], "tenon_depth": 65, )" +
                  std::string(more));
}

/// A frame for a leaf 838 x 1981, 44 thick: 3 clear at the sides and the head, and 10 at the foot.
inline std::string frame(std::string_view more) {
  return R"({"kind": "frame", "units": "mm", "leaf": {"width": 838, "height": 1981}, )" +
         std::string(more) + "}";
}

/// With one blank between words: where columns stand and lines break says nothing.
inline std::string in_words_only(std::string_view page) {
  std::string words;
  for (const char c : page)
    if (std::isspace(static_cast<unsigned char>(c)) == 0)
      words += c;
    else if (!words.empty() && words.back() != ' ')
      words += ' ';
  return words;
}

inline std::string part_of(JoineryPart* part, const Assembly& wood, Unit unit = Unit::mm) {
  return in_words_only(text_of(part(wood, making_of(wood), LengthPrinter(unit, {}))));
}
inline std::string part_of(JoineryPart* part, std::string_view spec, Unit unit = Unit::mm) {
  return part_of(part, wood(spec), unit);
}

/// Whether words stand on a page.
inline bool tells(std::string_view page, std::string_view words) {
  return page.find(words) != std::string_view::npos;
}

}  // namespace haunch::test
