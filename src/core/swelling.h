// Wood that swells and shrinks: an assembly whose pieces have other widths and thicknesses.
#pragma once

#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// How many times its size as set out a piece measures across its grain. Along it wood moves by a
/// tenth of a percent from green to dry, and is taken to stay.
struct Swelling {
  double width = 1;
  double thickness = 1;
};

/// A size so many times as large, to the nearest step.
Length swollen(Length size, double factor);

/// The same assembly with each piece swollen, one figure a piece, all above 0. Its size, opening
/// and clearances as designed are left as they were set out.
///
/// Every piece moves about what holds it:
/// - one that enters no other: about the edge where others enter it (a stile about its sight edge),
///   or where they bear that end on a housing's bottom, about its face side, and from its foot;
/// - one that enters: across its way in, about the middle of its tenon, which goes where the wood
///   of the mortise goes, or about the screw that holds it where the others stand in slots; along
///   it, midway between the sight edges it stands between, or with the one that it stands on;
/// - one that is mitred: about its sight edge where it swells, about its outer edge where it
///   shrinks, for mitres close first at the sight corner there, and here at the outer one;
/// - one that is pinned, as a panel may be: across its grain, about the middle or the edge that has
///   the pin, which goes where the wood goes that it is pinned to;
/// - one without joints, such as a planted stop: with the piece that it lies against most, about
///   the face that it lies there with.
/// So shoulders between stiles stay home, and rails, swelling about their tenons, take up and give
/// room along the muntins and panels between them. Sizes come out within one step.
Assembly swollen(const Assembly& built, const std::vector<Swelling>& swellings);

/// A box in the own axes of a piece.
struct BoxOfPiece {
  std::size_t piece = 0;
  Box box;
};

/// Where each of some boxes lies in that assembly. What is not asked for is not moved.
std::vector<Box> placed_swollen(const Assembly& built, const std::vector<Swelling>& swellings,
                                const std::vector<BoxOfPiece>& boxes);

}  // namespace haunch
