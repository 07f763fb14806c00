#include "text_table.h"

#include <algorithm>

#include "utf8.h"

namespace haunch {
namespace {

constexpr int kFinestPlacesMm = 3;
constexpr int kFinestPlacesInch = 4;
constexpr std::size_t kBetweenColumns = 2;

constexpr std::size_t kNarrowestColumn = 24;

/// The byte at which the character number `column` begins; the end where there are fewer.
std::size_t byte_at(std::string_view text, std::size_t column) {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (!continues_character(text[i]) && column-- == 0) return i;
  return text.size();
}

/// A line wider than the page, its last column, from `from` on, going on below itself.
std::string broken(const std::string& line, std::size_t from) {
  if (from + kNarrowestColumn > kPageWidth) return line;
  const std::size_t start = byte_at(line, from);
  return line.substr(0, start) + wrapped(std::string_view(line).substr(start), kPageWidth, from);
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
    const std::string_view word = text.substr(0, text.find(' '));
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

int LengthPrinter::places_for(Length length) const {
  return exact_places(length, unit_, unit_ == Unit::mm ? kFinestPlacesMm : kFinestPlacesInch);
}

std::string LengthPrinter::with_places(Length length, int places) const {
  if (as_fraction()) return plain_inches(length, style_.inch_denominator);
  FixedText fixed = fixed_decimal(length, unit_, places);
  return fixed.exact ? std::move(fixed.text) : "~" + fixed.text;
}

std::string LengthPrinter::one(Length length) const {
  return with_places(length, places_for(length));
}

std::vector<std::string> LengthPrinter::column(const std::vector<Length>& lengths) const {
  int places = 0;
  for (const Length length : lengths)
    places = std::max(places, places_for(length));
  std::vector<std::string> texts;
  texts.reserve(lengths.size());
  for (const Length length : lengths)
    texts.push_back(with_places(length, places));
  return texts;
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
    return cell.length || cell.words.empty() || cell.words == "-" || is_count(cell.words);
  });
}

std::vector<std::string> TextTable::printed_column(std::size_t column,
                                                   const LengthPrinter& lengths) const {
  std::vector<Length> values;
  for (const auto& row : rows_)
    if (const auto& length = row[column].length) values.push_back(*length);
  std::vector<std::string> printed = lengths.column(values);
  std::vector<std::string> texts;
  texts.reserve(rows_.size() + 1);
  texts.push_back(titles_[column]);
  std::size_t next = 0;
  for (const auto& row : rows_) {
    const Cell& cell = row[column];
    if (cell.length)
      texts.push_back(std::move(printed[next++]));
    else
      texts.push_back(cell.words);
  }
  return texts;
}

std::string TextTable::text(const LengthPrinter& lengths, std::size_t indent) const {
  std::vector<std::string> lines(rows_.size() + 1);
  std::vector<std::size_t> widths(lines.size());
  for (std::string& line : lines)
    line.reserve(kPageWidth);
  std::size_t used = indent;
  std::size_t last_column = indent;
  for (std::size_t column = 0; column < titles_.size(); ++column) {
    if (is_empty(column)) continue;
    const std::vector<std::string> texts = printed_column(column, lengths);
    std::size_t widest = 0;
    for (const std::string& text : texts)
      widest = std::max(widest, display_width(text));
    const bool right = is_numeric(column);
    for (std::size_t line = 0; line < lines.size(); ++line) {
      if (texts[line].empty()) continue;
      const std::size_t width = display_width(texts[line]);
      const std::size_t start = right ? used + widest - width : used;
      lines[line].append(start - widths[line], ' ');
      lines[line] += texts[line];
      widths[line] = start + width;
    }
    last_column = used;
    used += widest + kBetweenColumns;
  }
  std::string all;
  for (std::size_t line = 0; line < lines.size(); ++line) {
    all += widths[line] > kPageWidth ? broken(lines[line], last_column) : lines[line];
    all += '\n';
  }
  return all;
}

}  // namespace haunch
