#include "polyhedron.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "effort_spent.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();
// Of effort, beside that of two boxes compared.
constexpr std::size_t kOfFacetLookedAt = 4;
constexpr std::size_t kOfFacetMade = 40;
constexpr double kUpright = 1e-6;  // a face whose normal has less along an axis runs along it

double dot(const Spot& a, const Spot& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

Spot minus(const Spot& a, const Spot& b) {
  return {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
}

Spot cross(const Spot& a, const Spot& b) {
  return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

double size_of(const Spot& direction) {
  return std::sqrt(dot(direction, direction));
}

double along_axis(Length length) {
  return static_cast<double>(length.steps());
}

/// Which axis a plane is square to; 3 for none.
std::size_t level_axis(const HalfSpace& side) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (std::abs(side.normal[axis]) == 1.0) return axis;
  return 3;
}

/// How far a point lies beyond a plane; what touches it is on it.
double beyond(const Spot& spot, const HalfSpace& side) {
  const double far = dot(side.normal, spot) - side.offset;
  return std::abs(far) < kTouch ? 0 : far;
}

/// Where the edge between two corners goes through a plane. The same from either end.
Spot crossing(Spot a, Spot b, const HalfSpace& side) {
  if (b < a) std::swap(a, b);
  const double from = dot(side.normal, a) - side.offset;
  const double share = from / (from - (dot(side.normal, b) - side.offset));
  Spot spot;
  for (std::size_t axis = 0; axis < 3; ++axis)
    spot[axis] = a[axis] == b[axis] ? a[axis] : a[axis] + share * (b[axis] - a[axis]);
  if (const std::size_t level = level_axis(side); level < 3)
    spot[level] = side.normal[level] * side.offset;
  return spot;
}

/// Adds to `inside` the part of a polygon on one side of a plane; `rim` gets its corners on the
/// plane. Says whether there is more of it than what touches the plane.
bool clip(std::span<const Spot> corners, const HalfSpace& side, std::vector<Spot>& inside,
          std::vector<Spot>& rim) {
  bool more_than_edge = false;
  const double at_first = beyond(corners.front(), side);
  double at_here = at_first;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const bool last = i + 1 == corners.size();
    const Spot& here = corners[i];
    const Spot& next = last ? corners.front() : corners[i + 1];
    const double at_next = last ? at_first : beyond(next, side);
    if (at_here <= 0) inside.push_back(here);
    if (at_here == 0) rim.push_back(here);
    if (at_here < 0) more_than_edge = true;
    if (at_here * at_next < 0) {
      inside.push_back(crossing(here, next, side));
      rim.push_back(inside.back());
    }
    at_here = at_next;
  }
  return more_than_edge;
}

bool nearly(const Spot& a, const Spot& b) {
  return size_of(minus(a, b)) < kTouch;
}

Spot middle_of(std::span<const Spot> corners) {
  Spot sum{};
  for (const Spot& corner : corners)
    for (std::size_t axis = 0; axis < 3; ++axis)
      sum[axis] += corner[axis] / static_cast<double>(corners.size());
  return sum;
}

/// What rises with the angle from -180 to 180 degrees, without the cost of an angle.
double turn_of(double right, double up) {
  const double share = up / (std::abs(right) + std::abs(up));
  return right < 0 ? std::copysign(2 - std::abs(share), up) : share;
}

/// Puts the corners of a convex face, each once, in turn; none where there are less than three.
void put_in_turn(std::vector<Spot>& rim, const Spot& normal) {
  std::size_t count = 0;
  for (const Spot& spot : rim) {
    const auto end = rim.begin() + static_cast<std::ptrdiff_t>(count);
    if (std::none_of(rim.begin(), end, [&](const Spot& it) { return nearly(it, spot); }))
      rim[count++] = spot;
  }
  rim.resize(count < 3 ? 0 : count);
  if (rim.empty()) return;
  const Spot middle = middle_of(rim);
  const Spot right = minus(rim.front(), middle);
  const Spot up = cross(normal, right);
  std::vector<std::pair<double, Spot>> turns;
  turns.reserve(count);
  for (const Spot& spot : rim) {
    const Spot arm = minus(spot, middle);
    turns.emplace_back(turn_of(dot(arm, right), dot(arm, up)), spot);
  }
  std::sort(turns.begin(), turns.end(),
            [](const auto& a, const auto& b) { return a.first < b.first; });
  for (std::size_t i = 0; i < count; ++i)
    rim[i] = turns[i].second;
}

void note_bounds(Polyhedron& block) {
  block.low = {kFar, kFar, kFar};
  block.high = {-kFar, -kFar, -kFar};
  for (const Spot& corner : block.corners) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      block.low[axis] = std::min(block.low[axis], corner[axis]);
      block.high[axis] = std::max(block.high[axis], corner[axis]);
    }
  }
}

