#include "order_sheet.h"

#include <string>
#include <vector>

#include "catch.h"
#include "csv_fields.h"
#include "dotted_keys.h"
#include "json_reader.h"
#include "spec_merge.h"
#include "spec_text.h"

using namespace haunch;

namespace {

/// All rows, each as JSON on a line, or what is wrong with it.
std::string read(const std::string& text) {
  OrderSheet sheet(text);
  std::string lines;
  for (const Problem& problem : sheet.take_problems())
    lines += problem.message + "\n";
  while (auto row = sheet.next()) {
    for (const Problem& problem : row->problems)
      lines += problem.path + ": " + problem.message + "\n";
    if (row->problems.empty()) lines += spec_line(*row->item) + "\n";
  }
  return lines;
}

Value json(const std::string& text) {
  return *read_json(text).value;
}

std::string put(const std::string& base, const std::string& own, Lists lists = Lists::whole) {
  Value whole = json(base);
  put_over(whole, json(own), lists);
  return spec_line(whole);
}

std::string set(const std::string& base, const std::string& key, const std::string& value) {
  Value whole = json(base);
  set_key(whole, *steps_of(key), 0, plain_value(value, 0, false));
  return spec_line(whole);
}

}  // namespace

TEST_CASE("a row is the spec that its columns name") {
  CHECK(
      read("id,opening.width,rail_widths.0,rail_widths.1.width,rail_widths.1.top\n"
           "hatch,500,60,195,965\n") ==
      R"({"id": "hatch", "opening": {"width": 500}, "rail_widths": [60, {"width": 195, "top": 965}]})"
      "\n");
}

TEST_CASE("empty cells and blank rows are left out, and rows may end early") {
  CHECK(read("id,units,panels\n,,\nlid,,4\nflap\n\n") ==
        "{\"id\": \"lid\", \"panels\": 4}\n{\"id\": \"flap\"}\n");
}

TEST_CASE("a sheet is read as any spreadsheet writes it") {
  const std::string wanted =
      "{\"id\": \"lid\", \"thickness\": 22.5, \"note\": \"a; \\\"b\\\"\\nc\"}\n";
  CHECK(read("id,thickness,note\nlid,22.5,\"a; \"\"b\"\"\nc\"\n") == wanted);
  CHECK(read("\xEF\xBB\xBFid;thickness;note\r\nlid;22,5;\"a; \"\"b\"\"\nc\"\r\n") == wanted);
  CHECK(read("id\tthickness\tnote\rlid\t22.5\t\"a; \"\"b\"\"\nc\"") == wanted);
}

TEST_CASE("a decimal comma is one where semicolons part the columns") {
  CHECK(read("thickness;stile_width;name\n22,5;70,5 mm;1,5\n") ==
        "{\"thickness\": 22.5, \"stile_width\": \"70.5 mm\", \"name\": \"1,5\"}\n");
  CHECK(read("thickness,stile_width\n\"22,5\",60\n") ==
        "{\"thickness\": \"22,5\", \"stile_width\": 60}\n");
}

TEST_CASE("what may be a thousand or little more than one is refused") {
  CHECK(read("thickness;opening.width\n22;1.234\n") ==
        "/opening/width: 1.234 may be 1234 or 1,234; write it without the point\n");
  CHECK(read("thickness;opening.width\n22.5;0.125\n") ==
        "{\"thickness\": 22.5, \"opening\": {\"width\": 0.125}}\n");
}

TEST_CASE("names stay words, whatever they look like") {
  CHECK(read("id,name,note,accessible,quantity\n12,007,TRUE,TRUE,3\n") ==
        R"({"id": "12", "name": "007", "note": "TRUE", "accessible": true, "quantity": 3})"
        "\n");
}

TEST_CASE("a guard against formulas is taken off") {
  CHECK(read("id,name\na,'=lid\nb,'s lid\n") ==
        "{\"id\": \"a\", \"name\": \"=lid\"}\n{\"id\": \"b\", \"name\": \"'s lid\"}\n");
}

TEST_CASE("a rail's width and its height may stand in columns of one rail") {
  CHECK(read("rail_widths.0,rail_widths.1.top,rail_widths.1\n60,965,195\n60,,195\n") ==
        "{\"rail_widths\": [60, {\"top\": 965, \"width\": 195}]}\n{\"rail_widths\": [60, 195]}\n");
}

TEST_CASE("a header that names no keys is refused") {
  CHECK(read("") == "the sheet is empty; its first row names the keys\n");
  CHECK(read(",,\n") == "the first row names no keys; write such as id, opening.width\n");
  CHECK(read("id,id\na,b\n").starts_with("the column \"id\" is there twice; keep one\n"));
  for (const char* const key : {"a..b", ".a", "a.", "0.a", "rail_widths.1000"})
    CHECK(read("id," + std::string(key) + "\n")
              .starts_with("\"" + std::string(key) + "\" is no key; write such as opening.width"));
}

