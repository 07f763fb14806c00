// Pairs of leaves: the gap where they meet, before and behind, and how far rebated edges lap.
#include <algorithm>

#include "family.h"

namespace haunch {
namespace {

constexpr std::string_view kBinds = "leaves hung closer than they were set out bind on each other";
constexpr Rule kFront{"meeting-front", "between the leaves of a pair, at the face", kBinds};
constexpr Rule kBack{"meeting-back", "between the leaves of a pair, at the back", kBinds};
constexpr Rule kRest{"meeting-rest", "between rebated meeting stiles, in the thickness", kBinds};
constexpr Rule kLap{"meeting-lap", "that rebated meeting stiles cover each other",
                    "light comes through where they do not; under 6 mm (1/4 in) it soon does "
                    "(trade practice)"};
constexpr Rule kSight{"meeting-sight", "that one meeting stile is seen wider than the other",
                      "the meeting stiles of a pair are seen equally wide (trade practice)"};
constexpr Rule kMoved{"meeting-gap", "between the leaves of a pair",
                      "leaves that swell bind on each other"};

/// Wood of both leaves, or a slice of it.
struct Leaves {
  Wood left, right;

  Leaves slice(Length from, Length to) const {
    const auto cut = [&](const Wood& wood) {
      Box region = room_of(wood);
      region.low[2] = std::max(region.low[2], from);
      region.high[2] = std::min(region.high[2], to);
      return clipped(wood, region);
    };
    return {cut(left), cut(right)};
  }
};

/// The stiles that meet. Face and back of a pair are theirs: a panel may stand proud of them.
struct MeetingStiles {
  std::size_t left, right;
  Leaves wood;
  Length face, back;  // in the thickness
};

MeetingStiles stiles_of(const Bench& bench, const Neighbours& pair) {
  const std::size_t left = outermost(bench.assembly, pair.left, true);
  const std::size_t right = outermost(bench.assembly, pair.right, false);
  const Leaves wood{bench.solids[left].wood, bench.solids[right].wood};
  const Box room = room_of(wood.left);
  return {left, right, wood, room.low[2], room.high[2]};
}

/// How wide the meeting stile of a leaf is seen, from the edge it meets with to its first edge.
Length seen_width(const Wood& stile) {
  return stile.empty() ? Length() : room_of(stile).extent(0);
}

void check_sight(Bench& bench, const MeetingStiles& stiles) {
  const Leaves front = stiles.wood.slice(stiles.face, stiles.face + Length::from_steps(1));
  const Length a = seen_width(front.left);
  const Length b = seen_width(front.right);
  report(bench, kSight, {stiles.left, stiles.right}, {}, std::max(a, b) - std::min(a, b),
         Bounds{{}, {}, {}, Length()});
}

std::vector<std::size_t> names_of(const Bench& bench, const Neighbours& pair) {
  return {first_of(bench.assembly, pair.left), first_of(bench.assembly, pair.right)};
}

void check_meeting(Bench& bench, const Fit& meeting) {
  const Neighbours pair = neighbours_of(bench.assembly, meeting);
  const Leaves leaves{wood_of(bench, pair.left), wood_of(bench, pair.right)};
  const MeetingStiles stiles = stiles_of(bench, pair);
  const std::vector<std::size_t> parts = names_of(bench, pair);
  const Length design_gap = meeting.room.across();  // one of the two: the other side meets none
  const Box left = room_of(leaves.left);
  const Box right = room_of(leaves.right);
  const Length step = Length::from_steps(1);
  const auto tell_gap = [&](const Rule& rule, Length from, std::optional<Length> most) {
    const Leaves at = leaves.slice(from, from + step);
    report(bench, rule, parts, {}, gap(at.left, at.right, {0, true}),
           Bounds{design_gap, most, {}, {}});
  };
  // Square edges may be planed off at the back, so that the leaves swing past each other.
  const bool square = meeting.meets != Meets::rebate;
  tell_gap(kFront, stiles.face, design_gap);
  tell_gap(kBack, stiles.back - step, square ? std::nullopt : std::optional(design_gap));
  check_sight(bench, stiles);
  if (square) return;
  const Length lap = left.high[0] - right.low[0];
  const Length design = meeting.lap.across();
  report(bench, kLap, parts, {}, lap, Bounds{design, design, bench.limits.least_lap, {}});
  const auto [front, back] = meeting.group == pair.right ? std::pair(&leaves.right, &leaves.left)
                                                         : std::pair(&leaves.left, &leaves.right);
  report(bench, kRest, parts, {}, gap(*front, *back, {2, true}),
         Bounds{meeting.behind, meeting.behind, {}, {}});
}

}  // namespace

void check_meetings(Bench& bench) {
  for (const Fit* meeting : fits_that_stand(bench.assembly, StandsIn::beside))
    check_meeting(bench, *meeting);
}

void check_moved_meetings(Bench& bench) {
  for (const Fit* meeting : fits_that_stand(bench.assembly, StandsIn::beside)) {
    const Neighbours pair = neighbours_of(bench.assembly, *meeting);
    report(bench, kMoved, names_of(bench, pair), {},
           gap(wood_of(bench, pair.left), wood_of(bench, pair.right), {0, true}),
           Bounds{Length(), {}, bench.limits.least_at_side, {}});
  }
}

std::vector<const Rule*> rules_of_meetings() {
  return {&kFront, &kBack, &kSight, &kLap, &kRest, &kMoved};
}

}  // namespace haunch
