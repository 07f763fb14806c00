#include "cutting.h"

#include "catch.h"

using namespace haunch::lumber;

TEST_CASE("nothing wanted, nothing cut") {
  const Plan plan = plan_cutting({});
  CHECK(plan.boards.empty());
  CHECK(plan.unplaced.empty());
}
