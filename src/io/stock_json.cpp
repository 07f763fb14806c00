#include <variant>

#include "input_keys.h"
#include "schema.h"
#include "stock_file.h"

namespace haunch {
namespace {

constexpr std::string_view kLength = R"({"$ref": "#/$defs/length"})";
constexpr std::string_view kSize = R"({"$ref": "#/$defs/size"})";

/// What a stock file may leave out, though we always write it.
template <class Value>
std::optional<Value> may_say(Value value) {
  return value;
}

struct Trim {
  const Sawing& its;
};

struct LeastOffcut {
  const Sawing& its;
};

struct GlueUp {
  const Sawing& its;
};

struct Range {
  Length from, to;
};

std::variant<Length, Range> width_of(const StockItem& item) {
  if (item.widest) return Range{item.width, *item.widest};
  return item.width;
}

std::variant<Length, std::string> thickness_of(const StockItem& item) {
  if (item.quarters.empty()) return item.thickness.thickness;
  return item.quarters;
}

std::optional<std::string_view> surface_of(const lumber::StockThickness& it) {
  return only_if<std::string_view>(it.surfaced != it.sheet, it.surfaced ? "surfaced" : "rough");
}

}  // namespace

/// The key says what the schema does.
template <class... Values>
struct JsonValue<std::variant<Values...>> {
  static void write(JsonText& json, const std::variant<Values...>& it) {
    std::visit([&](const auto& value) { write_json(json, value); }, it);
  }
  static std::string schema() { return "{}"; }
};

template <>
struct JsonValue<lumber::Defect> {
  static void write(JsonText& json, const lumber::Defect& defect) {
    write_json(json, std::array{defect.from, defect.to});
  }
  static std::string schema() { return "{}"; }
};

template <>
struct JsonObject<Range> : JsonObjectDefaults {
  static constexpr JsonKey<Range> keys[] = {{"from", the<&Range::from>}, {"to", the<&Range::to>}};
};

// ---- how the shop saws

template <>
struct JsonObject<Trim> : JsonObjectDefaults {
  static constexpr std::string_view also =
      R"("description": "what comes off every board first, the blade's wood included")";
  static constexpr JsonKey<Trim> keys[] = {
      {"end", [](auto& it) { return may_say(it.its.end_trim); }, kLength},
      {"edge", [](auto& it) { return may_say(it.its.edge_trim); }, kLength}};
};

template <>
struct JsonObject<LeastOffcut> : JsonObjectDefaults {
  static constexpr std::string_view also =
      R"("description": "an offcut from this size on is kept")";
  static constexpr JsonKey<LeastOffcut> keys[] = {
      {"length", [](auto& it) { return may_say(it.its.offcut_length); }, kSize},
      {"width", [](auto& it) { return may_say(it.its.offcut_width); }, kSize}};
};

template <>
struct JsonObject<lumber::Allowances> : JsonObjectDefaults {
  static constexpr std::string_view also =
      R"("description": "what a rough part has more than the finished one; face: each planed face")";
  static constexpr JsonKey<lumber::Allowances> keys[] = {
      {"length", [](auto& it) { return may_say(it.length); }, kLength},
      {"width", [](auto& it) { return may_say(it.width); }, kLength},
      {"face", [](auto& it) { return may_say(it.face); }, kLength}};
};

template <>
struct JsonObject<GlueUp> : JsonObjectDefaults {
  static constexpr std::string_view also =
      R"("description": "limit: the widest strip of a panel; jointing: off each edge")";
  static constexpr JsonKey<GlueUp> keys[] = {
      {"limit", [](auto& it) { return may_say(it.its.strip_limit); }, kSize},
      {"jointing", [](auto& it) { return may_say(it.its.jointing); }, kLength}};
};

template <>
struct JsonObject<lumber::WasteRule> : JsonObjectDefaults {
  static constexpr std::string_view also = R"("description": "for the takings-off")";
  static constexpr JsonKey<lumber::WasteRule> keys[] = {
      {"percent", the<&lumber::WasteRule::percent>, R"("minimum": 0, "maximum": 99)"},
      {"of", [](auto& it) { return it.of_bought ? "bought" : "needed"; },
       R"({"enum": ["bought", "needed"]})"}};
};

// ---- boards and sheets

template <>
struct JsonObject<Price> : JsonObjectDefaults {
  static constexpr double kUnit = 10'000;
  static constexpr JsonKey<Price> keys[] = {
      {"price",
       [](auto& it) { return Rounded<4>{static_cast<double>(it.ten_thousandths) / kUnit}; },
       R"("minimum": 0, "exclusiveMaximum": 10000000)"},
      {"per", the<&Price::per>}};
};

template <>
struct JsonObject<StockItem> : JsonObjectDefaults {
  static constexpr std::string_view definition = "item";
  static constexpr std::string_view also =
      R"("dependentRequired": {"price": ["per"], "per": ["price"]})";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<StockItem> keys[] = {
      {"id", the<&StockItem::id>,
       R"({"type": ["string", "number"], "minLength": 1, "description": "its own, once"})"},
      {"length", the<&StockItem::length>,
       R"({"anyOf": [{"$ref": "#/$defs/size"}, {"$ref": "#/$defs/range"}],
           "description": "along its grain; of what is for sale a range, in steps of 300 mm or 12 in. where none is given"})"},
      {"width", [](auto& it) { return width_of(it); },
       R"({"anyOf": [{"$ref": "#/$defs/size"}, {"$ref": "#/$defs/range"}],
           "description": "across its grain; of random widths the narrowest and the widest"})"},
      {"thickness", [](auto& it) { return thickness_of(it); },
       R"({"$ref": "#/$defs/size", "description": "or quarters: \"5/4\""})"},
      {"kind", [](auto& it) { return only_if<std::string_view>(it.thickness.sheet, "sheet"); },
       R"({"enum": ["board", "sheet"]})"},
      {"surface", [](auto& it) { return surface_of(it.thickness); },
       R"({"enum": ["rough", "surfaced"]})"},
      {"species", [](auto& it) { return if_any(it.species); },
       R"("description": "or what the sheet is")"},
      {"count", the<&StockItem::count>,
       R"("minimum": 0, "maximum": 100000, "description": "in hand one, for sale as many as wanted")"},
      {"taken", [](auto& it) { return only_if(it.taken > 0, it.taken); },
       R"("minimum": 0, "maximum": 100000,
          "description": "by earlier plans and no more among count; numbers go on from there")"},
      {among, the<&StockItem::price>},
      {"grain", [](auto& it) { return only_if(!it.grain, it.grain); },
       R"("description": "false: parts may be turned on it")"},
      {"defects", [](auto& it) { return if_any(it.defects); },
       R"({"description": "stretches of the length to skip", "type": ["array", "string"],
           "items": {"type": "array", "prefixItems": [{"$ref": "#/$defs/length"}, {"$ref": "#/$defs/size"}],
                     "minItems": 2, "maxItems": 2}})"},
      {"end_trim", the<&StockItem::end_trim>, kLength},
      {"edge_trim", the<&StockItem::edge_trim>, kLength},
      {"note", unkept}};
};

