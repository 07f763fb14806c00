#include "quote_html.h"

#include <string_view>

#include "book_style.h"
#include "html_page.h"
#include "html_text.h"

namespace haunch {
namespace {

// No word of it is one that could be taken for a part of the price: "margin" is none here.
constexpr std::string_view kStyle = R"(<style>
body { --words: 12em; display: grid; gap: 0.3em; justify-content: center; padding: 2em 1em;
  grid-template-columns: minmax(0, 48em); color: #111; background: #fff;
  font: 11pt/1.45 Georgia, "Liberation Serif", serif }
h1, h2, p, section { all: unset; display: block }
h1 { font-size: 1.5em }
h2 { font-size: 1.05em; padding-top: 1.2em; border-bottom: 0.05em solid #777 }
table { border-collapse: collapse }
th, td { text-align: left; vertical-align: top; padding: 0.1em 1.2em 0.1em 0; font-weight: normal;
  font-variant-numeric: tabular-nums }
th { color: #555; font-size: 0.85em }
svg { width: 100%; height: auto }
@media print { h2, tr, svg { break-inside: avoid } h2 { break-after: avoid } }
)";

std::string beginning(const std::string& title) {
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
         html_text(title) + "</title>\n" + std::string(kStyle) + column_rules() +
         "</style>\n</head>\n<body>\n";
}

/// Of a heading of several lines the last is that of the paper.
void add_head(HtmlPage& page, const PagePart& part) {
  const std::size_t last = part.heading.rfind('\n');
  if (last == std::string::npos) {
    page.add_heading(part.heading, 1);
  } else {
    page.add(PageText::paragraph(part.heading.substr(0, last)));
    page.add_heading(part.heading.substr(last + 1), 1);
  }
  page.add(part.body);
}

}  // namespace

std::string quote_html(const PageParts& parts, const std::string& title,
                       const std::vector<std::string>& drawings) {
  const BookPlaces nowhere;
  HtmlPage page(nowhere, {});
  add_head(page, parts.front());
  for (std::size_t i = 1; i < parts.size(); ++i) {
    page.add({parts[i]}, 2);
    if (i <= drawings.size()) page.add_html(drawings[i - 1] + "\n");
  }
  return beginning(title) + page.take() + "</body>\n</html>\n";
}

}  // namespace haunch
