// Levers: the sizes of a job that may be changed, and the job worked again with one of them
// changed.
#include "vocabulary.h"

namespace haunch::test {
namespace {

constexpr const char* kSideDoor =
    R"("clearance": 3, "thickness": 44, "stile_width": 118,
       "rail_widths": [118, {"width": 195, "top": 965}, 230], "panels": 4, "tenon_depth": 76,
       "groove_depth": 13, "fit_allowance": 0.15)";

Lever lever(const Job& job, std::string_view key) {
  for (const Lever& each : job.levers())
    if (each.key == key) return each;
  throw std::invalid_argument("there is no lever " + std::string(key));
}

Assembly with(const Job& job, std::string_view key, Length value) {
  return work(*job.with(lever(job, key), value)).assembly;
}

}  // namespace

TEST_CASE("Each lever has its value as worked and a step worth making") {
  const auto door = job(house_mm(kSideDoor));
  CHECK(lever(*door, "tenon_depth").value == mm(76));
  CHECK(lever(*door, "tenon_depth").step == mm(0.5));
  CHECK(lever(*door, "fit_allowance").value == mm(0.15));
  CHECK(lever(*door, "fit_allowance").step == mm(0.01));
  CHECK(lever(*door, "fit_allowance").least == mm(0.05));  // room for glue
  CHECK(lever(*door, "tenon_depth").least == kStep);
  CHECK(lever(*door, "mortise.width").value == mm(15));
  CHECK(lever(*door, "rail_widths.1.top").value == mm(965));
  CHECK(lever(*door, "rail_widths.1.width").value == mm(195));
  CHECK(lever(*door, "rail_widths.0").value == mm(118));
  const auto inches = job(house_in());
  CHECK(lever(*inches, "tenon_depth").step == inch(0, 1, 64));
  CHECK(lever(*inches, "fit_allowance").step == Length::from_inch_parts(5, 10'000));
}

TEST_CASE("Opening, clearance and horn are not for a check to change") {
  for (const Lever& each : job(house_mm(kSideDoor))->levers()) {
    CHECK_FALSE(each.key.starts_with("opening"));
    CHECK_FALSE(each.key.starts_with("clearance"));
    CHECK_FALSE(each.key.starts_with("horn"));
  }
}

TEST_CASE("Each lever is there once, and with its own value nothing changes") {
  const auto door = job(house_mm(kSideDoor));
  std::vector<std::string> keys;
  for (const Lever& each : door->levers()) {
    // A relish or gap is chosen for each rail where it is left open; stated it is one for all.
    keys.push_back(each.key);
    if (each.key == "tenon.relish" || each.key == "tenon.gap" || each.key == "tenon.width_limit")
      continue;
    INFO(each.key);
    const Assembly same = work(*door->with(each, each.value)).assembly;
    const Assembly before = work(*door).assembly;
    REQUIRE(same.pieces.size() == before.pieces.size());
    for (std::size_t i = 0; i < same.pieces.size(); ++i) {
      CHECK(same.pieces[i].blank == before.pieces[i].blank);
      CHECK(same.pieces[i].place.origin == before.pieces[i].place.origin);
      CHECK(wood_between(same.pieces[i], Length(), same.pieces[i].blank[0]) ==
            wood_between(before.pieces[i], Length(), before.pieces[i].blank[0]));
    }
  }
  std::sort(keys.begin(), keys.end());
  CHECK(std::adjacent_find(keys.begin(), keys.end()) == keys.end());
}

TEST_CASE("A lever changes its size and leaves the job it came from alone") {
  const auto door = job(house_mm(kSideDoor));
  // 118 - (60 + 2) = 56.
  CHECK(cuts(piece(with(*door, "tenon_depth", mm(60)), "left stile"), "mortise").front().low[1] ==
        mm(56));
  CHECK(cuts(piece(work(*door).assembly, "left stile"), "mortise").front().low[1] == mm(40));
}

TEST_CASE("What the spec left open is chosen anew") {
  const auto door = job(house_mm());
  // Stile 120: tenons two thirds of it, 80. Thickness 30: the cutter of 10.
  const Assembly wide = with(*door, "stile_width", mm(120));
  CHECK(piece(wide, "right stile").blank[1] == mm(120));
  CHECK(joint(wide, "left stile", "top rail").tenon->depth == mm(80));
  CHECK(joint(with(*door, "thickness", mm(30)), "left stile", "top rail").mortise->width == mm(10));
}

TEST_CASE("A rail is changed by its place, in width or height") {
  const auto door = job(house_mm(kSideDoor));
  CHECK(piece(with(*door, "rail_widths.2", mm(240)), "bottom rail").blank[1] == mm(240));
  CHECK(piece(with(*door, "rail_widths.1.top", mm(950)), "lock rail").place.origin[1] == mm(755));
  const Assembly narrower = with(*door, "rail_widths.1.width", mm(180));
  CHECK(piece(narrower, "lock rail").place.origin[1] == mm(785));  // its top stays at 965
}

TEST_CASE("A rail that the spec did not place or name can be, too") {
  const auto door = job(house_mm());
  CHECK(lever(*door, "rail_widths.1.top").value == mm(965));
  const Assembly lower = with(*door, "rail_widths.1.top", mm(900));
  CHECK(piece(lower, "lock rail").place.origin[1] == mm(705));
  CHECK(piece(with(*door, "rail_widths.1", mm(150)), "lock rail").blank[1] == mm(150));
}

TEST_CASE("Stiles of two widths are two levers") {
  const auto door = job(house_mm(R"("stile_width": {"left": 118, "right": 100})"));
  const Assembly changed = with(*door, "stile_width.left", mm(110));
  CHECK(piece(changed, "left stile").blank[1] == mm(110));
  CHECK(piece(changed, "right stile").blank[1] == mm(100));
  CHECK_THROWS(lever(*door, "stile_width"));
  CHECK(lever(*door, "stile_width.left").least == kStep);
}

TEST_CASE("The gap is a lever where a tenon is divided, if only a muntin's") {
  // Muntin 110 - 2 x 12 = 86, over 75: a quarter is 21.5; the lock rail is narrow enough.
  const auto door = job(house_mm(
      R"("rail_widths": [100, 95, 100], "panels": 4, "muntin_width": 110,
         "tenon": {"width_limit": 75, "gap": 20})"));
  CHECK(lever(*door, "tenon.gap").value == mm(20));
  CHECK(joint(with(*door, "tenon.gap", mm(30)), "lock rail", "muntin, tier 1").tenon->width ==
        mm(28));  // (86 - 30) / 2
  CHECK_THROWS(lever(*job(cabinet_mm()), "tenon.gap"));
}

TEST_CASE("A size of a fit that follows from two others is no lever of its own") {
  // Mortise and allowance are given: changing the tenon alone would be a third size that disagrees.
  const auto door = job(house_mm(R"("mortise": {"width": 15}, "fit_allowance": 0.2)"));
  for (const Lever& each : door->levers())
    if (each.key == "tenon.thickness")
      CHECK_FALSE(door->with(each, each.value + each.step)->work().problems.empty());
}

TEST_CASE("A tenon that its mortise goes by is changed to one whose mortise a cutter makes") {
  const auto open = job(cabinet_mm(R"("fit_allowance": 0.2)"));
  const std::vector<Length> fits = lever(*open, "tenon.thickness").only;
  REQUIRE_FALSE(fits.empty());
  CHECK(fits.front() == mm(4.8));
  CHECK(lever(*open, "mortise.width").only.front() == mm(5));
  // In a mortise that is stated it is a matter of fit.
  // In a mortise that is stated, one that leaves room for glue and no more than it bridges.
  const std::vector<Length> tenons =
      lever(*job(cabinet_mm(R"("mortise": {"width": 8})")), "tenon.thickness").only;
  CHECK(tenons.front() == mm(7.75));
  CHECK(tenons.back() == mm(7.95));
}

}  // namespace haunch::test
