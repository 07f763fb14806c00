// The book that is kept while the sizes of a spec are settled: where each came from, what may be
// changed, what can't be.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kind.h"
#include "spec.h"

namespace haunch {

class Ledger {
 public:
  /// `root`: what the table has before the keys of this spec, see KeyScope.
  explicit Ledger(const Spec& stated_spec, std::string_view root = {})
      : spec(stated_spec), unit(spec.units.value_or(Unit::mm)), root_(root) {}

  /// What is stated. A copy, so that one of the shop's sizes can be struck out where it gives way
  /// to the spec's.
  Spec spec;
  const Unit unit;

  std::vector<Assumed> assumed;
  std::vector<Lever> levers;
  std::vector<Problem> problems;

  const KeyValue& stated(Key key) const { return std::as_const(spec)[key]; }

  /// From here on the panel's keys are those of one tier: what it states itself, and for want of
  /// that what is stated of all panels. Until leave_tiers.
  void enter_tier(std::size_t tier);
  /// Back to all panels. What was assumed alike in every tier is then listed once.
  void leave_tiers();
  /// Whether the spec states a panel's key itself; in a tier, whether the tier does.
  bool is_own(Key key) const;

  /// A size that is a whole number of thousandths of a millimetre in a metric job, and a fraction
  /// of an inch in an inch job.
  Length pick(std::int64_t thousandths_of_mm, std::int64_t parts, std::int64_t of) const;

  /// The stated size, else `fallback`; one that is not the spec's own is listed as assumed.
  Length settle(SizeKey key, Length fallback, std::string_view why);
  /// The same, and a lever where the table lets a remedy change it.
  Length take(SizeKey key, Length fallback, std::string_view why);
  /// A size settled together with others under one key.
  struct Member {
    SizeKey key;
    Length* size;  // where it goes
    Length fallback;
  };
  /// The sizes of a group, listed as one where nothing, or the shop alone, said the same of all of
  /// them.
  void settle_group(Key group, const std::vector<Member>& members, std::string_view why);
  /// The chosen word, else `fallback`; one that is not the spec's own is listed as assumed.
  template <typename Choice>
  Choice choose(WordKey<Choice> key, Choice fallback, std::string_view why) {
    const Choice choice = spec.word(key).value_or(fallback);
    if (!stated(key).stated) assume(key, std::string(word_of(choice)), why);
    note_shops_word(key);
    return choice;
  }

  /// Units and species, where the spec does not say them.
  void note_names();
  void assume(Where where, AssumedValue value, std::string_view why);
  void note_shop(Where where, AssumedValue value);
  /// Lists a word that the shop file says.
  void note_shops_word(Key key);
  /// A size that a remedy may change as the table lets it.
  void add_lever(SizeKey key, Length value);
  /// One of a group or of a list's members. `what`: in words what it is of, where the key alone
  /// does not say.
  void add_lever(Where where, Length value, bool zero_allowed, std::string what = {});
  /// Something that can't be. It stands at the first of `places` that the spec states, else at the
  /// first that the shop file does (and says so), else at the first. One fault at a place is
  /// enough.
  void problem(const std::vector<Where>& places, std::string message);
  bool clean() const { return problems.empty(); }

  /// A length in words, in the spec's unit.
  std::string say(Length length) const;

 private:
  /// The place as the spec has it: of a tier's panels, where it is not one of all panels'.
  std::string shown(Where where) const;
  void add_lever(std::string key, Length value, Change change, bool zero_allowed, std::string what);

  std::string_view root_;
  std::optional<std::size_t> tier_;
  KeyValues all_panels_;          // as stated, while in a tier
  std::size_t before_tiers_ = 0;  // what was assumed until then
};

}  // namespace haunch
