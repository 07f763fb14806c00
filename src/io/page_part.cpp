#include "page_part.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace haunch {
namespace {

/// Whether all lines stand further in than those of a body do.
bool are_further_in(std::string_view lines) {
  while (!lines.empty()) {
    if (!lines.starts_with("    ")) return false;
    lines.remove_prefix(std::min(lines.find('\n') + 1, lines.size()));
  }
  return true;
}

}  // namespace

std::string text_of(const PageParts& parts) {
  std::string text;
  std::string section;
  std::set<std::string> read;
  for (const PagePart& part : parts) {
    if (section.empty() || part.section.empty()) text += "\n";
    if (part.section != section && !part.section.empty()) text += "---- " + part.section + "\n";
    section = part.section;
    text += part.heading + "\n" + part.body.text();
    for (const PageText& legend : part.legends)
      if (const std::string lines = legend.text(); read.insert(lines).second) text += lines;
  }
  return text;
}

void join_first_line(PagePart& part, std::size_t page_width) {
  constexpr std::size_t kIndent = 2;
  if (part.body.empty()) return;
  const PageBlock& first = part.body.blocks().front();
  if (first.words.empty() || first.indent != kIndent) return;
  if (part.heading.size() + kIndent + first.words.size() > page_width) return;
  const std::string lines = first.text();
  if (lines.find('\n') + 1 != lines.size()) return;
  PageText rest = part.body;
  rest.take_first();
  if (!are_further_in(rest.text())) return;
  part.heading += ": " + first.words;
  part.body = std::move(rest);
}

void append(PageParts& parts, PageParts more) {
  parts.insert(parts.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

}  // namespace haunch
