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
                      "panels": 4, "tenon_depth": 70, "groove_depth": 13)",
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
  const auto remedies = find_remedies(*its, before);
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
  // The bottom rail's mortises leave 46 of 118, less 3 of the hinge's leaf.
  CHECK(clash(kHinges).value == mm(43));
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

}  // namespace haunch::test
