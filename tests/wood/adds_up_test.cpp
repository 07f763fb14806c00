// Sheets read back as a joiner reads them, with nothing but the page: from shoulder to shoulder and
// the depth at both ends is the length in the cut list, what is marked on one piece meets what is
// marked on the other, rails and openings make the leaf's height. HAUNCH_TEST_SEED=n runs the spec
// with that seed again.
#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "catch.h"
#include "frame_draw.h"
#include "printed_sheet.h"
#include "property_runs.h"
#include "random_spec.h"
#include "report_page.h"
#include "shoulders.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// What sums may be out by: each figure is rounded to 0.001 mm, or on pages for the bench to 0.1.
constexpr double kExact = 0.004, kBench = 0.31;

/// A piece of the cut list.
struct Listed {
  std::string part, grain;
  double length = 0, width = 0;
};

/// What the tenons' tables say of a piece.
struct Shouldered {
  std::string name;
  double between = 0, other = 0;  // the first length, and the one of the other shoulders
  bool has_other = false;
  double nearer = 0;  // what the words say that those stand nearer to an end
  int longer_ends = 0;
  double low = 0, high = 0;  // depths
  bool at_low = false, at_high = false;
  double set_back = 0;
  std::vector<std::pair<double, double>> spans;
};

/// Looks through one sheet. What does not add up is said in lines.
class Joiner {
 public:
  explicit Joiner(const std::string& page, double rounding = kExact)
      : sheet_(read_sheet(page)), rounding_(rounding) {
    read_cut_list();
    read_tenons();
  }

  std::string look_through() {
    lengths_add_up();
    mortises_add_up();
    rails_make_the_width();
    heights_add_up();
    muntins_stand_upright();
    pins_meet();
    laps_add_up();
    ends_add_up();
    loose_pieces_add_up();
    rods_add_up();
    fittings_agree();
    return wrong_;
  }

  std::size_t looked_at() const { return looked_at_; }

 private:
  void expect(bool holds, const std::string& what) {
    ++looked_at_;
    if (!holds) wrong_ += what + "\n";
  }
  bool is(double a, double b) const { return std::abs(a - b) < rounding_; }
  bool is_any(double figure, const std::vector<double>& of) const {
    return std::any_of(of.begin(), of.end(), [&](double it) { return is(figure, it); });
  }
  /// Of one row: however figures are rounded, they add up.
  void expect_row(double a, double b, const std::string& what) {
    expect(std::abs(a - b) < kExact,
           what + ": " + std::to_string(a) + " is not " + std::to_string(b));
  }
  void expect_same(double a, double b, const std::string& what) {
    expect(is(a, b), what + ": " + std::to_string(a) + " is not " + std::to_string(b));
  }

  void read_cut_list();
  void read_tenons();
  void read_tenon_row(const PrintedTable& table, const std::vector<std::string>& row, double depth,
                      double set_back);
  void lengths_add_up();
  void mortises_add_up();
  void rails_make_the_width();
  void find_rails();
  void heights_add_up();
  void muntins_stand_upright();
  void pins_meet();
  void laps_add_up();
  void ends_add_up();
  void loose_pieces_add_up();
  void rods_add_up();
  void fittings_agree();

  bool is_plain_leaf() const {
    return sheet_.head.find(" leaf ") != std::string::npos &&
           sheet_.head.find("left leaf ") == std::string::npos && sheet_.named("ARCHES").empty();
  }
  double to_low_shoulder(const std::string& mark) const;
  double leaf_size(const char* words) const {
    return figure_before(sheet_.head, words).value_or(0);
  }
  std::vector<double> widths_of(const std::string& part) const;

  PrintedSheet sheet_;
  double rounding_;
  std::map<std::string, Listed> pieces_;
  std::map<std::string, Shouldered> tenons_;
  std::map<std::string, double> rail_feet_;  // lower edge of a rail above the leaf's foot
  std::string wrong_;
  std::size_t looked_at_ = 0;
};

// ---- reading

