// Hinges and locks let in to the stiles: how many, how large and where, unless the spec says.
#include <algorithm>
#include <cmath>

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
  return assumed_under(worked, "hinges.number").front().value.number;
}

Length hinge_length(double width_in, std::string_view thickness) {
  const Worked worked = work(door_spec(
      R"("units": "in", "clearance": 0, "opening": {"width": )" + std::to_string(width_in) +
          R"(, "height": 80}, "thickness": )" + std::string(thickness),
      R"("hinges": {"number": 3})"));
  return assumed(worked, "hinges.length").front();
}

/// The corners of the box round a prism's outline.
Corner low_corner(const Prism& prism) {
  Corner low = prism.outline.front();
  for (const Corner& corner : prism.outline)
    low = {std::min(low.u, corner.u), std::min(low.v, corner.v)};
  return low;
}
Corner high_corner(const Prism& prism) {
  Corner high = prism.outline.front();
  for (const Corner& corner : prism.outline)
    high = {std::max(high.u, corner.u), std::max(high.v, corner.v)};
  return high;
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

TEST_CASE("Hinges are as long as the leaf's thickness and width ask, row by row of the tables") {
  struct Row {
    std::string_view thickness;
    double width;
    Length length;
  };
  const std::vector<Row> rows{
      {"\"1 3/8\"", 32, inch(3, 1, 2)}, {"\"1 3/8\"", 32.5, inch(4)}, {"\"1 3/8\"", 36, inch(4)},
      {"\"1 3/4\"", 36, inch(4, 1, 2)}, {"\"1 3/4\"", 36.5, inch(5)}, {"\"1 3/4\"", 48, inch(5)},
      {"\"1 3/4\"", 48.5, inch(6)},     {"2", 42, inch(5)},           {"\"2 1/2\"", 42, inch(5)},
      {"\"2 1/4\"", 43.5, inch(6)},
  };
  for (const Row& row : rows) {
    INFO(row.thickness << " thick, " << row.width << " wide");
    CHECK(hinge_length(row.width, row.thickness) == row.length);
  }
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

TEST_CASE("Hinges are placed one by one, from the foot or from the top") {
  const Piece stile =
      piece(wood(house(R"("hinges": {"at": [1000, {"from_top": 150}, {"from_foot": 230}],
                               "length": 100, "thickness": 3, "width": 38})")),
            "left stile");
  // Lowest first.
  CHECK(cuts(stile, "gain") == std::vector{box(230, 0, 0, 330, 3, 38), box(1000, 0, 0, 1100, 3, 38),
                                           box(1810, 0, 0, 1910, 3, 38)});
  CHECK(stile.features.back().fitting->name == "top hinge");
}

TEST_CASE("An empty object asks for all that is usual") {
  CHECK(cuts(piece(wood(house("\"hinges\": {}")), "left stile"), "gain").size() == 3);
  const Worked bored = work(house(R"("lock": {"bore": {}})"));
  CHECK(assumed(bored, "lock.backset").front() == mm(60));
  CHECK(assumed(bored, "lock.bore.diameter").front() == mm(54));
  CHECK(assumed(bored, "lock.bore.latch").front() == mm(25));
  const Worked inches = work(house_in(R"("lock": {"bore": {}})"));
  CHECK(assumed(inches, "lock.height").front() == inch(38));
  CHECK(assumed(inches, "lock.backset").front() == inch(2, 3, 8));
  CHECK(assumed(inches, "lock.bore.diameter").front() == inch(2, 1, 8));
  CHECK(assumed(inches, "lock.bore.latch").front() == inch(1));
  CHECK(assumed(inches, "lock.faceplate.length").front() == inch(2, 1, 4));
  CHECK(assumed(inches, "lock.faceplate.width").front() == inch(1));
  CHECK(assumed(inches, "lock.faceplate.thickness").front() == inch(0, 1, 8));
}

TEST_CASE("A bored lock is a hole through the stile and one from its edge to there") {
  const Piece stile = piece(wood(house(R"("lock": {"height": 1000, "bore": {}})")), "right stile");
  std::vector<const Prism*> holes;
  for (const Feature& feature : stile.features)
    for (const Prism& prism : feature.prisms)
      holes.push_back(&prism);
  REQUIRE(holes.size() == 2);
  CHECK(holes[0]->along == 2);
  CHECK(holes[0]->from == Length());
  CHECK(holes[0]->to == mm(44));
  // The stile is 100 wide: 60 from its edge is 40 from the sight edge. Height 973 to 1027.
  CHECK(low_corner(*holes[0]) == Corner{mm(973), mm(13)});
  CHECK(high_corner(*holes[0]) == Corner{mm(1027), mm(67)});
  CHECK(holes[1]->along == 1);
  CHECK(holes[1]->from == mm(40));
  CHECK(holes[1]->to == mm(100));
  CHECK(low_corner(*holes[1]) == Corner{mm(987.5), mm(9.5)});
  CHECK(high_corner(*holes[1]) == Corner{mm(1012.5), mm(34.5)});
}

TEST_CASE("Spindle and key are holes through the stile at the lock's backset") {
  const Piece stile =
      piece(wood(house(R"("hangs": "right", "lock": {"height": 1000, "backset": 57, "spindle": 20,
                          "spindle_above": 30, "key": 18, "key_below": 42,
                          "case": {"height": 165, "depth": 75, "thickness": 16}})")),
            "left stile");
  std::vector<Corner> low;
  for (const Feature& feature : stile.features)
    for (const Prism& prism : feature.prisms)
      low.push_back(low_corner(prism));
  // 57 from the left edge, less the radius; 1030 and 958 up.
  CHECK(low == std::vector{Corner{mm(1020), mm(47)}, Corner{mm(949), mm(48)}});
}

TEST_CASE("A hole's outline never leaves wood inside its circle, and little beyond is lost") {
  const Piece stile = piece(wood(house(R"("lock": {"height": 1000, "bore": {}})")), "right stile");
  for (const Feature& feature : stile.features)
    for (const Prism& prism : feature.prisms) {
      const double radius = static_cast<double>((prism.along == 2 ? mm(27) : mm(12.5)).steps());
      const Corner low = low_corner(prism);
      const Corner high = high_corner(prism);
      const double u = static_cast<double>((low.u + high.u).steps()) / 2;
      const double v = static_cast<double>((low.v + high.v).steps()) / 2;
      for (std::size_t i = 0; i < prism.outline.size(); ++i) {
        const Corner& a = prism.outline[i];
        const Corner& b = prism.outline[(i + 1) % prism.outline.size()];
        const double corner =
            std::hypot(static_cast<double>(a.u.steps()) - u, static_cast<double>(a.v.steps()) - v);
        const double side = std::hypot(static_cast<double>((a.u + b.u).steps()) / 2 - u,
                                       static_cast<double>((a.v + b.v).steps()) / 2 - v);
        CHECK(corner < radius * 1.005);
        CHECK(side > radius - 2);
      }
    }
}

TEST_CASE("A fitting is let in to the side that its spec names") {
  struct Row {
    std::string_view on, into;
    Box cut;
  };
  // 100 long, 20 wide, 3 deep, in the middle: the leaf is 930 x 2060 x 44, stiles 100, top rail 100
  // high from 33 of the left, its tenons 67.
  const std::vector<Row> rows{
      {"left stile", "left", box(500, 0, 12, 600, 3, 32)},
      {"left stile", "right", box(500, 97, 12, 600, 100, 32)},
      {"A", "face", box(500, 40, 0, 600, 60, 3)},
      {"B", "back", box(500, 40, 41, 600, 60, 44)},
      {"top rail", "upper", box(467, 97, 12, 567, 100, 32)},
      {"top rail", "lower", box(467, 0, 12, 567, 3, 32)},
  };
  for (const Row& row : rows) {
    INFO(row.on << ", " << row.into);
    const Assembly leaf = wood(house(R"("fittings": [{"on": ")" + std::string(row.on) +
                                     R"(", "into": ")" + std::string(row.into) +
                                     R"(", "at": 500, "cuts": [{"length": 100, "width": 20,
                                         "depth": 3}]}])"));
    std::vector<Box> found;
    for (const Piece& each : leaf.pieces)
      for (const Box& cut : cuts(each, "recess"))
        found.push_back(cut);
    CHECK(found == std::vector{row.cut});
  }
}

