// What a leaf is for: its usual sizes go by that, and a shop's for each use.
#include "shop.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

std::string wardrobe(std::string_view more = {}) {
  return R"({"kind": "door", "units": "mm", "opening": {"width": 500, "height": 1900})" +
         std::string(more) + "}";
}

std::string assumed_of(const Job& job, std::string_view key) {
  for (const auto& all : {job.assumed_names, job.work().assumed})
    for (const Assumed& each : all)
      if (each.key == key) return each.why;
  return {};
}

}  // namespace

TEST_CASE("A high opening is a house door's, unless the spec says otherwise, and that is told") {
  const Assembly house = work(wardrobe()).assembly;
  const Assembly cabinet = work(wardrobe(R"(, "use": "cabinet")")).assembly;
  CHECK(piece(house, "left stile").horn == mm(25));
  CHECK(piece(cabinet, "left stile").horn == mm(0));
  CHECK(piece(cabinet, "left stile").blank[2] == mm(20));
  CHECK(assumed_of(*job(wardrobe()), "use") == "its opening is over 60 in (1524 mm) high");
  CHECK(assumed_of(*job(wardrobe(R"(, "use": "cabinet")")), "use").empty());
  CHECK(refused_at(wardrobe(R"(, "use": "barn")")) == "/use");
}

TEST_CASE("A small house door may be said to be one") {
  const Assembly hatch = work(cabinet_mm(R"("use": "house")")).assembly;
  CHECK(piece(hatch, "left stile").blank[2] == mm(44));
}

TEST_CASE("A house door's gap at the foot and its lock rail are at their usual places") {
  const Assembly leaf = work(bare_house_mm()).assembly;
  CHECK(leaf.fits.front().room.foot == mm(10));
  CHECK(placed_blank(piece(leaf, "lock rail")).high[1] == mm(965));
  const Assembly imperial = work(bare_house_in()).assembly;
  CHECK(imperial.fits.front().room.foot == inch(0, 3, 8));
  CHECK(placed_blank(piece(imperial, "lock rail")).high[1] == inch(38));
  // One length for all sides holds for the foot too.
  CHECK(work(house_mm(R"("clearance": 4)")).assembly.fits.front().room.foot == mm(4));
}

TEST_CASE("Two overlay leaves stand 3 mm apart") {
  const Assembly pair = work(cabinet_mm(R"("meets": "overlay", "lap": 12, "leaves": 2)")).assembly;
  for (const Fit& fit : pair.fits)
    if (fit.stands == StandsIn::beside) CHECK(std::max(fit.room.left, fit.room.right) == mm(3));
}

TEST_CASE("A set is for what its height says, and says so once") {
  const std::string set = R"({"kind": "doorset", "units": "mm",
      "frame": {"leaf": {"width": 500, "height": 1700}}, "leaf": {})";
  CHECK(piece(work(set + "}").assembly, "left stile").horn == mm(25));
  CHECK(piece(work(set + R"(, "use": "cabinet"})").assembly, "left stile").blank[2] == mm(20));
  CHECK(assumed_of(*job(set + "}"), "use") == "its opening is over 60 in (1524 mm) high");
  CHECK(refused_at(R"({"kind": "doorset", "units": "mm",
      "frame": {"leaf": {"width": 500, "height": 1700}}, "leaf": {"use": "cabinet"}})") ==
        "/leaf/use");
}

}  // namespace haunch::test
