#include "tail_spacing.h"

#include <algorithm>

namespace haunch {

SettledTails settle_tails(Ledger& ledger, const TailKeys& keys, const UsualTails& usual) {
  SettledTails settled;
  TailSpacing& spacing = settled.spacing;
  const bool by_cutter = usual.cutter > Length();
  const auto slope = ledger.spec.count(keys.slope);
  if (!slope && !by_cutter) ledger.assume(keys.slope, 8, "1 in 8 (Fairham 1917)");
  if (!by_cutter) settled.slope = slope.value_or(8);
  spacing.pin = ledger.take(keys.pin, usual.pin, usual.why);
  const bool stated = ledger.stated(keys.half_pin).stated;
  const Length thin = ledger.pick(6'000, 1, 4);
  spacing.half_pin =
      ledger.take(keys.half_pin, by_cutter ? thin : std::max(thin, spacing.pin),
                  "at least, and what whole tails leave: thinner it splits off (trade article)");
  spacing.half_pin_is_least = !stated;
  spacing.whole = stated ? Length::from_steps(1) : ledger.pick(500, 1, 64);
  spacing.number = ledger.spec.count(keys.number);
  if (spacing.number) return settled;
  const Length three = std::min(spacing.pin * 3, usual.widest);
  const Length two_cuts = usual.cutter * 2;
  spacing.widest =
      ledger.take(keys.widest, std::max(three, two_cuts),
                  two_cuts > three ? "twice the cutter"
                                   : "three pins: tails are 2 to 3 times as wide (trade article)");
  return settled;
}

}  // namespace haunch