TEST_CASE("On a face a fitting is measured from the leaf's outside") {
  const auto cut = [](std::string_view on) {
    const Assembly leaf = wood(house(R"("fittings": [{"on": ")" + std::string(on) +
                                     R"(", "into": "face", "at": 500, "cuts": [{"length": 100,
                                         "width": 20, "from": 30, "depth": 3}]}])"));
    return cuts(piece(leaf, on), "recess").front();
  };
  CHECK(cut("left stile") == box(500, 30, 0, 600, 50, 3));
  CHECK(cut("right stile") == box(500, 50, 0, 600, 70, 3));
  CHECK(cut("top rail") == box(467, 50, 0, 567, 70, 3));
  CHECK(cut("bottom rail") == box(467, 30, 0, 567, 50, 3));
  // A rail between others has no edge on the outside: from its lower one.
  CHECK(cut("lock rail") == box(467, 30, 0, 567, 50, 3));
}

TEST_CASE("What whoever hangs the leaf is to be told is told where it applies") {
  const auto about = [](std::string_view more) {
    std::string text;
    for (const Caution& caution : work(house(more)).cautions)
      text += (text.empty() ? "" : ", ") + std::string(caution.about);
    return text;
  };
  CHECK(about(kLock).empty());
  CHECK(about(R"("existing_opening": true)") == "old paint");
  CHECK(about(std::string(kLock) + R"(, "accessible": true, "escape_route": true)") ==
        "escape route, accessible route");
  CHECK(about(std::string(kLock) + R"(, "accessible": false)").empty());
  const std::vector<Caution> cautions =
      work(house(std::string(kLock) + R"(, "accessible": true)")).cautions;
  CHECK(cautions.front().words.find("stands at 1100 mm") != std::string::npos);
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
  constexpr std::string_view kCase = R"("case": {"height": 165, "depth": 75, "thickness": 16})";
  CHECK(refusal(house("\"lock\": {}")) ==
        "/lock: what lock it is is missing; give \"case\": {\"height\": …, \"depth\": …, "
        "\"thickness\": …} of a mortise lock, or \"bore\": {\"diameter\": …} of a bored one");
  CHECK(lock_of(std::string(kCase) + R"(, "bore": {})") ==
        "/lock/bore: is of a bored lock, \"case\" of a mortise lock; keep one");
  CHECK(lock_of(R"("bore": {}, "key": 10)") ==
        "/lock/key: is of a mortise lock; a bored one has no hole for it");
  CHECK(lock_of(R"("bore": {}, "backset": 120)") ==
        "/lock/backset: at a backset of 120 mm the lock's holes do not go in a stile of 100 mm; "
        "take a lock of less backset, or a wider stile");
  CHECK(lock_of(R"("backset": 80, "spindle": 20, "spindle_above": 0, )" + std::string(kCase)) ==
        "/lock/backset: at 80 mm the holes stand beyond a case 75 mm deep; read both off the lock");
  CHECK(lock_of(R"("spindle": 20, "spindle_above": 0, )" + std::string(kCase)) ==
        "/lock: \"backset\" is missing; read it off the lock");
  CHECK(refusal(house(R"("hinges": {"at": [230, 300], "length": 100})")) ==
        "/hinges/at/1: the hinge from 300 mm to 400 mm stands in the one from 230 mm to 330 mm; "
        "move one of them");
  CHECK(refusal(house(R"("hinges": {"at": [230, 1990], "length": 100})")) ==
        "/hinges/at/1: the hinge reaches from 1990 mm to 2090 mm, beyond a leaf 2060 mm high; "
        "move it");
  CHECK(refusal(house(R"("hinges": {"at": [230], "number": 3})")) ==
        "/hinges/number: \"at\" places 1, not 3; keep one of the two");
  CHECK(refusal(house(R"("hinges": {"at": [230], "from_top": 100})")) ==
        "/hinges/from_top: places hinges that \"at\" places one by one; keep one of the two");
  CHECK(refused_at(house("\"fire_rated\": true")) == "/fire_rated");
  CHECK(refusal(house("\"fire_rated\": false")).empty());
  CHECK(refusal(house("\"hangs\": \"lefft\"")) ==
        "/hangs: \"lefft\" is not known here; did you mean \"left\"?");
}

