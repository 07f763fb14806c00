// Drawbored pins: their holes, what they draw, and what is wrong with them.
#include "joint_checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A house door of 924 x 2054 mm, 44 thick, its stiles and top rail 100 wide; its tenons are 67
/// deep, its mortises 15 wide and 14.5 from the face side.
std::string pinned(std::string_view pin = {}, std::string_view more = R"("name": "pinned")") {
  return house_mm(R"("thickness": 44, "rail_widths": [100, 200], "pin": {)" + std::string(pin) +
                  "}, " + std::string(more));
}

Feature hole(const Piece& piece, std::size_t number) {
  for (const Feature& feature : piece.features)
    if (feature.kind == FeatureKind::pin_hole && number-- == 0) return feature;
  throw std::out_of_range("no such hole");
}

/// The joint of the first pin with its tenon.
std::size_t first_draw(const Assembly& leaf) {
  for (std::size_t i = 0; i < leaf.joints.size(); ++i)
    if (leaf.joints[i].design.draw) return i;
  throw std::out_of_range("no pin");
}

/// The first pin's hole in its tenon moved along the rail, and the checks that fail then.
std::string not_ok_with_hole_moved(double by) {
  Assembly leaf = wood(pinned());
  Piece& rail = leaf.pieces[leaf.joints[first_draw(leaf)].receives];
  for (Feature& feature : rail.features) {
    if (feature.kind != FeatureKind::pin_hole) continue;
    for (Prism& prism : feature.prisms)
      for (Corner& corner : prism.outline)
        corner.u += mm(by);
    break;
  }
  return not_ok(leaf);
}

}  // namespace

TEST_CASE("A door without the key has no pins") {
  CHECK(count_role(wood(house_mm()), "pin") == 0);
}

