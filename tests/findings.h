// What the checks find in a work, for tests.
#pragma once

#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "checks.h"
#include "seasons.h"

namespace haunch::test {

inline std::vector<Finding> findings(const Assembly& wood, std::string_view check) {
  std::vector<Finding> found;
  for (const Finding& it : check_assembly(wood, Unit::mm))
    if (it.rule->check == check) found.push_back(it);
  return found;
}

/// One of them, the first unless said; throws where there are not so many.
inline Finding finding(const Assembly& wood, std::string_view check, std::size_t which = 0) {
  const std::vector<Finding> found = findings(wood, check);
  if (which >= found.size()) throw std::invalid_argument("no check: " + std::string(check));
  return found[which];
}

/// The checks that are not well, in their order.
inline std::vector<std::string> doubted(const Assembly& wood) {
  std::vector<std::string> checks;
  for (const Finding& it : check_assembly(wood, Unit::mm))
    if (it.status != Status::ok) checks.emplace_back(it.rule->check);
  return checks;
}

inline std::vector<std::string> fails_of(const std::vector<Finding>& found) {
  std::vector<std::string> checks;
  for (const Finding& it : found)
    if (it.status == Status::fail) checks.emplace_back(it.rule->check);
  return checks;
}

inline std::vector<std::string> failing(const Assembly& wood) {
  return fails_of(check_assembly(wood, Unit::mm));
}

inline std::vector<std::string> fails(const SeasonReport& report) {
  return fails_of(report.findings);
}

inline const std::vector<std::string> kNothing;

}  // namespace haunch::test
