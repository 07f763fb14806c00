#include "order_sheet.h"

#include <fmt/core.h>

#include <algorithm>
#include <cctype>
#include <map>
#include <utility>

#include "csv_row.h"
#include "dotted_keys.h"
#include "encoding.h"
#include "json_reader.h"
#include "spec_merge.h"

namespace haunch {
namespace {

/// "1.234" in a sheet with decimal commas: a thousand and more, or little more than one.
bool may_be_thousands(std::string_view text) {
  constexpr std::size_t kDigits = 3;
  const std::size_t point = text.find('.');
  const auto all_digits = [](std::string_view part) {
    return !part.empty() && part.find_first_not_of("0123456789") == std::string_view::npos;
  };
  return point <= kDigits && text.size() == point + 1 + kDigits &&
         all_digits(text.substr(0, point)) && text.front() != '0' &&
         all_digits(text.substr(point + 1));
}

bool is_truth(std::string_view text) {
  return text == "true" || text == "false" || text == "TRUE" || text == "FALSE";
}

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

std::string cell_text(const Value& value) {
  if (value.kind == Value::Kind::object) return "{}";
  if (value.kind == Value::Kind::list) return "[]";
  return value.text;
}

void append_cell(CsvRow& row, const Value* value) {
  if (value == nullptr)
    row.plain("");
  else if (value->kind == Value::Kind::number)
    row.number(value->text);
  else
    row.text(cell_text(*value));
}

/// Nulls of a list that were never filled, though more follows.
void tell_gaps(const Value& value, const std::string& path, std::vector<Problem>& problems) {
  for (const Entry& entry : value.entries)
    tell_gaps(entry.value, child_path(path, entry.key), problems);
  for (std::size_t i = 0; i < value.list.size(); ++i) {
    const std::string at = child_path(path, i);
    if (value.list[i].kind == Value::Kind::null)
      problems.push_back(
          {at, "is left empty, but what follows it in its list is not; fill it, or empty both",
           value.list[i].offset});
    else
      tell_gaps(value.list[i], at, problems);
  }
}

}  // namespace

std::string sheet_of(const std::vector<Value>& items, CsvProfile profile) {
  std::vector<std::string> columns;
  std::vector<std::map<std::string, const Value*>> rows;
  for (const Value& item : items) {
    auto& row = rows.emplace_back();
    for (const Leaf& leaf : leaves_of(item)) {
      if (std::find(columns.begin(), columns.end(), leaf.key) == columns.end())
        columns.push_back(leaf.key);
      row[leaf.key] = leaf.value;
    }
  }
  std::string text(csv_start(profile));
  CsvRow head(text, Unit::mm, profile);
  for (const std::string& column : columns)
    head.text(column);
  // So that what parts the columns is seen though there is but one.
  const bool alone = columns.size() == 1 && profile == CsvProfile::semicolon;
  if (alone) head.plain("");
  head.end();
  for (auto& cells : rows) {
    CsvRow row(text, Unit::mm, profile);
    for (const std::string& column : columns)
      append_cell(row, cells[column]);
    if (alone) row.plain("");
    row.end();
  }
  return text;
}

std::vector<Problem> gaps_in(const Value& item) {
  std::vector<Problem> problems;
  tell_gaps(item, "", problems);
  return problems;
}

bool holds_words(const std::vector<std::string>& steps) {
  const KeyRow* row = key_row(steps);
  return row != nullptr && row->holds == Holds::text;
}

Value plain_value(std::string text, std::uint32_t offset, bool words) {
  Value value = csv_value({std::move(text), offset}, false);
  if (words) {
    value.kind = Value::Kind::text;
  } else if (is_truth(value.text)) {
    value.kind = Value::Kind::boolean;
    value.text = lower(value.text);
  } else if (value.text == "{}" || value.text == "[]") {
    value.kind = value.text == "{}" ? Value::Kind::object : Value::Kind::list;
    value.text.clear();
  }
  return value;
}

OrderSheet::OrderSheet(std::string_view text)
    : separator_(csv_separator(text)), rows_(text, separator_) {
  if (auto problem = encoding_problem(text)) {
    problems_.push_back(std::move(*problem));
  } else if (text.size() > kMaxDocumentBytes) {
    problems_.push_back(
        {"", fmt::format("more than {} MiB in one sheet", kMaxDocumentBytes >> 20), 0});
  } else {
    read_header();
  }
}

void OrderSheet::read_header() {
  const auto header = rows_.next();
  if (!header) {
    problems_.push_back({"", "the sheet is empty; its first row names the keys", 0});
    return;
  }
  problems_ = rows_.take_problems();
  for (const CsvField& field : *header)
    add_column(field);
  find_parts();
  if (std::none_of(columns_.begin(), columns_.end(),
                   [](const Column& column) { return !column.steps.empty(); }))
    problems_.push_back({"", "the first row names no keys; write such as id, opening.width", 0});
}

/// A width in "rail_widths.1" and a height in "rail_widths.1.top" are of one rail.
void OrderSheet::find_parts() {
  for (Column& column : columns_) {
    const KeyRow* row = column.steps.empty() ? nullptr : key_row(column.steps);
    if (row == nullptr || row->plain != Plain::first) continue;
    column.first = first_member(*row);
    for (std::size_t i = 0; i < columns_.size(); ++i)
      if (columns_[i].name.starts_with(column.name + ".")) column.parts.push_back(i);
  }
}

void OrderSheet::add_column(const CsvField& field) {
  Column column;
  column.name = field.text;
  column.offset = field.offset;
  const bool twice = !field.text.empty() &&
                     std::any_of(columns_.begin(), columns_.end(),
                                 [&](const Column& other) { return other.name == field.text; });
  if (twice)
    problems_.push_back(
        {"", "the column \"" + field.text + "\" is there twice; keep one", field.offset});
  auto steps = field.text.empty() ? std::vector<std::string>() : steps_of(field.text);
  if (!steps || steps->size() > kMaxDepth)
    problems_.push_back({"",
                         "\"" + field.text +
                             "\" is no key; write such as opening.width, or rail_widths.0 for the "
                             "first of a list",
                         field.offset});
  if (steps && !steps->empty()) {
    column.holds_words = holds_words(*steps);
    column.steps = std::move(*steps);
  }
  columns_.push_back(std::move(column));
}

Value OrderSheet::value_of(const CsvField& field, const Column& column, SheetItem& into) const {
  if (column.holds_words) return plain_value(field.text, field.offset, true);
  const bool comma = separator_ == ';';
  if (comma && may_be_thousands(field.text)) {
    std::string digits = field.text, comma_text = field.text;
    const std::size_t point = field.text.find('.');
    digits.erase(point, 1);
    comma_text[point] = ',';
    into.problems.push_back({path_of(column.steps),
                             fmt::format("{} may be {} or {}; write it without the point",
                                         field.text, digits, comma_text),
                             field.offset});
  }
  return plain_value(csv_value(field, comma).text, field.offset, false);
}

void OrderSheet::take(const std::vector<CsvField>& row, std::size_t number, SheetItem& into) const {
  const CsvField& field = row[number];
  if (number >= columns_.size() || columns_[number].steps.empty()) {
    into.problems.push_back({"",
                             "\"" + field.text +
                                 "\" stands in a column without a key; name it in row 1, "
                                 "or put words with a comma in quotes",
                             field.offset});
    return;
  }
  const Column& column = columns_[number];
  const bool in_parts =
      std::any_of(column.parts.begin(), column.parts.end(),
                  [&](std::size_t part) { return part < row.size() && !row[part].text.empty(); });
  std::vector<std::string> steps = column.steps;
  if (in_parts) steps.push_back(column.first);
  if (!fill_at(*into.item, steps, column.offset, value_of(field, column, into)))
    into.problems.push_back({path_of(column.steps),
                             "is said in parts and as a whole; keep one of the two", field.offset});
}

std::optional<SheetItem> OrderSheet::next() {
  while (const auto row = rows_.next()) {
    SheetItem result;
    result.problems = rows_.take_problems();
    result.item.emplace();
    result.item->kind = Value::Kind::object;
    result.item->offset = row->front().offset;
    for (std::size_t i = 0; i < row->size(); ++i)
      if (!(*row)[i].text.empty()) take(*row, i, result);
    if (result.item->entries.empty() && result.problems.empty()) continue;
    return result;
  }
  return {};
}

}  // namespace haunch
