// Specs whose keys hold one plain value each: reading, messages and schema come from one table.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "document.h"
#include "haunch/length_text.h"
#include "key_words.h"
#include "kind.h"
#include "value_reader.h"

namespace haunch {

/// What a key holds.
enum class Holds { size, size_or_zero, flag, word };

struct KeyRow {
  std::string_view key;  // dotted
  Holds holds = Holds::size;
  Change change = Change::none;                            // of sizes
  std::string_view words;                                  // what it is, for the schema
  const std::vector<std::string_view>* choices = nullptr;  // of words
  bool of_item = false;  // names one item, so that a shop file cannot say it
};

struct KeyTable {
  std::span<const KeyRow> rows;
  std::span<const std::string_view> spreads;  // one length may stand for all the members below
};

const KeyRow& row_of(const KeyTable& table, std::string_view key);

/// What one key was given; empty where nothing was.
struct KeyValue {
  std::optional<Length> size;
  std::optional<bool> flag;
  std::optional<std::size_t> word;
  bool by_shop = false;

  bool stated() const { return size || flag || word; }
};

/// By dotted key. Keys are those of a table, which outlives it.
class KeyedValues {
 public:
  KeyValue& operator[](std::string_view key) { return values_[key]; }
  const KeyValue& of(std::string_view key) const;
  bool says(std::string_view key) const { return of(key).flag.value_or(false); }
  /// Fills what is open from a shop file's, marking it as the shop's.
  void overlay(const KeyedValues& shop);

 private:
  std::map<std::string_view, KeyValue, std::less<>> values_;
};

/// Reads the entries of `object`, which stands at `path`. Keys in `others` are left to their own
/// readers.
KeyedValues read_keys(ValueReader& read, const KeyTable& table, const Value& object,
                      const std::string& path, Reader reader,
                      const std::vector<std::string_view>& others);

/// What names an item, and what its numbers are in.
struct ItemHead {
  std::optional<Unit> units;
  bool units_by_shop = false;
  bool units_inferred = false;  // from the sizes, all of which carry their own
  std::string id, name, note, species;
  bool species_by_shop = false;
  std::optional<int> quantity;
};

/// The keys that ItemHead is read from, with kind and $schema.
const std::vector<std::string_view>& item_head_keys();

/// Reads those keys; not "units", which is read first.
void read_item_head(ValueReader& read, const Value& document, ItemHead& head);

/// The units a document states for itself.
std::optional<Unit> read_units(ValueReader& read, const Value& document);

/// The lengths that were read, by dotted key.
std::vector<Given> given_lengths(std::vector<ReadLength> lengths);

/// What a spec without units is in, as all its sizes carry their own; none where there are none.
std::optional<Unit> unit_of_sizes(const std::vector<Given>& given);

/// Names the job by its head, noting what was assumed.
void name_job(Job& job, const ItemHead& head, std::string_view default_id);

}  // namespace haunch
