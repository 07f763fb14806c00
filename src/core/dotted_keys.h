// Documents as lists of dotted keys, "rail_widths.1.top", as a sheet or a command line writes them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "document.h"

namespace haunch {

/// What holds nothing further: a number, words, or an empty object or list.
struct Leaf {
  std::string key;  // dotted; in a list by its place, 0 first
  const Value* value;
};

/// In the order of the document.
std::vector<Leaf> leaves_of(const Value& document);

}  // namespace haunch
