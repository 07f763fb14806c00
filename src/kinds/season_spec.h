// Seasons as a spec or a shop file states them under "moisture", "grain" and "species", the woods
// that a shop knows besides, and what is taken where they are silent.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kind.h"
#include "season.h"
#include "value_reader.h"

namespace haunch {

/// What one document states; empty where it is silent.
struct SeasonSpec {
  bool of_moisture = false;                // it speaks of it
  std::optional<double> low, build, high;  // percent
  OfRoles<std::optional<Sawn>> sawn;
  OfRoles<std::string> species;
  std::vector<Species> woods;  // of a shop file only
};

/// Reads "moisture", "grain", "species" and "woods", as far as the document has them.
SeasonSpec read_season_spec(ValueReader& read, const Value& document);

/// The keys that take one value for all pieces, or an object with one for each of these roles.
const std::vector<std::string_view>& role_words();

/// The woods that a shop file adds or overrules.
std::vector<Species> woods_of(const Value& shop);

struct SettledSeason {
  std::optional<Season> season;  // where spec or shop speaks of moisture
  OfRoles<std::string> species;  // as written
  bool species_by_shop = false;
  std::vector<Assumed> assumed;
  std::vector<Problem> problems;  // at places in the spec
};

/// The spec's values, for want of them the shop's, for want of those the usual ones. Movement that
/// is asked for of a wood without figures is a problem.
SettledSeason settle_season(const SeasonSpec& spec, const SeasonSpec& shop);

}  // namespace haunch
