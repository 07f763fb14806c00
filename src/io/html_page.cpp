#include "html_page.h"

#include <algorithm>

#include "html_text.h"

namespace haunch {
namespace {

constexpr std::size_t kIndent = 2;  // of what stands right below a heading

/// "63.5", "37 63/64", "~0.0315", "12 %": what stands in a column of figures.
bool is_figure(std::string_view text) {
  if (text.find_first_of("0123456789-") == std::string_view::npos) return text.empty();
  return text.find_first_not_of("0123456789.,/+-~% ") == std::string_view::npos;
}

bool holds_figures(const PrintedColumn& column) {
  return column.right() || (column.holds == PrintedColumn::Holds::words &&
                            std::all_of(column.texts.begin() + 1, column.texts.end(), is_figure));
}

/// How its columns stand, as classes of a table that book_style.h has the rules of: "n3 w5", the
/// third of figures, the fifth of many words.
std::string classes_of(const PrintedTable& table) {
  constexpr std::size_t kFewWords = 26;
  std::string classes;
  for (std::size_t i = 0; i < table.columns.size(); ++i) {
    const PrintedColumn& column = table.columns[i];
    const bool figures = holds_figures(column);
    if (!figures && column.widest <= kFewWords) continue;
    classes +=
        (classes.empty() ? "" : " ") + std::string(figures ? "n" : "w") + std::to_string(i + 1);
  }
  return classes;
}

/// Words that tell of what is not well stand out; they say the same without.
std::string_view emphasis_of(std::string_view word) {
  if (word == "FAIL") return "fail";
  return word == "caution" ? "caution" : std::string_view();
}

std::string_view take_word(std::string_view& text) {
  constexpr std::string_view kBetween = " ,;:()";
  const std::size_t end = std::min(text.find_first_of(kBetween), text.size());
  const std::string_view word = text.substr(0, std::max<std::size_t>(end, 1));
  text.remove_prefix(word.size());
  return word;
}

std::string collapsed(std::string_view text) {
  std::string out;
  for (const char c : text)
    if (const bool is_blank = c == ' ' || c == '\n'; !is_blank)
      out += c;
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  return out;
}

}  // namespace

void HtmlPage::add_heading(std::string_view words, int level, std::string_view id) {
  const std::string tag = "h" + std::to_string(level);
  html_ += "<" + tag + (id.empty() ? "" : " id=\"" + std::string(id) + "\"") + ">" +
           linked(collapsed(words), {}) + "</" + tag + ">\n";
}

void HtmlPage::add(const PageParts& parts, int level) {
  std::string section;
  for (const PagePart& part : parts) {
    if (part.section != section && !part.section.empty()) add_heading(part.section, level);
    section = part.section;
    html_ += "<section>\n";
    add_heading(part.heading, section.empty() ? level : level + 1);
    add(part.body);
    for (const PageText& legend : part.legends)
      if (read_.insert(legend.text()).second) add(legend);
    html_ += "</section>\n";
  }
}

void HtmlPage::add(const PageText& text) {
  bool in_list = false;
  for (const PageBlock& block : text.blocks()) {
    const bool is_numbered = block.kind == PageBlock::Kind::numbered;
    if (is_numbered != in_list) html_ += is_numbered ? "<ol>\n" : "</ol>\n";
    in_list = is_numbered;
    add_block(block);
  }
  if (in_list) html_ += "</ol>\n";
}

void HtmlPage::add_block(const PageBlock& block) {
  switch (block.kind) {
    case PageBlock::Kind::gap:
      return;
    case PageBlock::Kind::table:
      return add_table(block.table);
    case PageBlock::Kind::numbered:
      html_ +=
          "<li value=" + std::to_string(block.number) + ">" + linked(block.words, {}) + "</li>\n";
      return;
    case PageBlock::Kind::paragraph:
    case PageBlock::Kind::hanging:
      add_words(block);
  }
}

void HtmlPage::add_words(const PageBlock& block) {
  std::string_view words = block.words;
  html_ += "<p";
  if (block.indent > kIndent) html_ += " class=\"below\"";
  if (!block.names.empty()) {
    if (const auto place = places_.told_at(block.names, item_)) html_ += " id=\"" + *place + "\"";
    html_ += "><b>" + html_text(block.names) + "</b> ";
    words.remove_prefix(block.names.size());
  } else {
    html_ += ">";
  }
  const std::string_view first = words.substr(0, words.find(' '));
  if (const std::string_view emphasis = emphasis_of(first); !emphasis.empty()) {
    html_ += "<strong class=\"" + std::string(emphasis) + "\">" + html_text(first) + "</strong> ";
    words.remove_prefix(first.size());
  }
  html_ += linked(collapsed(words), block.marks) + "</p>\n";
}

// ---- links

std::string HtmlPage::link(std::string_view name, const std::string& place) {
  return "<a href=#" + place + ">" + html_text(name) + "</a>";
}

std::string HtmlPage::with_links(std::string_view text, const PlaceOf& place_of) const {
  std::string html;
  std::size_t plain = 0;  // how much of the text stands before the next link
  while (plain < text.size()) {
    std::string_view rest = text.substr(plain);
    const std::size_t order_mark = places_.order_mark_at(rest);
    const std::string_view word = order_mark > 0 ? rest.substr(0, order_mark) : take_word(rest);
    const auto place = order_mark > 0 ? places_.told_at(word, {}) : place_of(word);
    if (!place) {
      plain += word.size();
      continue;
    }
    html += html_text(text.substr(0, plain)) + link(word, *place);
    text.remove_prefix(plain + word.size());
    plain = 0;
  }
  return html + html_text(text);
}

std::string HtmlPage::linked(std::string_view words, std::vector<std::string> marks) const {
  return with_links(words, [&](std::string_view word) -> std::optional<std::string> {
    const auto mark = std::find(marks.begin(), marks.end(), word);
    if (mark == marks.end()) return {};
    marks.erase(mark);
    return places_.told_at(word, item_);
  });
}

std::string HtmlPage::marks_linked(std::string_view marks) const {
  return with_links(marks, [&](std::string_view word) { return places_.told_at(word, item_); });
}

// ---- tables: cells and rows end where the next begin, which HTML allows; there are many

void HtmlPage::add_cell(const PrintedColumn& column, const std::string& text) {
  if (column.holds == PrintedColumn::Holds::names && !text.empty()) {
    const auto place = places_.told_at(text, item_);
    html_ += "<th scope=row" + (place ? " id=" + *place : std::string()) + ">" + html_text(text);
    return;
  }
  html_ += "<td>";
  html_ += column.holds == PrintedColumn::Holds::marks ? marks_linked(text)
                                                       : linked(collapsed(text), {});
}

/// In a box of its own, in which a screen too narrow for it moves it sideways.
void HtmlPage::add_table(const PrintedTable& table) {
  html_ += "<div class=table tabindex=0><table class=\"" + classes_of(table) + "\">\n<thead><tr>";
  for (const PrintedColumn& column : table.columns)
    html_ +=
        column.texts.front().empty() ? "<td>" : "<th scope=col>" + html_text(column.texts.front());
  html_ += "</thead>\n<tbody>\n";
  for (std::size_t row = 1; row <= table.rows; ++row) {
    html_ += "<tr>";
    for (const PrintedColumn& column : table.columns)
      add_cell(column, column.texts[row]);
    html_ += "\n";
  }
  html_ += "</tbody></table></div>\n";
}

}  // namespace haunch
