// Explanations as a page.
#pragma once

#include <string>
#include <string_view>

#include "explain.h"
#include "view.h"

namespace haunch {

/// What is meant by `what` and where it comes from, down to what was stated; all that was given and
/// assumed where it is empty.
std::string explain_page(const Explanation& explanation, std::string_view what, const View& view);

}  // namespace haunch
