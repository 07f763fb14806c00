// Clashes of fittings, each made on purpose and found in the wood.
#include "checks.h"
#include "remedy.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A leaf 924 x 2054 with stiles of 118; the lock rail's tenons stand at 782.6 to 846.9 and 888.1
/// to 952.4 above the foot, in mortises 72 deep from the sight edge.
std::string door(std::string_view fittings) {
  return door_spec(R"("units": "mm", "opening": {"width": 930, "height": 2060}, "clearance": 3,
                      "stile_width": 118, "rail_widths": [118, {"width": 195, "top": 965}, 230],
                      "panels": 4, "tenon_depth": 69, "groove_depth": 13)",
                   fittings);
}

std::string lock(double height, double depth, double thickness) {
  return R"("lock": {"height": )" + std::to_string(height) +
         R"(, "case": {"height": 100, "depth": )" + std::to_string(depth) + R"(, "thickness": )" +
         std::to_string(thickness) + "}}";
}

std::vector<Finding> findings(const std::string& spec) {
  const auto its = job(spec);
  return check_assembly(work(*its).assembly, its->unit);
}

std::vector<Finding> of_rule(const std::string& spec, std::string_view check) {
  std::vector<Finding> found;
  for (const Finding& finding : findings(spec))
    if (finding.rule->check == check) found.push_back(finding);
  return found;
}

Finding clash(std::string_view fittings) {
  return of_rule(door(fittings), "fitting-clash").front();
}

constexpr std::string_view kHinges =
    R"("hinges": {"number": 2, "from_foot": 100, "length": 100, "thickness": 3, "width": 38})";

}  // namespace

TEST_CASE("A lock between two rails, short of the groove, is clear") {
  for (const Finding& finding : findings(door(lock(1200, 80, 16))))
    if (finding.rule->check.starts_with("fitting")) CHECK(finding.status == Status::ok);
  // 118 less 80 of the case and 13 of the groove.
  CHECK(clash(lock(1200, 80, 16)).value == mm(25));
}

TEST_CASE("A lock on the lock rail's tenon is found, and how far it must be moved") {
  const Finding found = clash(lock(917, 80, 16));
  CHECK(found.status == Status::fail);
  // The case stands from 867 to 967: up by 952.4 - 867, or down by 967 - 782.6.
  CHECK(found.value == mm(-85.4));
  CHECK(found.parts.size() == 2);
}

TEST_CASE("Of a clash only the fitting is told, not the joint that was sound without it") {
  for (const Finding& finding : findings(door(lock(917, 80, 16))))
    if (finding.status == Status::fail) CHECK(finding.rule->check == "fitting-clash");
}

TEST_CASE("The remedy for a lock on a tenon is to move it, and moved it is clear") {
  const auto its = job(door(lock(917, 80, 16)));
  const std::vector<Finding> before = findings(door(lock(917, 80, 16)));
  const auto remedies = find_remedies(*its, before).of;
  std::size_t told = 0;
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (before[i].status != Status::fail) continue;
    REQUIRE(remedies[i]);
    CHECK(remedies[i]->key == "lock.height");
    // Up by 85.4 and 5 of wood, in steps of 0.5.
    CHECK(remedies[i]->to == mm(1007.5));
    ++told;
  }
  CHECK(told == 1);
  CHECK(clash(lock(1007.5, 80, 16)).status == Status::ok);
  CHECK(clash(lock(1007, 80, 16)).status == Status::caution);
}

TEST_CASE("A case deeper than the stile has room for goes into the panel's groove") {
  // The groove begins at 118 - 13 = 105.
  CHECK(clash(lock(1200, 106, 16)).status == Status::fail);
  CHECK(clash(lock(1200, 104, 16)).value == mm(1));
  CHECK(clash(lock(1200, 101, 16)).status == Status::caution);
  CHECK(clash(lock(1200, 100, 16)).status == Status::ok);
}

TEST_CASE("A case that leaves thin walls is found") {
  const auto wall = [](double thickness) {
    return of_rule(door(lock(1200, 80, thickness)), "fitting-wall").front();
  };
  CHECK(wall(40).value == mm(2));
  CHECK(wall(40).status == Status::fail);
  CHECK(wall(36).status == Status::caution);
  CHECK(wall(34).status == Status::ok);
}

