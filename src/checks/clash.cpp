// Fittings: what is let in for hinges, locks and the like keeps clear of joints, grooves, panels
// and each other.
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "family.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr Rule kClash{
    "fitting-clash", "of wood between the fitting and the next joint, groove or fitting",
    "a lock let in to a tenon destroys the joint (Cyclopedia of Architecture, custom "
    "made doors); under 5 mm the wood between breaks out (trade practice)",
    true,
    "to move along the piece to be clear of the joint, groove or fitting that it stands in; wood "
    "between them"};
constexpr Rule kWall{"fitting-wall", "of wood beside the fitting",
                     "under 5 mm the wall breaks out (trade practice)", true};
constexpr Rule kThrough{"fitting-through", "of wood from a hole through the piece to its groove",
                        "under 9.5 mm (3/8 in) the wood there breaks out (trade practice, bored "
                        "locks)"};

/// Wood that is there, or is taken away, in the assembly's axes.
struct Body {
  Box box;  // of one that slopes the box around it
  std::optional<Polyhedron> sloping = {};
};

Polyhedron shape_of(const Body& body) {
  return body.sloping ? *body.sloping : polyhedron_of(body.box);
}

bool meet(const Body& a, const Body& b) {
  if (!interiors_meet(a.box, b.box)) return false;
  if (!a.sloping && !b.sloping) return true;
  return common(shape_of(a), shape_of(b)).has_value();
}

/// How far all of `block` lies beyond a plane.
double least_beyond(const Polyhedron& block, const HalfSpace& side) {
  double least = std::numeric_limits<double>::infinity();
  for (const Spot& corner : block.corners)
    least = std::min(least, side.normal[0] * corner[0] + side.normal[1] * corner[1] +
                                side.normal[2] * corner[2] - side.offset);
  return least;
}

/// How far two bodies are apart, across whichever of their faces that is most. Never more than the
/// true distance.
Length apart_by(const Body& a, const Body& b) {
  const Length boxes = apart_by(a.box, b.box);
  if (!a.sloping && !b.sloping) return boxes;
  const Polyhedron one = shape_of(a);
  const Polyhedron other = shape_of(b);
  double most = static_cast<double>(boxes.steps());
  for (const Facet& facet : one.facets)
    most = std::max(most, least_beyond(other, facet.side));
  for (const Facet& facet : other.facets)
    most = std::max(most, least_beyond(one, facet.side));
  return nearest_step(std::floor(most));
}

/// All that a feature takes away. Bodies of a sloping cut touch.
std::vector<Body> bodies_of(const Feature& feature, const Place& place) {
  Wood wood = taken_away(feature, place);
  std::vector<Body> bodies;
  for (const Box& box : wood.boxes)
    bodies.push_back({box});
  for (Polyhedron& block : wood.sloping) {
    const Box around = bounds_of(block);
    bodies.push_back({around, std::move(block)});
  }
  return bodies;
}

Box around_all(const std::vector<Body>& bodies) {
  Box box = bodies.front().box;
  for (const Body& body : bodies)
    box = around(box, body.box);
  return box;
}

/// The side of a piece that a recess opens to, along an axis of the assembly.
struct Mouth {
  std::size_t axis = 0;
  bool from_high = false;
};

/// Something that a fitting must keep clear of.
struct Obstacle {
  Body body;
  std::optional<std::size_t> joint;
  std::optional<std::size_t> other;  // the piece that stands there
  bool groove = false;
};

/// What one fitting takes out of one piece, each recess by itself.
struct Recesses {
  std::string_view fitting;  // its name
  std::size_t along;         // the leaf's axis along which the fitting can be moved
  std::vector<std::vector<Body>> each;
  std::vector<bool> round;
  std::vector<Mouth> mouths;
};

/// Whether a cut takes away the face of a piece that a recess opens to.
bool opens_face(const Box& cut, const Mouth& mouth, const Box& blank) {
  return mouth.from_high ? cut.high[mouth.axis] == blank.high[mouth.axis]
                         : cut.low[mouth.axis] == blank.low[mouth.axis];
}

/// Whether one box lies over all of another, as seen along an axis.
bool covers(const Box& cut, const Box& recess, std::size_t seen_along) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (axis != seen_along &&
        (cut.low[axis] > recess.low[axis] || cut.high[axis] < recess.high[axis]))
      return false;
  return true;
}

/// Whether a cut makes the surface that a fitting is let in to, as a rebate or a bevelled edge
/// does: it takes the piece's own face away all over each recess that opens there, and leaves wood
/// behind it.
bool makes_surface(const Box& cut, const Recesses& fitting, const Box& blank) {
  bool any = false;
  for (std::size_t i = 0; i < fitting.each.size(); ++i) {
    const Box recess = around_all(fitting.each[i]);
    const Mouth& mouth = fitting.mouths[i];
    if (!opens_face(cut, mouth, blank) || !in_shadow(cut, recess, mouth.axis)) continue;
    if (cut.extent(mouth.axis) >= blank.extent(mouth.axis)) return false;
    if (!covers(cut, recess, mouth.axis)) return false;
    any = true;
  }
  return any;
}