void Joiner::read_cut_list() {
  for (const PrintedTable* table : sheet_.tables("CUT LIST"))
    for (const auto& row : table->rows)
      for (const std::string& mark : marks_in(table->cell(row, "marks")))
        pieces_[mark] = {table->cell(row, "part"), table->cell(row, "grain"),
                         table->figure(row, "length").value_or(0),
                         table->figure(row, "width").value_or(0)};
}

void Joiner::read_tenons() {
  double depth = 0;
  double set_back = 0;
  for (const PrintedTable* table : sheet_.tables("TENONS")) {
    if (const auto its = figure_before(table->above, " deep")) {
      depth = *its;
      set_back = figure_before(table->above, " past the sight edges").value_or(0);
    }
    for (const auto& row : table->rows)
      read_tenon_row(*table, row, depth, set_back);
  }
}

void Joiner::read_tenon_row(const PrintedTable& table, const std::vector<std::string>& row,
                            double depth, double set_back) {
  const auto first = static_cast<std::size_t>(
      std::find_if(table.titles.begin(), table.titles.end(),
                   [](const std::string& title) {
                     return title.find("shoulder") != std::string::npos || title == "sight lines";
                   }) -
      table.titles.begin());
  const std::string words = row[first - 1] + " " + (first > 2 ? row[first - 2] : "");
  const bool low =
      words.find("lower end") != std::string::npos || words.find("left end") != std::string::npos;
  const bool high =
      words.find("upper end") != std::string::npos || words.find("right end") != std::string::npos;
  for (const std::string& mark : marks_in(table.cell(row, "on"))) {
    Shouldered& its = tenons_[mark];
    its.name = row[1];
    its.between = figure_in(row[first]).value_or(-1);
    its.has_other = table.titles.size() > first + 1 && table.titles[first + 1] != "tenon";
    if (its.has_other) its.other = figure_in(row[first + 1]).value_or(-1);
    its.nearer = figure_before(table.above, " nearer").value_or(0);
    its.longer_ends = table.above.find("at each end") != std::string::npos ? 2 : 1;
    its.set_back = set_back;
    its.spans = spans_in(table.cell(row, "tenon"));
    if (!high) {
      its.at_low = true;
      its.low = depth;
    }
    if (!low) {
      its.at_high = true;
      its.high = depth;
    }
  }
}

std::vector<double> Joiner::widths_of(const std::string& part) const {
  std::vector<double> widths;
  for (const auto& [mark, piece] : pieces_)
    if (piece.part == part + "s" || piece.part.find(" " + part) != std::string::npos)
      widths.push_back(piece.width);
  return widths;
}

// ---- adding up

void Joiner::lengths_add_up() {
  for (const auto& [mark, its] : tenons_) {
    expect_same(its.between + its.low + its.high, pieces_[mark].length,
                mark + ": from line to line and the depth at its ends");
    if (its.has_other)
      expect_same(its.other, its.between + its.nearer * its.longer_ends,
                  mark + ": its other shoulders");
  }
}

/// From a piece's left or lower end to its shoulder there: of its tenon, of its lap, or none.
double Joiner::to_low_shoulder(const std::string& mark) const {
  if (const auto its = tenons_.find(mark); its != tenons_.end()) return its->second.low;
  for (const PrintedTable* table : sheet_.tables("HALF-LAPS"))
    for (const auto& row : table->rows)
      if (table->cell(row, "face side of") == mark) return *table->figure(row, "left end");
  for (const PrintedTable* table : sheet_.tables("ENDS"))
    for (const auto& row : table->rows)
      if (table->cell(row, "on") == mark) return figure_before(table->above, " longer").value_or(0);
  return 0;
}

/// An end without a tenon is as long as its piece where it reaches over the edge that it stands on.
void Joiner::ends_add_up() {
  for (const PrintedTable* table : sheet_.tables("ENDS"))
    for (const auto& row : table->rows) {
      const double line = figure_in(row[2]).value_or(-1);
      const double over = figure_in(row[3]).value_or(-1);
      const std::string mark = table->cell(row, "on");
      expect_same(over, line + 2 * figure_before(table->above, " longer").value_or(0),
                  mark + ": over the edges and between them");
      expect_same(over, pieces_[mark].length, mark + ": its ends and its length");
    }
}

