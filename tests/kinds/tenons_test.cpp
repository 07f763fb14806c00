// Widths of tenons: what groove and relish take, and how a wide one is divided.
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// Each tenon at the left end of a rail, from its lower edge: {from, width}, in turn.
std::vector<Length> tenons(const Assembly& leaf, std::string_view enters,
                           std::string_view receives = "left stile") {
  const Joint its = joint(leaf, receives, enters);
  std::vector<Length> spans;
  for (const TenonSpan& span : its.tenon->each) {
    spans.push_back(span.from_edge);
    spans.push_back(span.width);
  }
  return spans;
}

std::vector<Length> tenons(std::string_view spec, std::string_view enters,
                           std::string_view receives = "left stile") {
  return tenons(wood(spec), enters, receives);
}

/// A house door of the side door's frame.
std::string framed(std::string_view more) {
  return house_mm(R"("stile_width": 118, "rail_widths": [118, 195, 230], "tenon_depth": 76,
                     "groove_depth": 13, )" +
                  std::string(more));
}

}  // namespace

TEST_CASE("A grooved edge takes the whole groove depth off a tenon, a stile's end the relish") {
  const char* spec = R"("rail_widths": [60, 70, 60], "groove_depth": 9, "tenon": {"relish": 20})";
  CHECK(tenons(cabinet_mm(spec), "top rail") == std::vector{mm(9), mm(31)});      // 60 - 9 - 20
  CHECK(tenons(cabinet_mm(spec), "bottom rail") == std::vector{mm(20), mm(31)});  // from below
  CHECK(tenons(cabinet_mm(spec), "middle rail") == std::vector{mm(9), mm(52)});   // 70 - 2 x 9
}

TEST_CASE("The relish is a third of the rail, to the nearest millimetre") {
  // (rule of thirds: rail in thirds, tenon two, haunch one)
  const Worked worked = work(cabinet_mm("\"rail_widths\": [58, 61]"));  // 19.33; 20.33
  CHECK(assumed(worked, "tenon.relish") == std::vector{mm(19), mm(20)});
  CHECK(reasons(worked, "tenon.relish") ==
        std::vector<std::string>{"top rail: a third of the rail",
                                 "bottom rail: a third of the rail"});
  CHECK(assumed(work(cabinet_mm("\"rail_widths\": [59, 59]")), "tenon.relish") ==
        std::vector{mm(20), mm(20)});  // 19.67
}

TEST_CASE("The relish is never less than 12 mm by itself") {
  const Worked worked = work(cabinet_mm("\"rail_widths\": [35, 30]"));  // 11.67; 10
  CHECK(assumed(worked, "tenon.relish") == std::vector{mm(12), mm(12)});
  CHECK(reasons(worked, "tenon.relish").front() ==
        "top rail: the least that keeps the stile's end whole");
  CHECK(assumed(work(cabinet_in("\"rail_widths\": [\"1 3/8\", \"1 3/8\"]")), "tenon.relish") ==
        std::vector{inch(0, 1, 2), inch(0, 1, 2)});
}

TEST_CASE("In inches the relish goes to the nearest 1/16") {
  // 4 / 3 = 1 1/3 = 21.33 sixteenths: 1 5/16. 7 / 3 = 37.33 sixteenths: 2 5/16.
  CHECK(assumed(work(house_in("\"rail_widths\": [4, 7]")), "tenon.relish") ==
        std::vector{inch(1, 5, 16), inch(2, 5, 16)});
}

TEST_CASE("A tenon within its width limit stays whole, at the limit too") {
  // 195 - 26 = 169.
  CHECK(tenons(framed(R"("tenon": {"width_limit": 169})"), "lock rail") ==
        std::vector{mm(13), mm(169)});
}

