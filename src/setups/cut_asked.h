// What a task asks of the cutter that is to do it.
#pragma once

#include <optional>
#include <string_view>

#include "task.h"

namespace haunch {

/// How a cutter's width has to agree with that of the cut.
enum class WidthAsked : unsigned char {
  any,      // a cut that is open at a side, or a saw's: wider cutters do too
  within,   // between two walls: as wide, or narrower in passes side by side
  exactly,  // a round hole
};

struct CutAsked {
  WidthAsked fit = WidthAsked::any;
  std::optional<Length> width;  // of the cut, where it is to be covered
  Length depth;                 // in all
  Length reach;                 // that is needed: of what goes right through and is cut from both
                                // sides half the depth
  std::string_view shape = {};  // as cutters are named after it, which is taken if there is one
  bool shape_needed = false;    // of a moulding: no other does
  bool round_ends = false;      // of a mortise: a chisel leaves them square
};

/// `held`: how, where that is known; a tenon lying flat is cut from the side.
CutAsked cut_asked(const Task& task, const Holding* held);

/// The shape that a cutter is named after, as "cove" of a "6 mm cove cutter": it cuts no other.
/// Empty: it cuts straight.
std::string_view shape_of(std::string_view cutter);
/// Whether it is named one.
bool is_chisel(std::string_view cutter);

}  // namespace haunch
