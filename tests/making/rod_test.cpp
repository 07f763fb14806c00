// What a joiner reads off a rod, and carries over to the pieces.
#include "rod.h"

#include <algorithm>

#include "vocabulary.h"

namespace haunch::test {
namespace {

Rod rod(const Assembly& wood, RodDirection direction) {
  return rod_of(wood, making_of(wood), direction);
}

/// The places where this is marked on the piece of that mark, in order.
std::vector<Length> places(const Assembly& wood, const Rod& rod, std::string_view mark,
                           std::string_view what) {
  std::vector<Length> found;
  for (const RodMark& each : rod.marks)
    for (const RodName& name : each.names)
      for (const std::size_t piece : name.pieces)
        if (name.what == what && wood.pieces[piece].mark == mark) found.push_back(each.at);
  return found;
}

using Places = std::vector<Length>;

/// The side door of the examples: 924 x 2054; stiles 118; rails 118, 195 with its top at 965, and
/// 230; tenons 76 deep in grooves of 13; a muntin of 90 in each tier.
Assembly side_door() {
  return wood(R"({"kind": "door", "units": "mm", "opening": {"width": 930, "height": 2060},
    "clearance": 3, "thickness": 44, "stile_width": 118,
    "rail_widths": [118, {"width": 195, "name": "lock rail", "top": 965}, 230], "panels": 4,
    "tenon_depth": 76, "groove_depth": 13, "fit_allowance": 0.15})");
}

}  // namespace

TEST_CASE("The width rod has stiles, shoulders and tenon ends from the left") {
  const Assembly door = side_door();
  const Rod width = rod(door, RodDirection::width);
  CHECK(width.length == mm(924));
  CHECK(places(door, width, "A", "left edge") == Places{mm(0)});
  CHECK(places(door, width, "A", "groove bottom") == Places{mm(118 - 13)});
  CHECK(places(door, width, "A", "sight edge") == Places{mm(118)});
  CHECK(places(door, width, "D", "tenon end") == Places{mm(118 - 76), mm(924 - 118 + 76)});
  CHECK(places(door, width, "D", "shoulder") == Places{mm(118), mm(924 - 118)});
  CHECK(places(door, width, "B", "right edge") == Places{mm(924)});
}

TEST_CASE("A muntin stands in the middle of the width rod, its mortises in the rails about it") {
  // 688 between the stiles, less a muntin of 90, leaves 299 on each side. Its tenon loses a groove
  // of 13 at each edge, and has 0.4 of play at each in its mortise.
  const Assembly door = side_door();
  const Rod width = rod(door, RodDirection::width);
  CHECK(places(door, width, "F", "sight edge") == Places{mm(417), mm(507)});
  CHECK(places(door, width, "F", "tenon edge") == Places{mm(430), mm(494)});
  CHECK(places(door, width, "E", "mortise begins") == Places{mm(429.6)});
  CHECK(places(door, width, "E", "mortise ends") == Places{mm(494.4)});
}

TEST_CASE("The height rod has the mortises of the stiles from the foot, as the sheet prints them") {
  const Assembly door = side_door();
  const Rod height = rod(door, RodDirection::height);
  for (const char* stile : {"A", "B"}) {
    CHECK(places(door, height, stile, "mortise begins") ==
          Places{mm(76.6), mm(164.1), mm(782.6), mm(888.1), mm(1948.6)});
    CHECK(places(door, height, stile, "mortise ends") ==
          Places{mm(129.9), mm(217.4), mm(846.9), mm(952.4), mm(2015.4)});
  }
}

TEST_CASE("Between rails stand a muntin by its shoulders and a panel in the grooves") {
  // The lower tier is from 230 to 770; its panel goes 12 into grooves of 13, its muntin 76 deep.
  const Assembly door = side_door();
  const Rod height = rod(door, RodDirection::height);
  CHECK(places(door, height, "E", "sight edge") == Places{mm(230)});
  CHECK(places(door, height, "D", "sight edge") == Places{mm(770), mm(965)});
  CHECK(places(door, height, "G", "shoulder") == Places{mm(230), mm(770)});
  CHECK(places(door, height, "G", "tenon end") == Places{mm(230 - 76), mm(770 + 76)});
  CHECK(places(door, height, "J", "lower edge") == Places{mm(218)});
  CHECK(places(door, height, "J", "upper edge") == Places{mm(782)});
  CHECK(places(door, height, "E", "groove bottom") == Places{mm(217)});
}

