// Hinges with a cup: bored in the backs of leaves, their plates in what these hang on.
#include <string>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

Length size_in(const Feature& feature, SizeName name) {
  return size_of(feature, name).value_or(Length());
}

/// The cups of a stile in one row, stiles that are bored alike in one.
TextTable cups_in(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable cups({"cups in", "from edge", "round", "deep", "from foot"});
  for (const Piece& piece : wood.pieces) {
    std::string places;
    const Feature* first = nullptr;
    for (const Feature& cup : piece.features) {
      if (cup.kind != FeatureKind::hinge_cup) continue;
      if (first == nullptr) first = &cup;
      places += (places.empty() ? "" : ", ") + lengths.one(size_in(cup, SizeName::from_foot));
    }
    if (first == nullptr) continue;
    cups.add_alike({Cell::of_mark(piece.mark), size_in(*first, SizeName::from_edge),
                    size_in(*first, SizeName::diameter), size_in(*first, SizeName::depth), places});
  }
  return cups;
}

/// Those in a case itself stand on its rods.
TextTable plates_in(const Assembly& wood) {
  TextTable plates({"plate of", "in", "face", "holes at", "from front", "round", "deep"});
  for (const Piece& piece : wood.pieces)
    for (const Feature& hole : piece.features) {
      if (hole.kind != FeatureKind::screw_hole || !hole.fitting || is_of_case(wood, piece))
        continue;
      const Surface face = side_of(piece, {hole.fitting->into, hole.fitting->from_high});
      plates.add({hole.fitting->name, Cell::of_mark(piece.mark), std::string(word_of(face)),
                  size_in(hole, SizeName::from_foot), size_in(hole, SizeName::from_front),
                  size_in(hole, SizeName::diameter), size_in(hole, SizeName::depth)});
    }
  return plates;
}

}  // namespace

PageParts cup_page(const Assembly& wood, const Making&, const LengthPrinter& lengths) {
  const TextTable cups = cups_in(wood, lengths);
  const TextTable plates = plates_in(wood);
  if (cups.empty() && plates.empty()) return {};
  return {{"HINGES WITH A CUP, bored in the backs of the leaves",
           PageText::table(cups, lengths, 2) + PageText::table(plates, lengths, 2),
           {PageText::paragraph(
               "middles of all holes; from foot and at: from the lower end of the piece; "
               "from edge: the leaf's outer one")}}};
}

}  // namespace haunch
