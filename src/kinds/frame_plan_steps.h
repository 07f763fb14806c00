// The steps by which a frame's sizes are settled. Each rests on what the ones before it put into
// the plan.
#pragma once

#include <optional>

#include "frame_plan.h"
#include "frame_rules.h"
#include "ledger.h"

namespace haunch {

/// What a rule that fixes the wall's opening over the leaf leaves for the frame's wood, and for
/// what packs it to the wall.
struct RuledRoom {
  const FrameRule* rule = nullptr;
  Length side;  // for a jamb
  Length top;   // for the head
};

// frame_size_plan.cpp: from the wall to the leaf and back.

/// The room under the spec's rule beside all else that the plan has; none where no rule fixes it.
std::optional<RuledRoom> ruled_room(Ledger& ledger, CasePlan& plan);
/// The thickest board of a whole size that goes into a room and leaves something to pack it by;
/// zero where none does that would hold.
Length board_within(const Ledger& ledger, Length room);
void settle_sizes(Ledger& ledger, CasePlan& plan);

// frame_cautions.cpp

/// What is clear with the leaf, or one of a pair, open at 90 degrees; down to whole millimetres or
/// sixteenths.
NamedRoom clear_room(const Spec& spec, const CasePlan& plan, Unit unit);
std::vector<Caution> frame_cautions(const Spec& spec, const CasePlan& plan, Unit unit);

}  // namespace haunch
