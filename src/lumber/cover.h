// The least price of boards that together carry enough: of area, or of the value that dual prices
// give to parts. What any pattern carries at most bounds every plan from below.
//
//   Carrier         a kind of board
//   Cover, cover    in parts of boards, and in whole boards
//   part_area, board_area, row_need, row_room, round_up_to_prices
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "model.h"

namespace haunch::lumber {

struct Carrier {
  std::int64_t price = 0;
  double value = 0;  // the most that one board carries, a whole number
  std::optional<std::int64_t> limit;
};

struct Cover {
  bool possible = true;  // all boards together carry enough
  std::int64_t parts_of_boards = 0;
  std::int64_t whole_boards = 0;
};

/// The least price that carries `need`, a whole number below 2^53; rounded up to what prices can
/// add up to.
Cover cover(std::vector<Carrier> carriers, double need);

/// In squares of a tenth of a mm: parts rounded down, boards up, so that a bound stays one.
double part_area(const PartKind& part);
double board_area(const BoardKind& board);
/// The same along the board alone, where all parts lie in a row.
double row_need(const PartKind& part);
double row_room(const BoardKind& board);

/// `value` rounded up to a multiple of what all prices are multiples of, after rounding errors.
std::int64_t round_up_to_prices(double value, const Model& model);

}  // namespace haunch::lumber