TEST_CASE("A wider one is divided, a quarter of the width left between") {
  // 169 / 4 = 42.25, 42; (169 - 42) / 2 = 63.5.
  const std::vector halves{mm(13), mm(63.5), mm(118.5), mm(63.5)};
  CHECK(tenons(framed(R"("tenon": {"width_limit": 168.999})"), "lock rail") == halves);
  CHECK(tenons(framed(R"("tenon": {"width_limit": 63.5})"), "lock rail") == halves);
}

TEST_CASE("It is divided in the least number of tenons that obeys the limit") {
  // (169 - 2 x 42) / 3 = 28.333: 85 mm in three, one step over, and that on the last.
  const Length each = Length::from_steps(45'333'333);
  CHECK(tenons(framed(R"("tenon": {"width_limit": 63.499})"), "lock rail") ==
        std::vector{mm(13), each, mm(55) + each, each, mm(97) + each * 2, each + kStep});
}

TEST_CASE("The limit is five times the tenon's thickness, or 75 mm if that is more") {
  // (width-of-tenon rule: not over 5 x its thickness)
  CHECK(assumed(work(house_mm()), "tenon.width_limit") == std::vector{mm(75)});  // 5 x 14.85 = 74
  // 50 thick: 16.67 to 20, the cutter of 18; tenon 17.85; 89.25, 89.
  CHECK(assumed(work(house_mm("\"thickness\": 50")), "tenon.width_limit") == std::vector{mm(89)});
  // 1 3/4 in: cutter 5/8, tenon 0.619; 3.095 in = 49.52 sixteenths: 50.
  CHECK(assumed(work(house_in()), "tenon.width_limit") == std::vector{inch(3, 1, 8)});
  CHECK(assumed(work(cabinet_in()), "tenon.width_limit") == std::vector{inch(3)});
}

TEST_CASE("The gap is as much as the tenon is thick, if a quarter is less") {
  // 57 - 9 - 19 = 29 to divide; a quarter is 7.25, 7; the tenon is 8 - 0.15 thick.
  const Worked worked = work(cabinet_mm(R"("tenon": {"width_limit": 20})"));
  CHECK(assumed(worked, "tenon.gap") == std::vector{mm(7.85), mm(7.85)});
  // (29 - 7.85) / 2 = 10.575.
  CHECK(tenons(worked.assembly, "top rail") ==
        std::vector{mm(9), mm(10.575), mm(27.425), mm(10.575)});
  CHECK(reasons(worked, "tenon.gap").front() == "top rail: as much as the tenon is thick");
}

TEST_CASE("A gap may be given") {
  // (169 - 20) / 2 = 74.5, (140 - 20) / 2 = 60.
  const Worked worked = work(framed(R"("tenon": {"gap": 20})"));
  CHECK(tenons(worked.assembly, "lock rail") == std::vector{mm(13), mm(74.5), mm(107.5), mm(74.5)});
  CHECK(tenons(worked.assembly, "bottom rail") == std::vector{mm(77), mm(60), mm(157), mm(60)});
  CHECK(assumed_under(worked, "tenon.gap").empty());
}

TEST_CASE("Muntin tenons are divided only if the spec gives a width limit") {
  const char* wide = R"("panels": 4, "muntin_width": 110)";
  // 110 - 26 = 84, over 75 but whole.
  CHECK(tenons(framed(wide), "muntin, tier 1", "lock rail") == std::vector{mm(13), mm(84)});
  // 84 / 4 = 21; (84 - 21) / 2 = 31.5.
  const Assembly leaf = wood(framed(wide + std::string(R"(, "tenon": {"width_limit": 75})")));
  CHECK(tenons(leaf, "muntin, tier 1", "lock rail") ==
        std::vector{mm(13), mm(31.5), mm(65.5), mm(31.5)});
  // A haunch in the gap, 12.5 deep, none beside the grooves.
  CHECK(
      wood_differs(piece(leaf, "muntin, tier 1"), mm(0), mm(76),
                   {box(0, 13, 14.575, 76, 44.5, 29.425), box(63.5, 44.5, 14.575, 76, 65.5, 29.425),
                    box(0, 65.5, 14.575, 76, 97, 29.425)}) == kNoWood);
}

