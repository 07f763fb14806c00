// What an order costs, line by line: each is rounded once to the hundredth, and all sums are those
// of the lines as they are printed.
#pragma once

#include <cstdint>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "hours.h"
#include "money.h"
#include "rates.h"

namespace haunch {

/// What a line is for, in the order in which they stand.
enum class CostKind : unsigned char {
  labour,
  machine,
  wood,
  trial,  // wood of trial pieces
  sheet,
  edge_strip,
  glass,
  fittings,
  finish,
  bought_in,
  overhead,
  contingency
};

template <>
inline constexpr std::string_view kWords<CostKind>[] = {
    "labour", "machine",  "wood",   "trial pieces", "sheet",    "edge strip",
    "glass",  "fittings", "finish", "bought-in",    "overhead", "contingency"};
static_assert(std::size(kWords<CostKind>) == static_cast<std::size_t>(CostKind::contingency) + 1);

/// Several kinds together.
enum class CostGroup : unsigned char {
  labour,
  material,
  fittings,
  finish,
  bought_in,
  machine,
  overhead,
  contingency
};

template <>
inline constexpr std::string_view kWords<CostGroup>[] = {
    "labour", "material", "fittings", "finish", "bought_in", "machine", "overhead", "contingency"};
static_assert(std::size(kWords<CostGroup>) == static_cast<std::size_t>(CostGroup::contingency) + 1);

CostGroup group_of(CostKind kind);

/// What each item of an order bears of a line, as parts of any whole.
using Bearing = std::vector<double>;

struct CostLine {
  CostKind kind = CostKind::labour;
  std::string what;   // "bench", "yard-54: 4200 x 320 x 54 of European oak"
  double amount = 0;  // in `unit`
  std::string unit;   // "h", "m3", "boards"; empty: a share of what is above
  std::string rate;   // for one of it, in words: "43.33"
  Money money;
  Bearing borne;  // by the items of the order
};

/// A figure that nobody gave, without which a cost is too low.
struct MissingFigure {
  std::string what;    // "European oak, 27 mm thick: 0.031 m3"
  std::string remedy;  // "give its price in \"wood\" of the rates file, or --stock"
};

struct Cost {
  std::vector<CostLine> lines;  // by kind
  std::vector<MissingFigure> missing;

  Money total() const;
  Money of(CostGroup group) const;
  bool has(CostGroup group) const;
};

/// A line of so much of something, at so much for one, from a price that is not rounded.
CostLine line_of(CostKind kind, std::string what, double amount, std::string unit, double for_one,
                 Bearing borne);

/// Hands, by trade, and machines: all hours of an order of so many items. Requires every trade to
/// have a wage and hours that can be billed.
std::vector<CostLine> work_lines(const HoursPlan& hours, const Rates& rates, std::size_t items);

/// What each item bears of the hours.
Bearing bearing_of_hours(const HoursPlan& hours, std::size_t items);

/// Puts overhead and contingency to the lines that are all else, these by their kind.
void add_overhead(Cost& cost, const HoursPlan& hours, const Rates& rates, std::size_t items);

/// What every item bears of all lines, each to the hundredth; together they are the total. Every
/// line is shared out by itself, as it is borne (shares.h).
std::vector<Money> borne_by_items(const Cost& cost, std::size_t items);

}  // namespace haunch
