#include "marks.h"

#include <algorithm>
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
  std::string key = in_key(name);
  assembly.pieces.push_back({piece_mark(number), std::move(name), role, blank, place, {}, {}});
  assembly.pieces.back().key = std::move(key);
  return number;
}

std::size_t add_piece_of(Assembly& assembly, const std::string& what, std::size_t enters, Role role,
                         const Triple& blank, const Place& place) {
  const std::string stem = assembly.pieces[enters].key + "/" + in_key(what) + "-";
  const auto before =
      std::count_if(assembly.pieces.begin(), assembly.pieces.end(),
                    [&](const Piece& piece) { return piece.key.starts_with(stem); });
  const std::size_t number =
      add_piece(assembly, what + " of " + assembly.pieces[enters].name, role, blank, place);
  assembly.pieces[number].key = stem + std::to_string(before + 1);
  return number;
}

std::string in_key(std::string name) {
  std::replace(name.begin(), name.end(), ' ', '-');
  return name;
}

}  // namespace haunch
