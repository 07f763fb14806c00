#include <fmt/format.h>

#include <algorithm>

#include "door_plan_steps.h"
#include "share.h"

namespace haunch {
namespace {

bool any_stated(const DoorSpec& spec, std::string_view group) {
  for (const SizeKey& size : door_size_keys())
    if (size.key.starts_with(group) && (spec.*size.size).size) return true;
  return false;
}

// ---- hinges

/// One for each 30 in (762 mm) of height or part of it, two at least (hardware guides).
int usual_hinges(Length height) {
  constexpr Length kEach = Length::from_inch_parts(30);
  int number = 2;
  while (kEach * number < height)
    ++number;
  return number;
}

/// By the leaf's thickness and width (hinge tables): under 1 1/2 in thick 3 1/2 in, wide ones 4;
/// thicker ones 4 1/2, 5 over 36 in wide, 6 over 48. Those are house doors.
Length usual_hinge_length(const FramePlan& frame) {
  const auto sixteenths = [](std::int64_t parts) { return Length::from_inch_parts(parts, 16); };
  if (frame.thickness < sixteenths(24))
    return frame.width <= Length::from_inch_parts(32) ? sixteenths(56) : sixteenths(64);
  if (frame.width <= Length::from_inch_parts(36)) return sixteenths(72);
  return frame.width <= Length::from_inch_parts(48) ? sixteenths(80) : sixteenths(96);
}

/// From the lowest hinge to the highest at equal distances.
std::vector<Length> hinge_feet(Length lowest, Length highest, int number) {
  if (number == 1) return {lowest};
  std::vector<Length> feet;
  for (int i = 0; i < number; ++i)
    feet.push_back(lowest + floor_divide((highest - lowest) * i, number - 1));
  return feet;
}

void demand_hinges_on_leaf(DoorLedger& ledger, const DoorPlan& plan, const HingePlan& hinges) {
  const Length top = hinges.feet.back() + hinges.length;
  if (top > plan.frame.height || hinges.feet.front() > hinges.feet.back())
    ledger.problem({"hinges.from_top", "hinges.from_foot", "hinges.length"},
                   fmt::format("the hinges reach from {} to {} of a leaf {} high; move them",
                               ledger.say(hinges.feet.front()), ledger.say(top),
                               ledger.say(plan.frame.height)));
  for (std::size_t i = 1; i < hinges.feet.size(); ++i)
    if (hinges.feet[i] < hinges.feet[i - 1] + hinges.length) {
      ledger.problem({"hinges.from_foot", "hinges.from_top", "hinges.length"},
                     fmt::format("{} hinges of {} stand in each other; have fewer, or shorter ones",
                                 hinges.feet.size(), ledger.say(hinges.length)));
      return;
    }
  if (hinges.width > plan.frame.thickness)
    ledger.problem({"hinges.width"},
                   fmt::format("a hinge {} wide does not go on an edge of {}; make it narrower",
                               ledger.say(hinges.width), ledger.say(plan.frame.thickness)));
}

void settle_hinges(DoorLedger& ledger, DoorPlan& plan) {
  const FramePlan& frame = plan.frame;
  HingePlan hinges;
  const int number = ledger.spec.hinges.value_or(usual_hinges(frame.height));
  if (!ledger.spec.hinges)
    ledger.assume("hinges.number", number,
                  "one for each 30 in (762 mm) of height or part of it, two at least (hardware "
                  "guides)");
  if (ledger.spec.hinges_by_shop) ledger.note_shop("hinges.number", number);
  const bool house = ledger.defaults.house;
  hinges.length = ledger.take(
      "hinges.length",
      house ? nearest_multiple(usual_hinge_length(frame), ledger.defaults.whole)
            : ledger.defaults.cabinet_hinge,
      house ? "by the leaf's thickness and width (hinge tables)" : "usual for a cabinet door");
  hinges.thickness =
      ledger.take("hinges.thickness", ledger.defaults.hinge_thickness, "usual for a butt hinge");
  hinges.width = ledger.take(
      "hinges.width",
      std::max(frame.thickness - ledger.defaults.behind_hinge, floor_half(frame.thickness)),
      "so that 6 mm (1/4 in) of the edge stay whole behind it");
  const std::string_view in_line = "in line with the rail's inner edge (Fairham, Noyes)";
  const Length from_top = ledger.take(
      "hinges.from_top", house ? ledger.defaults.house_hinge_from_top : frame.rails.front().width,
      house ? "6 in below the top (trade practice)" : in_line);
  const Length from_foot = ledger.take(
      "hinges.from_foot", house ? ledger.defaults.house_hinge_from_foot : frame.rails.back().width,
      house ? "9 in above the foot (trade practice)" : in_line);
  hinges.feet = hinge_feet(from_foot, frame.height - from_top - hinges.length, number);
  demand_hinges_on_leaf(ledger, plan, hinges);
  plan.fittings.hinges = hinges;
}

// ---- lock

/// A size of the lock that only its maker knows.
Length demand(DoorLedger& ledger, std::string_view key) {
  const Stated& its = ledger.stated(key);
  if (!its.size) {
    const std::string_view name = key.substr(key.rfind('.') + 1);
    ledger.problem({std::string(key.substr(0, key.rfind('.')))},
                   fmt::format("\"{}\" is missing; read it off the lock", name));
  }
  return ledger.take(key, Length(), "");
}

void demand_lock_on_leaf(DoorLedger& ledger, const DoorPlan& plan, const LockPlan& lock) {
  const FramePlan& frame = plan.frame;
  const Length stile = plan.fittings.hangs_left ? frame.stile_right : frame.stile_left;
  const Length half = floor_half(std::max(lock.case_height, lock.plate_length));
  if (lock.case_depth >= stile)
    ledger.problem({"lock.case.depth"},
                   fmt::format("a case {} deep goes through a stile of {}; take a shallower lock, "
                               "or a wider stile",
                               ledger.say(lock.case_depth), ledger.say(stile)));
  if (lock.height < half || lock.height + half > frame.height)
    ledger.problem({"lock.height"},
                   fmt::format("at {} the lock reaches beyond a leaf {} high; move it",
                               ledger.say(lock.height), ledger.say(frame.height)));
  if (std::max(lock.case_thickness, lock.plate_width) >= frame.thickness)
    ledger.problem({"lock.case.thickness", "lock.faceplate.width"},
                   fmt::format("it does not go in a leaf {} thick; take a thinner lock",
                               ledger.say(frame.thickness)));
}

void settle_lock(DoorLedger& ledger, DoorPlan& plan) {
  LockPlan lock;
  lock.height = ledger.take("lock.height", ledger.defaults.lock_height,
                            "38 in above the foot (door-preparation notes)");
  lock.case_height = demand(ledger, "lock.case.height");
  lock.case_depth = demand(ledger, "lock.case.depth");
  lock.case_thickness = demand(ledger, "lock.case.thickness");
  if (any_stated(ledger.spec, "lock.faceplate.")) {
    lock.plate_length = demand(ledger, "lock.faceplate.length");
    lock.plate_width = demand(ledger, "lock.faceplate.width");
    lock.plate_thickness = demand(ledger, "lock.faceplate.thickness");
  }
  demand_lock_on_leaf(ledger, plan, lock);
  plan.fittings.lock = lock;
}

}  // namespace

void settle_fittings(DoorLedger& ledger, DoorPlan& plan) {
  const DoorSpec& spec = ledger.spec;
  const bool has_hinges = spec.hinges || any_stated(spec, "hinges.");
  const bool has_lock = any_stated(spec, "lock.");
  if (!has_hinges && !has_lock && !spec.hangs.word) return;
  const Side side = ledger.choose(spec.hangs, "hangs", Side::left, {"left", "right"});
  plan.fittings.hangs_left = side == Side::left;
  const auto sizes_of_wood = std::ssize(ledger.levers);
  if (has_hinges) settle_hinges(ledger, plan);
  if (has_lock) settle_lock(ledger, plan);
  // Of two remedies as small, the fitting is moved sooner than the joint.
  std::rotate(ledger.levers.begin(), ledger.levers.begin() + sizes_of_wood, ledger.levers.end());
}

}  // namespace haunch
