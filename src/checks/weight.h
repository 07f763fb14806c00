// What a piece of work weighs, piece by piece, and what is to be told of that.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kind.h"

namespace haunch {

/// Kilograms of what has a known density, and the pieces that have none.
struct Weight {
  double kilograms = 0;
  std::vector<std::size_t> unknown;

  bool is_known() const { return unknown.empty(); }
};

struct LeafWeight {
  std::size_t group = 0;
  Weight weight;
};

/// Of each piece as it is cut, at the moisture of the bench; where that is not stated, at 12 %.
struct Weights {
  double percent = 0;
  std::vector<std::optional<double>> pieces;  // kilograms; empty: its density is not known
  Weight whole;
  std::vector<LeafWeight> leaves;

  bool any_known() const;
};

Weights weigh(const Assembly& wood, const Job& job);

/// "48 kg", or "weight not known: no density for LVL; the rest comes to 31 kg".
std::string weight_words(const Weight& weight, const Assembly& wood, const Job& job);

/// "no density for LVL, birch plywood", of what is not known.
std::string unknown_words(const Weight& weight, const Assembly& wood, const Job& job);

/// What whoever lifts and hangs its leaves is to be told.
std::vector<Caution> weight_cautions(const Weights& weights, const Assembly& wood, const Job& job);

}  // namespace haunch