TEST_CASE("Pins are 10 in a house door, two of them from the shoulder, and draw 1.5") {
  const Worked worked = work(pinned());
  const Assembly& leaf = worked.assembly;
  CHECK(assumed(worked, "pin.diameter") == std::vector{mm(10)});
  CHECK(assumed(worked, "pin.from_shoulder") == std::vector{mm(20)});
  CHECK(assumed(worked, "pin.offset") == std::vector{mm(1.5)});
  // The top rail's lower edge stands 1954 above the foot; its tenon goes from 12 above that to
  // 100 - 33 = 67, and the pin is in its middle: 39.5, marked at 40. The stile's sight edge is at
  // 100: middle at 80 from its outer edge.
  const Feature cheeks = hole(piece(leaf, "left stile"), 0);
  CHECK(room(cheeks.prisms[0]) == Room{mm(1989), mm(1999), mm(75), mm(85)});
  // In the tenon 1.5 nearer to the shoulder, which stands 67 from the rail's left end: 67 - 18.5.
  const Feature tenon = hole(piece(leaf, "top rail"), 0);
  CHECK(room(tenon.prisms[0]) == Room{mm(43.5), mm(53.5), mm(35), mm(45)});
  // At the right end the other way round: the rail is 724 + 2 x 67 = 858 long.
  CHECK(room(hole(piece(leaf, "top rail"), 1).prisms[0]) ==
        Room{mm(858 - 53.5), mm(858 - 43.5), mm(35), mm(45)});
  CHECK(measured(leaf, "pin-draw") == mm(1.5));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("A hole goes through both cheeks and the tenon, layer by layer") {
  const Assembly leaf = wood(pinned());
  const Feature cheeks = hole(piece(leaf, "left stile"), 0);
  REQUIRE(cheeks.prisms.size() == 2);
  CHECK(cheeks.prisms[0].along == 2);
  CHECK(cheeks.prisms[0].from == Length());
  CHECK(cheeks.prisms[0].to == mm(14.5));
  CHECK(cheeks.prisms[1].from == mm(29.5));
  CHECK(cheeks.prisms[1].to == mm(44));
  const Feature tenon = hole(piece(leaf, "top rail"), 0);
  REQUIRE(tenon.prisms.size() == 1);
  CHECK(tenon.prisms[0].from == mm(14.575));
  CHECK(tenon.prisms[0].to == mm(29.425));
}

TEST_CASE("A pin is flush with both faces, and sawn longer by three times its thickness") {
  const Assembly leaf = wood(pinned());
  const Piece& pin = piece(leaf, "pin of top rail");
  CHECK(pin.blank == Triple{mm(44), mm(10), mm(10)});
  CHECK(pin.horn * 2 == mm(30));
  CHECK(pin.place.axes[0] == Axis::z);
  // Of the bottom rail's 121 two tenons are made, of the top rail's 55 one: three at each side.
  CHECK(count_role(leaf, "pin") == 6);
}

TEST_CASE("Two pins go through a tenon that is eight pins wide") {
  // 55 wide: two pins of 6.5, not of 7.
  CHECK(count_role(
            wood(pinned(R"("diameter": 6.5, "at": "corner")", R"("tenon": {"width_limit": 200})")),
            "pin") == 8);
  CHECK(count_role(wood(pinned(R"("diameter": 7)", R"("tenon": {"width_limit": 200})")), "pin") ==
        6);
  CHECK(count_role(wood(pinned(R"("number": 2)")), "pin") == 12);
  // At quarters: 12 + 55 / 4 = 25.75 and 12 + 165 / 4 = 53.25.
  const Assembly leaf = wood(pinned(R"("diameter": 6, "number": 2)"));
  CHECK(room(hole(piece(leaf, "top rail"), 0).prisms[0])[2] == mm(23));
  CHECK(room(hole(piece(leaf, "top rail"), 1).prisms[0])[2] == mm(50));
}

TEST_CASE("Softwood gives more draw, a cabinet less; never over a quarter of the pin") {
  const auto draw = [](const std::string& spec, Unit unit = Unit::mm) {
    return measured(wood(spec), "pin-draw", unit);
  };
  CHECK(draw(pinned({}, R"("species": "Pine, Eastern white")")) == mm(2.5));
  CHECK(draw(pinned({}, R"("species": "European oak")")) == mm(1.5));
  CHECK(draw(pinned(R"("diameter": 5)")) == mm(1.25));
  CHECK(draw(cabinet_mm(R"("pin": {})")) == mm(1));
  CHECK(draw(house_in(R"("pin": {})"), Unit::inch) == inch(0, 1, 16));
  CHECK(draw(cabinet_in(R"("pin": {})"), Unit::inch) == inch(0, 1, 32));
}

TEST_CASE("A draw over half of the pin fails: no pin goes through") {
  const auto judged = [](std::string_view offset) {
    return not_ok(wood(house_mm(R"("pin": {"offset": )" + std::string(offset) + "}")));
  };
  CHECK(judged("5").find("pin-draw fail") == std::string::npos);
  CHECK(judged("5.5").find("pin-draw fail") != std::string::npos);
}

TEST_CASE("1/8 in of draw with a pin of 3/8 in, as Fairham draws it, is the most") {
  const auto judged = [](std::string_view offset) {
    return not_ok(wood(house_in(R"("rail_widths": [4, 9], "pin": {"diameter": "3/8", "offset": )" +
                                std::string(offset) + "}")),
                  Unit::inch);
  };
  CHECK(judged(R"("1/8")") == "");
  CHECK(judged(R"("9/64")") == "pin-draw caution");
}

TEST_CASE("A tenon's hole that stands further from its shoulder pushes the joint open") {
  // The first joint is at the rail's left end, where the shoulder is at the right of the hole.
  CHECK(not_ok_with_hole_moved(0) == "");
  CHECK(not_ok_with_hole_moved(-3) == "pin-draw fail");
  CHECK(not_ok_with_hole_moved(-1) == "pin-draw fail");
  CHECK(not_ok_with_hole_moved(1) == "pin-draw fail");
}

TEST_CASE("Pins right through light are none: the face is closed, and no other wood is shared") {
  const Assembly leaf = wood(pinned());
  CHECK(measured(leaf, "fouling") == Length());
  CHECK(measured(leaf, "face-closed") == Length());
  Assembly wrong = leaf;  // a pin a step out of its hole in the cheeks
  wrong.pieces[piece_number(wrong, "pin of top rail")].place.origin[1] += mm(0.1);
  CHECK(not_ok(wrong).find("fouling fail") == 0);
}

TEST_CASE("Blind pins stop in the cheek behind the tenon") {
  const Assembly leaf = wood(pinned(R"("depth": 38)"));
  CHECK(hole(piece(leaf, "left stile"), 0).prisms[1].to == mm(38));
  CHECK(piece(leaf, "pin of top rail").blank[0] == mm(38));
  CHECK(piece(leaf, "pin of top rail").horn * 2 == mm(10));
  CHECK(measured(leaf, "pin-behind") == mm(6));
  CHECK(not_ok(leaf) == "");
  CHECK(not_ok(wood(pinned(R"("depth": 40)"))) == "pin-behind caution");
  CHECK(not_ok(wood(pinned(R"("depth": 42)"))) == "pin-behind fail");
}

TEST_CASE("The wood that pins leave is measured") {
  const Assembly leaf = wood(pinned());
  CHECK(measured(leaf, "pin-shear") == mm(67 - 18.5 - 5));
  CHECK(measured(leaf, "pin-root") == mm(18.5 - 5));
  CHECK(measured(leaf, "pin-cheek") == mm(20 - 5));
  // Of the top rail's tenon, from 12 to 67, marked at 40: 67 - 45.
  CHECK(least(leaf, "pin-beside") <= mm(22));
  CHECK(not_ok(wood(pinned(R"("from_shoulder": 12)"))) == "pin-cheek caution");
  CHECK(not_ok(wood(pinned(R"("from_shoulder": 7.5)"))) == "pin-root fail\npin-cheek fail");
  CHECK(not_ok(wood(pinned(R"("from_shoulder": 55)"))) == "pin-shear caution");
  CHECK(not_ok(wood(pinned(R"("from_shoulder": 61)"))) == "pin-shear fail");
  CHECK(not_ok(wood(pinned(R"("diameter": 16, "from_shoulder": 30)", R"("groove_depth": 14)"))) ==
        "pin-beside caution");
}

TEST_CASE("Where a hole runs into a groove there is no wood, not less than none") {
  // 10 from the shoulder, between twins, where the groove is 12 deep.
  const Assembly leaf = wood(pinned(R"("diameter": 6, "from_shoulder": 10)", R"("joint": "twin")"));
  CHECK(not_ok(leaf).find("pin-cheek fail") != std::string::npos);
  for (const std::string_view check : {"pin-cheek", "pin-wall", "pin-shear", "pin-beside"}) {
    INFO(check);
    CHECK(least(leaf, check) >= Length());
  }
}

TEST_CASE("Pins of twin tenons stand two pins from the groove that runs between the twins") {
  // 12 of groove and two pins of 6.
  CHECK(assumed(work(pinned(R"("diameter": 6)", R"("joint": "twin")")), "pin.from_shoulder") ==
        std::vector{mm(24)});
  const auto pins_not_ok = [](const std::string& spec, Unit unit = Unit::mm) {
    return not_ok(wood(spec), unit).find("pin") != std::string::npos;
  };
  CHECK_FALSE(pins_not_ok(pinned(R"("diameter": 6)", R"("joint": "twin")")));
  CHECK_FALSE(pins_not_ok(cabinet_mm(R"("thickness": 25, "joint": "twin", "pin": {})")));
  CHECK_FALSE(pins_not_ok(cabinet_in(R"("thickness": 1, "joint": "twin", "pin": {})"), Unit::inch));
}

TEST_CASE("A pin's hole in the rounded edge of its tenon is refused") {
  const std::string round = R"("mortise": {"ends": "tenon-rounded"})";
  // Of the 55 of the top rail's tenon 7.5 are round at each edge (a mortise of 15): 40 are flat.
  CHECK(not_ok(wood(pinned(R"("diameter": 30, "from_shoulder": 33)", round))).find("fouling") ==
        std::string::npos);
  CHECK(refusal(pinned(R"("diameter": 42, "from_shoulder": 33)", round)).find("/pin/diameter: ") ==
        0);
}

TEST_CASE("A lock let in to a pin is a clash") {
  // A spindle's hole through the top rail's pin: its middle at 1994 above the foot, 80 from the
  // edge.
  CHECK(not_ok(wood(pinned({}, R"("fittings": [{"name": "ring", "on": "left stile", "into": "face",
      "at": 1994, "cuts": [{"diameter": 20, "from": 80, "depth": 10}]}])"))) ==
        "fitting-clash fail");
}

TEST_CASE("Through, twin and bridle tenons take pins too") {
  CHECK(not_ok(wood(pinned({}, R"("joint": "through")"))) == "");
  CHECK(not_ok(wood(pinned({}, R"("joint": "bridle")"))) == "glued-width caution");
  const Assembly twins =
      wood(pinned(R"("from_shoulder": 30)", R"("joint": "twin", "groove": {"width": 10})"));
  CHECK(hole(piece(twins, "top rail"), 0).prisms.size() == 2);
  CHECK(hole(piece(twins, "left stile"), 0).prisms.size() == 3);
  CHECK(not_ok(twins).find("pin") == std::string::npos);
}

TEST_CASE("Moulded and rebated edges: pins are told from the shoulder that is set back") {
  for (const std::string_view edge : {"coped", "mitred", "rebated"}) {
    INFO(edge);
    const Assembly leaf = wood(pinned({}, R"("edge": ")" + std::string(edge) + "\""));
    CHECK(measured(leaf, "pin-draw") == mm(1.5));
    CHECK(least(leaf, "pin-cheek") >= mm(14.9));
    CHECK(not_ok(leaf).find("pin") == std::string::npos);
    CHECK(not_ok(leaf).find("shared") == std::string::npos);
  }
}

