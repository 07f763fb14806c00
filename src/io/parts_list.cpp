#include "parts_list.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <set>
#include <utility>

#include "csv_table.h"
#include "encoding.h"
#include "materials.h"
#include "value_reader.h"

namespace haunch {
namespace {

const std::vector<std::string_view> kPartKeys = {"name",      "quantity", "length", "width",
                                                 "thickness", "material", "grain",  "rough"};
constexpr std::array<std::string_view, 3> kSizes = {"length", "width", "thickness"};
constexpr std::array<std::string_view, 4> kNeeded = {"name", "length", "width", "thickness"};
constexpr int kMostOfOne = 100'000;
constexpr std::size_t kMostParts = 100'000;

template <typename List>
bool is_among(std::string_view name, const List& list) {
  return std::find(list.begin(), list.end(), name) != list.end();
}

/// Reads the parts of one document.
class PartsReader {
 public:
  explicit PartsReader(std::optional<Unit> units) : values_(units, "") {}

  void read(const Value& list) {
    for (std::size_t i = 0; i < list.list.size(); ++i)
      read_part(list.list[i], child_path("/parts", i));
  }

  PartsReading take(std::optional<Unit> units) {
    PartsReading reading{{}, units, values_.take_problems()};
    if (reading.problems.empty()) reading.parts = std::move(parts_);
    return reading;
  }

  ValueReader& values() { return values_; }

 private:
  void read_part(const Value& part, const std::string& path) {
    if (!values_.is_object(part, path, "a part; write {\"name\": …, \"length\": …}")) return;
    for (const Entry& entry : part.entries)
      if (!is_among(entry.key, kPartKeys))
        values_.unknown_key(entry, child_path(path, entry.key), kPartKeys);
    for (const std::string_view key : kNeeded)
      if (part.find(key) == nullptr && !values_.was_meant(child_path(path, key)))
        values_.problem(path, "has no " + std::string(key) +
                                  "; every part needs name, length, width and thickness");
    LumberPart read;
    read.label = read.name = text(part, "name", path);
    read.material = text(part, "material", path);
    read.of_sheet = is_sheet_goods(read.material);
    read.finished = {size(part, "length", path), size(part, "width", path),
                     size(part, "thickness", path), Length()};
    if (const Value* grain = part.find("grain"))
      if (values_.choice(*grain, child_path(path, "grain"), {"along", "across"}) == 1U)
        std::swap(read.finished.length, read.finished.width);
    if (const Value* rough = part.find("rough"))
      read.is_rough = values_.flag(*rough, child_path(path, "rough")).value_or(false);
    add(std::move(read), part, path);
  }

  void add(LumberPart part, const Value& row, const std::string& path) {
    const Value* quantity = row.find("quantity");
    const int number =
        quantity == nullptr
            ? 1
            : values_.whole_number(*quantity, child_path(path, "quantity"), 1, kMostOfOne)
                  .value_or(1);
    if (!part.name.empty() && !names_.insert(part.name).second)
      values_.problem(child_path(path, "name"),
                      "\"" + part.name + "\" is there twice; give each part its own name");
    if (parts_.size() + static_cast<std::size_t>(number) > kMostParts) {
      values_.problem(path, "more than " + std::to_string(kMostParts) + " parts in one list");
      return;
    }
    const std::string name = part.name;
    for (int copy = 1; copy <= number; ++copy) {
      part.name = number == 1 ? name : name + "#" + std::to_string(copy);
      part.item = part.face = part.name;
      parts_.push_back(part);
    }
  }

  std::string text(const Value& part, std::string_view key, const std::string& path) {
    const Value* value = part.find(key);
    if (value == nullptr) return {};
    return values_.text(*value, child_path(path, key)).value_or("");
  }

  Length size(const Value& part, std::string_view key, const std::string& path) {
    const Value* value = part.find(key);
    if (value == nullptr) return {};
    return values_.length(*value, child_path(path, key), false).value_or(Length());
  }

  ValueReader values_;
  std::set<std::string> names_;
  std::vector<LumberPart> parts_;
};

// ---- CSV

/// Takes the unit off a column's name: the header's, which all share.
class Columns {
 public:
  explicit Columns(const std::vector<Entry>& header) {
    for (const Entry& column : header)
      take(column);
    for (const std::string_view key : kNeeded)
      if (!is_among(key, keys_))
        problems_.push_back({"",
                             "has no column \"" + std::string(key) + (key == "name" ? "" : "_mm") +
                                 "\"; every part needs name, length, width and thickness",
                             header.empty() ? 0 : header.front().offset});
  }

