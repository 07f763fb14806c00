#include "usual_cutters.h"

namespace haunch {

std::vector<Length> usual_cutters(Unit unit) {
  std::vector<Length> cutters;
  if (unit == Unit::mm) {
    for (const int mm : {5, 6, 8, 10, 12, 13, 14, 15, 16, 18, 20, 22, 25})
      cutters.push_back(Length::from_mm(mm));
  } else {
    for (int sixteenths = 3; sixteenths <= 16; ++sixteenths)
      cutters.push_back(Length::from_inch_parts(sixteenths, 16));
  }
  return cutters;
}

}  // namespace haunch
