// Frames worked by hand, from the wall to the leaf and back.
#include <fmt/format.h>

#include "checks.h"
#include "choices.h"
#include "frame_rules.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string frame_mm(std::string_view keys) {
  return R"({"kind": "frame", "units": "mm", )" + std::string(keys) + "}";
}
std::string frame_in(std::string_view keys) {
  return R"({"kind": "frame", "units": "in", )" + std::string(keys) + "}";
}

/// A lining in a wall's opening of 910 x 2100 mm.
std::string lining(std::string_view more = {}) {
  return frame_mm(R"("wall_opening": {"width": 910, "height": 2100})" +
                  std::string(more.empty() ? "" : ", ") + std::string(more));
}
/// A rebated frame for a leaf of 838 x 1981 mm.
std::string rebated(std::string_view more = {}) {
  return frame_mm(R"("leaf": {"width": 838, "height": 1981}, "stop": {"kind": "rebate"})" +
                  std::string(more.empty() ? "" : ", ") + std::string(more));
}

NamedRoom room(const Worked& worked, std::string_view what) {
  for (const NamedRoom& it : worked.rooms)
    if (it.what == what) return it;
  throw std::invalid_argument("no room: " + std::string(what));
}

std::string rooms(const Worked& worked) {
  std::string text;
  for (const std::string_view what : {"wall opening", "frame", "leaf"}) {
    const NamedRoom it = room(worked, what);
    text += (text.empty() ? "" : ", ") + decimal(it.width, Unit::mm) + " x " +
            decimal(it.height, Unit::mm);
  }
  return text;
}

std::vector<std::string> not_ok(const Assembly& wood, Unit unit = Unit::mm) {
  std::vector<std::string> checks;
  for (const Finding& finding : check_assembly(wood, unit))
    if (finding.status != Status::ok) checks.emplace_back(finding.rule->check);
  return checks;
}

const std::vector<std::string> kNothing;

std::vector<std::string> cautioned(std::string_view spec) {
  std::vector<std::string> about;
  for (const Caution& caution : work(spec).cautions)
    about.emplace_back(caution.about);
  return about;
}

}  // namespace

// ---- from the wall to the leaf

TEST_CASE("A lining takes from the wall what is to be packed, jambs and gaps") {
  // 910 - 7 - 7 = 896; - 25 - 25 = 846; - 3 - 3 = 840.
  // 2100 - 7 = 2093; - 12 of horn - 25 of head = 2056; - 3 - 10 = 2043.
  CHECK(rooms(work(lining())) == "910 x 2100, 896 x 2093, 840 x 2043");
}

TEST_CASE("The frame and the leaf give the same wall") {
  CHECK(rooms(work(frame_mm(R"("frame": {"width": 896, "height": 2093})"))) ==
        "910 x 2100, 896 x 2093, 840 x 2043");
  CHECK(rooms(work(frame_mm(R"("leaf": {"width": 840, "height": 2043})"))) ==
        "910 x 2100, 896 x 2093, 840 x 2043");
  CHECK(rooms(work(frame_mm(R"("leaf": {"width": 840}, "wall_opening": {"height": 2100})"))) ==
        "910 x 2100, 896 x 2093, 840 x 2043");
}

TEST_CASE("A rebated frame stands round the leaf by its jambs less their rebates") {
  // 838 + 3 + 3 = 844; + 57 + 57 - 12 - 12 = 934; + 7 + 7 = 948.
  // 1981 + 10 + 3 = 1994; + 57 - 12 = 2039; + 7 = 2046.
  const Worked worked = work(rebated());
  CHECK(rooms(worked) == "948 x 2046, 934 x 2039, 838 x 1981");
  CHECK(room(worked, "clear between stops").width == mm(820));
  CHECK(room(worked, "clear between stops").height == mm(1982));
}

TEST_CASE("A sill, a transom and the light above it add to the height") {
  // 1981 + 3 + 3 = 1987; + 70 of sill + 57 - 12 of transom + 300 of light + 57 of head = 2459.
  const Worked worked = work(rebated(R"("sill": {"height": 70}, "transom": {"light": 300})"));
  CHECK(rooms(worked) == "948 x 2473, 934 x 2459, 838 x 1981");
  CHECK(not_ok(worked.assembly) == kNothing);
}

