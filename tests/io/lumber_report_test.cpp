// From parts to plans: which stock a part is taken from, how panels are glued up, what is no wood.
#include "lumber_report.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "effort.h"
#include "kind.h"
#include "lumber_bill.h"
#include "lumber_text.h"
#include "stock_words.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

LumberPart part(const std::string& name, Length length, Length width, Length thickness) {
  LumberPart made;
  made.name = "bin/" + name;
  made.item = made.face = "bin";
  made.label = "piece";
  made.material = "beech";
  made.finished = {length, width, thickness, Length()};
  return made;
}

LumberPart panel(const std::string& name, Length length, Length width, Length thickness) {
  LumberPart made = part(name, length, width, thickness);
  made.is_panel = true;
  return made;
}

/// The parts of one spec.
std::vector<LumberPart> parts_of(const std::string& spec) {
  const Reading json = read_json(spec);
  REQUIRE(json.value.has_value());
  JobReading reading = read_job(*json.value, nullptr, "job");
  REQUIRE(reading.job != nullptr);
  const ItemOutcome outcome = report_item(std::move(reading.job), {});
  REQUIRE(outcome.report.has_value());
  return lumber_parts(*outcome.report);
}

TEST_CASE("a thicker board in the rack, planed down, is cheaper than buying the exact one") {
  // 475 x 64 x 22 is 500 x 70 x 27 rough; the 40 in the rack yields all four.
  const std::string yard =
      R"({"id": "yard", "length": 2100, "width": 70, "thickness": 27, "species": "beech",
          "price": 20, "per": "board"})";
  std::vector<LumberPart> parts;
  for (const char* name : {"A", "B", "C", "D"})
    parts.push_back(part(name, mm(475), mm(64), mm(22)));
  const LumberReport bought = report_lumber(
      parts, stock(R"({"units": "mm", "kerf": 3, "stock": [)" + yard + "]}"), Unit::mm, {});
  CHECK(totals_of(bought).cost == 2000);
  const LumberReport planed =
      report_lumber(parts, stock(R"({"units": "mm", "kerf": 3, "stock": [)" + yard + R"(,
             {"id": "rack", "length": 2100, "width": 70, "thickness": 40, "species": "beech"}]})"),
                    Unit::mm, {});
  CHECK(totals_of(planed).cost == 0);
  CHECK(planed.rough[0]->stock_thickness == mm(40));
  CHECK(planed.rough[0]->thicker);
  CHECK_FALSE(bought.rough[0]->thicker);
}

TEST_CASE("a thicker board in the rack that spares no bought one stays there") {
  // The rack takes two of the four; a board must be bought for the others as before.
  const LumberReport report =
      report_lumber({part("A", mm(475), mm(64), mm(22)), part("B", mm(475), mm(64), mm(22)),
                     part("C", mm(475), mm(64), mm(22)), part("D", mm(475), mm(64), mm(22))},
                    stock(R"({"units": "mm", "kerf": 3, "stock": [
        {"id": "yard", "length": 2100, "width": 70, "thickness": 27, "species": "beech",
         "price": 20, "per": "board"},
        {"id": "rack", "length": 1100, "width": 70, "thickness": 40, "species": "beech"}]})"),
                    Unit::mm, {});
  CHECK(totals_of(report).cost == 2000);
  CHECK(totals_of(report).boards == 1);
}

TEST_CASE(
    "of rough and surfaced boards of one thickness the cheaper are bought, whichever is first") {
  // 475 x 64 x 20 is 500 x 70, out of 27 rough as well as surfaced: four to a board.
  const std::string rough =
      R"({"id": "rough", "length": 2100, "width": 70, "thickness": 27, "species": "beech",
          "price": 60, "per": "board"})";
  const std::string surfaced =
      R"({"id": "surfaced", "length": 2100, "width": 70, "thickness": 27, "species": "beech",
          "surface": "surfaced", "price": 20, "per": "board"})";
  std::vector<LumberPart> parts;
  for (const char* name : {"A", "B", "C", "D"})
    parts.push_back(part(name, mm(475), mm(64), mm(20)));
  for (const std::string& boards : {rough + "," + surfaced, surfaced + "," + rough}) {
    const LumberReport report = report_lumber(
        parts, stock(R"({"units": "mm", "kerf": 3, "stock": [)" + boards + "]}"), Unit::mm, {});
    CHECK(totals_of(report).cost == 2000);
    CHECK_FALSE(report.rough[0]->thicker);
  }
}

