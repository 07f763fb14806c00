// A paper of a quote as one HTML file, to be printed or sent.
#pragma once

#include <string>

#include "page_part.h"

namespace haunch {

/// `title`: of the window. The first part's heading is that of the paper.
std::string quote_html(const PageParts& parts, const std::string& title);

}  // namespace haunch
