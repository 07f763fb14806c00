// Wood: pieces as blanks with cuts, the joints between them, and the assembly they make.
//
// Everything after setting out (checks, reports, later seasons and lumber) sees only what stands
// here, and never asks which kind of work it came from. All lengths are finished sizes.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "haunch/length.h"
#include "haunch/measure.h"
#include "haunch/trade.h"

namespace haunch {

/// Axes of the assembly, seen from its face side: x to the right, y up, z from the face side into
/// the thickness.
enum class Axis : unsigned char { x, y, z };

/// A place or size along the three axes, of a piece (length, width, thickness) or of the assembly
/// (x, y, z).
using Triple = std::array<Length, 3>;

/// An axis-aligned box from its low to its high corner, both faces included.
struct Box {
  Triple low;
  Triple high;

  friend bool operator==(const Box&, const Box&) = default;
  Length extent(std::size_t axis) const { return high[axis] - low[axis]; }
};

/// True when the two have wood in common, not merely a face, an edge or a corner.
bool interiors_meet(const Box& a, const Box& b);

/// Where a piece or a group lies: its own zero corner in the assembly, and the assembly axis along
/// which each of its own runs, of a piece its length, width and thickness.
struct Place {
  Triple origin;
  std::array<Axis, 3> axes{Axis::x, Axis::y, Axis::z};
  std::array<bool, 3> backwards{};  // whether an axis of its own runs towards lower figures
};

/// The two axes across one, in their order.
struct AxesAcross {
  std::size_t u, v;
};
constexpr AxesAcross across_axes(std::size_t along) {
  return {along == 0 ? 1U : 0U, along == 2 ? 1U : 2U};
}

/// A corner of a prism's outline, along the two axes across the one it runs along.
struct Corner {
  Length u, v;

  friend bool operator==(const Corner&, const Corner&) = default;
};

/// Wood that slopes or curves: an outline drawn on two of a piece's own axes, run straight along
/// the third.
struct Prism {
  std::size_t along = 0;        // 0 length, 1 width, 2 thickness
  Length from, to;              // along it, from < to
  std::vector<Corner> outline;  // a simple polygon, hollow places allowed; either way round
};

/// A trade size of a feature that a joiner reads off ("width", "depth"), beside the exact wood in
/// its cuts.
struct NamedSize {
  SizeName name = SizeName::length;
  Length size;
};

/// What is let in to a piece that is no wood: a hinge, a lock, a bolt.
struct Fitting {
  std::string name;        // "top hinge", "lock": recesses of one name are of one fitting
  std::size_t into = 1;    // the piece's own axis along which it is let in
  bool from_high = false;  // from the blank's far side along that axis
};

/// A corner of a moulding's outline as a shop has drawn it: how far from the sight edge, how deep
/// below the face; the radius of the arc that leads to it, less than 0 where that is hollow, 0
/// where a straight line does.
struct MouldingCorner {
  Length from_edge, deep, radius;
};

/// What is worked on a piece, in trade terms, with the exact wood that it takes away.
struct Feature {
  FeatureKind kind = FeatureKind::recess;
  std::vector<std::size_t> joints;  // the joints it serves, by index into Assembly::joints
  std::vector<Box> cuts;            // in the piece's own axes: length, width, thickness
  std::vector<NamedSize> sizes;
  std::vector<Prism> prisms = {};            // as cuts, where the wood slopes
  std::optional<Fitting> fitting = {};       // what it is let in for, if not another piece of wood
  std::string profile = {};                  // of a moulding that the shop drew itself: its name
  std::vector<MouldingCorner> corners = {};  // of that: from its border on the face on
};

/// Where a piece that stands between others is pinned, across its grain: nowhere, so that it finds
/// the middle between them; in its middle, to what its ends stand in; or at an edge, to what that
/// stands in.
enum class Held : unsigned char { nowhere, middle, low_edge, high_edge };

/// What a piece is made of. Board (plywood, MDF) and glass do not move with the seasons to matter.
enum class Matter : unsigned char { wood, board, glass };

/// A strip glued to an edge of a piece, whose blank it is a part of.
struct EdgeStrip {
  std::size_t along = 0;  // the piece's own axis along which it lies: 0 length, 1 width
  bool high = false;      // at the blank's far side
  Length thickness;
  std::string material;

