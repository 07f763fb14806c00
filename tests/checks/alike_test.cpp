// Joints that are measured once, because they are the same.
#include "alike.h"

#include "vocabulary.h"

namespace haunch::test {
namespace {

/// The joints of a piece's ends, in their order.
std::vector<std::size_t> ends_of(const Assembly& leaf, std::string_view name) {
  std::vector<std::size_t> ends;
  for (std::size_t number = 0; number < leaf.joints.size(); ++number) {
    const Joint& joint = leaf.joints[number];
    if (joint.tenon && leaf.pieces[joint.enters].name == name) ends.push_back(number);
  }
  return ends;
}

bool are_alike(const Assembly& leaf, std::size_t a, std::size_t b) {
  return Looks(leaf).are_alike(a, b);
}

}  // namespace

TEST_CASE("The two ends of a rail are alike, though one is the other's mirror image") {
  const Assembly leaf = wood(cabinet_mm(""));
  const std::vector<std::size_t> ends = ends_of(leaf, "top rail");
  REQUIRE(ends.size() == 2);
  CHECK(are_alike(leaf, ends[0], ends[1]));
}

TEST_CASE("Top and bottom rail are not alike: their haunches stand at other edges") {
  const Assembly leaf = wood(cabinet_mm(""));
  CHECK_FALSE(are_alike(leaf, ends_of(leaf, "top rail")[0], ends_of(leaf, "bottom rail")[0]));
}

TEST_CASE("Round ends of mortises are alike from left and right") {
  const Assembly leaf = wood(cabinet_mm(R"("mortise": {"ends": "tenon-rounded"})"));
  const std::vector<std::size_t> ends = ends_of(leaf, "top rail");
  CHECK(are_alike(leaf, ends[0], ends[1]));
}

TEST_CASE("A cut a step longer at one end makes the two ends different") {
  Assembly leaf = wood(cabinet_mm(""));
  const std::vector<std::size_t> ends = ends_of(leaf, "top rail");
  Feature& mortise = leaf.pieces[leaf.joints[ends[0]].receives].features.back();
  REQUIRE_FALSE(mortise.cuts.empty());
  mortise.cuts.front().high[0] += Length::from_steps(1);
  CHECK_FALSE(are_alike(leaf, ends[0], ends[1]));
}

}  // namespace haunch::test
