// Variants files: an order again with some keys changed, or so many times.
//
//   [{"name": "glazed", "with": {"panel": {"kind": "glass"}}},
//    {"name": "four of ash", "with": {"species": "European ash", "note": null}, "quantity": 4}]
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "spec_source.h"

namespace haunch {

struct VariantWish {
  std::string name;
  std::optional<std::int64_t> quantity;  // nothing: as stated
  SetKeys with;  // of objects key by key; what is null is left out of the specs
};

struct VariantsReading {
  std::vector<VariantWish> variants;
  std::vector<Problem> problems;
};

/// `source` and `text`: of the file, for problems that the keys make in a spec.
VariantsReading read_variants(const Value& document, const std::string& source,
                              std::shared_ptr<const std::string> text);

}  // namespace haunch
