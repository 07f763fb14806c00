#include "lines.h"

namespace haunch {
namespace {

/// A jamb's foot, or where it is tenoned into a sill its shoulder on it, and the head over the
/// leaf.
EndLines ends_of_jamb(const Assembly& wood, const Piece& jamb, const Shoulders& shoulders) {
  const Piece* lintel = lintel_of(wood);
  const Length foot = jamb.place.origin[1];
  EndLines ends{foot, foot + jamb.blank[0]};
  if (shoulders.low) {
    ends.low += shoulders.low->line;
    ends.from = Line::sill;
  }
  if (lintel == nullptr) return ends;
  ends.high = underside_in_rebate(*lintel);
  ends.to = lintel->role == Role::transom ? Line::transom : Line::head;
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

}  // namespace

Line low_line(const Piece& piece, const Shoulders& shoulders) {
  if (runs_back(piece)) return piece.place.backwards[0] ? Line::rear_end : Line::front_end;
  if (!is_upright(piece)) return Line::left_end;
  return shoulders.low ? Line::lower_end : Line::foot;
}

Line edge_line(const Piece& piece) {
  return is_upright(piece) ? Line::left_edge : Line::lower_edge;
}

bool inner_face_is_low(const Piece& jamb) {
  return jamb.place.origin[static_cast<std::size_t>(jamb.place.axes[2])] != Length();
}

Box told_in(const Assembly& wood, const Piece& piece) {
  const Group& group = wood.groups[piece.group];
  if (group.kind != GroupKind::leaf) return placed_blank(piece);
  return group.in ? placed_blanks(wood, piece.group) : Box{{}, wood.size};
}

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

EndLines ends_of(const Assembly& wood, const Piece& piece, const Shoulders& shoulders, Axis along) {
  if (piece.role == Role::jamb && along == Axis::y) return ends_of_jamb(wood, piece, shoulders);
  const auto axis = static_cast<std::size_t>(along);
  const Box whole = told_in(wood, piece);
  if (along != Axis::y) return {whole.low[axis], whole.high[axis], Line::left, Line::right};
  return {whole.low[1], whole.high[1] - below_crown(piece, whole)};
}

}  // namespace haunch
