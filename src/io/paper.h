// Sheets of paper, lettering on them, and the proof that they were printed at their size.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "haunch/length_text.h"
#include "svg_text.h"

namespace haunch {

constexpr Length whole_mm(std::int64_t mm) {
  return Length::from_mm(mm);
}
constexpr Length tenths_of_mm(std::int64_t tenths) {
  return Length::from_mm_thousandths(tenths * 100);
}

inline constexpr Length kLetter = tenths_of_mm(35);  // ISO 3098: 2.5 mm at least, figures 3.5
inline constexpr Length kFree = whole_mm(10);        // round each sheet
inline constexpr Length kFoot = whole_mm(10);        // for the proof of the scale

// Two widths of lines, as ISO 128 has them.
inline constexpr std::string_view kThinLine = "0.18", kThickLine = "0.35";

struct Paper {
  Length width, height;
};

/// "a4", "letter"; nothing of another name.
std::optional<Paper> paper_called(std::string_view name);

/// A line of 100 mm from `x` on with the words that say so above it.
void draw_proof(SvgText& svg, Length x, Length y, const std::string& id, Unit unit);

/// The style by which a browser prints each sheet on a page of its own.
std::string page_style(const Paper& paper);

}  // namespace haunch
