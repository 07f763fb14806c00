// How much measuring was done, counted: what bounds a search, so that it ends at the same try on
// every machine.
#pragma once

#include <cstddef>
#include <cstdint>

namespace haunch {

/// Counts measuring: comparing two boxes is 1, what takes longer more.
void spend_effort(std::size_t effort);

/// What was spent in this thread so far. Only the difference of two readings means anything: what
/// lies between them is the same whatever was done before.
std::int64_t effort_spent();

}  // namespace haunch
