// Boards of a plan that are cut alike, told or drawn once.
#pragma once

#include <string>
#include <vector>

#include "cut_rows.h"

namespace haunch {

/// Boards of one stock and thickness that are cut alike.
struct AlikeBoards {
  const MaterialPlan* plan;
  std::string pattern;
  std::vector<NumberedBoard> boards;

  const lumber::BoardPlan& first() const { return *boards.front().board; }
};

std::vector<AlikeBoards> alike_boards(const LumberReport& report, const LengthPrinter& lengths);

/// What is taken off each of them before anything else.
std::string trim_of(const LumberReport& report, const AlikeBoards& alike,
                    const LengthPrinter& lengths);

/// "BOARDS 2 3: rack-2, its no. 1 2, 2400 x 180 x 54, oak, in hand; 2 cut alike"
std::string board_heading(const LumberReport& report, const AlikeBoards& alike,
                          const LengthPrinter& lengths);

/// "54", of a quarter "5/4"
std::string thickness_name(const StockItem& item, const LengthPrinter& lengths);

}  // namespace haunch
