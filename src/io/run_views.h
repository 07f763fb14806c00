// A run before the wall that it stands along: its elevation, its plan, and in which order it is
// fixed there.
#pragma once

#include <string>
#include <vector>

#include "along_wall.h"
#include "drawn_wood.h"
#include "report.h"
#include "text_table.h"
#include "whole_views.h"

namespace haunch {

/// What it is made of outlives it.
class RunViews {
 public:
  RunViews(const ItemReport& item, const AlongWall& wall, const std::vector<DrawnWood>& woods,
           const LengthPrinter& lengths);

  /// The elevation, then the plan.
  std::vector<WholeView> at_scale(PaperScale scale) const;

 private:
  const ItemReport& item_;
  const AlongWall& wall_;
  const LengthPrinter& lengths_;
  LineView front_, above_;
};

/// What is done first, and what is packed below each cabinet, in that order.
std::vector<std::string> fixing_words(const ItemReport& item, const AlongWall& wall,
                                      const LengthPrinter& lengths);

}  // namespace haunch