void add_face(Polyhedron& block, const HalfSpace& side, std::span<const Spot> corners) {
  block.facets.push_back({side, block.corners.size(), corners.size()});
  block.corners.insert(block.corners.end(), corners.begin(), corners.end());
}

/// How far the nearest and the farthest of something lie beyond a plane.
struct Range {
  double least = kFar;
  double most = -kFar;

  void note(double far) {
    least = std::min(least, far);
    most = std::max(most, far);
  }
  bool is_beyond() const { return least >= 0; }
  bool is_within() const { return most <= 0; }
};

Range range_beyond(const Polyhedron& block, const HalfSpace& side) {
  spend_effort(kOfFacetLookedAt * block.facets.size());
  Range range;
  for (const Spot& corner : block.corners)
    range.note(beyond(corner, side));
  return range;
}

/// The same of the box around a block, which lies no nearer and goes no further.
Range range_of_box(const Polyhedron& block, const HalfSpace& side) {
  spend_effort(1);
  Spot near{};
  Spot far{};
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const bool rises = side.normal[axis] >= 0;
    near[axis] = rises ? block.low[axis] : block.high[axis];
    far[axis] = rises ? block.high[axis] : block.low[axis];
  }
  return {beyond(near, side), beyond(far, side)};
}

/// How a block lies to a plane: the box around it mostly tells.
Range range_to(const Polyhedron& block, const HalfSpace& side) {
  const Range of_box = range_of_box(block, side);
  return of_box.is_beyond() || of_box.is_within() ? of_box : range_beyond(block, side);
}

HalfSpace opposite(const HalfSpace& side) {
  return {{-side.normal[0], -side.normal[1], -side.normal[2]}, -side.offset};
}

/// The way out of an outline over one edge of it, `inner` being within.
Spot way_out(const Spot& a, const Spot& b, const Spot& inner, std::size_t along) {
  const std::size_t u = along == 0 ? 1 : 0;
  const std::size_t v = along == 2 ? 1 : 2;
  const double run = std::hypot(b[u] - a[u], b[v] - a[v]);
  Spot normal{};
  normal[u] = (b[v] - a[v]) / run;
  normal[v] = (a[u] - b[u]) / run;
  if (dot(normal, minus(inner, a)) - normal[along] * (inner[along] - a[along]) > 0)
    normal = {-normal[0], -normal[1], -normal[2]};
  return normal;
}

/// Puts an upright face over one edge of an outline, with `inner` on its wood's side.
void add_side(Polyhedron& block, const Spot& a, const Spot& b, const Spot& inner, std::size_t along,
              double from, double to) {
  const Spot normal = way_out(a, b, inner, along);
  std::array<Spot, 4> corners{a, b, b, a};
  for (std::size_t i = 0; i < corners.size(); ++i)
    corners[i][along] = i < 2 ? from : to;
  add_face(block, {normal, dot(normal, corners.front())}, corners);
}

