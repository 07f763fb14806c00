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
  cutter_missing,  // it is to be one of a width or a shape, and there is none of it
  piece_short,     // shorter, narrower, thinner than runs safely
  piece_narrow,
  piece_thin,
  not_held,  // it goes into none of the ways of holding it
  no_room,   // it cannot stand on its end
  curved,    // what is curved runs along no fence
};

template <>
inline constexpr std::string_view kWords<WayFault>[] = {
    "no-machine",   "cutter-wide", "cutter-short", "cutter-missing", "piece-short",
    "piece-narrow", "piece-thin",  "not-held",     "no-room",        "curved"};
static_assert(std::size(kWords<WayFault>) == static_cast<std::size_t>(WayFault::curved) + 1);

/// `value` is what it is and `limit` what it may be: of a piece its size, and what the machine
/// takes; of a cutter the width or reach of the nearest one, and what the cut asks for. Both are 0
/// where no machine does it, no cutter has the shape, or the cut is curved.
struct WayFinding {
  WayFault fault = WayFault::no_machine;
  Length value, limit;
  std::size_t along = 0;  // of a piece: its length, its width or its thickness
  // With this size in its place it can be done at that machine, which was tried: of the cut its
  // width, depth or diameter; the length at which the piece is worked, and cut off after.
  std::optional<NamedSize> remedy = {};
};

/// A way of doing a task in a shop.
struct ShopWay {
  std::optional<std::size_t> machine;  // by index into the shop's; none: none does it
  std::optional<std::size_t> cutter;   // into the machine's cutters; none: nothing is told of them
  std::optional<std::size_t> holding;  // into its ways of holding
  int passes = 1;                      // by the cutter's width, side by side, and its step of depth
  std::vector<WayFinding> findings;    // empty: it can be done so
};

/// The first machine in the shop's order that does it without a fault; where there is none, the
/// one with the fewest, and what stands against it.
///
/// The work is held in the first way that the piece goes into. Of the cutters that can be, one that
/// is just as wide is taken, else the one with the fewest passes, the widest of those.
ShopWay way_for(const Task& task, const std::vector<Machine>& machines);

/// What a small shop has, where its file does not say. `cutters`: the widths of its chisels and
/// straight cutters; empty: usual ones.
std::vector<Machine> usual_machines(Unit unit, std::vector<Length> cutters = {});

}  // namespace haunch
