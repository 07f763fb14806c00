// Face frames that span several cases of a run. Each of these has its share of the frame, which
// divides its front as a frame of its own would; the frame itself is planned as any other, its
// layout those of the cases side by side.
#pragma once

#include <cstddef>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "face_frame_plan.h"
#include "kind.h"

namespace haunch {

struct Caution;
struct RunSpec;
struct WallRunPlan;

/// One that the spec asks for.
struct RunFrame {
  std::string name;                  // "frame 1"
  std::vector<std::size_t> entries;  // of the run's order, side by side
};

/// What of one is made and carried as a whole.
struct RunFramePart {
  std::string name, path;  // "frame 1, part 2", "frame-1-2"
  std::vector<std::size_t> entries;
  std::shared_ptr<const LayoutNode> layout;
  FaceFramePlan frame;
  Length left;  // along the wall
  Length foot;  // above what the cases stand on
};

/// Takes what the spec says of frames, and gives each of their cases its share. What cannot be is
/// added to the problems.
void share_frames(RunSpec& spec, std::vector<Problem>& problems);

/// Whether two neighbours in the order stand behind one frame.
bool in_one_frame(const RunSpec& spec, std::size_t left, std::size_t right);

class Ledger;
/// The frames of a run whose cases were placed, divided where they are longer than is made.
std::vector<RunFramePart> plan_frames(const RunSpec& spec, const WallRunPlan& plan, Ledger& ledger);

/// Across each, down each, and how the cases stand behind it.
std::vector<Chain> frame_chains(const WallRunPlan& plan, const RunSpec& spec);

/// How they are put up; empty where there are none.
std::string frame_words(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
