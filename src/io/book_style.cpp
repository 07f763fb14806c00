#include "book_style.h"

#include <fmt/core.h>

#include "haunch/length_text.h"
#include "html_text.h"

namespace haunch {
namespace {

/// Ink on paper with one colour, that of links; what fails and what is doubtful is told in words
/// too. All of them contrast at 4.5 to 1 at least.
constexpr std::string_view kStyle = R"(
:root { --ink: #1d1b18; --soft: #57524a; --link: #7a3b0c; --rule: #cfc8bb; --words: 12rem }
* { box-sizing: border-box }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100% }
body { margin: 0 auto; padding: 0 1rem 3rem; max-width: 74rem; color: var(--ink);
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
th:target, p:target { background: #fbe9c6 }
:target { scroll-margin-top: 1rem }
nav.within { display: flex; flex-wrap: wrap; gap: 0.2rem 1.1rem }
nav.within a, nav.contents a { padding: 0.25rem 0 }
nav.contents ul { list-style: none; margin: 0; padding: 0 }
nav.contents li { padding: 0.3rem 0; border-bottom: 1px solid var(--rule) }
nav.contents span { color: var(--soft) }
strong.fail { padding: 0 0.3em; color: #fff; background: #9c1c12 }
strong.caution { padding: 0 0.25em; border: 1px solid currentColor }
.table { margin: 0.4em 0 0.7em }
table { border-collapse: collapse; font-size: 0.9rem; font-variant-numeric: tabular-nums }
th, td { padding: 0.22em 1.1em 0.22em 0; text-align: left; vertical-align: top }
thead th, thead td { border-bottom: 1.5px solid var(--ink); font-weight: 600;
  vertical-align: bottom }
tbody tr { border-bottom: 1px solid var(--rule) }
tbody th { font-weight: 700 }
th, td { white-space: nowrap }
ol { margin: 0.3em 0; padding-left: 2.2em; max-width: 46rem }
li { padding-left: 0.3em }
ul.alike { list-style: none; margin: 0; padding: 0; columns: 18rem; max-width: 46rem }
figure { margin: 1em 0 }
figure > div { overflow: hidden }
figure svg { display: block }
@media screen {
  figure, .table { overflow-x: auto; background: linear-gradient(90deg, #fff 40%, transparent) local,
    linear-gradient(-90deg, #fff 40%, transparent) right local,
    linear-gradient(90deg, #0006, transparent), linear-gradient(-90deg, #0006, transparent) right;
    background-color: #fff; background-repeat: no-repeat;
    background-size: 2.5rem 100%, 2.5rem 100%, 0.9rem 100%, 0.9rem 100% }
  figure svg { width: 100%; height: auto }
  figure.sheet > div { width: 46rem }
  svg.sheet > rect:first-of-type { fill: none }
  svg a { fill: var(--link) }
  figure.board > div { min-width: 72rem }
  tbody th { position: sticky; left: 0; background: #fff }
}
@media screen and (max-width: 37.5em) {
  body { padding: 0 0.75rem 3rem }
  h1 { font-size: 1.6rem }
  h2 { font-size: 1.25rem }
  table { width: max-content }
  td { max-width: 34rem }
}
@media print {
  :root { --words: 0 }
  body { max-width: none; padding: 0; font-size: 9.5pt }
  a { color: inherit; text-decoration: none }
  nav.within { display: none }
  .chapter, .item { break-before: page }
  #cautions { break-before: auto }
  h2 { margin-top: 0 }
  table { font-size: 8.5pt }
  thead { display: table-header-group }
  tr, li, figure, p { break-inside: avoid }
  th, td { padding-right: 0.8em }
  figure { margin: 0 }
  figure.sheet { page: sheet }
  #boards { page: board }
  figure.board { margin-bottom: 6mm }
}
)";

/// What is cut off of a sheet's free border: all but what the lines of its frame take.
constexpr Length kCut = kFree - tenths_of_mm(5);

std::string size_of(const Length& width, const Length& height) {
  return "size: " + decimal(width, Unit::mm) + "mm " + decimal(height, Unit::mm) + "mm";
}

/// Page numbers stand in the margin; browsers that have no boxes there leave them out. Drawings
/// have pages of their own, on which they stand at their size: of a sheet what lies within kCut,
/// which the page has as its margin.
std::string page_rules(const Paper& paper) {
  constexpr std::string_view kNumber =
      "  @bottom-right { content: counter(page) \" / \" counter(pages); font: 8pt sans-serif } }\n";
  const std::string cut = decimal(kCut, Unit::mm) + "mm";
  std::string rules =
      "@page { " + size_of(paper.width, paper.height) + "; margin: 15mm 12mm 16mm;\n";
  rules += kNumber;
  rules += "@page sheet { margin: 9.2mm " + cut + " }\n";
  rules += "@page board { " + size_of(paper.height, paper.width) +
           "; margin: " + decimal(kFree, Unit::mm) + "mm }\n";
  rules += "@media print { figure.sheet svg { margin: -" + cut + " } }\n";
  return rules;
}

/// On a screen as wide as its box.
std::string sheet_rules(const Paper& paper) {
  const double inner = static_cast<double>((paper.width - kCut * 2).steps());
  const auto percent = [&](Length of) {
    return fmt::format("{:.3f}%", 100 * static_cast<double>(of.steps()) / inner);
  };
  return "@media screen { figure.sheet svg { width: " + percent(paper.width) + "; margin: -" +
         percent(kCut) + " } }\n";
}

}  // namespace

std::string column_rules() {
  constexpr int kMostColumns = 16;
  std::string rules;
  for (int i = 1; i <= kMostColumns; ++i)
    rules += fmt::format(
        ".n{0} :nth-child({0}):is(td, th) {{ text-align: right }}\n.w{0} td:nth-child({0}) {{ "
        "white-space: normal; min-width: var(--words) }}\n",
        i);
  return rules;
}

std::string book_head(const std::string& title, const Paper& paper) {
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
         html_text(title) + "</title>\n<style>\n" + page_rules(paper) + std::string(kStyle) +
         column_rules() + sheet_rules(paper) + "</style>\n</head>\n<body>\n";
}

}  // namespace haunch
