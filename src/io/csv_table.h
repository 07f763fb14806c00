// CSV (RFC 4180) read into a document, so that it is judged like any other.
#pragma once

#include <string_view>
#include <vector>

#include "document.h"

namespace haunch {

/// A table as a list of objects, one a row, with the header's names as keys. Fields that are empty
/// are left out; numbers are told from words. Each value has its place in the text.
struct CsvReading {
  Value rows;                     // a list
  std::vector<Entry> settings;    // above the header: a name, its place, and its value
  std::vector<Entry> header;      // the columns; of their values only the place is set
  std::vector<Problem> problems;  // each with an offset
};

/// Lines end with \n or \r\n; a byte order mark and empty lines are skipped; blanks round a field
/// are no part of it. With a `mark`, the header is the first row that has it as a field; rows above
/// it are settings as far as only their first two fields are filled.
CsvReading read_csv(std::string_view text, std::string_view mark = {});

}  // namespace haunch
