// The corners of a drawer.
#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <utility>

#include "dovetail.h"
#include "drawer_plan_steps.h"
#include "finger.h"
#include "tail_spacing.h"

namespace haunch {
namespace {

bool is_dovetail(DrawerCorner joint) {
  return joint == DrawerCorner::dovetail || joint == DrawerCorner::lapped_dovetail;
}

/// Settles the corners one after the other; what both have they have alike, as the first of them
/// has it.
class CornerPlanner {
 public:
  CornerPlanner(Ledger& ledger, DrawerPlan& plan)
      : ledger_(ledger), plan_(plan), whole_(ledger.pick(1'000, 1, 16)) {}

  void settle() {
    settle_joints();
    if (has_dovetails()) plan_.cutter = settle_dovetail_cutter(ledger_);
    if (!ledger_.clean()) return;
    settle_corner(plan_.front_corner, true);
    settle_corner(plan_.back_corner, false);
    refuse_idle_keys();
  }

 private:
  void settle_joints();
  void settle_corner(CornerPlan& corner, bool in_front);
  Length length_of(const CornerPlan& corner, bool in_front);
  Length lap_before(DrawerCorner joint, Length thickness);
  Length depth_in_sides();
  void settle_tongue(CornerPlan& corner, Length thickness);
  void settle_dowels(CornerPlan& corner, Length thickness, Length into);
  Length thinnest_bored() const;
  void share_out_fingers(CornerPlan& corner, bool in_front);
  void leave_out_narrow(CornerPlan& corner, TailSpacing spacing) const;
  void place_tails(CornerPlan& corner, bool in_front);
  const SettledTails& tails();
  void doubt_cutter(const CornerPlan& corner, bool in_front);
  Length least_pin();
  void refuse_idle_keys();

  bool enter(const CornerPlan& corner, bool in_front) const {
    return sides_enter(plan_, corner, in_front);
  }
  bool has_dovetails() const {
    return is_dovetail(plan_.front_corner.joint) || is_dovetail(plan_.back_corner.joint);
  }
  Length thickness_at(bool in_front) const {
    return in_front ? plan_.joined_thickness() : plan_.back_thickness;
  }
  /// Half millimetres, sixty-fourths of an inch.
  Length half_whole() const { return ledger_.pick(500, 1, 64); }
  /// Of a size down to whole millimetres, sixteenths of an inch; at least one.
  Length whole(Length size) const { return std::max(floor_multiple(size, whole_), whole_); }

  Length take(SizeKey key, Length fallback, std::string_view why) {
    const auto [taken, first] = taken_.try_emplace(key);
    if (first) taken->second = ledger_.take(key, fallback, why);
    return taken->second;
  }

  Ledger& ledger_;
  DrawerPlan& plan_;
  Length whole_;
  std::map<Key, Length> taken_;
  std::optional<SettledTails> tails_;  // once they are settled
};

void CornerPlanner::settle_joints() {
  const bool board = plan_.matter == Matter::board;
  const std::string_view usual = board ? "usual in board" : "usual in wood";
  plan_.front_corner.joint = ledger_.choose<DrawerCorner>(
      "fronts.drawer.corner.front", board ? DrawerCorner::rebated : DrawerCorner::lapped_dovetail,
      usual);
  plan_.back_corner.joint = ledger_.choose<DrawerCorner>(
      "fronts.drawer.corner.back", board ? DrawerCorner::rebated : DrawerCorner::dovetail, usual);
  if (plan_.front_corner.joint == DrawerCorner::housed)
    ledger_.problem({"fronts.drawer.corner.front"},
                    "a housing wants wood beyond it, and the front ends with the sides; write "
                    "\"rebated\" or \"tongued\"");
}

void CornerPlanner::settle_corner(CornerPlan& corner, bool in_front) {
  corner.length = length_of(corner, in_front);
  const bool sides = enter(corner, in_front);
  const Length across = thickness_at(in_front);
  const Length on = sides ? plan_.side_thickness : across;
  switch (corner.joint) {
    case DrawerCorner::tongued:
      return settle_tongue(corner, on);
    case DrawerCorner::dowel:
      return settle_dowels(corner, on, sides ? across : plan_.side_thickness);
    case DrawerCorner::housed:
      corner.set_in = take("fronts.drawer.corner.set_in", ledger_.pick(12'000, 1, 2),
                           "so that the wood behind the housing holds");
      return;
    case DrawerCorner::finger:
      return share_out_fingers(corner, in_front);
    case DrawerCorner::lapped_dovetail:
    case DrawerCorner::dovetail:
      return place_tails(corner, in_front);
    case DrawerCorner::rebated:
      return;
  }
}

// ---- how far the one goes into the other

Length CornerPlanner::length_of(const CornerPlan& corner, bool in_front) {
  if (corner.joint == DrawerCorner::dowel) return {};
  if (!enter(corner, in_front)) return depth_in_sides();
  const Length thickness = thickness_at(in_front);
  const bool through =
      corner.joint == DrawerCorner::dovetail || corner.joint == DrawerCorner::finger;
  return through ? thickness : thickness - lap_before(corner.joint, thickness);
}

Length CornerPlanner::lap_before(DrawerCorner joint, Length thickness) {
  const bool tails = joint == DrawerCorner::lapped_dovetail;
  // Under 5 mm, 3/16 in, the wood before a rebate or a tongue is thin.
  const Length usual =
      tails ? whole(floor_divide(thickness, 4))
            : std::max(whole(floor_divide(thickness, 3)), ledger_.pick(5'000, 3, 16));
  const Length beyond = tails && plan_.cutter
                            ? ceiling_multiple(thickness - plan_.cutter->height, half_whole())
                            : Length();
  const Length lap =
      take("fronts.drawer.corner.lap", std::max({usual, plan_.lip, beyond}),
           beyond > std::max(usual, plan_.lip) ? "what the cutter does not reach"
           : plan_.lip > usual                 ? "as thick as the lip"
           : tails ? "a quarter of the front: tails are three quarters (trade article)"
                   : "a third of the front, at least 5 mm, 3/16 in");
  if (lap >= thickness)
    ledger_.problem({"fronts.drawer.corner.lap", "fronts.drawer.front_thickness"},
                    fmt::format("a lap of {} leaves nothing behind it in {}; make it less",
                                ledger_.say(lap), ledger_.say(thickness)));
  return lap;
}

Length CornerPlanner::depth_in_sides() {
  const Length depth = take("fronts.drawer.corner.depth", whole(floor_half(plan_.side_thickness)),
                            "half of the sides");
  if (depth >= plan_.side_thickness)
    ledger_.problem(
        {"fronts.drawer.corner.depth", "fronts.drawer.sides.thickness"},
        fmt::format("goes through sides of {}; make it less", ledger_.say(plan_.side_thickness)));
  return depth;
}

// ---- what one joint has that others have not

void CornerPlanner::settle_tongue(CornerPlan& corner, Length thickness) {
  corner.tongue =
      take("fronts.drawer.corner.tongue", whole(floor_half(thickness)), "half of what it is on");
  corner.room = take("fronts.drawer.corner.room", ledger_.pick(500, 1, 64),
                     "so that the shoulder closes first");
  if (corner.tongue >= thickness)
    ledger_.problem({"fronts.drawer.corner.tongue", "fronts.drawer.sides.thickness"},
                    fmt::format("leaves no shoulder on what is {} thick; make it less",
                                ledger_.say(thickness)));
}

/// Of what dowels go into from its face.
Length CornerPlanner::thinnest_bored() const {
  Length thinnest = plan_.joined_thickness();
  const auto at = [&](const CornerPlan& corner, bool in_front) {
    if (corner.joint == DrawerCorner::dowel)
      thinnest = std::min(thinnest,
                          enter(corner, in_front) ? thickness_at(in_front) : plan_.side_thickness);
  };
  at(plan_.front_corner, true);
  at(plan_.back_corner, false);
  return thinnest;
}

/// In the end of what is so thick, on what they go into.
void CornerPlanner::settle_dowels(CornerPlan& corner, Length thickness, Length into) {
  corner.room = take("fronts.drawer.corner.room", ledger_.pick(500, 1, 64),
                     "so that the shoulder closes first");
  corner.dowel = take("fronts.drawer.corner.dowel",
                      std::max(floor_multiple(floor_half(thickness), ledger_.pick(2'000, 1, 8)),
                               ledger_.pick(4'000, 1, 8)),
                      "half of what it is in (trade practice)");
  const Length behind = ledger_.pick(5'000, 3, 16) + corner.room;
  corner.dowel_depth =
      take("fronts.drawer.corner.dowel_depth",
           std::min(whole(thinnest_bored() - behind), corner.dowel * 3),
           "three times as deep as thick, or what leaves 5 mm, 3/16 in, behind the hole");
  if (corner.dowel >= thickness || corner.dowel_depth + corner.room >= into)
    ledger_.problem(
        {"fronts.drawer.corner.dowel", "fronts.drawer.corner.dowel_depth",
         "fronts.drawer.sides.thickness"},
        fmt::format("holes of {}, {} deep, come out of what is {} and {} thick; make "
                    "them less",
                    ledger_.say(corner.dowel), ledger_.say(corner.dowel_depth + corner.room),
                    ledger_.say(thickness), ledger_.say(into)));
}

void CornerPlanner::share_out_fingers(CornerPlan& corner, bool in_front) {
  corner.tails =
      share_fingers(edges_at(plan_, in_front), take("fronts.drawer.corner.finger_width",
                                                    whole(floor_half(plan_.side_thickness)),
                                                    "half of the sides (trade practice)"));
}

// ---- dovetails

/// What the cutter leaves between two tails of both corners, where it stands with its end on their
/// shoulder line.
Length CornerPlanner::least_pin() {
  Length least = plan_.cutter->neck;
  for (const bool in_front : {true, false}) {
    const CornerPlan& corner = in_front ? plan_.front_corner : plan_.back_corner;
    if (is_dovetail(corner.joint))
      least = std::max(least, plan_.cutter->at_surface(length_of(corner, in_front)));
  }
  return least;
}

/// As both corners have it.
const SettledTails& CornerPlanner::tails() {
  if (tails_) return *tails_;
  constexpr TailKeys kKeys{"fronts.drawer.corner.tails.number", "fronts.drawer.corner.tails.slope",
                           "fronts.drawer.corner.tails.widest", "fronts.drawer.corner.tails.pin",
                           "fronts.drawer.corner.tails.half_pin"};
  UsualTails usual{std::max(whole(floor_half(plan_.side_thickness)), ledger_.pick(3'000, 1, 8)),
                   "half of the sides (trade practice)", ledger_.pick(45'000, 7, 4)};
  if (plan_.cutter) usual.cutter = plan_.cutter->diameter;
  if (plan_.cutter && least_pin() > usual.pin) {
    usual.pin = ceiling_multiple(least_pin(), half_whole());
    usual.why = "what the cutter leaves";
  }
  tails_ = settle_tails(ledger_, kKeys, usual);
  return *tails_;
}

/// Whether it reaches through the tails, and goes between them and into their sockets.
void CornerPlanner::doubt_cutter(const CornerPlan& corner, bool in_front) {
  const DovetailCutter& cutter = *plan_.cutter;
  const auto say = [&](Length length) { return ledger_.say(length); };
  const bool lapped = corner.joint == DrawerCorner::lapped_dovetail;
  const Length lap = thickness_at(in_front) - cutter.height;
  const Length pin = tails().spacing.pin;
  const Length tail = corner.tails.front().high - corner.tails.front().low;
  if (corner.length > cutter.height)
    ledger_.problem(
        {"fronts.drawer.corner.tails.cut_by.height", "fronts.drawer.corner.tails.cut_by"},
        fmt::format(
            "tails of {} are longer than its edges are high, {}; take a higher cutter, or {}",
            say(corner.length), say(cutter.height),
            lapped ? fmt::format("leave a \"lap\" of {} before them", say(lap))
                   : "make what they go through no thicker than that"));
  else if (pin < least_pin())
    ledger_.problem(
        {"fronts.drawer.corner.tails.pin", "fronts.drawer.corner.tails.cut_by"},
        fmt::format("a cutter of {} leaves {} at least between two tails; make pins that wide",
                    say(cutter.diameter), say(ceiling_multiple(least_pin(), half_whole()))));
  else if (tail < cutter.diameter)
    ledger_.problem({"fronts.drawer.corner.tails.number", "fronts.drawer.corner.tails.widest",
                     "fronts.drawer.corner.tails.cut_by"},
                    fmt::format("sockets of tails {} wide are narrower than their cutter, {}; make "
                                "fewer tails, and wider ones",
                                say(tail), say(cutter.diameter)));
}

/// Of tails whose number is open so many fewer that the cutter goes into their sockets, with the
/// groove in one of them where that can be.
void CornerPlanner::leave_out_narrow(CornerPlan& corner, TailSpacing spacing) const {
  const auto too_narrow = [&](const std::vector<Strip>& tails) {
    return tails.front().high - tails.front().low < plan_.cutter->diameter;
  };
  if (corner.tails.empty() || !too_narrow(corner.tails)) return;
  const int most = static_cast<int>(corner.tails.size());
  for (const bool groove : {true, false})
    for (int number = most - 1; number > 0; --number) {
      spacing.number = number;
      std::vector<Strip> fewer = space_tails(spacing);
      const bool in_tail = !spacing.groove || is_in_a_tail(fewer, spacing.spread, *spacing.groove);
      if (fewer.empty() || too_narrow(fewer) || (groove && !in_tail)) continue;
      corner.tails = std::move(fewer);
      return;
    }
}

void CornerPlanner::place_tails(CornerPlan& corner, bool in_front) {
  TailSpacing spaced = tails().spacing;
  spaced.between = edges_at(plan_, in_front);
  spaced.spread = corner.spread = plan_.cutter ? plan_.cutter->comes_in(corner.length)
                                               : floor_divide(corner.length, tails().slope);
  const DrawerBottomPlan& bottom = plan_.bottom;
  const Length groove = bottom.from_edge;
  if (bottom.fit == BottomFit::grooved && (in_front || !bottom.under_back))
    spaced.groove = Strip{groove, groove + bottom.groove_width()};
  corner.tails = space_tails(spaced);
  if (plan_.cutter && !spaced.number) leave_out_narrow(corner, spaced);
  if (corner.tails.empty())
    ledger_.problem(
        {"fronts.drawer.corner.tails.number", "fronts.drawer.corner.tails.half_pin",
         "fronts.drawer.corner.tails.pin", "fronts.drawer.sides.height", "opening.height"},
        fmt::format("pins of {} and half pins of {} leave no tails in {}; make them "
                    "less, or fewer",
                    ledger_.say(spaced.pin), ledger_.say(spaced.half_pin),
                    ledger_.say(spaced.between.high - spaced.between.low)));
  else if (plan_.cutter)
    doubt_cutter(corner, in_front);
}

/// Keys that say nothing of corners of this kind, when the spec states them all the same.
void CornerPlanner::refuse_idle_keys() {
  const auto refuse = [&](Key key, std::string_view why) {
    if (ledger_.spec.said_by(key) == SaidBy::spec && !taken_.contains(key))
      ledger_.problem({key}, fmt::format("has no part in this drawer: {}; take it out", why));
  };
  if (!has_dovetails()) refuse("fronts.drawer.corner.tails", "it has no dovetails");
  refuse("fronts.drawer.corner.lap", "nothing is left before its joints");
  refuse("fronts.drawer.corner.depth", "nothing goes into its sides");
  refuse("fronts.drawer.corner.finger_width", "it has no fingers");
  refuse("fronts.drawer.corner.tongue", "it has no tongues");
  refuse("fronts.drawer.corner.room", "it has neither tongues nor dowels");
  refuse("fronts.drawer.corner.set_in", "its back is not housed");
  refuse("fronts.drawer.corner.dowel", "it has no dowels");
  refuse("fronts.drawer.corner.dowel_depth", "it has no dowels");
}

}  // namespace

Strip edges_at(const DrawerPlan& plan, bool in_front) {
  const Length height = plan.box.extent(1);
  if (!in_front) return {plan.back_low(), height};
  if (plan.is_applied()) return {Length(), height};
  return {std::max(Length(), plan.face.low[1] - plan.box.low[1]),
          std::min(height, plan.face.high[1] - plan.box.low[1])};
}

bool sides_enter(const DrawerPlan& plan, const CornerPlan& corner, bool in_front) {
  switch (corner.joint) {
    case DrawerCorner::lapped_dovetail:
    case DrawerCorner::dovetail:
    case DrawerCorner::finger:
      return true;
    case DrawerCorner::housed:
      return false;
    case DrawerCorner::rebated:
      return in_front;
    case DrawerCorner::tongued:
    case DrawerCorner::dowel:
      return in_front && !plan.is_applied();
  }
  return true;
}

void settle_corners(Ledger& ledger, DrawerPlan& plan) {
  CornerPlanner(ledger, plan).settle();
}

}  // namespace haunch
