// Loose tenons: a piece of its own, let in to a mortise in each of the two that it joins.
#pragma once

#include "tenon.h"

namespace haunch {

/// Stands the flat end of `enters` on `receives`, with nothing to hold it there yet.
void butt(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading);

/// Lets loose tenons in to the end of `enters` and to `receives`, on which it stands: adds the
/// pieces, their grain along the way in, and both their joints. Each tenon goes as deep into the
/// one as into the other.
void join_by_loose_tenons(Assembly& assembly, std::size_t receives, std::size_t enters,
                          Heading heading, const TenonDesign& tenon, const MortiseDesign& mortise,
                          std::optional<Length> receiver_shoulder);

}  // namespace haunch
