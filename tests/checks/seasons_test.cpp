// Seasons: the wood at its driest and wettest, each figure worked by hand on a small cupboard door.
//
// The door: 400 x 600 in an opening 2 mm larger all round, stiles and rails 60, groove 10 deep, one
// panel with 3 mm at each side, so 294 wide. White oak, flat-sawn: 0.00365 for 1 % along its width.
// Built at 8 %: at 6 % everything is 0.9927 as wide, at 13 % 1.01825.
#include "seasons.h"

#include <map>

#include "findings.h"
#include "moisture.h"
#include "season_remedy.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

constexpr std::string_view kCupboard =
    R"("units": "mm", "opening": {"width": 404, "height": 604}, "clearance": 2, "thickness": 20,
       "stile_width": 60, "rail_widths": [60, 60], "panels": 1, "tenon_depth": 40,
       "groove_depth": 10)";
constexpr std::string_view kGap = R"("panel": {"gap": 3})";
constexpr std::string_view kOak = R"("species": "white oak")";
constexpr std::string_view kYear = R"("moisture": {"low": 6, "build": 8, "high": 13})";

std::string cupboard(std::initializer_list<std::string_view> keys) {
  std::string all(kCupboard);
  for (const std::string_view key : keys)
    all += ", " + std::string(key);
  return door_spec(all, {});
}

std::string to_high(double high) {
  return R"("moisture": {"low": 8, "build": 8, "high": )" + std::to_string(high) + "}";
}

SeasonReport seasons(const std::string& spec, const ShopDefaults* shop = nullptr) {
  const auto its = job(spec, shop);
  return check_seasons(work(*its).assembly, *its->season, its->unit);
}

double in_mm(Length length) {
  return static_cast<double>(length.steps()) / static_cast<double>(Length::kStepsPerMm);
}

/// Within the rounding of a few steps.
bool about(Length length, double millimetres) {
  const Length off = length - mm(millimetres);
  return std::max(off, -off) <= mm(0.001);
}

bool has_fail(const SeasonReport& report, std::string_view check) {
  return std::any_of(report.findings.begin(), report.findings.end(), [&](const Finding& it) {
    return it.status == Status::fail && it.rule->check == check;
  });
}

}  // namespace

// The top rail is 82 wide with its rise, its tenon 12 to 33: so the crown is 59.5 above the middle
// of that, about which it moves. 0.01825 of it is 1.086 at 13 %, of the gap of 2 there 0.914 are
// left.
TEST_CASE("The crown of an arched top moves with the whole width of its rail") {
  const SeasonReport report =
      seasons(cupboard({kOak, kYear, kGap, R"("arch": {"at": "both", "rise": 40})"}));
  std::map<std::string, Length> at_13;
  for (const Finding& finding : report.findings)
    if (finding.moisture == 13.0) at_13[std::string(finding.rule->check)] = finding.value;
  CHECK(about(at_13.at("opening-head"), 0.914));
  CHECK(about(at_13.at("opening-arch"), 0.914));
  CHECK(at_13.at("face-closed") == Length());
  CHECK_FALSE(has_fail(report, "face-closed"));
}

TEST_CASE("What holds the rails does not change how leaf and panels move") {
  const SeasonReport plain = seasons(cupboard({kOak, kYear, kGap}));
  for (const std::string_view keys :
       {R"("joint": "loose")", R"("joint": "through")", R"("joint": "bridle")",
        R"("joint": "dowel")", R"("joint": "half-lap")", R"("mortise": {"ends": "tenon-rounded"})",
        R"("mortise": {"ends": "tenon-shortened"})"}) {
    INFO(keys);
    const SeasonReport report = seasons(cupboard({kOak, kYear, kGap, keys}));
    CHECK(report.leaves.front().at[kHigh].width == plain.leaves.front().at[kHigh].width);
    for (const std::size_t at : {kLow, kBuild, kHigh}) {
      CHECK(report.panels.front().at[at].gap == plain.panels.front().at[at].gap);
    }
    CHECK(fails_of(report.findings) == fails_of(plain.findings));
  }
}

