// What a check found: a figure, its limits, and where in the wood.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "haunch/measure.h"
#include "haunch/trade.h"

namespace haunch {

enum class Status { ok, caution, fail };

template <>
inline constexpr std::string_view kWords<Status>[] = {"ok", "caution", "fail"};

struct Finding {
  const Rule* rule = nullptr;
  Status status = Status::ok;
  std::vector<std::size_t> parts;  // pieces of the assembly
  std::optional<std::size_t> joint;
  Length value;
  std::optional<double> moisture;  // percent, of wood that is not as built
  bool measured = true;  // false: there was nothing to measure to, and value means nothing
  std::optional<Length> min, max;  // the limits that the status rests on
  std::optional<Length> ok_min,
      ok_max;           // those within which it is ok; of a fail they may be narrower
  std::string fitting;  // the fitting that it is of, if it is of one
};

/// How far the figure lies outside its limits; zero inside them.
Length shortfall(const Finding& finding);

}  // namespace haunch
