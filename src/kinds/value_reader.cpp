#include "value_reader.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>

#include "utf8.h"

namespace haunch {
namespace {

constexpr std::size_t kLongestQuote = 40;  // characters of a user's text shown in a message
constexpr std::size_t kFewKeys = 8;        // so many legal words are listed, more are not

std::string shortened(std::string_view text) {
  if (text.size() <= kLongestQuote) return std::string(text);
  std::size_t end = kLongestQuote;
  while (end > 0 && continues_character(text[end]))
    --end;
  return std::string(text.substr(0, end)) + "…";
}

bool is_control(char character) {
  const auto byte = static_cast<unsigned char>(character);
  return byte < 0x20 || byte == 0x7F;
}

/// What to write for a number without a unit, in the units that it can be read in.
std::string with_units(const std::string& text, bool in_mm, bool in_inch) {
  const std::string both = in_mm && in_inch ? R"("units": "mm" or "units": "in", or write )"
                                            : R"("units": "in", or write )";
  return (in_mm && !in_inch ? R"("units": "mm", or write )" : both) +
         (in_mm ? '"' + text + " mm\"" : "") + (in_mm && in_inch ? " or " : "") +
         (in_inch ? '"' + text + " in\"" : "");
}

/// A length to write instead, as it stands in JSON.
std::string in_json(const std::string& length, bool as_number) {
  if (as_number && length.find_first_not_of("0123456789.") == std::string::npos) return length;
  std::string text = "\"";
  for (const char character : length) {
    if (character == '"') text += '\\';
    text += character;
  }
  return text + '"';
}

}  // namespace

std::string as_written(const Value& value) {
  switch (value.kind) {
    case Value::Kind::null:
      return "null";
    case Value::Kind::boolean:
      return value.text;
    case Value::Kind::number:
      return shortened(value.text);
    case Value::Kind::text: {
      std::string shown = shortened(value.text);
      std::replace_if(shown.begin(), shown.end(), is_control, ' ');
      return '"' + shown + '"';
    }
    case Value::Kind::list:
      return "a list";
    case Value::Kind::object:
      return "an object";
  }
  return {};
}

std::string quoted_list(std::span<const std::string_view> words, std::string_view last) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " " + std::string(last) + " " : ", ";
    list += '"' + std::string(words[i]) + '"';
  }
  return list;
}

bool ValueReader::was_meant(const std::string& path) const {
  return std::find(meant_.begin(), meant_.end(), path) != meant_.end();
}

void ValueReader::problem(std::string path, std::string message,
                          std::optional<std::uint32_t> offset) {
  problems_.push_back({std::move(path), std::move(message), offset});
}

bool ValueReader::is_object(const Value& value, const std::string& path, std::string_view wanted) {
  if (value.kind == Value::Kind::object) return true;
  wrong_type(value, path, wanted);
  return false;
}

void ValueReader::wrong_type(const Value& value, const std::string& path, std::string_view wanted) {
  problem(path, as_written(value) + " is not " + std::string(wanted));
}

/// The unit of a value that may lack one; says so, once, where none is known.
Unit ValueReader::unit_of(const Value& value, const std::string& path) {
  if (units_) return *units_;
  const auto as_mm = read_length(value.text, Unit::mm).length;
  const auto as_inch = read_length(value.text, Unit::inch).length;
  if (as_mm != as_inch && !unit_missed_) {
    unit_missed_ = true;
    problem(path, as_written(value) + " has no unit; give " +
                      with_units(value.text, as_mm.has_value(), as_inch.has_value()));
  }
  return as_mm ? Unit::mm : Unit::inch;
}

