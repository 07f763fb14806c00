#include "volume.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "solid.h"

namespace haunch {
namespace {

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / Length::kStepsPerMm;
}

double volume_of(const Prism& prism) {
  double twice = 0;
  const Corner* before = &prism.outline.back();
  for (const Corner& corner : prism.outline) {
    twice += in_mm(before->u) * in_mm(corner.v) - in_mm(corner.u) * in_mm(before->v);
    before = &corner;
  }
  return std::abs(twice) / 2 * in_mm(prism.to - prism.from);
}

bool holds(const Box& outer, const Box& inner) {
  return around(outer, inner) == outer;
}

/// A sloping cut, and the box around it.
struct Hole {
  const Prism* prism;
  Box room;
};

/// Whether there is wood all round it, and no other cut in that.
bool stands_alone(const Hole& hole, const std::vector<Hole>& holes, const Wood& wood) {
  return std::any_of(wood.boxes.begin(), wood.boxes.end(),
                     [&](const Box& box) { return holds(box, hole.room); }) &&
         std::none_of(holes.begin(), holes.end(), [&](const Hole& other) {
           return &other != &hole && interiors_meet(other.room, hole.room);
         });
}

}  // namespace

double volume_left(const Piece& piece) {
  Wood wood{{Box{{}, piece.blank}}, {}};
  std::vector<Hole> holes;
  for (const Feature& feature : piece.features) {
    for (const Box& cut : feature.cuts)
      take_out(wood.boxes, cut);
    for (const Prism& prism : feature.prisms)
      holes.push_back({&prism, bounds_of(prism)});
  }
  double bored = 0;
  std::vector<const Prism*> others;
  for (const Hole& hole : holes)
    if (stands_alone(hole, holes, wood))
      bored += volume_of(*hole.prism);
    else
      others.push_back(hole.prism);
  for (const Prism* cut : others)
    take_out(wood, *cut);
  return volume_of(Solid{{}, std::move(wood)}) - bored;
}

}  // namespace haunch
