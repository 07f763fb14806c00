// Where panels go as they swell, by what holds them: pinned in the middle, at an edge, or nowhere.
//
// White oak, flat-sawn, built at 8 %: at 13 % everything is 1.01825 as wide.
#include "findings.h"
#include "seasons.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

constexpr std::string_view kOak =
    R"("species": "white oak", "moisture": {"low": 6, "build": 8, "high": 13})";
constexpr std::string_view kSizes =
    R"("thickness": 20, "stile_width": 60, "tenon_depth": 40, "groove_depth": 10)";

/// A panel with gaps of 3, and how it is held where that is said.
std::string panel(std::string_view held, std::string_view grain = "upright") {
  return R"("panel": {"gap": 3, "grain": ")" + std::string(grain) + "\"" +
         (held.empty() ? "" : R"(, "held": ")" + std::string(held) + "\"") + "}";
}

/// Two panels beside a muntin, 640 wide: less stiles of 60 and a muntin of 120 that leaves 200 for
/// each panel. As seen from the left stile's sight edge:
///
///     stile | 0 .. left panel .. 200 | muntin | 320 .. right panel .. 520 | stile
///
/// A panel of 214 stands 7 behind each sight edge; at 13 % it is 217.9055 wide. The stiles'
/// grooves, 10 deep, are 10.1825 deep then. The muntin's middle at 260 is held by its tenons in the
/// rails, which do not move along their grain: its groove on the left, whose bottom is at 210, goes
/// to 260 - 50 x 1.01825 = 209.0875.
std::string beside_muntin(std::string_view held) {
  return R"("rail_widths": [60, 60], "panels": 2, "muntin_width": 120, )" + std::string(kSizes) +
         ", " + panel(held);
}

std::string leaf_of(std::string_view keys, std::string_view opening, std::string_view more = "") {
  return door_spec(R"("units": "mm", "clearance": 2, "opening": )" + std::string(opening),
                   std::string(kOak) + ", " + std::string(keys) + std::string(more));
}

std::string muntin_leaf(std::string_view held) {
  return leaf_of(beside_muntin(held), R"({"width": 644, "height": 604})");
}

SeasonReport seasons(const std::string& spec) {
  const auto its = job(spec);
  return check_seasons(work(*its).assembly, *its->season, its->unit);
}

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

/// What a panel has left at its long-grain edges at 13 %: left or lower, then right or upper.
void check_room(const std::string& spec, std::string_view name, double low, double high) {
  const Assembly built = wood(spec);
  std::size_t seen = 0;
  for (const Finding& it : seasons(spec).findings) {
    if (it.rule->check != "panel-room" || it.moisture != 13.0) continue;
    const Joint& joint = built.joints[*it.joint];
    if (built.pieces[joint.enters].name != name || !is_at_long_edge(built, joint)) continue;
    INFO(name << (joint.heading.upwards ? ", high edge" : ", low edge"));
    CHECK(in_mm(it.value) == Approx(joint.heading.upwards ? high : low).margin(0.0005));
    ++seen;
  }
  CHECK(seen == 2);
}

}  // namespace

TEST_CASE("A panel pinned in its middle beside a muntin stays where its pins stand in the rails") {
  // The left one's middle stays at 100, its edges go to 100 -/+ 108.95275.
  const std::string spec = muntin_leaf("middle");
  check_room(spec, "panel 1", 10.1825 - 8.95275, 209.0875 - 208.95275);
  check_room(spec, "panel 2", 209.0875 - 208.95275, 10.1825 - 8.95275);
  const SeasonReport report = seasons(spec);
  CHECK(in_mm(report.panels[0].at[kHigh].gap) == Approx(0.13475).margin(0.0005));
  CHECK(in_mm(report.panels[1].at[kHigh].gap) == Approx(0.13475).margin(0.0005));
}

TEST_CASE("A panel that is pinned nowhere finds the middle between stile and muntin") {
  // From -10.1825 to 209.0875 is 219.27, less 217.9055; half of it at each side.
  check_room(muntin_leaf(""), "panel 1", 0.68225, 0.68225);
}

