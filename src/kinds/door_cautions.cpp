#include "door_cautions.h"

#include <fmt/core.h>

#include <algorithm>

#include "cautions.h"
#include "usual_size.h"

namespace haunch {
namespace {

/// The widest pane of a leaf.
Length widest_pane(const DoorPlan& plan) {
  Length widest;
  for (std::size_t tier = 0; tier < plan.panels.size(); ++tier)
    if (const auto& glass = plan.panels[tier].glass)
      for (const Strip& sight : plan.frame.tiers[tier].sights)
        widest = std::max(widest, glass->widest_pane(sight.high - sight.low));
  return widest;
}

Caution safety_glazing(const DoorPlan& plan, Unit unit) {
  return {"safety glazing",
          fmt::format("glass in a door, and beside one, breaks where people fall: IRC R308.4 and "
                      "IBC 2406 (US) ask for safety glazing to 16 CFR 1201 or ANSI Z97.1, "
                      "permanently marked, in doors and within 24 in (610 mm) of them; Approved "
                      "Document K section 5 (England) for EN 12600 class 3 below 1500 mm in doors "
                      "and within 300 mm of them, class 2 where a pane is wider than 900 mm; the "
                      "widest here is {}{}",
                      in_words(widest_pane(plan), unit), kDecides)};
}

/// Where the lock is worked, above the floor: its spindle, or its middle where it has none.
Length lock_above_floor(const DoorPlan& plan) {
  const LockPlan& lock = *plan.fittings.lock;
  return (lock.spindle ? lock.spindle->height : lock.height) + plan.frame.opening.room.foot;
}

std::string hardware_words(const DoorPlan& plan, Unit unit) {
  return fmt::format(
      "; 404.2.7 for hardware 34 to 48 in (864 to 1219 mm) above the floor; the "
      "lock's stands at {}, the gap at the foot counted",
      in_words(lock_above_floor(plan), unit));
}

/// About what a leaf open at 90 degrees leaves of its opening, of which the stops are not known; it
/// stands by its thickness and its hinges' pin before the middle of its gap. So many inches high
/// are asked for, and 32 wide.
std::string clear_beside(const DoorPlan& plan, Unit unit, std::int64_t high) {
  const FramePlan& frame = plan.frame;
  const Length pin_out = usual_size(unit, 6'000, 1, 4);
  const Length whole = usual_size(unit, 1'000, 1, 16);
  const Length wide = frame.width + frame.opening.room.right + floor_half(frame.opening.room.left) -
                      frame.thickness - pin_out;
  const Length clear = floor_multiple(std::max(wide, Length()), whole);
  const Length height = floor_multiple(frame.opening.height, whole);
  return fmt::format(
      "here about {} wide{}, with the leaf open at 90 degrees (hinge pin {} before "
      "its face), and {} high{}, less what stops and threshold take",
      in_words(clear, unit), short_of(clear, Length::from_inch_parts(32), unit),
      in_words(pin_out, unit), in_words(height, unit),
      short_of(height, Length::from_inch_parts(high), unit));
}

}  // namespace

std::vector<Caution> door_cautions(const Spec& spec, const DoorPlan& plan) {
  const Unit unit = spec.units.value_or(Unit::mm);
  std::vector<Caution> cautions;
  if (spec.says("existing_opening")) cautions.push_back(old_paint());
  if (plan.has_glass()) cautions.push_back(safety_glazing(plan, unit));
  if (spec.says("escape_route"))
    cautions.push_back(
        {"escape route",
         fmt::format("IRC R311.2 asks for a lock that opens from inside without a key, and the "
                     "leaf 32 in (813 mm) clear and 78 in (1981 mm) high: {}{}",
                     clear_beside(plan, unit, 78), kDecides)});
  if (spec.says("accessible"))
    cautions.push_back(
        {"accessible route",
         fmt::format("ADA Standards 404 ask for 32 in (813 mm) clear from the face of the leaf at "
                     "90 degrees to the stop, and 80 in (2032 mm) high: {}{}{}",
                     clear_beside(plan, unit, 80),
                     plan.fittings.lock ? hardware_words(plan, unit) : "", kDecides)});
  return cautions;
}

}  // namespace haunch