TEST_CASE("Between rebated jambs a threshold closes the foot: their rebates stop at its top") {
  Assembly frame = work(rebated(R"("threshold": {"height": 20})")).assembly;
  for (const char* jamb : {"left jamb", "right jamb"}) {
    const Box rebate = cuts(piece(frame, jamb), "rebate").back();
    CHECK(rebate.low[0] == mm(20));
    CHECK(rebate.high[0] == piece(frame, jamb).blank[0]);
  }
  CHECK(cuts(piece(wood(rebated()), "left jamb"), "rebate").back().low[0] == Length());
  CHECK(not_ok(frame) == kNothing);
  // Run on to the floor, 12 deep, they leave a pocket at each end of it.
  frame.pieces[piece_number(frame, "left jamb")].features.front().cuts.front().low[0] = Length();
  CHECK(not_ok(frame) == std::vector<std::string>{"threshold-ends"});
  for (const Finding& finding : check_assembly(frame, Unit::mm))
    if (finding.status != Status::ok) CHECK(finding.value == mm(12));
}

TEST_CASE("A threshold lifts the leaf, which then needs less below it") {
  // 2100 - 7 - 12 - 25 - 15 = 2041; - 3 - 3 = 2035.
  const Worked worked = work(lining(R"("threshold": {"height": 15})"));
  CHECK(room(worked, "leaf").height == mm(2035));
  CHECK(piece(worked.assembly, "threshold").blank == Triple{mm(846), mm(115), mm(15)});
  CHECK(not_ok(worked.assembly) == kNothing);
}

TEST_CASE("Sizes that do not agree are told with the sum") {
  CHECK(refusal(lining(R"("leaf": {"width": 838})")) ==
        "/wall_opening/width: 910 mm does not agree with leaf.width 838 mm + 3 mm + 3 mm "
        "(clearance) + 25 mm + 25 mm (jambs) + 7 mm + 7 mm (fitting) = 908 mm; make them agree, or "
        "keep one of the two");
  CHECK(refusal(lining(R"("leaf": {"width": 840})")).empty());
  CHECK(
      refusal(frame_mm(R"("wall_opening": {"width": 60, "height": 2100})")) ==
      "/wall_opening/width: 60 mm leaves no leaf: there go + 3 mm + 3 mm (clearance) + 25 mm + 25 "
      "mm (jambs) + 7 mm + 7 mm (fitting) off it; make it more");
}

TEST_CASE("A frame that is given no size asks for one") {
  CHECK(refusal(frame_mm(R"("horn": 12)")) ==
        ": no size is given; write the size of \"wall_opening\", \"frame\" or \"leaf\": one gives "
        "the others");
  CHECK(refusal(frame_mm(R"("leaf": {"width": 800})")) ==
        ": no height is given; write the height of \"wall_opening\", \"frame\" or \"leaf\": one "
        "gives the others");
}

// ---- published rules

struct TableRow {
  int leaf_width, leaf_height, wall_width, wall_height;
};

void check_table(std::string_view rule, const std::vector<TableRow>& rows) {
  for (const TableRow& row : rows) {
    INFO(rule << " " << row.leaf_width << " x " << row.leaf_height);
    const Worked from_leaf = work(frame_mm(fmt::format(
        R"("rule": "{}", "jamb_thickness": 20, "horn": 0, "leaf": {{"width": {}, "height": {}}})",
        rule, row.leaf_width, row.leaf_height)));
    CHECK(room(from_leaf, "wall opening").width == mm(row.wall_width));
    CHECK(room(from_leaf, "wall opening").height == mm(row.wall_height));
    const Worked from_wall = work(frame_mm(fmt::format(
        R"("rule": "{}", "jamb_thickness": 20, "horn": 0, "wall_opening": {{"width": {}, "height": {}}})",
        rule, row.wall_width, row.wall_height)));
    CHECK(room(from_wall, "leaf").width == mm(row.leaf_width));
    CHECK(room(from_wall, "leaf").height == mm(row.leaf_height));
  }
}

// DIN 18101: leaves by their outer sizes, square-edged and rebated, of the same openings.
TEST_CASE("Square-edged leaves of DIN 18101, row by row") {
  check_table("din-18101-square", {{584, 1972, 635, 2005},
                                   {709, 1972, 760, 2005},
                                   {834, 1972, 885, 2005},
                                   {959, 1972, 1010, 2005},
                                   {1084, 1972, 1135, 2005},
                                   {834, 2097, 885, 2130},
                                   {834, 1847, 885, 1880}});
}

TEST_CASE("Rebated leaves of DIN 18101, row by row") {
  check_table("din-18101-rebated", {{610, 1985, 635, 2005},
                                    {735, 1985, 760, 2005},
                                    {860, 1985, 885, 2005},
                                    {985, 1985, 1010, 2005},
                                    {1110, 1985, 1135, 2005},
                                    {860, 2110, 885, 2130},
                                    {860, 1860, 885, 1880}});
}

