// What must hold of any bytes that are read as a document.
#pragma once

#include <cstdint>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string_view>

#include "json_reader.h"
#include "spec_source.h"

namespace haunch {

inline void require(bool holds) {
  if (!holds) std::abort();
}

/// Every value lies in the text where it begins as such a value does, and within what surrounds it.
inline void require_places(const Value& value, std::string_view text, std::size_t depth) {
  require(depth <= kMaxDepth && value.offset < text.size());
  const char first = text[value.offset];
  switch (value.kind) {
    case Value::Kind::null:
      return require(first == 'n');
    case Value::Kind::boolean:
      return require(text.substr(value.offset).starts_with(value.text));
    case Value::Kind::number:
      return require(!value.text.empty() && text.substr(value.offset).starts_with(value.text));
    case Value::Kind::text:
      return require(first == '"');
    case Value::Kind::list:
      require(first == '[');
      for (const Value& element : value.list) {
        require(element.offset > value.offset);
        require_places(element, text, depth + 1);
      }
      return;
    case Value::Kind::object:
      require(first == '{');
      for (const Entry& entry : value.entries) {
        require(text[entry.offset] == '"' && value.find(entry.key) == &entry.value);
        require(entry.offset > value.offset && entry.value.offset > entry.offset);
        require_places(entry.value, text, depth + 1);
      }
  }
}

/// The library's own tree and ours are the same.
inline void require_same(const Value& ours, const nlohmann::json& theirs) {
  using Kind = Value::Kind;
  require(theirs.is_null() == (ours.kind == Kind::null) &&
          theirs.is_boolean() == (ours.kind == Kind::boolean));
  require(theirs.is_number() == (ours.kind == Kind::number) &&
          theirs.is_array() == (ours.kind == Kind::list));
  if (ours.kind == Kind::boolean) require((ours.text == "true") == theirs.get<bool>());
  if (ours.kind == Kind::number) require(nlohmann::json::parse(ours.text) == theirs);
  if (ours.kind == Kind::text) require(ours.text == theirs.get_ref<const std::string&>());
  require(ours.kind == Kind::text ||
          ours.list.size() + ours.entries.size() == (theirs.is_structured() ? theirs.size() : 0));
  for (std::size_t i = 0; i < ours.list.size(); ++i)
    require_same(ours.list[i], theirs[i]);
  for (const Entry& entry : ours.entries)
    require_same(entry.value, theirs.at(entry.key));
}

inline void document_target(const std::uint8_t* bytes, std::size_t size) {
  const std::string text(bytes, bytes + size);
  const Reading reading = read_json(text);
  require(reading.value || !reading.problems.empty());
  std::size_t last = 0;
  for (std::size_t i = 0; i < reading.problems.size(); ++i) {
    const Problem& problem = reading.problems[i];
    require(problem.offset && *problem.offset <= text.size());
    require(i >= kMaxProblems || !problem.message.empty());
    require(problem.path.empty() || problem.path[0] == '/');
    require(problem.message.find_first_of("\r\n") == std::string::npos);
    if (reading.value)
      require(*problem.offset >= last);  // a syntax error may point back to where its value begins
    last = *problem.offset;
    place_in(text, last);
  }
  if (reading.value) require_places(*reading.value, text, 0);
  try {
    const nlohmann::json theirs = nlohmann::json::parse(text);
    if (reading.problems.empty()) require_same(*reading.value, theirs);
  } catch (const nlohmann::json::parse_error& error) {
    require(!reading.value && last <= error.byte);
  } catch (const nlohmann::json::out_of_range&) {  // a number
    require(!reading.value);
  }
  const auto lines = holds_lines(text, true);
  require(lines.has_value());
  const auto half = holds_lines(std::string_view(text).substr(0, size / 2), false);
  if (half) require(half == lines);  // what is plain from the beginning stays so
}

}  // namespace haunch
