#include <cmath>

#include "csv_row.h"
#include "json_text.h"
#include "lumber_bill.h"
#include "lumber_text.h"

namespace haunch {
namespace {

constexpr int kMoneyPlaces = 2;
constexpr int kAreaPlaces = 3;
constexpr int kSharePlaces = 4;
constexpr int kVolumePlaces = 4;
constexpr double kHundredths = 100;

double square_units(double square_mm, Unit unit) {
  constexpr double kInch = 25.4;
  return unit == Unit::mm ? square_mm : square_mm / (kInch * kInch);
}

/// Writes a report; knows the unit that areas are in.
class LumberJson {
 public:
  LumberJson(const LumberReport& report, Unit unit)
      : report_(report), unit_(unit), json_(out_, unit) {}

  std::string text() {
    json_.open_object();
    json_.member("format", "haunch-lumber-1");
    json_.member("units", unit_word(unit_));
    if (!report_.stock.currency.empty()) json_.member("currency", report_.stock.currency);
    json_.row();
    json_.key("plan");
    if (report_.has_stock)
      plan();
    else
      json_.null();
    parts();
    not_wood();
    takings();
    assumed();
    json_.close_object();
    return out_ + "\n";
  }

 private:
  void area(std::string_view name, lumber::Area value) {
    json_.key(name);
    json_.number(square_units(lumber::square_mm(value), unit_), kAreaPlaces);
  }

  void money(std::string_view name, std::int64_t hundredths) {
    json_.key(name);
    json_.number(static_cast<double>(hundredths) / kHundredths, kMoneyPlaces);
  }

  void sizes(const lumber::Spot& spot) {
    json_.member("x", spot.x);
    json_.member("y", spot.y);
    json_.member("length", spot.length);
    json_.member("width", spot.width);
  }

  // ---- the plan

  void plan() {
    json_.open_object();
    json_.key("boards");
    json_.open_list();
    for (const MaterialPlan& material : report_.plans)
      for (const lumber::BoardPlan& board : material.plan.boards)
        append_board(material, board);
    json_.close_list();
    append_bill();
    json_.row();
    json_.key("unplaced");
    json_.open_list();
    for (const UnplacedPart& each : report_.unplaced)
      append_unplaced(each);
    json_.close_list();
    json_.row();
    append_totals();
    json_.row();
    append_bound();
    json_.close_object();
  }

  void append_bill() {
    json_.row();
    json_.key("bill");
    json_.open_list();
    for (const BillLine& line : bill_of(report_)) {
      json_.open_object();
      json_.member("stock", report_.stock.items[line.item].id);
      json_.member("boards", static_cast<std::int64_t>(line.count));
      money("cost", line.cost);
      json_.close_object();
    }
    json_.close_list();
  }

  void append_board(const MaterialPlan& material, const lumber::BoardPlan& board) {
    const StockItem& item = report_.stock.items[material.items[board.stock]];
    json_.row();
    json_.open_object();
    json_.member("stock", item.id);
    json_.member("copy", number_of(item, board));
    json_.member("length", item.length);
    json_.member("width", item.width);
    json_.member("thickness", item.thickness.thickness);
    json_.member("material", material.material);
    json_.key("bought");
    json_.truth(item.price.has_value());
    money("cost", cost_of(item).rounded(1, kMoneyPlaces));
    append_cuts(material, board);
    json_.key("offcuts");
    json_.open_list();
    for (const lumber::Spot& spot : board.offcuts) {
      json_.open_object();
      sizes(spot);
      json_.close_object();
    }
    json_.close_list();
    append_steps(board);
    json_.close_object();
  }

  void append_cuts(const MaterialPlan& material, const lumber::BoardPlan& board) {
    json_.key("cuts");
    json_.open_list();
    for (const lumber::Cut& cut : board.cuts) {
      const LumberPiece& piece = material.pieces[cut.want];
      json_.row();
      json_.open_object();
      json_.member("part", report_.parts[piece.part].name);
      sizes(cut.spot);
      if (piece.of > 1) {
        json_.member("piece", static_cast<std::int64_t>(piece.number));
        json_.member("of", static_cast<std::int64_t>(piece.of));
      }
      if (cut.turned) {
        json_.key("turned");
        json_.truth(true);
      }
      json_.close_object();
    }
    json_.close_list();
  }

