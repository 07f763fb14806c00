#include "marks.h"

#include <utility>

namespace haunch {

std::string piece_mark(std::size_t piece) {
  std::string mark;
  for (std::size_t left = piece + 1; left > 0; left = (left - 1) / 26)
    mark.insert(mark.begin(), static_cast<char>('A' + (left - 1) % 26));
  return mark;
}

std::size_t add_piece(Assembly& assembly, std::string name, Role role, const Triple& blank,
                      const Place& place) {
  const std::size_t number = assembly.pieces.size();
  assembly.pieces.push_back({piece_mark(number), std::move(name), role, blank, place, {}, {}});
  return number;
}

}  // namespace haunch