TEST_CASE("a thicker board is bought where it is cheaper") {
  const LumberReport report =
      report_lumber({part("A", mm(475), mm(64), mm(20)), part("B", mm(475), mm(64), mm(20))},
                    stock(R"({"units": "mm", "kerf": 3, "stock": [
        {"id": "a", "length": 2100, "width": 70, "thickness": 27, "species": "beech",
         "price": 90, "per": "board"},
        {"id": "b", "length": 2100, "width": 70, "thickness": 28, "species": "beech",
         "price": 30, "per": "board"}]})"),
                    Unit::mm, {});
  CHECK(totals_of(report).cost == 3000);
  CHECK(report.rough[1]->thicker);
  CHECK(bound_of(report).bounds.proven);
}

TEST_CASE("only as many parts go over to cheaper boards as there are") {
  // Two to a board: the one at 5.00 takes two, the other two of 27 at 20.00.
  std::vector<LumberPart> parts;
  for (const char* name : {"A", "B", "C", "D"})
    parts.push_back(part(name, mm(475), mm(64), mm(20)));
  const LumberReport report = report_lumber(parts, stock(R"({"units": "mm", "kerf": 3, "stock": [
        {"id": "a", "length": 1003, "width": 70, "thickness": 27, "species": "beech",
         "price": 20, "per": "board"},
        {"id": "b", "length": 1003, "width": 70, "thickness": 40, "species": "beech",
         "price": 5, "per": "board", "count": 1}]})"),
                                            Unit::mm, {});
  CHECK(report.unplaced.empty());
  CHECK(totals_of(report).cost == 2500);
}

TEST_CASE("a panel is of more strips where they fall better into the boards") {
  // 344 + 6 = 350 wide: of three strips 117 + 6 = 123 each, one abreast in 190; of four 88 + 6 =
  // 94, two abreast: 94 + 3 + 94 = 191 is 1 too much, so the boards are 191 here.
  StockFile file = stock(R"({"units": "mm", "kerf": 3, "stock": [
      {"id": "yard", "length": 2100, "width": 191, "thickness": 27, "species": "beech",
       "price": 20, "per": "board"}]})");
  const std::vector<LumberPart> parts = {panel("E", mm(1000), mm(344), mm(22))};
  const LumberReport four = report_lumber(parts, file, Unit::mm, {});
  CHECK(four.rough[0]->strips == 4);
  CHECK(four.rough[0]->width == mm(94));
  CHECK(totals_of(four).boards == 1);
  file.items[0].width = mm(190);
  const LumberReport three = report_lumber(parts, file, Unit::mm, {});
  CHECK(three.rough[0]->strips == 3);
  CHECK(three.rough[0]->width == mm(123));
  CHECK(totals_of(three).boards == 2);
}

TEST_CASE("a strip is not under half the limit") {
  // 154 + 6 = 160: two of 80 + 6; three would be 54 + 6 = 60, under 75, though two lie abreast.
  const LumberReport report = report_lumber({panel("E", mm(1000), mm(154), mm(22))},
                                            stock(R"({"units": "mm", "kerf": 3, "stock": [
        {"id": "yard", "length": 1100, "width": 123, "thickness": 27, "species": "beech",
         "price": 20, "per": "board"}]})"),
                                            Unit::mm, {});
  CHECK(report.rough[0]->strips == 2);
}

TEST_CASE("a part refused for the sake of one that is refused itself is tried again") {
  // Five strips of the panel can't be had from one board of 4; the rail then takes its place.
  const LumberReport report =
      report_lumber({panel("E", mm(1000), mm(600), mm(22)), part("C", mm(1000), mm(124), mm(22))},
                    stock(R"({"units": "mm", "kerf": 3, "stock": [
        {"id": "rack", "length": 1030, "width": 140, "thickness": 27, "species": "beech",
         "count": 1}]})"),
                    Unit::mm, {});
  REQUIRE(report.unplaced.size() == 1);
  CHECK(report.unplaced[0].part == 0);
  CHECK(totals_of(report).boards == 1);
}

TEST_CASE("takings-off of an inch job name the yard's quarters") {
  LumberPart stile = part("A", inch(30), inch(2), inch(0, 7, 8));
  const LumberReport report = report_lumber({stile}, {}, Unit::inch, {});
  REQUIRE(report.takings.size() == 1);
  CHECK(report.takings[0].quarters == "5/4");  // 7/8 and 2 x 3/32 are 1 1/16
}

