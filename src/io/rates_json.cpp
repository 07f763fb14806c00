#include <array>
#include <charconv>

#include "input_keys.h"
#include "rates_file.h"
#include "schema.h"

namespace haunch {
namespace {

/// A figure with as many places as it takes to be read back as the same.
Written figure(double value) {
  std::array<char, 400> text{};
  const auto end =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed).ptr;
  return {std::string(text.data(), end)};
}

/// Unless it is nothing, which is as if it were not said.
std::optional<Written> if_more(double value) {
  return only_if(value != 0, figure(value));
}

std::optional<Written> figure_of(const std::optional<double>& value) {
  return value ? std::optional(figure(*value)) : std::nullopt;
}

std::optional<Written> minutes_of(const std::optional<WorkTime>& time) {
  return time ? std::optional(Written{minutes_text(*time)}) : std::nullopt;
}

std::optional<Written> minutes_if_more(WorkTime time) {
  return only_if(time > WorkTime(), Written{minutes_text(time)});
}

template <WorkUnit kUnit>
constexpr auto each_of =
    [](const OperationRate& it) { return minutes_of(it.each[static_cast<std::size_t>(kUnit)]); };

struct Wage {
  double value;
};

struct MarkupByHeading {
  const Markup& its;
};

template <class Named>
std::optional<ByName<Named>> by_name(const std::vector<Named>& all) {
  ByName<Named> named;
  for (const Named& each : all)
    named.each.emplace_back(each.name, each);
  return only_if(!named.each.empty(), named);
}

std::optional<ByName<Wage>> wages(const std::vector<Trade>& trades) {
  ByName<Wage> named;
  for (const Trade& each : trades)
    named.each.emplace_back(each.name, Wage{each.wage});
  return only_if(!named.each.empty(), named);
}

constexpr std::string_view kMinutes = R"("minimum": 0, "maximum": 10000)";
constexpr std::string_view kAmount = R"("minimum": 0, "maximum": 999999)";
constexpr std::string_view kShare = R"("minimum": 0, "maximum": 1)";
constexpr std::string_view kTrade = R"("description": "one of trades; else the wage is its pay")";

}  // namespace

template <>
struct JsonValue<Wage> {
  static void write(JsonText& json, const Wage& wage) { write_json(json, figure(wage.value)); }
  static std::string schema() { return schema_with(JsonValue<Written>::schema(), kAmount); }
};

