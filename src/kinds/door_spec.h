// What a spec of `kind: "door"` may say, and reading it: no defaults, no geometry.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "document.h"
#include "edge.h"
#include "fittings_spec.h"
#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "joint_words.h"
#include "key_words.h"
#include "kind.h"
#include "raise.h"
#include "season_spec.h"
#include "tenon.h"
#include "tolerance_spec.h"

namespace haunch {

/// A size that a spec, or for want of it a shop file, may state.
struct Stated {
  std::optional<Length> size;
  bool by_shop = false;

  /// Whether the spec says it itself.
  bool by_spec() const { return size && !by_shop; }
};

/// Which line of a rail its height gives.
enum class RailLine { top, centre, bottom };

/// "top", "centre", "bottom".
std::string_view rail_line_word(RailLine line);

struct RailSpec {
  Length width;
  std::string name;
  std::optional<RailLine> line;
  Length height;       // of that line above the leaf's foot
  bool plain = false;  // written as a bare length, without an object around it
};

struct RailsSpec {
  std::vector<RailSpec> rails;  // from the top; empty: not stated
  bool by_shop = false;
};

/// How many panels: a count for the whole leaf, a number in each tier, or one number for each tier
/// from the top.
struct PanelCount {
  int count;
};
struct PanelsAcross {
  std::vector<int> each;  // a single number stands for every tier
};
using PanelsSpec = std::variant<std::monostate, PanelCount, PanelsAcross>;

enum class Rebate { back, front, both };  // and the faces that are raised or flush
enum class Grain { upright, level };
/// What a panel is: boards of its species, a sheet of board, a pane of glass, a sealed unit.
enum class PanelKind { solid, board, glass, sealed_unit };
/// Where a panel is held: by a pin or a spot of glue at one of its long-grain edges, or in the
/// middle.
enum class HeldAt { middle, left, right, foot, head };

/// The stile that hangs on the hinges; the other has the lock.
enum class Side { left, right };

/// "squared", "tenon-rounded", "tenon-shortened".
std::string_view ends_word(Ends ends);

/// "square", "rebated" …
std::string_view edge_word(EdgeKind edge);
std::span<const std::string_view> edge_words();
std::span<const std::string_view> moulding_words();
std::span<const std::string_view> moulded_faces_words();

/// "middle", "left" …
std::string_view held_word(HeldAt held);

/// A choice with a few legal words; `by_shop` as in Stated.
template <typename Word>
struct Chosen {
  std::optional<Word> word;
  bool by_shop = false;

  /// Whether the spec says it itself.
  bool by_spec() const { return word && !by_shop; }
};

/// What is said of panels: of all of them, or of those in one tier.
struct PanelSpec {
  Stated panel_thickness, panel_gap_across, panel_gap_along, panel_allowance;
  Stated raise_width, raise_tongue, raise_shoulder;
  Stated glass_rebate, glass_edge_clearance, glass_bedding;
  Chosen<Rebate> rebate;
  Chosen<Rebate> raised, flush;
  Chosen<Profile> profile;
  Chosen<Grain> grain;
  Chosen<HeldAt> held;
  Chosen<PanelKind> kind;
  std::string material;  // what the shop calls it

  PanelKind its_kind() const { return kind.word.value_or(PanelKind::solid); }
  bool is_glass() const { return its_kind() >= PanelKind::glass; }
  bool chooses_face() const { return rebate.word || raised.word || flush.word; }
};

/// Of a top rail's underside: a part of a circle with a rise that is said, or half of one.
enum class ArchShape { segmental, semicircular };
/// Which edges of the top rail are arched: the one over the panel, the leaf's top, or both.
enum class ArchAt { underside, top, both };

/// Which rails' tenons are pinned.
enum class PinPlaces { corner, middle, both };

/// "corner", "middle", "both".
const std::vector<std::string_view>& pin_place_words();

/// Everything that a door's spec states. Empty where it is silent.
struct DoorSpec : PanelSpec {
  std::optional<Unit> units;
  bool units_by_shop = false;
  std::string id, name, note;
  OfRoles<std::string> species;
  bool species_by_shop = false;
  std::optional<int> quantity;

