// What whoever makes or fits a frame is told once, where it applies, with the document that the
// figures come from.
#include <fmt/core.h>

#include "cautions.h"
#include "frame_plan_steps.h"
#include "opening_spec.h"
#include "usual_size.h"

namespace haunch {
namespace {

/// About what is left between the stop at the lock side, or the other leaf of a pair, and the face
/// of a leaf open at 90 degrees, which stands by its thickness and its hinges' pin before the
/// middle of its gap.
Length clear_width(const CasePlan& plan, Length pin_out) {
  const Length back = floor_half(plan.clearance.left) + plan.leaf_thickness + pin_out;
  const Length lock = plan.leaves == 2
                          ? plan.clearance.left + floor_half(plan.leaf_width)
                          : plan.sight_width() + plan.stop.rebate() - plan.stop.planted();
  return lock - back;
}

Length pin_of(const Spec& spec, Unit unit) {
  return spec.size("pin_out").value_or(usual_size(unit, 6'000, 1, 4));
}

/// `wide` and `high` are asked for.
std::string clear_words(const Spec& spec, const CasePlan& plan, Unit unit, Length wide,
                        Length high) {
  const Length pin_out = pin_of(spec, unit);
  const auto [what, width, height] = clear_room(spec, plan, unit);
  return fmt::format(
      "here about {} wide{} with {} open at 90 degrees (hinge pin {} before its face) and {} "
      "high{}, with {}",
      in_words(width, unit), short_of(width, wide, unit),
      plan.leaves == 2 ? "one leaf of the pair" : "the leaf", in_words(pin_out, unit),
      in_words(height, unit), short_of(height, high, unit),
      plan.base() == Length() ? "no threshold" : "a threshold of " + in_words(plan.base(), unit));
}

}  // namespace

NamedRoom clear_room(const Spec& spec, const CasePlan& plan, Unit unit) {
  const Length whole = usual_size(unit, 1'000, 1, 16);
  return {"clear, open at 90 degrees", floor_multiple(clear_width(plan, pin_of(spec, unit)), whole),
          floor_multiple(plan.lintel_low() - plan.base() - plan.stop.planted(), whole)};
}

std::vector<Caution> frame_cautions(const Spec& spec, const CasePlan& plan, Unit unit) {
  std::vector<Caution> cautions;
  if (spec.says("frame.escape_route"))
    cautions.push_back(
        {"escape route",
         fmt::format("IRC R311.2 asks for one side-hinged door with 32 in (813 mm) clear width and "
                     "78 in (1981 mm) clear height, R311.3.1 for a threshold of at most 1 1/2 in "
                     "(38 mm): {}{}",
                     clear_words(spec, plan, unit, Length::from_inch_parts(32),
                                 Length::from_inch_parts(78)),
                     kDecides)});
  if (spec.says("frame.accessible"))
    cautions.push_back(
        {"accessible route",
         fmt::format("ADA Standards 404 ask for 32 in (813 mm) clear from the face of the leaf at "
                     "90 degrees to the stop, 80 in (2032 mm) clear height (78 in, 1981 mm, at "
                     "stops and closers) and a threshold of at most 1/2 in (12.7 mm), bevelled "
                     "above 1/4 in: {}{}",
                     clear_words(spec, plan, unit, Length::from_inch_parts(32),
                                 Length::from_inch_parts(80)),
                     kDecides)});
  if (spec.says("frame.existing_opening")) cautions.push_back(old_paint());
  if (spec.says("frame.exterior") && plan.stop.kind == StopKind::planted)
    cautions.push_back(
        {"outside frame",
         fmt::format("NHBC Standards 6.7 (UK) do not allow planted stops in outside frames; work "
                     "them from the solid: \"stop\": {{\"kind\": \"rebate\"}}{}",
                     kDecides)});
  if (const auto by = disagreement(spec, kWallOpening))
    cautions.push_back(opening_disagrees(*by, unit));
  return cautions;
}

}  // namespace haunch
