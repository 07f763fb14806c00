// Labels: one for every piece of the cut list, under marks that lumber uses too.
#include "labels.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>

#include "label_sheets.h"
#include "lumber_report.h"
#include "spec_source.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

ItemReport report_of(const Value& spec, const std::string& id) {
  JobReading reading = read_job(spec, nullptr, id);
  REQUIRE(reading.job != nullptr);
  ItemOutcome outcome = report_item(std::move(reading.job), {.cutlist = true});
  REQUIRE(outcome.report.has_value());
  return *std::move(outcome.report);
}
ItemReport report_of(const std::string& spec) {
  return report_of(value_of(spec), "K1");
}

std::size_t quantity_of(const ItemReport& report) {
  std::int64_t all = 0;
  for (const CutRow& row : report.cutlist)
    all += row.quantity;
  return static_cast<std::size_t>(all);
}

std::vector<std::string> marks_of(const ItemLabels& item) {
  std::vector<std::string> marks;
  for (int copy = 1; copy <= item.quantity; ++copy)
    for (const Label& label : item.labels)
      marks.push_back(order_mark(item.one(copy), label.piece));
  return marks;
}

const Label& named(const ItemLabels& item, std::string_view name) {
  for (const Label& label : item.labels)
    if (label.name == name) return label;
  FAIL("no such label");
  return item.labels.front();
}

constexpr StickerSheet kSheet{{210, 297}, {70, 36}, {}, {}};

LabelSheets sheets_of(const std::string& spec, const std::string& order = {}) {
  return label_sheets({labels_of(report_of(spec))}, kSheet, *grid_of(kSheet), order,
                      LengthPrinter(Unit::mm, kBenchLengths));
}

bool tells(const std::string& html, std::string_view words) {
  return html.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("every example has as many labels as its cut list has pieces, marked as in lumber") {
  std::size_t items = 0;
  SpecSource source({HAUNCH_EXAMPLES}, 0, {});
  REQUIRE(source.check().empty());
  while (auto record = source.next()) {
    if (!record->item) continue;
    JobReading reading = read_job(*record->item, nullptr, record->default_id);
    if (!reading.job) continue;
    const ItemReport report = *report_item(std::move(reading.job), {.cutlist = true}).report;
    const ItemLabels labels = labels_of(report);
    const std::vector<std::string> marks = marks_of(labels);
    CAPTURE(labels.id);
    CHECK(labels.count() == quantity_of(report));
    CHECK(marks.size() == labels.count());
    CHECK(std::set(marks.begin(), marks.end()).size() == marks.size());
    std::vector<std::string> in_lumber;
    for (const LumberPart& part : lumber_parts(report))
      in_lumber.push_back(part.name);
    CHECK(marks == in_lumber);
    ++items;
  }
  CHECK(items > 30);
}

TEST_CASE("of several alike each piece has its own mark: K1#2/C is C of the second K1") {
  const ItemLabels two = labels_of(report_of(cabinet_mm(R"("quantity": 2)")));
  const std::vector<std::string> marks = marks_of(two);
  CHECK(marks.front() == "K1#1/A");
  CHECK(marks.back() == "K1#2/E");
  CHECK(marks_of(labels_of(report_of(cabinet_mm()))).front() == "K1/A");
}

TEST_CASE("a label tells what its piece goes to, in words") {
  const ItemLabels door = labels_of(report_of(cabinet_mm()));
  CHECK(mates_words(named(door, "left stile").mates) == "C D mortise and tenon; E panel in groove");
  CHECK(mates_words(named(door, "panel").mates, "K1/") == "K1/A K1/B K1/C K1/D panel in groove");
}

TEST_CASE("glass has a label without face side; what is small lies in one bag") {
  const ItemLabels door =
      labels_of(report_of(house_mm(R"("joint": "dowel", "dowel": {"diameter": 16, "depth": 60})")));
  const std::vector<LabelBag> bags = bagged(door.labels);
  std::size_t dowels = 0, dowel_bags = 0;
  for (const LabelBag& bag : bags) {
    if (bag.front()->role != Role::dowel) continue;
    ++dowel_bags;
    dowels += bag.size();
  }
  CHECK(dowels >= 4);
  CHECK(dowel_bags == 1);
  CHECK_FALSE(named(door, "dowel of top rail").is_marked());
}

TEST_CASE("24 stickers of 70 x 36 go on A4, from edge to edge, their words clear of it") {
  const auto grid = grid_of(kSheet);
  REQUIRE(grid.has_value());
  CHECK(grid->columns == 3);
  CHECK(grid->rows == 8);
  CHECK(grid->first.width == Approx(0).margin(1e-9));
  CHECK(grid->first.height == Approx(4.5));
  CHECK(grid->padding.width == Approx(5));
  CHECK(grid->padding.height == Approx(2));
}

TEST_CASE("30 stickers of 2 5/8 x 1 in. go on Letter with their gap and margin") {
  const auto grid = grid_of({{215.9, 279.4}, {66.675, 25.4}, {3.175, 12.7}, {3.175, 0}});
  REQUIRE(grid.has_value());
  CHECK(grid->columns == 3);
  CHECK(grid->rows == 10);
  CHECK(grid->first.width == Approx(4.7625));
  CHECK(grid->first.height == Approx(12.7));
}

TEST_CASE("a sticker larger than its paper is none") {
  CHECK_FALSE(grid_of({{210, 297}, {211, 36}, {}, {}}).has_value());
  CHECK_FALSE(grid_of({{210, 297}, {70, 36}, {0, 140}, {}}).has_value());
}

TEST_CASE("users' words are written so that they do nothing on the page") {
  const LabelSheets made =
      sheets_of(cabinet_mm(R"("name": "<b>\"A&B\"</b> 'x'")"), "<script>alert(1)</script>");
  CHECK_FALSE(tells(made.html, "<script"));
  CHECK_FALSE(tells(made.html, "<b>\""));
  CHECK(tells(made.html, "&lt;b&gt;&quot;A&amp;B&quot;&lt;/b&gt; &#39;x&#39;"));
}

TEST_CASE("a page of labels is one file, on paper of the size that it names") {
  const LabelSheets made = sheets_of(house_mm(R"("quantity": 3)"));
  CHECK(made.sheets == (made.stickers + 23) / 24);
  CHECK(tells(made.html, "@page { size: 210mm 297mm; margin: 0 }"));
  for (const char* fetches : {"http:", "https:", "<link", "<script", "@import", "url("})
    CHECK_FALSE(tells(made.html, fetches));
}

TEST_CASE("a sticker without room for the least names the piece, and a size that would do") {
  const StickerSheet small{{210, 297}, {20, 10}, {}, {}};
  const LabelSheets made =
      label_sheets({labels_of(report_of(cabinet_mm()))}, small, *grid_of(small), {},
                   LengthPrinter(Unit::mm, kBenchLengths));
  CHECK(made.too_long == "K1/A");
  const StickerSheet larger{{210, 297}, made.would_do, {}, {}};
  CHECK(label_sheets({labels_of(report_of(cabinet_mm()))}, larger, *grid_of(larger), {},
                     LengthPrinter(Unit::mm, kBenchLengths))
            .too_long.empty());
}

}  // namespace haunch::test
