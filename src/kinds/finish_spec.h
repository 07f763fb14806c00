// What a spec says of the finish of its work.
#pragma once

#include <optional>
#include <string>

#include "haunch/length.h"
#include "haunch/trade.h"

namespace haunch {

/// Which faces are coated; edges always are.
enum class FinishedFaces { both, front };

/// Whether pieces are coated before they are put together, or the whole after.
enum class FinishedWhen { before, after };

template <>
inline constexpr std::string_view kWords<FinishedFaces>[] = {"both", "front"};
template <>
inline constexpr std::string_view kWords<FinishedWhen>[] = {"before", "after"};

struct FinishSpec {
  std::string system;  // of the rates file; empty: its first
  FinishedFaces faces = FinishedFaces::both;
  std::optional<int> coats;  // in place of the rates file's
  Length film;               // of all coats together, dry, on one side; zero: not told
  std::optional<FinishedWhen> when;

  /// Whether more than its name is said.
  bool is_told() const {
    return faces != FinishedFaces::both || coats || film > Length() || when.has_value();
  }
};

}  // namespace haunch
