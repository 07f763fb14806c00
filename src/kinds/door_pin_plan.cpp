#include <fmt/core.h>

#include <algorithm>
#include <optional>

#include "door_plan_steps.h"
#include "pin_plan.h"
#include "species.h"

namespace haunch {
namespace {

constexpr PinKeys kPinKeys{
    "pin",       "pin.number", "pin.diameter", "pin.from_shoulder", "pin.offset",
    "pin.depth", "pin.over",   "tenon_depth",  "mortise.from_face", "thickness"};

/// Whether the tenons at a place go into mortises, so that a pin holds them.
bool can_be_pinned(const DoorPlan& plan, JointPlace place) {
  return plan.has_mortises_at(place) && plan.joint_at(place).has_own_tenons();
}

std::string_view words_of(JointPlace place) {
  return place == JointPlace::corner   ? "corners"
         : place == JointPlace::middle ? "middle rails"
                                       : "muntins";
}

/// Refuses pins at a place where there is nothing for them to go through.
void refuse_place(DoorLedger& ledger, const DoorPlan& plan, JointPlace place) {
  const std::string_view where = words_of(place);
  const std::string what =
      !plan.occurs(place) ? fmt::format("there are no {} here", where)
      : plan.is_stub(place)
          ? fmt::format("the {} are stub tenons in the groove, too short for a pin", where)
          : fmt::format(
                "the {} are \"{}\" joints, which have no tenon of the {}'s own in a "
                "mortise",
                where, word_of(plan.join.at(place)),
                place == JointPlace::muntin ? "muntin" : "rail");
  ledger.problem({"pin.at", "pin"},
                 what + "; choose another joint, say another \"at\", or take it out");
}

/// The places that a word means, and whether it is that place alone.
std::vector<JointPlace> places_of(PinPlaces asked) {
  switch (asked) {
    case PinPlaces::corner:
      return {JointPlace::corner};
    case PinPlaces::middle:
      return {JointPlace::middle};
    case PinPlaces::muntin:
      return {JointPlace::muntin};
    case PinPlaces::both:
      return {JointPlace::corner, JointPlace::middle};
    case PinPlaces::all:
      return {JointPlace::corner, JointPlace::middle, JointPlace::muntin};
  }
  return {};
}

/// The places that are pinned: one that is asked for by itself, else all that can be.
std::vector<JointPlace> pinned_places(DoorLedger& ledger, const DoorPlan& plan) {
  std::vector<JointPlace> places =
      places_of(ledger.spec.word<PinPlaces>("pin.at").value_or(PinPlaces::both));
  const JointPlace first = places.front();
  std::erase_if(places, [&](JointPlace place) { return !can_be_pinned(plan, place); });
  if (places.empty()) refuse_place(ledger, plan, first);
  return places;
}

bool is_softwood(const DoorLedger& ledger) {
  const auto species = find_species(species_of(ledger.spec).of(Role::rail));
  return species && species->group == "softwood";
}

bool has_twins(const DoorPlan& plan) {
  return std::any_of(plan.rail_mortises.begin(), plan.rail_mortises.end(),
                     [](const MortiseDesign& it) { return it.twin_from_face.has_value(); }) ||
         plan.muntin_mortise.twin_from_face;
}

/// How far a longer shoulder stands on past the one that pins are told from; of twins, how deep the
/// groove runs in the wood between them, which pins go through too.
Length longer_shoulder(const DoorPlan& plan) {
  if (plan.edge.rebated() || has_twins(plan)) return plan.groove.depth;
  return plan.edge.kind == EdgeKind::coped ? plan.edge.width : Length();
}

PinnedWood pinned_wood(const DoorPlan& plan, const std::vector<JointPlace>& places) {
  std::optional<Length> shortest;
  for (const JointPlace place : places) {
    const Length depth =
        place == JointPlace::muntin ? plan.join.muntin_depth : plan.join.rail_depth;
    shortest = std::min(shortest.value_or(depth), depth);
  }
  const Length longer = longer_shoulder(plan);
  return {plan.frame.thickness, *shortest, longer,
          has_twins(plan)     ? " from the groove between the twins"
          : longer > Length() ? " from the shoulder that stands on past it"
                              : ""};
}

void note_words(DoorLedger& ledger, const DoorPlan& plan) {
  ledger.note_shops_word("pin.at");
  if (!ledger.stated("pin.at").stated && plan.occurs(JointPlace::middle))
    ledger.assume("pin.at", std::string("both"), "all tenons of rails that can be pinned");
}

}  // namespace

void settle_pins(DoorLedger& ledger, DoorPlan& plan) {
  plan.rail_pins.resize(plan.frame.rails.size());
  if (!ledger.stated("pin").by_spec() || !ledger.clean()) return;
  const std::vector<JointPlace> places = pinned_places(ledger, plan);
  if (places.empty() || !ledger.clean()) return;
  note_words(ledger, plan);
  const PinUsual usual = usual_pins(ledger.defaults, is_softwood(ledger));
  const PinDesign pins = settle_pin_sizes(ledger, kPinKeys, usual, pinned_wood(plan, places));
  const Length thickness = plan.frame.thickness;
  const auto at = [&](JointPlace place) {
    return std::find(places.begin(), places.end(), place) != places.end();
  };
  for (std::size_t i = 0; i < plan.frame.rails.size(); ++i) {
    if (!at(plan.frame.place_of(i))) continue;
    const MortiseDesign& mortise = plan.rail_mortises[i];
    const Length depth =
        mortise.through ? plan.frame.narrow_stile() - plan.edge.set_back() : plan.join.rail_depth;
    plan.rail_pins[i] =
        pins_across(ledger, kPinKeys, usual, pins,
                    {plan.rail_tenons[i], mortise, depth, plan.frame.rails[i].name}, thickness);
  }
  if (at(JointPlace::muntin))
    plan.muntin_pins = pins_across(
        ledger, kPinKeys, usual, pins,
        {plan.muntin_tenon, plan.muntin_mortise, plan.join.muntin_depth, "muntin"}, thickness);
}

}  // namespace haunch