TEST_CASE("Both leaves of DIN 18101 hang in the same frame") {
  const std::string keys = R"(, "jamb_thickness": 20, "horn": 0,
    "wall_opening": {"width": 885, "height": 2005})";
  const Worked square = work(frame_mm(R"("rule": "din-18101-square")" + keys));
  const Worked lipped = work(frame_mm(R"("rule": "din-18101-rebated")" + keys));
  // 834 + 3 + 3 + 20 + 20 = 880 in 885: 2.5 at each side. The lips of 13 lap the jambs.
  CHECK(room(square, "frame").width == mm(880));
  CHECK(room(lipped, "frame").width == mm(880));
  CHECK(opening_of(square.assembly).room.left == mm(2.5));
  CHECK(room(square, "room for the leaf").width == room(lipped, "room for the leaf").width);
}

TEST_CASE("The US rough opening is 2 in wider than the leaf, and 2 1/2 or 2 in higher") {
  const std::string leaf = R"(, "leaf": {"width": 32, "height": 80})";
  const Worked rough = work(frame_in(R"("rule": "us-rough-opening")" + leaf));
  CHECK(room(rough, "wall opening").width == inch(34));
  CHECK(room(rough, "wall opening").height == inch(82, 1, 2));
  // 34 - 32 - 2 x 1/8 - 2 x 3/4 = 1/4, half of it at each side.
  CHECK(opening_of(rough.assembly).room.left == inch(0, 1, 8));
  // 2 1/2 - 3/8 - 1/8 - 3/4 of head - 1/2 of horn = 3/4.
  CHECK(opening_of(rough.assembly).room.head == inch(0, 3, 4));
  const Worked prehung = work(frame_in(R"("rule": "us-prehung")" + leaf));
  CHECK(room(prehung, "wall opening").width == inch(34));
  CHECK(room(prehung, "wall opening").height == inch(82));
}

TEST_CASE("The stop of a rebated leaf stands behind what is left of it behind its lip") {
  const std::string keys = R"("leaf": {"width": 860, "height": 1985, "thickness": 40)";
  const auto stop = [](const Assembly& wood) { return piece(wood, "left stop").place.origin[2]; };
  const auto lipped = [&](std::string_view lip_thickness) {
    return frame_mm(keys + std::string(lip_thickness) + R"(}, "lip": 13)");
  };
  // 40 and 1.5 of play behind a square edge; of a rebated leaf 3/8 of 40 is 15 of lip: 25 and 1.5.
  CHECK(stop(wood(frame_mm(keys + "}"))) == mm(41.5));
  CHECK(stop(wood(lipped(""))) == mm(26.5));
  CHECK(stop(wood(lipped(R"(, "lip_thickness": 14.5)"))) == mm(27));
  // The same as in a set, which has the leaf itself.
  const Assembly set = wood(R"({"kind": "doorset", "units": "mm",
      "frame": {"leaf": {"width": 860, "height": 1985}, "lip": 13}, "leaf": {"thickness": 40}})");
  CHECK(stop(set) == mm(26.5));
  CHECK(refused_at(frame_mm(keys + R"(, "lip_thickness": 14})")) == "/leaf/lip_thickness");
  CHECK(refused_at(lipped(R"(, "lip_thickness": 40)")) == "/leaf/lip_thickness");
  CHECK(refused_at(frame_mm(keys + R"(}, "lip": 13, "reveal": 2)")) == "/reveal");
}

// The German advice page: the wall's opening is at least the rebated leaf and 15 each way; better
// 10 more in width and 5 in height.
TEST_CASE("The rule for rebated leaves is the least opening of DIN 18101 and what is advised") {
  struct Row {
    double leaf_width, leaf_height;
  };
  for (const Row& leaf : {Row{610, 1985}, Row{735, 1985}, Row{860, 1985}, Row{985, 1985}}) {
    const Worked worked = work(frame_mm(fmt::format(
        R"("rule": "din-18101-rebated", "jamb_thickness": 20, "horn": 0, "leaf": {{"width": {}, "height": {}}})",
        leaf.leaf_width, leaf.leaf_height)));
    CHECK(room(worked, "wall opening").width == mm(leaf.leaf_width + 15 + 10));
    CHECK(room(worked, "wall opening").height == mm(leaf.leaf_height + 15 + 5));
  }
}

