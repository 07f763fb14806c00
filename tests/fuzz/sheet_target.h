// What must hold of any bytes that are read as a sheet of orders.
#pragma once

#include <cstdint>
#include <cstdlib>
#include <string>
#include <vector>

#include "order_sheet.h"
#include "spec_text.h"

namespace haunch {

struct RowsRead {
  std::vector<Value> items;  // of the rows that nothing is wrong with
  bool sound = true;         // nothing is wrong with any, nor with the header
};

/// Every problem has a place in the text and says something on one line.
inline void require_told(const std::vector<Problem>& problems, std::size_t size) {
  for (const Problem& problem : problems)
    if (!problem.offset || *problem.offset > size || problem.message.empty() ||
        problem.message.find_first_of("\r\n") != std::string::npos)
      std::abort();
}

inline RowsRead rows_of(const std::string& text) {
  OrderSheet sheet(text);
  RowsRead rows;
  const std::vector<Problem> of_header = sheet.take_problems();
  require_told(of_header, text.size());
  rows.sound = of_header.empty();
  while (auto row = sheet.next()) {
    require_told(row->problems, text.size());
    if (!row->item && row->problems.empty()) std::abort();
    const bool sound = row->item && row->problems.empty() && gaps_in(*row->item).empty();
    rows.sound = rows.sound && sound;
    if (sound) rows.items.push_back(std::move(*row->item));
  }
  return rows;
}

inline std::string lines_of(const std::vector<Value>& items) {
  std::string lines;
  for (const Value& item : items)
    lines += spec_line(item) + "\n";
  return lines;
}

/// A sheet that was written is read without a fault, and written again it is the same.
inline void sheet_target(const std::uint8_t* bytes, std::size_t size) {
  const RowsRead read = rows_of(std::string(bytes, bytes + size));
  if (read.items.empty()) return;
  for (const CsvProfile profile : {CsvProfile::plain, CsvProfile::semicolon}) {
    const std::string written = sheet_of(read.items, profile);
    const RowsRead again = rows_of(written);
    if (!again.sound || again.items.size() != read.items.size()) std::abort();
    if (sheet_of(again.items, profile) != written) std::abort();
    if (lines_of(rows_of(sheet_of(again.items, profile)).items) != lines_of(again.items))
      std::abort();
  }
}

}  // namespace haunch
