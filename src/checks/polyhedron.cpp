#include "polyhedron.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "allowance.h"
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

/// The part of a polygon on one side of a plane; `rim` gets its corners on the plane.
std::vector<Spot> clipped(const std::vector<Spot>& corners, const HalfSpace& side,
                          std::vector<Spot>& rim) {
  std::vector<Spot> inside;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Spot& here = corners[i];
    const Spot& next = corners[(i + 1) % corners.size()];
    const double at_here = beyond(here, side);
    const double at_next = beyond(next, side);
    if (at_here <= 0) inside.push_back(here);
    if (at_here == 0) rim.push_back(here);
    if (at_here * at_next < 0) {
      inside.push_back(crossing(here, next, side));
      rim.push_back(inside.back());
    }
  }
  return inside;
}

bool nearly(const Spot& a, const Spot& b) {
  return size_of(minus(a, b)) < kTouch;
}

Spot middle_of(const std::vector<Spot>& corners) {
  Spot sum{};
  for (const Spot& corner : corners)
    for (std::size_t axis = 0; axis < 3; ++axis)
      sum[axis] += corner[axis] / static_cast<double>(corners.size());
  return sum;
}

/// The corners of a convex face, each once and in turn.
std::vector<Spot> in_turn(const std::vector<Spot>& rim, const Spot& normal) {
  std::vector<Spot> corners;
  for (const Spot& spot : rim)
    if (std::none_of(corners.begin(), corners.end(),
                     [&](const Spot& it) { return nearly(it, spot); }))
      corners.push_back(spot);
  if (corners.size() < 3) return {};
  const Spot middle = middle_of(corners);
  const Spot right = minus(corners.front(), middle);
  const Spot up = cross(normal, right);
  const auto turn = [&](const Spot& spot) {
    const Spot arm = minus(spot, middle);
    return std::atan2(dot(arm, up), dot(arm, right));
  };
  std::sort(corners.begin(), corners.end(),
            [&](const Spot& a, const Spot& b) { return turn(a) < turn(b); });
  return corners;
}

Polyhedron with_bounds(std::vector<Facet> facets) {
  Polyhedron block{std::move(facets), {kFar, kFar, kFar}, {-kFar, -kFar, -kFar}};
  for (const Facet& facet : block.facets) {
    for (const Spot& corner : facet.corners) {
      for (std::size_t axis = 0; axis < 3; ++axis) {
        block.low[axis] = std::min(block.low[axis], corner[axis]);
        block.high[axis] = std::max(block.high[axis], corner[axis]);
      }
    }
  }
  return block;
}

/// How far the nearest and the farthest corner lie beyond a plane.
std::pair<double, double> range_beyond(const Polyhedron& block, const HalfSpace& side) {
  spend_effort(kOfFacetLookedAt * block.facets.size());
  double least = kFar;
  double most = -kFar;
  for (const Facet& facet : block.facets) {
    for (const Spot& corner : facet.corners) {
      const double far = beyond(corner, side);
      least = std::min(least, far);
      most = std::max(most, far);
    }
  }
  return {least, most};
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

/// An upright facet over one edge of an outline, with `inner` on its wood's side.
Facet side_facet(const Spot& a, const Spot& b, const Spot& inner, std::size_t along, double from,
                 double to) {
  const Spot normal = way_out(a, b, inner, along);
  std::vector<Spot> corners{a, b, b, a};
  for (std::size_t i = 0; i < 4; ++i)
    corners[i][along] = i < 2 ? from : to;
  return {{normal, dot(normal, corners.front())}, std::move(corners)};
}

Facet cap(std::vector<Spot> outline, std::size_t along, double place, double outwards) {
  for (Spot& corner : outline)
    corner[along] = place;
  Spot normal{};
  normal[along] = outwards;
  return {{normal, outwards * place}, std::move(outline)};
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

Polyhedron upright(std::vector<Spot> outline, std::size_t along, double from, double to) {
  spend_effort(kOfFacetMade * (outline.size() + 2));
  std::vector<Facet> facets{cap(outline, along, from, -1), cap(outline, along, to, 1)};
  const Spot inner = middle_of(outline);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot& next = outline[(i + 1) % outline.size()];
    if (is_edge(outline[i], next, along))
      facets.push_back(side_facet(outline[i], next, inner, along, from, to));
  }
  return with_bounds(std::move(facets));
}

Polyhedron polyhedron_of(const Box& box) {
  Spot low;
  Spot high;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    low[axis] = along_axis(box.low[axis]);
    high[axis] = along_axis(box.high[axis]);
  }
  return upright(
      {{low[0], low[1], 0}, {high[0], low[1], 0}, {high[0], high[1], 0}, {low[0], high[1], 0}}, 2,
      low[2], high[2]);
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
  return upright(std::move(outline), prism.along, along_axis(prism.from), along_axis(prism.to));
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
  std::vector<Facet> facets;
  facets.reserve(block.facets.size() + 1);
  std::vector<Spot> rim;
  for (const Facet& facet : block.facets) {
    std::vector<Spot> corners = clipped(facet.corners, side, rim);
    const bool more_than_edge = std::any_of(corners.begin(), corners.end(),
                                            [&](const Spot& it) { return beyond(it, side) < 0; });
    if (corners.size() >= 3 && more_than_edge) facets.push_back({facet.side, std::move(corners)});
  }
  std::vector<Spot> corners = in_turn(rim, side.normal);
  if (corners.empty()) return {};
  facets.push_back({side, std::move(corners)});
  return with_bounds(std::move(facets));
}

}  // namespace

