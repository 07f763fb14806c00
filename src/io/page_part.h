// Parts of a page, each below a heading of its own.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "page_text.h"

namespace haunch {

/// Where a part stands when several items are told together.
enum class Stands {
  once,            // with the first of those that say the same
  on_every_sheet,  // though others say the same: nobody is to miss it
  before_all       // put together with those of the others
};

struct PagePart {
  std::string heading;  // as it stands in the text, its last line without its end
  PageText body = {};
  std::vector<PageText> legends = {};  // how to read what stands above
  Stands stands = Stands::once;
  std::string section = {};  // "CASE": those of one section stand together below its name

  friend bool operator==(const PagePart&, const PagePart&) = default;
};

using PageParts = std::vector<PagePart>;

/// In lines: an empty one before each part, or before all sections; a legend once.
std::string text_of(const PageParts& parts);

/// Of a body of one line, or of one with all else further in, as what is worked with one setting,
/// that line behind the heading, where there is room: "GROOVES, the whole length: 6.1 wide …".
void join_first_line(PagePart& part, std::size_t page_width);

void append(PageParts& parts, PageParts more);

}  // namespace haunch
