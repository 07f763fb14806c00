#include "quote_wood.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "haunch/length_text.h"
#include "lumber_bill.h"
#include "lumber_planner.h"
#include "quote_goods.h"

namespace haunch {
namespace {

constexpr int kMoneyPlaces = 2;

/// Parts of an order, and which of its items bear each.
struct PartsOfOrder {
  std::vector<LumberPart> parts;
  std::map<std::string, Bearing> borne_by;  // by LumberPart::item
  std::size_t items = 0;
};

PartsOfOrder parts_of(const std::vector<ItemReport>& items, const std::vector<std::int64_t>& counts,
                      std::int64_t times) {
  PartsOfOrder all;
  all.items = items.size();
  for (std::size_t i = 0; i < items.size(); ++i)
    for (LumberPart& part : lumber_parts(items[i], counts[i] * times)) {
      Bearing& borne = all.borne_by[part.item];
      borne.resize(items.size());
      borne[i] = 1;
      all.parts.push_back(std::move(part));
    }
  return all;
}

/// A report, and of what each item's parts take.
class PlannedWood {
 public:
  PlannedWood(PartsOfOrder order, const WoodMeans& means)
      : means_(means),
        borne_by_(std::move(order.borne_by)),
        items_(order.items),
        report_(report_lumber(std::move(order.parts), means.stock, means.unit, means.lumber)) {}

  const std::vector<Problem>& problems() const { return report_.problems; }
  bool is_whole() const { return report_.unplaced.empty(); }

  /// Whether there are boards enough to do the same so many times.
  bool can_repeat(std::int64_t times) const {
    const std::map<std::size_t, int> used = boards_cut(report_);
    return std::all_of(used.begin(), used.end(), [&](const auto& each) {
      const auto& count = report_.stock.items[each.first].count;
      return !count || each.second * times <= *count;
    });
  }

  /// What its boards come to, so many times over.
  WoodCost by_plan(std::int64_t times) const {
    WoodCost cost;
    for (const auto& [stock, count] : boards_cut(report_))
      add_boards(cost, stock, count * times);
    return cost;
  }

  std::size_t unplaced() const { return report_.unplaced.size(); }

  /// What the stock file has no board for has to be bought elsewhere.
  PartsOfOrder rest() const {
    PartsOfOrder rest{{}, borne_by_, items_};
    for (const UnplacedPart& each : report_.unplaced)
      rest.parts.push_back(report_.parts[each.part]);
    return rest;
  }

  WoodCost by_takings() const {
    WoodCost cost;
    for (const TakingRow& row : report_.takings)
      add_taking(cost, row);
    if (!cost.lines.empty() && !means_.rates.yield)
      cost.missing.push_back(
          {"how much of the wood that is bought gets into the work",
           R"(give "yield": {"share": 0.7, "of": "bought"} in the rates file, or boards with --stock)"});
    return cost;
  }

 private:
  void add_to(Bearing& borne, const LumberPart& part, double area) const {
    const Bearing& its = borne_by_.at(part.item);
    for (std::size_t i = 0; i < borne.size(); ++i)
      borne[i] += area * its[i];
  }

  /// Boards of one kind are borne by what is cut from them, by its area: kerf, trim and offcuts go
  /// with it.
  Bearing cut_from(std::size_t stock) const {
    Bearing borne(items_, 0.0);
    for (const MaterialPlan& plan : report_.plans)
      for (const lumber::BoardPlan& board : plan.plan.boards) {
        if (plan.items[board.stock] != stock) continue;
        for (const lumber::Cut& cut : board.cuts)
          add_to(borne, report_.parts[plan.pieces[cut.want].part],
                 lumber::square_mm(lumber::area_of(cut.spot.length, cut.spot.width)));
      }
    return borne;
  }

  std::string size_words(const StockItem& item) const {
    const Unit unit = report_.stock.unit;
    std::string words = decimal(item.length, unit) + " x " + decimal(item.width, unit);
    if (item.widest) words += " to " + decimal(*item.widest, unit);
    return words + " x " + decimal(item.thickness.thickness, unit) + " " +
           std::string(word_of(unit));
  }

