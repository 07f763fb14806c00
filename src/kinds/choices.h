// What specs choose from by a word: the choices, and their words in the order of the enumerators.
#pragma once

#include <span>
#include <string_view>

#include "drawer_words.h"
#include "edge.h"
#include "frame_rules.h"
#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "joint_words.h"
#include "raise.h"
#include "screws.h"
#include "season.h"
#include "surface.h"
#include "tenon.h"
#include "tolerances.h"

namespace haunch {

using Words = std::span<const std::string_view>;

/// Which line of a rail its height gives.
enum class RailLine { top, centre, bottom };

enum class Rebate { back, front, both };  // and the faces that are raised or flush
enum class Grain { upright, level };

/// What a leaf is for, by which its usual sizes go.
enum class Use { house, cabinet };

/// What a panel is: boards of its species, a sheet of board, a pane of glass, a sealed unit.
enum class PanelKind { solid, board, glass, sealed_unit };

/// Where a panel is held: by a pin or a spot of glue at one of its long-grain edges, or in the
/// middle.
enum class HeldAt { middle, left, right, foot, head };

/// The stile that hangs on the hinges, the other has the lock; the leaf that opens first.
enum class Side { left, right };

/// Of a top rail's underside: a part of a circle with a rise that is said, or half of one.
enum class ArchShape { segmental, semicircular };

/// Which edges of the top rail are arched: the one over the panel, the leaf's top, or both.
enum class ArchAt { underside, top, both };

/// Which tenons of a leaf are pinned: of its rails, of its muntins, of both.
enum class PinPlaces { corner, middle, both, muntin, all };

/// Of a frame: a stop planted on, or worked from the solid; how head and jambs meet.
enum class StopKind { planted, rebate };
enum class HeadJoint { housed, rebated, tenoned };

/// How the parts of a case meet.
enum class CaseJoint { housed, stopped_housing, rebated, tongued, dowel, lapped_dovetail, butted };

/// What its two sides are: boards, or frameworks with panels.
enum class CaseSides { boards, framed };

/// How shelves stand behind an opening: loose on pins, or fixed.
enum class ShelfJoint { loose, housed, stopped_housing, tongued, dowel, butted };

/// What closes a case above or below.
enum class CaseEnd { whole, rails, none };

/// How its back is held.
enum class BackFit { grooved, rebated, planted, none };

/// What lifts it off the floor.
enum class ToeBy { notched, legs, base, none };

/// What a shelf carries.
enum class Load { books, clothes, crockery };

/// What closes an opening of a cabinet: a leaf, two that meet, a drawer, a front that stays, or
/// nothing.
enum class FrontKind { door, pair, drawer, fixed, none };

/// How the members of a face frame are joined.
enum class FaceJoint { mortise_and_tenon, stub, dowel, half_lap, bridle, butted, screws };

/// A bead round an opening: worked on the members, or strips planted there; how its corners meet.
enum class BeadBy { worked, planted };
enum class BeadCorners { mitred, butted };

/// What stands between two parts of a layout.
enum class Between { partition, shelf, rail, none };

template <>
inline constexpr std::string_view kWords<RailLine>[] = {"top", "centre", "bottom"};
template <>
inline constexpr std::string_view kWords<Rebate>[] = {"back", "front", "both"};
template <>
inline constexpr std::string_view kWords<Grain>[] = {"upright", "level"};
template <>
inline constexpr std::string_view kWords<Use>[] = {"house", "cabinet"};
template <>
inline constexpr std::string_view kWords<PanelKind>[] = {"solid", "board", "glass", "sealed-unit"};
template <>
inline constexpr std::string_view kWords<HeldAt>[] = {"middle", "left", "right", "foot", "head"};
template <>
inline constexpr std::string_view kWords<Side>[] = {"left", "right"};
template <>
inline constexpr std::string_view kWords<ArchShape>[] = {"segmental", "semicircular"};
template <>
inline constexpr std::string_view kWords<ArchAt>[] = {"underside", "top", "both"};
template <>
inline constexpr std::string_view kWords<PinPlaces>[] = {"corner", "middle", "both", "muntin",
                                                         "all"};
template <>
inline constexpr std::string_view kWords<StopKind>[] = {"planted", "rebate"};
template <>
inline constexpr std::string_view kWords<HeadJoint>[] = {"housed", "rebated", "tenoned"};
template <>
inline constexpr std::string_view kWords<CaseJoint>[] = {
    "housed", "stopped-housing", "rebated", "tongued", "dowel", "lapped-dovetail", "butted"};
template <>
inline constexpr std::string_view kWords<CaseSides>[] = {"boards", "framed"};
template <>
inline constexpr std::string_view kWords<ShelfJoint>[] = {"loose",   "housed", "stopped-housing",
                                                          "tongued", "dowel",  "butted"};
template <>
inline constexpr std::string_view kWords<CaseEnd>[] = {"whole", "rails", "none"};
template <>
inline constexpr std::string_view kWords<BackFit>[] = {"grooved", "rebated", "planted", "none"};
template <>
inline constexpr std::string_view kWords<ToeBy>[] = {"notched", "legs", "base", "none"};
template <>
inline constexpr std::string_view kWords<FrontKind>[] = {"door", "pair", "drawer", "fixed", "none"};
template <>
inline constexpr std::string_view kWords<Load>[] = {"books", "clothes", "crockery"};
template <>
inline constexpr std::string_view kWords<FaceJoint>[] = {
    "mortise-and-tenon", "stub", "dowel", "half-lap", "bridle", "butted", "screws"};
template <>
inline constexpr std::string_view kWords<ScrewsBy>[] = {"pocket", "plug"};
template <>
inline constexpr std::string_view kWords<BeadBy>[] = {"worked", "planted"};
template <>
inline constexpr std::string_view kWords<BeadCorners>[] = {"mitred", "butted"};
template <>
inline constexpr std::string_view kWords<Between>[] = {"partition", "shelf", "rail", "none"};
template <>
inline constexpr std::string_view kWords<DrawerFront>[] = {"in-one", "applied"};
template <>
inline constexpr std::string_view kWords<DrawerCorner>[] = {
    "lapped-dovetail", "dovetail", "finger", "rebated", "tongued", "housed", "dowel"};
template <>
inline constexpr std::string_view kWords<RunnerKind>[] = {"wood", "metal"};
template <>
inline constexpr std::string_view kWords<BottomFit>[] = {"grooved", "slips"};
template <>
inline constexpr std::string_view kWords<FrameRuleName>[] = {
    "din-18101-square", "din-18101-rebated", "us-rough-opening", "us-prehung", "uk-doorset"};
template <>
inline constexpr std::string_view kWords<JointWord>[] = {"haunched", "twin",  "loose",    "through",
                                                         "bridle",   "dowel", "half-lap", "mitre"};
template <>
inline constexpr std::string_view kWords<EdgeKind>[] = {"square", "rebated", "coped", "mitred"};
template <>
inline constexpr std::string_view kWords<Moulding>[] = {"bevel", "ovolo", "cove", "bead"};
template <>
inline constexpr std::string_view kWords<MouldedFaces>[] = {"front", "both"};
template <>
inline constexpr std::string_view kWords<Profile>[] = {"bevel", "cove"};
template <>
inline constexpr std::string_view kWords<Ends>[] = {"squared", "tenon-rounded", "tenon-shortened"};
template <>
inline constexpr std::string_view kWords<Meets>[] = {"inset", "overlay", "rebate"};
template <>
inline constexpr std::string_view kWords<Sawn>[] = {"flat-sawn", "quarter-sawn", "mixed"};
template <>
inline constexpr std::string_view kWords<Work>[] = {"hand", "router", "nc"};
template <>
inline constexpr std::string_view kWords<Dimension>[] = {
    "tenon_thickness", "mortise_width", "groove_width", "panel_tongue",
    "shoulder_length", "mortise_place", "piece_width"};

}  // namespace haunch
