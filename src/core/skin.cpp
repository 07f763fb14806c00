#include "skin.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <tuple>
#include <utility>

#include "spots.h"

namespace haunch {
namespace {

/// A facet of a block, its corners counter-clockwise seen from outside.
struct Side {
  HalfSpace looks;
  std::vector<std::size_t> corners;
  std::size_t plane = 0;
  int sign = 1;  // whether it looks the way of its plane's normal, or against it
};

/// Points, of which those that are the same have one number.
class Corners {
 public:
  std::size_t number_of(const Spot& spot) {
    const Cell low = cell_of(spot, -kOneCorner);
    const Cell high = cell_of(spot, kOneCorner);
    for (std::int64_t x = low[0]; x <= high[0]; ++x)
      for (std::int64_t y = low[1]; y <= high[1]; ++y)
        for (std::int64_t z = low[2]; z <= high[2]; ++z)
          if (const auto found = cells_.find({x, y, z}); found != cells_.end())
            for (const std::size_t corner : found->second)
              if (size_of(minus(spots_[corner], spot)) < kOneCorner) return corner;
    cells_[cell_of(spot, 0)].push_back(spots_.size());
    spots_.push_back(spot);
    return spots_.size() - 1;
  }

  const std::vector<Spot>& spots() const { return spots_; }

 private:
  using Cell = std::array<std::int64_t, 3>;

  static Cell cell_of(const Spot& spot, double beside) {
    Cell cell{};
    for (std::size_t axis = 0; axis < 3; ++axis)
      cell[axis] = std::llround(spot[axis] + beside);
    return cell;
  }

  std::map<Cell, std::vector<std::size_t>> cells_;
  std::vector<Spot> spots_;
};

double beyond(const Spot& spot, const HalfSpace& side) {
  return dot(side.normal, spot) - side.offset;
}

/// Twice the area of an outline, along its normal.
Spot spanned(const std::vector<std::size_t>& outline, const std::vector<Spot>& spots) {
  Spot sum{};
  for (std::size_t i = 1; i + 1 < outline.size(); ++i) {
    const Spot& first = spots[outline.front()];
    const Spot part = cross(minus(spots[outline[i]], first), minus(spots[outline[i + 1]], first));
    for (std::size_t axis = 0; axis < 3; ++axis)
      sum[axis] += part[axis];
  }
  return sum;
}

void add_sides(const Polyhedron& block, Corners& corners, std::vector<Side>& sides) {
  for (const Facet& facet : block.facets) {
    Side side{facet.side, {}};
    for (const Spot& spot : block.corners_of(facet)) {
      const std::size_t corner = corners.number_of(spot);
      if (side.corners.empty() || side.corners.back() != corner) side.corners.push_back(corner);
    }
    while (side.corners.size() > 1 && side.corners.front() == side.corners.back())
      side.corners.pop_back();
    if (side.corners.size() < 3) continue;
    if (dot(spanned(side.corners, corners.spots()), side.looks.normal) < 0)
      std::reverse(side.corners.begin(), side.corners.end());
    sides.push_back(std::move(side));
  }
}

/// The planes that sides lie in: of level ones told by their place, of others by that of the
/// largest side in them.
class Planes {
 public:
  explicit Planes(const std::vector<Spot>& spots) : spots_(spots) {}

  void place(std::vector<Side>& sides) {
    std::vector<Side*> sloping;
    for (Side& side : sides)
      if (!place_level(side)) sloping.push_back(&side);
    std::stable_sort(sloping.begin(), sloping.end(), [&](const Side* a, const Side* b) {
      return size_of(spanned(a->corners, spots_)) > size_of(spanned(b->corners, spots_));
    });
    const std::size_t first = planes_.size();
    for (Side* side : sloping)
      place_sloping(*side, first);
  }

  std::vector<HalfSpace> take() { return std::move(planes_); }

 private:
  bool place_level(Side& side) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const double at = spots_[side.corners.front()][axis];
      if (std::any_of(side.corners.begin(), side.corners.end(), [&](std::size_t corner) {
            return std::abs(spots_[corner][axis] - at) >= kOneCorner;
          }))
        continue;
      const auto [found, is_new] = level_.try_emplace({axis, std::llround(at)}, planes_.size());
      if (is_new) {
        planes_.push_back({{}, std::round(at)});
        planes_.back().normal[axis] = 1;
      }
      side.plane = found->second;
      side.sign = side.looks.normal[axis] > 0 ? 1 : -1;
      return true;
    }
    return false;
  }

