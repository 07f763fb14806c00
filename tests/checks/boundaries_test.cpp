// Runs beside walls: what is too long, and fronts on their way.
#include "boundaries.h"

#include <fmt/format.h>

#include <algorithm>
#include <random>
#include <stdexcept>
#include <string>
#include <vector>

#include "checks.h"
#include "runs.h"

namespace haunch::test {
namespace {

Cabinets doors(const std::string& left_hangs, const std::string& right_hangs) {
  const auto door = [](const std::string& hangs) {
    return fmt::format(R"("layout": {{"front": "door", "hangs": "{}"}})", hangs);
  };
  return Cabinets().with("b1", 500, door(left_hangs)).with("b2", 500, door(right_hangs));
}

std::vector<Finding> checked(const Job& run) {
  return check_built(work(run).assembly, run);
}

/// The worst of a check.
Finding worst_of(const std::vector<Finding>& all, std::string_view check) {
  const Finding* worst = nullptr;
  for (const Finding& it : all)
    if (it.rule->check == check && (worst == nullptr || it.status > worst->status)) worst = &it;
  if (worst == nullptr) throw std::invalid_argument("no check: " + std::string(check));
  return *worst;
}

Finding worst_of(const Cabinets& cabinets, const std::string& keys, std::string_view check) {
  return worst_of(checked(*cabinets.job(keys)), check);
}

const std::string kBoth = R"("order": ["b1", "b2"])";

}  // namespace

TEST_CASE("A filler that is planed to its wall meets it all along") {
  const Finding room = worst_of(
      doors("left", "left"),
      R"("wall": {"lengths": [1073, 1063, 1043], "at": [0, 400, 880], "right": "free"}, )" + kBoth,
      "wall-left");
  CHECK(room.value == Length());
  CHECK(room.status == Status::ok);
}

TEST_CASE("A run too long for its wall by 30 mm stands so far in it") {
  const Finding room = worst_of(
      doors("left", "left"), R"("wall": {"lengths": 973, "right": "free"}, )" + kBoth, "wall-left");
  CHECK(room.value == mm(-30));
  CHECK(room.status == Status::fail);
}

TEST_CASE("Between two free ends, and between two walls, it goes beyond the right one") {
  for (const std::string ends : {"free", "wall"})
    CHECK(worst_of(
              doors("left", "left"),
              fmt::format(R"("wall": {{"lengths": 973, "left": "{0}", "right": "{0}"}}, )", ends) +
                  kBoth,
              "wall-right")
              .value == mm(-30));
}

TEST_CASE("What is open beside a wall is told, as no filler closes it") {
  const Finding room =
      worst_of(doors("left", "left"), R"("wall": {"lengths": 1008, "right": "free"}, )" + kBoth,
               "wall-left");
  CHECK(room.value == mm(5));
  CHECK(room.status == Status::caution);
}

TEST_CASE("A handle comes past the wall where the filler is as wide as it stands out") {
  const auto past = [](int length) {
    return worst_of(doors("left", "left"),
                    fmt::format(R"("wall": {{"lengths": {}, "right": "free"}}, )", length) + kBoth,
                    "handle-past")
        .status;
  };
  CHECK(past(1003 + 15) == Status::caution);
  CHECK(past(1003 + 50) == Status::ok);
}

TEST_CASE("A filler is neither too wide to look at nor too narrow to plane") {
  const auto is = [](int length, std::string_view check) {
    return worst_of(
               doors("left", "left"),
               fmt::format(R"("wall": {{"lengths": {}, "right": "free"}}, "scribe": 5, )", length) +
                   kBoth,
               check)
        .status;
  };
  CHECK(is(1003 + 11, "filler-least") == Status::caution);
  CHECK(is(1003 + 12, "filler-least") == Status::ok);
  CHECK(is(1003 + 150, "filler-width") == Status::ok);
  CHECK(is(1003 + 151, "filler-width") == Status::caution);
}

TEST_CASE("Nothing stands in the place of a machine, and no front comes into it") {
  const auto run =
      Cabinets()
          .with("b1", 500, R"("layout": {"rows": [{"front": "drawer"}, {"front": "door"}]})")
          .job(R"("wall": {"lengths": 500, "left": "free", "right": "free"}, "order": ["b1"])");
  const Assembly wood = work(*run).assembly;
  // A pillar 100 deep, before all of the case or beside it, from so far behind its front edges.
  const auto beside = [&](double left, double front, std::string_view check) {
    const Prism shape{1,
                      mm(0),
                      mm(900),
                      {{mm(left), mm(front)},
                       {mm(left + 600), mm(front)},
                       {mm(left + 600), mm(front + 100)},
                       {mm(left), mm(front + 100)}}};
    Bench bench = bench_of(wood, Unit::mm);
    check_boundaries(bench, {{{"pillar", shape}}, mm(35)});
    return worst_of(bench.findings, check).status;
  };
  CHECK(beside(510, 0, "place-clear") == Status::ok);
  CHECK(beside(490, 0, "place-clear") == Status::fail);
  CHECK(beside(510, -300, "slide-past") == Status::ok);
  CHECK(beside(0, -300, "slide-past") == Status::fail);
  CHECK(beside(510, -300, "swing-past") == Status::ok);
  CHECK(beside(0, -300, "swing-past") == Status::fail);
}

TEST_CASE("The handles of doors that open towards each other meet") {
  const std::string keys = R"("wall": {"lengths": 1053, "right": "free"}, )" + kBoth;
  CHECK(worst_of(doors("right", "left"), keys, "open-together").status == Status::caution);
  CHECK(worst_of(doors("left", "right"), keys, "open-together").status == Status::ok);
}

TEST_CASE("Random runs with room at their walls have nothing that fails, every front opened") {
  std::mt19937 random(19);
  const auto from = [&](int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random);
  };
  const std::string layouts[] = {
      R"({"front": "door"})", R"({"front": "door", "hangs": "right"})", R"({"front": "pair"})",
      R"({"rows": [{"front": "drawer"}, {"front": "drawer"}]})",
      R"({"rows": [{"front_height": 140, "front": "drawer"}, {"front": "door"}]})"};
  for (int time = 0; time < 12; ++time) {
    Cabinets cabinets;
    std::string order;
    int wide = 0;
    const int number = from(1, 4);
    for (int i = 0; i < number; ++i) {
      const int width = from(400, 800);
      cabinets.with(fmt::format("b{}", i), width,
                    R"("layout": )" + layouts[static_cast<std::size_t>(from(0, 4))]);
      order += fmt::format(R"({}"b{}")", i == 0 ? "" : ", ", i);
      wide += width + 3;
    }
    const auto run = cabinets.job(
        fmt::format(R"("wall": {{"lengths": [{}, {}, {}], "at": [0, 900, 2100]}}, "order": [{}])",
                    wide + from(60, 130), wide + from(60, 130), wide + from(60, 130), order));
    INFO(order);
    std::vector<std::string> fails;
    for (const Finding& it : checked(*run))
      if (it.status == Status::fail) fails.emplace_back(it.rule->check);
    CHECK(fails == std::vector<std::string>());
  }
}

}  // namespace haunch::test
