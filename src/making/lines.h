// The lines that places on pieces are told from.
#pragma once

#include "operation.h"

namespace haunch {

inline bool is_upright(const Piece& piece) {
  return piece.place.axes[0] == Axis::y;
}

/// Whether its length runs from front to back, as that of a drawer's sides does.
inline bool runs_back(const Piece& piece) {
  return piece.place.axes[0] == Axis::z;
}

/// What places along a piece are told from: of what stands upright its foot, or where it has a
/// tenon there that end; of what runs from front to back its front end, or of the left end of a
/// case that is framed its rear end; else its left end.
Line low_line(const Piece& piece, const Shoulders& shoulders);

/// What places across a piece's width are told from.
Line edge_line(const Piece& piece);

/// Whether the inner face of a jamb, which looks at the way through, is at the low end of its
/// thickness.
bool inner_face_is_low(const Piece& jamb);

/// The least box round the leaf that a piece is of; of a frame's piece round itself.
Box told_in(const Assembly& wood, const Piece& piece);

/// Of a frame's heads the one over the leaf; null where there is none.
const Piece* lintel_of(const Assembly& wood);
/// In its rebate if it has one.
Length underside_in_rebate(const Piece& lintel);

/// Two lines that places along a side are told from, in the assembly's axis along it.
struct EndLines {
  Length low, high;
  Line from = Line::foot, to = Line::top;
};

/// Of what is let in: the ends of the leaf, or of a jamb lines that its leaf's places agree with
/// but for the clearances.
EndLines ends_of(const Assembly& wood, const Piece& piece, const Shoulders& shoulders, Axis along);

}  // namespace haunch
