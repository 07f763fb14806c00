// Across the thickness: cutters, mortise, tenon, allowance and groove.
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// The mortise that a door of this thickness gets.
std::vector<Length> mortise(std::string_view thickness, const ShopDefaults* shop = nullptr) {
  return assumed(work(house_mm("\"thickness\": " + std::string(thickness)), shop), "mortise.width");
}
std::vector<Length> mortise_in(std::string_view thickness) {
  return assumed(work(house_in("\"thickness\": \"" + std::string(thickness) + "\"")),
                 "mortise.width");
}

struct Fit {
  std::optional<Length> mortise, tenon, allowance;
  bool operator==(const Fit&) const = default;
};

/// Of the top rail, in a leaf 44 mm thick.
Fit fit(std::string_view more) {
  const Joint top =
      joint(wood(house_mm("\"thickness\": 44, " + std::string(more))), "left stile", "top rail");
  return {top.mortise->width, top.tenon->thickness, top.design.cheeks};
}

}  // namespace

TEST_CASE("A mortise is as wide as the smallest cutter from T/3 to 0.4 T") {
  CHECK(mortise("44") == std::vector{mm(15)});      // 14.67 to 17.6
  CHECK(mortise("30") == std::vector{mm(10)});      // 10 to 12, a third exactly
  CHECK(mortise("30.001") == std::vector{mm(12)});  // 10.0003 to 12.0004
  CHECK(mortise("25") == std::vector{mm(10)});      // 8.33 to 10, 0.4 exactly
  CHECK(mortise("40") == std::vector{mm(14)});      // 13.33 to 16
  CHECK(mortise("22") == std::vector{mm(8)});       // 7.33 to 8.8
}

TEST_CASE("In inches cutters go by 1/16") {
  CHECK(mortise_in("1 3/4") == std::vector{inch(0, 5, 8)});  // 0.583 to 0.7: not 9/16 = 0.5625
  CHECK(mortise_in("1 3/8") == std::vector{inch(0, 1, 2)});  // 0.458 to 0.55
  CHECK(mortise_in("1 1/2") == std::vector{inch(0, 1, 2)});  // a third exactly
  CHECK(mortise_in("5/8") == std::vector{inch(0, 1, 4)});    // 0.208 to 0.25, 0.4 exactly
}

TEST_CASE("Where no cutter lies from T/3 to 0.4 T, the nearest to T/3 is taken") {
  CHECK(mortise("12") == std::vector{mm(5)});   // 4 to 4.8
  CHECK(mortise("81") == std::vector{mm(25)});  // 27 to 32.4
  // 24.9: 8.3 to 9.96, between the cutters of 8 and 10.
  CHECK(mortise("24.9") == std::vector{mm(8)});
  CHECK(reasons(work(house_mm("\"thickness\": 24.9")), "mortise.width") ==
        std::vector<std::string>{"the cutter nearest to a third of the thickness"});
}

TEST_CASE("A shop has its own cutters, in any order") {
  const ShopDefaults own = shop(R"({"units": "mm", "cutters": [16, 6.5, 12]})");
  CHECK(mortise("44", &own) == std::vector{mm(16)});
  CHECK(mortise("18", &own) == std::vector{mm(6.5)});  // 6 to 7.2
  CHECK(mortise("21", &own) == std::vector{mm(6.5)});  // 7 to 8.4, 6.5 nearer than 12
  CHECK(mortise("28", &own) == std::vector{mm(12)});   // 9.33 to 11.2, 12 nearer than 6.5
}

TEST_CASE("Any two of mortise, tenon and allowance give the third") {
  const Fit wanted{mm(16), mm(15.8), mm(0.2)};
  CHECK(fit(R"("mortise": {"width": 16}, "fit_allowance": 0.2)") == wanted);
  CHECK(fit(R"("tenon": {"thickness": 15.8}, "fit_allowance": 0.2)") == wanted);
  CHECK(fit(R"("mortise": {"width": 16}, "tenon": {"thickness": 15.8})") == wanted);
  CHECK(fit(R"("mortise": {"width": 16}, "tenon": {"thickness": 15.8}, "fit_allowance": 0.2)") ==
        wanted);
}

TEST_CASE("One of them alone is helped by the usual allowance, or the usual cutter") {
  CHECK(fit(R"("mortise": {"width": 16})") == Fit{mm(16), mm(15.85), mm(0.15)});
  CHECK(fit(R"("tenon": {"thickness": 16})") == Fit{mm(16.15), mm(16), mm(0.15)});
  CHECK(fit(R"("fit_allowance": 0.1)") == Fit{mm(15), mm(14.9), mm(0.1)});
}

TEST_CASE("Three that disagree are refused") {
  CHECK(refused_at(house_mm(
            R"("mortise": {"width": 16}, "tenon": {"thickness": 15.8}, "fit_allowance": 0.1)")) ==
        "/fit_allowance");
}

TEST_CASE("A tenon thicker than its mortise is refused, one just as thick is not") {
  CHECK(refused_at(house_mm(R"("mortise": {"width": 15}, "tenon": {"thickness": 15.001})")) ==
        "/tenon/thickness");
  CHECK(fit(R"("mortise": {"width": 15}, "tenon": {"thickness": 15})") ==
        Fit{mm(15), mm(15), mm(0)});
}

