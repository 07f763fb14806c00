#include "alike_boards.h"

#include <algorithm>

namespace haunch {

std::vector<AlikeBoards> alike_boards(const LumberReport& report, const LengthPrinter& lengths) {
  std::vector<AlikeBoards> all;
  std::size_t number = 0;
  for (const MaterialPlan& plan : report.plans) {
    const CutRows rows(report, plan, lengths);
    for (const lumber::BoardPlan& board : plan.plan.boards) {
      const std::string pattern = rows.pattern(board);
      auto same = std::find_if(all.begin(), all.end(), [&](const AlikeBoards& it) {
        return it.plan == &plan && it.first().stock == board.stock && it.pattern == pattern;
      });
      if (same == all.end()) same = all.insert(all.end(), {&plan, pattern, {}});
      same->boards.push_back({&board, ++number});
    }
  }
  return all;
}

std::string trim_of(const LumberReport& report, const AlikeBoards& alike,
                    const LengthPrinter& lengths) {
  return CutRows(report, *alike.plan, lengths).trim(alike.first());
}

std::string board_heading(const LumberReport& report, const AlikeBoards& alike,
                          const LengthPrinter& lengths) {
  const MaterialPlan& plan = *alike.plan;
  const StockItem& item = report.stock.items[plan.items[alike.first().stock]];
  std::vector<std::string> numbers;
  std::vector<std::string> copies;
  for (const NumberedBoard& each : alike.boards) {
    numbers.push_back(std::to_string(each.number));
    copies.push_back(std::to_string(number_of(item, *each.board)));
  }
  std::string text = (item.thickness.sheet ? "SHEET" : "BOARD") +
                     std::string(numbers.size() > 1 ? "S " : " ") + joined(numbers) + ": " +
                     item.id;
  if (item.count != 1 || item.taken > 0) text += ", its no. " + joined(copies);
  text += ", " + lengths.one(item.length) + " x " + lengths.one(item.width) + " x " +
          thickness_name(item, lengths) + (plan.material.empty() ? "" : ", " + plan.material) +
          (item.price ? ", bought" : ", in hand");
  if (numbers.size() > 1) text += "; " + std::to_string(numbers.size()) + " cut alike";
  return text;
}

std::string thickness_name(const StockItem& item, const LengthPrinter& lengths) {
  return item.quarters.empty() ? lengths.one(item.thickness.thickness) : item.quarters;
}

}  // namespace haunch
