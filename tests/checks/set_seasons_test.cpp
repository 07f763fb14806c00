// A leaf in its frame through the seasons, by hand.
//
// White oak, flat-sawn, built at 8 %: at 13 % everything is 1.01825 as wide and 1.009 as thick, at
// 6 % 0.9927 and 0.9964. The lining: jambs 32 x 115, the head housed 10 deep. The leaf: 826 x 2036
// x 44, stiles and top rail 118, its tenons 13 to 79 from its lower edge.
#include "findings.h"
#include "seasons.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

constexpr std::string_view kYear = R"("moisture": {"low": 6, "build": 8, "high": 13})";

std::string lining(std::string_view frame = {}, std::string_view leaf = {}) {
  return R"({"kind": "doorset", "units": "mm", "species": "white oak", )" + std::string(kYear) +
         R"(, "frame": {"jamb_thickness": 32, "wall_opening": {"width": 910, "height": 2100})" +
         std::string(frame.empty() ? "" : ", ") + std::string(frame) +
         R"(}, "leaf": {"thickness": 44, "stile_width": 118, "tenon_depth": 76,
            "groove_depth": 13, "rail_widths": [118, {"width": 195, "top": 900}, 230])" +
         std::string(leaf.empty() ? "" : ", ") + std::string(leaf) + "}}";
}

std::string yard_pair() {
  return R"({"kind": "doorset", "units": "mm", "species": "white oak", "leaves": 2, )" +
         std::string(kYear) + R"(, "meeting_clearance": 12,
           "frame": {"leaf": {"width": 1300, "height": 1981}, "exterior": true},
           "leaf": {"thickness": 44, "stile_width": 118, "tenon_depth": 76, "groove_depth": 13}})";
}

SeasonReport seasons(const std::string& spec) {
  const auto its = job(spec);
  return check_seasons(work(*its).assembly, *its->season, its->unit);
}

/// Within the rounding of a few steps.
bool about(Length length, double millimetres) {
  const Length off = length - mm(millimetres);
  return std::max(off, -off) <= mm(0.001);
}

Finding found(const SeasonReport& report, std::string_view check, double moisture,
              std::size_t which = 0) {
  for (const Finding& it : report.findings)
    if (it.rule->check == check && it.moisture == moisture && which-- == 0) return it;
  throw std::invalid_argument("no check: " + std::string(check));
}

}  // namespace

TEST_CASE("A leaf in its lining grows away from its hinges") {
  const SeasonReport report = seasons(lining());
  REQUIRE(report.leaves.size() == 1);
  const AtEach<LeafState>& leaf = report.leaves.front().at;
  // Both stiles, 236 of wood across its grain; the rails between them stay.
  CHECK(leaf[kBuild].width == mm(826));
  CHECK(about(leaf[kHigh].width, 826 + 236 * 0.01825));
  CHECK(about(leaf[kLow].width, 826 - 236 * 0.0073));
  CHECK(leaf[kBuild].gaps.left == mm(3));
  CHECK(about(leaf[kHigh].gaps.left, 3));
  // The jambs bear on the head's ends, 10 deep, and grow towards the leaf from there.
  CHECK(about(leaf[kHigh].gaps.right, 3 - 236 * 0.01825 - 20 * 0.009));
  CHECK(about(leaf[kLow].gaps.right, 3 + 236 * 0.0073 + 20 * 0.0036));
}

TEST_CASE("At the head the rail and the lining's head grow towards each other") {
  const AtEach<LeafState> leaf = seasons(lining()).leaves.front().at;
  // The rail from the middle of its tenon, 46, to its upper edge; half of the head's 32.
  CHECK(about(leaf[kHigh].gaps.head, 3 - 72 * 0.01825 - 16 * 0.009));
  CHECK(leaf[kBuild].gaps.foot == mm(10));
}

TEST_CASE("A planted stop goes with its jamb, and the leaf's back comes towards it") {
  const SeasonReport report = seasons(lining());
  // The stop stands 45.5 from the face of a jamb that moves in its width, the leaf in its
  // thickness.
  CHECK(about(found(report, "opening-stop", 13).value, 1.5 + 45.5 * 0.01825 - 44 * 0.009));
  CHECK(about(found(report, "opening-stop", 6).value, 1.5 - 45.5 * 0.0073 + 44 * 0.0036));
}

TEST_CASE("A stop without play meets the leaf as both dry") {
  const SeasonReport report = seasons(lining(R"("stop": {"gap": 0})"));
  CHECK(found(report, "opening-stop", 6).status == Status::fail);
  CHECK(found(report, "opening-stop", 13).status == Status::ok);
}

TEST_CASE("A panel proud of a leaf's back goes in between the stops: the stiles' backs meet them") {
  // The tongue of 14.6 stands 14.7 behind the face, so that the field's back is at 48.7, 4.7 proud.
  const std::string proud = R"("panel": {"raised": "back", "thickness": 34})";
  const SeasonReport report = seasons(lining({}, proud));
  CHECK(finding(work(lining({}, proud)).assembly, "gap-stop").value == mm(1.5));
  CHECK(about(found(report, "opening-stop", 13).value, 1.5 + 45.5 * 0.01825 - 44 * 0.009));
  CHECK(about(found(report, "opening-stop", 6).value, 1.5 - 45.5 * 0.0073 + 44 * 0.0036));
  CHECK(report.leaves.front().at[kHigh].gaps.left ==
        seasons(lining()).leaves.front().at[kHigh].gaps.left);
}

