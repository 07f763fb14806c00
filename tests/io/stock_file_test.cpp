// Stock files: JSON and CSV say the same, prices come to what the yard would ask, and what is
// written reads back.
#include "stock_file.h"

#include "csv_table.h"
#include "lumber_report.h"
#include "stock_words.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// What so many come to, in hundredths.
std::int64_t cost(const StockItem& item, int count = 1) {
  return cost_of(item).rounded(count, 2);
}

StockItem item(const std::string& keys, const std::string& units = "mm") {
  return stock(R"({"units": ")" + units + R"(", "stock": [{"id": "a", )" + keys + "}]}")
      .items.front();
}

/// A frame of four parts of 22 finished, without a panel.
std::vector<LumberPart> four_parts(const std::string& species) {
  std::vector<LumberPart> parts;
  for (const char* mark : {"A", "B", "C", "D"}) {
    LumberPart& part = parts.emplace_back();
    part.name = std::string("bin/") + mark;
    part.item = part.face = "bin";
    part.label = "piece";
    part.material = species;
    part.finished = {mm(475), mm(64), mm(22), Length()};
  }
  return parts;
}

TEST_CASE("a board in hand is one, and a board for sale as many as wanted") {
  CHECK(item(R"("length": 2000, "width": 150, "thickness": 27)").count == 1);
  CHECK_FALSE(item(R"("length": 2000, "width": 150, "thickness": 27, "price": 1, "per": "board")")
                  .count.has_value());
}

TEST_CASE("quarters are thicknesses, in a metric file too") {
  const StockItem rough = item(R"("length": 2000, "width": 150, "thickness": "5/4")");
  CHECK(rough.thickness.thickness == Length::from_inch_parts(5, 4));
  const StockItem planed =
      item(R"("length": 2000, "width": 150, "thickness": "5/4", "surface": "surfaced")");
  CHECK(planed.thickness.thickness == Length::from_inch_parts(17, 16));
  CHECK(planed.nominal == Length::from_inch_parts(5, 4));
}

TEST_CASE("a board costs what its unit makes of it") {
  const std::string board = R"("length": 2000, "width": 250, "thickness": 40, )";
  CHECK(cost(item(board + R"("price": 12.5, "per": "board")")) == 1250);
  CHECK(cost(item(board + R"("price": 12.5, "per": "metre")")) == 2500);
  CHECK(cost(item(board + R"("price": 12.5, "per": "square_metre")")) == 625);  // 0.5 m2
  CHECK(cost(item(board + R"("price": 1250, "per": "cubic_metre")")) == 2500);  // 0.02 m3
  CHECK(cost(item(board + R"("count": 3)")) == 0);
}

TEST_CASE("boards are reckoned together and rounded once") {
  // 120 x 8 in. of 4/4 are 6 2/3 board feet, 43 1/3 at 6.50; three are 20 board feet.
  const StockItem board = item(
      R"("length": 120, "width": 8, "thickness": "4/4", "price": 6.5, "per": "board_foot")", "in");
  CHECK(cost(board) == 4333);
  CHECK(cost(board, 3) == 13'000);
  CHECK(measure_of(board) == lumber::Exact::of(20, 3));
}

TEST_CASE("the middle of two widths is exact where it falls between two steps") {
  // 200 and 200.000000625 mm are a step apart.
  const StockItem board = item(
      R"("length": 2000, "width": {"from": 200, "to": "200.000000625 mm"}, "thickness": 40, "price": 1, "per": "square_metre")");
  CHECK(*board.widest - board.width == kStep);
  CHECK(measure_of(board) == lumber::Exact::of(lumber::Wide{2} * (640'000'000 + 1), 3'200'000'000));
}

TEST_CASE("what no board can cost is refused") {
  const Reading json = read_json(R"({"units": "mm", "stock": [{"id": "a", "length": 99999.99999,
      "width": 99999.99999, "thickness": 9999.99999, "price": 9999999.9999, "per": "cubic_metre"}]})");
  const StockReading reading = read_stock(*json.value);
  REQUIRE(reading.problems.size() == 1);
  CHECK(reading.problems.front().path == "/stock/0/price");
}

