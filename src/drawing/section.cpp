#include "section.h"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "wood_edges.h"

namespace haunch {
namespace {

/// The way that a face looks which the plane cuts.
Way cut_way(const CutPlane& plane) {
  return {static_cast<std::size_t>(plane.across), !plane.looks_upwards};
}

/// What of a room is drawn; nothing where that is none. It begins at the plane.
std::optional<Box> drawn_room(const Box& room, const CutAway& cut) {
  Box drawn = cut.region.value_or(room);
  const auto axis = static_cast<std::size_t>(cut.plane.across);
  (cut.plane.looks_upwards ? drawn.low : drawn.high)[axis] = cut.plane.at;
  if (drawn.low[axis] >= drawn.high[axis] || !interiors_meet(drawn, room)) return {};
  return drawn;
}

/// Which way the grain runs on a view: nothing where it runs at the viewer.
std::optional<ViewSpot> grain_on(const Sight& sight, const DrawnWood& drawn) {
  if (!drawn.grain) return {};
  Spot along{};
  along[static_cast<std::size_t>(*drawn.grain)] = Length::kStepsPerMm;
  const ViewSpot way = seen_at(sight, along);
  return std::hypot(way.u, way.v) < 0.5 ? std::nullopt : std::optional(way);
}

std::vector<ViewSpot> loop_on(const Sight& sight, const Shell& shell, const ShellLoop& loop) {
  std::vector<ViewSpot> spots;
  for (const EdgeUse& use : loop)
    spots.push_back(seen_at(sight, shell.corners[start_of(shell, use)]));
  return spots;
}

/// The faces of a shell that lie in the plane.
std::vector<std::vector<ViewSpot>> cut_loops(const Shell& shell, const CutPlane& plane) {
  const Sight sight = sight_of(plane);
  std::vector<std::vector<ViewSpot>> loops;
  for (const ShellFace& face : shell.faces) {
    if (!looks(face.side, cut_way(plane), plane.at)) continue;
    loops.push_back(loop_on(sight, shell, face.outer));
    for (const ShellLoop& hole : face.holes)
      loops.push_back(loop_on(sight, shell, hole));
  }
  return loops;
}

/// The same of wood that has no shell: of each block by itself.
std::vector<std::vector<ViewSpot>> cut_loops(const Wood& wood, const CutPlane& plane) {
  const Sight sight = sight_of(plane);
  std::vector<std::vector<ViewSpot>> loops;
  const auto add = [&](const Polyhedron& block) {
    for (const Facet& facet : block.facets) {
      if (!looks(facet.side, cut_way(plane), plane.at)) continue;
      loops.emplace_back();
      for (const Spot& corner : block.corners_of(facet))
        loops.back().push_back(seen_at(sight, corner));
    }
  };
  for (const Box& box : wood.boxes)
    add(polyhedron_of(box));
  std::for_each(wood.sloping.begin(), wood.sloping.end(), add);
  return loops;
}

}  // namespace

Sight sight_of(const CutPlane& plane) {
  switch (plane.across) {
    case Axis::x:
      return sight_from(plane.looks_upwards ? ViewedFrom::left : ViewedFrom::right);
    case Axis::y:
      return sight_from(plane.looks_upwards ? ViewedFrom::below : ViewedFrom::above);
    case Axis::z:
      return sight_from(plane.looks_upwards ? ViewedFrom::front : ViewedFrom::back);
  }
  return {};
}

LineView section_of(std::span<const DrawnWood> woods, const CutAway& cut, HiddenLines hidden) {
  const Sight sight = sight_of(cut.plane);
  std::vector<DrawnWood> beyond;
  std::vector<CutArea> areas;
  for (const DrawnWood& drawn : woods) {
    if (drawn.wood.empty()) continue;
    const auto room = drawn_room(room_of(drawn.wood), cut);
    auto part = room ? within(drawn, *room, cut_way(cut.plane)) : std::nullopt;
    if (!part) continue;
    auto loops =
        part->shell ? cut_loops(*part->shell, cut.plane) : cut_loops(part->wood, cut.plane);
    if (!loops.empty()) areas.push_back({drawn.piece, grain_on(sight, drawn), std::move(loops)});
    beyond.push_back(std::move(*part));
  }
  LineView view = view_of(beyond, sight, hidden);
  view.areas = std::move(areas);
  return view;
}

}  // namespace haunch
