#include "joint_oracle.h"

#include <algorithm>
#include <array>
#include <random>
#include <set>

#include "sloping_wood.h"

namespace haunch::test {
namespace {

constexpr double kBeside = 100;  // steps off a face, so that the answer is clear
constexpr int kPoints = 12;      // for each face that is looked at

double steps(Length length) {
  return static_cast<double>(length.steps());
}

struct Room {
  Point low{}, high{};

  bool empty() const { return low[0] >= high[0] || low[1] >= high[1] || low[2] >= high[2]; }
};

Room room_of(const Piece& piece) {
  const Box blank = placed_blank(piece);
  Room room;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    room.low[axis] = steps(blank.low[axis]);
    room.high[axis] = steps(blank.high[axis]);
  }
  return room;
}

Room common(const Room& a, const Room& b) {
  Room both;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    both.low[axis] = std::max(a.low[axis], b.low[axis]);
    both.high[axis] = std::min(a.high[axis], b.high[axis]);
  }
  return both;
}

class PointJudge {
 public:
  PointJudge(const Assembly& assembly, std::uint64_t seed) : wood_(assembly), random_(seed) {}

  std::vector<PointFault> faults() {
    slopes_lie_in_blanks();
    for (std::size_t i = 0; i < wood_.joints.size(); ++i) {
      const Joint& joint = wood_.joints[i];
      if (joint.kind == JointKind::dowel) dowel(i);
      if (joint.kind == JointKind::butt) butt(i, room_of(enterer(joint)));
      if (joint.kind == JointKind::half_lap) half_lap(i);
      if (joint.kind == JointKind::mitre) mitre(i);
      if (joint.kind == JointKind::mitre_spline) spline(i);
      if (joint.tenon && joint.mortise && joint.kind != JointKind::half_lap) tenons(i);
    }
    nothing_is_shared();
    no_light_comes_through();
    return std::move(faults_);
  }

  std::vector<PointFault> faults_to_be_seen() {
    slopes_lie_in_blanks();
    nothing_is_shared();
    for (std::size_t i = 0; i < wood_.joints.size(); ++i)
      if (is_member(receiver(wood_.joints[i])) && is_member(enterer(wood_.joints[i]))) seam(i);
    return std::move(faults_);
  }

 private:
  const Piece& receiver(const Joint& joint) const { return wood_.pieces[joint.receives]; }
  const Piece& enterer(const Joint& joint) const { return wood_.pieces[joint.enters]; }

  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  Point within(const Room& room) {
    Point at{};
    for (std::size_t axis = 0; axis < 3; ++axis)
      at[axis] = between(room.low[axis], room.high[axis]);
    return at;
  }

  void expect(bool good, std::size_t joint, const std::string& what) {
    if (!good) faults_.push_back({joint, "", joint_id(joint) + ": " + what});
  }

  /// From a point of one piece's surface on, this way: free as far as designed, and no further.
  void expect_room(std::size_t joint, const Piece& other, Point from, std::size_t axis, double sign,
                   Length room, const std::string& what) {
    Point at = from;
    at[axis] = from[axis] + sign * (steps(room) - kBeside);
    if (steps(room) > 2 * kBeside)
      expect(!holds(other, at), joint, what + " is less than designed");
    at[axis] = from[axis] + sign * (steps(room) + kBeside);
    expect(holds(other, at), joint, what + " is more than designed");
  }

  void slopes_lie_in_blanks() {
    for (const Piece& piece : wood_.pieces)
      for (const Feature& feature : piece.features)
        for (const Prism& prism : feature.prisms)
          if (!lies_within(prism, piece))
            faults_.push_back({{}, "", piece.mark + ": a slope lies outside"});
  }

  static bool is_member(const Piece& piece) {
    return piece.role == Role::stile || piece.role == Role::rail || piece.role == Role::muntin;
  }