TEST_CASE("Of a hinge behind a tenon the wood between is measured") {
  // The bottom rail's mortises leave 47 of 118, less 3 of the hinge's leaf.
  CHECK(clash(kHinges).value == mm(44));
  CHECK(clash(kHinges).status == Status::ok);
  // Mortises to within 4 of the edge leave 1.
  const std::string deep =
      door_spec(R"("units": "mm", "opening": {"width": 930, "height": 2060}, "stile_width": 118,
                   "tenon_depth": 112)",
                kHinges);
  CHECK(of_rule(deep, "fitting-clash").front().value == mm(1));
}

TEST_CASE("A plate and the case behind it are one fitting") {
  const std::string plated =
      R"("lock": {"height": 1200, "case": {"height": 100, "depth": 80, "thickness": 16},
                  "faceplate": {"length": 160, "width": 22, "thickness": 3}})";
  for (const Finding& finding : of_rule(door(plated), "fitting-clash"))
    CHECK(finding.status == Status::ok);
}

namespace {

/// A recess or a hole on the right stile, the one of the lock.
std::string fitting(std::string_view into, std::string_view at, std::string_view cut,
                    std::string_view name = "bolt", std::string_view on = "right stile") {
  return R"("fittings": [{"name": ")" + std::string(name) + R"(", "on": ")" + std::string(on) +
         R"(", "into": ")" + std::string(into) + R"(", "at": )" + std::string(at) +
         R"(, "cuts": [)" + std::string(cut) + "]}]";
}

std::string bored(std::string_view backset, std::string_view height = "1300") {
  return R"("lock": {"height": )" + std::string(height) + R"(, "backset": )" +
         std::string(backset) + R"(, "bore": {"diameter": 54}})";
}

/// The remedy for the first clash that is not ok, applied and judged again.
struct Tried {
  Remedy remedy;
  std::vector<Finding> after;
};
Tried tried(const std::string& spec) {
  const auto its = job(spec);
  const std::vector<Finding> before = check_assembly(work(*its).assembly, its->unit);
  const auto remedies = find_remedies(*its, before).of;
  for (std::size_t i = 0; i < before.size(); ++i) {
    if (before[i].rule->check != "fitting-clash" || before[i].status == Status::ok) continue;
    if (!remedies[i]) throw std::invalid_argument("no remedy");
    for (const Lever& lever : its->levers())
      if (lever.key == remedies[i]->key) {
        const auto changed = its->with(lever, remedies[i]->to);
        return {*remedies[i], check_assembly(work(*changed).assembly, changed->unit)};
      }
  }
  throw std::invalid_argument("no clash");
}

bool clear(const std::vector<Finding>& found) {
  return std::none_of(found.begin(), found.end(), [](const Finding& it) {
    return it.rule->check.starts_with("fitting") && it.status != Status::ok;
  });
}

}  // namespace

TEST_CASE("A hinge let in to a tenon is found") {
  // Mortises 116.5 deep leave 1.5 of the stile, and the hinge takes 3.
  const std::string spec =
      door_spec(R"("units": "mm", "opening": {"width": 930, "height": 2060}, "stile_width": 118,
                   "tenon_depth": 116, "tenon": {"bottom_clearance": 0.5})",
                kHinges);
  const Finding found = of_rule(spec, "fitting-clash").front();
  CHECK(found.status == Status::fail);
  // The bottom rail's tenons stand up to 230 - 12 and 0.4 of play; the hinge from 100.
  CHECK(found.value == mm(-118.4));
  const Tried its = tried(spec);
  CHECK(its.remedy.key == "hinges.from_foot");
  CHECK(its.remedy.moves == Moves::up);
  CHECK(its.remedy.to == mm(223.5));
}

TEST_CASE("A hole through the stile is measured to its groove") {
  const auto through = [](std::string_view backset) {
    return of_rule(door(bored(backset)), "fitting-through");
  };
  // 118 less 13 of the groove, 60 or 70 of backset, 27 of the hole.
  CHECK(through("60").front().value == mm(18));
  CHECK(through("60").front().status == Status::ok);
  CHECK(through("70").front().value == mm(8));
  CHECK(through("70").front().status == Status::caution);
  CHECK(through("68.5").front().status == Status::ok);
  // Under 5 it is a clash, which is told once.
  CHECK(through("74").empty());
  CHECK(clash(bored("74")).value == mm(4));
  CHECK(clash(bored("76")).status == Status::fail);
}

TEST_CASE("A hole that breaks into the groove is found") {
  CHECK(clash(bored("79")).status == Status::fail);
  CHECK(clash(bored("79")).value < Length());
}

