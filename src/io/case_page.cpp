// What is bored and notched in a case and its fronts: rows for shelf pins, hinges with a cup, toes.
#include <string>
#include <utility>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

Length size_in(const Feature& feature, SizeName name) {
  return size_of(feature, name).value_or(Length());
}

std::string face_words(const Piece& piece, const Feature& feature) {
  return std::string(word_of(side_of(piece, {feature.fitting->into, feature.fitting->from_high})));
}

/// Each feature of a kind with the piece that has it, in the order of the pieces.
template <typename Does>
void each_feature(const Assembly& wood, FeatureKind kind, const Does& does) {
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (feature.kind == kind) does(piece, feature);
}

PageParts pin_rows_page(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable table({"in", "face", "first hole", "holes", "apart", "from front", "round", "deep"});
  each_feature(wood, FeatureKind::shelf_pin_holes, [&](const Piece& piece, const Feature& row) {
    table.add_alike({Cell::of_mark(piece.mark), face_words(piece, row),
                     size_in(row, SizeName::from_foot), std::to_string(row.prisms.size()),
                     size_in(row, SizeName::pitch), size_in(row, SizeName::from_front),
                     size_in(row, SizeName::diameter), size_in(row, SizeName::depth)});
  });
  if (table.empty()) return {};
  return {{"ROWS OF HOLES, for the pins of loose shelves",
           table.text(lengths, 2),
           {paragraph("first hole: its middle, from the lower end of the piece; from front: to the "
                      "middles, from the piece's front edge")}}};
}

/// Whether a hole is for the plate of a hinge: it shares its fitting with a cup.
bool is_for_plate(const Assembly& wood, const Feature& hole) {
  bool is_one = false;
  each_feature(wood, FeatureKind::hinge_cup, [&](const Piece&, const Feature& cup) {
    is_one = is_one || cup.fitting->name == hole.fitting->name;
  });
  return is_one;
}

/// Holes of one runner in one row.
struct RunnerRow {
  const Piece* piece;
  const Feature* first;
  std::string from_front;
};

std::vector<RunnerRow> runner_rows(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<RunnerRow> rows;
  each_feature(wood, FeatureKind::screw_hole, [&](const Piece& piece, const Feature& hole) {
    if (!hole.fitting || is_for_plate(wood, hole)) return;
    const std::string at = lengths.one(size_in(hole, SizeName::from_front));
    if (!rows.empty() && rows.back().piece == &piece &&
        rows.back().first->fitting->name == hole.fitting->name)
      rows.back().from_front += ", " + at;
    else
      rows.push_back({&piece, &hole, at});
  });
  return rows;
}

PageParts runners_page(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable table({"for the", "in", "face", "height", "from front", "round", "deep"});
  for (const RunnerRow& row : runner_rows(wood, lengths)) {
    const Feature& hole = *row.first;
    const auto foot = size_of(hole, SizeName::from_foot);
    table.add({hole.fitting->name, Cell::of_mark(row.piece->mark), face_words(*row.piece, hole),
               foot ? *foot : size_in(hole, SizeName::from_edge), row.from_front,
               size_in(hole, SizeName::diameter), size_in(hole, SizeName::depth)});
  }
  if (table.empty()) return {};
  return {{"HOLES FOR RUNNERS",
           table.text(lengths, 2),
           {paragraph("middles; height: from the lower end of the piece, of packing from its lower "
                      "edge; from front: from the piece's front edge or end")}}};
}

PageParts cups_page(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable cups({"cup of", "in", "from foot", "from edge", "round", "deep"});
  each_feature(wood, FeatureKind::hinge_cup, [&](const Piece& piece, const Feature& cup) {
    cups.add({cup.fitting->name, Cell::of_mark(piece.mark), size_in(cup, SizeName::from_foot),
              size_in(cup, SizeName::from_edge), size_in(cup, SizeName::diameter),
              size_in(cup, SizeName::depth)});
  });
  if (cups.empty()) return {};
  TextTable plates({"plate of", "in", "face", "holes at", "from front", "round", "deep"});
  each_feature(wood, FeatureKind::screw_hole, [&](const Piece& piece, const Feature& hole) {
    if (!hole.fitting || !is_for_plate(wood, hole)) return;
    plates.add({hole.fitting->name, Cell::of_mark(piece.mark), face_words(piece, hole),
                size_in(hole, SizeName::from_foot), size_in(hole, SizeName::from_front),
                size_in(hole, SizeName::diameter), size_in(hole, SizeName::depth)});
  });
  return {
      {"HINGES WITH A CUP, bored in the backs of the leaves",
       cups.text(lengths, 2) + plates.text(lengths, 2),
       {paragraph("middles of all holes; from foot and at: from the lower end of the piece; from "
                  "edge: the leaf's outer one")}}};
}

PageParts notches_page(const Assembly& wood, const LengthPrinter& lengths) {
  TextTable table({"in", "long", "deep", ""});
  each_feature(wood, FeatureKind::notch, [&](const Piece& piece, const Feature& notch) {
    const bool toe = notch.joints.empty();
    table.add_alike({Cell::of_mark(piece.mark), size_in(notch, SizeName::length),
                     toe ? size_in(notch, SizeName::depth) : size_in(notch, SizeName::width),
                     std::string(toe ? "for the toe, from the foot and the front edge"
                                     : "for a stopped housing, from the end and the front edge")});
  });
  if (table.empty()) return {};
  return {{"NOTCHES in front corners", table.text(lengths, 2)}};
}

}  // namespace

PageParts case_page(const Assembly& wood, const Making&, const LengthPrinter& lengths) {
  PageParts page = notches_page(wood, lengths);
  append(page, pin_rows_page(wood, lengths));
  append(page, runners_page(wood, lengths));
  append(page, cups_page(wood, lengths));
  return page;
}

}  // namespace haunch
