// Plain fronts one above the other that are cut from one board, so that its grain runs on.
#pragma once

#include <string>
#include <vector>

#include "cabinet_plan.h"
#include "kind.h"

namespace haunch {

/// Each stack of two or more, from the top. They are as wide as each other, with no other front
/// between them.
using FrontStack = std::vector<const FrontPlan*>;
std::vector<FrontStack> stacks_of_plain_fronts(const CabinetPlan& plan);

/// "grain 2 of 3", counted from the top; of what is in no stack nothing.
std::string in_one_board(const std::vector<FrontStack>& stacks, const FrontPlan& front);

/// How they lie in their boards, by their marks in the cabinet that they are hung in.
std::vector<Caution> told_of_grain(const Assembly& cabinet, const std::vector<FrontStack>& stacks);

}  // namespace haunch