  void append_steps(const lumber::BoardPlan& board) {
    constexpr std::string_view kReasons[] = {"trim",  "defect", "section",
                                             "strip", "part",   "to size"};
    json_.key("steps");
    json_.open_list();
    for (const lumber::Step& step : board.steps) {
      json_.row();
      json_.open_object();
      json_.member("saw", step.kind == lumber::StepKind::rip ? "rip" : "crosscut");
      json_.member("for", kReasons[static_cast<std::size_t>(step.reason)]);
      json_.member("from", step.from);
      json_.member("to", step.to);
      json_.key("piece");
      json_.open_object();
      sizes(step.piece);
      json_.close_object();
      json_.close_object();
    }
    json_.close_list();
  }

  void append_unplaced(const UnplacedPart& each) {
    const LumberPart& part = report_.parts[each.part];
    json_.row();
    json_.open_object();
    json_.member("part", part.name);
    json_.member("length", part.finished.length);
    json_.member("width", part.finished.width);
    json_.member("thickness", part.finished.thickness);
    json_.member("material", part.material);
    json_.member("message", each.why);
    json_.close_object();
  }

  void append_totals() {
    const lumber::Totals totals = totals_of(report_);
    const double used = lumber::square_mm(totals.area_used);
    const lumber::Area lost = totals.kerf + totals.trim + totals.scrap;
    json_.key("totals");
    json_.open_object();
    money("cost", totals.cost);
    area("area_bought", totals.area_bought);
    area("area_parts", totals.parts);
    json_.key("waste");
    json_.number(used > 0 ? lumber::square_mm(lost) / used : 0, kSharePlaces);
    json_.member("boards", totals.boards);
    json_.member("boards_bought", totals.boards_bought);
    area("area_used", totals.area_used);
    area("area_kerf", totals.kerf);
    area("area_trim", totals.trim);
    area("area_offcuts", totals.offcuts);
    area("area_scrap", totals.scrap);
    json_.close_object();
  }

  void bound_figure(std::string_view name, lumber::Measure measure, std::int64_t figure) {
    json_.key(name);
    if (measure == lumber::Measure::money)
      json_.number(static_cast<double>(figure) / kHundredths, kMoneyPlaces);
    else if (measure == lumber::Measure::boards)
      json_.number(figure);
    else
      json_.number(square_units(static_cast<double>(figure), unit_), kAreaPlaces);
  }

  void append_bound() {
    constexpr std::string_view kMeasures[] = {"cost", "area", "boards"};
    const PlansBound all = bound_of(report_);
    const lumber::Bounds& bounds = all.bounds;
    json_.key("bound");
    json_.open_object();
    bound_figure("area", bounds.measure, bounds.area);
    if (bounds.linear) {
      bound_figure("linear", bounds.measure, *bounds.linear);
    } else {
      json_.key("linear");
      json_.null();
    }
    json_.member("measure", kMeasures[static_cast<std::size_t>(bounds.measure)]);
    bound_figure("plan", bounds.measure, bounds.plan);
    bound_figure("best", bounds.measure, bounds.best);
    bound_figure("as_made", bounds.measure, all.as_made);
    json_.key("boards_above");
    json_.number(bounds.boards_above, kMoneyPlaces);
    json_.close_object();
  }

  // ---- parts, takings-off, what was assumed

  void parts() {
    json_.row();
    json_.key("parts");
    json_.open_list();
    for (std::size_t i = 0; i < report_.parts.size(); ++i) {
      if (!report_.rough[i]) continue;
      const RoughPart& rough = *report_.rough[i];
      json_.row();
      json_.open_object();
      json_.member("part", report_.parts[i].name);
      json_.member("material", report_.parts[i].material);
      json_.member("length", rough.length);
      json_.member("width", rough.width);
      json_.member("stock_thickness", rough.stock_thickness);
      json_.member("layers", static_cast<std::int64_t>(rough.layers));
      json_.member("strips", static_cast<std::int64_t>(rough.strips));
      json_.key("glue_lines");
      json_.open_list();
      for (const Length line : rough.glue_lines)
        json_.number(line);
      json_.close_list();
      json_.close_object();
    }
    json_.close_list();
  }

