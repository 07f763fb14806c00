#include "simplex.h"

#include "catch.h"

using haunch::lumber::Simplex;

namespace {

/// Demands are asked for a hair over, each by another, so that no two corners of the solution meet.
bool near(double a, double b) {
  return a - b < 1e-6 && b - a < 1e-6;
}

}  // namespace

// Bars of 10: seven pieces of 4 and five of 6. A bar gives two of 4, or one of 6, or one of each.
TEST_CASE("five bars with one of each, and one with two of 4") {
  Simplex bars({7, 5}, {}, 100);
  bars.add_column(1, {{0, 2}});
  bars.add_column(1, {{1, 1}});
  bars.add_column(1, {{0, 1}, {1, 1}});
  bars.solve(100);
  CHECK(near(bars.values()[0], 1));
  CHECK(near(bars.values()[1], 0));
  CHECK(near(bars.values()[2], 5));
  CHECK(near(bars.lacking(), 0));
  // One more of either costs half a bar.
  CHECK(near(bars.duals()[0], 0.5));
  CHECK(near(bars.duals()[1], 0.5));
}

TEST_CASE("three bars at 1, the rest at 3: one more cheap bar would save 2") {
  Simplex bars({7}, {3}, 100);
  bars.add_column(1, {{0, 2}, {1, 1}});
  bars.add_column(3, {{0, 2}});
  bars.solve(100);
  CHECK(near(bars.values()[0], 3));
  CHECK(near(bars.values()[1], 0.5));
  CHECK(near(bars.duals()[0], 1.5));
  CHECK(near(bars.duals()[1], -2));
}

TEST_CASE("three bars alone leave one of seven lacking") {
  Simplex bars({7}, {3}, 100);
  bars.add_column(1, {{0, 2}, {1, 1}});
  bars.solve(100);
  CHECK(near(bars.lacking(), 1));
}

TEST_CASE("a better way to cut, found later, is taken up") {
  Simplex bars({6}, {}, 100);
  bars.add_column(1, {{0, 1}});
  bars.solve(100);
  CHECK(near(bars.values()[0], 6));
  bars.add_column(1, {{0, 3}});
  bars.solve(100);
  CHECK(near(bars.values()[0], 0));
  CHECK(near(bars.values()[1], 2));
}
