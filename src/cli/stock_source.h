// Stock files, and other files that are tables or one object, as the command line names them.
#pragma once

#include <optional>
#include <string>

#include "complaints.h"
#include "stock_file.h"

namespace haunch {

/// A stock file, and its text: some of what is wrong with it shows only when a plan is made.
struct ReadStock {
  StockFile stock;
  Record record;
};

/// By its name CSV or JSON; "-" is the descriptor `standard_input`. Nothing where it cannot be
/// used, which `complaints` hears of.
std::optional<ReadStock> read_stock_file(const std::string& file, int standard_input,
                                         Complaints& complaints);

/// The text of a table, as a record to place problems by. `what` it should be stands in messages:
/// "a list of parts".
std::optional<Record> read_table(const std::string& file, const std::string& what,
                                 Complaints& complaints);

}  // namespace haunch