TEST_CASE("A described fitting that can't be is refused in a line of its own") {
  const auto fitting = [](std::string_view keys) {
    return refusal(house("\"fittings\": [{" + std::string(keys) + "}]"));
  };
  constexpr std::string_view kPlate = R"("cuts": [{"length": 100, "width": 20, "depth": 3}])";
  CHECK(fitting(R"("on": "left styile", "into": "back", "at": 10, )" + std::string(kPlate)) ==
        "/fittings/0/on: \"left styile\" is no piece of this leaf; did you mean \"left stile\"?");
  CHECK(
      fitting(R"("name": "bolt", "on": "B", "into": "back", "at": 2000, )" + std::string(kPlate)) ==
      "/fittings/0/at: the bolt reaches from 2000 mm to 2100 mm, but the right stile from 0 mm "
      "to 2060 mm; move it, or make it smaller");
  CHECK(fitting(R"("name": "hole", "on": "B", "into": "back", "at": 200,
                   "cuts": [{"diameter": 10, "from": 3, "depth": 3}])") ==
        "/fittings/0/cuts/0/from: the hole reaches from -2 mm to 8 mm, but the right stile from "
        "0 mm to 100 mm; move it, or make it smaller");
  CHECK(
      fitting(R"("on": "B", "into": "back", "at": 200, "cuts": [{"diameter": 10, "depth": 50}])") ==
      "/fittings/0/cuts/0/depth: 50 mm is deeper than the right stile goes that way, 44 mm; "
      "make it shallower, or write \"through\": true");
  CHECK(fitting(R"("on": "B", "into": "inside", "at": 10, )" + std::string(kPlate)) ==
        "/fittings/0/into: \"inside\" is not known here; write \"face\", \"back\", \"left\", "
        "\"right\", \"upper\" or \"lower\"");
  CHECK(fitting(R"("on": "B", "into": "back", "at": 10, "cuts": [{"length": 10, "depth": 5}])") ==
        "/fittings/0/cuts/0: \"width\" is missing; a recess has a length and a width, a round "
        "hole a \"diameter\"");
  CHECK(fitting(R"("on": "B", "into": "back", "at": 10, "cuts": [{"diameter": 10}])") ==
        "/fittings/0/cuts/0: \"depth\" is missing; write how deep it is, or \"through\": true "
        "where it goes right through");
  CHECK(refusal(house("\"fittings\": []")) ==
        "/fittings: the list is empty; leave it out, or fill it");
}

TEST_CASE("A shop file may hold the lock that the shop fits, and a spec another height for it") {
  const ShopDefaults its = shop(R"({"units": "mm", )" + std::string(kLock) + R"(,
      "fittings": [{"name": "bolt", "on": "left stiel", "into": "back", "at": 10,
                    "cuts": [{"diameter": 10, "depth": 3}]}]})");
  CHECK(refusal(house("\"lock\": {\"height\": 900}"), &its) ==
        "/fittings/0/on: \"left stiel\" is no piece of this leaf; did you mean \"left stile\"? "
        "(fittings is from the shop file)");
  const ShopDefaults lock = shop(R"({"units": "mm", )" + std::string(kLock) + "}");
  CHECK(cuts(piece(wood(house("\"lock\": {\"height\": 900}"), &lock), "right stile"),
             "lock-mortise") == std::vector{box(817.5, 25, 14, 982.5, 100, 30)});
}

}  // namespace haunch::test
