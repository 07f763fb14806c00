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

/// A panel's edge in its groove, as it lies when the wood has moved.
struct MovedEdge {
  std::size_t joint;
  Box panel, receives, groove;
};

void take_edge(LeastEdge& least, const Joint& joint, const MovedEdge& its, double percent) {
  const auto axis = static_cast<std::size_t>(joint.heading.axis);
  const bool up = joint.heading.upwards;
  const Length edge = up ? its.panel.high[axis] : its.panel.low[axis];
  const Length sight = up ? its.receives.low[axis] : its.receives.high[axis];
  const Length bottom = up ? its.groove.high[axis] : its.groove.low[axis];
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

/// The panels' edges of a leaf at the other moistures of its seasons.
struct LeafInSeasons {
  struct At {
    double percent = 0;
    std::vector<MovedEdge> edges;
  };
  const Assembly& built;
  std::vector<At> others;
};

/// What is set out with the larger of the gaps of the other edges, below an arch, is none of them.
std::vector<std::size_t> edges_in_grooves(const Assembly& built) {
  std::vector<std::size_t> joints;
  for (std::size_t number = 0; number < built.joints.size(); ++number)
    if (built.joints[number].design.bite && !built.joints[number].arched) joints.push_back(number);
  return joints;
}

LeafInSeasons in_seasons(const Assembly& built, const Season& season) {
  LeafInSeasons leaf{built, {}};
  const std::vector<std::size_t> joints = edges_in_grooves(built);
  std::vector<BoxOfPiece> boxes;
  for (const std::size_t number : joints) {
    const Joint& joint = built.joints[number];
    for (const std::size_t piece : {joint.enters, joint.receives})
      boxes.push_back({piece, {{}, built.pieces[piece].blank}});
    boxes.push_back({joint.receives, *cut_for(built, number)});
  }
  for (const double percent : other_moistures(season.moisture)) {
    const std::vector<Box> moved = placed_at_moisture(built, season, percent, boxes);
    LeafInSeasons::At& at = leaf.others.emplace_back(LeafInSeasons::At{percent, {}});
    for (std::size_t i = 0; i < joints.size(); ++i)
      at.edges.push_back({joints[i], moved[3 * i], moved[3 * i + 1], moved[3 * i + 2]});
  }
  return leaf;
}

LeastEdge least_edges(const LeafInSeasons& leaf, bool across, const Within& within) {
  LeastEdge least;
  for (const auto& [percent, edges] : leaf.others)
    for (const MovedEdge& edge : edges) {
      const Joint& joint = leaf.built.joints[edge.joint];
      if (is_at_long_edge(leaf.built, joint) == across &&
          stands_within(leaf.built.pieces[joint.enters], within))
        take_edge(least, joint, edge, percent);
    }
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
