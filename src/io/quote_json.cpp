#include <cmath>

#include "day.h"
#include "formats.h"
#include "quote_customer.h"
#include "quote_due.h"
#include "quote_report.h"
#include "quote_words.h"
#include "schema.h"

namespace haunch {
namespace {

/// Hours are thousandths of a minute and more, so that they add up far within this.
using HoursFigure = Rounded<9>;
/// Of one price margin and markup agree as far as this.
using ShareFigure = Rounded<9>;

struct DueTold;

struct QuoteDocument {
  const QuoteReport& report;

  std::optional<std::vector<DueTold>> due() const;
  std::optional<std::string> date() const {
    const auto& day = report.paper.date;
    return day ? std::optional(day_text(*day)) : std::nullopt;
  }
};

struct ShareTold;

/// An order beside the day that it is wanted by.
struct DueTold {
  const QuoteDocument& in;
  OrderDue order;

  static std::optional<std::string> text_of(const std::optional<std::chrono::sys_days>& day) {
    return day ? std::optional(day_text(*day)) : std::nullopt;
  }
};

std::optional<std::vector<DueTold>> QuoteDocument::due() const {
  if (report.paper.for_customer) return {};
  return if_any(each_in<DueTold>(*this, orders_due(report)));
}

/// Of the lines as they are printed, so that these add up to it.
HoursFigure printed_total(const HoursPlan& hours) {
  constexpr double kPlaces = 1e9;
  double total = 0;
  for (const HourLine& line : hours.lines)
    total += std::round(line.setup.hours() * kPlaces) + std::round(line.run.hours() * kPlaces);
  return {total / kPlaces};
}

/// Where there are any.
std::optional<HoursFigure> hours_of(const std::optional<double>& hours) {
  return hours ? std::optional(HoursFigure{*hours}) : std::nullopt;
}

struct VariantTold {
  const QuoteDocument& in;
  const QuoteVariant& variant;

  bool for_shop() const { return !in.report.paper.for_customer; }
  /// What a customer is not told.
  template <typename Value>
  std::optional<Value> shops(Value value) const {
    return only_if(for_shop(), value);
  }
  std::optional<std::vector<std::string>> why() const {
    const QuoteVariant& stated = in.report.variants.front();
    if (&variant == &stated || !for_shop()) return {};
    return differences(stated, variant, in.report.rates.currency);
  }
  std::optional<std::vector<std::string>> rises() const {
    if (!for_shop()) return {};
    return if_any(rises_to(in.report, variant).what);
  }
  std::vector<ShareTold> items() const;
};

struct HoursTold {
  const HoursPlan& hours;
  std::optional<HoursRange> range;
};

/// What jobs say of a rate.
struct BackedTold {
  const Backing& backing;
  std::optional<RateRange> range;
};

struct CostTold {
  const Cost& cost;

  std::optional<Money> if_any(CostGroup group) const {
    return only_if(cost.has(group), cost.of(group));
  }
};

struct QuotedCaution {
  QuotedCaution(const Caution& its) : caution(its) {}
  const Caution& caution;
};

/// What one item is, and what it bears.
struct ShareTold {
  const VariantTold& in;
  const ItemShare& share;
  QuotedItem told;

