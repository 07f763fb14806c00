// All that is marked along the pieces of a case, piece by piece, as from a rod: housings, notches,
// rows of holes, the plates of hinges and the screws of runners.
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "joinery_parts.h"
#include "machine_sets.h"
#include "polyhedron.h"
#include "report.h"
#include "rounding.h"

namespace haunch {
namespace {

/// A stretch along a piece, or holes in a row along it.
struct Mark {
  std::size_t piece = 0;
  std::string side, what;
  std::string takes;           // the mark of what comes there
  Length from, to;             // of holes the middles of the first and the last
  std::size_t holes = 0;       // none: a stretch
  std::vector<Length> across;  // from the front edge, or of what lies on edge from the lower one
  std::optional<Length> deep, round;

  bool is_beside(const Mark& other) const {
    return piece == other.piece && side == other.side && what == other.what && deep == other.deep &&
           round == other.round;
  }
};

/// Of what the case is closed by, whether the face looks into it, so that both of a pair read
/// alike.
std::string side_words(const Assembly& wood, const Piece& piece, WorkedSide side) {
  std::string word(word_of(side_of(piece, side)));
  const auto across = static_cast<std::size_t>(piece.place.axes[side.into]);
  const bool closes = piece.role == Role::side || piece.role == Role::bottom ||
                      piece.role == Role::top || piece.role == Role::top_rail;
  if (side.into != 2 || !closes) return word;
  const bool low = placed_blank(piece).low[across] * 2 < wood.size[across];
  return low == side.from_high ? "inner" : "outer";
}

/// Whether what is told across the piece is told from its front edge.
bool is_from_front(const Piece& piece) {
  return piece.place.axes[1] == Axis::z;
}

Mark stretch(const Assembly& wood, const Run& run) {
  const Piece& piece = wood.pieces[run.piece];
  const Feature& feature = piece.features[run.feature];
  const bool ends = run.near == Length() || run.far == piece.blank[0];
  const Box& cut = feature.cuts.front();
  Mark mark{run.piece,
            side_words(wood, piece, run.side),
            ends ? "end rebate" : "housing",
            wood.pieces[wood.joints[*run.joint].enters].mark,
            run.near,
            *run.far,
            0,
            {},
            size_of(feature, SizeName::depth),
            {}};
  const auto radius = size_of(feature, SizeName::radius);
  if (radius) mark.what += ", round end";
  if (cut.low[1] > Length()) mark.across.push_back(cut.low[1] - radius.value_or(Length()));
  return mark;
}

Mark notch_mark(std::size_t number, const Feature& notch) {
  const Box& cut = notch.cuts.front();
  return {number, "front",    notch.joints.empty() ? "toe notch" : "notch",
          {},     cut.low[0], cut.high[0],
          0,      {},         cut.extent(1),
          {}};
}

/// "drawer 1", of the holes of its runner; else the fitting.
std::string of_what(const Feature& feature) {
  constexpr std::string_view kRunnerOf = "runner of ";
  std::string name = feature.fitting->name;
  return name.starts_with(kRunnerOf) ? name.substr(kRunnerOf.size()) : name;
}

/// Holes of one feature, in rows along the piece: a row for each stretch of its pitch.
std::vector<Mark> holes_in(const Assembly& wood, std::size_t number, const Feature& feature) {
  const Piece& piece = wood.pieces[number];
  const auto pitch = size_of(feature, SizeName::pitch);
  const bool pins = feature.kind == FeatureKind::shelf_pin_holes;
  std::vector<Mark> rows;
  for (const Prism& hole : feature.prisms) {
    const Length along = middle(hole, 0);
    if (!rows.empty() && along - rows.back().to == pitch) {
      rows.back().to = along;
      ++rows.back().holes;
      continue;
    }
    rows.push_back({number,
                    side_words(wood, piece, {feature.fitting->into, feature.fitting->from_high}),
                    pins ? "pins" : of_what(feature),
                    {},
                    along,
                    along,
                    1,
                    {middle_across(piece, hole)},
                    size_of(feature, SizeName::depth),
                    size_of(feature, SizeName::diameter)});
  }
  return rows;
}

/// Puts holes to those of one fitting that stand in a row with them.
void add_holes(std::vector<Mark>& marks, Mark more) {
  for (Mark& mark : marks) {
    if (!mark.is_beside(more) || mark.holes == 0) continue;
    const bool pair = mark.holes == 1 && more.holes == 1 && mark.across == more.across;
    if (pair && more.from > mark.to) {
      mark.to = more.to;
      mark.holes = 2;
      return;
    }
    if (mark.from == more.from && mark.to == more.to) {
      mark.across.insert(mark.across.end(), more.across.begin(), more.across.end());
      return;
    }
  }
  marks.push_back(std::move(more));
}

bool is_bored_in_face(const Feature& feature) {
  const bool holes =
      feature.kind == FeatureKind::shelf_pin_holes || feature.kind == FeatureKind::screw_hole;
  return holes && feature.fitting && feature.fitting->into == 2;
}

std::vector<Mark> marks_in(const Assembly& wood, const Making& making) {
  std::vector<Mark> marks;
  for (const FeatureKind kind : {FeatureKind::housing, FeatureKind::rebate})
    each_run(making, kind, [&](const Operation&, const Run& run) {
      if (is_of_case(wood, wood.pieces[run.piece]) && run.joint &&
          wood.joints[*run.joint].kind != JointKind::panel_in_rebate)
        marks.push_back(stretch(wood, run));
    });
  for (std::size_t number = 0; number < wood.pieces.size(); ++number) {
    if (!is_of_case(wood, wood.pieces[number])) continue;
    for (const Feature& feature : wood.pieces[number].features) {
      if (feature.kind == FeatureKind::notch) marks.push_back(notch_mark(number, feature));
      if (!is_bored_in_face(feature)) continue;
      for (Mark& row : holes_in(wood, number, feature))
        add_holes(marks, std::move(row));
    }
  }
  std::stable_sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) {
    return std::tie(a.piece, a.from, a.to) < std::tie(b.piece, b.from, b.to);
  });
  return marks;
}

