// A joint in words: which pieces it joins, and the sizes that are cut by.
#pragma once

#include <string>
#include <vector>

#include "report.h"
#include "text_table.h"

namespace haunch {

/// "top rail C in left stile A: mortise and tenon"
std::string joint_title(const Assembly& wood, const Joint& joint);

/// Its sizes, and what is left free in it; a line each. `alike` are numbers of joints.
std::vector<std::string> joint_words(const Assembly& wood, const std::vector<std::size_t>& alike,
                                     const LengthPrinter& lengths);

}  // namespace haunch
