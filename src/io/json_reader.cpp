#include "json_reader.h"

#include <fmt/core.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "encoding.h"
#include "json_syntax.h"
#include "utf8.h"

namespace haunch {
namespace {

using nlohmann::json;

std::size_t characters_in(std::string_view text) {
  return text.size() -
         static_cast<std::size_t>(std::count_if(text.begin(), text.end(), continues_character));
}

/// Past the text whose opening quote is at `at`, or the end of `text`.
std::size_t end_of_quoted(std::string_view text, std::size_t at) {
  for (++at; at < text.size() && text[at] != '"'; ++at)
    if (text[at] == '\\') ++at;
  return std::min(at + 1, text.size());
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

std::size_t end_of_digits(std::string_view text, std::size_t at) {
  while (at < text.size() && text[at] >= '0' && text[at] <= '9')
    ++at;
  return at;
}

/// Past the number at `at`, which is a right one. What touches it (`007`, `36"`) is no part of it.
std::size_t end_of_number(std::string_view text, std::size_t at) {
  const auto is = [&](char c) { return at < text.size() && text[at] == c; };
  if (is('-')) ++at;
  at = is('0') ? at + 1 : end_of_digits(text, at);
  if (is('.')) at = end_of_digits(text, at + 1);
  if (!is('e') && !is('E')) return at;
  ++at;
  return end_of_digits(text, is('+') || is('-') ? at + 1 : at);
}

bool too_long(const std::string& text) {
  return text.size() > kMaxTextCharacters && characters_in(text) > kMaxTextCharacters;
}

/// The beginning of an overlong key, enough to find it by.
std::string shortened(std::string_view key) {
  std::size_t end = 40;
  while (end > 0 && continues_character(key[end]))
    --end;
  return std::string(key.substr(0, end)) + "...";
}

/// Builds the tree from the parser's calls, which say what was read but not where. Each call
/// belongs to the next token, so a cursor that follows through the text finds its place and, for a
/// number, its text as written.
class TreeBuilder {
 public:
  TreeBuilder(std::string_view text, std::size_t start) : text_(text) { state_.cursor = start; }

  Reading take() {
    Reading reading{std::nullopt, std::move(problems_)};
    if (complete_) reading.value = std::move(root_);
    return reading;
  }

  /// The path of what follows in a longer text, if all of this one was read: of a key that of its
  /// object.
  std::string path_of_next() const;
  bool key_follows() const;

  // The parser's calls. One that gives false ends the reading.
  bool null() { return word(Value::Kind::null, "null"); }
  bool boolean(bool yes) { return word(Value::Kind::boolean, yes ? "true" : "false"); }
  bool number_integer(json::number_integer_t) { return number(); }
  bool number_unsigned(json::number_unsigned_t) { return number(); }
  bool number_float(json::number_float_t, const std::string&) { return number(); }
  bool binary(json::binary_t&) { return false; }  // of other formats than JSON
  bool string(std::string& text);
  bool start_object(std::size_t) {
    return open(Value::Kind::object, ReadingState::Next::first_key);
  }
  bool start_array(std::size_t) {
    return open(Value::Kind::list, ReadingState::Next::first_element);
  }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& name);
  bool parse_error(std::size_t, const std::string&, const json::exception&);

 private:
  struct Open {
    Value* value;
    bool drops_last = false;  // its last entry is read but not kept: repeated, or its key too long
  };

  void to_next_token();
  Value* add(Value::Kind kind);
  bool word(Value::Kind kind, std::string_view text);
  bool number();
  bool open(Value::Kind kind, ReadingState::Next next);
  bool close();
  bool close_value();
  std::string path() const;
  std::string path_of(SyntaxFault::Of of) const;
  std::string key_problem(const Entry* first, const std::string& name) const;
  using Of = SyntaxFault::Of;
  void report(const std::string& message, Of of = Of::last_value);
  bool stop(const std::string& message, Of of = Of::last_value);
  bool spells_out() const { return problems_.size() < kMaxProblems; }

  std::string_view text_;
  ReadingState state_;
  Value root_;
  std::vector<Open> open_;
  std::size_t count_ = 0;
  bool complete_ = false;
  std::vector<Problem> problems_;
};

void TreeBuilder::to_next_token() {
  std::size_t at = state_.cursor;
  while (is_blank(text_[at]) || text_[at] == ',' || text_[at] == ':')
    ++at;
  state_.cursor = at;
  state_.last = at;
}

/// A new value at the next token, or null when there are too many. The pointer is good until its
/// parent grows, which is after the value is closed.
Value* TreeBuilder::add(Value::Kind kind) {
  to_next_token();
  Value* value = &root_;
  if (!open_.empty()) {
    Value& parent = *open_.back().value;
    value = parent.kind == Value::Kind::list ? &parent.list.emplace_back()
                                             : &parent.entries.back().value;
  }
  value->kind = kind;
  value->offset = static_cast<std::uint32_t>(state_.cursor);
  if (++count_ <= kMaxValues) return value;
  report(fmt::format("more than {} values in one document", kMaxValues));
  return nullptr;
}

bool TreeBuilder::word(Value::Kind kind, std::string_view text) {
  Value* value = add(kind);
  if (value == nullptr) return false;
  if (kind == Value::Kind::boolean) value->text = text;
  state_.cursor += text.size();
  return close_value();
}

bool TreeBuilder::number() {
  Value* value = add(Value::Kind::number);
  if (value == nullptr) return false;
  state_.cursor = end_of_number(text_, value->offset);
  value->text = text_.substr(value->offset, state_.cursor - value->offset);
  return close_value();
}

bool TreeBuilder::string(std::string& text) {
  Value* value = add(Value::Kind::text);
  if (value == nullptr) return false;
  if (too_long(text))
    report(fmt::format("a text of {} characters; at most {} are read", characters_in(text),
                       kMaxTextCharacters));
  value->text = std::move(text);
  state_.cursor = end_of_quoted(text_, value->offset);
  return close_value();
}

bool TreeBuilder::open(Value::Kind kind, ReadingState::Next next) {
  Value* value = add(kind);
  if (value == nullptr) return false;
  if (open_.size() == kMaxDepth) return stop(fmt::format("nested more than {} deep", kMaxDepth));
  open_.push_back({value});
  ++state_.cursor;
  state_.next = next;
  state_.opener = value->offset;
  return true;
}

bool TreeBuilder::close() {
  to_next_token();
  ++state_.cursor;
  open_.pop_back();
  return close_value();
}

bool TreeBuilder::close_value() {
  if (open_.empty()) {
    complete_ = true;
    state_.opener.reset();
    state_.next = ReadingState::Next::nothing;
    return true;
  }
  Open& parent = open_.back();
  if (parent.drops_last) parent.value->entries.pop_back();
  parent.drops_last = false;
  state_.opener = parent.value->offset;
  state_.next = ReadingState::Next::comma;
  return true;
}

/// What is wrong with the key at the last token, of which `first` is an earlier one like it.
std::string TreeBuilder::key_problem(const Entry* first, const std::string& name) const {
  if (!spells_out()) return "";
  if (first != nullptr)
    return fmt::format("repeated key; it stands already at {}",
                       place_words(text_, first->offset, *state_.last));
  return fmt::format("a key of {} characters; at most {} are read", characters_in(name),
                     kMaxTextCharacters);
}

bool TreeBuilder::key(std::string& name) {
  to_next_token();
  Open& object = open_.back();
  std::vector<Entry>& entries = object.value->entries;
  if (entries.size() == kMaxKeys)
    return stop(fmt::format("more than {} keys in one object", kMaxKeys), Of::container);
  const auto same =
      std::find_if(entries.begin(), entries.end(), [&](const Entry& e) { return e.key == name; });
  const Entry* first = same == entries.end() ? nullptr : &*same;
  object.drops_last = first != nullptr || too_long(name);
  const std::string problem = object.drops_last ? key_problem(first, name) : "";
  Entry& entry = entries.emplace_back();
  entry.offset = static_cast<std::uint32_t>(state_.cursor);
  entry.key = too_long(name) ? shortened(name) : std::move(name);
  if (object.drops_last) report(problem);
  state_.cursor = end_of_quoted(text_, state_.cursor);
  state_.next = ReadingState::Next::colon;
  return true;
}

bool TreeBuilder::parse_error(std::size_t, const std::string&, const json::exception&) {
  const SyntaxFault fault = explain_syntax(text_, state_);
  complete_ = false;
  const auto at = static_cast<std::uint32_t>(fault.offset);
  problems_.push_back(spells_out() ? Problem{path_of(fault.of), fault.message, at}
                                   : Problem{"", "", at});
  return false;
}

/// A problem of the last token.
void TreeBuilder::report(const std::string& message, Of of) {
  const auto at = static_cast<std::uint32_t>(*state_.last);
  problems_.push_back(spells_out() ? Problem{path_of(of), message, at} : Problem{"", "", at});
}

bool TreeBuilder::stop(const std::string& message, Of of) {
  report(message, of);
  return false;
}

/// The path of the value on which the builder stands.
std::string TreeBuilder::path() const {
  std::string result;
  for (const Open& open : open_) {
    const Value& value = *open.value;
    if (!value.list.empty()) result = child_path(result, value.list.size() - 1);
    if (!value.entries.empty()) result = child_path(result, value.entries.back().key);
  }
  return result;
}

std::string TreeBuilder::path_of(SyntaxFault::Of of) const {
  std::string whole = path();
  if (open_.empty()) return whole;
  const Value& parent = *open_.back().value;
  const bool stands_in_child = !parent.list.empty() || !parent.entries.empty();
  if (of == SyntaxFault::Of::last_value ||
      (of == SyntaxFault::Of::due_value && parent.kind == Value::Kind::object))
    return whole;
  if (stands_in_child) whole.erase(whole.rfind('/'));  // a slash within a key is written ~1
  return of == SyntaxFault::Of::container ? whole : child_path(whole, parent.list.size());
}

bool TreeBuilder::key_follows() const {
  const bool in_object = !open_.empty() && open_.back().value->kind == Value::Kind::object;
  return in_object && state_.next != ReadingState::Next::colon;
}

std::string TreeBuilder::path_of_next() const {
  if (text_.find_first_not_of(" \t\r\n,:", state_.cursor) != std::string_view::npos) return {};
  return path_of(key_follows() ? Of::container : Of::due_value);
}

/// The path of the token at `at`, which is too long to be read.
std::string path_at(std::string_view text, std::size_t start, std::size_t at) {
  const std::string_view before = text.substr(0, at);
  TreeBuilder builder(before, start);
  json::sax_parse(before.data(), before.data() + before.size(), &builder);
  const std::string path = builder.path_of_next();
  const bool is_key = builder.key_follows() && text[at] == '"';
  return is_key ? child_path(path, shortened(text.substr(at + 1))) : path;
}

/// What the parser must not be given, for it copies it several times over: endless texts, endless
/// numbers and endless blanks.
std::optional<Problem> endless_stretch(std::string_view text, std::size_t at) {
  constexpr std::size_t kLongestText =
      12 * kMaxTextCharacters + 2;  // all surrogate pairs: \uD83D\uDEAA
  const auto fault = [](std::size_t start, std::string_view what, std::size_t most) {
    return Problem{"", fmt::format("{} of more than {} characters", what, most),
                   static_cast<std::uint32_t>(start)};
  };
  std::size_t blanks = at;  // where those before `at` begin
  while (at < text.size()) {
    const std::size_t start = at;
    if (text[at] == '"') {
      at = blanks = end_of_quoted(text, at);
      if (at - start > kLongestText) return fault(start, "a text", kLongestText);
    } else if (is_digit(text[at])) {
      at = blanks = end_of_digits(text, at);
      if (at - start > kMaxTextCharacters) return fault(start, "a number", kMaxTextCharacters);
    } else if (!is_blank(text[at])) {
      blanks = ++at;
    } else if (++at - blanks > kMaxBlanks) {
      return fault(blanks, "a stretch of blanks", kMaxBlanks);
    }
  }
  return std::nullopt;
}

/// What is wrong with the text as a whole, before any of it is read.
std::optional<Problem> whole_problem(std::string_view text, std::size_t start) {
  if (auto problem = foreign_problem(text)) return problem;
  if (text.size() > kMaxDocumentBytes)
    return Problem{"", fmt::format("more than {} MiB in one document", kMaxDocumentBytes >> 20), 0};
  if (text.size() > kMaxTextCharacters) {
    if (auto problem = endless_stretch(text, start)) {
      problem->path = path_at(text, start, *problem->offset);
      return problem;
    }
  }
  if (after_blanks(text, start) == text.size())
    return Problem{"", "nothing stands here; a spec begins with '{'", 0};
  return {};
}

/// The parser takes a zero byte for the end of the text, which would drop what stands behind it.
void stop_at_zero(Reading& reading, std::string_view text) {
  const std::size_t zero = text.find('\0');
  if (zero == std::string_view::npos) return;
  if (!reading.value && *reading.problems.back().offset < zero) return;  // it never got there
  if (!reading.value) reading.problems.pop_back();
  reading.value.reset();
  reading.problems.push_back({"", "a zero byte stands here; save the file as plain text",
                              static_cast<std::uint32_t>(zero)});
}

}  // namespace

Reading read_json(std::string_view text) {
  const std::size_t start = start_of(text);
  if (auto problem = whole_problem(text, start)) return {std::nullopt, {std::move(*problem)}};
  TreeBuilder builder(text, start);
  json::sax_parse(text.data(), text.data() + text.size(), &builder);  // skips the mark itself
  Reading reading = builder.take();
  stop_at_zero(reading, text);
  return reading;
}

bool is_blank(char c) {
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

std::size_t after_blanks(std::string_view text, std::size_t at) {
  while (at < text.size() && is_blank(text[at]))
    ++at;
  return at;
}

TextPlace place_in(std::string_view text, std::size_t offset) {
  const std::string_view before = text.substr(0, offset);
  const auto lines = static_cast<std::size_t>(std::count(before.begin(), before.end(), '\n'));
  const std::size_t line_start = lines == 0 ? start_of(text) : before.rfind('\n') + 1;
  return {lines + 1, 1 + characters_in(before.substr(std::min(line_start, before.size())))};
}

}  // namespace haunch
