#include <charconv>
#include <nlohmann/json.hpp>
#include <utility>

#include "doorset_spec.h"
#include "key.h"
#include "layout_spec.h"
#include "schema.h"
#include "season_spec.h"

namespace haunch {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kSchemaDialect = "https://json-schema.org/draft/2020-12/schema";
constexpr int kMostText = 10'000;

// ---- values

Json described(Json property, std::string_view words) {
  property["description"] = std::string(words);
  return property;
}

Json length(bool zero_allowed, std::string_view words) {
  return described({{"$ref", zero_allowed ? "#/$defs/length" : "#/$defs/size"}}, words);
}

Json number(int least, int most) {
  return {{"type", "integer"}, {"minimum", least}, {"maximum", most}};
}

Json one_of(const std::vector<std::string_view>& words) {
  return {{"enum", words}};
}

template <typename Choice>
Json one_of() {
  return {{"enum", Words(kWords<Choice>)}};
}

Json object(Json properties, const std::vector<std::string_view>& required = {}) {
  Json object{{"type", "object"}};
  object["properties"] = std::move(properties);
  if (!required.empty()) object["required"] = required;
  object["additionalProperties"] = false;
  return object;
}

Json list(int least, int most, Json items) {
  return {{"type", "array"}, {"minItems", least}, {"maxItems", most}, {"items", std::move(items)}};
}

// ---- what is no plain value

Json panels() {
  const Json one = number(1, 1000);
  const Json each{{"type", "array"}, {"minItems", 1}, {"items", one}};
  const Json across = described({{"anyOf", {one, each}}}, "in each tier, or in each from the top");
  return {{"anyOf", {number(1, 5'000), object({{"across", across}}, {"across"})}}};
}

Json percent() {
  const Json air = object({{"temperature", {{"type", "number"}}},
                           {"humidity", {{"type", "number"}, {"minimum", 5}, {"maximum", 95}}},
                           {"degrees", one_of({"celsius", "fahrenheit"})}},
                          {"temperature", "humidity"});
  return {{"anyOf", {Json{{"type", "number"}, {"minimum", 1}, {"maximum", 30}}, air}}};
}

Json woods() {
  Json wood{{"name", {{"type", "string"}}}, {"source", {{"type", "string"}}}};
  for (const WoodFigure& figure : wood_figures())
    wood[std::string(figure.key)] = {
        {"type", "number"}, {"minimum", figure.least}, {"maximum", figure.most}};
  return {{"type", "array"}, {"items", object(std::move(wood), {"name"})}};
}

Json load() {
  return {
      {"anyOf", {Json{{"type", "number"}, {"minimum", 0.1}, {"maximum", 1000}}, one_of<Load>()}}};
}

// ---- keys

/// Which keys, as they stand in an object.
struct Part {
  Owners of;
  std::string_view root = {};        // what the table has before them
  bool of_set = false;               // the leaf of a set, which says part of it instead
  std::string_view other_root = {};  // the same as `root`, of keys of another owner
  bool of_cabinet = false;           // a front of a cabinet, which says part of it instead
};

/// The properties of one object; those of others below it among them.
class PartSchema {
 public:
  explicit PartSchema(const Part& part) : part_(part) {}

  /// Of the keys below `group`, none for all.
  Json object_of(std::string_view group) const {
    Json properties = Json::object();
    std::vector<std::string_view> required;
    Json one_of_each = Json::array();
    for (const Key key : AllKeys()) {
      const std::string_view name = name_below(key, group);
      // Of two keys of one name the first is the one that is read.
      if (name.empty() || properties.contains(std::string(name))) continue;
      if (!key.row().missing.empty() && key.row().instead.empty()) required.push_back(name);
      if (!key.row().instead.empty())
        one_of_each.push_back(
            {{"anyOf", {Json{{"required", {name}}}, Json{{"required", {key.row().instead}}}}}});
      const Json property = property_of(key, name);
      properties[std::string(name)] = property;
      if (name.starts_with("muntin_"))
        properties["mullion_" + std::string(name.substr(7))] = property;
    }
    Json all = object(std::move(properties), required);
    if (!one_of_each.empty()) all["allOf"] = std::move(one_of_each);
    return all;
  }

 private:
  /// The name of a member of `group`; empty of other keys.
  std::string_view name_below(Key key, std::string_view group) const {
    std::string_view path = key.path();
    if (key.row().is_item()) return {};
    if ((key.row().of & part_.of) == 0 || (part_.of_set && is_said_by_set(key)) ||
        (part_.of_cabinet && is_said_by_cabinet(key)))
      return {};
    path = shown(key);
    if (!group.empty() &&
        (path.size() <= group.size() || !path.starts_with(group) || path[group.size()] != '.'))
      return {};
    if (!group.empty()) path.remove_prefix(group.size() + 1);
    return path.find('.') == std::string_view::npos ? path : std::string_view();
  }

  std::string_view shown(Key key) const {
    const std::string_view path = key.path();
    for (const std::string_view root : {part_.root, part_.other_root})
      if (!root.empty() && path.starts_with(root)) return path.substr(root.size());
    return path;
  }

  Json property_of(Key key, std::string_view name) const {
    const KeyRow& row = key.row();
    Json property = described(value_of(key, name), row.about);
    add_default(property, row);
    return property;
  }

  Json value_of(Key key, std::string_view name) const {
    const KeyRow& row = key.row();
    switch (row.holds) {
      case Holds::size:
      case Holds::size_or_zero:
        return {{"$ref", row.holds == Holds::size ? "#/$defs/size" : "#/$defs/length"}};
      case Holds::count:
        return number(row.least, row.most);
      case Holds::word:
        return one_of(legal_words(row, row.legal));
      case Holds::flag:
        return {{"type", "boolean"}};
      case Holds::text:
        return {{"type", "string"}, {"maxLength", kMostText}};
      case Holds::object:
        return group_of(key);
      case Holds::list:
        return list_of(key);
      case Holds::own:
        return own_of(key, name);
    }
    return {};
  }

  /// A list of items, or its only one.
  Json list_of(Key key) const {
    const KeyRow& row = key.row();
    const Json item = value_of(key.item(), {});
    Json all = list(row.least, row.most, item);
    if (row.plain != Plain::first) return all;
    return {{"anyOf", {item, std::move(all)}}};
  }

  static std::vector<std::string_view> legal_words(const KeyRow& row, std::uint32_t legal) {
    std::vector<std::string_view> words;
    for (std::size_t i = 0; i < row.words.size(); ++i)
      if ((legal >> i & 1U) != 0) words.push_back(row.words[i]);
    return words;
  }

  /// An object of its members, or what may stand in its place.
  Json group_of(Key group) const {
    std::vector<Key> members;
    for (const Key key : AllKeys())
      if ((key.row().of & part_.of) != 0 && key.is_below(group)) members.push_back(key);
    const Plain plain = group.row().plain;
    if (plain == Plain::first && members.size() == 1) return value_of(members.front(), {});
    Json whole = object_of(shown(group));
    if (group.row().most == 1) whole["minProperties"] = whole["maxProperties"] = 1;
    if (group == Key("fittings[].cuts[]"))
      whole["anyOf"] = {Json{{"required", {"length", "width"}}}, Json{{"required", {"diameter"}}}};
    if (plain == Plain::nothing) return whole;
    return {{"anyOf", {plain_of(plain, members), std::move(whole)}}};
  }

  Json plain_of(Plain plain, const std::vector<Key>& members) const {
    const KeyRow& first = members.front().row();
    if (plain == Plain::first) return property_of(members.front(), {});
    if (first.is_size()) return length(first.holds == Holds::size_or_zero, "one for all");
    std::uint32_t legal = 0;
    for (const Key member : members)
      legal |= member.row().legal;
    return described(one_of(legal_words(first, legal)), "one wherever it can be");
  }

  Json own_of(Key key, std::string_view name) const {
    if (key == Key("kind")) return {{"const", std::string(kind())}};
    if (key == Key("units")) return one_of<Unit>();
    if (key.is_below("moisture")) return percent();
    if (key == Key("panels")) return panels();
    if (key == Key("panel.tiers")) return tiers();
    if (key == Key("woods")) return woods();
    if (name.ends_with("_minutes")) return {{"type", "number"}, {"minimum", 0}};
    if (key == Key("work")) return work();
    if (key == Key("edge.profile"))
      return {
          {"anyOf", {one_of(legal_words(key.row(), key.row().legal)), Json{{"type", "string"}}}}};
    if (key == Key("due") || key == Key("hardware[].priced"))
      return {{"type", "string"}, {"format", "date"}};
    if (key == Key("hardware[].cuts")) return {{"type", "object"}};
    if (key == Key("hardware[].mass") || key == Key("hardware[].price") ||
        key == Key("access.carry"))
      return {{"type", "number"}, {"minimum", 0}};
    if (key == Key("$schema")) return {{"type", "string"}};
    if (key == Key("layout"))
      return {{"$ref", part_.of == kOfFaceFrame ? "#/$defs/frame_part" : "#/$defs/cabinet_part"}};
    if (key == Key("layout_node.columns") || key == Key("layout_node.rows"))
      return list(1, 500,
                  {{"$ref", part_.of == kOfNode ? "#/$defs/frame_part" : "#/$defs/cabinet_part"}});
    if (key == Key("layout_node.shelves.load")) return load();
    if (key == Key("run.lines"))
      return {{"type", "object"}, {"additionalProperties", {{"$ref", "#/$defs/size"}}}};
    if (key == Key("fronts.door") || key == Key("case.end") || key == Key("case.back.leaf"))
      return PartSchema({.of = kOfDoor, .of_cabinet = true}).object_of("");
    throw std::logic_error("no schema of " + std::string(name));
  }

  /// Of a shop file none.
  std::string_view kind() const {
    for (const KindOfWork& kind : kKindsOfWork)
      if (kind.of == part_.of) return kind.name;
    return {};
  }

  /// The way of working is told of doors; a shop file has no other work.
  Json work() const {
    Json way = one_of<Work>();
    Json other{{"type", "array"}, {"items", {{"type", "object"}}}};
    if (part_.of == kOfShop) return way;
    if (part_.of == kOfDoor) return {{"anyOf", {way, other}}};
    return other;
  }

  /// All that is of a panel, for each tier.
  Json tiers() const {
    Json tier = Json::object();
    for (const Key key : AllKeys())
      if (const auto name = name_below(key, "panel"); !name.empty() && name != "tiers")
        tier[std::string(name)] = property_of(key, name);
    return list(1, 199, object(std::move(tier)));
  }

  /// What is taken where nothing is said, where that is one value for every spec.
  static void add_default(Json& property, const KeyRow& row) {
    if (row.holds == Holds::flag) property["default"] = false;
    int count = 0;
    const char* end = row.usual.data() + row.usual.size();
    if (row.holds == Holds::count && std::from_chars(row.usual.data(), end, count).ptr == end)
      property["default"] = count;
    for (const std::string_view word : row.words)
      if (word == row.usual) property["default"] = word;
    if (!property.contains("default") && !row.usual.empty())
      property["description"] = std::string(row.about) + "; usual: " + std::string(row.usual);
  }

  Part part_;
};

/// An item without a shop file: it says its kind, and the unit of its bare numbers.
Json item(const Part& part) {
  Json schema = PartSchema(part).object_of("");
  schema["required"].push_back("kind");
  schema["if"] = {{"$ref", "#/$defs/bare_number"}};
  schema["then"] = {{"required", {"units"}}};
  return schema;
}

/// Whether some length but 0, at any depth, is a bare number. Of the keys whose numbers are none,
/// those of one name hold none in any object.
Json bare_number() {
  Json others = Json::object();
  for (const Key key : AllKeys())
    if (key.row().holds == Holds::count || key.is_below("moisture") || key == Key("panels"))
      others[std::string(key.path().substr(key.path().rfind('.') + 1))] = true;
  const Json deeper{{"$ref", "#/$defs/bare_number"}};
  others["load"] = true;
  others["work"] = true;
  others["carry"] = true;
  others["shelves"] = {{"anyOf", {Json{{"type", "number"}}, Json{{"not", deeper}}}}};
  const Json none_below{{"properties", std::move(others)},
                        {"additionalProperties", {{"not", deeper}}}};
  return {{"anyOf",
           {Json{{"type", "number"}, {"not", {{"const", 0}}}},
            Json{{"type", "array"}, {"contains", deeper}},
            Json{{"type", "object"}, {"not", none_below}}}},
          {"description", "Some length in it has no unit of its own."}};
}

Json doorset() {
  Json schema = item({kOfSet});
  schema["properties"]["leaf"] =
      described(PartSchema({kOfDoor, {}, true}).object_of(""), Key("leaf").row().about);
  return schema;
}

/// What its keys for one use may be: those that do not stand at its top alone.
Json of_use(const Json& whole, Key use) {
  Json properties = whole["properties"];
  for (const char* key :
       {"$schema", "kind", "units", "use", "woods", "machines", "hardware", "house", "cabinet"})
    properties.erase(key);
  return described(object(std::move(properties)), use.row().about);
}

Json shop_file() {
  Json whole = PartSchema({kOfShop}).object_of("");
  whole.erase("required");
  std::vector<std::string_view> kinds;
  for (const KindOfWork& kind : kKindsOfWork)
    kinds.push_back(kind.name);
  whole["properties"]["kind"] = described(one_of(kinds), Key("kind").row().about);
  const Json house = of_use(whole, "house"), cabinet = of_use(whole, "cabinet");
  whole["properties"]["house"] = house;
  whole["properties"]["cabinet"] = cabinet;
  return whole;
}

Json any_length(std::string_view least, std::string_view words) {
  return {{"type", {"number", "string"}},
          {std::string(least), 0},
          {"maxLength", kMostText},
          {"description", std::string(words)}};
}

/// What lengths are referred to by.
Json lengths() {
  return {{"length",
           any_length("minimum", "in units, or a text with its own: \"65 mm\", \"2 9/16 in\"")},
          {"size", any_length("exclusiveMinimum", "more than 0")}};
}

}  // namespace

std::string shop_schema() {
  Json schema{
      {"$schema", std::string(kSchemaDialect)},
      {"$id", "urn:haunch:shop-1"},
      {"title", "A shop file for haunch"},
      {"description",
       "What is usual in a shop, for specs that do not say it. Some keys are of one kind of "
       "work; house and cabinet hold what is usual for one use alone."}};
  schema.update(shop_file());
  schema["$defs"] = lengths();
  return schema.dump(2) + "\n";
}

std::string spec_schema() {
  Json schema{
      {"$schema", std::string(kSchemaDialect)},
      {"$id", "urn:haunch:spec-1"},
      {"title", "A spec for haunch"},
      {"description",
       "One item. A file holds one item, an array of items, or one item a line. One that is "
       "worked with a shop file may leave kind and units to that."}};
  Json kinds = Json::array();
  Json definitions;
  for (const KindOfWork& kind : kKindsOfWork) {
    kinds.push_back({{"$ref", "#/$defs/" + std::string(kind.name)}});
    definitions[std::string(kind.name)] =
        kind.of == kOfSet ? doorset() : item({.of = kind.of, .root = kind.root});
  }
  kinds.push_back({{"$ref", "#/$defs/like"}});
  definitions["frame_part"] = PartSchema({.of = kOfNode, .root = kNodeRoot}).object_of("");
  definitions["cabinet_part"] = PartSchema({.of = kOfNode | kOfDoor | kOfDrawer,
                                            .root = kNodeRoot,
                                            .other_root = "fronts.drawer.",
                                            .of_cabinet = true})
                                    .object_of("");
  definitions["like"] = {
      {"type", "object"},
      {"required", {"like"}},
      {"properties", {{"like", {{"type", "string"}, {"minLength", 1}}}}},
      {"description",
       "An item that takes another spec's keys first. What both come to is not checked here."}};
  definitions["bare_number"] = bare_number();
  schema["anyOf"] = std::move(kinds);
  schema["$defs"] = std::move(definitions);
  schema["$defs"].update(lengths());
  return schema.dump(2) + "\n";
}

}  // namespace haunch