  Stated opening_width, opening_height;
  Stated clearance_left, clearance_right, clearance_head, clearance_foot;
  std::optional<int> leaves;
  Stated arch_rise, arch_tolerance;
  Chosen<ArchShape> arch_shape;
  Chosen<ArchAt> arch_at;
  Chosen<Meets> meets;
  Stated lap_left, lap_right, lap_head, lap_foot, lip_thickness;
  Stated meeting_clearance, meeting_lap, meeting_rest;
  Chosen<Side> active;
  Stated thickness;
  Stated stile_left, stile_right;
  RailsSpec rails;
  PanelsSpec panels;
  bool panels_by_shop = false;
  Stated muntin_width, tenon_depth, groove_depth, fit_allowance, horn;
  Stated tenon_over;
  Stated tenon_thickness, relish, edge_clearance, bottom_clearance, width_limit, gap, muntin_depth,
      haunch_depth;
  Stated mortise_width, mortise_from_face;
  Stated groove_width, groove_from_face;
  std::array<Chosen<JointWord>, kJointPlaces.size()> joints;  // by JointPlace
  Chosen<Ends> ends;
  Stated cutter;
  Stated twin_width, twin_between, twin_from_face;
  Stated loose_wall;
  Stated wedge_thickness, wedge_length;
  Stated dowel_diameter, dowel_depth, dowel_bottom, dowel_edge, dowel_wall, dowel_spacing;
  Stated lap_from_face;
  Stated pin_diameter, pin_from_shoulder, pin_offset, pin_depth, pin_over;
  Chosen<PinPlaces> pin_at;
  std::optional<int> pins_each;  // to a tenon
  bool pins_each_by_shop = false;
  Stated spline_depth, spline_room, spline_wall;
  Stated edge_width, edge_depth, edge_fillet;
  Chosen<Moulding> moulding;
  Chosen<MouldedFaces> moulded_faces;
  Chosen<EdgeKind> edge;
  std::vector<PanelSpec> tiers;  // of the panels in each tier, from the top; empty: all alike
  Chosen<Side> hangs;
  std::optional<int> hinges;
  bool hinges_by_shop = false;
  std::vector<HingePlace> hinge_places;
  bool hinge_places_by_shop = false;
  Stated hinge_length, hinge_width, hinge_thickness, hinge_from_top, hinge_from_foot;
  Stated lock_height, lock_backset, lock_bore, lock_latch;
  Stated lock_spindle, lock_spindle_above, lock_key, lock_key_below;
  Stated lock_case_height, lock_case_depth, lock_case_thickness;
  Stated faceplate_length, faceplate_width, faceplate_thickness;
  FittingsSpec fittings;
  bool of_pins = false;
  bool of_hinges = false, of_lock = false, of_bored_lock = false;  // it has an object of that name
  bool escape_route = false, accessible = false, existing_opening = false;
  std::vector<Length> cutters;  // of a shop file only
  std::vector<std::string>
      mullions;                 // keys, dotted and with muntin_, that were written with mullion_
  bool units_inferred = false;  // from the sizes, all of which carry their own
};

/// The key with the other name of a muntin, mullion, put right; and the key as `spec` wrote it.
std::string muntin_key(const std::string& key);
std::string written_key(const DoorSpec& spec, const std::string& key);

/// One key that holds a plain length.
struct SizeKey {
  std::string_view key;  // dotted
  Stated DoorSpec::*size;
  bool zero_allowed;
  Change change;
  std::string_view words;  // what it is, for the schema
};

std::span<const SizeKey> door_size_keys();

/// The size that a key of a panel, "panel." before it, gives.
Stated& panel_size(PanelSpec& panel, const SizeKey& key);

/// What is said of the panels of one tier, and for want of that of all panels.
PanelSpec panels_of_tier(const DoorSpec& spec, std::size_t tier);

/// "solid", "board" …
std::string_view panel_kind_word(PanelKind kind);

/// Whether a dotted key of a panel, "panel." before it, is stated.
bool states(const PanelSpec& panel, std::string_view key);

/// Keys whose value may be one length for all the members below it: clearance, stile_width,
/// panel.gap.
std::span<const std::string_view> door_spread_keys();

struct DoorReading {
  DoorSpec spec;
  std::vector<Given> given;
  std::optional<ToleranceSpec> tolerances;  // where it speaks of them
  SeasonSpec season;
  std::vector<Problem> problems;
};

/// Reads the values of one door. `units` is what bare numbers are in where the document itself does
/// not say.
DoorReading read_door_spec(const Value& document, Reader reader, std::optional<Unit> units);

/// Fills what `spec` leaves open from `shop`, marking it as the shop's.
void overlay(DoorSpec& spec, const DoorSpec& shop);

}  // namespace haunch