TEST_CASE("Mortise and groove are of one width, whichever is given") {
  const auto groove = [](std::string_view more) {
    return cuts(piece(wood(house_mm(more)), "left stile"), "groove").front().extent(2);
  };
  CHECK(groove(R"("mortise": {"width": 16})") == mm(16));
  CHECK(fit(R"("groove": {"width": 16})") == Fit{mm(16), mm(15.85), mm(0.15)});
  CHECK(groove(R"("groove": {"width": 9})") == mm(9));
  CHECK(groove(R"("tenon": {"thickness": 15.85})") == mm(16));
}

TEST_CASE("Of an odd allowance the odd step is at the back") {
  // One step cannot be halved.
  const Assembly leaf = wood(house_mm(R"("fit_allowance": "0.000000625 mm")"));
  const Joint top = joint(leaf, "left stile", "top rail");
  CHECK(top.design.cheeks == kStep);
  CHECK(top.tenon->from_face == mm(14.5));
}

TEST_CASE("A groove narrower than the mortise: the haunch is thinned, the tenon loses its depth") {
  // Groove 10 of 44: from 17 on; haunch 9.85 from 17.075. Tenon as ever 14.575 to 29.425, and at
  // its grooved edge nothing of it is left, though the groove is narrower.
  // (9 mm groove and 12 mm mortise: tenons thinned there, Goring)
  const Assembly leaf = wood(house_mm(
      R"("stile_width": 118, "rail_widths": [118, 195, 230], "tenon_depth": 76,
         "groove_depth": 13, "mortise": {"width": 15}, "groove": {"width": 10})"));
  CHECK(wood_differs(piece(leaf, "top rail"), mm(0), mm(76),
                     {box(0, 13, 14.575, 76, 79, 29.425),
                      box(63.5, 79, 17.075, 76, 118, 26.925)}) == kNoWood);
  CHECK(cuts(piece(leaf, "left stile"), "groove") == std::vector{box(0, 105, 17, 2054, 118, 27)});
  CHECK(piece(leaf, "panel, tier 1").blank[2] == mm(9.6));
}

TEST_CASE("A groove wider than the mortise: the haunch is thicker than the tenon") {
  // Groove 20: from 12 on; haunch 19.85 from 12.075.
  const Assembly leaf = wood(house_mm(
      R"("stile_width": 118, "rail_widths": [118, 195, 230], "tenon_depth": 76,
         "groove_depth": 13, "mortise": {"width": 15}, "groove": {"width": 20})"));
  CHECK(wood_differs(piece(leaf, "top rail"), mm(0), mm(76),
                     {box(0, 13, 14.575, 76, 79, 29.425),
                      box(63.5, 79, 12.075, 76, 118, 31.925)}) == kNoWood);
  const Joint top = joint(leaf, "left stile", "top rail");
  CHECK(top.tenon->haunch_thickness == mm(19.85));
}

TEST_CASE("Mortise and groove may stand off the middle, each at its own place") {
  const Assembly leaf = wood(house_mm(
      R"("stile_width": 118, "rail_widths": [118, 195, 230], "tenon_depth": 76,
         "groove_depth": 13, "mortise": {"width": 15, "from_face": 12},
         "groove": {"width": 9, "from_face": 20})"));
  CHECK(wood_differs(piece(leaf, "top rail"), mm(0), mm(76),
                     {box(0, 13, 12.075, 76, 79, 26.925),
                      box(63.5, 79, 20.075, 76, 118, 28.925)}) == kNoWood);
  CHECK(cuts(piece(leaf, "left stile"), "mortise").front() == box(1948.6, 40, 12, 2015.4, 118, 27));
  CHECK(cuts(piece(leaf, "left stile"), "groove").front() == box(0, 105, 20, 2054, 118, 29));
  CHECK(piece(leaf, "panel, tier 1").place.origin[2] == mm(20.2));
}

TEST_CASE("Mortise and groove are placed each for itself, in the middle where nothing is said") {
  // (44 - 15) / 2 = 14.5
  const Assembly leaf = wood(house_mm(R"("mortise": {"width": 15, "from_face": 12})"));
  CHECK(cuts(piece(leaf, "left stile"), "mortise").front().low[2] == mm(12));
  CHECK(cuts(piece(leaf, "left stile"), "groove").front().low[2] == mm(14.5));
  const Assembly other = wood(house_mm(R"("groove": {"width": 15, "from_face": 18})"));
  CHECK(cuts(piece(other, "left stile"), "mortise").front().low[2] == mm(14.5));
  CHECK(cuts(piece(other, "left stile"), "groove").front().low[2] == mm(18));
}

TEST_CASE("Where tenons are stubs, the groove is their mortise, and may be placed as one") {
  const Assembly leaf =
      wood(house_mm(R"("tenon_depth": 9, "mortise": {"width": 8, "from_face": 4})"));
  const Box groove = cuts(piece(leaf, "left stile"), "groove").front();
  CHECK(groove.low[2] == mm(4));
  CHECK(groove.high[2] == mm(12));
}

TEST_CASE("What does not lie within the thickness is refused") {
  CHECK(refused_at(house_mm(R"("mortise": {"width": 15, "from_face": 29.001})")) ==
        "/mortise/from_face");
  CHECK(refused_at(house_mm(R"("groove": {"width": 45})")) == "/groove/width");
}

}  // namespace haunch::test
