// Numbers that look like chance, the same on every machine.
#pragma once

#include <cstdint>

namespace haunch::lumber {

/// The generator "splitmix64": 64 bits of state, any seed will do.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}

  std::uint64_t next() {
    state_ += 0x9e3779b97f4a7c15U;
    std::uint64_t mixed = state_;
    mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9U;
    mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebU;
    return mixed ^ (mixed >> 31U);
  }

  /// 0 to below `end` (> 0).
  std::size_t below(std::size_t end) { return static_cast<std::size_t>(next() % end); }

  /// 0 to below 1.
  double share() { return static_cast<double>(next() >> 11U) / 9007199254740992.0; }

 private:
  std::uint64_t state_;
};

}  // namespace haunch::lumber
