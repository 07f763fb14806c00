// Seasons as a spec or a shop file states them under "moisture", "grain" and "species", the woods
// that a shop knows besides, and what is taken where they are silent.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "kind.h"
#include "season.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// Percent of moisture, or that which air of an object's temperature and humidity brings wood to.
std::optional<double> read_percent(ValueReader& read, const Value& value, const std::string& path);

/// The woods that a shop file adds or overrules.
std::vector<Species> read_woods(ValueReader& read, const Value& value, const std::string& path);

struct SettledSeason {
  std::optional<Season> season;  // where spec or shop speaks of moisture
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;  // at places in the spec
};

/// The spec's values, for want of them the shop's, for want of those the usual ones. Movement that
/// is asked for of a wood without figures is a problem.
SettledSeason settle_season(const Spec& spec);

}  // namespace haunch
