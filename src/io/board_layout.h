// How a board is drawn: its scale, and where on it and beside it its lettering stands. All in
// millimetres of paper, from the board's upper left corner; its low edge lies below, its low end to
// the left.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "alike_boards.h"
#include "board_pieces.h"

namespace haunch {

// Lettering on a drawing: 1.8 mm high, the least of ISO 3098, so of 2.5 in all.
inline constexpr Length kSmallLetter = Length::from_mm_thousandths(2500);
inline constexpr Length kSmallLine = Length::from_mm_thousandths(3200);

/// How long a line of lettering of that size comes out at most.
Length lettering_length(const std::string& text, Length size);

struct PaperBox {
  Length x, y, width, height;

  Length right() const { return x + width; }
  Length bottom() const { return y + height; }
  Length middle_x() const { return x + floor_half(width); }
  Length middle_y() const { return y + floor_half(height); }
};

/// From a point on a piece straight down past the board, and on to the key that stands below.
struct KeyLeader {
  Length x, y;
  Length key;  // its middle along the board
};

struct LetteredPiece {
  lumber::BoardPiece piece;
  PaperBox box;
  std::string words;                // all that is told of it; nothing of scrap and trim
  std::vector<std::string> lines;   // on it
  PaperBox lettering;               // what they take
  bool beside = false;              // its words stand beside the drawing
  std::string key;                  // before them: "p1", where its name has no room on it either
  std::optional<KeyLeader> leader;  // where the key has none
};

/// A saw cut, in the middle of what the blade takes.
struct DrawnCut {
  const lumber::Step* step;
  Length x1, y1, x2, y2;
};

/// The number, in a ring, of the line that tells of a cut.
struct CutRing {
  std::string number;
  Length x, y;            // its middle
  Length from_x, from_y;  // where the cut ends that it stands beside
  bool led = false;       // over other pieces, to a point of the cut there
};

struct BoardLayout {
  std::int64_t scale = 1;  // 1 : scale
  std::size_t alike = 1;   // so many boards are cut so
  Length length;           // of the board itself
  PaperBox board;
  std::vector<PaperBox> defects;
  std::vector<LetteredPiece> pieces;
  std::vector<DrawnCut> cuts;
  std::vector<CutRing> rings;
  std::vector<std::string> glued;  // finished sizes of parts that are glued up of its pieces
  Length above, below;             // what stands beside the board takes

  /// What has no room on its piece: "p1 side-door/H 1, 1020 x 88", and no piece of its own.
  std::vector<std::string> told_beside() const;
};

/// How wide the ring round a number is.
Length ring_width(const std::string& number);

/// Of boards that are cut alike, at the largest scale of ISO 5455 at which they lie in a space.
BoardLayout layout_of(const LumberReport& report, const AlikeBoards& alike,
                      const std::vector<CutLine>& lines, const LengthPrinter& lengths,
                      const PaperBox& space);

}  // namespace haunch
