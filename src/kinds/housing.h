// The end of a piece let whole into another: into a housing, or into a rebate at the other's end.
#pragma once

#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

struct HousingDesign {
  Length depth;
  Length allowance;  // width of the housing minus what stands in it, half at each side
};

/// Cuts a housing across the receiver for an end which lies in it already, and adds the joint. The
/// housing goes through the whole width of the receiver.
void house_end(Assembly& assembly, const Junction& junction, const HousingDesign& housing);

/// Cuts the receiver away from the low face of what enters to its own end, so deep, and adds the
/// joint: the entering piece rests on what is left.
void rebate_end(Assembly& assembly, const Junction& junction, Length depth);

}  // namespace haunch
