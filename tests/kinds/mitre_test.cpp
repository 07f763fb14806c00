// Mitred frames with splines: the wood of both, and what is wrong with them.
#include "mitre.h"

#include <algorithm>
#include <cmath>

#include "joint_checks.h"
#include "sawn.h"
#include "seasons.h"
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

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

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
}

TEST_CASE("Where nothing is said a mitred house door's end rails are as wide as its stiles") {
  const Assembly leaf = wood(house_mm(R"("joint": {"corner": "mitre"})"));
  CHECK(piece(leaf, "top rail").blank[1] == mm(100));
  CHECK(piece(leaf, "lock rail").blank[1] == mm(195));
  CHECK(piece(leaf, "bottom rail").blank[1] == mm(100));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("A spline stays clear of the rebate that is worked round the back of a mitred leaf") {
  const Assembly leaf = wood(mitred(R"("meets": "rebate", "lap": 10)"));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("The leaves of a pair are mitred, but for meeting stiles that lap") {
  const auto pair = [](std::string_view more) {
    return door_spec(R"("units": "mm", "opening": {"width": 800, "height": 700})",
                     R"("leaves": 2, "joint": {"corner": "mitre"})" + std::string(more));
  };
  CHECK(not_ok(work(pair({})).assembly) == "");
  CHECK(refused_at(pair(R"(, "meeting_lap": 10)")) == "/meeting_lap");
}

TEST_CASE("A mitre opens at its sight corner as it dries, and at its outer one as it swells") {
  // Members of 57 of white oak, flat-sawn, 0.00365 for each percent: at 6 % they are 57 x 2 x
  // 0.00365 = 0.4161 narrower, at 13 % 57 x 5 x 0.00365 = 1.04025 wider, each as long as before.
  // Square to each other that is 0.5885 at the sight corner, or 1.4711 at the outer one, of faces
  // that stand at 45 - 44.790 = 0.21, and 45.518 - 45 = 0.518 degrees from where they were.
  const auto its =
      job(mitred(R"("species": "white oak", "moisture": {"low": 6, "build": 8, "high": 13})"));
  const SeasonReport seasons = check_seasons(its->work().assembly, *its->season, Unit::mm);
  REQUIRE(seasons.mitres.size() == 4);
  for (const MitreSeason& mitre : seasons.mitres) {
    CHECK(std::abs(in_mm(mitre.at[kLow].at_sight) - 0.58845) < 1e-4);
    CHECK(mitre.at[kLow].at_outer == Length());
    CHECK(std::abs(mitre.at[kLow].degrees - 0.420) < 0.001);
    CHECK(mitre.at[kBuild].at_sight == Length());
    CHECK(mitre.at[kBuild].at_outer == Length());
    CHECK(mitre.at[kHigh].at_sight == Length());
    CHECK(std::abs(in_mm(mitre.at[kHigh].at_outer) - 1.47114) < 1e-4);
    CHECK(std::abs(mitre.at[kHigh].degrees - 1.036) < 0.001);
  }
  // Past 0.8 it is told.
  CHECK(std::count_if(seasons.findings.begin(), seasons.findings.end(), [](const Finding& it) {
          return it.rule->check == std::string_view("mitre-open") && it.status == Status::caution;
        }) == 4);
}

TEST_CASE("Middle rails of a mitred frame keep their tenons") {
  const Assembly leaf = wood(mitred(R"("tenon_depth": 38)", "57, 57, 57"));
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::mitre);
  CHECK(joint(leaf, "left stile", "middle rail").kind == JointKind::mortise_and_tenon);
  CHECK(not_ok(leaf) == "");
}

}  // namespace haunch::test
