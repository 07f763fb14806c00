// A list of items as a sheet: a header of dotted keys, a row an item. A row becomes the document
// that it stands for, and nothing after this knows of sheets but the place of an error.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "csv_fields.h"
#include "document.h"
#include "view.h"

namespace haunch {

/// One row: an object, or what is wrong with it, each problem with an offset. Values have the
/// places of their cells, keys that of their column's name. A place in a list that the row leaves
/// open before one that it fills is null.
struct SheetItem {
  std::optional<Value> item;
  std::vector<Problem> problems;
};

class OrderSheet {
 public:
  /// `text` is kept; it must stay where it is.
  explicit OrderSheet(std::string_view text);

  /// What is wrong with the header, or with the text as a whole. Then its rows mean nothing.
  std::vector<Problem> take_problems() { return std::move(problems_); }
  char separator() const { return separator_; }
  /// The next row that is not blank.
  std::optional<SheetItem> next();

 private:
  struct Column {
    std::string name;
    std::vector<std::string> steps;  // none: it has no name
    std::uint32_t offset = 0;
    bool holds_words = false;
    std::vector<std::size_t> parts;  // columns of keys within this one
    std::string first;               // the one of those keys that a plain value is for
  };

  void read_header();
  void find_parts();
  void add_column(const CsvField& field);
  Value value_of(const CsvField& field, const Column& column, SheetItem& into) const;
  void take(const std::vector<CsvField>& row, std::size_t number, SheetItem& into) const;

  char separator_;
  CsvCutter rows_;
  std::vector<Column> columns_;
  std::vector<Problem> problems_;
};

/// Items as a sheet, each a row, with all columns that any of them needs, in the order in which
/// they come up. Read back, a row is the item again.
std::string sheet_of(const std::vector<Value>& items, CsvProfile profile);

/// Places in lists that were left empty though more follows.
std::vector<Problem> gaps_in(const Value& item);

/// What a cell or an option says, as a document has it: a number, true or false, {} or [] for
/// nothing in them, else words; always words for a key that holds such.
Value plain_value(std::string text, std::uint32_t offset, bool words);

/// Whether a key, written dotted, holds words whatever they look like: a name, a note.
bool holds_words(const std::vector<std::string>& steps);

}  // namespace haunch
