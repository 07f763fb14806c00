#include "dotted_keys.h"

#include <algorithm>
#include <charconv>
#include <optional>
#include <utility>

namespace haunch {
namespace {

void add_leaves(std::vector<Leaf>& leaves, const std::string& key, const Value& value) {
  const std::string before = key.empty() ? "" : key + ".";
  for (const Entry& entry : value.entries)
    add_leaves(leaves, before + entry.key, entry.value);
  for (std::size_t i = 0; i < value.list.size(); ++i)
    add_leaves(leaves, before + std::to_string(i), value.list[i]);
  if (value.entries.empty() && value.list.empty() && !key.empty()) leaves.push_back({key, &value});
}

/// Takes the first step off a dotted path.
std::string_view take_step(std::string_view& path) {
  const std::size_t dot = path.find('.');
  const std::string_view step = path.substr(0, dot);
  path = dot == std::string_view::npos ? std::string_view() : path.substr(dot + 1);
  return step;
}

std::optional<std::size_t> number_of(std::string_view step) {
  std::size_t number = 0;
  const char* end = step.data() + step.size();
  const auto [read, fault] = std::from_chars(step.data(), end, number);
  return fault == std::errc() && read == end ? std::optional(number) : std::nullopt;
}

/// What stands under one step, made where there can be something; null where there cannot.
Value* below(Value& value, std::string_view step) {
  if (value.kind == Value::Kind::list) {
    const auto number = number_of(step);
    if (!number || *number > value.list.size()) return nullptr;
    if (*number == value.list.size()) value.list.emplace_back();
    return &value.list[*number];
  }
  if (value.kind == Value::Kind::null) value.kind = Value::Kind::object;
  if (value.kind != Value::Kind::object) return nullptr;
  auto& entries = value.entries;
  const auto found = std::find_if(entries.begin(), entries.end(),
                                  [&](const Entry& entry) { return entry.key == step; });
  if (found != entries.end()) return &found->value;
  return &entries.emplace_back(Entry{std::string(step), value.offset, Value()}).value;
}

}  // namespace

std::vector<Leaf> leaves_of(const Value& document) {
  std::vector<Leaf> leaves;
  add_leaves(leaves, "", document);
  return leaves;
}

Value text_value(std::string text) {
  Value value;
  value.kind = Value::Kind::text;
  value.text = std::move(text);
  return value;
}

Value list_value(std::vector<Value> items) {
  Value value;
  value.kind = Value::Kind::list;
  value.list = std::move(items);
  return value;
}

bool put_at(Value& document, std::string_view path, Value value) {
  Value changed = document;
  Value* place = &changed;
  while (!path.empty()) {
    place = below(*place, take_step(path));
    if (place == nullptr) return false;
  }
  value.offset = place->offset;
  *place = std::move(value);
  document = std::move(changed);
  return true;
}

}  // namespace haunch
