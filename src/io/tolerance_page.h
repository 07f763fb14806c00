// Fits by tolerance, as a page of the sheet.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "page_part.h"
#include "text_table.h"
#include "tolerance.h"

namespace haunch {

/// Joints of one kind that a forecast leaves out, and why.
struct LeftOut {
  JointKind kind;
  std::string_view plural, why;
  std::vector<std::size_t> joints;
};

/// Those kinds of which there are any.
std::vector<LeftOut> left_out_of(const Assembly& wood, const FitForecast& forecast);

PageParts tolerance_page(const Assembly& wood, const FitForecast& forecast,
                         const LengthPrinter& lengths);

}  // namespace haunch
