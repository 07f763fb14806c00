// Tolerances, as a spec or a shop file states them under "work", "tolerance" and "fit", and what is
// taken where they are silent.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include "kind.h"
#include "tolerances.h"
#include "value_reader.h"

namespace haunch {

/// "hand", "router", "nc".
std::string_view work_word(Work work);
/// "tenon_thickness", as in the spec.
std::string_view dimension_word(Dimension dimension);

/// What one document states; empty where it is silent.
struct ToleranceSpec {
  std::optional<Work> work;
  std::array<std::optional<Length>, kDimensions> plus_minus;
  std::optional<std::vector<Dimension>> one_setting;
  std::optional<int> deviations, setting_share;
  std::optional<Length> fit_min, fit_max;
  std::optional<int> wanted_share;
};

/// Reads the keys "work", "tolerance" and "fit" of a spec or a shop file, as far as it has them.
ToleranceSpec read_tolerance_spec(ValueReader& read, const Value& document);

struct SettledTolerances {
  Tolerances tolerances;
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;  // at places in the spec
};

/// The spec's values, for want of them the shop's (which may be null), for want of those the usual
/// ones of its way of working.
SettledTolerances settle_tolerances(const ToleranceSpec& spec, const ToleranceSpec* shop,
                                    Unit unit);

}  // namespace haunch