/// All that is cut in a piece, by its features.
using CutBodies = std::vector<std::vector<Body>>;

/// What else is cut in the piece. A mortise stands for the joint and the piece that enters it.
void add_features(std::vector<Obstacle>& obstacles, const Bench& bench, const Piece& piece,
                  const CutBodies& cut, const Recesses& fitting) {
  for (std::size_t number = 0; number < piece.features.size(); ++number) {
    const Feature& feature = piece.features[number];
    const std::vector<Body>& bodies = cut[number];
    if (feature.fitting && feature.fitting->name == fitting.fitting) continue;
    std::optional<std::size_t> joint;
    std::optional<std::size_t> other;
    const bool groove = feature.kind == FeatureKind::groove;
    if (!groove && feature.joints.size() == 1) {
      joint = feature.joints.front();
      const Joint& its = bench.assembly.joints[*joint];
      other = &bench.assembly.pieces[its.receives] == &piece ? its.enters : its.receives;
    }
    if (bodies.empty() || (!feature.fitting && feature.joints.empty() &&
                           makes_surface(around_all(bodies), fitting, placed_blank(piece))))
      continue;
    for (const Body& body : bodies)
      obstacles.push_back({body, joint, other, groove});
  }
}

/// Wood of other pieces, tenons and panels, where the fitting goes. A leaf that shuts into a rebate
/// of its frame is not in the way.
void add_wood(std::vector<Obstacle>& obstacles, const Bench& bench, std::size_t piece) {
  const Box& blank = bench.solids[piece].blank;
  for (std::size_t other = 0; other < bench.solids.size(); ++other) {
    if (other == piece || hanging_of(bench.assembly, piece) != hanging_of(bench.assembly, other) ||
        !interiors_meet(blank, bench.solids[other].blank))
      continue;
    const Wood there = clipped(bench.solids[other].wood, blank);
    for (const Box& box : there.boxes)
      obstacles.push_back({{box}, {}, other});
    for (const Polyhedron& block : there.sloping)
      obstacles.push_back({{bounds_of(block), block}, {}, other});
  }
}

/// The piece's own ends and edges that stand in other pieces: nothing can be let in to them there.
void add_seats(std::vector<Obstacle>& obstacles, const Bench& bench, std::size_t piece) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (joint.enters != piece) continue;
    if (const auto seat = common(bench.solids[piece].blank, bench.solids[joint.receives].blank))
      obstacles.push_back({{*seat}, number, joint.receives});
  }
}

Body moved(Body body, std::size_t along, Length by) {
  body.box.low[along] += by;
  body.box.high[along] += by;
  if (!body.sloping) return body;
  const auto steps = static_cast<double>(by.steps());
  for (Facet& facet : body.sloping->facets)
    facet.side.offset += facet.side.normal[along] * steps;
  for (Spot& corner : body.sloping->corners)
    corner[along] += steps;
  body.sloping->low[along] += steps;
  body.sloping->high[along] += steps;
  return body;
}

/// How far a fitting must be moved along its piece, one way, to stand in nothing.
Length way_out(const std::vector<Body>& fitting, const std::vector<Obstacle>& obstacles,
               std::size_t along, bool up) {
  Length gone;
  const auto next_step = [&]() -> Length {
    for (const Body& body : fitting) {
      const Body there = moved(body, along, up ? gone : -gone);
      for (const Obstacle& it : obstacles)
        if (meet(there, it.body))
          return up ? it.body.box.high[along] - there.box.low[along]
                    : there.box.high[along] - it.body.box.low[along];
    }
    return {};
  };
  for (Length step = next_step(); step > Length(); step = next_step())
    gone += step;
  return gone;
}

/// What lies nearest to a fitting, and how far off. Negative: it stands in something, and so far it
/// must be moved along the piece, the shorter way, to be clear of all.
struct Nearest {
  const Obstacle* obstacle = nullptr;
  Length wood;
};

Nearest nearest_to(const std::vector<Body>& fitting, const std::vector<Obstacle>& obstacles,
                   std::size_t along) {
  Nearest nearest;
  const Box room = around_all(fitting);
  for (const Obstacle& obstacle : obstacles) {
    if (nearest.obstacle != nullptr && apart_by(room, obstacle.body.box) >= nearest.wood) continue;
    for (const Body& body : fitting) {
      if (meet(body, obstacle.body))
        return {&obstacle, -std::min(way_out(fitting, obstacles, along, true),
                                     way_out(fitting, obstacles, along, false))};
      if (nearest.obstacle != nullptr && apart_by(body.box, obstacle.body.box) >= nearest.wood)
        continue;
      const Length distance = apart_by(body, obstacle.body);
      if (nearest.obstacle == nullptr || distance < nearest.wood) nearest = {&obstacle, distance};
    }
  }
  return nearest;
}

