#include "drawing_svg.h"

#include "picture_svg.h"
#include "shown_text.h"
#include "svg_text.h"

namespace haunch {
namespace {

constexpr std::string_view kXmlHead = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
constexpr std::string_view kNamespace = "http://www.w3.org/2000/svg";

std::string box_of(Length width, Length height) {
  return "0 0 " + decimal(width, Unit::mm) + " " + decimal(height, Unit::mm);
}

SvgText& with_letters(SvgText& svg) {
  return svg.with("font-family", "sans-serif").with("font-size", kLetter).with("fill", "#000");
}

/// What stands in a sheet's element.
void inside_sheet(SvgText& svg, const SheetPicture& sheet, Unit unit, const Paper& paper) {
  svg.open("title").holds(sheet.title);
  svg.open("desc").holds(sheet.about);
  svg.open("rect").with("width", paper.width).with("height", paper.height);
  svg.with("fill", "#fff").empty();
  const double height =
      static_cast<double>(paper.height.steps()) / static_cast<double>(Length::kStepsPerMm);
  draw_picture(svg, sheet.picture, {0, height});
  draw_proof(svg, kFree + whole_mm(3), paper.height - kFree - whole_mm(3), sheet.id + "-proof",
             unit);
}

void begin_sheet(SvgText& svg, const SheetPicture& sheet) {
  svg.with("id", sheet.id).with("class", "sheet").with("data-scale", sheet.scale);
}

}  // namespace

std::vector<DrawingSheet> drawing_of(const ItemReport& item, const LengthPrinter& lengths,
                                     const Paper& paper) {
  std::vector<DrawingSheet> sheets;
  for (const SheetPicture& sheet : drawing_sheets(item, lengths, paper)) {
    std::string text;
    SvgText svg(text);
    svg.open("svg").with("xmlns", kNamespace);
    begin_sheet(svg, sheet);
    svg.with("width", decimal(paper.width, Unit::mm) + "mm");
    svg.with("height", decimal(paper.height, Unit::mm) + "mm");
    svg.with("viewBox", box_of(paper.width, paper.height));
    with_letters(svg).inside();
    inside_sheet(svg, sheet, lengths.unit(), paper);
    svg.close();
    sheets.push_back({sheet.id, sheet.title, shown_text(text, Newlines::kept)});
  }
  return sheets;
}

std::string sheet_file(const DrawingSheet& sheet) {
  return std::string(kXmlHead) + sheet.svg;
}

std::string drawing_file(const std::vector<SheetPicture>& sheets, Unit unit, const Paper& paper) {
  std::string text(kXmlHead);
  SvgText svg(text);
  const Length height = paper.height * static_cast<std::int64_t>(sheets.size());
  svg.open("svg").with("xmlns", kNamespace);
  svg.with("width", decimal(paper.width, Unit::mm) + "mm");
  svg.with("height", decimal(height, Unit::mm) + "mm");
  svg.with("viewBox", box_of(paper.width, height));
  with_letters(svg).inside();
  svg.open("title").holds("Drawings");
  svg.open("desc").holds(
      "One user unit is a millimetre of paper. A sheet has its scale in data-scale, a dimension "
      "what it says, exact and in millimetres, in data-mm, a line the mark of its piece in "
      "data-mark.");
  svg.open("style").holds(page_style(paper));
  Length y;
  for (const SheetPicture& sheet : sheets) {
    svg.open("svg");
    begin_sheet(svg, sheet);
    svg.with("y", y).with("width", paper.width).with("height", paper.height).inside();
    inside_sheet(svg, sheet, unit, paper);
    svg.close();
    y += paper.height;
  }
  svg.close();
  return shown_text(text, Newlines::kept);
}

}  // namespace haunch
