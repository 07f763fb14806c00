#include "operation_json.h"

namespace haunch {
namespace {

struct OperationTold {
  const Assembly& wood;
  const Operation& operation;
};

struct RunTold {
  RunTold(const Assembly& wood, const Run& run) : place{wood, run} {}

  PlaceTold place;
};

}  // namespace

ByName<Length> settings_told(const std::vector<NamedSize>& settings) {
  ByName<Length> told;
  for (const NamedSize& setting : settings)
    told.each.emplace_back(word_of(setting.name), setting.size);
  return told;
}

template <>
struct JsonObject<RunTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "run";
  static constexpr JsonKey<RunTold> keys[] = {
      {"part", [](auto& it) -> const std::string& { return it.place.piece().mark; }},
      {among, the<&RunTold::place>}};
};

template <>
struct JsonObject<OperationTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "operation";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<OperationTold> keys[] = {
      {"makes", [](auto& it) { return word_of(it.operation.makes); }},
      {"cut",
       [](auto& it) { return only_if(it.operation.cut != Cut::whole, word_of(it.operation.cut)); },
       R"({"enum": ["face-cheek", "back-cheek", "face-cope", "back-cope", "haunch", "flare"]})"},
      {"profile", [](auto& it) { return if_any(it.operation.profile); }},
      {"settings", [](auto& it) { return settings_told(it.operation.settings); }},
      {"through", [](auto& it) { return only_if(it.operation.through, true); }},
      {"open_end", [](auto& it) { return only_if(it.operation.open_end, true); }},
      {"both_faces", [](auto& it) { return only_if(it.operation.both_faces, true); }},
      {"runs", [](auto& it) { return each_in<RunTold>(it.wood, it.operation.runs); },
       R"("minItems": 1)"}};
};

void JsonValue<OperationsTold>::write(JsonText& json, const OperationsTold& operations) {
  write_json(json, each_in<OperationTold>(operations.report.wood,
                                          operations.report.making.value().operations));
}

std::vector<SchemaDefinition> operation_definitions() {
  return {definition_of<OperationTold>(),
          {"line", JsonValue<Line>::schema()},
          definition_of<RunTold>()};
}

}  // namespace haunch
