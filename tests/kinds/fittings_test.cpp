// Hinges and locks let in to the stiles: how many, how large and where, unless the spec says.
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string house(std::string_view more, int width = 930, int height = 2060) {
  return door_spec(R"("units": "mm", "clearance": 0, "opening": {"width": )" +
                       std::to_string(width) + R"(, "height": )" + std::to_string(height) + "}",
                   more);
}

constexpr std::string_view kLock =
    R"("lock": {"height": 1100, "case": {"height": 165, "depth": 75, "thickness": 16},
                "faceplate": {"length": 235, "width": 22, "thickness": 3}})";

int hinges(int height) {
  const Worked worked = work(house(R"("hinges": {"length": 80})", 930, height));
  return std::get<int>(assumed_under(worked, "hinges.number").front().value);
}

Length hinge_length(double width_in, std::string_view thickness) {
  const Worked worked = work(door_spec(
      R"("units": "in", "clearance": 0, "opening": {"width": )" + std::to_string(width_in) +
          R"(, "height": 80}, "thickness": )" + std::string(thickness),
      R"("hinges": {"number": 3})"));
  return assumed(worked, "hinges.length").front();
}

}  // namespace

TEST_CASE("One hinge for each 30 in of height or part of it, two at least") {
  CHECK(hinges(700) == 2);
  CHECK(hinges(1524) == 2);
  CHECK(hinges(1525) == 3);
  CHECK(hinges(2286) == 3);
  CHECK(hinges(2287) == 4);
  CHECK(hinges(3048) == 4);
  CHECK(hinges(3049) == 5);
}

TEST_CASE("Hinges are as long as the leaf's thickness and width ask") {
  CHECK(hinge_length(32, "\"1 3/8\"") == inch(3, 1, 2));
  CHECK(hinge_length(32.5, "\"1 3/8\"") == inch(4));
  CHECK(hinge_length(36, "\"1 3/4\"") == inch(4, 1, 2));
  CHECK(hinge_length(36.5, "\"1 3/4\"") == inch(5));
  CHECK(hinge_length(48.5, "\"1 3/4\"") == inch(6));
}

TEST_CASE("The top and the bottom hinge stand where they are put, the rest between them") {
  const Piece stile =
      piece(wood(house(R"("hinges": {"number": 3, "length": 100, "thickness": 3, "width": 38})")),
            "left stile");
  // 230 above the foot, 150 below the top of 2060, and midway.
  CHECK(cuts(stile, "gain") == std::vector{box(230, 0, 0, 330, 3, 38), box(1020, 0, 0, 1120, 3, 38),
                                           box(1810, 0, 0, 1910, 3, 38)});
}

TEST_CASE("A cabinet door's hinges stand in line with the inner edges of its rails") {
  const std::string flap =
      cabinet_mm(R"("clearance": 0, "rail_widths": [60, 80], "hinges": {"number": 2})");
  // 700 high; hinges of 50.
  const std::vector<Box> gains = cuts(piece(wood(flap), "left stile"), "gain");
  REQUIRE(gains.size() == 2);
  CHECK(gains[0].low[0] == mm(80));
  CHECK(gains[1].high[0] == mm(640));
}

TEST_CASE("The lock is let in to the other stile, in the middle of its thickness") {
  const Assembly leaf = wood(house(kLock));
  CHECK(cuts(piece(leaf, "right stile"), "lock-mortise") ==
        std::vector{box(1017.5, 25, 14, 1182.5, 100, 30)});
  CHECK(cuts(piece(leaf, "right stile"), "faceplate") ==
        std::vector{box(982.5, 97, 11, 1217.5, 100, 33)});
  const Assembly other = wood(house(std::string(kLock) + R"(, "hangs": "right")"));
  CHECK(cuts(piece(other, "left stile"), "lock-mortise") ==
        std::vector{box(1017.5, 0, 14, 1182.5, 75, 30)});
}

TEST_CASE("A leaf whose spec does not speak of fittings has none") {
  for (const Piece& each : wood(house("\"horn\": 20")).pieces)
    for (const Feature& feature : each.features)
      CHECK_FALSE(feature.fitting);
}

TEST_CASE("Fittings that do not go on the leaf are refused") {
  const auto lock_of = [](std::string_view keys) {
    return refusal(house("\"lock\": {" + std::string(keys) + "}"));
  };
  CHECK(refusal(house(R"("hinges": {"number": 3, "from_top": 1900, "length": 100})")) ==
        "/hinges/from_top: the hinges reach from 230 mm to 160 mm of a leaf 2060 mm high; move "
        "them");
  CHECK(refusal(house(R"("hinges": {"number": 12, "length": 200})")) ==
        "/hinges/length: 12 hinges of 200 mm stand in each other; have fewer, or shorter ones");
  CHECK(refusal(house(R"("hinges": {"number": 0})")) ==
        "/hinges/number: 0 is out of range; it must be from 1 to 12");
  CHECK(refusal(house(R"("hinges": {"width": 50})")) ==
        "/hinges/width: a hinge 50 mm wide does not go on an edge of 44 mm; make it narrower");
  CHECK(lock_of(R"("height": 1000, "case": {"height": 165, "depth": 75})") ==
        "/lock/case: \"thickness\" is missing; read it off the lock");
  CHECK(lock_of(R"("case": {"height": 165, "depth": 100, "thickness": 16})") ==
        "/lock/case/depth: a case 100 mm deep goes through a stile of 100 mm; take a shallower "
        "lock, or a wider stile");
  CHECK(lock_of(R"("height": 60, "case": {"height": 165, "depth": 60, "thickness": 16})") ==
        "/lock/height: at 60 mm the lock reaches beyond a leaf 2060 mm high; move it");
  CHECK(lock_of(R"("height": 900, "case": {"height": 165, "depth": 60, "thickness": 44})") ==
        "/lock/case/thickness: it does not go in a leaf 44 mm thick; take a thinner lock");
  CHECK(refusal(house("\"hangs\": \"lefft\"")) ==
        "/hangs: \"lefft\" is not known here; did you mean \"left\"?");
}

}  // namespace haunch::test
