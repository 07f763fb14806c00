// How a task is done in a shop: at which machine, with which cutter, held how.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "haunch/length_text.h"
#include "machine.h"
#include "task.h"

namespace haunch {

/// What stands against a way.
enum class WayFault : unsigned char {
  no_machine,      // none does it
  cutter_wide,     // every cutter is wider than what it is to cut
  cutter_short,    // none reaches so deep
  cutter_missing,  // it is to be one of a width, and there is none of it
  piece_short,     // shorter, narrower, thinner than runs safely
  piece_narrow,
  piece_thin,
  not_held,  // it goes into none of the ways of holding it
};

template <>
inline constexpr std::string_view kWords<WayFault>[] = {
    "no-machine",  "cutter-wide",  "cutter-short", "cutter-missing",
    "piece-short", "piece-narrow", "piece-thin",   "not-held"};
static_assert(std::size(kWords<WayFault>) == static_cast<std::size_t>(WayFault::not_held) + 1);

struct WayFinding {
  WayFault fault = WayFault::no_machine;
  Length value, limit;  // what it is, and what it may be
};

struct Way {
  std::optional<std::size_t> machine;  // by index into the shop's; none: none does it
  std::optional<std::size_t> cutter;   // into the machine's cutters; none: nothing is told of them
  std::optional<std::size_t> holding;  // into its ways of holding
  int passes = 1;                      // by the cutter's step of depth
  std::vector<WayFinding> findings;    // empty: it can be done so
};

/// The first machine, and of its cutters and holdings the first, that do; where none does without
/// a fault, the one with the fewest, and what stands against it.
Way way_for(const Task& task, const std::vector<Machine>& machines);

/// What a small shop has, where its file does not say.
std::vector<Machine> usual_machines(Unit unit);

}  // namespace haunch