void Joiner::mortises_add_up() {
  for (const PrintedTable* table : sheet_.tables("MORTISES"))
    for (const auto& row : table->rows) {
      const std::string in = table->cell(row, "in");
      const double near = *table->figure(row, "begins");
      expect_row(near + *table->figure(row, "long"), *table->figure(row, "ends"), in + ": far");
      for (const char* line : {"shoulder", "face shoulder", "back shoulder", "sight line"})
        if (const auto from = table->figure(row, line))
          for (const std::string& mark : marks_in(in)) {
            expect_same(near, *from + to_low_shoulder(mark), mark + ": a mortise from " + line);
          }
    }
}

void Joiner::rails_make_the_width() {
  const std::vector<double> stiles = widths_of("stile");
  if (!is_plain_leaf() || stiles.size() != 2) return;
  for (const auto& [mark, its] : tenons_) {
    const bool bar = its.name.find(" bar") != std::string::npos;
    if (its.name == "muntin" || bar || !its.at_low || !its.at_high) continue;
    expect_same(stiles[0] + its.between - 2 * its.set_back + stiles[1], leaf_size(" wide"),
                mark + ": stiles and what is between them");
  }
}

/// Where rails stand, from the mortises of their tenons: each by its own. A bridle's has play at
/// one edge only, which the page does not tell by itself.
void Joiner::find_rails() {
  std::map<std::string, std::vector<std::pair<double, double>>> mortises;
  for (const PrintedTable* table : sheet_.tables("MORTISES"))
    for (const auto& row : table->rows) {
      if (table->cell(row, "edge") != "face" || table->above.find("open at") != std::string::npos)
        continue;
      const std::pair<double, double> its{*table->figure(row, "begins"),
                                          *table->figure(row, "ends")};
      for (const std::string& mark : marks_in(table->cell(row, "takes"))) {
        auto& all = mortises[mark];
        if (std::find(all.begin(), all.end(), its) == all.end()) all.push_back(its);
      }
    }
  for (auto& [mark, its] : mortises) {
    const auto tenon = tenons_.find(mark);
    if (tenon == tenons_.end() || tenon->second.spans.size() != its.size()) continue;
    std::sort(its.begin(), its.end());
    for (std::size_t i = 0; i < its.size(); ++i) {
      const auto [low, high] = tenon->second.spans[i];
      const double foot = (its[i].first + its[i].second) / 2 - (low + high) / 2;
      if (i == 0) rail_feet_[mark] = foot;
      expect_same(foot, rail_feet_[mark], mark + ": its foot by its mortises");
    }
  }
}

void Joiner::heights_add_up() {
  find_rails();
  if (!is_plain_leaf() || rail_feet_.empty()) return;
  std::vector<std::pair<double, double>> rails;
  for (const auto& [mark, foot] : rail_feet_)
    rails.emplace_back(foot, foot + pieces_[mark].width);
  std::sort(rails.begin(), rails.end());
  if (rails.size() != widths_of("rail").size()) return;  // others stand flat or are lapped
  expect_same(rails.front().first, 0, "the bottom rail's foot");
  expect_same(rails.back().second, leaf_size(" high"), "the top rail's upper edge");
  std::vector<double> openings;
  for (std::size_t i = 1; i < rails.size(); ++i)
    openings.push_back(rails[i].first - rails[i - 1].second);
  for (const auto& [mark, its] : tenons_)
    if (its.name == "muntin")
      expect(is_any(its.between - 2 * its.set_back, openings), mark + ": as high as no opening");
  for (const PrintedTable* table : sheet_.tables("PANELS"))
    for (const auto& row : table->rows)
      for (const std::string& mark : marks_in(table->cell(row, "panels"))) {
        const bool level = pieces_[mark].grain == "level";
        const double high = level ? pieces_[mark].width : pieces_[mark].length;
        const double bite = *table->figure(row, level ? "sides in" : "ends in");
        expect(is_any(high - 2 * bite, openings), mark + ": a panel that fits no opening");
      }
}

