#include "solid.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <memory>
#include <utility>

#include "allowance.h"
#include "rounding.h"

namespace haunch {
namespace {

/// Adds what is left of `box` when `cut`, which meets it, is taken out: up to six boxes, two an
/// axis.
void add_rest(std::vector<Box>& rest, Box box, const Box& cut) {
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (box.low[axis] < cut.low[axis]) {
      Box below = box;
      below.high[axis] = box.low[axis] = cut.low[axis];
      rest.push_back(below);
    }
    if (cut.high[axis] < box.high[axis]) {
      Box above = box;
      above.low[axis] = box.high[axis] = cut.high[axis];
      rest.push_back(above);
    }
  }
}

/// The least box of whole steps that holds a block.
Box box_around(const Polyhedron& block) {
  Box box;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    box.low[axis] = nearest_step(std::floor(block.low[axis]));
    box.high[axis] = nearest_step(std::ceil(block.high[axis]));
  }
  return box;
}

void add_all(std::vector<Polyhedron>& polyhedra, std::vector<Polyhedron> more) {
  polyhedra.insert(polyhedra.end(), std::make_move_iterator(more.begin()),
                   std::make_move_iterator(more.end()));
}

std::vector<Polyhedron> less(std::vector<Polyhedron> polyhedra, const Polyhedron& cut) {
  std::vector<Polyhedron> rest;
  rest.reserve(polyhedra.size());
  for (Polyhedron& block : polyhedra) {
    if (apart(block, cut))
      rest.push_back(std::move(block));
    else
      add_all(rest, less(std::move(block), cut));
  }
  return rest;
}

bool is_cut(const Feature& feature, Fittings fittings) {
  return !feature.fitting || fittings == Fittings::let_in;
}

/// Takes sloping cuts out of wood whose other cuts are made.
void take_out_prisms(Wood& wood, const Piece& piece, Fittings fittings) {
  for (const Feature& feature : piece.features) {
    if (!is_cut(feature, fittings)) continue;
    for (const Prism& prism : feature.prisms)
      for (const Polyhedron& cut : polyhedra_of(placed(prism, piece.place)))
        take_out(wood, cut);
  }
}

/// From one box on to another: no distance between what is in them is less.
Length nearest(const Box& from, const Box& to, Way way) {
  return way.upwards ? to.low[way.axis] - from.high[way.axis]
                     : from.low[way.axis] - to.high[way.axis];
}

/// What of `to` is in the shadow of `from` may be nearer than `least`.
bool may_be_nearer(const Box& from, const Box& to, Way way, std::optional<Length> least) {
  return in_shadow(from, to, way.axis) && (!least || nearest(from, to, way) < *least);
}

/// A part of some wood: a box, or what slopes in it.
struct Block {
  Box room;
  const Polyhedron* sloping = nullptr;
};

std::vector<Block> blocks_of(const Wood& wood) {
  std::vector<Block> blocks;
  blocks.reserve(wood.boxes.size() + wood.sloping.size());
  for (const Box& box : wood.boxes)
    blocks.push_back({box});
  for (const Polyhedron& block : wood.sloping)
    blocks.push_back({box_around(block), &block});
  return blocks;
}

/// Two parts, one of which slopes, in the shadow of each other.
struct Pair {
  double bound;  // no distance from the one to the other is less
  const Polyhedron* from;
  const Polyhedron* to;
};

/// The parts of some wood as polyhedra, made of boxes where they are asked for.
class Shapes {
 public:
  explicit Shapes(const std::vector<Block>& blocks) : blocks_(blocks), of_boxes_(blocks.size()) {}

  const Polyhedron* operator[](std::size_t number) {
    if (blocks_[number].sloping != nullptr) return blocks_[number].sloping;
    auto& shape = of_boxes_[number];
    if (!shape) shape = std::make_unique<Polyhedron>(polyhedron_of(blocks_[number].room));
    return shape.get();
  }

 private:
  const std::vector<Block>& blocks_;
  std::vector<std::unique_ptr<Polyhedron>> of_boxes_;
};

