// What a check found: a figure, its limits, and where in the wood.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/length.h"

namespace haunch {

enum class Status { ok, caution, fail };

/// A rule that wood is checked against.
struct Rule {
  std::string_view check;    // its name in reports: "mortise-wall"
  std::string_view words;    // what the figure is, after it: "of wood beside the mortise"
  std::string_view reason;   // why it matters, and whose rule it is
  bool moved_first = false;  // something is moved to put it right, sooner than wood is changed
  std::string_view below_zero = {};  // what the figure is without its sign, where that says more
};

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
