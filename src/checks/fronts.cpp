// Fronts in the openings of a case: the gaps round them, how far they lie over, and their way as
// they are opened.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "family.h"
#include "swung.h"

namespace haunch {
namespace {

constexpr std::string_view kUneven =
    "fronts closer than they were set out bind, and gaps that differ are seen";
constexpr Rule kLeft{"front-gap-left", "between the front and what stands beside it, left",
                     kUneven};
constexpr Rule kRight{"front-gap-right", "between the front and what stands beside it, right",
                      kUneven};
constexpr Rule kHead{"front-gap-head", "between the front and what stands above it", kUneven};
constexpr Rule kFoot{"front-gap-foot", "between the front and what stands below it", kUneven};
constexpr Rule kLapLeft{"front-lap-left", "of front over the edge of its opening, left", kGapShows};
constexpr Rule kLapRight{"front-lap-right", "of front over the edge of its opening, right",
                         kGapShows};
constexpr Rule kLapHead{"front-lap-head", "of front over the edge of its opening, head", kGapShows};
constexpr Rule kLapFoot{"front-lap-foot", "of front over the edge of its opening, foot", kGapShows};
constexpr Rule kOut{"slide-out", "free before it as it is drawn out",
                    "on its whole travel a drawer may meet nothing but what it runs on"};
constexpr Rule kIn{"slide-in", "left behind it when it is in",
                   "what is pushed in hard meets its stop, not the back, and what is left there is "
                   "as it was set out"};
constexpr Rule kRuns{"drawer-runs", "between a runner and the drawer that runs on it",
                     "a drawer runs on both its runners: over one that lies low it drops as it is "
                     "drawn out"};
constexpr Rule kMiddle{"drawer-middle", "more room beside a drawer at one side than at the other",
                       "runners need the room that their maker asks for at each side; of wooden "
                       "ones a drawer led askew binds"};
constexpr Rule kPast{"slide-past-door", "free before it as it is drawn out past an open door",
                     "behind a door a drawer comes out only if the open leaf, which still stands "
                     "before its opening, leaves it room"};
constexpr Rule kSwept{"swing-free", "of other wood where the front swings",
                      "a front opens before what stands beside it, not into it"};

// ---- the wood of what opens, and of what stands

/// Of pieces that are wanted, by their numbers.
template <typename Wanted>
Wood wood_where(const Bench& bench, const Wanted& wanted) {
  Wood all;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece)
    if (wanted(piece)) add(all, bench.solids[piece].wood);
  return all;
}

/// Pieces where they stand, each in its own room.
using Standing = std::vector<const Solid*>;

template <typename Wanted>
Standing solids_where(const Bench& bench, const Wanted& wanted) {
  Standing all;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece)
    if (wanted(piece)) all.push_back(&bench.solids[piece]);
  return all;
}

/// Of a piece's wood no distance this way is less.
Length nearest_of(const Box& from, const Box& blank, Way way) {
  return way.upwards ? blank.low[way.axis] - from.high[way.axis]
                     : from.low[way.axis] - blank.high[way.axis];
}

