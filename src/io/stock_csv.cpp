// Stock files as CSV: settings above, then a table of boards.
#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "csv_table.h"
#include "encoding.h"
#include "stock_file.h"
#include "value_reader.h"

namespace haunch {
namespace {

constexpr std::array<std::string_view, 6> kUnitColumns = {"length",   "width",     "thickness",
                                                          "end_trim", "edge_trim", "defects"};
constexpr std::array<std::string_view, 10> kLengthSettings = {"kerf",
                                                              "trim.end",
                                                              "trim.edge",
                                                              "least_offcut.length",
                                                              "least_offcut.width",
                                                              "allowances.length",
                                                              "allowances.width",
                                                              "allowances.face",
                                                              "glue_up.limit",
                                                              "glue_up.jointing"};
const std::vector<std::string_view> kSettings = {"kerf_mm",
                                                 "trim.end_mm",
                                                 "trim.edge_mm",
                                                 "least_offcut.length_mm",
                                                 "least_offcut.width_mm",
                                                 "allowances.length_mm",
                                                 "allowances.width_mm",
                                                 "allowances.face_mm",
                                                 "glue_up.limit_mm",
                                                 "glue_up.jointing_mm",
                                                 "waste.percent",
                                                 "waste.of",
                                                 "match",
                                                 "currency",
                                                 "note"};

using NameAndUnit = std::pair<std::string, std::optional<Unit>>;

/// A name without its unit, and the unit, where it is one of `lengths`.
template <typename Names>
NameAndUnit parted(const std::string& name, const Names& lengths) {
  for (const std::string_view known : lengths) {
    if (name == std::string(known) + "_mm") return {std::string(known), Unit::mm};
    if (name == std::string(known) + "_in") return {std::string(known), Unit::inch};
  }
  return {name, {}};
}

NameAndUnit column_of(const std::string& name) {
  return parted(name, kUnitColumns);
}

NameAndUnit setting_of(const std::string& name) {
  return parted(name, kLengthSettings);
}

/// Reads the names: units out of them, and what is wrong with them.
class Names {
 public:
  void take_columns(std::vector<Entry>& header) {
    for (Entry& column : header)
      take(column, column_of(column.key));
    for (const std::string_view needed : {"id", "length", "width", "thickness"})
      if (std::none_of(header.begin(), header.end(),
                       [&](const Entry& column) { return column.key == needed; }))
        lacks(needed, header.empty() ? 0 : header.front().offset);
    for (const Entry& column : header)
      if (!is_among(column.key, stock_item_keys()))
        unknown("column", column, stock_item_keys(), "the columns are ");
  }

  void take_settings(std::vector<Entry>& settings) {
    for (Entry& setting : settings) {
      const NameAndUnit name = setting_of(setting.key);
      const bool is_length = is_among(setting.key, kLengthSettings);
      if (is_length)
        problem(setting, "setting \"" + setting.key + "\" has no unit; call it \"" + setting.key +
                             "_mm\" or \"" + setting.key + "_in\"");
      else if (!name.second && !is_among(setting.key, kSettings))
        unknown("setting", setting, kSettings, "the settings above the table are ");
      take(setting, name);
    }
  }

  std::optional<Unit> units() const { return units_; }
  std::vector<Problem> take_problems() { return std::move(problems_); }

 private:
  template <typename List>
  static bool is_among(std::string_view name, const List& list) {
    return std::find(list.begin(), list.end(), name) != list.end();
  }

  void problem(const Entry& entry, std::string message) {
    problems_.push_back({"", std::move(message), entry.offset});
  }

  void take(Entry& entry, const NameAndUnit& name) {
    entry.key = name.first;
    if (name.second && units_ && name.second != units_)
      problem(entry, "the columns have both units; keep to one in a file");
    if (name.second) units_ = name.second;
  }

  void lacks(std::string_view needed, std::uint32_t offset) {
    const std::string name = std::string(needed) + (needed == "id" ? "" : "_mm");
    problems_.push_back(
        {"", "has no column \"" + name + "\"; every board needs id, length, width and thickness",
         offset});
  }