TEST_CASE("what a row says twice or in no column is refused") {
  CHECK(read("id,panels,panels.across\na,4,2\n") ==
        "/panels/across: is said in parts and as a whole; keep one of the two\n");
  CHECK(read("id,panels.across,panels\na,2,4\n") ==
        "/panels: is said in parts and as a whole; keep one of the two\n");
  CHECK(read("id,\na,b\n") ==
        ": \"b\" stands in a column without a key; name it in row 1, or put words with a comma in "
        "quotes\n");
  CHECK(read("id,name\na,\"b\n") == ": a quote is opened here and never closed\n");
}

TEST_CASE("a place left empty in a list is told") {
  OrderSheet sheet("id,rail_widths.0,rail_widths.1,rail_widths.2\na,,60,\nb,60,60,\n");
  const auto a = sheet.next(), b = sheet.next();
  CHECK(gaps_in(*a->item).front().path == "/rail_widths/0");
  CHECK(gaps_in(*b->item).empty());
}

TEST_CASE("a value has the place of its cell, a key that of its column") {
  const std::string text = "id;opening.width\n\n\"a\nb\";500\n";
  OrderSheet sheet(text);
  const Value item = *sheet.next()->item;
  CHECK(item.entries[1].offset == text.find("opening"));
  const CsvCell cell = cell_at(text, offset_of(item, "/opening/width"), ';');
  CHECK(cell.row == 3);
  CHECK(cell.column == 2);
  CHECK(column_letters(0) == "A");
  CHECK(column_letters(25) == "Z");
  CHECK(column_letters(26) == "AA");
  CHECK(column_letters(702) == "AAA");
}

TEST_CASE("items written as a sheet read back as themselves") {
  const std::vector<std::string> items = {
      R"({"id": "a", "rail_widths": [60.5, {"width": 195, "name": "=rail", "top": 965}], "pin": {}})",
      R"({"id": "b", "name": "flap, \"left\"", "accessible": true, "rail_widths": ["2 3/8 in", 60, 70]})"};
  std::vector<Value> values;
  for (const std::string& item : items)
    values.push_back(json(item));
  for (const CsvProfile profile :
       {CsvProfile::plain, CsvProfile::spreadsheet, CsvProfile::semicolon})
    for (std::size_t i = 0; i < items.size(); ++i)
      CHECK(read(sheet_of({values[i]}, profile)) == items[i] + "\n");
  OrderSheet both(sheet_of(values, CsvProfile::plain));
  CHECK(both.take_problems().empty());
}

TEST_CASE("a sheet of one column, with commas in it, reads back too") {
  const Value item = json(R"({"note": "oak, quarter-sawn, 70,5"})");
  for (const CsvProfile profile :
       {CsvProfile::plain, CsvProfile::spreadsheet, CsvProfile::semicolon})
    CHECK(read(sheet_of({item}, profile)) == spec_line(item) + "\n");
}

TEST_CASE("another spec's keys come first, and go key by key") {
  CHECK(put(R"({"a": 1, "tenon": {"relish": 30, "gap": 9}})", R"({"tenon": {"gap": 8}, "b": 2})") ==
        R"({"a": 1, "tenon": {"relish": 30, "gap": 8}, "b": 2})");
  CHECK(put(R"({"rail_widths": [1, 2, 3]})", R"({"rail_widths": [4, 5]})") ==
        R"({"rail_widths": [4, 5]})");
  CHECK(put(R"({"rail_widths": [1, 2, 3]})", R"({"rail_widths": [null, {"top": 5}]})",
            Lists::by_place) == R"({"rail_widths": [1, {"width": 2, "top": 5}, 3]})");
}

TEST_CASE("one value for several keys is each of them, where the other says one") {
  CHECK(put(R"({"clearance": 3})", R"({"clearance": {"foot": 6}})") ==
        R"({"clearance": {"left": 3, "right": 3, "head": 3, "foot": 6}})");
  CHECK(put(R"({"clearance": {"foot": 6}})", R"({"clearance": 3})") == R"({"clearance": 3})");
  CHECK(put(R"({"joint": "bridle"})", R"({"joint": {"muntin": "loose"}})") ==
        R"({"joint": {"corner": "bridle", "muntin": "loose"}})");
}

TEST_CASE("a key is set whatever stood there") {
  CHECK(set("{}", "tenon.relish", "30") == R"({"tenon": {"relish": 30}})");
  CHECK(set(R"({"panels": 4})", "panels.across", "2") == R"({"panels": {"across": 2}})");
  CHECK(set(R"({"panels": {"across": 2}})", "panels", "4") == R"({"panels": 4})");
  CHECK(set(R"({"rail_widths": [60, 195, 60]})", "rail_widths.1.top", "965") ==
        R"({"rail_widths": [60, {"width": 195, "top": 965}, 60]})");
  CHECK(set(R"({"clearance": 3})", "clearance.foot", "8 mm") ==
        R"({"clearance": {"left": 3, "right": 3, "head": 3, "foot": "8 mm"}})");
}
