#include "comparison_json.h"

#include <utility>

#include "formats.h"
#include "schema.h"

namespace haunch {
namespace {

/// A piece in one of both works.
struct CutSide {
  const CutRow& row;
};

/// What is set, in one of both.
struct SetSide {
  const Operation& operation;
};

struct SetupSide {
  const SetupTold& told;
};

struct PlaceSide {
  const WorkedPlace& place;
};

struct CheckSide {
  const CheckTold& told;
  Unit unit;
};

struct CheckRow {
  const CheckChange& change;
  Unit unit;
};

struct ItemRow {
  const ItemComparison& item;
  Unit unit;
};

struct CompareDocument {
  const Comparison& comparison;
  Unit unit;
};

template <class Side, class Told, class... More>
std::optional<Side> side_if(const std::optional<Told>& told, More... more) {
  if (!told) return {};
  return Side{*told, more...};
}

std::optional<Changes> if_any(const Changes& changes) {
  return only_if(!changes.empty(), changes);
}

std::optional<std::string> if_told(const std::string& text) {
  return only_if(!text.empty(), text);
}

ByName<Length> by_name(const std::vector<NamedSize>& sizes) {
  ByName<Length> named;
  for (const NamedSize& size : sizes)
    named.each.emplace_back(word_of(size.name), size.size);
  return named;
}

std::optional<Rounded<1>> rounded(const std::optional<double>& kilograms) {
  if (!kilograms) return {};
  return Rounded<1>{*kilograms};
}

ByName<Tallied> counts_of(const ItemComparison& item) {
  return {{{"pieces", item.pieces},
           {"settings", item.making.settings},
           {"places", item.making.places},
           {"joints", item.joints},
           {"checks", item.checks},
           {"hardware", item.hardware}}};
}

}  // namespace

template <>
struct JsonObject<FigureChange> : JsonObjectDefaults {
  static constexpr std::string_view definition = "figure";
  static constexpr JsonKey<FigureChange> keys[] = {{"what", the<&FigureChange::what>},
                                                   {"old", the<&FigureChange::was>},
                                                   {"new", the<&FigureChange::is>},
                                                   {"by", [](auto& it) { return it.by(); }}};
};

template <>
struct JsonObject<WordChange> : JsonObjectDefaults {
  static constexpr std::string_view definition = "word";
  static constexpr JsonKey<WordChange> keys[] = {{"what", the<&WordChange::what>},
                                                 {"old", the<&WordChange::was>},
                                                 {"new", the<&WordChange::is>}};
};

template <>
struct JsonObject<Changes> : JsonObjectDefaults {
  static constexpr std::string_view definition = "changes";
  static constexpr JsonKey<Changes> keys[] = {
      {"figures", [](auto& it) { return haunch::if_any(it.figures); }},
      {"words", [](auto& it) { return haunch::if_any(it.words); }}};
};

template <>
struct JsonObject<Tallied> : JsonObjectDefaults {
  static constexpr std::string_view definition = "count";
  static constexpr JsonKey<Tallied> keys[] = {
      {"old", the<&Tallied::was>}, {"new", the<&Tallied::is>}, {"same", the<&Tallied::same>}};
};

template <>
struct JsonObject<CutSide> : JsonObjectDefaults {
  static constexpr std::string_view definition = "piece";
  static constexpr JsonKey<CutSide> keys[] = {
      {"mark", [](auto& it) -> const std::string& { return it.row.marks.front(); }},
      {"name", [](auto& it) -> const std::string& { return it.row.called; }},
      {"role", [](auto& it) { return it.row.part; }},
      {"length", [](auto& it) { return it.row.length; }},
      {"saw_length", [](auto& it) { return it.row.saw_length; }},
      {"width", [](auto& it) { return it.row.width; }},
      {"saw_width", [](auto& it) { return it.row.saw_width; }},
      {"thickness", [](auto& it) { return it.row.thickness; }},
      {"material", [](auto& it) -> const std::string& { return it.row.material; }},
      {"grain", [](auto& it) { return it.row.grain; }}};
};

template <>
struct JsonObject<PieceChange> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<PieceChange> keys[] = {
      {"key", the<&PieceChange::key>},
      {"turn", [](auto& it) { return it.turn(); }},
      {"old", [](auto& it) { return side_if<CutSide>(it.was); }},
      {"new", [](auto& it) { return side_if<CutSide>(it.is); }},
      {"changes", [](auto& it) { return if_any(it.cut); }},
      {"worked_otherwise", the<&PieceChange::worked_otherwise>},
      {"from_old", the<&PieceChange::from_old>}};
};

template <>
struct JsonObject<MarkChange> : JsonObjectDefaults {
  static constexpr JsonKey<MarkChange> keys[] = {{"key", the<&MarkChange::key>},
                                                 {"name", the<&MarkChange::name>},
                                                 {"old", the<&MarkChange::was>},
                                                 {"new", the<&MarkChange::is>}};
};

