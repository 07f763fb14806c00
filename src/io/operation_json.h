// A place of an operation as our JSON tells it, in reports and in set-ups.
#pragma once

#include "report_rows.h"

namespace haunch {

template <>
struct JsonObject<AcrossFace> : JsonObjectDefaults {
  static constexpr JsonKey<AcrossFace> keys[] = {{"near", the<&AcrossFace::near>},
                                                 {"far", the<&AcrossFace::far>}};
};

struct PlaceTold {
  const Assembly& wood;
  const Run& run;

  const Piece& piece() const { return wood.pieces[run.piece]; }
};

template <>
struct JsonObject<FromShoulder> : JsonObjectDefaults {
  static constexpr JsonKey<FromShoulder> keys[] = {{"shoulder", the<&FromShoulder::line>},
                                                   {"from_shoulder", the<&FromShoulder::near>}};
};

inline constexpr std::string_view kLineSchema = R"({"$ref": "#/$defs/line"})";

template <>
struct JsonObject<PlaceTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "place";
  static constexpr JsonKey<PlaceTold> keys[] = {
      {"feature", [](auto& it) { return it.run.feature; }, R"("minimum": 0)"},
      {"joint", [](auto& it) { return joint_id_of(it.run.joint); }},
      {"side", [](auto& it) { return side_of(it.piece(), it.run.side); }},
      {"from", [](auto& it) { return it.run.from; }, kLineSchema},
      {"near", [](auto& it) { return it.run.near; }},
      {"far", [](auto& it) { return it.run.far; }},
      {"to", [](auto& it) { return it.run.to; }, kLineSchema},
      {"from_other_end", [](auto& it) { return it.run.from_other_end; }},
      {among, [](auto& it) -> const std::optional<FromShoulder>& { return it.run.from_shoulder; }},
      {"straight", [](auto& it) { return it.run.straight; }},
      {"across", [](auto& it) { return it.run.across; }}};
};

/// Settings under their names.
ByName<Length> settings_told(const std::vector<NamedSize>& settings);

}  // namespace haunch