/// The pairs of which one slopes and which may be nearer than `least`.
std::vector<Pair> pairs_of(Shapes& from_shapes, const std::vector<Block>& from, Shapes& to_shapes,
                           const std::vector<Block>& to, Way way, std::optional<Length> least) {
  spend_effort(from.size() * to.size());
  std::vector<Pair> pairs;
  for (std::size_t i = 0; i < from.size(); ++i)
    for (std::size_t j = 0; j < to.size(); ++j) {
      if (from[i].sloping == nullptr && to[j].sloping == nullptr) continue;
      if (!may_be_nearer(from[i].room, to[j].room, way, least)) continue;
      const Polyhedron* const one = from_shapes[i];
      const Polyhedron* const other = to_shapes[j];
      pairs.push_back({least_possible_gap(*one, *other, way), one, other});
    }
  std::sort(pairs.begin(), pairs.end(),
            [](const Pair& a, const Pair& b) { return a.bound < b.bound; });
  return pairs;
}

void note_lesser(std::optional<Length>& least, std::optional<Length> found) {
  if (found && (!least || *found < *least)) least = found;
}

Length least_extent(const Box& box) {
  return std::min({box.extent(0), box.extent(1), box.extent(2)});
}

}  // namespace

void take_out(Wood& wood, const Box& cut) {
  take_out(wood.boxes, cut);
  if (!wood.sloping.empty()) wood.sloping = less(std::move(wood.sloping), polyhedron_of(cut));
}

void take_out(Wood& wood, const Polyhedron& cut) {
  const Box room = box_around(cut);
  wood.sloping = less(std::move(wood.sloping), cut);
  for (const Box& part : clipped(wood.boxes, room))
    add_all(wood.sloping, less(polyhedron_of(part), cut));
  take_out(wood.boxes, room);
}

void take_out(std::vector<Box>& boxes, const Box& cut) {
  spend_effort(boxes.size());
  std::vector<Box> rest;
  std::size_t kept = 0;
  for (const Box& box : boxes) {
    if (interiors_meet(box, cut))
      add_rest(rest, box, cut);
    else
      boxes[kept++] = box;
  }
  boxes.resize(kept);
  boxes.insert(boxes.end(), rest.begin(), rest.end());
}

Solid solid_of(const Piece& piece, Fittings fittings) {
  Solid solid{placed_blank(piece), {}};
  std::vector<Box>& boxes = solid.wood.boxes;
  boxes.reserve(32);
  boxes.push_back(solid.blank);
  for (const Feature& feature : piece.features) {
    if (!is_cut(feature, fittings)) continue;
    for (const Box& cut : feature.cuts)
      take_out(boxes, placed(cut, piece.place));
  }
  take_out_prisms(solid.wood, piece, fittings);
  return solid;
}

std::vector<Solid> solids_of(const Assembly& assembly) {
  std::vector<Solid> solids;
  solids.reserve(assembly.pieces.size());
  for (const Piece& piece : assembly.pieces)
    solids.push_back(solid_of(piece));
  return solids;
}

std::optional<Box> common(const Box& a, const Box& b) {
  if (!interiors_meet(a, b)) return {};
  Box result;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    result.low[axis] = std::max(a.low[axis], b.low[axis]);
    result.high[axis] = std::min(a.high[axis], b.high[axis]);
  }
  return result;
}

std::vector<Box> clipped(const std::vector<Box>& boxes, const Box& region) {
  spend_effort(boxes.size());
  std::vector<Box> inside;
  for (const Box& box : boxes)
    if (const auto part = common(box, region)) inside.push_back(*part);
  return inside;
}

namespace {

/// Whether a block lies in the box around another, all of it.
bool is_inside(const Polyhedron& block, const Polyhedron& other) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (block.low[axis] < other.low[axis] || block.high[axis] > other.high[axis]) return false;
  return true;
}

}  // namespace

Wood clipped(const Wood& wood, const Box& region) {
  Wood inside{clipped(wood.boxes, region), {}};
  if (wood.sloping.empty()) return inside;
  const Polyhedron all = polyhedron_of(region);
  spend_effort(wood.sloping.size());
  for (const Polyhedron& block : wood.sloping) {
    if (is_inside(block, all))
      inside.sloping.push_back(block);
    else if (auto part = common(block, all))
      inside.sloping.push_back(std::move(*part));
  }
  return inside;
}

