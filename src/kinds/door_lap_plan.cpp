#include <fmt/core.h>

#include "door_plan_steps.h"

namespace haunch {

void settle_laps(DoorLedger& ledger, DoorPlan& plan) {
  if (!plan.has(JointWord::half_lap)) return;
  const Length thickness = plan.frame.thickness;
  plan.lap_from_face =
      ledger.take("half_lap.from_face", floor_half(thickness), "each half as thick as the other");
  if (plan.lap_from_face >= thickness)
    ledger.problem({"half_lap.from_face", "thickness"},
                   fmt::format("laps that meet {} from the face side leave nothing of the one "
                               "behind in a thickness of {}; make it less",
                               ledger.say(plan.lap_from_face), ledger.say(thickness)));
}

}  // namespace haunch
