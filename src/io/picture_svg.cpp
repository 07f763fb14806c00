#include "picture_svg.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <iterator>
#include <map>

#include "paper.h"

namespace haunch {
namespace {

/// How a kind of line is drawn (ISO 128): its width, and lengths of dashes and gaps.
struct PenLook {
  std::string_view name, width, dashes;
};
constexpr PenLook kLooks[] = {{"hatch", kThinLine, ""},
                              {"grain", kThinLine, "9 1.6 14 2.4 6 1.2 11 2"},
                              {"broken", kThinLine, ""},
                              {"thin", kThinLine, ""},
                              {"hidden", kThinLine, "2.2 0.7"},
                              {"moving", kThinLine, "2.2 0.7"},
                              {"chain", kThinLine, "4.5 0.7 0.3 0.7"},
                              {"frame", kThickLine, ""},
                              {"seen", kThickLine, ""},
                              {"cut", kThickLine, ""},
                              {"tick", kThickLine, ""}};
static_assert(std::size(kLooks) == kPens);

/// Places on paper in whole parts of a millimetre, each told from the one before: a third of what
/// they take otherwise.
class PathText {
 public:
  PathText(ViewSpot zero, int parts) : zero_(zero), parts_(parts) {}

  void add(const SpotRun& run) {
    for (std::size_t i = 0; i < run.size(); ++i) {
      const long u = std::lround((zero_.u + run[i].u) * static_cast<double>(parts_));
      const long v = std::lround((zero_.v - run[i].v) * static_cast<double>(parts_));
      if (i == 0 || u != u_ || v != v_) step(i == 0 ? 'm' : 'l', u - u_, v - v_);
      u_ = u;
      v_ = v;
    }
  }
  const std::string& text() const { return text_; }

 private:
  void step(char command, long right, long down) {
    if (command == 'l' && down == 0) return number('h', right);
    if (command == 'l' && right == 0) return number('v', down);
    number(command, right);
    number(down < 0 ? '\0' : ' ', down);
  }

  /// "-.5": without what can be left out.
  void number(char before, long parts) {
    if (before != '\0') text_ += before;
    const long size = std::abs(parts), whole = size / parts_;
    if (parts < 0) text_ += '-';
    if (whole != 0 || size == 0) text_ += std::to_string(whole);
    std::string rest = std::to_string(parts_ + size % parts_);
    rest.front() = '.';
    rest.erase(rest.find_last_not_of('0') + 1);
    if (rest.size() > 1) text_ += rest;
  }

  ViewSpot zero_;
  long parts_, u_ = 0, v_ = 0;
  std::string text_;
};

class PictureSvg {
 public:
  PictureSvg(SvgText& svg, const Picture& picture, ViewSpot zero)
      : svg_(svg), picture_(picture), zero_(zero) {}

  void draw() {
    for (std::size_t pen = 0; pen < kPens; ++pen)
      strokes(static_cast<Pen>(pen));
    for (const bool upright : {false, true})
      letterings(upright);
  }

 private:
  void strokes(Pen pen) {
    const auto is_its = [&](const Stroke& stroke) { return stroke.pen == pen; };
    if (std::none_of(picture_.strokes.begin(), picture_.strokes.end(), is_its)) return;
    const PenLook& look = kLooks[static_cast<std::size_t>(pen)];
    svg_.open("g").with("class", look.name).with("fill", "none").with("stroke", "#000");
    svg_.with("stroke-width", look.width);
    if (!look.dashes.empty()) svg_.with("stroke-dasharray", look.dashes);
    svg_.inside();
    paths(pen);
    svg_.close();
  }

  /// One for all lines of a piece; dimensions by themselves.
  void paths(Pen pen) {
    const int parts = pen <= Pen::broken ? 10 : 100;
    std::map<std::string, PathText> of_pieces;
    for (const Stroke& stroke : picture_.strokes) {
      if (stroke.pen != pen) continue;
      PathText alone(zero_, parts);
      PathText& text =
          stroke.mm ? alone : of_pieces.try_emplace(stroke.mark, zero_, parts).first->second;
      for (const SpotRun& run : stroke.runs)
        text.add(run);
      if (stroke.mm) svg_.open("path").with("data-mm", *stroke.mm).with("d", text.text()).empty();
    }
    for (const auto& [mark, text] : of_pieces) {
      svg_.open("path");
      if (!mark.empty()) svg_.with("data-mark", mark);
      svg_.with("d", text.text()).empty();
    }
  }

  /// On a rim of white, so that a line that runs through it doesn't spoil it.
  void letterings(bool upright) {
    const auto is_its = [&](const Lettering& its) { return its.upright == upright; };
    if (std::none_of(picture_.letterings.begin(), picture_.letterings.end(), is_its)) return;
    svg_.open("g").with("class", upright ? "upright" : "level").with("text-anchor", "middle");
    if (upright) svg_.with("transform", "rotate(-90)");
    svg_.with("stroke", "#fff").with("stroke-width", "0.8").with("stroke-linejoin", "round");
    svg_.with("paint-order", "stroke").inside();
    for (const Lettering& lettering : picture_.letterings)
      if (is_its(lettering)) text(lettering);
    svg_.close();
  }

  void text(const Lettering& its) {
    const double x = zero_.u + its.at.u, y = zero_.v - its.at.v;
    svg_.open("text");
    svg_.with("x", paper_figure(its.upright ? -y : x)).with("y", paper_figure(its.upright ? x : y));
    if (its.size != kUsualSize) svg_.with("font-size", paper_figure(its.size));
    if (its.bold) svg_.with("font-weight", "bold");
    if (its.anchor != Anchor::middle)
      svg_.with("text-anchor", its.anchor == Anchor::start ? "start" : "end");
    if (!its.mark.empty()) svg_.with("data-mark", its.mark);
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
