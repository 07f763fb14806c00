// Parts put into a board as they come, the largest first: quick, and tidy.
#pragma once

#include <optional>
#include <vector>

#include "pattern.h"

namespace haunch::lumber {

/// All of them on one span, looked at this way: in sections, each of parts one above the other.
/// Nothing where they do not fit so.
std::optional<SpanLayout> span_on_shelves(std::vector<Item> items, const Model& model,
                                          const BoardKind& board, const Span& span, bool rip_first);

/// The same on all spans of a board, in the first of the ways allowed that does.
std::optional<Pattern> board_on_shelves(std::vector<Item> items, const Model& model,
                                        std::size_t board);

}  // namespace haunch::lumber
