#include "assumed_json.h"
#include "formats.h"
#include "lumber_bill.h"
#include "lumber_text.h"
#include "schema.h"

namespace haunch {
namespace {

constexpr std::string_view kSize = R"({"$ref": "#/$defs/size"})";
constexpr std::string_view kPlace = R"({"$ref": "#/$defs/place"})";
constexpr std::string_view kFigure = R"({"$ref": "#/$defs/figure"})";
constexpr std::string_view kFromOne = R"("minimum": 1)";
constexpr std::string_view kFromZero = R"("minimum": 0)";
constexpr std::string_view kNotEmpty = R"("minLength": 1)";

constexpr std::string_view kSaws[] = {"crosscut", "rip"};
constexpr std::string_view kReasons[] = {"trim", "defect", "section", "strip", "part", "to size"};
constexpr std::string_view kMeasures[] = {"cost", "area", "boards"};

// ---- figures

/// Written in the square of the unit of lengths.
struct InSquare {
  double square_mm = 0;
};

InSquare area(lumber::Area area) {
  return {lumber::square_mm(area)};
}

using Volume = Rounded<4>;

Rounded<2> money(std::int64_t hundredths) {
  constexpr double kHundredths = 100;
  return {static_cast<double>(hundredths) / kHundredths};
}

/// In what the plan and its bounds count in.
struct BoundFigure {
  lumber::Measure measure = lumber::Measure::money;
  std::int64_t figure = 0;
};

BoundFigure figure_of(const PlansBound& bound, std::int64_t figure) {
  return {bound.bounds.measure, figure};
}

OrNull<BoundFigure> linear_figure(const PlansBound& bound) {
  if (!bound.bounds.linear) return {};
  return {figure_of(bound, *bound.bounds.linear)};
}

double waste_share(const lumber::Totals& totals) {
  const double used = lumber::square_mm(totals.area_used);
  const lumber::Area lost = totals.kerf + totals.trim + totals.scrap;
  return used > 0 ? lumber::square_mm(lost) / used : 0;
}

// ---- what is told with what it stands in

struct CuttingPlan {
  const LumberReport& report;
};

struct CutBoard {
  const LumberReport& report;
  const MaterialPlan& material;
  const lumber::BoardPlan& board;

  const StockItem& item() const { return report.stock.items[material.items[board.stock]]; }
};

struct CutPart {
  const CutBoard& from;
  const lumber::Cut& cut;

  const LumberPiece& piece() const { return from.material.pieces[cut.want]; }
  const LumberPart& part() const { return from.report.parts[piece().part]; }
  /// Its number where the part is made of several pieces.
  std::optional<std::size_t> of_several(std::size_t number) const {
    return only_if(piece().of > 1, number);
  }
};

struct Billed {
  const LumberReport& report;
  BillLine line;
};

struct Unplaced {
  const LumberReport& report;
  const UnplacedPart& each;

  const LumberPart& part() const { return report.parts[each.part]; }
};

struct MadeFrom {
  const LumberPart& part;
  const RoughPart& rough;
};

struct TakenOff {
  const LumberReport& report;
  const TakingRow& row;

