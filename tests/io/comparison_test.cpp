// What changes when a size changes, as a joiner would tell it.
#include "comparison.h"

#include "catch.h"
#include "comparison_csv.h"
#include "comparison_json.h"
#include "comparison_page.h"
#include "pages.h"

namespace haunch::test {
namespace {

ItemReport report_of(std::string_view spec) {
  ItemOutcome outcome = report_item(job(spec), kCompared);
  if (!outcome.report) throw std::invalid_argument("refused: " + in_lines(outcome.problems));
  return std::move(*outcome.report);
}

ItemComparison compared(std::string_view was, std::string_view is) {
  return compare(report_of(was), report_of(is));
}

/// A house door with two panels in each of two tiers; 3 clear all round, stiles 100, rails 100, 150
/// and 200, tenons 65 deep.
std::string door(int width = 930, int height = 2060, std::string_view more = {}) {
  return door_spec(R"("units": "mm", "id": "door", "clearance": 3, "thickness": 44,
                      "stile_width": 100, "rail_widths": [100, {"width": 150, "top": 965}, 200],
                      "panels": 4, "tenon_depth": 65, "groove_depth": 12, "opening": {"width": )" +
                       std::to_string(width) + R"(, "height": )" + std::to_string(height) + "}",
                   more);
}

const PieceChange& piece_of(const ItemComparison& item, std::string_view key) {
  for (const PieceChange& piece : item.changed_pieces)
    if (piece.key == key) return piece;
  throw std::invalid_argument(std::string(key) + " does not change");
}

/// What a figure of a piece changes by.
std::optional<Length> by(const ItemComparison& item, std::string_view key, std::string_view what) {
  for (const FigureChange& figure : piece_of(item, key).cut.figures)
    if (figure.what == what) return figure.by();
  return {};
}

/// An order worked in a small shop.
SetupsReport order_of(std::initializer_list<std::string> specs) {
  std::vector<ItemReport> items;
  for (const std::string& spec : specs)
    items.push_back(report_of(spec));
  return report_setups(std::move(items), usual_machines(Unit::mm), "", Unit::mm);
}

Comparison both(const std::string& was, const std::string& is) {
  return compare(order_of({was}), order_of({is}));
}

std::string page_of(const std::string& was, const std::string& is, Unit unit = Unit::mm) {
  return in_words_only(
      comparison_page(both(was, is), {"old", "new"}, LengthPrinter(unit, kBenchLengths)));
}

/// The places of one kind that change on a piece, each with what it is called and by how much.
std::vector<std::pair<std::string, Length>> moved(const ItemComparison& item, std::string_view key,
                                                  FeatureKind makes) {
  std::vector<std::pair<std::string, Length>> all;
  for (const PlaceChange& place : item.making.changed_places)
    if (place.any().piece == key && place.any().setting.makes == makes)
      for (const FigureChange& figure : place.place.figures)
        if (figure.by()) all.emplace_back(figure.what, *figure.by());
  return all;
}

using Moved = std::vector<std::pair<std::string, Length>>;

}  // namespace

TEST_CASE("An opening 20 wider: rails are 20 longer, two panels in a tier 10 wider each") {
  const ItemComparison item = compared(door(930), door(950));
  for (const char* rail : {"leaf/top-rail", "leaf/middle-rail-1", "leaf/bottom-rail"}) {
    CHECK(by(item, rail, "length") == mm(20));
    CHECK(by(item, rail, "shoulder_to_shoulder_face") == mm(20));
    CHECK_FALSE(by(item, rail, "width"));
  }
  for (const char* panel : {"leaf/tier-1/panel-1", "leaf/tier-2/panel-2"}) {
    CHECK(by(item, panel, "width") == mm(10));
    CHECK_FALSE(by(item, panel, "length"));
  }
  // Two stiles and two muntins are as they were.
  CHECK(item.pieces == Tallied{11, 11, 4});
  CHECK(item.cut_alike == 4);
  CHECK(item.marks.empty());
}

TEST_CASE("An opening 20 wider: the muntins' mortises come 10 further along, nothing else moves") {
  const ItemComparison item = compared(door(930), door(950));
  for (const char* rail : {"leaf/top-rail", "leaf/bottom-rail"})
    CHECK(moved(item, rail, FeatureKind::mortise) ==
          Moved{{"near", mm(10)}, {"from_shoulder", mm(10)}});
  CHECK(item.making.changed_places.size() == 4);  // one above, one below the middle rail
  CHECK(item.making.changed_settings.empty());
  CHECK(item.making.settings.same == item.making.settings.is);
}

TEST_CASE("An opening 20 higher: stiles and what stands above the lock rail are 20 longer") {
  const ItemComparison item = compared(door(930, 2060), door(930, 2080));
  CHECK(by(item, "leaf/left-stile", "length") == mm(20));
  CHECK(by(item, "leaf/left-stile", "saw_length") == mm(20));
  CHECK(by(item, "leaf/tier-1/muntin-1", "length") == mm(20));
  CHECK(by(item, "leaf/tier-1/panel-2", "length") == mm(20));
  CHECK(item.changed_pieces.size() == 5);
  CHECK(moved(item, "leaf/right-stile", FeatureKind::mortise) == Moved{{"near", mm(20)}});
}

TEST_CASE("Looser tenons are a setting of cheeks, not new pieces") {
  const ItemComparison item = compared(door(930, 2060, R"("fit_allowance": 0.1)"),
                                       door(930, 2060, R"("fit_allowance": 0.3)"));
  CHECK(item.cut_alike == 11);
  REQUIRE(item.making.changed_settings.size() == 2);  // tenons, and their haunches
  const SettingChange& cheeks = item.making.changed_settings.front();
  CHECK(cheeks.turn() == Turn::changes);
  CHECK(cheeks.setting.figures.front().what == "thickness");
  CHECK(cheeks.setting.figures.front().by() == -mm(0.2));
  CHECK(piece_of(item, "leaf/top-rail").from_old);  // thinner tenons out of thicker ones
  CHECK_FALSE(compared(door(930, 2060, R"("fit_allowance": 0.3)"),
                       door(930, 2060, R"("fit_allowance": 0.1)"))
                  .changed_pieces.front()
                  .from_old);
  CHECK(item.changed_joints.size() == 10);  // their cheeks have other play
}

TEST_CASE("One panel more: pieces are known again though their marks move") {
  const std::string six = door(930, 2060, R"("note": "six panels")");
  std::string more = six;
  more.replace(more.find("\"panels\": 4"), 11, "\"panels\": 6");
  const ItemComparison item = compared(six, more);
  CHECK(piece_of(item, "leaf/tier-1/panel-3").turn() == Turn::comes);
  CHECK(piece_of(item, "leaf/tier-1/muntin-2").turn() == Turn::comes);
  CHECK(piece_of(item, "leaf/tier-1/panel-1").turn() == Turn::changes);
  // A B stiles, C D E rails, F muntin; then G muntin 2 of the upper tier comes in between.
  REQUIRE_FALSE(item.marks.empty());
  CHECK(item.marks.front().key == "leaf/tier-2/muntin-1");
  CHECK(item.marks.front().was == "G");
  CHECK(item.marks.front().is == "H");
  const ItemComparison back = compared(more, six);
  CHECK(piece_of(back, "leaf/tier-1/panel-3").turn() == Turn::goes);
}

TEST_CASE("What is compared with itself does not change") {
  const ItemComparison item = compared(door(), door());
  CHECK(item.is_same());
  CHECK(item.pieces == Tallied{11, 11, 11});
  CHECK(item.making.places.same == item.making.places.is);
  CHECK(tells(page_of(door(), door()), "Nothing changes. The same in both: 11 pieces, "));
}

TEST_CASE("Another number of them is a difference, another name or note is none") {
  CHECK_FALSE(compared(door(), door(930, 2060, R"("quantity": 2)")).is_same());
  CHECK(tells(page_of(door(), door(930, 2060, R"("quantity": 2)")), "1 → 2 off"));
  CHECK(
      compared(door(), door(930, 2060, R"("name": "to the yard", "note": "by Friday")")).is_same());
}

TEST_CASE("Another wood is another piece, of which nothing is got out of the old one") {
  const ItemComparison item =
      compared(door(930, 2060, R"("species": "oak")"), door(920, 2060, R"("species": "ash")"));
  CHECK(item.changed_pieces.size() == 11);
  CHECK_FALSE(piece_of(item, "leaf/top-rail").from_old);
  CHECK(piece_of(item, "leaf/left-stile").cut.words ==
        std::vector<WordChange>{{"material", "oak", "ash"}});
}

TEST_CASE("A check that turns is told with both figures, and one that fails in both is told too") {
  const std::string well = door(), thin = door(930, 2060, R"("mortise": {"from_face": 1})");
  const ItemComparison worse = compared(well, thin);
  const auto turned = std::find_if(worse.changed_checks.begin(), worse.changed_checks.end(),
                                   [](const CheckChange& check) {
                                     return check.any().finding.rule->check == "mortise-wall" &&
                                            check.is->finding.status == Status::fail;
                                   });
  REQUIRE(turned != worse.changed_checks.end());
  CHECK(turned->turn() == Turn::changes);
  CHECK(turned->was->finding.status == Status::ok);
  CHECK(turned->is->finding.value == mm(1));
  CHECK(tells(page_of(well, thin), "ok → FAIL"));
  CHECK(tells(page_of(thin, well), "FAIL → ok"));
  CHECK(tells(page_of(thin, thin), "FAIL as before"));
  CHECK(compared(thin, thin).is_same());
}

TEST_CASE("The page speaks in the shop's words, alike changes in one line") {
  const std::string page = page_of(door(930), door(950));
  CHECK(tells(page, "leaf 924 → 944 wide (+20), 2054 high, 44 thick"));
  CHECK(tells(page, "AT THE SAW: 4 of 11 pieces stay as they are"));
  // 924 less two stiles of 100, and two tenons of 65.
  CHECK(tells(page, "C D E rails: 854 → 874 long (+20), 724 → 744 between shoulders (+20)"));
  CHECK(tells(page, "mortises on C D E for F G: "));
  CHECK(tells(page, "to be made new: C D E H I J K"));
}

TEST_CASE("In inches figures are fractions; what is less than a 64th is still told") {
  const auto in_inches = [](std::string_view width) {
    return door_spec(R"("units": "in", "clearance": 0, "opening": {"height": 28, "width": ")" +
                         std::string(width) + R"("})",
                     {});
  };
  CHECK(tells(page_of(in_inches("16"), in_inches("16 1/2"), Unit::inch),
              "leaf 16 → 16 1/2 wide (+1/2), 28 high"));
  const std::string fine = page_of(in_inches("16"), in_inches("16.002"), Unit::inch);
  CHECK(tells(fine, "16 → 16 +0.002 wide (+0.002)"));
}

