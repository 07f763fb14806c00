#include "haunch/trade.h"

#include <set>

#include "catch.h"

namespace haunch::test {
namespace {

template <typename Kind>
bool each_word_is_its_own() {
  const std::set<std::string_view> words(std::begin(kWords<Kind>), std::end(kWords<Kind>));
  return words.size() == std::size(kWords<Kind>) && !words.contains("");
}

}  // namespace

TEST_CASE("Every kind of thing has a word, no two of them the same") {
  CHECK(each_word_is_its_own<Role>());
  CHECK(each_word_is_its_own<JointKind>());
  CHECK(each_word_is_its_own<FeatureKind>());
  CHECK(each_word_is_its_own<SizeName>());
  CHECK(each_word_is_its_own<GroupKind>());
}

TEST_CASE("Words are those of reports") {
  CHECK(word_of(Role::loose_tenon) == "loose-tenon");
  CHECK(word_of(JointKind::mortise_and_tenon) == "mortise-and-tenon");
  CHECK(word_of(FeatureKind::lip_rebate) == "lip-rebate");
  CHECK(word_of(SizeName::from_foot) == "from_foot");
}

}  // namespace haunch::test