/// What jobs say of a rate stands among its own keys, where there are any.
template <>
struct JsonObject<RateStanding> : JsonObjectDefaults {
  static constexpr JsonKey<RateStanding> keys[] = {
      {"source", [](auto& it) { return std::optional(it.source); },
       R"("description": "whose figure it is; else as the file's own source says")"},
      {"jobs", [](auto& it) { return only_if(it.backing.jobs > 0, it.backing.jobs); },
       R"("minimum": 0, "description": "that tell of it")"},
      {"worth", [](auto& it) { return if_more(it.backing.worth); },
       R"("minimum": 0, "description": "how many jobs they count for")"},
      {"timed", [](auto& it) { return only_if(it.backing.timed > 0, it.backing.timed); },
       R"("minimum": 0, "description": "jobs that tell of it by itself")"},
      {"middle", [](auto& it) { return only_if(it.backing.timed > 0, figure(it.backing.middle)); },
       R"("exclusiveMinimum": 0, "description": "of their minutes, by those of this rate")"},
      {"spread", [](auto& it) { return if_more(it.backing.spread); },
       R"("minimum": 0, "description": "of the logarithms of these ratios")"}};
};

template <>
struct JsonObject<OperationRate> : JsonObjectDefaults {
  static constexpr std::string_view definition = "operation";
  static constexpr JsonKey<OperationRate> keys[] = {
      {"setup_min", [](auto& it) { return minutes_if_more(it.setup); }, kMinutes},
      {"piece_min", each_of<WorkUnit::piece>, kMinutes},
      {"metre_min", each_of<WorkUnit::metre>, kMinutes},
      {"joint_min", each_of<WorkUnit::joint>, kMinutes},
      {"square_metre_min", each_of<WorkUnit::square_metre>, kMinutes},
      {"trade", [](auto& it) { return if_any(it.trade); }, kTrade},
      {"machine_hour", [](auto& it) { return if_more(it.machine_hour); }, kAmount},
      {among, the<&OperationRate::standing>}};
};

template <>
struct JsonObject<OtherWork> : JsonObjectDefaults {
  static constexpr std::string_view definition = "work";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<OtherWork> keys[] = {
      {"what", the<&OtherWork::what>},
      {"minutes", [](auto& it) { return minutes_of(it.minutes); }, kMinutes},
      {"trade", [](auto& it) { return if_any(it.trade); }, kTrade},
      {"cost", [](auto& it) { return if_more(it.cost); }, kAmount},
      {"per", the<&OtherWork::per>, R"({"enum": ["order", "item", "piece", "trip"]})"},
      {"times", [](auto& it) { return only_if(it.times != 1, it.times); },
       R"("minimum": 1, "maximum": 1000)"},
      {"group", [](auto& it) { return std::optional(it.group); }},
      {among, the<&OtherWork::standing>}};
};

template <>
struct JsonObject<Finish> : JsonObjectDefaults {
  static constexpr std::string_view definition = "finish";
  static constexpr JsonKey<Finish> keys[] = {
      {"coats", [](auto& it) { return std::optional(it.coats); }, R"("minimum": 1, "maximum": 50)"},
      {"setup_min", [](auto& it) { return minutes_if_more(it.setup); }, kMinutes},
      {"square_metre_min", [](auto& it) { return Written{minutes_text(it.square_metre)}; },
       kMinutes},
      {"hours_between", [](auto& it) { return if_more(it.hours_between); },
       R"("minimum": 0, "maximum": 1000)"},
      {"cost_square_metre", [](auto& it) { return if_more(it.cost_square_metre); }, kAmount},
      {"trade", [](auto& it) { return if_any(it.trade); }, kTrade},
      {among, the<&Finish::standing>}};
};

template <>
struct JsonObject<Goods> : JsonObjectDefaults {
  static constexpr std::string_view definition = "goods";
  static constexpr JsonKey<Goods> keys[] = {
      {"price", [](auto& it) { return figure(it.price); }, kAmount},
      {"per", [](auto& it) { return std::optional(it.per); }},
      {"least", [](auto& it) { return if_more(it.least); }, kAmount},
      {"source", [](auto& it) { return std::optional(it.source); }}};
};

template <>
struct JsonObject<Overhead> : JsonObjectDefaults {
  static constexpr std::string_view also = R"("minProperties": 1, "maxProperties": 1)";
  static constexpr JsonKey<Overhead> keys[] = {
      {"per_hour", [](auto& it) { return figure_of(it.per_hour); }, kAmount},
      {"share", [](auto& it) { return figure_of(it.share); }, R"("minimum": 0, "maximum": 10)"}};
};

template <>
struct JsonObject<MarkupByHeading> : JsonObjectDefaults {
  static constexpr JsonKey<MarkupByHeading> keys[] = {
      {"wood", [](auto& it) { return figure(it.its.wood); }},
      {"sheet", [](auto& it) { return figure(it.its.sheet); }},
      {"bought_in", [](auto& it) { return figure(it.its.bought_in); }},
      {"labour", [](auto& it) { return figure(it.its.labour); }}};
};

template <>
struct JsonValue<Markup> {
  static void write(JsonText& json, const Markup& it) {
    if (it.by_heading)
      write_json(json, MarkupByHeading{it});
    else
      write_json(json, figure(it.wood));
  }
  static std::string schema() {
    return R"({"anyOf": [{"type": "number", "minimum": 0}, )" + object_schema<MarkupByHeading>() +
           "]}";
  }
};

template <>
struct JsonObject<TaxLine> : JsonObjectDefaults {
  static constexpr JsonKey<TaxLine> keys[] = {
      {"what", the<&TaxLine::what>}, {"share", [](auto& it) { return figure(it.share); }, kShare}};
};

template <>
struct JsonObject<PriceRounding> : JsonObjectDefaults {
  static constexpr JsonKey<PriceRounding> keys[] = {
      {"to", [](auto& it) { return figure(it.to); }, R"("minimum": 0.01, "maximum": 10000)"},
      {"way", [](auto& it) { return std::optional(it.way); }}};
};

template <>
struct JsonObject<Yield> : JsonObjectDefaults {
  static constexpr JsonKey<Yield> keys[] = {
      {"share", [](auto& it) { return figure(it.share); },
       R"("exclusiveMinimum": 0, "maximum": 1)"},
      {"of", [](auto& it) { return it.of_bought ? "bought" : "net"; },
       R"({"enum": ["bought", "net"],
           "description": "what is lost is a share of what is bought, or is added to what is needed"})"}};
};

template <>
struct JsonObject<Rates> : JsonObjectDefaults {
  static constexpr std::string_view also = R"("allOf": [
      {"anyOf": [{"required": ["wage"]}, {"required": ["trades"]}]},
      {"oneOf": [{"required": ["margin"]}, {"required": ["markup"]}]}])";
  static constexpr JsonKey<Rates> keys[] = {
      {"$schema", unkept},
      {"currency", the<&Rates::currency>,
       R"("minLength": 1, "description": "a word that stands behind prices")"},
      {"note", [](auto& it) { return if_any(it.note); }},
      {"source", [](auto& it) { return std::optional(it.source); },
       R"("description": "of all rates that do not say theirs")"},
      {on_row, "wage", [](auto& it) { return figure_of(it.wage); },
       R"("minimum": 0, "maximum": 999999, "description": "an hour")"},
      {"trades", [](auto& it) { return wages(it.trades); }},
      {"burden", [](auto& it) { return figure(it.burden); },
       R"("minimum": 0, "maximum": 10, "description": "on a wage, as a share of it")"},
      {"billable", [](auto& it) { return figure(it.billable); },
       R"("minimum": 0, "maximum": 1, "description": "of the hours that are paid")"},
      {"hours_a_week", [](auto& it) { return figure_of(it.hours_a_week); },
       R"("exclusiveMinimum": 0, "maximum": 10000)"},
      {on_row, "letterhead", [](auto& it) { return if_any(it.letterhead); },
       R"("description": "lines at the head of a customer's paper")"},
      {"valid_days", the<&Rates::valid_days>,
       R"("minimum": 1, "maximum": 1000, "description": "how long a quote holds")"},
      {"not_included", [](auto& it) { return if_any(it.not_included); },
       R"("description": "what the price is not for, as a customer is told")"},
      {on_row, "overhead", [](auto& it) { return it.overhead; }},
      {"margin", [](auto& it) { return figure_of(it.margin); },
       R"("minimum": 0, "exclusiveMaximum": 1, "description": "of the price")"},
      {"markup", [](auto& it) { return it.markup; }, R"("description": "on the cost")"},
      {"contingency", [](auto& it) { return if_more(it.contingency); },
       R"("minimum": 0, "maximum": 1, "description": "of the cost")"},
      {"tax", [](auto& it) { return if_any(it.tax); }},
      {"rounding", [](auto& it) { return std::optional(it.rounding); }},
      {"yield", [](auto& it) { return it.yield; }},
      {"trial_piece_mm", [](auto& it) { return figure_of(it.trial_piece_mm); },
       R"("minimum": 0, "maximum": 10000,
          "description": "how long a piece of wood is that each set-up of a joint is tried on")"},
      {on_row, "work", [](auto& it) { return if_any(it.work); }},
      {on_row, "operations", [](auto& it) { return by_name(it.operations); }},
      {on_row, "finish", [](auto& it) { return by_name(it.finish); }},
      {on_row, "fittings", [](auto& it) { return by_name(it.fittings); }},
      {on_row, "glass", [](auto& it) { return by_name(it.glass); }},
      {on_row, "sheet", [](auto& it) { return by_name(it.sheet); }},
      {on_row, "bought_in", [](auto& it) { return by_name(it.bought_in); }},
      {on_row, "wood", [](auto& it) { return by_name(it.wood); }}};
};

std::string rates_text(const Rates& rates) {
  std::string out;
  JsonText json(out, Unit::mm);
  write_json(json, rates);
  return out + "\n";
}

const std::vector<std::string_view>& rates_keys(RatesObject object) {
  static const std::vector<std::string_view> names[] = {
      keys_of<Rates>(),           keys_of<OperationRate>(),
      keys_of<OtherWork>(),       keys_of<Finish>(),
      keys_of<Goods>(),           keys_of<Overhead>(),
      keys_of<MarkupByHeading>(), keys_of<TaxLine>(),
      keys_of<PriceRounding>(),   keys_of<Yield>()};
  return names[static_cast<std::size_t>(object)];
}

std::string rates_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:rates-1",
    "title": "A rates file for 'haunch quote'",
    "description": "What a shop's hours and goods cost it, and how long it takes over its work. Minutes are taken to the nearest 0.001, shares are parts of one.")";
  return schema_document(kHead, object_schema<Rates>(),
                         {definition_of<OperationRate>(), definition_of<OtherWork>(),
                          definition_of<Finish>(), definition_of<Goods>()});
}

}  // namespace haunch
