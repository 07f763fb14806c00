// Face frames worked by hand: members, what they end on, and what holds them there.
#include "checks.h"
#include "choices.h"
#include "joint_checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string frame(std::string_view more = {}) {
  return R"({"kind": "face-frame", "units": "mm", "size": {"width": 900, "height": 770})" +
         std::string(more.empty() ? "" : ", ") + std::string(more) + "}";
}

/// Two columns, the left one 400 wide with two rows, the upper 150 high.
constexpr std::string_view kTwoColumns =
    R"("layout": {"columns": [{"width": 400, "rows": [{"height": 150}, {}]}, {}]})";
/// The same with rows of one height in both, whose rails stand in one line.
constexpr std::string_view kInLine =
    R"("layout": {"columns": [{"rows": [{"height": 150}, {}]}, {"rows": [{"height": 150}, {}]}]})";

std::string two_columns(std::string_view more = {}) {
  return frame(std::string(kTwoColumns) + (more.empty() ? "" : ", ") + std::string(more));
}
std::string in_line(std::string_view more = {}) {
  return frame(std::string(kInLine) + (more.empty() ? "" : ", ") + std::string(more));
}

std::string names(const Assembly& wood) {
  std::string text;
  for (const Piece& it : wood.pieces)
    text += (text.empty() ? "" : ", ") + it.mark + " " + it.name;
  return text;
}

Box lies(const Assembly& wood, std::string_view name) {
  return placed_blank(piece(wood, name));
}

}  // namespace

// ---- members

TEST_CASE("Stiles run the full height, rails between them, mullions between rails") {
  // 900 - 40 - 40 = 820 between stiles; 400 + 40 of mullion leave 380. 770 - 40 - 40 = 690 between
  // rails; 150 + 40 of rail leave 500. Tenons 27, two thirds of 40, at each end.
  const Assembly wood = haunch::test::wood(two_columns());
  CHECK(names(wood) == "A left stile, B right stile, C top rail, D bottom rail, E mullion, F rail");
  CHECK(piece(wood, "left stile").blank == Triple{mm(770), mm(40), mm(20)});
  CHECK(piece(wood, "top rail").blank == Triple{mm(820 + 54), mm(40), mm(20)});
  CHECK(piece(wood, "mullion").blank == Triple{mm(690 + 54), mm(40), mm(20)});
  CHECK(piece(wood, "rail").blank == Triple{mm(400 + 54), mm(40), mm(20)});
  CHECK(lies(wood, "left stile") == box(0, 0, 0, 40, 770, 20));
  CHECK(lies(wood, "bottom rail") == box(13, 0, 0, 887, 40, 20));
  CHECK(lies(wood, "mullion") == box(440, 13, 0, 480, 757, 20));
  // Its upper edge is 150 below the top rail: 770 - 40 - 150 = 580.
  CHECK(lies(wood, "rail") == box(13, 540, 0, 467, 580, 20));
  CHECK(not_ok(wood).empty());
}

TEST_CASE("The openings of a face frame are open, and told from the lower left corner") {
  const Assembly wood = haunch::test::wood(two_columns());
  // Down the rows, then to the right.
  CHECK(wood.open == std::vector<Box>{box(40, 580, 0, 440, 730, 20), box(40, 40, 0, 440, 540, 20),
                                      box(480, 40, 0, 860, 730, 20)});
  CHECK(word_of(wood.whole().kind) == "face-frame");
  CHECK(wood.whole().path == "face-frame");
}

TEST_CASE("Members keep keys that say where in the layout they stand") {
  const Assembly wood = haunch::test::wood(two_columns());
  CHECK(piece(wood, "mullion").key == "mullion-1");
  CHECK(piece(wood, "rail").key == "column-1/rail-1");
  CHECK(piece(wood, "top rail").key == "top-rail");
}

TEST_CASE("Without a layout a face frame has one opening") {
  const Assembly wood = haunch::test::wood(frame());
  CHECK(names(wood) == "A left stile, B right stile, C top rail, D bottom rail");
  CHECK(wood.open == std::vector<Box>{box(40, 40, 0, 860, 730, 20)});
  CHECK(not_ok(wood).empty());
}

