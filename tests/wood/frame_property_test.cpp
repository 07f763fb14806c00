// Random frames and sets: what is not refused goes together, and the way from the wall to the leaf
// leads back.
#include <fmt/format.h>

#include <random>
#include <set>

#include "checks.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// Draws keys of a frame; sizes in thousandths of a millimetre, so that nothing comes out even.
class FrameDraw {
 public:
  explicit FrameDraw(std::uint64_t seed) : random_(seed) {}

  bool chance(int percent) { return whole(1, 100) <= percent; }
  int whole(int least, int most) {
    return std::uniform_int_distribution<int>(least, most)(random_);
  }
  std::string size(int least, int most) {
    return decimal(Length::from_mm_thousandths(whole(least * 1000, most * 1000)), Unit::mm);
  }
  std::string word(std::initializer_list<const char*> words) {
    return *(words.begin() + whole(0, static_cast<int>(words.size()) - 1));
  }

  /// The keys of a frame, without the braces, but for the sizes that lead from wall to leaf.
  std::string keys() {
    std::string text =
        fmt::format(R"("jamb_thickness": {}, "jamb_width": {})", size(20, 70), size(95, 140));
    const bool rebate = chance(50);
    const std::string head = word({"housed", "rebated", "tenoned"});
    text += fmt::format(R"(, "stop": {{"kind": "{}", "depth": {}, "gap": {}}}, "head_joint": "{}")",
                        rebate ? "rebate" : "planted", size(6, 14), size(0, 3), head);
    if (chance(50)) text += fmt::format(R"(, "head_thickness": {})", size(20, 70));
    if (head != "tenoned" && chance(50))
      text += fmt::format(R"(, "housing_depth": {})", size(5, 20));
    if (head != "rebated" && chance(50)) text += fmt::format(R"(, "horn": {})", size(0, 60));
    if (chance(40)) text += fmt::format(R"(, "fit_allowance": 0.{:03})", whole(0, 300));
    if (chance(40)) text += fmt::format(R"(, "reveal": {})", size(0, 4));
    if (chance(30)) text += fmt::format(R"(, "transom": {{"light": {}}})", size(100, 500));
    const int foot = whole(1, 3);
    if (foot == 1) text += fmt::format(R"(, "threshold": {{"height": {}}})", size(10, 30));
    if (foot == 2) text += fmt::format(R"(, "sill": {{"height": {}}})", size(40, 90));
    if (chance(50))
      text += fmt::format(R"(, "clearance": {{"left": {}, "right": {}, "head": {}, "foot": {}}})",
                          size(0, 6), size(0, 6), size(0, 6), size(0, 12));
    return text;
  }

  std::string leaf() {
    return fmt::format(R"("leaf": {{"width": {}, "height": {}}})", size(420, 1100),
                       size(1500, 2200));
  }

  /// Further keys of a leaf, each with a comma before it.
  std::string fittings(int leaves) {
    std::string text;
    if (chance(50)) text += fmt::format(R"(, "hinges": {{"length": {}}})", size(60, 120));
    if (leaves == 1 && chance(50))
      text += fmt::format(R"(, "hangs": "{}")", word({"left", "right"}));
    if (chance(50))
      text += fmt::format(
          R"(, "lock": {{"height": {}, "case": {{"height": {}, "depth": {}, "thickness": {}}}}})",
          size(700, 1200), size(80, 170), size(40, 65), size(10, 18));
    return text;
  }

 private:
  std::mt19937_64 random_;
};

/// What depends on sizes alone, not on how well they were chosen, and so must never fail.
const std::set<std::string_view> kMustHold = {
    "shared-wood",  "frame-width", "frame-height",     "frame-flush",   "way-clear",
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
    const int leaves = draw.whole(1, 2);
    const std::string spec =
        fmt::format(R"({{"kind": "doorset", "units": "mm", "leaves": {}, "frame": {{{}, {}}}, )"
                    R"("leaf": {{"thickness": {}, "stile_width": {}{}}}, "lock_bevel": {}}})",
                    leaves, draw.keys(), draw.leaf(), draw.size(35, 56), draw.size(70, 100),
                    draw.fittings(leaves), draw.chance(50) ? "0" : draw.size(1, 5));
    const Worked worked = job(spec)->work();
    if (!worked.problems.empty()) continue;
    ++worked_sets;
    check_sound(spec, worked.assembly);
  }
  CHECK(worked_sets > 200);
}

}  // namespace haunch::test
