#include "spec_merge.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include "dotted_keys.h"
#include "key_table.h"

namespace haunch {
namespace {

using Steps = std::vector<std::string>;

/// As the table of keys writes it: "fittings[].name" of "fittings.0.name".
std::string row_name(const Steps& steps, std::size_t from) {
  std::string name;
  for (std::size_t i = from; i < steps.size(); ++i)
    name += is_place(steps[i]) ? "[]" : (name.empty() ? "" : ".") + steps[i];
  return name;
}

bool is_plain(const Value& value) {
  return value.kind != Value::Kind::object && value.kind != Value::Kind::list &&
         value.kind != Value::Kind::null;
}

/// A word may be one for some of the members only.
bool can_say(const KeyRow& member, const Value& plain) {
  if (member.holds != Holds::word) return true;
  const auto word = std::find(member.words.begin(), member.words.end(), plain.text);
  return word == member.words.end() ||
         member.is_legal(static_cast<std::size_t>(word - member.words.begin()));
}

/// Keys right below a row that a plain value in its place is of, in the order of the table.
std::vector<std::string> members_of(const KeyRow& row, const Value& plain) {
  std::vector<std::string> members;
  const std::string before = std::string(row.key) + ".";
  for (const KeyRow& each : kKeys) {
    if (!each.key.starts_with(before)) continue;
    std::string name(each.key.substr(before.size()));
    const bool is_direct = can_say(each, plain) && name.find_first_of(".[") == std::string::npos;
    if (is_direct && std::find(members.begin(), members.end(), name) == members.end())
      members.push_back(std::move(name));
  }
  return members;
}

/// What a plain value stands for, as the object that it is short for: 3 as a gap at every side.
Value in_full(const Value& plain, const Steps& steps) {
  Value object;
  object.kind = Value::Kind::object;
  object.offset = plain.offset;
  const KeyRow* row = key_row(steps);
  if (row == nullptr || row->plain == Plain::nothing || !is_plain(plain)) return object;
  for (std::string& member : members_of(*row, plain)) {
    object.entries.push_back({std::move(member), plain.offset, plain});
    if (row->plain == Plain::first) break;
  }
  return object;
}

Entry* find(Value& object, std::string_view key) {
  const auto found = std::find_if(object.entries.begin(), object.entries.end(),
                                  [&](const Entry& entry) { return entry.key == key; });
  return found == object.entries.end() ? nullptr : &*found;
}

void put_over(Value& base, Value own, Steps& steps, Lists lists);

void put_object_over(Value& base, Value own, Steps& steps, Lists lists) {
  if (base.kind != Value::Kind::object) base = in_full(base, steps);
  base.offset = own.offset;
  for (Entry& entry : own.entries) {
    Entry* same = find(base, entry.key);
    if (same == nullptr) {
      base.entries.push_back(std::move(entry));
      continue;
    }
    same->offset = entry.offset;
    steps.push_back(entry.key);
    put_over(same->value, std::move(entry.value), steps, lists);
    steps.pop_back();
  }
}

void fill_list(Value& base, Value own, Steps& steps) {
  for (std::size_t i = 0; i < own.list.size(); ++i) {
    if (i >= base.list.size()) {
      base.list.push_back(std::move(own.list[i]));
      continue;
    }
    steps.push_back(std::to_string(i));
    put_over(base.list[i], std::move(own.list[i]), steps, Lists::by_place);
    steps.pop_back();
  }
}

void put_over(Value& base, Value own, Steps& steps, Lists lists) {
  if (own.kind == Value::Kind::null) return;
  if (own.kind == Value::Kind::object)
    put_object_over(base, std::move(own), steps, lists);
  else if (own.kind == Value::Kind::list && base.kind == Value::Kind::list &&
           lists == Lists::by_place)
    fill_list(base, std::move(own), steps);
  else
    base = std::move(own);
}

}  // namespace

const KeyRow* key_row(const Steps& steps) {
  const std::size_t from = steps.front() == "leaf" && steps.size() > 1 ? 1 : 0;
  const std::string name = row_name(steps, from);
  const std::string of_frame = "frame." + name;
  const auto row = std::find_if(kKeys.begin(), kKeys.end(),
                                [&](const KeyRow& each) { return each.key == name; });
  if (row != kKeys.end()) return &*row;
  const auto frame_row = std::find_if(kKeys.begin(), kKeys.end(),
                                      [&](const KeyRow& each) { return each.key == of_frame; });
  return frame_row == kKeys.end() ? nullptr : &*frame_row;
}

std::string first_member(const KeyRow& row) {
  const std::vector<std::string> members = members_of(row, {});
  return members.empty() ? std::string() : members.front();
}

void put_over(Value& base, Value own, Lists lists) {
  Steps steps;
  put_over(base, std::move(own), steps, lists);
}

void set_key(Value& document, const Steps& steps, std::uint32_t key_offset, Value value) {
  Value* at = &document;
  Steps way;
  for (const std::string& step : steps) {
    const bool in_list = is_place(step);
    if (!in_list && at->kind != Value::Kind::object) *at = in_full(*at, way);
    if (in_list && at->kind != Value::Kind::list) {
      *at = {};
      at->kind = Value::Kind::list;
    }
    if (in_list) {
      const std::size_t place = std::stoul(step);
      while (at->list.size() <= place)
        at->list.emplace_back().offset = key_offset;
      at = &at->list[place];
    } else {
      Entry* entry = find(*at, step);
      if (entry == nullptr) entry = &at->entries.emplace_back(Entry{step, key_offset, {}});
      at = &entry->value;
    }
    if (at->kind == Value::Kind::null) at->offset = value.offset;
    way.push_back(step);
  }
  *at = std::move(value);
}

void drop_key(Value& document, const Steps& steps) {
  Value* at = &document;
  for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
    if (is_place(steps[i])) {
      const std::size_t place = std::stoul(steps[i]);
      if (place >= at->list.size()) return;
      at = &at->list[place];
    } else {
      Entry* entry = find(*at, steps[i]);
      if (entry == nullptr) return;
      at = &entry->value;
    }
  }
  std::erase_if(at->entries, [&](const Entry& entry) { return entry.key == steps.back(); });
}

void shift(Value& document, std::uint32_t bytes) {
  document.offset += bytes;
  for (Entry& entry : document.entries) {
    entry.offset += bytes;
    shift(entry.value, bytes);
  }
  for (Value& value : document.list)
    shift(value, bytes);
}

}  // namespace haunch
