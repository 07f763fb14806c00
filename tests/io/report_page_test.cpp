// The sheet's head, cut list, checks and what was given and assumed.
#include "report_page.h"

#include "emphasis.h"
#include "pages.h"
#include "report.h"

namespace haunch::test {
namespace {

ItemReport report_on(std::string_view spec, Wanted wanted) {
  ItemOutcome outcome = report_item(job(spec), wanted);
  if (!outcome.report) throw std::invalid_argument("refused: " + in_lines(outcome.problems));
  return std::move(*outcome.report);
}

std::string page_of(const ItemReport& report, Section section, Unit unit = Unit::mm) {
  View view;
  view.section = section;
  view.full = true;
  return in_words_only(item_page(report, view, unit));
}

std::string cut_list_of(std::string_view spec) {
  return page_of(report_on(spec, {.checks = true, .cutlist = true}), Section::cutlist);
}

std::string checks_of(std::string_view spec) {
  return page_of(report_on(spec, {.checks = true}), Section::check);
}

}  // namespace

TEST_CASE("The head tells the job, its size, its wood and its opening") {
  const std::string page = cut_list_of(
      cupboard(R"("id": "flour", "name": "flour cupboard", "quantity": 3, "species": "oak",
                  "note": "painted", "panel": {"kind": "board", "material": "birch plywood",
                  "thickness": 8})"));
  INFO(page);
  CHECK(tells(page,
              "flour: flour cupboard, 3 off; sizes in mm leaf 400 wide, 700 high, 20 thick, "
              "oak; panels of birch plywood opening 406 x 706, gaps left 3, right 3, head 3, "
              "foot 3 note: painted all "));
}

TEST_CASE("Where no wood is named the head says that the weight is not known") {
  CHECK(tells(cut_list_of(cupboard(R"("horn": 0)")),
              "700 high, 20 thick; weight not known: no wood is named opening"));
  // What has a name but no density is cautioned of.
  CHECK_FALSE(tells(cut_list_of(cupboard(R"("species": "LVL")")), "LVL; weight not known"));
}

TEST_CASE("A job set out in one unit says so where it is told in the other") {
  const ItemReport report = report_on(cabinet_in(), {.checks = true, .cutlist = true});
  CHECK(tells(page_of(report, Section::cutlist), "sizes in mm, set out in inches"));
  CHECK(tells(page_of(report, Section::cutlist, Unit::inch), "sizes in inches leaf "));
}

TEST_CASE("The cut list counts for all of the quantity, alike pieces in one row") {
  // Rails 400 - 120 + 2 x 40; the panel 280 + 2 x 6 by 560 + 2 x 8.
  const std::string page = cut_list_of(cupboard(R"("quantity": 3, "panel": {"thickness": 8})"));
  INFO(page);
  CHECK(tells(page,
              "CUT LIST, for all 3 part pieces length width thick grain marks stiles 6 700 60 "
              "20 A B top rail 3 360 60 20 C bottom rail 3 360 80 20 D panels 3 576 292 8 "
              "upright E"));
}

TEST_CASE("What is sawn longer than it stays says why") {
  const std::string horns = cut_list_of(house(R"("groove_depth": 12, "horn": 20)"));
  INFO(horns);
  CHECK(tells(horns, "stiles 2 2054 2094 100 44.0 A B"));
  CHECK(tells(horns, "saw to: with a horn at each end, sawn off after glue-up"));
  const std::string through =
      cut_list_of(house_mm(R"("horn": 0, "joint": "through", "tenon_over": 2)"));
  INFO(through);
  CHECK(tells(through, "saw to: rails with wood at the ends of their tenons, planed off"));
}

TEST_CASE("A check that fails is told with its figure, its limit and what to do") {
  const std::string spec = cupboard(R"("panel": {"gap": {"across_grain": 7, "along_grain": 1}})");
  const ItemReport report = report_on(spec, {.checks = true, .remedies = true});
  const std::string page = page_of(report, Section::check);
  INFO(page);
  CHECK(tells(page, "2 of 76 checks fail"));
  CHECK(tells(page, "FAIL panel-bite A B E (J5 J6): 2 mm"));
  CHECK(tells(page, "remedy: "));
}

TEST_CASE("Checks that pass are told by rule, with their least and greatest figure") {
  const std::string page = checks_of(cupboard());
  INFO(page);
  CHECK(tells(page, "all 76 checks pass"));
  CHECK(tells(page, "passes places least greatest at least at most"));
  CHECK(tells(page, "panel-bite 4 6.00 8.00 3.00 "));
}

TEST_CASE("What was given is told in both units, what was assumed with its reason") {
  const ItemReport report =
      report_on(cupboard(), {.checks = true, .cutlist = true, .making = true});
  const std::string page = page_of(report, Section::sheet);
  INFO(page);
  CHECK(tells(page, "GIVEN, as it was read key written mm in opening.width 406 406 15 63/64"));
  CHECK(tells(page, "fit_allowance 0.15 a film of glue on each cheek"));
}

TEST_CASE("The rooms of a set are told from the wall in to the leaf") {
  const std::string page =
      page_of(report_on(R"({"kind": "doorset", "units": "mm", "leaf": {"hinges": {"number": 2}},
                    "frame": {"wall_opening": {"width": 1000, "height": 2100}}})",
                        {.checks = true, .cutlist = true, .making = true}),
              Section::sheet);
  INFO(page);
  CHECK(tells(page, "set 986 wide, 2093 high"));
  CHECK(tells(page, "FROM WALL TO LEAF width height wall opening 1000 2100"));
}