TEST_CASE("A haunch may be given its depth, up to the groove's; 0 is none") {
  const Assembly shallow = wood(framed(R"("tenon": {"haunch_depth": 10})"));
  CHECK(wood_differs(piece(shallow, "top rail"), mm(0), mm(76),
                     {box(0, 13, 14.575, 76, 79, 29.425), box(66, 79, 14.575, 76, 118, 29.425)}) ==
        kNoWood);
  const Assembly full = wood(framed(R"("tenon": {"haunch_depth": 13})"));
  CHECK(wood_differs(piece(full, "top rail"), mm(0), mm(76),
                     {box(0, 13, 14.575, 76, 79, 29.425), box(63, 79, 14.575, 76, 118, 29.425)}) ==
        kNoWood);
  const Assembly none = wood(framed(R"("tenon": {"haunch_depth": 0})"));
  CHECK(wood_differs(piece(none, "top rail"), mm(0), mm(76),
                     {box(0, 13, 14.575, 76, 79, 29.425)}) == kNoWood);
  CHECK(joint(none, "left stile", "top rail").tenon->haunches.empty());
  CHECK(refused_at(framed(R"("tenon": {"haunch_depth": 13.001})")) == "/tenon/haunch_depth");
}

TEST_CASE("Edge and bottom clearances are the mortise's: the tenon stays") {
  const Assembly leaf = wood(framed(R"("tenon": {"edge_clearance": 1, "bottom_clearance": 5})"));
  // Tenon 1949..2015 as ever; 76 + 5 deep of 118.
  CHECK(cuts(piece(leaf, "left stile"), "mortise").front() == box(1948, 37, 14.5, 2016, 118, 29.5));
  CHECK(joint(leaf, "left stile", "top rail").design.edges == mm(2));
  CHECK(joint(leaf, "left stile", "top rail").design.bottom == mm(5));
  CHECK(tenons(leaf, "top rail") == std::vector{mm(13), mm(66)});
}

