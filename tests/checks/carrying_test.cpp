// Whether work goes by the way to its place, by boxes that can be worked by hand.
#include "carrying.h"

#include <cmath>
#include <map>

#include "checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

Triple size(double a, double b, double c) {
  return {mm(a), mm(b), mm(c)};
}

/// To a tenth of a millimetre.
double room(const Passing& passing) {
  return std::round(static_cast<double>(passing.room.steps()) / 160'000) / 10;
}

const DoorOnTheWay kDoor{mm(800), mm(1980)};

}  // namespace

TEST_CASE("Through a door goes what is narrow enough upright, whichever way it is turned") {
  CHECK(room(through_door(size(900, 720, 560), kDoor)) == 240);
  CHECK(through_door(size(2200, 924, 44), kDoor).goes());
  CHECK_FALSE(through_door(size(900, 900, 900), kDoor).goes());
  CHECK(room(through_door(size(900, 900, 900), kDoor)) == -100);
}

TEST_CASE("A panel that is too wide for the height goes through a wide door tilted") {
  // Of 2100 x 100 in a height of 1980: (2 p q H + (p2 - q2) sqrt(p2 + q2 - H2)) / (p2 + q2) =
  // 891.77.
  const Triple box = size(2100, 2100, 100);
  CHECK(room(through_door(box, {mm(950), mm(1980)})) == 58.2);
  CHECK(through_door(box, {mm(950), mm(1980)}).tilted);
  CHECK(room(through_door(box, kDoor)) == -91.8);
}

TEST_CASE(
    "Round a square landing goes what is 2.83 times as long as it is wide, less twice its own") {
  // Under a headroom that lets nothing be raised: level, on the side that is 500.
  const StairOnTheWay stair{mm(1000), mm(1000), mm(500)};
  CHECK(room(round_stair(size(2000, 500, 300), stair)) == 228.4);
  CHECK_FALSE(round_stair(size(2300, 500, 300), stair).goes());
}

TEST_CASE("Under a high ceiling a long box is raised at one end") {
  const StairOnTheWay low{mm(900), mm(900), mm(600)}, high{mm(900), mm(900), mm(2200)};
  const Triple box = size(2300, 500, 300);
  CHECK_FALSE(round_stair(box, low).goes());
  CHECK(round_stair(box, high).goes());
  CHECK(round_stair(box, high).tilted);
}

TEST_CASE("In a lift a box stands, or leans") {
  const LiftOnTheWay lift{mm(1000), mm(1200), mm(2100)};
  CHECK(in_lift(size(900, 2000, 600), lift).goes());
  CHECK_FALSE(in_lift(size(900, 2000, 600), lift).tilted);
  CHECK(in_lift(size(2200, 800, 30), lift).goes());
  CHECK(in_lift(size(2200, 800, 30), lift).tilted);
  CHECK_FALSE(in_lift(size(2200, 1100, 1100), lift).goes());
}

TEST_CASE("A case that does not go fails its check, and its pieces are looked at") {
  const std::string spec =
      R"({"kind": "cabinet", "units": "mm", "species": "European oak",
          "size": {"width": 1200, "height": 1100, "depth": 900},
          "access": {"door": {"width": 800, "height": 1980}}})";
  const auto its = job(spec);
  const Assembly wood = work(*its).assembly;
  const std::vector<Carried> all = carried(wood, *its);
  REQUIRE(all.size() == 1);
  CHECK(all.front().name == "case");
  CHECK_FALSE(all.front().goes());
  CHECK(all.front().pieces_go);
}

TEST_CASE("Each rule of the way holds of a case that goes, and is broken by one that does not") {
  const auto told = [](double width) {
    const auto its =
        job(R"({"kind": "cabinet", "units": "mm", "species": "European oak", "size": {"width": )" +
            std::to_string(width) + R"(, "height": 1100, "depth": 900},
            "access": {"door": {"width": 950, "height": 1000}, "stair": {"width": 1000},
                       "lift": {"width": 1000, "depth": 1000, "height": 1200}}})");
    const Assembly wood = work(*its).assembly;
    std::map<std::string, Status> all;
    for (const Finding& finding : check_job(wood, *its))
      if (finding.rule->check.starts_with("way-"))
        all[std::string(finding.rule->check)] = finding.status;
    return all;
  };
  using Told = std::map<std::string, Status>;
  CHECK(told(600) == Told{{"way-through-door", Status::ok},
                          {"way-round-stair", Status::ok},
                          {"way-in-lift", Status::ok}});
  CHECK(told(1500) == Told{{"way-through-door", Status::fail},
                           {"way-round-stair", Status::fail},
                           {"way-in-lift", Status::fail}});
}

TEST_CASE("What a door lacks is told to the step") {
  const auto its = job(
      R"({"kind": "cabinet", "units": "mm", "species": "European oak",
          "size": {"width": 1200, "height": 1100, "depth": 900},
          "access": {"door": {"width": 800, "height": 1980}}})");
  const auto findings = check_job(work(*its).assembly, *its);
  const auto finding = std::find_if(findings.begin(), findings.end(), [](const Finding& it) {
    return it.rule->check == "way-through-door";
  });
  REQUIRE(finding != findings.end());
  CHECK(finding->status == Status::fail);
  CHECK(finding->value == mm(-100));
}

TEST_CASE("Where no way is told nothing is asked of it") {
  const auto its = job(house_mm());
  CHECK(carried(work(*its).assembly, *its).empty());
}

TEST_CASE("What is too heavy for those who carry it is told") {
  const std::string leaf =
      R"("species": "European oak", "access": {"door": {"width": 800, "height": 1980})";
  const auto told = [](const std::string& spec) {
    const auto its = job(spec);
    return carrying_cautions(carried(work(*its).assembly, *its), *its).size();
  };
  CHECK(told(house_mm(leaf + "}")) == 1);
  CHECK(told(house_mm(leaf + R"(, "carry": 80})")) == 0);
}

}  // namespace haunch::test
