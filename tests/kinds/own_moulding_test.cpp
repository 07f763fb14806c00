// Mouldings that a shop draws itself.
#include "joint_checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// An ogee 9 wide and 10 deep: a fillet of 1, a round and a hollow, each an eighth of a turn twice.
constexpr std::string_view kOgee =
    R"("mouldings": [{"name": "mill ogee", "outline": [
         {"from_edge": 9, "deep": 0}, {"from_edge": 9, "deep": 1},
         {"from_edge": 4.5, "deep": 5.5, "round": 4.5},
         {"from_edge": 0, "deep": 10, "hollow": 4.5}]}])";

std::string with(std::string_view edge, std::string_view mouldings = kOgee) {
  return house_mm(R"("panels": 2, "edge": {)" + std::string(edge) + "}, " + std::string(mouldings));
}

std::string outline(std::string_view corners) {
  return R"("mouldings": [{"name": "own", "outline": [)" + std::string(corners) + "]}]";
}

Feature moulding_of(const Assembly& leaf) {
  for (const Feature& feature : piece(leaf, "left stile").features)
    if (feature.kind == FeatureKind::moulding) return feature;
  throw std::invalid_argument("it has no moulding");
}

}  // namespace

TEST_CASE("A moulding that the shop drew is stuck, and coped or mitred as others are") {
  for (const char* kind : {"coped", "mitred"})
    for (const char* faces : {"front", "both"}) {
      INFO(kind << " " << faces);
      const Assembly leaf = wood(with(R"("kind": ")" + std::string(kind) + R"(", "faces": ")" +
                                      faces + R"(", "profile": "mill ogee")"));
      CHECK(not_ok(leaf) == "");
      const Feature moulding = moulding_of(leaf);
      CHECK(moulding.profile == "mill ogee");
      CHECK(size_of(moulding, SizeName::width) == mm(9));
      CHECK(size_of(moulding, SizeName::depth) == mm(10));
      CHECK(size_of(moulding, SizeName::fillet) == mm(1));
      CHECK(size_of(moulding, SizeName::radius) == mm(4.5));
      CHECK(size_of(moulding, SizeName::hollow_radius) == mm(4.5));
    }
}

TEST_CASE("A quarter round that is drawn is the one that haunch has") {
  const Assembly drawn =
      wood(with(R"("kind": "coped", "profile": "own")",
                outline(R"({"from_edge": 9, "deep": 0}, {"from_edge": 9, "deep": 1},
                           {"from_edge": 0, "deep": 10, "round": 9})")));
  const Assembly known = wood(house_mm(
      R"("panels": 2, "edge": {"kind": "coped", "profile": "ovolo", "width": 9, "fillet": 1})"));
  CHECK(moulding_of(drawn).prisms.front().outline == moulding_of(known).prisms.front().outline);
  CHECK(not_ok(drawn) == "");
}

TEST_CASE("Steps are coped too: a flat at the sight edge, and one on the way") {
  const Assembly leaf =
      wood(with(R"("kind": "coped", "profile": "own")",
                outline(R"({"from_edge": 9, "deep": 0}, {"from_edge": 9, "deep": 2},
                      {"from_edge": 6, "deep": 2}, {"from_edge": 2, "deep": 8},
                      {"from_edge": 0, "deep": 8})")));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("What is drawn wrong is refused, at its corner") {
  const auto refused = [](std::string_view corners) {
    return refusal(with(R"("kind": "coped", "profile": "own")", outline(corners)));
  };
  const std::string at = "/mouldings/0/outline/";
  CHECK(refused(R"({"from_edge": 9, "deep": 1}, {"from_edge": 0, "deep": 9})")
            .starts_with(at + "0: an outline begins on the face"));
  CHECK(refused(R"({"from_edge": 9, "deep": 0}, {"from_edge": 1, "deep": 9})")
            .starts_with(at + "1: an outline ends on the sight edge"));
  CHECK(refused(R"({"from_edge": 9, "deep": 0}, {"from_edge": 5, "deep": 6},
                   {"from_edge": 7, "deep": 8}, {"from_edge": 0, "deep": 9})")
            .starts_with(at + "2: an outline falls from the face to the sight edge"));
  CHECK(refused(R"({"from_edge": 9, "deep": 0}, {"from_edge": 0, "deep": 9, "round": 6})")
            .starts_with(at + "1: an outline turns back in an arc"));
  CHECK(refused(R"({"from_edge": 9, "deep": 0}, {"from_edge": 9, "deep": 9, "hollow": 9},
                   {"from_edge": 0, "deep": 9})")
            .starts_with(at + "1: an outline has no arc"));
  CHECK(refused(R"({"from_edge": 9, "deep": 0},
                   {"from_edge": 0, "deep": 9, "round": 9, "hollow": 9})")
            .starts_with(at + "1: an outline has one arc"));
  // 15 of 44 in front of the groove.
  CHECK(refused(R"({"from_edge": 9, "deep": 0}, {"from_edge": 0, "deep": 16})")
            .find("comes to the groove or mortise") != std::string::npos);
}

TEST_CASE("A name must be one of a moulding's, and one of no other's") {
  CHECK(refusal(with(R"("kind": "coped", "profile": "mill ogre")")) ==
        "/edge/profile: \"mill ogre\" is no moulding; write \"bevel\", \"ovolo\" or \"cove\", or "
        "one that is drawn: \"mill ogee\"");
  CHECK(refusal(house_mm(R"("edge": {"kind": "coped", "profile": "ogee"})")) ==
        "/edge/profile: \"ogee\" is no moulding; write \"bevel\", \"ovolo\" or \"cove\", or draw "
        "it under \"mouldings\"");
  CHECK(refusal(with(R"("kind": "coped", "profile": "mill ogee", "width": 8)")) ==
        "/edge/width: the moulding \"mill ogee\" has the sizes that it is drawn with; take this "
        "out");
}

TEST_CASE("A shop file has them for all its work") {
  const ShopDefaults the_shop = shop(R"({"units": "mm", )" + std::string(kOgee) +
                                     R"(, "edge": {"kind": "coped", "profile": "mill ogee"}})");
  CHECK(moulding_of(wood(house_mm(), &the_shop)).profile == "mill ogee");
}

}  // namespace haunch::test