/// The least distance from some wood to any of others this way. Into those whose blanks stand
/// elsewhere, or further off than what was found, nobody looks: the nearest come first.
std::optional<Length> gap_to(const Standing& others, const Wood& from, Way way) {
  if (from.empty()) return {};
  const Box room = room_of(from);
  std::vector<std::pair<Length, const Solid*>> near;
  for (const Solid* other : others)
    if (in_shadow(room, other->blank, way.axis))
      near.emplace_back(nearest_of(room, other->blank, way), other);
  std::stable_sort(near.begin(), near.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::optional<Length> least;
  for (const auto& [nearest, other] : near) {
    if (least && nearest >= *least) break;
    const auto found = gap(from, other->wood, way);
    if (found && (!least || *found < *least)) least = found;
  }
  return least;
}

/// How far some wood stands inside any of others.
Length depth_in(const Standing& others, const Wood& wood) {
  Length deepest;
  const Box room = room_of(wood);
  for (const Solid* other : others)
    if (interiors_meet(room, other->blank))
      deepest = std::max(deepest, depth_of_common(wood, other->wood));
  return deepest;
}

struct Front {
  const Fit& fit;
  Wood own;               // of all its group
  Box room;               // of that
  Standing rest;          // everything else
  Standing standing;      // of that what is not opened: case and frame
  Box face;               // of its foremost piece
  std::size_t named = 0;  // that piece
};

Front front_of(const Bench& bench, const Fit& fit) {
  const auto is_own = [&](std::size_t piece) {
    return is_within(bench.assembly, bench.assembly.pieces[piece].group, fit.group);
  };
  Front front{fit,
              wood_where(bench, is_own),
              {},
              solids_where(bench, [&](std::size_t piece) { return !is_own(piece); }),
              solids_where(bench, [&](std::size_t piece) { return !is_of_front(bench, piece); }),
              {},
              0};
  std::optional<std::size_t> first;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece) {
    if (!is_own(piece)) continue;
    const Box& blank = bench.solids[piece].blank;
    if (!first || blank.low[2] < bench.solids[*first].blank.low[2]) first = piece;
  }
  front.named = first.value();
  // A framed one is as wide as all of it that is as thick.
  front.room = room_of(front.own);
  front.face = front.room;
  front.face.low[2] = bench.solids[*first].blank.low[2];
  front.face.high[2] = bench.solids[*first].blank.high[2];
  const Wood foremost = clipped(front.own, front.face);
  const Box room = room_of(foremost);
  front.face = room;
  return front;
}

// ---- at rest

void check_gaps(Bench& bench, const Front& front) {
  const Wood face = clipped(front.own, front.face);
  const auto tell = [&](const Rule& rule, bool beside, Way way, Length design) {
    if (!beside) return;
    report(bench, rule, {front.named}, {}, gap_to(front.rest, face, way),
           Bounds{design, design, {}, {}});
  };
  const SidesBeside& beside = front.fit.beside;
  tell(kLeft, beside.left, {0, false}, front.fit.room.left);
  tell(kRight, beside.right, {0, true}, front.fit.room.right);
  tell(kHead, beside.head, {1, true}, front.fit.room.head);
  tell(kFoot, beside.foot, {1, false}, front.fit.room.foot);
}

/// The opening behind a front that lies over it, seen from its middle.
void check_laps_over(Bench& bench, const Front& front) {
  Box probe = front.face;
  for (const std::size_t axis : {0U, 1U}) {
    probe.low[axis] += floor_half(probe.extent(axis));
    probe.high[axis] = probe.low[axis] + Length::from_steps(1);
  }
  probe.low[2] = front.face.high[2] + front.fit.behind;
  probe.high[2] = probe.low[2] + Length::from_mm(1);
  // Where another front goes on over the same opening, that one laps its edge.
  const auto tell = [&](const Rule& rule, bool beside, Way way, Length edge, Length design) {
    const auto to_wall = gap_to(front.standing, Wood{{probe}, {}}, way);
    if (!to_wall) return;
    const Length wall =
        way.upwards ? probe.high[way.axis] + *to_wall : probe.low[way.axis] - *to_wall;
    const Length lap = way.upwards ? edge - wall : wall - edge;
    if (beside && lap < Length()) return;
    report(bench, rule, {front.named}, {}, lap,
           Bounds{design, design, bench.limits.least_over, {}});
  };
  const SidesBeside& beside = front.fit.beside;
  tell(kLapLeft, beside.left, {0, false}, front.face.low[0], front.fit.lap.left);
  tell(kLapRight, beside.right, {0, true}, front.face.high[0], front.fit.lap.right);
  tell(kLapHead, beside.head, {1, true}, front.face.high[1], front.fit.lap.head);
  tell(kLapFoot, beside.foot, {1, false}, front.face.low[1], front.fit.lap.foot);
}

// ---- drawn out