  std::string key_of(const std::string& column) const {
    for (const std::string_view size : kSizes)
      if (column == std::string(size) + "_mm" || column == std::string(size) + "_in")
        return std::string(size);
    return column;
  }
  std::optional<Unit> unit() const { return unit_; }
  std::vector<Problem> take_problems() { return std::move(problems_); }

 private:
  void take(const Entry& column) {
    const std::string key = key_of(column.key);
    keys_.push_back(key);
    if (is_among(column.key, kSizes)) {
      problem(column, "column \"" + key + "\" has no unit; call it \"" + key + "_mm\" or \"" + key +
                          "_in\"");
    } else if (key != column.key) {
      const Unit unit = column.key.ends_with("_in") ? Unit::inch : Unit::mm;
      if (unit_ && *unit_ != unit)
        problem(column, "the columns have both units; keep to one in a file");
      unit_ = unit;
    } else if (!is_among(key, kPartKeys)) {
      const std::string_view nearest = nearest_word(key, kPartKeys);
      problem(column, "column \"" + key + "\" is not known; " +
                          (nearest.empty() ? "the columns are " + quoted_list(kPartKeys, "and") +
                                                 ", sizes with _mm or _in"
                                           : "did you mean \"" + std::string(nearest) + "\"?"));
    }
  }

  void problem(const Entry& column, std::string message) {
    problems_.push_back({"", std::move(message), column.offset});
  }

  std::vector<std::string> keys_;
  std::optional<Unit> unit_;
  std::vector<Problem> problems_;
};

/// Cells whose key holds words are words, and true is true, however the spreadsheet wrote it.
void settle_cell(Entry& entry) {
  if (entry.key == "name" || entry.key == "material") entry.value.kind = Value::Kind::text;
  if (entry.key != "rough") return;
  const std::string& word = entry.value.text;
  if (word != "true" && word != "false" && word != "TRUE" && word != "FALSE") return;
  entry.value.kind = Value::Kind::boolean;
  entry.value.text = word == "true" || word == "TRUE" ? "true" : "false";
}

/// "/parts/3/width" becomes "column width"; the place says the rest.
std::string column_words(const std::string& path) {
  if (std::count(path.begin(), path.end(), '/') < 3) return {};
  return "column " + path.substr(path.rfind('/') + 1);
}

}  // namespace

PartsReading read_parts(const Value& document) {
  PartsReader head({});
  if (!head.values().is_object(document, "",
                               "a list of parts; write {\"units\": \"mm\", \"parts\": […]}"))
    return head.take({});
  for (const Entry& entry : document.entries)
    if (entry.key != "$schema" && entry.key != "units" && entry.key != "parts")
      head.values().unknown_key(entry, child_path("", entry.key), {"units", "parts"});
  std::optional<Unit> units;
  if (const Value* value = document.find("units"))
    if (const auto number = head.values().choice(*value, "/units", {"mm", "in"}))
      units = *number == 0 ? Unit::mm : Unit::inch;
  const Value* list = document.find("parts");
  if (list == nullptr || list->kind != Value::Kind::list || list->list.empty())
    head.values().problem(list == nullptr ? "" : "/parts",
                          "lists no parts; write \"parts\": [{\"name\": …, \"length\": …}]");
  std::vector<Problem> problems = head.values().take_problems();
  if (!problems.empty() || list == nullptr) return {{}, units, std::move(problems)};
  PartsReader reader(units);
  reader.read(*list);
  return reader.take(units);
}

PartsReading read_parts_csv(std::string_view text) {
  if (auto problem = encoding_problem(text)) return {{}, {}, {std::move(*problem)}};
  CsvReading csv = read_csv(text);
  Columns columns(csv.header);
  std::vector<Problem> problems = std::move(csv.problems);
  if (!csv.header.empty()) add(problems, columns.take_problems());
  if (problems.empty() && csv.rows.list.empty())
    problems.push_back({"", "no row follows the first, which names the columns", 0});
  if (!problems.empty()) return {{}, columns.unit(), std::move(problems)};
  Value document;
  document.kind = Value::Kind::object;
  for (Value& row : csv.rows.list)
    for (Entry& entry : row.entries) {
      entry.key = columns.key_of(entry.key);
      settle_cell(entry);
    }
  document.entries.push_back({"parts", 0, std::move(csv.rows)});
  PartsReader reader(columns.unit());
  reader.read(document.entries.front().value);
  PartsReading reading = reader.take(columns.unit());
  for (Problem& problem : reading.problems) {
    if (!problem.offset) problem.offset = offset_of(document, problem.path);
    problem.path = column_words(problem.path);
  }
  return reading;
}

}  // namespace haunch