  void place_sloping(Side& side, std::size_t first) {
    constexpr double kSameWay = 0.999;
    for (side.plane = first; side.plane < planes_.size(); ++side.plane) {
      const double same = dot(planes_[side.plane].normal, side.looks.normal);
      if (std::abs(same) < kSameWay || !lies_in(side, planes_[side.plane])) continue;
      side.sign = same > 0 ? 1 : -1;
      return;
    }
    planes_.push_back(side.looks);
  }

  bool lies_in(const Side& side, const HalfSpace& plane) const {
    return std::all_of(side.corners.begin(), side.corners.end(), [&](std::size_t corner) {
      return std::abs(beyond(spots_[corner], plane)) < kOneCorner;
    });
  }

  const std::vector<Spot>& spots_;
  std::vector<HalfSpace> planes_;
  std::map<std::pair<std::size_t, std::int64_t>, std::size_t> level_;
};

using Stretch = std::pair<std::size_t, std::size_t>;  // between two corners

/// Where two stretches cross, away from the ends of both.
std::optional<Spot> crossing(const Spot& a, const Spot& b, const Spot& c, const Spot& d,
                             const Spot& normal) {
  const Spot one = minus(b, a);
  const Spot other = minus(d, c);
  const double turn = dot(cross(one, other), normal);
  if (std::abs(turn) < 1e-9 * size_of(one) * size_of(other)) return {};
  const double share = dot(cross(minus(c, a), other), normal) / turn;
  const double of_other = dot(cross(minus(c, a), one), normal) / turn;
  if (share <= 0 || share >= 1 || of_other <= 0 || of_other >= 1) return {};
  Spot spot;
  for (std::size_t axis = 0; axis < 3; ++axis)
    spot[axis] = one[axis] == 0     ? a[axis]
                 : other[axis] == 0 ? c[axis]
                                    : a[axis] + share * one[axis];
  return spot;
}

/// The box around some corners, a little wider.
struct Room {
  Spot low, high;

  Room(const Spot& a, const Spot& b) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      low[axis] = std::min(a[axis], b[axis]) - kOneCorner;
      high[axis] = std::max(a[axis], b[axis]) + kOneCorner;
    }
  }
  void take_in(const Spot& spot) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      low[axis] = std::min(low[axis], spot[axis] - kOneCorner);
      high[axis] = std::max(high[axis], spot[axis] + kOneCorner);
    }
  }
  bool meets(const Room& other) const {
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (high[axis] < other.low[axis] || other.high[axis] < low[axis]) return false;
    return true;
  }
};

/// The edges of all sides in one plane that look the same way, each once.
std::vector<Stretch> edges_in(const std::vector<const Side*>& sides, int sign) {
  std::vector<Stretch> edges;
  for (const Side* side : sides) {
    if (side->sign != sign) continue;
    for (std::size_t i = 0; i < side->corners.size(); ++i)
      edges.push_back(
          std::minmax({side->corners[i], side->corners[(i + 1) % side->corners.size()]}));
  }
  std::sort(edges.begin(), edges.end());
  edges.erase(std::unique(edges.begin(), edges.end()), edges.end());
  return edges;
}

/// An edge with its room and its number.
struct PlacedEdge {
  Stretch edge;
  Room room;
  std::size_t number;
};

/// In the order of their low ends along an axis.
std::vector<PlacedEdge> placed_edges(const std::vector<Stretch>& edges,
                                     const std::vector<Spot>& spots, std::size_t axis) {
  std::vector<PlacedEdge> placed;
  for (const Stretch& edge : edges)
    placed.push_back({edge, Room(spots[edge.first], spots[edge.second]), placed.size()});
  std::sort(placed.begin(), placed.end(), [&](const PlacedEdge& a, const PlacedEdge& b) {
    return a.room.low[axis] < b.room.low[axis];
  });
  return placed;
}

