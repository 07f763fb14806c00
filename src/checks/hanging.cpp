// Leaves in their frame: the gaps round them, and whether their far corners pass as they open.
#include <algorithm>
#include <cmath>
#include <tuple>

#include "family.h"
#include "rounding.h"
#include "seasons.h"

namespace haunch {
namespace {

constexpr std::string_view kBinds = "a leaf hung closer than it was set out binds or shows its gap";
constexpr Rule kLeft{"gap-left", "between leaf and frame, left", kBinds};
constexpr Rule kRight{"gap-right", "between leaf and frame, right", kBinds};
constexpr Rule kHead{"gap-head", "between leaf and frame, head", kBinds};
constexpr Rule kFoot{"gap-foot", "below the leaf", kBinds};
constexpr std::string_view kSprings =
    "a leaf that meets its stop before it is shut springs on its hinges";
constexpr Rule kStop{"gap-stop", "between the leaf's back and its stop", kSprings};
constexpr Rule kSwing{
    "swing-room", "left to the jamb as the leaf's far corner passes it",
    "the far corner of a leaf swings out by about the square of its thickness over twice its width "
    "(the reach about the hinge's pin); a bevelled lock edge or a wider gap lets it pass"};

constexpr Rule kMovedStop{"opening-stop", "between the leaf's back and its stop", kSprings};
constexpr Rule kGain{"gain-across",
                     "between the recesses of a hinge in the leaf and across from it",
                     "a hinge's two leaves are screwed in at one height and depth", true};
constexpr Rule kStrike{"strike-across", "between the middles of the lock and of its strike",
                       "a latch and its strike have about 1 mm of play (trade practice)", true};
constexpr Rule kLip{"lip-rest", "between the leaf's lip and the frame's face",
                    "the lip is to lie on the frame all round"};
constexpr Rule kLipLeft{"lip-left", "of lip over the frame, left", kGapShows};
constexpr Rule kLipRight{"lip-right", "of lip over the frame, right", kGapShows};
constexpr Rule kLipHead{"lip-head", "of lip over the frame, head", kGapShows};

/// The wood of a leaf, and the room that it takes, as thick as its stiles: a panel may stand proud
/// of them.
struct LeafWood {
  Wood wood;
  Box room;
};

LeafWood leaf_of(const Assembly& assembly, const std::vector<Solid>& solids, std::size_t group) {
  LeafWood leaf;
  for (std::size_t number = 0; number < solids.size(); ++number)
    if (assembly.pieces[number].group == group) add(leaf.wood, solids[number].wood);
  const Box stile = room_of(solids[outermost(assembly, group, true)].wood);
  leaf.room = room_of(leaf.wood);
  leaf.room.low[2] = stile.low[2];
  leaf.room.high[2] = stile.high[2];
  return leaf;
}

/// The wood of a leaf, and of everything else.
struct TwoSides {
  LeafWood leaf;
  Wood rest;
};

TwoSides sides_of(const Assembly& assembly, const std::vector<Solid>& solids, const Fit& hung) {
  TwoSides sides{leaf_of(assembly, solids, hung.group), {}};
  for (std::size_t number = 0; number < solids.size(); ++number)
    if (assembly.pieces[number].group != hung.group) add(sides.rest, solids[number].wood);
  return sides;
}

/// Corners of wood along x and z: how far out of a leaf a place is, and how deep.
struct Point {
  double x, z;

  friend bool operator==(const Point&, const Point&) = default;
  friend bool operator<(const Point& a, const Point& b) {
    return std::tie(a.x, a.z) < std::tie(b.x, b.z);
  }
};

template <typename Value>
void keep_different(std::vector<Value>& values) {
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
}

std::vector<Point> corners_of(const Wood& wood) {
  std::vector<Point> points;
  for (const Box& box : wood.boxes)
    for (const Length x : {box.low[0], box.high[0]})
      for (const Length z : {box.low[2], box.high[2]})
        points.push_back({static_cast<double>(x.steps()), static_cast<double>(z.steps())});
  for (const Polyhedron& block : wood.sloping)
    for (const Spot& corner : block.corners)
      points.push_back({corner[0], corner[2]});
  keep_different(points);
  return points;
}

/// Something in the way of an opening leaf: where it begins, from the pin towards the lock side,
/// and how far behind the pin its front is, at least 0: what stands beside the pin is met there.
struct InTheWay {
  double out, deep;

