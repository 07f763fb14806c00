// Set-ups: what a machine is set to once, with all that is run on it, in the order of the work.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "precedence.h"
#include "way.h"

namespace haunch {

/// What is measured on the first piece, and between which sizes it may lie; without them no limit
/// is told.
struct FirstPiece {
  SizeName size = SizeName::width;
  Length wanted;
  std::optional<Length> least, most;

  friend bool operator==(const FirstPiece&, const FirstPiece&) = default;
};

/// Of what is worked from both faces: what is to be left between them, so that the second is set by
/// what is measured after the first; and how much either face may lose.
struct SecondFace {
  Length leaves;
  Length most;
};

struct SetupPiece {
  PieceOf of;
  std::vector<std::size_t> features;      // that are made here
  std::vector<std::size_t> goes_on_with;  // that are made here in part
  std::vector<Run> runs;
  bool both_faces = false;  // run from the face side and from the back
  Length horn;              // still on, at each end
  std::size_t strips = 1;   // that it is of here, each by itself
  Triple size = {};         // as it comes to the machine, or each of its strips
  std::optional<SecondFace> second_face = {};
  std::vector<WayFinding> findings = {};  // what stands against working it so
};

struct Setup {
  Step step = Step::cut;
  Process process = Process::groove;
  Cut cut = Cut::whole;
  std::vector<NamedSize> settings;
  std::optional<std::size_t> machine, cutter, holding;  // as of a ShopWay
  int passes = 1;
  std::vector<SetupPiece> pieces = {};
  std::vector<std::size_t> after = {};  // earlier ones that it needs, by index
  std::optional<FirstPiece> first_piece = {};
  int rest_days = 0;         // once it is run
  bool through = false;      // right through the piece, from both sides
  std::string profile = {};  // of a moulding that the shop drew itself: its name

  /// "tenon-haunch", "first-thickness", "recess-after-glue-up"
  std::string operation() const;
};

struct SetupCount {
  std::int64_t setups = 0;
  std::int64_t lower_bound = 0;     // different settings: each takes a set-up at least
  std::int64_t piece_by_piece = 0;  // were every piece finished before the next is begun
  std::int64_t machine_changes = 0;
  std::int64_t fewest_machine_changes = 0;  // each machine that is needed, come to once
  bool is_fewest = false;                   // no order of these set-ups has fewer
};

struct SetupPlan {
  std::vector<Setup> setups;  // in order
  SetupCount count;
};

SetupPlan plan_setups(const std::vector<SetupItem>& items, const std::vector<Machine>& machines);

}  // namespace haunch
