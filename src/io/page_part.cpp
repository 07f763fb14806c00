#include "page_part.h"

#include <iterator>
#include <utility>

namespace haunch {

std::string text_of(const PageParts& parts) {
  std::string text;
  for (const PagePart& part : parts) {
    text += "\n" + part.heading + "\n" + part.body;
    for (const std::string& legend : part.legends)
      text += legend;
  }
  return text;
}

void append(PageParts& parts, PageParts more) {
  parts.insert(parts.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

}  // namespace haunch
