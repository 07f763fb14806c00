// Which set-ups of an old order stay for a new one, and which change.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "change.h"
#include "setups_report.h"

namespace haunch {

struct SetupTold {
  std::vector<NamedSize> settings;
  std::string machine, cutter, holding;  // names; empty: nothing is told of it
  int passes = 1;
  std::vector<std::string> marks;     // "C"; of several items "K1/C"
  std::optional<Length> under, over;  // by how much its first piece may be off what is wanted
};

/// One that comes, goes, or becomes another for all that was run on it.
struct SetupChange {
  std::string operation;  // "tenon-haunch"
  std::string words;      // "tenon haunch"
  std::optional<SetupTold> was, is;
  Changes changes;

  Turn turn() const { return turn_of(was, is); }
  const SetupTold& any() const { return is ? *is : *was; }
};

struct SetupsChange {
  Tallied setups;
  std::vector<SetupChange> changed;
};

/// A set-up stays where all is set as it was, whatever pieces are run on it.
SetupsChange setups_change(const SetupsReport& was, const SetupsReport& is);

}  // namespace haunch
