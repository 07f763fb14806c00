#include "season_gaps.h"

#include <algorithm>

#include "door_defaults.h"

namespace haunch {
namespace {

/// The least that panel edges have over all seasons, and at which moisture.
struct LeastEdge {
  std::optional<Length> room;  // to the groove's bottom
  Length bite;
  double at_room = 0, at_bite = 0;
};

/// The far corner of what was cut for a joint, along its heading.
Length groove_bottom(const Assembly& wood, std::size_t number) {
  const Joint& joint = wood.joints[number];
  const Piece& receives = wood.pieces[joint.receives];
  const auto axis = static_cast<std::size_t>(joint.heading.axis);
  const Box cut = placed(*cut_for(wood, number), receives.place);
  return joint.heading.upwards ? cut.high[axis] : cut.low[axis];
}

void take_edge(LeastEdge& least, const Assembly& wood, std::size_t number, double percent) {
  const Joint& joint = wood.joints[number];
  if (joint.arched) return;  // set out with the larger of the gaps of the other edges
  const auto axis = static_cast<std::size_t>(joint.heading.axis);
  const bool up = joint.heading.upwards;
  const Box panel = placed_blank(wood.pieces[joint.enters]);
  const Length edge = up ? panel.high[axis] : panel.low[axis];
  const Length sight = sight_edge(wood, joint);
  const Length bottom = groove_bottom(wood, number);
  const Length room = up ? bottom - edge : edge - bottom;
  const Length bite = up ? edge - sight : sight - edge;
  if (!least.room || bite < least.bite) {
    least.bite = bite;
    least.at_bite = percent;
  }
  if (!least.room || room < *least.room) {
    least.room = room;
    least.at_room = percent;
  }
}

/// The strip of the leaf's height in which panels are looked at; empty: all of it.
using Within = std::optional<Strip>;

bool stands_within(const Piece& panel, const Within& within) {
  if (!within) return true;
  const Box blank = placed_blank(panel);
  return blank.low[1] < within->high && within->low < blank.high[1];
}

/// A leaf as built, and as it is at the other moistures of its seasons.
struct LeafInSeasons {
  struct At {
    double percent = 0;
    Assembly wood;
  };
  const Assembly& built;
  std::vector<At> others;
};

LeafInSeasons in_seasons(const Assembly& built, const Season& season) {
  LeafInSeasons leaf{built, {}};
  for (const double percent : other_moistures(season.moisture))
    leaf.others.push_back({percent, at_moisture(leaf.built, season, percent)});
  return leaf;
}

LeastEdge least_edges(const LeafInSeasons& leaf, bool across, const Within& within) {
  LeastEdge least;
  for (const auto& [percent, wood] : leaf.others)
    for (std::size_t number = 0; number < wood.joints.size(); ++number)
      if (wood.joints[number].design.bite && is_at_long_edge(wood, wood.joints[number]) == across &&
          stands_within(leaf.built.pieces[wood.joints[number].enters], within))
        take_edge(least, wood, number, percent);
  return least;
}

std::optional<SeasonGap> gap_for(const LeastEdge& least, Length gap, Length groove_depth,
                                 const DoorDefaults& defaults) {
  if (!least.room) return {};
  // A panel made narrower moves less, by a few hundredths of the change, which is let be.
  const Length needed = ceiling_multiple(gap - *least.room, defaults.size_step);
  const Length kept = floor_multiple(gap - (defaults.least_bite - least.bite), defaults.size_step);
  const Length most = floor_multiple(groove_depth - defaults.least_bite, defaults.size_step);
  if (*least.room < Length() && most > gap)
    return SeasonGap{std::min(needed, most),
                     "so that the panel has room at " + percent_words(least.at_room)};
  const Length chosen = std::max({needed, kept, Length()});
  if (*least.room >= Length() && least.bite < defaults.least_bite && chosen < gap)
    return SeasonGap{
        chosen, "so that the panel's edge stays in its groove at " + percent_words(least.at_bite)};
  return {};
}

}  // namespace

std::vector<SeasonGaps> gaps_for(const DoorPlan& plan, const Assembly& built, const Season& season,
                                 const DoorDefaults& defaults, bool by_tier) {
  if (other_moistures(season.moisture).empty()) return {};
  const LeafInSeasons leaf = in_seasons(built, season);
  std::vector<SeasonGaps> gaps;
  for (std::size_t i = 0; i < (by_tier ? plan.panels.size() : 1); ++i) {
    const Within within = by_tier ? Within(plan.frame.tiers[i].height) : Within();
    const auto gap = [&](bool across, Length usual) {
      return gap_for(least_edges(leaf, across, within), usual, plan.groove.depth, defaults);
    };
    gaps.push_back({gap(true, plan.panels[i].gap_across), gap(false, plan.panels[i].gap_along)});
  }
  return gaps;
}

}  // namespace haunch
