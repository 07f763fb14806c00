#include "seen_surface.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace haunch {
namespace {

struct SideStretch {
  Length low_u, high_u, low_v, high_v;
};

/// How much of a stretch lies in at least one of others.
Length covered(std::vector<std::pair<Length, Length>> stretches) {
  std::sort(stretches.begin(), stretches.end());
  Length sum, reached;
  bool first = true;
  for (const auto& [low, high] : stretches) {
    const Length from = first ? low : std::max(low, reached);
    if (high > from) sum += high - from;
    reached = first ? high : std::max(reached, high);
    first = false;
  }
  return sum;
}

/// Of rectangles that may overlap, what they cover together: in bands between all their ends.
lumber::Area area_of_all(const std::vector<SideStretch>& rectangles) {
  std::vector<Length> ends;
  for (const SideStretch& each : rectangles) {
    ends.push_back(each.low_u);
    ends.push_back(each.high_u);
  }
  std::sort(ends.begin(), ends.end());
  lumber::Area area;
  for (std::size_t band = 0; band + 1 < ends.size(); ++band) {
    std::vector<std::pair<Length, Length>> stretches;
    for (const SideStretch& each : rectangles)
      if (each.low_u <= ends[band] && each.high_u >= ends[band + 1])
        stretches.emplace_back(each.low_v, each.high_v);
    area += lumber::area_of(ends[band + 1] - ends[band], covered(std::move(stretches)));
  }
  return area;
}

class SeenSurface {
 public:
  explicit SeenSurface(const Assembly& wood) {
    for (const Piece& piece : wood.pieces) {
      boxes_.push_back(placed_blank(piece));
      counts_.push_back(piece.matter != Matter::glass);
    }
  }

  lumber::Area area(FinishedFaces faces) const {
    lumber::Area area;
    for (std::size_t piece = 0; piece < boxes_.size(); ++piece)
      for (std::size_t axis = 0; counts_[piece] && axis < 3; ++axis)
        for (const bool high : {false, true})
          if (faces == FinishedFaces::both || !looks_back(axis, high))
            area += seen_of(piece, axis, high);
    return area;
  }

 private:
  static bool looks_back(std::size_t axis, bool high) {
    return axis == static_cast<std::size_t>(Axis::z) && high;
  }

  lumber::Area seen_of(std::size_t piece, std::size_t axis, bool high) const {
    const Box& own = boxes_[piece];
    const auto [u, v] = across_axes(axis);
    std::vector<SideStretch> hidden;
    for (std::size_t other = 0; other < boxes_.size(); ++other) {
      const Box& its = boxes_[other];
      if (other == piece || !hides(piece, other, axis, high)) continue;
      const SideStretch common{std::max(own.low[u], its.low[u]), std::min(own.high[u], its.high[u]),
                               std::max(own.low[v], its.low[v]),
                               std::min(own.high[v], its.high[v])};
      if (common.low_u < common.high_u && common.low_v < common.high_v) hidden.push_back(common);
    }
    return lumber::area_of(own.extent(u), own.extent(v)) - area_of_all(hidden);
  }

  /// Whether another piece has wood just outside that side, or its own side in the same plane,
  /// which is then counted of the earlier of the two.
  bool hides(std::size_t piece, std::size_t other, std::size_t axis, bool high) const {
    const Box& its = boxes_[other];
    const Length plane = high ? boxes_[piece].high[axis] : boxes_[piece].low[axis];
    const bool same = plane == (high ? its.high[axis] : its.low[axis]);
    if (same) return other < piece && counts_[other];
    return high ? its.low[axis] <= plane && its.high[axis] > plane
                : its.low[axis] < plane && its.high[axis] >= plane;
  }

  std::vector<Box> boxes_;
  std::vector<bool> counts_;
};

}  // namespace

lumber::Area seen_surface(const Assembly& wood, FinishedFaces faces) {
  return SeenSurface(wood).area(faces);
}

}  // namespace haunch
