// Leaves in their frame: the gaps round them, and whether their far corners pass as they open.
#include <algorithm>
#include <cmath>

#include "family.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr std::string_view kBinds = "a leaf hung closer than it was set out binds or shows its gap";
constexpr Rule kLeft{"gap-left", "between leaf and frame, left", kBinds};
constexpr Rule kRight{"gap-right", "between leaf and frame, right", kBinds};
constexpr Rule kHead{"gap-head", "between leaf and frame, head", kBinds};
constexpr Rule kFoot{"gap-foot", "below the leaf", kBinds};
constexpr Rule kStop{"gap-stop", "between the leaf's back and its stop",
                     "a leaf that meets its stop before it is shut springs on its hinges"};
constexpr Rule kSwing{
    "swing-room", "left to the jamb as the leaf's far corner passes it",
    "the far corner of a leaf swings out by about the square of its thickness over twice its width "
    "(the reach about the hinge's pin); a bevelled lock edge or a wider gap lets it pass"};

/// The wood of a leaf, and of everything else.
struct TwoSides {
  Wood leaf, rest;
};

void add(Wood& all, const Wood& more) {
  all.boxes.insert(all.boxes.end(), more.boxes.begin(), more.boxes.end());
  all.sloping.insert(all.sloping.end(), more.sloping.begin(), more.sloping.end());
}

TwoSides sides_of(const Bench& bench, const Hanging& hung) {
  TwoSides sides;
  for (std::size_t number = 0; number < bench.solids.size(); ++number) {
    const bool of_leaf = number >= hung.first && number < hung.first + hung.count;
    add(of_leaf ? sides.leaf : sides.rest, bench.solids[number].wood);
  }
  return sides;
}

/// Corners of wood along x and z: how far out of a leaf a place is, and how deep.
struct Point {
  double x, z;
};

std::vector<Point> corners_of(const Wood& wood) {
  std::vector<Point> points;
  for (const Box& box : wood.boxes)
    for (const Length x : {box.low[0], box.high[0]})
      for (const Length z : {box.low[2], box.high[2]})
        points.push_back({static_cast<double>(x.steps()), static_cast<double>(z.steps())});
  for (const Polyhedron& block : wood.sloping)
    for (const Facet& facet : block.facets)
      for (const Spot& corner : facet.corners)
        points.push_back({corner[0], corner[2]});
  return points;
}

/// How far towards the lock side any corner reaches while it is still behind the frame's face, on
/// its way round the pin. A corner's way is a circle about the pin, which stands at -k before the
/// face; it reaches farthest where it comes out of the face, at sqrt(r^2 - k^2) from the pin.
double swing_reach(const Wood& leaf, const Hanging& hung) {
  const auto pin_x = static_cast<double>(hung.pin_x.steps());
  const auto pin_z = static_cast<double>(hung.pin_z.steps());
  double most = 0;
  for (const Point& point : corners_of(leaf)) {
    const double out = hung.hinged_right ? pin_x - point.x : point.x - pin_x;
    if (out <= 0 || point.z < 0) continue;
    const double deep = point.z - pin_z;
    most = std::max(most, std::sqrt(out * out + deep * deep - pin_z * pin_z));
  }
  return most;
}

/// What is left between the far corner's way and what stands at the lock side.
Length swing_room(const TwoSides& sides, const Hanging& hung, Length gap) {
  const Box room = room_of(sides.leaf);
  const Length obstacle =
      hung.hinged_right ? hung.pin_x - (room.low[0] - gap) : room.high[0] + gap - hung.pin_x;
  return nearest_step(static_cast<double>(obstacle.steps()) - swing_reach(sides.leaf, hung));
}

void check_leaf(Bench& bench, const Hanging& hung) {
  const TwoSides sides = sides_of(bench, hung);
  const auto gap_to = [&](Way way) { return gap(sides.leaf, sides.rest, way); };
  const auto tell = [&](const Rule& rule, std::optional<Length> found, Length design) {
    report(bench, rule, {hung.first}, {}, found, Bounds{design, design, {}, {}});
  };
  const auto left = gap_to({0, false});
  const auto right = gap_to({0, true});
  tell(kLeft, left, hung.left);
  tell(kRight, right, hung.right);
  tell(kHead, gap_to({1, true}), hung.head);
  tell(kFoot, gap_to({1, false}).value_or(room_of(sides.leaf).low[1]), hung.foot);
  tell(kStop, gap_to({2, true}), hung.stop);
  const auto lock = hung.hinged_right ? left : right;
  if (lock)
    report(bench, kSwing, {hung.first}, {}, swing_room(sides, hung, *lock),
           Bounds{Length(), {}, bench.limits.least_swing, {}});
}

}  // namespace

void check_hanging(Bench& bench) {
  for (const Hanging& hung : bench.assembly.hung)
    check_leaf(bench, hung);
}

std::vector<const Rule*> rules_of_hanging() {
  return {&kLeft, &kRight, &kHead, &kFoot, &kStop, &kSwing};
}

}  // namespace haunch
