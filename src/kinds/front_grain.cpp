#include "front_grain.h"

#include <fmt/core.h>

#include <algorithm>
#include <string>

namespace haunch {
namespace {

/// The front that stands next below another, wholly or in part.
const FrontPlan* next_below(const CabinetPlan& plan, const FrontPlan& front) {
  const FrontPlan* next = nullptr;
  for (const FrontPlan& other : plan.fronts) {
    const bool beside = other.at.right <= front.at.left || front.at.right <= other.at.left;
    if (beside || other.at.high > front.at.low) continue;
    if (next == nullptr || other.at.high > next->at.high) next = &other;
  }
  return next;
}

/// The same where its grain can run on from that of the one above.
const FrontPlan* runs_on_into(const CabinetPlan& plan, const FrontPlan& front) {
  const FrontPlan* next = next_below(plan, front);
  const bool alike = next != nullptr && next->kind == FrontKind::fixed &&
                     next->at.left == front.at.left && next->at.right == front.at.right;
  return alike ? next : nullptr;
}

const std::string& mark_of(const Assembly& cabinet, const FrontPlan& front) {
  const auto piece =
      std::find_if(cabinet.pieces.begin(), cabinet.pieces.end(),
                   [&](const Piece& it) { return cabinet.groups[it.group].path == front.path; });
  return piece->mark;
}

}  // namespace

std::vector<FrontStack> stacks_of_plain_fronts(const CabinetPlan& plan) {
  std::vector<FrontStack> stacks;
  const auto stands_in_one = [&](const FrontPlan* front) {
    return std::any_of(stacks.begin(), stacks.end(), [&](const FrontStack& stack) {
      return std::find(stack.begin(), stack.end(), front) != stack.end();
    });
  };
  for (const FrontPlan& front : plan.fronts) {  // those above come first
    if (front.kind != FrontKind::fixed || stands_in_one(&front)) continue;
    FrontStack stack{&front};
    while (const FrontPlan* next = runs_on_into(plan, *stack.back()))
      stack.push_back(next);
    stacks.push_back(std::move(stack));
  }
  std::erase_if(stacks, [](const FrontStack& stack) { return stack.size() < 2; });
  return stacks;
}

std::string in_one_board(const std::vector<FrontStack>& stacks, const FrontPlan& front) {
  for (const FrontStack& stack : stacks) {
    const auto at = std::find(stack.begin(), stack.end(), &front);
    if (at != stack.end())
      return fmt::format("grain {} of {}", at - stack.begin() + 1, stack.size());
  }
  return {};
}

std::vector<Caution> told_of_grain(const Assembly& cabinet, const std::vector<FrontStack>& stacks) {
  std::string words;
  for (const FrontStack& stack : stacks) {
    std::string marks;
    for (const FrontPlan* front : stack)
      marks += (marks.empty()           ? ""
                : front == stack.back() ? " and "
                                        : ", ") +
               mark_of(cabinet, *front);
    words += fmt::format("{}{} from one board in this order, from its upper end",
                         words.empty() ? "it runs on from one to the next: cut " : "; ", marks);
  }
  if (words.empty()) return {};
  return {{"grain of plain fronts", std::move(words)}};
}

}  // namespace haunch