TEST_CASE("board feet count the rough thickness of a surfaced board") {
  // 96 x 12 in. are 8 square feet; 5/4 makes 10 board feet of them, surfaced or not.
  const StockItem board = item(
      R"("length": 96, "width": 12, "thickness": "5/4", "surface": "surfaced", "price": 6, "per": "board_foot")",
      "in");
  CHECK(cost(board) == 6000);
}

TEST_CASE("random widths are planned at the least and priced at the middle one") {
  const StockItem board = item(
      R"("length": 2000, "width": {"from": 200, "to": 300}, "thickness": 40, "price": 10, "per": "square_metre")");
  CHECK(board.width == mm(200));
  CHECK(board.widest == mm(300));
  CHECK(cost(board) == 500);  // 2 m x 0.25 m
}

TEST_CASE("CSV says the same as JSON") {
  const StockReading csv = read_stock_csv(
      "\xEF\xBB\xBFid,length_mm,width_mm,thickness_mm,species,defects,price,per\r\n"
      "\"a\",2000,200..300,40,\"oak, \"\"brown\"\"\",500..600; 700..710,10.25,square_metre\r\n");
  REQUIRE(csv.file.has_value());
  const StockItem& board = csv.file->items.front();
  CHECK(board.species == "oak, \"brown\"");
  CHECK(board.length == mm(2000));
  CHECK(board.widest == mm(300));
  REQUIRE(board.defects.size() == 2);
  CHECK(board.defects[1].from == mm(700));
  CHECK(board.price->ten_thousandths == 102'500);
}

TEST_CASE("a table has a million fields at most") {
  std::string text = "id,length_mm\n";
  for (int i = 0; i < 500'000; ++i)
    text += ",\n";
  CHECK(read_csv(text).problems.empty());
  const CsvReading more = read_csv(text + ",\na,2000\n");
  REQUIRE(more.problems.size() == 1);
  CHECK(more.problems.front().message == "more than 1000000 fields in one table");
  CHECK(more.rows.list.empty());
}

TEST_CASE("settings stand above the table of CSV") {
  const StockReading csv = read_stock_csv(
      "kerf_mm,4,,\ntrim.end_mm,20,,\nglue_up.limit_mm,120,,\nwaste.percent,25,,\n"
      "waste.of,needed,,\nmatch,yes,,\ncurrency,EUR,,\n,,,\n"
      "id,length_mm,width_mm,thickness_mm\na,2000,150,27\n");
  REQUIRE(csv.file.has_value());
  const Sawing& sawing = csv.file->sawing;
  CHECK(sawing.kerf == mm(4));
  CHECK(sawing.end_trim == mm(20));
  CHECK(sawing.edge_trim == Length());
  CHECK(sawing.strip_limit == mm(120));
  CHECK(sawing.waste.percent == 25);
  CHECK_FALSE(sawing.waste.of_bought);
  CHECK(sawing.match);
  CHECK(csv.file->currency == "EUR");
  CHECK(csv.file->items.size() == 1);
}

TEST_CASE("a range of lengths is a board of each, in steps of 300") {
  const StockFile file = stock(R"({"units": "mm", "stock": [
      {"id": "y", "length": {"from": 1800, "to": 2500}, "width": 200, "thickness": 40,
       "price": 10, "per": "metre"}]})");
  REQUIRE(file.items.size() == 3);  // 1800, 2100, 2400
  CHECK(file.items[0].id == "y 1800");
  CHECK(file.items[2].length == mm(2400));
  CHECK(cost(file.items[2]) == 2400);
}

TEST_CASE("of a range of lengths the shortest that does is bought") {
  // 4 x 500 + 3 x 3 = 2009 do not come from 1800, and 2100 is less than 2400.
  const StockFile file = stock(R"({"units": "mm", "kerf": 3, "stock": [
      {"id": "y", "length": {"from": 1800, "to": 4800}, "width": 72, "thickness": 27,
       "price": 10, "per": "metre"}]})");
  const LumberReport report = report_lumber(four_parts(""), file, Unit::mm, {});
  CHECK(totals_of(report).cost == 2100);
}

