#include "dovetail_cutter.h"

#include <fmt/core.h>

#include <cmath>
#include <numbers>

#include "rounding.h"

namespace haunch {

Length DovetailCutter::comes_in(Length from_end) const {
  constexpr double kDegree = std::numbers::pi / 180;
  return nearest_step(static_cast<double>(from_end.steps()) * std::tan(angle * kDegree));
}

std::optional<DovetailCutter> settle_dovetail_cutter(Ledger& ledger) {
  const SaidBy said = ledger.spec.said_by("fronts.drawer.corner.tails.cut_by");
  const bool sloped = ledger.stated("fronts.drawer.corner.tails.slope").by_spec();
  if (said == SaidBy::nobody || (said == SaidBy::shop && sloped)) return {};
  if (sloped)
    ledger.problem({"fronts.drawer.corner.tails.slope"},
                   "the angle of the cutter, \"cut_by\", is their slope; keep one of the two");
  DovetailCutter cutter;
  constexpr std::string_view kUsual = "usual for such a cutter";
  cutter.diameter = ledger.settle("fronts.drawer.corner.tails.cut_by.diameter",
                                  ledger.pick(12'700, 1, 2), kUsual);
  cutter.height =
      ledger.settle("fronts.drawer.corner.tails.cut_by.height", ledger.pick(12'700, 1, 2), kUsual);
  const auto angle = ledger.spec.count("fronts.drawer.corner.tails.cut_by.angle");
  cutter.angle = angle.value_or(14);
  if (!angle) ledger.assume("fronts.drawer.corner.tails.cut_by.angle", cutter.angle, kUsual);
  cutter.neck =
      ledger.settle("fronts.drawer.corner.tails.cut_by.neck", cutter.at_surface(cutter.height),
                    "what diameter, height and angle leave");
  if (cutter.neck <= Length())
    ledger.problem(
        {"fronts.drawer.corner.tails.cut_by.neck", "fronts.drawer.corner.tails.cut_by.height",
         "fronts.drawer.corner.tails.cut_by"},
        fmt::format("a cutter of {} has no neck left above edges {} high at {} degrees; read its "
                    "sizes off it",
                    ledger.say(cutter.diameter), ledger.say(cutter.height), cutter.angle));
  else if (cutter.neck >= cutter.diameter)
    ledger.problem({"fronts.drawer.corner.tails.cut_by.neck"},
                   fmt::format("is not less than its diameter, {}; read its sizes off it",
                               ledger.say(cutter.diameter)));
  return cutter;
}

Caution told_of_cutter(const DovetailCutter& cutter, Unit unit) {
  return {"dovetail cutter",
          fmt::format("tails and sockets are set out for a cutter of {} at {} degrees. It leaves "
                      "the inner ends of lapped sockets round, with a radius of {}: square them, "
                      "or round the inner corners of the tails to it",
                      in_words(cutter.diameter, unit), cutter.angle,
                      in_words(floor_half(cutter.diameter), unit))};
}

}  // namespace haunch
