#include "solid.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <memory>
#include <utility>

#include "effort_spent.h"
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

/// Takes `cut` out of each of some blocks; those that it does not meet stay as they are.
void take_out(std::vector<Polyhedron>& blocks, const Polyhedron& cut) {
  std::vector<Polyhedron> rest;
  std::size_t kept = 0;
  for (Polyhedron& block : blocks) {
    if (!apart(block, cut)) {
      add_rest(rest, std::move(block), cut);
    } else {
      if (&block != &blocks[kept]) blocks[kept] = std::move(block);
      ++kept;
    }
  }
  blocks.resize(kept);
  blocks.insert(blocks.end(), std::make_move_iterator(rest.begin()),
                std::make_move_iterator(rest.end()));
}

bool is_cut(const Feature& feature, Fittings fittings) {
  return !feature.fitting || fittings == Fittings::let_in;
}

/// Takes sloping cuts out of wood whose other cuts are made.
void take_out_prisms(Wood& wood, const Piece& piece, Fittings fittings) {
  for (const Feature& feature : piece.features) {
    if (!is_cut(feature, fittings)) continue;
    for (const Prism& prism : feature.prisms)
      take_out(wood, placed(prism, piece.place));
  }
}

/// A part of some wood: a box, or what slopes in it.
struct Block {
  Spot low, high;  // of the box around it
  const Box* box = nullptr;
  const Polyhedron* sloping = nullptr;
};

Block block_of(const Box& box) {
  Block block{{}, {}, &box};
  for (std::size_t axis = 0; axis < 3; ++axis) {
    block.low[axis] = static_cast<double>(box.low[axis].steps());
    block.high[axis] = static_cast<double>(box.high[axis].steps());
  }
  return block;
}

Block block_of(const Polyhedron& part) {
  return {part.low, part.high, nullptr, &part};
}

/// In steps, of a box only what is looked at: most are seen to be elsewhere along one axis.
double in_steps(double place) {
  return place;
}
double in_steps(Length place) {
  return static_cast<double>(place.steps());
}
template <typename One, typename Other>
bool is_below(const One& a, const Other& b, std::size_t axis) {
  return in_steps(a.high[axis]) <= in_steps(b.low[axis]);
}

/// Of blocks, boxes, polyhedra and whatever else has a low and a high corner.
template <typename One, typename Other>
bool in_shadow(const One& a, const Other& b, std::size_t axis) {
  for (std::size_t other = 0; other < 3; ++other)
    if (other != axis && (is_below(a, b, other) || is_below(b, a, other))) return false;
  return true;
}

template <typename One, typename Other>
bool meet(const One& a, const Other& b) {
  return in_shadow(a, b, 2) && !is_below(b, a, 2) && !is_below(a, b, 2);
}

/// Whether `to` may go on beyond something of `from`, in its shadow.
template <typename One, typename Other>
bool may_go_on(const One& from, const Other& to, Way way) {
  const bool short_of = way.upwards ? is_below(to, from, way.axis) : is_below(from, to, way.axis);
  return !short_of && in_shadow(from, to, way.axis);
}

/// No distance from one block to another is less.
double nearest(const Block& from, const Block& to, Way way) {
  return way.upwards ? to.low[way.axis] - from.high[way.axis]
                     : from.low[way.axis] - to.high[way.axis];
}

/// The parts of wood that are `wanted`: boxes as blocks, and polyhedra.
template <typename Wanted>
std::vector<Block> blocks_of(const Wood& wood, const Wanted& wanted) {
  spend_effort(wood.boxes.size() + wood.sloping.size());
  std::vector<Block> blocks;
  for (const Box& box : wood.boxes)
    if (wanted(box)) blocks.push_back(block_of(box));
  for (const Polyhedron& part : wood.sloping)
    if (wanted(part)) blocks.push_back(block_of(part));
  return blocks;
}

/// Makes a room wide enough for a part as well.
template <typename Part>
void widen(Block& room, const Part& part) {
  for (std::size_t axis = 0; axis < 3; ++axis) {
    room.low[axis] = std::min(room.low[axis], part.low[axis]);
    room.high[axis] = std::max(room.high[axis], part.high[axis]);
  }
}

