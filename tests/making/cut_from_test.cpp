// What can still be got out of a piece that is cut already.
#include "cut_from.h"

#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A cabinet door, 20 thick; stiles 60, rails 60 and 80, tenons 40 deep.
Assembly cupboard(int width, int height, std::string_view more = R"("tenon_depth": 40)") {
  return wood(door_spec(R"("units": "mm", "clearance": 3, "thickness": 20, "stile_width": 60,
                           "rail_widths": [60, 80], "groove_depth": 9, "opening": {"width": )" +
                            std::to_string(width) + R"(, "height": )" + std::to_string(height) +
                            "}",
                        more));
}

bool from(const Assembly& is, const Assembly& was, std::string_view name) {
  return can_be_cut_from(piece(is, name), piece(was, name));
}

}  // namespace

TEST_CASE("What is cut is its own") {
  const Assembly leaf = cupboard(406, 706);
  for (const Piece& each : leaf.pieces)
    CHECK(can_be_cut_from(each, each));
}

TEST_CASE("A rail is cut from one that is longer: its tenons are cut again") {
  CHECK(from(cupboard(386, 706), cupboard(406, 706), "top rail"));
  CHECK_FALSE(from(cupboard(406, 706), cupboard(386, 706), "top rail"));
}

TEST_CASE("A rail with a mortise in its middle is shortened at both ends") {
  const std::string_view two = R"("tenon_depth": 40, "panels": 2)";
  CHECK(from(cupboard(386, 706, two), cupboard(406, 706, two), "top rail"));
}

TEST_CASE("A stile is not shortened where a mortise would be left beside the new one") {
  // The upper mortise comes 20 lower; what is left of the old one is no relish.
  CHECK_FALSE(from(cupboard(406, 686), cupboard(406, 706), "left stile"));
}

TEST_CASE("A stile is shortened by more than its upper mortise is long, if that is all sawn off") {
  CHECK(from(cupboard(406, 606), cupboard(406, 706), "left stile"));
}

TEST_CASE("A panel is cut from a larger one, but not from one that is thinner") {
  CHECK(from(cupboard(386, 686), cupboard(406, 706), "panel"));
  const std::string_view thick = R"("tenon_depth": 40, "panel": {"thickness": 10})";
  const std::string_view thin = R"("tenon_depth": 40, "panel": {"thickness": 9})";
  CHECK(from(cupboard(386, 686, thin), cupboard(406, 706, thick), "panel"));
  CHECK_FALSE(from(cupboard(386, 686, thick), cupboard(406, 706, thin), "panel"));
}

TEST_CASE("A mortise may become deeper, not shallower") {
  const Assembly deep = cupboard(406, 706, R"("tenon_depth": 45)");
  const Assembly shallow = cupboard(406, 706);
  CHECK(from(deep, shallow, "left stile"));
  CHECK_FALSE(from(shallow, deep, "left stile"));
}

TEST_CASE("Horns are not made from what is cut already, nor is glass") {
  Piece longer = piece(cupboard(406, 706), "panel");
  Piece shorter = piece(cupboard(406, 686), "panel");
  longer.horn = shorter.horn = mm(30);
  CHECK_FALSE(can_be_cut_from(shorter, longer));
  longer.horn = shorter.horn = Length();
  CHECK(can_be_cut_from(shorter, longer));
  longer.matter = shorter.matter = Matter::glass;
  CHECK_FALSE(can_be_cut_from(shorter, longer));
}

TEST_CASE("A strip stays at its end: a shelf is cut off at the other, if that has none") {
  Piece old{"A", "shelf", Role::shelf, {mm(800), mm(300), mm(18)}, {}, {}, {}};
  old.strips = {{1, true, mm(2), "oak"}};
  Piece shorter = old;
  shorter.blank[0] = mm(700);
  CHECK(can_be_cut_from(shorter, old));
  shorter.strips.push_back({1, false, mm(2), "oak"});
  CHECK_FALSE(can_be_cut_from(shorter, old));
  old.strips = shorter.strips;
  CHECK_FALSE(can_be_cut_from(shorter, old));
  old.strips.clear();
  CHECK_FALSE(can_be_cut_from(shorter, old));
}

}  // namespace haunch::test
