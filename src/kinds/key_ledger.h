// The book that is kept while the sizes of a spec of plain keys are settled: where each came from,
// what may be changed, what can't be.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "key_table.h"
#include "kind.h"

namespace haunch {

class KeyLedger {
 public:
  KeyLedger(const KeyTable& table, const KeyedValues& stated_values, Unit spec_unit)
      : values(stated_values), unit(spec_unit), table_(table) {}

  /// What is stated. A copy, so that one of the shop's sizes can be struck out where it gives way.
  KeyedValues values;
  const Unit unit;

  std::vector<Assumed> assumed;
  std::vector<Lever> levers;
  std::vector<Problem> problems;  // paths as in a spec of these keys alone

  /// A size that is a whole number of thousandths of a millimetre in a metric job, and a fraction
  /// of an inch in an inch job.
  Length pick(std::int64_t thousandths_of_mm, std::int64_t parts, std::int64_t of) const;

  /// The stated size, else `fallback`; one that is not the spec's own is listed as assumed. A lever
  /// where the table lets a remedy change it.
  Length take(std::string_view key, Length fallback, std::string_view why);
  /// The same for the members of a group, listed as one where nothing, or the shop alone, said the
  /// same of all of them.
  struct Member {
    std::string_view key;
    Length* size;
    Length fallback;
  };
  void take_group(std::string_view group, const std::vector<Member>& members, std::string_view why);
  /// The chosen word's place among its choices, else that of `fallback`.
  std::size_t choose(std::string_view key, std::size_t fallback, std::string_view why);

  void assume(std::string_view key, decltype(Assumed::value) value, std::string_view why);
  void add_lever(std::string_view key, Length value);
  /// Something that can't be. It stands at the first of `keys` that the spec states, else at the
  /// first that the shop file does (and says so), else at the first. One fault at a key is enough.
  void problem(const std::vector<std::string_view>& keys, std::string message);
  bool clean() const { return problems.empty(); }

  /// A length in words, in the spec's unit.
  std::string say(Length length) const;

 private:
  enum class Source { nobody, shop, spec };
  Source source_of(std::string_view key) const;

  const KeyTable& table_;
};

}  // namespace haunch
