#include <nlohmann/json.hpp>

#include "door_spec.h"
#include "doorset_spec.h"
#include "frame_spec.h"
#include "schema.h"

namespace haunch {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view kSchemaDialect = "https://json-schema.org/draft/2020-12/schema";

Json length(bool zero_allowed, std::string_view words) {
  return {{"$ref", zero_allowed ? "#/$defs/length" : "#/$defs/size"},
          {"description", std::string(words)}};
}

Json text(std::string_view words) {
  return {{"type", "string"}, {"maxLength", 10'000}, {"description", std::string(words)}};
}

Json object(Json properties) {
  return {
      {"type", "object"}, {"properties", std::move(properties)}, {"additionalProperties", false}};
}

/// Puts a property where its dotted key says, in objects within objects.
void add_nested(Json& properties, std::string_view key, Json property) {
  Json* where = &properties;
  for (std::size_t dot = key.find('.'); dot != std::string_view::npos; dot = key.find('.')) {
    Json& group = (*where)[std::string(key.substr(0, dot))];
    if (group.is_null()) group = object(Json::object());
    where = &group["properties"];
    key.remove_prefix(dot + 1);
  }
  (*where)[std::string(key)] = std::move(property);
}

/// The properties of every plain length, nested as their keys are.
void add_sizes(Json& properties) {
  for (const SizeKey& size : door_size_keys())
    add_nested(properties, size.key, length(size.zero_allowed, size.words));
}

Json property_of(const KeyRow& row) {
  const Json words{{"description", std::string(row.words)}};
  Json property;
  switch (row.holds) {
    case Holds::size:
    case Holds::size_or_zero:
      return length(row.holds == Holds::size_or_zero, row.words);
    case Holds::flag:
      property = {{"type", "boolean"}};
      break;
    case Holds::word:
      property = {{"enum", *row.choices}};
      break;
  }
  property.update(words);
  return property;
}

void add_table(Json& properties, const KeyTable& table) {
  for (const KeyRow& row : table.rows)
    add_nested(properties, row.key, property_of(row));
}

/// Where one length may stand for all the members of a group.
void allow_spread(Json& properties, std::span<const std::string_view> keys) {
  for (const std::string_view key : keys) {
    Json* where = &properties;
    const std::size_t dot = key.find('.');
    if (dot != std::string_view::npos)
      where = &properties[std::string(key.substr(0, dot))]["properties"];
    Json& group = (*where)[std::string(dot == std::string_view::npos ? key : key.substr(dot + 1))];
    const bool zero_allowed = group["properties"].front()["$ref"] == "#/$defs/length";
    group = Json{{"anyOf", {length(zero_allowed, "one for all"), group}}};
  }
}

Json rails() {
  Json rail = object({{"width", length(false, "width of the rail")},
                      {"name", text("what the shop calls it")},
                      {"top", length(true, "height of its upper edge above the leaf's foot")},
                      {"centre", length(true, "height of its middle above the leaf's foot")},
                      {"bottom", length(true, "height of its lower edge above the leaf's foot")}});
  rail["required"] = {"width"};
  return {{"type", "array"},
          {"minItems", 2},
          {"maxItems", 200},
          {"description", "the rails from the top"},
          {"items", {{"anyOf", {length(false, "width of the rail"), rail}}}}};
}

Json panels() {
  const Json number{{"type", "integer"}, {"minimum", 1}, {"maximum", 1000}};
  const Json each{{"type", "array"}, {"minItems", 1}, {"items", number}};
  Json across = object(
      {{"across",
        {{"anyOf", {number, each}}, {"description", "in each tier, or in each from the top"}}}});
  across["required"] = {"across"};
  const Json count{{"type", "integer"}, {"minimum", 1}, {"maximum", 5'000}};
  return {{"anyOf", {count, across}},
          {"description", "how many: a multiple of the tiers, or so many across"}};
}

void add_tolerances(Json& properties) {
  const auto share = [](int least, int most) {
    return Json{{"type", "integer"}, {"minimum", least}, {"maximum", most}};
  };
  properties["work"] = {{"enum", {"hand", "router", "nc"}},
                        {"description", "the way of working, which sets the usual tolerances"}};
  Json tolerance = Json::object();
  Json words = Json::array();
  for (std::size_t i = 0; i < kDimensions; ++i) {
    const std::string word(dimension_word(static_cast<Dimension>(i)));
    tolerance[word] = length(true, "plus or minus");
    words.push_back(word);
  }
  tolerance["deviations"] = share(1, 6);
  tolerance["one_setting"] = {{"type", "array"}, {"items", {{"enum", words}}}};
  tolerance["setting_share"] = share(0, 90);
  properties["tolerance"] = object(std::move(tolerance));
  properties["fit"] = object({{"min", length(true, "tighter will not go home")},
                              {"max", length(true, "looser is glue-starved")},
                              {"share", share(1, 99)}});
}

/// One value for all pieces, or one for each role.
Json for_roles(const Json& one, std::string_view words) {
  Json roles = Json::object();
  for (const std::string_view role : role_words())
    roles[std::string(role)] = one;
  return {{"anyOf", {one, object(std::move(roles))}}, {"description", std::string(words)}};
}

void add_seasons(Json& properties) {
  properties["species"] =
      for_roles(text("its name"), "the wood; of the roles that are not named, \"frame\"");
  properties["grain"] = for_roles({{"enum", {"flat-sawn", "quarter-sawn", "mixed"}}},
                                  "how the boards are sawn from the log");
  Json air = object({{"temperature", {{"type", "number"}}},
                     {"humidity", {{"type", "number"}, {"minimum", 5}, {"maximum", 95}}},
                     {"degrees", {{"enum", {"celsius", "fahrenheit"}}}}});
  air["required"] = {"temperature", "humidity"};
  const Json percent{
      {"anyOf", {Json{{"type", "number"}, {"minimum", 1}, {"maximum", 30}}, air}},
      {"description", "percent of the oven-dry wood, or the air that brings it there"}};
  properties["moisture"] = object({{"low", percent}, {"build", percent}, {"high", percent}});
}

Json flag(std::string_view words) {
  return {{"type", "boolean"}, {"description", std::string(words)}};
}

Json hinge_places() {
  Json from_foot = object({{"from_foot", length(true, "leaf's foot to the hinge's foot")}});
  Json from_top = object({{"from_top", length(true, "leaf's top to the hinge's top")}});
  from_foot["required"] = {"from_foot"};
  from_top["required"] = {"from_top"};
  return {{"type", "array"},
          {"minItems", 1},
          {"maxItems", 12},
          {"description", "the hinges one by one, in place of a number and both ends"},
          {"items",
           {{"anyOf", {length(true, "leaf's foot to the hinge's foot"), from_foot, from_top}}}}};
}

Json recess() {
  Json recess = object(
      {{"start", length(true, "fitting's place to the near end, of a round hole to its middle")},
       {"length", length(false, "of a recess with square corners")},
       {"width", length(false, "of a recess with square corners")},
       {"diameter", length(false, "of a round hole")},
       {"from", length(true, "face side, or outer edge, to the near wall or the hole's middle")},
       {"depth", length(false, "from the side it is let in to")},
       {"through", flag("right through, in place of a depth")}});
  recess["anyOf"] = {Json{{"required", {"length", "width"}}}, Json{{"required", {"diameter"}}}};
  return recess;
}

Json fittings() {
  Json fitting = object(
      {{"name", text("recesses of one name are of one fitting")},
       {"on", text("the name or the mark of a piece")},
       {"into", {{"enum", {"face", "back", "left", "right", "upper", "lower"}}}},
       {"at", length(true, "above the leaf's foot; on level pieces from its left edge")},
       {"cuts", {{"type", "array"}, {"minItems", 1}, {"maxItems", 50}, {"items", recess()}}}});
  fitting["required"] = {"on", "into", "at", "cuts"};
  return {{"type", "array"},
          {"minItems", 1},
          {"maxItems", 50},
          {"description", "what else is let in"},
          {"items", fitting}};
}

Json joint() {
  const auto words = [](const std::vector<JointWord>& joints) {
    Json list = Json::array();
    for (const JointWord joint : joints)
      list.push_back(std::string(joint_word(joint)));
    return Json{{"enum", list}};
  };
  Json places = Json::object();
  for (const JointPlace place : kJointPlaces)
    places[std::string(joint_place_word(place))] = words(joints_at(place));
  return {
      {"anyOf", {words(all_joints()), object(std::move(places))}},
      {"description",
       "how rails and muntins are joined: one for all the places where it can be, or one each"}};
}

/// One word, or an object with the kind's sizes.
void add_edge(Json& properties) {
  Json& edge = properties["edge"];
  const Json kinds{{"enum", edge_words()},
                   {"description", "how the edges that look at the panels are worked"}};
  edge["properties"]["kind"] = kinds;
  edge["properties"]["profile"] = {{"enum", moulding_words()}};
  edge["properties"]["faces"] = {{"enum", moulded_faces_words()}};
  edge["required"] = {"kind"};
  edge = Json{{"anyOf", {kinds, edge}}};
}

void add_muntin_aliases(Json& properties) {
  properties["mullion_width"] = properties["muntin_width"];
  Json& tenon = properties["tenon"]["properties"];
  tenon["mullion_depth"] = tenon["muntin_depth"];
}

Json head_properties(std::string_view kind) {
  return {{"$schema", {{"type", "string"}}},
          {"kind", {{"const", std::string(kind)}}},
          {"id", text("names the item in reports")},
          {"name", text("what the shop calls it")},
          {"note", text("printed with the item")},
          {"quantity", {{"type", "integer"}, {"minimum", 1}, {"maximum", 100'000}}},
          {"units",
           {{"enum", {"mm", "in"}}, {"description", "of numbers, and of texts without a unit"}}}};
}

/// What of a panel is no length; and, for each tier, all that is of a panel.
void add_panel_words(Json& panel) {
  panel["kind"] = {{"enum", {"solid", "board", "glass", "sealed-unit"}},
                   {"description", "boards of its species, plywood and the like, or glass"}};
  panel["material"] = text("what a board or glass is, such as birch plywood");
  panel["rebate"] = {{"enum", {"back", "front", "both"}}};
  panel["raised"] = {
      {"enum", {"back", "front", "both"}},
      {"description", "which faces of every panel are raised; none where it is left out"}};
  panel["flush"] = {{"enum", {"back", "front", "both"}},
                    {"description", "which faces of every panel are level with the frame's"}};
  panel["raise"]["properties"]["profile"] = {{"enum", {"bevel", "cove"}}};
  panel["held"] = {{"enum", {"middle", "left", "right", "foot", "head"}}};
  panel["grain"] = {{"enum", {"upright", "level"}}};
  const Json tier = object(panel);
  panel["tiers"] = {{"type", "array"},
                    {"minItems", 1},
                    {"maxItems", 199},
                    {"items", tier},
                    {"description", "what is otherwise of the panels of each tier from the top"}};
}

Json door_properties() {
  Json all = head_properties("door");
  add_sizes(all);
  all["opening"]["required"] = {"width", "height"};
  allow_spread(all, door_spread_keys());
  all["leaves"] = {{"type", "integer"}, {"minimum", 1}, {"maximum", 2}};
  all["arch"]["properties"]["shape"] = {{"enum", {"segmental", "semicircular"}}};
  all["arch"]["properties"]["at"] = {{"enum", {"underside", "top", "both"}}};
  all["meets"] = {{"enum", {"inset", "overlay", "rebate"}},
                  {"description", "how the leaf meets its opening"}};
  all["active"] = {{"enum", {"left", "right"}},
                   {"description", "which leaf of a pair opens first"}};
  all["rail_widths"] = rails();
  all["panels"] = panels();
  add_panel_words(all["panel"]["properties"]);
  all["joint"] = joint();
  all["mortise"]["properties"]["ends"] = {
      {"enum", {"squared", "tenon-rounded", "tenon-shortened"}},
      {"description", "what is done about the round ends that a cutter leaves"}};
  all["pin"]["properties"]["at"] = {
      {"enum", {"corner", "middle", "both"}},
      {"description", "which rails' tenons are pinned; all that can be where it is left out"}};
  all["pin"]["properties"]["number"] = {{"type", "integer"}, {"minimum", 1}, {"maximum", 2}};
  all["hangs"] = {{"enum", {"left", "right"}},
                  {"description", "the stile on the hinges; the other has the lock"}};
  all["hinges"]["properties"]["number"] = {{"type", "integer"}, {"minimum", 1}, {"maximum", 12}};
  all["hinges"]["properties"]["at"] = hinge_places();
  all["fittings"] = fittings();
  all["escape_route"] = flag("on an escape route");
  all["accessible"] = flag("on an accessible route");
  all["existing_opening"] = flag("in a building that stands, whose paint may be old");
  all["fire_rated"] = flag("refused where it is true");
  add_edge(all);
  add_muntin_aliases(all);
  add_tolerances(all);
  add_seasons(all);
  return all;
}

Json frame_properties() {
  Json all = head_properties("frame");
  all["species"] = text("the wood");
  add_table(all, frame_keys());
  allow_spread(all, frame_keys().spreads);
  return all;
}

/// What of a door or a frame its set says instead.
Json without_head(Json properties) {
  const Json head = head_properties("");
  for (const auto& one : head.items())
    properties.erase(one.key());
  for (const char* key :
       {"species", "opening", "clearance", "moisture", "grain", "work", "tolerance", "fit",
        "leaves", "meets", "lap", "meeting_clearance", "meeting_lap", "meeting_rest", "active"})
    properties.erase(key);
  return properties;
}

Json doorset_properties() {
  Json all = head_properties("doorset");
  add_seasons(all);
  all["species"] = text("the wood of frame and leaf");
  all["leaves"] = {{"type", "integer"}, {"minimum", 1}, {"maximum", 2}};
  add_table(all, doorset_keys());
  Json frame = frame_properties();
  const Json clearance = frame["clearance"];
  frame = without_head(std::move(frame));
  frame["clearance"] = clearance;
  frame["leaf"]["properties"].erase("thickness");
  frame["leaf"]["properties"].erase("lip_thickness");
  all["frame"] = object(std::move(frame));
  all["leaf"] = object(without_head(door_properties()));
  return all;
}

Json item(Json properties, std::initializer_list<const char*> required) {
  Json schema = object(std::move(properties));
  schema["required"] = required;
  return schema;
}

}  // namespace

std::string spec_schema() {
  Json schema{{"$schema", std::string(kSchemaDialect)},
              {"$id", "urn:haunch:spec-1"},
              {"title", "A spec for haunch"},
              {"description",
               "One item. A file holds one item, an array of items, or one item a line. A shop "
               "file may give kind."}};
  schema["anyOf"] = {
      {{"$ref", "#/$defs/door"}}, {{"$ref", "#/$defs/frame"}}, {{"$ref", "#/$defs/doorset"}}};
  schema["$defs"] = {
      {"door", item(door_properties(), {"opening"})},
      {"frame", item(frame_properties(), {"kind"})},
      {"doorset", item(doorset_properties(), {"kind", "frame"})},
      {"length",
       {{"type", {"number", "string"}},
        {"minimum", 0},
        {"maxLength", 10'000},
        {"description", "in units, or a text with its own: \"65 mm\", \"2 9/16 in\""}}},
      {"size",
       {{"type", {"number", "string"}},
        {"exclusiveMinimum", 0},
        {"maxLength", 10'000},
        {"description", "more than 0"}}}};
  return schema.dump(2) + "\n";
}

}  // namespace haunch
