// Grooves along the edges of a frame, and the panels that stand in them.
#pragma once

#include <optional>

#include "haunch/wood.h"

namespace haunch {

/// One of a piece's two edges across its width.
enum class Edge { low, high };

/// A panel groove as it is set at the machine.
struct GrooveDesign {
  Length depth;
  Length width;
  Length from_face;  // face side to the near wall
};

/// Where a groove was cut, so that what stands in it can be named there.
struct GrooveRef {
  std::size_t piece = 0;
  std::size_t feature = 0;
};

/// A stretch of a piece's length.
struct Stretch {
  Length from, to;
};

/// Works a groove or rebate along one edge of a piece, the whole length of it or a stretch: so deep
/// from the edge, so wide from a place in its thickness on.
GrooveRef work_along_edge(Assembly& assembly, std::size_t piece, Edge edge, FeatureKind kind,
                          const GrooveDesign& groove, std::optional<Stretch> stretch = {});

/// Adds the wood of a rebate round all four edges of a panel: `width` in from each edge, from
/// `from` to `to` of the thickness.
void rebate_round(Piece& panel, Length width, Length from, Length to);

extern const Measures kPanelMeasures;

/// Stands one edge of a panel in a groove, or lays it in a rebate, by the joint's `kind`.
void house_panel(Assembly& assembly, const GrooveRef& groove, std::size_t panel, Heading heading,
                 const Clearances& design, JointKind kind = JointKind::panel_in_groove);

}  // namespace haunch
