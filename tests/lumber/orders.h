// Orders in whole millimetres, for tests.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "cutting.h"

namespace haunch::lumber {

inline Length mm(std::int64_t whole) {
  return Length::from_mm(whole);
}

inline Want part(std::int64_t length, std::int64_t width) {
  return {.name = std::to_string(length) + "x" + std::to_string(width),
          .length = mm(length),
          .width = mm(width)};
}

inline Stock yard(const std::string& id, std::int64_t length, std::int64_t width, Money cost) {
  return {.id = id,
          .length = mm(length),
          .width = mm(width),
          .bought = true,
          .cost = cost,
          .end_trim = {},
          .edge_trim = {}};
}

inline CuttingOrder order_of(std::vector<Want> wants, std::vector<Stock> stock, std::int64_t kerf) {
  CuttingOrder order;
  order.wants = std::move(wants);
  order.stock = std::move(stock);
  order.saw = {.kerf = mm(kerf), .offcut_length = mm(300), .offcut_width = mm(50)};
  return order;
}

}  // namespace haunch::lumber
