#include "pin_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <cstdint>

namespace haunch {
namespace {

/// The middles of the pins across a tenon, to a size that can be marked: one, or two where each
/// half of the tenon is four pins wide (a pin up to a quarter of its tenon: shop rule).
std::vector<Length> middles_in(const Ledger& ledger, const PinKeys& keys, const Strip& tenon,
                               Length diameter, Length whole) {
  const Length width = tenon.high - tenon.low;
  const std::int64_t count = ledger.spec.count(keys.number).value_or(width >= diameter * 8 ? 2 : 1);
  std::vector<Length> middles;
  for (std::int64_t i = 1; i <= count * 2; i += 2)
    middles.push_back(nearest_multiple(tenon.low + floor_divide(width * i, count * 2), whole));
  return middles;
}

/// The holes must lie in the flat of the tenon, clear of edges that are `rounded` so far in.
void refuse_narrow_tenon(Ledger& ledger, const PinKeys& keys, const PinDesign& pins,
                         const Strip& tenon, Length rounded, const std::vector<Length>& middles,
                         const std::string& name) {
  const Length radius = floor_half(pins.diameter) + rounded;
  const bool apart = middles.size() < 2 || middles[1] - middles[0] > pins.diameter;
  if (apart && middles.front() - radius > tenon.low && middles.back() + radius < tenon.high) return;
  ledger.problem(
      {keys.number, keys.diameter, keys.pin},
      fmt::format(
          "the {}'s tenon of {}{} is too narrow for {} of {}; make it less", name,
          ledger.say(tenon.high - tenon.low),
          rounded > Length() ? fmt::format(", its edges rounded to {},", ledger.say(rounded)) : "",
          middles.size() == 1 ? "a pin" : "two pins", ledger.say(pins.diameter)));
}

/// The holes must lie in the tenon, and in the cheeks.
void refuse_lengthwise(Ledger& ledger, const PinKeys& keys, const PinDesign& pins,
                       Length tenon_depth) {
  const Length radius = floor_half(pins.diameter);
  const Length tenon_hole = pins.from_shoulder - pins.draw;
  if (tenon_hole <= radius)
    ledger.problem(
        {keys.from_shoulder, keys.offset, keys.diameter},
        fmt::format("a hole of {} with its middle {} from the shoulder comes out there; "
                    "make {} more, or the others less",
                    ledger.say(pins.diameter), ledger.say(tenon_hole), keys.from_shoulder.name()));
  else if (pins.from_shoulder + radius >= tenon_depth)
    ledger.problem({keys.from_shoulder, keys.diameter, keys.tenon_depth},
                   fmt::format("a hole of {} with its middle {} from the shoulder comes out at the "
                               "end of the tenon, {} deep; make it less",
                               ledger.say(pins.diameter), ledger.say(pins.from_shoulder),
                               ledger.say(tenon_depth)));
  if (pins.draw >= pins.diameter)
    ledger.problem({keys.offset, keys.diameter},
                   fmt::format("holes of {} that stand {} off each other are not one hole; make it "
                               "less than a third of the pin",
                               ledger.say(pins.diameter), ledger.say(pins.draw)));
}

/// A blind hole must go through the tenon into the other cheek, and no further.
void refuse_depth(Ledger& ledger, const PinKeys& keys, const PinDesign& pins,
                  const MortiseDesign& mortise, Length thickness) {
  if (!pins.depth) return;
  const Length back = mortise.twin_from_face.value_or(mortise.from_face) + mortise.width;
  if (*pins.depth >= thickness)
    ledger.problem({keys.depth, keys.thickness},
                   fmt::format("a hole of {} goes right through {}; leave it out for pins that do",
                               ledger.say(*pins.depth), ledger.say(thickness)));
  else if (*pins.depth <= back)
    ledger.problem({keys.depth, keys.mortise_from_face},
                   fmt::format("a hole of {} does not reach the cheek behind the tenon, {} from "
                               "the face side; make it more, or leave it out for pins right "
                               "through",
                               ledger.say(*pins.depth), ledger.say(back)));
}

}  // namespace

/// The draw up to a quarter of the pin (a timber craft text): 1/16 in in hardwood, 3/32 in in
/// softwood (a toolmaker's guide), about 1 mm in furniture.
PinUsual usual_pins(const DoorDefaults& defaults, bool softwood) {
  return {defaults.pin,
          defaults.house ? "3/8 in, usual in doors (shop rule)"
                         : "1/4 in, usual in cabinets (shop rule)",
          !defaults.house ? defaults.draw_in_cabinets
          : softwood      ? defaults.draw_in_softwood
                          : defaults.draw_in_hardwood,
          softwood ? "usual in softwood, at most a quarter of the pin"
                   : "usual in hardwood, at most a quarter of the pin",
          defaults.whole};
}

PinDesign settle_pin_sizes(Ledger& ledger, const PinKeys& keys, const PinUsual& usual,
                           const PinnedWood& wood) {
  PinDesign pins;
  pins.diameter = ledger.take(keys.diameter, usual.diameter, usual.why_diameter);
  const Length middle = floor_multiple(floor_half(wood.tenon_depth), usual.whole);
  const Length two = pins.diameter * 2 + wood.longer;
  const std::string where(wood.where);
  pins.from_shoulder =
      ledger.take(keys.from_shoulder, std::min(two, middle),
                  two <= middle ? "two pins" + where + " (trade practice)"
                                : "in the middle of the tenon, less than two pins" + where);
  pins.draw = ledger.take(keys.offset, std::min(usual.draw, floor_divide(pins.diameter, 4)),
                          usual.why_draw);
  if (ledger.spec.size(keys.depth)) pins.depth = ledger.take(keys.depth, Length(), {});
  pins.over = ledger.settle(keys.over, pins.diameter * (pins.depth ? 1 : 3),
                            pins.depth ? "to be struck; sawn off flush"
                                       : "for its taper and to be struck; sawn off flush");
  const KeyValue& number = ledger.stated(keys.number);
  if (number.by_shop) ledger.note_shop(keys.number, number.number);
  if (!number.stated)
    ledger.assume(keys.number, std::string("by width"),
                  "one to a tenon, two where it is eight pins wide");
  return pins;
}

PinDesign pins_across(Ledger& ledger, const PinKeys& keys, const PinUsual& usual, PinDesign pins,
                      const TenonToPin& at, Length thickness) {
  refuse_lengthwise(ledger, keys, pins, at.depth);
  refuse_depth(ledger, keys, pins, at.mortise, thickness);
  for (const Strip& tenon : at.tenon.layout.tenons) {
    const std::vector<Length> middles = middles_in(ledger, keys, tenon, pins.diameter, usual.whole);
    refuse_narrow_tenon(ledger, keys, pins, tenon, tenon_edge_radius(at.tenon, at.mortise), middles,
                        at.name);
    pins.middles.insert(pins.middles.end(), middles.begin(), middles.end());
  }
  return pins;
}

}  // namespace haunch
