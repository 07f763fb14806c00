// Drawings and rods of runs: what is told along the wall adds up to it, in figures as drawn.
#include "run_views.h"

#include <algorithm>
#include <map>
#include <random>
#include <set>

#include "drawing_sheets.h"
#include "rods_report.h"
#include "runs.h"

namespace haunch::test {
namespace {

const LengthPrinter kShopMm(Unit::mm, kBenchLengths);

ItemReport report_of(std::unique_ptr<Job> job) {
  return *report_item(std::move(job), {.cutlist = true, .making = true}).report;
}

WholeView elevation_of(const ItemReport& item) {
  const AlongWall wall = as_run(*item.job)->along_wall();
  const std::vector<DrawnWood> woods = drawn_of(item.wood);
  return RunViews(item, wall, woods, kShopMm).at_scale({20}).front();
}

/// What its level dimensions say, from the left, line by line downwards.
std::vector<std::vector<Length>> level_chains(const Picture& picture) {
  std::map<double, std::map<double, Length>> lines;
  for (const Stroke& stroke : picture.strokes)
    if (stroke.mm)
      if (const SpotRun& run = stroke.runs.front(); run.front().v == run.back().v)
        lines[-run.front().v][std::min(run.front().u, run.back().u)] = *stroke.mm;
  std::vector<std::vector<Length>> chains;
  for (const auto& [v, links] : lines) {
    chains.emplace_back();
    for (const auto& [u, link] : links)
      chains.back().push_back(link);
  }
  return chains;
}

Length sum_of(const std::vector<Length>& links) {
  Length sum;
  for (const Length link : links)
    sum += link;
  return sum;
}

bool has(const Picture& picture, const std::string& words) {
  return std::any_of(picture.letterings.begin(), picture.letterings.end(),
                     [&](const Lettering& its) { return its.text == words; });
}

bool has_words(const WholeView& view, const std::string& words) {
  return std::any_of(view.words.begin(), view.words.end(),
                     [&](const std::string& its) { return its.find(words) != std::string::npos; });
}

Cabinets two_cases() {
  return Cabinets().with("b1", 600).with("b2", 900);
}

/// A wall out at its right end, and a gap.
constexpr std::string_view kCounter =
    R"("wall": {"lengths": [2190, 2160], "at": [0, 880]},
       "order": ["b1", {"gap": 600, "for": "oven", "front_height": 715}, "b2"])";

/// From one to five cabinets along a wall on which they may have room.
ItemReport random_run(std::mt19937& random) {
  const auto from = [&](int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
  };
  Cabinets cabinets;
  std::string order;
  const int number = from(1, 5);
  int taken = 0;
  for (int i = 0; i < number; ++i) {
    const int width = from(300, 900), gap = from(0, 3) == 0 ? from(300, 700) : 0;
    cabinets.with(fmt::format("b{}", i), width);
    order += fmt::format(R"({}"b{}")", i == 0 ? "" : ", ", i);
    if (gap > 0) order += fmt::format(R"(, {{"gap": {}, "for": "oven"}})", gap);
    taken += width + gap + 3;
  }
  const int lengths[] = {taken + from(30, 150), taken + from(30, 150), taken + from(30, 150)};
  return report_of(cabinets.job(fmt::format(
      R"("wall": {{"lengths": [{}, {}, {}], "at": [0, 900, 2100], "right": "{}"}}, "order": [{}]{})",
      lengths[0], lengths[1], lengths[2], from(0, 1) == 0 ? "wall" : "free", order,
      from(0, 1) == 0 ? R"(, "mirror": true)" : "")));
}

}  // namespace

TEST_CASE("The elevation tells fillers, cases and gaps along the wall where that is shortest") {
  const ItemReport run = report_of(two_cases().job(std::string(kCounter)));
  const WholeView view = elevation_of(run);
  CHECK(level_chains(view.picture) ==
        std::vector<std::vector<Length>>{{mm(30), mm(600), mm(600), mm(900), mm(30)}, {mm(2160)}});
  CHECK(has(view.picture, "oven"));
  CHECK(has(view.picture, "b2"));
  CHECK(has(view.picture, "2190 at 0"));
  // The filler stands above the toe, where the wall is out by less than at the floor.
  CHECK(has_words(view,
                  "filler 2, 56.6 wide, planed to the wall: 56.6 at 0 from its foot, 30 at "
                  "780"));
}

TEST_CASE("The twin of a run is drawn the other way round") {
  const ItemReport run = report_of(two_cases().job(std::string(kCounter) + R"(, "mirror": true)"));
  CHECK(level_chains(elevation_of(run).picture).front() ==
        std::vector{mm(30), mm(900), mm(600), mm(600), mm(30)});
}