/// Random, but the same everywhere.
class Random {
 public:
  explicit Random(std::uint64_t seed) : state_(seed) {}
  int from(int low, int high) {
    state_ = state_ * 6364136223846793005U + 1442695040888963407U;
    return low + static_cast<int>((state_ >> 33) % static_cast<std::uint64_t>(high - low + 1));
  }

 private:
  std::uint64_t state_;
};

std::vector<LumberPart> random_parts(Random& random) {
  std::vector<LumberPart> parts;
  for (int i = 0, count = random.from(3, 12); i < count; ++i) {
    const std::string name = "P" + std::to_string(i);
    const bool wide = random.from(0, 3) == 0;
    parts.push_back(wide
                        ? panel(name, mm(random.from(300, 900)), mm(random.from(200, 500)), mm(20))
                        : part(name, mm(random.from(300, 1800)), mm(random.from(50, 130)), mm(22)));
  }
  return parts;
}

StockFile random_rack(Random& random) {
  StockFile rack = usual_stock_file(Unit::mm);
  for (int i = 0; i < 4; ++i) {
    StockItem& item = rack.items.emplace_back();
    item.id = "r" + std::to_string(i);
    item.species = "beech";
    item.length = mm(random.from(1000, 4000));
    item.width = mm(random.from(120, 300));
    item.thickness.thickness = item.nominal = mm(random.from(0, 1) == 0 ? 27 : 40);
    item.count = random.from(1, 4);
    if (i == 3) item.price = Price{250'000, Per::board};
  }
  return rack;
}

/// Each board of a plan: its id and number, and the size it had.
std::map<std::pair<std::string, std::int64_t>, lumber::Area> boards_of(const LumberReport& report) {
  std::map<std::pair<std::string, std::int64_t>, lumber::Area> boards;
  for (const MaterialPlan& plan : report.plans) {
    for (const lumber::BoardPlan& board : plan.plan.boards) {
      const StockItem& item = report.stock.items[plan.items[board.stock]];
      const bool is_new = boards
                              .emplace(std::pair(item.id, number_of(item, board)),
                                       lumber::area_of(item.length, item.width))
                              .second;
      CHECK(is_new);
    }
  }
  return boards;
}

TEST_CASE("orders planned one after another never take a board twice, nor more than there is") {
  for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(times_effort(40)); ++seed) {
    Random random(seed);
    const StockFile rack = random_rack(random);
    std::map<std::string, int> counts;
    for (const StockItem& item : rack.items)
      counts[item.id] = *item.count;
    StockFile stock = rack;
    std::set<std::pair<std::string, std::int64_t>> taken;
    for (int order = 0; order < 3; ++order) {
      const LumberReport report = report_lumber(random_parts(random), stock, Unit::mm, {});
      for (const auto& [board, area] : boards_of(report)) {
        CHECK(taken.insert(board).second);
        // A board of the rack is no more than its count; what else there is came off one.
        if (counts.contains(board.first)) CHECK(board.second <= counts[board.first]);
      }
      stock = stock_left(report);
    }
  }
}

/// Three parts of 44 mm, two from a board: 100.00 of 54, or 10.00 of 27 in two layers.
LumberReport three_of_44(const std::string& count) {
  return report_lumber({part("A", mm(475), mm(64), mm(44)), part("B", mm(475), mm(64), mm(44)),
                        part("C", mm(475), mm(64), mm(44))},
                       stock(R"({"units": "mm", "kerf": 3, "stock": [
        {"id": "thick", "length": 1003, "width": 70, "thickness": 54, "species": "beech",
         "price": 100, "per": "board")" +
                             count + R"(},
        {"id": "thin", "length": 1003, "width": 70, "thickness": 27, "species": "beech",
         "price": 10, "per": "board"}]})"),
                       Unit::mm, {});
}

