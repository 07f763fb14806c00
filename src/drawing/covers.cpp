#include "covers.h"

#include <algorithm>
#include <cmath>

#include "effort_spent.h"
#include "spots.h"

namespace haunch {
namespace {

// In millimetres. Places are good to 0.0000001.
constexpr double kHair = 0.00002;  // what is no farther beside an outline lies on it
constexpr double kSkin = 0.001;    // what is no deeper than this behind a face lies in it
constexpr double kCrack = 0.002;   // what is no longer is not drawn by itself

constexpr double kEdgeOn = 1e-6;  // a face that is turned away from edge-on by less

double cross(const ViewSpot& origin, const ViewSpot& a, const ViewSpot& b) {
  return (a.u - origin.u) * (b.v - origin.v) - (a.v - origin.v) * (b.u - origin.u);
}

/// The corners of the least convex outline round some spots, counter-clockwise.
std::vector<ViewSpot> outline_of(std::vector<ViewSpot> spots) {
  std::sort(spots.begin(), spots.end(), [](const ViewSpot& a, const ViewSpot& b) {
    return a.u < b.u || (a.u == b.u && a.v < b.v);
  });
  std::vector<ViewSpot> outline;
  const auto go_along = [&](auto begin, auto end) {
    const std::size_t first = outline.size();
    for (auto it = begin; it != end; ++it) {
      while (outline.size() > first + 1 &&
             cross(outline[outline.size() - 2], outline.back(), *it) <= 0)
        outline.pop_back();
      outline.push_back(*it);
    }
    outline.pop_back();
  };
  go_along(spots.begin(), spots.end());
  go_along(spots.rbegin(), spots.rend());
  return outline;
}

/// Leaves of a part what lies where a + b * share <= 0.
void clip(LinePart& part, double a, double b) {
  const double from = a + b * part.from;
  const double to = a + b * part.to;
  if (from > 0 && to > 0)
    part.to = part.from;
  else if (from > 0)
    part.from = std::min(-a / b, part.to);
  else if (to > 0)
    part.to = std::max(-a / b, part.from);
}

}  // namespace

std::vector<LinePart> joined(std::vector<LinePart> parts, double crack) {
  std::sort(parts.begin(), parts.end(),
            [](const LinePart& a, const LinePart& b) { return a.from < b.from; });
  std::vector<LinePart> all;
  for (const LinePart& part : parts) {
    if (all.empty() || part.from > all.back().to + crack)
      all.push_back(part);
    else
      all.back().to = std::max(all.back().to, part.to);
  }
  return all;
}

std::vector<LinePart> rest_of(LinePart line, const std::vector<LinePart>& parts) {
  std::vector<LinePart> rest;
  for (const LinePart& part : parts) {
    if (part.from > line.from) rest.push_back({line.from, std::min(part.from, line.to)});
    line.from = std::max(line.from, part.to);
    if (line.from >= line.to) return rest;
  }
  rest.push_back(line);
  return rest;
}

SeenSpot Viewer::see(const Spot& spot) const {
  constexpr double kSteps = Length::kStepsPerMm;
  return {seen_at(sight_, spot), dot(sight_.towards, spot) / kSteps};
}

double Viewer::faces(const Spot& normal) const {
  return dot(sight_.towards, normal) / size_of(sight_.towards);
}

Viewer::Slope Viewer::slope_of(const Spot& normal, const SeenSpot& corner) const {
  // The three directions of a sight stand at right angles, so that each part of a normal is told by
  // one of them.
  const auto part = [&](const Spot& direction) {
    return dot(direction, normal) / dot(direction, direction);
  };
  const double near = part(sight_.towards);
  const double by_u = -part(sight_.right) / near;
  const double by_v = -part(sight_.up) / near;
  return {corner.near - by_u * corner.at.u - by_v * corner.at.v, by_u, by_v};
}

/// A line as it is looked along: what every test of it asks.
struct Covers::Line {
  SeenSpot from;
  double u, v, near;  // to its end
  double length;      // as seen
  ViewSpot low, high;
  double farthest;

