// Joints as they are seen: where the end of a member meets the edge of another, nothing is open
// between their wood, at the face, at the back or in an outer edge.
//
// A moulding or a rebate goes along the whole of its edge. Where another member ends on that with a
// flat end, the moulding runs on behind it, and the end stands off the wood by as much as it is
// wide. The same shows along the edge of what laps over another. Looked at is the wood alone: from
// the section that one of the two has just before the other, straight on to the first wood of that
// other, what is there of neither is open; it is seen where no wood of the whole lies before it.
#include <algorithm>
#include <limits>
#include <optional>
#include <utility>
#include <vector>

#include "alike.h"
#include "family.h"

namespace haunch {
namespace {

constexpr std::string_view kRunsOn =
    "a moulding, rebate or groove that runs on past an end shows as a hole beside it: the end must "
    "fit over it, be mitred with it, or the other must stop there";
constexpr Rule kFaceShut{"joint-shut-face", "open at the face, between an end and its edge",
                         kRunsOn};
constexpr Rule kBackShut{"joint-shut-back", "open at the back, between an end and its edge",
                         kRunsOn};
constexpr Rule kEdgeShut{"joint-shut-edge", "open in the outer edge, beside an end", kRunsOn};

constexpr Length kSlice = Length::from_mm_thousandths(1);  // of a section, thick

/// From a member straight on to the other, which begins at a plane.
struct Line {
  std::size_t from = 0, to = 0;  // pieces
  Way way;
  Length start;  // where that plane is
};

/// Whether a member lies over the other at its face or back, and not merely its tenon in it.
bool laps_over(const Bench& bench, const Joint& joint) {
  const Solid& end = bench.solids[joint.enters];
  const Box& other = bench.solids[joint.receives].blank;
  const auto in = static_cast<std::size_t>(joint.heading.axis);
  const auto thick = static_cast<std::size_t>(joint.through);
  const Length middle = floor_half(other.low[in] + other.high[in]);
  const std::vector<Box> parts = bounds_of(end.wood);
  return std::any_of(parts.begin(), parts.end(), [&](const Box& part) {
    const bool outside =
        part.low[thick] == end.blank.low[thick] || part.high[thick] == end.blank.high[thick];
    return outside && (joint.heading.upwards ? part.high[in] > middle : part.low[in] < middle);
  });
}

/// From the end that enters into its receiver; and where it laps over that, along the receiver up
/// to either of its edges.
std::vector<Line> lines_of(const Bench& bench, const Joint& joint) {
  const auto in = static_cast<std::size_t>(joint.heading.axis);
  const Line ending{
      joint.enters, joint.receives, {in, joint.heading.upwards}, sight_edge(bench.assembly, joint)};
  if (!laps_over(bench, joint)) return {ending};
  const std::size_t across = 3 - in - static_cast<std::size_t>(joint.through);
  const Box& end = bench.solids[joint.enters].blank;
  return {ending,
          {joint.receives, joint.enters, {across, true}, end.low[across]},
          {joint.receives, joint.enters, {across, false}, end.high[across]}};
}

/// Where the two stand one behind the other.
Box room_between(const Box& from, const Box& to, const Line& line) {
  Box room;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    room.low[axis] = std::max(from.low[axis], to.low[axis]);
    room.high[axis] = std::min(from.high[axis], to.high[axis]);
  }
  const std::size_t axis = line.way.axis;
  room.low[axis] = line.way.upwards ? line.start : to.low[axis];
  room.high[axis] = line.way.upwards ? to.high[axis] : line.start;
  return room;
}

bool is_some(const Box& room) {
  return room.low[0] < room.high[0] && room.low[1] < room.high[1] && room.low[2] < room.high[2];
}

double in_steps(Length length) {
  return static_cast<double>(length.steps());
}

/// What lies straight on from some wood, through all of a room.
Wood columns_of(const Wood& wood, const Box& room, std::size_t axis) {
  Wood columns{wood.boxes, {}};
  for (Box& box : columns.boxes) {
    box.low[axis] = room.low[axis];
    box.high[axis] = room.high[axis];
  }
  for (const Polyhedron& block : wood.sloping)
    for (Polyhedron& column :
         shadows_of(block, axis, in_steps(room.low[axis]), in_steps(room.high[axis])))
      columns.sloping.push_back(std::move(column));
  return columns;
}

/// All that lies on the inner side of one face, without end.
Polyhedron inner_side(const Facet& face) {
  constexpr double kFar = std::numeric_limits<double>::infinity();
  return {{{face.side, 0, 0}}, {}, {-kFar, -kFar, -kFar}, {kFar, kFar, kFar}};
}

/// A block and all that lies behind it, seen along a way, up to a place.
std::vector<Polyhedron> behind(const Polyhedron& block, Way way, double far) {
  constexpr double kUpright = 1e-6;
  std::vector<Polyhedron> parts;
  for (const Facet& face : block.facets) {
    const double looks = face.side.normal[way.axis];
    if (way.upwards ? looks > -kUpright : looks < kUpright) continue;
    const double low = way.upwards ? block.low[way.axis] : far;
    const double high = way.upwards ? far : block.high[way.axis];
    if (low >= high) continue;
    const Polyhedron column = upright(block.corners_of(face), way.axis, low, high);
    if (auto part = common(column, inner_side(face))) parts.push_back(std::move(*part));
  }
  return parts;
}

void take_out(Wood& open, const Wood& wood) {
  for (const Box& box : wood.boxes)
    take_out(open, box);
  for (const Polyhedron& block : wood.sloping)
    take_out(open, block);
}

/// What stands in some wood's way or behind it, seen along a way.
struct Screen {
  const Wood& wood;
  Way way;
  Length far;  // behind it, as far as this

