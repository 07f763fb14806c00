// What is drawn on paper: strokes and lettering, in millimetres of it, u to the right and v up.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/length.h"
#include "line_view.h"
#include "text_width.h"

namespace haunch {

/// Kinds of lines (ISO 128).
enum class Pen : unsigned char {
  hatch,   // thin: what is cut
  grain,   // thin, in uneven strokes: long grain that is cut
  broken,  // thin, wavy: where wood goes on beyond what is drawn
  thin,    // dimensions, leaders
  hidden,  // thin, dashed
  moving,  // thin, dashed: where something swings or slides to
  chain,   // thin: centres, cutting planes
  frame,   // thick
  seen,    // thick
  cut,     // thick: outlines of what is cut
  tick,    // thick: ends of dimensions and of cutting planes
};
inline constexpr std::size_t kPens = 11;

using SpotRun = std::vector<ViewSpot>;

struct Stroke {
  Pen pen = Pen::thin;
  std::vector<SpotRun> runs;
  std::string mark = {};          // of the piece that it is of
  std::optional<Length> mm = {};  // what a dimension says
};

enum class Anchor : unsigned char { start, middle, end };

/// One line of words or figures.
struct Lettering {
  ViewSpot at;  // on its base line
  std::string text;
  double size = 3.5;
  Anchor anchor = Anchor::middle;
  bool upright = false;  // read from the right
  bool bold = false;
  std::string mark = {};  // of the piece that it names
};

struct Picture {
  std::vector<Stroke> strokes;
  std::vector<Lettering> letterings;

  /// Another, moved by `by`.
  void add(const Picture& other, ViewSpot by = {});
  void line(Pen pen, ViewSpot from, ViewSpot to);
};

/// How far a text may come out along its line in any usual face.
double width_of(const Lettering& lettering);

/// The room that lettering takes, whatever face it is shown in.
Extent extent_of(const Lettering& lettering);
/// Nothing of an empty one.
std::optional<Extent> extent_of(const Picture& picture);

Extent around(const Extent& a, const Extent& b);
Extent grown(const Extent& extent, double by);
bool overlap(const Extent& a, const Extent& b);
inline ViewSpot moved(ViewSpot spot, ViewSpot by) {
  return {spot.u + by.u, spot.v + by.v};
}
inline Extent moved(const Extent& extent, ViewSpot by) {
  return {moved(extent.low, by), moved(extent.high, by)};
}

/// Words broken into lines that are no wider than `width`.
std::vector<std::string> lettered_lines(const std::string& text, double size, double width,
                                        Letters letters = Letters::plain);

}  // namespace haunch
