// What is looked for is what a view prints: told by the effort that it takes.
#include "report.h"

#include "allowance.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// A door whose panels leave their grooves in the dry season, and whose lock rail stands too high.
const std::string& troubled() {
  static const std::string spec = house_mm(
      R"("rail_widths": [100, {"width": 195, "top": 1000}, 230], "groove_depth": 4,
         "species": "white oak", "moisture": {"low": 4, "build": 8, "high": 16})");
  return spec;
}

std::int64_t effort_of(Section section, Format format) {
  View view;
  view.section = section;
  view.format = format;
  const std::int64_t before = effort_spent();
  const ItemOutcome outcome = report_item(job(troubled()), wanted_for(view));
  REQUIRE(outcome.report);
  CHECK(outcome.report->worst() == Status::fail);
  return effort_spent() - before;
}

}  // namespace

TEST_CASE("Remedies are looked for only where they are printed") {
  const std::int64_t checks_alone = effort_of(Section::cutlist, Format::table);
  CHECK(effort_of(Section::joints, Format::table) == checks_alone);
  CHECK(effort_of(Section::season, Format::csv) == checks_alone);
  CHECK(effort_of(Section::sheet, Format::csv) == checks_alone);  // its cut list
  const std::int64_t of_season = effort_of(Section::season, Format::table);
  CHECK(of_season > checks_alone);
  CHECK(effort_of(Section::season, Format::json) == of_season);
  const std::int64_t of_findings = effort_of(Section::check, Format::csv) - checks_alone;
  CHECK(of_findings > 0);
  CHECK(effort_of(Section::check, Format::table) == checks_alone + of_findings);
  CHECK(effort_of(Section::sheet, Format::table) == of_season + of_findings);
  CHECK(effort_of(Section::check, Format::json) == of_season + of_findings);
}

TEST_CASE("Where only the wood is wanted nothing is checked") {
  const std::int64_t before = effort_spent();
  const ItemOutcome outcome = report_item(job(troubled()), {});
  CHECK(effort_spent() == before);
  REQUIRE(outcome.report);
  CHECK(outcome.report->findings.empty());
  CHECK_FALSE(outcome.report->remedies);
}

TEST_CASE("A piece with strips is cut less those that are thicker than half a millimetre") {
  // A shelf 600 x 300 with 2 in front, 0.4 at the rear, 1 at its left end.
  Assembly wood;
  Piece shelf;
  shelf.mark = "A";
  shelf.name = "shelf";
  shelf.role = Role::shelf;
  shelf.blank = {mm(600), mm(300), mm(18)};
  shelf.place.axes = {Axis::x, Axis::z, Axis::y};
  shelf.strips = {{0, false, mm(2), "oak"}, {0, true, mm(0.4), "oak"}, {1, false, mm(1), "oak"}};
  wood.pieces = {shelf};
  const auto reading = read_json(R"({"kind": "cabinet", "units": "mm",
      "size": {"width": 600, "height": 700, "depth": 300}, "quantity": 3})");
  const JobReading item = read_job(*reading.value, nullptr, "item");
  REQUIRE(item.job);
  const std::vector<CutRow> cuts = cut_list(wood, *item.job);
  REQUIRE(cuts.size() == 1);
  CHECK(cuts[0].length == mm(600));
  CHECK(cuts[0].saw_length == mm(599));
  CHECK(cuts[0].width == mm(300));
  CHECK(cuts[0].saw_width == mm(298));
  REQUIRE(cuts[0].strips.size() == 3);
  CHECK(cuts[0].strips[0].edge == "front");
  CHECK(cuts[0].strips[1].edge == "rear");
  CHECK(cuts[0].strips[2].edge == "left");
  // Three of them: 3 x 600 of the 2 in front, of the 0.4 as much, 3 x 300 of the 1.
  const std::vector<StripTotal> strips = strip_totals(cuts);
  REQUIRE(strips.size() == 3);
  CHECK(strips[0].length == mm(1800));
  CHECK(strips[1].length == mm(1800));
  CHECK(strips[2].length == mm(900));
  CHECK(strips[0].width == mm(18));
}

}  // namespace haunch::test
