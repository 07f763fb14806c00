// How lengths are written is described in docs/lengths.md. lengths.json has one text a row,
// accepted with its exact millimetres or refused with what is said; a row without "default_unit" is
// so under both units.
#include "haunch/length_text.h"

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <limits>
#include <nlohmann/json.hpp>

#include "catch.h"
#include "effort.h"
#include "random_length_text.h"
#include "second_length_reader.h"

using haunch::decimal;
using haunch::exact_places;
using haunch::fixed_decimal;
using haunch::inch_fraction;
using haunch::Length;
using haunch::read_length;
using haunch::Unit;
using haunch::word_of;

namespace {

constexpr Unit kUnits[] = {Unit::mm, Unit::inch};

Length inch(std::int64_t parts, std::int64_t of = 1) {
  return Length::from_inch_parts(parts, of);
}
Length mm_thousandths(std::int64_t thousandths) {
  return Length::from_mm_thousandths(thousandths);
}

std::int64_t texts_to_try() {
  return haunch::test::times_effort(100'000);
}

std::int64_t nearest_steps(const std::string& exact_mm) {
  __extension__ typedef __int128 Wide;
  const Wide over = std::stoll(exact_mm),
             under = std::stoll(exact_mm.substr(exact_mm.find('/') + 1));
  return static_cast<std::int64_t>((2 * over * Length::kStepsPerMm + under) / (2 * under));
}

void check_row(const nlohmann::json& row, Unit bare) {
  const std::string text = row.at("text");
  const auto reading = read_length(text, bare);
  CAPTURE(text, word_of(bare), reading.why);
  REQUIRE(reading.length.has_value() == row.at("ok").get<bool>());
  if (reading.length) {
    CHECK(reading.length->steps() == nearest_steps(row.at("mm")));
    CHECK(reading.why.empty());
    CHECK(reading.instead.empty());
  } else {
    CHECK(reading.why == row.at("why").get<std::string>());
    CHECK(reading.instead == row.value("instead", ""));
  }
}

struct Tried {
  std::int64_t read = 0, refused = 0, with_advice = 0;
};

/// Both readers on one text; false, with the failure reported, when they differ.
bool agreed(const std::string& text, Unit bare, Tried& tried) {
  const auto reading = read_length(text, bare);
  const auto second = haunch::test::second_reading(text, bare);
  const auto first = reading.length ? std::optional(reading.length->steps()) : std::nullopt;
  ++(reading.length ? tried.read : tried.refused);
  const bool advice_reads = reading.instead.empty() || read_length(reading.instead, bare).length;
  if (!reading.instead.empty()) ++tried.with_advice;
  if (first == second && advice_reads && first.has_value() == reading.why.empty()) return true;
  CAPTURE(text, word_of(bare), first.value_or(-1), second.value_or(-1), reading.why,
          reading.instead);
  CHECK(first == second);
  CHECK(advice_reads);
  CHECK(first.has_value() == reading.why.empty());
  return false;
}

Length random_length(haunch::test::Random& random, std::int64_t limit_steps) {
  return Length::from_steps(
      static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(limit_steps)));
}

}  // namespace

TEST_CASE("every text of the table is read exactly, or refused with what to write",
          "[length_text]") {
  std::ifstream file(HAUNCH_TEST_DATA "/core/lengths.json");
  const auto table = nlohmann::json::parse(file);
  REQUIRE(table.at("rows").size() >= 330);
  for (const auto& row : table.at("rows"))
    for (const Unit bare : kUnits)
      if (row.value("default_unit", word_of(bare)) == word_of(bare)) check_row(row, bare);
}

TEST_CASE("random lengths, and slips in writing them, are read as a second reader reads them",
          "[length_text]") {
  haunch::test::Random random(1'600'000);
  Tried grammar, slips;
  const std::int64_t texts = texts_to_try();
  for (std::int64_t i = 0; i < texts; ++i) {
    const std::string text = haunch::test::random_length_text(random);
    const std::string slip = haunch::test::edited(text, random);
    bool same = agreed(text, Unit::inch, grammar);
    for (const Unit bare : kUnits)
      same = agreed(slip, bare, slips) && same;
    if (!same) return;
  }
  CHECK(grammar.refused == 0);
  CHECK(slips.read > texts / 10);
  CHECK(slips.refused > texts / 10);
  CHECK(slips.with_advice > texts / 100);
}

TEST_CASE("a text that is not UTF-8 is refused calmly", "[length_text]") {
  for (const char* wrong : {"\xFF", "\xC2", "\x80", "\xE2\x85", "\xE2\x80\xB2\xE2", "\xC0\xA0",
                            "\xC1\xBF", "\xE0\x82\xA0", "\xF0\x80\x82\xA0", "\xED\xA0\x80",
                            "\xED\xBF\xBF", "\xF4\x90\x80\x80", "\xF9\x80\x80\x80"}) {
    const auto reading = read_length("70" + std::string(wrong) + "mm", Unit::mm);
    CAPTURE(wrong);
    CHECK_FALSE(reading.length);
    CHECK(reading.why == "it is not UTF-8 text");
    CHECK(reading.instead.empty());
  }
  CHECK(read_length("70 \xF4\x80\x80\x80", Unit::mm).why ==
        "the character U+100000 has no place in a length");
}

