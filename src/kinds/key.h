// Keys of specs as values. One that is written in the program is looked up while that is compiled,
// so that a misspelt key, or one of another kind, does not build.
#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "key_table.h"

namespace haunch {

/// The key in the same row as `path`, dotted, while compiling: throwing is refused there.
consteval std::uint16_t row_number(std::string_view path) {
  for (std::size_t i = 0; i < kKeys.size(); ++i)
    if (kKeys[i].key == path) return static_cast<std::uint16_t>(i);
  throw "no such key in kinds/key_table.h";
}

/// Any key.
class Key {
 public:
  consteval Key(const char* path) : number_(row_number(path)) {}

  const KeyRow& row() const { return kKeys[number_]; }
  std::string_view path() const { return row().key; }
  /// As its own kind of work names it: of a frame without "frame." before it.
  std::string_view name() const {
    for (const KindOfWork& kind : kKindsOfWork)
      if (!kind.root.empty() && path().starts_with(kind.root))
        return path().substr(kind.root.size());
    return path();
  }
  constexpr std::uint16_t number() const { return number_; }
  /// Whether it is a member of the object `group`, or of an object in it.
  bool is_below(Key group) const {
    const std::size_t size = group.path().size();
    return path().size() > size && path().starts_with(group.path()) && path()[size] == '.';
  }

  /// Of a list: the key of each of its items, which stands in the next row.
  Key item() const { return Key(static_cast<std::uint16_t>(number_ + 1)); }

  friend constexpr bool operator==(Key a, Key b) = default;
  friend constexpr auto operator<=>(Key a, Key b) = default;

 protected:
  friend class AllKeys;
  constexpr explicit Key(std::uint16_t number) : number_(number) {}

  std::uint16_t number_;
};

/// Every key, for loops: in the order of the table.
class AllKeys {
 public:
  class Place {
   public:
    explicit constexpr Place(std::size_t number) : number_(number) {}
    Key operator*() const { return Key(static_cast<std::uint16_t>(number_)); }
    Place& operator++() {
      ++number_;
      return *this;
    }
    friend bool operator==(Place a, Place b) = default;

   private:
    std::size_t number_;
  };
  Place begin() const { return Place(0); }
  Place end() const { return Place(kKeys.size()); }
};

/// The key of a dotted path, if it is one.
std::optional<Key> find_key(std::string_view path);

/// A dotted path, or a part of one, with the other name of a muntin, mullion, put right; and the
/// other way round.
std::string muntin_name(const std::string& path);
std::string mullion_name(const std::string& path);

/// A key that holds a length.
class SizeKey : public Key {
 public:
  consteval SizeKey(const char* path) : Key(path) {
    if (!kKeys[number_].is_size()) throw "not the key of a length";
  }
};

/// A key that holds one of the words for a Choice.
template <typename Choice>
class WordKey : public Key {
 public:
  consteval WordKey(const char* path) : Key(path) {
    if (kKeys[number_].words.data() != static_cast<const std::string_view*>(kWords<Choice>))
      throw "not the key of such a word";
  }
};

/// Where something stands in a spec: a key, and what of a list that it holds.
struct Where {
  consteval Where(const char* path) : key(path) {}
  constexpr Where(Key its_key) : key(its_key) {}
  /// A member of a list, or `member` of that: "rail_widths", 1, ".top".
  constexpr Where(Key list, std::size_t its_number, std::string_view its_member = {})
      : key(list), number(its_number), member(its_member) {}

  Key key;
  std::optional<std::size_t> number;
  std::string_view member;

  /// Dotted: "rail_widths.1.top".
  std::string path() const;
};

}  // namespace haunch
