#include "noted_view.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace haunch {
namespace {

constexpr double kFromView = 3.5;  // the first chain, from the view
constexpr double kBetween = 1.6;   // chains
constexpr double kFromObject = 1;  // where its lines begin
constexpr std::size_t kMostPlaces = 40;
constexpr double kSideWord = 2.8;
constexpr double kTitle = 3.5, kWordSize = 2.8, kWordLine = 3.9;

std::size_t number_of(Axis axis) {
  return static_cast<std::size_t>(axis);
}

/// Whether a dimension, or a line to it, runs through lettering there.
bool is_crossed(const Picture& picture, const Extent& lettering) {
  for (const Stroke& stroke : picture.strokes) {
    if (stroke.pen != Pen::thin && stroke.pen != Pen::tick) continue;
    for (const SpotRun& run : stroke.runs)
      for (std::size_t i = 1; i < run.size(); ++i)
        if (overlap(around(Extent{run[i - 1], run[i - 1]}, Extent{run[i], run[i]}), lettering))
          return true;
  }
  return false;
}

}  // namespace

NotedView::NotedView(const LineView& view, const Assembly& wood, const Sight& sight,
                     PaperScale scale, const LengthPrinter& lengths)
    : wood_(wood),
      sight_(sight),
      scale_(scale),
      lengths_(lengths),
      picture_(picture_of(view, wood, scale)) {
  view_ = extent_of(picture_).value_or(Extent());
  taken_ = view_;
  for (const ViewLine& line : view.lines)
    if (line.of != LineOf::broken)
      for (const ViewSpot& end : {line.from, line.to})
        ends_.push_back(scale.on_paper(end));
}

ViewSpot NotedView::paper(const Triple& place) const {
  return scale_.on_paper(seen_at(sight_, place));
}

Extent NotedView::paper(const Box& box) const {
  const ViewSpot a = paper(box.low), b = paper(box.high);
  return around(Extent{a, a}, Extent{b, b});
}

bool NotedView::runs_level(Axis axis) const {
  return sight_.right[number_of(axis)] != 0;
}

bool NotedView::shows(Axis axis) const {
  return runs_level(axis) || sight_.up[number_of(axis)] != 0;
}

double NotedView::along(Axis axis, Length at) const {
  Triple place;
  place[number_of(axis)] = at;
  const ViewSpot spot = paper(place);
  return runs_level(axis) ? spot.u : spot.v;
}

bool NotedView::reaches(Axis axis, Length at) const {
  constexpr double kNear = 0.01;
  const double place = along(axis, at);
  const Extent drawn = grown(view_, kNear);
  return runs_level(axis) ? drawn.low.u < place && place < drawn.high.u
                          : drawn.low.v < place && place < drawn.high.v;
}

bool NotedView::has_end_at(Axis axis, Length at) const {
  constexpr double kNear = 0.003;
  const double place = along(axis, at);
  return std::any_of(ends_.begin(), ends_.end(), [&](const ViewSpot& end) {
    return std::abs((runs_level(axis) ? end.u : end.v) - place) < kNear;
  });
}

void NotedView::chain(PaperSide side, Axis axis, std::vector<Length> places) {
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  // More than a sheet has room for, as of a deep drawer's tails: words tell them.
  if (places.size() > kMostPlaces) places = {places.front(), places.back()};
  if (places.size() < 2 || !told_.insert({axis, places}).second) return;
  DimensionChain chain;
  chain.upright = !runs_level(axis);
  for (std::size_t i = 0; i < places.size(); ++i) {
    chain.places.push_back(along(axis, places[i]));
    if (i > 0) chain.links.push_back(places[i] - places[i - 1]);
  }
  if (chain.places.front() > chain.places.back()) {
    std::reverse(chain.places.begin(), chain.places.end());
    std::reverse(chain.links.begin(), chain.links.end());
  }
  stack(side, chain);
}

void NotedView::keep_clear() {
  taken_ = extent_of(picture_).value_or(Extent());
}

void NotedView::stack(PaperSide side, const DimensionChain& chain) {
  const bool outside_is_below = side == PaperSide::below || side == PaperSide::right;
  const DrawnChain drawn =
      draw_chain(chain, lengths_, outside_is_below ? TightFigures::below : TightFigures::above);
  constexpr double kStep = 2, kFarthest = 40;
  double apart = chained_.insert(side).second ? kFromView : kBetween;
  const auto spot = [&] {
    const double line = line_of(side, drawn, apart);
    return chain.upright ? ViewSpot{line, 0} : ViewSpot{0, line};
  };
  while (apart < kFarthest && !has_room_for(drawn.picture, spot()))
    apart += kStep;
  const double line = line_of(side, drawn, apart);
  reach_out(side, chain, line);
  picture_.add(drawn.picture, spot());
  taken_ = around(taken_, extent_on(side, drawn, line));
}

/// Where its line lies, so that it is so far from all that stands there.
double NotedView::line_of(PaperSide side, const DrawnChain& drawn, double apart) const {
  switch (side) {
    case PaperSide::below:
      return taken_.low.v - apart - drawn.above;
    case PaperSide::left:
      return taken_.low.u - apart - drawn.below;
    case PaperSide::above:
      return taken_.high.v + apart + drawn.below;
    case PaperSide::right:
      break;
  }
  return taken_.high.u + apart + drawn.above;
}

