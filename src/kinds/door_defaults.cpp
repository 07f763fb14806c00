#include "door_defaults.h"

#include "usual_cutters.h"
#include "usual_size.h"

namespace haunch {
namespace {

constexpr Length kTallestCabinetOpening = Length::from_inch_parts(60);  // 1524 mm

std::vector<Length> metric_dowels() {
  std::vector<Length> dowels;
  for (const int mm : {6, 8, 10, 12, 16, 20})
    dowels.push_back(Length::from_mm(mm));
  return dowels;
}

std::vector<Length> inch_dowels() {
  std::vector<Length> dowels;
  for (const int sixteenths : {4, 5, 6, 8, 10, 12})
    dowels.push_back(Length::from_inch_parts(sixteenths, 16));
  return dowels;
}

/// A size in thousandths of a millimetre, or in parts of an inch.
struct Pick {
  Unit unit;

  Length operator()(std::int64_t thousandths_of_mm, std::int64_t parts, std::int64_t of) const {
    return usual_size(unit, thousandths_of_mm, parts, of);
  }
};

/// Of other joints than haunched tenons.
void add_joints(DoorDefaults& d, const Pick& pick) {
  d.wedge_thickness = pick(3'000, 1, 8);
  d.loose_wall = pick(6'000, 1, 4);
  d.dowels = pick.unit == Unit::mm ? metric_dowels() : inch_dowels();
  d.dowel_clearance = pick(2'000, 1, 16);
  d.dowel_spacing = pick(100'000, 4, 1);
  d.pin = d.house ? pick(10'000, 3, 8) : pick(6'000, 1, 4);
  d.draw_in_hardwood = pick(1'500, 1, 16);
  d.draw_in_softwood = pick(2'500, 3, 32);
  d.draw_in_cabinets = pick(1'000, 1, 32);
  d.tenon_over = pick(2'000, 1, 16);
  d.spline_room = pick(1'000, 1, 32);
}

void add_fittings(DoorDefaults& d, const Pick& pick) {
  d.cabinet_hinge = pick(50'000, 2, 1);
  d.hinge_thickness = pick(3'000, 1, 8);
  d.behind_hinge = pick(6'000, 1, 4);
  d.house_hinge_from_top = pick(150'000, 6, 1);
  d.house_hinge_from_foot = pick(230'000, 9, 1);
  d.lock_height = pick(965'000, 38, 1);
  d.lock_rail_top = pick(965'000, 38, 1);
}

}  // namespace

Use usual_use(Length opening_height) {
  return opening_height > kTallestCabinetOpening ? Use::house : Use::cabinet;
}

std::string_view why_usual(Use use) {
  return use == Use::house ? "its opening is over 60 in (1524 mm) high"
                           : "its opening is not over 60 in (1524 mm) high";
}

Use use_of(const Spec& spec) {
  const auto stated = spec.word<Use>("use");
  return stated ? *stated : usual_use(spec.size("opening.height").value_or(Length()));
}

DoorDefaults door_defaults(Unit unit, Use use) {
  const bool house = use == Use::house;
  const Pick pick{unit};
  DoorDefaults d;
  d.house = house;
  d.whole = pick(1'000, 1, 16);
  d.clearance = house ? pick(3'000, 1, 8) : pick(2'000, 1, 16);
  d.foot_clearance = house ? pick(10'000, 3, 8) : d.clearance;
  d.arch_tolerance = pick(100, 4, 1'000);
  d.lap = house ? pick(13'000, 1, 2) : pick(10'000, 3, 8);
  d.overlay_meeting = pick(3'000, 1, 8);
  d.meeting_rest = pick(1'500, 1, 16);
  d.thickness = house ? pick(44'000, 7, 4) : pick(20'000, 3, 4);
  d.stile = house ? pick(100'000, 4, 1) : pick(57'000, 9, 4);
  if (house) d.rails = {pick(100'000, 4, 1), pick(195'000, 15, 2), pick(230'000, 9, 1)};
  d.highest_without_rail = Length::from_inch_parts(60);
  d.muntin = house ? pick(90'000, 7, 2) : pick(50'000, 2, 1);
  d.groove_depth = house ? pick(12'000, 1, 2) : pick(9'000, 3, 8);
  d.fit_allowance = pick(150, 60, 10'000);
  d.least_relish = pick(12'000, 1, 2);
  d.edge_clearance = pick(400, 1, 64);
  d.bottom_clearance = pick(2'000, 1, 16);
  d.least_width_limit = pick(75'000, 3, 1);
  d.left_behind_mortise = Length::from_mm(5);  // the larger of 5 mm and 3/16 in
  d.haunch_short_of_groove = pick(500, 1, 64);
  d.board_gap = pick(500, 1, 64);
  d.moulding = house ? pick(9'000, 3, 8) : pick(3'000, 1, 8);
  d.fillet = pick(1'000, 1, 32);
  d.haunch_past_rebate = pick(10'000, 3, 8);
  d.gap_across = pick(3'000, 1, 8);
  d.gap_along = pick(1'000, 1, 32);
  d.least_bite = pick(3'000, 1, 8);
  d.panel_allowance = pick(400, 1, 64);
  d.glass_clearance = pick(3'000, 1, 8);
  d.unit_clearance = pick(5'000, 1, 4);
  d.unit_rebate = pick(18'000, 3, 4);
  d.bedding = pick(1'500, 1, 16);
  d.raise_run = pick(26'000, 1, 1);
  d.raise_shoulder = pick(2'000, 1, 16);
  d.horn = house ? pick(25'000, 1, 1) : Length();
  add_joints(d, pick);
  add_fittings(d, pick);
  d.cutters = usual_cutters(unit);
  d.size_step = pick(500, 1, 64);
  return d;
}

Length usual_lip(Length leaf_thickness, const DoorDefaults& defaults) {
  const Length part =
      defaults.house ? floor_divide(leaf_thickness * 3, 8) : floor_half(leaf_thickness);
  return nearest_multiple(part, defaults.whole);
}

}  // namespace haunch