TEST_CASE("The US rules lie in the bands that the guides give") {
  struct Row {
    std::int64_t leaf_width, leaf_height;
  };
  for (const Row& leaf : {Row{30, 80}, Row{32, 80}, Row{36, 80}, Row{36, 96}}) {
    const auto opening = [&](std::string_view rule) {
      return room(
          work(frame_in(fmt::format(R"("rule": "{}", "leaf": {{"width": {}, "height": {}}})", rule,
                                    leaf.leaf_width, leaf.leaf_height))),
          "wall opening");
    };
    const NamedRoom rough = opening("us-rough-opening");
    CHECK(rough.width == inch(leaf.leaf_width + 2));
    // From 2 to 2 5/8 in over the leaf, 2 1/2 usual.
    CHECK(rough.height - inch(leaf.leaf_height) == inch(2, 1, 2));
    CHECK(rough.height >= inch(leaf.leaf_height + 2));
    CHECK(rough.height <= inch(leaf.leaf_height + 2, 5, 8));
    // A pre-hung 32 x 80 goes into 33 3/4 to 35 by 81 1/2 to 83: 34 x 82.
    const NamedRoom prehung = opening("us-prehung");
    CHECK(prehung.width >= inch(leaf.leaf_width + 1, 3, 4));
    CHECK(prehung.width <= inch(leaf.leaf_width + 3));
    CHECK(prehung.height >= inch(leaf.leaf_height + 1, 1, 2));
    CHECK(prehung.height <= inch(leaf.leaf_height + 3));
    CHECK(prehung.width == inch(leaf.leaf_width + 2));
    CHECK(prehung.height == inch(leaf.leaf_height + 2));
  }
}

TEST_CASE("2 in of rough opening are two jambs of 3/4 in and 1/2 in to shim and close") {
  const Worked worked = work(frame_in(
      R"("rule": "us-rough-opening", "jamb_thickness": "3/4", "leaf": {"width": 32, "height": 80})"));
  const Fit& wall = opening_of(worked.assembly);
  // 1/4 of shims, and 1/8 beside the leaf at each side.
  CHECK(wall.room.across() + inch(0, 1, 4) == inch(0, 1, 2));
}

TEST_CASE("UK doorsets leave 7 mm to the wall and 3 mm beside the leaf") {
  const Worked set =
      work(frame_in(R"("rule": "uk-doorset", "leaf": {"width": "838 mm", "height": "1981 mm"})"));
  CHECK(opening_of(set.assembly).room.left == mm(7));
  CHECK(opening_of(set.assembly).room.head == mm(7));
  CHECK(room(set, "room for the leaf").width == mm(844));
}

// 5 widths in 3 heights of the wall's opening.
TEST_CASE("Each opening of DIN 18101 is worked with nothing said but the rule") {
  for (const int width : {635, 760, 885, 1010, 1135})
    for (const int height : {1880, 2005, 2130}) {
      INFO(width << " x " << height);
      const auto with = [&](std::string_view rule) {
        return work(
            frame_mm(fmt::format(R"("rule": "{}", "wall_opening": {{"width": {}, "height": {}}})",
                                 rule, width, height)));
      };
      const Worked square = with("din-18101-square");
      REQUIRE(square.problems.empty());
      CHECK(room(square, "leaf").width == mm(width - 51));
      CHECK(room(square, "leaf").height == mm(height - 33));
      CHECK(not_ok(square.assembly) == kNothing);
      const Worked lipped = with("din-18101-rebated");
      REQUIRE(lipped.problems.empty());
      CHECK(room(lipped, "leaf").width == mm(width - 25));
      CHECK(room(lipped, "leaf").height == mm(height - 20));
      CHECK(not_ok(lipped.assembly) == kNothing);
    }
}

TEST_CASE("Under DIN 18101 a lining is as thick as its rule has room for, without horns") {
  const Worked worked = work(
      frame_mm(R"("rule": "din-18101-square", "wall_opening": {"width": 885, "height": 2005})"));
  // 33 - 3 - 10 of gaps leave 20 above: 18 of head, and 2 to pack it.
  CHECK(piece(worked.assembly, "head").blank[2] == mm(18));
  CHECK(opening_of(worked.assembly).room.head == mm(2));
  // The same boards beside: 51 - 6 of gaps - 36 = 9, half of it at each side.
  CHECK(piece(worked.assembly, "left jamb").blank[2] == mm(18));
  CHECK(opening_of(worked.assembly).room.left == mm(4.5));
  // The jambs end with the head.
  CHECK(piece(worked.assembly, "left jamb").blank[0] == mm(2003));
}

