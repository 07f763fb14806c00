#include "page_part.h"

#include <iterator>
#include <set>
#include <string>
#include <utility>

namespace haunch {

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

void append(PageParts& parts, PageParts more) {
  parts.insert(parts.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

}  // namespace haunch
