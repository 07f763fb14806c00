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

/// Leaves of 300 to 1000 mm by 300 to 2150, their openings a little more.
TEST_CASE("A spec that states nothing but its opening prints no caution") {
  const auto is_plain = [](const std::string& spec) {
    INFO(spec);
    CHECK(doubts(spec).empty());
    CHECK(job(spec)->work().cautions.empty());
  };
  for (const double width : {304, 377, 481, 599, 640, 703, 799, 911, 920, 1006})
    for (const double height : {304, 450, 617, 800, 1001, 1250, 1399, 1524, 1525, 1640, 1801, 1999,
                                2060, 2133, 2134, 2163})
      is_plain(opening("mm", width, height));
  for (const double width : {12.0, 15.375, 20.5, 24.0, 28.25, 32.0, 35.875, 36.0, 39.5})
    for (const double height :
         {12.0, 19.5, 30.0, 40.25, 48.0, 55.5, 60.0, 60.125, 66.75, 72.0, 78.5, 80.0, 84.0, 85.0})
      is_plain(opening("in", width, height));
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
  CHECK(doubts(opening("mm", 500, 1900, R"(, "use": "cabinet")")).empty());
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

TEST_CASE("Stubs hold a small cabinet door, or one with board glued in, and no house door") {
  const auto leaf = [](double width, double height, std::string_view more) {
    return opening("mm", width, height,
                   R"(, "groove_depth": 10, "tenon_depth": 9.5)" + std::string(more));
  };
  CHECK(doubts(leaf(400, 700, "")).empty());
  // 600 x 1238 is 0.7428 m2 of 0.7432.
  CHECK(doubts(leaf(604, 1242, "")).empty());
  CHECK(doubts(leaf(604, 1243, "")) == "stub-depth");
  CHECK(doubts(opening("in", 24.125, 48.125, R"(, "groove_depth": 0.375, "tenon_depth": 0.359375)"))
            .empty());
  CHECK(doubts(opening("mm", 604, 1243, R"(, "groove_depth": 20, "tenon_depth": 19)")).empty());
  CHECK(doubts(leaf(900, 1400, R"(, "panel": {"kind": "board", "thickness": 6})")).empty());
  CHECK(is_doubted(leaf(930, 2060, ""), "stub-depth"));
  CHECK(is_doubted(leaf(930, 2060, R"(, "panel": {"kind": "board", "thickness": 14})"),
                   "stub-depth"));
  // Of the muntin of a house door that is tenoned no more is asked.
  CHECK_FALSE(is_doubted(opening("mm", 930, 2060,
                                 R"(, "panels": {"across": 2}, "groove_depth": 12,
                                     "tenon": {"muntin_depth": 11.5})"),
                         "stub-depth"));
}

TEST_CASE("A stub has room below it, and is as thick as a tenon") {
  const auto leaf = [](double width, double height, std::string_view depth) {
    return opening("mm", width, height,
                   R"(, "groove_depth": 10, "tenon_depth": )" + std::string(depth));
  };
  CHECK(doubts(leaf(400, 700, "10")) == "stub-bottom");
  CHECK(doubts(leaf(400, 700, "9.6")).empty());
  CHECK(is_doubted(leaf(930, 2060, R"(9.5, "mortise": {"width": 8})"), "tenon-thickness"));
}

}  // namespace haunch::test