  /// Close below face and back, from an end's wood straight on to its receiver's: wood all the way.
  void seam(std::size_t number) {
    constexpr int kRays = 8;
    constexpr int kLooks = 6;
    const double deep = 25 * steps(Length::from_mm(1));
    const Joint& joint = wood_.joints[number];
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const double way = joint.heading.upwards ? 1 : -1;
    const Room into = room_of(receiver(joint));
    const Room end = room_of(enterer(joint));
    const double start = way > 0 ? into.low[in] : into.high[in];
    const auto is_wood = [&](const Point& at) {
      return holds(enterer(joint), at) || holds(receiver(joint), at);
    };
    for (int ray = 0; ray < kRays; ++ray)
      for (const double share : {0.01, 0.99}) {
        Point at = within(end);
        at[2] = end.low[2] + share * (end.high[2] - end.low[2]);
        at[in] = start - way * kBeside;
        Point past = at;
        past[in] = start + way * deep;
        if (!holds(enterer(joint), at) || !is_wood(past)) continue;
        for (int look = 0; look < kLooks; ++look) {
          at[in] = start + way * between(kBeside, deep);
          expect(is_wood(at), number, "is open where it is seen");
        }
      }
  }

  void dowel(std::size_t number) {
    const Joint& joint = wood_.joints[number];
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const double way = joint.heading.upwards ? 1 : -1;
    const Room room = room_of(enterer(joint));
    Point tip{};
    for (std::size_t axis = 0; axis < 3; ++axis)
      tip[axis] = (room.low[axis] + room.high[axis]) / 2;
    tip[in] = way > 0 ? room.high[in] : room.low[in];
    expect_room(number, receiver(joint), tip, in, way, *joint.design.bottom, "room below a dowel");
    tip[in] -= way * kBeside;
    expect(holds(enterer(joint), tip), number, "a dowel has no middle");
    for (const std::size_t axis : {1 - in, std::size_t{2}})
      for (const double sign : {-1.0, 1.0}) {
        Point side = tip;
        side[axis] = sign > 0 ? room.high[axis] : room.low[axis];
        expect_room(number, receiver(joint), side, axis, sign, floor_half(*joint.design.cheeks),
                    "play beside a dowel");
      }
    // It is round: its corners are off, and those of its hole are not there either.
    const auto off_corner = [&](double share) {
      Point at = tip;
      for (const std::size_t axis : {1 - in, std::size_t{2}})
        at[axis] = room.low[axis] + (room.high[axis] - room.low[axis]) * share;
      return at;
    };
    expect(!holds(enterer(joint), off_corner(0.13)), number, "a dowel is not round");
    expect(holds(receiver(joint), off_corner(0.01)), number, "a dowel's hole is not round");
  }

  /// The end lies on the other's edge in front of all that is cut there, and behind.
  void butt(std::size_t number, const Room& room) {
    const Joint& joint = wood_.joints[number];
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const double way = joint.heading.upwards ? 1 : -1;
    Room behind = room;  // less what rebates for glass take off the back
    behind.low[1 - in] += depth_of("glass-rebate", number);
    behind.high[1 - in] -= depth_of("glass-rebate", number);
    for (int i = 0; i < kPoints; ++i)
      for (const double share : {0.02, 0.98}) {
        Point at = within(share > 0.5 ? behind : room);
        at[2] = room.low[2] + share * (room.high[2] - room.low[2]);
        at[in] = (way > 0 ? room.high[in] : room.low[in]) - way * kBeside;
        expect(holds(enterer(joint), at), number, "an end is not whole");
        at[in] += 2 * way * kBeside;
        expect(holds(receiver(joint), at), number, "an end is not closed");
      }
  }

  /// Where one tenon of a joint stands by its figures; along the way in, its last tenth before
  /// wedges reach it, past all that is sunk into the edge.
  Room stand_of(const Joint& joint, const TenonSpan& span) const {
    const Piece& piece = enterer(joint);
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const std::size_t across = 1 - in;
    Room room = room_of(piece);
    const double depth = steps(joint.tenon->depth);
    const bool flared = joint.mortise->flare.has_value();
    const double last = flared ? steps(joint.mortise->flare->depth) + kBeside : 0.0;
    if (joint.heading.upwards)
      room.high[in] -= last, room.low[in] = room.high[in] - (depth - last) / 10;
    else
      room.low[in] += last, room.high[in] = room.low[in] + (depth - last) / 10;
    room.low[across] += steps(span.from_edge);
    room.high[across] = room.low[across] + steps(span.width);
    room.low[2] += steps(span.from_face.value_or(joint.tenon->from_face));
    room.high[2] = room.low[2] + steps(joint.tenon->thickness);
    return room;
  }