TEST_CASE("A bored lock on a tenon is found, and moved it is clear") {
  // The hole ends 72 from the sight edge's 118, past the tenons' 71 deep mortises; it reaches down
  // to 938 and is to be 5 above 952.4.
  const Tried its = tried(door(bored("60", "965")));
  CHECK(its.remedy.key == "lock.height");
  CHECK(its.remedy.to == mm(984.5));
  CHECK(clear(its.after));
}

TEST_CASE("A round hole is measured as it is, not as the square about it") {
  // A hole of 40, its middle 88 from the sight edge and 966 above the foot; a mortise ends at 71
  // and 952.4: the corner lies sqrt(17 x 17 + 13.6 x 13.6) = 21.771 from the middle.
  const Finding found =
      clash(fitting("face", "966", R"({"diameter": 40, "from": 30, "depth": 40})"));
  CHECK(found.value > mm(1.63));
  CHECK(found.value < mm(1.78));
  CHECK(clash(fitting("face", "962", R"({"diameter": 40, "from": 30, "depth": 40})")).value <
        Length());
}

TEST_CASE("A shallow hole over a tenon leaves the wood of the mortise's wall") {
  // Mortises begin 14.5 from the face side.
  const auto over = [](std::string_view depth) {
    return clash(fitting("face", "917",
                         R"({"diameter": 20, "from": 80, "depth": )" + std::string(depth) + "}"));
  };
  CHECK(over("10").value == mm(4.5));
  CHECK(over("10").status == Status::caution);
  CHECK(over("12").status == Status::fail);
}

TEST_CASE("A plate let in over the panel's groove is found") {
  const std::string plate = R"({"length": 100, "width": 22, "depth": 3})";
  const Finding found = clash(fitting("left", "1300", plate));
  CHECK(found.status == Status::fail);
  // The groove runs on from end to end: nothing helps but to clear the stile's whole length.
  CHECK(found.value == -mm(754));
}

TEST_CASE("A bolt let in to a lock is found, and moved it is clear") {
  const std::string both =
      lock(1200, 80, 16) + ", " +
      fitting("back", "1240", R"({"length": 60, "width": 20, "depth": 20, "from": 30})");
  // The lock's case goes up to 1250, from 14 to 30 of 44: the bolt reaches to 24.
  const std::vector<Finding> found = of_rule(door(both), "fitting-clash");
  CHECK(std::count_if(found.begin(), found.end(), [](const Finding& it) {
          return it.status == Status::fail && it.value == mm(-10);
        }) == 2);
  const Tried its = tried(door(both));
  CHECK(its.remedy.moves != Moves::nothing);
  CHECK(clear(its.after));
}

TEST_CASE("What is named as the lock is part of it") {
  const std::string both =
      lock(1200, 80, 16) + ", " +
      fitting("back", "1200", R"({"diameter": 20, "depth": 20, "from": 30})", "lock");
  CHECK(clear(findings(door(both))));
}

TEST_CASE("A rail's tenon and a panel's edge bear no fitting") {
  const std::string plate = R"({"length": 60, "width": 20, "depth": 3})";
  // The lock rail begins 48 from the left, its shoulder stands at 118.
  const Finding on_tenon = clash(fitting("face", "100", plate, "plate", "lock rail"));
  CHECK(on_tenon.status == Status::fail);
  CHECK(on_tenon.value == mm(-18));
  CHECK(clash(fitting("face", "123", plate, "plate", "lock rail")).status == Status::ok);
  const Tried its = tried(door(fitting("face", "100", plate, "plate", "lock rail")));
  CHECK(its.remedy.key == "fittings.0.at");
  CHECK(its.remedy.to == mm(123));
  // A panel of the upper tier stands in the lock rail's groove from 954 to 965.
  CHECK(clash(fitting("face", "955", plate, "plate", "panel 1, tier 1")).status == Status::fail);
}

TEST_CASE("A bolt in the end of a stile is measured like any other") {
  const std::string hole = R"({"diameter": 16, "depth": 90})";
  // On the middle of the thickness, from the leaf's top down; the top rail's mortise reaches to
  // within 39 of relish, less 0.4 of play, of the top, and 71 in from the sight edge at 806.
  CHECK(clash(fitting("upper", "860", hole)).status == Status::fail);
  CHECK(clash(fitting("upper", "895", hole)).value == mm(10));
}

TEST_CASE("Each hinge is told with what lies nearest to it") {
  const std::vector<Finding> found =
      of_rule(door(R"("hinges": {"at": [230, 1017, 1804], "length": 100})"), "fitting-clash");
  CHECK(found.size() == 3);
}

}  // namespace haunch::test
