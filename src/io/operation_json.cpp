#include "report_rows.h"

namespace haunch {
namespace {

constexpr std::string_view kLine = R"({"$ref": "#/$defs/line"})";

struct OperationTold {
  const Assembly& wood;
  const Operation& operation;
};

struct RunTold {
  const Assembly& wood;
  const Run& run;

  const Piece& piece() const { return wood.pieces[run.piece]; }
};

ByName<Length> settings_of(const Operation& operation) {
  ByName<Length> settings;
  for (const NamedSize& setting : operation.settings)
    settings.each.emplace_back(word_of(setting.name), setting.size);
  return settings;
}

}  // namespace

template <>
struct JsonObject<FromShoulder> : JsonObjectDefaults {
  static constexpr JsonKey<FromShoulder> keys[] = {{"shoulder", the<&FromShoulder::line>},
                                                   {"from_shoulder", the<&FromShoulder::near>}};
};

template <>
struct JsonObject<RunTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "run";
  static constexpr JsonKey<RunTold> keys[] = {
      {"part", [](auto& it) -> const std::string& { return it.piece().mark; }},
      {"feature", [](auto& it) { return it.run.feature; }, R"("minimum": 0)"},
      {"joint", [](auto& it) { return joint_id_of(it.run.joint); }},
      {"side", [](auto& it) { return side_of(it.piece(), it.run.side); }},
      {"from", [](auto& it) { return it.run.from; }, kLine},
      {"near", [](auto& it) { return it.run.near; }},
      {"far", [](auto& it) { return it.run.far; }},
      {"to", [](auto& it) { return it.run.to; }, kLine},
      {"from_other_end", [](auto& it) { return it.run.from_other_end; }},
      {among, [](auto& it) -> const std::optional<FromShoulder>& { return it.run.from_shoulder; }},
      {"straight", [](auto& it) { return it.run.straight; }}};
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
      {"settings", [](auto& it) { return settings_of(it.operation); }},
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