/// Calls `look` with each two whose rooms meet: swept along an axis.
template <typename Look>
void sweep_edges(const std::vector<PlacedEdge>& one, const std::vector<PlacedEdge>& other,
                 std::size_t axis, const Look& look) {
  std::vector<const PlacedEdge*> beside;
  auto next = other.begin();
  for (const PlacedEdge& edge : one) {
    for (; next != other.end() && next->room.low[axis] <= edge.room.high[axis]; ++next)
      beside.push_back(&*next);
    std::erase_if(beside,
                  [&](const PlacedEdge* it) { return it->room.high[axis] < edge.room.low[axis]; });
    for (const PlacedEdge* it : beside)
      if (edge.room.meets(it->room)) look(edge, *it);
  }
}

/// Sides that look the same way never overlap; those that lie back to back do, and where their
/// edges cross there is a corner of the skin.
void add_crossings(const std::vector<const Side*>& sides, const Spot& normal, Corners& corners) {
  const std::size_t axis = std::abs(normal[0]) > 0.5 ? 1 : 0;
  const std::vector<Spot>& spots = corners.spots();
  std::vector<std::tuple<std::size_t, std::size_t, Spot>> found;
  sweep_edges(
      placed_edges(edges_in(sides, 1), spots, axis), placed_edges(edges_in(sides, -1), spots, axis),
      axis, [&](const PlacedEdge& one, const PlacedEdge& other) {
        if (const auto spot = crossing(spots[one.edge.first], spots[one.edge.second],
                                       spots[other.edge.first], spots[other.edge.second], normal))
          found.emplace_back(one.number, other.number, *spot);
      });
  std::sort(found.begin(), found.end());
  for (const auto& [one, other, spot] : found)
    corners.number_of(spot);
}

/// Finds the corners that lie on a stretch.
class Splitter {
 public:
  explicit Splitter(const std::vector<Spot>& spots) : spots_(spots) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      auto& order = orders_[axis];
      for (std::size_t corner = 0; corner < spots.size(); ++corner)
        order.emplace_back(spots[corner][axis], corner);
      std::sort(order.begin(), order.end());
    }
  }

  /// From one end to the other, both included.
  const std::vector<std::size_t>& along(const Stretch& stretch) {
    const auto [found, is_new] = known_.try_emplace(stretch);
    if (is_new) found->second = look_along(stretch);
    return found->second;
  }

 private:
  using Order = std::vector<std::pair<double, std::size_t>>;
  using Part = std::pair<Order::const_iterator, Order::const_iterator>;

  /// The corners within a room along that axis on which they are fewest.
  Part fewest_in(const Room& room) const {
    Part fewest{orders_[0].begin(), orders_[0].end()};
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const Order& order = orders_[axis];
      const Part part{
          std::lower_bound(order.begin(), order.end(), std::pair(room.low[axis], std::size_t{0})),
          std::upper_bound(order.begin(), order.end(), std::pair(room.high[axis], spots_.size()))};
      if (part.second - part.first < fewest.second - fewest.first) fewest = part;
    }
    return fewest;
  }

  std::vector<std::size_t> look_along(const Stretch& stretch) const {
    const Spot& from = spots_[stretch.first];
    const Spot way = minus(spots_[stretch.second], from);
    const double length = size_of(way);
    Order on;
    const auto [begin, end] = fewest_in(Room(from, spots_[stretch.second]));
    for (auto it = begin; it != end; ++it) {
      const Spot arm = minus(spots_[it->second], from);
      const double share = dot(arm, way) / length;
      const bool is_end = it->second == stretch.first || it->second == stretch.second;
      if (is_end || (share > 0 && share < length && size_of(cross(arm, way)) < kOneCorner * length))
        on.emplace_back(it->second == stretch.first    ? 0
                        : it->second == stretch.second ? length
                                                       : share,
                        it->second);
    }
    std::sort(on.begin(), on.end());
    std::vector<std::size_t> corners;
    for (const auto& [share, corner] : on)
      corners.push_back(corner);
    return corners;
  }

  const std::vector<Spot>& spots_;
  std::array<Order, 3> orders_;
  std::map<Stretch, std::vector<std::size_t>> known_;
};

/// How the sides that end at a stretch count at its left and at its right, seen against the
/// plane's normal and from its first corner.
struct Count {
  int left = 0, right = 0;
};

/// Adds up the sides of one plane.
class PlaneSum {
 public:
  PlaneSum(std::size_t plane, const std::vector<const Side*>& sides, const std::vector<Spot>& spots)
      : plane_(plane), sides_(sides), spots_(spots) {
    for (const Side* side : sides)
      rooms_.push_back(room_of(*side));
  }

