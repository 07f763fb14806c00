// Loose tenons: a piece of its own, let in to a mortise in each of the two that it joins.
#pragma once

#include "tenon.h"

namespace haunch {

/// Stands a flat end on the receiver, with nothing to hold it there yet.
void butt(Assembly& assembly, const Junction& junction);

/// Lets loose tenons in to such an end and to the receiver on which it stands: adds the
/// pieces, their grain along the way in, and both their joints. Each tenon goes as deep into the
/// one as into the other.
void join_by_loose_tenons(Assembly& assembly, const Junction& junction, const TenonDesign& tenon,
                          const MortiseDesign& mortise, std::optional<Length> receiver_shoulder);

}  // namespace haunch
