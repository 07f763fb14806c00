// Lumber for an order: rough sizes, what it takes, and the cutting plan. What tables, JSON and CSV
// are views of.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cutting.h"
#include "exact.h"
#include "report.h"
#include "stock_file.h"

namespace haunch {

/// One finished part of one item.
struct LumberPart {
  std::string name;      // "side-door/A", "flour-bin#2/A" of several
  std::string item;      // "side-door", "flour-bin#2"
  std::string label;     // "left stile"
  std::string face;      // whose show face it is on: "side-door", "flour-loft, left leaf"
  std::string material;  // a species or kind of sheet; empty: not told
  lumber::FinishedPart finished;
  bool is_panel = false;  // of solid wood, and so glued up of strips
  bool of_sheet = false;  // used as thick as the sheet is
  bool quarter_sawn = false;
  bool is_wood = true;
  bool is_rough = false;  // its sizes are those to be sawn; nothing is added
};

/// The parts of an item, as often as it is made, or `count` times.
std::vector<LumberPart> lumber_parts(const ItemReport& item);
std::vector<LumberPart> lumber_parts(const ItemReport& item, std::int64_t count);

/// How a part is made from stock.
struct RoughPart {
  Length length, width;  // of each piece
  Length stock_thickness;
  bool sheet = false;
  int layers = 1;
  std::vector<Length> glue_lines;  // from the face side
  std::size_t strips = 1;          // of each layer
  bool thicker = false;            // thinner stock would do, but lacks or does worse

  std::size_t pieces() const { return strips * static_cast<std::size_t>(layers); }
};

/// One piece that is cut out of a board.
struct LumberPiece {
  std::size_t part = 0;    // index into LumberReport::parts
  std::size_t number = 1;  // of `of`
  std::size_t of = 1;
};

/// The plan for one material in one thickness.
struct MaterialPlan {
  std::string material;
  lumber::StockThickness thickness;
  std::vector<std::size_t> items;   // of the stock file, for CuttingOrder::stock
  std::vector<LumberPiece> pieces;  // for CuttingOrder::wants
  lumber::CuttingOrder order;
  lumber::Plan plan;
};

/// How far plans can be from the best: those of one wood whose parts could be made from the stock
/// of another of them too.
struct PlansBound {
  std::vector<std::size_t> plans;  // indices into LumberReport::plans
  bool any_choice = false;         // some part could be made another way
  lumber::Bounds bounds;           // hold for every way of making the parts that are placed
  std::int64_t as_made = 0;        // no less than the bound: for the ways that the plans took
};

struct UnplacedPart {
  std::size_t part = 0;
  std::string why;  // and what would do
};

/// What one material and thickness comes to, rough.
struct TakingRow {
  std::string material;
  Length thickness, nominal;
  bool sheet = false;
  std::string quarters;
  lumber::Taking taking;
  std::optional<lumber::Area> sheet_area;  // of one
};

struct LumberReport {
  Unit unit = Unit::mm;
  bool has_stock = false;
  StockFile stock;                              // without one, what is assumed
  std::vector<LumberPart> parts;                // of wood, and sheets
  std::vector<LumberPart> not_wood;             // glass and the like: nothing is planned for them
  std::vector<std::optional<RoughPart>> rough;  // of each part; nothing where no stock would do
  lumber::Exact money_unit = lumber::Exact::of(1);  // what money counts in that plans hold
  std::vector<MaterialPlan> plans;
  std::vector<PlansBound> bounds;
  std::vector<UnplacedPart> unplaced;
  std::vector<TakingRow> takings;
  std::vector<Problem> problems;  // in the stock file; then there is no plan
};

struct LumberWishes {
  lumber::Stages stages = lumber::Stages::any_three;
  lumber::Prefer prefer = lumber::Prefer::cost;
  int effort = 1;
  std::uint64_t seed = 1;
};

LumberReport report_lumber(std::vector<LumberPart> parts, std::optional<StockFile> stock, Unit unit,
                           const LumberWishes& wishes);

/// Which of the boards of its kind it is: 1, 2 …, those that earlier plans took counted.
std::int64_t number_of(const StockItem& item, const lumber::BoardPlan& board);

/// The sums of all plans. used = parts + kerf + trim + offcuts + scrap. Its cost is that of the
/// bill (lumber_bill.h).
lumber::Totals totals_of(const LumberReport& report);

/// The stock as it is when the plan is carried out: offcuts kept are boards in hand.
StockFile stock_left(const LumberReport& report);

}  // namespace haunch
