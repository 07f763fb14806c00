#include "swung.h"

#include <cmath>

#include "rounding.h"

namespace haunch {

Prism turned(const Box& box, const Swing& swing, double angle) {
  const auto pin_x = static_cast<double>(swing.pin[0].steps());
  const auto pin_z = static_cast<double>(swing.pin[2].steps());
  const double sine = swing.at_high ? -std::sin(angle) : std::sin(angle);
  const double cosine = std::cos(angle);
  Prism prism{1, box.low[1], box.high[1], {}};
  const auto add = [&](Length x, Length z) {
    const double across = static_cast<double>(x.steps()) - pin_x;
    const double deep = static_cast<double>(z.steps()) - pin_z;
    prism.outline.push_back({nearest_step(pin_x + across * cosine + deep * sine),
                             nearest_step(pin_z - across * sine + deep * cosine)});
  };
  add(box.low[0], box.low[2]);
  add(box.high[0], box.low[2]);
  add(box.high[0], box.high[2]);
  add(box.low[0], box.high[2]);
  return prism;
}

}  // namespace haunch
