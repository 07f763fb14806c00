#include "explain_rework.h"

#include <numeric>
#include <set>

#include "dotted_keys.h"

namespace haunch {
namespace {

Fraction reduced(std::int64_t over, std::int64_t under) {
  const std::int64_t common = std::gcd(over, under);
  return {over / common, under / common};
}

}  // namespace

std::optional<Length> figure_in(const std::optional<Figures>& figures, const std::string& name) {
  if (!figures) return {};
  const auto found = figures->find(name);
  return found != figures->end() ? std::optional(found->second) : std::nullopt;
}

std::vector<std::pair<std::string, const Assumed*>> named(const std::vector<Assumed>& assumed) {
  std::map<std::string, int> times;
  for (const Assumed& each : assumed)
    ++times[each.key];
  std::vector<std::pair<std::string, const Assumed*>> all;
  std::set<std::string> names;
  for (const Assumed& each : assumed) {
    std::string name = each.key;
    if (times[each.key] > 1) name += "." + whose(each.why);
    const std::string once = name;
    for (int i = 2; !names.insert(name).second; ++i)
      name = once + "#" + std::to_string(i);
    all.emplace_back(std::move(name), &each);
  }
  return all;
}

std::string whose(const std::string& why) {
  const std::size_t colon = why.find(": ");
  return colon == std::string::npos ? std::string() : why.substr(0, colon);
}

std::string after_whose(const std::string& why) {
  const std::string before = whose(why);
  return before.empty() ? why : why.substr(before.size() + 2);
}

Value written(Length length) {
  return text_value(decimal(length, Unit::mm) + " mm");
}

Value written(const AssumedValue& value) {
  if (value.kind == AssumedValue::Kind::length) return written(value.length);
  std::vector<Value> items;
  for (const Length each : value.lengths)
    items.push_back(written(each));
  return list_value(std::move(items));
}

Value moved(Value document, const Movable& movable, Length by) {
  for (const Movable::Said& each : movable.said)
    put_at(document, each.path, written(each.value + by));
  return document;
}

std::optional<ItemReport> Rework::report(const Value& document, bool making) const {
  JobReading reading = read_job_among(document, shop_, default_id_, others_);
  if (!reading.job || !reading.problems.empty()) return {};
  return report_item(std::move(reading.job), {.making = making}).report;
}

std::optional<Figures> Rework::figures(const Value& document) const {
  const auto its = report(document, true);
  if (!its) return {};
  Figures all;
  for (NamedLength& each : figures_of(*its))
    all.emplace(std::move(each.name), each.length);
  return all;
}

std::optional<Figures> Rework::taken(const Value& document) const {
  const auto its = report(document, false);
  if (!its) return {};
  Figures all;
  for (const auto& [what, assumed] : named(its->assumed))
    if (assumed->value.kind == AssumedValue::Kind::length) all.emplace(what, assumed->value.length);
  return all;
}

bool Rework::can_move(const Value& document, const Movable& movable) const {
  return report(moved(document, movable, kNudge), false) ||
         report(moved(document, movable, -kNudge), false);
}

Slope slope_of(Length at, std::optional<Length> up, std::optional<Length> down) {
  constexpr std::int64_t kMostUnder = 24;
  if (!up && !down) return {Slope::Kind::uneven};
  const Length rise = up ? *up - at : at - *down;
  const Length fall = down ? at - *down : rise;
  if (rise == Length() && fall == Length()) return {};
  const Fraction factor = reduced(rise.steps(), kNudge.steps());
  if (rise != fall || factor.under > kMostUnder) return {Slope::Kind::uneven};
  return {Slope::Kind::even, factor};
}

}  // namespace haunch
