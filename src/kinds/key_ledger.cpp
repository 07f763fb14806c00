#include "key_ledger.h"

#include <algorithm>
#include <utility>

namespace haunch {
namespace {

constexpr std::string_view kShopFile = "the shop file";

std::string pointer_to(std::string_view dotted_key) {
  std::string path = "/" + std::string(dotted_key);
  std::replace(path.begin(), path.end(), '.', '/');
  return path;
}

}  // namespace

Length KeyLedger::pick(std::int64_t thousandths_of_mm, std::int64_t parts, std::int64_t of) const {
  return unit == Unit::mm ? Length::from_mm_thousandths(thousandths_of_mm)
                          : Length::from_inch_parts(parts, of);
}

Length KeyLedger::take(std::string_view key, Length fallback, std::string_view why) {
  const KeyValue& its = values.of(key);
  const Length size = its.size.value_or(fallback);
  if (!its.size) assume(key, size, why);
  if (its.size && its.by_shop) assume(key, size, kShopFile);
  add_lever(key, size);
  return size;
}

void KeyLedger::take_group(std::string_view group, const std::vector<Member>& members,
                           std::string_view why) {
  const KeyValue& first = values.of(members.front().key);
  const bool as_one = std::all_of(members.begin(), members.end(), [&](const Member& member) {
    const KeyValue& its = values.of(member.key);
    return its.size == first.size && its.by_shop == first.by_shop && (its.by_shop || !its.size) &&
           (its.size || member.fallback == members.front().fallback);
  });
  for (const Member& member : members)
    *member.size =
        as_one ? first.size.value_or(member.fallback) : take(member.key, member.fallback, why);
  if (as_one) assume(group, *members.front().size, first.size ? kShopFile : why);
}

std::size_t KeyLedger::choose(std::string_view key, std::size_t fallback, std::string_view why) {
  const KeyValue& its = values.of(key);
  const std::size_t word = its.word.value_or(fallback);
  const std::string text((*row_of(table_, key).choices)[word]);
  if (!its.word) assume(key, text, why);
  if (its.word && its.by_shop) assume(key, text, kShopFile);
  return word;
}

void KeyLedger::assume(std::string_view key, decltype(Assumed::value) value, std::string_view why) {
  assumed.push_back({std::string(key), std::move(value), std::string(why)});
}

void KeyLedger::add_lever(std::string_view key, Length value) {
  const KeyRow& row = row_of(table_, key);
  if (row.change == Change::none) return;
  const Length step = row.change == Change::size ? pick(500, 1, 64) : pick(10, 5, 10'000);
  levers.push_back({std::string(key),
                    {},
                    value,
                    step,
                    row.holds == Holds::size_or_zero ? Length() : Length::from_steps(1)});
}

KeyLedger::Source KeyLedger::source_of(std::string_view key) const {
  Source source = Source::nobody;
  for (const KeyRow& row : table_.rows) {
    if (row.key != key && !row.key.starts_with(std::string(key) + ".")) continue;
    const KeyValue& its = values.of(row.key);
    if (its.stated()) source = std::max(source, its.by_shop ? Source::shop : Source::spec);
  }
  return source;
}

void KeyLedger::problem(const std::vector<std::string_view>& keys, std::string message) {
  const auto first = std::max_element(
      keys.begin(), keys.end(),
      [&](std::string_view a, std::string_view b) { return source_of(a) < source_of(b); });
  if (source_of(*first) == Source::shop)
    message += " (" + std::string(*first) + " is from the shop file)";
  const std::string path = pointer_to(*first);
  const bool told = std::any_of(problems.begin(), problems.end(),
                                [&](const Problem& it) { return it.path == path; });
  if (!told) problems.push_back({path, std::move(message), {}});
}

std::string KeyLedger::say(Length length) const {
  return in_words(length, unit);
}

}  // namespace haunch
