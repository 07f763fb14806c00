#include "csv_table.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "encoding.h"
#include "json_reader.h"

namespace haunch {
namespace {

struct Field {
  std::string text;
  std::uint32_t offset = 0;
  bool quoted = false;
};

std::string trimmed(const std::string& text) {
  const auto first = text.find_first_not_of(" \t");
  if (first == std::string::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

bool is_number(const std::string& text) {
  const std::size_t start = text.starts_with('-') ? 1 : 0;
  const std::string digits = text.substr(start);
  return !digits.empty() && digits.find_first_not_of("0123456789.") == std::string::npos &&
         std::count(digits.begin(), digits.end(), '.') <= 1 && digits.front() != '.' &&
         digits.back() != '.';
}

class CsvReader {
 public:
  explicit CsvReader(std::string_view text) : text_(text), at_(start_of(text)) {}

  CsvReading read(std::string_view mark) {
    result_.rows.kind = Value::Kind::list;
    auto header = next_row();
    while (header && !mark.empty() && take_setting(*header, mark))
      header = next_row();
    if (!header) {
      problem("the table is empty; its first line names the columns", 0);
      return std::move(result_);
    }
    if (!take_header(*header)) return std::move(result_);
    while (auto row = next_row())
      if (!take_row(*row)) break;
    return std::move(result_);
  }

 private:
  void problem(std::string message, std::uint32_t offset) {
    result_.problems.push_back({"", std::move(message), offset});
  }

  bool ended() const { return at_ >= text_.size(); }
  std::uint32_t here() const { return static_cast<std::uint32_t>(at_); }

  bool at_line_end() const {
    return ended() || text_[at_] == '\n' || text_.substr(at_, 2) == "\r\n";
  }

  void skip_line_end() {
    if (!ended() && text_[at_] == '\r') ++at_;
    if (!ended()) ++at_;
  }

  /// The fields of the next line that is not empty.
  std::optional<std::vector<Field>> next_row() {
    while (!ended() && at_line_end())
      skip_line_end();
    if (ended()) return {};
    std::vector<Field> row;
    row.push_back(next_field());
    while (!ended() && text_[at_] == ',') {
      ++at_;
      row.push_back(next_field());
    }
    skip_line_end();
    return row;
  }

  Field next_field() {
    while (!ended() && (text_[at_] == ' ' || text_[at_] == '\t'))
      ++at_;
    Field field{{}, here(), !ended() && text_[at_] == '"'};
    if (field.quoted) read_quoted(field);
    const std::size_t start = at_;
    while (!at_line_end() && text_[at_] != ',')
      ++at_;
    const std::string rest = trimmed(std::string(text_.substr(start, at_ - start)));
    if (!field.quoted)
      field.text = rest;
    else if (!rest.empty())
      problem("\"" + rest + "\" follows the closing quote; double a quote that is meant",
              static_cast<std::uint32_t>(start));
    return field;
  }

  void read_quoted(Field& field) {
    for (++at_; !ended(); ++at_) {
      if (text_[at_] != '"') {
        field.text += text_[at_];
        continue;
      }
      if (text_.substr(at_, 2) != "\"\"") {
        ++at_;
        return;
      }
      field.text += text_[at_++];
    }
    unclosed_ = true;
    problem("a quote is opened here and never closed", field.offset);
  }

  /// False when it is the header.
  bool take_setting(const std::vector<Field>& row, std::string_view mark) {
    const auto filled = [](const Field& field) { return !field.text.empty(); };
    if (std::none_of(row.begin(), row.end(), filled)) return true;
    const bool marked = std::any_of(
        row.begin(), row.end(), [&](const Field& field) { return trimmed(field.text) == mark; });
    const bool pair = row.size() >= 2 && filled(row[0]) && filled(row[1]) &&
                      std::none_of(row.begin() + 2, row.end(), filled);
    if (marked || !pair) return false;
    const std::string name = trimmed(row[0].text);
    if (std::any_of(result_.settings.begin(), result_.settings.end(),
                    [&](const Entry& setting) { return setting.key == name; }))
      problem("\"" + name + "\" is set twice; keep one", row[0].offset);
    result_.settings.push_back({name, row[0].offset, value_of(row[1])});
    return true;
  }

  static Value value_of(const Field& field) {
    Value value;
    value.text = trimmed(field.text);
    value.kind = is_number(value.text) ? Value::Kind::number : Value::Kind::text;
    value.offset = field.offset;
    return value;
  }

  bool take_header(const std::vector<Field>& header) {
    if (header.size() == 1 && header.front().text.find(';') != std::string::npos) {
      problem("its columns are parted by semicolons; save it with commas, and with decimal points",
              header.front().offset);
      return false;
    }
    for (const Field& field : header) {
      const std::string name = trimmed(field.text);
      if (name.empty())
        problem("column " + std::to_string(names_.size() + 1) + " has no name", field.offset);
      else if (std::find(names_.begin(), names_.end(), name) != names_.end())
        problem("column \"" + name + "\" is there twice; keep one", field.offset);
      names_.push_back(name);
      result_.header.push_back({name, field.offset, {}});
    }
    return result_.problems.empty();
  }

  /// False when there are too many values: no more is read.
  bool take_row(const std::vector<Field>& row) {
    count_ += row.size();
    if (count_ > kMaxValues) {
      problem("more than " + std::to_string(kMaxValues) + " fields in one table",
              row.front().offset);
      return false;
    }
    const bool blank =
        std::all_of(row.begin(), row.end(), [](const Field& field) { return field.text.empty(); });
    if (blank) return true;
    if (row.size() != names_.size()) {
      tell_wrong_width(row);
      return true;
    }
    Value object;
    object.kind = Value::Kind::object;
    object.offset = row.front().offset;
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (!trimmed(row[i].text).empty())
        object.entries.push_back({names_[i], row[i].offset, value_of(row[i])});
    }
    result_.rows.list.push_back(std::move(object));
    return true;
  }

  void tell_wrong_width(const std::vector<Field>& row) {
    if (unclosed_) return;
    const bool more = row.size() > names_.size();
    problem("the row has " + std::to_string(row.size()) +
                (row.size() == 1 ? " field," : " fields,") + " the header " +
                std::to_string(names_.size()) +
                (more ? "; a decimal comma is a point here, and words with a comma stand in quotes"
                      : "; leave a field empty, but keep its comma"),
            more ? row[names_.size()].offset : row.back().offset);
  }

  std::string_view text_;
  std::size_t at_;
  std::size_t count_ = 0;  // of fields in rows
  bool unclosed_ = false;  // a quote went on to the end of the text
  std::vector<std::string> names_;
  CsvReading result_;
};

}  // namespace

CsvReading read_csv(std::string_view text, std::string_view mark) {
  return CsvReader(text).read(mark);
}

}  // namespace haunch
