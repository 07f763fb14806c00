// The published rules that lead from a wall's opening to the leaf in it, by the names of their
// standards or of the trade that keeps them.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "haunch/length.h"

namespace haunch {

/// The names of the rules in a spec; their words stand in choices.h.
enum class FrameRuleName {
  din_18101_square,
  din_18101_rebated,
  us_rough_opening,
  us_prehung,
  uk_doorset
};

/// What a rule settles. Lengths that it leaves open are empty.
struct FrameRule {
  std::string_view name;                // in a spec: "din-18101-square"
  std::string_view words;               // where it stands
  std::optional<Length> wider, higher;  // the wall's opening than the leaf
  std::optional<Length> clearance;      // left, right and head
  std::optional<Length> fitting;        // left, right and head
  Length lip;                           // of a rebated leaf over its frame: left, right and head
};

/// In the order of their names.
const std::vector<FrameRule>& frame_rules();

}  // namespace haunch
