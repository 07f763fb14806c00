// A case of wood through the seasons, by hand: what moves together, what is fixed across it, the
// drawers in it.
//
// White oak, flat-sawn, 0.00365 of its width for each percent of moisture.
#include <algorithm>

#include "findings.h"
#include "seasons.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A chest of white oak, 20 thick; `more` keys of the spec.
std::string chest(std::string_view more = {}, std::string_view in_case = {}) {
  return R"({"kind": "cabinet", "units": "mm", "species": "white oak",
             "size": {"width": 760, "height": 900, "depth": 460},
             "case": {"material": "white oak", "thickness": 20)" +
         std::string(in_case.empty() ? "" : ", ") + std::string(in_case) +
         R"(}, "fronts": {"meets": "inset"}, "toe": {"height": 80, "setback": 40},
             "layout": {"front": "drawer", "grade": {"count": 4, "step": 20}})" +
         std::string(more.empty() ? "" : ", ") + std::string(more) + "}";
}

constexpr std::string_view kYear = R"("moisture": {"low": 6, "build": 8, "high": 12})";

struct Seasoned {
  Assembly wood;
  SeasonReport report;
};

Seasoned seasoned(const std::string& spec) {
  const auto its = job(spec);
  Seasoned all{work(*its).assembly, {}};
  all.report = check_seasons(all.wood, *its->season, its->unit);
  return all;
}

std::vector<std::string> doubts(const std::vector<Finding>& findings) {
  std::vector<std::string> all;
  for (const Finding& it : findings)
    if (it.status != Status::ok) all.emplace_back(it.rule->check);
  return all;
}

std::vector<std::string> doubts(const std::string& spec) {
  const auto its = job(spec);
  return doubts(check_job(work(*its).assembly, *its));
}

Piece& called(Assembly& wood, std::string_view name) {
  for (Piece& piece : wood.pieces)
    if (piece.name == name) return piece;
  throw std::invalid_argument("no piece: " + std::string(name));
}

/// Within the rounding of a few steps.
bool about(Length length, double millimetres) {
  const Length off = length - mm(millimetres);
  return std::max(off, -off) <= mm(0.001);
}

Finding worst(const std::vector<Finding>& findings, std::string_view check) {
  std::optional<Finding> least;
  for (const Finding& it : findings)
    if (it.rule->check == check && (!least || it.value < least->value)) least = it;
  return least.value();
}

std::vector<Feature> screws_of(const Piece& piece) {
  std::vector<Feature> all;
  for (const Feature& feature : piece.features)
    if (feature.kind == FeatureKind::slot || feature.kind == FeatureKind::screw_hole)
      all.push_back(feature);
  return all;
}

}  // namespace

TEST_CASE("A side of white oak 20 in deep goes 0.438 in over 6 %") {
  const auto its = job(R"({"kind": "cabinet", "units": "in", "species": "white oak",
      "moisture": {"low": 6, "build": 6, "high": 12},
      "size": {"width": 36, "height": 34, "depth": 20},
      "case": {"material": "white oak", "thickness": "3/4", "back": {"fit": "none"}}})");
  const SeasonReport report = check_seasons(work(*its).assembly, *its->season, its->unit);
  REQUIRE(report.widths.size() == 4);  // sides, top and bottom
  for (const WidthSeason& board : report.widths)
    CHECK(about(board.width[kHigh] - board.width[kBuild], 0.438 * 25.4));
  // With their grain in one loop they move together.
  CHECK(doubts(report.findings) == kNothing);
}

TEST_CASE("A chest of wood whose spec is silent bears a usual year, and any that is said") {
  CHECK(doubts(chest()) == kNothing);
  CHECK(doubts(chest(kYear)) == kNothing);
  CHECK(doubts(chest(R"("face_frame": {}, )" + std::string(kYear))) == kNothing);
  CHECK(doubts(chest(kYear, R"("joint": "stopped-housing")")) == kNothing);
  CHECK(doubts(chest(kYear, R"("joint": "lapped-dovetail")")) == kNothing);
}

TEST_CASE("A runner on a side of wood is screwed in front and slotted behind") {
  Assembly wood = work(chest()).assembly;
  const Piece& runner = called(wood, "runner 1");
  const std::vector<Feature> screws = screws_of(runner);
  // Back at 441.9, a rail of 100 and 0.5 before it; the back comes forward by 442 x 0.0073 = 3.2 in
  // winter, up to the millimetre 4: 337.3 long.
  CHECK(decimal(runner.blank[0], Unit::mm) == "337.3");
  REQUIRE(screws.size() == 3);
  CHECK(screws[0].kind == FeatureKind::screw_hole);
  // 143.65 and 287.3 behind it the side goes by 0.0146 of that to 12 %, either way of the middle:
  // 4.2 and 8.4, up to half millimetres, beside the 4.5 of the shank.
  CHECK(size_of(screws[1], SizeName::length) == mm(9));
  CHECK(size_of(screws[2], SizeName::length) == mm(13));
}

TEST_CASE("Slots that are too short hold the side fast") {
  const auto its = job(chest(kYear));
  Assembly wood = work(*its).assembly;
  CHECK(worst(check_moved(wood, *its->season, Unit::mm), "slot-play").value >= Length());
  // The rear one half as long: 2.12 are left each way, and the side goes 4.19.
  for (Feature& feature : called(wood, "runner 1").features)
    if (size_of(feature, SizeName::length) == mm(13)) {
      feature.cuts.front().low[0] += mm(2.13);
      feature.cuts.front().high[0] -= mm(2.13);
    }
  const Finding short_of = worst(check_moved(wood, *its->season, Unit::mm), "slot-play");
  CHECK(short_of.status == Status::fail);
  CHECK(short_of.moisture == 12.0);
  CHECK(about(short_of.value, 2.12 - 287.3 * 0.0146));
}