template <>
struct JsonObject<SetSide> : JsonObjectDefaults {
  static constexpr std::string_view definition = "setting";
  static constexpr JsonKey<SetSide> keys[] = {
      {"profile", [](auto& it) { return if_any(it.operation.profile); }},
      {"sizes", [](auto& it) { return by_name(it.operation.settings); }},
      {"through", [](auto& it) { return only_if(it.operation.through, true); }},
      {"open_end", [](auto& it) { return only_if(it.operation.open_end, true); }},
      {"both_faces", [](auto& it) { return only_if(it.operation.both_faces, true); }}};
};

template <>
struct JsonObject<SettingChange> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<SettingChange> keys[] = {
      {"turn", [](auto& it) { return it.turn(); }},
      {"makes", [](auto& it) { return it.any().makes; }},
      {"cut", [](auto& it) { return it.any().cut; }},
      {"old", [](auto& it) { return side_if<SetSide>(it.was); }},
      {"new", [](auto& it) { return side_if<SetSide>(it.is); }},
      {"changes", [](auto& it) { return if_any(it.setting); }},
      {"old_places", the<&SettingChange::runs_was>},
      {"new_places", the<&SettingChange::runs_is>}};
};

template <>
struct JsonObject<PlaceSide> : JsonObjectDefaults {
  static constexpr std::string_view definition = "place";
  static constexpr JsonKey<PlaceSide> keys[] = {
      {"mark", [](auto& it) -> const std::string& { return it.place.mark; }},
      {"for", [](auto& it) { return if_told(it.place.for_mark); }},
      {"from", [](auto& it) { return it.place.run.from; }},
      {"near", [](auto& it) { return it.place.run.near; }},
      {"far", [](auto& it) { return it.place.run.far; }},
      {"setting", [](auto& it) { return SetSide{it.place.setting}; }}};
};

template <>
struct JsonObject<PlaceChange> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<PlaceChange> keys[] = {
      {"key", [](auto& it) -> const std::string& { return it.any().piece; }},
      {"turn", [](auto& it) { return it.turn(); }},
      {"makes", [](auto& it) { return it.any().setting.makes; }},
      {"cut", [](auto& it) { return it.any().setting.cut; }},
      {"for", [](auto& it) { return if_told(it.any().for_key); }},
      {"fitting", [](auto& it) { return if_told(it.any().fitting); }},
      {"old", [](auto& it) { return side_if<PlaceSide>(it.was); }},
      {"new", [](auto& it) { return side_if<PlaceSide>(it.is); }},
      {"place", [](auto& it) { return if_any(it.place); }},
      {"setting", [](auto& it) { return if_any(it.setting); }}};
};

template <>
struct JsonObject<JointTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "joint";
  static constexpr JsonKey<JointTold> keys[] = {{"id", the<&JointTold::id>},
                                                {"kind", the<&JointTold::kind>},
                                                {"receives", the<&JointTold::receives>},
                                                {"enters", the<&JointTold::enters>}};
};

template <>
struct JsonObject<JointChange> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<JointChange> keys[] = {
      {"turn", [](auto& it) { return it.turn(); }},
      {"old", the<&JointChange::was>},
      {"new", the<&JointChange::is>},
      {"changes", [](auto& it) { return if_any(it.changes); }}};
};

template <>
struct JsonObject<CheckSide> : JsonObjectDefaults {
  static constexpr std::string_view definition = "check";
  static constexpr JsonKey<CheckSide> keys[] = {
      {"status", [](auto& it) { return it.told.finding.status; }},
      {"parts", [](auto& it) -> const std::string& { return it.told.marks; }},
      {"joint", [](auto& it) { return if_told(it.told.joint); }},
      {"value", [](auto& it) { return only_if(it.told.finding.measured, it.told.finding.value); }},
      {"message", [](auto& it) { return finding_message(it.told.finding, it.unit); }}};
};

template <>
struct JsonObject<CheckRow> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<CheckRow> keys[] = {
      {"check", [](auto& it) { return it.change.any().finding.rule->check; }},
      {"turn", [](auto& it) { return it.change.turn(); }},
      {"old", [](auto& it) { return side_if<CheckSide>(it.change.was, it.unit); }},
      {"new", [](auto& it) { return side_if<CheckSide>(it.change.is, it.unit); }}};
};

template <>
struct JsonObject<SetupSide> : JsonObjectDefaults {
  static constexpr std::string_view definition = "setup";
  static constexpr JsonKey<SetupSide> keys[] = {
      {"machine", [](auto& it) -> const std::string& { return it.told.machine; }},
      {"cutter", [](auto& it) { return if_told(it.told.cutter); }},
      {"held", [](auto& it) { return if_told(it.told.holding); }},
      {"passes", [](auto& it) { return it.told.passes; }},
      {"settings", [](auto& it) { return by_name(it.told.settings); }},
      {"pieces", [](auto& it) -> const std::vector<std::string>& { return it.told.marks; }}};
};

