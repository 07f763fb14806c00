#include <fmt/core.h>

#include <algorithm>

#include "door_plan_steps.h"

namespace haunch {
namespace {

/// At 45 degrees the mitre comes out at the outer corner only where both are as wide.
void demand_one_width(DoorLedger& ledger, const FramePlan& frame) {
  if (frame.pair && frame.pair->lap > Length()) {
    ledger.problem({"meeting_lap", "joint"},
                   "of rebated meeting stiles one goes on behind the other, wider than its rails, "
                   "and a mitred corner wants stile and rail of one width; take it out");
    return;
  }
  if (frame.stile_left != frame.stile_right)
    ledger.problem({"stile_width", "joint"},
                   fmt::format("mitred corners want stiles of one width, not {} and {}",
                               ledger.say(frame.stile_left), ledger.say(frame.stile_right)));
  for (std::size_t i = 0; i < frame.rails.size(); ++i) {
    const RailPlan& rail = frame.rails[i];
    if (!frame.is_end_rail(i) || rail.width == frame.stile_left) continue;
    ledger.problem({{"rail_widths", i}, "joint"},
                   fmt::format("a mitred corner wants stile and rail of one width; the {} is {} "
                               "wide, the stile {}",
                               rail.name, ledger.say(rail.width), ledger.say(frame.stile_left)));
  }
}

}  // namespace

void settle_mitres(DoorLedger& ledger, DoorPlan& plan) {
  if (!plan.has(JointWord::mitre)) return;
  demand_one_width(ledger, plan.frame);
  const Length whole = ledger.defaults.whole;
  SplineDesign& spline = plan.spline;
  spline.depth = ledger.take(
      "spline.depth", std::max(floor_multiple(floor_half(plan.frame.thickness), whole), whole),
      "half of the thickness");
  spline.reach = level_of(spline.depth);
  spline.room = ledger.take("spline.room", ledger.defaults.spline_room,
                            "so that the mitre closes before the spline does");
  const Length wall =
      ledger.take("spline.wall", ledger.defaults.loose_wall, "so that the slot does not break out");
  // As the groove is set; where there is none, in the middle.
  spline.slot_width = plan.edge.rebated() ? plan.join.mortise.width : plan.groove.width;
  spline.from_face = plan.edge.rebated() ? floor_half(plan.frame.thickness - spline.slot_width)
                                         : plan.groove.from_face;
  spline.thickness = spline.slot_width - plan.join.fit_allowance;
  spline.from =
      std::max({plan.deepest_edge(), plan.edge.width, arch_over_end(ledger, plan, Length())}) +
      wall + spline.room;
  // Outside of it is what the rebate round a leaf with a lip leaves.
  spline.run =
      plan.frame.stile_left - plan.frame.widest_rebate() - wall - spline.beyond() - spline.from;
  if (spline.run <= Length())
    ledger.problem({"spline.depth", "spline.wall", "spline.room", "stile_width", "joint"},
                   fmt::format("leaves no room for a spline along the mitre of members {} wide; "
                               "make spline.depth or spline.wall less, or the members wider",
                               ledger.say(plan.frame.stile_left)));
}

}  // namespace haunch
