// An item that takes others of the same specs.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "kind.h"

namespace haunch {

/// Another item of the same specs, as it was read.
struct OtherItem {
  std::string id;
  const Value* item = nullptr;  // null: its text is broken
  const ShopDefaults* shop = nullptr;
  std::string default_id;
};

/// The items that one may take as a part of it.
struct OtherItems {
  std::vector<OtherItem> named;            // those whose ids stand in it
  std::vector<std::string> ids;            // of all
  std::vector<std::string> asked_by = {};  // runs that begin beside the one that is read
};

/// As read_job, for an item that may name others. `others` are null where it is read by itself.
JobReading read_job_among(const Value& item, const ShopDefaults* shop, std::string_view default_id,
                          const OtherItems* others);

}  // namespace haunch
