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

}  // namespace haunch::test