  friend bool operator==(const InTheWay&, const InTheWay&) = default;
  friend bool operator<(const InTheWay& a, const InTheWay& b) {
    return std::tie(a.out, a.deep) < std::tie(b.out, b.deep);
  }
};

/// Boxes by the place along x at which they end towards the lock side of a leaf.
class EndsTowards {
 public:
  EndsTowards(const std::vector<Box>& boxes, bool at_right) : at_right_(at_right) {
    for (const Box& box : boxes)
      boxes_.push_back(&box);
    std::sort(boxes_.begin(), boxes_.end(),
              [&](const Box* a, const Box* b) { return end_of(*a) < end_of(*b); });
  }

  /// Whether the wood of a box goes on towards the pin, no further from the face: then the box
  /// begins there only as wood is counted, and nothing passes its front.
  bool goes_on(const Box& box) const {
    const Length begin = at_right_ ? box.high[0] : box.low[0];
    const auto first =
        std::lower_bound(boxes_.begin(), boxes_.end(), begin,
                         [&](const Box* its, Length at) { return end_of(*its) < at; });
    for (auto it = first; it != boxes_.end() && end_of(**it) == begin; ++it)
      if ((*it)->low[1] <= box.low[1] && (*it)->high[1] >= box.high[1] &&
          (*it)->low[2] <= box.low[2] && (*it)->high[2] > box.low[2])
        return true;
    return false;
  }

 private:
  Length end_of(const Box& box) const { return at_right_ ? box.low[0] : box.high[0]; }

