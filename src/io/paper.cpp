#include "paper.h"

namespace haunch {

std::optional<Paper> paper_called(std::string_view name) {
  if (name == "a4") return Paper{whole_mm(210), whole_mm(297)};                // ISO 216
  if (name == "letter") return Paper{tenths_of_mm(2159), tenths_of_mm(2794)};  // ANSI/ASME Y14.1
  return {};
}

void draw_proof(SvgText& svg, Length x, Length y, const std::string& id, Unit unit) {
  const Length length = whole_mm(100);
  const auto line = [&](Length x1, Length y1, Length x2, Length y2) -> SvgText& {
    return svg.open("line").with("x1", x1).with("y1", y1).with("x2", x2).with("y2", y2);
  };
  svg.open("g").with("class", "proof").with("fill", "none").with("stroke", "#000");
  svg.with("stroke-width", kThickLine).inside();
  line(x, y, x + length, y).with("id", id).with("data-length-mm", length).empty();
  for (const Length end : {x, x + length})
    line(end, y - whole_mm(2), end, y + whole_mm(2)).empty();
  svg.close();
  svg.open("text").with("x", x + whole_mm(2)).with("y", y - whole_mm(1));
  svg.holds(unit == Unit::mm ? "100 mm; print at 100 %" : "100 mm, 3 15/16 in; print at 100 %");
}

std::string page_style(const Paper& paper) {
  return "@page { size: " + decimal(paper.width, Unit::mm) + "mm " +
         decimal(paper.height, Unit::mm) + "mm; margin: 0 }";
}

}  // namespace haunch
