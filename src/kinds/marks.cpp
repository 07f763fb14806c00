#include "marks.h"

namespace haunch {

std::string piece_mark(std::size_t piece) {
  std::string mark;
  for (std::size_t left = piece + 1; left > 0; left = (left - 1) / 26)
    mark.insert(mark.begin(), static_cast<char>('A' + (left - 1) % 26));
  return mark;
}

}  // namespace haunch
