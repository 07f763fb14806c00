// What a spec says before any of it is understood: a tree of values, each with its place in the
// text.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace haunch {

struct Entry;

/// One value of a document. A number stays the text it was written as, so that no digit is lost.
struct Value {
  enum class Kind : std::uint8_t { null, boolean, number, text, list, object };

  Kind kind = Kind::null;
  std::uint32_t offset = 0;  // of its first byte in the source
  std::string text;          // number: as written; text: decoded, UTF-8; boolean: "true" or "false"
  std::vector<Value> list;   // of a list
  std::vector<Entry> entries;  // of an object, in the order written, each key once

  /// The value under `key`, or null. Only objects have any.
  const Value* find(std::string_view key) const;
};

struct Entry {
  std::string key;
  std::uint32_t offset = 0;  // of the key's first byte, its quote
  Value value;
};

/// Something wrong with a document: at which value (a JSON Pointer, empty for the whole), what is
/// wrong and what would be right.
struct Problem {
  std::string path;
  std::string message;
  std::optional<std::uint32_t> offset;  // where in the source, if other than the value at `path`
};

/// Puts more problems behind those that are known.
void add(std::vector<Problem>& problems, std::vector<Problem> more);

/// `path` with one more step, escaped as JSON Pointer asks (RFC 6901).
std::string child_path(std::string_view path, std::string_view key);
std::string child_path(std::string_view path, std::size_t index);

/// The byte offset of the value at `path`, or of the nearest enclosing value that exists.
std::uint32_t offset_of(const Value& document, std::string_view path);

/// The one of `known` that `word` was most likely meant to be, or empty: at most 2 letters wrong (1
/// in a word of up to four), and fewer than half of them. Two letters swapped count as one.
std::string_view nearest_word(std::string_view word, const std::vector<std::string_view>& known);

}  // namespace haunch
