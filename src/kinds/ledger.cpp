#include "ledger.h"

#include <algorithm>
#include <utility>

#include "usual_size.h"

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

std::string pointer_to(std::string_view dotted_key) {
  if (dotted_key.empty()) return {};
  std::string path = "/" + std::string(dotted_key);
  std::replace(path.begin(), path.end(), '.', '/');
  return path;
}

}  // namespace

void Ledger::enter_tier(std::size_t tier) {
  if (!tier_) {
    all_panels_ = spec;
    before_tiers_ = assumed.size();
  }
  tier_ = tier;
  set_panels(spec, all_panels_);
  set_panels(spec, panels_of_tier(spec, tier));
}

void Ledger::leave_tiers() {
  if (!tier_) return;
  tier_.reset();
  set_panels(spec, all_panels_);
  const auto first = assumed.begin() + static_cast<std::ptrdiff_t>(before_tiers_);
  const std::vector<Assumed> of_tiers(first, assumed.end());
  assumed.erase(first, assumed.end());
  for (Assumed& it : told_once(of_tiers, spec.tiers.size()))
    assumed.push_back(std::move(it));
}

bool Ledger::is_own(Key key) const {
  if (tier_) return std::as_const(spec.tiers[*tier_])[key].stated;
  return stated(key).by_spec();
}

std::string Ledger::shown(Where where) const {
  std::string key = where.path();
  if (key.size() + 1 == root_.size() && root_.starts_with(key)) return {};
  if (key.starts_with(root_)) key.erase(0, root_.size());
  const auto& mullions = spec.mullions;
  if (std::find(mullions.begin(), mullions.end(), where.key) != mullions.end())
    return mullion_name(key);
  if (!tier_ || !where.key.is_below("panel")) return key;
  if (!is_own(where.key) && stated(where.key).stated) return key;
  return tier_key(*tier_, key);
}

Length Ledger::pick(std::int64_t thousandths_of_mm, std::int64_t parts, std::int64_t of) const {
  return usual_size(unit, thousandths_of_mm, parts, of);
}

Length Ledger::settle(SizeKey key, Length fallback, std::string_view why) {
  const KeyValue& its = stated(key);
  const Length size = its.size.value_or(fallback);
  if (!its.stated)
    assume(key, size, why);
  else if (its.by_shop)
    note_shop(key, size);
  return size;
}

Length Ledger::take(SizeKey key, Length fallback, std::string_view why) {
  const Length size = settle(key, fallback, why);
  add_lever(key, size);
  return size;
}

void Ledger::settle_group(Key group, const std::vector<Member>& members, std::string_view why) {
  const KeyValue& first = stated(members.front().key);
  const bool as_one = std::all_of(members.begin(), members.end(), [&](const Member& member) {
    const KeyValue& its = stated(member.key);
    return its.size == first.size && its.by_shop == first.by_shop &&
           (its.stated ? its.by_shop : member.fallback == members.front().fallback);
  });
  for (const Member& member : members)
    *member.size =
        as_one ? first.size.value_or(member.fallback) : settle(member.key, member.fallback, why);
  if (as_one) assume(group, *members.front().size, first.stated ? kShopFile : why);
}

void Ledger::note_names() {
  const std::string unit_name(word_of(unit));
  if (spec.units_inferred)
    assume("units", unit_name, "every size in the spec carries its own unit");
  if (spec.units_by_shop) note_shop("units", unit_name);
  if (!spec.speaks_of("species"))
    assume("species", std::string("not stated"),
           "no wood is named; sizes do not depend on it, weight and movement do");
  if (spec.said_by("species") == SaidBy::shop) note_shop("species", spec.text("species.frame"));
}

void Ledger::assume(Where where, AssumedValue value, std::string_view why) {
  assumed.push_back({shown(where), std::move(value), std::string(why)});
}

void Ledger::note_shop(Where where, AssumedValue value) {
  assume(where, std::move(value), kShopFile);
}

void Ledger::note_shops_word(Key key) {
  const KeyValue& its = stated(key);
  if (its.by_shop)
    note_shop(key, std::string(key.row().words[static_cast<std::size_t>(its.number)]));
}

void Ledger::add_lever(SizeKey key, Length value) {
  const KeyRow& row = key.row();
  if (row.change != Change::none)
    add_lever(shown(Key(key)), value, row.change, row.holds == Holds::size_or_zero, {});
}

void Ledger::add_lever(Where where, Length value, bool zero_allowed, std::string what) {
  add_lever(shown(where), value, Change::size, zero_allowed, std::move(what));
}

void Ledger::add_lever(std::string key, Length value, Change change, bool zero_allowed,
                       std::string what) {
  const bool known = tier_ && std::any_of(levers.begin(), levers.end(),
                                          [&](const Lever& lever) { return lever.key == key; });
  if (known) return;
  const Length step = change == Change::size ? pick(500, 1, 64) : pick(10, 5, 10'000);
  // A fit without room for glue is none, though a spec may ask for it.
  const Length least = change == Change::fit ? std::min(value, pick(50, 2, 1000))
                       : zero_allowed        ? Length()
                                             : Length::from_steps(1);
  levers.push_back({std::move(key), std::move(what), value, step, least});
}

void Ledger::problem(const std::vector<Where>& places, std::string message) {
  const Where& first = *std::max_element(
      places.begin(), places.end(),
      [&](const Where& a, const Where& b) { return spec.said_by(a.key) < spec.said_by(b.key); });
  if (spec.said_by(first.key) == SaidBy::shop) {
    message += " (" + first.path().substr(first.key.path().size() - first.key.name().size()) +
               " is from the shop file)";
  }
  const std::string path = pointer_to(shown(first));
  const bool told = std::any_of(problems.begin(), problems.end(),
                                [&](const Problem& it) { return it.path == path; });
  if (!told) problems.push_back({path, std::move(message), {}});
}

std::string Ledger::say(Length length) const {
  return in_words(length, unit);
}

}  // namespace haunch
