#include "text_width.h"

#include <iterator>

#include "utf8.h"

namespace haunch {
namespace {

/// Of each printed character of ASCII, in hundredths of an em: the wider of DejaVu Sans and of
/// Liberation Sans, which is as wide as Arial and Helvetica; measured from the files of both.
constexpr unsigned char kPlain[] = {
    32,  41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 34,  //  !"#$%&'()*+,-./
    64,  64, 64, 64, 64, 64, 64, 64, 64, 64, 34, 34, 84, 84, 84, 56,  // 0123456789:;<=>?
    102, 69, 69, 73, 78, 67, 62, 78, 76, 30, 50, 67, 56, 87, 75, 79,  // @ABCDEFGHIJKLMNO
    67,  79, 73, 67, 62, 74, 69, 99, 69, 67, 69, 40, 34, 40, 84, 56,  // PQRSTUVWXYZ[\]^_
    50,  62, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 98, 64, 62,  // `abcdefghijklmno
    64,  64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84};     // pqrstuvwxyz{|}~
static_assert(std::size(kPlain) == '~' - ' ' + 1);

/// From a character on: the widest there is up to the next of these, in the same faces, or where
/// they have none in those that stand in for them.
struct Script {
  char32_t first;
  unsigned char width;
};
constexpr Script kOthers[] = {{0x80, 112},     // Latin letters with their accents
                              {0x1C4, 145},    // digraphs, and what is rare
                              {0x370, 120},    // Greek, Cyrillic
                              {0x530, 175},    // all else
                              {0x2E80, 110},   // Chinese, Japanese, Korean: square
                              {0xFB00, 175}};  // and all else

/// Bold letters are wider by as much at most; the I is.
constexpr double kBolder = 1.25;

unsigned width_of(char32_t code) {
  if (code >= ' ' && code <= '~') return kPlain[code - ' '];
  unsigned width = kOthers[0].width;
  for (const Script& script : kOthers)
    if (code >= script.first) width = script.width;
  return width;
}

}  // namespace

double text_width(std::string_view text, Letters letters) {
  unsigned hundredths = 0;
  while (!text.empty()) {
    const Utf8Character next = first_character(text);
    hundredths += width_of(next.size == 0 ? U'\uFFFD' : next.code);
    text.remove_prefix(next.size == 0 ? 1 : next.size);
  }
  return hundredths / 100.0 * (letters == Letters::bold ? kBolder : 1);
}

}  // namespace haunch
