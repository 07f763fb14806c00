// Solid panels over a usual year, where nothing is said of moisture.
#include "checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A leaf of which one panel is some 27 in wide.
std::string wide(std::string_view more) {
  return R"({"kind": "door", "units": "in", "opening": {"width": 36, "height": 80})" +
         std::string(more) + "}";
}

/// The worst of a check, and of how many it was told.
std::pair<Status, int> told(const std::string& spec, std::string_view check) {
  const auto its = job(spec);
  std::pair<Status, int> found{Status::ok, 0};
  for (const Finding& finding : check_job(work(*its).assembly, *its)) {
    if (finding.rule->check != check) continue;
    found.first = std::max(found.first, finding.status);
    ++found.second;
  }
  return found;
}

constexpr std::string_view kOak = R"(, "species": "white oak")";
constexpr std::string_view kTight = R"(, "panel": {"gap": "1/8"})";

}  // namespace

TEST_CASE("A wide panel with a small gap does not bear a usual year, and that is told") {
  CHECK(told(wide(std::string(kOak) + std::string(kTight)), "panel-season").first ==
        Status::caution);
  // Without a wood there is nothing to tell by; with moisture the seasons tell.
  CHECK(told(wide(kTight), "panel-season").second == 0);
  CHECK(told(wide(std::string(kOak) + std::string(kTight) + R"(, "moisture": {"build": 8})"),
             "panel-season")
            .second == 0);
}

TEST_CASE("Where the gap is left open it follows width and sawing") {
  const auto gap = [](std::string_view more) {
    const std::string spec = wide(more);
    CHECK(told(spec, "panel-season").first == Status::ok);
    CHECK(told(spec, "panel-season-bite").first == Status::ok);
    const Assembly wood = work(spec).assembly;
    return *joint(wood, "left stile", "panel, tier 1").design.bottom;
  };
  CHECK(gap("") == inch(0, 1, 8));
  const Length flat = gap(kOak);
  const Length quarter = gap(std::string(kOak) + R"(, "grain": "quarter-sawn")");
  // 27.6 x 4 x 0.0018 = 0.199, half of it less than the usual gap.
  CHECK(quarter == inch(0, 1, 8));
  // 27 in and more, 4 % up: 27.6 x 4 x 0.00365 = 0.403, half of it at each side.
  CHECK(flat >= inch(0, 12, 64));
  CHECK(flat <= inch(0, 14, 64));
}

TEST_CASE("What was taken for a usual year is listed") {
  const auto its = job(wide(kOak));
  std::string keys;
  for (const Assumed& each : its->assumed_season)
    keys += each.key + " ";
  CHECK(keys == "grain moisture ");
  CHECK(job(wide(""))->assumed_season.empty());
}

}  // namespace haunch::test