void add_cap(Polyhedron& block, std::span<const Spot> outline, std::size_t along, double place,
             double outwards) {
  Spot normal{};
  normal[along] = outwards;
  add_face(block, {normal, outwards * place}, outline);
  for (std::size_t i = block.corners.size() - outline.size(); i < block.corners.size(); ++i)
    block.corners[i][along] = place;
}

/// Whether two corners of an outline are further apart than what touches.
bool is_edge(const Spot& a, const Spot& b, std::size_t along) {
  Spot edge = minus(b, a);
  edge[along] = 0;
  return size_of(edge) >= kTouch;
}

}  // namespace

bool apart(const Polyhedron& a, const Polyhedron& b) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (a.high[axis] <= b.low[axis] || b.high[axis] <= a.low[axis]) return true;
  return false;
}

Polyhedron upright(std::span<const Spot> outline, std::size_t along, double from, double to) {
  spend_effort(kOfFacetMade * (outline.size() + 2));
  Polyhedron block;
  block.facets.reserve(outline.size() + 2);
  block.corners.reserve(outline.size() * 6);
  add_cap(block, outline, along, from, -1);
  add_cap(block, outline, along, to, 1);
  const Spot inner = middle_of(outline);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot& next = outline[(i + 1) % outline.size()];
    if (is_edge(outline[i], next, along)) add_side(block, outline[i], next, inner, along, from, to);
  }
  note_bounds(block);
  return block;
}

Polyhedron polyhedron_of(const Box& box) {
  Spot low;
  Spot high;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    low[axis] = along_axis(box.low[axis]);
    high[axis] = along_axis(box.high[axis]);
  }
  const std::array<Spot, 4> outline{Spot{low[0], low[1], 0}, Spot{high[0], low[1], 0},
                                    Spot{high[0], high[1], 0}, Spot{low[0], high[1], 0}};
  return upright(outline, 2, low[2], high[2]);
}

namespace {

/// An edge of a prism's outline with its corners in the order of their u.
struct Edge {
  Corner left, right;

  double height_at(Length u) const {
    const double share = along_axis(u - left.u) / along_axis(right.u - left.u);
    if (u == right.u) return along_axis(right.v);
    return along_axis(left.v) + share * along_axis(right.v - left.v);
  }
};

/// The edges over a strip of u, lowest first: the void lies between the first and the second, the
/// third and the fourth, and so on.
std::vector<Edge> edges_over(const std::vector<Corner>& outline, Length from, Length to) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    Edge edge{outline[i], outline[(i + 1) % outline.size()]};
    if (edge.right.u < edge.left.u) std::swap(edge.left, edge.right);
    if (edge.left.u <= from && to <= edge.right.u) edges.push_back(edge);
  }
  const auto middle = [&](const Edge& it) { return it.height_at(from) + it.height_at(to); };
  std::sort(edges.begin(), edges.end(),
            [&](const Edge& a, const Edge& b) { return middle(a) < middle(b); });
  return edges;
}

Polyhedron strip(const Prism& prism, Length from, Length to, const Edge& low, const Edge& high) {
  const std::size_t u = prism.along == 0 ? 1 : 0;
  const std::size_t v = prism.along == 2 ? 1 : 2;
  std::vector<Spot> outline;
  const auto add = [&](Length place, double height) {
    Spot spot{};
    spot[u] = along_axis(place);
    spot[v] = height;
    if (outline.empty() || !nearly(outline.back(), spot)) outline.push_back(spot);
  };
  add(from, low.height_at(from));
  add(to, low.height_at(to));
  add(to, high.height_at(to));
  add(from, high.height_at(from));
  if (nearly(outline.front(), outline.back())) outline.pop_back();
  return upright(outline, prism.along, along_axis(prism.from), along_axis(prism.to));
}

}  // namespace