  Line(const SeenSpot& a, const SeenSpot& b)
      : from(a),
        u(b.at.u - a.at.u),
        v(b.at.v - a.at.v),
        near(b.near - a.near),
        length(std::hypot(u, v)),
        low{std::min(a.at.u, b.at.u), std::min(a.at.v, b.at.v)},
        high{std::max(a.at.u, b.at.u), std::max(a.at.v, b.at.v)},
        farthest(std::min(a.near, b.near)) {}
};

Covers::Covers(std::span<const DrawnWood> woods, const Viewer& viewer) {
  for (const DrawnWood& drawn : woods) {
    for (const Box& box : drawn.wood.boxes)
      add(polyhedron_of(box), viewer);
    for (const Polyhedron& block : drawn.wood.sloping)
      add(block, viewer);
  }
  std::stable_sort(covers_.begin(), covers_.end(),
                   [](const Cover& a, const Cover& b) { return a.nearest > b.nearest; });
}

void Covers::add(const Polyhedron& block, const Viewer& viewer) {
  std::vector<ViewSpot> spots;
  Cover cover{{}, {}, viewer.see(block.corners.front()).near, sides_.size(), 0, slopes_.size(), 0};
  for (const Spot& corner : block.corners) {
    const SeenSpot seen = viewer.see(corner);
    spots.push_back(seen.at);
    cover.nearest = std::max(cover.nearest, seen.near);
  }
  const std::vector<ViewSpot> outline = outline_of(std::move(spots));
  cover.low = cover.high = outline.front();
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const ViewSpot& a = outline[i];
    const ViewSpot& b = outline[(i + 1) % outline.size()];
    cover.low = {std::min(cover.low.u, a.u), std::min(cover.low.v, a.v)};
    cover.high = {std::max(cover.high.u, a.u), std::max(cover.high.v, a.v)};
    const double length = std::hypot(b.u - a.u, b.v - a.v);
    const double out_u = (b.v - a.v) / length;
    const double out_v = (a.u - b.u) / length;
    sides_.push_back({out_u, out_v, out_u * a.u + out_v * a.v});
  }
  for (const Facet& facet : block.facets)
    if (viewer.faces(facet.side.normal) > kEdgeOn)
      slopes_.push_back(
          viewer.slope_of(facet.side.normal, viewer.see(block.corners_of(facet).front())));
  cover.sides_end = sides_.size();
  cover.slopes_end = slopes_.size();
  covers_.push_back(cover);
}

LinePart Covers::behind(const Cover& cover, const Line& line) const {
  LinePart part{0, 1};
  for (std::size_t i = cover.slopes; i < cover.slopes_end && part.from < part.to; ++i) {
    const Viewer::Slope& slope = slopes_[i];
    clip(part,
         line.from.near + kSkin -
             (slope.near + slope.by_u * line.from.at.u + slope.by_v * line.from.at.v),
         line.near - slope.by_u * line.u - slope.by_v * line.v);
  }
  return part;
}

LinePart Covers::inside(const Cover& cover, const Line& line, LinePart part) const {
  for (std::size_t i = cover.sides; i < cover.sides_end && part.from < part.to; ++i) {
    const Side& side = sides_[i];
    clip(part, side.u * line.from.at.u + side.v * line.from.at.v - side.offset - kHair,
         side.u * line.u + side.v * line.v);
  }
  return part;
}

std::vector<LinePart> Covers::hidden(const SeenSpot& from, const SeenSpot& to) const {
  const Line line(from, to);
  std::vector<LinePart> parts;
  spend_effort(covers_.size());
  for (const Cover& cover : covers_) {
    if (cover.nearest < line.farthest + kSkin) break;
    if (cover.low.u > line.high.u + kHair || cover.high.u < line.low.u - kHair ||
        cover.low.v > line.high.v + kHair || cover.high.v < line.low.v - kHair)
      continue;
    const LinePart part = inside(cover, line, behind(cover, line));
    if (part.from < part.to) parts.push_back(part);
  }
  return joined(std::move(parts), kCrack / line.length);
}

}  // namespace haunch