/// What stands before it on its way, by the fronts that swing there: they are opened first.
bool stands_before(const Front& sliding, const Front& swinging, Way out) {
  if (!in_shadow(sliding.room, swinging.room, out.axis)) return false;
  const auto room = gap(sliding.own, swinging.own, out);
  const Length by = std::get<Slide>(sliding.fit.moves).by;
  return room && *room < std::max(by, -by);
}

/// The blanks of a front's pieces, opened so far.
Wood opened(const Bench& bench, const Front& front, double angle) {
  Wood wood;
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece) {
    const std::size_t group = bench.assembly.pieces[piece].group;
    if (!is_within(bench.assembly, group, front.fit.group)) continue;
    for (Polyhedron& block :
         polyhedra_of(turned(bench.solids[piece].blank, *front.fit.swing(), angle)))
      wood.sloping.push_back(std::move(block));
  }
  return wood;
}

void check_slide(Bench& bench, const Front& front, const std::vector<Front>& fronts) {
  const auto* slide = std::get_if<Slide>(&front.fit.moves);
  if (slide == nullptr) return;
  const auto axis = static_cast<std::size_t>(slide->along);
  const Way out{axis, slide->by > Length()};
  const Length by = std::max(slide->by, -slide->by);
  std::vector<const Front*> before;
  for (const Front& other : fronts)
    if (other.fit.swing() != nullptr && stands_before(front, other, out)) before.push_back(&other);
  const auto is_before = [&](std::size_t piece) {
    const std::size_t group = bench.assembly.pieces[piece].group;
    return std::any_of(before.begin(), before.end(), [&](const Front* other) {
      return is_within(bench.assembly, group, other->fit.group);
    });
  };
  const Standing rest = before.empty() ? front.rest : solids_where(bench, [&](std::size_t piece) {
    const std::size_t group = bench.assembly.pieces[piece].group;
    return !is_before(piece) && !is_within(bench.assembly, group, front.fit.group);
  });
  const auto free = [&](std::optional<Length> room) { return room ? std::min(*room, by) : by; };
  report(bench, kOut, {front.named}, {}, free(gap_to(rest, front.own, out)),
         Bounds{by, {}, {}, {}});
  for (const Front* other : before)
    report(bench, kPast, {front.named, other->named}, {},
           free(gap(front.own, opened(bench, *other, std::numbers::pi / 2), out)),
           Bounds{{}, {}, by, {}});
  if (const auto left = gap_to(rest, front.own, {axis, !out.upwards}))
    report(bench, kIn, {front.named}, {}, left, Bounds{front.fit.behind, front.fit.behind, {}, {}});
}

/// Whether a drawer stands in the middle of its room, by its sides.
void check_middle(Bench& bench, const Front& front) {
  if (!std::holds_alternative<Slide>(front.fit.moves)) return;
  const Wood sides = wood_where(bench, [&](std::size_t number) {
    const Piece& piece = bench.assembly.pieces[number];
    return piece.role == Role::drawer_side &&
           is_within(bench.assembly, piece.group, front.fit.group);
  });
  const auto left = gap_to(front.rest, sides, {0, false});
  const auto right = gap_to(front.rest, sides, {0, true});
  if (!left || !right) return;
  const Length off = std::max(*left - *right, *right - *left);
  // Where its width is odd, it is off by a step.
  report(bench, kMiddle, {front.named}, {}, off > Length::from_steps(1) ? off : Length(),
         Bounds{{}, Length(), {}, {}});
}

/// Of strips that drawers run on, each below the nearest of those.
void check_runners(Bench& bench, const std::vector<Front>& fronts) {
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece) {
    if (bench.assembly.pieces[piece].role != Role::runner) continue;
    std::optional<Length> least;
    for (const Front& front : fronts) {
      if (!std::holds_alternative<Slide>(front.fit.moves)) continue;
      if (!in_shadow(bench.solids[piece].blank, front.room, 1)) continue;
      const auto room = gap(bench.solids[piece].wood, front.own, {1, true});
      if (room && (!least || *room < *least)) least = room;
    }
    if (least) report(bench, kRuns, {piece}, {}, least, Bounds{Length(), Length(), {}, {}});
  }
}

