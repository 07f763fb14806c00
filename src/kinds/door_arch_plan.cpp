#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "door_plan_steps.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr int kMostChords = 400;

ArchAt place_of_arch(const DoorLedger& ledger) {
  return ledger.spec.word<ArchAt>("arch.at").value_or(ArchAt::underside);
}

/// The rise that the spec says, or that its shape makes.
Length rise_of(DoorLedger& ledger, const Arch& arch) {
  const KeyValue& stated = ledger.stated("arch.rise");
  const ArchShape shape = ledger.spec.word<ArchShape>("arch.shape").value_or(ArchShape::segmental);
  if (shape == ArchShape::semicircular) {
    if (stated.by_spec())
      ledger.problem({"arch.rise"},
                     "a semicircle rises by half its span; take it out, or the shape");
    return floor_half(arch.span);
  }
  if (!stated.size)
    ledger.problem(
        {ledger.stated("arch.at").stated ? Key("arch.at") : Key("arch.tolerance"), "arch.rise"},
        "the arch's \"rise\" is missing; give \"arch\": {\"rise\": …}, or {\"shape\": "
        "\"semicircular\"}");
  return ledger.take("arch.rise", Length::from_steps(1), "");
}

/// Rise and tolerance of an arch whose span is known.
void settle_curve(DoorLedger& ledger, Arch& arch) {
  arch.rise = rise_of(ledger, arch);
  arch.tolerance =
      ledger.take("arch.tolerance", ledger.defaults.arch_tolerance, "closer than a saw follows");
  if (arch.rise > floor_half(arch.span))
    ledger.problem({"arch.rise"},
                   fmt::format("{} is more than half the span of {}; make it at most {}",
                               ledger.say(arch.rise), ledger.say(arch.span),
                               ledger.say(floor_half(arch.span))));
  else if (chords_of(arch) > kMostChords)
    ledger.problem({"arch.tolerance", "arch.rise"},
                   fmt::format("makes {} chords of the arch; the most is {}: make it more",
                               chords_of(arch), kMostChords));
}

/// Leaves that cannot have an arched top.
void refuse_leaf_of_head(DoorLedger& ledger, const FramePlan& frame) {
  const std::string otherwise = "; say \"underside\", or ";
  if (frame.pair)
    ledger.problem({"arch.at"},
                   "the leaves of a pair have straight tops" + otherwise + "have one leaf");
  else if (frame.opening.meets != Meets::inset)
    ledger.problem({"arch.at"}, "a leaf that laps over its opening has a straight top" + otherwise +
                                    "let it stand in it");
  else if (frame.opening.room.left != frame.opening.room.right)
    ledger.problem(
        {"clearance.left", "clearance", "arch.at"},
        fmt::format("{} left and {} right put the leaf beside the middle of its arched "
                    "opening; make them alike",
                    ledger.say(frame.opening.room.left), ledger.say(frame.opening.room.right)));
}

/// The leaf's top, from that of its opening.
void settle_head(DoorLedger& ledger, FramePlan& frame) {
  ArchedHead head;
  head.clearance = frame.opening.room.head;
  head.width = frame.width;
  head.left_sight = frame.stile_left;
  head.right_sight = frame.width - frame.stile_right;
  Arch& opening = head.opening;
  opening.left = -frame.opening.room.left;
  opening.span = frame.opening.width;
  settle_curve(ledger, opening);
  if (!ledger.clean()) return;
  opening.springing = frame.height + head.clearance - opening.rise;
  const Length whole = ledger.defaults.whole;
  const auto up = [&](Length length) {
    return std::min(-floor_multiple(-length, whole), frame.height);
  };
  if (head.radius() * 2 < frame.width)
    ledger.problem({"clearance.head", "clearance", "arch.rise", "arch.shape"},
                   fmt::format("a head clearance of {} leaves the leaf a radius of {}, less than "
                               "half its width of {}; make it at most what is left at the sides",
                               ledger.say(head.clearance), ledger.say(head.radius()),
                               ledger.say(frame.width)));
  head.left_length = up(head.height_at(head.left_sight));
  head.right_length = up(head.height_at(head.right_sight));
  head.edge = floor_multiple(head.lowest(Length(), frame.width), whole);
  if (head.edge <= Length())
    ledger.problem(
        {"arch.rise", "arch.shape", "opening.height"},
        fmt::format("an arch that rises {} over {} leaves a leaf of {} no edges; make "
                    "it less",
                    ledger.say(opening.rise), ledger.say(opening.span), ledger.say(frame.height)));
  frame.head = head;
}