TEST_CASE("Tenons that come out stand proud of dry stiles") {
  // The rail, 400 along its grain, stays as long; each stile is 0.0073 * 60 = 0.438 narrower.
  const auto width = [](std::string_view keys) {
    return seasons(cupboard({kOak, kYear, kGap, keys})).leaves.front().at[kLow].width;
  };
  CHECK(width(R"("joint": "through")") == mm(400));
  CHECK(about(width(R"("joint": "haunched")"), 399.124));
}

TEST_CASE("A short tenon is measured in its mortise, not in the groove before it") {
  // 12 deep, the first 9 of them through the groove.
  const SeasonReport report = seasons(door_spec(
      R"("units": "mm", "opening": {"width": 404, "height": 604}, "tenon_depth": 12,
         "groove_depth": 9)",
      std::string(kOak) + ", " + std::string(kYear)));
  std::size_t measured = 0;
  for (const Finding& it : report.findings)
    if (it.rule->check == "edge-swell" && it.measured) ++measured;
  CHECK(measured == 8);
  CHECK_FALSE(has_fail(report, "edge-swell"));
}

TEST_CASE("What a meeting stile shrinks beside ends that come out is no hole in a leaf") {
  for (const std::string_view joint : {"bridle", "through", "half-lap"}) {
    INFO(joint);
    const std::string keys = R"("leaves": 2, "joint": {"corner": ")" + std::string(joint) +
                             "\"}, " + std::string(kOak) + ", " + std::string(kYear);
    CHECK_FALSE(has_fail(seasons(house_mm(keys)), "face-closed"));
  }
}

TEST_CASE("A rounded tenon has as much play at its edges as a square one, at any moisture") {
  const auto edges = [](std::string_view keys) {
    std::vector<double> play;
    for (const Finding& it : seasons(cupboard({kOak, to_high(20), kGap, keys})).findings)
      if (it.rule->check == "edge-swell") play.push_back(in_mm(it.value));
    return play;
  };
  const auto square = edges(R"("mortise": {"ends": "squared"})");
  const auto rounded = edges(R"("mortise": {"ends": "tenon-rounded"})");
  REQUIRE(square.size() == 4);
  REQUIRE(rounded.size() == 4);
  for (std::size_t i = 0; i < 4; ++i)
    CHECK(rounded[i] == Approx(square[i]).margin(0.001));
}

TEST_CASE(
    "A loose tenon fills its mortise in the stile as it swells, not that in the rail, which goes "
    "with it") {
  // At 6 % more, 0.00365 each, it is 1.0219 as wide, and so is the rail's mortise; the stile's is
  // as it was. The play was 0.4 at each edge.
  const std::string loose = R"("joint": {"corner": "loose"})";
  const Assembly leaf = wood(cupboard({loose}));
  const double width = in_mm(piece(leaf, "loose tenon of top rail").blank[1]);
  std::size_t seen = 0;
  for (const Finding& it : seasons(cupboard({kOak, to_high(14), kGap, loose})).findings) {
    if (it.rule->check != "edge-swell") continue;
    ++seen;
    const bool in_rail = leaf.pieces[it.parts.front()].role == Role::rail;
    CHECK(in_mm(it.value) == Approx(in_rail ? 0.8 * 1.0219 : 0.8 - 0.0219 * width).margin(0.0005));
  }
  CHECK(seen == 8);
}

TEST_CASE("A panel through three seasons, by hand") {
  const SeasonReport report = seasons(cupboard({kOak, kYear, kGap}));
  REQUIRE(report.panels.size() == 1);
  const AtEach<PanelState>& panel = report.panels.front().at;
  CHECK(panel[kBuild].width == mm(294));
  CHECK(panel[kBuild].gap == mm(3));
  CHECK(panel[kBuild].bite == mm(7));
  // 294 x 1.01825 = 299.3655; the grooves' bottoms stand 280 + 2 x 10 x 1.01825 apart.
  CHECK(about(panel[kHigh].width, 299.3655));
  CHECK(about(panel[kHigh].gap, 0.49975));
  CHECK(about(panel[kHigh].bite, 9.68275));
  // 294 x 0.9927 = 291.8538; 280 + 2 x 10 x 0.9927.
  CHECK(about(panel[kLow].width, 291.8538));
  CHECK(about(panel[kLow].gap, 4.0001));
  CHECK(about(panel[kLow].bite, 5.9269));
  CHECK(fails(report).empty());
}