TEST_CASE("Every rule is worked with nothing said but the leaf, in both units, of both frames") {
  for (const FrameRule& rule : frame_rules())
    for (const char* sizes :
         {R"("units": "mm", "leaf": {"width": 834, "height": 1972})",
          R"("units": "in", "leaf": {"width": 32, "height": 80})",
          R"("units": "mm", "exterior": true, "leaf": {"width": 834, "height": 1972})",
          R"("units": "in", "exterior": true, "leaf": {"width": 32, "height": 80})"}) {
      INFO(rule.name << ", " << sizes);
      const std::string spec =
          fmt::format(R"({{"kind": "frame", "rule": "{}", {}}})", rule.name, sizes);
      const Worked worked = work(spec);
      REQUIRE(worked.problems.empty());
      // The tenons of thin rebated jambs are doubted, and nothing else.
      for (const std::string& check : not_ok(worked.assembly))
        CHECK(check == "tenon-depth");
    }
}

TEST_CASE(
    "Boards for which a rule has no room are refused with the sums, and those that fit named") {
  const auto square = [](std::string_view more) {
    return frame_mm(R"("rule": "din-18101-square", "leaf": {"width": 834, "height": 1972}, )" +
                    std::string(more));
  };
  // 51 - 6 of gaps - 2 x 25 of jambs = -5; 22.5 for each, 2 of it to pack it: 20 in whole ones.
  CHECK(refusal(square(R"("jamb_thickness": 25)")) ==
        "/jamb_thickness: the rule din-18101-square makes the wall's opening 51 mm more than the "
        "leaf, of which frame and clearances take 56 mm; make the jambs at most 20 mm thick, or "
        "leave the rule out");
  CHECK(refusal(square(R"("jamb_thickness": 20)")).empty());
  CHECK(refusal(square(R"("head_thickness": 25)")) ==
        "/head_thickness: the rule din-18101-square makes the wall's opening 33 mm more than the "
        "leaf, of which frame and clearances take 38 mm; make the head at most 18 mm thick, or "
        "leave the rule out");
  // 7 to the wall at each side leave 51 - 14 - 6 = 31 for two jambs.
  CHECK(refusal(square(R"("jamb_thickness": 18, "fitting_allowance": {"left": 7, "right": 7})"))
            .ends_with("take 42 mm, and 14 mm more are to be left to the wall; make the jambs 15.5 "
                       "mm thick, or leave the rule out"));
  CHECK(refusal(square(R"("jamb_thickness": 15.5, "fitting_allowance": {"left": 7, "right": 7})"))
            .empty());
  // 33 - 13 of gaps - 12 of horns leave 8 for a head of 20, as thick as the jambs.
  CHECK(refusal(square(R"("horn": 12)")) ==
        "/horn: the rule din-18101-square makes the wall's opening 33 mm more than the leaf, of "
        "which frame and clearances take 45 mm; a head of 12 mm or more does not go in; change "
        "what else there "
        "is, or leave the rule out");
  CHECK(refused_at(square(R"("sill": {"height": 60})")) == "/sill");
  CHECK(refused_at(frame_mm(R"("rule": "us-prehung", "leaf": {"width": 800, "height": 2000},
                              "fitting_allowance": {"left": 40})")) == "/fitting_allowance/left");
}

TEST_CASE("Every rule has its name and its words, once") {
  const std::span<const std::string_view> names = kWords<FrameRuleName>;
  REQUIRE(names.size() == frame_rules().size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    CHECK(frame_rules()[i].name == names[i]);
    CHECK_FALSE(frame_rules()[i].words.empty());
  }
}

// ---- wood

TEST_CASE("A housed head stands 10 mm in both jambs, which go on above it") {
  const Assembly wood = work(lining()).assembly;
  CHECK(wood.size == Triple{mm(896), mm(2093), mm(115)});
  CHECK(piece(wood, "left jamb").blank == Triple{mm(2093), mm(115), mm(25)});
  // Between the jambs 846, and 10 at each end.
  CHECK(piece(wood, "head").blank == Triple{mm(866), mm(115), mm(25)});
  // The head stands from 2056 to 2081; the housing is 0.15 wider, half of it at each side.
  CHECK(cuts(piece(wood, "left jamb"), "housing") ==
        std::vector<Box>{box(2055.925, 0, 15, 2081.075, 115, 25)});
  CHECK(cuts(piece(wood, "right jamb"), "housing") ==
        std::vector<Box>{box(2055.925, 0, 0, 2081.075, 115, 10)});
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("A rebated head rests on what is left of the jambs, flush with their ends") {
  const Assembly wood = work(lining(R"("head_joint": "rebated")")).assembly;
  // 2093 less the head's 25.
  CHECK(cuts(piece(wood, "left jamb"), "rebate") ==
        std::vector<Box>{box(2068, 0, 15, 2093, 115, 25)});
  CHECK(joint(wood, "left jamb", "head").kind == JointKind::rebated_corner);
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Jambs of a rebated frame are tenoned into the head, short of its ends") {
  const Assembly wood = work(rebated()).assembly;
  const Joint left = joint(wood, "head", "left jamb");
  CHECK(left.kind == JointKind::mortise_and_tenon);
  // 57 of head less 5 behind and 2 below the tenon: 50. A third of the jamb is relish: 19.
  CHECK(left.tenon->depth == mm(50));
  CHECK(left.tenon->thickness == mm(15.85));
  CHECK(left.tenon->each.front().from_edge == mm(19));
  // Behind the rebate, from its line at 44 + 1.5 on, it loses nothing to it: 57 - 19.
  CHECK(left.tenon->each.front().width == mm(38));
  CHECK(left.tenon->from_face == mm(45.575));
  CHECK(left.mortise->each.front().from_foot == mm(18.6));
  CHECK(left.mortise->each.front().length == mm(38.8));
  CHECK(left.mortise->from_face == mm(45.5));
  // The head's underside stands at 2039 - 57 = 1982, the tenon ends 50 above it.
  CHECK(piece(wood, "left jamb").blank == Triple{mm(2032), mm(94), mm(57)});
  CHECK(piece(wood, "head").blank == Triple{mm(934), mm(94), mm(57)});
  CHECK(piece(wood, "head").horn == mm(50));
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Before the head's rebate the jamb's shoulder stands longer by its depth") {
  const auto is_wood = [](const Piece& jamb, const std::vector<Box>& above_short,
                          const Box& above_long) {
    // Just above the short shoulder at 1982: before the rebate, to 45.5 from the face, the jamb
    // goes on beside its own rebate (45 of 57); behind it only the tenon does. Above 1994 the tenon
    // alone.
    std::vector<Box> wanted{box(1982, 0, 0, 1994, 45.5, 45)};
    wanted.insert(wanted.end(), above_short.begin(), above_short.end());
    CHECK_FALSE(wood_between(jamb, mm(1982), mm(1994)).empty());
    CHECK(wood_differs(jamb, mm(1982), mm(1994), wanted) == kNoWood);
    CHECK(wood_differs(jamb, mm(1994), mm(2032), {above_long}) == kNoWood);
  };
  // 15.85 thick and 19 to 57 across, at the rebate's line. Over the mortise, which begins at 18.6,
  // its play before the cheek stays with the long shoulder.
  is_wood(piece(work(rebated()).assembly, "left jamb"),
          {box(1982, 45.575, 19, 1994, 61.425, 57), box(1982, 45.5, 18.6, 1994, 45.575, 57)},
          box(1994, 45.575, 19, 2032, 61.425, 57));
  // In the middle it stands astride of the line, and is 12 less wide.
  is_wood(piece(work(rebated(R"("mortise": {"from_face": 39})")).assembly, "left jamb"),
          {box(1982, 45.5, 19, 1994, 54.925, 45)}, box(1994, 39.075, 19, 2032, 54.925, 45));
}

TEST_CASE("A tenon stands behind the rebate wherever there is as much wood on both its sides") {
  const auto tenon_of = [](std::string_view leaf_thickness, std::string_view more) {
    const Assembly leaf =
        work(
            frame_mm(fmt::format(
                R"("leaf": {{"width": 838, "height": 1981, "thickness": {}}}, "stop": {{"kind": "rebate"}}{})",
                leaf_thickness, more)))
            .assembly;
    CHECK(not_ok(leaf) == kNothing);
    const Joint its = joint(leaf, "head", "left jamb");
    return std::pair{its.mortise->from_face, its.tenon->each.front().width};
  };
  const auto tenon = [&](const char* more) { return tenon_of("44", more); };
  // 45.5 + 16 of mortise + 16 behind it are 77.5.
  CHECK(tenon(R"(, "jamb_width": 77.5)") == std::pair{mm(45.5), mm(38)});
  CHECK(tenon(R"(, "jamb_width": 77)") == std::pair{mm(30.5), mm(26)});
  // A leaf of 28 leaves the line 29.5 from the face; one of 14 has no wood for a mortise before it.
  CHECK(tenon_of("28", "") == std::pair{mm(29.5), mm(38)});
  CHECK(tenon_of("14", "") == std::pair{mm(39), mm(38)});
  // Stated, it stays where it is said to be, and loses nothing where that is behind the line.
  CHECK(tenon(R"(, "mortise": {"from_face": 50})") == std::pair{mm(50), mm(38)});
  CHECK(tenon(R"(, "mortise": {"from_face": 45})") == std::pair{mm(45), mm(26)});
  // Stops that are planted take nothing from any tenon.
  const Assembly planted =
      work(frame_mm(R"("leaf": {"width": 838, "height": 1981}, "head_joint": "tenoned",
                       "jamb_thickness": 57)"))
          .assembly;
  CHECK(joint(planted, "head", "left jamb").mortise->from_face == mm(49.5));
}

TEST_CASE("A transom and a sill keep their tenons whole behind the rebate too") {
  const Assembly leaf =
      work(rebated(R"("sill": {"height": 70}, "transom": {"light": 300})")).assembly;
  CHECK(joint(leaf, "left jamb", "transom").tenon->each.front().width == mm(57));
  CHECK(joint(leaf, "sill", "left jamb").tenon->each.front().width == mm(38));
  CHECK(not_ok(leaf) == kNothing);
}

TEST_CASE("Stops are planted behind the leaf and the play it has") {
  const Assembly wood = work(lining(R"("leaf": {"thickness": 40}, "reveal": 2)")).assembly;
  CHECK(count_role(wood, "stop") == 3);
  // 2 + 40 + 1.5 behind the face.
  CHECK(piece(wood, "left stop").place.origin == Triple{mm(25), mm(0), mm(43.5)});
  CHECK(piece(wood, "left stop").blank == Triple{mm(2044), mm(32), mm(12)});  // 2056 - 12
  CHECK(piece(wood, "head stop").blank == Triple{mm(846), mm(32), mm(12)});
}

TEST_CASE("Rebates are as deep as the stop and as wide as the leaf and its play") {
  const Assembly wood = work(rebated()).assembly;
  CHECK(cuts(piece(wood, "left jamb"), "rebate") ==
        std::vector<Box>{box(0, 0, 45, 2032, 45.5, 57)});
  CHECK(cuts(piece(wood, "right jamb"), "rebate") ==
        std::vector<Box>{box(0, 0, 0, 2032, 45.5, 12)});
  CHECK(cuts(piece(wood, "head"), "rebate") == std::vector<Box>{box(0, 0, 0, 934, 45.5, 12)});
}

TEST_CASE("Where its ends are housed, the head's rebate stops at those of the jambs") {
  const Assembly wood = work(rebated(R"("head_joint": "housed", "housing_depth": 15)")).assembly;
  // 820 between the jambs and 15 at each end: the rebate reaches 12 into the jambs.
  CHECK(cuts(piece(wood, "head"), "rebate") == std::vector<Box>{box(3, 0, 0, 847, 45.5, 12)});
  CHECK(not_ok(wood) == kNothing);
}

TEST_CASE("Every way to make a frame is sound, in both shops") {
  for (const char* stop : {"planted", "rebate"})
    for (const char* head : {"housed", "rebated", "tenoned"})
      for (const char* more :
           {"", R"(, "threshold": {"height": "15 mm"})",
            R"(, "sill": {"height": "70 mm"}, "transom": {"light": "350 mm"})"}) {
        const std::string keys = fmt::format(
            R"("leaf": {{"width": "838 mm", "height": "1981 mm"}}, "jamb_thickness": "57 mm",
               "stop": {{"kind": "{}"}}, "head_joint": "{}"{})",
            stop, head, more);
        INFO(keys);
        CHECK(not_ok(work(frame_mm(keys)).assembly) == kNothing);
        CHECK(not_ok(work(frame_in(keys)).assembly, Unit::inch) == kNothing);
      }
}

// ---- refused

TEST_CASE("A fire-rated frame is not worked") {
  CHECK(refused_at(lining(R"("fire_rated": true)")) == "/fire_rated");
  CHECK(refusal(lining(R"("fire_rated": false)")).empty());
}

TEST_CASE("Keys that have no part in the frame are refused, not passed over") {
  CHECK(refused_at(lining(R"("tenon": {"depth": 20})")) == "/tenon/depth");
  CHECK(refused_at(rebated(R"("housing_depth": 20)")) == "/housing_depth");
  CHECK(refused_at(rebated(R"("head_joint": "rebated", "horn": 20)")) == "/horn");
  CHECK(refused_at(rebated(R"("transom": {"thickness": 20})")) == "/transom/thickness");
  CHECK(refusal(frame_mm(R"("leaf": {"width": 838, "height": 1981},
                            "stop": {"kind": "rebate", "width": 30})")) ==
        "/stop/width: has no part in this frame: its stops are worked from the solid; take it out");
}

TEST_CASE("What leaves no wood is refused") {
  CHECK(refused_at(lining(R"("housing_depth": 25)")) == "/housing_depth");
  CHECK(refused_at(lining(R"("jamb_width": 70)")) == "/jamb_width");
  CHECK(refused_at(rebated(R"("jamb_thickness": 12)")) == "/stop/depth");
  CHECK(refusal(rebated(R"("tenon": {"relish": 45})")) ==
        "/tenon/relish: of a jamb of 57 mm, 12 mm of rebate and 45 mm of relish leave no shoulder "
        "before the tenon");
  CHECK(refusal(rebated(R"("tenon": {"relish": 45}, "mortise": {"from_face": 39})")) ==
        "/tenon/relish: of a jamb of 57 mm, 12 mm of rebate and 45 mm of relish leave no tenon");
  CHECK(refused_at(rebated(R"("tenon": {"depth": 55})")) == "/tenon/depth");
  CHECK(refused_at(rebated(R"("mortise": {"from_face": 78})")) == "/mortise/from_face");
  CHECK(refused_at(lining(R"("threshold": {"height": 15}, "sill": {"height": 40})")) ==
        "/threshold/height");
  CHECK(refused_at(lining(R"("transom": {"light": 2100})")) == "/wall_opening/height");
}

// ---- cautions

TEST_CASE("Cautions are told once each, and only where they apply") {
  CHECK(cautioned(lining()).empty());
  CHECK(cautioned(lining(R"("escape_route": true)")) == std::vector<std::string>{"escape route"});
  CHECK(cautioned(lining(R"("accessible": true)")) == std::vector<std::string>{"accessible route"});
  CHECK(cautioned(lining(R"("existing_opening": true)")) == std::vector<std::string>{"old paint"});
  CHECK(cautioned(lining(R"("exterior": true, "stop": {"kind": "planted"})")) ==
        std::vector<std::string>{"outside frame"});
  CHECK(cautioned(rebated(R"("exterior": true)")).empty());
}

TEST_CASE("The clear width is told as it is measured, from stop to open leaf") {
  // Stops end at 25 + 846 - 12 = 859 from the frame's left; the leaf open at 90 degrees stands from
  // 25 + 1.5 + 44 + 6 = 76.5: 782.5 between.
  const Worked worked = work(lining(R"("accessible": true)"));
  CHECK(worked.cautions.front().words.find("here about 782 mm wide") != std::string::npos);
  // 2056 less the stop's 12.
  CHECK(worked.cautions.front().words.find("and 2044 mm high, with no threshold") !=
        std::string::npos);
}

// ---- shops and remedies

TEST_CASE("A shop file's frame fills what the spec leaves open") {
  const ShopDefaults mill =
      shop(R"({"units": "mm", "species": "oak", "frame": {"jamb_thickness": 30, "horn": 20}})");
  const Worked worked = work(lining(), &mill);
  CHECK(piece(worked.assembly, "left jamb").blank[2] == mm(30));
  CHECK(reasons(worked, "horn") == std::vector<std::string>{"the shop file"});
  CHECK_FALSE(read_shop(value_of(R"({"frame": {"leaf": {"width": 800}}})")).shop);
  CHECK_FALSE(read_shop(value_of(R"({"frame": {"jamb_thicknes": 30}})")).shop);
}

TEST_CASE("A frame's levers are its sizes as worked, and each may be set") {
  for (const std::string& spec : {lining(), rebated(R"("sill": {"height": 70})")}) {
    const auto its = job(spec);
    const std::vector<Lever> levers = its->levers();
    CHECK(levers.size() >= 8);
    for (const Lever& lever : levers) {
      INFO(lever.key);
      const auto same = its->with(lever, lever.value);
      CHECK(rooms(work(*same)) == rooms(work(*its)));
      const auto changed = its->with(lever, lever.value + lever.step);
      const std::vector<Lever> after = changed->levers();
      const auto found = std::find_if(after.begin(), after.end(),
                                      [&](const Lever& it) { return it.key == lever.key; });
      REQUIRE(found != after.end());
      CHECK(found->value == lever.value + lever.step);
    }
  }
}

}  // namespace haunch::test
