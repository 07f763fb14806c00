#include "boundaries.h"

#include <algorithm>
#include <numbers>
#include <optional>

#include "corners.h"
#include "opened.h"
#include "swung.h"

namespace haunch {
namespace {

constexpr std::string_view kNoRoom = "what is too long for its wall does not go in";
constexpr Rule kLeftWall{"wall-left", "between the wood and the wall at its left", kNoRoom};
constexpr Rule kRightWall{"wall-right", "between the wood and the wall at its right", kNoRoom};
constexpr Rule kInPlace{"place-clear", "of wood in the place of what is put there",
                        "what is put between cases needs the whole of its place"};
constexpr Rule kWide{"filler-width", "of filler beside a wall, where it is widest",
                     "a filler over 150 mm (6 in) is seen as one: a wider case makes better use of "
                     "the wall (trade practice)"};
constexpr Rule kNarrow{
    "filler-least", "of filler beside a wall, where it is narrowest",
    "under 12 mm (1/2 in) there is no wood to plane to the wall (trade practice)"};
constexpr Rule kSwung{"swing-past", "of the front in a wall, or in what stands beside it",
                      "a door that does not come to a right angle keeps drawers behind it shut and "
                      "breaks its hinges: a filler beside it lets it pass"};
constexpr Rule kHandle{"handle-past",
                       "of the front's handle in a wall, or in what stands beside it",
                       "a handle that meets the wall first keeps its door from a right angle: a "
                       "wider filler lets it pass"};
constexpr Rule kDrawn{"slide-past", "free before the front as it is drawn out",
                      "a drawer that meets a wall, or what stands beside it, does not come out"};
constexpr Rule kTogether{"open-together",
                         "of it in another cabinet's front, both open, with handles",
                         "of two fronts that meet when both are open one waits for the other, and "
                         "handles mark what they swing against: hang one the other way"};

/// A wall is far higher than what stands beside it.
bool is_wall(const Boundary& boundary) {
  return boundary.shape.along == 2;
}

bool is_left(const Bench& bench, const Boundary& wall) {
  const Box box = bounds_of(wall.shape);
  return box.low[0] + box.high[0] < bench.assembly.size[0];
}

Wood wood_of(const Boundary& boundary) {
  return {{}, polyhedra_of(boundary.shape)};
}

/// The piece nearest to a wall, and how near.
struct NearestWood {
  std::size_t piece = 0;
  std::optional<Length> room;
};

NearestWood nearest_to(const Bench& bench, const Wood& wall, Way way) {
  NearestWood nearest;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece) {
    // It goes over what is left open beside a case, and closes nothing of it.
    if (bench.assembly.pieces[piece].role == Role::worktop) continue;
    const auto room = gap(bench.solids[piece].wood, wall, way);
    if (room && (!nearest.room || *room < *nearest.room)) nearest = {piece, room};
  }
  return nearest;
}

void check_wall(Bench& bench, const Boundary& wall) {
  const bool left = is_left(bench, wall);
  const NearestWood nearest = nearest_to(bench, wood_of(wall), {0, !left});
  if (!nearest.room) return;
  report(bench, left ? kLeftWall : kRightWall, {nearest.piece}, {}, but_rounding(*nearest.room),
         Bounds{Length(), {}, {}, wall.open ? std::nullopt : std::optional(Length())});
  const Piece& piece = bench.assembly.pieces[nearest.piece];
  if (piece.role != Role::filler || *nearest.room < Length()) return;
  Length least = piece.blank[1];
  for (const Feature& feature : piece.features)
    if (feature.kind == FeatureKind::planed_taper)
      least = piece.blank[1] - size_of(feature, SizeName::depth).value_or(Length());
  report(bench, kWide, {nearest.piece}, {}, piece.blank[1],
         Bounds{{}, {}, {}, Length::from_mm(150)});
  report(bench, kNarrow, {nearest.piece}, {}, least, Bounds{{}, {}, Length::from_mm(12), {}});
}

void check_place(Bench& bench, const Boundary& place) {
  const Wood its = wood_of(place);
  Length deepest;
  for (const Solid& solid : bench.solids)
    deepest = std::max(deepest, depth_of_common(solid.wood, its));
  report(bench, kInPlace, {}, {}, but_rounding(deepest), Bounds{{}, Length(), {}, {}});
}

// ---- opened

/// How deep a box that turns with a front stands in any boundary on its way.
Length deepest_swung(const Box& box, const Swing& swing, const std::vector<Wood>& bounds) {
  Length most;
  for (int step = 1; step <= kSwingSteps; ++step) {
    const double angle = std::numbers::pi / 2 * step / kSwingSteps;
    const Wood swung{{}, polyhedra_of(turned(box, swing, angle))};
    for (const Wood& bound : bounds)
      most = std::max(most, depth_of_common(swung, bound));
  }
  return but_rounding(most);
}

void check_swung(Bench& bench, const OpenedFront& front, const std::vector<Wood>& bounds,
                 Length handle) {
  const Swing& swing = *front.fit.swing();
  report(bench, kSwung, {front.named}, {}, deepest_swung(front.box, swing, bounds),
         Bounds{{}, Length(), {}, {}});
  if (handle > Length())
    report(bench, kHandle, {front.named}, {},
           deepest_swung(handle_of(front, handle), swing, bounds), Bounds{{}, {}, {}, Length()});
}

void check_drawn(Bench& bench, const OpenedFront& front, const std::vector<Wood>& bounds) {
  const auto& slide = std::get<Slide>(front.fit.moves);
  const auto axis = static_cast<std::size_t>(slide.along);
  const bool upwards = slide.by > Length();
  const Length by = upwards ? slide.by : -slide.by;
  Length free = by;
  for (const Wood& bound : bounds)
    if (const auto room = gap(Wood{{front.box}, {}}, bound, {axis, upwards}))
      free = std::min(free, *room);
  report(bench, kDrawn, {front.named}, {}, free, Bounds{by, {}, {}, {}});
}

// ---- two of them opened

/// The group of its cabinet, or what else is a part of the whole.
std::size_t cabinet_of(const Assembly& assembly, std::size_t group) {
  while (assembly.groups[group].in.value_or(0) != 0)
    group = *assembly.groups[group].in;
  return group;
}

/// A front and its handle, as far open as it goes, or at a right angle.
Wood wide_open(const OpenedFront& front, Length handle) {
  if (const Swing* swing = front.fit.swing()) {
    const double angle = std::numbers::pi / 2;
    Wood wood{{}, polyhedra_of(turned(front.box, *swing, angle))};
    if (handle > Length())
      add(wood, {{}, polyhedra_of(turned(handle_of(front, handle), *swing, angle))});
    return wood;
  }
  const auto& slide = std::get<Slide>(front.fit.moves);
  const auto axis = static_cast<std::size_t>(slide.along);
  Box box = front.box;
  box.low[axis] += slide.by;
  box.high[axis] += slide.by;
  box.low[2] -= handle;
  return {{box}, {}};
}

void check_together(Bench& bench, const std::vector<OpenedFront>& fronts, Length handle) {
  std::vector<Wood> open;
  for (const OpenedFront& front : fronts)
    open.push_back(wide_open(front, handle));
  for (std::size_t one = 0; one < fronts.size(); ++one) {
    Length most;
    std::vector<std::size_t> parts{fronts[one].named};
    for (std::size_t other = 0; other < fronts.size(); ++other) {
      if (cabinet_of(bench.assembly, fronts[one].fit.group) ==
          cabinet_of(bench.assembly, fronts[other].fit.group))
        continue;
      const Length deep = but_rounding(depth_of_common(open[one], open[other]));
      if (deep <= most) continue;
      most = deep;
      parts = {fronts[one].named, fronts[other].named};
    }
    report(bench, kTogether, parts, {}, most, Bounds{{}, {}, {}, Length()});
  }
}

}  // namespace

void check_boundaries(Bench& bench, const Surroundings& around) {
  std::vector<Wood> bounds;
  for (const Boundary& boundary : around.boundaries) {
    bounds.push_back(wood_of(boundary));
    if (is_wall(boundary))
      check_wall(bench, boundary);
    else
      check_place(bench, boundary);
  }
  const std::vector<OpenedFront> fronts = opened_fronts(bench);
  for (const OpenedFront& front : fronts) {
    if (front.fit.swing() != nullptr)
      check_swung(bench, front, bounds, around.handle);
    else
      check_drawn(bench, front, bounds);
  }
  check_together(bench, fronts, around.handle);
  check_corners(bench, fronts, around);
}

std::vector<const Rule*> rules_of_boundaries() {
  std::vector<const Rule*> all{&kLeftWall, &kRightWall, &kInPlace, &kWide,    &kNarrow,
                               &kSwung,    &kHandle,    &kDrawn,   &kTogether};
  for (const Rule* rule : rules_of_corners())
    all.push_back(rule);
  return all;
}

}  // namespace haunch