TEST_CASE("The leaf grows by its stiles, each from its sight edge outwards") {
  const AtEach<LeafState> leaf = seasons(cupboard({kOak, kYear, kGap})).leaves.front().at;
  CHECK(leaf[kBuild].width == mm(400));
  CHECK(about(leaf[kHigh].width, 400 + 120 * 0.01825));
  CHECK(about(leaf[kHigh].gaps.left, 2 - 60 * 0.01825));
  CHECK(about(leaf[kHigh].gaps.right, 2 - 60 * 0.01825));
  CHECK(about(leaf[kLow].width, 400 - 120 * 0.0073));
  CHECK(about(leaf[kLow].gaps.left, 2 + 60 * 0.0073));
}

TEST_CASE("A leaf that outgrows its opening fails on the side where it binds") {
  const std::string tight = door_spec(
      std::string(kCupboard) + ", " + std::string(kOak) + ", " + std::string(kYear), kGap);
  std::string spec = tight;
  spec.replace(spec.find("\"clearance\": 2"), 14, R"("clearance": {"left": 1, "right": 3})");
  // The left stile grows by 60 x 0.01825 = 1.095.
  CHECK(fails(seasons(spec)) == std::vector<std::string>{"opening-left"});
}

TEST_CASE("A panel pinned at its left edge takes all its movement to the right") {
  const SeasonReport report =
      seasons(cupboard({kOak, kYear, R"("panel": {"gap": 3, "held": "left"})"}));
  // The pin holds the panel's wood to that of the stile, wherever in the 7 of bite it is: both
  // swell alike there, so the left edge goes to -7 x 1.01825, the right one to 287 x 1.01825.
  CHECK(about(report.panels.front().at[kHigh].gap, 280 + 10.1825 - 292.23775));
  CHECK(has_fail(report, "panel-room"));
}

TEST_CASE("Rails between stiles stay shut at their shoulders all the year") {
  for (const Finding& finding : seasons(cupboard({kOak, kYear, kGap})).findings)
    if (finding.rule->check == "shoulder-move") CHECK(finding.value == Length());
}

TEST_CASE("A year without a swing changes nothing") {
  const std::string still = cupboard({kOak, R"("moisture": {"low": 8, "build": 8, "high": 8})"});
  const auto its = job(still);
  const Worked worked = work(*its);
  const SeasonReport report = check_seasons(worked.assembly, *its->season, its->unit);
  CHECK(report.findings.empty());
  CHECK(report.panels.front().at[kHigh].width == report.panels.front().at[kBuild].width);
  const Worked plain = work(cupboard({kOak}));
  CHECK(worked.assembly.pieces.back().blank == plain.assembly.pieces.back().blank);
  CHECK(check_job(worked.assembly, *its).size() == check_assembly(plain.assembly, Unit::mm).size());
}

TEST_CASE("A damper summer never leaves more room") {
  std::optional<SeasonReport> before;
  for (double high = 8; high <= 29; high += 0.5) {
    const SeasonReport now = seasons(cupboard({kOak, kGap, to_high(high)}));
    if (before) {
      CHECK(now.panels.front().at[kHigh].gap <= before->panels.front().at[kHigh].gap);
      CHECK(now.leaves.front().at[kHigh].gaps.left <= before->leaves.front().at[kHigh].gaps.left);
      CHECK(now.leaves.front().at[kHigh].gaps.head <= before->leaves.front().at[kHigh].gaps.head);
    }
    before = now;
  }
}

