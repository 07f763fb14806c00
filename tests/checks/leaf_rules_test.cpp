// Rules of a whole leaf: what it serves, how large it is, its rails and stiles, its stubs.
#include "checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::vector<Finding> findings(const std::string& spec) {
  const auto its = job(spec);
  return check_job(work(*its).assembly, *its);
}

/// The names of the checks that are not ok, each once.
std::string doubts(const std::string& spec) {
  std::string text;
  for (const Finding& finding : findings(spec)) {
    const std::string name(finding.rule->check);
    if (finding.status != Status::ok && text.find(name) == std::string::npos)
      text += (text.empty() ? "" : " ") + name;
  }
  return text;
}

bool is_doubted(const std::string& spec, std::string_view check) {
  for (const Finding& finding : findings(spec))
    if (finding.rule->check == check && finding.status != Status::ok) return true;
  return false;
}

std::string opening(std::string_view unit, double width, double height,
                    std::string_view more = {}) {
  return R"({"kind": "door", "units": ")" + std::string(unit) + R"(", "opening": {"width": )" +
         std::to_string(width) + R"(, "height": )" + std::to_string(height) + "}" +
         std::string(more) + "}";
}

}  // namespace

TEST_CASE("A spec that states nothing but its opening prints no caution") {
  for (double width = 310; width <= 910; width += 150)
    for (double height = 310; height <= 2140; height += 183) {
      const std::string spec = opening("mm", width, height);
      INFO(spec);
      CHECK(doubts(spec).empty());
      CHECK(job(spec)->work().cautions.empty());
    }
  for (double width = 12; width <= 35.5; width += 4.75)
    for (double height = 12; height <= 84; height += 5.25) {
      const std::string spec = opening("in", width, height);
      INFO(spec);
      CHECK(doubts(spec).empty());
    }
}

TEST_CASE("A rail is a lock rail by its place and its lock, not by its name") {
  const auto rails = [](std::string_view name, std::string_view more = {}) {
    return house_mm(R"("rail_widths": [100, {"width": 150, "name": ")" + std::string(name) +
                    R"(", "top": 1150}, 200])" + std::string(more));
  };
  constexpr std::string_view kCheck = "lock-rail-height";
  CHECK(is_doubted(rails("lock rail"), kCheck));
  CHECK(is_doubted(rails("middle rail"), kCheck));
  CHECK(is_doubted(rails("belt"), kCheck));
  // The lock says which rail is its own; it is below this one.
  const std::string lock =
      R"(, "lock": {"height": 900, "case": {"height": 100, "depth": 60, "thickness": 12}})";
  CHECK_FALSE(is_doubted(rails("lock rail", lock), kCheck));
  // A cabinet has none.
  CHECK_FALSE(is_doubted(rails("lock rail", R"(, "use": "cabinet")"), kCheck));
}

TEST_CASE("A cabinet door over 60 in has a middle rail") {
  const auto wardrobe = [](std::string_view rails) {
    return opening("mm", 500, 1900, R"(, "use": "cabinet", "rail_widths": )" + std::string(rails));
  };
  CHECK(is_doubted(wardrobe("[60, 70]"), "cabinet-middle-rail"));
  CHECK_FALSE(is_doubted(wardrobe("[60, 60, 70]"), "cabinet-middle-rail"));
  CHECK_FALSE(is_doubted(opening("mm", 500, 1500), "cabinet-middle-rail"));
}

TEST_CASE("A leaf is as thick as its size and its place ask for") {
  const std::string thin = R"(, "thickness": 35, "groove_depth": 10)";
  CHECK_FALSE(is_doubted(opening("mm", 820, 2040, thin), "leaf-thickness"));
  CHECK(is_doubted(opening("mm", 930, 2040, thin), "leaf-thickness"));
  CHECK(is_doubted(opening("mm", 820, 2240, thin), "leaf-thickness"));
  const auto outside = [](std::string_view thickness) {
    return R"({"kind": "doorset", "units": "mm", "frame": {"leaf": {"width": 826, "height": 2040},
      "exterior": true}, "leaf": {"thickness": )" +
           std::string(thickness) + "}}";
  };
  CHECK(is_doubted(outside("40"), "outside-thickness"));
  CHECK_FALSE(is_doubted(outside("44"), "outside-thickness"));
}

TEST_CASE("An accessible leaf is smooth for 10 in above the floor") {
  const auto foot = [](std::string_view width) {
    return opening(
        "mm", 930, 2060,
        R"(, "accessible": true, "rail_widths": [100, 150, )" + std::string(width) + "]");
  };
  CHECK(is_doubted(foot("230"), "smooth-bottom"));
  CHECK_FALSE(is_doubted(foot("250"), "smooth-bottom"));  // and 10 below it
  CHECK_FALSE(is_doubted(opening("mm", 930, 2060), "smooth-bottom"));
}

TEST_CASE("A stile has room for a hinge cup where its leaf lies over its opening") {
  const auto stile = [](std::string_view width) {
    return opening("mm", 400, 600,
                   R"(, "meets": "overlay", "lap": 12, "stile_width": )" + std::string(width));
  };
  CHECK(is_doubted(stile("36"), "stile-for-cups"));
  CHECK_FALSE(is_doubted(stile("45"), "stile-for-cups"));
}

TEST_CASE("A leaf beyond what is hung is doubted, beyond any lumber it fails") {
  const auto worst = [](const std::string& spec, std::string_view check) {
    Status status = Status::ok;
    for (const Finding& finding : findings(spec))
      if (finding.rule->check == check) status = std::max(status, finding.status);
    return status;
  };
  CHECK(worst(opening("mm", 1210, 2060), "hung-width") == Status::ok);
  CHECK(worst(opening("mm", 1400, 2060), "hung-width") == Status::caution);
  CHECK(worst(opening("mm", 52000, 2060), "hung-width") == Status::fail);
  CHECK(worst(opening("mm", 930, 3200), "hung-height") == Status::caution);
  CHECK(worst(opening("mm", 930, 7000), "hung-height") == Status::fail);
}

TEST_CASE("Stubs hold a cabinet door, and are told of in a house door") {
  constexpr std::string_view kStub = R"(, "groove_depth": 12, "tenon_depth": 11.5)";
  CHECK(is_doubted(opening("mm", 930, 2060, kStub), "stub-depth"));
  CHECK(is_doubted(opening("mm", 400, 700, kStub), "stub-depth"));
  // Board is glued in all round.
  CHECK_FALSE(
      is_doubted(opening("mm", 400, 700,
                         std::string(kStub) + R"(, "panel": {"kind": "board", "thickness": 6})"),
                 "stub-depth"));
  CHECK(is_doubted(opening("mm", 400, 700, R"(, "groove_depth": 12, "tenon_depth": 12)"),
                   "stub-bottom"));
  CHECK_FALSE(is_doubted(opening("mm", 400, 700, kStub), "stub-bottom"));
  // Its shoulders are those of any tenon: a thin one in thick stock is told of.
  CHECK(is_doubted(opening("mm", 930, 2060, std::string(kStub) + R"(, "mortise": {"width": 8})"),
                   "tenon-thickness"));
}

}  // namespace haunch::test
