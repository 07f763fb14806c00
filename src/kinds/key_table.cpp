#include "key_table.h"

#include <algorithm>
#include <utility>

namespace haunch {
namespace {

constexpr int kMostQuantity = 100'000;

const std::vector<std::string_view> kUnitWords = {"mm", "in"};

bool stands_below(std::string_view key, std::string_view group) {
  return key.size() > group.size() && key.starts_with(group) && key[group.size()] == '.';
}

/// Reads one object of keys, and the objects in it.
class KeyReader {
 public:
  KeyReader(ValueReader& read, const KeyTable& table, Reader reader,
            const std::vector<std::string_view>& others)
      : read_(read), table_(table), reader_(reader), others_(others) {}

  void read_object(const Value& object, const std::string& prefix, const std::string& path) {
    for (const Entry& entry : object.entries) {
      const std::string entry_path = child_path(path, entry.key);
      if (entry.key.find('.') != std::string::npos)
        read_.problem(
            entry_path,
            "unknown key; a key within another stands in its braces: {\"stop\": {\"depth\": …}}",
            entry.offset);
      else
        read_entry(entry, prefix, entry_path);
    }
  }

  KeyedValues take() { return std::move(values_); }

 private:
  void read_entry(const Entry& entry, const std::string& prefix, const std::string& path) {
    const bool elsewhere =
        prefix.empty() && std::find(others_.begin(), others_.end(), entry.key) != others_.end();
    if (elsewhere) return;
    const std::string key = prefix + entry.key;
    if (reader_ == Reader::shop && is_of_item(key))
      read_.problem(path, "belongs in a spec, not here; take it out", entry.offset);
    else if (!read_row(entry.value, key, path) && !read_group(entry.value, key, path))
      read_.unknown_key(entry, path, keys_after(prefix));
  }

  bool is_of_item(std::string_view key) const {
    return std::any_of(table_.rows.begin(), table_.rows.end(), [&](const KeyRow& row) {
      return row.of_item && (row.key == key || stands_below(row.key, key));
    });
  }

  bool read_row(const Value& value, const std::string& key, const std::string& path) {
    for (const KeyRow& row : table_.rows) {
      if (row.key != key) continue;
      read_value(row, value, path);
      return true;
    }
    return false;
  }

  void read_value(const KeyRow& row, const Value& value, const std::string& path) {
    KeyValue& its = values_[row.key];
    switch (row.holds) {
      case Holds::size:
      case Holds::size_or_zero:
        its.size = read_.length(value, path, row.holds == Holds::size_or_zero);
        return;
      case Holds::flag:
        if (value.kind == Value::Kind::boolean)
          its.flag = value.text == "true";
        else
          read_.wrong_type(value, path, "true or false; write one of them, without quotes");
        return;
      case Holds::word:
        its.word = read_.choice(value, path, *row.choices);
        return;
    }
  }

  /// A key with members: an object of them, or, where that is allowed, one length for all.
  bool read_group(const Value& value, const std::string& key, const std::string& path) {
    const auto member = std::find_if(table_.rows.begin(), table_.rows.end(),
                                     [&](const KeyRow& it) { return stands_below(it.key, key); });
    if (member == table_.rows.end()) return false;
    const bool spreads =
        std::find(table_.spreads.begin(), table_.spreads.end(), key) != table_.spreads.end();
    if (value.kind == Value::Kind::object)
      read_object(value, key + ".", path);
    else if (!spreads)
      read_.wrong_type(
          value, path,
          "an object; the keys in it are " + quoted_list(keys_after(key + "."), "and"));
    else if (value.kind == Value::Kind::list)
      read_.wrong_type(value, path,
                       "a length; write one for all, or an object with " +
                           quoted_list(keys_after(key + "."), "and"));
    else
      spread(value, key, path, member->holds == Holds::size_or_zero);
    return true;
  }

  void spread(const Value& value, const std::string& key, const std::string& path,
              bool zero_allowed) {
    const auto length = read_.length(value, path, zero_allowed);
    for (const KeyRow& row : table_.rows)
      if (stands_below(row.key, key)) values_[row.key].size = length;
  }

