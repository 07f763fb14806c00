// A piece of work through its seasons: its wood at its driest, as built and at its wettest.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "finding.h"
#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "season.h"

namespace haunch {

/// The three states of the wood, in the order in which they are told.
inline constexpr std::size_t kLow = 0, kBuild = 1, kHigh = 2;
template <typename State>
using AtEach = std::array<State, 3>;

/// A panel's width across its grain, and at its long-grain edges the least room to a groove's
/// bottom and the least bite.
struct PanelState {
  Length width, gap, bite;
};

struct PanelSeason {
  std::size_t piece = 0;
  AtEach<PanelState> at;
};

/// What is left between a leaf and its opening; negative where they meet.
struct SideGaps {
  Length left, right, head, foot;
};

/// Of a leaf by itself or one that hangs in its frame.
struct LeafState {
  Length width, height;
  SideGaps gaps;
};

struct LeafSeason {
  std::size_t group = 0;
  AtEach<LeafState> at;
};

/// How wide a tenon's end is across its grain, from the first to the last of a divided one: what
/// is glued to wood that does not move that way.
struct TenonSeason {
  std::size_t joint = 0;
  AtEach<Length> width;
};

/// How far a mitre stands open at its sight corner and at its outer one, and by how many degrees
/// its two faces.
struct MitreState {
  Length at_sight, at_outer;
  double degrees = 0;
};

struct MitreSeason {
  std::size_t joint = 0;
  AtEach<MitreState> at;
};

/// Of a mitre, wherever its members have come to.
MitreState mitre_state(const Assembly& wood, std::size_t joint);

/// How wide a piece is across its grain.
struct WidthSeason {
  std::size_t piece = 0;
  AtEach<Length> width;
};

/// A front, and what it has round it, where something is.
struct FrontState {
  Length width, height;
  std::optional<Length> left, right, head, foot;
};

struct FrontSeason {
  std::size_t group = 0;
  AtEach<FrontState> at;
};

struct Bench;

struct SeasonReport {
  Moisture moisture;
  std::vector<Finding> findings;  // of the wood at its driest and wettest
  std::vector<PanelSeason> panels;
  std::vector<LeafSeason> leaves;  // of what has an opening, or hangs
  std::vector<TenonSeason> tenons;
  std::vector<MitreSeason> mitres;
  std::vector<WidthSeason> widths;  // of what a case is made of
  std::vector<FrontSeason> fronts;
  Length widest_glued;  // the limit of their widths
};

/// Works the assembly again at each moisture, and measures the same things on that wood.
SeasonReport check_seasons(const Assembly& built, const Season& season, Unit unit);

/// The findings of that report alone.
std::vector<Finding> check_moved(const Assembly& built, const Season& season, Unit unit);

/// The leaves of an assembly that has moved, hung anew: as far from the frame on the hinges' side
/// as they were designed to hang, for the hinges keep that gap.
void hang_anew(Assembly& moved);

/// The same of what stands in a case: a drawer on what it runs on, a leaf by its hinges, a face
/// frame with its back on the case.
void seat_anew(Assembly& moved, const Assembly& built);

/// How large a hung leaf is, and what it has round it.
LeafState hung_state(const Bench& bench, const Fit& hung);
/// The same of a front.
FrontState front_state(const Bench& bench, const Fit& front);

}  // namespace haunch
