#include "joint_measure.h"

#include <algorithm>
#include <utility>

namespace haunch {
namespace {

/// The joint's own three axes in the assembly.
struct JointAxes {
  Way in;              // the way the entering piece goes
  std::size_t across;  // along the tenon's width
  std::size_t cheek;   // along its thickness
};

JointAxes axes_of(const Joint& joint) {
  const auto in = static_cast<std::size_t>(joint.heading.axis);
  const auto cheek = static_cast<std::size_t>(joint.through);
  return {{in, joint.heading.upwards}, 3 - in - cheek, cheek};
}

/// The entering blank on one side of the receiver's sight edge.
Box beyond_sight_edge(const Solid& receives, const Solid& enters, Way in, bool inside) {
  Box region = enters.blank;
  const Length edge = in.upwards ? receives.blank.low[in.axis] : receives.blank.high[in.axis];
  if (in.upwards == inside)
    region.low[in.axis] = edge;
  else
    region.high[in.axis] = edge;
  return region;
}

Length reach_of(const Box& box, const Solid& receives, Way in) {
  return in.upwards ? box.high[in.axis] - receives.blank.low[in.axis]
                    : receives.blank.high[in.axis] - box.low[in.axis];
}

Length reach_of(const Wood& wood, const Solid& receives, Way in) {
  return reach_of(room_of(wood), receives, in);
}

/// What of the entering wood does not go as far as its ends.
Wood shallower(const Wood& inside, const Solid& receives, Way in, Length reach) {
  Wood rest;
  for (const Box& box : inside.boxes)
    if (reach_of(box, receives, in) != reach) rest.boxes.push_back(box);
  for (const Polyhedron& block : inside.sloping)
    if (reach_of(bounds_of(block), receives, in) != reach) rest.sloping.push_back(block);
  return rest;
}

/// A slice one step thick, so far in: at the whole reach, what of the entering wood is its ends.
Box slice_at(Box region, const Solid& receives, Way in, Length reach) {
  const Length step = Length::from_steps(1);
  const Length place =
      in.upwards ? receives.blank.low[in.axis] + reach : receives.blank.high[in.axis] - reach;
  region.low[in.axis] = in.upwards ? place - step : place;
  region.high[in.axis] = in.upwards ? place : place + step;
  return region;
}

std::optional<Length> both_sides(const Wood& from, const Wood& to, std::size_t axis) {
  const auto low = gap(from, to, {axis, false});
  const auto high = gap(from, to, {axis, true});
  if (!low || !high) return {};
  return *low + *high;
}

/// The wood in groups that touch along an axis: of a divided tenon each tenon by itself, lowest
/// first.
std::vector<Wood> groups_along(Wood wood, std::size_t axis) {
  std::vector<Box> bounds = bounds_of(wood);
  std::sort(bounds.begin(), bounds.end(),
            [axis](const Box& a, const Box& b) { return a.low[axis] < b.low[axis]; });
  std::vector<Box> groups;
  for (const Box& box : bounds) {
    if (groups.empty() || box.low[axis] > groups.back().high[axis])
      groups.push_back(box);
    else
      groups.back() = around(groups.back(), box);
  }
  std::vector<Wood> parts;
  if (groups.size() == 1) {
    parts.push_back(std::move(wood));
    return parts;
  }
  for (const Box& group : groups)
    if (Wood part = clipped(wood, group); !part.empty()) parts.push_back(std::move(part));
  return parts;
}

/// Each tenon by itself: those divided across their width, and of each those side by side in the
/// thickness.
struct Tenons {
  std::vector<Wood> each;
  std::vector<Box> across;       // the rooms of those that are divided across their width
  std::size_t side_by_side = 0;  // the most of them in the thickness
};

Tenons tenons_of(Wood wood, const JointAxes& axes) {
  Tenons tenons;
  for (Wood& across : groups_along(std::move(wood), axes.across)) {
    tenons.across.push_back(room_of(across));
    std::vector<Wood> beside = groups_along(std::move(across), axes.cheek);
    tenons.side_by_side = std::max(tenons.side_by_side, beside.size());
    for (Wood& tenon : beside)
      tenons.each.push_back(std::move(tenon));
  }
  return tenons;
}

Box room_of(const Tenons& tenons) {
  Box room = tenons.across.front();
  for (const Box& tenon : tenons.across)
    room = around(room, tenon);
  return room;
}

/// Nobody asks what play a panel has along its edge.
bool has_edges(const Joint& joint) {
  return joint.design.edges || !joint.design.bite;
}

Length extent_of(const Wood& wood, std::size_t axis) {
  return room_of(wood).extent(axis);
}

/// The lesser of two figures; none where either is missing.
std::optional<Length> lesser(std::optional<Length> a, std::optional<Length> b) {
  return a && b ? std::optional(std::min(*a, *b)) : std::nullopt;
}

/// One of so many equal parts of wood along an axis, in its middle.
Wood middle_of(const Wood& wood, std::size_t axis, std::int64_t parts) {
  if (wood.empty()) return {};
  Box region = room_of(wood);
  const Length off = floor_half(region.extent(axis) - floor_divide(region.extent(axis), parts));
  region.low[axis] += off;
  region.high[axis] -= off;
  return clipped(wood, region);
}

Wood middle_half(const Wood& wood, std::size_t axis) {
  return middle_of(wood, axis, 2);
}

/// Of one tenon, what is between its cheeks. Where it is rounded, a sliver in its middle taken for
/// a block: its parts, swollen into what is at its edges, would each lie beside some of that.
Wood far_from_cheeks(const Wood& tenon, std::size_t cheek) {
  constexpr std::int64_t kSliver = 4096;
  if (tenon.sloping.empty()) return middle_half(tenon, cheek);
  return {{room_of(middle_of(tenon, cheek, kSliver))}, {}};
}

/// The ends without what only reaches as far as they do at a face of its piece: a shoulder scribed
/// over a moulding. Where nothing else does, all of them.
Wood without_scribed(Wood ends, const Solid& enters, std::size_t cheek) {
  const std::vector<Wood> groups = groups_along(ends, cheek);
  if (groups.size() < 2) return ends;
  Wood kept;
  for (const Wood& group : groups) {
    const Box room = room_of(group);
    const bool at_a_face =
        room.low[cheek] == enters.blank.low[cheek] || room.high[cheek] == enters.blank.high[cheek];
    if (at_a_face) continue;
    kept.boxes.insert(kept.boxes.end(), group.boxes.begin(), group.boxes.end());
    kept.sloping.insert(kept.sloping.end(), group.sloping.begin(), group.sloping.end());
  }
  return kept.empty() ? ends : kept;
}

/// What is measured at the end of one tenon; the least of all counts.
void measure_end(JointMeasure& found, const Joint& joint, const Wood& tenon, const Solid& receives,
                 const JointAxes& axes) {
  const auto cheeks = both_sides(tenon, receives.wood, axes.cheek);
  const auto edges =
      has_edges(joint) ? both_sides(tenon, receives.wood, axes.across) : std::nullopt;
  const auto bottom = gap(tenon, receives.wood, axes.in);
  const Length thickness = extent_of(tenon, axes.cheek);
  const bool first = found.widths.empty();
  found.cheeks = first ? cheeks : lesser(found.cheeks, cheeks);
  found.edges = first ? edges : lesser(found.edges, edges);
  found.bottom = first ? bottom : lesser(found.bottom, bottom);
  found.thickness = first ? thickness : std::min(found.thickness, thickness);
  found.widths.push_back(extent_of(tenon, axes.across));
}

/// The wood behind an end, all the way to the sight edge: of a tenon without the haunches beside
/// it.
Wood column_of(const Wood& inside, const Wood& end, Way in) {
  Box region = room_of(end);
  const Box room = room_of(inside);
  region.low[in.axis] = room.low[in.axis];
  region.high[in.axis] = room.high[in.axis];
  return clipped(inside, region);
}

/// What is measured along the whole of what enters, where it is closest: at edges of a tenon that
/// comes out of its mortise, which may be wider there; and where there is wood at one edge only.
void measure_along(JointMeasure& found, const Joint& joint, const Wood& inside,
                   const std::vector<Wood>& tenons, const Solid& receives, const JointAxes& axes) {
  const bool comes_out = joint.design.edges && !joint.design.bottom;
  if (!comes_out && !joint.design.edge) return;
  found.edges.reset();
  // What is neither tenon nor tail is a wedge: it fits along its thickness, and may have an end
  // like a knife's.
  const bool each = joint.tenon || joint.tails;
  const std::size_t axis = each ? axes.across : axes.cheek;
  const auto measure_part = [&](const Wood& part) {
    const auto low = gap(part, receives.wood, {axis, false});
    const auto high = gap(part, receives.wood, {axis, true});
    for (const auto& one : {low, high})
      if (one) found.edge = found.edge ? std::min(*found.edge, *one) : *one;
    const auto both = low && high ? std::optional(*low + *high) : std::nullopt;
    found.edges = found.edges ? lesser(found.edges, both) : both;
  };
  if (!each) return measure_part(inside);
  for (const Wood& tenon : tenons)
    measure_part(column_of(inside, tenon, axes.in));
}

/// What is measured of wood that has moved and may press on its mortise's ends or bottom: the room
/// of its cheeks and edges short of its end and in their middle, that of its end in the middle.
void measure_middles(JointMeasure& found, const Joint& joint, const Wood& short_of_end,
                     const std::vector<Wood>& tenons, const Solid& receives,
                     const JointAxes& axes) {
  for (const Wood& tenon : tenons_of(short_of_end, axes).each) {
    const Wood between_edges = middle_half(tenon, axes.across);
    const auto cheeks = both_sides(between_edges, receives.wood, axes.cheek);
    const auto edges = has_edges(joint) ? both_sides(far_from_cheeks(tenon, axes.cheek),
                                                     receives.wood, axes.across)
                                        : std::nullopt;
    const bool first = found.widths.empty();
    found.cheeks = first ? cheeks : lesser(found.cheeks, cheeks);
    found.edges = first ? edges : lesser(found.edges, edges);
    found.widths.push_back(extent_of(tenon, axes.across));
  }
  bool first = true;
  for (const Wood& tenon : tenons) {
    const auto bottom =
        gap(middle_half(middle_half(tenon, axes.across), axes.cheek), receives.wood, axes.in);
    found.bottom = first ? bottom : lesser(found.bottom, bottom);
    found.thickness = extent_of(tenon, axes.cheek);
    first = false;
  }
}

/// Along an arch the edge that is entered is not the blank's. Here the bite is the least, of a few
/// places from end to end, that the panel stands above the lips of the groove, measured upright.
Length bite_along(const Wood& panel, const Solid& receives, const JointAxes& axes) {
  const Box all = room_of(panel);
  constexpr std::int64_t kPlaces = 8;
  std::optional<Length> least;
  for (std::int64_t i = 1; i < kPlaces; ++i) {
    Box slab = around(all, receives.blank);
    slab.low[axes.across] =
        all.low[axes.across] + floor_divide(all.extent(axes.across) * i, kPlaces);
    slab.high[axes.across] = slab.low[axes.across] + Length::from_steps(1);
    const Wood here = clipped(panel, slab);
    const Wood lips = clipped(receives.wood, slab);
    if (here.empty() || lips.empty()) continue;
    const Length bite = room_of(here).high[axes.in.axis] - room_of(lips).low[axes.in.axis];
    if (!least || bite < *least) least = bite;
  }
  return least.value_or(Length());
}

/// A panel under an arch, which goes in upwards.
JointMeasure measure_arched(const JointAxes& axes, const Solid& receives, const Solid& enters) {
  JointMeasure found;
  found.reach = bite_along(enters.wood, receives, axes);
  const Wood inside = clipped(enters.wood, beyond_sight_edge(receives, enters, axes.in, true));
  if (inside.empty()) return found;
  Box crown = room_of(inside);
  crown.low[axes.in.axis] = crown.high[axes.in.axis] - Length::from_steps(1);
  const Box tip = room_of(clipped(inside, crown));
  Box edge = room_of(inside);
  edge.low[axes.cheek] = tip.low[axes.cheek];
  edge.high[axes.cheek] = tip.high[axes.cheek];
  const Wood tongue = clipped(inside, edge);
  found.cheeks = both_sides(tongue, receives.wood, axes.cheek);
  found.bottom = gap(tongue, receives.wood, axes.in);
  found.bearing = gap(tongue, receives.wood, {axes.cheek, false});
  found.thickness = extent_of(tongue, axes.cheek);
  found.widths.push_back(extent_of(tongue, axes.across));
  return found;
}

/// The entering wood on one side of a tenon's cheeks, as wide as the tenon.
Wood beside(const Solid& enters, const Box& tenon, const JointAxes& axes, bool beyond) {
  Box region = enters.blank;
  region.low[axes.across] = tenon.low[axes.across];
  region.high[axes.across] = tenon.high[axes.across];
  if (beyond)
    region.low[axes.cheek] = tenon.high[axes.cheek];
  else
    region.high[axes.cheek] = tenon.low[axes.cheek];
  return clipped(enters.wood, region);
}

/// The part of a region that lies further in than `reach`.
Box past(Box region, const Solid& receives, Way in, Length reach) {
  if (in.upwards)
    region.low[in.axis] = receives.blank.low[in.axis] + reach;
  else
    region.high[in.axis] = receives.blank.high[in.axis] - reach;
  return region;
}

std::optional<Length> further_from_zero(std::optional<Length> a, std::optional<Length> b) {
  if (!a || !b) return a ? a : b;
  return std::max(*a, -*a) < std::max(*b, -*b) ? b : a;
}

/// The shoulders on both sides of one tenon, each on what it stands on. Beside haunches there may
/// be other wood.
void measure_shoulders(JointMeasure& found, const Box& tenon, const Solid& receives,
                       const Solid& enters, const JointAxes& axes) {
  const Wood face = beside(enters, tenon, axes, false);
  const Wood back = beside(enters, tenon, axes, true);
  const auto face_seat = gap(face, receives.wood, axes.in);
  const auto back_seat = gap(back, receives.wood, axes.in);
  const Length face_reach = face.empty() ? Length() : reach_of(face, receives, axes.in);
  const Length back_reach = back.empty() ? face_reach : reach_of(back, receives, axes.in);
  found.line = std::min(face_reach, back_reach);
  if (!face_seat || !back_seat || face_reach == back_reach) {
    found.seat = further_from_zero(found.seat, further_from_zero(face_seat, back_seat));
    return;
  }
  const bool long_face = face_reach > back_reach;
  const Box on = past(enters.blank, receives, axes.in, std::min(face_reach, back_reach));
  found.seat = further_from_zero(found.seat, long_face ? back_seat : face_seat);
  found.long_seat = further_from_zero(
      found.long_seat, gap(clipped(long_face ? face : back, on), receives.wood, axes.in));
}

/// How far what has not entered is from the receiver. What has neither shoulder nor room in the
/// other closes on it face to face, wherever that is.
std::optional<Length> seat_of(const Joint& joint, const Solid& receives, const Solid& enters,
                              Way in) {
  if (!joint.has_shoulder && !joint.design.bottom && !joint.tenon)
    return gap(enters.wood, receives.wood, in);
  return gap(clipped(enters.wood, beyond_sight_edge(receives, enters, in, false)), receives.wood,
             in);
}

/// Of an end without a tenon: both of its shoulders where one is scribed; where a moulding is cut
/// away for it, what has entered there.
void measure_flat_end(JointMeasure& found, const Joint& joint, const Wood& inside,
                      const Solid& receives, const Solid& enters, Way in) {
  found.seat = seat_of(joint, receives, enters, in);
  if (joint.scribed) found.long_seat = gap(inside, receives.wood, in);
  if (joint.kind == JointKind::butt && !joint.scribed && found.seat && *found.seat > Length())
    found.seat = gap(enters.wood, receives.wood, in);
}

/// The part of wood between a tenon's cheeks, or all of it where there is none.
Wood between_cheeks(const Wood& wood, Box region, const Box& tenon, std::size_t cheek) {
  region.low[cheek] = tenon.low[cheek];
  region.high[cheek] = tenon.high[cheek];
  Wood between = clipped(wood, region);
  return between.empty() ? wood : between;
}

/// Where the entering wood is inside. What stands beside the receiver of tails, as the sides of a
/// drawer do below its back, is none of them.
Box inside_region(const Joint& joint, const Solid& receives, const Solid& enters,
                  const JointAxes& axes) {
  Box region = beyond_sight_edge(receives, enters, axes.in, true);
  if (!joint.tails) return region;
  const std::size_t across = axes.across;
  region.low[across] = std::max(region.low[across], receives.blank.low[across]);
  region.high[across] = std::min(region.high[across], receives.blank.high[across]);
  return region;
}

/// Two that cross: the one that enters goes on beyond the other. What is between their edges and
/// how they lie on each other is measured in the middle; both its shoulders close on the other's.
JointMeasure measure_crossing(const JointAxes& axes, const Solid& receives, const Solid& enters) {
  JointMeasure found;
  const std::size_t in = axes.in.axis;
  found.reach = receives.blank.extent(in);
  Box slice = enters.blank;
  slice.low[in] = receives.blank.low[in] + floor_half(found.reach);
  slice.high[in] = slice.low[in] + Length::from_steps(1);
  const Wood middle = clipped(enters.wood, slice);
  if (!middle.empty()) {
    found.bearing = gap(middle, receives.wood, {axes.cheek, false});
    found.edges = both_sides(middle, receives.wood, axes.across);
    found.thickness = extent_of(middle, axes.cheek);
    found.widths.push_back(extent_of(middle, axes.across));
  }
  for (const bool upwards : {true, false}) {
    const Way way{in, upwards};
    const Wood before = clipped(enters.wood, beyond_sight_edge(receives, enters, way, false));
    found.seat = further_from_zero(found.seat, gap(before, receives.wood, way));
  }
  return found;
}

bool is_crossing(const Joint& joint) {
  return joint.kind == JointKind::half_lap && !joint.has_shoulder;
}

}  // namespace

JointMeasure measure(const Joint& joint, const Solid& receives, const Solid& enters,
                     MeasuredOver where) {
  const JointAxes axes = axes_of(joint);
  const Way in = axes.in;
  JointMeasure found;
  if (enters.wood.empty()) return found;
  if (joint.arched) return measure_arched(axes, receives, enters);
  if (is_crossing(joint)) return measure_crossing(axes, receives, enters);
  found.reach = reach_of(enters.wood, receives, in);
  const Wood inside = clipped(enters.wood, inside_region(joint, receives, enters, axes));
  if (inside.empty()) {
    found.seat = seat_of(joint, receives, enters, in);
    return found;
  }
  Wood ends = clipped(inside, slice_at(enters.blank, receives, in, found.reach));
  if (joint.tenon) ends = without_scribed(std::move(ends), enters, axes.cheek);
  if (joint.design.bearing) {
    found.bearing = gap(ends, receives.wood, {axes.cheek, false});
    if (!found.bearing) found.bearing = gap(ends, receives.wood, {axes.cheek, true});
  }
  const Tenons tenons = tenons_of(std::move(ends), axes);
  found.side_by_side = tenons.side_by_side;
  Wood haunches = shallower(inside, receives, in, found.reach);
  if (joint.tenon && !tenons.each.empty()) {
    for (const Box& tenon : tenons.across)
      measure_shoulders(found, tenon, receives, enters, axes);
    haunches = between_cheeks(haunches, past(enters.blank, receives, in, found.line),
                              room_of(tenons), axes.cheek);
  }
  if (!found.seat) measure_flat_end(found, joint, inside, receives, enters, in);
  found.haunch = gap(haunches, receives.wood, in);
  if (where == MeasuredOver::all_over) {
    for (const Wood& tenon : tenons.each)
      measure_end(found, joint, tenon, receives, axes);
    measure_along(found, joint, inside, tenons.each, receives, axes);
  } else {
    // Of a tenon near its end, beyond its haunches and what is worked along the edge; of a panel,
    // which may have swollen past its groove, well inside of it.
    const Length most_of_it = found.reach - floor_divide(found.reach, joint.tenon ? 16 : 2);
    measure_middles(found, joint, clipped(inside, slice_at(enters.blank, receives, in, most_of_it)),
                    tenons.each, receives, axes);
  }
  return found;
}

}  // namespace haunch