std::vector<Box> bounds_of(const Wood& wood) {
  std::vector<Box> bounds = wood.boxes;
  for (const Polyhedron& block : wood.sloping)
    bounds.push_back(bounds_of(block));
  return bounds;
}

void add(Wood& all, const Wood& more) {
  all.boxes.insert(all.boxes.end(), more.boxes.begin(), more.boxes.end());
  all.sloping.insert(all.sloping.end(), more.sloping.begin(), more.sloping.end());
}

Wood taken_away(const Feature& feature, const Place& place) {
  Wood wood;
  for (const Box& cut : feature.cuts)
    wood.boxes.push_back(placed(cut, place));
  for (const Prism& prism : feature.prisms)
    for (Polyhedron& block : polyhedra_of(placed(prism, place)))
      wood.sloping.push_back(std::move(block));
  return wood;
}

Box room_of(const Wood& wood) {
  Box room = wood.boxes.empty() ? bounds_of(wood.sloping.front()) : wood.boxes.front();
  for (const Box& box : wood.boxes)
    room = around(room, box);
  for (const Polyhedron& part : wood.sloping)
    room = around(room, bounds_of(part));
  return room;
}

bool in_shadow(const Box& a, const Box& b, std::size_t axis) {
  for (std::size_t other = 0; other < 3; ++other)
    if (other != axis && (a.high[other] <= b.low[other] || b.high[other] <= a.low[other]))
      return false;
  return true;
}

std::optional<Length> gap(const Box& from, const Box& to, Way way) {
  if (!in_shadow(from, to, way.axis)) return {};
  const bool beyond =
      way.upwards ? to.high[way.axis] > from.high[way.axis] : to.low[way.axis] < from.low[way.axis];
  if (!beyond) return {};
  return way.upwards ? to.low[way.axis] - from.high[way.axis]
                     : from.low[way.axis] - to.high[way.axis];
}

std::optional<Length> gap(const std::vector<Box>& from, const std::vector<Box>& to, Way way) {
  spend_effort(from.size() * to.size());
  std::optional<Length> least;
  for (const Box& a : from)
    for (const Box& b : to)
      note_lesser(least, gap(a, b, way));
  return least;
}

std::optional<Length> gap(const Wood& from, const Wood& to, Way way) {
  std::optional<Length> least = gap(from.boxes, to.boxes, way);
  if (from.sloping.empty() && to.sloping.empty()) return least;
  const std::vector<Block> blocks = blocks_of(from);
  const std::vector<Block> walls = blocks_of(to);
  Shapes from_shapes(blocks);
  Shapes to_shapes(walls);
  for (const Pair& pair : pairs_of(from_shapes, blocks, to_shapes, walls, way, least)) {
    if (least && pair.bound >= static_cast<double>(least->steps())) break;
    note_lesser(least, gap(*pair.from, *pair.to, way));
  }
  return least;
}

Length depth_of_common(const Wood& a, const Wood& b) {
  spend_effort((a.boxes.size() + a.sloping.size()) * (b.boxes.size() + b.sloping.size()));
  Length deepest;
  const auto note = [&](const std::optional<Polyhedron>& both) {
    if (both) deepest = std::max(deepest, least_width(*both));
  };
  for (const Box& box : a.boxes) {
    for (const Box& other : b.boxes)
      if (const auto both = common(box, other)) deepest = std::max(deepest, least_extent(*both));
    for (const Polyhedron& block : b.sloping)
      if (interiors_meet(box, box_around(block))) note(common(block, polyhedron_of(box)));
  }
  for (const Polyhedron& block : a.sloping) {
    for (const Box& box : b.boxes)
      if (interiors_meet(box, box_around(block))) note(common(block, polyhedron_of(box)));
    for (const Polyhedron& other : b.sloping)
      note(common(block, other));
  }
  return deepest;
}

double volume_of(const Solid& solid) {
  double volume = 0;
  for (const Box& box : solid.wood.boxes) {
    double product = 1;
    for (std::size_t axis = 0; axis < 3; ++axis)
      product *= static_cast<double>(box.extent(axis).steps()) / Length::kStepsPerMm;
    volume += product;
  }
  for (const Polyhedron& block : solid.wood.sloping)
    volume += volume_of(block);
  return volume;
}

}  // namespace haunch