std::vector<Polyhedron> polyhedra_of(const Prism& prism) {
  std::vector<Length> lines;
  for (const Corner& corner : prism.outline)
    lines.push_back(corner.u);
  std::sort(lines.begin(), lines.end());
  lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
  std::vector<Polyhedron> polyhedra;
  for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
    const std::vector<Edge> edges = edges_over(prism.outline, lines[i], lines[i + 1]);
    for (std::size_t low = 0; low + 1 < edges.size(); low += 2)
      polyhedra.push_back(strip(prism, lines[i], lines[i + 1], edges[low], edges[low + 1]));
  }
  return polyhedra;
}

namespace {

/// The part of a block on one side of a plane that goes through it; nothing where all that goes
/// beyond it is a sliver.
std::optional<Polyhedron> cut_off(const Polyhedron& block, const HalfSpace& side) {
  spend_effort(kOfFacetMade * block.facets.size());
  Polyhedron part;
  part.facets.reserve(block.facets.size() + 1);
  part.corners.reserve(block.corners.size() + 2 * block.facets.size());
  std::vector<Spot> rim;
  rim.reserve(2 * block.facets.size());
  for (const Facet& facet : block.facets) {
    const std::size_t first = part.corners.size();
    const bool more_than_edge = clip(block.corners_of(facet), side, part.corners, rim);
    const std::size_t count = part.corners.size() - first;
    if (count >= 3 && more_than_edge)
      part.facets.push_back({facet.side, first, count});
    else
      part.corners.resize(first);
  }
  put_in_turn(rim, side.normal);
  if (rim.empty()) return {};
  add_face(part, side, rim);
  note_bounds(part);
  return part;
}

}  // namespace

std::optional<Polyhedron> common(const Polyhedron& a, const Polyhedron& b) {
  if (apart(a, b)) return {};
  std::optional<Polyhedron> cut;
  const Polyhedron* both = &a;
  for (const Facet& facet : b.facets) {
    const Range range = range_to(*both, facet.side);
    if (range.is_beyond()) return {};
    if (range.is_within()) continue;
    cut = cut_off(*both, facet.side);
    if (!cut) return {};
    both = &*cut;
  }
  return cut ? std::move(cut) : std::optional(a);
}

void add_rest(std::vector<Polyhedron>& rest, Polyhedron block, const Polyhedron& cut) {
  if (apart(block, cut)) {
    rest.push_back(std::move(block));
    return;
  }
  const std::size_t before = rest.size();
  std::optional<Polyhedron> left;
  const Polyhedron* inside = &block;
  for (const Facet& facet : cut.facets) {
    const Range range = range_to(*inside, facet.side);
    if (range.is_within()) continue;
    std::optional<Polyhedron> within;
    if (!range.is_beyond()) within = cut_off(*inside, facet.side);
    if (!within) {  // the two have nothing in common
      rest.resize(before);
      rest.push_back(std::move(block));
      return;
    }
    if (auto outside = cut_off(*inside, opposite(facet.side))) rest.push_back(std::move(*outside));
    left = std::move(within);
    inside = &*left;
  }
}

Box bounds_of(const Prism& prism) {
  const std::size_t u = prism.along == 0 ? 1 : 0;
  const std::size_t v = prism.along == 2 ? 1 : 2;
  Box box;
  box.low[prism.along] = prism.from;
  box.high[prism.along] = prism.to;
  box.low[u] = box.high[u] = prism.outline.front().u;
  box.low[v] = box.high[v] = prism.outline.front().v;
  for (const Corner& corner : prism.outline) {
    box.low[u] = std::min(box.low[u], corner.u);
    box.high[u] = std::max(box.high[u], corner.u);
    box.low[v] = std::min(box.low[v], corner.v);
    box.high[v] = std::max(box.high[v], corner.v);
  }
  return box;
}

Box bounds_of(const Polyhedron& block) {
  Box box;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    box.low[axis] = nearest_step(block.low[axis]);
    box.high[axis] = nearest_step(block.high[axis]);
  }
  return box;
}