  void tenons(std::size_t number) {
    const Joint& joint = wood_.joints[number];
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const Room into = room_of(receiver(joint));
    if (joint.has_shoulder) {
      Room shoulder = room_of(enterer(joint));
      if (joint.heading.upwards)
        shoulder.high[in] = into.low[in];
      else
        shoulder.low[in] = into.high[in];
      butt(number, shoulder);
    }
    for (const TenonSpan& span : joint.tenon->each) {
      const Room stand = stand_of(joint, span);
      const double past =
          joint.heading.upwards ? stand.low[in] - into.low[in] : into.high[in] - stand.high[in];
      if (past > std::max(depth_of("groove", number), depth_of("glass-rebate", number)))
        tenon(number, stand);
    }
  }

  void tenon(std::size_t number, const Room& stand) {
    const Joint& joint = wood_.joints[number];
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const std::size_t across = 1 - in;
    const double way = joint.heading.upwards ? 1 : -1;
    for (int i = 0; i < kPoints; ++i)
      expect(holds(enterer(joint), within(stand)) || joint.tenon->edge_radius > Length(), number,
             "a tenon is not whole");
    const auto side_of = [&](std::size_t axis, double sign) {
      Point side{};
      for (std::size_t each = 0; each < 3; ++each)
        side[each] = (stand.low[each] + stand.high[each]) / 2;
      side[axis] = sign > 0 ? stand.high[axis] : stand.low[axis];
      return side;
    };
    const auto expect_end = [&](Point at, std::size_t axis, double sign, const std::string& what) {
      at[axis] += sign * kBeside;
      expect(!holds(enterer(joint), at), number, what);
    };
    for (const double sign : {-1.0, 1.0}) {
      expect_end(side_of(2, sign), 2, sign, "a tenon is thicker than told");
      expect_end(side_of(across, sign), across, sign, "a tenon is wider than told");
      const Length thin = floor_half(*joint.design.cheeks);
      expect_room(number, receiver(joint), side_of(2, sign), 2, sign,
                  sign < 0 ? thin : *joint.design.cheeks - thin, "play beside a tenon's cheek");
      const bool fits_ends =
          joint.mortise->end_radius == Length() || joint.tenon->edge_radius > Length();
      if (joint.design.edges && fits_ends)
        expect_room(number, receiver(joint), side_of(across, sign), across, sign,
                    floor_half(*joint.design.edges), "play at a tenon's edge");
    }
    if (joint.design.edge) {
      const Room into = room_of(receiver(joint));
      const double inner =
          into.high[across] - stand.high[across] > stand.low[across] - into.low[across] ? 1 : -1;
      expect_room(number, receiver(joint), side_of(across, inner), across, inner,
                  *joint.design.edge, "play at a bridle's edge");
    }
    if (joint.design.bottom)
      expect_room(number, receiver(joint), side_of(in, way), in, way, *joint.design.bottom,
                  "room below a tenon");
    else if (!joint.mortise->flare)
      expect_end(side_of(in, way), in, way, "a tenon is longer than told");
  }

