#include "projection.h"

#include <cmath>

#include "covers.h"
#include "line_sum.h"

namespace haunch {
namespace {

constexpr double kShortest = 0.005;  // of a line as seen, in millimetres
constexpr double kFacing = 1e-9;

/// Whether an edge is drawn at all: within a curve only where one of its faces looks at the viewer
/// and the other does not. One between two faces that look away is never seen, unless it lies on an
/// outline, along which another edge runs then.
bool is_drawn(const DrawnEdge& edge, const Viewer& viewer, HiddenLines hidden) {
  const bool one = viewer.faces(edge.one.normal) > kFacing;
  const bool other = viewer.faces(edge.other.normal) > kFacing;
  if (edge.smooth) return one != other;
  return one || other || hidden == HiddenLines::drawn || edge.of != LineOf::seen;
}

ViewSpot at_share(const SeenSpot& from, const SeenSpot& to, double share) {
  return {from.at.u + share * (to.at.u - from.at.u), from.at.v + share * (to.at.v - from.at.v)};
}

/// Adds the seen and the hidden stretches of edges to a view's lines.
class Drawer {
 public:
  Drawer(std::span<const DrawnWood> woods, const Sight& sight, HiddenLines hidden)
      : viewer_(sight), covers_(woods, viewer_), hidden_(hidden) {}

  void draw(const DrawnWood& drawn) {
    for (const DrawnEdge& edge : drawn.edges)
      if (is_drawn(edge, viewer_, hidden_)) draw(edge, drawn.piece);
  }

  std::vector<ViewLine> take() { return std::move(lines_); }

 private:
  void draw(const DrawnEdge& edge, std::size_t piece) {
    const SeenSpot from = viewer_.see(edge.from);
    const SeenSpot to = viewer_.see(edge.to);
    if (std::hypot(to.at.u - from.at.u, to.at.v - from.at.v) < kShortest) return;
    const auto hidden = covers_.hidden(from, to);
    const auto add = [&](LineOf of, const LinePart& part) {
      lines_.push_back({of, at_share(from, to, part.from), at_share(from, to, part.to), piece});
    };
    for (const LinePart& part : rest_of({0, 1}, hidden))
      add(edge.of, part);
    if (hidden_ == HiddenLines::left_out || edge.of == LineOf::broken) return;
    for (const LinePart& part : hidden)
      add(LineOf::hidden, part);
  }

  Viewer viewer_;
  Covers covers_;
  HiddenLines hidden_;
  std::vector<ViewLine> lines_;
};

}  // namespace

LineView view_of(std::span<const DrawnWood> woods, const Sight& sight, HiddenLines hidden) {
  Drawer drawer(woods, sight, hidden);
  for (const DrawnWood& drawn : woods)
    drawer.draw(drawn);
  return {summed(drawer.take()), {}};
}

}  // namespace haunch