Length least_width(const Polyhedron& block) {
  double least = kFar;
  for (const Facet& facet : block.facets)
    least = std::min(least, -range_beyond(block, facet.side).least);
  return nearest_step(least);
}

double volume_of(const Polyhedron& block) {
  const Spot inner = middle_of(std::array{block.low, block.high});
  double volume = 0;
  for (const Facet& facet : block.facets) {
    const std::span<const Spot> corners = block.corners_of(facet);
    const Spot& first = corners.front();
    const double height = std::abs(dot(facet.side.normal, minus(first, inner)));
    Spot twice{};
    for (std::size_t i = 1; i + 1 < corners.size(); ++i) {
      const Spot part = cross(minus(corners[i], first), minus(corners[i + 1], first));
      for (std::size_t axis = 0; axis < 3; ++axis)
        twice[axis] += part[axis];
    }
    volume += height * size_of(twice) / 6;
  }
  constexpr double kStep = 1.0 / static_cast<double>(Length::kStepsPerMm);
  return volume * kStep * kStep * kStep;
}

std::vector<Polyhedron> shadows_of(const Polyhedron& block, std::size_t axis, double from,
                                   double to) {
  std::vector<Polyhedron> shadows;
  for (const Facet& facet : block.facets)
    if (facet.side.normal[axis] > kUpright)
      shadows.push_back(upright(block.corners_of(facet), axis, from, to));
  return shadows;
}

namespace {

/// Where a face's plane lies along an axis, over a point.
double height_of(const Polyhedron& block, const Facet& facet, const Spot& over, std::size_t axis) {
  const Spot& corner = block.corners[facet.first];
  const Spot arm = minus(corner, over);
  const Spot& normal = facet.side.normal;
  const double level = dot(normal, arm) - normal[axis] * arm[axis];
  return corner[axis] + level / normal[axis];
}

/// A flat face as seen along an axis.
struct Seen {
  const Facet* facet;
  Spot low, high;                // of its outline
  std::vector<Spot> outline;     // once it is asked for, as the next
  std::vector<HalfSpace> sides;  // of the outline
};

Seen seen_along(const Polyhedron& block, const Facet& facet) {
  spend_effort(kOfFacetLookedAt * facet.count);
  Seen seen{&facet, {kFar, kFar, kFar}, {-kFar, -kFar, -kFar}, {}, {}};
  for (const Spot& corner : block.corners_of(facet)) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      seen.low[axis] = std::min(seen.low[axis], corner[axis]);
      seen.high[axis] = std::max(seen.high[axis], corner[axis]);
    }
  }
  return seen;
}

const std::vector<Spot>& outline_of(Seen& seen, const Polyhedron& block, std::size_t along) {
  if (!seen.outline.empty()) return seen.outline;
  const std::span<const Spot> corners = block.corners_of(*seen.facet);
  seen.outline.assign(corners.begin(), corners.end());
  for (Spot& corner : seen.outline)
    corner[along] = 0;
  return seen.outline;
}

const std::vector<HalfSpace>& sides_of(Seen& seen, const Polyhedron& block, std::size_t along) {
  if (!seen.sides.empty()) return seen.sides;
  const std::vector<Spot>& outline = outline_of(seen, block, along);
  const Spot inner = middle_of(outline);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot& here = outline[i];
    const Spot& next = outline[(i + 1) % outline.size()];
    if (!is_edge(here, next, along)) continue;
    const Spot normal = way_out(here, next, inner, along);
    seen.sides.push_back({normal, dot(normal, here)});
  }
  return seen.sides;
}

/// Those faces of a block that look along an axis, or against it, as seen along it.
std::vector<Seen> faces_along(const Polyhedron& block, std::size_t axis, double sign) {
  std::vector<Seen> faces;
  for (const Facet& facet : block.facets)
    if (sign * facet.side.normal[axis] > kUpright) faces.push_back(seen_along(block, facet));
  return faces;
}