TEST_CASE("Pins go where they are asked for, and where they can") {
  const std::string three = R"("rail_widths": [100, 150, 200], "pin": )";
  CHECK(count_role(wood(house_mm(three + "{}")), "pin") == 2 * (1 + 2 + 2));
  CHECK(count_role(wood(house_mm(three + R"({"at": "corner"})")), "pin") == 2 * (1 + 2));
  CHECK(count_role(wood(house_mm(three + R"({"at": "middle"})")), "pin") == 4);
  CHECK(count_role(wood(house_mm(three + R"({}, "joint": {"corner": "dowel"})")), "pin") == 4);
}

TEST_CASE("A shop says how its pins are made, not that there are any") {
  const ShopDefaults ours = shop(R"({"units": "mm", "pin": {"diameter": 8, "offset": 1}})");
  CHECK(count_role(wood(house_mm(), &ours), "pin") == 0);
  const Assembly leaf = wood(pinned(), &ours);
  CHECK(piece(leaf, "pin of top rail").blank[1] == mm(8));
  CHECK(measured(leaf, "pin-draw") == mm(1));
}

TEST_CASE("Pins where there is nothing to pin are refused") {
  CHECK(refusal(pinned({}, R"("joint": "loose")")) ==
        "/pin: the corners are \"loose\" joints, which have no tenon of the rail's own in a "
        "mortise; choose another joint, say another \"at\", or take it out");
  CHECK(refused_at(pinned({}, R"("joint": "dowel")")) == "/pin");
  CHECK(refused_at(pinned({}, R"("joint": "half-lap")")) == "/pin");
  CHECK(refusal(cabinet_mm(R"("tenon_depth": 9, "pin": {})")) ==
        "/pin: the corners are stub tenons in the groove, too short for a pin; choose another "
        "joint, say another \"at\", or take it out");
  CHECK(refusal(pinned(R"("at": "middle")")) ==
        "/pin/at: there are no middle rails here; choose another joint, say another \"at\", or "
        "take it out");
}

