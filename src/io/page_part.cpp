#include "page_part.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <string>
#include <string_view>
#include <utility>

namespace haunch {
namespace {

/// Whether a line of a page is one of words, and not of a table.
bool is_words(std::string_view line) {
  return line.starts_with("  ") && line.find("  ", 2) == std::string_view::npos;
}

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
    text += part.heading + "\n" + part.body;
    for (const std::string& legend : part.legends)
      if (read.insert(legend).second) text += legend;
  }
  return text;
}

void join_first_line(PagePart& part, std::size_t page_width) {
  const std::size_t end = part.body.find('\n');
  if (end == std::string::npos) return;
  const std::string first = part.body.substr(0, end);
  const std::string rest = part.body.substr(end + 1);
  if (!is_words(first) || !are_further_in(rest)) return;
  if (part.heading.size() + first.size() > page_width) return;
  part.heading += ": " + first.substr(2);
  part.body = rest;
}

void append(PageParts& parts, PageParts more) {
  parts.insert(parts.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

}  // namespace haunch