/// The corners of what two faces have in common as seen; none where that is a line or less.
std::vector<Spot> common_outline(std::vector<Spot> both,
                                 const std::vector<HalfSpace>& sides_of_other) {
  std::vector<Spot> inside;
  std::vector<Spot> rim;
  for (const HalfSpace& side : sides_of_other) {
    spend_effort(kOfFacetLookedAt);
    Range range;
    for (const Spot& corner : both)
      range.note(beyond(corner, side));
    if (range.is_beyond()) return {};
    if (range.is_within()) continue;
    inside.clear();
    rim.clear();
    clip(both, side, inside, rim);
    both.swap(inside);
    if (std::all_of(rim.begin(), rim.end(),
                    [&](const Spot& it) { return nearly(it, rim.front()); }))
      return {};
  }
  return both;
}

/// Whether one face may lie over another as seen along an axis.
bool may_be_seen(const Seen& facet, const Seen& shadow, std::size_t along) {
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (axis == along) continue;
    if (facet.high[axis] <= shadow.low[axis] || shadow.high[axis] <= facet.low[axis]) return false;
  }
  return true;
}

}  // namespace

double least_possible_gap(const Polyhedron& from, const Polyhedron& to, Way way) {
  spend_effort(kOfFacetLookedAt * (from.facets.size() + to.facets.size()));
  const double sign = way.upwards ? 1 : -1;
  const std::size_t u = way.axis == 0 ? 1 : 0;
  const std::size_t v = 3 - way.axis - u;
  std::array<Spot, 4> over{};
  for (std::size_t i = 0; i < over.size(); ++i) {
    over[i][u] = i % 2 == 0 ? std::max(from.low[u], to.low[u]) : std::min(from.high[u], to.high[u]);
    over[i][v] = i < 2 ? std::max(from.low[v], to.low[v]) : std::min(from.high[v], to.high[v]);
  }
  double bound = -kFar;
  for (const Facet& front : from.facets) {
    if (sign * front.side.normal[way.axis] <= kUpright) continue;
    for (const Facet& wall : to.facets) {
      if (sign * wall.side.normal[way.axis] >= -kUpright) continue;
      double nearest = kFar;
      for (const Spot& spot : over)
        nearest = std::min(nearest, sign * (height_of(to, wall, spot, way.axis) -
                                            height_of(from, front, spot, way.axis)));
      bound = std::max(bound, nearest);
    }
  }
  return bound;
}

std::optional<Length> gap(const Polyhedron& from, const Polyhedron& to, Way way) {
  const double sign = way.upwards ? 1 : -1;
  const auto height = [&](const Polyhedron& block, const Facet& facet, const Spot& over) {
    return sign * height_of(block, facet, over, way.axis);
  };
  // The far side of `to` over a point: the least of the planes that face on.
  const auto far_side = [&](const Spot& over) {
    double least = kFar;
    for (const Facet& facet : to.facets)
      if (sign * facet.side.normal[way.axis] > kUpright)
        least = std::min(least, height(to, facet, over));
    return least;
  };
  std::optional<double> least;
  bool goes_on = false;
  std::vector<Seen> walls = faces_along(to, way.axis, -sign);
  for (Seen& front : faces_along(from, way.axis, sign)) {
    for (Seen& wall : walls) {
      if (!may_be_seen(wall, front, way.axis)) continue;
      for (const Spot& over :
           common_outline(outline_of(front, from, way.axis), sides_of(wall, to, way.axis))) {
        const double from_there = height(from, *front.facet, over);
        const double distance = height(to, *wall.facet, over) - from_there;
        goes_on = goes_on || far_side(over) > from_there + kTouch;
        if (!least || distance < *least) least = distance;
      }
    }
  }
  if (!least || !goes_on) return {};
  return nearest_step(*least);
}

}  // namespace haunch
