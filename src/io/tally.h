// How a run over many specs went.
#pragma once

#include <cstddef>

namespace haunch {

struct Tally {
  std::size_t worked = 0;
  std::size_t failed = 0;  // of those worked: a check fails
  std::size_t refused = 0;

  std::size_t items() const { return worked + refused; }
  bool nothing_worked() const { return worked == 0 && refused > 0; }
};

}  // namespace haunch
