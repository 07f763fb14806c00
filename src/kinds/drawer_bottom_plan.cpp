// The bottom of a drawer.
#include <fmt/core.h>

#include <algorithm>

#include "drawer_plan_steps.h"
#include "materials.h"
#include "rounding.h"
#include "usual_size.h"

namespace haunch {
namespace {

void settle_material(Ledger& ledger, DrawerBottomPlan& bottom) {
  const std::string& stated = ledger.spec.text("fronts.drawer.bottom.material");
  const bool wood = !stated.empty() || !ledger.spec.text("species.drawer_bottom").empty();
  if (wood && !is_sheet_goods(stated)) {
    bottom.matter = Matter::wood;
    return;
  }
  bottom.material = stated.empty() ? "plywood" : stated;
  if (stated.empty())
    ledger.assume("fronts.drawer.bottom.material", bottom.material,
                  "it does not move to matter; a wood may be named in its place");
}

/// Slips hold the bottom of sides that a groove would leave too thin.
void settle_fit(Ledger& ledger, const DrawerPlan& plan, DrawerBottomPlan& bottom) {
  const bool thin = plan.side_thickness < ledger.pick(9'000, 3, 8);
  bottom.fit = ledger.choose<BottomFit>(
      "fronts.drawer.bottom.fit", thin ? BottomFit::slips : BottomFit::grooved,
      thin ? "a groove would leave too little of the sides" : "usual for a drawer");
  if (bottom.fit == BottomFit::slips) {
    bottom.slip_width = ledger.take("fronts.drawer.bottom.slip.width", ledger.pick(12'000, 1, 2),
                                    "room for the groove, and glued well (trade practice)");
  } else if (ledger.stated("fronts.drawer.bottom.slip").by_spec()) {
    ledger.problem({"fronts.drawer.bottom.slip"},
                   "this bottom stands in grooves of the sides; take it out, or say "
                   "\"fit\": \"slips\"");
  }
}

void settle_groove(Ledger& ledger, const DrawerPlan& plan, DrawerBottomPlan& bottom) {
  const bool wood = bottom.matter == Matter::wood;
  const Length whole = ledger.pick(1'000, 1, 16);
  const Length in = bottom.fit == BottomFit::slips ? bottom.slip_width : plan.side_thickness;
  const Length half = floor_multiple(floor_half(in), whole);
  const Length usual = std::max(std::min(ledger.pick(6'000, 1, 4), half), whole);
  bottom.groove_depth = ledger.take("fronts.drawer.bottom.groove_depth", usual,
                                    "at most half of what it is in (trade practice)");
  bottom.allowance = ledger.take("fronts.drawer.bottom.allowance",
                                 wood ? ledger.pick(300, 1, 64) : ledger.pick(100, 1, 128),
                                 wood ? "so that it moves freely" : "usual for board");
  bottom.gap = ledger.take("fronts.drawer.bottom.gap", ledger.pick(1'000, 1, 32),
                           "so that it goes in and the corners close first");
  bottom.from_edge = ledger.take("fronts.drawer.bottom.from_edge", ledger.pick(10'000, 3, 8),
                                 "usual for a drawer");
  if (bottom.fit == BottomFit::slips)
    bottom.slip_height = ledger.take("fronts.drawer.bottom.slip.height",
                                     bottom.from_edge * 2 + bottom.groove_width(),
                                     "as much above its groove as below");
}

void settle_rear(Ledger& ledger, const DrawerPlan& plan, DrawerBottomPlan& bottom) {
  const KeyValue& under = ledger.stated("fronts.drawer.bottom.under_back");
  bottom.under_back = !under.stated || under.number != 0;
  if (!under.stated)
    ledger.assume("fronts.drawer.bottom.under_back", std::string("true"),
                  "so that it slides in once the corners are glued, and may move");
  const bool wood = bottom.matter == Matter::wood;
  const SeasonalPart season = seasonal_part(ledger.spec, Role::drawer_bottom);
  if (!bottom.under_back) {
    if (wood)
      ledger.problem({"fronts.drawer.bottom.under_back"},
                     "a bottom of wood moves from front to back, and wants to run under the back; "
                     "take it out, or make the bottom of board");
    if (ledger.stated("fronts.drawer.bottom.overhang").by_spec())
      ledger.problem({"fronts.drawer.bottom.overhang"},
                     "this bottom ends in a groove of the back; take it out");
    return;
  }
  const Length whole = ledger.pick(1'000, 1, 16);
  // Its screws stand in the middle of the back, and of their slots; 3 mm is left behind those.
  if (wood) bottom.slot = ceiling_multiple(season.either_way(plan.room.depth) * 2, whole);
  const Length behind_holes =
      Length::from_mm(3) + floor_half(plan.screw + bottom.slot) - floor_half(plan.back_thickness);
  const Length least = ceiling_multiple(std::max(behind_holes, Length()), whole);
  const Length shrunk =
      ceiling_multiple(season.shrinks(plan.room.depth) + ledger.pick(3'000, 1, 8), whole);
  bottom.overhang =
      ledger.take("fronts.drawer.bottom.overhang", wood ? std::max(shrunk, least) : least,
                  wood ? "as much as it may shrink by, and 3 mm, 1/8 in, behind its slots"
                  : least > Length() ? "so that 3 mm are left behind its screws"
                                     : "board does not move to matter");
}

}  // namespace

void settle_bottom(Ledger& ledger, DrawerPlan& plan) {
  DrawerBottomPlan& bottom = plan.bottom;
  settle_material(ledger, bottom);
  const bool wood = bottom.matter == Matter::wood;
  bottom.thickness = ledger.take("fronts.drawer.bottom.thickness",
                                 wood ? ledger.pick(8'000, 5, 16) : ledger.pick(6'000, 1, 4),
                                 wood ? "usual for a bottom of wood" : "usual for one of board");
  settle_fit(ledger, plan, bottom);
  settle_groove(ledger, plan, bottom);
  settle_rear(ledger, plan, bottom);
}

void doubt_bottom(Ledger& ledger, const DrawerPlan& plan) {
  const DrawerBottomPlan& bottom = plan.bottom;
  const bool slips = bottom.fit == BottomFit::slips;
  const Length in = slips ? bottom.slip_width : plan.side_thickness;
  if (bottom.groove_depth >= std::min(in, plan.joined_thickness()))
    ledger.problem({"fronts.drawer.bottom.groove_depth", "fronts.drawer.sides.thickness"},
                   fmt::format("grooves of {} go through what they are in; make them less deep",
                               ledger.say(bottom.groove_depth)));
  if (bottom.gap >= bottom.groove_depth)
    ledger.problem({"fronts.drawer.bottom.gap", "fronts.drawer.bottom.groove_depth"},
                   "takes all of the grooves' depth; make it less");
  if (bottom.top() >= plan.box.extent(1))
    ledger.problem({"fronts.drawer.bottom.from_edge", "fronts.drawer.sides.height"},
                   fmt::format("the bottom's upper side at {} leaves nothing above it in sides of "
                               "{}; make it less",
                               ledger.say(bottom.top()), ledger.say(plan.box.extent(1))));
  if (slips && bottom.slip_height <= bottom.from_edge + bottom.groove_width())
    ledger.problem({"fronts.drawer.bottom.slip.height", "fronts.drawer.bottom.from_edge"},
                   "leaves nothing above the groove; make the slip higher");
}

}  // namespace haunch
