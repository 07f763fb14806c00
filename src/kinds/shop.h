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
  Spec spec;            // what holds for all work
  Spec house, cabinet;  // the same, with what holds for that use alone in its place
  std::string kind;     // of items that do not say it; may be empty

  const Spec& of_use(Use use) const { return use == Use::house ? house : cabinet; }
};

/// What an item of these keys is for, where its opening is so high: as it says itself, or its shop
/// does, else as is usual.
Use use_of(const Spec& item, const ShopDefaults& shop, Length height);

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
