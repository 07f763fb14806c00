// Stock files: what is in the rack, what the yard sells, and how the shop saws.
//
//   {"units": "mm", "currency": "EUR", "kerf": 3.2, "trim": {"end": 20, "edge": 3},
//    "least_offcut": {"length": 300, "width": 60},
//    "allowances": {"length": 25, "width": 6, "face": 2.5},
//    "glue_up": {"limit": 150, "jointing": 3}, "waste": {"percent": 30, "of": "bought"},
//    "match": true,
//    "stock": [
//      {"id": "rack-1", "length": 3000, "width": 180, "thickness": 54, "species": "European oak",
//       "count": 2, "defects": [[1200, 1350]]},
//      {"id": "yard-54", "length": 4000, "width": {"from": 150, "to": 250}, "thickness": 54,
//       "species": "European oak", "price": 1850, "per": "cubic_metre"},
//      {"id": "ply-18", "kind": "sheet", "length": 2440, "width": 1220, "thickness": 18,
//       "species": "birch plywood", "price": 62, "per": "board"}]}
//
// What has a price is for sale, the rest in hand. Of CSV the rows are what "stock" lists, the
// columns its keys; lengths carry their unit in the header ("length_mm"). Above the header there
// may be rows of two fields, a setting and its value ("trim.end_mm", 20).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cutting.h"
#include "document.h"
#include "exact.h"
#include "kind.h"
#include "rough.h"
#include "takings_off.h"

namespace haunch {

enum class Per : unsigned char { board, board_foot, cubic_metre, metre, square_metre };

template <>
inline constexpr std::string_view kWords<Per>[] = {"board", "board_foot", "cubic_metre", "metre",
                                                   "square_metre"};

struct Price {
  std::int64_t ten_thousandths = 0;
  Per per = Per::board;
};

/// Boards or sheets of one kind.
struct StockItem {
  std::string id;
  std::string species;
  Length length;
  Length width;                  // of random widths the least
  std::optional<Length> widest;  // of random widths
  lumber::StockThickness thickness;
  Length nominal;            // as the trade counts it: of a quarter the rough thickness
  std::string quarters;      // "5/4" where it was written so
  std::optional<int> count;  // empty: as many as wanted
  int taken = 0;             // by earlier plans, no more among `count`; numbers go on from there
  std::optional<Price> price;
  bool grain = true;
  std::vector<lumber::Defect> defects;
  std::optional<Length> end_trim, edge_trim;  // of its own
};

/// How much one is in the unit of its price; of random widths at the middle one. It has a price.
lumber::Exact measure_of(const StockItem& item);

/// What one comes to; of random widths at the middle one. In hand it is nothing.
lumber::Exact cost_of(const StockItem& item);

/// How the shop saws.
struct Sawing {
  Length kerf, end_trim, edge_trim;
  Length offcut_length, offcut_width;
  lumber::Allowances allowances;
  Length strip_limit, jointing;
  lumber::WasteRule waste;
  bool match = false;  // parts of one item from one board where they can
};

struct StockFile {
  Unit unit = Unit::mm;
  std::string currency;
  Sawing sawing;
  std::vector<Assumed> assumed;
  std::vector<StockItem> items;
  std::optional<std::uint32_t> kerf_offset;  // in CSV, where it says
};

struct StockReading {
  std::optional<StockFile> file;  // nothing with problems
  std::vector<Problem> problems;
};

/// What is assumed of a shop that says nothing.
StockFile usual_stock_file(Unit unit);

/// Bare numbers are in `units` where the document does not say.
StockReading read_stock(const Value& document, std::optional<Unit> units = {});

/// What a stock file may say, and what a board or sheet may say of itself.
const std::vector<std::string_view>& stock_file_keys();
const std::vector<std::string_view>& stock_item_keys();

/// The same of CSV; offsets are in `text`.
StockReading read_stock_csv(std::string_view text);

/// A stock file as JSON, in its own unit. Reads back as the same.
std::string stock_text(const StockFile& file);

}  // namespace haunch
