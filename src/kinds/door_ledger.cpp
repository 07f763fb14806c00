#include "door_ledger.h"

#include <algorithm>
#include <utility>

namespace haunch {
namespace {

constexpr std::string_view kShopFile = "the shop file";

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
  assumed.push_back({std::string(key), std::move(value), std::string(why)});
}

void DoorLedger::note_shop(std::string_view key, decltype(Assumed::value) value) {
  assume(key, std::move(value), kShopFile);
}

void DoorLedger::add_lever(const std::string& key, Length value, Change change, bool zero_allowed,
                           std::string what) {
  if (change == Change::none) return;
  const Length step = change == Change::size ? defaults.size_step : defaults.fit_step;
  levers.push_back({written_key(spec, key), std::move(what), value, step,
                    zero_allowed ? Length() : Length::from_steps(1)});
}

DoorLedger::Source DoorLedger::source_of(std::string_view key) const {
  const auto of = [](bool stated_here, bool by_shop) {
    return !stated_here ? Source::nobody : by_shop ? Source::shop : Source::spec;
  };
  if (key.starts_with("rail_widths")) return of(!spec.rails.rails.empty(), spec.rails.by_shop);
  if (key == "panels") return of(spec.panels.index() != 0, spec.panels_by_shop);
  if (key == "panel.raised") return of(spec.raised.word.has_value(), spec.raised.by_shop);
  if (key == "panel.flush") return of(spec.flush.word.has_value(), spec.flush.by_shop);
  if (key == "panel.rebate") return of(spec.rebate.word.has_value(), spec.rebate.by_shop);
  Source source = Source::nobody;
  for (const SizeKey& size : door_size_keys()) {
    if (size.key != key && !size.key.starts_with(std::string(key) + ".")) continue;
    const Stated& its = spec.*size.size;
    source = std::max(source, of(its.size.has_value(), its.by_shop));
  }
  return source;
}

void DoorLedger::problem(const std::vector<std::string>& keys, std::string message) {
  const auto first = std::max_element(
      keys.begin(), keys.end(),
      [&](const std::string& a, const std::string& b) { return source_of(a) < source_of(b); });
  if (source_of(*first) == Source::shop) message += " (" + *first + " is from the shop file)";
  const std::string path = pointer_to(written_key(spec, *first));
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