  bool hides(const Box& block, const Box& room) const {
    return in_shadow(block, room, way.axis) &&
           (way.upwards ? block.low[way.axis] < room.high[way.axis]
                        : block.high[way.axis] > room.low[way.axis]);
  }
  void take_boxes_out(Wood& open) const {
    if (open.empty()) return;
    const Box room = room_of(open);
    for (Box box : wood.boxes) {
      if (!hides(box, room)) continue;
      (way.upwards ? box.high : box.low)[way.axis] = far;
      take_out(open, box);
    }
  }
  void take_slopes_out(Wood& open) const {
    if (open.empty()) return;
    const Box room = room_of(open);
    for (const Polyhedron& block : wood.sloping)
      if (hides(bounds_of(block), room))
        for (const Polyhedron& part : behind(block, way, in_steps(far)))
          take_out(open, part);
  }
};

/// What is open between the two of a line, as far as the second.
Wood open_along(const Bench& bench, const Line& line) {
  const Solid& from = bench.solids[line.from];
  const Solid& to = bench.solids[line.to];
  const Box room = room_between(from.blank, to.blank, line);
  if (!is_some(room)) return {};
  const std::size_t axis = line.way.axis;
  Box slice = room;
  slice.low[axis] = line.way.upwards ? line.start - kSlice : line.start;
  slice.high[axis] = line.way.upwards ? line.start : line.start + kSlice;
  Wood section = clipped(from.wood, slice);
  // Beside a moulded edge of its own it is as open as where it is plain.
  if (!section.boxes.empty()) section.sloping.clear();
  Wood open = columns_of(section, room, axis);
  const Wood there = clipped(to.wood, room);
  const Wood here = clipped(from.wood, room);
  const Screen screen{there, line.way, line.way.upwards ? room.high[axis] : room.low[axis]};
  // Boxes first: they mostly leave nothing for what slopes.
  screen.take_boxes_out(open);
  take_out(open, {here.boxes, {}});
  screen.take_slopes_out(open);
  take_out(open, {{}, here.sloping});
  if (open.empty()) return open;
  // Where nothing of the other comes, the line ends in the open.
  Wood past = open;
  take_out(past, columns_of(there, room, axis));
  take_out(open, past);
  return open;
}

/// What of it is seen, looking along a way past some pieces.
Wood seen_past(Wood open, const Bench& bench, const std::vector<std::size_t>& pieces, Way way) {
  if (open.empty()) return open;
  const Box room = room_of(open);
  const Length far = way.upwards ? room.high[way.axis] : room.low[way.axis];
  for (const std::size_t piece : pieces) {
    const Screen screen{bench.solids[piece].wood, way, far};
    screen.take_boxes_out(open);
    screen.take_slopes_out(open);
  }
  return open;
}

bool touch(const Box& a, const Box& b) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (a.high[axis] < b.low[axis] || b.high[axis] < a.low[axis]) return false;
  return true;
}

