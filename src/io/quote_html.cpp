#include "quote_html.h"

#include <string_view>

#include "svg_text.h"

namespace haunch {
namespace {

// No word of it is one that a customer could take for a part of the price: "margin" is none here.
constexpr std::string_view kStyle = R"(<style>
body { display: grid; gap: 0.3em; justify-content: center; padding: 2em 1em;
  grid-template-columns: minmax(0, 46em); color: #111; background: #fff;
  font: 11pt/1.45 Georgia, "Liberation Serif", serif }
h1, h2, p, table { all: unset; display: block }
h1 { font-size: 1.5em }
h2 { font-size: 1.05em; padding-top: 1.2em; border-bottom: 0.05em solid #777 }
table { display: table; border-collapse: collapse; justify-self: start }
th, td { text-align: left; vertical-align: top; padding: 0.1em 1.2em 0.1em 0; font-weight: normal }
th { color: #555; font-size: 0.85em }
.n { text-align: right; font-variant-numeric: tabular-nums }
@media print { h2, tr { break-inside: avoid } h2 { break-after: avoid } }
</style>
)";

std::string cell_html(std::string_view element, const PrintedColumn& column,
                      const std::string& text) {
  std::string html = "<" + std::string(element);
  if (column.right()) html += " class=\"n\"";
  return html + ">" + xml_text(text) + "</" + std::string(element) + ">";
}

std::string table_html(const PrintedTable& table) {
  std::string html = "<table>\n";
  for (std::size_t row = 0; row <= table.rows; ++row) {
    html += "<tr>";
    for (const PrintedColumn& column : table.columns)
      html += cell_html(row == 0 ? "th" : "td", column, column.texts[row]);
    html += "</tr>\n";
  }
  return html + "</table>\n";
}

std::string block_html(const PageBlock& block) {
  switch (block.kind) {
    case PageBlock::Kind::table:
      return table_html(block.table);
    case PageBlock::Kind::gap:
      return "";
    default:
      return "<p>" + xml_text(block.words) + "</p>\n";
  }
}

/// Of several lines each but the last is a paragraph before it.
std::string heading_html(std::string heading, const std::string& element) {
  std::string html;
  for (std::size_t end = heading.find('\n'); end != std::string::npos; end = heading.find('\n')) {
    html += "<p>" + xml_text(heading.substr(0, end)) + "</p>\n";
    heading.erase(0, end + 1);
  }
  return html + "<" + element + ">" + xml_text(heading) + "</" + element + ">\n";
}

}  // namespace

std::string quote_html(const PageParts& parts, const std::string& title) {
  std::string html =
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<title>" +
      xml_text(title) + "</title>\n";
  html += kStyle;
  html += "</head>\n<body>\n";
  for (const PagePart& part : parts) {
    html += heading_html(part.heading, &part == &parts.front() ? "h1" : "h2");
    for (const PageBlock& block : part.body.blocks())
      html += block_html(block);
    for (const PageText& legend : part.legends)
      for (const PageBlock& block : legend.blocks())
        html += block_html(block);
  }
  return html + "</body>\n</html>\n";
}

}  // namespace haunch
