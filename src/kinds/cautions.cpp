#include "cautions.h"

namespace haunch {

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