  bool at_right_;
  std::vector<const Box*> boxes_;
};

std::vector<InTheWay> in_the_way(const Wood& rest, const Swing& swing) {
  const auto steps = [](Length length) { return static_cast<double>(length.steps()); };
  std::vector<InTheWay> all;
  const std::vector<Box> boxes = bounds_of(rest);
  const EndsTowards ends(boxes, swing.at_high);
  for (const Box& box : boxes) {
    if (box.high[2] <= swing.pin[2] || ends.goes_on(box)) continue;
    const Length out = swing.at_high ? swing.pin[0] - box.high[0] : box.low[0] - swing.pin[0];
    if (out > Length())
      all.push_back({steps(out), steps(std::max(box.low[2] - swing.pin[2], Length()))});
  }
  keep_different(all);
  return all;
}

/// The least that any corner of the leaf is left as it passes what stands beyond it. A corner's way
/// is a circle about the pin, which stands before the face; it reaches farthest where it comes to
/// the front of what it passes, d behind the pin: sqrt(r^2 - d^2).
/// `stands_in`: how far a leaf that has moved may stand in what is beyond it.
std::optional<Length> swing_room(const Wood& leaf, const Wood& rest, const Swing& swing,
                                 Length stands_in) {
  const auto pin_x = static_cast<double>(swing.pin[0].steps());
  const auto pin_z = static_cast<double>(swing.pin[2].steps());
  const std::vector<InTheWay> all = in_the_way(rest, swing);
  const auto within = static_cast<double>(stands_in.steps());
  std::optional<double> least;
  for (const Point& point : corners_of(leaf)) {
    const double out = swing.at_high ? pin_x - point.x : point.x - pin_x;
    const double deep = point.z - pin_z;
    for (const InTheWay& it : all) {
      if (out <= 0 || it.out < out - within || it.deep > deep) continue;
      const double room = it.out - std::sqrt(out * out + deep * deep - it.deep * it.deep);
      if (!least || room < *least) least = room;
    }
  }
  return least ? std::optional(nearest_step(*least)) : std::nullopt;
}

/// What of a leaf stands behind the frame's face, or before it.
Wood part_of(const Wood& leaf, bool behind) {
  Box region = room_of(leaf);
  (behind ? region.low : region.high)[2] = Length();
  return clipped(leaf, region);
}

/// The lip lies on the frame's face, and over it as far as it was set out.
void check_lip(Bench& bench, const Fit& hung, const TwoSides& sides) {
  const std::size_t named = first_of(bench.assembly, hung.group);
  const Wood lip = part_of(sides.leaf.wood, false);
  const Wood body = part_of(sides.leaf.wood, true);
  report(bench, kLip, {named}, {}, gap(lip, sides.rest, {2, true}),
         Bounds{Length(), Length(), {}, {}});
  const Box out = room_of(lip);
  const Box in = room_of(body);
  const auto tell = [&](const Rule& rule, Way way, Length design) {
    const auto gap_there = gap(body, sides.rest, way);
    if (design <= Length() || !gap_there) return;
    const Length lap = (way.upwards ? out.high[way.axis] - in.high[way.axis]
                                    : in.low[way.axis] - out.low[way.axis]) -
                       *gap_there;
    report(bench, rule, {named}, {}, lap, Bounds{design, design, bench.limits.least_over, {}});
  };
  tell(kLipLeft, {0, false}, hung.lap.left);
  tell(kLipRight, {0, true}, hung.lap.right);
  tell(kLipHead, {1, true}, hung.lap.head);
}

/// As moved wood is: what was 0 as built may come out a few steps off it.
const Bounds kNotShut{Length::from_steps(-100), {}, {}, {}};

/// What lies round a leaf; where nothing does there is no figure.
struct Round {
  std::optional<Length> left, right, head, foot, stop;
};

Round round_of(const TwoSides& sides) {
  const auto gap_to = [&](Way way) { return gap(sides.leaf.wood, sides.rest, way); };
  return {gap_to({0, false}), gap_to({0, true}), gap_to({1, true}),
          gap_to({1, false}).value_or(room_of(sides.leaf.wood).low[1]), gap_to({2, true})};
}

/// The middle half of a box along some axes, and the front half of its thickness.
Box window_in(Box box, bool narrow, bool low, bool front) {
  const auto halve = [&](std::size_t axis) {
    const Length quarter = floor_divide(box.extent(axis), 4);
    box.low[axis] += quarter;
    box.high[axis] -= quarter;
  };
  if (narrow) halve(0);
  if (low) halve(1);
  if (front) box.high[2] = box.low[2] + floor_half(box.extent(2));
  return box;
}

/// From a leaf to the wood beyond it that is seen through a window, even where the two overlap.
std::optional<Length> room_to(const std::vector<Box>& rest, const Box& leaf, const Box& window,
                              Way way) {
  std::optional<Length> nearest;
  for (const Box& box : rest) {
    const Length ahead =
        box.low[way.axis] + box.high[way.axis] - leaf.low[way.axis] - leaf.high[way.axis];
    if ((ahead > Length()) != way.upwards || !in_shadow(box, window, way.axis)) continue;
    const Length room = way.upwards ? box.low[way.axis] - leaf.high[way.axis]
                                    : leaf.low[way.axis] - box.high[way.axis];
    if (!nearest || room < *nearest) nearest = room;
  }
  return nearest;
}

/// The same of a leaf that has moved and may stand in what is round it. Each figure is taken where
/// the others do not come in: at the sides half-way up, at the head in the middle, at the stops
/// within the width that is free.
Round moved_round_of(const TwoSides& sides) {
  const std::vector<Box> rest = bounds_of(sides.rest);
  const Box& leaf = sides.leaf.room;
  const Box side = window_in(leaf, false, true, true);
  const Box end = window_in(leaf, true, false, true);
  Round round;
  round.left = room_to(rest, leaf, side, {0, false});
  round.right = room_to(rest, leaf, side, {0, true});
  round.head = room_to(rest, leaf, end, {1, true});
  round.foot = room_to(rest, leaf, end, {1, false}).value_or(leaf.low[1]);
  Box behind = window_in(leaf, false, true, false);
  behind.low[0] -= std::min(round.left.value_or(Length()), Length());
  behind.high[0] += std::min(round.right.value_or(Length()), Length());
  round.stop = room_to(rest, leaf, behind, {2, true});
  return round;
}

SideGaps gaps_of(const Round& round) {
  const auto figure = [](const std::optional<Length>& gap) { return gap.value_or(Length()); };
  return {figure(round.left), figure(round.right), figure(round.head), figure(round.foot)};
}

/// What stands while a leaf opens at the heights of its middle: everything else, but the leaf that
/// opens before it; and not head, transom and sill, which no corner of it passes, wherever boxes of
/// their wood begin. Only what stands somewhere in `room` is looked at.
Wood standing_as_it_opens(const Bench& bench, const Fit& hung, const Box& leaf, const Box& room) {
  const std::vector<const Fit*> meetings = fits_that_stand(bench.assembly, StandsIn::beside);
  const auto opens = [&](std::size_t group) {
    return group == hung.group || std::any_of(meetings.begin(), meetings.end(), [&](const Fit* it) {
             return it->meets == Meets::rebate && it->group == group && it->other == hung.group;
           });
  };
  const Box middle = window_in(leaf, false, true, false);
  Wood rest;
  for (std::size_t number = 0; number < bench.solids.size(); ++number) {
    const Wood& wood = bench.solids[number].wood;
    if (!interiors_meet(bench.solids[number].blank, room)) continue;
    if (wood.empty() || opens(bench.assembly.pieces[number].group)) continue;
    Box region = room_of(wood);
    region.low[1] = middle.low[1];
    region.high[1] = middle.high[1];
    add(rest, clipped(wood, region));
  }
  return rest;
}

/// How far from its pin any corner of a leaf is.
Length reach_of(const Box& leaf, const Swing& swing) {
  const auto steps = [](Length length) { return static_cast<double>(length.steps()); };
  const Length out = swing.at_high ? swing.pin[0] - leaf.low[0] : leaf.high[0] - swing.pin[0];
  const Length deep = std::max(leaf.high[2] - swing.pin[2], swing.pin[2] - leaf.low[2]);
  return nearest_step(std::hypot(steps(out), steps(deep))) + Length::from_steps(1);
}

/// What is left to the jamb. What stands beyond three times the leaf's reach leaves at least twice
/// of it: nobody looks there while less is found.
std::optional<Length> room_to_swing(const Bench& bench, const Fit& hung, const LeafWood& leaf,
                                    const Swing& swing) {
  // Far less than from any corner of a leaf to its next, and more than wood moves.
  const Length stands_in = bench.moisture ? Length::from_mm(10) : Length();
  const Length reach = reach_of(room_of(leaf.wood), swing);
  const Length everywhere = Length::from_mm(1'000'000);  // more than any work
  const Box middle = window_in(leaf.room, false, true, false);
  const auto room_within = [&](Length out) {
    Box room{{swing.pin[0], middle.low[1], swing.pin[2]},
             {swing.pin[0], middle.high[1], everywhere}};
    (swing.at_high ? room.low[0] : room.high[0]) += swing.at_high ? -out : out;
    const Wood rest = standing_as_it_opens(bench, hung, leaf.room, room);
    return swing_room(leaf.wood, rest, swing, stands_in);
  };
  const auto near = room_within(reach * 3);
  return near && *near <= reach * 2 ? near : room_within(everywhere);
}

void check_swing(Bench& bench, const Fit& hung, const LeafWood& leaf) {
  const Swing* swing = hung.swing();
  if (swing == nullptr) return;
  if (const auto room = room_to_swing(bench, hung, leaf, *swing))
    report(bench, kSwing, {first_of(bench.assembly, hung.group)}, {}, room,
           Bounds{Length(), {}, bench.limits.least_swing, {}});
}

void check_leaf(Bench& bench, const Fit& hung) {
  const std::size_t named = first_of(bench.assembly, hung.group);
  const TwoSides sides = sides_of(bench.assembly, bench.solids, hung);
  const Round round = round_of(sides);
  const auto tell = [&](const Rule& rule, std::optional<Length> found, Length design) {
    report(bench, rule, {named}, {}, found, Bounds{design, design, {}, {}});
  };
  tell(kLeft, round.left, hung.room.left);
  tell(kRight, round.right, hung.room.right);
  tell(kHead, round.head, hung.room.head);
  tell(kFoot, round.foot, hung.room.foot);
  if (hung.meets != Meets::rebate) {
    tell(kStop, round.stop, hung.behind);
  } else {
    tell(kStop, gap(part_of(sides.leaf.wood, true), sides.rest, {2, true}), hung.behind);
    check_lip(bench, hung, sides);
  }
  check_swing(bench, hung, sides.leaf);
}

// ---- what is let in to a leaf's edges, and across from them

/// A fitting's recesses in one piece that open to the left or the right, as one room.
struct InEdge {
  std::size_t piece = 0;
  std::size_t group = 0;
  std::string_view name;
  bool hinge = false;
  Box room;
};

void take_in(std::vector<InEdge>& all, std::size_t number, const Piece& piece,
             const Feature& feature) {
  if (!feature.fitting || piece.place.axes[feature.fitting->into] != Axis::x) return;
  const Box room = room_of(taken_away(feature, piece.place));
  const auto same = std::find_if(all.begin(), all.end(), [&](const InEdge& it) {
    return it.piece == number && it.name == feature.fitting->name;
  });
  if (same == all.end())
    all.push_back(
        {number, piece.group, feature.fitting->name, feature.kind == FeatureKind::gain, room});
  else
    same->room = around(same->room, room);
}

/// The fitting of that name nearest across from one of a leaf.
const InEdge* across_from(const std::vector<InEdge>& all, const InEdge& its,
                          std::string_view name) {
  const InEdge* nearest = nullptr;
  const auto apart = [&](const InEdge& it) {
    return std::max(it.room.low[0] - its.room.high[0], its.room.low[0] - it.room.high[0]);
  };
  for (const InEdge& it : all)
    if (it.group != its.group && it.name == name &&
        (nearest == nullptr || apart(it) < apart(*nearest)))
      nearest = &it;
  return nearest;
}

Length far_from_middle(const Box& a, const Box& b) {
  const auto twice = [&](std::size_t axis) {
    const Length off = a.low[axis] + a.high[axis] - b.low[axis] - b.high[axis];
    return std::max(off, -off);
  };
  return floor_half(std::max(twice(1), twice(2)));
}

void check_across(Bench& bench, const Fit& hung, const std::vector<InEdge>& all) {
  for (const InEdge& its : all) {
    if (its.group != hung.group || (!its.hinge && its.name != "lock")) continue;
    const InEdge* other = across_from(all, its, its.hinge ? its.name : "strike");
    std::vector<std::size_t> parts{its.piece};
    if (other != nullptr) parts.push_back(other->piece);
    const auto off = other != nullptr
                         ? std::optional<Length>(far_from_middle(its.room, other->room))
                         : std::nullopt;
    report(bench, its.hinge ? kGain : kStrike, parts, {}, off,
           its.hinge ? Bounds{{}, Length(), {}, {}}
                     : Bounds{{}, bench.limits.least_swing * 4, {}, bench.limits.least_swing});
    bench.findings.back().fitting = its.name;
  }
}

}  // namespace

void check_hanging(Bench& bench) {
  const std::vector<const Fit*> all = fits_that_stand(bench.assembly, StandsIn::group);
  if (all.empty()) return;
  std::vector<InEdge> let_in;
  for (std::size_t number = 0; number < bench.assembly.pieces.size(); ++number)
    for (const Feature& feature : bench.assembly.pieces[number].features)
      take_in(let_in, number, bench.assembly.pieces[number], feature);
  for (const Fit* hung : all) {
    check_leaf(bench, *hung);
    check_across(bench, *hung, let_in);
  }
}

void check_swing_room(Bench& bench, const Fit& hung) {
  if (hung.swing() == nullptr) return;
  check_swing(bench, hung, leaf_of(bench.assembly, bench.solids, hung.group));
}

void hang_anew(Assembly& moved) {
  for (Fit& hung : moved.fits) {
    Swing* swing = std::get_if<Swing>(&hung.moves);
    if (hung.stands != StandsIn::group || swing == nullptr) continue;
    const TwoSides sides = sides_of(moved, solids_of(moved), hung);
    const Round round = moved_round_of(sides);
    const auto& found = swing->at_high ? round.right : round.left;
    if (!found) continue;
    const Length further = (swing->at_high ? hung.room.right : hung.room.left) - *found;
    const Length by = swing->at_high ? -further : further;
    for (const std::size_t piece : pieces_of(moved, hung.group))
      moved.pieces[piece].place.origin[0] += by;
    const Box& leaf = sides.leaf.room;
    swing->pin[0] = by + (swing->at_high ? leaf.high[0] + floor_half(hung.room.right)
                                         : leaf.low[0] - floor_half(hung.room.left));
  }
}

LeafState hung_state(const Bench& bench, const Fit& hung) {
  const TwoSides sides = sides_of(bench.assembly, bench.solids, hung);
  const Box& leaf = sides.leaf.room;
  return {leaf.extent(0), leaf.extent(1), gaps_of(moved_round_of(sides))};
}

void check_moved_hanging(Bench& bench) {
  const std::vector<const Fit*> meetings = fits_that_stand(bench.assembly, StandsIn::beside);
  for (const Fit* hung : fits_that_stand(bench.assembly, StandsIn::group)) {
    Beside left = Beside::opening;
    Beside right = Beside::opening;
    for (const Fit* meeting : meetings) {
      const Neighbours pair = neighbours_of(bench.assembly, *meeting);
      if (pair.left == hung->group) right = Beside::leaf;
      if (pair.right == hung->group) left = Beside::leaf;
    }
    const TwoSides sides = sides_of(bench.assembly, bench.solids, *hung);
    const Round round = moved_round_of(sides);
    const std::size_t named = first_of(bench.assembly, hung->group);
    report_moved_sides(bench, gaps_of(round), named, left, right);
    report(bench, kMovedStop, {named}, {}, round.stop, kNotShut);
    check_swing(bench, *hung, sides.leaf);
  }
}

std::vector<const Rule*> rules_of_hanging() {
  return {&kLeft,    &kRight,    &kHead,    &kFoot, &kStop,   &kSwing,    &kLip,
          &kLipLeft, &kLipRight, &kLipHead, &kGain, &kStrike, &kMovedStop};
}

}  // namespace haunch
