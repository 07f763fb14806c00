// Half-lapped frames: what each piece loses, where the grooves stop, and what is wrong with them.
#include "joint_checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A cabinet door of 396 x 696 mm, 20 thick, all its members 57 wide, grooves 9 deep, lapped.
std::string lapped(std::string_view more = R"("name": "lapped")",
                   std::string_view rails = "57, 57") {
  return cabinet_mm(R"("joint": "half-lap", "thickness": 20, "stile_width": 57, "groove_depth": 9,
                       "rail_widths": [)" +
                    std::string(rails) + "], " + std::string(more));
}

}  // namespace

TEST_CASE("In a half-lap each piece keeps half its thickness, as long as the other is wide") {
  const Assembly leaf = wood(lapped());
  // Rails reach across both stiles.
  CHECK(piece(leaf, "top rail").blank[0] == mm(396));
  // The stile keeps its face: its back half is cut away over the rail's 57, at its end.
  CHECK(cuts(piece(leaf, "left stile"), "lap").front() == box(639, 0, 10, 696, 57, 20));
  CHECK(cuts(piece(leaf, "top rail"), "lap").front() == box(0, 0, 0, 57, 57, 10));
  CHECK(cuts(piece(leaf, "top rail"), "lap").back() == box(339, 0, 0, 396, 57, 10));
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::half_lap);
  CHECK(measured(leaf, "half-lap-thickness") == mm(10));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("At a corner both shoulders of a half-lap close") {
  const Assembly leaf = wood(lapped());
  CHECK(measured(leaf, "shoulder-seat") == Length());
  CHECK(measured(leaf, "half-lap-shoulder") == Length());
  CHECK(measured(leaf, "half-lap-seat") == Length());
}

TEST_CASE("A middle rail is let in with its play at both edges") {
  const Assembly leaf =
      wood(lapped(R"("fit_allowance": 0.1)", R"(57, {"width": 57, "centre": 348}, 57)"));
  // From 348 - 28.5 = 319.5 to 376.5, and half of the play beyond each.
  CHECK(cuts(piece(leaf, "left stile"), "lap").at(1) == box(319.45, 0, 10, 376.55, 57, 20));
  CHECK(measured(leaf, "half-lap-fit") == mm(0.1));
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("A middle rail that is loose between its shoulders is told of") {
  CHECK(not_ok(wood(lapped(R"("fit_allowance": 0.3)", "57, 57, 57"))) == "half-lap-fit caution");
}

TEST_CASE("Grooves stop within a half-lap, as far beyond the sight edge as they are deep") {
  const Assembly leaf = wood(lapped());
  // Else they would come out at the stile's end and in its edge. The panel's corner needs the 9.
  CHECK(cuts(piece(leaf, "left stile"), "groove").front() == box(48, 48, 6, 648, 57, 14));
  CHECK(cuts(piece(leaf, "top rail"), "groove").front() == box(48, 0, 6, 348, 9, 14));
}

TEST_CASE("A lap may be of other thickness than half") {
  // (a lap of T/2 each is the rule)
  const Assembly leaf = wood(lapped(R"("half_lap": {"from_face": 13})"));
  CHECK(cuts(piece(leaf, "left stile"), "lap").front() == box(639, 0, 13, 696, 57, 20));
  CHECK(measured(leaf, "half-lap-thickness") == mm(7));
  CHECK(not_ok(leaf) == "");
  CHECK(not_ok(wood(lapped(R"("half_lap": {"from_face": 14})"))) == "half-lap-thickness caution");
  CHECK(not_ok(wood(lapped(R"("half_lap": {"from_face": 18})"))) == "half-lap-thickness fail");
  CHECK(refusal(lapped(R"("half_lap": {"from_face": 20})")) ==
        "/half_lap/from_face: laps that meet 20 mm from the face side leave nothing of the one "
        "behind "
        "in a thickness of 20 mm; make it less");
}

TEST_CASE("A wide lap moves more than its glue bears") {
  const auto wide = [](std::string_view width) {
    return not_ok(wood(cabinet_mm(R"("joint": "half-lap", "thickness": 20, "stile_width": )" +
                                  std::string(width) + R"(, "rail_widths": [120, 120])")));
  };
  CHECK(wide("100") == "");
  CHECK(wide("100.5") == "glued-half-lap caution");
}

TEST_CASE("A lap a tenth out of its place is found") {
  const Assembly leaf = wood(lapped());
  const auto moved = [&](std::size_t axis, double by) {
    Assembly wrong = leaf;
    wrong.pieces[piece_number(wrong, "top rail")].place.origin[axis] += mm(by);
    return not_ok(wrong);
  };
  CHECK(moved(2, 0.1).find("half-lap-seat fail") != std::string::npos);
  CHECK(moved(1, 0.1).find("half-lap-shoulder fail") != std::string::npos);
  CHECK(moved(0, 0.1).find("shoulder-seat fail") != std::string::npos);
}

TEST_CASE("Half-laps stand where rails cross stiles, not at muntins") {
  const Assembly leaf = wood(house_mm(R"("joint": "half-lap", "panels": {"across": 2})"));
  CHECK(joint(leaf, "left stile", "lock rail").kind == JointKind::half_lap);
  CHECK(joint(leaf, "top rail", "muntin, tier 1").kind == JointKind::mortise_and_tenon);
  CHECK(refusal(house_mm(R"("joint": {"muntin": "half-lap"})"))
            .find("\"half-lap\" is not known here") != std::string::npos);
}

}  // namespace haunch::test