TEST_CASE("Widths are said side by side, and a mullion is as wide as the wider stile") {
  // 900 - 40 - 65 = 795 between stiles; 770 - 70 - 30 = 670 between rails; 795 - 65 = 730, half of
  // it 365 to each opening.
  const Assembly wood = haunch::test::wood(
      frame(R"("stile_width": {"right": 65}, "rail_width": {"top": 70, "bottom": 30},
               "layout": {"columns": [{}, {}]})"));
  CHECK(wood.open == std::vector<Box>{box(40, 30, 0, 405, 700, 20), box(470, 30, 0, 835, 700, 20)});
  CHECK(piece(wood, "mullion").blank[1] == mm(65));
}

TEST_CASE("What is left to scribe widens its stile, and no tenon is cut by it") {
  const Assembly wood = haunch::test::wood(frame(R"("scribe": {"left": 15})"));
  CHECK(piece(wood, "left stile").blank[1] == mm(55));
  // Two thirds of 40, not of 55; the stile's inner edge is at 55.
  CHECK(lies(wood, "top rail").low[0] == mm(55 - 27));
}

TEST_CASE("Without a bottom rail the stiles stand alone at the foot") {
  const Assembly wood = haunch::test::wood(frame(R"("rail_width": {"bottom": 0})"));
  CHECK(names(wood) == "A left stile, B right stile, C top rail");
  CHECK(wood.open == std::vector<Box>{box(40, 0, 0, 860, 730, 20)});
  CHECK(not_ok(wood).empty());
  CHECK(refusal(frame(R"("rail_width": {"bottom": 0}, "layout": {"columns": [{}, {}]})")) ==
        "/layout: a mullion here would end where nothing stands; put a rail there, or say "
        "\"between\": \"none\"");
}

TEST_CASE("An inch frame has sizes in inches") {
  // 36 - 1 1/2 - 1 1/2 = 33; tenons two thirds of 1 1/2, 1 in.
  const Assembly wood = haunch::test::wood(
      R"({"kind": "face-frame", "units": "in", "size": {"width": 36, "height": "30 1/2"}})");
  CHECK(piece(wood, "left stile").blank == Triple{inch(30, 1, 2), inch(1, 1, 2), inch(0, 3, 4)});
  CHECK(piece(wood, "top rail").blank[0] == inch(35));
  CHECK(not_ok(wood, Unit::inch).empty());
}

TEST_CASE("Members that leave no opening are refused, and a layout by its own place") {
  CHECK(refusal(frame(R"("stile_width": 450)")) ==
        "/size: stiles and rails leave an opening of 0 mm by 690 mm; make them narrower");
  CHECK(refused_at(frame(R"("layout": {"columns": [{"width": 500}, {"width": 400}]})")) ==
        "/layout/columns");
}

// ---- tenons

TEST_CASE("A corner's tenon leaves a third of its rail at the outside, and a shoulder inside") {
  // The smallest cutter from 20 / 3 to 8: 8, in the middle at 6; 0.15 of play.
  const Assembly wood = haunch::test::wood(two_columns());
  const Joint corner = joint(wood, "left stile", "top rail");
  CHECK(corner.mortise->width == mm(8));
  CHECK(corner.mortise->from_face == mm(6));
  CHECK(corner.mortise->depth == mm(27 + 2));
  CHECK(corner.tenon->thickness == mm(7.85));
  CHECK(corner.tenon->from_face == mm(6.075));
  // 40 / 3 is 13 to the nearest millimetre: 5 to 27 of the rail, from its lower edge.
  CHECK(corner.tenon->each.front().from_edge == mm(5));
  CHECK(corner.tenon->each.front().width == mm(22));
  // With 0.4 of play at each edge, from 730 + 5 - 0.4 on.
  CHECK(corner.mortise->each.front().from_foot == mm(734.6));
  CHECK(corner.mortise->each.front().length == mm(22.8));
}

TEST_CASE("Between others a tenon has a shoulder at both edges") {
  const Assembly wood = haunch::test::wood(two_columns());
  const Joint crossing = joint(wood, "mullion", "rail");
  CHECK(crossing.tenon->each.front().from_edge == mm(5));
  CHECK(crossing.tenon->each.front().width == mm(30));
  // Told from the mullion's own shoulder, at 40 of the frame: 545 - 0.4 - 40.
  CHECK(crossing.mortise->from_shoulder == mm(504.6));
}

TEST_CASE("Two rails that meet in a mullion leave wood between their mortises") {
  // (40 - 5) / 2 = 17.5 each, less 2 below the tenon: 15 in whole millimetres.
  const Assembly wood = haunch::test::wood(in_line());
  CHECK(joint(wood, "mullion", "rail 1").tenon->depth == mm(15));
  CHECK(joint(wood, "mullion", "rail 2").tenon->depth == mm(15));
  CHECK(joint(wood, "left stile", "rail 1").tenon->depth == mm(27));
  // Mullion of 40: 17 from each edge leave 6.
  CHECK(least(wood, "mortise-between") == mm(6));
  CHECK(not_ok(wood) == "tenon-depth caution");
}

TEST_CASE("A tenon that goes through, or two that meet, are refused") {
  CHECK(refusal(two_columns(R"("tenon": {"depth": 38})")) ==
        "/tenon/depth: a mortise 40 mm deep goes through the left stile, 40 mm wide; make it less");
  CHECK(refusal(in_line(R"("tenon": {"depth": 18})")) ==
        "/tenon/depth: a mortise 20 mm deep from each edge goes through the mullion, 40 mm wide; "
        "make it less");
}

TEST_CASE("Stubs are short tenons in mortises of their own") {
  const Assembly wood = haunch::test::wood(two_columns(R"("joint": "stub")"));
  CHECK(joint(wood, "left stile", "top rail").tenon->depth == mm(12));
  CHECK(joint(wood, "mullion", "rail").mortise->depth == mm(14));
}

TEST_CASE("Bridles are at the corners; elsewhere their frame has mortises") {
  const Assembly wood = haunch::test::wood(two_columns(R"("joint": "bridle")"));
  const Joint corner = joint(wood, "left stile", "top rail");
  CHECK(word_of(corner.kind) == "bridle");
  CHECK(corner.tenon->depth == mm(40));
  CHECK(corner.tenon->each.front().width == mm(39.6));
  CHECK(word_of(joint(wood, "left stile", "rail").kind) == "mortise-and-tenon");
  CHECK(not_ok(wood).empty());
}

// ---- other joints

TEST_CASE("Dowels: two to an end, three diameters deep") {
  // 8 is the least from 20 / 3 to 10. 8 of wood at each edge of 40 leave 24: holes at 8 and 24.
  const Assembly wood = haunch::test::wood(two_columns(R"("joint": "dowel")"));
  CHECK(piece(wood, "top rail").blank[0] == mm(820));
  CHECK(count_role(wood, "dowel") == 8 * 2);
  const Joint hole = joint(wood, "left stile", "dowel of top rail");
  CHECK(hole.mortise->width == mm(8));
  CHECK(hole.mortise->depth == mm(26));
  CHECK(hole.mortise->each.front().from_foot == mm(738));
  CHECK(not_ok(wood).empty());
}

TEST_CASE("Half-laps go right over what receives them, and half-way where two meet") {
  const Assembly wood = haunch::test::wood(in_line(R"("joint": "half-lap")"));
  CHECK(piece(wood, "top rail").blank[0] == mm(900));
  CHECK(joint(wood, "left stile", "top rail").tenon->thickness == mm(10));
  // Half of 40, less half of 0.15 at its end.
  CHECK(joint(wood, "mullion", "rail 1").tenon->depth == mm(20 - 0.075));
  CHECK(not_ok(wood).empty());
}

TEST_CASE("Butted members end at each other's edges, with nothing to hold them") {
  const Assembly wood = haunch::test::wood(two_columns(R"("joint": "butted")"));
  CHECK(piece(wood, "rail").blank[0] == mm(400));
  CHECK(word_of(joint(wood, "mullion", "rail").kind) == "butt");
}

TEST_CASE("Screws from pockets in the back: two in an end of 40") {
  // Pockets of 9.5, 6 from each edge: middles at 10.75 and 29.25.
  const Assembly wood = haunch::test::wood(two_columns(R"("joint": "screws")"));
  const Piece rail = piece(wood, "rail");
  CHECK(rail.blank[0] == mm(400));
  std::size_t pockets = 0;
  for (const Feature& feature : rail.features)
    if (word_of(feature.kind) == "screw-hole") ++pockets;
  CHECK(pockets == 4);
  const Prism& pocket = rail.features.front().prisms.front();
  CHECK(pocket.from == mm(6));
  CHECK(pocket.to == mm(15.5));
  // 12 from the end its line is 10 + 12 * 4 / 15 = 13.2 from the face; the head's near side 8.45.
  CHECK(room(pocket)[2] == mm(8.45));
  CHECK(room(pocket)[3] == mm(20));
  CHECK(not_ok(wood).empty());
}

TEST_CASE("Plugged screws go through the edge, but not where another member stands") {
  const Assembly wood =
      haunch::test::wood(two_columns(R"("joint": "screws", "screws": {"by": "plug"})"));
  CHECK(joint(wood, "left stile", "rail").receives == piece_number(wood, "left stile"));
  CHECK(refusal(in_line(R"("joint": "screws", "screws": {"by": "plug"})")) ==
        "/screws/by: no screw goes through the mullion to the rail 1: another member stands there; "
        "screw from pockets");
}

TEST_CASE("Keys of joints that a frame does not have are refused") {
  CHECK(refusal(frame(R"("joint": "dowel", "tenon": {"depth": 20})")) ==
        "/tenon/depth: has no part in \"dowel\" joints; take it out");
}

// ---- beads

TEST_CASE("A bead worked on the edges is mitred at the shoulders, within the members' widths") {
  const Assembly wood = haunch::test::wood(two_columns(R"("bead": {"width": 6})"));
  CHECK(wood.open.front() == box(40, 580, 0, 440, 730, 20));
  // Shoulders stand 6 past the sight edge: 26.67 - 6 = 20.67, 21 of tenon.
  CHECK(joint(wood, "left stile", "top rail").tenon->depth == mm(21));
  CHECK(lies(wood, "top rail").low[0] == mm(40 - 6 - 21));
  CHECK(piece(wood, "mullion").features.front().sizes.front().size == mm(6));
  CHECK(not_ok(wood).empty());
  CHECK(refusal(two_columns(R"("bead": {"width": 6}, "joint": "dowel")")) ==
        "/joint: a bead that is worked on the edges is mitred at tenons, not at \"dowel\" joints; "
        "plant the bead, or choose tenons");
}

TEST_CASE("A planted bead lines each opening, which is what it leaves") {
  // Beads of 6 stand between 40 of stile and the opening; the mullion has one at each side.
  const Assembly wood = haunch::test::wood(two_columns(R"("bead": {"width": 6, "by": "planted"})"));
  CHECK(wood.open.front() == box(46, 574, 0, 446, 724, 20));
  CHECK(lies(wood, "mullion").low[0] == mm(452));
  CHECK(count_role(wood, "bead") == 3 * 4);
  CHECK(lies(wood, "left bead, opening 1") == box(40, 568, 0, 46, 730, 20));
  CHECK(not_ok(wood).empty());
  const Assembly square = haunch::test::wood(
      two_columns(R"("bead": {"width": 6, "by": "planted", "corners": "butted"})"));
  CHECK(lies(square, "left bead, opening 1") == box(40, 574, 0, 46, 724, 20));
  CHECK(not_ok(square).empty());
}

}  // namespace haunch::test
