// Arches: the curve of a rail's underside, of the groove along it and of the panel below, as lines
// of chords.
#pragma once

#include <vector>

#include "groove.h"
#include "haunch/wood.h"

namespace haunch {

/// An arch between two uprights, in the axes of its leaf.
struct Arch {
  Length left, span;  // from the left upright's sight edge to the right one's
  Length springing;   // the height of its ends
  Length rise;        // from there to its crown
  Length tolerance;   // the most that a chord leaves its curve

  /// From span and rise: r = (s^2 / 4 + h^2) / 2h. In steps.
  double radius() const;
  Length radius_with(Length outward) const;
};

/// Which way heights are rounded to the step: a void is never less, wood never more.
enum class Heights { up, down };

/// The curve `outward` from the arch and concentric with it, from x to x: chords between places at
/// the same angles on all curves of an arch, so that two of them are nowhere nearer than they were
/// set out. Where the curve does not reach, a level line goes on.
std::vector<Corner> arch_line(const Arch& arch, Length outward, Length from, Length to,
                              Heights heights);

/// How many chords the arch itself has from end to end.
int chords_of(const Arch& arch);

/// Cuts an arch into the lower edge of a level rail, and the groove along it.
GrooveRef cut_arch(Assembly& assembly, std::size_t rail, const Arch& arch,
                   const GrooveDesign& groove);

/// Takes off what of a panel stands above the curve `outward` from the arch.
void cut_arched_top(Piece& panel, const Arch& arch, Length outward);

/// A rebate round such a panel, as rebate_round().
void rebate_round_arch(Piece& panel, const Arch& arch, Length outward, Length width, Length from,
                       Length to);

/// Along the true curve, from x to x.
Length curve_length(const Arch& arch, Length outward, Length from, Length to);

}  // namespace haunch
