#include "polyhedron.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "effort_spent.h"
#include "rounding.h"
#include "spots.h"

namespace haunch {
namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();
// Of effort, beside that of two boxes compared.
constexpr std::size_t kOfFacetLookedAt = 4;
constexpr std::size_t kOfFacetMade = 40;
constexpr double kUpright = 1e-6;  // a face whose normal has less along an axis runs along it

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

/// Adds to `inside` the part of a polygon on one side of a plane, beyond which its corners lie so
/// `far`; `rim` gets its corners on the plane. Says whether there is more of it than what touches
/// the plane.
bool clip(std::span<const Spot> corners, std::span<const double> far, const HalfSpace& side,
          std::vector<Spot>& inside, std::vector<Spot>& rim) {
  bool more_than_edge = false;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const std::size_t next = i + 1 == corners.size() ? 0 : i + 1;
    if (far[i] <= 0) inside.push_back(corners[i]);
    if (far[i] == 0) rim.push_back(corners[i]);
    if (far[i] < 0) more_than_edge = true;
    if (far[i] * far[next] < 0) {
      inside.push_back(crossing(corners[i], corners[next], side));
      rim.push_back(inside.back());
    }
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
void put_in_turn(std::vector<Spot>& rim, const Spot& normal, std::vector<double>& turns) {
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
  turns.clear();
  // They are few: each is put where it belongs among those before it.
  for (std::size_t i = 0; i < count; ++i) {
    const Spot spot = rim[i];
    const Spot arm = minus(spot, middle);
    const double turn = turn_of(dot(arm, right), dot(arm, up));
    std::size_t place = turns.size();
    turns.push_back(turn);
    for (; place > 0 && turn < turns[place - 1]; --place) {
      turns[place] = turns[place - 1];
      rim[place] = rim[place - 1];
    }
    turns[place] = turn;
    rim[place] = spot;
  }
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

/// The corners of a block, of a run each but once.
std::span<const Spot> places_of(const Polyhedron& block) {
  if (block.along == kNoAxis) return block.corners;
  return {block.corners.data(), 2 * block.facets.front().count};
}

Range range_beyond(const Polyhedron& block, const HalfSpace& side) {
  spend_effort(kOfFacetLookedAt * block.facets.size());
  Range range;
  for (const Spot& corner : places_of(block))
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
  const auto [u, v] = across_axes(along);
  const double run = std::hypot(b[u] - a[u], b[v] - a[v]);
  Spot normal{};
  normal[u] = (b[v] - a[v]) / run;
  normal[v] = (a[u] - b[u]) / run;
  if (dot(normal, minus(inner, a)) - normal[along] * (inner[along] - a[along]) > 0)
    normal = {-normal[0], -normal[1], -normal[2]};
  return normal;
}

/// An outline run along an axis. Each of its edges has its plane.
Polyhedron run_of(std::span<const Spot> outline, std::span<const HalfSpace> sides,
                  std::size_t along, double from, double to) {
  const std::size_t count = outline.size();
  spend_effort(kOfFacetMade * (count + 2) / 4);
  Polyhedron run{{}, {}, {kFar, kFar, kFar}, {-kFar, -kFar, -kFar}, along};
  run.corners.resize(count * 6);
  run.facets.resize(count + 2);
  for (const bool high : {false, true}) {
    Facet& end = run.facets[high ? 1 : 0];
    end.side.normal[along] = high ? 1 : -1;
    end.side.offset = high ? to : -from;
    end.first = high ? count : 0;
    end.count = count;
  }
  for (std::size_t i = 0; i < count; ++i) {
    const std::size_t side = count * 2 + i * 4;
    Spot here = outline[i];
    Spot next = outline[i + 1 == count ? 0 : i + 1];
    for (std::size_t axis = 0; axis < 3; ++axis) {
      run.low[axis] = std::min(run.low[axis], here[axis]);
      run.high[axis] = std::max(run.high[axis], here[axis]);
    }
    here[along] = next[along] = from;
    run.corners[i] = run.corners[side] = here;
    run.corners[side + 1] = next;
    here[along] = next[along] = to;
    run.corners[count + i] = run.corners[side + 3] = here;
    run.corners[side + 2] = next;
    run.facets[i + 2] = {sides[i], side, 4};
  }
  run.low[along] = from;
  run.high[along] = to;
  return run;
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
  const Spot inner = middle_of(outline);
  std::vector<Spot> corners;
  std::vector<HalfSpace> sides;
  corners.reserve(outline.size());
  sides.reserve(outline.size());
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot& next = outline[(i + 1) % outline.size()];
    if (!is_edge(outline[i], next, along)) continue;
    const Spot normal = way_out(outline[i], next, inner, along);
    corners.push_back(outline[i]);
    sides.push_back({normal, dot(normal, outline[i]) - normal[along] * outline[i][along]});
  }
  return run_of(corners, sides, along, from, to);
}

Polyhedron polyhedron_of(const Box& box, std::size_t along) {
  const auto [u, v] = across_axes(along);
  const double low_u = along_axis(box.low[u]);
  const double low_v = along_axis(box.low[v]);
  const double high_u = along_axis(box.high[u]);
  const double high_v = along_axis(box.high[v]);
  std::array<Spot, 4> outline{};
  std::array<HalfSpace, 4> sides{};
  for (std::size_t i = 0; i < outline.size(); ++i) {
    outline[i][u] = i == 1 || i == 2 ? high_u : low_u;
    outline[i][v] = i >= 2 ? high_v : low_v;
    sides[i].normal[i % 2 == 0 ? v : u] = i == 0 || i == 3 ? -1 : 1;
  }
  sides[0].offset = -low_v;
  sides[1].offset = high_u;
  sides[2].offset = high_v;
  sides[3].offset = -low_u;
  return run_of(outline, sides, along, along_axis(box.low[along]), along_axis(box.high[along]));
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
  const AxesAcross on = across_axes(prism.along);
  std::vector<Spot> outline;
  const auto add = [&](Length place, double height) {
    Spot spot{};
    spot[on.u] = along_axis(place);
    spot[on.v] = height;
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

/// The part of a run on one side of a plane square to it.
Polyhedron cut_short(Polyhedron run, const HalfSpace& side) {
  const double outwards = side.normal[run.along];
  const double place = outwards * side.offset;
  double& end = outwards > 0 ? run.high[run.along] : run.low[run.along];
  for (Spot& corner : run.corners)
    if (corner[run.along] == end) corner[run.along] = place;
  run.facets[outwards > 0 ? 1 : 0].side.offset = side.offset;
  end = place;
  return run;
}

/// An outline in the making, with the planes of its edges.
struct Outline {
  std::vector<Spot> corners;
  std::vector<HalfSpace> sides;  // from each corner on

  /// A corner that touches the one before takes its place.
  void add(const Spot& corner, const HalfSpace& side) {
    if (!corners.empty() && nearly(corners.back(), corner)) {
      sides.back() = side;
      return;
    }
    corners.push_back(corner);
    sides.push_back(side);
  }
};

/// The part of a run on one side of a plane that runs along it; nothing where that is a sliver.
std::optional<Polyhedron> cut_lengthwise(const Polyhedron& run, const HalfSpace& side) {
  const std::span<const Spot> outline = run.corners_of(run.facets[0]);
  Outline part;
  part.corners.reserve(outline.size() + 1);
  part.sides.reserve(outline.size() + 1);
  double at_here = beyond(outline[0], side);
  const double at_first = at_here;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const bool last = i + 1 == outline.size();
    const Spot& next = outline[last ? 0 : i + 1];
    const double at_next = last ? at_first : beyond(next, side);
    const HalfSpace& edge = run.facets[2 + i].side;
    const bool leaves = at_next > 0;
    if (at_here <= 0) part.add(outline[i], leaves && at_here == 0 ? side : edge);
    if (at_here * at_next < 0) part.add(crossing(outline[i], next, side), leaves ? side : edge);
    at_here = at_next;
  }
  if (part.corners.size() > 1 && nearly(part.corners.front(), part.corners.back())) {
    part.corners.pop_back();
    part.sides.pop_back();
  }
  if (part.corners.size() < 3) return {};
  return run_of(part.corners, part.sides, run.along, run.low[run.along], run.high[run.along]);
}

/// Cuts blocks along planes. What it needs meanwhile is made once for all of its cuts.
class Saw {
 public:
  /// The part of a block on one side of a plane that goes through it; nothing where all that goes
  /// beyond it is a sliver.
  std::optional<Polyhedron> cut_off(const Polyhedron& block, const HalfSpace& side) {
    if (block.along != kNoAxis && side.normal[block.along] == 0) return cut_lengthwise(block, side);
    if (block.along != kNoAxis && level_axis(side) == block.along) return cut_short(block, side);
    count_cut(block);
    far_.clear();
    for (const Spot& corner : block.corners)
      far_.push_back(beyond(corner, side));
    Polyhedron part;
    part.facets.reserve(block.facets.size() + 1);
    part.corners.reserve(block.corners.size() + 2 * block.facets.size());
    rim_.clear();
    for (const Facet& facet : block.facets) {
      const std::size_t first = part.corners.size();
      const std::span<const double> far{far_.data() + facet.first, facet.count};
      const bool more_than_edge = clip(block.corners_of(facet), far, side, part.corners, rim_);
      const std::size_t count = part.corners.size() - first;
      if (count >= 3 && more_than_edge)
        part.facets.push_back({facet.side, first, count});
      else
        part.corners.resize(first);
    }
    put_in_turn(rim_, side.normal, turns_);
    if (rim_.empty()) return {};
    add_face(part, side, rim_);
    note_bounds(part);
    return part;
  }

  /// The same where the part on the other side is wanted no more. The cut has the same corners seen
  /// from there, so that both parts are slivers or none is; both count as made.
  std::optional<Polyhedron> cut_off_alone(const Polyhedron& block, const HalfSpace& side) {
    auto part = cut_off(block, side);
    if (part) count_cut(block);
    return part;
  }
  /// Whether a cut has the same corners seen from both sides: any but along a run.
  static bool is_seen_alike(const Polyhedron& block, const HalfSpace& side) {
    return block.along == kNoAxis ||
           (side.normal[block.along] != 0 && level_axis(side) != block.along);
  }

 private:
  static void count_cut(const Polyhedron& block) {
    spend_effort(kOfFacetMade * block.facets.size());
  }

  std::vector<double> far_;    // of each corner, beyond the plane
  std::vector<Spot> rim_;      // of the cut
  std::vector<double> turns_;  // of its corners
};

}  // namespace

std::optional<Polyhedron> common(const Polyhedron& a, const Polyhedron& b) {
  if (apart(a, b)) return {};
  Saw saw;
  std::optional<Polyhedron> cut;
  const Polyhedron* both = &a;
  for (const Facet& facet : b.facets) {
    const Range range = range_to(*both, facet.side);
    if (range.is_beyond()) return {};
    if (range.is_within()) continue;
    cut = saw.cut_off(*both, facet.side);
    if (!cut) return {};
    both = &*cut;
  }
  return cut ? std::move(cut) : std::optional(a);
}

std::optional<Polyhedron> clipped(const Polyhedron& block, const Box& region) {
  std::array<HalfSpace, 6> sides{};
  std::size_t count = 0;  // of those that cut something off
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const double low = along_axis(region.low[axis]);
    const double high = along_axis(region.high[axis]);
    if (block.high[axis] < low + kTouch || block.low[axis] > high - kTouch) return {};
    if (block.low[axis] <= low - kTouch) {
      sides[count].normal[axis] = -1;
      sides[count++].offset = -low;
    }
    if (block.high[axis] >= high + kTouch) {
      sides[count].normal[axis] = 1;
      sides[count++].offset = high;
    }
  }
  Saw saw;
  std::optional<Polyhedron> part;
  const Polyhedron* inside = &block;
  for (std::size_t i = 0; i < count; ++i) {
    // What slopes may lie beyond a side that the box around it goes through.
    const Range range = range_to(*inside, sides[i]);
    if (range.is_beyond()) return {};
    if (range.is_within()) continue;
    part = saw.cut_off(*inside, sides[i]);
    if (!part) return {};
    inside = &*part;
  }
  return part ? std::move(part) : std::optional(block);
}

bool touch_at_most(const Polyhedron& a, const Polyhedron& b) {
  const auto lies_beyond = [](const Polyhedron& block, const Polyhedron& other) {
    return std::any_of(other.facets.begin(), other.facets.end(),
                       [&](const Facet& facet) { return range_to(block, facet.side).is_beyond(); });
  };
  return lies_beyond(a, b) || lies_beyond(b, a);
}

namespace {

/// The last of the planes that add_rest cuts along, where that is no level one.
const Facet* last_sloping(const Polyhedron& cut) {
  const auto last = std::find_if(cut.facets.rbegin(), cut.facets.rend(),
                                 [](const Facet& facet) { return level_axis(facet.side) == 3; });
  return last == cut.facets.rend() ? nullptr : &*last;
}

}  // namespace

void add_rest(std::vector<Polyhedron>& rest, Polyhedron block, const Polyhedron& cut) {
  if (apart(block, cut)) {
    rest.push_back(std::move(block));
    return;
  }
  Saw saw;
  for (const Facet& facet : cut.facets)
    if (level_axis(facet.side) == 3 && range_to(block, facet.side).is_beyond()) {
      rest.push_back(std::move(block));
      return;
    }
  const Facet* last = last_sloping(cut);
  const std::size_t before = rest.size();
  std::optional<Polyhedron> left;
  const Polyhedron* inside = &block;
  // Level faces first: what lies beyond them stays a run, as long as it was.
  for (const bool level : {true, false}) {
    for (const Facet& facet : cut.facets) {
      if ((level_axis(facet.side) < 3) != level) continue;
      const Range range = range_to(*inside, facet.side);
      if (range.is_within()) continue;
      // What lies within the last plane goes, and nobody looks at it.
      const bool is_last =
          &facet == last && !range.is_beyond() && Saw::is_seen_alike(*inside, facet.side);
      if (is_last)
        if (auto outside = saw.cut_off_alone(*inside, opposite(facet.side))) {
          rest.push_back(std::move(*outside));
          return;
        }
      std::optional<Polyhedron> within;
      if (!range.is_beyond() && !is_last) within = saw.cut_off(*inside, facet.side);
      if (!within) {  // the two have nothing in common
        rest.resize(before);
        rest.push_back(std::move(block));
        return;
      }
      if (auto outside = saw.cut_off(*inside, opposite(facet.side)))
        rest.push_back(std::move(*outside));
      left = std::move(within);
      inside = &*left;
    }
  }
}

Box bounds_of(const Prism& prism) {
  const auto [u, v] = across_axes(prism.along);
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
  return box_of(block.low, block.high);
}

Box box_of(const Spot& low, const Spot& high) {
  Box box;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    box.low[axis] = nearest_step(low[axis]);
    box.high[axis] = nearest_step(high[axis]);
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
  std::vector<double> far;
  for (const HalfSpace& side : sides_of_other) {
    spend_effort(kOfFacetLookedAt);
    Range range;
    far.clear();
    for (const Spot& corner : both) {
      far.push_back(beyond(corner, side));
      range.note(far.back());
    }
    if (range.is_beyond()) return {};
    if (range.is_within()) continue;
    inside.clear();
    rim.clear();
    clip(both, far, side, inside, rim);
    both.swap(inside);
    if (std::all_of(rim.begin(), rim.end(),
                    [&](const Spot& it) { return nearly(it, rim.front()); }))
      return {};
  }
  return both;
}

/// Whether both are runs along one axis, and measured across it.
bool are_runs_beside(const Polyhedron& from, const Polyhedron& to, Way way) {
  return from.along != kNoAxis && from.along == to.along && way.axis != from.along;
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
  if (are_runs_beside(from, to, way)) return -kFar;
  spend_effort(kOfFacetLookedAt * (from.facets.size() + to.facets.size()));
  const double sign = way.upwards ? 1 : -1;
  const auto [u, v] = across_axes(way.axis);
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

namespace {

/// What is found between two blocks this way, place by place.
struct Between {
  const Polyhedron& from;
  const Polyhedron& to;
  Way way;
  double sign = way.upwards ? 1 : -1;
  double least = kFar;
  bool goes_on = false;

  double height(const Polyhedron& block, const Facet& facet, const Spot& over) const {
    return sign * height_of(block, facet, over, way.axis);
  }

  bool looks_on(const Facet& facet) const { return sign * facet.side.normal[way.axis] > kUpright; }
  bool looks_back(const Facet& facet) const {
    return sign * facet.side.normal[way.axis] < -kUpright;
  }

  /// The far side of `to` over a point: the least of the planes that face on.
  double far_side(const Spot& over) const {
    double far = kFar;
    for (const Facet& facet : to.facets)
      if (looks_on(facet)) far = std::min(far, height(to, facet, over));
    return far;
  }

  void look(const Facet& front, const Facet& wall, const Spot& over) {
    const double from_there = height(from, front, over);
    const double distance = height(to, wall, over) - from_there;
    goes_on = goes_on || far_side(over) > from_there + kTouch;
    least = std::min(least, distance);
  }

  /// Of runs along one axis, in the plane of their outlines.
  void look_at_runs() {
    const std::size_t along = from.along;
    const std::size_t u = 3 - along - way.axis;
    if (std::min(from.high[along], to.high[along]) - std::max(from.low[along], to.low[along]) <
        kTouch)
      return;
    for (const Facet& front : from.facets) {
      if (!looks_on(front)) continue;
      for (const Facet& wall : to.facets) {
        if (!looks_back(wall)) continue;
        const auto [front_low, front_high] = edge_of(from, front, u);
        const auto [wall_low, wall_high] = edge_of(to, wall, u);
        const double low = std::max(front_low, wall_low);
        const double high = std::min(front_high, wall_high);
        if (high - low < kTouch) continue;
        for (const double place : {low, high}) {
          Spot over{};
          over[u] = place;
          look(front, wall, over);
        }
      }
    }
  }

  /// From where to where the edge under a side of a run goes along an axis.
  static std::pair<double, double> edge_of(const Polyhedron& run, const Facet& side,
                                           std::size_t axis) {
    return std::minmax(run.corners[side.first][axis], run.corners[side.first + 1][axis]);
  }

  void look_at_faces() {
    std::vector<Seen> walls = faces_along(to, way.axis, -sign);
    for (Seen& front : faces_along(from, way.axis, sign)) {
      for (Seen& wall : walls) {
        if (!may_be_seen(wall, front, way.axis)) continue;
        for (const Spot& over :
             common_outline(outline_of(front, from, way.axis), sides_of(wall, to, way.axis)))
          look(*front.facet, *wall.facet, over);
      }
    }
  }
};

/// Whether one of two blocks lies all beyond an upright side of the other, seen along an axis: then
/// neither stands in the other's shadow.
bool stands_beside(const Polyhedron& block, const Polyhedron& other, std::size_t axis) {
  return std::any_of(other.facets.begin(), other.facets.end(), [&](const Facet& facet) {
    return facet.side.normal[axis] == 0 && range_to(block, facet.side).is_beyond();
  });
}

}  // namespace

std::optional<Length> gap(const Polyhedron& from, const Polyhedron& to, Way way) {
  Between between{from, to, way};
  if (are_runs_beside(from, to, way))
    between.look_at_runs();
  else if (stands_beside(from, to, way.axis) || stands_beside(to, from, way.axis))
    return {};
  else
    between.look_at_faces();
  if (!between.goes_on) return {};
  return nearest_step(between.least);
}

}  // namespace haunch
