// What is worked along edges: grooves, rebates, mouldings and raises, and the panels in them.
#pragma once

#include <string>

#include "making.h"
#include "text_table.h"

namespace haunch {

/// Whether panels lie in rebates instead of grooves.
bool has_rebated_edges(const Assembly& wood);

// Each is empty where there are none.
std::string groove_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);
/// Rebates along the edges of a frame's members, in which panels lie.
std::string edge_rebate_page(const Assembly& wood, const Making& making,
                             const LengthPrinter& lengths);
std::string moulding_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);
/// Where mouldings are cut away for shoulders, from sight line to sight line or to the end.
std::string moulding_mitre_page(const Assembly& wood, const Making& making,
                                const LengthPrinter& lengths);
/// Rebates of panels.
std::string rebate_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);
std::string raise_page(const Assembly& wood, const Making& making, const LengthPrinter& lengths);
std::string panel_page(const Assembly& wood, const LengthPrinter& lengths);

}  // namespace haunch