TEST_CASE("Pins that do not lie in their tenon are refused") {
  CHECK(refusal(pinned(R"("from_shoulder": 62)")) ==
        "/pin/from_shoulder: a hole of 10 mm with its middle 62 mm from the shoulder comes out at "
        "the end of the tenon, 67 mm deep; make it less");
  CHECK(refusal(pinned(R"("from_shoulder": 6)")) ==
        "/pin/from_shoulder: a hole of 10 mm with its middle 4.5 mm from the shoulder comes out "
        "there; make pin.from_shoulder more, or the others less");
  CHECK(refusal(pinned(R"("offset": 10, "from_shoulder": 30)")) ==
        "/pin/offset: holes of 10 mm that stand 10 mm off each other are not one hole; make it "
        "less than a third of the pin");
  CHECK(refusal(pinned(R"("depth": 44)")) ==
        "/pin/depth: a hole of 44 mm goes right through 44 mm; leave it out for pins that do");
  CHECK(refusal(pinned(R"("depth": 29.5)")) ==
        "/pin/depth: a hole of 29.5 mm does not reach the cheek behind the tenon, 29.5 mm from the "
        "face side; make it more, or leave it out for pins right through");
  CHECK(refusal(pinned(R"("diameter": 56, "from_shoulder": 33, "offset": 1)")) ==
        "/pin/diameter: the top rail's tenon of 55 mm is too narrow for a pin of 56 mm; make it "
        "less");
  CHECK(refusal(pinned(R"("number": 3)")).find("/pin/number: ") == 0);
  CHECK(refusal(pinned(R"("ofset": 2)")).find("/pin/ofset: unknown key; did you mean") == 0);
}