TEST_CASE("a text of many characters is refused as calmly, and shortly", "[length_text]") {
  for (const char* part :
       {"1", "1,", "1.", "1 ", "x", "é", "µ", "'", "1/", "-", "in ", "6' ", "\xFF", "{", "1_"}) {
    std::string text;
    while (text.size() < 10'000)
      text += part;
    const auto reading = read_length(text, Unit::mm);
    CAPTURE(part, reading.why);
    CHECK_FALSE(reading.length);
    CHECK(reading.why.size() < 200);
    CHECK(reading.instead.size() < 50);
  }
}

TEST_CASE("a value between two steps goes to the nearer one, a tie upwards", "[length_text]") {
  CHECK(read_length("1/3 in", Unit::mm).length == Length::from_steps(13'546'667));
  CHECK(read_length("2/3 in", Unit::mm).length == Length::from_steps(27'093'333));
  CHECK(read_length("1/1024 in", Unit::mm).length == Length::from_steps(39'688));  // 39 687.5
  CHECK(read_length("3/1024 mm", Unit::mm).length == Length::from_steps(4'688));   // 4 687.5
  CHECK(read_length("0.000000001 in", Unit::mm).length == Length());
}

TEST_CASE("a decimal says the length exactly, with no more digits than it needs", "[length_text]") {
  CHECK(decimal(mm_thousandths(70'500), Unit::mm) == "70.5");
  CHECK(decimal(inch(-1, 4), Unit::inch) == "-0.25");
  CHECK(decimal(Length(), Unit::mm) == "0");
  CHECK(decimal(Length(), Unit::inch) == "0");
  CHECK(decimal(Length::from_steps(1), Unit::mm) == "0.000000625");
  CHECK(decimal(Length::from_steps(-1), Unit::mm) == "-0.000000625");
  CHECK(decimal(Length::from_steps(1), Unit::inch) == "0.000000025");
  CHECK(decimal(Length::from_mm(1000), Unit::mm) == "1000");
  CHECK(decimal(Length::from_mm(1), Unit::inch) == "0.039370079");
  CHECK(decimal(inch(1) - Length::from_steps(1), Unit::inch) == "0.999999975");
  CHECK(decimal(inch(19, 8), Unit::mm) == "60.325");
  CHECK(decimal(inch(1, 512), Unit::inch) == "0.001953125");
  CHECK(decimal(Length::from_steps(std::numeric_limits<std::int64_t>::min()), Unit::mm) ==
        "-5764607523034.23488");
  CHECK(decimal(Length::from_steps(std::numeric_limits<std::int64_t>::max()), Unit::mm) ==
        "5764607523034.234879375");
}

TEST_CASE("decimals are appended to what stands there", "[length_text]") {
  std::string line = "[";
  append_decimal(line, mm_thousandths(14'500), Unit::mm);
  line += ", ";
  append_decimal(line, inch(-3, 2), Unit::inch);
  CHECK(line == "[14.5, -1.5");
}

TEST_CASE("what is printed reads as the same length", "[length_text]") {
  haunch::test::Random random(40'640'000);
  const std::int64_t texts = texts_to_try();
  for (std::int64_t i = 0; i < texts; ++i) {
    const Length length = random_length(random, Length::kStepsPerMm * (i % 2 == 0 ? 999'999 : 3));
    for (const Unit unit : kUnits)
      if (const std::string text = decimal(length, unit);
          read_length(text, unit).length != length) {
        CAPTURE(text, length.steps());
        FAIL("does not read as what was printed");
      }
  }
}

TEST_CASE("a decimal of fixed places rounds half away from zero and says when it did",
          "[length_text]") {
  const auto check = [](Length length, Unit unit, int places, const char* text, bool exact) {
    const auto fixed = fixed_decimal(length, unit, places);
    CHECK(fixed.text == text);
    CHECK(fixed.exact == exact);
  };
  check(mm_thousandths(70'500), Unit::mm, 1, "70.5", true);
  check(mm_thousandths(70'500), Unit::mm, 3, "70.500", true);
  check(mm_thousandths(70'500), Unit::mm, 0, "71", false);
  check(mm_thousandths(70'499), Unit::mm, 0, "70", false);
  check(mm_thousandths(-70'500), Unit::mm, 0, "-71", false);
  check(mm_thousandths(50), Unit::mm, 1, "0.1", false);
  check(mm_thousandths(49), Unit::mm, 1, "0.0", false);
  check(mm_thousandths(-49), Unit::mm, 1, "0.0", false);
  check(mm_thousandths(-50), Unit::mm, 1, "-0.1", false);
  check(mm_thousandths(9'996), Unit::mm, 2, "10.00", false);
  check(Length(), Unit::mm, 2, "0.00", true);
  check(inch(5, 16), Unit::inch, 4, "0.3125", true);
  check(inch(5, 16), Unit::inch, 3, "0.313", false);
  check(Length::from_mm(1), Unit::inch, 9, "0.039370079", false);
  check(Length::from_steps(1), Unit::mm, 9, "0.000000625", true);
  check(mm_thousandths(2'054'005), Unit::mm, 2, "2054.01", false);
  check(Length::from_steps(std::numeric_limits<std::int64_t>::min()), Unit::mm, 9,
        "-5764607523034.234880000", true);
}

TEST_CASE("a length has as few decimals as say it exactly, or the most that are allowed",
          "[length_text]") {
  CHECK(exact_places(Length(), Unit::mm, 3) == 0);
  CHECK(exact_places(Length::from_mm(2054), Unit::mm, 3) == 0);
  CHECK(exact_places(Length::from_mm_thousandths(-14'500), Unit::mm, 3) == 1);
  CHECK(exact_places(Length::from_mm_thousandths(1), Unit::mm, 3) == 3);
  CHECK(exact_places(Length::from_inch_parts(1, 64), Unit::mm, 3) == 3);  // 0.396875
  CHECK(exact_places(Length::from_inch_parts(3, 16), Unit::inch, 4) == 4);
  CHECK(exact_places(Length::from_inch_parts(3, 16), Unit::inch, 3) == 3);
}

TEST_CASE("inches are fractions, reduced, with what is left over", "[length_text]") {
  CHECK(inch_fraction(inch(19, 8), 64) == "2 3/8");
  CHECK(inch_fraction(inch(-19, 8), 64) == "-2 3/8");
  CHECK(inch_fraction(inch(2), 64) == "2");
  CHECK(inch_fraction(inch(-2), 64) == "-2");
  CHECK(inch_fraction(Length(), 64) == "0");
  CHECK(inch_fraction(inch(1, 2), 64) == "1/2");
  CHECK(inch_fraction(inch(63, 64), 64) == "63/64");
  CHECK(inch_fraction(inch(1, 512), 512) == "1/512");
  CHECK(inch_fraction(inch(3'065, 10'000), 64) == "5/16 -0.006");
  CHECK(inch_fraction(inch(-3'065, 10'000), 64) == "-5/16 +0.006");
  CHECK(inch_fraction(inch(12, 10'000), 64) == "0 +0.0012");
  CHECK(inch_fraction(inch(-12, 10'000), 64) == "0 -0.0012");
  CHECK(inch_fraction(inch(9'999, 10'000), 64) == "1 -0.0001");
  CHECK(inch_fraction(inch(29'999, 10'000), 64) == "3 -0.0001");
  CHECK(inch_fraction(inch(1, 2), 1) == "1 -0.5");
  CHECK(inch_fraction(inch(5, 4), 2) == "1 1/2 -0.25");
  CHECK(inch_fraction(inch(1, 128), 64) == "1/64 -0.0078");
  CHECK(inch_fraction(inch(-1, 128), 64) == "-1/64 +0.0078");
}

TEST_CASE("what is left over is shown however little it is", "[length_text]") {
  CHECK(inch_fraction(inch(1, 2) + Length::from_steps(1), 64) == "1/2 +0.000000025");
  CHECK(inch_fraction(inch(1, 2) - Length::from_steps(1), 64) == "1/2 -0.000000025");
  CHECK(inch_fraction(Length::from_steps(-1), 64) == "0 -0.000000025");
  CHECK(inch_fraction(inch(1, 2) + Length::from_steps(2'031), 64) == "1/2 +0.000049975");
  CHECK(inch_fraction(inch(1, 2) + Length::from_steps(2'032), 64) == "1/2 +0.0001");
  CHECK(inch_fraction(Length::from_steps(std::numeric_limits<std::int64_t>::min()), 64) ==
        "-226953052087 31/32 +0.0067");
}

TEST_CASE("a fraction with nothing left over reads as the same length", "[length_text]") {
  haunch::test::Random random(64);
  for (int i = 0; i < 20'000; ++i) {
    const int denominator = 1 << (i % 10);
    const Length length = inch(static_cast<std::int64_t>(random() % 99'999), denominator);
    const std::string text = inch_fraction(length, denominator);
    CAPTURE(text, denominator);
    REQUIRE(read_length(text, Unit::inch).length == length);
  }
}

TEST_CASE("units are written mm and in", "[length_text]") {
  CHECK(word_of(Unit::mm) == "mm");
  CHECK(word_of(Unit::inch) == "in");
}