  void add_boards(WoodCost& cost, std::size_t stock, std::int64_t count) const {
    const StockItem& item = report_.stock.items[stock];
    const bool sheet = item.thickness.sheet;
    const std::string what = item.id + ", " + item.species + " " + size_words(item);
    const std::string unit = std::string(sheet ? "sheet" : "board") + (count == 1 ? "" : "s");
    if (!item.price) return add_in_hand(cost, stock, count, what, unit);
    CostLine line;
    line.kind = sheet ? CostKind::sheet : CostKind::wood;
    line.what = what;
    line.amount = static_cast<double>(count);
    line.unit = unit;
    line.rate = money_text({cost_of(item).rounded(1, kMoneyPlaces)});
    line.money = {cost_of(item).rounded(count, kMoneyPlaces)};
    line.borne = cut_from(stock);
    cost.lines.push_back(std::move(line));
  }

  /// What is in hand has been paid, and has to be bought again.
  void add_in_hand(WoodCost& cost, std::size_t stock, std::int64_t count, const std::string& what,
                   const std::string& unit) const {
    const StockItem& item = report_.stock.items[stock];
    const bool sheet = item.thickness.sheet;
    const std::string thickness = decimal(item.nominal, Unit::mm) + " mm";
    const Goods* goods = priced(means_.rates, sheet ? means_.rates.sheet : means_.rates.wood,
                                item.species + " " + thickness);
    const auto area = lumber::area_of(item.length, item.width);
    const auto measure =
        goods != nullptr ? measure_of(goods->per, area, item.nominal) : std::nullopt;
    if (!measure) {
      cost.missing.push_back({std::to_string(count) + " " + unit + " in hand, " + what,
                              "give what it is worth in \"" +
                                  std::string(sheet ? "sheet" : "wood") + "\" of the rates file"});
      return;
    }
    cost.lines.push_back(line_of(sheet ? CostKind::sheet : CostKind::wood, what + ", in hand",
                                 static_cast<double>(count), unit, *measure * goods->price,
                                 cut_from(stock)));
  }

  Bearing taken_from(const TakingRow& row) const {
    Bearing borne(items_, 0.0);
    for (std::size_t i = 0; i < report_.parts.size(); ++i) {
      const auto& rough = report_.rough[i];
      if (!rough || rough->stock_thickness != row.thickness || rough->sheet != row.sheet ||
          !same_material(row.material, report_.parts[i].material))
        continue;
      add_to(borne, report_.parts[i],
             static_cast<double>(rough->pieces()) *
                 lumber::square_mm(lumber::area_of(rough->length, rough->width)));
    }
    return borne;
  }

  void add_taking(WoodCost& cost, const TakingRow& row) const {
    const std::string list = row.sheet ? "sheet" : "wood";
    const std::string material = row.material.empty() ? "wood of no told kind" : row.material;
    const std::string what = material + " " + decimal(row.nominal, Unit::mm) + " mm";
    const Goods* goods =
        priced(means_.rates, row.sheet ? means_.rates.sheet : means_.rates.wood, what);
    const PricedBy per = goods != nullptr ? goods->per
                         : row.sheet      ? PricedBy::square_metre
                                          : PricedBy::cubic_metre;
    const auto net = measure_of(per, row.taking.area, row.nominal);
    if (goods == nullptr || !net) {
      const double volume = lumber::cubic_metres(row.taking.area, row.nominal);
      cost.missing.push_back(
          {what + ", " + figure_text(volume, 4) + " m3 as sawn",
           "give its price in \"" + list +
               "\" of the rates file, by volume or area, or boards with --stock"});
      return;
    }
    const Yield yield = means_.rates.yield.value_or(Yield());
    cost.lines.push_back(line_of(row.sheet ? CostKind::sheet : CostKind::wood, what,
                                 yield.to_buy(*net), measure_words(per), goods->price,
                                 taken_from(row)));
  }

