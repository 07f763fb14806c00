#include "solid.h"

#include <algorithm>
#include <utility>

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

}  // namespace

void take_out(std::vector<Box>& boxes, const Box& cut) {
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

Solid solid_of(const Piece& piece) {
  Solid solid{placed_blank(piece), {}};
  solid.wood.reserve(32);
  solid.wood.push_back(solid.blank);
  for (const Feature& feature : piece.features)
    for (const Box& cut : feature.cuts)
      take_out(solid.wood, placed(cut, piece.place));
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
  std::vector<Box> inside;
  for (const Box& box : boxes)
    if (const auto part = common(box, region)) inside.push_back(*part);
  return inside;
}

bool in_shadow(const Box& a, const Box& b, std::size_t axis) {
  for (std::size_t other = 0; other < 3; ++other)
    if (other != axis && (a.high[other] <= b.low[other] || b.high[other] <= a.low[other]))
      return false;
  return true;
}

std::optional<Length> gap(const std::vector<Box>& from, const std::vector<Box>& to, Way way) {
  std::optional<Length> least;
  for (const Box& a : from) {
    for (const Box& b : to) {
      if (!in_shadow(a, b, way.axis)) continue;
      const bool beyond =
          way.upwards ? b.high[way.axis] > a.high[way.axis] : b.low[way.axis] < a.low[way.axis];
      if (!beyond) continue;
      const Length distance =
          way.upwards ? b.low[way.axis] - a.high[way.axis] : a.low[way.axis] - b.high[way.axis];
      if (!least || distance < *least) least = distance;
    }
  }
  return least;
}

}  // namespace haunch