TEST_CASE("A run that is too long is told by itself, beside the wall's length") {
  const ItemReport run = report_of(
      two_cases().job(R"("wall": {"lengths": 1400, "right": "free"}, "order": ["b1", "b2"])"));
  CHECK(level_chains(elevation_of(run).picture) ==
        std::vector<std::vector<Length>>{{mm(600), mm(3), mm(900)}, {mm(1400)}});
}

TEST_CASE("Chains of random runs add up to the wall as they are drawn") {
  std::mt19937 random(29);
  for (int time = 0; time < 25; ++time) {
    const ItemReport run = random_run(random);
    const AlongWall wall = as_run(*run.job)->along_wall();
    const auto chains = level_chains(elevation_of(run).picture);
    REQUIRE(chains.size() == 2);
    CHECK(sum_of(chains[0]) == wall.shortest_wall().length);
    CHECK(chains[1] == std::vector{wall.shortest_wall().length});
  }
}

TEST_CASE("All that is written of a run lies within its sheets") {
  std::mt19937 random(31);
  for (int time = 0; time < 6; ++time) {
    const ItemReport run = random_run(random);
    const Extent paper{{10, 10}, {200, 287}};
    for (const SheetPicture& sheet : drawing_sheets(run, kShopMm, *paper_called("a4")))
      for (const Lettering& lettering : sheet.picture.letterings) {
        INFO(sheet.title << ": " << lettering.text);
        CHECK(around(extent_of(lettering), paper).width() == paper.width());
        CHECK(around(extent_of(lettering), paper).height() == paper.height());
      }
  }
}

TEST_CASE("Each cabinet of a run has sheets of its own, and each piece is on one part's") {
  const ItemReport run = report_of(two_cases().job(std::string(kCounter)));
  std::set<std::string> heads;
  for (const SheetPicture& sheet : drawing_sheets(run, kShopMm, *paper_called("a4")))
    for (const std::string head : {"cabinet b1", "cabinet b2"})
      if (has(sheet.picture, head)) heads.insert(head);
  CHECK(heads.size() == 2);
}

TEST_CASE("The plan has cut-outs from the front and from where fixing begins") {
  const ItemReport run = report_of(two_cases().job(
      std::string(kCounter) +
      R"(, "worktop": {"thickness": 30, "cutouts": [{"over": "b2", "width": 560, "depth": 440,
                       "from_front": 60}]}, "void": 50)"));
  const AlongWall wall = as_run(*run.job)->along_wall();
  const WholeView plan = RunViews(run, wall, drawn_of(run.wood), kShopMm).at_scale({20}).back();
  // 30 + 600 + 600 + 900 / 2 - 560 / 2
  CHECK(has_words(plan,
                  "cut-out over b2: 560 x 440, 60 from the front edge, 1400 from the left "
                  "end, where fixing begins"));
  CHECK(has_words(plan, "behind the backs 50 is left for services"));
}

TEST_CASE(
    "The rod along the wall has all that stands there, and where the wall is at each height") {
  const ItemRods rods = rods_of(report_of(two_cases().job(std::string(kCounter))));
  const Rod& along = rods.rods.front();
  CHECK(along.length == mm(2160));
  const auto at = [&](const std::string& what) {
    for (const RodMark& mark : along.marks)
      for (const RodName& name : mark.names)
        if (name.what == what) return mark.at;
    return mm(-9999);
  };
  CHECK(at("b1, left end") == mm(30));
  CHECK(at("gap for the oven begins") == mm(630));
  CHECK(at("b2, right end") == mm(2130));
  CHECK(at("wall, 0 mm above the floor") == mm(2190));
  CHECK(at("wall, 880 mm above the floor") == mm(2160));
}

TEST_CASE("A cabinet's rods in a run are those that it has by itself") {
  const ItemRods in_run = rods_of(report_of(two_cases().job(std::string(kCounter))));
  const ItemRods alone =
      rods_of(report_of(read_job(value_of(case_of("b2", 900)), nullptr, "b2").job));
  std::vector<const Rod*> its;
  for (const Rod& rod : in_run.rods)
    if (rod.of == "b2") its.push_back(&rod);
  REQUIRE(its.size() == alone.rods.size());
  for (std::size_t i = 0; i < its.size(); ++i) {
    std::vector<Length> here, there;
    for (const RodMark& mark : its[i]->marks)
      here.push_back(mark.at);
    for (const RodMark& mark : alone.rods[i].marks)
      there.push_back(mark.at);
    CHECK(here == there);
  }
}

}  // namespace haunch::test
