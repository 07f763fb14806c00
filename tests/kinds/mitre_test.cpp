// Mitred frames with splines: the wood of both, and what is wrong with them.
#include "mitre.h"

#include <cmath>

#include "joint_checks.h"
#include "sawn.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A cabinet door of 396 x 696 mm, 20 thick, all its members 57 wide, grooves 9 deep, mitred.
std::string mitred(std::string_view more = R"("name": "mitred")",
                   std::string_view rails = "57, 57") {
  return cabinet_mm(R"("joint": "mitre", "thickness": 20, "stile_width": 57, "groove_depth": 9,
                       "rail_widths": [)" +
                    std::string(rails) + "], " + std::string(more));
}

std::vector<Corner> outline(const Piece& piece, std::string_view kind) {
  for (const Feature& feature : piece.features)
    if (word_of(feature.kind) == kind) return feature.prisms.front().outline;
  throw std::out_of_range("no such feature");
}

using Outline = std::vector<Corner>;

}  // namespace

TEST_CASE("Mitred members are as long as the leaf, to their long points") {
  const Assembly leaf = wood(mitred());
  CHECK(piece(leaf, "left stile").blank[0] == mm(696));
  CHECK(piece(leaf, "top rail").blank[0] == mm(396));
  CHECK(piece(leaf, "left stile").horn == Length());
  // The stile's corner towards the panel goes, from 639 at its sight edge to its end at the outer.
  CHECK(outline(piece(leaf, "left stile"), "mitre") ==
        Outline{{mm(639), mm(57)}, {mm(696), mm(0)}, {mm(696), mm(57)}});
  CHECK(outline(piece(leaf, "top rail"), "mitre") ==
        Outline{{mm(57), mm(0)}, {mm(0), mm(57)}, {mm(0), mm(0)}});
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::mitre);
  CHECK(measured(leaf, "mitre-closed") == Length());
  CHECK(measured(leaf, "face-closed") == Length());
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("A panel in a mitred frame is as in any other") {
  // width less two members, and the grooves less the gaps: 396 - 114 + 2 x (9 - 3)
  CHECK(piece(wood(mitred()), "panel").blank[1] == mm(294));
}

TEST_CASE("A spline goes half the thickness into each piece, its grain across the mitre") {
  const Assembly leaf = wood(mitred());
  const Piece& spline = piece(leaf, "spline of top rail");
  CHECK(spline.role == Role::spline);
  CHECK(count_role(leaf, "spline") == 4);
  // 20 long across the mitre, 10 in each piece. Level it goes 10 / 1.41421 = 7.07107. It begins
  // groove 9, wall 6 and room 1 = 16 from the sight corner, level, and ends at 57 less wall 6, less
  // 7.07107, less room 1: 42.92893. So it is 26.92893 level, 38.0833 along the mitre.
  const Triple sizes = sawn_sizes(spline);
  CHECK(std::abs((sizes[0] - mm(20)).steps()) <= 3);
  CHECK(std::abs((sizes[1] - Length::from_steps(60'933'270)).steps()) <= 300);
  CHECK(sizes[2] == mm(7.85));
  CHECK(measured(leaf, "spline-fit") == mm(0.15));
  CHECK(measured(leaf, "spline-room") == mm(1));
  CHECK(measured(leaf, "spline-ends") == mm(2));
  CHECK(measured(leaf, "slot-edge") == mm(6));
  CHECK(measured(leaf, "slot-wall") == mm(6));
}

TEST_CASE("A size at 45 degrees is that of the level one times the root of 2") {
  CHECK(along_mitre(mm(100)) == Length::from_steps(226'274'170));
  CHECK(level_of(Length::from_steps(226'274'170)) == mm(100));
}

TEST_CASE("A mitre a tenth out of its place is found") {
  const Assembly leaf = wood(mitred());
  const auto moved = [&](std::string_view name, std::size_t axis, double by) {
    Assembly wrong = leaf;
    wrong.pieces[piece_number(wrong, name)].place.origin[axis] += mm(by);
    return not_ok(wrong);
  };
  CHECK(moved("top rail", 0, 0.1).find("mitre-closed fail") != std::string::npos);
  CHECK(moved("top rail", 1, 0.1).find("face-closed fail") != std::string::npos);
  CHECK(moved("spline of top rail", 0, 0.1).find("spline-room fail") != std::string::npos);
  CHECK(moved("spline of top rail", 0, 0.1).find("spline-ends fail") != std::string::npos);
  CHECK(moved("spline of top rail", 2, 0.1).find("fouling fail") != std::string::npos);
}

TEST_CASE("A splined mitre without wood beside its slot is told of") {
  CHECK(not_ok(wood(mitred(R"("spline": {"wall": 4})"))) == "slot-edge caution");
  CHECK(not_ok(wood(mitred(R"("spline": {"wall": 2})"))) == "slot-edge fail");
  // 12 of 20 leaves 4 at each side.
  CHECK(not_ok(wood(mitred(R"("groove": {"width": 12})"))).find("slot-wall caution") !=
        std::string::npos);
}

TEST_CASE("A spline looser than a hundredth of an inch is told of") {
  CHECK(not_ok(wood(mitred(R"("fit_allowance": 0.26)"))) == "spline-fit caution");
}

TEST_CASE("Mitres want members of one width, and no horns") {
  CHECK(refusal(mitred(R"("name": "unequal")", "57, 70")) ==
        "/rail_widths/1: a mitred corner wants stile and rail of one width; the bottom rail is 70 "
        "mm wide, the stile 57 mm");
  CHECK(refusal(mitred(R"("horn": 20)")) ==
        "/horn: mitred stiles have no horns; take it out, or say 0");
  CHECK(refusal(mitred(R"("spline": {"depth": 50})")) ==
        "/spline/depth: leaves no room for a spline along the mitre of members 57 mm wide; make "
        "spline.depth or spline.wall less, or the members wider");
  CHECK(refusal(mitred(
            R"("species": "European oak", "moisture": {"low": 6, "build": 9, "high": 13})")) ==
        "/moisture: seasons are not worked of mitres, which open as their members swell; take it "
        "out, or choose another joint");
}

TEST_CASE("Middle rails of a mitred frame keep their tenons") {
  const Assembly leaf = wood(mitred(R"("tenon_depth": 38)", "57, 57, 57"));
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::mitre);
  CHECK(joint(leaf, "left stile", "middle rail").kind == JointKind::mortise_and_tenon);
  CHECK(not_ok(leaf) == "");
}

}  // namespace haunch::test
