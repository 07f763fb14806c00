// Words on stickers: they fit, or what is left out is told, or the sticker is refused.
#include "sticker.h"

#include <algorithm>

#include "catch.h"

namespace haunch::test {
namespace {

StickerWords stile() {
  return {"side-door/A",
          "left stile",
          "2054 x 118 x 44 mm",
          "face side front, face edge right",
          "European oak, grain lengthwise",
          "C D E mortise and tenon; H J panel in groove",
          "side door to the mill yard; order week 12"};
}

double height_of(const Sticker& sticker) {
  double height = 0;
  for (const StickerLine& line : sticker.lines)
    height += line.type * kLeading;
  return height;
}

std::string text_of(const Sticker& sticker) {
  std::string text;
  for (const StickerLine& line : sticker.lines)
    text += (text.empty() ? "" : " ") + line.text;
  return text;
}

/// Whether nothing comes out of a room at the right or below, nor lies on the drawing.
bool stands_within(const Sticker& sticker, PrintSize room) {
  double top = 0;
  for (const StickerLine& line : sticker.lines) {
    const double beside = top < sticker.drawing.height ? sticker.drawing.width : 0;
    if (text_width(line.text, line.letters) * line.type > room.width - beside) return false;
    top += line.type * kLeading;
  }
  return top <= room.height && sticker.drawing.height <= room.height;
}

}  // namespace

TEST_CASE("a sticker of 70 x 36 has room for all of a stile's label, and a drawing") {
  const PrintSize room{60, 31};
  const auto sticker = fit_sticker(stile(), room);
  REQUIRE(sticker.has_value());
  CHECK_FALSE(sticker->shortened);
  CHECK(sticker->drawing.width > 10);
  CHECK(stands_within(*sticker, room));
  CHECK(sticker->lines.front().text == "side-door/A");
  CHECK(text_of(*sticker).find("order week 12") != std::string::npos);
}

TEST_CASE("of what has no room the item's name goes first, and three dots tell that it did") {
  const auto sticker = fit_sticker(stile(), {50, 18});
  REQUIRE(sticker.has_value());
  CHECK(sticker->shortened);
  CHECK(sticker->lines.back().text.ends_with("…"));
  CHECK(text_of(*sticker).find("side door to") == std::string::npos);
  CHECK(text_of(*sticker).find("mortise and tenon") != std::string::npos);
}

TEST_CASE("mark, size and sides are never left out: a sticker without room for them is refused") {
  const auto smallest = fit_sticker(stile(), {33, 13});
  REQUIRE(smallest.has_value());
  CHECK(text_of(*smallest) == "side-door/A 2054 x 118 x 44 mm face side front, face edge right …");
  CHECK_FALSE(fit_sticker(stile(), {33, 7}).has_value());
  CHECK_FALSE(fit_sticker(stile(), {1, 200}).has_value());
  CHECK_FALSE(fit_sticker(stile(), {-1, -1}).has_value());
}

TEST_CASE("whatever the words and the room, what is laid out stands within it") {
  StickerWords words = stile();
  words.name = "a-name-that-has-no-space-in-it-and-goes-on-and-on-" + std::string(80, 'W');
  words.whence = "Tür zum Mühlenhof, дверь, 戸";
  for (const double width : {20.0, 34.0, 45.0, 60.0, 95.0})
    for (const double height : {12.0, 17.0, 31.0, 60.0, 140.0}) {
      const auto sticker = fit_sticker(words, {width, height});
      CAPTURE(width, height);
      if (sticker) CHECK(stands_within(*sticker, {width, height}));
    }
  CHECK(height_of(*fit_sticker(words, {95, 140})) > 0);
}

TEST_CASE("a word without a space is broken, between whole characters") {
  StickerWords words = stile();
  words.name = "ÄÖÜäöüÄÖÜäöüÄÖÜäöüÄÖÜäöüÄÖÜäöüÄÖÜäöü";
  const auto sticker = fit_sticker(words, {30, 60});
  REQUIRE(sticker.has_value());
  std::string joined;
  for (const StickerLine& line : sticker->lines)
    if (line.text.starts_with("\xC3")) joined += line.text;
  CHECK(joined == words.name);
}

TEST_CASE("a long mark is broken where its parts meet") {
  StickerWords words = stile();
  words.mark = "counter-island-drawer-bank-number-twelve#12/AC";
  const auto sticker = fit_sticker(words, {40, 60});
  REQUIRE(sticker.has_value());
  CHECK(sticker->lines[0].text == "counter-island-");
  CHECK(sticker->lines[1].text == "drawer-bank-number-");
  CHECK(sticker->lines[2].text == "twelve#12/AC");
}

TEST_CASE("an em holds an m, and bold letters are reckoned wider") {
  CHECK(text_width("m") < 1);
  CHECK(text_width("m") > 0.9);
  CHECK(text_width("ii") < text_width("m"));
  CHECK(text_width("A", Letters::bold) > text_width("A"));
  CHECK(text_width("戸") >= 1);
}

}  // namespace haunch::test
