#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "bare_gap.h"
#include "door_plan_steps.h"

namespace haunch {
namespace {

constexpr std::array<SizeKey, 4> kLapKeys{"lap.left", "lap.right", "lap.head", "lap.foot"};

struct KeyedSide {
  SizeKey key;
  Length* side;
};

std::array<KeyedSide, 4> sides_of(Sides& sides) {
  return {{{kLapKeys[0], &sides.left},
           {kLapKeys[1], &sides.right},
           {kLapKeys[2], &sides.head},
           {kLapKeys[3], &sides.foot}}};
}

bool any_lap(const DoorLedger& ledger) {
  return std::any_of(kLapKeys.begin(), kLapKeys.end(),
                     [&](SizeKey key) { return ledger.stated(key).stated; });
}

void settle_clearance(DoorLedger& ledger, Sides& room) {
  const Length usual = ledger.defaults.clearance;
  ledger.settle_group("clearance",
                      {{"clearance.left", &room.left, usual},
                       {"clearance.right", &room.right, usual},
                       {"clearance.head", &room.head, usual},
                       {"clearance.foot", &room.foot, ledger.defaults.foot_clearance}},
                      ledger.usual());
  for (Length* side : {&room.left, &room.right, &room.head, &room.foot})
    *side = bare_gap(ledger.spec, *side);
}

/// A key or group of leaves that meet their opening otherwise, where the spec itself states it.
void refuse(DoorLedger& ledger, Key group, std::string_view why) {
  if (ledger.spec.said_by(group) == SaidBy::spec)
    ledger.problem({group}, std::string(why) + ", or take it out");
}

void settle_overlay(DoorLedger& ledger, FramePlan& frame) {
  Fit& opening = frame.opening;
  refuse(ledger, "clearance", "an overlay leaf lies before its opening; give lap instead");
  refuse(ledger, "lip_thickness", "an overlay leaf has no lip; give \"meets\": \"rebate\"");
  if (!any_lap(ledger)) {
    ledger.problem({"meets"},
                   "\"lap\" is missing; give how far the leaf lies over what is beside "
                   "its opening, one length or left, right, head and foot");
    return;
  }
  Sides& lip = frame.lip;
  for (const auto& [key, side] : sides_of(lip))
    *side = ledger.settle(key, Length(), "it ends with its opening there");
  opening.lap = lip;
}

/// The lip of a leaf that comes down to a floor ends with it.
void settle_rebated(DoorLedger& ledger, FramePlan& frame) {
  Fit& opening = frame.opening;
  settle_clearance(ledger, opening.room);
  const bool house = ledger.defaults.house;
  for (const auto& [key, side] : sides_of(frame.lip)) {
    const bool over_floor = house && side == &frame.lip.foot;
    *side = ledger.settle(key, any_lap(ledger) || over_floor ? Length() : ledger.defaults.lap,
                          over_floor        ? "no lip over the floor"
                          : any_lap(ledger) ? "no lip there"
                          : house ? "13 mm, 1/2 in (DIN 18101: 860 of leaf, 834 behind it)"
                                  : ledger.usual());
  }
  const auto gaps = sides_of(opening.room);
  const auto lips = sides_of(frame.lip);
  const auto laps = sides_of(opening.lap);
  for (std::size_t i = 0; i < lips.size(); ++i) {
    const Length lip = *lips[i].side;
    const Length gap = *gaps[i].side;
    *laps[i].side = lip - gap;
    if (lip > Length() && lip <= gap)
      ledger.problem({"lap", "clearance"},
                     fmt::format("a lip of {} does not reach over the gap of {}; make it more",
                                 ledger.say(lip), ledger.say(gap)));
  }
}

void demand_wood_behind_lip(DoorLedger& ledger, const FramePlan& frame) {
  if (frame.lip_thickness >= frame.thickness)
    ledger.problem({"lip_thickness", "thickness"},
                   fmt::format("a lip of {} leaves no rebate in a leaf {} thick; make it less",
                               ledger.say(frame.lip_thickness), ledger.say(frame.thickness)));
  for (const bool left : {true, false}) {
    const Length lip = left ? frame.lip.left : frame.lip.right;
    const Length stile = left ? frame.stile_left : frame.stile_right;
    if (lip >= stile)
      ledger.problem({"lap", "stile_width"},
                     fmt::format("a rebate of {} takes the whole stile, {} wide; make it less",
                                 ledger.say(lip), ledger.say(stile)));
  }
}

void demand_little_planing(DoorLedger& ledger, const AsFound& found) {
  const Length most = ledger.settle("opening.most_planed", ledger.pick(6'000, 1, 4),
                                    "more would show in the widths of stiles and rails");
  Length planed;
  for (const auto* side : {&found.left, &found.right, &found.head, &found.foot}) {
    const Taper taper = taper_along(*side, true);
    planed = std::max({planed, taper.first, taper.last});
  }
  if (planed > most)
    ledger.problem({"opening.most_planed", "opening.follow"},
                   fmt::format("to follow the opening {} have to be planed off at a corner, and at "
                               "most {} may be; make it more, or leave the leaf square",
                               ledger.say(planed), ledger.say(most)));
}

}  // namespace

void settle_meets(DoorLedger& ledger, FramePlan& frame) {
  const Meets meets = ledger.spec.word<Meets>("meets").value_or(Meets::inset);
  frame.opening.meets = meets;
  ledger.note_shops_word("meets");
  if (meets == Meets::overlay) return settle_overlay(ledger, frame);
  if (meets == Meets::rebate) return settle_rebated(ledger, frame);
  settle_clearance(ledger, frame.opening.room);
  for (const Key key : std::initializer_list<Key>{"lap", "lip_thickness"})
    refuse(ledger, key,
           "an inset leaf stands within its opening; give \"meets\": \"overlay\" or \"rebate\"");
}

void settle_follow(DoorLedger& ledger, const Fit& opening) {
  const bool follows = ledger.spec.says("opening.follow");
  if (!opening.found && follows)
    ledger.problem({"opening.follow"},
                   "goes with an opening as it was found: \"widths\", \"heights\" and "
                   "\"diagonals\"");
  if (!follows && ledger.stated("opening.most_planed").stated)
    ledger.problem({"opening.most_planed"}, "goes with \"follow\": true; take it out, or say it");
  if (!opening.found) return;
  if (opening.meets != Meets::inset)
    ledger.problem({"opening.widths"},
                   "goes with a leaf that stands in its opening; one that lies over it hides what "
                   "is out of square, so give \"width\" and \"height\"");
  if (!follows) return;
  if (ledger.spec.speaks_of("arch"))
    ledger.problem({"opening.follow"}, "an arched leaf is not planed to follow; take it out");
  if (ledger.spec.count("leaves") == 2)
    ledger.problem({"opening.follow"}, "a pair is not planed to follow; take it out");
  demand_little_planing(ledger, *opening.found);
}

void settle_lip(DoorLedger& ledger, FramePlan& frame) {
  if (frame.opening.meets != Meets::rebate) return;
  frame.lip_thickness =
      ledger.take("lip_thickness", usual_lip(frame.thickness, ledger.defaults),
                  ledger.defaults.house ? "three eighths of the thickness" : "half the thickness");
  frame.opening.lip = frame.lip_thickness;
  demand_wood_behind_lip(ledger, frame);
  frame.off_left = frame.lip.left;
  frame.off_right = frame.lip.right;
}

}  // namespace haunch
