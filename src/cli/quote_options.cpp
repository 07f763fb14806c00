#include "quote_options.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <set>

#include "day.h"
#include "quote_goods.h"

namespace haunch {
namespace {

constexpr std::int64_t kMostOfOne = 100'000;
constexpr std::size_t kMostListed = 20;

/// "1,4,20" in its parts.
std::vector<std::string> listed(const std::string& text) {
  std::vector<std::string> parts;
  std::size_t start = 0;
  for (std::size_t comma = 0; comma != std::string::npos; start = comma + 1) {
    comma = text.find(',', start);
    parts.push_back(text.substr(start, comma - start));
  }
  return parts;
}

/// The whole of a text as a number that is written in figures.
template <typename Number>
std::optional<Number> number_of(const std::string& text) {
  Number number{};
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, number);
  const bool figures = text.find_first_not_of("0123456789.") == std::string::npos;
  return read.ec == std::errc() && read.ptr == end && figures ? std::optional(number)
                                                              : std::nullopt;
}

std::optional<UsageError> take_quantities(const std::string& text, QuoteOptions& options) {
  std::set<std::int64_t> taken;
  for (const std::string& part : listed(text)) {
    const auto quantity = number_of<std::int64_t>(part);
    if (!quantity || *quantity < 1 || *quantity > kMostOfOne || taken.size() == kMostListed)
      return UsageError{"--quantity: \"" + text + "\" is no list of up to " +
                        std::to_string(kMostListed) + " whole numbers from 1 to " +
                        std::to_string(kMostOfOne) + "; write 1,4,20"};
    if (taken.insert(*quantity).second) options.quantities.push_back(*quantity);
  }
  return {};
}

std::optional<UsageError> take_stages(const std::string& text, QuoteOptions& options) {
  constexpr double kWhole = 100, kRounding = 1e-9;
  double sum = 0;
  for (const std::string& part : listed(text)) {
    const auto percent = number_of<double>(part);
    if (!percent || *percent <= 0 || options.paper.stages.size() == kMostListed)
      return UsageError{"--stages: \"" + text + "\" is no list of up to " +
                        std::to_string(kMostListed) + " shares in percent; write 40,50,10"};
    options.paper.stages.push_back(*percent);
    sum += *percent;
  }
  if (std::abs(sum - kWhole) < kRounding) return {};
  return UsageError{"--stages: " + text + " comes to " + figure_text(sum, 4) +
                    " percent; the shares of a price come to 100"};
}

std::optional<UsageError> take_paper(const QuoteWishes& wishes, QuotePaper& paper) {
  paper.for_customer = wishes.audience == "customer" || !wishes.as.empty();
  paper.is_invoice = !wishes.as.empty();
  paper.number = wishes.number;
  if (!wishes.date.empty()) {
    paper.date = day_of(wishes.date);
    if (!paper.date)
      return UsageError{"--date: \"" + wishes.date +
                        "\" is no day; write year, month and day: 2031-05-17"};
  }
  if (!paper.is_invoice)
    return wishes.number.empty() ? std::nullopt
                                 : std::optional(UsageError{"--number: goes with --as invoice"});
  if (wishes.audience == "shop")
    return UsageError{"--as invoice: is a customer's paper; leave --for shop out"};
  if (wishes.number.empty() || !paper.date)
    return UsageError{"--as invoice: wants --number N and --date D, which a bill bears"};
  if (!wishes.quantity.empty() || !wishes.variants.empty())
    return UsageError{
        "--as invoice: bills one order as it is; leave --quantity and --variants out"};
  return {};
}

}  // namespace

std::variant<QuoteOptions, UsageError> quote_options(const QuoteWishes& wishes) {
  QuoteOptions options;
  if (!wishes.quantity.empty())
    if (auto error = take_quantities(wishes.quantity, options)) return *error;
  if (!wishes.stages.empty())
    if (auto error = take_stages(wishes.stages, options)) return *error;
  if (auto error = take_paper(wishes, options.paper)) return *error;
  return options;
}

}  // namespace haunch
