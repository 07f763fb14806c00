// A shop's own defaults: any key of a spec but what names one item, and its cutters.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "document.h"
#include "spec.h"

namespace haunch {

/// A shop file, read once and found right.
struct ShopDefaults {
  Spec spec;
  std::string kind;  // of items that do not say it; may be empty
};

/// The units of items that do not say them.
inline std::optional<Unit> units_of(const ShopDefaults* shop) {
  return shop != nullptr ? shop->spec.units : std::nullopt;
}

struct ShopReading {
  std::optional<ShopDefaults> shop;
  std::vector<Problem> problems;
};

/// Reads a shop file.
ShopReading read_shop(const Value& values);

}  // namespace haunch