std::optional<Polyhedron> common(const Polyhedron& a, const Polyhedron& b) {
  if (apart(a, b)) return {};
  std::optional<Polyhedron> cut;
  const Polyhedron* both = &a;
  for (const Facet& facet : b.facets) {
    const auto [least, most] = range_beyond(*both, facet.side);
    if (least >= 0) return {};
    if (most <= 0) continue;
    cut = cut_off(*both, facet.side);
    if (!cut) return {};
    both = &*cut;
  }
  return cut ? std::move(cut) : std::optional(a);
}

std::vector<Polyhedron> less(Polyhedron block, const Polyhedron& cut) {
  if (!common(block, cut)) return {std::move(block)};
  std::vector<Polyhedron> rest;
  std::optional<Polyhedron> left = std::move(block);
  for (const Facet& facet : cut.facets) {
    if (range_beyond(*left, facet.side).second <= 0) continue;
    if (auto outside = cut_off(*left, opposite(facet.side))) rest.push_back(std::move(*outside));
    left = cut_off(*left, facet.side);
    if (!left) break;
  }
  return rest;
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
    least = std::min(least, -range_beyond(block, facet.side).first);
  return nearest_step(least);
}

double volume_of(const Polyhedron& block) {
  const Spot inner = middle_of({block.low, block.high});
  double volume = 0;
  for (const Facet& facet : block.facets) {
    const Spot& first = facet.corners.front();
    const double height = std::abs(dot(facet.side.normal, minus(first, inner)));
    Spot twice{};
    for (std::size_t i = 1; i + 1 < facet.corners.size(); ++i) {
      const Spot part = cross(minus(facet.corners[i], first), minus(facet.corners[i + 1], first));
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
      shadows.push_back(upright(facet.corners, axis, from, to));
  return shadows;
}

namespace {

/// Where a facet's plane lies along an axis, over a point.
double height_of(const Facet& facet, const Spot& over, std::size_t axis) {
  const Spot arm = minus(facet.corners.front(), over);
  const Spot& normal = facet.side.normal;
  const double level = dot(normal, arm) - normal[axis] * arm[axis];
  return facet.corners.front()[axis] + level / normal[axis];
}

/// A flat face as seen along an axis.
struct Seen {
  const Facet* facet;
  std::vector<Spot> outline;
  std::vector<HalfSpace> sides;  // of the outline, once they are asked for
  Spot low, high;                // of the outline
};

Seen seen_along(const Facet& facet, std::size_t along) {
  spend_effort(kOfFacetLookedAt * facet.corners.size());
  Seen seen{&facet, facet.corners, {}, {kFar, kFar, kFar}, {-kFar, -kFar, -kFar}};
  for (Spot& corner : seen.outline) {
    corner[along] = 0;
    for (std::size_t axis = 0; axis < 3; ++axis) {
      seen.low[axis] = std::min(seen.low[axis], corner[axis]);
      seen.high[axis] = std::max(seen.high[axis], corner[axis]);
    }
  }
  return seen;
}

const std::vector<HalfSpace>& sides_of(Seen& seen, std::size_t along) {
  if (!seen.sides.empty()) return seen.sides;
  const Spot inner = middle_of(seen.outline);
  for (std::size_t i = 0; i < seen.outline.size(); ++i) {
    const Spot& here = seen.outline[i];
    const Spot& next = seen.outline[(i + 1) % seen.outline.size()];
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
    if (sign * facet.side.normal[axis] > kUpright) faces.push_back(seen_along(facet, axis));
  return faces;
}

/// The corners of what two faces have in common as seen; none where that is a line or less.
std::vector<Spot> common_outline(const Seen& a, const std::vector<HalfSpace>& sides_of_b) {
  std::vector<Spot> both = a.outline;
  for (const HalfSpace& side : sides_of_b) {
    spend_effort(kOfFacetLookedAt);
    double least = kFar;
    double most = -kFar;
    for (const Spot& corner : both) {
      least = std::min(least, beyond(corner, side));
      most = std::max(most, beyond(corner, side));
    }
    if (least >= 0) return {};
    if (most <= 0) continue;
    std::vector<Spot> rim;
    both = clipped(both, side, rim);
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
        nearest = std::min(
            nearest, sign * (height_of(wall, spot, way.axis) - height_of(front, spot, way.axis)));
      bound = std::max(bound, nearest);
    }
  }
  return bound;
}

std::optional<Length> gap(const Polyhedron& from, const Polyhedron& to, Way way) {
  const double sign = way.upwards ? 1 : -1;
  const auto height = [&](const Facet& facet, const Spot& over) {
    return sign * height_of(facet, over, way.axis);
  };
  const auto faces = [&](const Facet& facet) { return sign * facet.side.normal[way.axis]; };
  // The far side of `to` over a point: the least of the planes that face on.
  const auto far_side = [&](const Spot& over) {
    double least = kFar;
    for (const Facet& facet : to.facets)
      if (faces(facet) > kUpright) least = std::min(least, height(facet, over));
    return least;
  };
  std::optional<double> least;
  bool goes_on = false;
  std::vector<Seen> walls = faces_along(to, way.axis, -sign);
  for (const Seen& front : faces_along(from, way.axis, sign)) {
    for (Seen& wall : walls) {
      if (!may_be_seen(wall, front, way.axis)) continue;
      for (const Spot& over : common_outline(front, sides_of(wall, way.axis))) {
        const double distance = height(*wall.facet, over) - height(*front.facet, over);
        goes_on = goes_on || far_side(over) > height(*front.facet, over) + kTouch;
        if (!least || distance < *least) least = distance;
      }
    }
  }
  if (!least || !goes_on) return {};
  return nearest_step(*least);
}

}  // namespace haunch