std::vector<Recesses> fittings_of(const Piece& piece, const CutBodies& cut) {
  std::vector<Recesses> fittings;
  for (std::size_t number = 0; number < piece.features.size(); ++number) {
    const Feature& feature = piece.features[number];
    if (!feature.fitting) continue;
    const std::string_view name = feature.fitting->name;
    auto its = std::find_if(fittings.begin(), fittings.end(),
                            [&](const Recesses& it) { return it.fitting == name; });
    if (its == fittings.end()) {
      const auto along = static_cast<std::size_t>(piece.place.axes[feature.fitting->into == 0]);
      its = fittings.insert(fittings.end(), {name, along, {}, {}, {}});
    }
    its->each.push_back(cut[number]);
    its->round.push_back(!feature.prisms.empty());
    its->mouths.push_back({static_cast<std::size_t>(piece.place.axes[feature.fitting->into]),
                           feature.fitting->from_high});
  }
  return fittings;
}

/// The least wood between a recess and the faces of its piece that it does not open to.
void note_walls(std::optional<Length>& least, const Box& recess, const Box& blank,
                const Mouth& mouth) {
  const auto note = [&](Length wood) {
    if (wood > Length() && (!least || wood < *least)) least = wood;
  };
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (axis != mouth.axis || mouth.from_high) note(recess.low[axis] - blank.low[axis]);
    if (axis != mouth.axis || !mouth.from_high) note(blank.high[axis] - recess.high[axis]);
  }
}

/// Of a hole that goes right through, the wood from it to the piece's grooves. Where it is so
/// little that it is a clash, that is told already.
void check_through(Bench& bench, std::size_t piece, const std::vector<Body>& hole,
                   std::vector<Obstacle> obstacles, std::size_t along) {
  std::erase_if(obstacles, [](const Obstacle& it) { return !it.groove; });
  const Nearest nearest = nearest_to(hole, obstacles, along);
  if (nearest.obstacle == nullptr || nearest.wood < bench.limits.thin_wood) return;
  report(bench, kThrough, {piece}, {}, nearest.wood, Bounds{{}, {}, bench.limits.thin_at_hole, {}});
}

void check_fitting_in(Bench& bench, std::size_t piece, const CutBodies& cut,
                      const Recesses& fitting) {
  const Piece& its = bench.assembly.pieces[piece];
  const Box& blank = bench.solids[piece].blank;
  const Bounds bounds{bench.limits.least_wood, {}, bench.limits.thin_wood, {}};
  std::vector<Obstacle> obstacles;
  add_features(obstacles, bench, its, cut, fitting);
  add_wood(obstacles, bench, piece);
  add_seats(obstacles, bench, piece);
  std::vector<Body> all;
  std::optional<Length> wall;
  for (std::size_t i = 0; i < fitting.each.size(); ++i) {
    const std::vector<Body>& recess = fitting.each[i];
    all.insert(all.end(), recess.begin(), recess.end());
    note_walls(wall, around_all(recess), blank, fitting.mouths[i]);
  }
  if (const Nearest nearest = nearest_to(all, obstacles, fitting.along);
      nearest.obstacle != nullptr) {
    std::vector<std::size_t> parts{piece};
    if (nearest.obstacle->other) parts.push_back(*nearest.obstacle->other);
    report(bench, kClash, parts, nearest.obstacle->joint, nearest.wood, bounds);
  }
  if (wall) report(bench, kWall, {piece}, {}, *wall, bounds);
  const auto through = static_cast<std::size_t>(its.place.axes[2]);
  for (std::size_t i = 0; i < fitting.each.size(); ++i)
    if (fitting.round[i] && around_all(fitting.each[i]).extent(through) == blank.extent(through))
      check_through(bench, piece, fitting.each[i], obstacles, fitting.along);
}

/// Checks one fitting, and says of which each finding is.
void check_fitting(Bench& bench, std::size_t piece, const CutBodies& cut, const Recesses& fitting) {
  const auto before = std::ssize(bench.findings);
  check_fitting_in(bench, piece, cut, fitting);
  for (auto its = bench.findings.begin() + before; its != bench.findings.end(); ++its)
    its->fitting = fitting.fitting;
}

}  // namespace

void check_clashes(Bench& bench) {
  for (std::size_t piece = 0; piece < bench.assembly.pieces.size(); ++piece) {
    const Piece& its = bench.assembly.pieces[piece];
    const auto is_let_in = [](const Feature& feature) { return feature.fitting.has_value(); };
    if (std::none_of(its.features.begin(), its.features.end(), is_let_in)) continue;
    CutBodies cut;
    for (const Feature& feature : its.features)
      cut.push_back(bodies_of(feature, its.place));
    for (const Recesses& fitting : fittings_of(its, cut))
      check_fitting(bench, piece, cut, fitting);
  }
}

std::vector<const Rule*> rules_of_clashes() {
  return {&kClash, &kWall, &kThrough};
}

}  // namespace haunch