TEST_CASE("Marks are in order, one at a place, with all that stands there") {
  const Assembly door = side_door();
  for (const RodDirection direction : {RodDirection::height, RodDirection::width}) {
    const Rod its = rod(door, direction);
    CHECK(std::is_sorted(its.marks.begin(), its.marks.end(),
                         [](const RodMark& a, const RodMark& b) { return a.at <= b.at; }));
  }
  const RodMark foot = rod(door, RodDirection::height).marks.front();
  CHECK(foot.at == Length());
  REQUIRE(foot.names.size() == 2);
  CHECK(foot.names[0].what == "lower end");
  CHECK(foot.names[0].pieces == std::vector<std::size_t>{0, 1});
  CHECK(foot.names[1].what == "lower edge");
}

TEST_CASE("A mortise tells what it takes") {
  const Assembly door = side_door();
  const Rod height = rod(door, RodDirection::height);
  const auto its = std::find_if(height.marks.begin(), height.marks.end(),
                                [](const RodMark& mark) { return mark.at == mm(1948.6); });
  REQUIRE(its != height.marks.end());
  REQUIRE(its->names.front().takes.size() == 1);
  CHECK(door.pieces[its->names.front().takes.front()].mark == "C");
}

TEST_CASE("Hinges stand at one height on the leaf and on the jamb that it hangs on") {
  // The leaf hangs 10 above the floor that the jambs stand on.
  const Assembly set = wood(R"({"kind": "doorset", "units": "mm",
    "frame": {"wall_opening": {"width": 910, "height": 2100}, "jamb_thickness": 32},
    "leaf": {"thickness": 44, "stile_width": 118, "rail_widths": [118, 195, 230],
             "hinges": {"number": 3, "length": 100, "width": 36, "thickness": 3}}})");
  const Rod height = rod(set, RodDirection::height);
  const Places begins = places(set, height, "A", "bottom hinge begins");
  REQUIRE(begins.size() == 1);
  CHECK(places(set, height, "G", "bottom hinge begins") == begins);
  CHECK(places(set, height, "G", "bottom hinge ends") == Places{begins[0] + mm(100)});
  CHECK(places(set, height, "G", "lower end") == Places{mm(10)});
}

TEST_CASE("Where a tenon comes through, wedges do not make the outer edge a sight edge") {
  const Assembly gate = wood(R"({"kind": "door", "units": "mm",
    "opening": {"width": 906, "height": 1800}, "stile_width": 120, "joint": "through"})");
  const Rod width = rod(gate, RodDirection::width);
  CHECK(places(gate, width, "A", "left edge") == Places{mm(0)});
  CHECK(places(gate, width, "A", "sight edge") == Places{mm(120)});
  CHECK(places(gate, width, "C", "tenon end") == Places{mm(0), mm(900)});
}

TEST_CASE("A mitred rail is as long as the leaf is wide, its short points at the sight edges") {
  const Assembly board = wood(R"({"kind": "door", "units": "mm", "clearance": 2,
    "opening": {"width": 500, "height": 700}, "stile_width": 60, "joint": "mitre"})");
  const Rod width = rod(board, RodDirection::width);
  CHECK(places(board, width, "C", "left end") == Places{mm(0)});
  CHECK(places(board, width, "C", "short point") == Places{mm(60), mm(496 - 60)});
  CHECK(places(board, width, "A", "sight edge") == Places{mm(60)});
}

TEST_CASE("A tongued bottom has its shoulders at the sides") {
  const Assembly cabinet = wood(R"({"kind": "cabinet", "units": "mm",
    "size": {"width": 600, "height": 720, "depth": 330},
    "case": {"thickness": 18, "joint": "tongued", "joint_depth": 6},
    "toe": {"height": 100, "setback": 60}, "layout": {"shelves": 1}})");
  const Rod width = rod(cabinet, RodDirection::width);
  // The tongue ends 0.5 before the bottom of its housing, so that the shoulder seats first.
  CHECK(places(cabinet, width, "C", "left end") == Places{mm(18 - 6 + 0.5)});
  CHECK(places(cabinet, width, "C", "shoulder") == Places{mm(18), mm(600 - 18)});
}

TEST_CASE("A half-lapped rail has a lap beyond its shoulder, as wide as the stile") {
  const Assembly door = wood(R"({"kind": "door", "units": "mm", "clearance": 2,
    "opening": {"width": 500, "height": 700}, "stile_width": 60, "joint": "half-lap"})");
  const Rod width = rod(door, RodDirection::width);
  CHECK(places(door, width, "C", "lap end") == Places{mm(0), mm(496)});
  CHECK(places(door, width, "C", "shoulder") == Places{mm(60), mm(436)});
  CHECK(places(door, rod(door, RodDirection::height), "A", "half-lap begins") == Places{mm(636)});
}

TEST_CASE("A mortise for a loose tenon takes that") {
  const Assembly door = wood(R"({"kind": "door", "units": "mm", "clearance": 2,
    "opening": {"width": 500, "height": 700}, "stile_width": 60, "joint": "loose"})");
  for (const RodMark& mark : rod(door, RodDirection::height).marks)
    for (const RodName& name : mark.names)
      if (name.what == "mortise begins")
        for (const std::size_t piece : name.takes)
          CHECK(door.pieces[piece].role == Role::loose_tenon);
}

