// A shop's own defaults: any key of a spec but what names one item, and its cutters.
#pragma once

#include <optional>
#include <vector>

#include "document.h"
#include "haunch/length_text.h"

namespace haunch {

/// A shop file, read and found right. It must outlive the jobs that are read with it.
class ShopDefaults {
 public:
  /// `values` as read_shop found them.
  ShopDefaults(Value values, std::optional<Unit> units)
      : values_(std::move(values)), units_(units) {}

  const Value& values() const { return values_; }
  std::optional<Unit> units() const { return units_; }

 private:
  Value values_;
  std::optional<Unit> units_;
};

struct ShopReading {
  std::optional<ShopDefaults> shop;
  std::vector<Problem> problems;
};

/// Reads a shop file.
ShopReading read_shop(const Value& values);

}  // namespace haunch
