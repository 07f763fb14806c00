#include <fmt/core.h>

#include <algorithm>

#include "door_plan_steps.h"

namespace haunch {
namespace {

/// The end of a piece that dowels hold: how wide it is, and how deep its edges' grooves or rebates
/// for glass are, where they have any.
struct DowelledEnd {
  Where key;  // of its width
  std::string name;
  Length width;
  std::optional<Length> low, high;
  Length off;  // what a rebate or the curve of a top takes of an edge without a groove
};

std::vector<DowelledEnd> dowelled_rails(const DoorLedger& ledger, const DoorPlan& plan,
                                        const DowelDesign& dowels) {
  std::vector<DowelledEnd> ends;
  const std::size_t count = plan.frame.rails.size();
  for (std::size_t i = 0; i < count; ++i) {
    const RailPlan& rail = plan.frame.rails[i];
    DowelledEnd& end = ends.emplace_back(DowelledEnd{
        {"rail_widths", i}, rail.name, rail.width, {}, {}, plan.frame.rebate_of_rail(i)});
    if (i + 1 < count) end.low = std::max(plan.edge_depth(i), plan.edge.set_back());
    if (i > 0) end.high = std::max(plan.edge_depth(i - 1), plan.edge.set_back());
    if (i > 0) continue;
    if (plan.frame.arch)
      end.low = std::max(arch_over_end(ledger, plan, dowels.in_end() + dowels.bottom),
                         plan.edge.set_back());
    end.off += head_over(ledger, plan.frame, dowels.depth + dowels.bottom);
  }
  return ends;
}

/// How far the first hole stands from an edge that is worked so deep.
Length inset(const DowelSpread& spread, Length worked) {
  return std::max(spread.edge, worked + spread.wall);
}

std::vector<Length> holes_in(DoorLedger& ledger, const DoorPlan& plan, const DowelledEnd& end,
                             Length bore, const DowelSpread& spread) {
  const auto inset_of = [&](const std::optional<Length>& worked) {
    return worked ? inset(spread, *worked) : spread.edge + end.off;
  };
  const Length low = inset_of(end.low);
  const Length stretch = end.width - low - inset_of(end.high);
  if (stretch < bore) {
    ledger.problem(
        {"dowel.edge", "dowel.wall", "dowel.diameter", end.key, "groove_depth"},
        fmt::format("the {} is too narrow for a dowel of {}: its {}, dowel.edge {} and "
                    "dowel.wall {} leave {} of {}; make it wider, or the others less",
                    end.name, ledger.say(bore),
                    plan.deepest_edge() > plan.groove.depth ? "grooves and glass" : "grooves",
                    ledger.say(spread.edge), ledger.say(spread.wall),
                    ledger.say(std::max(stretch, Length())), ledger.say(end.width)));
    return {};
  }
  return dowels_along(low, stretch, bore, spread);
}

bool muntins_are_dowelled(const DoorPlan& plan) {
  return plan.has_at(JointPlace::muntin, JointWord::dowel);
}

/// The shortest piece that has holes in both ends, between its shoulders.
Length shortest(const DoorPlan& plan) {
  const FramePlan& frame = plan.frame;
  Length least = frame.width - frame.stile_left - frame.stile_right;
  if (muntins_are_dowelled(plan))
    for (const TierPlan& tier : frame.tiers)
      if (tier.has_muntins()) least = std::min(least, tier.height.high - tier.height.low);
  return least;
}

bool any_rail_is_dowelled(const DoorPlan& plan) {
  return plan.has_at(JointPlace::corner, JointWord::dowel) ||
         plan.has_at(JointPlace::middle, JointWord::dowel);
}

/// How far past the sight edge dowelled ends stand, where their holes are.
Length ends_stand_at(const DoorPlan& plan) {
  if (plan.edge.rebated()) return plan.level_at_end().low > Length() ? plan.groove.depth : Length();
  return plan.edge.set_back();
}

/// Three diameters, or as much as leaves wood behind every hole.
Length usual_depth(const DoorLedger& ledger, const DoorPlan& plan, Length bore, Length bottom,
                   const DowelSpread& spread) {
  const Length left = ledger.defaults.left_behind_mortise;
  const Length meet = ends_stand_at(plan);
  Length deepest = floor_half(shortest(plan) - left) - bottom;
  if (any_rail_is_dowelled(plan))
    deepest = std::min(deepest, plan.frame.narrow_stile() - left - bottom - meet);
  if (muntins_are_dowelled(plan))
    deepest =
        deepest_in_rails(ledger, plan, deepest, {bottom + meet, inset(spread, plan.muntin_edge())});
  return std::min(bore * 3, floor_multiple(deepest, ledger.defaults.whole));
}

void refuse_depth(DoorLedger& ledger, const DoorPlan& plan, const DowelDesign& dowels) {
  const Length hole = dowels.depth + dowels.bottom;
  const Length meet = ends_stand_at(plan);
  const auto refuse = [&](Length room, const std::string& what) {
    if (hole < room) return;
    ledger.problem({"dowel.depth", "dowel.bottom_clearance", "dowel.diameter"},
                   fmt::format("a hole of {} {}, {}; make dowel.depth less", ledger.say(hole), what,
                               ledger.say(room)));
  };
  if (any_rail_is_dowelled(plan))
    refuse(plan.frame.narrow_stile() - meet, "goes through the stile");
  if (muntins_are_dowelled(plan))
    for (std::size_t i = 0; i < plan.frame.rails.size(); ++i)
      if (plan.frame.takes_muntins(i))
        refuse(plan.frame.rails[i].width - meet,
               fmt::format("goes through the {}", plan.frame.rails[i].name));
  refuse(floor_half(shortest(plan)), "from each end meets the other: half of the piece is");
  if (dowels.depth + meet <= plan.groove.depth && !plan.edge.rebated())
    ledger.problem({"dowel.depth", "dowel.diameter", "groove_depth"},
                   fmt::format("a dowel {} deep ends in the groove, {} deep; make dowel.depth more",
                               ledger.say(dowels.depth), ledger.say(plan.groove.depth)));
}

/// In the middle of the thickness, or where that would not leave dowel.wall beside what is worked
/// on the edge, in the middle of what that leaves in one plane.
Length dowels_from_face(const DoorLedger& ledger, const DoorPlan& plan, Length bore) {
  const Length thickness = plan.frame.thickness;
  const Strip level = plan.level_at_end();
  const Length middle = floor_half(thickness - bore);
  const Length wall = ledger.pick(5'000, 3, 16);  // less splits
  const bool clear_before = level.low == Length() || middle - level.low >= wall;
  const bool clear_behind = level.high == thickness || level.high - middle - bore >= wall;
  if (clear_before && clear_behind) return middle;
  return level.low + floor_half(level.high - level.low - bore);
}

void settle_diameter(DoorLedger& ledger, const DoorPlan& plan, DowelDesign& dowels) {
  const Strip level = plan.level_at_end();
  const Length thickness = level.high - level.low;
  const Length usual = usual_dowel(plan.frame.thickness, ledger.defaults.dowels);
  const bool whole = usual + ledger.pick(5'000, 3, 16) * 2 <= thickness;
  dowels.bore = ledger.take(
      "dowel.diameter", whole ? usual : usual_dowel(thickness, ledger.defaults.dowels),
      std::string("the least dowel from a third to half of ") +
          (whole                 ? "the thickness"
           : plan.edge.rebated() ? "what of the thickness lies on one side of the rebate's wall"
                                 : "what the moulding leaves of the thickness"));
  dowels.diameter = dowels.bore - plan.join.fit_allowance;
  dowels.from_face = dowels_from_face(ledger, plan, dowels.bore);
  if (dowels.bore >= thickness)
    ledger.problem(
        {"dowel.diameter", "thickness", "edge.depth", "edge.width"},
        fmt::format("a dowel of {} does not lie within {} of {}; make it less",
                    ledger.say(dowels.bore),
                    thickness == plan.frame.thickness ? "the thickness"
                                                      : "what the edge's work leaves in one plane",
                    ledger.say(thickness)));
  if (dowels.diameter <= Length())
    ledger.problem({"fit_allowance", "dowel.diameter"},
                   fmt::format("a fit allowance of {} leaves nothing of a dowel in a hole of {}; "
                               "make it less than that",
                               ledger.say(plan.join.fit_allowance), ledger.say(dowels.bore)));
}

}  // namespace

void settle_dowels(DoorLedger& ledger, DoorPlan& plan) {
  plan.rail_dowels.resize(plan.frame.rails.size());
  if (!plan.has(JointWord::dowel)) return;
  DowelDesign dowels;
  settle_diameter(ledger, plan, dowels);
  const DowelSpread spread{
      ledger.take("dowel.edge", dowels.bore, "as much wood as the dowel is thick"),
      ledger.take("dowel.wall", ledger.defaults.loose_wall,
                  "so that the groove does not break into the hole"),
      ledger.take("dowel.spacing", ledger.defaults.dowel_spacing,
                  "as wide as is glued across the grain (shop rule)")};
  dowels.bottom = ledger.take("dowel.bottom_clearance", ledger.defaults.dowel_clearance,
                              "room for glue below the dowel");
  const Length usual = usual_depth(ledger, plan, dowels.bore, dowels.bottom, spread);
  dowels.depth = ledger.take("dowel.depth", std::max(usual, Length::from_steps(1)),
                             usual == dowels.bore * 3 ? "three times the dowel's thickness"
                                                      : "as deep as leaves wood behind the holes");
  refuse_depth(ledger, plan, dowels);
  const std::vector<DowelledEnd> ends = dowelled_rails(ledger, plan, dowels);
  for (std::size_t i = 0; i < ends.size(); ++i) {
    plan.rail_dowels[i] = dowels;
    if (plan.joint_of(i).word == JointWord::dowel)
      plan.rail_dowels[i].from_edge = holes_in(ledger, plan, ends[i], dowels.bore, spread);
  }
  plan.muntin_dowels = dowels;
  if (muntins_are_dowelled(plan))
    plan.muntin_dowels.from_edge = holes_in(ledger, plan,
                                            {"muntin_width",
                                             "muntin",
                                             plan.frame.muntin_width,
                                             std::max(plan.muntin_edge(), plan.edge.set_back()),
                                             std::max(plan.muntin_edge(), plan.edge.set_back()),
                                             {}},
                                            dowels.bore, spread);
}

}  // namespace haunch
