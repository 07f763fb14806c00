#include "printed_sheet.h"

#include <algorithm>
#include <cstdlib>
#include <sstream>
#include <utility>

namespace haunch::test {
namespace {

std::size_t indent_of(const std::string& line) {
  return std::min(line.find_first_not_of(' '), line.size());
}

/// Words are told with single spaces between them; cells stand at least two apart.
bool is_table_line(const std::string& line) {
  return line.find("  ", indent_of(line)) != std::string::npos;
}

std::string trimmed(std::string text) {
  text.erase(0, indent_of(text));
  text.erase(text.find_last_not_of(' ') + 1);
  return text;
}

/// Where columns begin and end: apart wherever two columns of characters are blank in all lines.
std::vector<std::pair<std::size_t, std::size_t>> columns_of(const std::vector<std::string>& lines) {
  std::size_t width = 0;
  for (const std::string& line : lines)
    width = std::max(width, line.size());
  const auto blank = [&](std::size_t at) {
    return std::all_of(lines.begin(), lines.end(), [&](const std::string& line) {
      return at >= line.size() || line[at] == ' ';
    });
  };
  std::vector<std::pair<std::size_t, std::size_t>> columns;
  for (std::size_t at = 0; at < width; ++at) {
    if (blank(at)) continue;
    const bool goes_on = !columns.empty() && columns.back().second + 1 >= at;
    if (goes_on)
      columns.back().second = at + 1;
    else
      columns.emplace_back(at, at + 1);
  }
  return columns;
}

/// A table in the making.
struct Lines {
  std::string above;
  std::vector<std::string> lines;
  std::map<std::size_t, std::string> more;  // what goes on below the last column, by line
};

PrintedTable table_of(const Lines& its) {
  PrintedTable table;
  table.above = its.above;
  const auto columns = columns_of(its.lines);
  for (std::size_t number = 0; number < its.lines.size(); ++number) {
    const std::string& line = its.lines[number];
    std::vector<std::string> cells;
    for (const auto& [from, to] : columns)
      cells.push_back(from < line.size() ? trimmed(line.substr(from, to - from)) : "");
    if (const auto more = its.more.find(number); more != its.more.end())
      cells.back() += " " + more->second;
    (number == 0 ? table.titles = cells : table.rows.emplace_back(cells));
  }
  return table;
}

/// Reads the lines below one heading.
class SectionReader {
 public:
  PrintedSection read(const std::string& heading, const std::vector<std::string>& lines) {
    section_.heading = heading;
    for (const std::string& line : lines)
      add(line);
    end_table();
    section_.below = words_;
    return section_;
  }

 private:
  void add(const std::string& line) {
    const bool in_table = !table_.lines.empty();
    if (is_table_line(line)) {
      if (in_table && begins_another(line)) end_table();
      if (table_.lines.empty()) table_.above = std::exchange(words_, {});
      table_.lines.push_back(line);
    } else if (in_table && indent_of(line) > kDeep) {
      std::string& more = table_.more[table_.lines.size() - 1];
      more += (more.empty() ? "" : " ") + trimmed(line);
    } else {
      end_table();
      words_ += (words_.empty() ? "" : " ") + trimmed(line);
    }
  }

  /// Marks are capitals, titles are not.
  bool begins_another(const std::string& line) const {
    const std::string first = trimmed(line);
    if (section_.heading.starts_with("CUT LIST")) return false;  // beads are a row there
    for (const char* title : {"in ", "on ", "pane ", "beads ", "thick "})
      if (first.starts_with(title)) return true;
    return false;
  }

  void end_table() {
    if (!table_.lines.empty()) section_.tables.push_back(table_of(table_));
    table_ = {};
  }

  static constexpr std::size_t kDeep = 8;
  PrintedSection section_;
  Lines table_;
  std::string words_;
};

}  // namespace

bool PrintedTable::has(std::string_view title) const {
  return std::find(titles.begin(), titles.end(), title) != titles.end();
}

std::string PrintedTable::cell(const std::vector<std::string>& row, std::string_view title) const {
  const auto at = std::find(titles.begin(), titles.end(), title);
  return at == titles.end() ? "" : row[static_cast<std::size_t>(at - titles.begin())];
}

std::optional<double> PrintedTable::figure(const std::vector<std::string>& row,
                                           std::string_view title) const {
  return figure_in(cell(row, title));
}

std::vector<const PrintedSection*> PrintedSheet::named(std::string_view heading) const {
  std::vector<const PrintedSection*> found;
  for (const PrintedSection& section : sections)
    if (section.heading.starts_with(heading)) found.push_back(&section);
  return found;
}

std::vector<const PrintedTable*> PrintedSheet::tables(std::string_view heading) const {
  std::vector<const PrintedTable*> found;
  for (const PrintedSection* section : named(heading))
    for (const PrintedTable& table : section->tables)
      found.push_back(&table);
  return found;
}

PrintedSheet read_sheet(const std::string& page) {
  PrintedSheet sheet;
  std::istringstream text(page);
  std::vector<std::string> lines;
  std::string heading;
  bool first = true;
  const auto end = [&] {
    if (first)
      for (const std::string& line : lines)
        sheet.head += trimmed(line) + " ";
    else if (!heading.empty()) {
      // "GROOVES, the whole length: 6.1 wide": what all below has in common.
      if (const std::size_t colon = heading.find(": "); colon != std::string::npos)
        lines.insert(lines.begin(), " " + heading.substr(colon + 1));
      sheet.sections.push_back(SectionReader().read(heading, lines));
    }
    first = false;
    lines.clear();
    heading.clear();
  };
  for (std::string line; std::getline(text, line);) {
    // In a cabinet's sheet headings follow each other without a line between them.
    if (line.empty() || (!first && indent_of(line) == 0)) end();
    if (line.empty()) continue;
    if (!first && heading.empty())
      heading = line;
    else
      lines.push_back(line);
  }
  end();
  return sheet;
}

std::vector<std::string> marks_in(const std::string& cell) {
  std::istringstream words(cell);
  std::vector<std::string> marks;
  for (std::string mark; words >> mark;)
    marks.push_back(mark);
  return marks;
}

std::optional<double> figure_in(const std::string& cell) {
  const std::string digits = cell.starts_with("~") ? cell.substr(1) : cell;
  char* end = nullptr;
  const double value = std::strtod(digits.c_str(), &end);
  if (digits.empty() || *end != '\0') return std::nullopt;
  return value;
}

std::optional<double> figure_before(const std::string& text, std::string_view words) {
  const std::size_t end = text.find(words);
  if (end == std::string::npos) return std::nullopt;
  const std::size_t space = text.rfind(' ', end - 1);
  const std::size_t from = space == std::string::npos ? 0 : space + 1;
  return figure_in(text.substr(from, end - from));
}

std::vector<std::pair<double, double>> spans_in(const std::string& cell) {
  std::vector<std::pair<double, double>> spans;
  std::istringstream words(cell);
  std::string low;
  std::string to;
  std::string high;
  while (words >> low >> to >> high) {
    if (high.ends_with(",")) high.pop_back();
    spans.emplace_back(figure_in(low).value_or(0), figure_in(high).value_or(0));
  }
  return spans;
}

}  // namespace haunch::test
