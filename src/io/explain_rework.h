// An item worked again with some of its values moved a little, and how its figures answer.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "explain.h"
#include "explain_figures.h"

namespace haunch {

/// By how much a value is moved: a little over 0.003 mm, which halves, thirds, quarters … tenths of
/// it divide evenly.
inline constexpr Length kNudge = Length::from_steps(5040);

using Figures = std::map<std::string, Length>;

std::optional<Length> figure_in(const std::optional<Figures>& figures, const std::string& name);

/// A value of the spec, or one that was taken for want of it, that can be moved; with others that
/// the work wants to be the same.
struct Movable {
  std::string what;
  struct Said {
    std::string path;  // in the document
    Length value;
  };
  std::vector<Said> said;

  Movable(std::string its_what, std::string path, Length value)
      : what(std::move(its_what)), said{{std::move(path), value}} {}
  Length value() const { return said.front().value; }
};

/// Each under a name of its own: one that is told of several rails has the rail's behind it.
std::vector<std::pair<std::string, const Assumed*>> named(const std::vector<Assumed>& assumed);
/// "top rail" and "a third of the rail", of "top rail: a third of the rail".
std::string whose(const std::string& why);
std::string after_whose(const std::string& why);

/// As a document has it, exact.
Value written(Length length);
Value written(const AssumedValue& value);

/// The document with a value moved.
Value moved(Value document, const Movable& movable, Length by);

/// Works documents that are all one item, in one size or another.
class Rework {
 public:
  Rework(const ShopDefaults* shop, const std::string& default_id, const OtherItems* others)
      : shop_(shop), default_id_(default_id), others_(others) {}

  /// Null where it cannot be worked.
  std::optional<ItemReport> report(const Value& document, bool making) const;
  std::optional<Figures> figures(const Value& document) const;
  /// The lengths that are taken for want of a word, by key.
  std::optional<Figures> taken(const Value& document) const;
  /// Whether it can be worked with a value moved one way or the other.
  bool can_move(const Value& document, const Movable& movable) const;

 private:
  const ShopDefaults* shop_;
  const std::string& default_id_;
  const OtherItems* others_;
};

/// How a figure moves with a value: not at all, always by the same part of it, or otherwise.
struct Slope {
  enum class Kind : std::uint8_t { none, even, uneven } kind = Kind::none;
  Fraction factor = {};
};

/// `up`, `down`: the figure with the value moved so by kNudge; empty where the item cannot be
/// worked then.
Slope slope_of(Length at, std::optional<Length> up, std::optional<Length> down);

}  // namespace haunch
