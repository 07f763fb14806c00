// The end of a piece let whole into another: into a housing, or into a rebate at the other's end.
#pragma once

#include "haunch/wood.h"

namespace haunch {

struct HousingDesign {
  Length depth;
  Length allowance;  // width of the housing minus what stands in it, half at each side
};

/// Cuts a housing across `receives` for the end of `enters`, which lies in it already, and adds the
/// joint. The housing goes through the whole width of `receives`.
void house_end(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
               const HousingDesign& housing);

/// Cuts `receives` away from the lower edge of `enters` to its own end, so deep, and adds the
/// joint: `enters` rests on what is left.
void rebate_end(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
                Length depth);

}  // namespace haunch
