// What must hold of any bytes that are read as a sheet of orders.
#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "order_sheet.h"

namespace haunch {

struct RowsRead {
  std::vector<Value> items;  // of the rows that nothing is wrong with
  bool sound = true;         // nothing is wrong with any, nor with the header
};

/// Every problem has a place in the text and says something.
inline void require_told(const std::vector<Problem>& problems, std::size_t size) {
  for (const Problem& problem : problems)
    if (!problem.offset || *problem.offset > size || problem.message.empty()) std::abort();
}

inline RowsRead rows_of(const std::string& text) {
  OrderSheet sheet(text);
  RowsRead rows;
  const std::vector<Problem> of_header = sheet.take_problems();
  require_told(of_header, text.size());
  rows.sound = of_header.empty();
  if (!rows.sound) return rows;
  while (auto row = sheet.next()) {
    require_told(row->problems, text.size());
    if (!row->item && row->problems.empty()) std::abort();
    const bool sound = row->item && row->problems.empty() && gaps_in(*row->item).empty();
    rows.sound = rows.sound && sound;
    if (sound) rows.items.push_back(std::move(*row->item));
  }
  return rows;
}

/// Whether some key has a character in it that no key has, but that makes a sheet another one: what
/// parts columns, or a byte of 0, of which texts in other encodings are full.
inline bool has_odd_keys(const Value& value) {
  const auto is_odd = [](const Entry& entry) {
    return entry.key.find_first_of(std::string_view("\0\t;,", 4)) != std::string::npos ||
           has_odd_keys(entry.value);
  };
  return std::any_of(value.entries.begin(), value.entries.end(), is_odd) ||
         std::any_of(value.list.begin(), value.list.end(), has_odd_keys);
}

/// A sheet that was written is read without a fault, row for row.
inline void sheet_target(const std::uint8_t* bytes, std::size_t size) {
  const RowsRead read = rows_of(std::string(bytes, bytes + size));
  if (read.items.empty() || std::any_of(read.items.begin(), read.items.end(), has_odd_keys)) return;
  for (const CsvProfile profile : {CsvProfile::plain, CsvProfile::semicolon}) {
    const RowsRead again = rows_of(sheet_of(read.items, profile));
    if (!again.sound || again.items.size() != read.items.size()) std::abort();
  }
}

}  // namespace haunch
