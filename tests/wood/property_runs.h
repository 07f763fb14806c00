// Running a property over many random specs.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "haunch/wood.h"
#include "random_spec.h"

namespace haunch::test {

/// What came of working one spec's text.
struct Trial {
  std::optional<Assembly> assembly;  // empty: the spec was refused
  std::string refusal;               // the first problem
};

/// Reads and works a spec.
Trial work(const std::string& json);

/// Which specs to run: `usual` of them times the environment's HAUNCH_TEST_EFFORT, or only the one
/// whose seed is HAUNCH_TEST_SEED.
struct Seeds {
  std::uint64_t first = 0;
  std::uint64_t count = 0;
};
Seeds seeds_for(std::uint64_t usual);

/// How many specs were worked, refused, or set aside by a property that does not speak of them.
struct Tally {
  std::uint64_t worked = 0;
  std::uint64_t refused = 0;
  std::uint64_t aside = 0;

  /// Of all that were run, in percent.
  std::uint64_t worked_share() const {
    const std::uint64_t all = worked + refused + aside;
    return all == 0 ? 0 : worked * 100 / all;
  }
};

enum class Outcome { worked, refused, aside };

/// Calls `property` with each seed. It returns an outcome; what is wrong it appends to its second
/// argument, and the run then fails with the seed. After five faults the run stops.
Tally run_over(const Seeds& seeds,
               const std::function<Outcome(std::uint64_t seed, std::string& wrong)>& property);

/// For a run over more than one spec: fails unless at least `least` percent were worked.
void require_worked_share(const Tally& tally, std::uint64_t least);

}  // namespace haunch::test
