// Inside corners: what opens beside the other run's fronts passes their handles, or does not.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "checks.h"
#include "runs.h"

namespace haunch::test {
namespace {

const std::string kDrawers = R"("layout": {"front": "drawer"})";

/// A run beside whose fronts another begins at its left: a door's handle stands there, beside its
/// blind part.
Cabinets corner_of(int blind_filler, const std::string& more = {}) {
  return Cabinets()
      .with("drawers", 500, kDrawers)
      .with("deep", 1100,
            fmt::format(R"("blind": {{"side": "right", "width": 560, "filler": {}}},
                           "layout": {{"front": "door"}})",
                        blind_filler))
      .with_run("south", R"("wall": {"lengths": 1105, "left": "free"}, "order": ["deep"])" + more);
}

Length worst(const Cabinets& cabinets, int filler, std::string_view check,
             const std::string& more = {}) {
  const auto run = cabinets.job(fmt::format(
      R"("wall": {{"lengths": 1500}}, "corner": {{"left": "south"}},
         "order": [{{"filler": {}}}, "drawers"]{})",
      filler, more));
  Length most;
  for (const Finding& it : check_built(work(*run).assembly, *run))
    if (it.rule->check == check) most = std::max(most, it.value);
  return most;
}

}  // namespace

TEST_CASE("A drawer that meets a handle in the corner is short of so much filler") {
  // The other run's door stands 20 before its case, its handle 35 before that; the drawer's front
  // ends 1.5 beside its filler.
  for (const int filler : {30, 45, 53}) {
    INFO(filler);
    CHECK(worst(corner_of(60), filler, "corner-opens") == mm(55 - 1.5 - filler));
  }
  CHECK(worst(corner_of(60), 54, "corner-opens") == Length());
}

TEST_CASE("Without handles it passes beside the fronts alone") {
  const Cabinets bare = corner_of(60, R"(, "handle": 0)");
  CHECK(worst(bare, 18, "corner-opens") == mm(0.5));
  CHECK(worst(bare, 19, "corner-opens") == Length());
}

TEST_CASE("Fronts of the run that goes through pass the handles beside it") {
  CHECK(worst(corner_of(60), 60, "corner-passed") == Length());
  CHECK(worst(corner_of(20), 60, "corner-passed") > Length());
  CHECK(worst(corner_of(20), 60, "corner-passed", R"(, "handle": 0)") == Length());
}

TEST_CASE("Two runs do not stand in one place") {
  CHECK(worst(corner_of(60), 60, "corner-clear") == Length());
  // Between two that go through there is room for 1500 - 2 * 560, and 54 + 500 + 60 stand there.
  Cabinets both = corner_of(60);
  both.with_run("west", R"("wall": {"lengths": 1105}, "order": ["deep"])");
  const auto run = both.job(R"("wall": {"lengths": 1500}, "corner": {"left": "south",
                               "right": "west"}, "order": [{"filler": 54}, "drawers",
                               {"filler": 60}])");
  Length most;
  for (const Finding& it : check_built(work(*run).assembly, *run))
    if (it.rule->check == "corner-clear") most = std::max(most, it.value);
  CHECK(most > Length());
}

TEST_CASE("The twins of both runs meet as they do") {
  const std::string twin = R"(, "mirror": true)";
  CHECK(worst(corner_of(60), 45, "corner-opens", twin) == worst(corner_of(60), 45, "corner-opens"));
  CHECK(worst(corner_of(20), 60, "corner-passed", twin) ==
        worst(corner_of(20), 60, "corner-passed"));
}

}  // namespace haunch::test