/// The underside that runs as far below the leaf's top everywhere, from stile to stile.
void settle_even_rail(DoorLedger& ledger, FramePlan& frame, Length crown_width) {
  const ArchedHead& head = *frame.head;
  if (frame.stile_left != frame.stile_right) {
    ledger.problem(
        {"stile_width.left", "stile_width", "arch.at"},
        "an even rail runs between stiles of one width; make them alike, or say \"top\"");
    return;
  }
  Arch arch;
  arch.left = head.left_sight;
  arch.span = head.right_sight - head.left_sight;
  arch.tolerance = head.opening.tolerance;
  const auto in_steps = [](Length length) { return static_cast<double>(length.steps()); };
  const double half = in_steps(arch.span) / 2;
  arch.struck = head.radius() - crown_width;
  const double radius = in_steps(arch.struck);
  if (radius < half) {
    ledger.problem({{"rail_widths", 0}, "arch.rise", "arch.shape"},
                   fmt::format("an even rail of {} under a radius of {} does not reach from stile "
                               "to stile; make it at most {}",
                               ledger.say(crown_width), ledger.say(head.radius()),
                               ledger.say(head.radius() - floor_half(arch.span))));
    return;
  }
  arch.rise = nearest_step(radius - std::sqrt(radius * radius - half * half));
  arch.below = -floor_multiple(-arch.rise, ledger.defaults.whole) - arch.rise;
  frame.arch = arch;
}

/// A shop says how arches are made, but for their rise not that there are any.
bool asks_for_arch(const DoorLedger& ledger) {
  const Spec& spec = ledger.spec;
  return ledger.stated("arch.rise").size || ledger.stated("arch.tolerance").by_spec() ||
         spec["arch.shape"].by_spec() || spec["arch.at"].by_spec();
}

}  // namespace

void settle_arch(DoorLedger& ledger, FramePlan& frame, Length crown_width) {
  if (!asks_for_arch(ledger)) return;
  if (place_of_arch(ledger) != ArchAt::underside) {
    refuse_leaf_of_head(ledger, frame);
    if (ledger.clean()) settle_head(ledger, frame);
    if (ledger.clean() && place_of_arch(ledger) == ArchAt::both)
      settle_even_rail(ledger, frame, crown_width);
    return;
  }
  Arch arch;
  arch.left = frame.stile_left;
  arch.span = frame.width - frame.stile_left - frame.stile_right;
  settle_curve(ledger, arch);
  frame.arch = arch;
}

void demand_wood_under_head(DoorLedger& ledger, const FramePlan& frame) {
  if (!frame.head) return;
  const RailPlan& rail = frame.rails.front();
  const Length lowest = frame.head->lowest(frame.head->left_sight, frame.head->right_sight);
  if (lowest > rail.low) return;
  ledger.problem({{"rail_widths", 0}, "arch.rise", "arch.shape"},
                 fmt::format("the curve of the top is {} below its crown at the stiles, and leaves "
                             "nothing there of the {}, {} wide; make it wider, or the rise less",
                             ledger.say(frame.height - lowest), rail.name, ledger.say(rail.width)));
}

Length head_over_tenons(const DoorLedger& ledger, const DoorPlan& plan) {
  const FramePlan& frame = plan.frame;
  if (!frame.head) return {};
  const bool through = plan.joint_at(JointPlace::corner).wedged;
  const Length depth = plan.join.rail_depth + plan.join.mortise.bottom_clearance;
  const Length left = through ? Length() : frame.stile_left - depth;
  const Length right = through ? frame.width : frame.width - frame.stile_right + depth;
  return -floor_multiple(frame.head->lowest_wood(left, right) - frame.height,
                         ledger.defaults.whole);
}

void refuse_beside_head(DoorLedger& ledger, const DoorPlan& plan) {
  if (!plan.frame.head) return;
  const DoorJoint& corner = plan.joint_at(JointPlace::corner);
  if (!corner.tenons || corner.open_end)
    ledger.problem({"joint", "arch.at"},
                   fmt::format("under an arched top the ends of the top rail are tenons in "
                               "mortises, not \"{}\"; choose another joint for the corners",
                               word_of(corner.word)));
  else if (plan.join.rail_stub)
    ledger.problem({"tenon_depth", "groove_depth", "arch.at"},
                   fmt::format("a depth of {} is that of a stub in the groove, {} deep, which does "
                               "not hold an arched top; make tenon_depth more",
                               ledger.say(plan.join.rail_depth), ledger.say(plan.groove.depth)));
}

void demand_one_panel_under_arch(DoorLedger& ledger, const FramePlan& frame) {
  if (frame.arch && frame.tiers.front().has_muntins())
    ledger.problem({"panels", "arch.rise"},
                   "an arch goes over one panel; have one in the top tier, or take the arch out");
}

Length groove_at_shoulder(const DoorPlan& plan) {
  if (!plan.frame.arch) return plan.groove.depth;
  const Arch& arch = *plan.frame.arch;
  return arch.height_at(plan.groove.depth, arch.left) - arch.springing + arch.below;
}

void demand_flat_panel_under_arch(DoorLedger& ledger, const DoorPlan& plan) {
  if (plan.frame.arch && plan.panels.front().raise)
    ledger.problem({"panel.raised", "arch.rise"},
                   "a raised panel under an arch is not set out; take one of the two out");
}

}  // namespace haunch
