// Dowelled frames: holes, dowels, and what is wrong with them.
#include "joint_checks.h"
#include "round_bore.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A cabinet door of 396 x 696 mm, 20 thick, all its members 57 wide, grooves 9 deep, dowelled.
std::string dowelled(std::string_view more = R"("name": "dowelled")") {
  return cabinet_mm(R"("joint": "dowel", "thickness": 20, "stile_width": 57,
                       "rail_widths": [57, 57], "groove_depth": 9, )" +
                    std::string(more));
}

/// The prism that a hole is, one of a piece's holes in their order.
Prism hole(const Piece& piece, std::size_t number) {
  for (const Feature& feature : piece.features) {
    if (feature.kind != FeatureKind::dowel_hole) continue;
    if (number-- == 0) return feature.prisms.at(0);
  }
  throw std::out_of_range("no such hole");
}

}  // namespace

TEST_CASE("Dowelled rails stand between the stiles, and are no longer than what is seen of them") {
  const Assembly leaf = wood(dowelled());
  CHECK(piece(leaf, "top rail").blank[0] == mm(282));  // 396 - 2 x 57
  CHECK(joint(leaf, "left stile", "top rail").kind == JointKind::butt);
  CHECK(measured(leaf, "shoulder-seat") == Length());
  CHECK(not_ok(leaf) == "");
}

TEST_CASE("Holes lie a dowel's thickness from the outer edge, and a wall from the groove") {
  // A third of 20 is 6.7: a dowel of 8. It lies 8 from the rail's outer edge; at the inner one the
  // groove takes 9, and 6 are left beside it: from 57 - 8 - 8 = 41, and from 15.
  const Assembly leaf = wood(dowelled());
  const Piece& rail = piece(leaf, "top rail");
  CHECK(room(hole(rail, 0)) == Room{mm(15), mm(23), mm(6), mm(14)});
  CHECK(room(hole(rail, 1)) == Room{mm(41), mm(49), mm(6), mm(14)});
  // In the stile the same, from its foot: the rail's lower edge stands 639 above it.
  const Piece& stile = piece(leaf, "left stile");
  CHECK(room(hole(stile, 0)) == Room{mm(654), mm(662), mm(6), mm(14)});
  CHECK(least(leaf, "hole-edge") == mm(8));
  CHECK(measured(leaf, "hole-groove") == mm(6));
}

TEST_CASE("A dowel goes three times its thickness into each piece, and the hole a little deeper") {
  const Assembly leaf = wood(dowelled());
  const Piece& dowel = piece(leaf, "dowel of top rail");
  CHECK(dowel.role == Role::dowel);
  CHECK(dowel.blank == Triple{mm(48), mm(7.85), mm(7.85)});
  CHECK(count_role(leaf, "dowel") == 8);
  const Prism& in_stile = hole(piece(leaf, "left stile"), 0);
  CHECK(in_stile.along == 1);
  CHECK(in_stile.from == mm(31));  // 57 - 24 - 2
  CHECK(in_stile.to == mm(57));
  CHECK(measured(leaf, "dowel-depth") == mm(24));
  CHECK(measured(leaf, "dowel-room") == mm(2));
  CHECK(measured(leaf, "dowel-fit") == mm(0.15));
  CHECK(measured(leaf, "dowel-fit-across") == mm(0.15));
}

TEST_CASE("3/8 in dowels, 3 in long, in doors 1 3/8 in thick") {
  // Doors made so have served for fifteen years, as a shop tells.
  const Assembly leaf = wood(house_in(
      R"("thickness": "1 3/8", "joint": "dowel", "stile_width": "4 1/2", "rail_widths": [4.5, 9],
         "groove_depth": "3/8", "dowel": {"diameter": "3/8", "depth": "1 1/2"})"));
  CHECK(piece(leaf, "dowel of top rail").blank[0] == inch(3));
  const Piece& bottom = piece(leaf, "bottom rail");
  // Bottom rail 9: from 3/8 to 9 - 3/8 - 1/4 = 8 3/8, 8 in of stretch. Its holes' middles may be 4
  // apart: 7 5/8 between the outer ones make two spaces.
  CHECK(room(hole(bottom, 0))[0] == inch(0, 3, 8));
  CHECK(room(hole(bottom, 1))[0] == inch(4, 3, 16));
  CHECK(room(hole(bottom, 2))[1] == inch(8, 3, 8));
  CHECK(measured(leaf, "dowel-room", Unit::inch) == inch(0, 1, 16));
  // 3/8 is less than a third of 1 3/8.
  CHECK(not_ok(leaf, Unit::inch) == "dowel-thickness caution");
}

TEST_CASE("The grooves of stiles stop behind dowelled rails") {
  const Assembly leaf = wood(dowelled());
  CHECK(cuts(piece(leaf, "left stile"), "groove").front() == box(48, 48, 6, 648, 57, 14));
}

TEST_CASE("Dowels are round within a tenth of a millimetre") {
  for (const double diameter : {6, 8, 12, 20}) {
    const int corners = bore_corners(mm(diameter));
    CHECK(corners % 4 == 0);
    const std::vector<Corner> outline = bore_outline({}, mm(diameter), corners);
    CHECK(outline.size() == static_cast<std::size_t>(corners));
    double nearest = diameter;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Corner& a = outline[i];
      const Corner& b = outline[(i + 1) % outline.size()];
      const auto from_middle = [&](Length u, Length v) {
        return std::hypot(static_cast<double>((u - mm(diameter / 2)).steps()),
                          static_cast<double>((v - mm(diameter / 2)).steps())) /
               static_cast<double>(Length::kStepsPerMm);
      };
      CHECK(std::abs(from_middle(a.u, a.v) - diameter / 2) < 1e-5);
      nearest = std::min(nearest, from_middle(floor_half(a.u + b.u), floor_half(a.v + b.v)));
    }
    CHECK(diameter / 2 - nearest <= 0.1);
  }
}

