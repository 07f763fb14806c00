#include "document.h"

#include "catch.h"

using haunch::child_path;
using haunch::nearest_word;
using haunch::offset_of;
using haunch::Value;

namespace {

Value number(std::uint32_t offset) {
  Value value;
  value.kind = Value::Kind::number;
  value.offset = offset;
  return value;
}

Value object(std::uint32_t offset, std::vector<haunch::Entry> entries) {
  Value value;
  value.kind = Value::Kind::object;
  value.offset = offset;
  value.entries = std::move(entries);
  return value;
}

Value list(std::uint32_t offset, std::vector<Value> elements) {
  Value value;
  value.kind = Value::Kind::list;
  value.offset = offset;
  value.list = std::move(elements);
  return value;
}

const std::vector<std::string_view> kKeys{"opening", "clearance", "rail_widths", "panels",
                                          "panel",   "horn",      "id"};

}  // namespace

TEST_CASE("a value is found under its key, and only there", "[document]") {
  const Value door = object(0, {{"thickness", 1, number(14)}, {"horn", 18, number(26)}});
  REQUIRE(door.find("horn") != nullptr);
  CHECK(door.find("horn")->offset == 26);
  CHECK(door.find("hor") == nullptr);
  CHECK(number(3).find("horn") == nullptr);
}

TEST_CASE("a path is a JSON Pointer, with slash and tilde escaped", "[document]") {
  CHECK(child_path("", "panel") == "/panel");
  CHECK(child_path("/panel", "gap") == "/panel/gap");
  CHECK(child_path("/rail_widths", std::size_t{2}) == "/rail_widths/2");
  CHECK(child_path("", "3/8~") == "/3~18~0");
  CHECK(child_path("", "") == "/");
}

TEST_CASE("a path leads to the place of its value", "[document]") {
  const Value door =
      object(0, {{"rails", 1, list(10, {number(11), object(20, {{"a/b~1", 21, number(30)}})})}});
  CHECK(offset_of(door, "") == 0);
  CHECK(offset_of(door, "/rails") == 10);
  CHECK(offset_of(door, "/rails/0") == 11);
  CHECK(offset_of(door, "/rails/1/a~1b~01") == 30);
}

TEST_CASE("a path that leads nowhere gives the nearest value around it", "[document]") {
  const Value door = object(5, {{"rails", 6, list(10, {number(11)})}});
  CHECK(offset_of(door, "/stile_width") == 5);
  CHECK(offset_of(door, "/rails/1") == 10);
  CHECK(offset_of(door, "/rails/x") == 10);
  CHECK(offset_of(door, "/rails/0x") == 10);
  CHECK(offset_of(door, "/rails/99999999999999999999") == 10);
  CHECK(offset_of(door, "/rails/0/width") == 11);
}

TEST_CASE("a misspelt word gets the nearest right one", "[document]") {
  CHECK(nearest_word("openning", kKeys) == "opening");
  CHECK(nearest_word("raill_width", kKeys) == "rail_widths");
  CHECK(nearest_word("clearence", kKeys) == "clearance");
  CHECK(nearest_word("panles", kKeys) == "panels");
  CHECK(nearest_word("panal", kKeys) == "panel");
}

TEST_CASE("two neighbours swapped are one wrong letter", "[document]") {
  CHECK(nearest_word("hron", kKeys) == "horn");
  CHECK(nearest_word("oepnign", kKeys) == "opening");
}

TEST_CASE("what is too far off is not guessed at", "[document]") {
  CHECK(nearest_word("opnngs", {"opening"}).empty());  // three wrong
  CHECK(nearest_word("hirm", {"horn"}).empty());       // two of four letters
  CHECK(nearest_word("hirns", {"horn"}) == "horn");    // two of five
  CHECK(nearest_word("ib", {"id"}).empty());           // half of the word
  CHECK(nearest_word("idx", {"id"}) == "id");
  CHECK(nearest_word("", {"a"}).empty());
  CHECK(nearest_word(std::string(1'000'000, 'o'), kKeys).empty());
}

TEST_CASE("of two words equally near the first is offered", "[document]") {
  CHECK(nearest_word("groove", {"grooves", "grove"}) == "grooves");
  CHECK(nearest_word("groove", {"grove", "grooves"}) == "grove");
  CHECK(nearest_word("panels", kKeys) == "panels");
}
