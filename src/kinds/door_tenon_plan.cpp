#include <fmt/core.h>

#include <algorithm>
#include <array>

#include "door_plan_steps.h"
#include "round_ends.h"

namespace haunch {
namespace {

/// A mortise whose ends stay round, as its cutter leaves them, for a tenon that stands in its
/// middle. Rounded edges stand at least as far from the ends as the cheeks from the walls; a square
/// one ends where the ends begin to close in, or before.
void leave_round(MortiseDesign& mortise, Length cutter, Length fit) {
  mortise.end_radius = floor_half(cutter);
  const Length clearance = mortise.edge_clearance;
  mortise.edge_clearance =
      mortise.ends == Ends::tenon_rounded
          ? std::max(clearance, fit - floor_half(fit))
          : std::max(mortise.end_radius,
                     end_inset(mortise.end_radius, floor_half(fit)) + clearance);
}

/// What a tenon goes into: a mortise, a pair of them, or, a stub, just the groove.
MortiseDesign mortise_for(const DoorPlan& plan, const DoorJoint& joint, bool stub, Length depth) {
  if (stub) return {plan.groove.width, plan.groove.from_face, {}, plan.groove.depth - depth};
  MortiseDesign mortise = plan.join.mortise;
  if (joint.twin) {
    mortise.width = plan.join.twin.width;
    mortise.from_face = plan.join.twin.from_face;
    mortise.twin_from_face = plan.join.twin.second_from_face();
  }
  if (joint.through) {
    mortise.through = true;
    mortise.open_end = joint.open_end;
    mortise.bottom_clearance = Length();
    if (joint.wedged) mortise.flare = plan.join.flare;
    return mortise;
  }
  mortise.ends = joint.loose ? plan.join.loose_ends : plan.join.ends;
  if (mortise.ends != Ends::squared)
    leave_round(mortise, plan.join.cutter.value_or(mortise.width), plan.join.fit_allowance);
  return mortise;
}

/// A tenon's sizes, its width excepted. It stands in the middle of what it goes into.
TenonDesign tenon_for(const DoorPlan& plan, const DoorJoint& joint, bool stub, Length depth) {
  const MortiseDesign mortise = mortise_for(plan, joint, stub, depth);
  const Length fit = plan.join.fit_allowance;
  TenonDesign tenon;
  tenon.stub = stub;
  tenon.depth = depth;
  tenon.thickness = mortise.width - fit;
  tenon.from_face = mortise.from_face + floor_half(fit);
  if (mortise.twin_from_face) tenon.twin_from_face = *mortise.twin_from_face + floor_half(fit);
  tenon.loose = joint.loose && !stub;
  tenon.haunch_depth = plan.join.haunch_depth;
  tenon.haunch_thickness = plan.groove.width - fit;
  tenon.haunch_from_face = plan.groove.from_face + floor_half(fit);
  tenon.set_back = plan.edge.set_back();
  tenon.mitred = {true, true};
  if (!plan.edge.own_haunch()) return tenon;
  tenon.haunch_thickness = tenon.thickness;
  tenon.haunch_from_face = tenon.from_face;
  tenon.haunching = plan.join.haunching;
  return tenon;
}

/// What a tenon loses at an inner edge, over its whole thickness: what is `sunk` into that, a
/// groove or a rebate, or the mitre. Before a rebate it loses its play only, so that the mortise
/// does not come out beside the shoulder.
Length lost_at_edge(const DoorPlan& plan, Length sunk) {
  if (plan.tenons_before_rebate()) return plan.join.mortise.edge_clearance;
  return std::max(sunk, plan.edge.set_back());
}

Length usual_relish(const DoorLedger& ledger, Length rail_width, Length rebate) {
  return rebate +
         usual_relish(rail_width - rebate, ledger.defaults.whole, ledger.defaults.least_relish);
}

/// What a tenon loses at its rail's outer edge, at the end of a stile: its relish, and what an
/// arched top takes above that.
Length relish_of(DoorLedger& ledger, const DoorPlan& plan, std::size_t number) {
  const RailPlan& rail = plan.frame.rails[number];
  const Length rebate = plan.frame.rebate_of_rail(number);
  const Length curve = number == 0 ? head_over_tenons(ledger, plan) : Length();
  const Length usual = usual_relish(ledger, rail.width - curve, rebate);
  const Length relish = ledger.spec.size("tenon.relish").value_or(usual);
  if (!ledger.spec.size("tenon.relish"))
    ledger.assume("tenon.relish", relish,
                  fmt::format("{}: {}", rail.name,
                              usual == rebate + ledger.defaults.least_relish
                                  ? "the least that keeps the stile's end whole"
                                  : "a third of the rail") +
                      (curve > Length() ? "'s end, under the curve" : "") +
                      (rebate > Length() ? ", beyond the rebate" : ""));
  const Length edge = plan.join.mortise.edge_clearance;
  if (edge + rebate >= relish && ledger.clean())
    ledger.problem(
        {"tenon.relish", "tenon.edge_clearance"},
        fmt::format("the {}'s relish of {} must be more than tenon.edge_clearance{}, {}, "
                    "or the mortise comes out at the end of "
                    "the stile",
                    rail.name, ledger.say(relish), rebate > Length() ? " and the rebate" : "",
                    ledger.say(edge + rebate)));
  return relish + curve;
}

/// Makes tenons with square edges narrower, so that they go between the round ends of mortises as
/// long as before; their haunches come up to them.
void shorten(DoorLedger& ledger, TenonDesign& tenon, const MortiseDesign& mortise, Length clearance,
             const std::string& name) {
  const Length less = mortise.edge_clearance - clearance;
  for (Strip& strip : tenon.layout.tenons) {
    for (Strip& haunch : tenon.layout.haunches) {
      if (haunch.low == strip.high) haunch.low = strip.high - less;
      if (haunch.high == strip.low) haunch.high = strip.low + less;
    }
    strip = {strip.low + less, strip.high - less};
  }
  const Strip& least = tenon.layout.tenons.front();
  if (least.high <= least.low)
    ledger.problem({"mortise.cutter", "loose_tenon.wall", "mortise.ends", "mortise.width"},
                   fmt::format("a mortise of {} for the {} leaves nothing straight between ends of "
                               "a {} cutter; square the ends, or round the tenon",
                               ledger.say(least.high - least.low + mortise.edge_clearance * 2),
                               name, ledger.say(mortise.end_radius * 2)));
}

/// Fits tenons to the ends of their mortises, where those stay round.
void fit_to_ends(DoorLedger& ledger, TenonDesign& tenon, const MortiseDesign& mortise,
                 Length clearance, const std::string& name) {
  if (tenon.layout.tenons.empty() || tenon.stub) return;
  if (mortise.ends == Ends::tenon_shortened) shorten(ledger, tenon, mortise, clearance, name);
  if (mortise.ends != Ends::tenon_rounded) return;
  const Strip& least = tenon.layout.tenons.front();
  const Length length = least.high - least.low + mortise.edge_clearance * 2;
  if (length <= mortise.end_radius * 2)
    ledger.problem({"mortise.cutter", "loose_tenon.wall", "mortise.ends", "mortise.width"},
                   fmt::format("a mortise of {} for the {} is no longer than its cutter of {}; "
                               "square the ends, or make the rail wider",
                               ledger.say(length), name, ledger.say(mortise.end_radius * 2)));
  else if (least.high - least.low < tenon_edge_radius(tenon, mortise) * 2)
    ledger.problem({"mortise.cutter", "loose_tenon.wall", "mortise.ends", "mortise.width"},
                   fmt::format("a tenon of {} on the {} is narrower than the round of its two "
                               "edges, {}; square the ends, or make the rail wider",
                               ledger.say(least.high - least.low), name,
                               ledger.say(tenon_edge_radius(tenon, mortise) * 2)));
}

void note_gap(DoorLedger& ledger, Length gap, bool by_thickness, const std::string& name,
              Length whole) {
  if (ledger.spec.size("tenon.gap")) return;
  ledger.assume(
      "tenon.gap", gap,
      by_thickness ? fmt::format("{}: as much as the tenon is thick", name)
                   : fmt::format("{}: a quarter of the {} to be divided", name, ledger.say(whole)));
}

/// Lays tenons out across `across`, with haunches between them.
void lay_out(DoorLedger& ledger, TenonDesign& tenon, Strip across, std::optional<Length> limit,
             const std::string& name, SizeKey depth_key) {
  const Spec& spec = ledger.spec;
  const Length whole = across.high - across.low;
  const Length quarter = nearest_multiple(floor_divide(whole, 4), ledger.defaults.whole);
  const Length gap = spec.size("tenon.gap").value_or(std::max(tenon.thickness, quarter));
  auto& tenons = tenon.layout.tenons = divide_tenon(across, limit, gap);
  if (tenons.empty()) {
    ledger.problem({"tenon.width_limit", "tenon.gap", "rail_widths"},
                   fmt::format("leaves no tenon on the {}: there is {} to divide, with gaps of {}; "
                               "make tenon.width_limit more, or "
                               "tenon.gap, tenon.relish or {} less",
                               name, ledger.say(whole), ledger.say(gap), depth_key.path()));
    return;
  }
  for (std::size_t i = 1; i < tenons.size() && gap > Length() && !tenon.loose; ++i)
    tenon.layout.haunches.push_back({tenons[i - 1].high, tenons[i].low});
  if (tenons.size() > 1) note_gap(ledger, gap, tenon.thickness >= quarter, name, whole);
}

/// Wood must be left outside a wedge: of the relish, and of what is between two tenons.
void keep_wedges_in(DoorLedger& ledger, const TenonDesign& tenon, const DoorPlan& plan,
                    Length relish, const std::string& name) {
  if (!plan.join.flare) return;
  const Length thick = plan.join.flare->width + plan.join.mortise.edge_clearance;
  if (relish > Length() && thick >= relish)
    ledger.problem({"wedge.thickness", "tenon.relish"},
                   fmt::format("a wedge of {} is as thick as the {}'s relish of {}, and comes out "
                               "at the end of the stile; make it less, or tenon.relish more",
                               ledger.say(thick), name, ledger.say(relish)));
  const auto& tenons = tenon.layout.tenons;
  if (tenons.size() < 2) return;
  const Length gap = tenons[1].low - tenons[0].high;
  if (thick * 2 >= gap)
    ledger.problem({"wedge.thickness", "tenon.gap"},
                   fmt::format("two wedges of {} leave nothing of the {} between the {}'s tenons; "
                               "make them less, or tenon.gap more",
                               ledger.say(thick), ledger.say(gap), name));
}

/// How far up the top rail's haunch goes: under an arched top as far as the stiles, to be sawn with
/// them.
Length haunch_end(const DoorPlan& plan) {
  const RailPlan& rail = plan.frame.rails.front();
  const auto& head = plan.frame.head;
  return head ? std::max(head->left_length, head->right_length) - rail.low : rail.width;
}

/// "less tenon.relish 39 mm"
std::string loss_at_edge(const DoorLedger& ledger, Length outer, Length curve) {
  const std::string relish = "less tenon.relish " + ledger.say(outer - curve);
  return curve > Length() ? relish + " under the curve, which takes " + ledger.say(curve) : relish;
}

/// "groove_depth 12 mm", of edges that are rebated deeper "panel.glass.rebate 18 mm", before a
/// rebate "tenon.edge_clearance 0.4 mm".
std::string depth_words(const DoorLedger& ledger, const DoorPlan& plan, Length depth) {
  if (plan.tenons_before_rebate()) return "tenon.edge_clearance " + ledger.say(depth);
  const bool glass = plan.deepest_edge() > plan.groove.depth;
  const SizeKey key = glass ? SizeKey("panel.glass.rebate") : depth_key(plan);
  return std::string(key.path()) + " " + ledger.say(depth);
}

/// Where the mouldings of stiles and arch meet, in the rail's own width.
std::optional<std::array<MitreOverArch, 2>> mitres_over_arch(const DoorPlan& plan) {
  if (!plan.frame.arch || !plan.edge.mitred()) return {};
  const Arch& arch = *plan.frame.arch;
  const auto over_foot = [&](Length outward, bool right) {
    return curve_end(arch, outward, right).v - arch.foot();
  };
  const Length width = plan.edge.width;
  return std::array{MitreOverArch{over_foot(Length(), false), over_foot(width, false)},
                    MitreOverArch{over_foot(Length(), true), over_foot(width, true)}};
}

TenonDesign rail_tenon(DoorLedger& ledger, const DoorPlan& plan, std::size_t number,
                       std::optional<Length> limit) {
  const RailPlan& rail = plan.frame.rails[number];
  const bool stub = plan.join.rail_stub;
  const DoorJoint& joint = plan.joint_of(number);
  const bool top = number == 0;
  const bool bottom = number + 1 == plan.frame.rails.size();
  const bool bridle = joint.open_end;
  // The groove comes out at the stile's end, in a lip too: haunch or stub fills it as far as the
  // edge, and the lip's rebate, worked after glue-up, takes what stands there.
  const bool whole_edge = stub || bridle || !(top || bottom);
  const Length outer = whole_edge ? Length() : relish_of(ledger, plan, number);
  const Length curve = top ? head_over_tenons(ledger, plan) : Length();
  TenonDesign tenon = tenon_for(plan, joint, stub, plan.join.rail_depth);
  tenon.mitred = plan.frame.moulded_edges(number);
  if (top) tenon.mitred.arch = mitres_over_arch(plan);
  const Length wall_beside = tenon.loose ? plan.join.loose_wall : Length();
  const auto edge = [&](std::size_t tier) {
    const Length lost = lost_at_edge(plan, plan.edge_depth(tier));
    if (!top || !plan.frame.arch) return lost;
    // A loose tenon goes into the rail's end, and the groove along an arch rises over it.
    const Length in =
        tenon.loose ? plan.join.rail_depth + plan.join.mortise.bottom_clearance : Length();
    Length mitre;
    if (const auto& ends = tenon.mitred.arch) mitre = std::max(ends->at(0).past, ends->at(1).past);
    return std::max(
        {arch_over_end(ledger, plan, in), lost, ceiling_multiple(mitre, ledger.defaults.whole)});
  };
  const Strip across{bottom ? outer : edge(number) + wall_beside,
                     rail.width - (top ? outer : edge(number - 1) + wall_beside)};
  if (across.high <= across.low) {
    const std::string loss =
        outer > Length()
            ? loss_at_edge(ledger, outer, curve)
            : fmt::format("at each {} edge", plan.edge.rebated() ? "rebated" : "grooved");
    const std::string wall =
        tenon.loose ? fmt::format("less loose_tenon.wall {} ", ledger.say(plan.join.loose_wall))
                    : std::string();
    const Length edges = lost_at_edge(plan, plan.deepest_edge());
    ledger.problem({"tenon.relish", {"rail_widths", number}, Key(depth_key(plan))},
                   fmt::format("the {} is too narrow for a tenon: {} less {} {}{}; "
                               "make it wider, or the others less",
                               rail.name, ledger.say(rail.width), depth_words(ledger, plan, edges),
                               wall, loss));
    return tenon;
  }
  lay_out(ledger, tenon, across, stub || bridle ? std::nullopt : limit, rail.name, depth_key(plan));
  if (joint.wedged) keep_wedges_in(ledger, tenon, plan, outer - curve, rail.name);
  if (bridle) return tenon;
  if (!stub && !tenon.loose && top)
    tenon.layout.haunches.push_back({across.high, haunch_end(plan)});
  if (!stub && !tenon.loose && bottom) tenon.layout.haunches.push_back({Length(), across.low});
  fit_to_ends(ledger, tenon, plan.rail_mortises[number], plan.join.mortise.edge_clearance,
              rail.name);
  return tenon;
}

void demand_deeper_than_haunch(DoorLedger& ledger, const DoorPlan& plan, Key key, Length tenon) {
  if (plan.join.haunching < tenon) return;
  ledger.problem({"tenon.haunch_depth", key},
                 fmt::format("a haunch of {} with {} of room below it comes to the end of a tenon "
                             "of {}; make it less, or the tenon deeper",
                             ledger.say(plan.join.haunch_depth),
                             ledger.say(plan.join.mortise.bottom_clearance), ledger.say(tenon)));
}

/// Of a haunch that has a seat of its own: past what is sunk into the edge, so that this is filled
/// at the ends of the stiles.
void settle_own_haunch(DoorLedger& ledger, DoorPlan& plan) {
  JoinPlan& join = plan.join;
  const Length sunk = std::max(plan.groove.depth - plan.edge.set_back(), Length());
  const Length half = floor_half(join.rail_depth - join.mortise.bottom_clearance - sunk);
  const Length past = std::clamp(half, Length(), ledger.defaults.haunch_past_rebate);
  join.haunch_depth = ledger.take(
      "tenon.haunch_depth", sunk + past,
      past == ledger.defaults.haunch_past_rebate
          ? fmt::format("{} past the {}, into solid wood", ledger.say(past),
                        sunk > Length() ? sunk_word(plan) : "shoulder")
          : fmt::format("halfway between the {}'s bottom and the tenon's end, with its room",
                        sunk_word(plan)));
  join.haunching = join.haunch_depth + join.mortise.bottom_clearance;
  if (join.haunch_depth < sunk)
    ledger.problem({"tenon.haunch_depth", depth_key(plan)},
                   fmt::format("a haunch of {} does not fill the {}, {} deep; make it at least "
                               "that",
                               ledger.say(join.haunch_depth), sunk_word(plan), ledger.say(sunk)));
  demand_deeper_than_haunch(ledger, plan, "tenon_depth", join.rail_depth);
}

/// The widest a tenon may be before it is divided; of muntins only where the spec states it.
std::optional<Length> settle_width_limit(DoorLedger& ledger, const DoorPlan& plan) {
  const bool muntins_obey = plan.join.has_mortises && ledger.spec.size("tenon.width_limit");
  if (plan.join.rail_stub && !muntins_obey) return {};
  if (!plan.has_blind_tenons() && !plan.has(&DoorJoint::haunches)) return {};
  const Length least = ledger.defaults.least_width_limit;
  const Length five = nearest_multiple((plan.join.mortise.width - plan.join.fit_allowance) * 5,
                                       ledger.defaults.whole);
  const Length usual = std::max(five, least);
  const Length limit = ledger.take(
      "tenon.width_limit", usual,
      five > least ? "five times the tenon's thickness" : "the least that is ever divided");
  // Two thin tenons are worse than one that is over a usual limit by a shaving.
  return ledger.stated("tenon.width_limit").stated ? limit : limit + ledger.pick(1'500, 1, 16);
}

void settle_muntin_tenon(DoorLedger& ledger, DoorPlan& plan, std::optional<Length> limit) {
  const bool stub = plan.join.muntin_stub;
  const Length edge = lost_at_edge(plan, plan.muntin_edge());
  const DoorJoint& joint = plan.joint_at(JointPlace::muntin);
  plan.muntin_tenon = tenon_for(plan, joint, stub, plan.join.muntin_depth);
  plan.muntin_mortise = mortise_for(plan, joint, stub, plan.join.muntin_depth);
  const bool obeys = !stub && ledger.spec.size("tenon.width_limit");
  const Length wall = plan.muntin_tenon.loose ? plan.join.loose_wall : Length();
  const Strip across{edge + wall, plan.frame.muntin_width - edge - wall};
  if (across.high <= across.low)
    ledger.problem({"muntin_width", "loose_tenon.wall", "groove_depth"},
                   fmt::format("a muntin of {} is too narrow for a loose tenon: {} "
                               "and loose_tenon.wall {} at each edge leave nothing",
                               ledger.say(plan.frame.muntin_width), depth_words(ledger, plan, edge),
                               ledger.say(wall)));
  else
    lay_out(ledger, plan.muntin_tenon, across, obeys ? limit : std::nullopt, "muntin",
            depth_key(plan));
  fit_to_ends(ledger, plan.muntin_tenon, plan.muntin_mortise, plan.join.mortise.edge_clearance,
              "muntin");
  if (plan.edge.own_haunch() && !plan.muntin_tenon.layout.haunches.empty())
    demand_deeper_than_haunch(ledger, plan, "tenon.muntin_depth", plan.join.muntin_depth);
}

/// The wood between the tenons of every piece that has more than one; empty where they differ, or
/// there is none.
std::optional<Length> gap_in_use(const DoorPlan& plan) {
  std::vector<TenonDesign> tenons = plan.rail_tenons;
  tenons.push_back(plan.muntin_tenon);
  std::optional<Length> gap;
  for (const TenonDesign& tenon : tenons) {
    const auto& strips = tenon.layout.tenons;
    if (strips.size() < 2) continue;
    const Length its = strips[1].low - strips[0].high;
    if (gap && *gap != its) return {};
    gap = its;
  }
  return gap;
}

/// Gap and relish are chosen for each rail where they are left open, and can be changed as one size
/// only where they are the same for all.
void settle_gap_and_relish(DoorLedger& ledger, const DoorPlan& plan) {
  if (const auto gap = gap_in_use(plan)) {
    if (ledger.spec.size("tenon.gap"))
      ledger.take("tenon.gap", *gap, {});
    else
      ledger.add_lever("tenon.gap", *gap);
  }
  if (plan.join.rail_stub || !plan.joint_at(JointPlace::corner).tenons) return;
  const Length top =
      usual_relish(ledger, plan.frame.rails.front().width - head_over_tenons(ledger, plan),
                   plan.frame.rebate_of_rail(0));
  const Length bottom = usual_relish(ledger, plan.frame.rails.back().width,
                                     plan.frame.rebate_of_rail(plan.frame.rails.size() - 1));
  if (ledger.spec.size("tenon.relish"))
    ledger.take("tenon.relish", top, {});
  else if (top == bottom)
    ledger.add_lever("tenon.relish", top);
}

}  // namespace

void settle_clearances(DoorLedger& ledger, DoorPlan& plan) {
  const Length groove = std::max(plan.groove.depth, plan.edge.set_back());
  JoinPlan& join = plan.join;
  if (join.has_mortises) {
    const Length edge = join.mortise.edge_clearance =
        ledger.take("tenon.edge_clearance", ledger.defaults.edge_clearance,
                    "play at each edge, for setting and glue");
    if (plan.has_blind_tenons())
      join.mortise.bottom_clearance =
          ledger.take("tenon.bottom_clearance", ledger.defaults.bottom_clearance,
                      "room for glue below the tenon");
    if (edge >= groove)
      ledger.problem({"tenon.edge_clearance", depth_key(plan)},
                     fmt::format("an edge clearance of {} must be less than {}, {}, or "
                                 "the mortise comes out beside the shoulder",
                                 ledger.say(edge), depth_key(plan).path(), ledger.say(groove)));
    if (join.loose_wall > Length() && edge >= join.loose_wall)
      ledger.problem({"tenon.edge_clearance", "loose_tenon.wall"},
                     fmt::format("an edge clearance of {} must be less than loose_tenon.wall, {}, "
                                 "or the mortise in a rail's end opens into its groove",
                                 ledger.say(edge), ledger.say(join.loose_wall)));
  }
  const bool muntins_divided =
      join.has_mortises && !join.muntin_stub && ledger.spec.size("tenon.width_limit");
  if (join.rail_stub && !muntins_divided) return;
  if (!plan.has(&DoorJoint::haunches)) return;
  if (plan.edge.own_haunch()) return settle_own_haunch(ledger, plan);
  join.haunch_depth = ledger.take(
      "tenon.haunch_depth", std::max(groove - ledger.defaults.haunch_short_of_groove, Length()),
      "a little less than the groove, so that the shoulder seats first");
  if (join.haunch_depth > groove)
    ledger.problem({"tenon.haunch_depth", "groove_depth"},
                   fmt::format("a haunch of {} is deeper than the groove, {}; make it at most that",
                               ledger.say(join.haunch_depth), ledger.say(groove)));
}

void settle_tenons(DoorLedger& ledger, DoorPlan& plan) {
  const std::optional<Length> limit = settle_width_limit(ledger, plan);
  for (std::size_t i = 0; i < plan.frame.rails.size(); ++i) {
    const DoorJoint& joint = plan.joint_of(i);
    if (!joint.tenons) {
      plan.rail_mortises.emplace_back();
      plan.rail_tenons.emplace_back();
      continue;
    }
    plan.rail_mortises.push_back(
        mortise_for(plan, joint, plan.join.rail_stub, plan.join.rail_depth));
    plan.rail_tenons.push_back(rail_tenon(ledger, plan, i, limit));
  }
  if (plan.frame.has_muntins() && plan.joint_at(JointPlace::muntin).tenons)
    settle_muntin_tenon(ledger, plan, limit);
  settle_gap_and_relish(ledger, plan);
}

}  // namespace haunch