TEST_CASE("A runner that is glued all along a side of wood cracks it") {
  const auto its = job(chest(kYear));
  Assembly wood = work(*its).assembly;
  Piece& runner = called(wood, "runner 1");
  std::erase_if(runner.features, [](const Feature& feature) {
    return feature.kind == FeatureKind::slot || feature.kind == FeatureKind::screw_hole;
  });
  for (const Finding& it : check_moved(wood, *its->season, Unit::mm)) {
    if (it.rule->check != "held-across" || it.status == Status::ok) continue;
    // 337.3 of side, by 0.0146 to 12 % and 0.0073 to 6 %.
    CHECK(about(it.value, it.moisture == 12.0 ? 337.3 * 0.0146 : 337.3 * 0.0073));
    CHECK(it.status == (it.moisture == 12.0 ? Status::fail : Status::caution));
  }
}

TEST_CASE("A shelf of plywood housed across sides of wood holds them fast") {
  const std::string shelf = R"({"kind": "cabinet", "units": "mm", "species": "white oak",
      "moisture": {"low": 6, "build": 8, "high": 12},
      "size": {"width": 760, "height": 900, "depth": 460},
      "case": {"material": "white oak", "thickness": 20},
      "layout": {"front": "none", "shelves": {"count": 1, "joint": "housed",)";
  const auto held = [&](std::string_view material) {
    const auto its = job(shelf + R"( "material": ")" + std::string(material) + "\"}}}");
    const std::vector<std::string> all =
        fails_of(check_moved(work(*its).assembly, *its->season, its->unit));
    return std::count(all.begin(), all.end(), "held-across");
  };
  CHECK(held("birch plywood") == 2);  // 442 of it: 3.2 in winter, 6.5 in summer
  CHECK(held("white oak") == 0);
}

TEST_CASE("A back of boards as one panel has the room in its grooves that it needs") {
  const std::string narrow =
      R"({"kind": "cabinet", "units": "mm", "species": "white oak", )" + std::string(kYear) + R"(,
      "size": {"width": 300, "height": 700, "depth": 300},
      "case": {"material": "white oak", "thickness": 22, "back": {"material": "white oak"}}})";
  Assembly wood = work(narrow).assembly;
  // 278 wide or less: 2.03 each side to 12 %, up to 2.5, and the 1 to go in; 1.01 to 6 %, up to
  // 1.5, and 3 that stay in: grooves 8 deep.
  CHECK(decimal(called(wood, "back").blank[1], Unit::mm) == "265");
  CHECK(doubts(narrow) == kNothing);
  // One of 1000 has no room in sides of 22: the check says how much is missing.
  const std::string wide = R"({"kind": "cabinet", "units": "mm", "species": "white oak",
      "size": {"width": 1000, "height": 700, "depth": 300},
      "case": {"material": "white oak", "thickness": 22, "back": {"material": "white oak"}}})";
  CHECK(doubts(wide) == std::vector<std::string>{"panel-season"});
}

TEST_CASE("A back of boards planted on the sides is held fast across") {
  const auto planted = [](std::string_view material) {
    const auto its = job(chest(
        kYear, R"("back": {"fit": "planted", "material": ")" + std::string(material) + "\"}"));
    return fails_of(check_moved(work(*its).assembly, *its->season, its->unit));
  };
  // Along the edges of the sides board has nothing to hold.
  CHECK(planted("birch plywood") == kNothing);
  CHECK_FALSE(planted("white oak").empty());
}

TEST_CASE("Drawers stay free in their openings in the wettest month") {
  const Seasoned all = seasoned(chest(kYear));
  REQUIRE(all.report.fronts.size() == 4);
  const AtEach<FrontState>& first = all.report.fronts.front().at;
  CHECK(first[kBuild].height == mm(146.5));
  CHECK(about(first[kHigh].height, 146.5 * 1.0146));
  CHECK(first[kBuild].head == mm(3.5));
  CHECK(first[kHigh].foot == Length());
  CHECK(*first[kHigh].head >= mm(0.5));
  // With next to no play above it sticks.
  const std::string tight = chest(kYear).replace(chest(kYear).find(R"("meets")"), 0,
                                                 R"("drawer": {"runner": {"play_above": 0.5}}, )");
  const auto its = job(tight);
  const std::vector<std::string> all_tight = fails_of(check_job(work(*its).assembly, *its));
  CHECK(std::count(all_tight.begin(), all_tight.end(), "drawer-head") == 4);
}

TEST_CASE("Plywood stands still, and nothing is said of it") {
  const auto its = job(R"({"kind": "cabinet", "units": "mm", "species": "white oak",
      "size": {"width": 760, "height": 900, "depth": 460},
      "fronts": {"meets": "inset"}, "layout": {"front": "drawer", "grade": {"count": 4, "step": 20}}})");
  const Worked worked = its->work();
  for (const Finding& it : check_job(worked.assembly, *its)) {
    CHECK(it.rule->check != "held-across");
    CHECK(it.rule->check != "slot-play");
  }
  for (const Piece& piece : worked.assembly.pieces)
    if (piece.role == Role::runner) CHECK(screws_of(piece).empty());
}

TEST_CASE("A face frame goes through its seasons by itself") {
  const auto its = job(R"({"kind": "face-frame", "units": "mm", "species": "white oak",
      "moisture": {"low": 6, "build": 8, "high": 12}, "size": {"width": 900, "height": 700}})");
  CHECK(doubts(check_job(work(*its).assembly, *its)) == kNothing);
}

}  // namespace haunch::test