/// The boxes round what hangs together.
std::vector<Box> places_of(const Wood& open, Length play) {
  std::vector<Box> parts;
  for (const Box& box : open.boxes)
    if (std::min({box.extent(0), box.extent(1), box.extent(2)}) > play) parts.push_back(box);
  for (const Polyhedron& block : open.sloping)
    if (least_width(block) > play) parts.push_back(bounds_of(block));
  std::vector<Box> places;
  for (Box place : parts) {
    for (auto other = places.begin(); other != places.end();)
      if (touch(place, *other)) {
        place = around(place, *other);
        places.erase(other);
        other = places.begin();  // what it is now may touch one that was passed
      } else {
        ++other;
      }
    places.push_back(place);
  }
  return places;
}

/// The lesser side of the largest place that is seen, along an axis; what is no wider than `play`
/// in any direction is none.
Length widest_of(const Wood& open, std::size_t axis, Length play) {
  const auto [u, v] = across_axes(axis);
  Length widest;
  for (const Box& place : places_of(open, play))
    widest = std::max(widest, std::min(place.extent(u), place.extent(v)));
  return widest;
}

/// How wide a joint is seen open.
struct Seen {
  Length at_face, at_back, at_edge;
};

/// Past some pieces that may lie before it.
Seen seen_open(const Bench& bench, const Joint& joint, const std::vector<std::size_t>& pieces) {
  Seen seen;
  for (const Line& line : lines_of(bench, joint)) {
    const Wood open = open_along(bench, line);
    for (std::size_t axis = 0; axis < 3; ++axis)
      for (const bool upwards : {true, false}) {
        if (axis == line.way.axis) continue;
        Length& widest = axis < 2 ? seen.at_edge : upwards ? seen.at_face : seen.at_back;
        widest = std::max(widest, widest_of(seen_past(open, bench, pieces, {axis, upwards}), axis,
                                            bench.limits.loosest_fit));
      }
  }
  return seen;
}

bool is_member(Role role) {
  switch (role) {
    case Role::stile:
    case Role::rail:
    case Role::muntin:
    case Role::mullion:
    case Role::jamb:
    case Role::head:
    case Role::transom:
    case Role::glazing_bar:
      return true;
    default:
      return false;
  }
}

bool is_of_members(const Assembly& assembly, const Joint& joint) {
  return is_member(assembly.pieces[joint.receives].role) &&
         is_member(assembly.pieces[joint.enters].role);
}

/// Which of a joint's three figures are worth telling, and how they are judged.
struct SeenLimits {
  Bounds on_show, at_edge;

  bool tells(const Seen& seen) const {
    return std::max(seen.at_face, seen.at_back) > *on_show.caution_max ||
           seen.at_edge > *at_edge.caution_max;
  }
};

void tell(Bench& bench, std::size_t number, const Seen& seen, const SeenLimits& limits) {
  const Joint& joint = bench.assembly.joints[number];
  const auto tell_one = [&](const Rule& rule, Length open, const Bounds& bounds) {
    if (open > *bounds.caution_max)
      report(bench, rule, {joint.receives, joint.enters}, number, open, bounds);
  };
  tell_one(kFaceShut, seen.at_face, limits.on_show);
  tell_one(kBackShut, seen.at_back, limits.on_show);
  // From the edge a hole is seen that is told of already.
  if (std::max(seen.at_face, seen.at_back) <= *limits.on_show.caution_max)
    tell_one(kEdgeShut, seen.at_edge, limits.at_edge);
}

}  // namespace

void check_seen_joints(Bench& bench) {
  const Assembly& assembly = bench.assembly;
  const SeenLimits limits{{{}, bench.limits.least_wood, {}, bench.limits.shut_shoulder},
                          {{}, {}, {}, bench.limits.loosest_edges}};
  Looks looks(assembly);
  std::vector<std::optional<Seen>> seen(assembly.joints.size());  // past the two members alone
  for (std::size_t number = 0; number < assembly.joints.size(); ++number) {
    const Joint& joint = assembly.joints[number];
    if (!is_of_members(assembly, joint)) continue;
    std::size_t same = 0;
    while (same < number && !(seen[same] && looks.are_alike(same, number)))
      ++same;
    seen[number] =
        same < number ? seen[same] : seen_open(bench, joint, {joint.receives, joint.enters});
    if (limits.tells(*seen[number]))
      tell(bench, number,
           seen_open(bench, joint, pieces_of(assembly, assembly.pieces[joint.receives].group)),
           limits);
  }
}

std::vector<const Rule*> rules_of_seen_joints() {
  return {&kFaceShut, &kBackShut, &kEdgeShut};
}

}  // namespace haunch
