#include "json_keys.h"

#include <fmt/core.h>

#include <algorithm>
#include <nlohmann/json.hpp>

namespace haunch {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t kSchemaWidth = 120;

void lay_out(std::string& out, const Json& value, std::size_t indent, std::size_t before);

bool holds_objects(const Json& value) {
  return std::any_of(value.begin(), value.end(), [](const Json& each) {
    return each.is_object() || (each.is_array() && holds_objects(each));
  });
}

/// nlohmann's own layouts are one line for all, or one for every word.
std::string on_one_line(const Json& value) {
  std::string text;
  if (!value.is_structured()) return value.dump();
  for (const auto& [key, each] : value.items()) {
    if (!text.empty()) text += ", ";
    if (value.is_object()) text += Json(key).dump() + ": ";
    text += on_one_line(each);
  }
  return value.is_object() ? "{" + text + "}" : "[" + text + "]";
}

/// The schema of an object is never on one line; what holds no other schema always is.
bool fits_on_line(const Json& value, std::size_t room) {
  if (value.is_object() && value.contains("type") && value.contains("properties")) return false;
  return !value.is_structured() || !holds_objects(value) || on_one_line(value).size() <= room;
}

void lay_out_members(std::string& out, const Json& value, std::size_t indent) {
  std::string_view between = "\n";
  for (const auto& [key, each] : value.items()) {
    const std::string start = value.is_object() ? Json(key).dump() + ": " : "";
    out += between;
    out += std::string(indent, ' ') + start;
    lay_out(out, each, indent, start.size());
    between = ",\n";
  }
}

/// `before`: how much stands on the line already, besides its indent.
void lay_out(std::string& out, const Json& value, std::size_t indent, std::size_t before) {
  constexpr std::size_t kStep = 2;
  const std::size_t used = indent + before;
  if (fits_on_line(value, kSchemaWidth - std::min(used, kSchemaWidth))) {
    out += on_one_line(value);
    return;
  }
  out += value.is_object() ? '{' : '[';
  lay_out_members(out, value, indent + kStep);
  out += "\n" + std::string(indent, ' ') + (value.is_object() ? '}' : ']');
}

}  // namespace

std::string schema_with(std::string schema, std::string_view also) {
  if (also.empty()) return schema;
  if (also.front() == '{') return std::string(also);
  schema.pop_back();
  return schema + ", " + std::string(also) + "}";
}

std::string list_schema(const std::string& items) {
  return R"({"type": "array", "items": )" + items + "}";
}

std::string list_schema(const std::string& items, std::size_t count) {
  return schema_with(list_schema(items), fmt::format(R"("minItems": {0}, "maxItems": {0})", count));
}

std::string words_schema(std::span<const std::string_view> words) {
  Json list = Json::array();
  for (const std::string_view word : words)
    list.push_back(word);
  return Json{{"enum", list}}.dump();
}

/// A plain type says that it may be null too; another schema stands beside null.
std::string nullable_schema(const std::string& schema) {
  Json json = Json::parse(schema);
  if (!json.contains("type")) return Json{{"anyOf", {{{"type", "null"}}, json}}}.dump();
  json["type"] = {json["type"], "null"};
  return json.dump();
}

std::string object_schema(const std::vector<SchemaKey>& keys, std::string_view also) {
  Json properties = Json::object();
  Json required = Json::array();
  for (const SchemaKey& key : keys) {
    properties[std::string(key.name)] = Json::parse(key.schema);
    if (key.required) required.push_back(key.name);
  }
  return schema_with(
      Json{{"type", "object"}, {"properties", properties}, {"required", required}}.dump(),
      std::string(also) + (also.empty() ? "" : ", ") + R"("additionalProperties": false)");
}

std::string reference_schema(std::string_view definition) {
  return R"({"$ref": "#/$defs/)" + std::string(definition) + R"("})";
}

std::string schema_document(std::string_view head, const std::string& object,
                            const std::vector<SchemaDefinition>& definitions) {
  Json json = Json::parse("{" + std::string(head) + "}");
  json.update(Json::parse(object));
  for (const SchemaDefinition& each : definitions)
    json["$defs"][std::string(each.name)] = Json::parse(each.schema);
  std::string out;
  lay_out(out, json, 0, 0);
  return out + "\n";
}

}  // namespace haunch
