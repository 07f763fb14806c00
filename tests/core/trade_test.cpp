#include "haunch/trade.h"

#include <set>

#include "catch.h"

namespace haunch::test {
namespace {

/// How many kinds have a word, from the first on; each has one of its own.
template <typename Kind>
std::size_t words() {
  std::set<std::string_view> all;
  std::size_t count = 0;
  while (!word(static_cast<Kind>(count)).empty())
    all.insert(word(static_cast<Kind>(count++)));
  CHECK(all.size() == count);
  return count;
}

}  // namespace

TEST_CASE("Every kind of thing has a word, no two of them the same") {
  CHECK(words<Role>() == static_cast<std::size_t>(Role::spline) + 1);
  CHECK(words<JointKind>() == static_cast<std::size_t>(JointKind::rebated_corner) + 1);
  CHECK(words<FeatureKind>() == static_cast<std::size_t>(FeatureKind::recess) + 1);
  CHECK(words<SizeName>() == static_cast<std::size_t>(SizeName::opening_radius) + 1);
  CHECK(words<GroupKind>() == static_cast<std::size_t>(GroupKind::set) + 1);
}

TEST_CASE("Words are those of reports") {
  CHECK(word(Role::loose_tenon) == "loose-tenon");
  CHECK(word(JointKind::mortise_and_tenon) == "mortise-and-tenon");
  CHECK(word(FeatureKind::lip_rebate) == "lip-rebate");
  CHECK(word(SizeName::from_foot) == "from_foot");
}

}  // namespace haunch::test
