// Random frames and sets: what is not refused goes together, and the way from the wall to the leaf
// leads back.
#include <fmt/format.h>

#include <set>

#include "checks.h"
#include "frame_draw.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// What depends on sizes alone, not on how well they were chosen, and so must never fail.
const std::set<std::string_view> kMustHold = {
    "fouling",      "frame-width", "frame-height",     "frame-flush",   "way-clear",
    "wall-width",   "wall-height", "housing-fit",      "housed-home",   "housed-bearing",
    "cheek-fit",    "edge-fit",    "bottom-clearance", "shoulder-seat", "gap-left",
    "gap-right",    "gap-head",    "gap-foot",         "gap-stop",      "leaf-width",
    "frame-closed", "stub-fit",    "panel-play",       "panel-room",    "gain-across",
    "strike-across"};

void check_sound(const std::string& spec, const Assembly& wood) {
  INFO(spec);
  for (const Finding& finding : check_assembly(wood, Unit::mm)) {
    if (!kMustHold.contains(finding.rule->check) || finding.status != Status::fail) continue;
    INFO(finding.rule->check);
    CHECK(finding.value == finding.min.value_or(Length()));
  }
}

NamedRoom room(const Worked& worked, std::string_view what) {
  for (const NamedRoom& it : worked.rooms)
    if (it.what == what) return it;
  throw std::invalid_argument("no room");
}

}  // namespace

TEST_CASE("Random frames go together, from whichever side they are set out") {
  int worked_frames = 0;
  for (std::uint64_t seed = 1; seed <= 1500; ++seed) {
    FrameDraw draw(seed);
    const std::string keys = R"({"kind": "frame", "units": "mm", )" + draw.keys() + ", ";
    const std::string spec = keys + draw.leaf() + "}";
    const auto its = job(spec);
    const Worked worked = its->work();
    if (!worked.problems.empty()) continue;
    ++worked_frames;
    check_sound(spec, worked.assembly);
    const NamedRoom leaf = room(worked, "leaf");
    for (const auto& [what, key] :
         {std::pair{"wall opening", "wall_opening"}, std::pair{"frame", "frame"}}) {
      const NamedRoom from = room(worked, what);
      const Worked back =
          job(keys + fmt::format(R"("{}": {{"width": {}, "height": {}}}}})", key,
                                 decimal(from.width, Unit::mm), decimal(from.height, Unit::mm)))
              ->work();
      REQUIRE(back.problems.empty());
      CHECK(room(back, "leaf").width == leaf.width);
      CHECK(room(back, "leaf").height == leaf.height);
    }
  }
  CHECK(worked_frames > 900);
}

TEST_CASE("Random sets go together, single and in pairs") {
  int worked_sets = 0;
  for (std::uint64_t seed = 1; seed <= 400; ++seed) {
    FrameDraw draw(seed);
    const std::string spec = draw.set();
    const Worked worked = job(spec)->work();
    if (!worked.problems.empty()) continue;
    ++worked_sets;
    check_sound(spec, worked.assembly);
  }
  CHECK(worked_sets > 200);
}

}  // namespace haunch::test
