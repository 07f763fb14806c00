#include "door_cautions.h"

#include <fmt/core.h>

#include <algorithm>

#include "cautions.h"
#include "moisture.h"
#include "species.h"

namespace haunch {
namespace {

/// As much as one person should lift at most under the best conditions: 51 lb (23 kg), NIOSH.
constexpr double kOnePersonLifts = 23;

double metres(Length length) {
  return static_cast<double>(length.steps()) / (1000.0 * Length::kStepsPerMm);
}

double square_metres(const Strip& wide, const Strip& high) {
  return metres(wide.high - wide.low) * metres(high.high - high.low);
}

/// The leaf as if it were solid, of the wood of its frame at 12 %, but for its lights. Much of a
/// sealed unit is gas: it is left out.
std::optional<double> kilograms(const Spec& spec, const DoorPlan& plan) {
  constexpr double kDry = 12;
  const auto species = find_species(spec.text("species.frame"));
  const auto density = species ? density_kg_m3(*species, kDry) : std::nullopt;
  if (!density) return {};
  const FramePlan& frame = plan.frame;
  const double thickness = metres(frame.thickness);
  double weight = *density * metres(frame.width) * metres(frame.height) * thickness;
  for (std::size_t tier = 0; tier < plan.panels.size(); ++tier) {
    const auto& glass = plan.panels[tier].glass;
    if (!glass) continue;
    const double pane = glass->sealed ? 0 : kGlassDensity * metres(glass->thickness);
    for (const Strip& sight : frame.tiers[tier].sights)
      weight += (pane - *density * thickness) * square_metres(sight, frame.tiers[tier].height);
  }
  return weight;
}

/// " and glass at 2500 kg/m3, without its sealed units, …"; empty where there is no glass.
std::string glass_in_weight(const DoorPlan& plan) {
  const auto any = [&](bool sealed) {
    return std::any_of(plan.panels.begin(), plan.panels.end(), [&](const PanelPlan& panel) {
      return panel.glass && panel.glass->sealed == sealed;
    });
  };
  return std::string(any(false) ? " and glass at 2500 kg/m3" : "") +
         (any(true) ? ", without its sealed units, whose weight their maker gives" : "");
}

std::string in_unit(double kilograms, Unit unit) {
  constexpr double kPounds = 1 / 0.45359237;
  return unit == Unit::mm ? fmt::format("{:.0f} kg", kilograms)
                          : fmt::format("{:.0f} lb", kilograms * kPounds);
}

/// The weight of a leaf, and which it is: of a pair the heavier, if one is by a figure that is
/// told.
struct Weighed {
  std::string_view leaf;
  double kilograms = 0;
};

std::optional<Weighed> heavier(const Spec& spec, const DoorPlan& plan, const DoorPlan* other) {
  const auto one = kilograms(spec, plan);
  if (!one) return {};
  if (other == nullptr) return Weighed{"the leaf", *one};
  const double two = kilograms(spec, *other).value_or(0);
  const Unit unit = spec.units.value_or(Unit::mm);
  if (in_unit(*one, unit) == in_unit(two, unit)) return Weighed{"each leaf", *one};
  const bool right = (*one > two ? plan : *other).frame.pair->is_right;
  return Weighed{right ? "the right leaf, the heavier," : "the left leaf, the heavier,",
                 std::max(*one, two)};
}

/// The widest pane of a leaf.
Length widest_pane(const DoorPlan& plan) {
  Length widest;
  for (std::size_t tier = 0; tier < plan.panels.size(); ++tier)
    if (const auto& glass = plan.panels[tier].glass)
      for (const Strip& sight : plan.frame.tiers[tier].sights)
        widest = std::max(widest, sight.high - sight.low + glass->bite() * 2);
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

}  // namespace

std::vector<Caution> door_cautions(const Spec& spec, const DoorPlan& plan, const DoorPlan* other,
                                   bool weighed) {
  const Unit unit = spec.units.value_or(Unit::mm);
  std::vector<Caution> cautions;
  const auto weight = weighed ? std::nullopt : heavier(spec, plan, other);
  if (plan.fittings.hinges && weight)
    cautions.push_back(
        {"weight on the hinges",
         fmt::format("{} comes to some {}, reckoned as solid {} at 12 %{}; see that the load "
                     "table of the hinges' maker carries it",
                     weight->leaf, in_unit(weight->kilograms, unit), spec.text("species.frame"),
                     glass_in_weight(plan))});
  if (weight && weight->kilograms > kOnePersonLifts)
    cautions.push_back(
        {"lifting",
         fmt::format("reckoned as solid {} at 12 %{} {} comes to some {}; above 23 kg (51 lb, "
                     "NIOSH's limit for one person under the best conditions) lift it with two",
                     spec.text("species.frame"), glass_in_weight(plan), weight->leaf,
                     in_unit(weight->kilograms, unit))});
  if (spec.says("existing_opening")) cautions.push_back(old_paint());
  if (plan.has_glass()) cautions.push_back(safety_glazing(plan, unit));
  if (!plan.fittings.lock) return cautions;
  if (spec.says("escape_route"))
    cautions.push_back(
        {"escape route", fmt::format("IRC R311.2 asks for a lock that opens from inside without a "
                                     "key, and the leaf 32 in (813 mm) clear and 78 in (1981 mm) "
                                     "high{}",
                                     kDecides)});
  if (spec.says("accessible"))
    cautions.push_back(
        {"accessible route",
         fmt::format("ADA Standards 404.2.7 ask for hardware 34 to 48 in (864 to 1219 mm) above "
                     "the floor; the lock's stands at {}, the gap at the foot counted{}",
                     in_words(lock_above_floor(plan), unit), kDecides)});
  return cautions;
}

}  // namespace haunch