TEST_CASE("Another wood for the panel moves the panel and nothing else") {
  const SeasonReport oak = seasons(cupboard({kOak, kYear, kGap}));
  const SeasonReport mixed = seasons(
      cupboard({R"("species": {"frame": "white oak", "panel": "black walnut"})", kYear, kGap}));
  CHECK(mixed.panels.front().at[kHigh].width < oak.panels.front().at[kHigh].width);
  CHECK(mixed.leaves.front().at[kHigh].width == oak.leaves.front().at[kHigh].width);
  CHECK(mixed.tenons.front().width == oak.tenons.front().width);
  const SeasonReport swapped = seasons(
      cupboard({R"("species": {"frame": "black walnut", "panel": "white oak"})", kYear, kGap}));
  CHECK(swapped.panels.front().at[kHigh].width == oak.panels.front().at[kHigh].width);
  CHECK(swapped.leaves.front().at[kHigh].width < oak.leaves.front().at[kHigh].width);
}

TEST_CASE("Quarter-sawn panels move by the radial figure; mixed ones by the larger of the two") {
  const auto width = [](std::string_view grain) {
    return seasons(cupboard({kOak, kYear, kGap, grain})).panels.front().at[kHigh].width;
  };
  // White oak: 0.0018 along its rays.
  CHECK(about(width(R"("grain": {"panel": "quarter-sawn"})"), 294 * 1.009));
  CHECK(width(R"("grain": "mixed")") == width(R"("grain": "flat-sawn")"));
}

TEST_CASE("A gap that is left open is made large enough for the wettest season") {
  const std::string spec = cupboard({kOak, R"("moisture": {"low": 6, "build": 8, "high": 14})"});
  const Worked worked = work(spec);
  // With 3 mm the panel would stand 0.1 short of room: 294 x 0.0219 / 2 - 10 x 0.0219 = 3.0003.
  CHECK(assumed(worked, "panel.gap.across_grain") == std::vector{mm(3.5)});
  CHECK(reasons(worked, "panel.gap.across_grain").front() == "so that the panel has room at 14 %");
  CHECK(fails(seasons(spec)).empty());
  // What the spec gives stays.
  const std::string given = cupboard({kOak, kGap, to_high(14)});
  CHECK(assumed(work(given), "panel.gap.across_grain").empty());
  CHECK(has_fail(seasons(given), "panel-room"));
}

TEST_CASE("A gap that is left open is made small enough for the driest season") {
  const std::string spec =
      door_spec(R"("units": "mm", "opening": {"width": 604, "height": 604}, "clearance": 2,
                   "stile_width": 60, "rail_widths": [60, 60], "panels": 1, "groove_depth": 9)",
                R"("species": "white oak", "moisture": {"low": 5, "build": 10, "high": 10})");
  // 492 wide, it shrinks by 4.5 at each side, and 1.5 of 6 mm of bite are left. With 1.5 mm less
  // gap it would be 495 wide, and keep 2.97.
  CHECK(assumed(work(spec), "panel.gap.across_grain") == std::vector{mm(1)});
  CHECK(fails(seasons(spec)).empty());
}

TEST_CASE("What there is no effort left for is not told as of no help") {
  std::string shallow = cupboard({kOak, R"("moisture": {"low": 5, "build": 9, "high": 14})"});
  shallow.replace(shallow.find("\"groove_depth\": 10"), 18, "\"groove_depth\": 7");
  const auto its = job(shallow);
  const auto findings = check_job(work(*its).assembly, *its);
  const SeasonRemedies none = find_season_remedies(*its, findings, 1, 0);
  CHECK(none.tried.empty());
  CHECK_FALSE(none.all_tried);
}