  void not_wood() {
    json_.row();
    json_.key("not_wood");
    json_.open_list();
    for (const LumberPart& part : report_.not_wood) {
      json_.row();
      json_.open_object();
      json_.member("part", part.name);
      json_.member("what", part.label);
      json_.member("length", part.finished.length);
      json_.member("width", part.finished.width);
      json_.member("thickness", part.finished.thickness);
      json_.close_object();
    }
    json_.close_list();
  }

  void takings() {
    json_.row();
    json_.key("takings_off");
    json_.open_list();
    for (const TakingRow& row : report_.takings) {
      const double cubic = lumber::cubic_metres(row.taking.area, row.nominal);
      const double feet = lumber::board_feet(row.taking.area, row.nominal);
      const lumber::WasteRule& waste = report_.stock.sawing.waste;
      json_.row();
      json_.open_object();
      json_.member("material", row.material);
      json_.member("thickness", row.thickness);
      json_.key("sheet");
      json_.truth(row.sheet);
      json_.member("pieces", row.taking.pieces);
      area("area", row.taking.area);
      figure("cubic_metres", cubic);
      figure("board_feet", feet);
      figure("buy_cubic_metres", lumber::to_buy(cubic, waste));
      figure("buy_board_feet", lumber::to_buy(feet, waste));
      json_.close_object();
    }
    json_.close_list();
  }

  void figure(std::string_view name, double value) {
    json_.key(name);
    json_.number(value, kVolumePlaces);
  }

  void assumed() {
    json_.row();
    json_.key("assumed");
    json_.open_list();
    for (const Assumed& each : report_.stock.assumed) {
      json_.open_object();
      json_.member("key", each.key);
      if (const auto* length = std::get_if<Length>(&each.value))
        json_.member("value", *length);
      else if (const auto* words = std::get_if<std::string>(&each.value))
        json_.member("value", *words);
      json_.member("why", each.why);
      json_.close_object();
    }
    json_.close_list();
  }

  const LumberReport& report_;
  Unit unit_;
  std::string out_;
  JsonText json_;
};

void append_head(CsvRow& row, Unit unit, bool planned) {
  const std::string suffix = unit == Unit::mm ? "_mm" : "_in";
  for (const char* name : {"part", "piece", "of", "material"})
    row.plain(name);
  if (planned)
    for (const char* name : {"stock", "board", "bought"})
      row.plain(name);
  row.plain("thickness" + suffix);
  if (planned)
    for (const char* name : {"x", "y"})
      row.plain(name + suffix);
  row.plain("length" + suffix);
  row.plain("width" + suffix);
  row.end();
}

}  // namespace

std::string lumber_json(const LumberReport& report, Unit unit) {
  return LumberJson(report, unit).text();
}

std::string lumber_csv(const LumberReport& report, Unit unit, bool for_spreadsheet) {
  std::string out(csv_start(for_spreadsheet));
  const auto row = [&] { return CsvRow(out, unit, for_spreadsheet); };
  CsvRow head = row();
  append_head(head, unit, report.has_stock);
  const auto begin = [&](CsvRow& line, const LumberPiece& piece) {
    line.text(report.parts[piece.part].name);
    line.count(static_cast<std::int64_t>(piece.number));
    line.count(static_cast<std::int64_t>(piece.of));
    line.text(report.parts[piece.part].material);
  };
  for (std::size_t i = 0; i < report.parts.size() && !report.has_stock; ++i) {
    if (!report.rough[i]) continue;
    const RoughPart& rough = *report.rough[i];
    for (std::size_t number = 1; number <= rough.pieces(); ++number) {
      CsvRow line = row();
      begin(line, {i, number, rough.pieces()});
      line.length(rough.stock_thickness);
      line.length(rough.length);
      line.length(rough.width);
      line.end();
    }
  }
  for (const MaterialPlan& plan : report.plans) {
    for (const lumber::BoardPlan& board : plan.plan.boards) {
      const StockItem& item = report.stock.items[plan.items[board.stock]];
      for (const lumber::Cut& cut : board.cuts) {
        CsvRow line = row();
        begin(line, plan.pieces[cut.want]);
        line.text(item.id);
        line.count(number_of(item, board));
        line.plain(item.price ? "yes" : "no");
        for (const Length length :
             {item.thickness.thickness, cut.spot.x, cut.spot.y, cut.spot.length, cut.spot.width})
          line.length(length);
        line.end();
      }
    }
  }
  return out;
}

}  // namespace haunch
