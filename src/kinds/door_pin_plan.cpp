#include <fmt/core.h>

#include <algorithm>
#include <cstdint>

#include "door_plan_steps.h"
#include "species.h"

namespace haunch {
namespace {

/// Whether the tenons at a place go into mortises, so that a pin holds them.
bool can_be_pinned(const DoorPlan& plan, JointPlace place) {
  return plan.has_mortises_at(place) && plan.joint_at(place).has_own_tenons();
}

/// Refuses pins at a place where there is nothing for them to go through.
void refuse_place(DoorLedger& ledger, const DoorPlan& plan, JointPlace place) {
  const std::string where = place == JointPlace::corner ? "corners" : "middle rails";
  const std::string what =
      !plan.occurs(place) ? fmt::format("there are no {} here", where)
      : plan.is_stub(place)
          ? fmt::format("the {} are stub tenons in the groove, too short for a pin", where)
          : fmt::format(
                "the {} are \"{}\" joints, which have no tenon of the rail's own in a "
                "mortise",
                where, word_of(plan.join.at(place)));
  ledger.problem({"pin.at", "pin"},
                 what + "; choose another joint, say another \"at\", or take it out");
}

/// The rails' places that are pinned: those that are asked for, else all that can be.
std::vector<JointPlace> pinned_places(DoorLedger& ledger, const DoorPlan& plan) {
  std::vector<JointPlace> places;
  const PinPlaces asked = ledger.spec.word<PinPlaces>("pin.at").value_or(PinPlaces::both);
  for (const JointPlace place : {JointPlace::corner, JointPlace::middle})
    if (asked == PinPlaces::both || (asked == PinPlaces::corner) == (place == JointPlace::corner)) {
      if (can_be_pinned(plan, place))
        places.push_back(place);
      else if (asked != PinPlaces::both)
        refuse_place(ledger, plan, place);
    }
  if (places.empty() && asked == PinPlaces::both) refuse_place(ledger, plan, JointPlace::corner);
  return places;
}

bool is_softwood(const DoorLedger& ledger) {
  const auto species = find_species(species_of(ledger.spec).of(Role::rail));
  return species && species->group == "softwood";
}

/// Up to a quarter of the pin (a timber craft text): 1/16 in in hardwood, 3/32 in in softwood (a
/// toolmaker's guide), about 1 mm in furniture.
Length usual_draw(const DoorLedger& ledger, Length diameter) {
  const DoorDefaults& usual = ledger.defaults;
  const Length draw = !usual.house          ? usual.draw_in_cabinets
                      : is_softwood(ledger) ? usual.draw_in_softwood
                                            : usual.draw_in_hardwood;
  return std::min(draw, floor_divide(diameter, 4));
}

/// The middles of the pins across a tenon, to a size that can be marked: one, or two where each
/// half of the tenon is four pins wide (a pin up to a quarter of its tenon: shop rule).
std::vector<Length> middles_in(const DoorLedger& ledger, const Strip& tenon, Length diameter) {
  const Length width = tenon.high - tenon.low;
  const std::int64_t count =
      ledger.spec.count("pin.number").value_or(width >= diameter * 8 ? 2 : 1);
  std::vector<Length> middles;
  for (std::int64_t i = 1; i <= count * 2; i += 2)
    middles.push_back(
        nearest_multiple(tenon.low + floor_divide(width * i, count * 2), ledger.defaults.whole));
  return middles;
}

/// The holes must lie in the flat of the tenon, clear of edges that are `rounded` so far in.
void refuse_narrow_tenon(DoorLedger& ledger, const PinDesign& pins, const Strip& tenon,
                         Length rounded, const std::vector<Length>& middles,
                         const std::string& name) {
  const Length radius = floor_half(pins.diameter) + rounded;
  const bool apart = middles.size() < 2 || middles[1] - middles[0] > pins.diameter;
  if (apart && middles.front() - radius > tenon.low && middles.back() + radius < tenon.high) return;
  ledger.problem(
      {"pin.number", "pin.diameter", "pin"},
      fmt::format(
          "the {}'s tenon of {}{} is too narrow for {} of {}; make it less", name,
          ledger.say(tenon.high - tenon.low),
          rounded > Length() ? fmt::format(", its edges rounded to {},", ledger.say(rounded)) : "",
          middles.size() == 1 ? "a pin" : "two pins", ledger.say(pins.diameter)));
}

/// The holes must lie in the tenon, and in the cheeks.
void refuse_lengthwise(DoorLedger& ledger, const PinDesign& pins, Length tenon_depth) {
  const Length radius = floor_half(pins.diameter);
  const Length tenon_hole = pins.from_shoulder - pins.draw;
  if (tenon_hole <= radius)
    ledger.problem({"pin.from_shoulder", "pin.offset", "pin.diameter"},
                   fmt::format("a hole of {} with its middle {} from the shoulder comes out there; "
                               "make pin.from_shoulder more, or the others less",
                               ledger.say(pins.diameter), ledger.say(tenon_hole)));
  else if (pins.from_shoulder + radius >= tenon_depth)
    ledger.problem({"pin.from_shoulder", "pin.diameter", "tenon_depth"},
                   fmt::format("a hole of {} with its middle {} from the shoulder comes out at the "
                               "end of the tenon, {} deep; make it less",
                               ledger.say(pins.diameter), ledger.say(pins.from_shoulder),
                               ledger.say(tenon_depth)));
  if (pins.draw >= pins.diameter)
    ledger.problem({"pin.offset", "pin.diameter"},
                   fmt::format("holes of {} that stand {} off each other are not one hole; make it "
                               "less than a third of the pin",
                               ledger.say(pins.diameter), ledger.say(pins.draw)));
}

/// A blind hole must go through the tenon into the other cheek, and no further.
void refuse_depth(DoorLedger& ledger, const DoorPlan& plan, const PinDesign& pins,
                  const MortiseDesign& mortise) {
  if (!pins.depth) return;
  const Length back = mortise.twin_from_face.value_or(mortise.from_face) + mortise.width;
  if (*pins.depth >= plan.frame.thickness)
    ledger.problem({"pin.depth", "thickness"},
                   fmt::format("a hole of {} goes right through {}; leave it out for pins that do",
                               ledger.say(*pins.depth), ledger.say(plan.frame.thickness)));
  else if (*pins.depth <= back)
    ledger.problem({"pin.depth", "mortise.from_face"},
                   fmt::format("a hole of {} does not reach the cheek behind the tenon, {} from "
                               "the face side; make it more, or leave it out for pins right "
                               "through",
                               ledger.say(*pins.depth), ledger.say(back)));
}

bool has_twins(const DoorPlan& plan) {
  return std::any_of(plan.rail_mortises.begin(), plan.rail_mortises.end(),
                     [](const MortiseDesign& it) { return it.twin_from_face.has_value(); });
}

/// How far a longer shoulder stands on past the one that pins are told from; of twins, how deep the
/// groove runs in the wood between them, which pins go through too.
Length longer_shoulder(const DoorPlan& plan) {
  if (plan.edge.rebated() || has_twins(plan)) return plan.groove.depth;
  return plan.edge.kind == EdgeKind::coped ? plan.edge.width : Length();
}

/// Why pins stand where they do; `two`: there is room for two pins' thickness.
std::string place_of_pins(const DoorPlan& plan, bool two) {
  const std::string from = has_twins(plan) ? " from the groove between the twins"
                           : longer_shoulder(plan) > Length()
                               ? " from the shoulder that stands on past it"
                               : "";
  return two ? "two pins" + from + " (trade practice)"
             : "in the middle of the tenon, less than two pins" + from;
}

PinDesign settle_sizes(DoorLedger& ledger, const DoorPlan& plan) {
  PinDesign pins;
  pins.diameter = ledger.take("pin.diameter", ledger.defaults.pin,
                              ledger.defaults.house ? "3/8 in, usual in doors (shop rule)"
                                                    : "1/4 in, usual in cabinets (shop rule)");
  const Length middle = floor_multiple(floor_half(plan.join.rail_depth), ledger.defaults.whole);
  const Length longer = longer_shoulder(plan);
  const Length two = pins.diameter * 2 + longer;
  pins.from_shoulder =
      ledger.take("pin.from_shoulder", std::min(two, middle), place_of_pins(plan, two <= middle));
  pins.draw = ledger.take("pin.offset", usual_draw(ledger, pins.diameter),
                          is_softwood(ledger) ? "usual in softwood, at most a quarter of the pin"
                                              : "usual in hardwood, at most a quarter of the pin");
  if (ledger.spec.size("pin.depth")) pins.depth = ledger.take("pin.depth", Length(), {});
  pins.over = ledger.settle("pin.over", pins.diameter * (pins.depth ? 1 : 3),
                            pins.depth ? "to be struck; sawn off flush"
                                       : "for its taper and to be struck; sawn off flush");
  return pins;
}

void note_words(DoorLedger& ledger, const DoorPlan& plan) {
  ledger.note_shops_word("pin.at");
  if (!ledger.stated("pin.at").stated && plan.occurs(JointPlace::middle))
    ledger.assume("pin.at", std::string("both"), "all tenons of rails that can be pinned");
  const KeyValue& number = ledger.stated("pin.number");
  if (number.by_shop) ledger.note_shop("pin.number", number.number);
  if (!number.stated)
    ledger.assume("pin.number", std::string("by width"),
                  "one to a tenon, two where it is eight pins wide");
}

}  // namespace

void settle_pins(DoorLedger& ledger, DoorPlan& plan) {
  plan.rail_pins.resize(plan.frame.rails.size());
  if (!ledger.stated("pin").by_spec() || !ledger.clean()) return;
  const std::vector<JointPlace> places = pinned_places(ledger, plan);
  if (places.empty() || !ledger.clean()) return;
  note_words(ledger, plan);
  const PinDesign pins = settle_sizes(ledger, plan);
  for (std::size_t i = 0; i < plan.frame.rails.size(); ++i) {
    if (std::find(places.begin(), places.end(), plan.frame.place_of(i)) == places.end()) continue;
    const MortiseDesign& mortise = plan.rail_mortises[i];
    refuse_lengthwise(
        ledger, pins,
        mortise.through ? plan.frame.narrow_stile() - plan.edge.set_back() : plan.join.rail_depth);
    refuse_depth(ledger, plan, pins, mortise);
    PinDesign& its = plan.rail_pins[i] = pins;
    for (const Strip& tenon : plan.rail_tenons[i].layout.tenons) {
      const std::vector<Length> middles = middles_in(ledger, tenon, pins.diameter);
      refuse_narrow_tenon(ledger, pins, tenon, tenon_edge_radius(plan.rail_tenons[i], mortise),
                          middles, plan.frame.rails[i].name);
      its.middles.insert(its.middles.end(), middles.begin(), middles.end());
    }
  }
}

}  // namespace haunch