TEST_CASE("Muntins are pinned where the spec says so, through the rails that they stand in") {
  // A muntin of 90 between two panels; its tenon is 90 - 2 x 12 = 66 wide, as the groove takes 12
  // at each edge, and has one pin in its middle, 20 from the shoulder.
  const Assembly leaf = wood(pinned(R"("at": "muntin")", R"("panels": 2)"));
  CHECK(count_role(leaf, "pin") == 2);
  const Piece muntin = piece(leaf, "muntin");
  const Feature cheeks = hole(piece(leaf, "bottom rail"), 0);
  const Length shoulder = mm(100) - piece(leaf, "bottom rail").place.origin[0];
  const Length middle = shoulder + muntin.place.origin[0] - mm(100) + mm(45);
  CHECK(room(cheeks.prisms[0]) == Room{middle - mm(5), middle + mm(5), mm(175), mm(185)});
  CHECK(not_ok(leaf) == "");
  CHECK(count_role(wood(pinned(R"("at": "all")", R"("panels": 2)")), "pin") ==
        count_role(wood(pinned({}, R"("panels": 2)")), "pin") + 2);
}

TEST_CASE("Pins of muntins are refused where no muntin has a tenon in a mortise") {
  CHECK(refused_at(pinned(R"("at": "muntin")")) == "/pin/at");
  CHECK(refused_at(pinned(R"("at": "muntin")", R"("panels": 2, "joint": {"muntin": "dowel"})")) ==
        "/pin/at");
}

TEST_CASE("A frame's jambs are pinned in head and sill, each tenon alike at both sides") {
  const Assembly frame = wood(R"({"kind": "frame", "units": "mm", "exterior": true,
                                  "leaf": {"width": 838, "height": 1981}, "sill": {"height": 70},
                                  "transom": {"light": 300}, "pin": {}})");
  // One to each of the jambs' four tenons; a transom's, 57 wide, have two of 6.
  CHECK(count_role(frame, "pin") == 8);
  CHECK(not_ok(frame).find("pin-draw") == std::string::npos);
  const auto first_hole = [&](std::string_view jamb) {
    return room(hole(piece(frame, jamb), 0).prisms[0]);
  };
  const Length thickness = piece(frame, "left jamb").blank[2];
  const Room left = first_hole("left jamb");
  const Room right = first_hole("right jamb");
  CHECK(left[2] == thickness - right[3]);
}

TEST_CASE("A face frame's tenons are pinned, 6 thick") {
  const std::string spec =
      R"({"kind": "face-frame", "units": "mm", "size": {"width": 900, "height": 700},
                               "layout": {"columns": [{}, {}]}, "pin": {}})";
  const Assembly frame = wood(spec);
  CHECK(count_role(frame, "pin") == 6);
  CHECK(piece(frame, "pin of top rail").blank[1] == mm(6));
  CHECK(not_ok(frame).find("pin-draw") == std::string::npos);
}

TEST_CASE("Pins are refused in a frame or face frame without tenons") {
  CHECK(
      refused_at(
          R"({"kind": "frame", "units": "mm", "leaf": {"width": 800, "height": 1985}, "pin": {}})") ==
      "/pin");
  CHECK(refused_at(R"({"kind": "face-frame", "units": "mm", "size": {"width": 900, "height": 700},
                       "layout": {"columns": [{}, {}]}, "joint": "dowel", "pin": {}})") == "/pin");
}

}  // namespace haunch::test
