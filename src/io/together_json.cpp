// Of the report's JSON what is bought, measured and done to put it together.
#include "report_rows.h"
#include "together_page.h"

namespace haunch {
namespace {

struct StepTold {
  const Assembly& wood;
  const AssemblyStep& step;
};

struct OrderTold {
  const Assembly& wood;
  const GroupOrder& order;
};

std::string heading_text(const Heading& move) {
  constexpr std::string_view kAxes[] = {"x", "y", "z"};
  return (move.upwards ? "" : "-") + std::string(kAxes[static_cast<std::size_t>(move.axis)]);
}

}  // namespace

template <>
struct JsonObject<StepTold> : JsonObjectDefaults {
  static constexpr JsonKey<StepTold> keys[] = {
      {"parts", [](auto& it) { return marks_of(it.wood, it.step.pieces); }, R"("minItems": 1)"},
      {"how", [](auto& it) { return it.step.how; }},
      {"moves", [](auto& it) {
         return it.step.move ? std::optional(heading_text(*it.step.move)) : std::nullopt;
       }}};
};

template <>
struct JsonObject<OrderTold> : JsonObjectDefaults {
  static constexpr JsonKey<OrderTold> keys[] = {
      {"of", [](auto& it) -> const std::string& { return it.wood.groups[it.order.group].path; }},
      {"steps",
       [](auto& it) {
         std::vector<StepTold> steps;
         for (const AssemblyStep& step : it.order.steps)
           steps.push_back({it.wood, step});
         return steps;
       }},
      {"in_before",
       [](auto& it) {
         std::vector<std::string> marks;
         for (const ClosedIn& its : it.order.closed_in)
           marks.push_back(it.wood.pieces[its.panel].mark);
         return if_any(marks);
       }},
      {"held_by_each_other", [](auto& it) { return if_any(marks_of(it.wood, it.order.stuck)); }}};
};

template <>
struct JsonObject<Rectangle> : JsonObjectDefaults {
  static constexpr JsonKey<Rectangle> keys[] = {
      {"what", the<&Rectangle::what>},
      {"width", the<&Rectangle::width>},
      {"height", the<&Rectangle::height>},
      {"diagonal", [](auto& it) { return it.diagonal(); }},
      {"may_differ", [](auto& it) { return it.may_differ(); }}};
};

template <>
struct JsonObject<Hardware> : JsonObjectDefaults {
  static constexpr JsonKey<Hardware> keys[] = {{"what", the<&Hardware::what>},
                                               {"size", the<&Hardware::size>},
                                               {"number", the<&Hardware::number>}};
};

template <>
struct JsonObject<TogetherTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "together";
  static constexpr JsonKey<TogetherTold> keys[] = {
      {"hardware", [](auto& it) { return it.report.together.hardware; }},
      {"diagonals", [](auto& it) { return it.report.together.rectangles; }},
      {"order",
       [](auto& it) {
         std::vector<OrderTold> orders;
         for (const GroupOrder& order : it.report.together.orders)
           orders.push_back({it.report.wood, order});
         return orders;
       }},
      {"in_words",
       [](auto& it) { return order_lines(it.report.wood, it.report.together.orders); }}};
};

void JsonValue<TogetherTold>::write(JsonText& json, const TogetherTold& together) {
  write_object(json, together);
}

std::vector<SchemaDefinition> together_definitions() {
  return {definition_of<TogetherTold>()};
}

}  // namespace haunch
