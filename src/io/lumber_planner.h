// From the parts of an order to plans: which stock each part is made from and how, and a cutting
// plan for each material and thickness.
#pragma once

#include <string>

#include "lumber_report.h"

namespace haunch {

/// Fills in how each part is made, the plans, and what finds no place. With problems in the stock
/// file there are no plans.
void make_plans(LumberReport& report, const LumberWishes& wishes);

/// The boards as a plan takes them.
lumber::Stock stock_of(const StockItem& item, const LumberReport& report);

/// Whether two names mean one wood.
bool same_material(const std::string& a, const std::string& b);

}  // namespace haunch