TEST_CASE("An arched rail has its springing and its crown") {
  // A curve that rises 90 between the stiles, 110 left at the crown of a leaf 2047 high.
  const Assembly door = wood(R"({"kind": "door", "units": "mm",
    "opening": {"width": 930, "height": 2060}, "stile_width": 100, "arch": {"rise": 90},
    "rail_widths": [110, {"width": 195, "top": 960}, 230]})");
  const Rod height = rod(door, RodDirection::height);
  CHECK(places(door, height, "C", "crown of the curve") == Places{mm(2047 - 110)});
  CHECK(places(door, height, "C", "springing") == Places{mm(2047 - 110 - 90)});
  CHECK(places(door, height, "C", "sight edge").empty());
}

TEST_CASE("A cabinet's depth rod has the groove for its back, and where shelf pins stand") {
  // The side is 580 deep; the back, 6 thick in a groove 0.1 wider, lies 12 before the rear edge.
  const Assembly cabinet = wood(R"({"kind": "cabinet", "units": "mm",
    "size": {"width": 900, "height": 870, "depth": 580},
    "case": {"material": "birch plywood", "thickness": 18, "joint_depth": 6,
             "back": {"thickness": 6, "fit": "grooved", "depth": 6, "from_back": 12}},
    "layout": {"shelves": 1}})");
  const Rod depth = rod(cabinet, RodDirection::depth);
  CHECK(places(cabinet, depth, "A", "front edge") == Places{mm(0)});
  CHECK(places(cabinet, depth, "A", "groove begins") == Places{mm(580 - 12 - 6.1)});
  CHECK(places(cabinet, depth, "A", "groove ends") == Places{mm(580 - 12)});
  CHECK(places(cabinet, depth, "A", "shelf pin hole").size() == 2);
  CHECK(places(cabinet, depth, "A", "rear edge") == Places{mm(580)});
}

TEST_CASE("Of shelf pins every hole is marked, with those that are left out between shelves") {
  // Two shelves in 720 with five holes of 32 each about them: 168 to 296, and 392 to 520.
  const Assembly cabinet = wood(R"({"kind": "cabinet", "units": "mm",
      "size": {"width": 800, "height": 720, "depth": 330}, "case": {"thickness": 18},
      "layout": {"front": "pair", "shelves": 2}})");
  const Places holes = places(cabinet, rod(cabinet, RodDirection::height), "A", "shelf pin hole");
  CHECK(holes == Places{mm(168), mm(200), mm(232), mm(264), mm(296), mm(392), mm(424), mm(456),
                        mm(488), mm(520)});
}

TEST_CASE("The curve of an arched leaf is struck from its centre on the rod") {
  // It rises 120 over 930 at the opening: (465 x 465 + 120 x 120) / 240 is a radius of 960 15/16;
  // the leaf's is 3 less, its crown at 2047.
  const Assembly door = wood(R"({"kind": "door", "units": "mm", "stile_width": 100,
    "opening": {"width": 930, "height": 2060}, "arch": {"at": "both", "rise": 120},
    "rail_widths": [110, {"width": 195, "top": 960}, 230]})");
  const Rod height = rod(door, RodDirection::height);
  const Length radius = mm(957) + floor_divide(mm(15), 16);
  CHECK(places(door, height, "C", "centre of the curve") == Places{mm(2047) - radius});
}

TEST_CASE("A cabinet's height rod has a side's housing for the bottom, 0.1 wider than that") {
  const Assembly cabinet = wood(R"({"kind": "cabinet", "units": "mm",
    "size": {"width": 900, "height": 870, "depth": 580},
    "case": {"material": "birch plywood", "thickness": 18, "joint_depth": 6},
    "toe": {"height": 100, "setback": 60}, "layout": {"shelves": 1}})");
  const Rod height = rod(cabinet, RodDirection::height);
  CHECK(places(cabinet, height, "A", "notch ends") == Places{mm(100)});
  CHECK(places(cabinet, height, "A", "housing begins") == Places{mm(99.95)});
  CHECK(places(cabinet, height, "A", "housing ends") == Places{mm(118.05)});
}

TEST_CASE("Both leaves of a pair stand on one strip for each role") {
  const Assembly pair = wood(R"({"kind": "door", "units": "mm", "leaves": 2,
    "opening": {"width": 1330, "height": 2060}})");
  const Rod width = rod(pair, RodDirection::width);
  const auto stiles = std::count_if(width.strips.begin(), width.strips.end(),
                                    [](const RodStrip& it) { return it.role == Role::stile; });
  CHECK(stiles == 1);
  CHECK(width.strips.front().pieces.size() == 4);
}

}  // namespace haunch::test
