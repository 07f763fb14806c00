// Tables of text with aligned columns, and the lengths in them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "haunch/length_text.h"
#include "view.h"

namespace haunch {

/// How wide pages are made, where nothing else is asked for; numbers are never cut for it.
inline constexpr std::size_t kPageWidth = 80;

/// Prints lengths for people: millimetres with as few decimals as are exact, up to those of the
/// style; inches as fractions with what is left over, or decimal. In the exact style a figure that
/// had to be rounded begins with "~". What is not nothing is never printed as 0.
class LengthPrinter {
 public:
  /// `rounded` is set where a figure is not printed as it is.
  LengthPrinter(Unit unit, LengthStyle style, std::size_t page_width = kPageWidth,
                bool* rounded = nullptr)
      : unit_(unit), style_(style), page_width_(page_width), rounded_(rounded) {}

  std::string one(Length length) const;
  Unit unit() const { return unit_; }
  /// Of the page that they stand on.
  std::size_t page_width() const { return page_width_; }
  /// The same in decimals of an inch: a fraction of a 64th says nothing of fits and of what wood
  /// does.
  LengthPrinter in_decimals() const {
    return {unit_, {0, style_.decimals, style_.all_left_over}, page_width_, rounded_};
  }
  /// For what two pieces fit by, and a shop sets with a caliper: to 0.01 mm, inches with all that
  /// is left over.
  LengthPrinter fine() const;
  LengthPrinter exact() const;
  /// The length that the figure says: sums of them are those of the figures.
  Length as_printed(Length length) const;
  /// How many decimals a length needs in this style.
  int places_for(Length length) const;
  std::string with_places(Length length, int places) const;

 private:
  bool as_fraction() const { return unit_ == Unit::inch && style_.inch_denominator > 0; }
  std::string fraction(Length length) const;
  void note_rounding(bool is_rounded) const {
    if (is_rounded && rounded_ != nullptr) *rounded_ = true;
  }

  Unit unit_;
  LengthStyle style_;
  std::size_t page_width_;
  bool* rounded_;
};

/// How many columns of a terminal a text takes, one a character; it holds no combining ones.
std::size_t display_width(std::string_view text);

/// `text` broken at spaces into lines of at most `width`, later ones indented by `indent`.
std::string wrapped(std::string_view text, std::size_t width, std::size_t indent);

/// Lines of a page, all indented alike, or the later ones by two more; nothing where there is no
/// text.
std::string paragraph(std::string_view text, std::size_t indent = 2);
std::string hanging(std::string_view text, std::size_t indent = 2);

/// Lines of a page that are wider go on below themselves.
std::string fitted(std::string_view page, std::size_t width);

/// Words, or a length that the table prints. Not a variant: with a text in it, that of libstdc++ 12
/// is undefined when memory runs out while it is copied.
struct Cell {
  Cell(std::string text) : words(std::move(text)) {}
  Cell(const char* text) : words(text) {}
  Cell(Length size) : length(size) {}
  Cell(std::optional<Length> size) : length(size) {}  // none: empty
  /// The mark of a piece that a row is of, or of one that comes there.
  static Cell of_mark(std::string mark) {
    Cell cell(std::move(mark));
    cell.is_mark = true;
    return cell;
  }

  /// A length that two pieces fit by.
  static Cell of_fit(std::optional<Length> size) {
    Cell cell(size);
    cell.is_fine = true;
    return cell;
  }

  /// The mark of what a row is about, which others refer to by it.
  static Cell of_name(std::string mark) {
    Cell cell(std::move(mark));
    cell.is_name = true;
    return cell;
  }

  /// A figure that is no length, to be printed as it is: money, hours.
  static Cell of_figure(std::string decimal) {
    Cell cell(std::move(decimal));
    cell.is_figure = true;
    return cell;
  }

  std::string words;
  std::optional<Length> length;
  bool is_figure = false;
  bool is_mark = false;
  bool is_name = false;
  bool is_fine = false;
};

/// A column of a table whose figures are printed.
struct PrintedColumn {
  enum class Holds : unsigned char { figures, words, marks, names };

  std::vector<std::string> texts = {};  // its title, and what stands below that
  std::size_t widest = 0;
  Holds holds = Holds::words;

  bool right() const { return holds == Holds::figures; }
  friend bool operator==(const PrintedColumn&, const PrintedColumn&) = default;
};

struct PrintedTable {
  std::vector<PrintedColumn> columns = {};
  std::size_t rows = 0;  // the titles not counted
  std::size_t page_width = kPageWidth;

  /// In lines.
  std::string text(std::size_t indent) const;
  friend bool operator==(const PrintedTable&, const PrintedTable&) = default;
};

/// Lengths and counts to the right, words to the left; a column that is empty throughout is left
/// out. As text words in the last column go on below themselves where the page ends; columns for
/// which it has no room at all stand in a line below, their titles too.
class TextTable {
 public:
  explicit TextTable(std::vector<std::string> titles) : titles_(std::move(titles)) {}

  void add(std::vector<Cell> row) { rows_.push_back(std::move(row)); }
  /// A row that reads like another but for marks is put to it.
  void add_alike(std::vector<Cell> row);
  bool empty() const { return rows_.empty(); }
  PrintedTable printed(const LengthPrinter& lengths) const;
  std::string text(const LengthPrinter& lengths, std::size_t indent) const {
    return printed(lengths).text(indent);
  }

 private:
  PrintedColumn printed_column(std::size_t column, const LengthPrinter& lengths) const;
  PrintedColumn::Holds held_in(std::size_t column) const;
  bool is_empty(std::size_t column) const;
  bool is_numeric(std::size_t column) const;

  std::vector<std::string> titles_;
  std::vector<std::vector<Cell>> rows_;
};

}  // namespace haunch
