// Hours of orders, as a joiner would reckon them on the back of the drawing.
#include "hours.h"

#include <iostream>

#include "priced.h"
namespace haunch {
namespace {

using namespace test;

TEST_CASE("dump") {
  const PricedOrder order = order_of(
      {R"({"kind": "door", "units": "mm", "use": "cabinet", "opening": {"width": 406, "height": 706}, "clearance": 3, "thickness": 22, "stile_width": 60, "rail_widths": [60, 60], "panels": 1})"});
  const HoursPlan h = order.hours(example_rates());
  for (auto& l : h.lines)
    std::cout << l.operation << " | " << word_of(l.group) << " | " << l.setups << " x "
              << minutes_text(l.setup_each) << " = " << minutes_text(l.setup) << " | "
              << quantity_text(l.quantity) << " " << word_of(l.unit) << " x "
              << minutes_text(l.each) << " = " << minutes_text(l.run) << "\n";
  for (auto& p : problems_of(h))
    std::cout << p.path << ": " << p.message << "\n";
  std::cout << minutes_text(h.total) << "\n";
}

}  // namespace
}  // namespace haunch
