// Documents as lists of dotted keys, "rail_widths.1.top", as a sheet or a command line writes them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"

namespace haunch {

/// Places in a list that a dotted key may name: 0 to this.
inline constexpr std::size_t kMostPlace = 999;

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
/// A dotted key in its steps, of which those that are whole numbers are places in a list. Nothing
/// where a step is empty or a place too high.
std::optional<std::vector<std::string>> steps_of(std::string_view dotted);

/// The same as a JSON Pointer.
std::string path_of(const std::vector<std::string>& steps);

/// Whether a step of a dotted key is a place in a list.
bool is_place(std::string_view step);

/// Puts `value` where `steps` lead to and nothing stands yet, with the objects and lists on the way
/// to it; `key_offset` is that of all keys on the way. Places in a list that nothing was put to are
/// null. False where something stands there already, or in the way; `document` is an object.
bool fill_at(Value& document, const std::vector<std::string>& steps, std::uint32_t key_offset,
             Value value);

}  // namespace haunch
