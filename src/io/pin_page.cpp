#include "pin_page.h"

#include <algorithm>
#include <vector>

#include "report.h"
#include "shoulders.h"

namespace haunch {
namespace {

/// The holes of one piece.
struct BoredPiece {
  std::string mark, from;
  std::vector<Length> middles;

  bool alike(const BoredPiece& other) const {
    return from == other.from && middles == other.middles;
  }
};

/// Holes of one setting: in cheeks, by where they stand along a stile; in tenons, across a rail.
struct Bored {
  Length diameter, from_shoulder;
  std::optional<Length> depth;                 // in cheeks
  bool through = false;                        // right through them
  ShoulderLine line = ShoulderLine::shoulder;  // of a tenon, that its hole is from
  std::vector<BoredPiece> pieces = {};

  bool alike(const Feature& hole, ShoulderLine its) const {
    return diameter == size_of(hole, SizeName::diameter) &&
           from_shoulder == size_of(hole, SizeName::from_shoulder) &&
           depth == size_of(hole, SizeName::depth) && line == its;
  }
};

void add_hole(std::vector<Bored>& settings, const Piece& piece, const Feature& hole,
              ShoulderLine line) {
  const auto depth = size_of(hole, SizeName::depth);
  auto setting = std::find_if(settings.begin(), settings.end(),
                              [&](const Bored& it) { return it.alike(hole, line); });
  if (setting == settings.end())
    setting = settings.insert(settings.end(), {*size_of(hole, SizeName::diameter),
                                               *size_of(hole, SizeName::from_shoulder), depth,
                                               depth == piece.blank[2], line});
  const auto from_foot = size_of(hole, SizeName::from_foot);
  const Length middle = from_foot ? *from_foot : *size_of(hole, SizeName::from_edge);
  auto& pieces = setting->pieces;
  if (pieces.empty() || pieces.back().mark != piece.mark)
    pieces.push_back({piece.mark, from_foot ? "foot" : "lower edge", {}});
  auto& middles = pieces.back().middles;  // both ends of a rail are alike
  if (std::find(middles.begin(), middles.end(), middle) == middles.end()) middles.push_back(middle);
}

std::string hole_table(std::vector<BoredPiece> pieces, const LengthPrinter& lengths) {
  TextTable table({"in", "from", "middles at"});
  for (BoredPiece& piece : pieces)
    std::sort(piece.middles.begin(), piece.middles.end());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const auto is_like = [&](const BoredPiece& it) { return it.alike(pieces[i]); };
    const auto begin = pieces.begin();
    const auto here = begin + static_cast<std::ptrdiff_t>(i);
    if (std::any_of(begin, here, is_like)) continue;
    std::vector<std::string> marks;
    for (const BoredPiece& piece : pieces)
      if (is_like(piece)) marks.push_back(piece.mark);
    std::string middles;
    for (const Length middle : pieces[i].middles)
      middles += (middles.empty() ? "" : ", ") + lengths.one(middle);
    table.add({joined(marks), pieces[i].from, middles});
  }
  return table.text(lengths, 4);
}

/// How far shoulders stand past the face edge, where mouldings are cut away for them.
Length set_back_of(const Assembly& wood) {
  Length most;
  for (const Joint& joint : wood.joints)
    if (joint.tenon) most = std::max(most, joint.tenon->set_back);
  return most;
}

std::string holes_text(const std::vector<Bored>& settings, Length set_back,
                       const LengthPrinter& lengths) {
  std::string page;
  for (const Bored& bored : settings) {
    std::string text = bored.depth ? "in the cheeks of mortises, first: " : "in tenons: ";
    const Length middle = bored.from_shoulder + (bored.depth ? set_back : Length());
    text += lengths.one(bored.diameter) + " wide, middle " + lengths.one(middle) +
            (bored.depth ? " from the face edge, "
                         : " from the " + std::string(shoulder_line_word(bored.line)));
    if (bored.depth)
      text +=
          bored.through ? "right through" : lengths.one(*bored.depth) + " deep from the face side";
    page += "  " + wrapped(text, kPageWidth, 2) + "\n" + hole_table(bored.pieces, lengths);
  }
  return page;
}

/// Whether the pins stop in the cheek behind their tenons: such have no taper to be sawn off.
bool is_blind(const std::vector<Bored>& settings) {
  return std::any_of(settings.begin(), settings.end(),
                     [](const Bored& it) { return it.depth && !it.through; });
}

/// "1.5": how much nearer to the shoulder the tenons' holes are; of all pins the same.
Length draw_of(const Assembly& wood) {
  Length draw;
  for (const Joint& joint : wood.joints)
    if (joint.design.draw) draw = *joint.design.draw;
  return draw;
}

}  // namespace

std::string pin_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::vector<Bored> settings;
  std::vector<std::string> pins;
  const Piece* pin = nullptr;
  const std::vector<Shoulders> shoulders = shoulders_of(wood);
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    const Piece& piece = wood.pieces[number];
    if (piece.role == Role::pin) {
      pin = &piece;
      pins.push_back(piece.mark);
    }
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::pin_hole)
        add_hole(settings, piece, feature, shoulders[number].line);
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
  return "\nPINS through tenons\n" + holes_text(settings, set_back_of(wood), lengths) + "  " +
         wrapped(way, kPageWidth, 2) + "\n  " +
         wrapped("pins " + joined(pins) + ": " + lengths.one(pin->blank[1]) + " thick, " +
                     lengths.one(pin->blank[0]) + " long where they stand, sawn " + over,
                 kPageWidth, 2) +
         "\n";
}

}  // namespace haunch
