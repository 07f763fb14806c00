// The page, the rows and the drawing of rods.
#include "rods_page.h"

#include "pages.h"
#include "rods_csv.h"
#include "rods_svg.h"

namespace haunch::test {
namespace {

ItemRods rods(std::string_view spec) {
  ItemRods its{"d", "", Unit::mm, wood(spec), {}};
  const Making making = making_of(its.wood);
  its.rods = {rod_of(its.wood, making, RodDirection::height),
              rod_of(its.wood, making, RodDirection::width)};
  return its;
}

std::string page(std::string_view spec) {
  return in_words_only(rods_page({rods(spec)}, LengthPrinter(Unit::mm, {})));
}

std::string drawing(std::string_view spec, std::string_view paper) {
  return rods_svg({rods(spec)}, LengthPrinter(Unit::mm, {}), paper);
}

std::size_t count_of(std::string_view text, std::string_view words) {
  std::size_t count = 0;
  for (std::size_t at = text.find(words); at != text.npos; at = text.find(words, at + 1))
    ++count;
  return count;
}

}  // namespace

TEST_CASE("A rod's page tells from where it runs, and names each piece at a mark") {
  // A cupboard door 400 x 700: stiles of 60, a bottom rail of 80.
  const std::string its = page(cupboard());
  INFO(its);
  CHECK(tells(its, "HEIGHT ROD, from the foot up; 700 in all"));
  CHECK(tells(its, "0.0 stiles A B lower end bottom rail D lower edge"));
  CHECK(tells(its, "WIDTH ROD, from the left; 400 in all"));
  CHECK(tells(its, "60 left stile A sight edge rails C D shoulder"));
}

TEST_CASE("A mark is one row of CSV, with all that stands there") {
  const std::string rows = rods_csv({rods(cupboard())}, Unit::mm, CsvProfile::plain);
  INFO(rows);
  CHECK(tells(rows, "d,height,foot,0,stiles A B: lower end; bottom rail D: lower edge,A B D\n"));
  CHECK(tells(rows, "d,width,left,60,left stile A: sight edge; rails C D: shoulder,A C D\n"));
}

TEST_CASE("Rods in one piece stand side by side, as long as they are") {
  const std::string its = drawing(cupboard(), "");
  CHECK(count_of(its, "class=\"sheet\"") == 2);
  CHECK(tells(its, "data-from-mm=\"0\" data-to-mm=\"700\""));
  CHECK(tells(its, "data-from-mm=\"0\" data-to-mm=\"400\""));
  CHECK_FALSE(tells(its, "@page"));
}

TEST_CASE("Sheets of paper stand below each other, each with the line that proves the printer") {
  const std::string its = drawing(cupboard(), "a4");
  const std::size_t sheets = count_of(its, "class=\"sheet\"");
  CHECK(sheets == count_of(its, "data-length-mm=\"100\""));
  CHECK(sheets == count_of(its, "print at 100 %"));
  CHECK(tells(its, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"210mm\" height=\"" +
                       std::to_string(297 * sheets) + "mm\""));
  CHECK(tells(its, "@page { size: 210mm 297mm; margin: 0 }"));
}

TEST_CASE("A sheet and the next have crosses at one place") {
  ItemRods height = rods(cupboard());
  height.rods.pop_back();
  const std::string its = rods_svg({height}, LengthPrinter(Unit::mm, {}), "letter");
  const std::string cross = "class=\"register\" data-at-mm=\"";
  const std::size_t first = its.find(cross);
  REQUIRE(first != its.npos);
  const std::string whole = its.substr(first, its.find('"', first + cross.size()) + 1 - first);
  CHECK(count_of(its, whole) == 4);
}

TEST_CASE("A name that is longer than a line has room goes on below, its letters whole") {
  ItemRods its = rods(cupboard());
  its.id.clear();
  for (int i = 0; i < 60; ++i)
    its.id += "\u00E4\u00E9";
  const std::string drawn = rods_svg({its}, LengthPrinter(Unit::mm, {}), "a4");
  const std::size_t first = drawn.find("font-weight=\"bold\">");
  const std::size_t start = drawn.find('>', first) + 1;
  const std::string line = drawn.substr(start, drawn.find('<', start) - start);
  CHECK(line.size() < its.id.size());
  CHECK(its.id.starts_with(line));
  CHECK(line.size() % 2 == 0);  // two bytes a letter
}

TEST_CASE("What a shop calls its things cannot break the drawing") {
  ItemRods its = rods(cupboard());
  its.id = "<b>&\"";
  const std::string drawn = rods_svg({its}, LengthPrinter(Unit::mm, {}), "");
  CHECK(tells(drawn, "<title>&lt;b&gt;&amp;&quot;: height rod</title>"));
}

}  // namespace haunch::test