  friend bool operator==(const EdgeStrip&, const EdgeStrip&) = default;
};

/// One piece of wood: a blank, its place, and what is cut out of it. Blank minus all cuts is the
/// piece.
struct Piece {
  std::string mark;  // A, B … Z, AA: unique in its assembly
  std::string name;  // "left stile"
  Role role = Role::stile;
  Triple blank;  // length (along the grain), width, thickness
  Place place;
  Length horn;  // left on at each end for sawing off after glue-up, not part of the blank
  std::vector<Feature> features;
  Held held = Held::nowhere;
  Matter matter = Matter::wood;
  std::string material = {};  // "birch plywood"; empty: the species of its role
  bool is_lock_rail = false;  // the rail of a door at the height of its lock
  std::size_t group = 0;      // that it is of, by index into Assembly::groups
  std::string key = {};       // "tier-1/panel-2": of its group, whatever else that has
  bool loose = false;         // laid in by hand, on pins or runners, and taken out again
  double load = 0;            // that lies on it, in kg, spread over it
  std::vector<EdgeStrip> strips = {};
};

/// Where one mortise of a joint lies along the piece that receives it, from the low end of its
/// length.
struct MortiseSpan {
  Length from_foot;
  Length length;
  std::optional<Length> from_face =
      {};  // of one of a pair side by side: face side to its near wall
  std::optional<Length> from_edge =
      {};  // in the end of its piece, where it is long in the width: from the low edge
};

/// The clearances a joint was designed to have; each is measured in the wood by the checks.
/// Empty: the joint has no such clearance.
struct Clearances {
  std::optional<Length> cheeks;  // both sides together
  std::optional<Length> edges;   // both edges together
  std::optional<Length> bottom;
  std::optional<Length> bite;          // how deep a panel's edge stands in its groove
  std::optional<Length> bearing = {};  // to the ledge or rebate that the entering piece rests on
  std::optional<Length> edge = {};     // of what has wood at one edge only: there
  std::optional<Length> draw = {};     // of a pin: how far it pulls a tenon home
};

/// Where a tenon or haunch stands in its piece's width, from the low edge (foot or left).
struct TenonSpan {
  Length from_edge;
  Length width;
  std::optional<Length> from_face =
      {};  // of one of a pair side by side: face side to its near cheek
};

/// A tenon as its joiner reads it; thickness, width and depth are of each where there are several,
/// haunches not counted.
struct TenonSizes {
  Length thickness;
  Length width;
  Length depth;
  Length from_face;             // face side to the near cheek
  std::vector<TenonSpan> each;  // lowest or leftmost first; never empty
  std::vector<TenonSpan> haunches;
  Length haunch_depth, haunch_thickness;
  Length haunch_from_face = {};  // face side to the haunches' near cheek
  Length edge_radius = {};       // to which its edges are rounded; 0: square
  // How far a shoulder stands on past the line that depth is from: into a rebate, over a moulding.
  Length longer_at_face = {}, longer_at_back = {};
  Length set_back = {};  // that line, past the sight edge, where a mitred moulding is cut away

  /// Whether its two shoulders are in one line.
  bool straight() const { return longer_at_face == Length() && longer_at_back == Length(); }
};

/// How far the end of a piece that has no tenon stands on past the line that its shoulders are told
/// from, at its face and at its back: over a moulding, into a rebate.
struct ScribedEnd {
  Length longer_at_face, longer_at_back;
};

/// How a mortise is opened for wedges at each of its ends, towards the edge where it comes out.
struct Flare {
  Length depth;  // from that edge in
  Length width;  // more of the mortise at each end, at that edge

  friend bool operator==(const Flare&, const Flare&) = default;
};

/// A mortise as its joiner reads it.
struct MortiseSizes {
  Length width;
  Length depth;
  Length from_face;  // face side to the near wall
  std::optional<Length>
      from_shoulder;  // of a mortise in a piece that has shoulders itself: from the near one
  std::vector<MortiseSpan> each;  // lowest or leftmost first; never empty
  Length end_radius = {};         // of ends that a cutter leaves round; 0: square
  std::optional<Length> free_width =
      {};                // of the first, to a square-edged tenon as thick as this one
  bool through = false;  // right through its piece
  std::optional<Flare> flare = {};
  std::string_view shoulder = {};  // a literal: which one, "face" or "back", where they differ