  void unknown(const std::string& what, const Entry& entry,
               const std::vector<std::string_view>& known, const std::string& all) {
    const std::string_view nearest = nearest_word(entry.key, known);
    problem(entry, what + " \"" + entry.key + "\" is not known; " +
                       (nearest.empty() ? all + quoted_list(known, "and")
                                        : "did you mean \"" + std::string(nearest) + "\"?"));
  }

  std::optional<Unit> units_;
  std::vector<Problem> problems_;
};

/// Puts a setting where its dotted name says.
void add_setting(Value& document, const Entry& setting) {
  Value* where = &document;
  std::string key = setting.key;
  if (const std::size_t dot = key.find('.'); dot != std::string::npos) {
    const std::string group = key.substr(0, dot);
    key.erase(0, dot + 1);
    auto found = std::find_if(document.entries.begin(), document.entries.end(),
                              [&](const Entry& entry) { return entry.key == group; });
    if (found == document.entries.end()) {
      Value object;
      object.kind = Value::Kind::object;
      object.offset = setting.offset;
      found = document.entries.insert(found, {group, setting.offset, std::move(object)});
    }
    where = &found->value;
  }
  where->entries.push_back({key, setting.offset, setting.value});
}

/// "/stock/3/width" becomes "column width", "/trim/end" "setting trim.end"; the place says the
/// rest.
std::string path_words(const std::string& path) {
  if (!path.starts_with("/stock")) {
    std::string words = path.empty() ? path : "setting " + path.substr(1);
    std::replace(words.begin(), words.end(), '/', '.');
    return words;
  }
  const auto steps = std::count(path.begin(), path.end(), '/');
  if (steps < 3) return {};
  const std::size_t start = path.find('/', path.find('/', 1) + 1) + 1;
  return "column " + path.substr(start, path.find('/', start) - start);
}

/// Settings and rows as a stock file; every problem with its offset and its column.
StockReading read_table(CsvReading csv, std::optional<Unit> units) {
  Value document;
  document.kind = Value::Kind::object;
  for (const Entry& setting : csv.settings)
    add_setting(document, setting);
  for (Value& row : csv.rows.list)
    for (Entry& entry : row.entries)
      entry.key = column_of(entry.key).first;
  document.entries.push_back({"stock", 0, std::move(csv.rows)});
  StockReading reading = read_stock(document, units);
  for (Problem& problem : reading.problems) {
    if (!problem.offset) problem.offset = offset_of(document, problem.path);
    problem.path = path_words(problem.path);
    const std::size_t unitless = problem.message.find(" has no unit; give");
    if (unitless != std::string::npos)
      problem.message = problem.message.substr(0, unitless) +
                        " has no unit; call the columns \"length_mm\" or \"length_in\", and so on";
  }
  return reading;
}

}  // namespace

StockReading read_stock_csv(std::string_view text) {
  if (auto problem = encoding_problem(text)) return {{}, {std::move(*problem)}};
  CsvReading csv = read_csv(text, "id");
  Names names;
  names.take_settings(csv.settings);
  if (!csv.header.empty()) names.take_columns(csv.header);
  std::vector<Problem> problems = names.take_problems();
  const bool readable = problems.empty() && !csv.header.empty();
  std::move(csv.problems.begin(), csv.problems.end(), std::back_inserter(problems));
  std::optional<StockFile> file;
  std::optional<std::uint32_t> kerf_offset;
  for (const Entry& setting : csv.settings)
    if (setting.key == "kerf") kerf_offset = setting.value.offset;
  if (readable) {
    StockReading reading = read_table(std::move(csv), names.units());
    std::move(reading.problems.begin(), reading.problems.end(), std::back_inserter(problems));
    if (problems.empty()) file = std::move(reading.file);
    if (file) file->kerf_offset = kerf_offset;
  }
  std::stable_sort(problems.begin(), problems.end(),
                   [](const Problem& a, const Problem& b) { return *a.offset < *b.offset; });
  return {std::move(file), std::move(problems)};
}

}  // namespace haunch
