// A text that is not a length is held against a list of rules. The first that fits says what is
// wrong and may propose another text. A proposal is passed on only if it reads as a length, or if
// what is wrong with it can be put right in turn; so a rule may propose freely, but nothing that
// could mean something else than what was written.
#include "length_refusal.h"

#include <utility>

#include "length_reader.h"
#include "refusal/rules.h"

namespace haunch {
namespace {

using Rule = refusal::Ruling (*)(const WrittenLength&);

// What a text is comes before how its numbers and units are written; the earlier rules let the
// later ones rely on plain characters and on numbers of few digits.
constexpr Rule kRules[] = {
    refusal::nothing_readable, refusal::sign,
    refusal::look_alike,       refusal::no_number,
    refusal::a_date,           refusal::hexadecimal,
    refusal::exponent,         refusal::something_before,
    refusal::more_than_one,    refusal::comma,
    refusal::parted_thousands, refusal::leading_zero,
    refusal::wrong_shape,      refusal::no_decimals,
    refusal::too_many_digits,  refusal::fraction_value,
    refusal::half_a_fraction,  refusal::hyphenated_numbers,
    refusal::unknown_word,     refusal::bare_fraction,
    refusal::unit_first,       refusal::area,
    refusal::after_last_unit,  refusal::two_units,
    refusal::full_stop,        refusal::stray_character,
};

refusal::Advice advice_on(const WrittenLength& written) {
  for (const Rule rule : kRules)
    if (refusal::Ruling ruling = rule(written)) return std::move(*ruling);
  return refusal::anything_else();
}

/// The proposal if it reads as a length, or else what the advice on it proposes, at most `more`
/// times.
std::string readable(const refusal::Advice& advice, Unit bare, int more) {
  if (advice.proposal.empty()) return {};
  const WrittenLength proposal(advice.proposal, bare);
  std::string text = proposal.text();
  if (length_written(text, bare)) return text;
  if (!advice.may_need_more || more == 0) return {};
  return readable(advice_on(proposal), bare, more - 1);
}

}  // namespace

Refusal refusal_of(std::string_view text, Unit bare) {
  constexpr int kMostFaults = 4;
  refusal::Advice advice = advice_on(WrittenLength(text, bare));
  std::string instead = readable(advice, bare, kMostFaults - 1);
  return {std::move(advice.why), std::move(instead)};
}

}  // namespace haunch
