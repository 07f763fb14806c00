#include "json_keys.h"

#include <nlohmann/json.hpp>

#include "catch.h"

using namespace haunch;

namespace {

constexpr std::string_view kWoods[] = {"oak", "ash"};

struct Shelf {
  Length depth;
  std::optional<int> pins;
};

struct Rack {
  std::vector<Shelf> shelves;
  std::optional<Shelf> lid;
  std::size_t wood = 0;
};

}  // namespace

template <>
struct haunch::JsonObject<Shelf> : JsonObjectDefaults {
  static constexpr std::string_view definition = "shelf";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Shelf> keys[] = {
      {"depth", the<&Shelf::depth>},
      {"pins", the<&Shelf::pins>, R"("minimum": 2)"},
  };
};

template <>
struct haunch::JsonObject<Rack> : JsonObjectDefaults {
  static constexpr JsonKey<Rack> keys[] = {
      {"wood", [](auto& it) { return Word<kWoods>(it.wood); }},
      {on_row, "shelves", the<&Rack::shelves>, R"("minItems": 1)"},
      {"lid", [](auto& it) { return OrNull<Shelf>{it.lid}; }},
      {"load", [](auto&) { return Rounded<1>{12.5}; }, R"({"$ref": "#/$defs/load"})"},
  };
};

namespace {

std::string written(const Rack& rack, Unit unit) {
  std::string out;
  JsonText json(out, unit);
  write_json(json, rack);
  return out;
}

}  // namespace

TEST_CASE("an object is written key by key; what is not there is left out, or null",
          "[json_keys]") {
  const Rack rack{{{Length::from_mm(254), 4}, {Length::from_mm(127), {}}}, {}, 1};
  CHECK(written(rack, Unit::inch) == R"({"wood": "ash",
  "shelves": [
  {"depth": 10, "pins": 4},
  {"depth": 5}], "lid": null, "load": 12.5})");
}

TEST_CASE("the same keys are the schema: a key that may be missing is not required",
          "[json_keys]") {
  CHECK(nlohmann::json::parse(object_schema<Shelf>()) == nlohmann::json::parse(R"({
    "type": "object",
    "properties": {"depth": {"type": "number"}, "pins": {"type": "integer", "minimum": 2}},
    "required": ["depth"], "additionalProperties": false})"));
  CHECK(nlohmann::json::parse(object_schema<Rack>()) == nlohmann::json::parse(R"({
    "type": "object",
    "properties": {
      "wood": {"enum": ["oak", "ash"]},
      "shelves": {"type": "array", "items": {"$ref": "#/$defs/shelf"}, "minItems": 1},
      "lid": {"anyOf": [{"type": "null"}, {"$ref": "#/$defs/shelf"}]},
      "load": {"$ref": "#/$defs/load"}},
    "required": ["wood", "shelves", "lid", "load"], "additionalProperties": false})"));
  CHECK(nullable_schema(R"({"type": "number"})") == R"({"type":["number","null"]})");
}

TEST_CASE("a schema is laid out to be read: what holds no other schema is on one line",
          "[json_keys]") {
  CHECK(schema_document(R"("title": "Racks")", object_schema<Shelf>(),
                        {{"load", R"({"type":"number","description":"in kg"})"}}) ==
        R"({
  "title": "Racks",
  "type": "object",
  "properties": {"depth": {"type": "number"}, "pins": {"type": "integer", "minimum": 2}},
  "required": ["depth"],
  "additionalProperties": false,
  "$defs": {"load": {"type": "number", "description": "in kg"}}
}
)");
}