template <>
struct JsonObject<SetupChange> : JsonObjectDefaults {
  static constexpr bool on_rows = true;
  static constexpr JsonKey<SetupChange> keys[] = {
      {"operation", the<&SetupChange::operation>},
      {"turn", [](auto& it) { return it.turn(); }},
      {"old", [](auto& it) { return side_if<SetupSide>(it.was); }},
      {"new", [](auto& it) { return side_if<SetupSide>(it.is); }},
      {"changes", [](auto& it) { return if_any(it.changes); }}};
};

template <>
struct JsonObject<SetupsChange> : JsonObjectDefaults {
  static constexpr std::string_view definition = "setups";
  static constexpr JsonKey<SetupsChange> keys[] = {{"count", the<&SetupsChange::setups>},
                                                   {"changed", the<&SetupsChange::changed>}};
};

template <>
struct JsonObject<NumberChange> : JsonObjectDefaults {
  static constexpr JsonKey<NumberChange> keys[] = {{"what", the<&NumberChange::what>},
                                                   {"size", the<&NumberChange::size>},
                                                   {"old", the<&NumberChange::was>},
                                                   {"new", the<&NumberChange::is>}};
};

template <>
struct JsonObject<WeightChange> : JsonObjectDefaults {
  static constexpr JsonKey<WeightChange> keys[] = {
      {"of", the<&WeightChange::of>},
      {"old", [](auto& it) { return rounded(it.was); }},
      {"new", [](auto& it) { return rounded(it.is); }}};
};

template <>
struct JsonObject<ItemRow> : JsonObjectDefaults {
  static constexpr std::string_view definition = "item";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<ItemRow> keys[] = {
      {"old_id", [](auto& it) -> const std::string& { return it.item.was_id; }},
      {"new_id", [](auto& it) -> const std::string& { return it.item.is_id; }},
      {"same", [](auto& it) { return it.item.is_same(); }},
      {"old_quantity", [](auto& it) { return it.item.was_quantity; }},
      {"new_quantity", [](auto& it) { return it.item.is_quantity; }},
      {"whole", [](auto& it) { return if_any(it.item.whole); }},
      {on_row, "count", [](auto& it) { return counts_of(it.item); }},
      {on_row, "pieces", [](auto& it) { return it.item.changed_pieces; }},
      {on_row, "marks", [](auto& it) { return it.item.marks; }},
      {on_row, "settings", [](auto& it) { return it.item.making.changed_settings; }},
      {on_row, "places", [](auto& it) { return it.item.making.changed_places; }},
      {on_row, "joints", [](auto& it) { return it.item.changed_joints; }},
      {on_row, "checks",
       [](auto& it) {
         std::vector<CheckRow> rows;
         for (const CheckChange& change : it.item.changed_checks)
           rows.push_back({change, it.unit});
         return rows;
       }},
      {on_row, "hardware", [](auto& it) { return it.item.changed_hardware; }},
      {on_row, "weight", [](auto& it) { return it.item.changed_weights; },
       R"("description": "in kg; without old or new: not known")"}};
};

template <>
struct JsonObject<LoneItem> : JsonObjectDefaults {
  static constexpr std::string_view definition = "lone";
  static constexpr JsonKey<LoneItem> keys[] = {{"id", the<&LoneItem::id>},
                                               {"quantity", the<&LoneItem::quantity>},
                                               {"pieces", the<&LoneItem::pieces>}};
};

template <>
struct JsonObject<CompareDocument> : JsonObjectDefaults {
  static constexpr JsonKey<CompareDocument> keys[] = {
      {among, [](auto&) { return DocumentHead<kCompareFormat>(); }},
      {"units", [](auto& it) { return it.unit; }},
      {"same", [](auto& it) { return it.comparison.is_same(); }},
      {"items",
       [](auto& it) {
         std::vector<ItemRow> rows;
         for (const ItemComparison& item : it.comparison.items)
           rows.push_back({item, it.unit});
         return rows;
       }},
      {on_row, "setups", [](auto& it) { return it.comparison.setups; },
       R"("description": "of all items together")"},
      {on_row, "come", [](auto& it) { return it.comparison.come; }},
      {on_row, "gone", [](auto& it) { return it.comparison.gone; }}};
};

std::string comparison_json(const Comparison& comparison, Unit unit) {
  std::string out;
  JsonText json(out, unit);
  write_json(json, CompareDocument{comparison, unit});
  return out + "\n";
}

std::string compare_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:compare-1",
    "title": "What changes from an old order to a new one",
    "description": "Lengths are in units. What stays is counted, not listed; a check that stays fails in both. Without old a thing comes, without new it goes. Pieces are known again by their keys, items by their ids.")";
  return schema_document(
      kHead, object_schema<CompareDocument>(),
      {definition_of<ItemRow>(), definition_of<LoneItem>(), definition_of<Tallied>(),
       definition_of<Changes>(), definition_of<FigureChange>(), definition_of<WordChange>(),
       definition_of<CutSide>(), definition_of<SetSide>(), definition_of<SetupsChange>(),
       definition_of<SetupSide>(), definition_of<PlaceSide>(), definition_of<JointTold>(),
       definition_of<CheckSide>()});
}

}  // namespace haunch
