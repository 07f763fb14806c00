// Tenons on the end of a rail or muntin: haunched, divided across their width, or stubs in the
// groove.
#pragma once

#include <optional>
#include <vector>

#include "groove.h"
#include "haunch/wood.h"

namespace haunch {

/// A stretch of a piece's width.
struct Strip {
  Length low;
  Length high;
};

/// How the end of a piece is shared across its width: tenons, and haunches beside and between them.
struct TenonLayout {
  std::vector<Strip> tenons;  // lowest first
  std::vector<Strip> haunches;
};

/// The widths of one tenon or, where it would be wider than `limit`, of the least number of tenons
/// that are not, with `gap` between them, across `across`; odd steps go to the last. Empty when no
/// number of tenons up to 50 will do.
std::vector<Strip> divide_tenon(Strip across, std::optional<Length> limit, Length gap);

/// One end of a piece that enters another.
struct TenonDesign {
  bool stub = false;  // stands in the groove, without a mortise
  TenonLayout layout;
  Length depth;
  Length thickness;
  Length from_face;  // face side to the tenon's near cheek
  Length haunch_depth;
  Length haunch_thickness;
  Length haunch_from_face;
};

/// The mortises for one such end.
struct MortiseDesign {
  Length width;
  Length from_face;
  Length edge_clearance;    // at each end of a mortise's length
  Length bottom_clearance;  // deeper than the tenon by this; of a stub, what the groove leaves
};

/// Joins `enters` to the grooved edge of `receives`: cuts the tenons, and the mortises unless they
/// are stubs. `heading` is the way the tenon goes in. `receiver_shoulder`: where the receiver's own
/// shoulder stands along its length, if it has one.
void join_by_tenon(Assembly& assembly, const GrooveRef& receives, std::size_t enters,
                   Heading heading, const TenonDesign& tenon, const MortiseDesign& mortise,
                   std::optional<Length> receiver_shoulder);

}  // namespace haunch