/// How far out a chain reaches on its side.
Extent NotedView::extent_on(PaperSide side, const DrawnChain& drawn, double line) const {
  Extent extent = taken_;
  switch (side) {
    case PaperSide::below:
      extent.low.v = line - drawn.below;
      break;
    case PaperSide::left:
      extent.low.u = line - drawn.above;
      break;
    case PaperSide::above:
      extent.high.v = line + drawn.above;
      break;
    case PaperSide::right:
      extent.high.u = line + drawn.below;
      break;
  }
  return extent;
}

/// Whether none of its figures would lie on what is written already.
bool NotedView::has_room_for(const Picture& chain, const ViewSpot& at) const {
  return std::all_of(chain.letterings.begin(), chain.letterings.end(),
                     [&](const auto& figure) { return is_free(moved(extent_of(figure), at)); });
}

/// Lines from the view to the chain.
void NotedView::reach_out(PaperSide side, const DimensionChain& chain, double line) {
  const bool beyond = side == PaperSide::above || side == PaperSide::right;
  const double way = beyond ? 1 : -1;
  const double edge = side == PaperSide::below   ? view_.low.v
                      : side == PaperSide::left  ? view_.low.u
                      : side == PaperSide::above ? view_.high.v
                                                 : view_.high.u;
  for (const double place : chain.places) {
    const double from = edge + way * kFromObject, to = line + way * kPastChain;
    for (const LinePart& part :
         beside_figures(chain.upright, place, {std::min(from, to), std::max(from, to)}))
      if (chain.upright)
        picture_.line(Pen::thin, {part.from, place}, {part.to, place});
      else
        picture_.line(Pen::thin, {place, part.from}, {place, part.to});
  }
}

/// What is left of a line where it would strike through what is written.
std::vector<LinePart> NotedView::beside_figures(bool level, double place, LinePart line) const {
  std::vector<LinePart> written;
  for (const Lettering& lettering : picture_.letterings) {
    const auto& [low, high] = extent_of(lettering);
    if (level ? low.v < place && place < high.v : low.u < place && place < high.u)
      written.push_back(level ? LinePart{low.u, high.u} : LinePart{low.v, high.v});
  }
  std::sort(written.begin(), written.end(),
            [](const LinePart& a, const LinePart& b) { return a.from < b.from; });
  return rest_of(line, joined(std::move(written), 0.5));
}

void NotedView::letter_beside(PaperSide side, const std::string& word) {
  const bool beside = side == PaperSide::left || side == PaperSide::right;
  const bool beyond = side == PaperSide::right || side == PaperSide::above;
  Lettering lettering{{}, word, kSideWord};
  lettering.upright = beside;
  std::vector<ViewSpot> places;
  for (const double off : {1.0, 5.0})
    for (const double part : {0.5, 0.3, 0.7, 0.15, 0.85}) {
      const double u = view_.low.u + view_.width() * part;
      const double v = view_.low.v + view_.height() * part;
      const double letters = kSideWord * 0.75;
      if (beside)
        places.push_back({beyond ? view_.high.u + off + letters : view_.low.u - off, v});
      else
        places.push_back({u, beyond ? view_.high.v + off : view_.low.v - off - letters});
    }
  std::stable_partition(places.begin(), places.end(), [&](const ViewSpot& place) {
    lettering.at = place;
    return !is_crossed(picture_, extent_of(lettering));
  });
  letter(lettering, places);
}

bool NotedView::is_free(const Extent& extent) const {
  return std::none_of(picture_.letterings.begin(), picture_.letterings.end(),
                      [&](const Lettering& other) { return overlap(extent_of(other), extent); }) &&
         std::none_of(reserved_.begin(), reserved_.end(),
                      [&](const Extent& other) { return overlap(other, extent); });
}

bool NotedView::letter(Lettering lettering, const std::vector<ViewSpot>& places) {
  for (const ViewSpot& place : places) {
    lettering.at = place;
    if (!is_free(grown(extent_of(lettering), 0.3))) continue;
    picture_.letterings.push_back(std::move(lettering));
    return true;
  }
  return false;
}

Picture titled(const Picture& picture, const TitleWords& words, double width) {
  const Extent extent = extent_of(picture).value_or(Extent());
  Picture over;
  double down = 0;
  double start = 0;
  if (!words.letter.empty()) {
    Lettering letters{{}, words.letter + "-" + words.letter, kTitle + 0.7};
    letters.anchor = Anchor::start;
    letters.bold = true;
    start = width_of(letters) + 2;
    letters.text = words.letter + "\u2013" + words.letter;
    over.letterings.push_back(std::move(letters));
  }
  const double bolder = words.bold ? 1.25 : 1;
  for (const std::string& line : lettered_lines(words.title, kTitle * bolder, width - start)) {
    over.letterings.push_back({{start, down}, line, kTitle, Anchor::start, false, words.bold});
    down -= kTitle * 1.35;
  }
  for (const std::string& text : words.words)
    for (const std::string& line : lettered_lines(text, kWordSize, width)) {
      over.letterings.push_back({{0, down}, line, kWordSize, Anchor::start});
      down -= kWordLine;
    }
  Picture whole = picture;
  const double above = extent.high.v - down + 0.5;
  whole.add(over, {extent.low.u, above});
  return whole;
}

}  // namespace haunch
