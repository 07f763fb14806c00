// What is priced, in words that a customer reads.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "quote_report.h"

namespace haunch {

/// One item of an order.
struct QuotedItem {
  std::string id, name;
  std::int64_t count = 1;
  Triple size;                        // over all: width, height, thickness or depth
  std::string third_size;             // "thick", "deep"
  std::vector<std::string> woods;     // "European oak", "birch plywood (panels)"
  std::vector<std::string> fittings;  // "2 hinges with flaps 100 mm", for one
  std::string finish;                 // "oil, 3 coats"; "none"
  bool finish_is_first = false;       // of the rates file, as the item names none
  bool hung = true;                   // and its fittings fitted
  std::string due;                    // a day, or empty
  std::vector<Caution> cautions;      // that concern who has it
};

QuotedItem told_of(const ItemReport& item, std::int64_t count, const Rates& rates);
std::vector<QuotedItem> items_told(const QuoteVariant& variant, const Rates& rates);

/// Of each item of which a check fails: "side-door: 1 of 196 checks fails: mortise-wall".
std::vector<std::string> failed_checks(const QuoteVariant& variant);

/// "924 x 2054 x 44 mm"
std::string size_words(const QuotedItem& item, const LengthPrinter& lengths);

/// "European oak; birch plywood (panels)"
std::string joined_words(const std::vector<std::string>& words, std::string_view between);

/// Hours to a hundredth: "12.35".
std::string hours_text(double hours);

/// "25 %", "33.33 %"
std::string percent_text(double share);

}  // namespace haunch
