// Glass in a rebate that is open to the back, and the beads that hold it there.
#pragma once

#include <optional>
#include <string>

#include "arch.h"
#include "glazing_bar.h"
#include "groove.h"
#include "haunch/wood.h"
#include "tenon.h"

namespace haunch {

/// A pane or sealed unit, and how it lies in its rebate.
struct GlassDesign {
  bool sealed = false;  // a unit of panes, sealed at its edge
  std::string material;
  Length thickness;
  Length front;                        // face side to the rebate's wall that the glass is bedded on
  Length rebate;                       // how deep the rebate is, from the sight edge
  Length edge_clearance;               // from the glass to the rebate's bottom
  Length bedding;                      // tape or compound at each face of the glass
  std::optional<BarDesign> bars = {};  // that divide a light into panes

  /// How far the glass stands behind the sight edge.
  Length bite() const { return rebate - edge_clearance; }
  /// The widest pane of a light so wide: one alone has the frame at both sides, others a bar at
  /// one.
  Length widest_pane(Length light) const;
  /// What is left for beads in a frame so thick.
  Length bead(Length frame) const { return frame - front - bedding * 2 - thickness; }
};

/// Rebates one edge of a piece for glass from `along.low` to `along.high` of the assembly; what is
/// not the piece's whole length is stopped, and its corners squared.
GrooveRef rebate_for_glass(Assembly& assembly, std::size_t piece, Edge edge, Strip along,
                           const GlassDesign& glass);

/// How far up a rebate in an upright goes that ends along an arch, where that is least.
Length low_end(const Arch& arch, Length depth, bool right);

/// Lets the end of such a rebate follow the curve from there on.
void rise_with_arch(Assembly& assembly, const GrooveRef& rebate, const Arch& arch, Length depth);

/// Beds glass in a light and beads it, in each of its panes where bars divide it: four beads mitred
/// at their ends, flush with the back and with the sight edges. Under an arch the glass and the
/// bead at its head follow the curve, and that is mitred from corner to corner with those at the
/// sides. `which` goes after the pieces' names: " 2, tier 1"; `key`: of the glass.
void glaze(Assembly& assembly, const Light& light, const GlassDesign& glass,
           const std::string& which, const std::string& key);

}  // namespace haunch
