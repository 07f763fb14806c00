#include "html_page.h"

#include "catch.h"
#include "html_text.h"

namespace haunch {
namespace {

/// Two items: "K1" with pieces A and B, "bin", made three times, with A.
BookPlaces two_items() {
  BookPlaces places;
  places.add_item("K1", {"A", "B"});
  places.add_item("my bin", {"A"});
  places.set_setups(3);
  return places;
}

std::string html_of(const PageText& text, std::optional<std::size_t> item = {}) {
  const BookPlaces places = two_items();
  HtmlPage page(places, item);
  page.add(text);
  return page.take();
}

std::string html_of(const TextTable& table, std::optional<std::size_t> item = {}) {
  return html_of(PageText::table(table, LengthPrinter(Unit::mm, {}), 2), item);
}

bool tells(const std::string& html, const std::string& part) {
  return html.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("A user's text is no markup", "[html]") {
  CHECK(html_text("<b>oak</b> & \"ash\", 'elm'") ==
        "&lt;b&gt;oak&lt;/b&gt; &amp; &quot;ash&quot;, &#39;elm&#39;");
  CHECK(html_text("Eiche, dunkel gebürstet") == "Eiche, dunkel gebürstet");
  CHECK(html_text("").empty());
}

TEST_CASE("Words written from right to left stand by themselves", "[html]") {
  CHECK(html_text("oak שלום 12") == "oak <bdi>שלום</bdi> 12");
  CHECK(html_text("שלום עולם, <oak>") == "<bdi>שלום עולם</bdi>, &lt;oak&gt;");
  CHECK(html_text("باب") == "<bdi>باب</bdi>");
}

TEST_CASE("Bytes that are no characters are passed on, and end no search", "[html]") {
  CHECK(html_text("a\xD7") == "a\xD7");
  CHECK(html_text("\xFF<") == "\xFF&lt;");
}

TEST_CASE("Marks and set-ups have places, others have none", "[html]") {
  const BookPlaces places = two_items();
  CHECK(places.told_at("A", 0) == "i1-A");
  CHECK(places.told_at("A", 1) == "i2-A");
  CHECK(places.told_at("B", 1) == std::nullopt);
  CHECK(places.told_at("A", {}) == std::nullopt);
  CHECK(places.told_at("K1/B", {}) == "i1-B");
  CHECK(places.told_at("my bin#3/A", {}) == "i2-A");
  CHECK(places.told_at("K2/A", 0) == std::nullopt);
  CHECK(places.told_at("S3", 0) == "s3");
  CHECK(places.told_at("S4", 0) == std::nullopt);
  CHECK(places.told_at("S0", 0) == std::nullopt);
  CHECK(places.told_at("S", 0) == std::nullopt);
  CHECK(places.told_at("S99999999999999999999", 0) == std::nullopt);
}

TEST_CASE("Nothing of a user's text is part of a link", "[html]") {
  BookPlaces places;
  places.add_item("a\" onclick=\"x", {"A", "\"><b>"});
  CHECK(places.told_at("a\" onclick=\"x/A", {}) == "i1-A");
  CHECK(places.told_at("\"><b>", 0) == std::nullopt);
}

TEST_CASE("In a column of marks each leads to its piece", "[html]") {
  TextTable table({"part", "length", "marks"});
  table.add({"stiles", Length::from_mm(2054), Cell::of_mark("A B")});
  table.add({"panels", Length::from_mm(995), Cell::of_mark("Z")});
  const std::string html = html_of(table, 0);
  CHECK(tells(html, "<table class=\"n2\">"));
  CHECK(tells(html, "<th scope=col>part<th scope=col>length<th scope=col>marks"));
  CHECK(tells(html, "<tr><td>stiles<td>2054<td><a href=#i1-A>A</a> <a href=#i1-B>B</a>\n"));
  CHECK(tells(html, "<tr><td>panels<td>995<td>Z\n"));
}

TEST_CASE("What a row is about has its place there", "[html]") {
  TextTable table({"", "pieces"});
  table.add({Cell::of_name("S2"), Cell::of_mark("K1/A my bin/A x3")});
  CHECK(tells(html_of(table), "<thead><tr><td><th scope=col>pieces</thead>"));
  CHECK(tells(html_of(table),
              "<tr><th scope=row id=s2>S2<td><a href=#i1-A>K1/A</a> "
              "<a href=#i2-A>my bin/A</a> x3\n"));
}

TEST_CASE("Words name a piece before they say what is true of it", "[html]") {
  CHECK(html_of(PageText::about({"A"}, "FAIL  tenon length A: A tenon is short"), 0) ==
        "<p><strong class=\"fail\">FAIL</strong> tenon length <a href=#i1-A>A</a>: A tenon is "
        "short</p>\n");
  CHECK(html_of(PageText::hanging("A tenon of K1/B, (my bin#2/A)"), 0) ==
        "<p>A tenon of <a href=#i1-B>K1/B</a>, (<a href=#i2-A>my bin#2/A</a>)</p>\n");
}

TEST_CASE("Lines in order are a list, a set-up has its place", "[html]") {
  CHECK(html_of(PageText::numbered(1, "rip 3 of 118") + PageText::numbered(2, "crosscut")) ==
        "<ol>\n<li value=1>rip 3 of 118</li>\n<li value=2>crosscut</li>\n</ol>\n");
  CHECK(html_of(PageText::named("S1", "15 wide")) == "<p id=\"s1\"><b>S1</b> 15 wide</p>\n");
}

TEST_CASE("Parts have headings, a section one above them, a legend stands once", "[html]") {
  const BookPlaces places = two_items();
  HtmlPage page(places, {});
  const PageText legend = PageText::paragraph("from the foot");
  page.add({{"MORTISES", PageText::paragraph("15 wide"), {legend}, Stands::once, "CASE"},
            {"TENONS <", PageText::paragraph("14.9 thick"), {legend}, Stands::once, "CASE"}},
           3);
  CHECK(page.take() ==
        "<h3>CASE</h3>\n<section>\n<h4>MORTISES</h4>\n<p>15 wide</p>\n<p>from the foot</p>\n"
        "</section>\n<section>\n<h4>TENONS &lt;</h4>\n<p>14.9 thick</p>\n</section>\n");
}

TEST_CASE("The same blocks are lines of text", "[html]") {
  const PageText text = PageText::hanging("S1  15 wide") + PageText::gap() +
                        PageText::numbered(12, "crosscut 3 off") + PageText::paragraph("") +
                        PageText::paragraph("below", 4);
  CHECK(text.text() == "  S1  15 wide\n\n  12  crosscut 3 off\n    below\n");
}

}  // namespace haunch
