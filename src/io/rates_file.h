// Rates files: what a shop's hours and goods cost it, and how long it takes over its work.
//
//   {"currency": "EUR", "wage": 21.5, "burden": 0.32, "billable": 0.7,
//    "overhead": {"per_hour": 14}, "margin": 0.25, "tax": [{"what": "VAT", "share": 0.2}],
//    "operations": {"mortise": {"setup_min": 12, "joint_min": 2.5}, "sand": {"square_metre_min":
//    9}}, "finish": {"oil": {"coats": 3, "square_metre_min": 6, "hours_between": 12}}, "fittings":
//    {"hinges": {"price": 9.5, "per": "piece"}}, "yield": {"share": 0.7, "of": "bought"}, "work":
//    [{"what": "survey", "minutes": 60, "per": "order"}]}
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "rates.h"

namespace haunch {

/// The objects that a rates file is made of.
enum class RatesObject : unsigned char {
  whole,
  operation,
  work,
  finish,
  goods,
  overhead,
  markup,
  tax,
  rounding,
  yield
};

/// The keys that each of them may have.
const std::vector<std::string_view>& rates_keys(RatesObject object);

struct RatesReading {
  std::optional<Rates> rates;  // nothing with problems
  std::vector<Problem> problems;
};

/// As strictly as a spec: what is not known of, has no unit or cannot be is a problem.
RatesReading read_rates(const Value& document);

/// Work that is no cut, as an item of an order has it under "work".
struct WorkReading {
  std::vector<OtherWork> work;
  std::vector<Problem> problems;  // at "/work"
};
WorkReading read_other_work(const Value& list, const Rates& rates);

/// A rates file as JSON. Reads back as the same.
std::string rates_text(const Rates& rates);

}  // namespace haunch
