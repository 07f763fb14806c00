// Mouldings and raises along an arch. What slopes there curves two ways, which no prism does: it is
// made of layers across the thickness, kArchLayer thick at most. The lines that are marked out,
// where a moulding or a raise begins and ends, are on their curves.
#pragma once

#include "arch.h"
#include "edge.h"
#include "raise.h"

namespace haunch {

inline constexpr Length kArchLayer = Length::from_mm_thousandths(500);

/// Sticks the moulding along the arch of a rail, as far as `past` beyond the sight edges. Its
/// layers never leave more wood than the cutter.
void stick_along_arch(Assembly& assembly, std::size_t rail, const Arch& arch,
                      const EdgeDesign& design, Length past);

/// As raise_round(), of a panel whose top follows the curve `outward` from the arch. There its
/// layers never leave less wood than is cut, so that it wedges no later.
void raise_round_arch(Piece& panel, const Arch& arch, Length outward, const RaiseDesign& raise,
                      Length depth, bool at_back, Length play);

}  // namespace haunch