  void half_lap(std::size_t number) {
    const Joint& joint = wood_.joints[number];
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const std::size_t across = 1 - in;
    const double way = joint.heading.upwards ? 1 : -1;
    const Room room = common(room_of(receiver(joint)), room_of(enterer(joint)));
    const double meet = room.low[2] + steps(joint.tenon->from_face);
    const double front = room.low[2] + 0.02 * (room.high[2] - room.low[2]);
    const double back = room.high[2] - 0.02 * (room.high[2] - room.low[2]);
    // Within the depth of grooves, or of rebates for glass, of the edges something may be missing.
    Room halves = room;
    const double rebates = depth_of("glass-rebate", number);
    const double inset = std::max(depth_of("groove", number), rebates) + kBeside;
    Room behind = room;
    behind.low[in] += rebates;
    behind.high[in] -= rebates;
    for (const std::size_t axis : {in, across}) {
      halves.low[axis] += inset;
      halves.high[axis] -= inset;
    }
    for (int i = 0; i < kPoints; ++i) {
      if (!halves.empty()) {
        Point at = within(halves);
        at[2] = meet - kBeside;
        expect(holds(receiver(joint), at) && !holds(enterer(joint), at), number, "front of a lap");
        at[2] = meet + kBeside;
        expect(!holds(receiver(joint), at) && holds(enterer(joint), at), number, "back of a lap");
      }
      Point shoulder = within(room);
      shoulder[2] = front;
      shoulder[in] = way > 0 ? room.low[in] : room.high[in];
      shoulder[in] += way * kBeside;
      expect(holds(receiver(joint), shoulder), number, "the front shoulder is not closed");
      shoulder[in] -= 2 * way * kBeside;
      expect(holds(enterer(joint), shoulder), number, "there is no front shoulder");
      for (const double sign : {-1.0, 1.0})
        lap_edge(number, behind, across, sign, back);
    }
  }

  void lap_edge(std::size_t number, const Room& room, std::size_t across, double sign,
                double back) {
    const Joint& joint = wood_.joints[number];
    const Room whole = room_of(receiver(joint));
    Point edge = within(room);
    edge[2] = back;
    edge[across] = sign > 0 ? room.high[across] : room.low[across];
    const bool at_end =
        sign > 0 ? edge[across] >= whole.high[across] : edge[across] <= whole.low[across];
    if (at_end) return;
    const Length play = joint.design.edge ? *joint.design.edge : floor_half(*joint.design.edges);
    expect_room(number, receiver(joint), edge, across, sign, play, "play at the edge of a lap");
  }

  double depth_of(std::string_view kind, std::size_t number) const {
    double deepest = 0;
    for (const std::size_t piece : {wood_.joints[number].receives, wood_.joints[number].enters})
      for (const Feature& feature : wood_.pieces[piece].features)
        if (word_of(feature.kind) == kind)
          for (const Box& cut : feature.cuts)
            deepest = std::max(deepest, steps(cut.extent(1)));
    return deepest;
  }

  /// On both sides of the line from the sight corner to the outer one, in front of all that is cut.
  void mitre(std::size_t number) {
    const Joint& joint = wood_.joints[number];
    const Room square = common(room_of(receiver(joint)), room_of(enterer(joint)));
    const double outwards = joint.heading.upwards ? 1 : -1;
    const double upwards = square.high[1] >= steps(wood_.size[1]) ? 1 : -1;
    const double width = square.high[0] - square.low[0];
    expect(width == square.high[1] - square.low[1], number, "a mitre is not at 45 degrees");
    for (int i = 0; i < kPoints; ++i)
      for (const double share : {0.02, 0.98}) {
        const double least =
            share > 0.5 ? depth_of("glass-rebate", number) + kBeside : 0.01 * width;
        const double out = between(least, 0.99 * width);
        Point at{(outwards > 0 ? square.low[0] : square.high[0]) + outwards * out,
                 (upwards > 0 ? square.low[1] : square.high[1]) + upwards * out,
                 square.low[2] + share * (square.high[2] - square.low[2])};
        at[0] += outwards * kBeside;
        expect(holds(receiver(joint), at) && !holds(enterer(joint), at), number,
               "stile of a mitre");
        at[0] -= 2 * outwards * kBeside;
        expect(!holds(receiver(joint), at) && holds(enterer(joint), at), number, "rail of a mitre");
      }
  }

  /// The place where a spline comes furthest this way.
  static Point tip_of(const Piece& piece, std::size_t axis, double way) {
    Point tip{};
    bool first = true;
    const Room room = room_of(piece);
    const double middle = (room.low[1 - axis] + room.high[1 - axis]) / 2;
    for (const Feature& feature : piece.features)
      for (const Prism& prism : feature.prisms)
        for (const Corner& corner : prism.outline) {
          const Point at{steps(piece.place.origin[0] + corner.u),
                         steps(piece.place.origin[1] + corner.v),
                         steps(piece.place.origin[2]) + steps(piece.blank[2]) / 2};
          Point inside = at;  // off the faces of the blank, on which corners that are cut off lie
          inside[axis] -= way * 4;
          inside[1 - axis] += inside[1 - axis] < middle ? 1 : -1;
          if (!holds(piece, inside) || (!first && way * (at[axis] - tip[axis]) <= 0)) continue;
          tip = at;
          first = false;
        }
    return tip;
  }