std::optional<Length> ValueReader::length(const Value& value, const std::string& path,
                                          bool zero_allowed) {
  if (value.kind != Value::Kind::number && value.kind != Value::Kind::text) {
    wrong_type(value, path,
               "a length; write a number, or a text such as \"65 mm\" or \"2 9/16 in\"");
    return {};
  }
  LengthReading reading = read_length(value.text, unit_of(value, path));
  if (!reading.length) {
    std::string message = as_written(value) + " is not a length: " + reading.why;
    if (!reading.instead.empty())
      message += "; write " + in_json(reading.instead, value.kind == Value::Kind::number);
    problem(path, std::move(message));
    return {};
  }
  if (!zero_allowed && *reading.length == Length()) {
    problem(path, as_written(value) + " is too small; it must be more than 0");
    return {};
  }
  if (*reading.length > kLongestSize) {
    problem(path, as_written(value) + " is too large; the most is 100 m");
    return {};
  }
  lengths_.push_back({path, value.text, *reading.length});
  return reading.length;
}

std::optional<int> ValueReader::whole_number(const Value& value, const std::string& path, int least,
                                             int most) {
  int number = 0;
  const char* end = value.text.data() + value.text.size();
  const auto [stop, fault] = std::from_chars(value.text.data(), end, number);
  const std::string range = std::to_string(least) + " to " + std::to_string(most);
  if (value.kind != Value::Kind::number || (fault == std::errc() && stop != end)) {
    wrong_type(value, path, "a whole number; write one from " + range);
    return {};
  }
  if (fault != std::errc() || number < least || number > most) {
    problem(path, as_written(value) + " is out of range; it must be from " + range);
    return {};
  }
  return number;
}

std::optional<double> ValueReader::number(const Value& value, const std::string& path, double least,
                                          double most, std::string_view words) {
  const std::string range = fmt::format("{:g} to {:g}", least, most);
  if (value.kind != Value::Kind::number) {
    wrong_type(value, path, fmt::format("a number; write {}, from {}", words, range));
    return {};
  }
  double number = 0;
  const char* end = value.text.data() + value.text.size();
  const auto fault = std::from_chars(value.text.data(), end, number).ec;
  if (fault != std::errc() || number < least || number > most) {
    problem(path, fmt::format("{} is out of range; it must be from {}", as_written(value), range));
    return {};
  }
  return number;
}

std::optional<std::string> ValueReader::text(const Value& value, const std::string& path) {
  if (value.kind != Value::Kind::text) {
    wrong_type(value, path, "a text; put it in double quotes");
    return {};
  }
  if (std::any_of(value.text.begin(), value.text.end(), is_control)) {
    problem(path, as_written(value) +
                      " has a line break or another control character in it; leave it out");
    return {};
  }
  return value.text;
}

std::optional<bool> ValueReader::flag(const Value& value, const std::string& path) {
  if (value.kind == Value::Kind::boolean) return value.text == "true";
  wrong_type(value, path, "true or false; write one of them, without quotes");
  return {};
}

std::optional<std::size_t> ValueReader::choice(const Value& value, const std::string& path,
                                               std::span<const std::string_view> words) {
  const auto found = std::find(words.begin(), words.end(), value.text);
  if (value.kind == Value::Kind::text && found != words.end())
    return static_cast<std::size_t>(found - words.begin());
  const std::string_view nearest = nearest_word(value.text, {words.begin(), words.end()});
  std::string message = as_written(value) + " is not known here; ";
  message += nearest.empty() ? "write " + quoted_list(words)
                             : "did you mean \"" + std::string(nearest) + "\"?";
  problem(path, std::move(message));
  return {};
}

void ValueReader::unknown_key(const Entry& entry, const std::string& path,
                              const std::vector<std::string_view>& known) {
  const std::string_view nearest = nearest_word(entry.key, known);
  std::string message = "unknown key; ";
  if (!nearest.empty())
    message += "did you mean \"" + std::string(nearest) + "\"?";
  else if (known.size() == 1)
    message += "the only key here is " + quoted_list(known);
  else if (known.size() <= kFewKeys || schema_.empty())
    message += "the keys here are " + quoted_list(known, "and");
  else
    message += "'haunch schema " + std::string(schema_) + "' lists the keys";
  if (!nearest.empty())
    meant_.push_back(path.substr(0, path.rfind('/')) + "/" + std::string(nearest));
  problem(path, std::move(message), entry.offset);
}

}  // namespace haunch
