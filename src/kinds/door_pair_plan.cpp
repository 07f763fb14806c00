#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "bare_gap.h"
#include "door_plan_steps.h"
#include "share.h"

namespace haunch {
namespace {

void refuse_meeting_of_one(DoorLedger& ledger) {
  for (const Key key :
       std::initializer_list<Key>{"meeting_clearance", "meeting_lap", "meeting_rest", "active"}) {
    if (!ledger.stated(key).by_spec()) continue;
    ledger.problem({key}, "one leaf meets no other; give \"leaves\": 2, or take it out");
    return;
  }
}

void settle_laps(DoorLedger& ledger, PairPlan& pair) {
  pair.lap = ledger.take("meeting_lap", Length(), "square meeting stiles");
  if (pair.lap == Length()) {
    if (ledger.stated("meeting_rest").by_spec())
      ledger.problem({"meeting_rest"},
                     "square meeting stiles have no rebate; give meeting_lap, or take it out");
    return;
  }
  pair.rest = ledger.take("meeting_rest", ledger.defaults.meeting_rest, "usual in a pair");
  if (pair.lap <= pair.clearance)
    ledger.problem({"meeting_lap", "meeting_clearance"},
                   fmt::format("a lap of {} does not reach over the gap of {}; make it more",
                               ledger.say(pair.lap), ledger.say(pair.clearance)));
}

/// Which leaf opens first is asked for where the two are not alike.
void settle_first(DoorLedger& ledger, PairPlan& pair) {
  const bool matters = pair.lap > Length() || ledger.stated("lock").stated;
  if (!matters && !ledger.spec.word<Side>("active")) return;
  pair.right_first = ledger.choose<Side>("active", Side::right, ledger.usual()) == Side::right;
}

}  // namespace

void settle_pair(DoorLedger& ledger, FramePlan& frame, WhichLeaf leaf) {
  if (ledger.spec.count("leaves").value_or(1) == 1) {
    refuse_meeting_of_one(ledger);
    return;
  }
  PairPlan pair;
  pair.width = frame.width;
  pair.is_right = leaf == WhichLeaf::right;
  const bool overlay = frame.opening.meets == Meets::overlay;
  const Length finished = ledger.take(
      "meeting_clearance", overlay ? ledger.defaults.overlay_meeting : ledger.defaults.clearance,
      overlay ? "1/16 in off each leaf, 1/8 in over all (a supplier's guide)" : "usual in a pair");
  pair.clearance = bare_gap(ledger.spec, finished);
  settle_laps(ledger, pair);
  settle_first(ledger, pair);
  const Length both = pair.width - pair.clearance;
  if (both < Length::from_steps(2)) {
    ledger.problem({"meeting_clearance", "opening.width"}, "leaves no leaves; make it less");
    return;
  }
  frame.width = share_evenly(both, 2)[pair.is_right ? 1 : 0];
  frame.pair = pair;
}

void settle_meeting_stiles(DoorLedger& ledger, FramePlan& frame) {
  if (!frame.pair) return;
  PairPlan& pair = *frame.pair;
  const Length meeting = pair.meeting_stile = frame.stile_right;
  if (pair.lap >= meeting)
    ledger.problem({"meeting_lap", "stile_width"},
                   fmt::format("a lap of {} takes the whole meeting stile, {} wide; make it less",
                               ledger.say(pair.lap), ledger.say(meeting)));
  if (pair.rest >= frame.thickness)
    ledger.problem({"meeting_rest", "thickness"},
                   fmt::format("{} leaves no wood in a leaf {} thick; make it less",
                               ledger.say(pair.rest), ledger.say(frame.thickness)));
  // Seen from the face both are as wide; behind the lap in front the other goes on.
  const bool behind = !pair.laps_in_front();
  frame.off_left = std::max(frame.off_left, frame.off_right);
  frame.off_right = pair.lap;
  // The lip of the other leaf's outer side is not this one's.
  (pair.is_right ? frame.lip.left : frame.lip.right) = Length();
  if (behind) {
    frame.stile_right += pair.lap;
    frame.width += pair.lap;
    frame.off_right += pair.lap;
  }
  if (!pair.is_right) return;
  std::swap(frame.stile_left, frame.stile_right);
  std::swap(frame.off_left, frame.off_right);
}

}  // namespace haunch
