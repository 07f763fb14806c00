// A stock file for tests, from its text.
#pragma once

#include <string>

#include "stock_file.h"
#include "vocabulary.h"

namespace haunch::test {

inline StockFile stock(const std::string& text) {
  const Reading json = read_json(text);
  REQUIRE(json.value.has_value());
  StockReading read = read_stock(*json.value);
  for (const Problem& problem : read.problems)
    UNSCOPED_INFO(problem.path + ": " + problem.message);
  REQUIRE(read.file.has_value());
  return *read.file;
}

}  // namespace haunch::test
