#include "rates.h"

#include <algorithm>
#include <cmath>

#include "student.h"

namespace haunch {
namespace {

/// The first that is called by the name, else by the name with its last word taken off, and so on.
template <class Named>
const Named* called(const std::vector<Named>& all, std::string_view name, char between) {
  while (!name.empty()) {
    const auto its =
        std::find_if(all.begin(), all.end(), [&](const Named& it) { return it.name == name; });
    if (its != all.end()) return &*its;
    const std::size_t end = name.rfind(between);
    name = end == std::string_view::npos ? std::string_view() : name.substr(0, end);
  }
  return nullptr;
}

}  // namespace

std::optional<RateRange> range_of(const Backing& backing) {
  if (backing.timed < 2) return {};
  const double reach = student_t(kNineOfTen, backing.timed - 1) * backing.spread /
                       std::sqrt(static_cast<double>(backing.timed));
  return RateRange{std::min(1.0, backing.middle * std::exp(-reach)),
                   std::max(1.0, backing.middle * std::exp(reach))};
}

double Rates::wage_of(std::string_view trade) const {
  const auto its =
      std::find_if(trades.begin(), trades.end(), [&](const Trade& it) { return it.name == trade; });
  return its == trades.end() ? wage.value_or(0) : its->wage;
}

std::optional<double> Rates::labour_hour(std::string_view trade) const {
  if (billable == 0) return {};
  return wage_of(trade) * (1 + burden) / billable;
}

const Finish* Rates::finish_called(std::string_view name) const {
  const auto its =
      std::find_if(finish.begin(), finish.end(), [&](const Finish& it) { return it.name == name; });
  return its == finish.end() ? nullptr : &*its;
}

const OperationRate* rate_of(const Rates& rates, std::string_view operation) {
  return called(rates.operations, operation, '-');
}

const Goods* goods_called(const std::vector<Goods>& goods, std::string_view name) {
  return called(goods, name, ' ');
}

}  // namespace haunch
