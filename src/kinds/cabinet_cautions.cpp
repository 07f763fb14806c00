#include "cabinet_cautions.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

namespace haunch {
namespace {

/// From which height on free-standing storage is to be tested for tipping: 27 in (ASTM F2057-23).
constexpr Length kTips = Length::from_inch_parts(27);

bool has_drawers(const CabinetPlan& plan) {
  return std::any_of(plan.fronts.begin(), plan.fronts.end(),
                     [](const FrontPlan& front) { return front.kind == FrontKind::drawer; });
}

/// Of what stands high for its depth, or has drawers whose weight comes forward.
std::optional<Caution> tipping(const CabinetPlan& plan) {
  if (plan.size[1] < kTips && !(has_drawers(plan) && plan.size[1] >= Length::from_mm(600)))
    return {};
  std::string words =
      "fix it to the wall: it tips when a child climbs it, or when doors and drawers stand open; "
      "heavy things low, one drawer open at a time. Not tested here, and no claim to meet a "
      "standard: free-standing clothing storage from 27 in (686 mm) on is to pass ASTM F2057-23 "
      "(16 CFR 1261), storage in homes EN 14749";
  words += kDecides;
  return Caution{"tipping", std::move(words)};
}

std::optional<Caution> loads(const CabinetPlan& plan) {
  const auto carries = [](const InnerPlan& inner) { return inner.load.has_value(); };
  if (plan.carcase.loose.empty() &&
      std::none_of(plan.carcase.inner.begin(), plan.carcase.inner.end(), carries))
    return {};
  return Caution{"shelf loads",
                 "what shelves carry is an estimate, books 30 kg on a metre; weigh what is really "
                 "to lie there where it is more"};
}

/// Of what hangs on a wall.
std::optional<Caution> hanging(const CabinetPlan& plan) {
  if (!plan.carcase.hanging) return {};
  std::string words =
      "the cabinet with all that it holds hangs on its screws: two at least in each stud, or in "
      "blocking or masonry behind, eight times as deep in the wood as they are thick, never in the "
      "board of the wall alone; weigh what it holds and choose them by that (EN 14749 does not "
      "cover the wall and its fixings)";
  words += kDecides;
  return Caution{"hanging", std::move(words)};
}

std::optional<Caution> glass_shelves(const CabinetPlan& plan) {
  const auto of_glass = [](const LooseShelves& it) { return it.stuff.matter == Matter::glass; };
  if (std::none_of(plan.carcase.loose.begin(), plan.carcase.loose.end(), of_glass)) return {};
  std::string words =
      "toughened (EN 12150-1), edges ground; how thick it is to be for its span and load its "
      "supplier says, not this sheet";
  words += kDecides;
  return Caution{"glass shelves", std::move(words)};
}

}  // namespace

std::vector<Caution> cabinet_cautions(const CabinetPlan& plan) {
  std::vector<Caution> all;
  for (const auto caution : {tipping, hanging, loads, glass_shelves})
    if (auto its = caution(plan)) all.push_back(*std::move(its));
  return all;
}

}  // namespace haunch
