#include "frame_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "door_defaults.h"
#include "frame_plan_steps.h"
#include "ledger.h"
#include "pin_plan.h"
#include "species.h"

namespace haunch {
namespace {

constexpr std::string_view kUsualLining = "usual for a lining";
constexpr std::string_view kUsualFrame = "usual for a rebated frame";
constexpr std::string_view kUsualJoint = "usual for such a joint";

std::string_view usual(const CasePlan& plan) {
  return plan.stop.kind == StopKind::rebate ? kUsualFrame : kUsualLining;
}

bool has_tenons(const CasePlan& plan) {
  return plan.head_joint == HeadJoint::tenoned || plan.sill;
}

bool has_housings(const CasePlan& plan) {
  return plan.head_joint != HeadJoint::tenoned;
}

// ---- what kind of frame

void settle_stop_kind(Ledger& ledger, CasePlan& plan) {
  const bool outside = ledger.spec.says("frame.exterior");
  plan.stop.kind =
      ledger.choose<StopKind>("frame.stop.kind", outside ? StopKind::rebate : StopKind::planted,
                              outside ? "usual for an outside frame" : kUsualLining);
}

// ---- sections

Length usual_jamb(const Ledger& ledger, const CasePlan& plan) {
  return plan.stop.kind == StopKind::rebate ? ledger.pick(57'000, 9, 4) : ledger.pick(25'000, 3, 4);
}

/// A usual board, or where a rule has no room for it the thickest that goes in.
Length within(const Ledger& ledger, Length usual_board, Length room) {
  if (usual_board <= room) return usual_board;
  const Length most = board_within(ledger, room);
  return most > Length() ? most : usual_board;
}

/// Jambs and head are of one thickness where they can be.
Length ruled_jamb(const Ledger& ledger, Length usual_board, const RuledRoom& ruled) {
  const bool head_stated = ledger.stated("frame.head_thickness").stated;
  const Length both = head_stated ? ruled.side : std::min(ruled.side, ruled.top);
  const bool goes = board_within(ledger, both) > Length();
  return within(ledger, usual_board, goes ? both : ruled.side);
}

void settle_sections(Ledger& ledger, CasePlan& plan, const std::optional<RuledRoom>& ruled) {
  const bool rebate = plan.stop.kind == StopKind::rebate;
  plan.jamb_width =
      ledger.take("frame.jamb_width",
                  rebate ? ledger.pick(94'000, 15, 4) : ledger.pick(115'000, 73, 16), usual(plan));
  const std::string left = ruled ? fmt::format("what {} leaves room for", ruled->rule->name) : "";
  Length jambs = usual_jamb(ledger, plan);
  if (ruled) jambs = ruled_jamb(ledger, jambs, *ruled);
  plan.jamb_thickness = ledger.take("frame.jamb_thickness", jambs,
                                    jambs == usual_jamb(ledger, plan) ? usual(plan) : left);
  const Length head = ruled ? within(ledger, plan.jamb_thickness, ruled->top) : plan.jamb_thickness;
  plan.head_thickness =
      ledger.take("frame.head_thickness", head,
                  head == plan.jamb_thickness ? "as thick as the jambs" : std::string_view(left));
}

void settle_stop(Ledger& ledger, CasePlan& plan) {
  StopPlan& stop = plan.stop;
  stop.depth = ledger.take("frame.stop.depth", ledger.pick(12'000, 1, 2), usual(plan));
  if (stop.kind == StopKind::planted)
    stop.width = ledger.take("frame.stop.width", ledger.pick(32'000, 5, 4), usual(plan));
  stop.gap =
      ledger.take("frame.stop.gap", ledger.pick(1'500, 1, 16), "so that the leaf shuts freely");
  stop.reveal = ledger.take("frame.reveal", Length(), "the leaf is flush with the frame's face");
  if (stop.rebate() >= std::min(plan.jamb_thickness, plan.head_thickness))
    ledger.problem({"frame.stop.depth"},
                   fmt::format("a rebate of {} leaves nothing of jambs and head of {} and {}; make "
                               "it less",
                               ledger.say(stop.depth), ledger.say(plan.jamb_thickness),
                               ledger.say(plan.head_thickness)));
}

/// What stands between the jambs beside the head.
void settle_crosspieces(Ledger& ledger, CasePlan& plan) {
  if (ledger.spec.size("frame.threshold.height") && ledger.spec.size("frame.sill.height"))
    ledger.problem({"frame.threshold.height"}, "a frame has a threshold or a sill, not both");
  if (ledger.spec.size("frame.threshold.height"))
    plan.threshold = ledger.take("frame.threshold.height", {}, {});
  if (ledger.spec.size("frame.sill.height")) plan.sill = ledger.take("frame.sill.height", {}, {});
  const auto light = ledger.spec.size("frame.transom.light");
  const auto thickness = ledger.spec.size("frame.transom.thickness");
  if (thickness && !ledger.stated("frame.transom.thickness").by_shop && !light)
    ledger.problem({"frame.transom.thickness"},
                   "the light above the transom is missing; give \"transom\": {\"light\": …}, the "
                   "clear height from the transom to the head");
  if (!light) return;
  plan.transom = TransomPlan{
      ledger.take("frame.transom.thickness", plan.head_thickness, "as thick as the head"), *light};
}

// ---- joints

void settle_housings(Ledger& ledger, CasePlan& plan) {
  const Length usual_depth = std::max(ledger.pick(10'000, 3, 8), plan.stop.rebate());
  plan.housing_depth =
      ledger.take("frame.housing_depth", usual_depth,
                  plan.stop.rebate() == usual_depth ? "as deep as the rebate" : kUsualJoint);
  if (plan.housing_depth >= plan.jamb_thickness)
    ledger.problem({"frame.housing_depth", "frame.jamb_thickness"},
                   fmt::format("{} is not less than the jamb's thickness of {}; leave wood behind",
                               ledger.say(plan.housing_depth), ledger.say(plan.jamb_thickness)));
}

void settle_horn(Ledger& ledger, CasePlan& plan) {
  if (plan.head_joint == HeadJoint::housed)
    plan.horn = ledger.take("frame.horn", ledger.pick(12'000, 1, 2),
                            "so that the wood above the housing holds");
  if (plan.head_joint == HeadJoint::tenoned)
    plan.horn = ledger.take("frame.horn", ledger.pick(50'000, 2, 1),
                            "for sawing off once the frame is glued, or building in");
}

/// The least of the thicknesses that tenons go into.
Length thinnest_receiver(const CasePlan& plan) {
  std::vector<Length> receivers;
  if (plan.head_joint == HeadJoint::tenoned) receivers.push_back(plan.head_thickness);
  if (plan.sill) receivers.push_back(*plan.sill);
  if (plan.transom && plan.head_joint == HeadJoint::tenoned)
    receivers.push_back(plan.jamb_thickness);
  return *std::min_element(receivers.begin(), receivers.end());
}

void settle_tenons(Ledger& ledger, CasePlan& plan) {
  FrameTenon& tenon = plan.tenon;
  const Length whole = ledger.pick(1'000, 1, 16);
  // From a quarter to a third of the jamb, so that a third of the tenon's depth is more than it.
  const Length usual_width =
      std::max(nearest_multiple(floor_divide(plan.jamb_thickness * 28, 100), whole), whole);
  MortiseDesign& mortise = tenon.mortise;
  mortise.width = ledger.take("frame.mortise.width", usual_width, "0.28 of the jamb's thickness");
  tenon.thickness = mortise.width - plan.fit_allowance;
  mortise.edge_clearance =
      ledger.take("frame.tenon.edge_clearance", ledger.pick(400, 1, 64), kUsualJoint);
  mortise.bottom_clearance =
      ledger.take("frame.tenon.bottom_clearance", ledger.pick(2'000, 1, 16), kUsualJoint);
  const Length behind = std::max(Length::from_mm(5), ledger.pick(5'000, 3, 16));
  tenon.depth = ledger.take(
      "frame.tenon.depth",
      std::max(floor_multiple(thinnest_receiver(plan) - behind - mortise.bottom_clearance, whole),
               whole),
      "as deep as leaves 5 mm, 3/16 in, behind the mortise");
  tenon.relish =
      ledger.take("frame.tenon.relish",
                  std::max(nearest_multiple(floor_divide(plan.jamb_thickness, 3), whole),
                           ledger.pick(12'000, 1, 2)),
                  "a third of the jamb, so that the head's end holds once its horn is off");
}

void doubt_tenons(Ledger& ledger, const CasePlan& plan) {
  const FrameTenon& tenon = plan.tenon;
  if (tenon.thickness <= Length())
    ledger.problem(
        {"frame.fit_allowance", "frame.mortise.width"},
        fmt::format("takes all of a mortise of {}; make it less", ledger.say(tenon.mortise.width)));
  if (tenon.depth + tenon.mortise.bottom_clearance >= thinnest_receiver(plan))
    ledger.problem({"frame.tenon.depth", "frame.head_thickness"},
                   fmt::format("tenons of {} and {} below them come out of {}; make them shorter",
                               ledger.say(tenon.depth), ledger.say(tenon.mortise.bottom_clearance),
                               ledger.say(thinnest_receiver(plan))));
}

/// Where the mortises stand in the jamb's width. Behind the rebate the tenons lose nothing of their
/// width to it; a third of wood, a third of tenon, a third of wood is what they want there.
void place_tenons(Ledger& ledger, CasePlan& plan) {
  FrameTenon& tenon = plan.tenon;
  const Length width = tenon.mortise.width;
  const Length line = plan.stop_from_face();
  const bool behind =
      plan.stop.kind == StopKind::rebate && line >= width && plan.jamb_width - line >= width * 2;
  tenon.mortise.from_face =
      ledger.take("frame.mortise.from_face", behind ? line : floor_half(plan.jamb_width - width),
                  behind ? "at the rebate's line, so that the tenons lose nothing to the rebate"
                         : "in the middle of the jamb's width");
  tenon.from_face = tenon.mortise.from_face + floor_half(plan.fit_allowance);
}

constexpr PinKeys kPinKeys{"frame.pin",
                           "frame.pin.number",
                           "frame.pin.diameter",
                           "frame.pin.from_shoulder",
                           "frame.pin.offset",
                           "frame.pin.depth",
                           "frame.pin.over",
                           "frame.tenon.depth",
                           "frame.mortise.from_face",
                           "frame.jamb_width"};

/// Pins are usually as thick as a leaf's; a tenon wants to be four of them wide.
PinUsual usual_frame_pins(const Ledger& ledger, const CasePlan& plan) {
  const auto species = find_species(species_of(ledger.spec).of(Role::jamb));
  PinUsual usual =
      usual_pins(door_defaults(ledger.unit, Use::house), species && species->group == "softwood");
  const Strip tenon = plan.jamb_strip();
  if (tenon.high - tenon.low >= usual.diameter * 4) return usual;
  usual.diameter = door_defaults(ledger.unit, Use::cabinet).pin;
  usual.why_diameter = "1/4 in, so that the tenon is four pins wide (shop rule)";
  return usual;
}

/// Through the tenons of the jambs, and of a transom.
void settle_frame_pins(Ledger& ledger, CasePlan& plan) {
  if (!ledger.stated("frame.pin").by_spec()) return;
  if (!has_tenons(plan))
    return ledger.problem({"frame.pin"},
                          "has no part in this frame: it has no tenons; take it out, or write "
                          "\"head_joint\": \"tenoned\"");
  FrameTenon& tenon = plan.tenon;
  const PinUsual usual = usual_frame_pins(ledger, plan);
  const Length longer = plan.stop.rebate();
  const PinDesign pins =
      settle_pin_sizes(ledger, kPinKeys, usual,
                       {plan.jamb_width, tenon.depth, longer,
                        longer > Length() ? " from the shoulder that stands on past it" : ""});
  const auto across = [&](const Strip& strip, const char* name) {
    TenonDesign design;
    design.layout.tenons = {strip};
    return pins_across(ledger, kPinKeys, usual, pins, {design, tenon.mortise, tenon.depth, name},
                       plan.jamb_width);
  };
  tenon.jamb_pins = across(plan.jamb_strip(), "jamb");
  if (plan.transom && plan.head_joint == HeadJoint::tenoned)
    tenon.transom_pins = across(plan.transom_strip(), "transom");
}

void doubt_places(Ledger& ledger, const CasePlan& plan) {
  const FrameTenon& tenon = plan.tenon;
  // Nothing of a tenon within the rebate, and no shoulder before one behind it.
  if (plan.jamb_thickness - plan.stop.rebate() - tenon.relish <= Length())
    ledger.problem(
        {"frame.tenon.relish", "frame.jamb_thickness"},
        fmt::format("of a jamb of {}, {} of rebate and {} of relish leave no {}",
                    ledger.say(plan.jamb_thickness), ledger.say(plan.stop.rebate()),
                    ledger.say(tenon.relish),
                    plan.tenon_loss() > Length() ? "tenon" : "shoulder before the tenon"));
  if (tenon.mortise.from_face + tenon.mortise.width >= plan.jamb_width)
    ledger.problem({"frame.mortise.from_face", "frame.mortise.width"},
                   fmt::format("mortises from {} to {} leave nothing behind them in a width of {}",
                               ledger.say(tenon.mortise.from_face),
                               ledger.say(tenon.mortise.from_face + tenon.mortise.width),
                               ledger.say(plan.jamb_width)));
}

/// Keys that say nothing of a frame of this kind, when the spec states them all the same.
void refuse_idle_keys(Ledger& ledger, const CasePlan& plan) {
  const auto refuse = [&](Key key, bool idle, std::string_view why) {
    if (idle && ledger.stated(key).by_spec())
      ledger.problem({key}, fmt::format("has no part in this frame: {}; take it out", why));
  };
  const bool no_tenons = !has_tenons(plan);
  refuse("frame.stop.width", plan.stop.kind == StopKind::rebate,
         "its stops are worked from the solid");
  refuse("frame.housing_depth", !has_housings(plan), "its head is not housed");
  refuse("frame.horn", plan.head_joint == HeadJoint::rebated, "a rebated head has no horns");
  for (const Key key : std::initializer_list<Key>{
           "frame.tenon.depth", "frame.tenon.relish", "frame.tenon.edge_clearance",
           "frame.tenon.bottom_clearance", "frame.mortise.width", "frame.mortise.from_face"})
    refuse(key, no_tenons, "it has no tenons");
}

// ---- rules that fix the whole

/// The room that a rule leaves for jambs and head: found by settling all else, in a book that is
/// thrown away.
std::optional<RuledRoom> rehearse(Ledger ledger, CasePlan plan) {
  settle_sections(ledger, plan, {});
  settle_stop(ledger, plan);
  settle_crosspieces(ledger, plan);
  settle_horn(ledger, plan);
  return ruled_room(ledger, plan);
}

/// A lining's head is housed below horns, but where a rule leaves no room for them.
HeadJoint usual_head_joint(const Ledger& ledger, CasePlan plan) {
  if (plan.stop.kind == StopKind::rebate) return HeadJoint::tenoned;
  if (ledger.stated("frame.horn").by_spec()) return HeadJoint::housed;
  plan.head_joint = HeadJoint::housed;
  const auto ruled = rehearse(ledger, plan);
  if (!ruled) return HeadJoint::housed;
  const Length jambs = within(ledger, usual_jamb(ledger, plan), ruled->side);
  return jambs <= ruled->top ? HeadJoint::housed : HeadJoint::rebated;
}

void settle_head_joint(Ledger& ledger, CasePlan& plan) {
  const HeadJoint joint = usual_head_joint(ledger, plan);
  plan.head_joint = ledger.choose<HeadJoint>(
      "frame.head_joint", joint,
      joint == HeadJoint::rebated ? "the rule leaves no room for horns above a head" : usual(plan));
}

// ---- what must hold of the whole

/// The lip of a rebated leaf lies on the face; what is left behind it goes into the frame.
void settle_lip(Ledger& ledger, CasePlan& plan, const DoorDefaults& usual_leaf) {
  if (plan.lip.across() + plan.lip.head == Length()) {
    if (ledger.spec.size("frame.leaf.lip_thickness"))
      ledger.problem(
          {"frame.leaf.lip_thickness"},
          "this leaf has no lip; give \"lip\", how far it laps its frame, or take it out");
    return;
  }
  const Length thickness = plan.leaf_thickness;
  const Length lip =
      ledger.take("frame.leaf.lip_thickness", usual_lip(thickness, usual_leaf),
                  usual_leaf.house ? "three eighths of the thickness" : "half the thickness");
  if (lip >= thickness)
    ledger.problem({"frame.leaf.lip_thickness", "frame.leaf.thickness"},
                   fmt::format("a lip of {} leaves no rebate in a leaf {} thick; make it less",
                               ledger.say(lip), ledger.say(thickness)));
  if (plan.stop.reveal > Length())
    ledger.problem({"frame.reveal"},
                   "the lip of a rebated leaf lies on the frame's face; take it out");
  plan.leaf_thickness = thickness - lip;
}

void settle_leaf(Ledger& ledger, CasePlan& plan, const std::optional<HungLeaves>& hung) {
  if (hung) {
    plan.leaf_thickness = hung->thickness;
    plan.leaves = hung->count;
    return;
  }
  const DoorDefaults usual_leaf = door_defaults(
      ledger.unit, ledger.spec.word<Use>("use").value_or(usual_use(plan.leaf_room_height())));
  plan.leaf_thickness =
      ledger.take("frame.leaf.thickness", usual_leaf.thickness,
                  usual_leaf.house ? "usual for a house door" : "usual for a cabinet door");
  settle_lip(ledger, plan, usual_leaf);
}

void doubt_whole(Ledger& ledger, const CasePlan& plan) {
  const Length stop = plan.stop_from_face();
  const Length back = stop + plan.stop.width;
  if (plan.stop.kind == StopKind::planted ? back > plan.jamb_width : stop >= plan.jamb_width)
    ledger.problem({"frame.jamb_width", "frame.stop.width", "frame.leaf.thickness", "frame.reveal",
                    "frame.stop.gap"},
                   fmt::format("a leaf of {}, {} of reveal and {} of play set the stop {} behind "
                               "the face, and it ends at {}: more than the jamb's {}",
                               ledger.say(plan.leaf_thickness), ledger.say(plan.stop.reveal),
                               ledger.say(plan.stop.gap), ledger.say(stop), ledger.say(back),
                               ledger.say(plan.jamb_width)));
  if (plan.sight_width() - plan.stop.planted() * 2 <= Length())
    ledger.problem(
        {"frame.jamb_thickness", "frame.frame.width"},
        fmt::format("jambs and stops take all of the frame's width of {}", ledger.say(plan.width)));
  if (plan.lintel_low() - plan.base() - plan.stop.planted() <= Length())
    ledger.problem({"frame.head_thickness", "frame.frame.height"},
                   fmt::format("nothing is left to go through in the frame's height of {}",
                               ledger.say(plan.height)));
}

void settle(Ledger& ledger, CasePlan& plan, const std::optional<HungLeaves>& hung) {
  ledger.note_names();
  settle_stop_kind(ledger, plan);
  settle_head_joint(ledger, plan);
  settle_sections(ledger, plan, rehearse(ledger, plan));
  settle_stop(ledger, plan);
  settle_crosspieces(ledger, plan);
  plan.fit_allowance =
      ledger.take("frame.fit_allowance", ledger.pick(150, 60, 10'000), kUsualJoint);
  if (has_housings(plan)) settle_housings(ledger, plan);
  settle_horn(ledger, plan);
  refuse_idle_keys(ledger, plan);
  if (ledger.clean() && has_tenons(plan)) {
    settle_tenons(ledger, plan);
    doubt_tenons(ledger, plan);
  }
  if (!ledger.clean()) return;
  settle_sizes(ledger, plan);
  if (!ledger.clean()) return;
  settle_leaf(ledger, plan, hung);
  if (has_tenons(plan)) {
    place_tenons(ledger, plan);
    doubt_places(ledger, plan);
  }
  if (ledger.clean()) settle_frame_pins(ledger, plan);
  doubt_whole(ledger, plan);
}

std::vector<NamedRoom> rooms_of(const CasePlan& plan) {
  const Length planted = plan.stop.planted();
  const Length lips = plan.lip.across() + plan.lip.head;
  std::vector<NamedRoom> rooms{
      {"wall opening", plan.wall_width, plan.wall_height},
      {"frame", plan.width, plan.height},
      {"room for the leaf", plan.leaf_room_width(), plan.leaf_room_height()},
      {"leaf", plan.leaf_width, plan.leaf_height}};
  // A leaf is larger over its lips than its room: what of it stands there is told too.
  if (lips > Length())
    rooms.push_back({"leaf in the frame", plan.leaf_width - plan.lip.across(),
                     plan.leaf_height - plan.lip.head});
  rooms.push_back({"clear between stops", plan.sight_width() - planted * 2,
                   plan.lintel_low() - plan.base() - planted});
  return rooms;
}

}  // namespace

Length CasePlan::lintel_low() const {
  return transom ? head_low() - transom->light - transom->thickness : head_low();
}

Triple CasePlan::leaf_place() const {
  return {jamb_thickness - stop.rebate() + clearance.left - lip.left, base() + clearance.foot,
          stop.reveal};
}

PlannedCase plan_frame(const Spec& spec, std::string_view root, std::optional<HungLeaves> hung) {
  Ledger ledger(spec, root);
  PlannedCase planned;
  settle(ledger, planned.plan, hung);
  planned.take(ledger);
  if (!planned.problems.empty()) return planned;
  planned.rooms = rooms_of(planned.plan);
  planned.rooms.push_back(clear_room(spec, planned.plan, ledger.unit));
  planned.cautions = frame_cautions(spec, planned.plan, ledger.unit);
  return planned;
}

Length stated_height(const Spec& spec) {
  for (const SizeKey key : std::initializer_list<SizeKey>{
           "frame.leaf.height", "frame.wall_opening.height", "frame.frame.height"})
    if (const auto height = spec.size(key)) return *height;
  return {};
}

}  // namespace haunch
