#include "fitting_page.h"

#include <algorithm>
#include <vector>

#include "machine_sets.h"
#include "report.h"

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

/// The least box round what a piece's places are told in: the leaf that it is of, or of a frame's
/// piece itself.
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

/// A place along the side from both ends of the leaf; of a round hole its middle.
struct FromEnds {
  Length near;
  std::optional<Length> far;
  Length from_other_end;
};

FromEnds from_ends(const Assembly& wood, const Piece& piece, const Feature& feature) {
  const std::size_t along = feature.fitting->into == 0 ? 1 : 0;
  const auto axis = static_cast<std::size_t>(piece.place.axes[along]);
  const Box room = room_of(feature);
  const Box whole = told_in(wood, piece);
  const Length start = piece.place.origin[axis] - whole.low[axis];
  const Length low = start + room.low[along];
  const Length high = start + room.high[along];
  if (feature.prisms.empty()) return {low, high, whole.extent(axis) - high};
  const Length middle = low + floor_half(high - low);
  return {middle, {}, whole.extent(axis) - middle};
}

std::vector<std::string> fitting_titles(const Piece& piece, std::size_t into) {
  const bool upright = piece.place.axes[into == 0 ? 1 : 0] == Axis::y;
  return {"",
          "",
          upright ? "from foot" : "from left",
          "to",
          upright ? "from top" : "from right",
          "round",
          "long",
          "wide",
          "deep",
          piece.place.axes[into] == Axis::z ? "from edge" : "from face"};
}

std::vector<Cell> fitting_row(const Assembly& wood, const Piece& piece, const Feature& feature) {
  const FromEnds place = from_ends(wood, piece, feature);
  const auto cell = [&](std::string_view size) {
    const auto its = size_of(feature, size);
    return its ? Cell(*its) : Cell(std::string());
  };
  return {feature.fitting->name,
          std::string(feature.kind),
          place.near,
          place.far ? Cell(*place.far) : Cell(std::string()),
          place.from_other_end,
          cell("diameter"),
          cell("length"),
          cell("width"),
          cell("depth"),
          cell(piece.place.axes[feature.fitting->into] == Axis::z ? "from_edge" : "from_face")};
}

std::string inner_face(const Piece& jamb) {
  const bool rebated =
      std::any_of(jamb.features.begin(), jamb.features.end(),
                  [](const Feature& it) { return it.kind == "rebate" && it.joints.empty(); });
  return rebated ? "inner face, in the bottom of its rebate" : "inner face";
}

/// "outer edge", of a stile; else "upper edge", "inner face", "face side" …
std::string side_text(const Assembly& wood, const Piece& piece, const Fitting& fitting) {
  const std::string side(side_name(piece, fitting));
  if (piece.role == "jamb" && piece.place.axes[fitting.into] == Axis::x)
    return (piece.place.origin[0] == Length()) == (side == "right") ? inner_face(piece)
                                                                    : "outer face";
  if (fitting.into == 2) return side == "face" ? "face side" : side;
  if (fitting.into == 0) return side + " end";
  const bool outer = piece.role == "stile" &&
                     (piece.place.origin[0] == told_in(wood, piece).low[0]) == (side == "left");
  return piece.role == "stile" ? (outer ? "outer edge" : "face edge") : side + " edge";
}

/// One side of one piece, and what is let in to it, in the order in which it was set out.
std::string fittings_of_side(const Assembly& wood, const Piece& piece, const Fitting& side,
                             const LengthPrinter& lengths) {
  TextTable table(fitting_titles(piece, side.into));
  for (const Feature& feature : piece.features)
    if (feature.fitting && feature.fitting->into == side.into &&
        feature.fitting->from_high == side.from_high)
      table.add(fitting_row(wood, piece, feature));
  if (table.empty()) return {};
  return "  " + piece.mark + ", " + piece.name + ": " + side_text(wood, piece, side) + "\n" +
         table.text(lengths, 4);
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
         wrapped(
             "From foot, top, left and right: of the leaf" +
                 std::string(wood.hung.empty() ? "" : "; of a piece of the frame, of that piece") +
                 ". From edge: the piece's outer edge, or where it has none the left or lower one. "
                 "Of a round hole its middle is told.",
             kPageWidth, 2) +
         "\n";
}

}  // namespace haunch