TEST_CASE("Clearances may be 0") {
  const Assembly leaf = wood(framed(
      R"("fit_allowance": 0, "tenon": {"edge_clearance": 0, "bottom_clearance": 0},
         "panel": {"gap": 0, "allowance": 0})"));
  CHECK(cuts(piece(leaf, "left stile"), "mortise").front() == box(1949, 42, 14.5, 2015, 118, 29.5));
  CHECK(joint(leaf, "left stile", "top rail").tenon->thickness == mm(15));
}

TEST_CASE("An edge clearance must stay below relish and groove") {
  CHECK(refused_at(cabinet_mm(R"("tenon": {"edge_clearance": 9})")) == "/tenon/edge_clearance");
  CHECK_FALSE(refusal(cabinet_mm(R"("tenon": {"edge_clearance": 8, "relish": 8})")).empty());
  CHECK(refusal(cabinet_mm(R"("tenon": {"edge_clearance": 7.999, "relish": 8})")).empty());
}

TEST_CASE("A rail too narrow for a tenon is refused, and the keys to change are named") {
  // 21 - 9 - 12 = 0.
  CHECK(refused_at(cabinet_mm("\"rail_widths\": [21, 57]")) == "/rail_widths/0");
  CHECK(refusal(cabinet_mm("\"rail_widths\": [21.001, 57]")).empty());
}

TEST_CASE("A tenon that gaps eat up is refused") {
  // 29 to share, no more than 1 wide, 7.85 between: four take 5.45, five would want 31.4 of gaps.
  CHECK(refused_at(cabinet_mm(R"("tenon": {"width_limit": 1})")) == "/tenon/width_limit");
}

TEST_CASE("A tenon that goes through its stile is refused") {
  CHECK(refused_at(cabinet_mm("\"tenon_depth\": 57")) == "/tenon_depth");
  CHECK(refusal(cabinet_mm("\"tenon_depth\": 56.999")).empty());
}

// A tenon that is no deeper than the groove is a stub: it stands in the groove alone.

TEST_CASE("A stub has neither mortise nor relish, and loses its grooved edges only") {
  const Worked worked = work(cabinet_mm(R"("rail_widths": [57, 70, 57], "tenon_depth": 9)"));
  const Assembly& leaf = worked.assembly;
  const Joint top = joint(leaf, "left stile", "top rail");
  CHECK(top.kind == JointKind::stub_tenon);
  CHECK_FALSE(top.mortise);
  CHECK(top.design.bottom == Length());  // 9 in a groove of 9: as designed
  CHECK_FALSE(top.design.edges);
  CHECK(top.tenon->haunches.empty());
  CHECK(tenons(leaf, "top rail") == std::vector{mm(9), mm(48)});
  CHECK(tenons(leaf, "bottom rail") == std::vector{mm(0), mm(48)});
  CHECK(tenons(leaf, "middle rail") == std::vector{mm(9), mm(52)});
  CHECK(cuts(piece(leaf, "left stile"), "mortise").empty());
  for (const char* key :
       {"tenon.relish", "tenon.edge_clearance", "tenon.bottom_clearance", "mortise.width",
        "mortise.from_face", "tenon.width_limit", "tenon.haunch_depth", "tenon.thickness"})
    CHECK(assumed_under(worked, key).empty());
  // 8 - 0.15 thick in the groove of 8 (6 to 14); the whole width but the groove.
  CHECK(wood_differs(piece(leaf, "top rail"), mm(0), mm(9), {box(0, 9, 6.075, 9, 57, 13.925)}) ==
        kNoWood);
}

TEST_CASE("A shorter stub leaves room at its end; one 0.001 mm deeper than the groove is none") {
  CHECK(joint(wood(cabinet_mm("\"tenon_depth\": 8")), "left stile", "top rail").design.bottom ==
        mm(1));
  CHECK(joint(wood(cabinet_mm("\"tenon_depth\": 9.001")), "left stile", "top rail").kind ==
        JointKind::mortise_and_tenon);
}

TEST_CASE("A stub is as thick as the groove lets it") {
  const Joint top = joint(wood(cabinet_mm(R"("tenon_depth": 9, "groove": {"width": 6})")),
                          "left stile", "top rail");
  CHECK(top.tenon->thickness == mm(5.85));
  CHECK(top.tenon->from_face == mm(7.075));  // (20 - 6) / 2 + 0.075
}

TEST_CASE("A wide stub is not divided") {
  CHECK(tenons(house_mm(R"("tenon_depth": 12, "tenon": {"width_limit": 60})"), "bottom rail") ==
        std::vector{mm(0), mm(218)});
}

TEST_CASE("The groove names the stubs in it") {
  const Assembly leaf = wood(cabinet_mm("\"tenon_depth\": 9"));
  // Two rails and the panel.
  CHECK(piece(leaf, "left stile").features.front().joints.size() == 3);
}

TEST_CASE("Muntins may be stubs where rails are mortised") {
  const Assembly leaf = wood(cabinet_mm(R"("panels": 2, "tenon": {"muntin_depth": 9})"));
  const Joint muntin = joint(leaf, "top rail", "muntin");
  CHECK(muntin.kind == JointKind::stub_tenon);
  CHECK(tenons(leaf, "muntin", "top rail") == std::vector{mm(9), mm(32)});  // 50 - 2 x 9
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::mortise_and_tenon);
}

TEST_CASE("A groove that meets its like from the other edge is refused, at what the spec gives") {
  CHECK(refused_at(cabinet_mm("\"rail_widths\": [57, 18, 57]")) == "/rail_widths/1");
  CHECK(refusal(cabinet_mm("\"rail_widths\": [57, 18.001, 57]")).empty());
  CHECK(refused_at(cabinet_mm("\"groove_depth\": 57")) == "/groove_depth");
  CHECK(refused_at(cabinet_mm(R"("panels": 2, "muntin_width": 18)")) == "/muntin_width");
}

}  // namespace haunch::test
