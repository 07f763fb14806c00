#include "mended.h"

#include <map>
#include <utility>

#include "dotted_keys.h"
#include "kind.h"
#include "spec_merge.h"
#include "spec_text.h"

namespace haunch {
namespace {

using Changes = std::map<std::string, Remedy>;  // by key

Length distance(const Remedy& remedy) {
  return remedy.to > remedy.from ? remedy.to - remedy.from : remedy.from - remedy.to;
}

/// Where several findings ask for a change of one key, the furthest of them.
Changes changes_of(const ItemReport& report) {
  Changes changes;
  if (!report.remedies) return changes;
  for (const auto& remedy : report.remedies->of) {
    if (!remedy) continue;
    const auto [known, is_new] = changes.emplace(remedy->key, *remedy);
    if (!is_new && distance(*remedy) > distance(known->second)) known->second = *remedy;
  }
  return changes;
}

/// A bare number where the item says what numbers are in.
Value length_value(Length length, Unit unit, bool bare) {
  Value value;
  value.kind = bare ? Value::Kind::number : Value::Kind::text;
  value.text = decimal(length, unit) + (bare ? "" : unit == Unit::mm ? " mm" : " in");
  return value;
}

/// How many checks of it fail; nothing if it cannot be worked.
std::optional<std::int64_t> fails_of(const Value& item, const ShopDefaults* shop,
                                     const std::string& id, const OtherItems* others) {
  JobReading reading = read_job_among(item, shop, id, others);
  if (!reading.job || !reading.problems.empty()) return {};
  ItemOutcome outcome = report_item(std::move(reading.job), {.checks = true});
  if (!outcome.report) return {};
  return outcome.report->count_of(Status::fail);
}

std::string counted(std::int64_t number, const std::string& what) {
  return std::to_string(number) + " " + what + (number == 1 ? "" : "s");
}

}  // namespace

std::string Mended::take(const Value& item, const ItemReport& report, const ShopDefaults* shop,
                         const OtherItems* others) {
  const Job& job = *report.job;
  Value mended = item;
  std::string keys;
  const Changes changes = changes_of(report);
  for (const auto& [key, remedy] : changes) {
    const auto steps = steps_of(key);
    if (!steps) continue;
    set_key(mended, *steps, 0, length_value(remedy.to, job.unit, item.find("units") != nullptr));
    keys += (keys.empty() ? "" : ", ") + key;
  }
  const std::optional<std::int64_t> fails =
      changes.empty() ? report.count_of(Status::fail) : fails_of(mended, shop, job.id, others);
  const bool worse = !fails || *fails > report.count_of(Status::fail);
  if (worse)
    items_.push_back(item);
  else
    items_.push_back(std::move(mended));
  if (changes.empty()) return "";
  if (worse) return job.id + ": the remedies do not go together; it is written as it was";
  return job.id + ": " + keys + " changed; " +
         (*fails == 0 ? "no check fails any more" : counted(*fails, "check") + " still failing");
}

std::string Mended::text() const {
  if (items_.size() == 1) return spec_text(items_.front());
  std::string text;
  for (const Value& item : items_)
    text += spec_line(item) + "\n";
  return text;
}

}  // namespace haunch