TEST_CASE("a fault in CSV has the place of its field") {
  const std::string text = "id,length_mm,width_mm,thickness_mm\na,2000,150,27\nb,2000,-5,27\n";
  const StockReading csv = read_stock_csv(text);
  REQUIRE(csv.problems.size() == 1);
  CHECK(place_in(text, *csv.problems[0].offset) == TextPlace{3, 8});
  CHECK(csv.problems[0].path == "column width");
}

TEST_CASE("a stock file that is written reads back as the same") {
  const std::string text = stock_text(stock(
      R"({"units": "in", "currency": "EUR", "kerf": "3/32", "match": true, "stock": [
         {"id": "a", "length": 96, "width": {"from": 6, "to": 8}, "thickness": "5/4",
          "price": 6.25, "per": "board_foot", "count": 3, "species": "oak"},
         {"id": "b", "kind": "sheet", "length": 96, "width": 48, "thickness": "23/32", "grain": false,
          "defects": [[1, "2 1/3"]], "end_trim": "1/2"}]})"));
  CHECK(stock_text(stock(text)) == text);
  CHECK(stock(text).sawing.match);
}

TEST_CASE("what a plan takes is gone, and its offcuts are in the rack") {
  StockFile rack = stock(R"({"units": "mm", "kerf": 3, "least_offcut": {"length": 300, "width": 50},
      "stock": [{"id": "a", "length": 2100, "width": 70, "thickness": 27, "count": 2}]})");
  // Rough 500 x 70: 4 x 500 + 4 x 3 = 2012 of one board, 88 are left and not kept.
  const LumberReport report = report_lumber(four_parts(""), rack, Unit::mm, {});
  REQUIRE(report.unplaced.empty());
  CHECK(totals_of(report).boards == 1);
  const StockFile left = stock_left(report);
  REQUIRE(left.items.size() == 1);
  CHECK(left.items.front().count == 1);
}

TEST_CASE("an offcut gets an id that no other board has") {
  StockFile rack = stock(R"({"units": "mm", "kerf": 3, "trim": {"end": 5, "edge": 0},
      "least_offcut": {"length": 300, "width": 50},
      "stock": [{"id": "a", "length": 3000, "width": 70, "thickness": 27},
                {"id": "a.1", "length": 400, "width": 70, "thickness": 27}]})");
  const StockFile left = stock_left(report_lumber(four_parts(""), rack, Unit::mm, {}));
  REQUIRE(left.items.size() == 2);
  CHECK(left.items[1].id == "a.2");
  CHECK(left.items[1].length == mm(2990 - 4 * 503));
  CHECK(left.items[1].end_trim == Length());
}

TEST_CASE("where the right thickness runs out, the next one is taken") {
  StockFile rack = stock(R"({"units": "mm", "kerf": 3, "stock": [
      {"id": "thin", "length": 1100, "width": 70, "thickness": 27},
      {"id": "thick", "length": 1100, "width": 70, "thickness": 40, "count": 5}]})");
  const LumberReport report = report_lumber(four_parts(""), rack, Unit::mm, {});
  CHECK(report.unplaced.empty());
  REQUIRE(report.plans.size() == 2);
  CHECK(report.plans[0].pieces.size() == 2);  // two of 500 out of 1100
  CHECK(report.plans[1].pieces.size() == 2);
}

TEST_CASE("a part of another species is named with what would do") {
  StockFile rack = stock(R"({"units": "mm", "stock": [
      {"id": "a", "length": 2100, "width": 90, "thickness": 27, "species": "ash"}]})");
  const LumberReport report = report_lumber(four_parts("beech"), rack, Unit::mm, {});
  REQUIRE(report.unplaced.size() == 4);
  CHECK(report.unplaced[0].why ==
        "of beech the stock holds none; would do: 27 mm rough, 500 mm x 70 mm");
  CHECK(report.plans.empty());
}

TEST_CASE("a part whose species is not told comes from the only one there is") {
  StockFile rack = stock(R"({"units": "mm", "stock": [
      {"id": "a", "length": 2100, "width": 90, "thickness": 27, "species": "ash"}]})");
  CHECK(report_lumber(four_parts(""), rack, Unit::mm, {}).unplaced.empty());
}

}  // namespace
}  // namespace haunch::test
