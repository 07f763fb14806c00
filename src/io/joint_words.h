// A joint in words: which pieces it joins, and the sizes that are cut by.
#pragma once

#include <string>
#include <vector>

#include "joint_views.h"
#include "text_table.h"

namespace haunch {

/// "top rail C to left stile A: mortise and tenon"
std::string joint_title(const Assembly& wood, const JointView& view);

/// Which are alike, its sizes and those of what holds it together, what is left free in it; a line
/// each.
std::vector<std::string> joint_words(const Assembly& wood, const JointView& view,
                                     const LengthPrinter& lengths);

}  // namespace haunch