/// A muntin is marked as far along the rail above it as along the one below.
void Joiner::muntins_stand_upright() {
  std::map<std::string, double> from_sight;
  for (const PrintedTable* table : sheet_.tables("MORTISES"))
    for (const auto& row : table->rows) {
      const std::string edge = table->cell(row, "edge");
      if ((edge != "lower" && edge != "upper") || table->cell(row, "from") != "left end") continue;
      for (const std::string& rail : marks_in(table->cell(row, "in"))) {
        const auto its = tenons_.find(rail);
        if (its == tenons_.end()) continue;
        const double middle = *table->figure(row, "begins") + *table->figure(row, "long") / 2 -
                              its->second.low - its->second.set_back;
        for (const std::string& mark : marks_in(table->cell(row, "takes"))) {
          const auto muntin = tenons_.find(mark);
          if (muntin == tenons_.end() || muntin->second.spans.size() != 1) continue;
          if (marks_in(table->cell(row, "takes")).size() == 1 && from_sight.contains(mark))
            expect_same(middle, from_sight[mark], mark + ": along the rails above and below");
          from_sight[mark] = middle;
        }
      }
    }
}

void Joiner::pins_meet() {
  std::vector<double> in_stiles;
  for (const PrintedTable* table : sheet_.tables("PINS"))
    for (const auto& row : table->rows) {
      std::string middles = table->cell(row, "middles at");
      std::replace(middles.begin(), middles.end(), ',', ' ');
      for (const std::string& each : marks_in(middles)) {
        const double middle = figure_in(each).value_or(-1);
        if (table->cell(row, "from") == "foot") in_stiles.push_back(middle);
        for (const std::string& mark : marks_in(table->cell(row, "in")))
          if (const auto foot = rail_feet_.find(mark); foot != rail_feet_.end())
            expect(is_any(foot->second + middle, in_stiles), mark + ": no hole in the stiles");
      }
    }
}

void Joiner::laps_add_up() {
  for (const PrintedTable* table : sheet_.tables("HALF-LAPS"))
    for (const auto& row : table->rows) {
      if (const auto between = table->figure(row, "shoulder to shoulder"))
        expect_same(*between + *table->figure(row, "left end") + *table->figure(row, "right end"),
                    pieces_[table->cell(row, "face side of")].length, "a lapped rail");
      if (const auto near = table->figure(row, "begins"))
        expect_same(*near + *table->figure(row, "long"), *table->figure(row, "ends"), "a lap");
    }
  for (const PrintedTable* table : sheet_.tables("MITRES"))
    for (const auto& row : table->rows) {
      const std::string mark = table->cell(row, "both ends of");
      const double points = *table->figure(row, "long points");
      expect_same(points, pieces_[mark].length, mark + ": long points");
      expect_same(points - *table->figure(row, "short points"), 2 * pieces_[mark].width,
                  mark + ": both mitres");
    }
  for (const PrintedTable* table : sheet_.tables("HOUSINGS"))
    for (const auto& row : table->rows) {
      expect_same(*table->figure(row, "begins") + *table->figure(row, "wide"),
                  *table->figure(row, "ends"), "a housing");
      if (const auto from = table->figure(row, "from shoulder"))
        for (const std::string& mark : marks_in(table->cell(row, "in")))
          expect_same(*from + tenons_[mark].low, *table->figure(row, "begins"),
                      mark + ": a housing");
    }
}

void Joiner::loose_pieces_add_up() {
  for (const char* heading : {"LOOSE TENONS", "HOLES FOR DOWELS", "DOWELS"})
    for (const PrintedTable* table : sheet_.tables(heading))
      for (const auto& row : table->rows)
        if (const auto into = table->figure(row, "into each piece"))
          expect_same(*into * 2, *table->figure(row, "long"), heading);
}

/// What is marked along a piece of a case and what is left to its other end are its length.
void Joiner::rods_add_up() {
  for (const PrintedTable* table : sheet_.tables("MARKING OUT, along"))
    for (const auto& row : table->rows) {
      const auto from = table->figure(row, "from");
      const auto to = table->figure(row, "to");
      for (const std::string& mark : marks_in(table->cell(row, "on")))
        expect_same((to ? *to : *from) + *table->figure(row, "left"), pieces_[mark].length,
                    mark + ": what is marked along it");
    }
}