  std::vector<QuotedCaution> cautions() const {
    return {told.cautions.begin(), told.cautions.end()};
  }
};

std::vector<ShareTold> VariantTold::items() const {
  std::vector<ShareTold> all;
  std::vector<QuotedItem> told = items_told(variant, in.report.rates);
  for (std::size_t i = 0; i < told.size(); ++i)
    all.push_back({*this, variant.shares[i], std::move(told[i])});
  return all;
}

struct EachTold {
  double hours, cost, price;
};

EachTold each_of(const QuoteVariant& variant) {
  return {variant.hours_each(), variant.cost_each(), variant.price_each()};
}

}  // namespace

template <>
struct JsonValue<Money> {
  static void write(JsonText& json, const Money& money) { json.text(money_text(money)); }
  static std::string schema() { return R"({"$ref": "#/$defs/money"})"; }
};

template <>
struct JsonObject<BackedTold> : JsonObjectDefaults {
  static constexpr std::string_view also =
      R"("description": "by how many jobs; the true minutes are between least and most times these, nine times of ten")";
  static constexpr JsonKey<BackedTold> keys[] = {
      {"jobs", [](auto& it) { return it.backing.jobs; }},
      {"worth", [](auto& it) { return Rounded<6>{it.backing.worth}; }},
      {"timed", [](auto& it) { return it.backing.timed; }},
      {"spread",
       [](auto& it) { return only_if(it.backing.timed > 1, Rounded<6>{it.backing.spread}); }},
      {"least",
       [](auto& it) {
         return it.range ? std::optional(Rounded<6>{it.range->least}) : std::nullopt;
       }},
      {"most", [](auto& it) {
         return it.range ? std::optional(Rounded<6>{it.range->most}) : std::nullopt;
       }}};
};

template <>
struct JsonObject<HourLine> : JsonObjectDefaults {
  static constexpr std::string_view definition = "hours_line";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<HourLine> keys[] = {
      {"operation", the<&HourLine::operation>},
      {"setup", [](auto& it) { return HoursFigure{it.setup.hours()}; }},
      {"run", [](auto& it) { return HoursFigure{it.run.hours()}; }},
      {"quantity", [](auto& it) { return Written{quantity_text(it.quantity)}; }},
      {"per", the<&HourLine::unit>},
      {"each_min", [](auto& it) { return Written{minutes_text(it.each)}; }},
      {"setups", the<&HourLine::setups>},
      {"setup_min", [](auto& it) { return Written{minutes_text(it.setup_each)}; }},
      {"group", the<&HourLine::group>},
      {"trade", [](auto& it) { return if_any(it.trade); }},
      {"source", [](auto& it) { return it.standing.source; }},
      {"backed", [](auto& it) {
         const Backing& backing = it.standing.backing;
         return only_if(backing.jobs > 0, BackedTold{backing, range_of(backing)});
       }}};
};

template <>
struct JsonObject<HoursRange> : JsonObjectDefaults {
  static constexpr std::string_view also =
      R"("description": "by the jobs that corrected the rates: likely, as far off as the worst of them, and from ten jobs on between which hours it ends nine times of ten")";
  static constexpr JsonKey<HoursRange> keys[] = {
      {"jobs", the<&HoursRange::jobs>},
      {"likely", [](auto& it) { return HoursFigure{it.likely}; }},
      {"worst", [](auto& it) { return HoursFigure{it.worst}; }},
      {"nine_least", [](auto& it) { return hours_of(it.nine_least); }},
      {"nine_most", [](auto& it) { return hours_of(it.nine_most); }}};
};

template <>
struct JsonObject<WaitingTime> : JsonObjectDefaults {
  static constexpr JsonKey<WaitingTime> keys[] = {
      {"what", the<&WaitingTime::what>}, {"hours", [](auto& it) { return HoursFigure{it.hours}; }}};
};

template <>
struct JsonObject<HoursTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "hours";
  static constexpr JsonKey<HoursTold> keys[] = {
      {"total", [](auto& it) { return printed_total(it.hours); }},
      {"lines", [](auto& it) { return it.hours.lines; }},
      {on_row, "range", [](auto& it) { return it.range; }},
      {on_row, "waiting", [](auto& it) { return it.hours.waiting; },
       R"("description": "of the clock, while hands do other work")"}};
};

template <>
struct JsonObject<CostTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "cost";
  static constexpr JsonKey<CostTold> keys[] = {
      {"labour", [](auto& it) { return it.cost.of(CostGroup::labour); }},
      {"material", [](auto& it) { return it.cost.of(CostGroup::material); }},
      {"fittings", [](auto& it) { return it.cost.of(CostGroup::fittings); }},
      {"finish", [](auto& it) { return it.cost.of(CostGroup::finish); }},
      {"bought_in", [](auto& it) { return it.if_any(CostGroup::bought_in); }},
      {"machine", [](auto& it) { return it.if_any(CostGroup::machine); }},
      {"overhead", [](auto& it) { return it.cost.of(CostGroup::overhead); }},
      {"contingency", [](auto& it) { return it.if_any(CostGroup::contingency); }},
      {"total", [](auto& it) { return it.cost.total(); }}};
};