  /// The keys that an object after `prefix` may have, each once.
  std::vector<std::string_view> keys_after(const std::string& prefix) const {
    std::vector<std::string_view> keys;
    if (prefix.empty()) keys = others_;
    for (const KeyRow& row : table_.rows) {
      if (!row.key.starts_with(prefix) || (reader_ == Reader::shop && row.of_item)) continue;
      const std::string_view rest = row.key.substr(prefix.size());
      const std::string_view key = rest.substr(0, rest.find('.'));
      if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
    }
    std::erase(keys, "$schema");
    return keys;
  }

  ValueReader& read_;
  const KeyTable& table_;
  Reader reader_;
  const std::vector<std::string_view>& others_;
  KeyedValues values_;
};

}  // namespace

const KeyRow& row_of(const KeyTable& table, std::string_view key) {
  return *std::find_if(table.rows.begin(), table.rows.end(),
                       [&](const KeyRow& row) { return row.key == key; });
}

const KeyValue& KeyedValues::of(std::string_view key) const {
  static const KeyValue kNothing;
  const auto found = values_.find(key);
  return found == values_.end() ? kNothing : found->second;
}

void KeyedValues::overlay(const KeyedValues& shop) {
  for (const auto& [key, shops] : shop.values_) {
    KeyValue& its = values_[key];
    if (its.stated() || !shops.stated()) continue;
    its = shops;
    its.by_shop = true;
  }
}

KeyedValues read_keys(ValueReader& read, const KeyTable& table, const Value& object,
                      const std::string& path, Reader reader,
                      const std::vector<std::string_view>& others) {
  KeyReader keys(read, table, reader, others);
  keys.read_object(object, "", path);
  return keys.take();
}

const std::vector<std::string_view>& item_head_keys() {
  static const std::vector<std::string_view> kKeys = {"$schema", "kind", "units",   "id",
                                                      "name",    "note", "species", "quantity"};
  return kKeys;
}

void read_item_head(ValueReader& read, const Value& document, ItemHead& head) {
  const auto text_of = [&](std::string_view key, std::string& text) {
    if (const Value* value = document.find(key); value != nullptr)
      text = read.text(*value, child_path("", key)).value_or("");
  };
  text_of("id", head.id);
  text_of("name", head.name);
  text_of("note", head.note);
  text_of("species", head.species);
  if (const Value* id = document.find("id");
      id != nullptr && id->kind == Value::Kind::text && id->text.empty())
    read.problem("/id", "an id must not be empty; leave it out to have one made");
  if (const Value* quantity = document.find("quantity"); quantity != nullptr)
    head.quantity = read.whole_number(*quantity, "/quantity", 1, kMostQuantity);
}

std::optional<Unit> read_units(ValueReader& read, const Value& document) {
  const Value* units = document.find("units");
  if (units == nullptr) return {};
  const auto word = read.choice(*units, "/units", kUnitWords);
  return word && *word == 1 ? Unit::inch : Unit::mm;
}

std::vector<Given> given_lengths(std::vector<ReadLength> lengths) {
  std::vector<Given> given;
  for (ReadLength& length : lengths) {
    std::string key = length.path.substr(1);
    std::replace(key.begin(), key.end(), '/', '.');
    given.push_back({std::move(key), std::move(length.written), length.length});
  }
  return given;
}

std::optional<Unit> unit_of_sizes(const std::vector<Given>& given) {
  if (given.empty()) return {};
  const bool metric = std::any_of(given.begin(), given.end(), [](const Given& it) {
    return it.written.find_first_of("mM") != std::string::npos;
  });
  return metric ? Unit::mm : Unit::inch;
}

void name_job(Job& job, const ItemHead& head, std::string_view default_id) {
  job.id = head.id.empty() ? std::string(default_id) : head.id;
  if (head.id.empty())
    job.assumed_names.push_back({"id", job.id, "made from the name of its file"});
  if (!head.quantity) job.assumed_names.push_back({"quantity", 1, "one, where nothing is said"});
  job.name = head.name.empty() ? std::string(job.kind) : head.name;
  job.note = head.note;
  job.species.all = head.species;
  job.quantity = head.quantity.value_or(1);
  job.unit = head.units.value_or(Unit::mm);
}

}  // namespace haunch
