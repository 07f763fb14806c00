// What is cut out of worktops: the wood left round it, and what is below it.
#include "worktops.h"

#include <algorithm>
#include <map>
#include <vector>

namespace haunch {
namespace {

constexpr Rule kEdge{"cutout-edge",
                     "of wood from the cut-out to the edge of its worktop or to the next one",
                     "under 50 mm (2 in) it breaks as the worktop is carried (trade practice)"};
constexpr Rule kBelow{
    "cutout-below", "free below the worktop in its cut-out",
    "under 200 mm (8 in), a sink's bowl, what goes in may meet what is there: leave "
    "that out, notch it, or move the cut-out"};

constexpr Length kLeast = Length::from_mm(3);
constexpr Length kSound = Length::from_mm(50);
/// How deep what goes in is taken to be at most: a sink's bowl; ours.
constexpr Length kDown = Length::from_mm(200);

std::vector<Box> cutouts_of(const Piece& piece) {
  std::vector<Box> all;
  for (const Feature& feature : piece.features)
    if (feature.kind == FeatureKind::cutout)
      all.insert(all.end(), feature.cuts.begin(), feature.cuts.end());
  return all;
}

/// Between two in one plane; less than 0 where they overlap.
Length between(const Box& a, const Box& b) {
  Length most = std::max(a.low[0] - b.high[0], b.low[0] - a.high[0]);
  return std::max({most, a.low[1] - b.high[1], b.low[1] - a.high[1]});
}

Length least_beside(const Triple& blank, const std::vector<Box>& all, std::size_t number) {
  const Box& cutout = all[number];
  Length least = std::min(cutout.low[0], cutout.low[1]);
  least = std::min({least, blank[0] - cutout.high[0], blank[1] - cutout.high[1]});
  for (std::size_t other = 0; other < all.size(); ++other)
    if (other != number) least = std::min(least, between(cutout, all[other]));
  return least;
}

/// Of each group the highest piece that stands below the opening.
void check_below(Bench& bench, std::size_t worktop, Box room) {
  const Length underside = room.low[1];
  room.low[1] -= kDown;
  std::map<std::size_t, std::size_t> highest;  // by group
  const auto top_of = [&](std::size_t piece) { return bench.solids[piece].blank.high[1]; };
  for (std::size_t piece = 0; piece < bench.solids.size(); ++piece) {
    if (piece == worktop || !interiors_meet(bench.solids[piece].blank, room)) continue;
    if (depth_of_common(bench.solids[piece].wood, Wood{{room}, {}}) <= Length()) continue;
    const auto [its, is_new] = highest.emplace(bench.assembly.pieces[piece].group, piece);
    if (!is_new && top_of(its->second) < top_of(piece)) its->second = piece;
  }
  for (const auto& [group, piece] : highest)
    report(bench, kBelow, {piece, worktop}, {}, underside - top_of(piece),
           Bounds{{}, {}, kDown, {}});
  if (highest.empty()) report(bench, kBelow, {worktop}, {}, kDown, Bounds{{}, {}, kDown, {}});
}

}  // namespace

void check_worktops(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.pieces.size(); ++number) {
    const Piece& piece = bench.assembly.pieces[number];
    if (piece.role != Role::worktop) continue;
    const std::vector<Box> cutouts = cutouts_of(piece);
    for (std::size_t i = 0; i < cutouts.size(); ++i) {
      report(bench, kEdge, {number}, {}, least_beside(piece.blank, cutouts, i),
             Bounds{kLeast, {}, kSound, {}});
      check_below(bench, number, placed(cutouts[i], piece.place));
    }
  }
}

std::vector<const Rule*> rules_of_worktops() {
  return {&kEdge, &kBelow};
}

}  // namespace haunch
