// The steps by which a frame's sizes are settled. Each rests on what the ones before it put into
// the plan.
#pragma once

#include "frame_plan.h"
#include "key_ledger.h"

namespace haunch {

// frame_size_plan.cpp: from the wall to the leaf and back.
void settle_sizes(KeyLedger& ledger, CasePlan& plan);

// frame_cautions.cpp
std::vector<Caution> frame_cautions(const KeyedValues& values, const CasePlan& plan, Unit unit);

}  // namespace haunch