/// What one name stands for on jamb and leaf is off by the same clearance from either end.
void Joiner::fittings_agree() {
  std::vector<std::pair<double, double>> off;
  std::map<std::string, std::pair<double, double>> on_jambs;
  for (const PrintedTable* table : sheet_.tables("FITTINGS"))
    for (const auto& row : table->rows) {
      const auto from_top = table->figure(row, "from top");
      const auto from_head =
          table->figure(row, table->has("from head") ? "from head" : "from transom");
      const auto from_foot =
          table->figure(row, table->has("from sill") ? "from sill" : "from foot");
      if (!from_foot || row[1] != "gain") continue;
      if (from_head) on_jambs[row[0]] = {*from_foot, *from_head};
      const auto jamb = on_jambs.find(row[0]);
      if (!from_top || jamb == on_jambs.end()) continue;
      off.emplace_back(jamb->second.first - *from_foot, jamb->second.second - *from_top);
      expect(is(off.back().first, off.front().first) && is(off.back().second, off.front().second),
             row[0] + ": otherwise off on the jamb than other hinges are");
      if (is_plain_leaf())
        expect_same(*table->figure(row, "to") + *from_top, leaf_size(" high"), row[0]);
    }
}

// ---- specs

std::optional<std::string> sheet_of(const std::string& spec, LengthStyle lengths = {}) {
  const auto reading = read_json(spec);
  if (!reading.value || !reading.problems.empty()) return {};
  JobReading item = read_job(*reading.value, nullptr, "item");
  if (!item.job || !item.problems.empty()) return {};
  Wanted wanted = wanted_for({});
  wanted.remedies = wanted.season_remedies = false;
  const ItemOutcome outcome = report_item(std::move(item.job), wanted);
  if (!outcome.report) return {};
  View view;
  view.lengths = lengths;
  view.page_width = 200;  // so wide that no table goes on below itself
  return item_page(*outcome.report, view, Unit::mm);
}

std::string text_of(const std::filesystem::path& file) {
  std::ostringstream text;
  text << std::ifstream(file).rdbuf();
  return text.str();
}

/// Random joints and, now and then, pins for a random door, whatever its edges.
std::string with_joints(std::string json, Dice& dice) {
  const auto one_of = [&](std::initializer_list<const char*> words) {
    return std::string(
        *(words.begin() + dice.between(0, static_cast<std::int64_t>(words.size()) - 1)));
  };
  if (dice.chance(40)) return json;
  std::string keys =
      R"("joint": {"corner": ")" +
      one_of({"haunched", "haunched", "twin", "loose", "through", "bridle", "dowel", "half-lap"}) +
      R"(", "middle": ")" + one_of({"haunched", "haunched", "twin", "loose", "through", "dowel"}) +
      R"(", "muntin": ")" + one_of({"haunched", "haunched", "twin", "loose", "dowel"}) + "\"}, ";
  if (dice.chance(30)) keys = R"("pin": {}, )";
  return json.insert(1, keys);
}

}  // namespace

TEST_CASE("every example's sheet adds up", "[page]") {
  std::size_t sheets = 0;
  for (const auto& file : std::filesystem::directory_iterator(HAUNCH_EXAMPLES)) {
    if (file.path().extension() != ".json") continue;
    // Several items, one of which takes the others: its chains are added up in run_test.
    if (text_of(file.path()).starts_with('[')) continue;
    const auto page = sheet_of(text_of(file.path()));
    INFO(file.path().filename());
    REQUIRE(page);
    Joiner joiner(*page);
    CHECK(joiner.look_through() == "");
    // Of a drawer's sheet nothing stands in chains that the joiner knows.
    if (text_of(file.path()).find("\"kind\": \"drawer\"") == std::string::npos)
      CHECK(joiner.looked_at() > 0);
    Joiner at_bench(*sheet_of(text_of(file.path()), kBenchLengths), kBench);
    CHECK(at_bench.look_through() == "");
    CHECK(at_bench.looked_at() == joiner.looked_at());
    ++sheets;
  }
  CHECK(sheets > 30);
}

