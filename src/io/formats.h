// The forms of our JSON documents, and what each of them begins with.
#pragma once

#include <string>
#include <string_view>

#include "json_keys.h"

namespace haunch {

/// A form by its name, "haunch-report-1". Keys may come to a form, but never go or change what they
/// mean; a form that must break that gets another number.
struct DocumentFormat {
  std::string_view name;
  std::string_view schema;  // of that name
};

inline constexpr DocumentFormat kReportFormat{"haunch-report-1", R"({"const": "haunch-report-1"})"};
inline constexpr DocumentFormat kLumberFormat{"haunch-lumber-1", R"({"const": "haunch-lumber-1"})"};
inline constexpr DocumentFormat kLabelsFormat{"haunch-labels-1", R"({"const": "haunch-labels-1"})"};
inline constexpr DocumentFormat kExplainFormat{"haunch-explain-1",
                                               R"({"const": "haunch-explain-1"})"};
inline constexpr DocumentFormat kTrialFormat{"haunch-trial-1", R"({"const": "haunch-trial-1"})"};
inline constexpr DocumentFormat kRodFormat{"haunch-rod-1", R"({"const": "haunch-rod-1"})"};
inline constexpr DocumentFormat kCompareFormat{"haunch-compare-1",
                                               R"({"const": "haunch-compare-1"})"};
inline constexpr DocumentFormat kSpeciesFormat{"haunch-species-1",
                                               R"({"const": "haunch-species-1"})"};
inline constexpr DocumentFormat kMoistureFormat{"haunch-moisture-1",
                                                R"({"const": "haunch-moisture-1"})"};
inline constexpr DocumentFormat kSettingsFormat{"haunch-settings-1",
                                                R"({"const": "haunch-settings-1"})"};

inline constexpr DocumentFormat kQuoteFormat{"haunch-quote-1", R"({"const": "haunch-quote-1"})"};
inline constexpr DocumentFormat kSetupsFormat{"haunch-setups-1", R"({"const": "haunch-setups-1"})"};

inline constexpr const DocumentFormat* kFormats[] = {
    &kReportFormat,  &kLumberFormat,  &kSetupsFormat,   &kLabelsFormat,
    &kExplainFormat, &kTrialFormat,   &kRodFormat,      &kCompareFormat,
    &kQuoteFormat,   &kSpeciesFormat, &kMoistureFormat, &kSettingsFormat};

/// Of this program, "1.2.0".
std::string_view tool_version();

/// The program that wrote a document.
struct Tool {};

template <>
struct JsonObject<Tool> : JsonObjectDefaults {
  static constexpr JsonKey<Tool> keys[] = {{"name", [](auto&) { return "haunch"; }},
                                           {"version", [](auto&) { return tool_version(); }}};
};

/// The first keys of a document: its form, and who wrote it.
template <const DocumentFormat& kFormat>
struct DocumentHead {};

template <const DocumentFormat& kFormat>
struct JsonObject<DocumentHead<kFormat>> : JsonObjectDefaults {
  static constexpr JsonKey<DocumentHead<kFormat>> keys[] = {
      {"format", [](auto&) { return kFormat.name; }, kFormat.schema},
      {"tool", [](auto&) { return Tool(); }}};
};

/// Those keys as text, of a document that is written item by item.
template <const DocumentFormat& kFormat>
std::string document_head() {
  std::string text;
  JsonText json(text, Unit::mm);
  json.open_object();
  JsonMembers<DocumentHead<kFormat>>::write(json, {});
  return text;
}

/// The schema of a document that begins with them and goes on with `keys`.
template <const DocumentFormat& kFormat>
std::string document_schema(const std::vector<SchemaKey>& keys) {
  std::vector<SchemaKey> all = JsonMembers<DocumentHead<kFormat>>::schema_keys();
  all.insert(all.end(), keys.begin(), keys.end());
  return object_schema(all, {});
}

}  // namespace haunch
