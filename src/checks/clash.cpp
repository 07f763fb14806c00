// Fittings: what is let in for hinges and locks keeps clear of joints, grooves, panels and each
// other.
#include <algorithm>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kClash{
    "fitting-clash",
    "of wood between the fitting and the next joint, groove or fitting (below 0: to move it by)",
    "a lock let in to a tenon destroys the joint (Cyclopedia of Architecture, custom "
    "made doors); under 5 mm the wood between breaks out (trade practice)"};
constexpr Rule kWall{"fitting-wall", "of wood beside the fitting",
                     "under 5 mm the wall breaks out (trade practice)"};

/// Something that a fitting must keep clear of.
struct Obstacle {
  Box box;
  std::optional<std::size_t> joint;
  std::optional<std::size_t> other;  // the piece that stands there
};

/// Whether two recesses are of one fitting: one begins in the other, as a case behind its plate.
bool one_fitting(const Box& a, const Box& b, std::size_t along) {
  return (a.low[along] >= b.low[along] && a.high[along] <= b.high[along]) ||
         (b.low[along] >= a.low[along] && b.high[along] <= a.high[along]);
}

void add_features(std::vector<Obstacle>& obstacles, const Bench& bench, std::size_t piece,
                  const Feature& fitting, const Box& recess) {
  const Piece& its = bench.assembly.pieces[piece];
  const auto along = static_cast<std::size_t>(its.place.axes[0]);
  for (const Feature& feature : its.features) {
    if (&feature == &fitting) continue;
    std::optional<std::size_t> joint;
    std::optional<std::size_t> other;
    if (feature.kind != "groove" && !feature.joints.empty()) {
      joint = feature.joints.front();
      other = bench.assembly.joints[*joint].enters;
    }
    for (const Box& cut : feature.cuts) {
      const Box box = placed(cut, its.place);
      if (!feature.fitting || !one_fitting(recess, box, along))
        obstacles.push_back({box, joint, other});
    }
  }
}

/// Wood of other pieces, tenons and panels, where the fitting goes.
void add_wood(std::vector<Obstacle>& obstacles, const Bench& bench, std::size_t piece) {
  const Box& blank = bench.solids[piece].blank;
  for (std::size_t other = 0; other < bench.solids.size(); ++other)
    if (other != piece && interiors_meet(blank, bench.solids[other].blank))
      for (const Box& box : bounds_of(clipped(bench.solids[other].wood, blank)))
        obstacles.push_back({box, {}, other});
}

/// How far a recess must be moved along its piece, one way, to stand in nothing.
Length way_out(Box recess, const std::vector<Obstacle>& obstacles, std::size_t along, bool up) {
  Length moved;
  const auto stands_in = [&](const Obstacle& it) { return interiors_meet(recess, it.box); };
  for (auto hit = std::find_if(obstacles.begin(), obstacles.end(), stands_in);
       hit != obstacles.end(); hit = std::find_if(obstacles.begin(), obstacles.end(), stands_in)) {
    const Length step =
        up ? hit->box.high[along] - recess.low[along] : recess.high[along] - hit->box.low[along];
    moved += step;
    recess.low[along] += up ? step : -step;
    recess.high[along] += up ? step : -step;
  }
  return moved;
}

/// The distance of two boxes that do not meet: along the axis on which they are furthest apart.
Length apart(const Box& a, const Box& b) {
  const auto on = [&](std::size_t axis) {
    return std::max(a.low[axis] - b.high[axis], b.low[axis] - a.high[axis]);
  };
  return std::max({on(0), on(1), on(2)});
}

/// What lies nearest to a recess, and how far off. Negative: it stands in something, and so far it
/// must be moved along the piece, the shorter way, to be clear of all.
struct Nearest {
  const Obstacle* obstacle = nullptr;
  Length wood;
};

Nearest nearest_to(const Box& recess, const std::vector<Obstacle>& obstacles, std::size_t along) {
  Nearest nearest;
  for (const Obstacle& obstacle : obstacles) {
    if (interiors_meet(recess, obstacle.box))
      return {&obstacle, -std::min(way_out(recess, obstacles, along, true),
                                   way_out(recess, obstacles, along, false))};
    const Length distance = apart(recess, obstacle.box);
    if (nearest.obstacle == nullptr || distance < nearest.wood) nearest = {&obstacle, distance};
  }
  return nearest;
}

/// The least wood between a recess and the faces of its piece that it does not open to.
Length least_wall(const Box& recess, const Box& blank) {
  Length least = blank.extent(0) + blank.extent(1) + blank.extent(2);
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (recess.low[axis] > blank.low[axis])
      least = std::min(least, recess.low[axis] - blank.low[axis]);
    if (recess.high[axis] < blank.high[axis])
      least = std::min(least, blank.high[axis] - recess.high[axis]);
  }
  return least;
}

void check_recess(Bench& bench, std::size_t piece, const Feature& fitting, const Box& cut) {
  const Box recess = placed(cut, bench.assembly.pieces[piece].place);
  const Bounds bounds{bench.limits.least_wood, {}, bench.limits.thin_wood, {}};
  std::vector<Obstacle> obstacles;
  add_features(obstacles, bench, piece, fitting, recess);
  add_wood(obstacles, bench, piece);
  const auto along = static_cast<std::size_t>(bench.assembly.pieces[piece].place.axes[0]);
  if (const Nearest nearest = nearest_to(recess, obstacles, along); nearest.obstacle != nullptr) {
    std::vector<std::size_t> parts{piece};
    if (nearest.obstacle->other) parts.push_back(*nearest.obstacle->other);
    report(bench, kClash, parts, nearest.obstacle->joint, nearest.wood, bounds);
  }
  report(bench, kWall, {piece}, {}, least_wall(recess, bench.solids[piece].blank), bounds);
}

}  // namespace

void check_clashes(Bench& bench) {
  for (std::size_t piece = 0; piece < bench.assembly.pieces.size(); ++piece)
    for (const Feature& feature : bench.assembly.pieces[piece].features)
      if (feature.fitting)
        for (const Box& cut : feature.cuts)
          check_recess(bench, piece, feature, cut);
}

std::vector<const Rule*> rules_of_clashes() {
  return {&kClash, &kWall};
}

}  // namespace haunch
