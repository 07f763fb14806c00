// Random frames and sets for property tests.
#pragma once

#include <fmt/format.h>

#include <cstdint>
#include <initializer_list>
#include <random>
#include <string>

#include "haunch/length_text.h"

namespace haunch::test {

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

  /// A whole set, a single leaf or a pair.
  std::string set() {
    const int leaves = whole(1, 2);
    const std::string frame = keys();
    const std::string sizes = leaf();
    const std::string thickness = size(35, 56);
    const std::string stile = size(70, 100);
    const std::string more = fittings(leaves);
    const std::string bevel = chance(50) ? "0" : size(1, 5);
    return fmt::format(R"({{"kind": "doorset", "units": "mm", "leaves": {}, "frame": {{{}, {}}}, )"
                       R"("leaf": {{"thickness": {}, "stile_width": {}{}}}, "lock_bevel": {}}})",
                       leaves, frame, sizes, thickness, stile, more, bevel);
  }

 private:
  std::mt19937_64 random_;
};

}  // namespace haunch::test
