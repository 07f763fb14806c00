// What every plan must come to, in whichever of their ways the parts are made.
//
//   Way, AlikeParts, WaysOrder    what is asked
//   bound_by_sizes                of a model's boards, by area and by linear programming
//   bounds_of_every_way           of an order
#pragma once

#include <cstdint>
#include <vector>

#include "cutting.h"
#include "fewer_sizes.h"
#include "model.h"

namespace haunch::lumber {

/// So many pieces of one rough size out of stock of one thickness.
struct Way {
  std::size_t thickness = 0;  // index into WaysOrder::stock
  Length length, width;
  std::int64_t pieces = 1;

  friend auto operator<=>(const Way&, const Way&) = default;
};

struct AlikeParts {
  std::int64_t parts = 0;
  std::vector<Way> ways;  // each part is made in one of them
};

struct WaysOrder {
  std::vector<std::vector<Stock>> stock;  // by thickness
  std::vector<AlikeParts> parts;
  Saw saw = {};
  Stages stages = Stages::any_three;
  Measure measure = Measure::money;
  int effort = 1;  // with more the bound is as high at least
};

/// No way of making and cutting all these parts comes under `best`. `plan` and what follows from it
/// is left open.
Bounds bounds_of_every_way(const WaysOrder& order);

/// The same for boards and parts as the search sees them; `yard` has boards only, or parts that do
/// not matter. Work grows with `effort`; it is counted.
Bounds bound_by_sizes(const Model& yard, std::vector<PartWays> parts, int effort);

/// The greatest of the bounds, and which it is.
void settle_best(Bounds& bounds);

}  // namespace haunch::lumber
