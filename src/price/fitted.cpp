#include "fitted.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <utility>

#include "hardware.h"
#include "haunch/length_text.h"

namespace haunch {
namespace {

/// As hardware_of() says what it counts, and as it is bought.
struct BoughtAs {
  std::string_view counted, bought;
  bool by_hand;
  std::optional<FittingUse> use = {};
};
constexpr BoughtAs kBoughtAs[] = {
    {"hinges with a cup of", "hinges with a cup", true, FittingUse::cup_hinges},
    {"hinges with flaps", "hinges with flaps", true, FittingUse::hinges},
    {"pairs of runners, travel", "runners", true, FittingUse::runners},
    {"shelf pins", "shelf pins", false},
    {"dowels of", "dowels", false},
    {"screws in holes of", "screws", true}};

FittedGoods bought_as(const Hardware& hardware) {
  FittedGoods goods{hardware.what, hardware.number};
  for (const BoughtAs& each : kBoughtAs)
    if (each.counted == hardware.what) {
      goods.name = each.bought;
      goods.by_hand = each.by_hand;
      goods.use = each.use;
    }
  if (hardware.size) goods.name += " " + decimal(*hardware.size, Unit::mm) + " mm";
  return goods;
}

/// Whether a recess is for what is counted elsewhere, or for nothing that is bought: a strike comes
/// with its lock, a hole lets air through.
bool is_no_goods(std::string_view name) {
  constexpr std::string_view kElsewhere[] = {"hinge", "runner", "shelf pins", "strike", "hole"};
  return std::any_of(std::begin(kElsewhere), std::end(kElsewhere), [&](std::string_view word) {
    return name.find(word) != std::string_view::npos;
  });
}

void add_one(std::vector<FittedGoods>& all, const std::string& name) {
  const auto same =
      std::find_if(all.begin(), all.end(), [&](const FittedGoods& it) { return it.name == name; });
  if (same == all.end())
    all.push_back({name, 1, true, name == "lock" ? std::optional(FittingUse::lock) : std::nullopt});
  else
    ++same->number;
}

/// What is told to move, and leaves that are let in for hinges.
std::set<std::size_t> moving_groups(const Assembly& wood) {
  std::set<std::size_t> groups;
  for (const Fit& fit : wood.fits)
    if (!std::holds_alternative<std::monostate>(fit.moves)) groups.insert(fit.group);
  for (const Piece& piece : wood.pieces) {
    const bool of_leaf = wood.groups[piece.group].kind == GroupKind::leaf;
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::hinge_cup || (of_leaf && feature.kind == FeatureKind::gain))
        groups.insert(piece.group);
  }
  return groups;
}

}  // namespace

std::vector<FittedGoods> fitted_to(const Assembly& wood) {
  std::vector<FittedGoods> all;
  for (const Hardware& hardware : hardware_of(wood))
    all.push_back(bought_as(hardware));
  // A lock has several recesses in its stile, and is one.
  std::set<std::pair<std::size_t, std::string>> let_in;
  for (const Piece& piece : wood.pieces)
    for (const Feature& feature : piece.features)
      if (feature.fitting && !is_no_goods(feature.fitting->name))
        let_in.emplace(piece.group, feature.fitting->name);
  for (const auto& [group, name] : let_in)
    add_one(all, name);
  return all;
}

std::vector<HungGroup> hung_in(const Assembly& wood) {
  const GroupKind whole = wood.whole().kind;
  const bool in_wall = whole == GroupKind::leaf || whole == GroupKind::pair;
  std::vector<HungGroup> all;
  for (const std::size_t group : moving_groups(wood)) {
    const GroupKind kind = wood.groups[group].kind;
    const auto same =
        std::find_if(all.begin(), all.end(), [&](const HungGroup& it) { return it.kind == kind; });
    if (same == all.end())
      all.push_back({kind, in_wall, 1});
    else
      ++same->number;
  }
  return all;
}

}  // namespace haunch
