#include "formats.h"
#include "labels_text.h"
#include "schema.h"

namespace haunch {
namespace {

struct MateTold {
  const std::string& one;
  const LabelMate& mate;

  std::vector<std::string> joints() const {
    std::vector<std::string> ids;
    for (const std::size_t joint : mate.joints)
      ids.push_back(joint_id(joint));
    return ids;
  }
};

struct LabelTold {
  const ItemLabels& item;
  std::string one;
  const Label& label;

  std::optional<std::string_view> marked(Surface side) const {
    return only_if(label.is_marked(), side_words(side));
  }
  std::vector<MateTold> mates() const { return each_in<MateTold>(one, label.mates); }
};

struct OrderTold {
  const LabelOrder& order;
  Unit unit;

  std::vector<LabelTold> labels() const {
    std::vector<LabelTold> all;
    for (const ItemLabels& item : order.items)
      for (int copy = 1; copy <= item.quantity; ++copy)
        for (const Label& label : item.labels)
          all.push_back({item, item.one(copy), label});
    return all;
  }
};

constexpr std::string_view kSize = R"("exclusiveMinimum": 0)";
constexpr std::string_view kGrain = R"({"enum": ["along", "upright", "level", "none"]})";
constexpr std::string_view kSide =
    R"({"enum": ["front", "back", "left", "right", "upper", "lower"], "description": "as the piece stands in the work"})";

}  // namespace

template <>
struct JsonObject<MateTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "mate";
  static constexpr JsonKey<MateTold> keys[] = {
      {"mark", [](auto& it) { return order_mark(it.one, it.mate.mark); }},
      {"joint", [](auto& it) { return it.mate.kind; }},
      {"joints", [](auto& it) { return it.joints(); }, R"("minItems": 1)"}};
};

template <>
struct JsonObject<LabelTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "label";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<LabelTold> keys[] = {
      {"mark", [](auto& it) { return order_mark(it.one, it.label.piece); },
       R"("description": "unique in the order")"},
      {"item", the<&LabelTold::one>},
      {"piece", [](auto& it) -> const std::string& { return it.label.piece; }},
      {"name", [](auto& it) -> const std::string& { return it.label.name; }},
      {"role", [](auto& it) { return it.label.role; }},
      {"length", [](auto& it) { return it.label.length; }, kSize},
      {"width", [](auto& it) { return it.label.width; }, kSize},
      {"thickness", [](auto& it) { return it.label.thickness; }, kSize},
      {"material", [](auto& it) -> const std::string& { return it.label.material; }},
      {"grain", [](auto& it) { return it.label.grain; }, kGrain},
      {"face_side", [](auto& it) { return it.marked(it.label.face); }, kSide},
      {"face_edge", [](auto& it) { return it.marked(it.label.edge); }, kSide},
      {"mates", [](auto& it) { return it.mates(); }},
      {"item_name", [](auto& it) -> const std::string& { return it.item.name; }},
      {"bag", [](auto& it) { return it.label.in_bag(); },
       R"("description": "too small to be labelled by itself: in a bag with those like it")"}};
};

template <>
struct JsonObject<OrderTold> : JsonObjectDefaults {
  static constexpr JsonKey<OrderTold> keys[] = {
      {among, [](auto&) { return DocumentHead<kLabelsFormat>(); }},
      {"units", the<&OrderTold::unit>},
      {"order", [](auto& it) -> const std::string& { return it.order.name; }},
      {on_row, "labels", [](auto& it) { return it.labels(); }}};
};

std::string labels_json(const LabelOrder& order, Unit unit) {
  std::string out;
  JsonText json(out, unit);
  write_json(json, OrderTold{order, unit});
  return out + "\n";
}

std::string labels_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:labels-1",
    "title": "What 'haunch labels' says",
    "description": "A label for every piece of an order. Lengths are finished sizes, in 'units'.")";
  return schema_document(kHead, object_schema<OrderTold>(),
                         {definition_of<LabelTold>(), definition_of<MateTold>()});
}

}  // namespace haunch
