// The set-ups of single items, as their joiner would order the work.
#include "setup.h"

#include <algorithm>
#include <set>

#include "../vocabulary.h"
#include "setups_report.h"

namespace haunch {
namespace {

using namespace test;

SetupsReport setups_of(const std::string& spec, std::vector<Machine> machines = {}) {
  std::vector<ItemReport> items;
  items.push_back(std::move(
      *report_item(std::move(read_job(value_of(spec), nullptr, "job").job), kWantedForSetups)
           .report));
  const Unit unit = items.front().job->unit;
  return report_setups(std::move(items), std::move(machines), "", unit);
}

std::string side_door(const std::string& more = "") {
  return bare_house_mm(R"("stile_width": 118, "rail_widths": [118, 195, 230], "panels": 4,)"
                       R"("tenon_depth": 76, "groove_depth": 13)" +
                       more);
}

std::vector<const Setup*> all_that(const SetupsReport& report, const std::string& operation) {
  std::vector<const Setup*> all;
  for (const Setup& setup : report.plan.setups)
    if (setup.operation() == operation) all.push_back(&setup);
  return all;
}

std::size_t place_of(const SetupsReport& report, const std::string& operation) {
  const auto& setups = report.plan.setups;
  const auto its = std::find_if(setups.begin(), setups.end(),
                                [&](const Setup& it) { return it.operation() == operation; });
  REQUIRE(its != setups.end());
  return static_cast<std::size_t>(its - setups.begin());
}

std::set<std::string> marks_in(const SetupsReport& report, const Setup& setup) {
  std::set<std::string> marks;
  for (const SetupPiece& piece : setup.pieces)
    marks.insert(report.piece_of(piece).mark);
  return marks;
}

TEST_CASE("All mortises of the side door are one set-up, and so are all its tenons and grooves") {
  const SetupsReport report = setups_of(side_door());
  for (const char* operation : {"mortise", "tenon", "tenon-haunch", "groove", "glue-up"})
    CHECK(all_that(report, operation).size() == 1);
  CHECK(marks_in(report, *all_that(report, "mortise").front()) ==
        std::set<std::string>{"A", "B", "C", "D", "E"});
}

TEST_CASE("Wood is sawn and milled over size, rests, is milled to size, jointed and glued up") {
  const SetupsReport report = setups_of(side_door());
  const char* const order[] = {"crosscut-over-length",
                               "rip-over-width",
                               "first-face-and-edge",
                               "first-thickness",

                               "thickness",
                               "rip-to-width",
                               "crosscut-to-length",
                               "mortise",
                               "tenon",
                               "groove",
                               "glue-up",
                               "crosscut-after-glue-up"};
  for (std::size_t i = 1; i < std::size(order); ++i) {
    INFO(order[i]);
    CHECK(place_of(report, order[i - 1]) < place_of(report, order[i]));
  }
  CHECK(all_that(report, "first-thickness").back()->rest_days == 1);
}

TEST_CASE("Panels that share a tier are ripped at one setting, whichever gets the odd step") {
  // 606 between the stiles' edges less two muntins, and 13 in each of six grooves: no third of it
  // is a whole number of steps.
  const SetupsReport report = setups_of(bare_house_mm(
      R"("stile_width": 118, "rail_widths": [118, 195, 230], "panels": 6, "groove_depth": 13)"));
  std::set<Length> widths;
  for (const Piece& piece : report.items.front().wood.pieces)
    if (piece.role == Role::panel) widths.insert(piece.blank[1]);
  CHECK(widths.size() == 2);
  std::size_t settings = 0;
  for (const Setup* setup : all_that(report, "rip-to-width"))
    if (report.piece_of(setup->pieces.front()).role == Role::panel) ++settings;
  CHECK(settings == 1);
}

TEST_CASE("A rail 840 long and 118 wide is sawn 25 longer, 6 wider and 2.5 thicker first") {
  const SetupsReport report = setups_of(side_door());
  const auto has_setting = [&](const std::string& operation, SizeName name, double size) {
    const auto all = all_that(report, operation);
    return std::any_of(all.begin(), all.end(), [&](const Setup* setup) {
      return size_of(setup->settings, name) == mm(size) && marks_in(report, *setup).contains("C");
    });
  };
  CHECK(has_setting("crosscut-over-length", SizeName::length, 865));
  CHECK(has_setting("rip-over-width", SizeName::width, 124));
  CHECK(has_setting("first-thickness", SizeName::thickness, 46.5));
  CHECK(has_setting("thickness", SizeName::thickness, 44));
  CHECK(has_setting("rip-to-width", SizeName::width, 118));
  CHECK(has_setting("crosscut-to-length", SizeName::length, 840));
}

TEST_CASE("A stile is crosscut with its horns, which come off once the leaf is glued up") {
  const SetupsReport report = setups_of(side_door());
  const Setup& off = *all_that(report, "crosscut-after-glue-up").front();
  CHECK(marks_in(report, off) == std::set<std::string>{"A", "B"});
  CHECK(size_of(off.settings, SizeName::length) == mm(2047));
  const Setup& mortises = *all_that(report, "mortise").front();
  CHECK(mortises.pieces.front().horn == mm(25));
}

TEST_CASE("A panel wider than a board is glued up of strips before it is milled to size") {
  const SetupsReport report = setups_of(side_door());
  const Setup& glued = *all_that(report, "glue-up-boards").front();
  CHECK(marks_in(report, glued) == std::set<std::string>{"H", "I", "J", "K"});
  // 319 and 6 over are three strips of 108 1/3; each has 3 for jointing at both edges.
  CHECK(size_of(glued.settings, SizeName::width) == mm(325));
  const auto ripped = all_that(report, "rip-over-width");
  CHECK(std::any_of(ripped.begin(), ripped.end(), [&](const Setup* setup) {
    return size_of(setup->settings, SizeName::width) == mm(115) &&
           marks_in(report, *setup).contains("H");
  }));
  for (const Setup* setup : ripped)
    for (const SetupPiece& piece : setup->pieces)
      CHECK(piece.strips == (report.piece_of(piece).role == Role::panel ? 3 : 1));
  CHECK(glued.pieces.front().strips == 1);
}

TEST_CASE(
    "The first tenon goes into its mortise, and is no looser than a quarter of a millimetre") {
  const SetupsReport report = setups_of(side_door());
  const auto first = all_that(report, "tenon").front()->first_piece;
  REQUIRE(first);
  CHECK(first->size == SizeName::thickness);
  CHECK(first->wanted == mm(14.85));
  CHECK(first->least == mm(14.75));
  CHECK(first->most == mm(15));
}

TEST_CASE("Where the shop says how far off it may be, the first piece is held to that") {
  const SetupsReport report =
      setups_of(side_door(R"(, "tolerance": {"tenon_thickness": 0.05, "groove_width": 0.08})"));
  CHECK(all_that(report, "tenon").front()->first_piece->least == mm(14.8));
  CHECK(all_that(report, "tenon").front()->first_piece->most == mm(14.9));
  CHECK(all_that(report, "groove").front()->first_piece->most == mm(15.08));
}

TEST_CASE("Panels that are rebated at both faces: the second is set by what the first has left") {
  const SetupsReport report =
      setups_of(side_door(R"(, "panel": {"thickness": 20.6, "rebate": "both"})"));
  int told = 0;
  for (const Setup* setup : all_that(report, "rebate"))
    for (const SetupPiece& piece : setup->pieces)
      if (piece.second_face) {
        ++told;
        CHECK(piece.second_face->leaves == mm(14.6));  // the tongue
        CHECK(piece.second_face->most == mm(4.5));     // 3 a side, 1.5 more at most
      }
  CHECK(told > 0);
}

TEST_CASE("Moulded edges are run after the shoulders are coped over them") {
  const SetupsReport report =
      setups_of(side_door(R"(, "edge": {"kind": "coped", "profile": "ovolo"})"));
  CHECK(place_of(report, "cope-face-cope") < place_of(report, "mould"));
}

TEST_CASE("What is let in where a door hangs is cut when it is glued up") {
  const SetupsReport report = setups_of(
      side_door(R"(, "hinges": {"number": 3, "length": 100, "width": 38, "thickness": 3})"));
  CHECK(place_of(report, "glue-up") < place_of(report, "recess-after-glue-up"));
}

TEST_CASE("A door alone takes as many set-ups as there are settings; piece by piece many more") {
  const SetupCount count = setups_of(side_door()).plan.count;
  CHECK(count.setups == count.lower_bound);
  CHECK(count.piece_by_piece > 3 * count.setups);
  CHECK(count.machine_changes >= count.fewest_machine_changes);
}

TEST_CASE("What no machine of the shop does is told, and all else is told too") {
  Machine saw;
  saw.name = "saw";
  for (std::size_t process = 0; process < std::size(kWords<Process>); ++process)
    if (static_cast<Process>(process) != Process::mortise)
      saw.does.push_back(static_cast<Process>(process));
  const SetupsReport report = setups_of(side_door(), {saw});
  const Setup& mortises = *all_that(report, "mortise").front();
  CHECK_FALSE(mortises.machine);
  CHECK(mortises.pieces.front().findings.front().fault == WayFault::no_machine);
  CHECK(report.has_findings());
  CHECK(all_that(report, "tenon").size() == 1);
}

}  // namespace
}  // namespace haunch