TEST_CASE("A set-up whose first piece is held to other limits is another") {
  const auto within = [](std::string_view off) {
    return bare_house_mm(R"("tolerance": {"tenon_thickness": )" + std::string(off) + "}");
  };
  const SetupsChange stricter = both(within("0.2"), within("0.1")).setups;
  REQUIRE(stricter.changed.size() == 1);
  CHECK(stricter.changed.front().operation == "tenon");
}

TEST_CASE("Set-ups stay but for what is cut to another size; those become others") {
  const SetupsChange wider = both(door(930), door(950)).setups;
  CHECK(wider.setups.was == wider.setups.is);
  // Of rails: crosscut over length and to length; of panels: rip over width, glue up, rip to width.
  CHECK(wider.changed.size() == 5);
  CHECK(wider.setups.same == wider.setups.is - 5);
  for (const SetupChange& setup : wider.changed)
    CHECK(setup.turn() == Turn::changes);
  CHECK(tells(page_of(door(930), door(950)),
              "crosscut to length: 854 → 874 long (+20); crosscut saw; C D E"));
}

TEST_CASE("A mortise that is deeper is another setting of the same mortiser") {
  const std::string page = page_of(door(930, 2060, R"("tenon": {"bottom_clearance": 2})"),
                                   door(930, 2060, R"("tenon": {"bottom_clearance": 4})"));
  CHECK(tells(page, "mortise: 67 → 69 deep (+2); 15 wide, 14.5 from the face side; mortiser; A B"));
}