TEST_CASE("What helps a panel that does not bear its seasons was tried") {
  std::string shallow = cupboard({kOak, R"("moisture": {"low": 5, "build": 9, "high": 14})"});
  shallow.replace(shallow.find("\"groove_depth\": 10"), 18, "\"groove_depth\": 7");
  const auto its = job(shallow);
  const auto findings = check_job(work(*its).assembly, *its);
  const SeasonRemedies found = find_season_remedies(*its, findings);
  CHECK(found.all_tried);
  const std::vector<SeasonRemedy>& remedies = found.tried;
  REQUIRE(remedies.size() == 5);
  CHECK(remedies[0].key == "groove_depth");
  CHECK(remedies[0].helps);
  CHECK(remedies[1].key == "grain.panel");
  CHECK(remedies[1].to == "quarter-sawn");
  CHECK(remedies[2].key == "panels.across");
  CHECK(remedies[2].to == "2");
  // The deeper groove, written into the spec, is as good as told.
  std::string mended = shallow;
  mended.replace(mended.find("\"groove_depth\": 7"), 17,
                 "\"groove_depth\": \"" + remedies[0].to + "\"");
  for (const std::string& name : fails(seasons(mended)))
    CHECK(name.substr(0, 5) != "panel");
}

TEST_CASE("Every rule of moved wood is seen to hold and seen to be broken") {
  // Wide rails and a muntin; rails quarter-sawn, so that they thicken more than the stiles.
  const std::string rough = door_spec(
      R"("units": "mm", "opening": {"width": 902, "height": 1302}, "clearance": 1, "thickness": 60,
         "stile_width": 150, "rail_widths": [150, 300, 300], "panels": {"across": 2},
         "fit_allowance": 0.05)",
      R"("species": "white oak", "grain": {"rail": "quarter-sawn", "muntin": "quarter-sawn"},
         "moisture": {"low": 4, "build": 10, "high": 18})");
  const std::string calm = cupboard({kOak, kGap, to_high(9)});
  for (const std::string_view check :
       {"opening-left", "opening-right", "opening-head", "opening-foot", "edge-swell",
        "cheek-swell", "shoulder-move"}) {
    INFO(check);
    const auto has = [check](const SeasonReport& report, bool ok) {
      return std::any_of(report.findings.begin(), report.findings.end(), [&](const Finding& it) {
        return it.rule->check == check && (it.status == Status::ok) == ok;
      });
    };
    CHECK(has(seasons(rough), false));
    CHECK(has(seasons(calm), true));
    CHECK_FALSE(has(seasons(calm), false));
  }
}

TEST_CASE("Moisture may be given as the air of a room") {
  const Season season =
      *job(cupboard(
               {kOak,
                R"("moisture": {"low": {"temperature": 70, "humidity": 30, "degrees": "fahrenheit"},
                        "build": {"temperature": 21, "humidity": 45}, "high": 13})"}))
           ->season;
  CHECK(std::abs(season.moisture.build - 8.46) < 0.01);
  CHECK(std::abs(season.moisture.low - 6.17) < 0.01);
}

TEST_CASE("A shop file adds woods and overrules printed ones") {
  const ShopDefaults own = shop(
      R"({"woods": [{"name": "white oak", "radial": 0.001, "tangential": 0.002},
                    {"name": "mill elm", "radial": 0.003, "tangential": 0.004}]})");
  CHECK(about(seasons(cupboard({kOak, kYear, kGap}), &own).panels.front().at[kHigh].width,
              294 * 1.01));
  CHECK(about(seasons(cupboard({R"("species": "mill elm")", kYear, kGap}), &own)
                  .panels.front()
                  .at[kHigh]
                  .width,
              294 * 1.02));
}

TEST_CASE("Movement without a wood whose figures are known is refused") {
  CHECK(refusal(cupboard({kYear})) ==
        ": \"species\" is missing; wood moves by its species, so write it, such as "
        "\"species\": \"white oak\"");
  CHECK(refusal(cupboard({kYear, R"("species": "white oka")"})) ==
        "/species: \"white oka\" is no wood whose movement is known; did you mean \"Oak, "
        "white\"?");
  const ShopDefaults own = shop(R"({"woods": [{"name": "mill elm", "gravity_12": 0.6}]})");
  CHECK(refusal(cupboard({kYear, R"("species": "mill elm")"}), &own).find("no figures") !=
        std::string::npos);
}

}  // namespace haunch::test