TEST_CASE("sheets of random doors add up, whatever their joints and edges", "[page][property]") {
  const Tally tally = run_over(seeds_for(400), [](std::uint64_t seed, std::string& wrong) {
    Dice dice(seed);
    const DoorSpec spec = random_door(seed, Keys::all);
    const std::string json = with_joints(to_json(spec, {spec.unit, seed, false, true}), dice);
    const auto page = sheet_of(json);
    if (!page) return Outcome::refused;
    wrong = Joiner(*page).look_through() +
            Joiner(*sheet_of(json, kBenchLengths), kBench).look_through();
    if (!wrong.empty()) wrong += json + "\n" + *page;
    return Outcome::worked;
  });
  require_worked_share(tally, 40);
}

TEST_CASE("sheets of random frames and sets add up", "[page][property]") {
  const Tally tally = run_over(seeds_for(200), [](std::uint64_t seed, std::string& wrong) {
    FrameDraw draw(seed);
    const std::string spec = draw.chance(50) ? draw.set()
                                             : R"({"kind": "frame", "units": "mm", )" +
                                                   draw.keys() + ", " + draw.leaf() + "}";
    const auto page = sheet_of(spec);
    if (!page) return Outcome::refused;
    wrong = Joiner(*page).look_through() +
            Joiner(*sheet_of(spec, kBenchLengths), kBench).look_through();
    if (!wrong.empty()) wrong += spec + "\n" + *page;
    return Outcome::worked;
  });
  require_worked_share(tally, 40);
}

TEST_CASE("shoulders in the report are those of the page", "[page]") {
  // Stiles of 110 in a leaf of 774, both faces moulded 9 wide: 554 from sight line to sight line.
  const Assembly coped = wood(
      R"({"kind": "door", "units": "mm", "opening": {"width": 780, "height": 2000}, "stile_width": 110,
          "tenon_depth": 76, "edge": {"kind": "coped", "faces": "both", "width": 9}})");
  const Shoulders rail = shoulders_of(coped)[piece_number(coped, "top rail")];
  CHECK(rail.line == ShoulderLine::sight_line);
  CHECK(rail.low == EndShoulders{mm(76), mm(67), mm(67)});
  CHECK(rail.between(&EndShoulders::line, mm(706)) == mm(554));
  CHECK(rail.between(&EndShoulders::face, mm(706)) == mm(572));
  // At the head the rebate is 12 deep, on the sill there is none.
  const Assembly frame = wood(
      R"({"kind": "frame", "units": "mm", "leaf": {"width": 826, "height": 1981}, "exterior": true,
          "sill": {"height": 70}, "tenon": {"depth": 50}})");
  const Shoulders jamb = shoulders_of(frame)[piece_number(frame, "left jamb")];
  CHECK(jamb.line == ShoulderLine::back_shoulder);
  CHECK(jamb.low == EndShoulders{mm(50), mm(50), mm(50)});
  CHECK(jamb.high == EndShoulders{mm(50), mm(38), mm(50)});
  CHECK_FALSE(shoulders_of(frame)[piece_number(frame, "head")].any());
}

TEST_CASE("a page on which one figure is off does not add up", "[page]") {
  const std::string page = *sheet_of(house_mm(R"("panels": 4, "rail_widths": [118, 195, 230])"));
  CHECK(Joiner(page).look_through() == "");
  for (const auto& [title, figure] : {std::pair{"\nTENONS", 0}, std::pair{"\nCUT LIST", 1}}) {
    INFO(title);
    std::string off = page;
    std::size_t at = off.find("top rail", off.find(title));
    REQUIRE(at != std::string::npos);
    for (int i = 0; i <= figure; ++i)
      at = off.find_first_of("0123456789", off.find(' ', at + 5));
    off[at] = off[at] == '9' ? '8' : static_cast<char>(off[at] + 1);
    CHECK(Joiner(off).look_through() != "");
  }
}

}  // namespace haunch::test
