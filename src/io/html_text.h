// Texts as HTML holds them.
#pragma once

#include <string>
#include <string_view>

namespace haunch {

/// Text for the content of an element: nothing in it is markup, and words that are written from
/// right to left stand by themselves, so that they turn no figure beside them about.
std::string html_text(std::string_view text);

}  // namespace haunch
