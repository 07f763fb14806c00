#include <fmt/core.h>

#include <algorithm>

#include "door_plan_steps.h"

namespace haunch {
namespace {

void refuse_stubs(DoorLedger& ledger, const DoorPlan& plan) {
  for (const JointPlace place : kJointPlaces) {
    const JointWord joint = plan.join.at(place);
    if (!plan.occurs(place) || joint == JointWord::haunched || !plan.is_stub(place)) continue;
    const bool muntin = place == JointPlace::muntin;
    ledger.problem(
        {muntin ? Key("tenon.muntin_depth") : Key("tenon_depth"), "groove_depth", "joint"},
        fmt::format("a depth of {} is that of a stub in the groove, {} deep; \"{}\" "
                    "joints go deeper than that",
                    ledger.say(muntin ? plan.join.muntin_depth : plan.join.rail_depth),
                    ledger.say(plan.groove.depth), word_of(joint)));
  }
}

/// Keys that say something of a joint that the leaf does not have.
void refuse_unused(DoorLedger& ledger, const DoorPlan& plan) {
  for (const DoorJoint& joint : door_joints())
    for (const Key key : joint.keys)
      if (ledger.stated(key).by_spec() && !plan.has(joint.word))
        ledger.problem({key},
                       fmt::format("there are no such joints here; say \"joint\": \"{}\", or take "
                                   "it out",
                                   word_of(joint.word)));
  if (ledger.stated("tenon_over").by_spec() && !plan.has(&DoorJoint::through))
    ledger.problem({"tenon_over"},
                   "no tenons come out here; say \"joint\": \"through\" or \"bridle\", or take it "
                   "out");
  for (const Key key :
       std::initializer_list<Key>{"mortise.width", "mortise.from_face", "tenon.thickness"}) {
    if (ledger.stated(key).by_spec() && !plan.join.single_mortises && plan.has(JointWord::twin))
      ledger.problem({key},
                     "is of single tenons, and all here are twins; give twin.width, twin.between "
                     "or twin.from_face");
  }
}

void refuse_beside_others(DoorLedger& ledger, const DoorPlan& plan) {
  const FramePlan& frame = plan.frame;
  for (const JointPlace place : {JointPlace::corner, JointPlace::middle}) {
    if (!plan.occurs(place)) continue;
    const DoorJoint& joint = plan.joint_at(place);
    if (frame.pair && frame.pair->lap > Length() && joint.through)
      ledger.problem({"joint", "meeting_lap"},
                     fmt::format("rebated meeting stiles would halve the thickness of tenons that "
                                 "come out of them, so they have no \"{}\" joints; choose another",
                                 word_of(joint.word)));
  }
  if (ledger.clean()) refuse_beside_head(ledger, plan);
}

/// The cutter nearest to a fifth of the thickness, the larger of two as near.
Length twin_cutter(const DoorLedger& ledger, Length thickness) {
  const auto& cutters = ledger.cutters();
  const auto off = [&](Length cutter) {
    return std::max(cutter * 5 - thickness, thickness - cutter * 5);
  };
  return *std::min_element(cutters.rbegin(), cutters.rend(),
                           [&](Length a, Length b) { return off(a) < off(b); });
}

void refuse_cutter(DoorLedger& ledger, const DoorPlan& plan) {
  const JoinPlan& join = plan.join;
  const KeyValue& stated = ledger.stated("mortise.cutter");
  const bool loose_round = plan.has(JointWord::loose) && join.loose_ends != Ends::squared;
  if (join.ends == Ends::squared && !loose_round) {
    if (!stated.by_shop)
      ledger.problem({"mortise.cutter"},
                     "no ends of mortises stay round here; say \"mortise\": {\"ends\": "
                     "\"tenon-rounded\"} or \"tenon-shortened\", or take it out");
    return;
  }
  const Length narrowest =
      plan.has(JointWord::twin)
          ? (join.single_mortises ? std::min(join.twin.width, join.mortise.width) : join.twin.width)
          : join.mortise.width;
  if (*stated.size > narrowest)
    ledger.problem({"mortise.cutter", "mortise.width", "twin.width"},
                   fmt::format("a cutter of {} does not go into a mortise of {}; make it at most "
                               "that",
                               ledger.say(*stated.size), ledger.say(narrowest)));
}

}  // namespace

void settle_ends(DoorLedger& ledger, DoorPlan& plan) {
  JoinPlan& join = plan.join;
  const auto chosen = ledger.spec.word<Ends>("mortise.ends");
  join.ends = chosen.value_or(Ends::squared);
  join.loose_ends = chosen.value_or(Ends::tenon_rounded);
  join.cutter = ledger.spec.size("mortise.cutter");
  if (!chosen && plan.has(JointWord::loose))
    ledger.assume("mortise.ends", std::string("tenon-rounded"),
                  "of loose tenons: their stock is rounded to the cutter");
  if (join.has_mortises) ledger.note_shops_word("mortise.ends");
  if (join.cutter) refuse_cutter(ledger, plan);
  if (join.cutter && ledger.clean()) ledger.take("mortise.cutter", *join.cutter, {});
}

void choose_joints(DoorLedger& ledger, DoorPlan& plan) {
  // By JointPlace.
  constexpr WordKey<JointWord> kJointKeys[] = {"joint.corner", "joint.middle", "joint.muntin"};
  for (const JointPlace place : kJointPlaces) {
    const auto number = static_cast<std::size_t>(place);
    const WordKey<JointWord> key = kJointKeys[number];
    plan.join.words[number] = ledger.spec.word(key).value_or(JointWord::haunched);
    if (plan.occurs(place)) ledger.note_shops_word(key);
  }
}

void settle_joints(DoorLedger& ledger, DoorPlan& plan) {
  JoinPlan& join = plan.join;
  for (const JointPlace place : kJointPlaces)
    if (plan.has_mortises_at(place) && !plan.joint_at(place).twin) join.single_mortises = true;
  refuse_stubs(ledger, plan);
  refuse_unused(ledger, plan);
  refuse_beside_others(ledger, plan);
}

void settle_twins(DoorLedger& ledger, DoorPlan& plan) {
  if (!plan.has(JointWord::twin)) return;
  const Length thickness = plan.frame.thickness;
  TwinPlan& twin = plan.join.twin;
  // Between the mouldings, where there are any.
  const Length front = plan.edge.depth;
  const Length back = plan.edge.moulded_back() ? front : Length();
  const Length room = thickness - front - back;
  twin.width = ledger.take("twin.width", twin_cutter(ledger, room),
                           front > Length() ? "the cutter nearest to a fifth of what the moulding "
                                              "leaves of the thickness"
                                            : "the cutter nearest to a fifth of the thickness");
  twin.between = ledger.take("twin.between", twin.width, "as much as each of the two is wide");
  const Length both = twin.width * 2 + twin.between;
  const Length middle = std::max(floor_half(thickness - both), Length());
  const Length clear =
      front + std::clamp(floor_half(room - both), Length(), ledger.defaults.loose_wall);
  const bool beside = front > Length() && middle < clear;
  twin.from_face = ledger.take("twin.from_face", beside ? clear : middle,
                               beside ? "as near to the middle as leaves wood behind the moulding"
                                      : "in the middle of the thickness");
  if (twin.from_face + both > thickness)
    ledger.problem({"twin.width", "twin.between", "twin.from_face", "joint", "thickness"},
                   fmt::format("two tenons of {} with {} between them, {} from the face side, do "
                               "not lie within the thickness of {}; make them less, or the stock "
                               "thicker",
                               ledger.say(twin.width), ledger.say(twin.between),
                               ledger.say(twin.from_face), ledger.say(thickness)));
  if (plan.join.fit_allowance >= twin.width)
    ledger.problem(
        {"fit_allowance", "twin.width"},
        fmt::format("a fit allowance of {} leaves nothing of a tenon in a mortise of {}; "
                    "make it less than that",
                    ledger.say(plan.join.fit_allowance), ledger.say(twin.width)));
}

void settle_loose_tenons(DoorLedger& ledger, DoorPlan& plan) {
  if (!plan.has(JointWord::loose)) return;
  plan.join.loose_wall = ledger.take("loose_tenon.wall", ledger.defaults.loose_wall,
                                     "so that the groove does not break into the mortise");
}

void settle_over(DoorLedger& ledger, DoorPlan& plan) {
  if (plan.has(&DoorJoint::through))
    plan.join.over = ledger.take("tenon_over", ledger.defaults.tenon_over,
                                 "at each end that comes out, planed off after glue-up");
}

/// Three quarters of the tenon (a joint manual), but not into what is worked along the edge, where
/// panels and beads stand.
Length usual_wedge(const DoorLedger& ledger, const DoorPlan& plan, Length stile) {
  return std::min(nearest_multiple(floor_divide(stile * 3, 4), ledger.defaults.whole),
                  floor_multiple(stile - std::max(plan.deepest_edge(), plan.edge.width),
                                 ledger.defaults.whole));
}

/// About 3 mm at the thick end (a joint manual).
void settle_wedges(DoorLedger& ledger, DoorPlan& plan) {
  if (!plan.has(&DoorJoint::wedged)) return;
  const Length thickness = ledger.take("wedge.thickness", ledger.defaults.wedge_thickness,
                                       "at the thick end (a joint manual)");
  if (thickness == Length()) return;
  const Length stile = std::min(plan.frame.stile_left, plan.frame.stile_right);
  const Length length = ledger.take("wedge.length", usual_wedge(ledger, plan, stile),
                                    "three quarters of the tenon (a joint manual), at most to the "
                                    "groove or rebate");
  const Length edge = plan.join.mortise.edge_clearance;
  if (thickness <= edge)
    ledger.problem({"wedge.thickness", "tenon.edge_clearance"},
                   fmt::format("a wedge of {} is no thicker than the play at a tenon's edge, {}; "
                               "make it thicker, or 0 for none",
                               ledger.say(thickness), ledger.say(edge)));
  if (length >= stile)
    ledger.problem({"wedge.length", "stile_width"},
                   fmt::format("a wedge of {} is longer than the stile is wide, {}; make it less",
                               ledger.say(length), ledger.say(stile)));
  const Length rebate = plan.frame.widest_rebate();
  if (rebate > Length() && length < rebate * 2)
    ledger.problem({"wedge.length", "lap", "meeting_lap"},
                   fmt::format("of a wedge of {} the rebate round the leaf, {} wide, leaves less "
                               "than half; make the wedge longer",
                               ledger.say(length), ledger.say(rebate)));
  plan.join.flare = Flare{length, thickness - edge};
}

}  // namespace haunch
