// Tolerances, as a spec or a shop file states them under "work", "tolerance" and "fit", and what is
// taken where they are silent.
#pragma once

#include <vector>

#include "kind.h"
#include "spec.h"
#include "tolerances.h"

namespace haunch {

/// Whether the spec or the shop file speaks of them.
bool speaks_of_tolerances(const Spec& spec);

struct SettledTolerances {
  Tolerances tolerances;
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;  // at places in the spec
};

/// The spec's values, for want of them the shop's, for want of those the usual ones of its way of
/// working.
SettledTolerances settle_tolerances(const Spec& spec);

/// Gives a job what its leaf's spec or the shop speaks of; what can't be goes to `problems`.
void take_tolerances(Job& job, const Spec& leaf, std::vector<Problem>& problems);

}  // namespace haunch