/// The box around some parts, which is none of them.
Block around(const std::vector<Block>& blocks) {
  Block room{blocks.front().low, blocks.front().high};
  for (const Block& block : blocks)
    widen(room, block);
  return room;
}

Block around(const Wood& wood) {
  Block room = wood.boxes.empty() ? block_of(wood.sloping.front()) : block_of(wood.boxes.front());
  for (const Box& box : wood.boxes)
    widen(room, block_of(box));
  for (const Polyhedron& part : wood.sloping)
    widen(room, part);
  return room;
}

/// Calls `look` with each two that overlap along an axis.
template <typename Look>
void sweep(std::vector<Block>& from, std::vector<Block>& to, std::size_t axis, const Look& look) {
  for (std::vector<Block>* blocks : {&from, &to})
    std::sort(blocks->begin(), blocks->end(),
              [&](const Block& a, const Block& b) { return a.low[axis] < b.low[axis]; });
  std::vector<const Block*> beside;
  auto next = to.begin();
  for (const Block& block : from) {
    for (; next != to.end() && next->low[axis] < block.high[axis]; ++next)
      beside.push_back(&*next);
    std::erase_if(beside, [&](const Block* it) { return it->high[axis] <= block.low[axis]; });
    spend_effort(beside.size());
    for (const Block* it : beside)
      look(block, *it);
  }
}

/// Of the two axes that are not `along` the one on which blocks are narrower, all together.
std::size_t narrower_axis(const std::vector<Block>& blocks, std::size_t along) {
  const auto [u, v] = across_axes(along);
  double more = 0;
  for (const Block& block : blocks)
    more += (block.high[u] - block.low[u]) - (block.high[v] - block.low[v]);
  return more < 0 ? u : v;
}

/// Two parts, one of which slopes, in the shadow of each other.
struct Pair {
  double bound;  // no distance from the one to the other is less
  const Block* from;
  const Block* to;
};

/// The axis along which what slopes runs, most likely: that of the first of it.
std::size_t run_axis(const Wood& wood) {
  const std::size_t along = wood.sloping.empty() ? kNoAxis : wood.sloping.front().along;
  return along == kNoAxis ? 2 : along;
}

/// The parts of some wood as polyhedra, made of boxes where they are asked for, as runs along an
/// axis.
class Shapes {
 public:
  Shapes(const std::vector<Block>& blocks, std::size_t along)
      : blocks_(blocks), along_(along), of_boxes_(blocks.size()) {}

  const Polyhedron& operator[](const Block* block) {
    if (block->sloping != nullptr) return *block->sloping;
    auto& shape = of_boxes_[static_cast<std::size_t>(block - blocks_.data())];
    if (!shape) shape = std::make_unique<Polyhedron>(polyhedron_of(*block->box, along_));
    return *shape;
  }

 private:
  const std::vector<Block>& blocks_;
  std::size_t along_;
  std::vector<std::unique_ptr<Polyhedron>> of_boxes_;
};

void note_lesser(std::optional<Length>& least, std::optional<Length> found) {
  if (found && (!least || *found < *least)) least = found;
}

Length least_extent(const Box& box) {
  return std::min({box.extent(0), box.extent(1), box.extent(2)});
}

}  // namespace

void take_out(Wood& wood, const Box& cut) {
  take_out(wood.boxes, cut);
  if (!wood.sloping.empty()) take_out(wood.sloping, polyhedron_of(cut));
}

void take_out(Wood& wood, const Polyhedron& cut) {
  const Box room = box_around(cut);
  take_out(wood.sloping, cut);
  for (const Box& part : clipped(wood.boxes, room))
    add_rest(wood.sloping, polyhedron_of(part, cut.along == kNoAxis ? 2 : cut.along), cut);
  take_out(wood.boxes, room);
}

