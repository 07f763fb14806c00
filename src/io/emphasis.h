// What stands out on a page: the words that tell of fails and cautions.
#pragma once

#include <string>
#include <string_view>

namespace haunch {

/// A page, already as it may be shown, with those words in reverse or bold. They say the same
/// without.
std::string emphasised(std::string_view page);

}  // namespace haunch
