// Tenons on the end of a rail or muntin: haunched, divided across their width, twins side by side
// in the thickness, or stubs in the groove.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "edge.h"
#include "end_joint.h"
#include "haunch/wood.h"

namespace haunch {

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
  bool stub = false;   // stands in the groove, without a mortise
  bool loose = false;  // a piece of its own, let in to both; see loose_tenon.h
  TenonLayout layout;
  Length depth;
  Length thickness;
  Length from_face;                      // face side to the tenon's near cheek
  std::optional<Length> twin_from_face;  // of a pair side by side: to the second one's near cheek
  Length haunch_depth;
  Length haunch_thickness;
  Length haunch_from_face;
  Length set_back = {};     // the line its depth is from, past the receiver's sight edge
  MitredEdges mitred = {};  // where a moulding is cut away so far: which edges of the piece are
  std::optional<Length> haunching = {};  // depth of the haunch's own seat, where no groove is one
};

/// What is done about the round ends that a cutter leaves.
enum class Ends { squared, tenon_rounded, tenon_shortened };

/// The mortises for one such end.
struct MortiseDesign {
  Length width;
  Length from_face;
  Length edge_clearance;    // at each end of a mortise's length
  Length bottom_clearance;  // deeper than the tenon by this; of a stub, what the groove leaves
  Length opens_at = {};     // within the receiver's blank, which has been cut back so far before
  Ends ends = Ends::squared;
  Length end_radius = {};           // of ends that stay round
  bool open_end = false;            // comes out at its piece's end as well: a bridle's
  bool through = false;             // right through its piece, and the tenon with it
  std::optional<Flare> flare = {};  // for wedges
  std::optional<Length> twin_from_face =
      {};  // of a pair side by side: to the second one's near wall
};

/// To what radius a tenon's edges are rounded for its mortise; 0 where they stay square.
Length tenon_edge_radius(const TenonDesign& tenon, const MortiseDesign& mortise);

extern const Measures kTenonMeasures;
extern const Measures kWedgedTenonMeasures;
extern const Measures kStubMeasures;
extern const Measures kLooseTenonMeasures;

/// Cuts the mortises for tenons whose wood is there already, and adds their joint, of which nothing
/// else is said yet.
void house_tenons(Assembly& assembly, Joint joint, const TenonDesign& tenon,
                  const MortiseDesign& mortise, std::optional<Length> receiver_shoulder);

/// Tenons on the end, with their mortises unless they are stubs, which stand in the groove.
class Tenons : public EndJoint {
 public:
  Tenons(TenonDesign tenon, const MortiseDesign& mortise)
      : tenon_(std::move(tenon)), mortise_(mortise) {}
  Length reach() const override { return tenon_.depth + tenon_.set_back; }
  Length set_back() const override { return tenon_.set_back; }
  bool fills_groove() const override { return true; }
  void cut(Assembly& assembly, const End& end) const override;

 private:
  TenonDesign tenon_;
  MortiseDesign mortise_;
};

}  // namespace haunch
