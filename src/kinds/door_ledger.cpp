#include "door_ledger.h"

#include <algorithm>
#include <utility>

namespace haunch {
namespace {

constexpr std::string_view kShopFile = "the shop file";
constexpr std::string_view kOfPanel = "panel.";

constexpr std::string_view kOfTiers = "panel.tiers.";

/// "panel.gap" of the second tier from the top: "panel.tiers.1.gap".
std::string tier_key(std::size_t tier, std::string_view key) {
  return std::string(kOfTiers) + std::to_string(tier) + "." +
         std::string(key.substr(kOfPanel.size()));
}

/// The other way round.
std::string key_of_all(const std::string& key) {
  if (!key.starts_with(kOfTiers)) return key;
  return std::string(kOfPanel) + key.substr(key.find('.', kOfTiers.size()) + 1);
}

/// What was noted tier by tier, with what is alike in all `tiers` as one note of all panels.
std::vector<Assumed> told_once(const std::vector<Assumed>& of_tiers, std::size_t tiers) {
  std::vector<Assumed> told;
  for (const Assumed& it : of_tiers) {
    const auto alike = [&](const Assumed& other) {
      return key_of_all(other.key) == key_of_all(it.key) && other.value == it.value &&
             other.why == it.why;
    };
    const bool in_all = std::count_if(of_tiers.begin(), of_tiers.end(), alike) ==
                        static_cast<std::ptrdiff_t>(tiers);
    Assumed note = it;
    if (in_all) note.key = key_of_all(it.key);
    const bool known = std::any_of(told.begin(), told.end(), [&](const Assumed& other) {
      return other.key == note.key && alike(other);
    });
    if (!known) told.push_back(std::move(note));
  }
  return told;
}

const SizeKey& size_key(std::string_view key) {
  const auto keys = door_size_keys();
  return *std::find_if(keys.begin(), keys.end(),
                       [&](const SizeKey& size) { return size.key == key; });
}

std::string pointer_to(std::string_view dotted_key) {
  std::string path = "/" + std::string(dotted_key);
  std::replace(path.begin(), path.end(), '.', '/');
  return path;
}

}  // namespace

DoorLedger::DoorLedger(const DoorSpec& stated_spec)
    : spec(stated_spec),
      unit(spec.units.value_or(Unit::mm)),
      defaults(door_defaults(unit, spec.opening_height.size.value_or(Length()))) {}

void DoorLedger::enter_tier(std::size_t tier) {
  if (!tier_) {
    all_panels_ = spec;
    before_tiers_ = assumed.size();
  }
  tier_ = tier;
  static_cast<PanelSpec&>(spec) = all_panels_;
  static_cast<PanelSpec&>(spec) = panels_of_tier(spec, tier);
}

void DoorLedger::leave_tiers() {
  if (!tier_) return;
  tier_.reset();
  static_cast<PanelSpec&>(spec) = all_panels_;
  const auto first = assumed.begin() + static_cast<std::ptrdiff_t>(before_tiers_);
  const std::vector<Assumed> of_tiers(first, assumed.end());
  assumed.erase(first, assumed.end());
  for (Assumed& it : told_once(of_tiers, spec.tiers.size()))
    assumed.push_back(std::move(it));
}

bool DoorLedger::is_own(std::string_view key) const {
  if (tier_) return states(spec.tiers[*tier_], key);
  return states(spec, key) && source_of(key) == Source::spec;
}

std::string DoorLedger::key_here(std::string_view key) const {
  if (!tier_ || !key.starts_with(kOfPanel)) return std::string(key);
  if (!is_own(key) && states(spec, key)) return std::string(key);
  return tier_key(*tier_, key);
}

const Stated& DoorLedger::stated(std::string_view key) const {
  return spec.*size_key(key).size;
}

Length DoorLedger::settle(std::string_view key, Length fallback, std::string_view why) {
  const Stated& its = stated(key);
  const Length size = its.size.value_or(fallback);
  if (!its.size)
    assume(key, size, why);
  else if (its.by_shop)
    note_shop(key, size);
  return size;
}

Length DoorLedger::take(std::string_view key, Length fallback, std::string_view why) {
  const SizeKey& row = size_key(key);
  const Length size = settle(key, fallback, why);
  add_lever(std::string(key), size, row.change, row.zero_allowed);
  return size;
}

void DoorLedger::settle_group(std::string_view group, Length fallback,
                              const std::vector<GroupMember>& members) {
  const Stated& first = stated(members.front().key);
  const bool as_one = std::all_of(members.begin(), members.end(), [&](const GroupMember& member) {
    const Stated& its = stated(member.key);
    return its.size == first.size && its.by_shop == first.by_shop && (its.by_shop || !its.size);
  });
  for (const GroupMember& member : members)
    *member.size = as_one ? first.size.value_or(fallback) : settle(member.key, fallback, usual());
  if (as_one && first.size) note_shop(group, *first.size);
  if (as_one && !first.size) assume(group, fallback, usual());
}

void DoorLedger::assume(std::string_view key, decltype(Assumed::value) value,
                        std::string_view why) {
  assumed.push_back({key_here(key), std::move(value), std::string(why)});
}

void DoorLedger::note_shop(std::string_view key, decltype(Assumed::value) value) {
  assume(key, std::move(value), kShopFile);
}

void DoorLedger::add_lever(const std::string& key, Length value, Change change, bool zero_allowed,
                           std::string what) {
  if (change == Change::none) return;
  const Length step = change == Change::size ? defaults.size_step : defaults.fit_step;
  const std::string written = key_here(written_key(spec, key));
  const bool known = tier_ && std::any_of(levers.begin(), levers.end(),
                                          [&](const Lever& lever) { return lever.key == written; });
  if (known) return;
  levers.push_back(
      {written, std::move(what), value, step, zero_allowed ? Length() : Length::from_steps(1)});
}

namespace {

using Source = DoorLedger::Source;

Source source(bool stated_here, bool by_shop) {
  return !stated_here ? Source::nobody : by_shop ? Source::shop : Source::spec;
}

/// Of a key whose value is a word; nothing of others.
std::optional<Source> source_of_word(const DoorSpec& spec, std::string_view key) {
  const auto of = [](const auto& chosen) {
    return source(chosen.word.has_value(), chosen.by_shop);
  };
  if (key == "edge.profile") return of(spec.moulding);
  if (key == "edge.faces") return of(spec.moulded_faces);
  if (key == "edge.kind") return of(spec.edge);
  if (key == "arch.at") return of(spec.arch_at);
  if (key == "arch.shape") return of(spec.arch_shape);
  if (key == "mortise.ends") return of(spec.ends);
  if (key == "pin.at") return of(spec.pin_at);
  if (key == "panel.kind") return of(spec.kind);
  if (key == "panel.raised") return of(spec.raised);
  if (key == "panel.flush") return of(spec.flush);
  if (key == "panel.rebate") return of(spec.rebate);
  if (key == "panel.raise.profile") return of(spec.profile);
  if (key == "panel.held") return of(spec.held);
  if (!key.starts_with("joint")) return {};
  Source joints = Source::nobody;
  for (const auto& chosen : spec.joints)
    joints = std::max(joints, of(chosen));
  return joints;
}

}  // namespace

DoorLedger::Source DoorLedger::source_of(std::string_view key) const {
  if (const auto word = source_of_word(spec, key)) return *word;
  if (key.starts_with("rail_widths")) return source(!spec.rails.rails.empty(), spec.rails.by_shop);
  if (key == "panels") return source(spec.panels.index() != 0, spec.panels_by_shop);
  if (key == "pin") return source(spec.of_pins, false);
  if (key == "pin.number") return source(spec.pins_each.has_value(), spec.pins_each_by_shop);
  if (key == "panel.material") return source(!spec.material.empty(), spec.kind.by_shop);
  if (key == "hinges.number") return source(spec.hinges.has_value(), spec.hinges_by_shop);
  if (key.starts_with("hinges.at"))
    return source(!spec.hinge_places.empty(), spec.hinge_places_by_shop);
  Source widest = Source::nobody;
  for (const SizeKey& size : door_size_keys()) {
    if (size.key != key && !size.key.starts_with(std::string(key) + ".")) continue;
    const Stated& its = spec.*size.size;
    widest = std::max(widest, source(its.size.has_value(), its.by_shop));
  }
  return widest;
}

void DoorLedger::problem(const std::vector<std::string>& keys, std::string message) {
  const auto first = std::max_element(
      keys.begin(), keys.end(),
      [&](const std::string& a, const std::string& b) { return source_of(a) < source_of(b); });
  if (source_of(*first) == Source::shop) message += " (" + *first + " is from the shop file)";
  const std::string path = pointer_to(key_here(written_key(spec, *first)));
  const bool told = std::any_of(problems.begin(), problems.end(),
                                [&](const Problem& it) { return it.path == path; });
  if (!told) problems.push_back({path, std::move(message), {}});
}

std::string DoorLedger::say(Length length) const {
  return in_words(length, unit);
}

std::string DoorLedger::usual() const {
  return defaults.house ? "usual for a house door" : "usual for a cabinet door";
}

}  // namespace haunch
