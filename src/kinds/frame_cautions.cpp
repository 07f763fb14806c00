// What whoever makes or fits a frame is told once, where it applies, with the document that the
// figures come from.
#include <fmt/format.h>

#include "frame_plan_steps.h"

namespace haunch {
namespace {

constexpr std::string_view kDecides =
    "; the adopted local code, the authority and a licensed professional decide";

std::string clear_room(const CasePlan& plan, Unit unit) {
  const Length planted = plan.stop.planted();
  return fmt::format("between the stops this frame is {} wide and {} high, the leaf open at 90 "
                     "degrees stands in that by its thickness of {} and its hinge",
                     in_words(plan.sight_width() - planted * 2, unit),
                     in_words(plan.lintel_low() - plan.base() - planted, unit),
                     in_words(plan.leaf_thickness, unit));
}

std::string threshold_words(const CasePlan& plan, Unit unit) {
  const Length height = plan.threshold.value_or(plan.sill.value_or(Length()));
  return height == Length() ? "there is none here"
                            : fmt::format("here it is {}", in_words(height, unit));
}

}  // namespace

std::vector<Caution> frame_cautions(const KeyedValues& values, const CasePlan& plan, Unit unit) {
  std::vector<Caution> cautions;
  if (values.says("escape_route"))
    cautions.push_back(
        {"escape route",
         fmt::format("IRC R311.2 asks for one side-hinged door with 32 in (813 mm) clear width and "
                     "78 in (1981 mm) clear height, R311.3.1 for a threshold of at most 1 1/2 in "
                     "(38 mm); {}; of the threshold {}{}",
                     clear_room(plan, unit), threshold_words(plan, unit), kDecides)});
  if (values.says("accessible"))
    cautions.push_back(
        {"accessible route",
         fmt::format("ADA Standards 404 ask for 32 in (813 mm) clear from the face of the leaf at "
                     "90 degrees to the stop, 80 in (2032 mm) clear height (78 in, 1981 mm, at "
                     "stops and closers) and a threshold of at most 1/2 in (12.7 mm), bevelled "
                     "above 1/4 in; {}; of the threshold {}{}",
                     clear_room(plan, unit), threshold_words(plan, unit), kDecides)});
  if (values.says("existing_opening"))
    cautions.push_back(
        {"old paint",
         fmt::format("paint from before 1978 may hold lead: in US housing from 6 sq ft inside or 20 "
                     "sq ft outside, about one door, the EPA's RRP rule wants a certified firm; "
                     "elsewhere have it tested before it is sanded or burnt{}",
                     kDecides)});
  if (values.says("exterior") && plan.stop.kind == StopKind::planted)
    cautions.push_back(
        {"outside frame",
         fmt::format("NHBC Standards 6.7 (UK) do not allow planted stops in outside frames; work "
                     "them from the solid: \"stop\": {{\"kind\": \"rebate\"}}{}",
                     kDecides)});
  return cautions;
}

}  // namespace haunch
