// How a run over many specs went.
#pragma once

#include <cstddef>
#include <string>

namespace haunch {

struct Tally {
  std::size_t worked = 0;
  std::size_t failed = 0;  // of those worked: a check fails
  std::size_t refused = 0;

  std::size_t items() const { return worked + refused; }
  bool nothing_worked() const { return worked == 0 && refused > 0; }
};

/// On a page with less than all on it: "NOT HERE: 1 of 3 items was refused; …".
inline std::string not_here(const Tally& tally) {
  return "NOT HERE: " + std::to_string(tally.refused) + " of " + std::to_string(tally.items()) +
         (tally.refused == 1 ? " items was refused" : " items were refused") +
         "; standard error said why\n";
}

}  // namespace haunch