template <>
struct JsonObject<CostLine> : JsonObjectDefaults {
  static constexpr std::string_view definition = "cost_line";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<CostLine> keys[] = {
      {"for", the<&CostLine::kind>},
      {"in", [](auto& it) { return group_of(it.kind); }},
      {"what", the<&CostLine::what>},
      {"amount", [](auto& it) { return only_if(!it.unit.empty(), Rounded<6>{it.amount}); }},
      {"unit", [](auto& it) { return if_any(it.unit); }},
      {"each", [](auto& it) { return if_any(it.rate); }},
      {"money", the<&CostLine::money>}};
};

template <>
struct JsonObject<MissingFigure> : JsonObjectDefaults {
  static constexpr std::string_view definition = "missing";
  static constexpr JsonKey<MissingFigure> keys[] = {{"what", the<&MissingFigure::what>},
                                                    {"remedy", the<&MissingFigure::remedy>}};
};

template <>
struct JsonObject<TaxAmount> : JsonObjectDefaults {
  static constexpr std::string_view definition = "tax";
  static constexpr JsonKey<TaxAmount> keys[] = {
      {"what", the<&TaxAmount::what>},
      {"share", [](auto& it) { return ShareFigure{it.share}; }},
      {"money", the<&TaxAmount::money>}};
};

template <>
struct JsonObject<EachTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "each";
  static constexpr JsonKey<EachTold> keys[] = {
      {"hours", [](auto& it) { return HoursFigure{it.hours}; }},
      {"cost", [](auto& it) { return Rounded<6>{it.cost}; }},
      {"price", [](auto& it) { return Rounded<6>{it.price}; }}};
};

template <>
struct JsonObject<QuotedCaution> : JsonObjectDefaults {
  static constexpr JsonKey<QuotedCaution> keys[] = {
      {"about", [](auto& it) { return it.caution.about; }},
      {"message", [](auto& it) -> const std::string& { return it.caution.words; }}};
};

template <>
struct JsonObject<ShareTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "share";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<ShareTold> keys[] = {
      {"item", [](auto& it) -> const std::string& { return it.told.id; }},
      {"name", [](auto& it) -> const std::string& { return it.told.name; }},
      {"quantity", [](auto& it) { return it.told.count; }, R"("minimum": 1)"},
      {"size", [](auto& it) { return it.told.size; }},
      {"wood", [](auto& it) -> const std::vector<std::string>& { return it.told.woods; }},
      {"fittings", [](auto& it) -> const std::vector<std::string>& { return it.told.fittings; }},
      {"finish", [](auto& it) -> const std::string& { return it.told.finish; }},
      {"due", [](auto& it) { return if_any(it.told.due); }},
      {"cautions", [](auto& it) { return it.cautions(); }},
      {"hours", [](auto& it) { return it.in.shops(HoursFigure{it.share.hours}); }},
      {"cost", [](auto& it) { return it.in.shops(it.share.cost); }},
      {"price", [](auto& it) { return it.share.price; }}};
};

template <>
struct JsonObject<StageAmount> : JsonObjectDefaults {
  static constexpr std::string_view definition = "stage";
  static constexpr JsonKey<StageAmount> keys[] = {
      {"percent", [](auto& it) { return Rounded<4>{it.percent}; }},
      {"price", the<&StageAmount::price>},
      {"tax", the<&StageAmount::tax>},
      {"to_pay", [](auto& it) { return it.to_pay(); }}};
};