TEST_CASE("Single items are compared whatever they are called; of more, those of one id") {
  const std::string a = door(), b = cabinet_mm(R"("id": "b")"), c = cabinet_mm(R"("id": "c")");
  CHECK(compare(order_of({b}), order_of({c})).items.size() == 1);
  CHECK(compare(order_of({b}), order_of({c})).is_same());
  const Comparison orders = compare(order_of({a, b}), order_of({c, b}));
  REQUIRE(orders.items.size() == 1);
  CHECK(orders.items.front().is_id == "b");
  REQUIRE(orders.come.size() == 1);
  CHECK(orders.come.front().id == "c");
  REQUIRE(orders.gone.size() == 1);
  CHECK(orders.gone.front().id == "door");
  CHECK_FALSE(orders.is_same());
}

TEST_CASE("A CSV has one row a change, with the key of its piece") {
  const Comparison comparison = both(door(930), door(950));
  const std::string csv = comparison_csv(comparison, Unit::mm, CsvProfile::plain);
  CHECK(tells(csv, "door,piece,changes,leaf/top-rail,C,C,,top rail,length,854,874,20,,\n"));
  const std::string inches = comparison_csv(comparison, Unit::inch, CsvProfile::plain);
  CHECK(tells(inches, "old_in,new_in,by_in"));
}

TEST_CASE("JSON tells both figures and the difference") {
  const Comparison comparison = both(door(930), door(950));
  const std::string json = comparison_json(comparison, Unit::mm);
  CHECK(json.starts_with(R"({"format": "haunch-compare-1", )"));
  CHECK(tells(json, R"({"what": "length", "old": 854, "new": 874, "by": 20})"));
  CHECK(tells(json, R"("pieces": {"old": 11, "new": 11, "same": 4})"));
}

}  // namespace haunch::test
