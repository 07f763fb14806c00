// How pieces are called where those of several items lie together: in lumber, set-ups, labels.
#pragma once

#include <cstdint>
#include <string>

namespace haunch {

/// "K1", or of several alike the second: "K1#2".
inline std::string one_of_item(const std::string& id, std::int64_t copy, std::int64_t quantity) {
  return quantity == 1 ? id : id + "#" + std::to_string(copy);
}

/// "K1#2/C": piece C of the second K1.
inline std::string order_mark(const std::string& one, const std::string& mark) {
  return one + "/" + mark;
}

}  // namespace haunch
