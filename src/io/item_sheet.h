// One item as a page tells it, while it is not yet known what stands beside it.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "haunch/wood.h"
#include "page_part.h"
#include "report.h"

namespace haunch {

struct ItemSheet {
  std::string id, name, note;
  std::int64_t quantity = 1;
  std::string set_out;  // ", set out in mm", on a page in another unit
  Triple size;
  PageText sizes;  // itself, and its opening
  std::int64_t checks = 0, failed = 0, cautions = 0;
  std::vector<CutRow> cuts;        // for all its quantity
  PageText cut_remarks;            // below them
  std::vector<Hardware> hardware;  // for one of it
  PageParts parts;
  std::size_t assumed = 0;  // values that the page does not list
  bool rounded = false;     // it has figures that begin with "~"
};

/// "2 of 52 checks fail, 1 caution"
std::string verdict(const ItemReport& report);
std::string verdict(const ItemSheet& sheet);

}  // namespace haunch
