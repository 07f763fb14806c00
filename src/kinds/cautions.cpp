#include "cautions.h"

#include <algorithm>
#include <utility>

#include "opening_spec.h"

namespace haunch {

Caution opening_disagrees(Length diagonal_short, Unit unit) {
  const bool shorter = diagonal_short < Length();
  return {"opening as found",
          "with its widths and heights and the first diagonal the second would be " +
              in_words(told_of(shorter ? -diagonal_short : diagonal_short, unit), unit) +
              (shorter ? " shorter" : " longer") +
              " than it was read; worked with the tightest that the readings make. Measure again "
              "before wood is cut"};
}

void add_untold(std::vector<Caution>& all, std::vector<Caution> more) {
  for (Caution& its : more) {
    const bool told = std::any_of(all.begin(), all.end(),
                                  [&](const Caution& it) { return it.about == its.about; });
    if (!told) all.push_back(std::move(its));
  }
}

Caution old_paint() {
  return {"old paint",
          "paint from before 1978 may hold lead: in US housing from 6 sq ft inside or 20 sq ft "
          "outside, about one door, the EPA's RRP rule wants a certified firm; elsewhere have it "
          "tested before it is sanded or burnt" +
              std::string(kDecides)};
}

std::string short_of(Length has, Length asked, Unit unit) {
  return has >= asked ? "" : ", " + in_words(asked - has, unit) + " short";
}

}  // namespace haunch
