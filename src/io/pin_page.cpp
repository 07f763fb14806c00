#include <algorithm>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// The holes of one piece.
struct BoredPiece {
  std::string mark, edge, from;  // edge: of cheeks, that the holes are near
  std::vector<Length> middles;
};

/// Holes of one setting: in cheeks, by where they stand along the piece; in tenons, across it.
struct Bored {
  const Operation* setting;
  ShoulderLine line;  // of a tenon, that its hole is from

  bool in_cheeks() const { return setting->has(SizeName::depth); }
  friend bool operator==(const Bored&, const Bored&) = default;
};
using BoredSets = std::vector<MachineSet<Bored, std::vector<BoredPiece>>>;

BoredSets bored_in(const Assembly& wood, const Making& making) {
  BoredSets sets;
  each_run(making, FeatureKind::pin_hole, [&](const Operation& its, const Run& run) {
    auto& pieces = rows_for(sets, Bored{&its, making.shoulders[run.piece].line});
    const Piece& piece = wood.pieces[run.piece];
    const std::string edge = its.has(SizeName::depth)
                                 ? entered_edge(piece, piece.features[run.feature].prisms.front())
                                 : std::string();
    if (pieces.empty() || pieces.back().mark != piece.mark || pieces.back().edge != edge)
      pieces.push_back({piece.mark, edge, std::string(word_of(run.from)), {}});
    auto& middles = pieces.back().middles;  // both ends of a rail are alike
    if (std::find(middles.begin(), middles.end(), run.near) == middles.end())
      middles.push_back(run.near);
  });
  return sets;
}

PageText hole_table(std::vector<BoredPiece> pieces, bool cheeks, const LengthPrinter& lengths) {
  TextTable table(cheeks ? std::vector<std::string>{"in", "edge", "from", "middles at"}
                         : std::vector<std::string>{"in", "from", "middles at"});
  for (BoredPiece& piece : pieces) {
    std::sort(piece.middles.begin(), piece.middles.end());
    std::string middles;
    for (const Length middle : piece.middles)
      middles += (middles.empty() ? "" : ", ") + lengths.one(middle);
    std::vector<Cell> cells{Cell::of_mark(piece.mark)};
    if (cheeks) cells.emplace_back(piece.edge);
    cells.emplace_back(piece.from);
    cells.emplace_back(middles);
    table.add_alike(std::move(cells));
  }
  return PageText::table(table, lengths, 4);
}

PageText holes_text(const BoredSets& sets, const LengthPrinter& lengths) {
  PageText page;
  for (const auto& [bored, pieces] : sets) {
    const Operation& its = *bored.setting;
    const bool cheeks = bored.in_cheeks();
    std::string text = cheeks ? "in the cheeks of mortises, first: " : "in tenons: ";
    text += lengths.one(its.setting(SizeName::diameter)) + " wide, middle " +
            lengths.one(its.setting(cheeks ? SizeName::from_edge : SizeName::from_shoulder)) +
            (cheeks ? " from the edge, " : " from the " + std::string(word_of(bored.line)));
    if (cheeks)
      text += its.through ? "right through"
                          : lengths.one(its.setting(SizeName::depth)) + " deep from the face side";
    page += PageText::paragraph(text) + hole_table(pieces, cheeks, lengths);
  }
  return page;
}

/// Whether the pins stop in the cheek behind their tenons: such have no taper to be sawn off.
bool is_blind(const BoredSets& sets) {
  return std::any_of(sets.begin(), sets.end(),
                     [](const auto& it) { return it.key.in_cheeks() && !it.key.setting->through; });
}

/// "1.5": how much nearer to the shoulder the tenons' holes are; of all pins the same.
Length draw_of(const Assembly& wood) {
  Length draw;
  for (const Joint& joint : wood.joints)
    if (joint.design.draw) draw = *joint.design.draw;
  return draw;
}

}  // namespace

PageParts pin_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const std::vector<const Piece*> pins = all_of(wood, Role::pin);
  if (pins.empty()) return {};
  const Piece& pin = *pins.back();
  const BoredSets sets = bored_in(wood, making);
  const Length draw = draw_of(wood);
  const std::string way =
      draw > Length() ? "The tenons' holes are " + lengths.one(draw) +
                            " nearer to the shoulder, so that a pin draws it home; further off, "
                            "it would push it open. Bored with the joint apart."
                      : "The tenons' holes are in line with the others: the pins hold, and do not "
                        "draw. Bored through both with the joint home.";
  const std::string over =
      lengths.one(pin.horn * 2) +
      (is_blind(sets) ? " longer to be struck" : " longer for taper and waste");
  return {{"PINS through tenons", holes_text(sets, lengths) + PageText::paragraph(way) +
                                      PageText::paragraph("pins " + joined(marks_of(pins)) + ": " +
                                                          lengths.one(pin.blank[1]) + " thick, " +
                                                          lengths.one(pin.blank[0]) +
                                                          " long where they stand, sawn " + over)}};
}

}  // namespace haunch
