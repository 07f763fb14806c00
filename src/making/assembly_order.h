// In which order what is made as one is put together, found from its joints: taken apart from the
// last piece to the first.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// How a step is done.
enum class StepHow : unsigned char {
  joined,    // its joints all close along one line
  slides,    // along grooves or housings that are open there
  fixed_on,  // planted, butted or screwed on what is together already
  laid_in,   // by hand, and taken out again
};

template <>
inline constexpr std::string_view kWords<StepHow>[] = {"joined", "slides", "fixed-on", "laid-in"};

/// A piece, or what was put together before, that is put to the others.
struct AssemblyStep {
  std::vector<std::size_t> pieces;  // several: another group, as one
  StepHow how = StepHow::joined;
  std::optional<Heading> move = {};  // which way it goes; none of what lies ready
};

/// A panel that its grooves hold all round, and the step that closes them.
struct ClosedIn {
  std::size_t panel = 0;
  std::size_t step = 0;
};

struct GroupOrder {
  std::size_t group = 0;
  std::vector<AssemblyStep> steps;
  std::vector<ClosedIn> closed_in;
  std::vector<std::size_t> stuck;  // pieces that hold each other, so that none can go in last
};

/// What goes into several pieces when they are put together: it is no step of its own.
bool is_fastener(Role role);

/// Which way what enters a joint goes home: along its heading where it can, tails across their
/// thickness.
Heading way_home(const Assembly& wood, std::size_t joint);

/// Of every group that has pieces of its own, in their order.
std::vector<GroupOrder> assembly_order(const Assembly& wood);

}  // namespace haunch