  double cubic_metres() const { return lumber::cubic_metres(row.taking.area, row.nominal); }
  double board_feet() const { return lumber::board_feet(row.taking.area, row.nominal); }
  Volume to_buy(double needed) const { return {lumber::to_buy(needed, report.stock.sawing.waste)}; }
};

struct AssumedOfStock {
  const LumberReport& report;
  const Assumed& each;
};

struct WholeReport {
  const LumberReport& report;
  Unit unit;
};

std::vector<CutBoard> boards_of(const LumberReport& report) {
  std::vector<CutBoard> boards;
  for (const MaterialPlan& material : report.plans)
    for (const lumber::BoardPlan& board : material.plan.boards)
      boards.push_back({report, material, board});
  return boards;
}

OrNull<CuttingPlan> plan_of(const LumberReport& report) {
  if (!report.has_stock) return {};
  return {CuttingPlan{report}};
}

std::vector<MadeFrom> rough_parts_of(const LumberReport& report) {
  std::vector<MadeFrom> parts;
  for (std::size_t i = 0; i < report.parts.size(); ++i)
    if (report.rough[i]) parts.push_back({report.parts[i], *report.rough[i]});
  return parts;
}

}  // namespace

template <>
struct JsonValue<InSquare> {
  static void write(JsonText& json, InSquare area) {
    constexpr double kInch = 25.4;
    const double one = json.unit() == Unit::mm ? 1 : kInch * kInch;
    write_json(json, Rounded<3>{area.square_mm / one});
  }
  static std::string schema() { return std::string(kFigure); }
};

template <>
struct JsonValue<BoundFigure> {
  static void write(JsonText& json, const BoundFigure& it) {
    if (it.measure == lumber::Measure::money)
      write_json(json, money(it.figure));
    else if (it.measure == lumber::Measure::boards)
      write_json(json, it.figure);
    else
      write_json(json, InSquare{static_cast<double>(it.figure)});
  }
  static std::string schema() { return R"({"type": "number"})"; }
};

// ---- the plan

template <>
struct JsonObject<lumber::Spot> : JsonObjectDefaults {
  static constexpr std::string_view definition = "spot";
  static constexpr JsonKey<lumber::Spot> keys[] = {{"x", the<&lumber::Spot::x>, kPlace},
                                                   {"y", the<&lumber::Spot::y>, kPlace},
                                                   {"length", the<&lumber::Spot::length>, kSize},
                                                   {"width", the<&lumber::Spot::width>, kSize}};
};

template <>
struct JsonObject<CutPart> : JsonObjectDefaults {
  static constexpr std::string_view definition = "cut";
  static constexpr std::string_view also =
      R"("dependentRequired": {"piece": ["of"], "of": ["piece"]})";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<CutPart> keys[] = {
      {"part", [](auto& it) -> const std::string& { return it.part().name; }},
      {"x", [](auto& it) { return it.cut.spot.x; }, kPlace},
      {"y", [](auto& it) { return it.cut.spot.y; }, kPlace},
      {"length", [](auto& it) { return it.cut.spot.length; }, kSize},
      {"width", [](auto& it) { return it.cut.spot.width; }, kSize},
      {"piece", [](auto& it) { return it.of_several(it.piece().number); }, kFromOne},
      {"of", [](auto& it) { return it.of_several(it.piece().of); }, R"("minimum": 2)"},
      {"turned", [](auto& it) { return only_if(it.cut.turned, true); }, R"({"const": true})"}};
};

template <>
struct JsonObject<lumber::Step> : JsonObjectDefaults {
  static constexpr std::string_view definition = "step";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<lumber::Step> keys[] = {
      {"saw", [](auto& it) { return Word<kSaws>(it.kind == lumber::StepKind::rip); }},
      {"for", [](auto& it) { return Word<kReasons>(it.reason); }},
      {"from", the<&lumber::Step::from>, kPlace},
      {"to", the<&lumber::Step::to>, kPlace},
      {"piece", the<&lumber::Step::piece>}};
};

template <>
struct JsonObject<CutBoard> : JsonObjectDefaults {
  static constexpr std::string_view definition = "board";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<CutBoard> keys[] = {
      {"stock", [](auto& it) -> const std::string& { return it.item().id; }, kNotEmpty},
      {"copy", [](auto& it) { return number_of(it.item(), it.board); }, kFromOne},
      {"length", [](auto& it) { return it.item().length; }, kSize},
      {"width", [](auto& it) { return it.item().width; }, kSize},
      {"thickness", [](auto& it) { return it.item().thickness.thickness; }, kSize},
      {"material", [](auto& it) -> const std::string& { return it.material.material; }},
      {"bought", [](auto& it) { return it.item().price.has_value(); }},
      {"cost", [](auto& it) { return money(cost_of(it.item()).rounded(1, 2)); },
       R"({"$ref": "#/$defs/figure", "description": "of one, rounded by itself: what is paid is in 'bill'"})"},
      {"cuts", [](auto& it) { return each_in<CutPart>(it, it.board.cuts); }, R"("minItems": 1)"},
      {"offcuts", [](auto& it) -> const std::vector<lumber::Spot>& { return it.board.offcuts; }},
      {"steps", [](auto& it) -> const std::vector<lumber::Step>& { return it.board.steps; }}};
};

template <>
struct JsonObject<Billed> : JsonObjectDefaults {
  static constexpr std::string_view definition = "bill_line";
  static constexpr JsonKey<Billed> keys[] = {
      {"stock",
       [](auto& it) -> const std::string& { return it.report.stock.items[it.line.item].id; },
       kNotEmpty},
      {"boards", [](auto& it) { return it.line.count; }, kFromOne},
      {"cost", [](auto& it) { return money(it.line.cost); },
       R"({"$ref": "#/$defs/figure", "description": "of all, exact until it is rounded; the lines add up to the cost in 'totals'"})"}};
};

template <>
struct JsonObject<Unplaced> : JsonObjectDefaults {
  static constexpr std::string_view definition = "unplaced";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<Unplaced> keys[] = {
      {"part", [](auto& it) -> const std::string& { return it.part().name; }},
      {"length", [](auto& it) { return it.part().finished.length; }, kSize},
      {"width", [](auto& it) { return it.part().finished.width; }, kSize},
      {"thickness", [](auto& it) { return it.part().finished.thickness; }, kSize},
      {"material", [](auto& it) -> const std::string& { return it.part().material; }},
      {"message", [](auto& it) -> const std::string& { return it.each.why; }, kNotEmpty}};
};

template <>
struct JsonObject<lumber::Totals> : JsonObjectDefaults {
  using Totals = lumber::Totals;
  static constexpr std::string_view definition = "totals";
  static constexpr JsonKey<Totals> keys[] = {
      {"cost", [](auto& it) { return money(it.cost); }, kFigure},
      {"area_bought", [](auto& it) { return area(it.area_bought); }},
      {"area_parts", [](auto& it) { return area(it.parts); }},
      {"waste", [](auto& it) { return Rounded<4>{waste_share(it)}; },
       R"("minimum": 0, "maximum": 1)"},
      {"boards", the<&Totals::boards>, kFromZero},
      {"boards_bought", the<&Totals::boards_bought>, kFromZero},
      {"area_used", [](auto& it) { return area(it.area_used); }},
      {"area_kerf", [](auto& it) { return area(it.kerf); }},
      {"area_trim", [](auto& it) { return area(it.trim); }},
      {"area_offcuts", [](auto& it) { return area(it.offcuts); }},
      {"area_scrap", [](auto& it) { return area(it.scrap); }}};
};

template <>
struct JsonObject<PlansBound> : JsonObjectDefaults {
  static constexpr std::string_view definition = "bound";
  static constexpr JsonKey<PlansBound> keys[] = {
      {"area", [](auto& it) { return figure_of(it, it.bounds.area); }, kFigure},
      {"linear", [](auto& it) { return linear_figure(it); }, kFromZero},
      {"measure", [](auto& it) { return Word<kMeasures>(it.bounds.measure); }},
      {"plan", [](auto& it) { return figure_of(it, it.bounds.plan); }, kFigure},
      {"best", [](auto& it) { return figure_of(it, it.bounds.best); },
       R"({"$ref": "#/$defs/figure", "description": "no plan comes under it, however the parts that are placed are made and cut"})"},
      {"as_made", [](auto& it) { return figure_of(it, it.as_made); },
       R"({"$ref": "#/$defs/figure", "description": "the same with the strips, layers and thicknesses of this plan; no less than best"})"},
      {"boards_above", [](auto& it) { return Rounded<2>{it.bounds.boards_above}; }, kFigure}};
};

template <>
struct JsonObject<CuttingPlan> : JsonObjectDefaults {
  static constexpr std::string_view definition = "plan";
  static constexpr JsonKey<CuttingPlan> keys[] = {
      {"boards", [](auto& it) { return boards_of(it.report); }},
      {on_row, "bill", [](auto& it) { return each_in<Billed>(it.report, bill_of(it.report)); }},
      {on_row, "unplaced",
       [](auto& it) { return each_in<Unplaced>(it.report, it.report.unplaced); }},
      {on_row, "totals", [](auto& it) { return totals_of(it.report); }},
      {on_row, "bound", [](auto& it) { return bound_of(it.report); }}};
};

// ---- parts, takings-off, what was assumed

template <>
struct JsonObject<MadeFrom> : JsonObjectDefaults {
  static constexpr std::string_view definition = "rough_part";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<MadeFrom> keys[] = {
      {"part", [](auto& it) -> const std::string& { return it.part.name; }},
      {"material", [](auto& it) -> const std::string& { return it.part.material; }},
      {"length", [](auto& it) { return it.rough.length; }, kSize},
      {"width", [](auto& it) { return it.rough.width; }, kSize},
      {"stock_thickness", [](auto& it) { return it.rough.stock_thickness; }, kSize},
      {"layers", [](auto& it) { return it.rough.layers; }, R"("minimum": 1, "maximum": 3)"},
      {"strips", [](auto& it) { return it.rough.strips; }, kFromOne},
      {"glue_lines", [](auto& it) -> const std::vector<Length>& { return it.rough.glue_lines; },
       R"({"type": "array", "items": {"$ref": "#/$defs/size"}, "maxItems": 2})"}};
};

template <>
struct JsonObject<LumberPart> : JsonObjectDefaults {
  static constexpr std::string_view definition = "not_wood";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<LumberPart> keys[] = {
      {"part", the<&LumberPart::name>},
      {"what", the<&LumberPart::label>},
      {"length", [](auto& it) { return it.finished.length; }, kSize},
      {"width", [](auto& it) { return it.finished.width; }, kSize},
      {"thickness", [](auto& it) { return it.finished.thickness; }, kSize}};
};

template <>
struct JsonObject<TakenOff> : JsonObjectDefaults {
  static constexpr std::string_view definition = "taking";
  static constexpr bool on_rows = true;
  static constexpr JsonKey<TakenOff> keys[] = {
      {"material", [](auto& it) -> const std::string& { return it.row.material; }},
      {"thickness", [](auto& it) { return it.row.thickness; }, kSize},
      {"sheet", [](auto& it) { return it.row.sheet; }},
      {"pieces", [](auto& it) { return it.row.taking.pieces; }, kFromOne},
      {"area", [](auto& it) { return area(it.row.taking.area); }},
      {"cubic_metres", [](auto& it) { return Volume{it.cubic_metres()}; }, kFigure},
      {"board_feet", [](auto& it) { return Volume{it.board_feet()}; }, kFigure},
      {"buy_cubic_metres", [](auto& it) { return it.to_buy(it.cubic_metres()); }, kFigure},
      {"buy_board_feet", [](auto& it) { return it.to_buy(it.board_feet()); }, kFigure}};
};

template <>
struct JsonObject<AssumedOfStock> : JsonObjectDefaults {
  static constexpr std::string_view definition = "assumed";
  static constexpr JsonKey<AssumedOfStock> keys[] = {
      {"key", [](auto& it) -> const std::string& { return it.each.key; }},
      {"value", [](auto& it) -> const AssumedValue& { return it.each.value; },
       R"({"type": ["number", "string"]})"},
      {"why", [](auto& it) -> const std::string& { return it.each.why; }}};
};

template <>
struct JsonObject<WholeReport> : JsonObjectDefaults {
  static constexpr JsonKey<WholeReport> keys[] = {
      {among, [](auto&) { return DocumentHead<kLumberFormat>(); }},
      {"units", the<&WholeReport::unit>},
      {"currency", [](auto& it) { return if_any(it.report.stock.currency); }},
      {on_row, "plan", [](auto& it) { return plan_of(it.report); }},
      {on_row, "parts", [](auto& it) { return rough_parts_of(it.report); }},
      {on_row, "not_wood",
       [](auto& it) -> const std::vector<LumberPart>& { return it.report.not_wood; }},
      {on_row, "takings_off",
       [](auto& it) { return each_in<TakenOff>(it.report, it.report.takings); }},
      {on_row, "assumed",
       [](auto& it) { return each_in<AssumedOfStock>(it.report, it.report.stock.assumed); }}};
};

std::string lumber_json(const LumberReport& report, Unit unit) {
  std::string out;
  JsonText json(out, unit);
  write_json(json, WholeReport{report, unit});
  return out + "\n";
}

std::string lumber_schema() {
  constexpr std::string_view kHead = R"(
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "$id": "urn:haunch:lumber-1",
    "title": "What 'haunch lumber' says",
    "description": "Lengths are numbers in 'units', areas in its square, money as in the stock file. x runs along a board, y across.")";
  return schema_document(kHead, object_schema<WholeReport>(),
                         {{"size", R"({"type": "number", "exclusiveMinimum": 0})"},
                          {"place", R"({"type": "number", "minimum": 0})"},
                          {"figure", R"({"type": "number", "minimum": 0})"},
                          definition_of<CuttingPlan>(),
                          definition_of<CutBoard>(),
                          definition_of<Billed>(),
                          definition_of<lumber::Spot>(),
                          definition_of<CutPart>(),
                          definition_of<lumber::Step>(),
                          definition_of<Unplaced>(),
                          definition_of<lumber::Totals>(),
                          definition_of<PlansBound>(),
                          definition_of<MadeFrom>(),
                          definition_of<LumberPart>(),
                          definition_of<TakenOff>(),
                          definition_of<AssumedOfStock>()});
}

}  // namespace haunch
