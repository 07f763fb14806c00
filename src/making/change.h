// What is not the same of two works, an old one and a new: figures and words, as they were and as
// they are.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/length.h"
#include "haunch/trade.h"
#include "haunch/wood.h"

namespace haunch {

/// What becomes of something from the old work to the new.
enum class Turn : unsigned char { stays, changes, comes, goes };

template <>
inline constexpr std::string_view kWords<Turn>[] = {"stays", "changes", "comes", "goes"};

/// Sizes that no saw tells apart: within 0.001 mm.
inline bool same_size(Length a, Length b) {
  return std::max(a, b) - std::min(a, b) <= Length::from_mm_thousandths(1);
}
inline bool same_size(const std::optional<Length>& a, const std::optional<Length>& b) {
  return a && b ? same_size(*a, *b) : a.has_value() == b.has_value();
}

struct FigureChange {
  std::string_view what;             // a literal: "length", "from_face"
  std::optional<Length> was, is;     // one of them may be missing
  std::optional<Length> by() const;  // where none is

  friend bool operator==(const FigureChange&, const FigureChange&) = default;
};

struct WordChange {
  std::string_view what;  // a literal: "material"
  std::string was, is;

  friend bool operator==(const WordChange&, const WordChange&) = default;
};

/// All that differs of one thing.
struct Changes {
  std::vector<FigureChange> figures;
  std::vector<WordChange> words;

  bool empty() const { return figures.empty() && words.empty(); }
  /// Nothing where they are the same.
  void add(std::string_view what, std::optional<Length> was, std::optional<Length> is);
  void add(std::string_view what, std::string_view was, std::string_view is);
  void add(const std::vector<NamedSize>& was, const std::vector<NamedSize>& is);

  friend bool operator==(const Changes&, const Changes&) = default;
};

/// How many there were, how many there are, and how many of them are the same in both.
struct Tallied {
  std::size_t was = 0, is = 0, same = 0;

  friend bool operator==(const Tallied&, const Tallied&) = default;
};

/// Of something that was, is, or both.
template <class Thing>
Turn turn_of(const std::optional<Thing>& was, const std::optional<Thing>& is) {
  return !was ? Turn::comes : !is ? Turn::goes : Turn::changes;
}

}  // namespace haunch