  void spline(std::size_t number) {
    const Joint& joint = wood_.joints[number];
    const auto in = static_cast<std::size_t>(joint.heading.axis);
    const double way = joint.heading.upwards ? 1 : -1;
    Point tip = tip_of(enterer(joint), in, way);
    expect_room(number, receiver(joint), tip, in, way, *joint.design.bottom, "room below a spline");
    tip[in] -= way * 4 * kBeside;
    expect(holds(enterer(joint), tip), number, "a spline has no end");
    const Room room = room_of(enterer(joint));
    for (const double sign : {-1.0, 1.0}) {
      tip[2] = sign > 0 ? room.high[2] : room.low[2];
      const Length play = sign > 0 ? *joint.design.cheeks - floor_half(*joint.design.cheeks)
                                   : floor_half(*joint.design.cheeks);
      expect_room(number, receiver(joint), tip, 2, sign, play, "play beside a spline");
    }
  }

  void nothing_is_shared() {
    constexpr int kAsked = 200;
    for (std::size_t a = 0; a < wood_.pieces.size(); ++a)
      for (std::size_t b = a + 1; b < wood_.pieces.size(); ++b) {
        const Room both = common(room_of(wood_.pieces[a]), room_of(wood_.pieces[b]));
        if (both.empty()) continue;
        for (int i = 0; i < kAsked; ++i) {
          const Point at = within(both);
          if (!holds(wood_.pieces[a], at) || !holds(wood_.pieces[b], at)) continue;
          faults_.push_back(
              {{},
               "fouling",
               wood_.pieces[a].mark + " and " + wood_.pieces[b].mark + " share wood"});
          break;
        }
      }
  }

  void no_light_comes_through() {
    constexpr int kLooks = 150;
    constexpr int kDeep = 24;
    for (int look = 0; look < kLooks; ++look) {
      Point at{between(0, steps(wood_.size[0])), between(0, steps(wood_.size[1])), 0};
      const bool closed =
          std::any_of(wood_.pieces.begin(), wood_.pieces.end(), [&](const Piece& it) {
            for (int deep = 0; deep < kDeep; ++deep) {
              at[2] = (deep + 0.5) / kDeep * steps(wood_.size[2]);
              if (holds(it, at)) return true;
            }
            return false;
          });
      if (!closed) faults_.push_back({{}, "face-closed", "light comes through"});
    }
  }

  const Assembly& wood_;
  std::mt19937_64 random_;
  std::vector<PointFault> faults_;
};

}  // namespace

bool dowels_meet_others(const Assembly& assembly) {
  std::set<std::array<std::size_t, 2>> joined;
  for (const Joint& joint : assembly.joints)
    joined.insert({joint.enters, joint.receives});
  const double least_room = steps(Length::from_mm(6));  // holes are wider and deeper than dowels
  for (std::size_t a = 0; a < assembly.pieces.size(); ++a) {
    if (assembly.pieces[a].role != Role::dowel) continue;
    Room around = room_of(assembly.pieces[a]);
    for (std::size_t axis = 0; axis < 3; ++axis) {
      around.low[axis] -= least_room;
      around.high[axis] += least_room;
    }
    for (std::size_t b = 0; b < assembly.pieces.size(); ++b) {
      const Role role = assembly.pieces[b].role;
      if (a == b || role == Role::stile || role == Role::panel || joined.contains({a, b})) continue;
      if (!common(around, room_of(assembly.pieces[b])).empty()) return true;
    }
  }
  return false;
}

std::vector<PointFault> joint_faults(const Assembly& assembly, std::uint64_t seed) {
  return PointJudge(assembly, seed).faults();
}

std::vector<PointFault> faults_to_be_seen(const Assembly& assembly, std::uint64_t seed) {
  return PointJudge(assembly, seed).faults_to_be_seen();
}

}  // namespace haunch::test
