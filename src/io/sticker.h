// The words of one label, laid out so that they fit the sticker that they are printed on.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "text_width.h"

namespace haunch {

/// In mm. What is printed is laid out in them, wood is not.
struct PrintSize {
  double width = 0, height = 0;
};

/// What a sticker says, from the top.
/// A figure of it, to a thousandth: "66.675", "70".
std::string print_figure(double mm);

struct StickerWords {
  std::string mark;    // never shortened
  std::string name;    // of the piece
  std::string size;    // never shortened
  std::string sides;   // face side and face edge; never shortened
  std::string wood;    // what it is of, and how the grain runs
  std::string mates;   // what it is joined to
  std::string whence;  // the item's name, the order
  bool drawn = true;   // with a drawing, if there is room for one
};

struct StickerLine {
  std::string text;
  double type = 0;  // size of the type, in mm
  Letters letters = Letters::plain;
};

struct Sticker {
  std::vector<StickerLine> lines;
  PrintSize drawing;       // at the upper right; 0 where there is no room for one
  bool shortened = false;  // the last line ends with "…" then
};

/// A line is as high as its type and a fifth.
inline constexpr double kLeading = 1.2;

/// All words in the largest type that they fit in, beside a drawing if there is room for one. If
/// they do not fit in the smallest type, what can be read elsewhere is left out, the last in this
/// order first: name, mates, wood, whence. Nothing, if mark, size and sides do not fit.
std::optional<Sticker> fit_sticker(const StickerWords& words, PrintSize room);

}  // namespace haunch
