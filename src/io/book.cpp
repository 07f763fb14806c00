#include "book.h"

#include <algorithm>
#include <utility>

#include "book_style.h"
#include "drawing_svg.h"
#include "html_text.h"
#include "labels_text.h"
#include "lumber_svg.h"
#include "lumber_text.h"
#include "report_page.h"
#include "rods_page.h"
#include "svg_text.h"

namespace haunch {
namespace {

constexpr int kOfItem = 3;  // the level of headings below the name of an item, or of a chapter

std::string link(const std::string& place, const std::string& html) {
  return "<a href=#" + place + ">" + html + "</a>";
}

std::string begin_chapter(std::string_view id, std::string_view title) {
  return "<section class=\"chapter\" id=\"" + std::string(id) + "\">\n<h2>" + html_text(title) +
         "</h2>\n";
}

constexpr std::string_view kEndChapter = "</section>\n";

/// "1 item", "3 items"
std::string counted(std::size_t number, const std::string& one) {
  return std::to_string(number) + " " + one + (number == 1 ? "" : "s");
}

std::string sheet_words(std::size_t number) {
  return "sheet " + std::to_string(number);
}

/// A user's words, which may run from right to left.
std::string bdi(const std::string& words) {
  return "<bdi>" + html_text(words) + "</bdi>";
}

std::string name_of(const Job& job) {
  return bdi(job.id) + (job.name.empty() ? "" : ": " + bdi(job.name));
}

constexpr std::string_view kNoBoard = "<strong class=\"fail\">NO BOARD</strong>";

/// The worst that its checks came to, as it stands out.
std::string worst_of(const ItemReport& item) {
  switch (item.worst()) {
    case Status::fail:
      return "<strong class=\"fail\">FAIL</strong> ";
    case Status::caution:
      return "<strong class=\"caution\">caution</strong> ";
    case Status::ok:
      break;
  }
  return {};
}

/// What is there for those who script is for them in files of its own, and indents are for nobody.
/// Quotes in a user's words are escaped, so that none of these is taken for an attribute.
std::string lean(const std::string& svg) {
  constexpr std::string_view kData = " data-";
  std::string text;
  for (std::size_t at = 0; at < svg.size(); ++at) {
    const bool may_be_data = svg.compare(at, kData.size(), kData) == 0;
    const std::size_t value = may_be_data ? svg.find_first_of(" >=", at + 1) : std::string::npos;
    if (value != std::string::npos && svg.compare(value, 2, "=\"") == 0)
      at = svg.find('"', value + 2);
    else if (svg[at] != ' ' || at == 0 || svg[at - 1] != '\n')
      text += svg[at];
    else
      at = svg.find_first_not_of(' ', at) - 1;
  }
  return text;
}

/// In a box of its own, in which a screen too narrow for it moves it sideways; in that another that
/// cuts off a sheet's free border.
std::string figure(const std::string& kind, const std::string& id, const std::string& svg) {
  return "<figure class=" + kind + id + " tabindex=0><div>\n" + svg + "</div></figure>\n";
}

/// A sheet without what its item is called, for comparison with others.
std::string without_names(const DrawingSheet& sheet, const Job& job) {
  std::string svg = sheet.svg;
  const auto take_out = [&](const std::string& words) {
    for (std::size_t at = svg.find(words); at != std::string::npos; at = svg.find(words, at))
      svg.erase(at, words.size());
  };
  for (const std::string& words : {sheet.title, job.id, job.name})
    take_out(">" + xml_text(words) + "<");
  take_out("id=\"" + xml_text(sheet.id));
  return svg;
}

std::vector<std::string> all_marks(const Assembly& wood) {
  std::vector<std::string> marks;
  for (const Piece& piece : wood.pieces)
    marks.push_back(piece.mark);
  return marks;
}

}  // namespace

Wanted wanted_for_book() {
  return wanted_for(View{});
}

Book::Book(BookOrder order, const View& view, Unit unit, const Paper& paper)
    : order_(std::move(order)),
      view_(view),
      lengths_(unit, view.lengths, view.page_width),
      paper_(paper) {
  for (const ItemReport& item : order_.setups.items) {
    ids_.push_back(item.job->id);
    places_.add_item(ids_.back(), all_marks(item.wood));
  }
  places_.set_setups(order_.setups.plan.setups.size());
  find_setups();
  find_boardless();
}

void Book::find_setups() {
  for (const ItemReport& item : order_.setups.items)
    setups_of_.emplace_back(item.wood.pieces.size());
  const std::vector<Setup>& setups = order_.setups.plan.setups;
  for (std::size_t number = 0; number < setups.size(); ++number)
    for (const SetupPiece& piece : setups[number].pieces) {
      std::vector<std::size_t>& its = setups_of_[piece.of.item][piece.of.piece];
      if (its.empty() || its.back() != number) its.push_back(number);
    }
}

void Book::find_boardless() {
  boardless_.resize(items());
  for (const UnplacedPart& each : order_.lumber.unplaced)
    if (const auto item = places_.item_called(order_.lumber.parts[each.part].item))
      boardless_[*item].push_back(each.part);
}

// ---- the order

std::string Book::title() const {
  if (!order_.name.empty()) return "Order " + order_.name;
  if (items() == 1) return order_.setups.items.front().job->id;
  return "Order of " + counted(items(), "item");
}

std::string Book::front() const {
  const std::string name = title();
  return book_head(name, paper_) + "<header>\n<h1>" + bdi(name) + "</h1>\n<p>" +
         counted(items(), "item") + ", " + counted(order_.setups.plan.setups.size(), "set-up") +
         ", " + counted(order_.lumber.parts.size(), "part") + " of wood and board; sizes in " +
         unit_words(lengths_.unit()) + ".</p>\n</header>\n<main>\n" + contents() + cautions() +
         setups() + lumber();
}

std::string Book::contents() const {
  std::string html =
      "<nav class=\"contents\" id=\"contents\" aria-labelledby=\"contents-title\">\n"
      "<h2 id=\"contents-title\">Contents</h2>\n<ul>\n";
  for (const auto& [place, words] :
       {std::pair("cautions", "Before any work"), {"setups", "Set-ups"}, {"lumber", "Lumber"}})
    html += "<li>" + link(place, words) + "</li>\n";
  for (std::size_t number = 0; number < items(); ++number) {
    const ItemReport& item = order_.setups.items[number];
    html += "<li>" + link(BookPlaces::of_item(number), name_of(*item.job)) + " <span>" +
            std::to_string(item.job->quantity) + " off; " + worst_of(item) +
            html_text(verdict(item)) + "</span>";
    if (const std::size_t parts = boardless_[number].size(); parts > 0)
      html += "; " + std::string(kNoBoard) + " for " + counted(parts, "part");
    html += "</li>\n";
  }
  return html + "</ul>\n</nav>\n";
}

std::string Book::cautions() const {
  HtmlPage page(places_, {});
  page.add_html(begin_chapter("cautions", "Before any work"));
  page.add(page_cautions(kPageWidth));
  page.add(setups_text(order_.setups, lengths_).cautions);
  page.add(PageText::paragraph(last_line({}, true, lengths_.unit(), view_)));
  page.add_html(kEndChapter);
  return page.take();
}

std::string Book::setups() const {
  const std::optional<std::size_t> only =
      items() == 1 ? std::optional<std::size_t>(0) : std::nullopt;
  const SetupsText text = setups_text(order_.setups, lengths_);
  HtmlPage page(places_, only);
  page.add_html(begin_chapter("setups", "Set-ups"));
  page.add(text.head);
  page.add(text.parts, kOfItem);
  page.add_html(kEndChapter);
  return page.take();
}

std::string Book::lumber() const {
  const LumberText text = lumber_text(order_.lumber, lengths_);
  HtmlPage page(places_, {});
  page.add_html(begin_chapter("lumber", "Lumber"));
  page.add(text.head);
  page.add(text.parts, kOfItem);
  page.add_html(boards());
  page.add_html(kEndChapter);
  return page.take();
}

/// Each as large as on paper that lies on its side.
std::string Book::boards() const {
  std::string html;
  for (const BoardDrawing& board : board_drawings(order_.lumber, lengths_, paper_))
    html += figure("board", {}, lean(board.svg));
  if (html.empty()) return html;
  return "<section id=boards>\n<h3>BOARDS, drawn</h3>\n" + html + "</section>\n";
}

// ---- an item

/// As its sheets call it too, so that paper leads there.
std::string Book::id_of(std::size_t item) const {
  return bdi(ids_[item]);
}

std::string Book::take_item(std::size_t item) {
  const ItemReport& report = order_.setups.items[item];
  HtmlPage page(places_, item);
  page.add_html("<section class=\"item\" id=\"" + BookPlaces::of_item(item) + "\">\n");
  {
    const ItemSheet sheet = item_sheet(report, view_, lengths_.unit());
    add_item_head(page, item, sheet);
    add_pieces(page, item);
    add_drawing(page, item);
    page.add_html("<div id=\"" + BookPlaces::of_part(item, "sheet") + "\">\n");
    page.add(sheet.parts, kOfItem);
    page.add_html("</div>\n<div id=\"" + BookPlaces::of_part(item, "checks") + "\">\n");
    page.add(passes_parts(report, lengths_), kOfItem);
    add_assumed(page, item);
    page.add_html("</div>\n");
  }
  add_rods(page, item);
  page.add_html(kEndChapter);
  return page.take();
}

void Book::add_item_head(HtmlPage& page, std::size_t item, const ItemSheet& sheet) const {
  const Job& job = *order_.setups.items[item].job;
  page.add_html("<h2>" + name_of(job) + "</h2>\n<nav class=\"within\" aria-label=\"Item " +
                std::to_string(item + 1) + "\">" + link("contents", "contents"));
  for (const std::string_view part : {"pieces", "drawing", "sheet", "checks", "rods"})
    page.add_html(" " + link(BookPlaces::of_part(item, part), std::string(part)));
  page.add_html(" " + link("setups", "set-ups") + " " + link("lumber", "lumber") +
                "</nav>\n<p class=\"off\">" + std::to_string(sheet.quantity) + " off" +
                html_text(sheet.set_out) + "</p>\n");
  page.add(head_text(sheet));
  if (const std::size_t parts = boardless_[item].size(); parts > 0)
    page.add_html("<p>" + std::string(kNoBoard) + " is found for " + counted(parts, "part") + ":" +
                  boardless_marks(item) + "; " + link("lumber", "lumber") +
                  " tells why, and what would do.</p>\n");
}

/// Of several alike with the item's name, as not all of them need lack a board.
std::string Book::boardless_marks(std::size_t item) const {
  std::string marks;
  for (const std::size_t number : boardless_[item]) {
    const LumberPart& part = order_.lumber.parts[number];
    const bool is_one = part.item == ids_[item];
    const std::string mark = is_one ? part.name.substr(part.item.size() + 1) : part.name;
    const auto place = places_.told_at(part.name, {});
    marks += " " + (place ? link(*place, html_text(mark)) : html_text(mark));
  }
  return marks;
}

/// Sheets that differ from another item's in what these are called are drawn once.
void Book::add_drawing(HtmlPage& page, std::size_t item) {
  const ItemReport& report = order_.setups.items[item];
  page.add_html("<div id=" + BookPlaces::of_part(item, "drawing") + ">\n");
  std::string elsewhere;
  std::size_t number = 0;
  for (const DrawingSheet& sheet : drawing_of(report, lengths_, paper_)) {
    const Drawn here{item, ++number};
    const auto [its, is_new] = drawn_.try_emplace(without_names(sheet, *report.job), here);
    const Drawn& at = its->second;
    const std::string place = BookPlaces::of_part(at.item, "d" + std::to_string(at.sheet));
    if (is_new)
      page.add_html(figure("sheet", " id=" + place, marks_linked(lean(sheet.svg), item)));
    else
      elsewhere += "<li>" + sheet_words(number) + ": " +
                   link(place, "as " + id_of(at.item) + ", " + sheet_words(at.sheet)) + "</li>\n";
  }
  if (!elsewhere.empty())
    page.add_html("<p>Drawn already:</p>\n<ul class=alike>\n" + elsewhere + "</ul>\n");
  page.add_html("</div>\n");
}

/// Of bold lettering, the names of sections among it, what is the mark of a piece leads there.
std::string Book::marks_linked(const std::string& svg, std::size_t item) const {
  constexpr std::string_view kBefore = " font-weight=\"bold\">";
  std::string html;
  std::size_t told = 0;
  for (std::size_t at = svg.find(kBefore); at != std::string::npos; at = svg.find(kBefore, at)) {
    at += kBefore.size();
    const std::string mark = svg.substr(at, svg.find('<', at) - at);
    const auto place = places_.told_at(mark, item);
    if (!place) continue;
    html += svg.substr(told, at - told) + link(*place, mark);
    told = at + mark.size();
  }
  return html + svg.substr(told);
}

void Book::add_pieces(HtmlPage& page, std::size_t item) const {
  page.add_heading("PIECES, as they are labelled", kOfItem, BookPlaces::of_part(item, "pieces"));
  page.add(PageText::table(labels_table(labels_of(order_.setups.items[item])), lengths_, 0));
  page.add_heading("SET-UPS that they go through", kOfItem);
  page.add(PageText::table(setups_table(item), lengths_, 0));
}

/// Pieces that go through the same ones in one row.
TextTable Book::setups_table(std::size_t item) const {
  const std::vector<Piece>& pieces = order_.setups.items[item].wood.pieces;
  std::vector<std::pair<const std::vector<std::size_t>*, std::vector<std::string>>> rows;
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    const std::vector<std::size_t>& numbers = setups_of_[item][piece];
    const auto same = std::find_if(rows.begin(), rows.end(),
                                   [&](const auto& row) { return *row.first == numbers; });
    (same == rows.end() ? rows.emplace_back(&numbers, std::vector<std::string>()) : *same)
        .second.push_back(pieces[piece].mark);
  }
  TextTable table({"pieces", "set-ups"});
  for (const auto& [numbers, marks] : rows) {
    std::vector<std::string> ids;
    for (const std::size_t number : *numbers)
      ids.push_back(setup_id(number));
    table.add({Cell::of_mark(joined(marks)), Cell::of_mark(joined(ids))});
  }
  return table;
}

/// Once for all items that it is the same for.
void Book::add_assumed(HtmlPage& page, std::size_t item) {
  PageParts parts = assumed_parts(order_.setups.items[item], lengths_.fine());
  if (parts.empty()) return;
  const auto [place, is_new] = assumed_.try_emplace(text_of(parts), item);
  const std::string id = BookPlaces::of_part(place->second, "assumed");
  if (is_new) {
    page.add_html("<div id=" + id + ">\n");
    page.add(parts, kOfItem);
    page.add_html("</div>\n");
  } else {
    page.add_html("<p>What was assumed for want of a word in the spec is " +
                  link(id, "as of " + id_of(place->second)) + ".</p>\n");
  }
}

void Book::add_rods(HtmlPage& page, std::size_t item) {
  const ItemRods rods = rods_of(std::move(order_.setups.items[item]));
  page.add_html("<div id=\"" + BookPlaces::of_part(item, "rods") + "\">\n");
  page.add(rods_parts(rods, lengths_), kOfItem);
  page.add(rods_remark());
  page.add_html("</div>\n");
}

std::string_view Book::end() {
  return "</main>\n</body>\n</html>\n";
}

}  // namespace haunch
