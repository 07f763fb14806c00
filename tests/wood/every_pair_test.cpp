// Every way in which corner joints, worked edges, arches, openings, pairs of leaves and panels go
// together: 2,304 house doors. What the trade makes is worked, and a second opinion finds it sound;
// what it doesn't is refused in words.
#include <algorithm>
#include <array>
#include <cstdint>
#include <iterator>
#include <string>
#include <vector>

#include "catch.h"
#include "checks.h"
#include "effort.h"
#include "effort_spent.h"
#include "joint_oracle.h"
#include "json_reader.h"
#include "kind.h"

namespace haunch::test {
namespace {

// The first of each is what a plain door has.
constexpr std::array kCorners{"haunched", "twin",  "loose",    "through",
                              "bridle",   "dowel", "half-lap", "mitre"};
constexpr std::array kEdges{"square", "rebated", "coped", "mitred"};
constexpr std::array kArches{"", "underside", "top", "both"};
constexpr std::array kMeets{"inset", "overlay", "rebate"};
constexpr std::array kLeaves{"1", "2"};
constexpr std::array kPanels{"flat", "raised", "glass"};
constexpr std::array<std::size_t, 6> kChoices{std::size(kCorners), std::size(kEdges),
                                              std::size(kArches),  std::size(kMeets),
                                              std::size(kLeaves),  std::size(kPanels)};

/// Which of each choice a door has.
using Choices = std::array<std::size_t, 6>;

/// Members as a joiner would choose them: of one width where corners are mitred, and a top rail
/// that leaves wood above an arch cut into it.
std::string members_for(std::string_view corner, std::string_view arch) {
  if (corner == "mitre") return R"("stile_width": 100, "rail_widths": [100, 195, 100])";
  const bool cut_in = arch == "underside" || arch == "both";
  return std::string(R"("rail_widths": [)") + (cut_in ? "195" : "100") + ", 195, 230]";
}

std::string spec_of(const Choices& of) {
  const std::string corner = kCorners[of[0]];
  const std::string arch = kArches[of[2]];
  const std::string meets = kMeets[of[3]];
  const bool pair = of[4] == 1;
  std::string spec = R"({"kind": "door", "units": "mm", "thickness": 44, "opening": {"width": )";
  spec += pair ? R"(1500, "height": 2060}, "leaves": 2, )" : R"(930, "height": 2060}, )";
  spec += members_for(corner, arch);
  spec +=
      R"(, "joint": {"corner": ")" + corner + R"("}, "edge": {"kind": ")" + kEdges[of[1]] + "\"}";
  if (!arch.empty()) spec += R"(, "arch": {"at": ")" + arch + R"(", "rise": 80})";
  if (meets != "inset") spec += R"(, "meets": ")" + meets + "\"";
  if (meets == "overlay") spec += R"(, "lap": 13)";
  if (of[5] == 1) spec += R"(, "panel": {"raised": "front"})";
  if (of[5] == 2) spec += R"(, "panel": {"kind": "glass", "thickness": 6})";
  return spec + "}";
}

/// A door with what is chosen, and the rest of it plain, counts among the pairs.
bool is_pair(const Choices& of) {
  return std::count(of.begin(), of.end(), std::size_t{0}) == 4;
}

std::vector<Choices> all_choices() {
  std::vector<Choices> all{Choices{}};
  for (std::size_t which = 0; which < kChoices.size(); ++which) {
    std::vector<Choices> more;
    for (const Choices& each : all)
      for (std::size_t value = 0; value < kChoices[which]; ++value) {
        more.push_back(each);
        more.back()[which] = value;
      }
    all = std::move(more);
  }
  return all;
}

enum class Came : unsigned char { works, fails, refused };

/// What a door of these choices comes to; what is wrong with that goes into `wrong`.
Came came_of(const std::string& spec, std::string& wrong) {
  const Reading reading = read_json(spec);
  const JobReading item = read_job(*reading.value, nullptr, "door");
  std::vector<Problem> problems = item.problems;
  Worked worked;
  if (item.job && problems.empty()) {
    worked = item.job->work();
    problems = worked.problems;
  }
  for (const Problem& problem : problems)
    if (problem.message.empty()) wrong += "refused without a word\n";
  if (!problems.empty()) return Came::refused;
  for (const Finding& finding : check_job(worked.assembly, *item.job))
    if (finding.status == Status::fail) return Came::fails;
  for (const PointFault& fault : faults_to_be_seen(worked.assembly, 1))
    wrong += fault.what + "\n";
  return Came::works;
}

/// Two seconds' work on the slowest machine that a joiner has.
constexpr std::int64_t kMostEffort = 300'000'000;

// What worked when this was last looked at: it may become more, and never less.
constexpr std::size_t kWorking = 1659;
constexpr std::size_t kWorkingPairs = 115;

}  // namespace

TEST_CASE("whatever is chosen together works and is sound, or is refused in words",
          "[wood][property]") {
  std::size_t working = 0;
  std::size_t pairs = 0;
  std::size_t failing = 0;
  const std::vector<Choices> all = all_choices();
  // With less effort a share of them is looked at, which takes in all words of each choice.
  const auto looked_at = static_cast<std::size_t>(
      std::min<std::int64_t>(times_effort(std::ssize(all)), std::ssize(all)));
  for (std::size_t i = 0; i < looked_at; ++i) {
    const Choices& of = all[i * all.size() / looked_at];
    const std::string spec = spec_of(of);
    std::string wrong;
    const std::int64_t before = effort_spent();
    const Came came = came_of(spec, wrong);
    if (effort_spent() - before > kMostEffort) wrong += "takes too long\n";
    if (!wrong.empty()) FAIL_CHECK(spec << "\n" << wrong);
    if (came == Came::fails) ++failing;
    if (came != Came::works) continue;
    ++working;
    if (is_pair(of)) ++pairs;
  }
  if (looked_at < all.size()) return;
  INFO(working << " work, " << failing << " fail a check; of 124 pairs " << pairs << " work");
  CHECK(working >= kWorking);
  CHECK(pairs >= kWorkingPairs);
}

}  // namespace haunch::test