TEST_CASE("Muntins are dowelled into the rails, not so deep that holes from both sides meet") {
  const Assembly leaf =
      wood(house_mm(R"("joint": {"muntin": "dowel"}, "thickness": 44, "panels": {"across": 2},
                  "rail_widths": [100, {"width": 100, "top": 960}, 200], "muntin_width": 100)"));
  // Two holes in 100 leave at least 5 between them: (100 - 5) / 2 - 2 = 45.5, so 45 deep.
  CHECK(piece(leaf, "dowel of muntin, tier 1").blank[0] == mm(90));
  CHECK(least(leaf, "hole-between") == mm(6));
  CHECK(not_ok(leaf) == "dowel-depth caution");  // three times 16 would be 48
}

TEST_CASE("Muntins' holes that come near each other are told of") {
  // 46 and 2 from both edges of 100 leave 4.
  CHECK(not_ok(wood(house_mm(
            R"("joint": {"muntin": "dowel"}, "thickness": 44, "panels": {"across": 2},
               "rail_widths": [100, {"width": 100, "top": 960}, 200], "muntin_width": 100,
               "dowel": {"depth": 46})"))) == "hole-between caution\ndowel-depth caution");
}

TEST_CASE("A loose dowel is told of") {
  CHECK(not_ok(wood(dowelled(R"("fit_allowance": 0.26)"))) ==
        "dowel-fit caution\ndowel-fit-across caution");
}

TEST_CASE("A hole a tenth out of its place is found") {
  const Assembly leaf = wood(dowelled());
  Assembly wrong = leaf;
  wrong.pieces[piece_number(wrong, "dowel of top rail")].place.origin[1] += mm(0.1);
  CHECK(not_ok(wrong).find("fouling fail\ndowel-fit fail") == 0);
  wrong = leaf;
  wrong.pieces[piece_number(wrong, "dowel of top rail")].place.origin[0] += mm(0.1);
  CHECK(not_ok(wrong) == "dowel-room fail");
}

TEST_CASE("What is poor in a dowelled joint is told") {
  const auto poor = [](std::string_view more) {
    return not_ok(wood(dowelled(R"("dowel": {)" + std::string(more) + "}")));
  };
  CHECK(poor(R"("depth": 20)") == "dowel-depth caution");
  CHECK(poor(R"("edge": 7)") == "hole-edge caution");
  CHECK(poor(R"("wall": 4)") == "hole-groove caution");
  CHECK(poor(R"("depth": 51)") == "hole-behind caution");
  CHECK(poor(R"("diameter": 12, "edge": 12, "depth": 36)") ==
        "hole-wall caution\ndowel-thickness caution");
  CHECK(poor(R"("edge": 20)") == "dowel-row caution");
}

TEST_CASE("Dowels that cannot be let in are refused") {
  CHECK(refusal(dowelled(R"("dowel": {"depth": 56})")) ==
        "/dowel/depth: a hole of 58 mm goes through the stile, 57 mm; make dowel.depth less");
  CHECK(refusal(dowelled(R"("dowel": {"depth": 9})")) ==
        "/dowel/depth: a dowel 9 mm deep ends in the groove, 9 mm deep; make dowel.depth more");
  CHECK(refusal(dowelled(R"("dowel": {"diameter": 20})")) ==
        "/dowel/diameter: a dowel of 20 mm does not lie within the thickness of 20 mm; make it "
        "less");
  CHECK(
      refusal(dowelled(R"("dowel": {"edge": 40})")) ==
      "/dowel/edge: the top rail is too narrow for a dowel of 8 mm: its grooves, dowel.edge 40 mm "
      "and dowel.wall 6 mm leave 0 mm of 57 mm; make it wider, or the others less");
  CHECK(refusal(cabinet_mm(R"("dowel": {"diameter": 8})")) ==
        "/dowel/diameter: there are no such joints here; say \"joint\": \"dowel\", or take it out");
}

}  // namespace haunch::test