TEST_CASE("thick boards for sale are not passed over for thin ones glued up, nor in the bound") {
  const LumberReport report = three_of_44("");
  CHECK(totals_of(report).cost == 20'000);
  CHECK(bound_of(report).bounds.best == 20'000);
}

TEST_CASE("where thick boards lack, parts are glued up, and the bound is of the cheapest way") {
  // Two of the one thick board, two layers of one thin; all three glued up would be 30.00.
  const LumberReport report = three_of_44(R"(, "count": 1)");
  CHECK(totals_of(report).cost == 11'000);
  CHECK(bound_of(report).bounds.best == 3'000);
  CHECK(bound_of(report).as_made == 11'000);
}

/// A rack of a few boards, and a yard that sells one or two thicknesses.
StockFile random_yard(Random& random) {
  StockFile yard = usual_stock_file(Unit::mm);
  for (int i = 0, count = random.from(2, 6); i < count; ++i) {
    StockItem& item = yard.items.emplace_back();
    item.id = "s" + std::to_string(i);
    item.species = "beech";
    item.length = mm(random.from(1900, 4000));
    item.width = mm(random.from(140, 300));
    item.thickness.thickness = item.nominal = mm(random.from(0, 1) == 0 ? 27 : 40);
    if (i == 0 || random.from(0, 1) == 0) {
      item.price = Price{random.from(100'000, 400'000), Per::board};
      if (i == 0) item.thickness.thickness = item.nominal = mm(27);
    } else {
      item.count = random.from(1, 3);
    }
  }
  return yard;
}

/// What plans for one order came to, whatever the seed and effort.
struct Figures {
  std::int64_t least = INT64_MAX, highest_bound = 0;

  void take(std::int64_t plan, std::int64_t bound) {
    least = std::min(least, plan);
    highest_bound = std::max(highest_bound, bound);
  }
};

/// No worse than with less effort: more parts placed, or what is preferred not more.
void check_no_worse(const LumberReport& report, const LumberReport& less) {
  REQUIRE(report.unplaced.size() <= less.unplaced.size());
  if (report.unplaced.size() < less.unplaced.size()) return;
  CHECK(totals_of(report).cost <= totals_of(less).cost);
  const lumber::Bounds bounds = bound_of(report).bounds;
  const lumber::Bounds before = bound_of(less).bounds;
  if (bounds.measure == before.measure && report.unplaced.empty())
    CHECK(bounds.best >= before.best);
}

TEST_CASE("no plan of any seed and effort comes under a bound; more effort is never worse") {
  const auto seeds = static_cast<std::uint64_t>(std::min<std::int64_t>(6, times_effort(2)));
  const int efforts = static_cast<int>(std::clamp<std::int64_t>(times_effort(3), 2, 5));
  for (std::int64_t run = 0; run < times_effort(4); ++run) {
    Random random(static_cast<std::uint64_t>(1000 + run));
    const std::vector<LumberPart> parts = random_parts(random);
    const StockFile yard = random_yard(random);
    Figures money, area;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
      std::optional<LumberReport> less;
      for (int effort = 1; effort <= efforts; ++effort) {
        INFO("order " << run << " seed " << seed << " effort " << effort);
        LumberWishes wishes;
        wishes.seed = seed;
        wishes.effort = effort;
        LumberReport report = report_lumber(parts, yard, Unit::mm, wishes);
        const lumber::Bounds bounds = bound_of(report).bounds;
        CHECK(bounds.best <= bounds.plan);
        if (less) check_no_worse(report, *less);
        if (report.unplaced.empty()) {
          const bool by_cost = bounds.measure == lumber::Measure::money;
          money.take(totals_of(report).cost, by_cost ? bounds.best : 0);
          if (!by_cost) area.take(bounds.plan, bounds.best);
        }
        less = std::move(report);
      }
    }
    INFO("order " << run);
    CHECK(money.highest_bound <= money.least);
    CHECK(area.highest_bound <= area.least);
  }
}

TEST_CASE("glass is never bought as wood") {
  LumberPart pane = part("P", mm(400), mm(300), mm(4));
  pane.label = "glass";
  pane.is_wood = false;
  const LumberReport report =
      report_lumber({part("A", mm(475), mm(64), mm(22)), pane}, {}, Unit::mm, {});
  CHECK(report.parts.size() == 1);
  REQUIRE(report.not_wood.size() == 1);
  REQUIRE(report.takings.size() == 1);
  CHECK(report.takings[0].taking.pieces == 1);
  CHECK(lumber_page(report, LengthPrinter(Unit::mm, {})).find("NOT OF WOOD") != std::string::npos);
}

TEST_CASE("the leaves and the frame of a set have show faces of their own") {
  std::map<std::string, int> faces;
  for (const LumberPart& each : parts_of(R"({"kind": "doorset", "id": "loft", "units": "mm",
        "leaves": 2, "frame": {"wall_opening": {"width": 1500, "height": 2100}}, "leaf": {}})"))
    ++faces[each.face];
  REQUIRE(faces.size() == 3);
  CHECK(faces["loft, frame"] == 6);  // jambs, head, three stops
  CHECK(faces["loft, left leaf"] == faces["loft, right leaf"]);
}

TEST_CASE("a frame's head and sill are sawn with their horns") {
  // 934 + 2 x 50 + 25; jambs have none: 2432 + 25.
  const LumberReport report = report_lumber(
      parts_of(R"({"kind": "frame", "id": "yard", "units": "mm", "species": "European oak",
        "exterior": true, "leaf": {"width": 838, "height": 1981}, "sill": {"height": 70},
        "transom": {"light": 300}})"),
      {}, Unit::mm, {});
  std::map<std::string, Length> lengths;
  for (std::size_t i = 0; i < report.parts.size(); ++i)
    lengths[report.parts[i].label] = report.rough[i]->length;
  CHECK(lengths["left jamb"] == mm(2457));
  CHECK(lengths["head"] == mm(1059));
  CHECK(lengths["sill"] == mm(1059));
  CHECK(lengths["transom"] == mm(945));
}

TEST_CASE("a raised panel is sawn as thick and as large as its whole blank") {
  const std::vector<LumberPart> parts = parts_of(
      R"({"kind": "door", "id": "bin", "units": "mm", "opening": {"width": 500, "height": 700},
          "thickness": 22, "panel": {"raised": "front", "thickness": 16}})");
  const auto raised = std::find_if(parts.begin(), parts.end(),
                                   [](const LumberPart& each) { return each.is_panel; });
  REQUIRE(raised != parts.end());
  CHECK(raised->finished.thickness == mm(16));
  const LumberReport report = report_lumber({*raised}, {}, Unit::mm, {});
  CHECK(report.rough[0]->length == -floor_multiple(-(raised->finished.length + mm(25)), mm(1)));
}

/// Twelve parts, one from each board, and the boards at 0.0149 and 0.0051 a piece.
LumberReport twelve_cheap_boards() {
  std::vector<LumberPart> parts;
  for (int i = 0; i < 12; ++i)
    parts.push_back(part(std::string(1, static_cast<char>('A' + i)), mm(900), mm(60), mm(22)));
  return report_lumber(parts, stock(R"({"units": "mm", "kerf": 3, "stock": [
      {"id": "a", "length": 1000, "width": 70, "thickness": 27, "species": "beech", "count": 5,
       "price": 0.0051, "per": "board"},
      {"id": "b", "length": 1100, "width": 70, "thickness": 27, "species": "beech",
       "price": 0.0149, "per": "board"}]})"),
                       Unit::mm, {});
}

