#include <algorithm>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "report.h"

namespace haunch {
namespace {

/// The holes of one piece.
struct BoredPiece {
  std::string mark, from;
  std::vector<Length> middles;
};

/// Holes of one setting: in cheeks, by where they stand along a stile; in tenons, across a rail.
struct Bored {
  const Operation* setting;
  ShoulderLine line;  // of a tenon, that its hole is from
  std::vector<BoredPiece> pieces = {};

  bool in_cheeks() const { return setting->has(SizeName::depth); }
};

std::vector<Bored> bored_in(const Assembly& wood, const Making& making) {
  std::vector<Bored> settings;
  each_run(making, FeatureKind::pin_hole, [&](const Operation& its, const Run& run) {
    const ShoulderLine line = making.shoulders[run.piece].line;
    auto setting = std::find_if(settings.begin(), settings.end(), [&](const Bored& it) {
      return it.setting == &its && it.line == line;
    });
    if (setting == settings.end()) setting = settings.insert(setting, {&its, line});
    auto& pieces = setting->pieces;
    const std::string& mark = wood.pieces[run.piece].mark;
    if (pieces.empty() || pieces.back().mark != mark)
      pieces.push_back({mark, std::string(word(run.from)), {}});
    auto& middles = pieces.back().middles;  // both ends of a rail are alike
    if (std::find(middles.begin(), middles.end(), run.near) == middles.end())
      middles.push_back(run.near);
  });
  return settings;
}

std::string hole_table(std::vector<BoredPiece> pieces, const LengthPrinter& lengths) {
  TextTable table({"in", "from", "middles at"});
  for (BoredPiece& piece : pieces) {
    std::sort(piece.middles.begin(), piece.middles.end());
    std::string middles;
    for (const Length middle : piece.middles)
      middles += (middles.empty() ? "" : ", ") + lengths.one(middle);
    table.add_alike({Cell::of_mark(piece.mark), piece.from, middles});
  }
  return table.text(lengths, 4);
}

std::string holes_text(const std::vector<Bored>& settings, const LengthPrinter& lengths) {
  std::string page;
  for (const Bored& bored : settings) {
    const Operation& its = *bored.setting;
    const bool cheeks = bored.in_cheeks();
    std::string text = cheeks ? "in the cheeks of mortises, first: " : "in tenons: ";
    text += lengths.one(its.setting(SizeName::diameter)) + " wide, middle " +
            lengths.one(its.setting(cheeks ? SizeName::from_edge : SizeName::from_shoulder)) +
            (cheeks ? " from the face edge, " : " from the " + std::string(word_of(bored.line)));
    if (cheeks)
      text += its.through ? "right through"
                          : lengths.one(its.setting(SizeName::depth)) + " deep from the face side";
    page += paragraph(text) + hole_table(bored.pieces, lengths);
  }
  return page;
}

/// Whether the pins stop in the cheek behind their tenons: such have no taper to be sawn off.
bool is_blind(const std::vector<Bored>& settings) {
  return std::any_of(settings.begin(), settings.end(),
                     [](const Bored& it) { return it.in_cheeks() && !it.setting->through; });
}

/// "1.5": how much nearer to the shoulder the tenons' holes are; of all pins the same.
Length draw_of(const Assembly& wood) {
  Length draw;
  for (const Joint& joint : wood.joints)
    if (joint.design.draw) draw = *joint.design.draw;
  return draw;
}

}  // namespace

std::string pin_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  const std::vector<Bored> settings = bored_in(wood, making);
  std::vector<std::string> pins;
  const Piece* pin = nullptr;
  for (const Piece& piece : wood.pieces) {
    if (piece.role != Role::pin) continue;
    pin = &piece;
    pins.push_back(piece.mark);
  }
  if (pin == nullptr) return {};
  const Length draw = draw_of(wood);
  const std::string way =
      draw > Length() ? "The tenons' holes are " + lengths.one(draw) +
                            " nearer to the shoulder, so that a pin draws it home; further off, "
                            "it would push it open. Bored with the joint apart."
                      : "The tenons' holes are in line with the others: the pins hold, and do not "
                        "draw. Bored through both with the joint home.";
  const std::string over =
      lengths.one(pin->horn * 2) +
      (is_blind(settings) ? " longer to be struck" : " longer for taper and waste");
  return "\nPINS through tenons\n" + holes_text(settings, lengths) + paragraph(way) +
         paragraph("pins " + joined(pins) + ": " + lengths.one(pin->blank[1]) + " thick, " +
                   lengths.one(pin->blank[0]) + " long where they stand, sawn " + over);
}

}  // namespace haunch
