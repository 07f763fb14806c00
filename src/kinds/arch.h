// Arches: the curve of a rail's underside, of the groove along it and of the panel below, as lines
// of chords.
#pragma once

#include <vector>

#include "groove.h"
#include "haunch/wood.h"

namespace haunch {

/// An arch between two uprights, in the axes of its leaf. Half of one rises from its lower end
/// towards a crown that it may not reach.
struct Arch {
  Length left, span;   // from the left upright's sight edge to the right one's
  Length springing;    // the height of its ends, or of its lower one
  Length rise;         // from there to its crown
  Length tolerance;    // the most that a chord leaves its curve
  Length struck = {};  // its radius, where that is settled first and the rise rounded
  Length below = {};   // what its rail's blank has below its ends, to be of a size that can be sawn
  Length beside = {};  // how far its middle lies right of that of its span: of half an arch

  /// Unless it is settled, from span and rise: r = (s^2 / 4 + h^2) / 2h. In steps.
  double radius() const;
  Length foot() const { return springing - below; }  // its rail's lower edge
  Length end(bool right) const { return right ? left + span : left; }
  Length middle() const { return left + floor_half(span) + beside; }
  bool is_half() const { return beside != Length(); }
  Length radius_with(Length outward) const;
  /// Of the curve `outward` from the arch and concentric with it: how high it stands at x, and at
  /// which angle from its crown. Where it does not reach it is level with its middle.
  Length height_at(Length outward, Length x) const;
  double angle_at(Length outward, Length x) const;
};

/// The curved top of a leaf, concentric with the arch over its opening: below it and so nowhere
/// nearer to it than at the crown, where the clearance at the head is left, or lapping over it by
/// as much everywhere.
struct ArchedHead {
  Arch opening;                      // of one leaf of a pair that over both
  Length outward;                    // of the top from that; a clearance is less than nothing
  Length lip;                        // how far the body behind a lip stays below the top
  Length body_left, body_right;      // where that body ends at the sides
  Length width;                      // of the leaf
  Length left_sight, right_sight;    // where its stiles end
  Length left_length, right_length;  // of their blanks, up to the curve
  Length edge;                       // of the leaf's outer edges, down to a size that can be marked

  /// Of its curve over a place.
  Length height_at(Length x) const;
  /// The lowest and the highest of it between two places.
  Length lowest(Length from, Length to) const;
  Length highest(Length from, Length to) const;
  /// The lowest of the wood between two places, which chords leave below the curve. What a joint
  /// must leave under it is reckoned from here.
  Length lowest_wood(Length from, Length to) const;
  /// The angles of the leaf's edges and of its sight edges. Leaf and opening have corners there.
  std::vector<double> corners() const;
  Length crown() const { return opening.springing + opening.rise + outward; }
  Length radius() const { return opening.radius_with(outward); }
  /// The height of the curve's middle, which may lie below the leaf's foot.
  Length centre() const { return opening.springing + opening.rise - opening.radius_with(Length()); }
};

/// Which way heights are rounded to the step: a void is never less, wood never more.
enum class Heights { up, down };

/// The curve `outward` from the arch and concentric with it, from x to x: chords between places on
/// it that are at the same angles on all curves of an arch, so that two of them are nowhere nearer
/// than they were set out, and at those that are `more`. Measured square to the curve they leave it
/// by at most the arch's tolerance. Where the curve does not reach, a level line goes on. For the
/// wood alone: what is marked out comes from the curve.
std::vector<Corner> arch_line(const Arch& arch, Length outward, Length from, Length to,
                              Heights heights, const std::vector<double>& more = {});

/// How many chords the arch itself has from end to end.
int chords_of(const Arch& arch);

/// Saws an arch into the lower edge of a level rail.
void saw_arch(Assembly& assembly, std::size_t rail, const Arch& arch);

/// Works a groove or rebate along it, concentric with it, and as far as `past` beyond the uprights'
/// sight edges, in what of the rail stands there: open to its lower edge.
GrooveRef work_along_arch(Assembly& assembly, std::size_t rail, const Arch& arch, FeatureKind kind,
                          const GrooveDesign& groove, Length past);

/// The arch over a leaf's opening, with corners where the leaf has them and at the angles that are
/// `more`.
std::vector<Corner> opening_line(const ArchedHead& head, const std::vector<double>& more);

/// Saws a leaf's stiles and its top rail to the curve of their top, and says what that leaves of
/// the leaf's size and of its opening.
void saw_head(Assembly& leaf, std::size_t left, std::size_t right, std::size_t rail,
              const ArchedHead& head);

/// Rebates a piece behind its leaf's lip, which is so thick, along the curve of the top from side
/// to side of the leaf's body.
void rebate_for_arched_lip(Piece& piece, const ArchedHead& head, Length lip);

/// Takes off what of a panel stands above the curve `outward` from the arch.
void cut_arched_top(Piece& panel, const Arch& arch, Length outward,
                    Heights heights = Heights::down);

/// A rebate round such a panel, as rebate_round().
void rebate_round_arch(Piece& panel, const Arch& arch, Length outward, Length width, Length from,
                       Length to);

/// Where the curve `outward` from an arch comes over the bottom of what is worked as deep along an
/// upright's sight edge; of the arch itself its end.
Corner curve_end(const Arch& arch, Length outward, bool right);

/// Along the true curve, from x to x.
Length curve_length(const Arch& arch, Length outward, Length from, Length to);

}  // namespace haunch
