// Gaps between what is coated: a spec says them as they are to be when all is finished, wood is cut
// to what they are before.
#pragma once

#include <vector>

#include "kind.h"
#include "spec.h"

namespace haunch {

/// Of a finished gap: wider by the film on what stands at each side of it.
inline Length bare_gap(const KeyValues& spec, Length finished) {
  return finished + spec.size("finish.film").value_or(Length()) * 2;
}

/// How each gap of a job, given or assumed, comes to what is cut; nothing where no film is told.
std::vector<Chain> bare_gap_chains(const Job& job, const std::vector<Assumed>& assumed);

}  // namespace haunch
