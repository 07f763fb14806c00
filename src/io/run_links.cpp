#include "run_links.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "spec_source.h"

namespace haunch {
namespace {

bool is_of_kind(const Record& record, std::string_view kind) {
  const Value* its = record.item ? record.item->find("kind") : nullptr;
  return its != nullptr && its->text == kind;
}

std::string id_of(const Record& record) {
  const Value* id = record.item ? record.item->find("id") : nullptr;
  return id != nullptr && id->kind == Value::Kind::text && !id->text.empty() ? id->text
                                                                             : record.default_id;
}

/// The ids that a run's order names, each once.
std::set<std::string> named_in(const Value& run) {
  std::set<std::string> names;
  const Value* order = run.find("order");
  if (order == nullptr) return names;
  for (const Value& each : order->list) {
    const Value* name = each.kind == Value::Kind::object ? each.find("cabinet") : &each;
    if (name != nullptr && name->kind == Value::Kind::text) names.insert(name->text);
  }
  return names;
}

/// The ids of the runs that it begins beside.
std::vector<std::string> corners_of(const Value& run) {
  std::vector<std::string> names;
  const Value* corner = run.find("corner");
  if (corner == nullptr || corner->kind != Value::Kind::object) return names;
  for (const char* end : {"left", "right"}) {
    const Value* name = corner->find(end);
    if (name != nullptr && name->kind == Value::Kind::text) names.push_back(name->text);
  }
  return names;
}

/// Whether a run can take it; what it is by the shop file alone shows when it is read.
bool may_be_taken(const Record& record) {
  return is_of_kind(record, "cabinet") || (record.item && record.item->find("kind") == nullptr);
}

/// With the runs in its corners and what these name, and so on.
std::set<std::string> all_named_in(const Value& run,
                                   const std::multimap<std::string, Record*>& by_id) {
  std::set<std::string> names = named_in(run);
  std::vector<std::string> corners = corners_of(run);
  while (!corners.empty()) {
    const std::string id = corners.back();
    corners.pop_back();
    if (!names.insert(id).second) continue;
    const auto [first, last] = by_id.equal_range(id);
    for (auto its = first; its != last; ++its) {
      if (!is_of_kind(*its->second, "run")) continue;
      names.merge(named_in(*its->second->item));
      for (std::string& other : corners_of(*its->second->item))
        corners.push_back(std::move(other));
    }
  }
  return names;
}

NamedItem named_item(const Record& record) {
  NamedItem named{id_of(record), record.source, record.default_id, nullptr};
  if (record.item && !record.spoilt) named.item = std::make_shared<const Value>(*record.item);
  return named;
}

}  // namespace

void link_runs(std::deque<Record>& records) {
  std::multimap<std::string, Record*> by_id;
  std::vector<std::string> ids;
  for (Record& record : records) {
    if (record.fault) continue;
    ids.push_back(id_of(record));
    by_id.emplace(ids.back(), &record);
  }
  std::map<const Record*, NamedItem> named;  // each is copied once, whoever names it
  for (Record& run : records) {
    if (!is_of_kind(run, "run")) continue;
    auto links = std::make_shared<NamedItems>();
    links->ids = ids;
    const std::set<std::string> own = named_in(*run.item);
    for (const std::string& id : all_named_in(*run.item, by_id)) {
      const auto [first, last] = by_id.equal_range(id);
      for (auto its = first; its != last; ++its) {
        Record& record = *its->second;
        const auto [known, is_new] = named.try_emplace(&record);
        if (is_new) known->second = named_item(record);
        links->named.push_back(known->second);
        record.taken = record.taken || (may_be_taken(record) && own.count(id) > 0);
      }
    }
    run.named = std::move(links);
  }
}

}  // namespace haunch