std::string what_text(const Mark& mark, const LengthPrinter& lengths) {
  if (mark.holes == 0) return mark.what;
  std::string text = mark.what;
  if (mark.holes > 1) text += ": " + std::to_string(mark.holes);
  if (mark.holes > 2)
    text += " at " + lengths.one(floor_divide(mark.to - mark.from,
                                              static_cast<std::int64_t>(mark.holes) - 1));
  return text;
}

std::string across_text(const Mark& mark, const LengthPrinter& lengths) {
  std::string text;
  for (const Length place : mark.across)
    text += (text.empty() ? "" : ", ") + lengths.one(place);
  return text;
}

}  // namespace

PageParts rod_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths) {
  TextTable table({"on", "side", "", "", "from", "to", "left", "deep", "round", "across"});
  bool mirrored = false;
  bool strips = false;
  bool runners = false;
  for (const Mark& mark : marks_in(wood, making)) {
    const Piece& piece = wood.pieces[mark.piece];
    mirrored = mirrored || piece.role == Role::side;
    strips = strips || !is_from_front(piece);
    runners = runners || mark.what.starts_with("drawer");
    table.add_alike({Cell::of_mark(piece.mark), mark.side, what_text(mark, lengths),
                     Cell::of_mark(mark.takes), mark.from,
                     mark.to == mark.from ? std::optional<Length>() : mark.to,
                     piece.blank[0] - mark.to, mark.deep, mark.round, across_text(mark, lengths)});
  }
  if (table.empty()) return {};
  return {{"MARKING OUT, along from the lower or left end, across from the front edge",
           PageText::table(table, lengths, 2),
           {PageText::paragraph(
               std::string(mirrored ? "the sides are a pair, mirrored; " : "") +
               "of holes the middles; left: to the other end" +
               (runners ? "; drawer: screw holes of its runner" : "") +
               (strips ? "; packing strips: along from the front end, across from the lower "
                         "edge"
                       : ""))}}};
}

}  // namespace haunch
