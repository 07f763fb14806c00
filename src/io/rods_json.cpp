#include "rods_json.h"

#include "formats.h"
#include "schema.h"

namespace haunch {
namespace {

struct RodTold {
  const ItemRods& item;
  const Rod& rod;
};
struct StripTold {
  const RodTold& of;
  std::size_t number;

  const RodStrip& it() const { return of.rod.strips[number]; }
};
struct MarkTold {
  const RodTold& of;
  const RodMark& mark;
};
struct NameTold {
  const RodTold& of;
  const RodName& name;
};

struct RodsTold {
  const std::vector<ItemRods>& items;
  Unit unit;

  std::vector<RodTold> rods() const {
    std::vector<RodTold> all;
    for (const ItemRods& item : items)
      for (const Rod& rod : item.rods)
        all.push_back({item, rod});
    return all;
  }
};

std::vector<StripTold> strips_of(const RodTold& told) {
  std::vector<StripTold> all;
  for (std::size_t strip = 0; strip < told.rod.strips.size(); ++strip)
    all.push_back({told, strip});
  return all;
}

}  // namespace

template <>
struct JsonObject<StripTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "strip";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<StripTold> keys[] = {
      {"name", [](auto& it) { return strip_name(it.of.rod, it.number); }},
      {"role", [](auto& it) { return it.it().role; }},
      {"pieces", [](auto& it) { return marks_of(it.of.item.wood, it.it().pieces); },
       R"("minItems": 1)"}};
};

template <>
struct JsonObject<NameTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "name";
  static constexpr JsonKey<NameTold> keys[] = {
      {"what", [](auto& it) -> const std::string& { return it.name.what; }},
      {"strip", [](auto& it) { return it.name.strip; }, R"("minimum": 0)"},
      {"pieces", [](auto& it) { return marks_of(it.of.item.wood, it.name.pieces); },
       R"("minItems": 1)"},
      {"takes", [](auto& it) { return if_any(marks_of(it.of.item.wood, it.name.takes)); }}};
};

template <>
struct JsonObject<MarkTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "mark";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<MarkTold> keys[] = {
      {"at", [](auto& it) { return it.mark.at; }},
      {"names", [](auto& it) { return each_in<NameTold>(it.of, it.mark.names); },
       R"("minItems": 1)"}};
};

template <>
struct JsonObject<RodTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "rod";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<RodTold> keys[] = {
      {"item", [](auto& it) -> const std::string& { return it.item.id; }},
      {"of", [](auto& it) { return it.rod.of.empty() ? std::nullopt : std::optional(it.rod.of); }},
      {"direction", [](auto& it) { return it.rod.direction; }},
      {"zero", [](auto& it) { return zero_of(it.rod.direction); },
       R"({"enum": ["foot", "left", "front"]})"},
      {"length", [](auto& it) { return it.rod.length; }},
      {"strips", [](auto& it) { return strips_of(it); }},
      {"marks", [](auto& it) { return each_in<MarkTold>(it, it.rod.marks); }}};
};

template <>
struct JsonObject<RodsTold> : JsonObjectDefaults {
  static constexpr JsonKey<RodsTold> keys[] = {
      {among, [](auto&) { return DocumentHead<kRodFormat>(); }},
      {"units", the<&RodsTold::unit>},
      {on_row, "rods", [](auto& it) { return it.rods(); }}};
};

std::string rods_json(const std::vector<ItemRods>& items, Unit unit) {
  std::string out;
  JsonText json(out, unit);
  write_json(json, RodsTold{items, unit});
  return out + "\n";
}

std::string rod_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:rod-1",
    "title": "What 'haunch rod' says",
    "description": "Lengths are numbers in 'units'. A mark's 'at' runs from the rod's zero (of the height up, of the width to the right, of the depth to the back) and is below 0 before it; no two marks of a rod stand at one place. 'strip' is the number of one of the rod's strips, from 0.")";
  return schema_document(kHead, object_schema<RodsTold>(),
                         {definition_of<RodTold>(), definition_of<StripTold>(),
                          definition_of<MarkTold>(), definition_of<NameTold>()});
}

}  // namespace haunch
