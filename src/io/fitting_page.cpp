#include "fitting_page.h"

#include <algorithm>
#include <vector>

#include "machine_sets.h"
#include "report.h"
#include "shoulders.h"

namespace haunch {
namespace {

/// A box that holds a recess, in its piece's own axes.
Box room_of(const Feature& feature) {
  if (feature.prisms.empty()) return feature.cuts.front();
  const Prism& hole = feature.prisms.front();
  const std::size_t u = hole.along == 0 ? 1 : 0;
  const std::size_t v = hole.along == 2 ? 1 : 2;
  Box box;
  box.low[hole.along] = hole.from;
  box.high[hole.along] = hole.to;
  const auto [left, right] =
      std::minmax_element(hole.outline.begin(), hole.outline.end(),
                          [](const Corner& a, const Corner& b) { return a.u < b.u; });
  const auto [low, high] =
      std::minmax_element(hole.outline.begin(), hole.outline.end(),
                          [](const Corner& a, const Corner& b) { return a.v < b.v; });
  std::tie(box.low[u], box.high[u]) = std::pair(left->u, right->u);
  std::tie(box.low[v], box.high[v]) = std::pair(low->v, high->v);
  return box;
}

/// The least box round the leaf that a piece is of; of a frame's piece round itself.
Box told_in(const Assembly& wood, const Piece& piece) {
  const auto number = static_cast<std::size_t>(&piece - wood.pieces.data());
  if (wood.what == "leaf") return {{}, wood.size};
  for (const Hanging& hung : wood.hung)
    if (hung.has(number)) return placed_blanks(wood, hung.first, hung.count);
  for (const Meeting& pair : wood.meetings) {
    if (number >= pair.left && number < pair.left + pair.left_count)
      return placed_blanks(wood, pair.left, pair.left_count);
    if (number >= pair.right && number < pair.right + pair.right_count)
      return placed_blanks(wood, pair.right, pair.right_count);
  }
  return placed_blank(piece);
}

// ---- the lines that places along a side are told from

/// Two of them, in the assembly's axis along the side, and what they are called.
struct Ends {
  Length low, high;
  std::string from_low, from_high;
};

/// Of a frame's heads the one over the leaf: its underside, in its rebate if it has one.
const Piece* lintel_of(const Assembly& wood) {
  const Piece* lintel = nullptr;
  for (const Piece& piece : wood.pieces)
    if (piece.role == Role::transom || (piece.role == Role::head && lintel == nullptr))
      lintel = &piece;
  return lintel;
}

Length underside_in_rebate(const Piece& lintel) {
  Length underside = lintel.place.origin[1];
  for (const Feature& feature : lintel.features)
    if (feature.kind == FeatureKind::rebate && feature.joints.empty())
      underside += size_of(feature, SizeName::depth).value_or(Length());
  return underside;
}

/// A jamb's own lines, which its leaf's places agree with but for the clearances: its foot, or
/// where it is tenoned into a sill its shoulder on it, and the head over the leaf.
Ends ends_of_jamb(const Assembly& wood, const Piece& jamb) {
  const auto number = static_cast<std::size_t>(&jamb - wood.pieces.data());
  const auto low = shoulders_of(wood)[number].low;
  const Piece* lintel = lintel_of(wood);
  const Length foot = jamb.place.origin[1];
  Ends ends{foot, foot + jamb.blank[0], "from foot", "from top"};
  if (low) {
    ends.low += low->line;
    ends.from_low = "from sill";
  }
  if (lintel == nullptr) return ends;
  ends.high = underside_in_rebate(*lintel);
  ends.from_high = "from " + std::string(word(lintel->role));
  return ends;
}

/// How much lower than its crown an arched leaf's top stands at the outer edge of this stile.
Length below_crown(const Piece& piece, const Box& leaf) {
  for (const Feature& feature : piece.features)
    if (const auto side = size_of(feature, SizeName::side);
        side && feature.kind == FeatureKind::arched_head)
      return leaf.extent(1) - *side;
  return {};
}

Ends ends_of(const Assembly& wood, const Piece& piece, Axis along) {
  if (piece.role == Role::jamb && along == Axis::y) return ends_of_jamb(wood, piece);
  const auto axis = static_cast<std::size_t>(along);
  const Box whole = told_in(wood, piece);
  if (along != Axis::y) return {whole.low[axis], whole.high[axis], "from left", "from right"};
  return {whole.low[1], whole.high[1] - below_crown(piece, whole), "from foot", "from top"};
}

/// A place along the side from both ends; of a round hole its middle.
struct FromEnds {
  Length near;
  std::optional<Length> far;
  Length from_other_end;
};

/// The piece's own axis along its side.
std::size_t along_side(std::size_t into) {
  return into == 0 ? 1 : 0;
}

FromEnds from_ends(const Assembly& wood, const Piece& piece, const Feature& feature) {
  const std::size_t along = along_side(feature.fitting->into);
  const Axis axis = piece.place.axes[along];
  const Box room = room_of(feature);
  const Ends ends = ends_of(wood, piece, axis);
  const Length start = piece.place.origin[static_cast<std::size_t>(axis)];
  const Length low = start + room.low[along];
  const Length high = start + room.high[along];
  if (feature.prisms.empty()) return {low - ends.low, high - ends.low, ends.high - high};
  const Length middle = low + floor_half(high - low);
  return {middle - ends.low, {}, ends.high - middle};
}

std::vector<std::string> fitting_titles(const Assembly& wood, const Piece& piece,
                                        std::size_t into) {
  const Ends ends = ends_of(wood, piece, piece.place.axes[along_side(into)]);
  return {"",
          "",
          ends.from_low,
          "to",
          ends.from_high,
          "round",
          "long",
          "wide",
          "deep",
          piece.place.axes[into] == Axis::z ? "from edge" : "from face"};
}

bool right_through(const Piece& piece, const Feature& feature) {
  const std::size_t into = feature.fitting->into;
  return room_of(feature).extent(into) == piece.blank[into];
}

std::vector<Cell> fitting_row(const Assembly& wood, const Piece& piece, const Feature& feature) {
  const FromEnds place = from_ends(wood, piece, feature);
  const auto cell = [&](SizeName size) {
    const auto its = size_of(feature, size);
    return its ? Cell(*its) : Cell(std::string());
  };
  return {feature.fitting->name,
          std::string(word(feature.kind)),
          place.near,
          place.far ? Cell(*place.far) : Cell(std::string()),
          place.from_other_end,
          cell(SizeName::diameter),
          cell(SizeName::length),
          cell(SizeName::width),
          right_through(piece, feature) ? Cell(std::string("through")) : cell(SizeName::depth),
          cell(piece.place.axes[feature.fitting->into] == Axis::z ? SizeName::from_edge
                                                                  : SizeName::from_face)};
}

std::string inner_face(const Piece& jamb) {
  const bool rebated = std::any_of(
      jamb.features.begin(), jamb.features.end(),
      [](const Feature& it) { return it.kind == FeatureKind::rebate && it.joints.empty(); });
  return rebated ? "inner face, in the bottom of its rebate" : "inner face";
}

/// "outer edge", of a stile; else "upper edge", "inner face", "face side" …
std::string side_text(const Assembly& wood, const Piece& piece, const Fitting& fitting) {
  const std::string side(side_name(piece, fitting));
  if (piece.role == Role::jamb && piece.place.axes[fitting.into] == Axis::x)
    return (piece.place.origin[0] == Length()) == (side == "right") ? inner_face(piece)
                                                                    : "outer face";
  if (fitting.into == 2) return side == "face" ? "face side" : side;
  if (fitting.into == 0) return side + " end";
  const bool outer = piece.role == Role::stile &&
                     (piece.place.origin[0] == told_in(wood, piece).low[0]) == (side == "left");
  return piece.role == Role::stile ? (outer ? "outer edge" : "face edge") : side + " edge";
}

/// One side of one piece, and what is let in to it, in the order in which it was set out.
std::string fittings_of_side(const Assembly& wood, const Piece& piece, const Fitting& side,
                             const LengthPrinter& lengths) {
  TextTable table(fitting_titles(wood, piece, side.into));
  for (const Feature& feature : piece.features)
    if (feature.fitting && feature.fitting->into == side.into &&
        feature.fitting->from_high == side.from_high)
      table.add(fitting_row(wood, piece, feature));
  if (table.empty()) return {};
  return "  " + piece.mark + ", " + piece.name + ": " + side_text(wood, piece, side) + "\n" +
         table.text(lengths, 4);
}

bool is_arched(const Assembly& wood) {
  return std::any_of(wood.pieces.begin(), wood.pieces.end(), [](const Piece& piece) {
    return std::any_of(piece.features.begin(), piece.features.end(), [](const Feature& feature) {
      return feature.kind == FeatureKind::arched_head && size_of(feature, SizeName::side);
    });
  });
}

/// The lines that the titles name.
std::string lines_text(const Assembly& wood) {
  std::string text = "From foot, top, left and right: of the leaf";
  if (is_arched(wood)) text += ", of a stile under the arched top the top of its outer edge";
  const auto has_fittings = [](const Piece& piece) {
    return piece.role == Role::jamb &&
           std::any_of(piece.features.begin(), piece.features.end(),
                       [](const Feature& feature) { return feature.fitting.has_value(); });
  };
  const auto jamb = std::find_if(wood.pieces.begin(), wood.pieces.end(), has_fittings);
  if (jamb == wood.pieces.end()) return text;
  const Ends ends = ends_of_jamb(wood, *jamb);
  text +=
      "; of a jamb " + std::string(ends.from_low == "from sill" ? "from the shoulder on the sill"
                                                                : "from its own foot");
  const Piece* lintel = lintel_of(wood);
  if (lintel == nullptr) return text;
  const bool rebated = underside_in_rebate(*lintel) != lintel->place.origin[1];
  return text + " and from the underside of the " + std::string(word(lintel->role)) +
         (rebated ? ", in its rebate" : "");
}

/// A faceplate's own depth does not shift that of the mortise behind it.
std::string depth_text(const Assembly& wood) {
  const bool rebated = std::any_of(wood.pieces.begin(), wood.pieces.end(), [](const Piece& piece) {
    const bool has_fittings =
        std::any_of(piece.features.begin(), piece.features.end(),
                    [](const Feature& feature) { return feature.fitting.has_value(); });
    return has_fittings && piece.role == Role::jamb && inner_face(piece) != "inner face";
  });
  return "Deep: from the edge or face, not from the bottom of another cut" +
         std::string(rebated ? "; in a jamb's rebate from the bottom of the rebate." : ".");
}

}  // namespace

std::string fittings_page(const Assembly& wood, const LengthPrinter& lengths) {
  std::string page;
  for (const Piece& piece : wood.pieces)
    for (const std::size_t into : {std::size_t{1}, std::size_t{2}, std::size_t{0}})
      for (const bool from_high : {false, true})
        page += fittings_of_side(wood, piece, {{}, into, from_high}, lengths);
  if (page.empty()) return {};
  return "\nFITTINGS, let in after glue-up, horns sawn off\n" + page + "  " +
         wrapped(lines_text(wood) + ". " + depth_text(wood) +
                     " From edge: the piece's outer edge, or where it has none the left or lower "
                     "one. Of a round hole its middle is told.",
                 kPageWidth, 2) +
         "\n";
}

}  // namespace haunch
