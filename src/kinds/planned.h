// A plan with every size settled, and what settling it gave besides.
#pragma once

#include <utility>
#include <vector>

#include "kind.h"
#include "ledger.h"

namespace haunch {

template <class Plan>
struct Planned {
  Plan plan;
  std::vector<Assumed> assumed;
  std::vector<Lever> levers;
  std::vector<Problem> problems;  // when there are any, the plan is not to be used
  std::vector<NamedRoom> rooms;
  std::vector<Chain> chains;
  std::vector<Caution> cautions;

  /// What was noted while it was settled; leaves the ledger without.
  void take(Ledger& ledger) {
    assumed = std::move(ledger.assumed);
    levers = std::move(ledger.levers);
    problems = std::move(ledger.problems);
  }

  /// The work but its wood, which is still to be set out from the plan.
  Worked take_work() {
    Worked work;
    work.assumed = std::move(assumed);
    work.problems = std::move(problems);
    work.rooms = std::move(rooms);
    work.chains = std::move(chains);
    work.cautions = std::move(cautions);
    return work;
  }
};

}  // namespace haunch