  /// Of one of them, as `from_shoulder` is of the first.
  std::optional<Length> from_shoulder_of(const MortiseSpan& span) const {
    if (!from_shoulder) return {};
    return *from_shoulder + span.from_foot - each.front().from_foot;
  }
};

/// Tails or fingers on the end of a piece as they are marked there.
struct TailSizes {
  Length length;                // from the shoulder between them
  Length spread;                // how much narrower each is at its root, at each side; 0: fingers
  std::vector<TenonSpan> each;  // at their ends, lowest first; never empty
};

/// Which way the entering piece goes in: along this assembly axis, towards higher or lower figures.
struct Heading {
  Axis axis = Axis::x;
  bool upwards = true;
};

/// One piece entering another.
struct Joint {
  JointKind kind = JointKind::mortise_and_tenon;
  std::size_t receives = 0;
  std::size_t enters = 0;
  Heading heading;
  Clearances design;
  std::optional<TenonSizes> tenon;
  std::optional<ScribedEnd> scribed = {};  // of a flat end, where its shoulders are not in one line
  std::optional<MortiseSizes> mortise;
  bool arched = false;       // the receiving edge is an arch, cut as a polygon
  Axis through = Axis::z;    // along which what enters is fitted between cheeks
  bool has_shoulder = true;  // what enters closes on what receives it
  Measures measures = {};
  std::optional<TailSizes> tails = {};
};

/// Lengths at the four sides of something upright.
struct Sides {
  Length left, right, head, foot;

  Length across() const { return left + right; }
  Length upright() const { return head + foot; }
};

/// How a leaf meets its opening: it stands in it, lies before it, or stands in it with a lip, left
/// by a rebate round its back, that lies before it.
enum class Meets : unsigned char { inset, overlay, rebate };

/// What is made, moved and told of as one: a leaf, a frame. The first of an assembly is the whole.
struct Group {
  GroupKind kind = GroupKind::leaf;
  std::string path = "leaf";      // "left-leaf": unique in its assembly
  std::optional<std::size_t> in;  // the group that it is a part of; of the whole none
  Place at = {};                  // where its own zero and axes lie in the assembly
};

/// Turns about a pin, so that its face side comes forward.
struct Swing {
  Axis axis = Axis::y;   // along which the pin lies
  Triple pin = {};       // a point of it, in the assembly
  bool at_high = false;  // the pin is at the group's side towards higher figures
};

/// Goes straight.
struct Slide {
  Axis along = Axis::z;
  Length by;  // below 0: towards lower figures
};

/// How a group moves in what it stands in; the first: not at all.
using Movement = std::variant<std::monostate, Swing, Slide>;

/// What a group stands in: the opening of a wall, or one that is left free for what closes it, of
/// neither of which the wood is known; another group; or no other, but it has one beside it. A
/// front closes an opening of a case or of the frame on it: it stands in that or lies over it,
/// among others.
enum class StandsIn : unsigned char { wall, opening, group, beside, front };

/// At which of its four sides something stands that a front's gap is measured to.
struct SidesBeside {
  bool left = true, right = true, head = true, foot = true;
};

/// How far an opening that is not square reaches beyond the square one that is worked with, where
/// it was measured: beside it at the head, in the middle and at the foot; above and below it at the
/// left, in the middle and at the right. Less than 0: it comes in, and what stands in it is planed
/// to follow.
struct AsFound {
  std::array<Length, 3> left, right, head, foot;
  bool follow = false;

