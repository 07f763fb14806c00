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

/// Too high where it is no number of a size that can be read.
std::size_t place_of(std::string_view step) {
  std::size_t place = 0;
  const auto [end, fault] = std::from_chars(step.data(), step.data() + step.size(), place);
  return fault == std::errc() ? place : kMostPlace + 1;
}

/// The value at one step within `parent`, made if need be; null where `parent` is of another kind.
Value* child_of(Value& parent, const std::string& step, std::uint32_t offset) {
  const Value::Kind wanted = is_place(step) ? Value::Kind::list : Value::Kind::object;
  if (parent.kind == Value::Kind::null) {
    parent.kind = wanted;
    parent.offset = offset;
  }
  if (parent.kind != wanted) return nullptr;
  if (wanted == Value::Kind::list) {
    const std::size_t place = place_of(step);
    while (parent.list.size() <= place)
      parent.list.emplace_back().offset = offset;
    return &parent.list[place];
  }
  const auto found = std::find_if(parent.entries.begin(), parent.entries.end(),
                                  [&](const Entry& entry) { return entry.key == step; });
  if (found != parent.entries.end()) return &found->value;
  parent.entries.push_back({step, offset, {}});
  return &parent.entries.back().value;
}

}  // namespace

bool is_place(std::string_view step) {
  return step.find_first_not_of("0123456789") == std::string_view::npos;
}

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

std::optional<std::vector<std::string>> steps_of(std::string_view dotted) {
  std::vector<std::string> steps;
  while (true) {
    const std::string_view step = dotted.substr(0, dotted.find('.'));
    if (step.empty() || (is_place(step) && (steps.empty() || place_of(step) > kMostPlace)))
      return {};
    steps.emplace_back(step);
    if (step.size() == dotted.size()) return steps;
    dotted.remove_prefix(step.size() + 1);
  }
}

std::string path_of(const std::vector<std::string>& steps) {
  std::string path;
  for (const std::string& step : steps)
    path = child_path(path, step);
  return path;
}

bool fill_at(Value& document, const std::vector<std::string>& steps, std::uint32_t key_offset,
             Value value) {
  Value* at = &document;
  for (const std::string& step : steps) {
    at = child_of(*at, step, at == &document ? key_offset : value.offset);
    if (at == nullptr) return false;
  }
  if (at->kind != Value::Kind::null) return false;
  *at = std::move(value);
  return true;
}

}  // namespace haunch
