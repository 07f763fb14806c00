#include "drawn_wood.h"

#include <algorithm>
#include <utility>

#include "spots.h"
#include "wood_edges.h"

namespace haunch {
namespace {

void move_by(Spot& spot, const Spot& by) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    spot[axis] += by[axis];
}

void move_by(HalfSpace& side, const Spot& by) {
  side.offset += dot(side.normal, by);
}

void move_by(Polyhedron& block, const Spot& by) {
  for (Facet& facet : block.facets)
    move_by(facet.side, by);
  for (Spot& corner : block.corners)
    move_by(corner, by);
  move_by(block.low, by);
  move_by(block.high, by);
}

void move_by(Shell& shell, const Spot& by) {
  for (Spot& corner : shell.corners)
    move_by(corner, by);
  for (ShellFace& face : shell.faces)
    move_by(face.side, by);
}

void move_by(Box& box, const Triple& by) {
  for (std::size_t axis = 0; axis < 3; ++axis) {
    box.low[axis] = box.low[axis] + by[axis];
    box.high[axis] = box.high[axis] + by[axis];
  }
}

/// A side of a region, with the way that what is cut there looks.
struct RegionSide {
  Way way;
  Length at;
};

/// Those beyond which wood goes on, but for that of the section.
std::vector<RegionSide> breaks(const Box& wood, const Box& region, const std::optional<Way>& cut) {
  std::vector<RegionSide> sides;
  for (std::size_t axis = 0; axis < 3; ++axis)
    for (const bool upwards : {false, true}) {
      if (cut && cut->axis == axis && cut->upwards == upwards) continue;
      const Length at = upwards ? region.high[axis] : region.low[axis];
      if (upwards ? wood.high[axis] > at : wood.low[axis] < at)
        sides.push_back({{axis, upwards}, at});
    }
  return sides;
}

void mark(std::vector<DrawnEdge>& edges, const RegionSide& side, LineOf as) {
  for (DrawnEdge& edge : edges)
    if (looks(edge.one, side.way, side.at) || looks(edge.other, side.way, side.at)) edge.of = as;
}

DrawnWood with_edges(std::size_t piece, std::optional<Axis> grain, Wood wood) {
  DrawnWood drawn{piece, grain, std::move(wood), {}, {}};
  drawn.shell = shell_of(drawn.wood);
  drawn.edges = edges_of(drawn.wood, drawn.shell);
  return drawn;
}

}  // namespace

DrawnWood drawn_of(const Assembly& assembly, std::size_t piece) {
  const Piece& it = assembly.pieces[piece];
  const bool is_wood = it.matter == Matter::wood;
  return with_edges(piece, is_wood ? std::optional(it.place.axes[0]) : std::nullopt,
                    solid_of(it, Fittings::let_in).wood);
}

std::vector<DrawnWood> drawn_of(const Assembly& assembly) {
  std::vector<DrawnWood> drawn;
  for (std::size_t piece = 0; piece < assembly.pieces.size(); ++piece)
    if (assembly.pieces[piece].role != Role::extra)  // those come last
      drawn.push_back(drawn_of(assembly, piece));
  return drawn;
}

void move_by(DrawnWood& drawn, const Triple& by) {
  const Spot steps = {static_cast<double>(by[0].steps()), static_cast<double>(by[1].steps()),
                      static_cast<double>(by[2].steps())};
  for (Box& box : drawn.wood.boxes)
    move_by(box, by);
  for (Polyhedron& block : drawn.wood.sloping)
    move_by(block, steps);
  if (drawn.shell) move_by(*drawn.shell, steps);
  for (DrawnEdge& edge : drawn.edges) {
    move_by(edge.from, steps);
    move_by(edge.to, steps);
    move_by(edge.one, steps);
    move_by(edge.other, steps);
  }
}

std::optional<DrawnWood> within(const DrawnWood& drawn, const Box& region,
                                const std::optional<Way>& cut) {
  if (drawn.wood.empty()) return {};
  const Box room = room_of(drawn.wood);
  DrawnWood part = drawn;
  if (around(room, region) != region) {
    Wood inside = clipped(drawn.wood, region);
    if (inside.empty()) return {};
    part = with_edges(drawn.piece, drawn.grain, std::move(inside));
  }
  if (cut)
    mark(part.edges, {*cut, cut->upwards ? region.high[cut->axis] : region.low[cut->axis]},
         LineOf::cut);
  for (const RegionSide& side : breaks(room, region, cut))
    mark(part.edges, side, LineOf::broken);
  return part;
}

}  // namespace haunch
