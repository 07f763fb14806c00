#include "book_style.h"

#include "haunch/length_text.h"
#include "html_text.h"

namespace haunch {
namespace {

/// Ink on paper with one colour, that of links; what fails and what is doubtful is told in words
/// too. All of them contrast at 4.5 to 1 at least.
constexpr std::string_view kStyle = R"(
:root { --ink: #1d1b18; --soft: #57524a; --link: #7a3b0c; --rule: #cfc8bb; --shade: #f4f0e8 }
* { box-sizing: border-box }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100% }
body { margin: 0 auto; padding: 0 1rem 3rem; max-width: 62rem; color: var(--ink);
  background: #fff; font: 1rem/1.45 system-ui, -apple-system, "Segoe UI", "Liberation Sans", sans-serif;
  overflow-wrap: break-word }
h1, h2, h3, h4 { line-height: 1.2; margin: 1.6em 0 0.4em; break-after: avoid }
h1 { font-size: 2rem; font-weight: 300; margin-top: 1.2em }
h2 { font-size: 1.45rem; font-weight: 600; padding-top: 0.5em; border-top: 3px solid var(--ink) }
h3 { font-size: 0.95rem; font-weight: 700; letter-spacing: 0.02em }
h4 { font-size: 0.9rem; font-weight: 600; margin-top: 1.1em }
p { margin: 0.3em 0; max-width: 46rem }
p.below { margin-left: 1.2rem; color: var(--soft) }
p.off { font-weight: 600 }
a { color: var(--link); text-decoration-thickness: 1px; text-underline-offset: 0.15em }
:target { background: #fbe9c6; scroll-margin-top: 1rem }
nav.within { display: flex; flex-wrap: wrap; gap: 0.2rem 1.1rem; font-size: 0.9rem }
nav.within a, nav.contents a { padding: 0.25rem 0 }
nav.contents ul { list-style: none; margin: 0; padding: 0 }
nav.contents li { padding: 0.3rem 0; border-bottom: 1px solid var(--rule) }
nav.contents span { color: var(--soft) }
strong.fail { padding: 0 0.3em; color: #fff; background: #9c1c12 }
strong.caution { padding: 0 0.25em; border: 1px solid currentColor }
.table { overflow-x: auto; margin: 0.4em 0 0.7em }
table { border-collapse: collapse; font-size: 0.9rem; font-variant-numeric: tabular-nums }
th, td { padding: 0.22em 1.1em 0.22em 0; text-align: left; vertical-align: top }
thead th, thead td { border-bottom: 1.5px solid var(--ink); font-weight: 600;
  vertical-align: bottom }
tbody tr { border-bottom: 1px solid var(--rule) }
tbody th { font-weight: 700 }
th, td { white-space: nowrap }
.n { text-align: right }
td.w { white-space: normal; min-width: 14rem }
ol { margin: 0.3em 0; padding-left: 2.2em; max-width: 46rem }
li { padding-left: 0.3em }
figure { margin: 1em 0; overflow: hidden }
figcaption { font-size: 0.9rem; color: var(--soft) }
@media screen {
  figure svg { display: block; width: 100%; height: auto }
}
@media screen and (max-width: 37.5em) {
  body { padding: 0 0.75rem 3rem }
  h1 { font-size: 1.6rem }
  h2 { font-size: 1.25rem }
}
@media print {
  body { max-width: none; padding: 0; font-size: 9.5pt }
  a { color: inherit; text-decoration: none }
  nav.within { display: none }
  .chapter, .item { break-before: page }
  #cautions { break-before: auto }
  h2 { margin-top: 0 }
  .table { overflow: visible }
  table { font-size: 8.5pt }
  thead { display: table-header-group }
  tr, li, figure, p { break-inside: avoid }
  th, td { padding-right: 0.8em }
  td.w { min-width: 0 }
  figure { overflow: visible }
  figure svg { display: block; max-width: 100%; height: auto }
}
)";

/// Page numbers stand in the margin; browsers that have no boxes there leave them out.
std::string page_rule(const Paper& paper) {
  return "@page { size: " + decimal(paper.width, Unit::mm) + "mm " +
         decimal(paper.height, Unit::mm) +
         "mm; margin: 15mm 12mm 16mm;\n  @bottom-right { content: counter(page) \" / \" "
         "counter(pages); font: 8pt sans-serif } }";
}

}  // namespace

std::string book_head(const std::string& title, const Paper& paper) {
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
         html_text(title) + "</title>\n<style>\n" + page_rule(paper) + std::string(kStyle) +
         "</style>\n</head>\n<body>\n";
}

}  // namespace haunch
