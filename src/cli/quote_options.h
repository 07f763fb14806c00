// The options of quote as values.
#pragma once

#include <cstdint>
#include <variant>
#include <vector>

#include "invocation.h"
#include "quote_report.h"

namespace haunch {

struct QuoteOptions {
  QuotePaper paper;
  std::vector<std::int64_t> quantities;
};

/// Of what was written, or what is wrong with it.
std::variant<QuoteOptions, UsageError> quote_options(const QuoteWishes& wishes);

}  // namespace haunch
