#include "cut_marks.h"

#include <algorithm>
#include <array>
#include <utility>
#include <vector>

namespace haunch {
namespace {

constexpr double kLetterSize = 3.5;
constexpr double kToMiddle = kLetterSize * 0.36;  // from a letter's base line

/// At the first place that is free, or where none is at the first.
void letter_beside(NotedView& view, const std::string& letter, const std::vector<ViewSpot>& at) {
  Lettering text{at.front(), letter, kLetterSize};
  text.bold = true;
  if (!view.letter(text, at)) view.picture().letterings.push_back(std::move(text));
}

/// What of its region lies in the room.
Box marked_box(const LetteredCut& its, const Box& room) {
  Box box = its.cut.region.value_or(room);
  for (std::size_t axis = 0; axis < 3; ++axis) {
    box.low[axis] = std::max(box.low[axis], room.low[axis]);
    box.high[axis] = std::min(box.high[axis], room.high[axis]);
  }
  return box;
}

void mark_plane(NotedView& view, const LetteredCut& its, const Box& room) {
  constexpr double kBeyond = 2.4, kEnd = 3, kTurn = 2;
  const CutPlane& plane = its.cut.plane;
  const auto across_plane = static_cast<std::size_t>(plane.across);
  Box box = marked_box(its, room);
  box.low[across_plane] = box.high[across_plane] = plane.at;
  const Extent& drawn = view.extent();
  Extent line = view.paper(box);
  line.low = {std::max(line.low.u, drawn.low.u), std::max(line.low.v, drawn.low.v)};
  line.high = {std::min(line.high.u, drawn.high.u), std::min(line.high.v, drawn.high.v)};
  Triple far = box.low;
  far[across_plane] += Length::from_mm(plane.looks_upwards ? 100 : -100);
  const ViewSpot from = view.paper(box.low), to = view.paper(far);
  const bool level = !view.runs_level(plane.across);
  const double way_looked = level ? to.v - from.v : to.u - from.u;
  const double turn = way_looked > 0 ? kTurn : -kTurn;
  const auto spot = [&](double along, double across) {
    return level ? ViewSpot{along, line.low.v + across} : ViewSpot{line.low.u + across, along};
  };
  const double low = (level ? line.low.u : line.low.v) - kBeyond + kEnd;
  const double high = (level ? line.high.u : line.high.v) + kBeyond - kEnd;
  const std::array ends{std::pair{low, -kEnd}, std::pair{high, kEnd}};
  view.picture().line(Pen::chain, spot(low, 0), spot(high, 0));
  for (const auto& [end, past] : ends)
    view.picture().strokes.push_back(
        {Pen::tick, {{spot(end, 0), spot(end + past, 0), spot(end + past, turn)}}});
  std::vector<ViewSpot> places;
  const double aside = turn > 0 ? -2.6 : 2.6;
  for (const double across : {aside, aside * 1.6, -aside * 2, aside * 2.8, -aside * 3})
    for (const auto& [end, past] : ends)
      for (const double part : {0.5, 1.0, 0.0, 1.6, -0.7})
        places.push_back(moved(spot(end + past * part, across), {0, -kToMiddle}));
  letter_beside(view, its.letter, places);
}

void mark_region(NotedView& view, const LetteredCut& its, const Box& room) {
  const Extent extent = grown(view.paper(marked_box(its, room)), 0.8);
  const auto& [low, high] = extent;
  view.picture().strokes.push_back(
      {Pen::chain, {{low, {high.u, low.v}, high, {low.u, high.v}, low}}});
  std::vector<ViewSpot> places;
  for (const double v : {high.v + 0.9, low.v - 3.6, high.v - 3.4, low.v + 1})
    for (const double u : {high.u - 1.6, low.u + 1.6, (low.u + high.u) / 2})
      places.push_back({u, v});
  for (const double v : {high.v - 3, low.v + 0.6})
    for (const double u : {high.u + 2.2, low.u - 2.2})
      places.push_back({u, v});
  letter_beside(view, its.letter, places);
}

}  // namespace

void mark_cut(NotedView& view, const LetteredCut& cut, const Box& room) {
  if (view.shows(cut.cut.plane.across))
    mark_plane(view, cut, room);
  else if (cut.cut.region)
    mark_region(view, cut, room);
}

}  // namespace haunch
