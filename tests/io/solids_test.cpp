// An item's pieces as files.
#include "solids.h"

#include <algorithm>

#include "vocabulary.h"

namespace haunch::test {
namespace {

ItemReport report_of(const std::string& spec) {
  JobReading reading = read_job(value_of(spec), nullptr, "K1/2");
  REQUIRE(reading.job);
  return *report_item(std::move(reading.job), {.making = true}).report;
}

void cut_out(Piece& piece, const Box& box) {
  piece.features.push_back({FeatureKind::recess, {}, {box}, {}});
}

}  // namespace

TEST_CASE("Each piece has one solid, in its item's folder") {
  const ItemReport item = report_of(cabinet_mm());
  const ItemSolids solids = solids_of(item);
  CHECK(solids.faults.empty());
  std::size_t steps = 0;
  for (const FolderFile& file : solids.files) {
    CHECK(file.name.starts_with("K1%2F2/"));
    if (file.name.ends_with(".step")) ++steps;
  }
  CHECK(steps == item.wood.pieces.size());
  CHECK(solids.files.front().name == "K1%2F2/A.step");
  CHECK(solids.files[1].name == "K1%2F2/A-right.svg");
}

TEST_CASE("A piece that is cut in two is no solid, and its item has no files") {
  ItemReport item = report_of(cabinet_mm());
  Piece& rail = item.wood.pieces[2];
  cut_out(rail, {{mm(100), mm(0), mm(0)}, {mm(102), rail.blank[1], rail.blank[2]}});
  const ItemSolids solids = solids_of(item);
  CHECK(solids.files.empty());
  REQUIRE(solids.faults.size() == 1);
  CHECK(solids.faults.front() == "top rail C is no solid: its cuts leave 2 parts");
}

TEST_CASE("A piece that nothing is left of is no solid") {
  ItemReport item = report_of(cabinet_mm());
  Piece& rail = item.wood.pieces[2];
  cut_out(rail, {{}, rail.blank});
  CHECK(solids_of(item).faults == std::vector<std::string>{"top rail C is no solid: its cuts leave "
                                                           "nothing of it"});
}

}  // namespace haunch::test
