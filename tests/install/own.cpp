#include <haunch/length_text.h>
#include <haunch/work.h>

#include <iostream>
#include <iterator>

int main() {
  const std::string spec(std::istreambuf_iterator<char>(std::cin), {});
  for (const haunch::WorkedItem& item : haunch::work_spec(spec).items)
    for (const haunch::Piece& piece : item.wood.pieces)
      std::cout << piece.mark << "  " << haunch::in_words(piece.blank[0], haunch::Unit::mm) << "\n";
}
