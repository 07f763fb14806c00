#include "swelling.h"

#include <algorithm>
#include <optional>

#include "own_axes.h"
#include "rounding.h"
#include "solid.h"

namespace haunch {
namespace {

/// Where the wood of one piece goes, along one axis of the assembly.
struct Motion {
  double factor = 1;
  Length from, to;  // the place that holds it, as set out and swollen

  Length at(Length place) const { return to + swollen(place - from, factor); }
};

Length middle(Length low, Length high) {
  return low + floor_half(high - low);
}

/// Works out every piece's motion, those that receive before those that enter them.
class Swell {
 public:
  Swell(const Assembly& built, const std::vector<Swelling>& swellings)
      : built_(built), swellings_(swellings), motions_(built.pieces.size()) {
    entering_.resize(built.pieces.size());
    receiving_.resize(built.pieces.size());
    for (std::size_t number = 0; number < built.joints.size(); ++number) {
      entering_[built.joints[number].enters].push_back(number);
      receiving_[built.joints[number].receives].push_back(number);
    }
  }

  /// Moves a piece that lies as it was built.
  void move(Piece& piece, std::size_t number);
  /// Where a box of a piece's own axes comes to lie in the assembly.
  Box place(const BoxOfPiece& its);

 private:
  const Piece& built(std::size_t piece) const { return built_.pieces[piece]; }
  /// Which of a piece's own axes lies along one of the assembly's.
  std::size_t own_axis(std::size_t piece, std::size_t axis) const {
    return haunch::own_axis(built(piece).place, static_cast<Axis>(axis));
  }
  double factor(std::size_t piece, std::size_t own) const {
    return own == 0 ? 1 : own == 1 ? swellings_[piece].width : swellings_[piece].thickness;
  }

  const Motion& motion(std::size_t piece, std::size_t axis);
  Motion free_motion(std::size_t piece, std::size_t axis) const;
  std::optional<Motion> mitred_motion(std::size_t piece, std::size_t axis) const;
  std::optional<Motion> pinned_motion(std::size_t piece, std::size_t axis);
  std::optional<Motion> motion_between(std::size_t piece, std::size_t axis);
  Motion motion_across(std::size_t piece, std::size_t axis);
  Length shift_of_home(const Joint& joint);
  Length held_place(const Joint& joint, std::size_t axis) const;
  std::optional<Box> holding_screw(std::size_t number) const;
  Length home_of(const Joint& joint) const;
  std::optional<Motion> planted_motion(std::size_t piece, std::size_t axis);
  Box scaled(const Box& box, std::size_t piece) const;
  Place place_of(std::size_t piece);

