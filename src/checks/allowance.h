// What a search may spend of the effort that is counted, see core/effort_spent.h.
#pragma once

#include <cstdint>

#include "effort_spent.h"

namespace haunch {

/// What the remedies of one item may take, about a second.
inline constexpr std::int64_t kEffortOfItem = 200'000'000;

/// What may still be spent: by a search as a whole, and by what of it has its turn.
class Allowance {
 public:
  /// `one_try`: what a try is expected to take; none begins that would go beyond `most`.
  Allowance(std::int64_t most, std::int64_t one_try)
      : end_(effort_spent() + most), until_(end_), half_(end_), one_try_(one_try) {}

  std::int64_t left() const { return end_ - effort_spent(); }

  /// Gives a turn to what may spend so much.
  void begin_turn(std::int64_t share) {
    half_ = effort_spent() + share / 2;
    until_ = effort_spent() + share;
    refused_ = false;
  }

  /// Whether another try may begin; whether one may that leaves half of the turn for others.
  bool allows() { return noted(effort_spent() < until_ && left() >= one_try_); }
  bool allows_in_half() { return noted(effort_spent() < half_ && left() >= one_try_); }

  /// Whether something was not tried for want of effort, since the turn began.
  bool refused() const { return refused_; }

 private:
  bool noted(bool allowed) {
    refused_ = refused_ || !allowed;
    return allowed;
  }

  std::int64_t end_, until_, half_, one_try_;
  bool refused_ = false;
};

}  // namespace haunch
