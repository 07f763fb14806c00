#include "explain_json.h"

#include "assumed_json.h"
#include "formats.h"
#include "schema.h"

namespace haunch {
namespace {

struct TermTold {
  const Explanation& explanation;
  const Term& term;
};

struct ValueTold {
  const Explanation& explanation;
  const ExplainedValue& value;
};

struct ItemExplained {
  const Explanation& explanation;
  std::vector<std::size_t> values;
  Unit unit;
};

std::vector<ValueTold> values_of(const ItemExplained& it) {
  std::vector<ValueTold> told;
  for (const std::size_t number : it.values)
    told.push_back({it.explanation, it.explanation.values[number]});
  return told;
}

}  // namespace

template <>
struct JsonValue<TermTold> {
  static void write(JsonText& json, const TermTold& it) {
    json.open_list();
    if (it.term.factor.under == 1)
      json.number(it.term.factor.over);
    else
      json.text(fraction_text(it.term.factor));
    json.text(it.explanation.values[it.term.value].what);
    json.close_list();
  }
  static std::string schema() {
    return R"({"type": "array", "prefixItems": [{"type": ["number", "string"]}, {"type": "string"}], "minItems": 2, "maxItems": 2})";
  }
};

template <>
struct JsonObject<ValueTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "value";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<ValueTold> keys[] = {
      {"what", [](auto& it) { return it.value.what; }},
      {"value", [](auto& it) -> const AssumedValue& { return it.value.value; }},
      {"from", [](auto& it) { return it.value.from; }},
      {"rule", [](auto& it) { return it.value.rule; }},
      {"source", [](auto& it) { return it.value.source; }},
      {"terms",
       [](auto& it) { return if_any(each_in<TermTold>(it.explanation, it.value.terms)); }}};
};

template <>
struct JsonObject<ItemExplained> : JsonObjectDefaults {
  static constexpr std::string_view definition = "item";
  static constexpr JsonKey<ItemExplained> keys[] = {
      {"id", [](auto& it) { return it.explanation.id; }},
      {"units", [](auto& it) { return it.unit; }},
      {"values", [](auto& it) { return values_of(it); }}};
};

void append_explanation_json(std::string& out, const Explanation& explanation,
                             std::string_view what, Unit unit, bool first) {
  out += first ? "\n" : ",\n";
  JsonText json(out, unit);
  write_json(json, ItemExplained{explanation, told_of(explanation, what), unit});
}

std::string explain_json_head() {
  return document_head<kExplainFormat>() + R"(, "items": [)";
}

std::string explain_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:explain-1",
    "title": "What haunch says of where figures come from",
    "description": "A value with terms is their sum: each a factor and the name of another value of the same item.")";
  const std::string whole =
      document_schema<kExplainFormat>({{"items", JsonValue<std::vector<ItemExplained>>::schema()}});
  return schema_document(kHead, whole,
                         {definition_of<ItemExplained>(), definition_of<ValueTold>()});
}

}  // namespace haunch