  const Assembly& built_;
  const std::vector<Swelling>& swellings_;
  std::vector<std::vector<std::size_t>> entering_, receiving_;  // joints of each piece
  std::vector<std::array<std::optional<Motion>, 3>> motions_;
};

const Motion& Swell::motion(std::size_t piece, std::size_t axis) {
  std::optional<Motion>& known = motions_[piece][axis];
  if (known) return *known;
  known = free_motion(piece, axis);  // what a piece in a ring of joints is taken to do
  Motion found = *known;
  if (const auto mitred = mitred_motion(piece, axis)) {
    found = *mitred;
  } else if (!entering_[piece].empty()) {
    auto held = pinned_motion(piece, axis);
    if (!held) held = motion_between(piece, axis);
    found = held ? *held : motion_across(piece, axis);
  } else if (receiving_[piece].empty()) {
    found = planted_motion(piece, axis).value_or(found);
  }
  known = found;
  return *known;
}

/// Of a piece that is held by none: about the edge where others enter it, and first of all those
/// that are joined first, as its frame is before beads and panels. Wedges are driven in from the
/// other edge.
Motion Swell::free_motion(std::size_t piece, std::size_t axis) const {
  const Box blank = placed_blank(built(piece));
  std::optional<Length> low;
  std::optional<Length> high;
  for (const std::size_t number : receiving_[piece]) {
    const Joint& joint = built_.joints[number];
    if (static_cast<std::size_t>(joint.heading.axis) != axis || joint.kind == JointKind::wedge)
      continue;
    std::optional<Length>& side = joint.heading.upwards ? low : high;
    if (!side) side = home_of(joint);
  }
  const Length place = low && high ? middle(*low, *high)
                       : high      ? *high
                                   : low.value_or(blank.low[axis]);
  return {factor(piece, own_axis(piece, axis)), place, place};
}

/// Where what enters is home, along its way in: with its shoulder at the sight edge, or with its
/// end on the bottom of a housing.
Length Swell::home_of(const Joint& joint) const {
  const auto axis = static_cast<std::size_t>(joint.heading.axis);
  const bool on_bottom = joint.design.bottom == Length() && !joint.tenon && !joint.design.bite;
  const auto number = static_cast<std::size_t>(&joint - built_.joints.data());
  const Box* made = on_bottom ? cut_for(built_, number) : nullptr;
  if (made == nullptr) return sight_edge(built_, joint);
  const Box cut = placed(*made, built(joint.receives).place);
  return joint.heading.upwards ? cut.high[axis] : cut.low[axis];
}

/// How much of a face two boxes lie together with, and on which axis; in millimetres both ways.
struct Contact {
  double area = 0;
  std::size_t axis = 0;
  bool at_low = false;  // of the first
};

Contact contact_of(const Box& a, const Box& b) {
  const auto shared = [&](std::size_t axis) {
    return static_cast<double>(
        (std::min(a.high[axis], b.high[axis]) - std::max(a.low[axis], b.low[axis])).steps());
  };
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const bool at_low = a.low[axis] == b.high[axis];
    if (!at_low && a.high[axis] != b.low[axis]) continue;
    const double one = shared((axis + 1) % 3);
    const double other = shared((axis + 2) % 3);
    if (one > 0 && other > 0) return {one * other, axis, at_low};
  }
  return {};
}

/// Of a piece without joints: it goes with what it lies against most.
std::optional<Motion> Swell::planted_motion(std::size_t piece, std::size_t axis) {
  const Box blank = placed_blank(built(piece));
  Contact most;
  std::size_t host = piece;
  for (std::size_t other = 0; other < built_.pieces.size(); ++other) {
    if (other == piece || (entering_[other].empty() && receiving_[other].empty())) continue;
    const Contact contact = contact_of(blank, placed_blank(built(other)));
    if (contact.area <= most.area) continue;
    most = contact;
    host = other;
  }
  if (host == piece) return {};
  const Length from = axis == most.axis && !most.at_low ? blank.high[axis] : blank.low[axis];
  return Motion{factor(piece, own_axis(piece, axis)), from, motion(host, axis).at(from)};
}

/// How far the place where an entering piece is home moves along its way in.
Length Swell::shift_of_home(const Joint& joint) {
  const auto axis = static_cast<std::size_t>(joint.heading.axis);
  const Length home = home_of(joint);
  return motion(joint.receives, axis).at(home) - home;
}

/// Of a piece that is mitred, across its grain. As all members of a mitred frame stay as long as
/// they are, a wider one pushes on the sight corner and a narrower one stands at the outer corner.
std::optional<Motion> Swell::mitred_motion(std::size_t piece, std::size_t axis) const {
  const std::size_t own = own_axis(piece, axis);
  if (own != 1) return {};
  for (const auto* numbers : {&receiving_[piece], &entering_[piece]})
    for (const std::size_t number : *numbers) {
      const Joint& joint = built_.joints[number];
      if (joint.kind != JointKind::mitre) continue;
      const std::size_t other = joint.receives == piece ? joint.enters : joint.receives;
      const Box blank = placed_blank(built(piece));
      const bool outer_is_high = placed_blank(built(other)).high[axis] == blank.high[axis];
      const bool at_high = outer_is_high == (factor(piece, own) < 1);
      const Length held = at_high ? blank.high[axis] : blank.low[axis];
      return Motion{factor(piece, own), held, held};
    }
  return {};
}

/// Whether a piece that is pinned across its grain, along this axis, has its pin where this joint
/// of it is: in its middle at both of its ends, else at that edge.
bool is_pinned_at(const Joint& joint, Held held, std::size_t axis) {
  const bool at_edge = static_cast<std::size_t>(joint.heading.axis) == axis;
  if (held == Held::middle) return !at_edge;
  return at_edge && joint.heading.upwards == (held == Held::high_edge);
}

/// Of a piece that is pinned: across its grain, its place there goes with the wood that it is
/// pinned to. Where that is of two pieces which go apart it gives to both alike.
std::optional<Motion> Swell::pinned_motion(std::size_t piece, std::size_t axis) {
  const Held held = built(piece).held;
  const std::size_t own = own_axis(piece, axis);
  if (held == Held::nowhere || own != 1) return {};
  const Box blank = placed_blank(built(piece));
  const Length pin = held == Held::low_edge    ? blank.low[axis]
                     : held == Held::high_edge ? blank.high[axis]
                                               : middle(blank.low[axis], blank.high[axis]);
  Length shifts;
  std::int64_t count = 0;
  for (const std::size_t number : entering_[piece]) {
    const Joint& joint = built_.joints[number];
    if (!is_pinned_at(joint, held, axis)) continue;
    shifts += motion(joint.receives, axis).at(pin) - pin;
    ++count;
  }
  if (count == 0) return {};
  return Motion{factor(piece, own), pin, pin + floor_divide(shifts, count)};
}

/// Of a piece that ends on others along this axis: it stands midway, or goes with what it stands on
/// where all are at one of its ends.
std::optional<Motion> Swell::motion_between(std::size_t piece, std::size_t axis) {
  Length shifts;
  std::int64_t count = 0;
  std::int64_t upwards = 0;
  Length home;
  for (const std::size_t number : entering_[piece]) {
    const Joint& joint = built_.joints[number];
    if (static_cast<std::size_t>(joint.heading.axis) != axis) continue;
    shifts += shift_of_home(joint);
    home = home_of(joint);
    upwards += joint.heading.upwards ? 1 : 0;
    ++count;
  }
  if (count == 0) return {};
  const Box blank = placed_blank(built(piece));
  const bool at_one_end = upwards == 0 || upwards == count;
  const Length from = at_one_end ? home : middle(blank.low[axis], blank.high[axis]);
  return Motion{factor(piece, own_axis(piece, axis)), from, from + floor_divide(shifts, count)};
}

/// Of a piece across its way in: about the middle of its first tenon or tongue.
Motion Swell::motion_across(std::size_t piece, std::size_t axis) {
  const Joint& joint = built_.joints[entering_[piece].front()];
  const Length from = held_place(joint, axis);
  return {factor(piece, own_axis(piece, axis)), from, motion(joint.receives, axis).at(from)};
}

/// The hole of the screw that holds a piece on which all others of a joint stand in slots, in the
/// assembly.
std::optional<Box> Swell::holding_screw(std::size_t number) const {
  const Piece& enters = built(built_.joints[number].enters);
  const Feature* hole = nullptr;
  bool slots = false;
  for (const Feature& feature : enters.features) {
    if (std::find(feature.joints.begin(), feature.joints.end(), number) == feature.joints.end())
      continue;
    slots = slots || feature.kind == FeatureKind::slot;
    if (feature.kind == FeatureKind::screw_hole && hole == nullptr) hole = &feature;
  }
  if (!slots || hole == nullptr) return {};
  return bounds_of(placed(hole->prisms.front(), enters.place));
}

/// The middle of what enters, along an axis across its way in: of the screw that holds it or its
/// tenons where it has any, else of what was cut to receive it.
Length Swell::held_place(const Joint& joint, std::size_t axis) const {
  const Piece& enters = built(joint.enters);
  const auto number = static_cast<std::size_t>(&joint - built_.joints.data());
  if (const auto hole = holding_screw(number)) return middle(hole->low[axis], hole->high[axis]);
  const Length origin = enters.place.origin[axis];
  if (joint.tenon && axis == static_cast<std::size_t>(joint.through))
    return origin + joint.tenon->from_face + floor_half(joint.tenon->thickness);
  if (joint.tenon && own_axis(joint.enters, axis) != 0 && !joint.tenon->each.empty()) {
    const TenonSpan& last = joint.tenon->each.back();
    return origin + middle(joint.tenon->each.front().from_edge, last.from_edge + last.width);
  }
  if (const Box* made = cut_for(built_, number)) {
    const Box cut = placed(*made, built(joint.receives).place);
    return middle(cut.low[axis], cut.high[axis]);
  }
  const Box blank = placed_blank(enters);
  return middle(blank.low[axis], blank.high[axis]);
}

Box Swell::scaled(const Box& box, std::size_t piece) const {
  Box result = box;
  for (std::size_t own = 0; own < 3; ++own) {
    result.low[own] = swollen(box.low[own], factor(piece, own));
    result.high[own] = swollen(box.high[own], factor(piece, own));
  }
  return result;
}

Place Swell::place_of(std::size_t piece) {
  Place place = built(piece).place;
  for (std::size_t axis = 0; axis < 3; ++axis)
    place.origin[axis] = motion(piece, axis).at(place.origin[axis]);
  return place;
}

Box Swell::place(const BoxOfPiece& its) {
  return placed(scaled(its.box, its.piece), place_of(its.piece));
}

void Swell::move(Piece& piece, std::size_t number) {
  const auto scale = [&](Length length, std::size_t own) {
    return swollen(length, factor(number, own));
  };
  piece.place = place_of(number);
  for (std::size_t own = 0; own < 3; ++own)
    piece.blank[own] = scale(piece.blank[own], own);
  for (Feature& feature : piece.features) {
    for (Box& cut : feature.cuts)
      cut = scaled(cut, number);
    for (Prism& prism : feature.prisms) {
      const auto [u, v] = across_axes(prism.along);
      prism.from = scale(prism.from, prism.along);
      prism.to = scale(prism.to, prism.along);
      for (Corner& corner : prism.outline)
        corner = {scale(corner.u, u), scale(corner.v, v)};
    }
  }
}

}  // namespace

Length swollen(Length size, double factor) {
  return factor == 1 ? size : nearest_step(static_cast<double>(size.steps()) * factor);
}

Assembly swollen(const Assembly& built, const std::vector<Swelling>& swellings) {
  Assembly result = built;
  Swell work(built, swellings);
  for (std::size_t number = 0; number < built.pieces.size(); ++number)
    work.move(result.pieces[number], number);
  return result;
}

std::vector<Box> placed_swollen(const Assembly& built, const std::vector<Swelling>& swellings,
                                const std::vector<BoxOfPiece>& boxes) {
  Swell work(built, swellings);
  std::vector<Box> places;
  places.reserve(boxes.size());
  for (const BoxOfPiece& its : boxes)
    places.push_back(work.place(its));
  return places;
}

}  // namespace haunch
