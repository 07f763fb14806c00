// Wide parts glued up from strips.
#pragma once

#include <cstddef>
#include <optional>

#include "haunch/length.h"
#include "haunch/length_text.h"

namespace haunch::lumber {

/// How strips are made.
struct StripRule {
  Length widest;    // of a strip when its edges are jointed
  Length jointing;  // taken off each edge
  Length step;      // strips are sawn to whole multiples of it; > 0
};

/// To 150 mm, 6 in, in whole millimetres or sixteenths; 3 mm, 1/8 in off each edge.
StripRule usual_strips(Unit unit);

/// Strips of equal width for one wide part.
struct Strips {
  std::size_t count = 1;
  Length width;  // as sawn, the jointing of both edges included
};

/// How wide each of `count` strips that make up `wanted` is sawn.
Length strip_width(Length wanted, std::size_t count, const StripRule& rule);

/// The fewest strips of equal width that make up `wanted`, each at most `rule.widest` when jointed
/// and at most `widest_stock` as sawn. Nothing when that can't be, or takes over 100 strips.
std::optional<Strips> strips_for(Length wanted, const StripRule& rule, Length widest_stock);

}  // namespace haunch::lumber
