// What is fixed across wood that moves: how far that goes between its outermost fixings, and
// whether its slots let it.
#include <algorithm>
#include <array>
#include <map>

#include "family.h"
#include "own_axes.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr Rule kHeld{
    "held-across", "by which wood moves between the outermost fixings of what holds it",
    "what is fixed fast across the grain cracks the wood, or breaks loose: fast over at most 100 "
    "mm (4 in), in slots behind that (trade practice)"};
constexpr Rule kSlot{"slot-play", "left at the end of a slot in which a screw stands",
                     "a screw that meets the end of its slot holds the wood fast, and that cracks: "
                     "slots are as long as shank and movement there (trade practice)"};

/// What wood gives where it is held fast: as much as 100 mm (4 in) of flat-sawn white oak moves by
/// over 6 % of moisture. Over half as much again it does not last.
constexpr Length kGives = Length::from_mm(2);
constexpr Length kCracks = Length::from_mm(3);

/// Where one piece is fixed to another.
struct Fixing {
  std::size_t receiver = 0, enterer = 0;
  Triple at;    // in the assembly as built
  Triple play;  // that its slot leaves each way along an axis; 0: held fast
};

/// Those of one piece on what bears it along one axis.
struct Fixed {
  std::size_t joint = 0;
  std::vector<Fixing> fixings;
};

/// A butt holds nothing by itself; tenons, dowels and laps have rules of how wide they may be.
bool is_fixed(JointKind kind) {
  switch (kind) {
    case JointKind::housing:
    case JointKind::stopped_housing:
    case JointKind::rebated_corner:
    case JointKind::tongue:
    case JointKind::screws:
    case JointKind::planted:
      return true;
    default:
      return false;
  }
}

Triple middle_of(const Box& box) {
  Triple middle;
  for (std::size_t axis = 0; axis < 3; ++axis)
    middle[axis] = box.low[axis] + floor_half(box.extent(axis));
  return middle;
}

/// By the holes and slots of its screws, in either piece.
void add_screws(Fixed& held, const Assembly& built, std::size_t number) {
  const Joint& joint = built.joints[number];
  for (const std::size_t bored : {joint.receives, joint.enters})
    for (const Feature& feature : built.pieces[bored].features) {
      const bool slot = feature.kind == FeatureKind::slot;
      if ((!slot && feature.kind != FeatureKind::screw_hole) || feature.fitting ||
          std::find(feature.joints.begin(), feature.joints.end(), number) == feature.joints.end())
        continue;
      const Place& place = built.pieces[bored].place;
      const Box hole = slot ? placed(feature.cuts.front(), place)
                            : bounds_of(placed(feature.prisms.front(), place));
      Fixing fixing{joint.receives, joint.enters, middle_of(hole), {}};
      const auto in = static_cast<std::size_t>(joint.heading.axis);
      for (std::size_t axis = 0; slot && axis < 3; ++axis)
        if (axis != in)
          fixing.play[axis] = floor_half(
              hole.extent(axis) - size_of(feature, SizeName::width).value_or(hole.extent(axis)));
      held.fixings.push_back(fixing);
    }
}

/// All over where they meet: from its low to its high corner.
void add_contact(Fixed& held, const Assembly& built, const Joint& joint) {
  const Box a = placed_blank(built.pieces[joint.receives]);
  const Box b = placed_blank(built.pieces[joint.enters]);
  Fixing low{joint.receives, joint.enters, {}, {}};
  Fixing high = low;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    low.at[axis] = std::max(a.low[axis], b.low[axis]);
    high.at[axis] = std::min(a.high[axis], b.high[axis]);
  }
  held.fixings.insert(held.fixings.end(), {low, high});
}

/// Where the wood of a piece has gone to, along an axis.
Length gone_to(const Piece& built, const Piece& moved, Length at, std::size_t axis) {
  const std::size_t own = own_axis(built.place, static_cast<Axis>(axis));
  const double factor =
      static_cast<double>(moved.blank[own].steps()) / static_cast<double>(built.blank[own].steps());
  const auto from = static_cast<double>((at - built.place.origin[axis]).steps());
  return moved.place.origin[axis] + nearest_step(from * factor);
}

/// How far the wood below a fixing has gone from what it fixes.
Length apart(const Fixing& fixing, const Assembly& built, const Assembly& moved, std::size_t axis) {
  const auto gone = [&](std::size_t piece) {
    return gone_to(built.pieces[piece], moved.pieces[piece], fixing.at[axis], axis);
  };
  return gone(fixing.receiver) - gone(fixing.enterer);
}

/// Along one axis.
struct Strain {
  Length held;                 // the most between two fixings that hold fast
  std::optional<Length> left;  // of the slots, the least
};

Strain strain_of(const Fixed& held, const Assembly& built, const Assembly& moved,
                 std::size_t axis) {
  std::optional<Length> low, high;
  for (const Fixing& fixing : held.fixings) {
    if (fixing.play[axis] > Length()) continue;
    const Length by = apart(fixing, built, moved, axis);
    low = low ? std::min(*low, by) : by;
    high = high ? std::max(*high, by) : by;
  }
  Strain strain;
  if (low) strain.held = *high - *low;
  for (const Fixing& fixing : held.fixings) {
    if (fixing.play[axis] <= Length()) continue;
    const Length by = apart(fixing, built, moved, axis) - low.value_or(Length());
    const Length left = fixing.play[axis] - std::max(by, -by);
    strain.left = strain.left ? std::min(*strain.left, left) : left;
  }
  return strain;
}

// Less than 0.5 mm is no matter anywhere.
constexpr Length kNoMovement = Length::from_mm_thousandths(500);

void check_held(Bench& bench, const Fixed& held, const Assembly& built, const Assembly& moved) {
  const auto in = static_cast<std::size_t>(built.joints[held.joint].heading.axis);
  const std::vector<std::size_t> parts{held.fixings.front().receiver, held.fixings.front().enterer};
  for (std::size_t axis = 0; axis < 3; ++axis) {
    if (axis == in) continue;
    const Strain strain = strain_of(held, built, moved, axis);
    if (strain.held > kNoMovement)
      report(bench, kHeld, parts, held.joint, strain.held, Bounds{{}, kCracks, {}, kGives});
    if (strain.left)
      report(bench, kSlot, parts, held.joint, *strain.left, Bounds{Length(), {}, {}, {}});
  }
}

}  // namespace

bool holds_across(const Assembly& assembly) {
  return std::any_of(assembly.joints.begin(), assembly.joints.end(),
                     [](const Joint& joint) { return is_fixed(joint.kind); });
}

void check_fixings(Bench& bench, const Assembly& built, const Assembly& moved) {
  std::map<std::array<std::size_t, 2>, Fixed> all;
  for (std::size_t number = 0; number < built.joints.size(); ++number) {
    const Joint& joint = built.joints[number];
    if (!is_fixed(joint.kind)) continue;
    const std::array<std::size_t, 2> on{joint.enters, static_cast<std::size_t>(joint.heading.axis)};
    const auto [held, added] = all.try_emplace(on, Fixed{number, {}});
    const std::size_t before = held->second.fixings.size();
    add_screws(held->second, built, number);
    if (held->second.fixings.size() == before) add_contact(held->second, built, joint);
  }
  for (const auto& [on, held] : all)
    check_held(bench, held, built, moved);
}

std::vector<const Rule*> rules_of_fixings() {
  return {&kHeld, &kSlot};
}

}  // namespace haunch
