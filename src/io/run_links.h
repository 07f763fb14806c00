// Which items of a batch the runs among them take.
#pragma once

#include <cstddef>
#include <deque>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"

namespace haunch {

struct Record;

/// An item that a run names, as it was found.
struct NamedItem {
  std::string id, source, default_id;
  std::shared_ptr<const Value> item;  // null: its text is broken
};

struct NamedItems {
  std::vector<NamedItem> named;
  std::vector<std::string> ids;  // of all items
};

/// So much of what is piped in is held to look for runs in it; what is longer streams, and has
/// none.
inline constexpr std::size_t kHeldForRuns = std::size_t{1} << 20;

/// Whether a text may hold the spec of a run: it has its kind in quotes.
inline constexpr std::string_view kRunInQuotes = "\"run\"";

/// Gives each run the items that it names, and marks the cabinets among them as taken.
void link_runs(std::deque<Record>& records);

}  // namespace haunch