TEST_CASE("A leaf that swells into its jamb is found at its wettest, and only there") {
  const SeasonReport report = seasons(lining());
  CHECK(found(report, "opening-right", 13).status == Status::fail);
  CHECK(found(report, "swing-room", 13).status == Status::fail);
  CHECK(found(report, "opening-right", 6).status == Status::ok);
  CHECK(found(report, "opening-left", 13).status == Status::ok);
  CHECK(fails(report) == std::vector<std::string>{"opening-right", "swing-room"});
  CHECK(fails(seasons(lining(R"("clearance": {"right": 6})"))).empty());
}

TEST_CASE("A leaf that hangs at the right has what is left at the left") {
  const AtEach<LeafState> left = seasons(lining()).leaves.front().at;
  const AtEach<LeafState> right = seasons(lining("", R"("hangs": "right")")).leaves.front().at;
  CHECK(about(right[kHigh].gaps.right, 3));
  CHECK(std::abs((right[kHigh].gaps.left - left[kHigh].gaps.right).steps()) < 100);
}

TEST_CASE("The leaves of a pair grow towards each other") {
  const SeasonReport report = seasons(yard_pair());
  REQUIRE(report.leaves.size() == 2);
  CHECK(work(yard_pair()).assembly.groups[report.leaves.front().group].path == "left-leaf");
  // 4 stiles of 118. The jambs, 57 thick, are held by their tenons: relish 19 to 57, the middle 38,
  // the rebate's bottom at 45.
  const double meeting = 12 - 472 * 0.01825 - 2 * 7 * 0.009;
  CHECK(about(report.leaves[0].at[kHigh].gaps.right, meeting));
  CHECK(about(report.leaves[1].at[kHigh].gaps.left, meeting));
  CHECK(about(report.leaves[0].at[kHigh].gaps.left, 3));
  CHECK(about(report.leaves[1].at[kHigh].gaps.right, 3));
  CHECK(fails(report).empty());
}

TEST_CASE("The gap between a pair's leaves is told once, not as two openings besides") {
  const SeasonReport report = seasons(yard_pair());
  const double meeting = 12 - 472 * 0.01825 - 2 * 7 * 0.009;
  CHECK(about(found(report, "meeting-gap", 13).value, meeting));
  const auto told = [&](std::string_view check) {
    return std::count_if(report.findings.begin(), report.findings.end(), [&](const Finding& it) {
      return it.rule->check == check && it.moisture == 13.0;
    });
  };
  CHECK(told("opening-left") == 1);
  CHECK(told("opening-right") == 1);
  CHECK(told("opening-head") == 2);
  CHECK(about(found(report, "opening-left", 13).value, 3));
  CHECK(about(found(report, "opening-right", 13).value, 3));
}

TEST_CASE("A jamb's tenon is as thick as its width makes it: the mortise moves with it") {
  const SeasonReport report = seasons(yard_pair());
  const Assembly wood = work(yard_pair()).assembly;
  const Joint& joint = wood.joints.front();
  REQUIRE(joint.through == Axis::z);
  // Tenon and mortise lie across the grain of jamb and head alike.
  const Finding cheeks = found(report, "cheek-swell", 13);
  CHECK(cheeks.joint == std::size_t{0});
  CHECK(about(cheeks.value, 0.15 * 1.01825));
  // The tenon's width swells as the jamb's thickness, 38; the mortise lies along the head's grain.
  CHECK(about(found(report, "edge-swell", 13).value, 0.8 - 38 * 0.009));
}

TEST_CASE("What of a season stands in a set's leaf is refused, and a wood without figures") {
  CHECK(refused_at(lining("", R"("moisture": {"low": 6})")) == "/leaf/moisture");
  CHECK(refused_at(lining("", R"("grain": "mixed")")) == "/leaf/grain");
  CHECK(refused_at(R"({"kind": "doorset", "units": "mm", "moisture": {"low": 6},
                       "frame": {"leaf": {"width": 800, "height": 1981}}})")
            .empty());
  CHECK(refused_at(R"({"kind": "doorset", "units": "mm", "moisture": {"lwo": 6},
                       "frame": {"leaf": {"width": 800, "height": 1981}}})") == "/moisture/lwo");
}

TEST_CASE("A set's seasons have the remedies of its leaf") {
  const auto its = job(lining());
  std::vector<std::string> keys;
  for (const Alternative& it : its->alternatives()) {
    if (std::find(keys.begin(), keys.end(), it.key) == keys.end()) keys.push_back(it.key);
    if (keys.size() == 2 && keys.back() == it.key) CHECK(it.job->work().problems.empty());
  }
  CHECK(keys == std::vector<std::string>{"grain.panel", "leaf.panels.across",
                                         "moisture.build (drier)", "moisture.build (wetter)"});
}

}  // namespace haunch::test