template <>
struct JsonObject<VariantTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "variant";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<VariantTold> keys[] = {
      {"name", [](auto& it) -> const std::string& { return it.variant.asked.name; }},
      {"quantity", [](auto& it) { return it.variant.asked.quantity; }, R"("minimum": 1)"},
      {on_row, "hours",
       [](auto& it) {
         return it.shops(HoursTold{it.variant.hours, it.in.report.hours_range(it.variant)});
       }},
      {on_row, "cost", [](auto& it) { return it.shops(CostTold{it.variant.cost}); }},
      {on_row, "price", [](auto& it) { return it.variant.price.asked; }},
      {"margin", [](auto& it) { return it.shops(ShareFigure{it.variant.price.margin()}); }},
      {"markup", [](auto& it) { return it.shops(ShareFigure{it.variant.price.markup()}); }},
      {"loses_below", [](auto& it) { return it.shops(it.variant.price.cost); }},
      {"earns_per_hour", [](auto& it) { return it.shops(it.variant.price.earns_per_hour()); }},
      {"tax", [](auto& it) { return it.variant.price.tax; }},
      {"to_pay", [](auto& it) { return it.variant.price.to_pay(); }},
      {on_row, "each", [](auto& it) { return it.shops(each_of(it.variant)); }},
      {on_row, "differs", [](auto& it) { return it.why(); },
       R"("description": "why one of it costs less or more than one as stated")"},
      {on_row, "rises", [](auto& it) { return it.rises(); },
       R"("description": "in which one of it costs more than one of the next fewer made")"},
      {on_row, "cost_lines", [](auto& it) { return it.shops(it.variant.cost.lines); }},
      {on_row, "wood_from", [](auto& it) { return it.shops(it.variant.wood_from); }},
      {on_row, "missing", [](auto& it) { return it.shops(it.variant.cost.missing); },
       R"("description": "what is not counted, so that cost and price are too low")"},
      {on_row, "items", [](auto& it) { return it.items(); }}};
};

template <>
struct JsonObject<DueTold> : JsonObjectDefaults {
  static constexpr std::string_view definition = "due";
  static constexpr JsonKey<DueTold> keys[] = {
      {"item",
       [](auto& it) -> const std::string& {
         return it.in.report.variants.front().items()[it.order.item].job->id;
       }},
      {"hours", [](auto& it) { return HoursFigure{it.order.hours}; }},
      {"hours_until", [](auto& it) { return HoursFigure{it.order.until}; }},
      {"ready", [](auto& it) { return it.text_of(it.order.ready); }},
      {"due", [](auto& it) { return it.text_of(it.order.wanted); }},
      {"days_late", [](auto& it) { return it.order.days_late(); }, R"("minimum": 0)"}};
};

template <>
struct JsonObject<QuoteDocument> : JsonObjectDefaults {
  static constexpr JsonKey<QuoteDocument> keys[] = {
      {among, [](auto&) { return DocumentHead<kQuoteFormat>(); }},
      {"currency", [](auto& it) -> const std::string& { return it.report.rates.currency; }},
      {"units", [](auto& it) { return it.report.unit; }},
      {"for", [](auto& it) { return it.report.paper.for_customer ? "customer" : "shop"; },
       R"("enum": ["customer", "shop"])"},
      {"invoice",
       [](auto& it) { return only_if(it.report.paper.is_invoice, it.report.paper.number); }},
      {"date", [](auto& it) { return it.date(); }},
      {"valid_until", [](auto& it) { return if_any(valid_until(it.report)); }},
      {"not_included", [](auto& it) { return not_included(it.report); }},
      {"making_alone",
       [](auto& it) {
         return !has_other_work(*it.report.variants.front().asked.order, it.report.rates);
       },
       R"("description": "no work is counted beside cutting and putting together")"},
      {on_row, "stages", [](auto& it) { return if_any(stages_in(it.report)); }},
      {on_row, "due", [](auto& it) { return it.due(); },
       R"("description": "orders one after the other, as they are wanted")"},
      {on_row, "variants", [](auto& it) { return each_in<VariantTold>(it, it.report.variants); }}};
};

std::string quote_json(const QuoteReport& report) {
  std::string out;
  JsonText json(out, report.unit);
  write_json(json, QuoteDocument{report});
  return out + "\n";
}

std::string quote_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:quote-1",
    "title": "Hours, cost and price of an order",
    "description": "Money is decimal text, hours are in hours. All of a variant is for all of its quantity. Every key of 'cost' beside 'total' is a share of it; 'price' is before tax and as the shop rounds it.")";
  return schema_document(kHead, object_schema<QuoteDocument>(),
                         {{"money", R"({"type": "string", "pattern": "^-?[0-9]+[.][0-9]{2}$"})"},
                          definition_of<VariantTold>(),
                          definition_of<HoursTold>(),
                          definition_of<HourLine>(),
                          definition_of<CostTold>(),
                          definition_of<CostLine>(),
                          definition_of<TaxAmount>(),
                          definition_of<EachTold>(),
                          definition_of<MissingFigure>(),
                          definition_of<StageAmount>(),
                          definition_of<DueTold>(),
                          definition_of<ShareTold>()});
}

}  // namespace haunch