TEST_CASE("each line of the bill is rounded once, and they add up to what is paid") {
  const LumberReport report = twelve_cheap_boards();
  const std::vector<BillLine> bill = bill_of(report);
  REQUIRE(bill.size() == 2);
  CHECK(bill[0].cost == 3);   // 5 at 0.0051 are 0.0255
  CHECK(bill[1].cost == 10);  // 7 at 0.0149 are 0.1043
  CHECK(total_of(bill) == 13);
  CHECK(totals_of(report).cost == 13);
}

TEST_CASE("bounds are told in the money of the bill and never above it") {
  const lumber::Bounds bounds = bound_of(twelve_cheap_boards()).bounds;
  CHECK(bounds.measure == lumber::Measure::money);
  CHECK(bounds.plan == 13);
  CHECK(bounds.best <= bounds.plan);
  CHECK(bounds.proven);  // every part takes a board
}

TEST_CASE("plans reckon in money that all costs are whole in, or else in millionths") {
  const StockFile round = stock(R"({"units": "mm", "stock": [
      {"id": "a", "length": {"from": 1800, "to": 2400}, "width": 70, "thickness": 27,
       "price": 3.35, "per": "metre"}]})");
  CHECK(money_unit_of(round) == lumber::Exact::of(1005, 1000));
  CHECK(cost_in(round.items[1], money_unit_of(round)) == 7);
  const StockFile odd = stock(R"({"units": "mm", "stock": [
      {"id": "a", "length": 1801, "width": 71, "thickness": 27, "price": 1234.5679, "per": "cubic_metre"},
      {"id": "b", "length": 96, "width": "7 1/512 in", "thickness": "5/4", "price": 6.49, "per": "board_foot"}]})");
  CHECK(money_unit_of(odd) == lumber::Exact::of(1, 1'000'000));
  CHECK(cost_in(odd.items[0], money_unit_of(odd)) == 4'262'366);  // 4.2623666...: rounded down
}

}  // namespace
}  // namespace haunch::test
