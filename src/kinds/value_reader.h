// Reading single values of a document, with the wording of what can be wrong with them.
#pragma once

#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "haunch/length_text.h"

namespace haunch {

/// The longest size a spec may ask for.
inline constexpr Length kLongestSize = Length::from_mm(100'000);

/// A length as it was written, and what it was read as.
struct ReadLength {
  std::string path;
  std::string written;
  Length length;
};

/// Collects the problems found while the values of one document are read, and the lengths.
class ValueReader {
 public:
  /// `schema`: the one of `haunch schema` that lists the keys of what is read; empty: none does.
  explicit ValueReader(std::optional<Unit> units, std::string_view schema = "spec")
      : units_(units), schema_(schema) {}

  /// A length from zero (or above it, if not `zero_allowed`) to kLongestSize.
  std::optional<Length> length(const Value& value, const std::string& path, bool zero_allowed);
  /// A whole number from `least` to `most`.
  std::optional<int> whole_number(const Value& value, const std::string& path, int least, int most);
  /// A number from `least` to `most`, whose unit the message names in `words`.
  std::optional<double> number(const Value& value, const std::string& path, double least,
                               double most, std::string_view words);
  /// A text without control characters.
  std::optional<std::string> text(const Value& value, const std::string& path);
  /// True or false.
  std::optional<bool> flag(const Value& value, const std::string& path);
  /// The place in `words` of the text.
  std::optional<std::size_t> choice(const Value& value, const std::string& path,
                                    std::span<const std::string_view> words);
  std::optional<std::size_t> choice(const Value& value, const std::string& path,
                                    std::initializer_list<std::string_view> words) {
    return choice(value, path, std::span(words.begin(), words.size()));
  }
  /// Says that `key` is not one of `known`, offering the nearest or, if there are few, all of them.
  void unknown_key(const Entry& entry, const std::string& path,
                   const std::vector<std::string_view>& known);
  /// Whether a value is an object; says that it is not `wanted` else.
  bool is_object(const Value& value, const std::string& path, std::string_view wanted);
  /// Says that a value is not what it should be: `true is not a length; write …`.
  void wrong_type(const Value& value, const std::string& path, std::string_view wanted);

  void problem(std::string path, std::string message, std::optional<std::uint32_t> offset = {});
  /// Whether an unknown key was taken for the one at `path`: that it is missing need not be told.
  bool was_meant(const std::string& path) const;
  /// From now on a number without a unit is no problem: the key that gives it is there, misspelt.
  void let_units_be() { unit_missed_ = true; }
  std::vector<Problem> take_problems() { return std::move(problems_); }
  std::vector<ReadLength> take_lengths() { return std::move(lengths_); }

 private:
  Unit unit_of(const Value& value, const std::string& path);

  std::optional<Unit> units_;
  std::string_view schema_;
  bool unit_missed_ = false;  // said once that a number has no unit
  std::vector<Problem> problems_;
  std::vector<ReadLength> lengths_;
  std::vector<std::string> meant_;  // paths of keys that unknown ones were taken for
};

/// A value as it was written, for messages: `930`, `"70 mm"`, `true`, `a list`, `an object`.
std::string as_written(const Value& value);

/// Words in double quotes: `"a", "b" or "c"`, with the `last` word between the last two.
std::string quoted_list(std::span<const std::string_view> words, std::string_view last = "or");

}  // namespace haunch
