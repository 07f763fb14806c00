// A piece of work through its seasons, as the page tells it: the figures are made up here.
#include "season_page.h"

#include "report_rows.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// Two panels that do the same in a leaf that fills its opening in the wet.
ItemReport cupboard_door() {
  ItemReport report;
  report.job = job(cabinet_mm(
      R"("panels": 2, "species": "white oak", "moisture": {"low": 6, "build": 9, "high": 14})"));
  report.wood = work(*report.job).assembly;
  SeasonReport seasons;
  seasons.moisture = report.job->season->moisture;
  const AtEach<PanelState> panel = {PanelState{mm(118.038), mm(5.5), mm(3.5)},
                                    PanelState{mm(120), mm(4.5), mm(4.5)},
                                    PanelState{mm(123), mm(3), mm(6)}};
  for (std::size_t piece = 0; piece < report.wood.pieces.size(); ++piece)
    if (report.wood.pieces[piece].role == Role::panel) seasons.panels.push_back({piece, panel});
  LeafSeason leaf;
  leaf.at[kLow] = {mm(395), mm(696), {mm(2.5), mm(2.5), mm(2), mm(2)}};
  leaf.at[kBuild] = {mm(396), mm(696), {mm(2), mm(2), mm(2), mm(2)}};
  leaf.at[kHigh] = {mm(400), mm(697), {mm(0), mm(0), mm(2), mm(1)}};
  seasons.leaves = {leaf};
  seasons.tenons = {{0, {mm(37.5), mm(38), mm(38.6)}}, {1, {mm(37.5), mm(38), mm(38.6)}}};
  seasons.widest_glued = mm(100);
  report.seasons = seasons;
  report.weights = weigh(report.wood, *report.job);
  return report;
}

std::string page_of(const ItemReport& report, Unit unit = Unit::mm) {
  return text_of(season_page(report, LengthPrinter(unit, {})));
}

bool tells(const std::string& page, std::string_view words) {
  return page.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("Panels that do the same share their rows, to the hundredth of a millimetre") {
  const std::string page = page_of(cupboard_door());
  INFO(page);
  CHECK(tells(page, "SEASONS: built at 9 %, from 6 % at its driest to 14 % at its wettest\n"));
  CHECK(tells(page, "F G    width                                  118.04  120.0   123\n"));
}

TEST_CASE("Gaps are told at each moisture, and those to leave at the bench once more") {
  const std::string page = page_of(cupboard_door());
  INFO(page);
  CHECK(tells(page, "gap right          2.5    2     0\n"));
  CHECK(tells(page, "leave panels F G a gap of 4.5"));
  CHECK(tells(page, "hang the leaf with 2 left, 2 right, 2 head and 2 foot\n"));
}

TEST_CASE("Tenons that are as wide as each other are one row") {
  const std::string page = page_of(cupboard_door());
  INFO(page);
  CHECK(tells(page, "width of each tenon  37.5   38  38.6  100   J1 J2\n"));
}

TEST_CASE("What is not weighed is named, and what it is of") {
  ItemReport report = cupboard_door();
  CHECK(tells(page_of(report), "weight at 9 %: 2.8 kg, of which A 0.5 kg"));
  CHECK(tells(page_of(report, Unit::inch), "weight at 9 %: 6.3 lb, of which A 1.2 lb"));
  report.wood.pieces[5].material = "birch plywood";
  report.weights = weigh(report.wood, *report.job);
  CHECK(
      tells(page_of(report), "weight not known: no density for birch plywood: F; at 9 % the rest"));
  for (Piece& piece : report.wood.pieces)
    piece.material = "LVL";
  report.weights = weigh(report.wood, *report.job);
  CHECK(tells(page_of(report), "weight not known: no density for LVL: A B C D E F G"));
}

TEST_CASE("Remedies that were tried are told with what came of them") {
  ItemReport report = cupboard_door();
  CHECK_FALSE(tells(page_of(report), "does not bear"));
  report.season_remedies = SeasonRemedies{
      {{"panels", "2", "3", true}, {"grain", "flat-sawn", "quarter-sawn", false}}, false};
  const std::string page = page_of(report);
  INFO(page);
  CHECK(tells(page, "    panels: 3 instead of 2: helps\n"));
  CHECK(
      tells(page, "    grain: quarter-sawn instead of flat-sawn: does not help by itself, nor\n"));
  CHECK(tells(page, "    not all was tried: it would take too long\n"));
}

TEST_CASE("In JSON a weight that is not known is null, and a search that ended early is stopped") {
  ItemReport report = cupboard_door();
  report.weights->pieces.assign(report.wood.pieces.size(), {});
  report.season_remedies = SeasonRemedies{{}, false};
  std::string text;
  JsonText json(text, Unit::mm);
  write_json(json, SeasonTold{report});
  INFO(text);
  CHECK(tells(text, R"("weight": null, "remedies": [], "remedy_search": "stopped"})"));
  CHECK(tells(text, R"("leaf": {)"));
}

}  // namespace haunch::test
