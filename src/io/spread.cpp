#include "spread.h"

#include <algorithm>
#include <cstdint>

namespace haunch {
namespace {

/// Blocks that stand one below the other.
struct Stack {
  std::size_t blocks = 0;
  Length height;
  Length offsets;  // the sum of what each wants, less what stands above it
  Length upper;    // its edge

  Length lower() const { return upper + height; }
};

/// Where the mean of what its blocks want is met, as far as there is room.
void settle(Stack& stack, Length top, Length bottom) {
  const Length mean = floor_divide(stack.offsets, static_cast<std::int64_t>(stack.blocks));
  stack.upper = std::max(top, std::min(mean, bottom - stack.height));
}

/// Puts one below another.
Stack joined(const Stack& above, const Stack& below) {
  Stack both = above;
  both.offsets += below.offsets - above.height * static_cast<std::int64_t>(below.blocks);
  both.blocks += below.blocks;
  both.height += below.height;
  return both;
}

}  // namespace

std::vector<Length> spread(const std::vector<Block>& blocks, Length top, Length bottom) {
  std::vector<Stack> stacks;
  for (const Block& block : blocks) {
    Stack stack{1, block.height, block.wanted, {}};
    settle(stack, top, bottom);
    while (!stacks.empty() && stacks.back().lower() > stack.upper) {
      stack = joined(stacks.back(), stack);
      settle(stack, top, bottom);
      stacks.pop_back();
    }
    stacks.push_back(stack);
  }
  std::vector<Length> edges;
  for (const Stack& stack : stacks) {
    Length edge = stack.upper;
    for (std::size_t i = 0; i < stack.blocks; ++i) {
      const Length height = blocks[edges.size()].height;
      edges.push_back(edge);
      edge += height;
    }
  }
  return edges;
}

}  // namespace haunch
