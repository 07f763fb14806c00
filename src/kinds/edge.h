// How the inner edges of a frame are worked, where they look at the panels.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "end_joint.h"
#include "groove.h"
#include "haunch/wood.h"
#include "junction.h"

namespace haunch {

/// Square edges have a groove; rebated ones a rebate at the back, in which the panel lies. Moulded
/// ones have a groove too; the ends of rails and muntins are coped over the moulding, or the
/// moulding is mitred in the corners and cut away beyond.
enum class EdgeKind { square, rebated, coped, mitred };

/// A moulding stuck on an edge: a plain slope, a quarter round that stands out or one that is
/// hollow; half a round with a groove beside it, its quirk.
enum class Moulding { bevel, ovolo, cove, bead };

/// The faces that are moulded.
enum class MouldedFaces { front, both };

/// A place on a moulding: how far from the sight edge, and how deep below the face.
struct MouldingPoint {
  Length from_edge, deep;
};

/// A moulding as a shop has drawn it.
struct OwnMoulding {
  std::string name;
  std::vector<MouldingPoint> outline;   // from its border on the face to the sight edge
  Length fillet;                        // with which it begins
  std::optional<Length> round, hollow;  // radius of its arcs, where all of a sort have one
  std::vector<MouldingCorner> corners;  // as they were drawn

  Length width() const { return outline.front().from_edge; }
  Length depth() const { return outline.back().deep; }
};

struct EdgeDesign {
  EdgeKind kind = EdgeKind::square;
  Moulding profile = Moulding::bevel;
  MouldedFaces faces = MouldedFaces::front;
  Length width;   // of the moulding, across the piece from its sight edge
  Length depth;   // of it, into the thickness
  Length fillet;  // of that, straight down from the face before the profile begins; of a bead its
                  // quirk, as wide as this
  std::optional<OwnMoulding> own = {};  // in place of the profile

  bool rebated() const { return kind == EdgeKind::rebated; }
  bool mitred() const { return kind == EdgeKind::mitred; }
  bool moulded() const { return kind == EdgeKind::coped || mitred(); }
  /// How far a shoulder stands past the sight edge, where the moulding is cut away for it.
  Length set_back() const { return mitred() ? width : Length(); }
  /// Haunches have seats of their own where no groove goes past the shoulder.
  bool own_haunch() const { return rebated() || mitred(); }
  bool moulded_back() const { return moulded() && faces == MouldedFaces::both; }
};

/// The moulding's outline from its border on the face to the sight edge, but of a bead.
std::vector<MouldingPoint> moulding_outline(const EdgeDesign& edge);

/// What a moulding takes away, seen along its edge.
std::vector<std::vector<MouldingPoint>> moulding_cuts(const EdgeDesign& edge);

/// Its sizes, with nothing cut yet.
Feature moulding_of(const EdgeDesign& edge);

/// Sticks the moulding along the whole length of one edge of a piece.
void stick(Assembly& assembly, std::size_t piece, Edge edge, const EdgeDesign& design);

/// A mitre between a straight moulding and one along an arch: so far above the arched piece's lower
/// edge at the sight edge, and where it comes out behind the moulding. The true line between the
/// two bends by less than the width squared over eight radii: no more than 0.02 mm in a door.
struct MitreOverArch {
  Length sight, past;
};

/// Which of an entering piece's two edges are moulded, and so mitred at its ends.
struct MitredEdges {
  bool low = false, high = false;
  // Of the low one, where that is an arch, at its left and right end.
  std::optional<std::array<MitreOverArch, 2>> arch = {};
};

/// Cuts the moulding away on the receiver where the other piece comes through it, mitred at the
/// entering piece's moulded edges, and the counterpart on the end of that, for the joint that comes
/// next: through the whole thickness, or a stretch of it.
void mitre_moulding(Assembly& assembly, const Junction& junction, Length width, MitredEdges edges,
                    std::optional<Strip> through = {});

/// An end without a tenon on a worked edge: how far its blank goes past the sight edge, and of that
/// what it is set back, where a moulding is cut away for it. In a rebate it fills that to its end.
struct FlatEnd {
  Length reach, set_back;
  MitredEdges mitred;
  bool fills_rebate = false;
};

/// Stands it there, scribed or mitred; see butt().
void stand(Assembly& assembly, const End& end, const FlatEnd& flat);

}  // namespace haunch
