// What is taken where the spec is silent, and that it is said. The four doors:
//
//   house, mm     930 x 2060, 3 off each side: 924 x 2054
//   cabinet, mm   400 x 700, 2 off each side: 396 x 696
//   house, in     36 x 80, 1/8 off each side: 35 3/4 x 79 3/4
//   cabinet, in   16 x 28, 1/16 off each side: 15 7/8 x 27 7/8
#include "vocabulary.h"

namespace haunch::test {
namespace {

using Lengths = std::vector<Length>;

Length thousandths_in(std::int64_t thousandths) {
  return Length::from_inch_parts(thousandths, 1000);
}

/// A row of the table of defaults: a key and what is assumed for it in each of the four doors.
/// Where it depends on other sizes, these are defaults as well.
struct Row {
  const char* key;
  Lengths house_mm, cabinet_mm, house_in, cabinet_in;
};

const std::vector<Row>& rows() {
  static const std::vector<Row> kRows{
      {"clearance", {}, {mm(2)}, {}, {inch(0, 1, 16)}},
      {"clearance.left", {mm(3)}, {}, {inch(0, 1, 8)}, {}},
      {"clearance.right", {mm(3)}, {}, {inch(0, 1, 8)}, {}},
      {"clearance.head", {mm(3)}, {}, {inch(0, 1, 8)}, {}},
      {"clearance.foot", {mm(10)}, {}, {inch(0, 3, 8)}, {}},
      {"rail_widths.1.top", {mm(965)}, {}, {inch(38)}, {}},
      {"thickness", {mm(44)}, {mm(20)}, {inch(1, 3, 4)}, {inch(0, 3, 4)}},
      {"stile_width", {mm(100)}, {mm(57)}, {inch(4)}, {inch(2, 1, 4)}},
      {"rail_widths",
       {mm(100), mm(195), mm(230)},
       {mm(57), mm(57)},
       {inch(4), inch(7, 1, 2), inch(9)},
       {inch(2, 1, 4), inch(2, 1, 4)}},
      {"muntin_width", {mm(90)}, {mm(50)}, {inch(3, 1, 2)}, {inch(2)}},
      // 66.67; 38; 2.667 in = 42.67 sixteenths; 1.5.
      {"tenon_depth", {mm(67)}, {mm(38)}, {inch(2, 11, 16)}, {inch(1, 1, 2)}},
      {"groove_depth", {mm(12)}, {mm(9)}, {inch(0, 1, 2)}, {inch(0, 3, 8)}},
      {"fit_allowance", {mm(0.15)}, {mm(0.15)}, {thousandths_in(6)}, {thousandths_in(6)}},
      // 14.67 to 17.6; 6.67 to 8; 0.583 to 0.7 in; 0.25 to 0.3 in.
      {"mortise.width", {mm(15)}, {mm(8)}, {inch(0, 5, 8)}, {inch(0, 1, 4)}},
      {"groove.width", {mm(15)}, {mm(8)}, {inch(0, 5, 8)}, {inch(0, 1, 4)}},
      {"tenon.thickness", {mm(14.85)}, {mm(7.85)}, {thousandths_in(619)}, {thousandths_in(244)}},
      {"mortise.from_face", {mm(14.5)}, {mm(6)}, {inch(0, 9, 16)}, {inch(0, 1, 4)}},
      {"groove.from_face", {mm(14.5)}, {mm(6)}, {inch(0, 9, 16)}, {inch(0, 1, 4)}},
      // A third of 100 and 230; of 57; of 4 in = 21.33 sixteenths and 9 in; of 2 1/4 in.
      {"tenon.relish",
       {mm(33), mm(77)},
       {mm(19), mm(19)},
       {inch(1, 5, 16), inch(3)},
       {inch(0, 3, 4), inch(0, 3, 4)}},
      {"tenon.edge_clearance", {mm(0.4)}, {mm(0.4)}, {inch(0, 1, 64)}, {inch(0, 1, 64)}},
      {"tenon.bottom_clearance", {mm(2)}, {mm(2)}, {inch(0, 1, 16)}, {inch(0, 1, 16)}},
      // 5 x 14.85 = 74.25; 5 x 0.619 = 3.095 in = 49.52 sixteenths.
      {"tenon.width_limit", {mm(75)}, {mm(75)}, {inch(3, 1, 8)}, {inch(3)}},
      // Lock rail 195 - 24 = 171, bottom rail 230 - 12 - 77 = 141: a quarter 42.75, 35.25.
      // 7 1/2 - 1 = 6 1/2, 9 - 1/2 - 3 = 5 1/2: a quarter 1 5/8, 1 3/8.
      {"tenon.gap", {mm(43), mm(35)}, {}, {inch(1, 5, 8), inch(1, 3, 8)}, {}},
      {"tenon.muntin_depth", {mm(67)}, {mm(38)}, {inch(2, 11, 16)}, {inch(1, 1, 2)}},
      {"tenon.haunch_depth", {mm(11.5)}, {mm(8.5)}, {inch(0, 31, 64)}, {inch(0, 23, 64)}},
      {"panel.gap.across_grain", {mm(3)}, {mm(3)}, {inch(0, 1, 8)}, {inch(0, 1, 8)}},
      {"panel.gap.along_grain", {mm(1)}, {mm(1)}, {inch(0, 1, 32)}, {inch(0, 1, 32)}},
      {"panel.allowance", {mm(0.4)}, {mm(0.4)}, {inch(0, 1, 64)}, {inch(0, 1, 64)}},
      {"panel.thickness", {mm(14.6)}, {mm(7.6)}, {inch(0, 39, 64)}, {inch(0, 15, 64)}},
      {"horn", {mm(25)}, {mm(0)}, {inch(1)}, {inch(0)}},
  };
  return kRows;
}

constexpr const char* kTwoAcross = R"("panels": {"across": 2})";

void check_defaults(const std::string& spec, Lengths Row::*column) {
  const Worked worked = work(spec);
  for (const Row& row : rows()) {
    INFO(row.key);
    CHECK(assumed(worked, row.key) == row.*column);
    for (const std::string& reason : reasons(worked, row.key))
      CHECK_FALSE(reason.empty());
  }
}

}  // namespace

TEST_CASE("A house door in millimetres has the usual sizes") {
  check_defaults(bare_house_mm(kTwoAcross), &Row::house_mm);
}

TEST_CASE("A cabinet door in millimetres has the usual sizes") {
  check_defaults(cabinet_mm(kTwoAcross), &Row::cabinet_mm);
}

TEST_CASE("A house door in inches has the usual sizes") {
  check_defaults(bare_house_in(kTwoAcross), &Row::house_in);
}

TEST_CASE("A cabinet door in inches has the usual sizes") {
  check_defaults(cabinet_in(kTwoAcross), &Row::cabinet_in);
}

TEST_CASE("Every row of the table is in the wood, not only in the list") {
  // The cabinet door in millimetres: 396 x 696; stiles 57; between them 282, two panels and a
  // muntin of 50: 116 each; between rails 582. Tenons 38, mortises 8 at 6, 40 deep.
  const Assembly leaf = wood(cabinet_mm(kTwoAcross));
  CHECK(leaf.size == Triple{mm(396), mm(696), mm(20)});
  CHECK(piece(leaf, "top rail").blank == Triple{mm(358), mm(57), mm(20)});
  CHECK(piece(leaf, "muntin").blank == Triple{mm(658), mm(50), mm(20)});
  CHECK(piece(leaf, "muntin").place.origin == Triple{mm(173), mm(19), Length()});
  // Across 116 + 2 x 6 = 128; along 582 + 2 x 8 = 598.
  CHECK(piece(leaf, "panel 1").blank == Triple{mm(598), mm(128), mm(7.6)});
  // Top rail's foot 639; tenon 57 - 9 - 19 = 29: 648..677, mortise 647.6..677.4.
  CHECK(cuts(piece(leaf, "left stile"), "mortise") ==
        std::vector{box(647.6, 17, 6, 677.4, 57, 14), box(18.6, 17, 6, 48.4, 57, 14)});
  CHECK(cuts(piece(leaf, "left stile"), "groove") == std::vector{box(0, 48, 6, 696, 57, 14)});
  CHECK(wood_differs(piece(leaf, "top rail"), mm(0), mm(38),
                     {box(0, 9, 6.075, 38, 38, 13.925), box(29.5, 38, 6.075, 38, 57, 13.925)}) ==
        kNoWood);
}

TEST_CASE("A door over 60 in (1524 mm) is a house door, at 60 in still a cabinet door") {
  // (casework standard AWS 1st ed., 4.4.6.10.1.5: a cabinet door over 60 in wants an intermediate
  // rail)
  const auto thickness = [](std::string_view units, std::string_view height) {
    return assumed(work(door_spec("\"units\": \"" + std::string(units) +
                                      "\", \"opening\": {\"width\": \"600 mm\", \"height\": " +
                                      std::string(height) + "}",
                                  {})),
                   "thickness")
        .front();
  };
  CHECK(thickness("mm", "1524") == mm(20));
  CHECK(thickness("mm", "1524.001") == mm(44));
  CHECK(thickness("in", "60") == inch(0, 3, 4));
  CHECK(thickness("in", "\"60 1/512\"") == inch(1, 3, 4));
  // It is the opening that counts, in whatever unit it is written.
  CHECK(thickness("mm", "\"60 in\"") == mm(20));
  CHECK(thickness("in", "\"1525 mm\"") == inch(1, 3, 4));
}

TEST_CASE("Ratios go to the nearest whole millimetre or 1/16 in") {
  const auto depth = [](const std::string& spec) {
    return assumed(work(spec), "tenon_depth").front();
  };
  CHECK(depth(cabinet_mm("\"stile_width\": 58")) == mm(39));                  // 38.67
  CHECK(depth(cabinet_mm("\"stile_width\": 59")) == mm(39));                  // 39.33
  CHECK(depth(cabinet_mm("\"stile_width\": 58.25")) == mm(39));               // 38.83
  CHECK(depth(cabinet_in("\"stile_width\": 2")) == inch(1, 5, 16));           // 21.33 sixteenths
  CHECK(depth(cabinet_in("\"stile_width\": \"2 1/2\"")) == inch(1, 11, 16));  // 26.67
}

TEST_CASE("A cabinet door's rails are as wide as its stiles") {
  const Worked worked = work(cabinet_mm("\"stile_width\": 63"));
  CHECK(assumed(worked, "rail_widths") == Lengths{mm(63), mm(63)});
  CHECK(count_role(worked.assembly, "rail") == 2);
}

TEST_CASE("Without a word of panels there is one in each tier, upright, without muntins") {
  const Worked worked = work(house_mm());
  CHECK(count_role(worked.assembly, "panel") == 2);
  CHECK(count_role(worked.assembly, "muntin") == 0);
  REQUIRE(assumed_under(worked, "panels").size() == 1);
  CHECK(assumed_under(worked, "panels")[0].value.words == "one in each tier");
  CHECK(assumed_under(worked, "panel.grain")[0].value.words == "upright");
  CHECK(assumed_under(worked, "muntin_width").empty());
  CHECK(assumed_under(worked, "tenon.muntin_depth").empty());
}

TEST_CASE("Everything that is assumed is listed, and nothing twice but what is each rail's own") {
  const std::vector<std::string> wanted{"clearance",
                                        "fit_allowance",
                                        "groove.from_face",
                                        "groove.width",
                                        "groove_depth",
                                        "horn",
                                        "mortise.from_face",
                                        "mortise.width",
                                        "panel.allowance",
                                        "panel.gap.across_grain",
                                        "panel.gap.along_grain",
                                        "panel.grain",
                                        "panel.thickness",
                                        "panels",
                                        "rail_widths",
                                        "species",
                                        "stile_width",
                                        "tenon.bottom_clearance",
                                        "tenon.edge_clearance",
                                        "tenon.haunch_depth",
                                        "tenon.relish",
                                        "tenon.relish",
                                        "tenon.thickness",
                                        "tenon.width_limit",
                                        "tenon_depth",
                                        "thickness",
                                        "use"};
  CHECK(assumed_keys(work(cabinet_mm())) == wanted);
}

TEST_CASE("Nothing that the spec gives is listed") {
  const Worked worked = work(house_mm(R"(
      "species": "oak", "use": "house", "clearance": 3, "thickness": 44, "stile_width": 118,
      "rail_widths": [118, {"width": 195, "top": 965}, 230], "panels": 4, "muntin_width": 90, "tenon_depth": 76,
      "groove_depth": 13, "fit_allowance": 0.15, "horn": 20,
      "tenon": {"thickness": 14.85, "relish": 40, "edge_clearance": 0.5, "bottom_clearance": 2,
                "width_limit": 75, "gap": 40, "muntin_depth": 60, "haunch_depth": 12},
      "mortise": {"width": 15, "from_face": 14.5}, "groove": {"width": 15, "from_face": 14.5},
      "panel": {"thickness": 20, "gap": {"across_grain": 3, "along_grain": 1}, "allowance": 0.4,
                "rebate": "back", "grain": "upright"})"));
  CHECK(assumed_keys(worked).empty());
}

TEST_CASE("A spec without a bare number may leave out its units, and millimetres are assumed") {
  const Worked worked = work(
      R"({"kind": "door", "opening": {"width": "36 in", "height": "2 m"}, "clearance": "2 mm"})");
  CHECK(worked.assembly.size[0] == mm(914.4 - 4));
  REQUIRE(assumed_under(worked, "units").size() == 1);
  CHECK(assumed_under(worked, "units")[0].value.words == "mm");
}

TEST_CASE("Reasons are given in the trade's words") {
  const Worked house = work(bare_house_mm(kTwoAcross));
  const auto why = [&](std::string_view key) { return reasons(house, key).front(); };
  CHECK(why("clearance.head") == "usual for a house door");
  CHECK(why("tenon_depth") == "two thirds of the stile");
  CHECK(why("mortise.width") == "the smallest cutter from a third to 0.4 of the thickness");
  CHECK(why("tenon.muntin_depth") == "as deep as the rails' tenons");
  CHECK(why("tenon.gap") == "lock rail: a quarter of the 171 mm to be divided");
  CHECK(why("panel.thickness") == "flat: as thick as its tongue");
  CHECK(why("horn") == "left on at each end of a stile, sawn off after glue-up");
}

}  // namespace haunch::test
