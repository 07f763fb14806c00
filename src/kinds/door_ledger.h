// The book that is kept while a door's sizes are settled: where each came from, what may be
// changed, what can't be.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "door_defaults.h"
#include "door_spec.h"
#include "kind.h"

namespace haunch {

/// A size settled together with others under one key.
struct GroupMember {
  std::string_view key;  // dotted
  Length* size;          // where it goes
};

class DoorLedger {
 public:
  explicit DoorLedger(const DoorSpec& spec);

  /// What is stated. A copy, so that one of the shop's sizes can be struck out where it gives way
  /// to the spec's.
  DoorSpec spec;
  const Unit unit;
  const DoorDefaults defaults;

  std::vector<Assumed> assumed;
  std::vector<Lever> levers;
  std::vector<Problem> problems;

  const Stated& stated(std::string_view key) const;

  /// From here on the panel's keys are those of one tier: what it states itself, and for want of
  /// that what is stated of all panels. Until leave_tiers.
  void enter_tier(std::size_t tier);
  /// Back to all panels. What was assumed alike in every tier is then listed once.
  void leave_tiers();
  /// Whether the spec states a panel's key itself; in a tier, whether the tier does.
  bool is_own(std::string_view key) const;

  /// The stated size, else `fallback`; one that is not the spec's own is listed as assumed.
  Length settle(std::string_view key, Length fallback, std::string_view why);
  /// The same for a size that a remedy may change.
  Length take(std::string_view key, Length fallback, std::string_view why);
  /// The sizes of a group, listed as one where nothing, or the shop alone, said the same of all of
  /// them.
  void settle_group(std::string_view group, Length fallback,
                    const std::vector<GroupMember>& members);
  /// The chosen word, else `fallback`; listed as assumed by its place in `words`.
  template <typename Word>
  Word choose(const Chosen<Word>& chosen, std::string_view key, Word fallback,
              const std::vector<std::string_view>& words) {
    const Word word = chosen.word.value_or(fallback);
    const std::string text(words[static_cast<std::size_t>(word)]);
    if (!chosen.word) assume(key, text, usual());
    if (chosen.by_shop) note_shop(key, text);
    return word;
  }

  void assume(std::string_view key, decltype(Assumed::value) value, std::string_view why);
  void note_shop(std::string_view key, decltype(Assumed::value) value);
  /// `what`: in words what the key is of, where the key alone does not say.
  void add_lever(const std::string& key, Length value, Change change, bool zero_allowed,
                 std::string what = {});
  /// Something that can't be. It stands at the first of the dotted `keys` that the spec states,
  /// else at the first that
  /// the shop file does (and says so), else at the first. One fault at a key is enough.
  void problem(const std::vector<std::string>& keys, std::string message);
  bool clean() const { return problems.empty(); }

  /// A length in words, in the spec's unit.
  std::string say(Length length) const;
  /// "usual for a house door"
  std::string usual() const;

  /// Who stated a value.
  enum class Source { nobody, shop, spec };

 private:
  Source source_of(std::string_view key) const;
  /// The key as the spec has it: of a tier's panels, where it is not one of all panels'.
  std::string key_here(std::string_view key) const;

  std::optional<std::size_t> tier_;
  PanelSpec all_panels_;          // as stated, while in a tier
  std::size_t before_tiers_ = 0;  // what was assumed until then
};

}  // namespace haunch
