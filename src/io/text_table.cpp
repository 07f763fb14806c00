#include "text_table.h"

#include <algorithm>
#include <utility>

#include "utf8.h"

namespace haunch {
namespace {

constexpr int kFinestPlacesMm = 3;
constexpr int kPlacesOfFits = 2;
constexpr int kFinestPlacesInch = 4;
/// Half of a 64th of an inch: no more than that is between two marks of a rule.
constexpr Length kUnmarked = Length::from_inch_parts(1, 128);
constexpr std::size_t kBetweenColumns = 2;

constexpr std::size_t kNarrowestColumn = 14;

/// Whether a space stands within a figure: "37" before "63/64", "63/64" before "+0.0078", or within
/// a span, "13 to 79".
bool goes_on_with(std::string_view word, std::string_view rest) {
  const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
  if (word.empty() || rest.size() < 2) return false;
  const bool is_to = word.ends_with(" to");
  if (is_to && is_digit(rest.front())) return true;
  if (!is_digit(word.back())) return false;
  const std::string_view next = rest.substr(0, rest.find(' '));
  if (next == "to") return rest.size() > 3 && is_digit(rest[3]);
  if (next[0] == '+' || next[0] == '-') return next.size() > 1 && is_digit(next[1]);
  return is_digit(next[0]) && next.find('/') != std::string_view::npos;
}

/// As much of `text` as is not to be broken.
std::string_view first_word(std::string_view text) {
  std::size_t end = std::min(text.find(' '), text.size());
  while (end + 1 < text.size() && goes_on_with(text.substr(0, end), text.substr(end + 1)))
    end = std::min(text.find(' ', end + 1), text.size());
  return text.substr(0, end);
}

bool is_count(const std::string& text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string::npos;
}

}  // namespace

std::size_t display_width(std::string_view text) {
  return text.size() -
         static_cast<std::size_t>(std::count_if(text.begin(), text.end(), continues_character));
}

std::string wrapped(std::string_view text, std::size_t width, std::size_t indent) {
  std::string out;
  out.reserve(text.size() + text.size() / width * (indent + 2));
  std::size_t used = indent;
  while (!text.empty()) {
    const std::string_view word = first_word(text);
    const std::size_t wide = display_width(word);
    const bool line_begins = used == indent;
    if (!line_begins && used + 1 + wide > width) {
      out += '\n';
      out.append(indent, ' ');
      used = indent;
    } else if (!line_begins) {
      out += ' ';
      ++used;
    }
    out += word;
    used += wide;
    text.remove_prefix(std::min(text.size(), word.size() + 1));
  }
  return out;
}

std::string paragraph(std::string_view text, std::size_t indent) {
  return text.empty() ? "" : std::string(indent, ' ') + wrapped(text, kPageWidth, indent) + "\n";
}

std::string hanging(std::string_view text, std::size_t indent) {
  return text.empty() ? ""
                      : std::string(indent, ' ') + wrapped(text, kPageWidth, indent + 2) + "\n";
}

LengthPrinter LengthPrinter::fine() const {
  LengthStyle style = style_;
  style.decimals = std::max(style.decimals, kPlacesOfFits);
  style.all_left_over = true;
  return {unit_, style, page_width_, rounded_};
}

LengthPrinter LengthPrinter::exact() const {
  return {unit_, {style_.inch_denominator}, page_width_, rounded_};
}

int LengthPrinter::places_for(Length length) const {
  if (unit_ == Unit::inch) return exact_places(length, unit_, kFinestPlacesInch);
  const bool shows_nothing = length != Length() && as_printed(length) == Length();
  return exact_places(length, unit_, shows_nothing ? kFinestPlacesMm : style_.decimals);
}

Length LengthPrinter::as_printed(Length length) const {
  if (style_.is_exact() || (unit_ == Unit::inch && !as_fraction())) return length;
  if (unit_ == Unit::inch) {
    const Length near =
        nearest_multiple(length, Length::from_inch_parts(1, style_.inch_denominator));
    const Length off = std::max(length, near) - std::min(length, near);
    return style_.all_left_over || off > kUnmarked || near == Length() ? length : near;
  }
  std::int64_t thousandths = 1;
  for (int places = style_.decimals; places < kFinestPlacesMm; ++places)
    thousandths *= 10;
  return nearest_multiple(length, Length::from_mm_thousandths(thousandths));
}

std::string LengthPrinter::fraction(Length length) const {
  const Length shown = as_printed(length);
  note_rounding(shown != length);
  return plain_inches(shown, style_.inch_denominator);
}

std::string LengthPrinter::with_places(Length length, int places) const {
  if (as_fraction()) return fraction(length);
  FixedText fixed = fixed_decimal(length, unit_, places);
  note_rounding(!fixed.exact);
  const bool marked = unit_ == Unit::inch || style_.is_exact();
  return fixed.exact || !marked ? std::move(fixed.text) : "~" + fixed.text;
}

std::string LengthPrinter::one(Length length) const {
  return with_places(length, places_for(length));
}

void TextTable::add_alike(std::vector<Cell> row) {
  const auto is_alike = [&](const std::vector<Cell>& other) {
    return std::equal(row.begin(), row.end(), other.begin(), [](const Cell& a, const Cell& b) {
      return a.is_mark || (a.words == b.words && a.length == b.length);
    });
  };
  const auto same = std::find_if(rows_.begin(), rows_.end(), is_alike);
  if (same == rows_.end()) return add(std::move(row));
  for (std::size_t column = 0; column < row.size(); ++column) {
    std::string& marks = (*same)[column].words;
    const std::string& mark = row[column].words;
    const bool is_new = (" " + marks + " ").find(" " + mark + " ") == std::string::npos;
    if (row[column].is_mark && is_new) marks += " " + mark;
  }
}

bool TextTable::is_empty(std::size_t column) const {
  return std::all_of(rows_.begin(), rows_.end(), [column](const std::vector<Cell>& row) {
    return !row[column].length && row[column].words.empty();
  });
}

bool TextTable::is_numeric(std::size_t column) const {
  return std::all_of(rows_.begin(), rows_.end(), [column](const std::vector<Cell>& row) {
    const Cell& cell = row[column];
    return cell.length || cell.is_figure || cell.words.empty() || cell.words == "-" ||
           is_count(cell.words);
  });
}

PrintedColumn::Holds TextTable::held_in(std::size_t column) const {
  const auto any = [&](bool Cell::*is_so) {
    return std::any_of(rows_.begin(), rows_.end(),
                       [&](const std::vector<Cell>& row) { return row[column].*is_so; });
  };
  if (any(&Cell::is_name)) return PrintedColumn::Holds::names;
  if (any(&Cell::is_mark)) return PrintedColumn::Holds::marks;
  return is_numeric(column) ? PrintedColumn::Holds::figures : PrintedColumn::Holds::words;
}

PrintedColumn TextTable::printed_column(std::size_t number, const LengthPrinter& lengths) const {
  const LengthPrinter fine = lengths.fine();
  const auto printer = [&](const Cell& cell) -> const LengthPrinter& {
    return cell.is_fine ? fine : lengths;
  };
  int places = 0;  // all with the same number of decimals
  for (const auto& row : rows_)
    if (const Cell& cell = row[number]; cell.length)
      places = std::max(places, printer(cell).places_for(*cell.length));
  PrintedColumn column{{}, 0, held_in(number)};
  column.texts.reserve(rows_.size() + 1);
  column.texts.push_back(titles_[number]);
  for (const auto& row : rows_) {
    const Cell& cell = row[number];
    column.texts.push_back(cell.length ? printer(cell).with_places(*cell.length, places)
                                       : cell.words);
  }
  for (const std::string& text : column.texts)
    column.widest = std::max(column.widest, display_width(text));
  return column;
}

PrintedTable TextTable::printed(const LengthPrinter& lengths) const {
  PrintedTable table{{}, rows_.size(), lengths.page_width()};
  for (std::size_t number = 0; number < titles_.size(); ++number)
    if (!is_empty(number)) table.columns.push_back(printed_column(number, lengths));
  return table;
}

namespace {

/// Where a column begins, and whether on a line of its own below those before it.
struct ColumnStart {
  std::size_t at;
  bool is_below;
};

std::vector<ColumnStart> starts_of(const std::vector<PrintedColumn>& columns, std::size_t indent,
                                   std::size_t width) {
  constexpr std::size_t kBelow = 4;
  std::size_t whole = indent;
  for (const PrintedColumn& column : columns)
    whole += column.widest + (&column == &columns.back() ? 0 : kBetweenColumns);
  // A table that is a little too wide goes to the left.
  if (whole > width && whole - width <= indent) indent -= whole - width;
  std::vector<ColumnStart> starts;
  std::size_t used = indent;
  for (const PrintedColumn& column : columns) {
    const bool goes_on = &column == &columns.back() && !column.right();
    const std::size_t least = goes_on ? std::min(column.widest, kNarrowestColumn) : column.widest;
    const bool is_below = !starts.empty() && used + least > width;
    if (is_below) used = indent + kBelow;
    starts.push_back({used, is_below});
    used += column.widest + kBetweenColumns;
  }
  return starts;
}

/// Whether a row has nothing more to say from this column on.
bool is_blank_from(const std::vector<PrintedColumn>& columns, std::size_t first, std::size_t row) {
  return std::all_of(columns.begin() + static_cast<std::ptrdiff_t>(first), columns.end(),
                     [row](const PrintedColumn& column) { return column.texts[row].empty(); });
}

}  // namespace

std::string PrintedTable::text(std::size_t indent) const {
  const std::size_t width = page_width;
  const std::vector<ColumnStart> starts = starts_of(columns, indent, width);
  std::string all;
  for (std::size_t row = 0; row <= rows; ++row) {
    std::string line;
    std::size_t used = 0;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (starts[i].is_below && is_blank_from(columns, i, row)) break;
      if (starts[i].is_below && !line.empty()) all += std::exchange(line, {}) + "\n";
      if (starts[i].is_below) used = 0;
      const std::string& text = columns[i].texts[row];
      if (text.empty()) continue;
      const std::size_t its = display_width(text);
      const std::size_t start = starts[i].at + (columns[i].right() ? columns[i].widest - its : 0);
      line.append(start - used, ' ');
      line += start + its > width ? wrapped(text, width, start) : text;
      used = start + its;
    }
    all += line + "\n";
  }
  return all;
}

std::string fitted(std::string_view page, std::size_t width) {
  std::string all;
  while (!page.empty()) {
    const std::string_view line = page.substr(0, page.find('\n'));
    const std::size_t indent = std::min(line.find_first_not_of(' '), line.size());
    if (display_width(line) > width)
      all += std::string(indent, ' ') + wrapped(line.substr(indent), width, indent + 2);
    else
      all += line;
    all += '\n';
    page.remove_prefix(std::min(page.size(), line.size() + 1));
  }
  return all;
}

}  // namespace haunch
