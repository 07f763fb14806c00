#include "lumber_report.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <utility>

#include "lumber_bill.h"
#include "lumber_planner.h"
#include "materials.h"
#include "order_marks.h"
#include "sawn.h"
#include "season.h"

namespace haunch {
namespace {

const StockItem* item_like(const LumberReport& report, const std::string& material,
                           const RoughPart& rough) {
  for (const StockItem& item : report.stock.items)
    if (same_material(item.species, material) && item.thickness.sheet == rough.sheet &&
        item.thickness.thickness == rough.stock_thickness)
      return &item;
  return nullptr;
}

/// "5/4" of an inch yard's usual boards.
std::string quarters_name(Unit unit, const RoughPart& rough) {
  if (unit == Unit::mm) return {};
  const Length quarter = Length::from_inch_parts(1, 4);
  return std::to_string(rough.stock_thickness.steps() / quarter.steps()) + "/4";
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
      if (!report.has_stock && !rough.sheet) fresh.quarters = quarters_name(report.unit, rough);
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

/// Of a set: which leaf it belongs to, or the frame.
std::string side_of(const Piece& piece) {
  constexpr Role kOfLeaf[] = {Role::stile, Role::rail, Role::muntin, Role::panel,
                              Role::glazing_bar};
  if (std::find(std::begin(kOfLeaf), std::end(kOfLeaf), piece.role) == std::end(kOfLeaf))
    return "frame";
  for (const std::string_view side : {"left leaf", "right leaf"})
    if (piece.name.starts_with(side)) return std::string(side);
  return "leaf";
}

}  // namespace

std::vector<LumberPart> lumber_parts(const ItemReport& item) {
  return lumber_parts(item, item.job->quantity);
}

std::vector<LumberPart> lumber_parts(const ItemReport& item, std::int64_t count) {
  std::vector<LumberPart> parts;
  const Job& job = *item.job;
  for (std::int64_t copy = 1; copy <= count; ++copy) {
    const std::string id = one_of_item(job.id, copy, count);
    for (const Piece& piece : item.wood.pieces) {
      LumberPart& part = parts.emplace_back();
      part.name = order_mark(id, piece.mark);
      part.item = id;
      part.label = piece.name;
      part.face = id + (job.kind == "doorset" ? ", " + side_of(piece) : "");
      part.material = material_of(piece, job);
      const Triple sizes = cut_sizes(piece);
      part.finished = {sizes[0], sizes[1], sizes[2], piece.horn};
      part.is_panel = piece.role == Role::panel && piece.matter == Matter::wood;
      part.of_sheet = piece.matter == Matter::board;
      part.quarter_sawn = job.season && job.season->sawn.of(piece.role) == Sawn::quarter;
      part.is_wood = piece.matter != Matter::glass;
    }
  }
  return parts;
}

LumberReport report_lumber(std::vector<LumberPart> parts, std::optional<StockFile> stock, Unit unit,
                           const LumberWishes& wishes) {
  LumberReport report;
  report.unit = unit;
  report.has_stock = stock.has_value();
  report.stock = stock ? std::move(*stock) : usual_stock_file(unit);
  for (LumberPart& part : parts)
    (part.is_wood ? report.parts : report.not_wood).push_back(std::move(part));
  report.money_unit = money_unit_of(report.stock);
  make_plans(report, wishes);
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
  sum.cost = total_of(bill_of(report));
  return sum;
}

StockFile stock_left(const LumberReport& report) {
  constexpr int kMostTaken = 100'000;
  StockFile left = report.stock;
  std::set<std::string> ids;
  for (const StockItem& item : left.items)
    ids.insert(item.id);
  std::map<std::string, int> numbers;  // the last that offcuts of each item were given
  std::vector<StockItem> offcuts;
  for (const MaterialPlan& plan : report.plans) {
    for (const lumber::BoardPlan& board : plan.plan.boards) {
      StockItem& item = left.items[plan.items[board.stock]];
      if (item.count) item.count = *item.count - 1;
      item.taken = std::min(item.taken + 1, kMostTaken);
      for (const lumber::Spot& spot : board.offcuts) {
        StockItem offcut = item;
        int& number = numbers[item.id];
        ++number;
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