// ---- swung

constexpr int kSwingSteps = 9;  // to a right angle

/// From where nothing is cut so sharp that its corner would come out otherwise.
const Length kTouches = Length::from_mm_thousandths(10);

void check_swept(Bench& bench, const Front& front) {
  if (front.fit.swing() == nullptr) return;
  Length most;
  for (int step = 1; step <= kSwingSteps; ++step) {
    const double angle = std::numbers::pi / 2 * step / kSwingSteps;
    most = std::max(most, depth_in(front.rest, opened(bench, front, angle)));
  }
  report(bench, kSwept, {front.named}, {}, most > kTouches ? most : Length(),
         Bounds{{}, Length(), {}, {}});
}

}  // namespace

bool is_within(const Assembly& assembly, std::size_t group, std::size_t whole) {
  for (std::optional<std::size_t> at = group; at; at = assembly.groups[*at].in)
    if (*at == whole) return true;
  return false;
}

bool is_of_front(const Bench& bench, std::size_t piece) {
  const std::size_t group = bench.assembly.pieces[piece].group;
  const auto& fits = bench.assembly.fits;
  return std::any_of(fits.begin(), fits.end(), [&](const Fit& fit) {
    return fit.stands == StandsIn::front && is_within(bench.assembly, group, fit.group);
  });
}

void check_fronts(Bench& bench) {
  std::vector<Front> fronts;
  for (const Fit* fit : fits_that_stand(bench.assembly, StandsIn::front))
    fronts.push_back(front_of(bench, *fit));
  for (const Front& front : fronts) {
    check_gaps(bench, front);
    if (front.fit.meets == Meets::overlay) check_laps_over(bench, front);
    check_slide(bench, front, fronts);
    check_middle(bench, front);
    check_swept(bench, front);
    check_swing_room(bench, front.fit);
  }
  check_runners(bench, fronts);
}

FrontState front_state(const Bench& bench, const Fit& fit) {
  const Front front = front_of(bench, fit);
  const Wood face = clipped(front.own, front.face);
  const auto room = [&](bool beside, Way way) {
    return beside ? gap_to(front.rest, face, way) : std::nullopt;
  };
  const SidesBeside& beside = fit.beside;
  return {front.face.extent(0),          front.face.extent(1),
          room(beside.left, {0, false}), room(beside.right, {0, true}),
          room(beside.head, {1, true}),  room(beside.foot, {1, false})};
}

void check_moved_fronts(Bench& bench) {
  for (const Fit* fit : fits_that_stand(bench.assembly, StandsIn::front)) {
    const std::size_t named = first_of(bench.assembly, fit->group);
    const FrontState state = front_state(bench, *fit);
    const bool drawer = bench.assembly.groups[fit->group].kind == GroupKind::drawer;
    if (drawer && state.left && state.right && state.head) {
      report_moved_slide(bench, {*state.left, *state.right, *state.head, {}}, *fit, named);
      continue;
    }
    const auto tell = [&](const Rule& rule, std::optional<Length> room, Length design) {
      if (room && design > Length())
        report(bench, rule, {named}, {}, room,
               Bounds{Length(), {}, std::min(bench.limits.least_at_side, floor_half(design)), {}});
    };
    tell(kLeft, state.left, fit->room.left);
    tell(kRight, state.right, fit->room.right);
    tell(kHead, state.head, fit->room.head);
    tell(kFoot, state.foot, fit->room.foot);
  }
}

std::vector<const Rule*> rules_of_fronts() {
  return {&kLeft,    &kRight, &kHead, &kFoot, &kLapLeft, &kLapRight, &kLapHead,
          &kLapFoot, &kOut,   &kIn,   &kRuns, &kMiddle,  &kPast,     &kSwept};
}

}  // namespace haunch
