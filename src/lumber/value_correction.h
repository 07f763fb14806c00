// Plans by sequential value correction: boards are filled one after the other for the most value,
// and parts that came out dear are valued higher in the next round, so that they are placed sooner.
//
//   Rest, rest_of     what is still to be placed, and the boards left for it
//   Corrector         one round, or as many as the work allows
#pragma once

#include <cstdint>
#include <vector>

#include "pattern.h"
#include "random.h"
#include "strip_fill.h"

namespace haunch::lumber {

struct Rest {
  std::vector<int> parts;            // by kind
  std::vector<std::int64_t> boards;  // by kind

  bool done() const;
  /// Takes the pattern's parts and its board.
  void take(const Pattern& pattern);
  /// How many times over the pattern can be taken.
  std::int64_t times(const Pattern& pattern) const;
};

/// All of the order.
Rest rest_of(const Model& model);

class Corrector {
 public:
  Corrector(const Model& model, std::uint64_t seed);

  /// The parts valued by their area.
  std::vector<double> values_by_area() const;
  /// Lays out the rest, and corrects the values by how it went.
  Solution round(Rest rest, std::vector<double>& values, const FillCare& care);
  /// How many boards have been filled so far: the measure of work.
  std::int64_t fills() const { return fills_; }
  std::int64_t work() const { return filler_.work(); }

 private:
  Pattern next_board(const Rest& rest, const std::vector<double>& values, const FillCare& care);
  std::vector<std::size_t> candidates(const Rest& rest);
  void correct(std::vector<double>& values, const Pattern& pattern, std::int64_t times);

  const Model& model_;
  Filler filler_;
  Random random_;
  std::vector<double> areas_;  // of parts, enlarged, in square mm
  std::int64_t fills_ = 0;
};

}  // namespace haunch::lumber