  void count(Splitter& splitter) {
    for (const Side* side : sides_)
      for (std::size_t i = 0; i < side->corners.size(); ++i)
        count_edge(*side, side->corners[i], side->corners[(i + 1) % side->corners.size()],
                   splitter);
  }

  /// Adds what is left to a skin; false where sides overlap that look the same way.
  bool add_to(Skin& skin) const {
    for (const auto& [stretch, count] : counts_) {
      if (count.left == count.right) continue;
      const int around = counted_across(stretch);
      const int left = count.left + around;
      const int right = count.right + around;
      if (std::abs(left) > 1 || std::abs(right) > 1) return false;
      const auto [a, b] = stretch;
      if (left == 1) skin.edges.push_back({a, b, plane_, true});
      if (right == 1) skin.edges.push_back({b, a, plane_, true});
      if (left == -1) skin.edges.push_back({b, a, plane_, false});
      if (right == -1) skin.edges.push_back({a, b, plane_, false});
    }
    return true;
  }

 private:
  void count_edge(const Side& side, std::size_t from, std::size_t to, Splitter& splitter) {
    const std::vector<std::size_t>& stops = splitter.along(std::minmax({from, to}));
    // A side that looks along the normal lies at the left of its edges as they run.
    const bool at_left = (side.sign > 0) == (from < to);
    for (std::size_t i = 1; i < stops.size(); ++i) {
      const bool as_told = stops[i - 1] < stops[i];
      Count& count = counts_[std::minmax({stops[i - 1], stops[i]})];
      (at_left == as_told ? count.left : count.right) += side.sign;
    }
  }

  /// Of the sides that a stretch runs across, none of whose edges it is a part of.
  int counted_across(const Stretch& stretch) const {
    Spot middle;
    for (std::size_t axis = 0; axis < 3; ++axis)
      middle[axis] = (spots_[stretch.first][axis] + spots_[stretch.second][axis]) / 2;
    int sum = 0;
    const Room there(middle, middle);
    for (std::size_t i = 0; i < sides_.size(); ++i)
      if (rooms_[i].meets(there) && holds(*sides_[i], middle)) sum += sides_[i]->sign;
    return sum;
  }

  Room room_of(const Side& side) const {
    Room room(spots_[side.corners[0]], spots_[side.corners[1]]);
    for (const std::size_t corner : side.corners)
      room.take_in(spots_[corner]);
    return room;
  }

  bool holds(const Side& side, const Spot& spot) const {
    for (std::size_t i = 0; i < side.corners.size(); ++i) {
      const Spot& from = spots_[side.corners[i]];
      const Spot way = minus(spots_[side.corners[(i + 1) % side.corners.size()]], from);
      if (dot(cross(way, minus(spot, from)), side.looks.normal) < kOneCorner * size_of(way))
        return false;
    }
    return true;
  }

  std::size_t plane_;
  const std::vector<const Side*>& sides_;
  const std::vector<Spot>& spots_;
  std::vector<Room> rooms_;  // of the sides
  std::map<Stretch, Count> counts_;
};

std::vector<Side> sides_of(const Wood& wood, Corners& corners) {
  std::vector<Side> sides;
  // Boxes first: what slopes takes on their corners, which are exact.
  for (const Box& box : wood.boxes)
    add_sides(polyhedron_of(box), corners, sides);
  for (const Polyhedron& block : wood.sloping)
    add_sides(block, corners, sides);
  return sides;
}

}  // namespace

std::optional<Skin> skin_of(const Wood& wood) {
  Corners corners;
  std::vector<Side> sides = sides_of(wood, corners);
  Planes planes(corners.spots());
  planes.place(sides);
  Skin skin;
  skin.planes = planes.take();
  std::vector<std::vector<const Side*>> in_plane(skin.planes.size());
  for (const Side& side : sides)
    in_plane[side.plane].push_back(&side);
  for (std::size_t plane = 0; plane < in_plane.size(); ++plane)
    add_crossings(in_plane[plane], skin.planes[plane].normal, corners);
  Splitter splitter(corners.spots());
  for (std::size_t plane = 0; plane < in_plane.size(); ++plane) {
    PlaneSum sum(plane, in_plane[plane], corners.spots());
    sum.count(splitter);
    if (!sum.add_to(skin)) return {};
  }
  skin.corners = corners.spots();
  return skin;
}

}  // namespace haunch