  const WoodMeans& means_;
  std::map<std::string, Bearing> borne_by_;
  std::size_t items_;
  LumberReport report_;
};

std::string yield_words(const std::optional<Yield>& yield) {
  if (!yield) return "takings-off, nothing added for waste";
  constexpr double kPercent = 100;
  const std::string percent = figure_text(kPercent * (1 - yield->share), 1) + " %";
  return "takings-off, " + percent +
         (yield->of_bought ? " of what is bought lost" : " added to what is needed");
}

/// By takings-off what the plan has no boards for.
void add_rest(WoodCost& cost, const PlannedWood& plan, const WoodMeans& means) {
  const std::optional<StockFile> no_stock;
  const WoodMeans elsewhere{means.rates, no_stock, means.unit, means.lumber};
  WoodCost rest = PlannedWood(plan.rest(), elsewhere).by_takings();
  std::move(rest.lines.begin(), rest.lines.end(), std::back_inserter(cost.lines));
  std::move(rest.missing.begin(), rest.missing.end(), std::back_inserter(cost.missing));
  cost.from += "; " + std::to_string(plan.unplaced()) +
               (plan.unplaced() == 1 ? " part, for which the stock file has no board, by "
                                     : " parts, for which the stock file has no board, by ") +
               yield_words(means.rates.yield);
}

Money total_of(const WoodCost& cost) {
  Money sum;
  for (const CostLine& line : cost.lines)
    sum += line.money;
  return sum;
}

double section_of(const Piece& piece) {
  return lumber::square_metres(lumber::area_of(piece.blank[1], piece.blank[2]));
}

/// The largest piece of wood that is run on it; null where it is no joint, edge or hole.
const Piece* tried_on(const SetupsReport& setups, const Setup& setup) {
  const Piece* largest = nullptr;
  if (setup.step != Step::cut) return largest;
  for (const SetupPiece& each : setup.pieces) {
    const Piece& piece = setups.piece_of(each);
    const bool larger = largest == nullptr || section_of(piece) > section_of(*largest);
    if (piece.matter == Matter::wood && larger) largest = &piece;
  }
  return largest;
}

/// Each borne by the pieces that are run on its set-up.
PartsOfOrder trial_parts(const SetupsReport& setups, Length length) {
  PartsOfOrder trials;
  trials.items = setups.items.size();
  for (const Setup& setup : setups.plan.setups) {
    const Piece* piece = tried_on(setups, setup);
    if (piece == nullptr) continue;
    LumberPart part;
    part.item = "trial " + std::to_string(trials.parts.size());
    part.name = part.item;
    part.material = cut_row_of(*piece, *setups.item_of(setup.pieces.front()).job).material;
    part.finished.length = length;
    part.finished.width = piece->blank[1];
    part.finished.thickness = piece->blank[2];
    Bearing& borne = trials.borne_by[part.item];
    borne.resize(trials.items);
    double run = 0;
    for (const SetupPiece& each : setup.pieces)
      run += static_cast<double>(setups.count_of(each));
    for (const SetupPiece& each : setup.pieces)
      borne[each.of.item] += static_cast<double>(setups.count_of(each)) / run;
    trials.parts.push_back(std::move(part));
  }
  return trials;
}

}  // namespace

WoodCost trial_cost(const SetupsReport& setups, const WoodMeans& means) {
  if (means.rates.trial_piece_mm.value_or(0) == 0) return {};
  const std::optional<StockFile> no_stock;
  constexpr double kThousandths = 1000;
  const std::int64_t length = std::llround(*means.rates.trial_piece_mm * kThousandths);
  PartsOfOrder trials = trial_parts(setups, Length::from_mm_thousandths(length));
  const std::size_t pieces = trials.parts.size();
  WoodCost cost = PlannedWood(std::move(trials), {means.rates, no_stock, means.unit, means.lumber})
                      .by_takings();
  for (CostLine& line : cost.lines)
    line.kind = CostKind::trial;
  for (MissingFigure& each : cost.missing)
    each.what = "trial pieces, " + std::to_string(pieces) + " in all: " + each.what;
  return cost;
}

WoodCost wood_cost(const std::vector<ItemReport>& items, const std::vector<std::int64_t>& counts,
                   std::int64_t times, const WoodMeans& means) {
  const PlannedWood all(parts_of(items, counts, times), means);
  if (!means.stock) {
    WoodCost cost = all.by_takings();
    cost.from = yield_words(means.rates.yield);
    return cost;
  }
  WoodCost cost = all.by_plan(1);
  cost.problems = all.problems();
  if (!cost.problems.empty()) return cost;
  cost.from = times > 1 ? "a cutting plan for all of them" : "a cutting plan";
  if (!all.is_whole()) add_rest(cost, all, means);
  if (times == 1) return cost;
  const PlannedWood one(parts_of(items, counts, 1), means);
  if (!one.is_whole() || !one.can_repeat(times)) return cost;
  WoodCost repeated = one.by_plan(times);
  if (all.is_whole() && total_of(repeated) >= total_of(cost)) return cost;
  repeated.from = "the cutting plan for one, " + std::to_string(times) +
                  " times: it comes to less than a plan for all of them";
  return repeated;
}

}  // namespace haunch