  friend bool operator==(const AsFound&, const AsFound&) = default;
};

/// What is planed off a side at its first and at its last place, in a straight line between them
/// that stays clear of what comes in anywhere along it; nothing where it follows nothing.
struct Taper {
  Length first, last;
};
Taper taper_along(const std::array<Length, 3>& side, bool follow);

/// What is left between such a side, planed as it is, and the opening at each of the places, of
/// `room` where the opening is square.
std::array<Length, 3> gaps_along(const std::array<Length, 3>& side, Length room, bool follow);

/// How one group stands to what is round it, the room that it was designed to have there, and how
/// it moves. Of two groups that meet edge to edge it is told of the one that opens first.
struct Fit {
  StandsIn stands = StandsIn::opening;
  std::size_t group = 0;
  std::size_t other = 0;    // the group that it stands in or beside
  Length width, height;     // of an opening
  Sides room = {};          // to what stands there; where nothing does below, to the floor
  SidesBeside beside = {};  // of a front, where something does
  Length behind = {};       // to a stop at its back, or to what it laps before
  Meets meets = Meets::inset;
  Sides lap = {};                 // how far it, or its lip, lies over what is beside its opening
  Length lip = {};                // thickness of a rebated one's lip
  std::vector<Corner> arch = {};  // of an arched head its curve from left to right, x and y
  std::optional<AsFound> found = {};  // of an opening that was measured all round
  Movement moves = {};

  const Swing* swing() const { return std::get_if<Swing>(&moves); }
};

/// Pieces and joints that make one thing.
struct Assembly {
  Triple size;                    // width (x), height (y), thickness (z)
  std::vector<Box> open;          // where nothing closes its face, as it should be
  std::vector<Prism> beyond;      // what an arched top leaves of its size, in its own axes
  std::optional<Length> ceiling;  // height of the room that it is stood up in
  std::vector<Group> groups{Group()};
  std::vector<Fit> fits;
  std::vector<Piece> pieces;
  std::vector<Joint> joints;

  const Group& whole() const { return groups.front(); }
};

/// "left leaf": the path of a group in words.
std::string group_name(const Group& group);

/// The fits of one sort, in the assembly's order.
std::vector<const Fit*> fits_that_stand(const Assembly& assembly, StandsIn stands);

/// How the whole, or the frame of it, stands in the opening of a wall or another that is not of
/// the assembly; null where nothing is known of it.
const Fit* fit_in_opening(const Assembly& assembly);

/// Two groups that meet edge to edge.
struct Neighbours {
  std::size_t left = 0, right = 0;
};
Neighbours neighbours_of(const Assembly& assembly, const Fit& beside);

/// By which a piece's group stands in another; null where it does not.
const Fit* hanging_of(const Assembly& assembly, std::size_t piece);

/// The pieces of a group, in the assembly's order.
std::vector<std::size_t> pieces_of(const Assembly& assembly, std::size_t group);

/// "J1" for joint 0, and so on.
std::string joint_id(std::size_t joint);

/// Whether a joint stands at one of the long-grain edges of what enters, as a panel's sides do.
bool is_at_long_edge(const Assembly& assembly, const Joint& joint);

/// Where the receiving piece's sight edge stands in the assembly, along the joint's heading.
Length sight_edge(const Assembly& assembly, const Joint& joint);

/// The first box that was cut for a joint in the piece that receives it, in that piece's own axes;
/// null where there is none.
const Box* cut_for(const Assembly& assembly, std::size_t joint);

/// A box of a piece's own axes, placed in the assembly.
Box placed(const Box& box, const Place& place);

/// A prism of a piece's own axes, placed in the assembly: along and outline are of its axes then.
Prism placed(const Prism& prism, const Place& place);

/// Where something lies in the assembly whose place is told in the axes of what lies at `outer`.
Place placed(const Place& inner, const Place& outer);

/// A box of the assembly, in the axes of a piece that lies at `place`: the inverse of placed().
Box in_own_axes(const Box& box, const Place& place);

/// The blank of a piece, placed in the assembly.
Box placed_blank(const Piece& piece);

/// The least box that holds both.
Box around(const Box& a, const Box& b);

/// The least box that holds the blanks of a group's pieces.
Box placed_blanks(const Assembly& assembly, std::size_t group);

/// Of a group's pieces the first whose blank reaches farthest to the right, or to the left.
std::size_t outermost(const Assembly& assembly, std::size_t group, bool at_right);

/// About how much there is to do where slopes are measured: for each piece the sides of all prisms
/// that are cut out of it, squared.
std::size_t sloping_effort(const Assembly& assembly);

/// The size that is told by this name, if one is.
std::optional<Length> size_of(std::span<const NamedSize> sizes, SizeName name);
inline std::optional<Length> size_of(const Feature& feature, SizeName name) {
  return size_of(feature.sizes, name);
}

}  // namespace haunch
