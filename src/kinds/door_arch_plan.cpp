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

/// How far the leaf, or a pair of them, stands out over its opening at a side; less than nothing
/// where it stands in it.
Length beyond_opening(const Fit& opening, Length room, Length lap) {
  return opening.meets == Meets::inset ? -room : lap;
}

/// A leaf beside the middle of its opening would have a top that is not alike at both ends.
void demand_middle(DoorLedger& ledger, const Fit& opening, Length left, Length right) {
  if (left == right) return;
  const bool laps = opening.meets != Meets::inset;
  ledger.problem({laps ? Key("lap.left") : Key("clearance.left"),
                  laps ? Key("lap") : Key("clearance"), "arch.at"},
                 fmt::format("{} left and {} right put the leaf beside the middle of its arched "
                             "opening; make them alike",
                             ledger.say(laps ? opening.lap.left : opening.room.left),
                             ledger.say(laps ? opening.lap.right : opening.room.right)));
}

/// The arch over the opening, in the axes of the leaf.
void place_opening(const FramePlan& frame, ArchedHead& head) {
  const Fit& fit = frame.opening;
  Arch& opening = head.opening;
  opening.left = beyond_opening(fit, fit.room.left, fit.lap.left);
  opening.span = fit.width;
  if (frame.pair && frame.pair->is_right) opening.left -= frame.pair->width - frame.width;
  head.outward = beyond_opening(fit, fit.room.head, fit.lap.head);
  if (fit.meets != Meets::rebate) return;
  head.lip = frame.lip.head;
  head.body_left = frame.lip.left;
  head.body_right = frame.width - frame.lip.right;
}

/// The leaf's top, from that of its opening.
void settle_head(DoorLedger& ledger, FramePlan& frame) {
  const Fit& fit = frame.opening;
  demand_middle(ledger, fit, beyond_opening(fit, fit.room.left, fit.lap.left),
                beyond_opening(fit, fit.room.right, fit.lap.right));
  ArchedHead head;
  head.width = frame.width;
  head.left_sight = frame.stile_left;
  head.right_sight = frame.width - frame.stile_right;
  place_opening(frame, head);
  Arch& opening = head.opening;
  settle_curve(ledger, opening);
  if (!ledger.clean()) return;
  opening.springing = frame.height - head.outward - opening.rise;
  const Length whole = ledger.defaults.whole;
  const auto up = [&](Length length) {
    return std::min(ceiling_multiple(length, whole), frame.height);
  };
  const Length wide = frame.pair ? frame.pair->width : frame.width;
  const Length body = fit.width - fit.room.across();
  if (head.radius() * 2 < wide || (head.radius() - head.lip) * 2 < body)
    ledger.problem(
        {"clearance.head", "clearance", "arch.rise", "arch.shape"},
        fmt::format("a head clearance of {} leaves the leaf a radius of {}, less than "
                    "half its width of {}; make it at most what is left at the sides",
                    ledger.say(-head.outward), ledger.say(head.radius()), ledger.say(wide)));
  head.left_length = up(head.highest(Length(), head.left_sight));
  head.right_length = up(head.highest(head.right_sight, frame.width));
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
  if (!frame.pair && frame.stile_left != frame.stile_right) {
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
  const Length middle = head.opening.middle();
  if (frame.pair) arch.beside = middle - arch.middle();
  const double half = frame.pair ? in_steps(std::max(middle - arch.left, arch.end(true) - middle))
                                 : in_steps(arch.span) / 2;
  arch.struck = head.radius() - crown_width;
  const double radius = in_steps(arch.struck);
  if (radius < half) {
    ledger.problem({{"rail_widths", 0}, "arch.rise", "arch.shape"},
                   fmt::format("an even rail of {} under a radius of {} does not reach from stile "
                               "to stile; make it at most {}",
                               ledger.say(crown_width), ledger.say(head.radius()),
                               ledger.say(head.radius() - nearest_step(half))));
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
    settle_head(ledger, frame);
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

Length head_over(const DoorLedger& ledger, const FramePlan& frame, std::optional<Length> depth) {
  if (!frame.head) return {};
  const Length left = depth ? frame.stile_left - *depth : Length();
  const Length right = depth ? frame.width - frame.stile_right + *depth : frame.width;
  return -floor_multiple(frame.head->lowest_wood(left, right) - frame.height,
                         ledger.defaults.whole);
}

Length head_over_tenons(const DoorLedger& ledger, const DoorPlan& plan) {
  if (plan.joint_at(JointPlace::corner).wedged) return head_over(ledger, plan.frame, {});
  return head_over(ledger, plan.frame, plan.join.rail_depth + plan.join.mortise.bottom_clearance);
}

void refuse_beside_head(DoorLedger& ledger, const DoorPlan& plan) {
  if (!plan.frame.head) return;
  const DoorJoint& corner = plan.joint_at(JointPlace::corner);
  if (corner.word == JointWord::mitre)
    ledger.problem({"joint", "arch.at"},
                   "a mitre runs out at the corner of a leaf, and an arched top has none; choose "
                   "another joint for the corners");
  else if (corner.lapped && plan.frame.arch && plan.frame.arch->is_half())
    ledger.problem({"joint", "arch.at"},
                   "a half-lapped rail lies over the stiles as wide as its blank, which half an "
                   "arch is not at the stiles that meet; choose another joint for the corners");
  else if (corner.tenons && plan.join.rail_stub)
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

Length arch_over_end(const DoorLedger& ledger, const DoorPlan& plan, Length in) {
  if (!plan.frame.arch) return {};
  return -floor_multiple(-plan.frame.worked_over_ends(plan.edge_depth(0), in),
                         ledger.defaults.whole);
}

}  // namespace haunch
