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

Value text_value(std::string text);
Value list_value(std::vector<Value> items);

/// Sets what stands at a dotted path: numbers count the items of a list, and the next one after the
/// last is added; objects that are missing are made. False, and nothing is changed, where something
/// other stands in the way.
bool put_at(Value& document, std::string_view path, Value value);

}  // namespace haunch