TEST_CASE("A figure that was rounded for the page is marked, and the mark is explained") {
  const ItemReport report =
      report_on(cupboard(R"("joint": "mitre")", "[60, 60]"), {.checks = true, .making = true});
  CHECK(tells(page_of(report, Section::joints), "~ stands before a figure that was rounded"));
  CHECK_FALSE(tells(cut_list_of(cupboard()), "~"));
}

TEST_CASE("a sheet begins with what is wrong, and is short", "[page]") {
  const ItemReport report = report_on(
      R"({"kind": "door", "units": "mm", "opening": {"width": 560, "height": 720}, "stile_width": 55,
          "groove_depth": 5.5, "mortise": {"from_face": 2.5}})",
      wanted_for({}));
  const std::string page = item_page(report, {}, Unit::mm);
  CHECK(page.find("FAIL") < page.find("CUT LIST"));
  CHECK(page.find("ASSUMED") == std::string::npos);
  CHECK(page.find("values are assumed, not stated") != std::string::npos);
}

TEST_CASE("columns that the page has no room for stand below, with their titles", "[page]") {
  TextTable table({"part", "length", "width", "remarks"});
  table.add({"rail", mm(840), mm(118), "of the drier boards"});
  CHECK(table.text(LengthPrinter(Unit::mm, {}, 36), 2) ==
        "  part  length  width\n"
        "      remarks\n"
        "  rail     840    118\n"
        "      of the drier boards\n");
  CHECK(table.text(LengthPrinter(Unit::mm, {}), 2) ==
        "  part  length  width  remarks\n"
        "  rail     840    118  of the drier boards\n");
}

TEST_CASE("no line is broken within a number", "[page]") {
  CHECK(wrapped("the rail is 37 63/64 +0.0078 long", 18, 0) ==
        "the rail is\n37 63/64 +0.0078\nlong");
  CHECK(wrapped("0 to 77, 129.5 to 164.5", 16, 0) == "0 to 77,\n129.5 to 164.5");
  CHECK(fitted("  a line that is too long\nshort\n", 14) ==
        "  a line\n    that is\n    too long\nshort\n");
}

TEST_CASE("figures for the bench are such as can be marked, and of fits such as can be set",
          "[figures]") {
  bool rounded = false;
  const LengthPrinter lengths(Unit::mm, kBenchLengths, kPageWidth, &rounded);
  CHECK(lengths.one(mm(60.3)) == "60.3");
  CHECK(lengths.one(mm(60)) == "60");
  CHECK_FALSE(rounded);
  CHECK(lengths.one(mm(60.35)) == "60.4");
  CHECK(lengths.fine().one(mm(14.575)) == "14.58");
  CHECK(lengths.exact().one(mm(14.575)) == "14.575");
  CHECK(rounded);
}

TEST_CASE("what is not nothing is never printed as nothing", "[figures]") {
  const LengthPrinter lengths(Unit::mm, kBenchLengths);
  CHECK(lengths.one(mm(0.04)) == "0.04");
  CHECK(lengths.one(mm(-0.04)) == "-0.04");
  CHECK(lengths.one(Length()) == "0");
  CHECK(LengthPrinter(Unit::inch, kBenchLengths).one(Length::from_inch_parts(3, 1000)) == "0.003");
}

TEST_CASE("beside a fraction stands only what is more than a joiner marks", "[figures]") {
  const auto inches = [](std::int64_t parts, std::int64_t of) {
    return Length::from_inch_parts(parts, of);
  };
  const LengthPrinter lengths(Unit::inch, kBenchLengths);
  CHECK(lengths.one(inches(5, 16) - inches(6, 1000)) == "5/16");
  CHECK(lengths.fine().one(inches(5, 16) - inches(6, 1000)) == "5/16 -0.006");
  const LengthPrinter sixteenths(Unit::inch, {16, 1, false});
  CHECK(sixteenths.one(inches(2, 1) + inches(1, 64)) == "2 +0.0156");
  CHECK(sixteenths.one(inches(2, 1) + inches(1, 128)) == "2");
}

TEST_CASE("a figure says the length that is added up with", "[figures]") {
  const LengthPrinter lengths(Unit::mm, kBenchLengths);
  CHECK(lengths.as_printed(mm(76.64)) == mm(76.6));
  CHECK(lengths.as_printed(mm(129.96)) - lengths.as_printed(mm(76.64)) == mm(53.4));
  CHECK(LengthPrinter(Unit::mm, {}).as_printed(mm(76.64)) == mm(76.64));
}

TEST_CASE("a column has as many decimals as its finest figure", "[figures]") {
  TextTable table({"part", "thick"});
  table.add({"rail", mm(20)});
  table.add({"panel", Cell::of_fit(mm(7.555))});
  CHECK(table.text(LengthPrinter(Unit::mm, kBenchLengths), 2) ==
        "  part   thick\n"
        "  rail   20.00\n"
        "  panel   7.56\n");
}

TEST_CASE("what stands out says the same without, and nothing else stands out", "[emphasis]") {
  const std::string page =
      "oak: door\n  2 of 76 checks fail, 1 caution\n\n  FAIL  panel-bite: 2 mm\n"
      "  caution  tenon-depth: 38 mm\n  with caution; he may fail\n";
  const std::string strong = emphasised(page);
  CHECK(strong ==
        "oak: door\n  2 of 76 checks \x1B[1;7mfail\x1B[0m, 1 \x1B[1mcaution\x1B[0m\n\n"
        "  \x1B[1;7mFAIL\x1B[0m  panel-bite: 2 mm\n"
        "  \x1B[1mcaution\x1B[0m  tenon-depth: 38 mm\n  with caution; he may fail\n");
  CHECK(emphasised("") == "");
  CHECK(emphasised("\n\f\n") == "\n\f\n");
}

}  // namespace haunch::test
