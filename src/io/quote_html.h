// A paper of a quote as one HTML file, to be printed or sent.
#pragma once

#include <string>
#include <vector>

#include "page_part.h"

namespace haunch {

/// `title`: of the window. The first part's heading is that of the paper; the drawings, as SVG,
/// stand below the parts that follow it, one each.
std::string quote_html(const PageParts& parts, const std::string& title,
                       const std::vector<std::string>& drawings);

}  // namespace haunch