namespace {

/// Takes the wood out that reaches into a region: of boxes what lies there, of the rest each as a
/// whole.
Wood lifted_out(Wood& wood, const Box& region) {
  Wood there{clipped(wood.boxes, region), {}};
  take_out(wood.boxes, region);
  const Block room = block_of(region);
  const auto first =
      std::stable_partition(wood.sloping.begin(), wood.sloping.end(),
                            [&](const Polyhedron& part) { return !meet(part, room); });
  there.sloping.assign(std::make_move_iterator(first), std::make_move_iterator(wood.sloping.end()));
  wood.sloping.erase(first, wood.sloping.end());
  return there;
}

}  // namespace

void take_out(Wood& wood, const Prism& cut) {
  Wood there = lifted_out(wood, bounds_of(cut));
  Box slab = bounds_of(cut);
  const std::size_t u = across_axes(cut.along).u;
  for (const Polyhedron& strip : polyhedra_of(cut)) {
    take_out(there.sloping, strip);
    slab.low[u] = bounds_of(strip).low[u];
    slab.high[u] = bounds_of(strip).high[u];
    // In one part from side to side, so that the wood comes to as few parts as can be.
    for (const Box& part : clipped(there.boxes, slab))
      add_rest(there.sloping, polyhedron_of(part, cut.along), strip);
    take_out(there.boxes, slab);
  }
  add(wood, std::move(there));
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

Wood clipped(const Wood& wood, const Box& region) {
  Wood inside{clipped(wood.boxes, region), {}};
  spend_effort(wood.sloping.size());
  for (const Polyhedron& block : wood.sloping)
    if (auto part = clipped(block, region)) inside.sloping.push_back(std::move(*part));
  return inside;
}

std::vector<Box> bounds_of(const Wood& wood) {
  std::vector<Box> bounds = wood.boxes;
  for (const Polyhedron& block : wood.sloping)
    bounds.push_back(bounds_of(block));
  return bounds;
}

void add(Wood& all, Wood more) {
  all.boxes.insert(all.boxes.end(), more.boxes.begin(), more.boxes.end());
  all.sloping.insert(all.sloping.end(), std::make_move_iterator(more.sloping.begin()),
                     std::make_move_iterator(more.sloping.end()));
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

namespace {

/// The box around some blocks, to the nearest step.
Box room_of(const std::vector<Polyhedron>& blocks) {
  Spot low = blocks.front().low;
  Spot high = blocks.front().high;
  for (const Polyhedron& block : blocks)
    for (std::size_t axis = 0; axis < 3; ++axis) {
      low[axis] = std::min(low[axis], block.low[axis]);
      high[axis] = std::max(high[axis], block.high[axis]);
    }
  return box_of(low, high);
}

Box room_of(const std::vector<Box>& boxes) {
  Box room = boxes.front();
  for (const Box& box : boxes)
    room = around(room, box);
  return room;
}

}  // namespace

Box room_of(const Wood& wood) {
  if (wood.sloping.empty()) return room_of(wood.boxes);
  const Box sloping = room_of(wood.sloping);
  return wood.boxes.empty() ? sloping : around(sloping, room_of(wood.boxes));
}

bool in_shadow(const Box& a, const Box& b, std::size_t axis) {
  for (std::size_t other = 0; other < 3; ++other)
    if (other != axis && (a.high[other] <= b.low[other] || b.high[other] <= a.low[other]))
      return false;
  return true;
}

Length apart_by(const Box& a, const Box& b) {
  const auto on = [&](std::size_t axis) {
    return std::max(a.low[axis] - b.high[axis], b.low[axis] - a.high[axis]);
  };
  return std::max({on(0), on(1), on(2)});
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
  if (from.empty()) return {};
  spend_effort(from.size() * to.size());
  const Box room = room_of(from);
  std::optional<Length> least;
  for (const Box& wall : to) {
    if (!in_shadow(room, wall, way.axis)) continue;
    for (const Box& box : from)
      note_lesser(least, gap(box, wall, way));
  }
  return least;
}

namespace {

/// The least of pairs of which one slopes, and of what was found before. Those that may be nearest
/// come first, so that most need not be looked at.
std::optional<Length> least_gap(std::vector<Pair> pairs, Shapes from_shapes, Shapes to_shapes,
                                Way way, std::optional<Length> least) {
  const auto is_far = [&](double bound) {
    return least && bound >= static_cast<double>(least->steps());
  };
  std::erase_if(pairs, [&](const Pair& pair) { return is_far(pair.bound); });
  std::sort(pairs.begin(), pairs.end(),
            [](const Pair& a, const Pair& b) { return a.bound < b.bound; });
  for (const Pair& pair : pairs) {
    if (is_far(pair.bound)) break;
    const Polyhedron& one = from_shapes[pair.from];
    const Polyhedron& other = to_shapes[pair.to];
    if (!is_far(least_possible_gap(one, other, way))) note_lesser(least, gap(one, other, way));
  }
  return least;
}

}  // namespace

std::optional<Length> gap(const Wood& from, const Wood& to, Way way) {
  if (from.empty()) return {};
  if (from.sloping.empty() && to.sloping.empty()) return gap(from.boxes, to.boxes, way);
  const Block room = around(from);
  std::vector<Block> walls =
      blocks_of(to, [&](const auto& wall) { return may_go_on(room, wall, way); });
  if (walls.empty()) return {};
  const Block beyond = around(walls);
  std::vector<Block> blocks =
      blocks_of(from, [&](const auto& part) { return may_go_on(part, beyond, way); });
  std::optional<Length> least;
  std::vector<Pair> pairs;
  sweep(blocks, walls, narrower_axis(walls, way.axis), [&](const Block& one, const Block& other) {
    if (one.box != nullptr && other.box != nullptr)
      note_lesser(least, gap(*one.box, *other.box, way));
    else if (may_go_on(one, other, way))
      pairs.push_back({nearest(one, other, way), &one, &other});
  });
  return least_gap(std::move(pairs), Shapes(blocks, run_axis(to)), Shapes(walls, run_axis(from)),
                   way, least);
}

namespace {

/// What of `a` and `b` meets `region`, in which lies all that they have in common.
Length depth_of_common(const std::vector<Box>& a, const std::vector<Box>& b, const Box& region) {
  std::vector<Box> near;
  std::copy_if(b.begin(), b.end(), std::back_inserter(near),
               [&](const Box& box) { return interiors_meet(box, region); });
  spend_effort(a.size() + b.size());
  Length deepest;
  for (const Box& box : a) {
    if (near.empty() || !interiors_meet(box, region)) continue;
    spend_effort(near.size());
    for (const Box& other : near)
      if (const auto both = common(box, other)) deepest = std::max(deepest, least_extent(*both));
  }
  return deepest;
}

/// Few that meet as boxes do as what they are: most of a joint merely touches.
Length width_of_common(const Polyhedron& a, const Polyhedron& b) {
  if (touch_at_most(a, b)) return {};
  const auto both = common(a, b);
  return both ? least_width(*both) : Length();
}

Length depth_of_common(const Wood& a, const Wood& b, const Box& region) {
  if (a.sloping.empty() && b.sloping.empty()) return depth_of_common(a.boxes, b.boxes, region);
  const Block there = block_of(region);
  const auto is_there = [&](const auto& part) { return meet(part, there); };
  std::vector<Block> of_a = blocks_of(a, is_there);
  std::vector<Block> of_b = blocks_of(b, is_there);
  Shapes shapes_of_a(of_a, run_axis(b));
  Shapes shapes_of_b(of_b, run_axis(a));
  Length deepest;
  sweep(of_a, of_b, narrower_axis(of_a, 2), [&](const Block& one, const Block& other) {
    if (!meet(one, other)) return;
    if (one.box != nullptr && other.box != nullptr)
      deepest = std::max(deepest, least_extent(*common(*one.box, *other.box)));
    else
      deepest = std::max(deepest, width_of_common(shapes_of_a[&one], shapes_of_b[&other]));
  });
  return deepest;
}

}  // namespace

Length depth_of_common(const Wood& a, const Wood& b) {
  if (a.empty() || b.empty()) return {};
  const auto region = common(room_of(a), room_of(b));
  return region ? depth_of_common(a, b, *region) : Length();
}

Length depth_of_common(const Solid& a, const Solid& b) {
  const auto region = common(a.blank, b.blank);
  return region ? depth_of_common(a.wood, b.wood, *region) : Length();
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
