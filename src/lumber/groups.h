// Pieces that belong together: which of equal pieces comes from which board.
//
//   want_order      so that pieces of one group come from one board where the patterns let them
//   split_groups    the groups that do not
#pragma once

#include "cut_order.h"

namespace haunch::lumber {

/// For boards cut up in the order of `patterns`.
Supply::WantOrder want_order(const std::vector<Pattern>& patterns, const Model& model,
                             const CuttingOrder& order);

/// By name, in the order of the wants.
std::vector<std::string> split_groups(const std::vector<BoardPlan>& boards,
                                      const CuttingOrder& order);

}  // namespace haunch::lumber
