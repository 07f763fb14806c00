#include "picture_svg.h"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>

#include "paper.h"

namespace haunch {
namespace {

/// How a kind of line is drawn (ISO 128): its width, and lengths of dashes and gaps.
struct PenLook {
  std::string_view name, width, dashes;
};
constexpr PenLook kLooks[] = {{"hatch", kThinLine, ""},
                              {"thin", kThinLine, ""},
                              {"hidden", kThinLine, "2.2 0.7"},
                              {"moving", kThinLine, "2.2 0.7"},
                              {"chain", kThinLine, "4.5 0.7 0.3 0.7"},
                              {"frame", kThickLine, ""},
                              {"seen", kThickLine, ""},
                              {"cut", kThickLine, ""},
                              {"tick", kThickLine, ""}};
static_assert(std::size(kLooks) == kPens);

class PictureSvg {
 public:
  PictureSvg(SvgText& svg, const Picture& picture, ViewSpot zero)
      : svg_(svg), picture_(picture), zero_(zero) {}

  void draw() {
    for (std::size_t pen = 0; pen < kPens; ++pen)
      strokes(static_cast<Pen>(pen));
    letterings();
  }

 private:
  std::string x_of(const ViewSpot& spot) const { return paper_figure(zero_.u + spot.u); }
  std::string y_of(const ViewSpot& spot) const { return paper_figure(zero_.v - spot.v); }

  void strokes(Pen pen) {
    const auto is_its = [&](const Stroke& stroke) { return stroke.pen == pen; };
    if (std::none_of(picture_.strokes.begin(), picture_.strokes.end(), is_its)) return;
    const PenLook& look = kLooks[static_cast<std::size_t>(pen)];
    svg_.open("g").with("class", look.name).with("fill", "none").with("stroke", "#000");
    svg_.with("stroke-width", look.width);
    if (!look.dashes.empty()) svg_.with("stroke-dasharray", look.dashes);
    svg_.inside();
    for (const Stroke& stroke : picture_.strokes)
      if (is_its(stroke)) path(stroke);
    svg_.close();
  }

  void path(const Stroke& stroke) {
    std::string places;
    for (const SpotRun& run : stroke.runs) {
      std::string_view to = "M";
      for (const ViewSpot& spot : run) {
        places.append(to).append(x_of(spot)).append(" ").append(y_of(spot));
        to = "L";
      }
    }
    svg_.open("path");
    if (!stroke.mark.empty()) svg_.with("data-mark", stroke.mark);
    if (stroke.mm) svg_.with("data-mm", *stroke.mm);
    svg_.with("d", places).empty();
  }

  /// On a rim of white, so that a line that runs through it doesn't spoil it.
  void letterings() {
    if (picture_.letterings.empty()) return;
    svg_.open("g").with("class", "lettering").with("fill", "#000").with("stroke", "#fff");
    svg_.with("stroke-width", "0.8").with("stroke-linejoin", "round");
    svg_.with("paint-order", "stroke").inside();
    for (const Lettering& lettering : picture_.letterings)
      text(lettering);
    svg_.close();
  }

  void text(const Lettering& its) {
    svg_.open("text");
    if (its.upright)
      svg_.with("transform", "translate(" + x_of(its.at) + " " + y_of(its.at) + ") rotate(-90)");
    else
      svg_.with("x", x_of(its.at)).with("y", y_of(its.at));
    if (its.size != kUsualSize) svg_.with("font-size", paper_figure(its.size));
    if (its.bold) svg_.with("font-weight", "bold");
    if (its.anchor != Anchor::start)
      svg_.with("text-anchor", its.anchor == Anchor::middle ? "middle" : "end");
    if (!its.mark.empty()) svg_.with("data-mark", its.mark);
    if (its.mm) svg_.with("data-mm", *its.mm);
    svg_.holds(its.text);
  }

  static constexpr double kUsualSize = 3.5;  // kLetter, that of the sheet

  SvgText& svg_;
  const Picture& picture_;
  ViewSpot zero_;
};

}  // namespace

std::string paper_figure(double mm) {
  std::string text = fmt::format("{:.2f}", mm);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

void draw_picture(SvgText& svg, const Picture& picture, ViewSpot zero) {
  PictureSvg(svg, picture, zero).draw();
}

}  // namespace haunch
