// The library as a program of one's own uses it.
#include "haunch/work.h"

#include "catch.h"
#include "vocabulary.h"

namespace haunch::test {

TEST_CASE("a program works a spec by the library alone", "[work]") {
  const WorkedSpec worked = work_spec(
      R"({"kind": "door", "id": "hatch", "units": "mm", "opening": {"width": 560, "height": 720}})");
  CHECK(worked.faults.empty());
  REQUIRE(worked.items.size() == 1);
  CHECK(worked.items[0].id == "hatch");
  CHECK(worked.items[0].fails == 0);
  CHECK(worked.items[0].wood.size[1] == mm(716));
}

TEST_CASE("of a list what can be worked is, and what is wrong has its place", "[work]") {
  const WorkedSpec worked = work_spec(R"([{"kind": "door", "units": "mm"},
 {"kind": "door", "units": "mm", "opening": {"width": 560, "height": 720}}])");
  REQUIRE(worked.items.size() == 1);
  CHECK(worked.items[0].id == "item-2");
  REQUIRE(worked.faults.size() == 1);
  CHECK(worked.faults[0].line == 1);
  CHECK(worked.faults[0].path == "/0");
}

TEST_CASE("a text that is no JSON is told by line and column", "[work]") {
  const WorkedSpec worked = work_spec("{\n  \"kind\" \"door\"}");
  CHECK(worked.items.empty());
  REQUIRE(worked.faults.size() == 1);
  CHECK(worked.faults[0].line == 2);
}

}  // namespace haunch::test
