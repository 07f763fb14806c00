#include "alike.h"

#include <algorithm>
#include <vector>

#include "polyhedron.h"

namespace haunch {
namespace {

/// What a sloping cut takes away, as figures to be compared.
using Figures = std::vector<Length>;

std::array<Length, 6> figures_of(const Box& box) {
  return {box.low[0], box.low[1], box.low[2], box.high[0], box.high[1], box.high[2]};
}

/// A place along the assembly's axes, as seen from a junction.
Triple seen_from(const Junction& junction, const Triple& place) {
  return junction.from_assembly(Box{place, place}).low;
}

/// From where to where a prism runs, and its outline. That begins at its least corner and goes on
/// to the lesser of the two beside it, wherever and whichever way round it was drawn.
Figures figures_of(const Prism& prism, const Junction& junction) {
  const auto [u, v] = across_axes(prism.along);
  const std::array<Length, 6> bounds = figures_of(junction.from_assembly(bounds_of(prism)));
  Figures all(bounds.begin(), bounds.end());
  std::vector<Triple> corners;
  for (const Corner& corner : prism.outline) {
    Triple place = junction.origin;
    place[u] = corner.u;
    place[v] = corner.v;
    corners.push_back(seen_from(junction, place));
  }
  const std::size_t count = corners.size();
  const auto first =
      static_cast<std::size_t>(std::min_element(corners.begin(), corners.end()) - corners.begin());
  const bool onwards = corners[(first + 1) % count] < corners[(first + count - 1) % count];
  const std::size_t stride = onwards ? 1 : count - 1;
  for (std::size_t i = 0; i < count; ++i) {
    const Triple& corner = corners[(first + i * stride) % count];
    all.insert(all.end(), corner.begin(), corner.end());
  }
  return all;
}

/// Whether two joints are to have the same clearances, of whatever size.
bool are_designed_alike(const Joint& a, const Joint& b) {
  const Clearances& one = a.design;
  const Clearances& other = b.design;
  return a.kind == b.kind && a.arched == b.arched && a.has_shoulder == b.has_shoulder &&
         a.tenon.has_value() == b.tenon.has_value() && a.tails.has_value() == b.tails.has_value() &&
         one.edges.has_value() == other.edges.has_value() &&
         one.bottom.has_value() == other.bottom.has_value() &&
         one.bite.has_value() == other.bite.has_value() &&
         one.bearing.has_value() == other.bearing.has_value() &&
         one.edge.has_value() == other.edge.has_value();
}

}  // namespace

const Looks::Boxes& Looks::boxes_of(std::size_t joint, Side Look::*side) {
  const Look& look = looks_[joint];
  Side& its = looks_[joint].*side;
  if (its.boxes) return *its.boxes;
  its.boxes.emplace();
  for (const Feature& feature : its.piece->features)
    if (!feature.fitting)
      for (const Box& cut : feature.cuts)
        its.boxes->push_back(
            figures_of(look.junction.from_assembly(placed(cut, its.piece->place))));
  std::sort(its.boxes->begin(), its.boxes->end());
  return *its.boxes;
}

const Looks::Prisms& Looks::prisms_of(std::size_t joint, Side Look::*side) {
  const Look& look = looks_[joint];
  Side& its = looks_[joint].*side;
  if (its.prisms) return *its.prisms;
  its.prisms.emplace();
  for (const Feature& feature : its.piece->features)
    if (!feature.fitting)
      for (const Prism& prism : feature.prisms)
        its.prisms->push_back(figures_of(placed(prism, its.piece->place), look.junction));
  std::sort(its.prisms->begin(), its.prisms->end());
  return *its.prisms;
}

Looks::Looks(const Assembly& assembly) : assembly_(assembly) {
  looks_.reserve(assembly.joints.size());
  for (const Joint& joint : assembly.joints) {
    const Junction junction(assembly, joint);
    const auto seen = [&](std::size_t number) {
      const Piece& piece = assembly.pieces[number];
      return Side{&piece, junction.blank(piece)};
    };
    looks_.push_back({junction, seen(joint.receives), seen(joint.enters)});
  }
}

bool Looks::are_alike(std::size_t a, std::size_t b) {
  if (!are_designed_alike(assembly_.joints[a], assembly_.joints[b])) return false;
  // What takes least comes first.
  const std::array<Side Look::*, 2> sides{&Look::receives, &Look::enters};
  return std::all_of(
             sides.begin(), sides.end(),
             [&](auto side) { return (looks_[a].*side).blank == (looks_[b].*side).blank; }) &&
         std::all_of(sides.begin(), sides.end(),
                     [&](auto side) { return boxes_of(a, side) == boxes_of(b, side); }) &&
         std::all_of(sides.begin(), sides.end(),
                     [&](auto side) { return prisms_of(a, side) == prisms_of(b, side); });
}

}  // namespace haunch
