#include "lumber_report.h"

#include <algorithm>
#include <set>
#include <utility>

#include "glue_up.h"
#include "species.h"

namespace haunch {
namespace {

using lumber::StockThickness;
using lumber::ThicknessWay;

std::string lower(std::string text) {
  for (char& c : text)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

bool same_material(const std::string& a, const std::string& b) {
  if (lower(a) == lower(b)) return true;
  const Species* one = find_species(a);
  return one != nullptr && one == find_species(b);
}

/// A name that may mean several species ("beech") is as hard as all of them.
bool is_hardwood(const std::string& material) {
  const Species* species = find_species(material);
  if (species != nullptr) return species->group != "softwood";
  const auto found = search_species(material);
  return !material.empty() && !found.empty() &&
         std::none_of(found.begin(), found.end(),
                      [](const Species* each) { return each->group == "softwood"; });
}

/// One way to make a part: which stock, and its sizes.
struct Way {
  StockThickness thickness;
  RoughPart rough;
};

/// Rough parts are sawn to whole millimetres or sixteenths, upwards.
Length rough_step(Unit unit) {
  return unit == Unit::mm ? Length::from_mm(1) : Length::from_inch_parts(1, 16);
}

/// Works out the ways to make each part, and plans material by material.
class Planner {
 public:
  Planner(LumberReport& report, const LumberWishes& wishes) : report_(report), wishes_(wishes) {}

  void run() {
    for (std::size_t i = 0; i < report_.parts.size(); ++i)
      find_ways(i);
    if (!report_.has_stock || !kerf_is_right()) return;
    while (plan_all()) {
    }
    keep_what_was_chosen();
  }

 private:
  const Sawing& sawing() const { return report_.stock.sawing; }

  // ---- ways

  /// The material that a part is cut from: its own, or the only one there is.
  std::string material_of(const LumberPart& part) const {
    if (!part.material.empty() || report_.stock.items.empty()) return part.material;
    const std::string& first = report_.stock.items.front().species;
    const bool only =
        std::all_of(report_.stock.items.begin(), report_.stock.items.end(),
                    [&](const StockItem& item) { return same_material(item.species, first); });
    return only ? first : part.material;
  }

  std::vector<StockThickness> thicknesses_of(const LumberPart& part) const {
    if (!report_.has_stock && part.of_sheet) return {{part.finished.thickness, true, true}};
    if (!report_.has_stock)
      return lumber::usual_thicknesses(report_.unit, is_hardwood(part.material));
    std::vector<StockThickness> all;
    for (const StockItem& item : report_.stock.items)
      if (same_material(item.species, part.material) && (item.thickness.sheet || !part.of_sheet) &&
          std::find(all.begin(), all.end(), item.thickness) == all.end())
        all.push_back(item.thickness);
    return all;
  }

  Length widest(const std::string& material, const StockThickness& thickness) const {
    if (!report_.has_stock) return Length::from_mm(1'000'000);
    Length widest;
    for (const StockItem& item : report_.stock.items)
      if (same_material(item.species, material) && item.thickness == thickness)
        widest = std::max(widest, item.width - item.edge_trim.value_or(sawing().edge_trim) * 2);
    return widest;
  }

  void find_ways(std::size_t index) {
    LumberPart& part = report_.parts[index];
    part.material = material_of(part);
    const auto thicknesses = thicknesses_of(part);
    std::vector<Way> ways;
    for (const ThicknessWay& way : lumber::ways_to_thickness(part.finished.thickness, thicknesses,
                                                             sawing().allowances.face)) {
      const StockThickness& stock = thicknesses[way.stock];
      if (const auto rough = rough_of(part, way, stock)) ways.push_back({stock, *rough});
    }
    report_.rough.push_back(ways.empty() ? std::nullopt : std::optional(ways.front().rough));
    if (ways.empty()) refuse(index, nothing_thick_enough(part, thicknesses));
    ways_.push_back(std::move(ways));
    chosen_.push_back(0);
    first_lack_.emplace_back();
  }

  std::optional<RoughPart> rough_of(const LumberPart& part, const ThicknessWay& way,
                                    const StockThickness& stock) const {
    RoughPart rough;
    rough.stock_thickness = stock.thickness;
    rough.sheet = stock.sheet;
    rough.layers = way.layers;
    rough.glue_lines = way.glue_lines;
    const lumber::Allowances none;
    const lumber::Allowances& allowances = stock.sheet ? none : sawing().allowances;
    rough.length = lumber::rough_length(part.finished, allowances);
    rough.width = lumber::rough_width(part.finished, allowances);
    if (stock.sheet) return rough;
    rough.length = -floor_multiple(-rough.length, rough_step(report_.unit));
    rough.width = -floor_multiple(-rough.width, rough_step(report_.unit));
    const Length widest_stock = widest(part.material, stock);
    const bool limited = part.is_panel && rough.width > sawing().strip_limit;
    if (!limited && rough.width <= widest_stock) return rough;
    const lumber::StripRule rule{limited ? sawing().strip_limit : rough.width, sawing().jointing,
                                 rough_step(report_.unit)};
    const auto strips = lumber::strips_for(rough.width, rule, widest_stock);
    if (!strips) return {};
    rough.strips = strips->count;
    rough.width = strips->width;
    return rough;
  }

  std::string nothing_thick_enough(const LumberPart& part,
                                   const std::vector<StockThickness>& thicknesses) const {
    const std::string wood = part.material.empty() ? "its species is not told; of that the stock"
                                                   : "of " + part.material + " the stock";
    const Length step = rough_step(report_.unit);
    const auto up = [&](Length size) {
      return in_words(-floor_multiple(-size, step), report_.unit);
    };
    if (part.of_sheet)
      return wood + " holds no sheet as thick; would do: " +
             in_words(part.finished.thickness, report_.unit) + ", " +
             in_words(part.finished.length, report_.unit) + " x " +
             in_words(part.finished.width, report_.unit);
    const lumber::Allowances& allowances = sawing().allowances;
    const std::string would = "; would do: " + up(part.finished.thickness + allowances.face * 2) +
                              " rough, " + up(lumber::rough_length(part.finished, allowances)) +
                              " x " + up(lumber::rough_width(part.finished, allowances));
    if (thicknesses.empty()) return wood + " holds none" + would;
    return wood + " holds none thick enough, laminated from three neither" + would;
  }

  void refuse(std::size_t part, std::string why) {
    report_.unplaced.push_back({part, std::move(why)});
  }

  bool kerf_is_right() {
    for (std::size_t i = 0; i < report_.parts.size(); ++i) {
      if (!report_.rough[i]) continue;
      const Length least = std::min(report_.rough[i]->length, report_.rough[i]->width);
      if (least > sawing().kerf) continue;
      report_.problems.push_back({"/kerf",
                                  in_words(sawing().kerf, report_.unit) + " is as wide as part " +
                                      report_.parts[i].name + " or wider, which is " +
                                      in_words(least, report_.unit) +
                                      " rough; a saw takes less than what it cuts",
                                  {}});
      return false;
    }
    return true;
  }

  // ---- plans

  MaterialPlan& plan_for(const std::string& material, const StockThickness& thickness) {
    for (MaterialPlan& plan : report_.plans)
      if (plan.thickness == thickness && same_material(plan.material, material)) return plan;
    MaterialPlan plan;
    plan.material = material;
    plan.thickness = thickness;
    for (std::size_t i = 0; i < report_.stock.items.size(); ++i) {
      const StockItem& item = report_.stock.items[i];
      if (item.thickness != thickness || !same_material(item.species, material)) continue;
      plan.items.push_back(i);
      plan.order.stock.push_back(stock_of(item));
    }
    plan.order.saw = {sawing().kerf, sawing().offcut_length, sawing().offcut_width, true};
    plan.order.stages = wishes_.stages;
    plan.order.prefer = wishes_.prefer;
    plan.order.effort = wishes_.effort;
    plan.order.seed = wishes_.seed;
    report_.plans.push_back(std::move(plan));
    return report_.plans.back();
  }

  lumber::Stock stock_of(const StockItem& item) const {
    lumber::Stock stock;
    stock.id = item.id;
    stock.length = item.length;
    stock.width = item.width;
    if (item.count) stock.count = *item.count;
    stock.bought = item.price.has_value();
    stock.cost = cost_of(item);
    stock.end_trim = item.end_trim.value_or(sawing().end_trim);
    stock.edge_trim = item.edge_trim.value_or(sawing().edge_trim);
    stock.grain = item.grain;
    stock.defects = item.defects;
    return stock;
  }

  void add_pieces(std::size_t index) {
    const Way& way = ways_[index][chosen_[index]];
    const LumberPart& part = report_.parts[index];
    MaterialPlan& plan = plan_for(part.material, way.thickness);
    const std::size_t of = way.rough.pieces();
    for (std::size_t number = 1; number <= of; ++number) {
      lumber::Want want;
      want.name = part.name;
      want.length = way.rough.length;
      want.width = way.rough.width;
      if (of > 1)
        want.group = part.name;
      else if (sawing().match)
        want.group = part.item;
      plan.pieces.push_back({index, number, of});
      plan.order.wants.push_back(std::move(want));
    }
  }

  /// Plans all; true when a part went over to other stock, so that it is to be planned again.
  bool plan_all() {
    std::vector<MaterialPlan> before = std::move(report_.plans);
    report_.plans.clear();
    for (std::size_t i = 0; i < report_.parts.size(); ++i)
      if (chosen_[i] < ways_[i].size()) add_pieces(i);
    bool again = false;
    for (MaterialPlan& plan : report_.plans) {
      take_plan(plan, before);
      again = move_on(plan) || again;
    }
    return again;
  }

  /// The plan for this order: of the round before, where nothing has changed in it.
  static void take_plan(MaterialPlan& plan, std::vector<MaterialPlan>& before) {
    const auto same = std::find_if(before.begin(), before.end(), [&](const MaterialPlan& it) {
      return it.thickness == plan.thickness && same_material(it.material, plan.material) &&
             std::equal(it.pieces.begin(), it.pieces.end(), plan.pieces.begin(), plan.pieces.end(),
                        [](const LumberPiece& a, const LumberPiece& b) {
                          return a.part == b.part && a.number == b.number && a.of == b.of;
                        });
    });
    plan.plan = same != before.end() ? std::move(same->plan) : lumber::plan_cutting(plan.order);
  }

  /// Parts that lack stock try the next that would do; those that have none left are told.
  bool move_on(const MaterialPlan& plan) {
    std::set<std::size_t> moved;
    for (const lumber::Unplaced& each : plan.plan.unplaced) {
      const std::size_t part = plan.pieces[each.want].part;
      if (!moved.insert(part).second) continue;
      if (first_lack_[part].empty()) first_lack_[part] = lack_words(plan, each);
      if (++chosen_[part] == ways_[part].size()) refuse(part, first_lack_[part]);
    }
    return !moved.empty();
  }

  std::string lack_words(const MaterialPlan& plan, const lumber::Unplaced& lack) const {
    const std::string would = "; would do: " + in_words(lack.stock_length, report_.unit) + " x " +
                              in_words(lack.stock_width, report_.unit) + ", " +
                              in_words(plan.thickness.thickness, report_.unit) + " thick";
    if (lack.why == lumber::Lack::size) return "fits none of the stock" + would;
    std::string count;
    if (const auto& shortage = plan.plan.shortage) {
      if (shortage->kind == lumber::Shortage::Kind::pieces)
        count = " (of this size " + std::to_string(shortage->wanted) +
                " are wanted, the stock yields at most " + std::to_string(shortage->at_most) + ")";
      else if (shortage->kind == lumber::Shortage::Kind::area)
        count = " (the parts are larger than all of it)";
    }
    return "the stock ran out" + count + would;
  }

  void keep_what_was_chosen() {
    for (std::size_t i = 0; i < report_.parts.size(); ++i)
      if (chosen_[i] < ways_[i].size()) report_.rough[i] = ways_[i][chosen_[i]].rough;
    std::sort(report_.unplaced.begin(), report_.unplaced.end(),
              [](const UnplacedPart& a, const UnplacedPart& b) { return a.part < b.part; });
  }

  LumberReport& report_;
  const LumberWishes& wishes_;
  std::vector<std::vector<Way>> ways_;   // of each part
  std::vector<std::size_t> chosen_;      // of them; past the end: none
  std::vector<std::string> first_lack_;  // why the best way did not do
};

const StockItem* item_like(const LumberReport& report, const std::string& material,
                           const RoughPart& rough) {
  for (const StockItem& item : report.stock.items)
    if (same_material(item.species, material) && item.thickness.sheet == rough.sheet &&
        item.thickness.thickness == rough.stock_thickness)
      return &item;
  return nullptr;
}

void take_off(LumberReport& report) {
  for (std::size_t i = 0; i < report.parts.size(); ++i) {
    if (!report.rough[i]) continue;
    const RoughPart& rough = *report.rough[i];
    const std::string& material = report.parts[i].material;
    auto row = std::find_if(report.takings.begin(), report.takings.end(), [&](const TakingRow& it) {
      return it.thickness == rough.stock_thickness && it.sheet == rough.sheet &&
             same_material(it.material, material);
    });
    if (row == report.takings.end()) {
      TakingRow fresh{material, rough.stock_thickness, rough.stock_thickness, rough.sheet, {}, {},
                      {}};
      if (const StockItem* item = item_like(report, material, rough)) {
        fresh.nominal = item->nominal;
        fresh.quarters = item->quarters;
        if (rough.sheet) fresh.sheet_area = lumber::area_of(item->length, item->width);
      }
      row = report.takings.insert(row, fresh);
    }
    for (std::size_t piece = 0; piece < rough.pieces(); ++piece)
      row->taking.add(rough.length, rough.width);
  }
  std::stable_sort(report.takings.begin(), report.takings.end(),
                   [](const TakingRow& a, const TakingRow& b) {
                     return std::pair(a.material, a.thickness) < std::pair(b.material, b.thickness);
                   });
}

}  // namespace

std::vector<LumberPart> lumber_parts(const ItemReport& item) {
  std::vector<LumberPart> parts;
  const Job& job = *item.job;
  for (int copy = 1; copy <= job.quantity; ++copy) {
    const std::string id = job.quantity == 1 ? job.id : job.id + "#" + std::to_string(copy);
    for (const Piece& piece : item.wood.pieces)
      parts.push_back({id + "/" + piece.mark,
                       id,
                       piece.name,
                       material_of(piece, job),
                       {piece.blank[0], piece.blank[1], piece.blank[2], piece.horn},
                       piece.role == "panel" && piece.matter == Matter::wood,
                       piece.matter == Matter::board});
  }
  return parts;
}

LumberReport report_lumber(std::vector<LumberPart> parts, std::optional<StockFile> stock, Unit unit,
                           const LumberWishes& wishes) {
  LumberReport report;
  report.unit = unit;
  report.has_stock = stock.has_value();
  report.stock = stock ? std::move(*stock) : usual_stock_file(unit);
  report.parts = std::move(parts);
  Planner(report, wishes).run();
  take_off(report);
  return report;
}

std::int64_t number_of(const StockItem& item, const lumber::BoardPlan& board) {
  return item.taken + board.copy + 1;
}

lumber::Totals totals_of(const LumberReport& report) {
  lumber::Totals sum;
  for (const MaterialPlan& plan : report.plans) {
    const lumber::Totals& each = plan.plan.totals;
    sum.cost += each.cost;
    sum.boards += each.boards;
    sum.boards_bought += each.boards_bought;
    sum.area_bought += each.area_bought;
    sum.area_used += each.area_used;
    sum.parts += each.parts;
    sum.kerf += each.kerf;
    sum.trim += each.trim;
    sum.offcuts += each.offcuts;
    sum.scrap += each.scrap;
  }
  return sum;
}

lumber::Bounds bounds_of(const LumberReport& report) {
  lumber::Bounds sum;
  sum.measure = lumber::Measure::square_mm;
  for (const MaterialPlan& plan : report.plans)
    if (plan.plan.bounds.measure != lumber::Measure::square_mm)
      sum.measure = plan.plan.bounds.measure;
  sum.linear = 0;
  for (const MaterialPlan& plan : report.plans) {
    const lumber::Bounds& each = plan.plan.bounds;
    if (each.measure != sum.measure) continue;
    sum.plan += each.plan;
    sum.area += each.area;
    sum.whole_boards += each.whole_boards;
    sum.linear =
        sum.linear && each.linear ? std::optional(*sum.linear + *each.linear) : std::nullopt;
    sum.best += each.best;
    sum.boards_above += each.boards_above;
  }
  sum.proven = sum.plan == sum.best;
  return sum;
}

StockFile stock_left(const LumberReport& report) {
  constexpr int kMostTaken = 100'000;
  StockFile left = report.stock;
  std::set<std::string> ids;
  for (const StockItem& item : left.items)
    ids.insert(item.id);
  std::vector<StockItem> offcuts;
  for (const MaterialPlan& plan : report.plans) {
    for (const lumber::BoardPlan& board : plan.plan.boards) {
      StockItem& item = left.items[plan.items[board.stock]];
      if (item.count) item.count = *item.count - 1;
      item.taken = std::min(item.taken + 1, kMostTaken);
      for (const lumber::Spot& spot : board.offcuts) {
        StockItem offcut = item;
        int number = 1;
        while (!ids.insert(item.id + "." + std::to_string(number)).second)
          ++number;
        offcut.id = item.id + "." + std::to_string(number);
        offcut.length = spot.length;
        offcut.width = spot.width;
        offcut.widest.reset();
        offcut.price.reset();
        offcut.defects.clear();
        offcut.count = 1;
        offcut.taken = 0;
        offcut.end_trim = offcut.edge_trim = Length();  // its sides are sawn
        offcuts.push_back(std::move(offcut));
      }
    }
  }
  std::erase_if(left.items, [](const StockItem& item) { return item.count == 0; });
  left.items.insert(left.items.end(), offcuts.begin(), offcuts.end());
  return left;
}

}  // namespace haunch
