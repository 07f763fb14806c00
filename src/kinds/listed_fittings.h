// Fittings that specs take by name from the shop file's list, its hardware.
#pragma once

#include <string>
#include <vector>

#include "bought_fitting.h"
#include "kind.h"
#include "shop.h"
#include "spec.h"
#include "value_reader.h"

namespace haunch {

/// A use of a fitting, and the object of keys that may take one by name.
struct FittingKeys {
  FittingUse use;
  Key group, fitting;
};
inline constexpr FittingKeys kFittingKeys[] = {
    {FittingUse::hinges, "hinges", "hinges.fitting"},
    {FittingUse::lock, "lock", "lock.fitting"},
    {FittingUse::cup_hinges, "fronts.hinges", "fronts.hinges.fitting"},
    {FittingUse::runners, "fronts.drawer.runner", "fronts.drawer.runner.fitting"}};

/// Those of a shop file, as its list was read.
std::vector<ListedFitting> listed_of(const std::vector<KeyValues>& items);

/// What can be wrong with them besides: a name twice, a price without its day.
void check_listed(ValueReader& read, const Value& list, const std::vector<ListedFitting>& listed,
                  const std::string& path);

/// Fills what a spec leaves open of a fitting that it, or the shop, takes by name from what the
/// list says of that, marking it as the shop's.
void take_listed(Spec& spec, const std::vector<ListedFitting>& listed);

/// What a shop file takes by name for all work that its list does not have.
std::vector<Problem> unlisted_in(const Spec& shop);

/// What an item takes by name, each use once; where it says nothing of one, what the shop says.
/// Names that no list has, and several for one use, are problems.
struct FittingsTaken {
  std::vector<TakenFitting> all;
  std::vector<Problem> problems;
};
FittingsTaken fittings_taken(const Value& item, const ShopDefaults* shop);

}  // namespace haunch