template <>
struct JsonObject<StockFile> : JsonObjectDefaults {
  static constexpr JsonKey<StockFile> keys[] = {
      {"$schema", unkept},
      {"units", [](auto& it) { return may_say(it.unit); }, R"("description": "of bare numbers")"},
      {"currency", [](auto& it) { return if_any(it.currency); },
       R"("description": "a word that stands behind prices")"},
      {"note", unkept},
      {"kerf", [](auto& it) { return may_say(it.sawing.kerf); },
       R"({"$ref": "#/$defs/length", "description": "of every cut"})"},
      {on_row, "trim", [](auto& it) { return may_say(Trim{it.sawing}); }},
      {on_row, "least_offcut", [](auto& it) { return may_say(LeastOffcut{it.sawing}); }},
      {on_row, "allowances", [](auto& it) { return may_say(it.sawing.allowances); }},
      {on_row, "glue_up", [](auto& it) { return may_say(GlueUp{it.sawing}); }},
      {on_row, "waste", [](auto& it) { return may_say(it.sawing.waste); }},
      {"match", [](auto& it) { return may_say(it.sawing.match); },
       R"("description": "parts of one item from one board where they can")"},
      {on_row, "stock", the<&StockFile::items>}};
};

std::string stock_text(const StockFile& file) {
  std::string out;
  JsonText json(out, file.unit);
  write_json(json, file);
  return out + "\n";
}

const std::vector<std::string_view>& stock_file_keys() {
  static const std::vector<std::string_view> names = keys_of<StockFile>();
  return names;
}

const std::vector<std::string_view>& stock_item_keys() {
  static const std::vector<std::string_view> names = keys_of<StockItem>();
  return names;
}

std::string stock_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:stock-1",
    "title": "A stock file for 'haunch lumber'",
    "description": "What is in the rack, what the yard sells, and how the shop saws. What has a price is for sale.")";
  return schema_document(
      kHead, object_schema<StockFile>(),
      {{"length",
        R"({"type": ["number", "string"], "minimum": 0,
            "description": "in units, or a text with its own: \"65 mm\", \"2 9/16 in\""})"},
       {"size",
        R"({"type": ["number", "string"], "exclusiveMinimum": 0, "description": "more than 0"})"},
       {"range",
        R"({"type": "object", "properties": {"from": {"$ref": "#/$defs/size"}, "to": {"$ref": "#/$defs/size"}, "step": {"$ref": "#/$defs/size"}},
            "required": ["from", "to"], "additionalProperties": false})"},
       definition_of<StockItem>()});
}

}  // namespace haunch
