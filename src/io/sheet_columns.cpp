#include <string>
#include <string_view>

#include "csv_row.h"
#include "key_table.h"
#include "schema.h"

namespace haunch {
namespace {

/// As the header of a sheet has it: the first of a list for all of them.
std::string column_name(const KeyRow& row, std::string_view root) {
  std::string name(row.key);
  if (name.starts_with(root)) name.erase(0, root.size());
  for (std::size_t at = name.find("[]"); at != std::string::npos; at = name.find("[]"))
    name.replace(at, 2, ".0");
  return name;
}

/// Whether a cell can say it: what holds other keys is said by those.
bool is_column(const KeyRow& row) {
  const bool holds_others = row.holds == Holds::object || row.holds == Holds::list;
  return !holds_others || row.plain != Plain::nothing || row.key == "pin";
}

std::string_view held(const KeyRow& row) {
  switch (row.holds) {
    case Holds::size:
      return "a length above 0";
    case Holds::size_or_zero:
      return "a length";
    case Holds::count:
      return "a whole number";
    case Holds::word:
      return "a word";
    case Holds::flag:
      return "true or false";
    case Holds::text:
      return "words";
    case Holds::object:
      return "as its members";
    default:
      return row.form;
  }
}

std::string words_of(const KeyRow& row) {
  std::string words;
  if (row.holds != Holds::word) return words;
  for (std::size_t i = 0; i < row.words.size(); ++i)
    if (row.is_legal(i)) words += (words.empty() ? "" : " ") + std::string(row.words[i]);
  return words;
}

}  // namespace

std::string sheet_columns(CsvProfile profile) {
  std::string text(csv_start(profile));
  CsvRow head(text, Unit::mm, profile);
  for (const std::string_view title : {"kind", "key", "holds", "words", "usual", "what"})
    head.plain(title);
  head.end();
  for (const KindOfWork& kind : kKindsOfWork)
    for (const KeyRow& key : kKeys) {
      if ((key.of & kind.of) == 0 || !is_column(key)) continue;
      CsvRow row(text, Unit::mm, profile);
      row.plain(kind.name);
      row.plain(column_name(key, kind.root));
      row.plain(held(key));
      row.plain(words_of(key));
      row.plain(key.usual);
      row.plain(key.about);
      row.end();
    }
  return text;
}

}  // namespace haunch
