// Lettering moved apart.
#include "spread.h"

#include "vocabulary.h"

namespace haunch::test {

TEST_CASE("What has room stays beside what it tells of") {
  CHECK(spread({{mm(0), mm(4)}, {mm(10), mm(4)}}, mm(-50), mm(50)) ==
        std::vector<Length>{mm(0), mm(10)});
}

TEST_CASE("Two that want one place share the way that they move") {
  CHECK(spread({{mm(10), mm(4)}, {mm(10), mm(4)}}, mm(0), mm(50)) ==
        std::vector<Length>{mm(8), mm(12)});
}

TEST_CASE("A stack that grows takes in what it comes to touch") {
  // Three that want 10 stand at 6, 10, 14; the fourth wants 16 and touches: all move up by half.
  CHECK(spread({{mm(10), mm(4)}, {mm(10), mm(4)}, {mm(10), mm(4)}, {mm(16), mm(4)}}, mm(0),
               mm(50)) == std::vector<Length>{mm(5.5), mm(9.5), mm(13.5), mm(17.5)});
}

TEST_CASE("None goes above the top or below the bottom") {
  CHECK(spread({{mm(-3), mm(4)}, {mm(-2), mm(4)}, {mm(19), mm(4)}}, mm(0), mm(20)) ==
        std::vector<Length>{mm(0), mm(4), mm(16)});
}

TEST_CASE("Where there is no room for all, they go on below the bottom and never over each other") {
  CHECK(spread({{mm(1), mm(4)}, {mm(1), mm(4)}, {mm(1), mm(4)}}, mm(0), mm(10)) ==
        std::vector<Length>{mm(0), mm(4), mm(8)});
}

}  // namespace haunch::test