TEST_CASE("A panel pinned at an edge goes with the wood beside its pin") {
  // The left one is pinned to the stile, which is held at its sight edge: from -7.12775 to
  // 210.77775.
  const std::string spec = muntin_leaf("left");
  check_room(spec, "panel 1", 10.1825 - 7.12775, 209.0875 - 210.77775);
  // The right one to the muntin: its edge at 313, 53 from the muntin's middle, goes to 313.96725
  // and the other to 531.87275. The muntin's groove begins at 260 + 50.9125, the stile's ends at
  // 530.1825.
  check_room(spec, "panel 2", 313.96725 - 310.9125, 530.1825 - 531.87275);
}

// Grain level, 400 x 600. Rails of 60 and 90 have their sight edges at 540 and 90, so a panel is
// 464 high, from 83 to 547, and 472.468 at 13 %. The top rail's tenon stands from 10 to 40 in its
// width, so it is held at 565: its groove's bottom, at 550, goes to 565 - 15.27375 = 549.72625. The
// bottom rail's stands from 30 to 80, held at 55: its groove's bottom, at 80, goes to 80.45625.
namespace {

std::string level_leaf(std::string_view held, std::string_view panels = "1") {
  return leaf_of(R"("rail_widths": [60, 90], "panels": )" + std::string(panels) + ", " +
                     std::string(kSizes) + ", " + panel(held, "level"),
                 R"({"width": 404, "height": 604})");
}

}  // namespace

TEST_CASE("A level panel pinned in its middle stays where its pins stand in the stiles") {
  // 315 -/+ 236.234.
  check_room(level_leaf("middle"), "panel", 78.766 - 80.45625, 549.72625 - 551.234);
  // Free it has half of what is left.
  check_room(level_leaf(""), "panel", -1.599, -1.599);
}

TEST_CASE("A level panel pinned at its foot goes with the bottom rail") {
  // Its edge at 83 is 28 from the middle of the rail's tenon: 83.511, and the other 555.979.
  check_room(level_leaf("foot"), "panel", 83.511 - 80.45625, 549.72625 - 555.979);
}

TEST_CASE("A level panel between stile and muntin goes half as far as the muntin") {
  // The muntin stands midway between its rails' shoulders, which go up by 35 x 0.01825 below and
  // down by 25 x 0.01825 above, so 0.09125 up. The panel's middle: 315.045625.
  check_room(level_leaf("middle", "2"), "panel 1", 78.811625 - 80.45625, 549.72625 - 551.279625);
}

TEST_CASE("Whichever edge a panel is pinned at, its gap is left less so that the other stays in") {
  // 298 wide and pinned at one edge it draws some 7 mm out of the other's groove from 11 to 4 %,
  // where 9 of it stand: too little is left of them.
  const auto gap = [](std::string_view held) {
    const std::string spec =
        door_spec(R"("units": "mm", "clearance": 2, "opening": {"width": 404, "height": 604})",
                  R"("species": "white oak", "moisture": {"low": 4, "build": 11, "high": 11},
           "stile_width": 60, "rail_widths": [60, 60], "groove_depth": 12, "panel": {"held": ")" +
                      std::string(held) + "\"}");
    return *joint(wood(spec), "left stile", "panel").design.bottom;
  };
  CHECK(gap("middle") == mm(3));
  CHECK(gap("left") < mm(3));
  CHECK(gap("right") == gap("left"));
}

TEST_CASE("In a pair, and in a leaf that hangs in its frame, panels are held as in a leaf alone") {
  // Both leaves of the pair are 640 wide, 2 apart.
  const std::string pair =
      leaf_of(beside_muntin("middle"), R"({"width": 1286, "height": 604})", R"(, "leaves": 2)");
  const std::string set = R"({"kind": "doorset", "units": "mm", )" + std::string(kOak) +
                          R"(, "frame": {"leaf": {"width": 640, "height": 600}}, "leaf": {)" +
                          beside_muntin("middle") + "}}";
  for (const std::string side : {"left leaf, ", "right leaf, "}) {
    check_room(pair, side + "panel 1", 10.1825 - 8.95275, 209.0875 - 208.95275);
    check_room(pair, side + "panel 2", 209.0875 - 208.95275, 10.1825 - 8.95275);
  }
  check_room(set, "panel 1", 10.1825 - 8.95275, 209.0875 - 208.95275);
}

}  // namespace haunch::test
