#include "door_spec.h"

#include <algorithm>
#include <array>
#include <utility>

#include "key_table.h"
#include "value_reader.h"

namespace haunch {
namespace {

using D = DoorSpec;
constexpr bool kFromZero = true;
constexpr bool kAboveZero = false;

constexpr SizeKey kSizeKeys[] = {
    {"opening.width", &D::opening_width, kAboveZero, Change::none, "width of the opening"},
    {"opening.height", &D::opening_height, kAboveZero, Change::none, "height of the opening"},
    {"clearance.left", &D::clearance_left, kFromZero, Change::none, "gap beside the leaf, left"},
    {"clearance.right", &D::clearance_right, kFromZero, Change::none, "gap beside the leaf, right"},
    {"clearance.head", &D::clearance_head, kFromZero, Change::none, "gap above the leaf"},
    {"clearance.foot", &D::clearance_foot, kFromZero, Change::none, "gap below the leaf"},
    {"arch.rise", &D::arch_rise, kAboveZero, Change::size,
     "of the top rail's underside from stile to stile, or of the head of the opening of a leaf "
     "whose top is arched: from its ends to its crown"},
    {"arch.tolerance", &D::arch_tolerance, kAboveZero, Change::none,
     "the most that the chords of its polygon leave the curve"},
    {"lap.left", &D::lap_left, kFromZero, Change::none,
     "how far an overlay leaf, or the lip of a rebated one, stands over its left edge"},
    {"lap.right", &D::lap_right, kFromZero, Change::none, "the same, right"},
    {"lap.head", &D::lap_head, kFromZero, Change::none, "the same, above"},
    {"lap.foot", &D::lap_foot, kFromZero, Change::none, "the same, below"},
    {"lip_thickness", &D::lip_thickness, kAboveZero, Change::size,
     "of a rebated leaf's lip, from the face side"},
    {"meeting_clearance", &D::meeting_clearance, kFromZero, Change::none,
     "gap between the leaves of a pair"},
    {"meeting_lap", &D::meeting_lap, kFromZero, Change::size,
     "how far rebated meeting stiles lap; 0: square ones"},
    {"meeting_rest", &D::meeting_rest, kFromZero, Change::none,
     "gap in the thickness between rebated meeting stiles"},
    {"thickness", &D::thickness, kAboveZero, Change::size, "thickness of the frame"},
    {"stile_width.left", &D::stile_left, kAboveZero, Change::size, "width of the left stile"},
    {"stile_width.right", &D::stile_right, kAboveZero, Change::size, "width of the right stile"},
    {"muntin_width", &D::muntin_width, kAboveZero, Change::size, "width of every muntin"},
    {"tenon_depth", &D::tenon_depth, kAboveZero, Change::size,
     "length of a rail's tenon from its shoulder"},
    {"groove_depth", &D::groove_depth, kAboveZero, Change::size, "depth of the panel groove"},
    {"fit_allowance", &D::fit_allowance, kFromZero, Change::fit,
     "mortise width minus tenon thickness, both cheeks together"},
    {"horn", &D::horn, kFromZero, Change::none, "left on at each end of a stile for sawing off"},
    {"tenon.thickness", &D::tenon_thickness, kAboveZero, Change::fit, "thickness of every tenon"},
    {"tenon_over", &D::tenon_over, kFromZero, Change::none,
     "left on at each end of a rail whose tenons come out, planed off after glue-up"},
    {"tenon.relish", &D::relish, kFromZero, Change::size,
     "what a tenon loses at its rail's outer edge, at the ends of the stiles"},
    {"tenon.edge_clearance", &D::edge_clearance, kFromZero, Change::fit,
     "play at each edge of a tenon in its mortise"},
    {"tenon.bottom_clearance", &D::bottom_clearance, kFromZero, Change::size,
     "mortise depth minus tenon depth"},
    {"tenon.width_limit", &D::width_limit, kAboveZero, Change::size,
     "a wider tenon is divided across its width"},
    {"tenon.gap", &D::gap, kFromZero, Change::size, "wood between the tenons of a divided one"},
    {"tenon.muntin_depth", &D::muntin_depth, kAboveZero, Change::size,
     "length of a muntin's tenon from its shoulder"},
    {"tenon.haunch_depth", &D::haunch_depth, kFromZero, Change::size,
     "how far a haunch goes into the groove"},
    {"mortise.width", &D::mortise_width, kAboveZero, Change::size, "width of every mortise"},
    {"mortise.from_face", &D::mortise_from_face, kFromZero, Change::size,
     "face side to the near wall of every mortise"},
    {"mortise.cutter", &D::cutter, kAboveZero, Change::fit,
     "diameter of the cutter that leaves the ends of mortises round"},
    {"twin.width", &D::twin_width, kAboveZero, Change::fit,
     "width of each of the two mortises of twin tenons"},
    {"twin.between", &D::twin_between, kAboveZero, Change::size,
     "wood between the two mortises of twin tenons"},
    {"twin.from_face", &D::twin_from_face, kFromZero, Change::size,
     "face side to the near wall of the first mortise of twin tenons"},
    {"loose_tenon.wall", &D::loose_wall, kAboveZero, Change::size,
     "wood between the mortise in a rail's end and the groove in its edge"},
    {"wedge.thickness", &D::wedge_thickness, kFromZero, Change::size,
     "of the wedges of through tenons, at their thick end; 0: none"},
    {"wedge.length", &D::wedge_length, kAboveZero, Change::size, "of the wedges of through tenons"},
    {"dowel.diameter", &D::dowel_diameter, kAboveZero, Change::size,
     "of the holes for dowels; a dowel is fit_allowance less"},
    {"dowel.depth", &D::dowel_depth, kAboveZero, Change::size,
     "how far a dowel goes into each of its two pieces"},
    {"dowel.bottom_clearance", &D::dowel_bottom, kFromZero, Change::size,
     "of a hole, deeper than its dowel"},
    {"dowel.edge", &D::dowel_edge, kAboveZero, Change::size,
     "wood between a hole and the edge of the piece whose end it is in"},
    {"dowel.wall", &D::dowel_wall, kAboveZero, Change::size,
     "wood between a hole and the groove beside it, and between two holes"},
    {"dowel.spacing", &D::dowel_spacing, kAboveZero, Change::size,
     "the most from the middle of one dowel to that of the next"},
    {"pin.diameter", &D::pin_diameter, kAboveZero, Change::size,
     "of the pins through tenons, and of their holes"},
    {"pin.from_shoulder", &D::pin_from_shoulder, kAboveZero, Change::size,
     "from the shoulder to the middle of the holes through the cheeks of a mortise"},
    {"pin.offset", &D::pin_offset, kFromZero, Change::size,
     "how much nearer to its shoulder a tenon's own hole is; 0: pins that do not draw"},
    {"pin.depth", &D::pin_depth, kAboveZero, Change::size,
     "of the holes, from the face side; left out: right through"},
    {"pin.over", &D::pin_over, kFromZero, Change::none,
     "how much longer a pin is sawn than it stays: its taper, and what is struck"},
    {"half_lap.from_face", &D::lap_from_face, kAboveZero, Change::size,
     "face side to where the two halves of a half-lap meet"},
    {"spline.depth", &D::spline_depth, kAboveZero, Change::size,
     "how far a mitre's spline goes into each piece, square to the mitre"},
    {"spline.room", &D::spline_room, kFromZero, Change::size,
     "room for a spline all round its slot, level or upright"},
    {"spline.wall", &D::spline_wall, kAboveZero, Change::size,
     "wood between a spline's slot and the leaf's edges or the grooves"},
    {"groove.width", &D::groove_width, kAboveZero, Change::size, "width of the panel groove"},
    {"groove.from_face", &D::groove_from_face, kFromZero, Change::size,
     "face side to the near wall of the panel groove"},
    {"panel.thickness", &D::panel_thickness, kAboveZero, Change::size, "thickness of every panel"},
    {"panel.gap.across_grain", &D::panel_gap_across, kFromZero, Change::size,
     "gap at each of a panel's long-grain edges, to the groove's bottom"},
    {"panel.gap.along_grain", &D::panel_gap_along, kFromZero, Change::size,
     "gap at each end of a panel, to the groove's bottom"},
    {"panel.allowance", &D::panel_allowance, kFromZero, Change::fit,
     "groove width minus the panel's tongue"},
    {"hinges.length", &D::hinge_length, kAboveZero, Change::none, "of a hinge, along the stile"},
    {"hinges.width", &D::hinge_width, kAboveZero, Change::none,
     "of a hinge's leaf on the stile's edge, from the face side"},
    {"hinges.thickness", &D::hinge_thickness, kAboveZero, Change::none, "of a hinge's leaf"},
    {"hinges.from_top", &D::hinge_from_top, kFromZero, Change::size,
     "top of the leaf to the top of the highest hinge"},
    {"hinges.from_foot", &D::hinge_from_foot, kFromZero, Change::size,
     "foot of the leaf to the foot of the lowest hinge"},
    {"lock.height", &D::lock_height, kAboveZero, Change::size,
     "middle of the lock above the leaf's foot"},
    {"lock.backset", &D::lock_backset, kAboveZero, Change::none,
     "from the stile's edge to the middle of the lock's holes"},
    {"lock.bore.diameter", &D::lock_bore, kAboveZero, Change::none,
     "of a bored lock's hole through the stile"},
    {"lock.bore.latch", &D::lock_latch, kAboveZero, Change::none,
     "diameter of a bored lock's hole in the stile's edge"},
    {"lock.spindle", &D::lock_spindle, kAboveZero, Change::none,
     "diameter of the hole for a mortise lock's spindle"},
    {"lock.spindle_above", &D::lock_spindle_above, kFromZero, Change::none,
     "from the case's middle up to the spindle"},
    {"lock.key", &D::lock_key, kAboveZero, Change::none,
     "diameter of the hole for a mortise lock's key or cylinder"},
    {"lock.key_below", &D::lock_key_below, kFromZero, Change::none,
     "from the case's middle down to the key"},
    {"lock.case.height", &D::lock_case_height, kAboveZero, Change::none, "of the lock's case"},
    {"lock.case.depth", &D::lock_case_depth, kAboveZero, Change::none,
     "of the lock's case, from the stile's edge"},
    {"lock.case.thickness", &D::lock_case_thickness, kAboveZero, Change::none,
     "of the lock's case"},
    {"lock.faceplate.length", &D::faceplate_length, kAboveZero, Change::none,
     "of the plate let in to the stile's edge"},
    {"lock.faceplate.width", &D::faceplate_width, kAboveZero, Change::none, "of the plate"},
    {"lock.faceplate.thickness", &D::faceplate_thickness, kAboveZero, Change::none, "of the plate"},
    {"edge.width", &D::edge_width, kAboveZero, Change::size,
     "of a rebate, in the frame's thickness from its back; of a moulding, across the piece"},
    {"edge.depth", &D::edge_depth, kAboveZero, Change::size,
     "of a rebate, across the piece from its sight edge; of a moulding, into the thickness"},
    {"edge.fillet", &D::edge_fillet, kFromZero, Change::size,
     "of a moulding, straight down from the face before its profile begins"},
    {"panel.raise.width", &D::raise_width, kAboveZero, Change::size,
     "of a raised panel, from its edge to its field"},
    {"panel.raise.tongue", &D::raise_tongue, kFromZero, Change::size,
     "of that, flat at the edge before the slope begins"},
    {"panel.raise.shoulder", &D::raise_shoulder, kFromZero, Change::size,
     "step from the field down to the slope"},
    {"panel.glass.rebate", &D::glass_rebate, kAboveZero, Change::size,
     "depth of the rebate that glass lies in, from the sight edge"},
    {"panel.glass.edge_clearance", &D::glass_edge_clearance, kFromZero, Change::size,
     "from the glass's edge to the rebate's bottom"},
    {"panel.glass.bedding", &D::glass_bedding, kFromZero, Change::size,
     "tape or compound at each face of the glass"},
};

constexpr int kMostHinges = 12;
constexpr int kMostPins = 2;
constexpr std::string_view kSpreadKeys[] = {"clearance", "lap", "stile_width", "panel.gap"};

constexpr int kMostRails = 200;
constexpr int kMostAcross = 1000;
constexpr int kMostPanels = 5'000;
constexpr int kMostQuantity = 100'000;
constexpr std::size_t kMostCutters = 1000;
constexpr std::string_view kOfPanel = "panel.";

const std::vector<std::string_view> kRebateWords = {"back", "front", "both"};
const std::vector<std::string_view> kEndsWords = {"squared", "tenon-rounded", "tenon-shortened"};
const std::vector<std::string_view> kPanelKindWords = {"solid", "board", "glass", "sealed-unit"};
const std::vector<std::string_view> kEdgeWords = {"square", "rebated", "coped", "mitred"};
const std::vector<std::string_view> kMouldingWords = {"bevel", "ovolo", "cove"};
const std::vector<std::string_view> kMouldedFacesWords = {"front", "both"};
const std::vector<std::string_view> kProfileWords = {"bevel", "cove"};
const std::vector<std::string_view> kGrainWords = {"upright", "level"};
const std::vector<std::string_view> kHeldWords = {"middle", "left", "right", "foot", "head"};
const std::vector<std::string_view> kSideWords = {"left", "right"};
const std::vector<std::string_view> kMeetsWords = {"inset", "overlay", "rebate"};
const std::vector<std::string_view> kArchWords = {"segmental", "semicircular"};
const std::vector<std::string_view> kArchAtWords = {"underside", "top", "both"};
const std::vector<std::string_view> kUnitWords = {"mm", "in"};
const std::vector<std::string_view> kRailLineWords = {"top", "centre", "bottom"};

/// Reads one door's values, key by key.
class DoorReader {
 public:
  DoorReader(Reader reader, std::optional<Unit> units) : reader_(reader), read_(units) {
    spec_.units = units;
  }

  DoorReading read(const Value& document) {
    for (const Entry& entry : document.entries)
      if (entry.key != "units" && !nearest_word(entry.key, {"units"}).empty()) read_.let_units_be();
    read_object(document, "", "");
    if (reader_ == Reader::spec) demand_opening(document);
    const std::vector<Given> given = given_lengths(read_.take_lengths());
    infer_units(given);
    std::optional<ToleranceSpec> tolerances;
    if (document.find("work") != nullptr || document.find("tolerance") != nullptr ||
        document.find("fit") != nullptr)
      tolerances = read_tolerance_spec(read_, document);
    SeasonSpec season = read_season_spec(read_, document);
    return {std::move(spec_), given, std::move(tolerances), std::move(season),
            read_.take_problems()};
  }

 private:
  using Special = void (DoorReader::*)(const Value&, const std::string& path);
  enum class Scope { both, spec_only, shop_only };
  struct SpecialKey {
    std::string_view key;
    Special read;
    Scope scope;
  };
  static const std::vector<SpecialKey> kSpecialKeys;

  bool in_scope(Scope scope) const {
    return scope == Scope::both || (scope == Scope::spec_only) == (reader_ == Reader::spec);
  }

  /// Reads every entry of an object; `prefix` is the dotted key before its entries' own, with its
  /// dot.
  void read_object(const Value& object, const std::string& prefix, const std::string& path) {
    for (const Entry& entry : object.entries) {
      const std::string key = muntin_key(entry.key);
      const std::string entry_path = child_path(path, entry.key);
      if (entry.key.find('.') != std::string::npos)
        read_.problem(
            entry_path,
            "unknown key; a key within another stands in its braces: {\"tenon\": {\"relish\": …}}",
            entry.offset);
      else if (key != entry.key && object.find(key) != nullptr)
        read_.problem(entry_path, "is the same thing as \"" + key + "\"; keep one of the two",
                      entry.offset);
      else {
        if (key != entry.key) spec_.mullions.push_back(prefix + key);
        read_entry(entry, prefix + key, prefix, entry_path);
      }
    }
  }

  void read_entry(const Entry& entry, const std::string& key, const std::string& prefix,
                  const std::string& path);
  bool read_special(const Value& value, const std::string& key, const std::string& path);
  bool read_size(const Value& value, const std::string& key, const std::string& path);
  bool read_group(const Value& value, const std::string& key, const std::string& path);
  std::vector<std::string_view> keys_after(const std::string& prefix) const;
  std::string_view other_reader_of(const std::string& key) const;
  void demand_opening(const Value& document);

  /// Without units, a spec whose sizes all carry inches or feet is an inch job.
  void infer_units(const std::vector<Given>& given) {
    if (spec_.units || reader_ == Reader::shop || given.empty()) return;
    const bool metric = std::any_of(given.begin(), given.end(), [](const Given& it) {
      return it.written.find_first_of("mM") != std::string::npos;
    });
    spec_.units = metric ? Unit::mm : Unit::inch;
    spec_.units_inferred = true;
  }

  void skip(const Value&, const std::string&) {}
  void read_units(const Value& value, const std::string& path);
  void read_id(const Value& value, const std::string& path);
  void read_name(const Value& value, const std::string& path);
  void read_note(const Value& value, const std::string& path);
  void read_quantity(const Value& value, const std::string& path);
  void read_leaves(const Value& value, const std::string& path);
  void read_active(const Value& value, const std::string& path);
  void read_meets(const Value& value, const std::string& path);
  void read_arch_shape(const Value& value, const std::string& path);
  void read_arch_at(const Value& value, const std::string& path);
  void read_rails(const Value& value, const std::string& path);
  std::optional<RailSpec> read_rail(const Value& value, const std::string& path);
  void read_rail_entry(RailSpec& rail, bool& has_width, const Entry& entry,
                       const std::string& path);
  void read_panels(const Value& value, const std::string& path);
  void read_across(const Value& value, const std::string& path);
  void read_joint(const Value& value, const std::string& path);
  void read_joint_at(const Value& value, const std::string& path, JointPlace place);
  void read_ends(const Value& value, const std::string& path);
  void read_pin_places(const Value& value, const std::string& path);
  void read_pins_each(const Value& value, const std::string& path);
  void read_panel_kind(const Value& value, const std::string& path);
  void read_material(const Value& value, const std::string& path);
  void read_edge(const Value& value, const std::string& path);
  void read_edge_kind(const Value& value, const std::string& path);
  void read_moulding(const Value& value, const std::string& path);
  void read_moulded_faces(const Value& value, const std::string& path);
  void read_rebate(const Value& value, const std::string& path);
  void read_raised(const Value& value, const std::string& path);
  void read_flush(const Value& value, const std::string& path);
  void read_profile(const Value& value, const std::string& path);
  void read_grain(const Value& value, const std::string& path);
  void read_held(const Value& value, const std::string& path);
  void read_tiers(const Value& value, const std::string& path);
  PanelSpec read_tier(const Value& value, const std::string& path);
  void read_hangs(const Value& value, const std::string& path);
  void read_hinges(const Value& value, const std::string& path);
  void read_hinge_list(const Value& value, const std::string& path);
  void read_described(const Value& value, const std::string& path);
  bool read_flag(const Value& value, const std::string& path);
  void read_escape_route(const Value& value, const std::string& path);
  void read_existing_opening(const Value& value, const std::string& path);
  void read_accessible(const Value& value, const std::string& path);
  void read_fire_rated(const Value& value, const std::string& path);
  void read_cutters(const Value& value, const std::string& path);

  Reader reader_;
  ValueReader read_;
  DoorSpec spec_;
};

const std::vector<DoorReader::SpecialKey> DoorReader::kSpecialKeys = {
    {"$schema", &DoorReader::skip, Scope::both},
    {"kind", &DoorReader::skip, Scope::both},
    {"units", &DoorReader::skip, Scope::both},  // read before everything else
    {"id", &DoorReader::read_id, Scope::spec_only},
    {"name", &DoorReader::read_name, Scope::both},
    {"note", &DoorReader::read_note, Scope::spec_only},
    {"species", &DoorReader::skip, Scope::both},  // with moisture and grain, see season_spec.h
    {"moisture", &DoorReader::skip, Scope::both},
    {"grain", &DoorReader::skip, Scope::both},
    {"woods", &DoorReader::skip, Scope::shop_only},
    {"quantity", &DoorReader::read_quantity, Scope::spec_only},
    {"leaves", &DoorReader::read_leaves, Scope::spec_only},
    {"active", &DoorReader::read_active, Scope::both},
    {"meets", &DoorReader::read_meets, Scope::both},
    {"arch.shape", &DoorReader::read_arch_shape, Scope::both},
    {"arch.at", &DoorReader::read_arch_at, Scope::both},
    {"rail_widths", &DoorReader::read_rails, Scope::both},
    {"panels", &DoorReader::read_panels, Scope::both},
    {"joint", &DoorReader::read_joint, Scope::both},
    {"mortise.ends", &DoorReader::read_ends, Scope::both},
    {"pin.at", &DoorReader::read_pin_places, Scope::both},
    {"pin.number", &DoorReader::read_pins_each, Scope::both},
    {"panel.kind", &DoorReader::read_panel_kind, Scope::both},
    {"panel.material", &DoorReader::read_material, Scope::both},
    {"edge", &DoorReader::read_edge, Scope::both},
    {"edge.kind", &DoorReader::read_edge_kind, Scope::both},
    {"edge.profile", &DoorReader::read_moulding, Scope::both},
    {"edge.faces", &DoorReader::read_moulded_faces, Scope::both},
    {"panel.rebate", &DoorReader::read_rebate, Scope::both},
    {"panel.raised", &DoorReader::read_raised, Scope::both},
    {"panel.flush", &DoorReader::read_flush, Scope::both},
    {"panel.raise.profile", &DoorReader::read_profile, Scope::both},
    {"panel.grain", &DoorReader::read_grain, Scope::both},
    {"panel.held", &DoorReader::read_held, Scope::both},
    {"panel.tiers", &DoorReader::read_tiers, Scope::spec_only},
    {"hangs", &DoorReader::read_hangs, Scope::both},
    {"hinges.number", &DoorReader::read_hinges, Scope::both},
    {"hinges.at", &DoorReader::read_hinge_list, Scope::both},
    {"fittings", &DoorReader::read_described, Scope::both},
    {"escape_route", &DoorReader::read_escape_route, Scope::spec_only},
    {"accessible", &DoorReader::read_accessible, Scope::spec_only},
    {"existing_opening", &DoorReader::read_existing_opening, Scope::spec_only},
    {"fire_rated", &DoorReader::read_fire_rated, Scope::spec_only},
    {"work", &DoorReader::skip,
     Scope::both},  // these three are read together, see tolerance_spec.h
    {"tolerance", &DoorReader::skip, Scope::both},
    {"fit", &DoorReader::skip, Scope::both},
    {"cutters", &DoorReader::read_cutters, Scope::shop_only},
    {"frame", &DoorReader::skip, Scope::shop_only},  // of frames, see frame_spec.h
};

bool starts_group(std::string_view key, std::string_view group) {
  return key.size() > group.size() && key.starts_with(group) && key[group.size()] == '.';
}

void DoorReader::read_entry(const Entry& entry, const std::string& key, const std::string& prefix,
                            const std::string& path) {
  if (read_special(entry.value, key, path) || read_size(entry.value, key, path) ||
      read_group(entry.value, key, path))
    return;
  const std::string_view other = other_reader_of(key);
  if (other.empty())
    read_.unknown_key(entry, path, keys_after(prefix));
  else
    read_.problem(path, "belongs in a " + std::string(other) + ", not here; take it out",
                  entry.offset);
}

/// Who would know a key that this reader does not: "spec" or "shop file", or nobody.
std::string_view DoorReader::other_reader_of(const std::string& key) const {
  if (reader_ == Reader::shop && key == "opening") return "spec";
  for (const SpecialKey& special : kSpecialKeys)
    if (special.key == key && !in_scope(special.scope))
      return reader_ == Reader::shop ? "spec" : "shop file";
  return {};
}

bool DoorReader::read_special(const Value& value, const std::string& key, const std::string& path) {
  const auto found = std::find_if(
      kSpecialKeys.begin(), kSpecialKeys.end(),
      [&](const SpecialKey& special) { return special.key == key && in_scope(special.scope); });
  if (found == kSpecialKeys.end()) return false;
  (this->*found->read)(value, path);
  return true;
}

bool DoorReader::read_size(const Value& value, const std::string& key, const std::string& path) {
  if (reader_ == Reader::shop && key.starts_with("opening")) return false;
  for (const SizeKey& size : kSizeKeys) {
    if (size.key != key) continue;
    (spec_.*size.size).size = read_.length(value, path, size.zero_allowed);
    return true;
  }
  return false;
}

/// A key with members: an object of them, or, where that is allowed, one length for all.
bool DoorReader::read_group(const Value& value, const std::string& key, const std::string& path) {
  if (reader_ == Reader::shop && key == "opening") return false;
  bool has_members = key == "panel";
  bool zero_allowed = true;
  for (const SizeKey& size : kSizeKeys) {
    if (!starts_group(size.key, key)) continue;
    has_members = true;
    zero_allowed = size.zero_allowed;
  }
  if (!has_members) return false;
  const bool spreads =
      std::find(std::begin(kSpreadKeys), std::end(kSpreadKeys), key) != std::end(kSpreadKeys);
  if (value.kind == Value::Kind::object) {
    spec_.of_pins = spec_.of_pins || key == "pin";
    spec_.of_hinges = spec_.of_hinges || key == "hinges";
    spec_.of_lock = spec_.of_lock || key == "lock";
    spec_.of_bored_lock = spec_.of_bored_lock || key == "lock.bore";
    read_object(value, key + ".", path);
  } else if (!spreads) {
    read_.wrong_type(value, path,
                     "an object; the keys in it are " + quoted_list(keys_after(key + "."), "and"));
  } else if (value.kind == Value::Kind::list) {
    read_.wrong_type(value, path,
                     "a length; write one for all, or an object with " +
                         quoted_list(keys_after(key + "."), "and"));
  } else if (const auto length = read_.length(value, path, zero_allowed)) {
    for (const SizeKey& size : kSizeKeys)
      if (starts_group(size.key, key)) (spec_.*size.size).size = length;
  }
  return true;
}

/// The keys that an object after `prefix` may have, each once.
std::vector<std::string_view> DoorReader::keys_after(const std::string& prefix) const {
  std::vector<std::string_view> keys;
  const auto add = [&](std::string_view key) {
    if (!key.starts_with(prefix)) return;
    key.remove_prefix(prefix.size());
    key = key.substr(0, key.find('.'));
    if (reader_ == Reader::shop && prefix.empty() && key == "opening") return;
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) keys.push_back(key);
  };
  for (const SpecialKey& special : kSpecialKeys)
    if (in_scope(special.scope)) add(special.key);
  for (const SizeKey& size : kSizeKeys)
    add(size.key);
  std::erase(keys, "$schema");
  return keys;
}

void DoorReader::demand_opening(const Value& document) {
  const Value* opening = document.find("opening");
  if (opening == nullptr) {
    if (!read_.was_meant("/opening"))
      read_.problem("", "\"opening\" is missing; give \"opening\": {\"width\": …, \"height\": …}");
    return;
  }
  if (opening->kind != Value::Kind::object) return;
  for (const std::string side : {"width", "height"})
    if (opening->find(side) == nullptr && !read_.was_meant("/opening/" + side))
      read_.problem("/opening", "\"" + side + "\" is missing; an opening has a width and a height");
}

void DoorReader::read_id(const Value& value, const std::string& path) {
  spec_.id = read_.text(value, path).value_or("");
  if (spec_.id.empty() && value.kind == Value::Kind::text && value.text.empty())
    read_.problem(path, "an id must not be empty; leave it out to have one made");
}

void DoorReader::read_name(const Value& value, const std::string& path) {
  spec_.name = read_.text(value, path).value_or("");
}

void DoorReader::read_note(const Value& value, const std::string& path) {
  spec_.note = read_.text(value, path).value_or("");
}

void DoorReader::read_quantity(const Value& value, const std::string& path) {
  spec_.quantity = read_.whole_number(value, path, 1, kMostQuantity);
}

void DoorReader::read_leaves(const Value& value, const std::string& path) {
  spec_.leaves = read_.whole_number(value, path, 1, 2);
}

void DoorReader::read_active(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kSideWords))
    spec_.active.word = static_cast<Side>(*word);
}

void DoorReader::read_meets(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kMeetsWords))
    spec_.meets.word = static_cast<Meets>(*word);
}

void DoorReader::read_arch_shape(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kArchWords))
    spec_.arch_shape.word = static_cast<ArchShape>(*word);
}

void DoorReader::read_arch_at(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kArchAtWords))
    spec_.arch_at.word = static_cast<ArchAt>(*word);
}

void DoorReader::read_rails(const Value& value, const std::string& path) {
  if (value.kind != Value::Kind::list) {
    read_.wrong_type(value, path,
                     "a list of rails; write their widths from the top, such as [118, 195, 230]");
    return;
  }
  if (value.list.size() < 2 || value.list.size() > kMostRails) {
    read_.problem(path, "a leaf has from 2 to " + std::to_string(kMostRails) + " rails, not " +
                            std::to_string(value.list.size()));
    return;
  }
  std::vector<RailSpec> rails;
  for (std::size_t i = 0; i < value.list.size(); ++i) {
    const std::string rail_path = child_path(path, i);
    const auto rail = read_rail(value.list[i], rail_path);
    if (!rail) continue;
    rails.push_back(*rail);
    const bool at_an_end = i == 0 || i + 1 == value.list.size();
    if (at_an_end && rail->line)
      read_.problem(rail_path, std::string(i == 0 ? "the top rail stands at the head"
                                                  : "the bottom rail stands at the foot") +
                                   " of the leaf; only rails between the two are placed");
  }
  spec_.rails.rails = std::move(rails);
}

std::optional<RailSpec> DoorReader::read_rail(const Value& value, const std::string& path) {
  RailSpec rail;
  if (value.kind != Value::Kind::object) {
    rail.plain = true;
    const auto width = read_.length(value, path, kAboveZero);
    if (!width) return {};
    rail.width = *width;
    return rail;
  }
  bool has_width = false;
  for (const Entry& entry : value.entries)
    read_rail_entry(rail, has_width, entry, child_path(path, entry.key));
  if (!has_width && !read_.was_meant(path + "/width"))
    read_.problem(path, "\"width\" is missing; a rail has a width");
  return rail;
}

void DoorReader::read_rail_entry(RailSpec& rail, bool& has_width, const Entry& entry,
                                 const std::string& path) {
  const auto line = std::find(kRailLineWords.begin(), kRailLineWords.end(), entry.key);
  if (entry.key == "width") {
    has_width = true;
    rail.width = read_.length(entry.value, path, kAboveZero).value_or(Length());
  } else if (entry.key == "name") {
    rail.name = read_.text(entry.value, path).value_or("");
  } else if (line == kRailLineWords.end()) {
    read_.unknown_key(entry, path, {"width", "name", "top", "centre", "bottom"});
  } else if (rail.line) {
    read_.problem(path,
                  "a rail is placed by one line; keep one of \"top\", \"centre\" and \"bottom\"",
                  entry.offset);
  } else {
    rail.line = static_cast<RailLine>(line - kRailLineWords.begin());
    rail.height = read_.length(entry.value, path, kFromZero).value_or(Length());
  }
}

void DoorReader::read_panels(const Value& value, const std::string& path) {
  if (value.kind == Value::Kind::object) {
    for (const Entry& entry : value.entries) {
      if (entry.key == "across")
        read_across(entry.value, child_path(path, "across"));
      else
        read_.unknown_key(entry, child_path(path, entry.key), {"across"});
    }
    if (value.entries.empty())
      read_.problem(path, "\"across\" is missing; write a number, or {\"across\": …}");
  } else if (value.kind == Value::Kind::list) {
    read_.wrong_type(
        value, path,
        "a number of panels; for so many in each tier from the top write {\"across\": […]}");
  } else if (const auto count = read_.whole_number(value, path, 1, kMostPanels)) {
    spec_.panels = PanelCount{*count};
  }
}

void DoorReader::read_across(const Value& value, const std::string& path) {
  PanelsAcross across;
  if (value.kind != Value::Kind::list) {
    if (const auto number = read_.whole_number(value, path, 1, kMostAcross))
      across.each = {*number};
  }
  for (std::size_t i = 0; i < value.list.size(); ++i)
    across.each.push_back(
        read_.whole_number(value.list[i], child_path(path, i), 1, kMostAcross).value_or(1));
  if (value.kind == Value::Kind::list && value.list.empty())
    read_.problem(path, "the list is empty; give the number of panels for each tier from the top");
  if (!across.each.empty()) spec_.panels = std::move(across);
}

void DoorReader::read_panel_kind(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kPanelKindWords))
    spec_.kind.word = static_cast<PanelKind>(*word);
}

void DoorReader::read_material(const Value& value, const std::string& path) {
  spec_.material = read_.text(value, path).value_or("");
}

void DoorReader::read_ends(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kEndsWords))
    spec_.ends.word = static_cast<Ends>(*word);
}

void DoorReader::read_pin_places(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, pin_place_words()))
    spec_.pin_at.word = static_cast<PinPlaces>(*word);
}

void DoorReader::read_pins_each(const Value& value, const std::string& path) {
  spec_.pins_each = read_.whole_number(value, path, 1, kMostPins);
}

std::vector<std::string_view> words_of(const std::vector<JointWord>& joints) {
  std::vector<std::string_view> words;
  for (const JointWord joint : joints)
    words.push_back(joint_word(joint));
  return words;
}

/// One joint for all the places where it can be, or one for each place.
void DoorReader::read_joint(const Value& value, const std::string& path) {
  if (value.kind != Value::Kind::object) {
    const auto number = read_.choice(value, path, words_of(all_joints()));
    if (!number) return;
    const JointWord joint = all_joints()[*number];
    for (const JointPlace place : kJointPlaces) {
      const std::vector<JointWord> can_be = joints_at(place);
      if (std::find(can_be.begin(), can_be.end(), joint) != can_be.end())
        spec_.joints[static_cast<std::size_t>(place)].word = joint;
    }
    return;
  }
  std::vector<std::string_view> places;
  for (const JointPlace place : kJointPlaces)
    places.push_back(joint_place_word(place));
  for (const Entry& entry : value.entries) {
    const std::string entry_path = child_path(path, entry.key);
    const auto found = std::find(places.begin(), places.end(), entry.key);
    if (found == places.end())
      read_.unknown_key(entry, entry_path, places);
    else
      read_joint_at(entry.value, entry_path,
                    kJointPlaces.at(static_cast<std::size_t>(found - places.begin())));
  }
}

void DoorReader::read_joint_at(const Value& value, const std::string& path, JointPlace place) {
  const std::vector<JointWord> joints = joints_at(place);
  if (const auto number = read_.choice(value, path, words_of(joints)))
    spec_.joints[static_cast<std::size_t>(place)].word = joints[*number];
}

/// One word for the kind, or an object with its sizes.
void DoorReader::read_edge(const Value& value, const std::string& path) {
  if (value.kind != Value::Kind::object) return read_edge_kind(value, path);
  read_object(value, "edge.", path);
  if (value.find("kind") == nullptr && !read_.was_meant(path + "/kind"))
    read_.problem(path, "\"kind\" is missing; write " + quoted_list(kEdgeWords, "or"));
}

void DoorReader::read_edge_kind(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kEdgeWords))
    spec_.edge.word = static_cast<EdgeKind>(*word);
}

void DoorReader::read_moulding(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kMouldingWords))
    spec_.moulding.word = static_cast<Moulding>(*word);
}

void DoorReader::read_moulded_faces(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kMouldedFacesWords))
    spec_.moulded_faces.word = static_cast<MouldedFaces>(*word);
}

void DoorReader::read_rebate(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kRebateWords))
    spec_.rebate.word = static_cast<Rebate>(*word);
}

void DoorReader::read_raised(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kRebateWords))
    spec_.raised.word = static_cast<Rebate>(*word);
}

void DoorReader::read_flush(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kRebateWords))
    spec_.flush.word = static_cast<Rebate>(*word);
}

void DoorReader::read_profile(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kProfileWords))
    spec_.profile.word = static_cast<Profile>(*word);
}

void DoorReader::read_grain(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kGrainWords))
    spec_.grain.word = static_cast<Grain>(*word);
}

void DoorReader::read_held(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kHeldWords))
    spec_.held.word = static_cast<HeldAt>(*word);
}

void DoorReader::read_tiers(const Value& value, const std::string& path) {
  if (value.kind != Value::Kind::list) {
    read_.wrong_type(value, path,
                     "a list with the panels of each tier from the top, such as "
                     "[{\"raised\": \"front\"}, {}]");
    return;
  }
  if (value.list.empty())
    read_.problem(path, "the list is empty; give an object for each tier from the top");
  std::vector<PanelSpec> tiers;
  for (std::size_t i = 0; i < value.list.size(); ++i)
    tiers.push_back(read_tier(value.list[i], child_path(path, i)));
  spec_.tiers = std::move(tiers);
}

/// A tier's panels have the keys of all panels.
PanelSpec DoorReader::read_tier(const Value& value, const std::string& path) {
  if (value.kind != Value::Kind::object) {
    read_.wrong_type(value, path,
                     "an object; write {} for panels as in the other tiers, or what is otherwise");
    return {};
  }
  if (const Value* tiers = value.find("tiers"); tiers != nullptr) {
    read_.problem(child_path(path, "tiers"), "a tier has no tiers; take this out");
    return {};
  }
  DoorSpec whole = std::exchange(spec_, DoorSpec());
  read_object(value, std::string(kOfPanel), path);
  return std::exchange(spec_, std::move(whole));
}

void DoorReader::read_hangs(const Value& value, const std::string& path) {
  if (const auto word = read_.choice(value, path, kSideWords))
    spec_.hangs.word = static_cast<Side>(*word);
}

void DoorReader::read_hinges(const Value& value, const std::string& path) {
  spec_.hinges = read_.whole_number(value, path, 1, kMostHinges);
}

void DoorReader::read_hinge_list(const Value& value, const std::string& path) {
  spec_.hinge_places = read_hinge_places(read_, value, path, kMostHinges);
}

void DoorReader::read_described(const Value& value, const std::string& path) {
  spec_.fittings.each = read_fittings(read_, value, path);
}

bool DoorReader::read_flag(const Value& value, const std::string& path) {
  if (value.kind == Value::Kind::boolean) return value.text == "true";
  read_.wrong_type(value, path, "true or false; write one of them, without quotes");
  return false;
}

void DoorReader::read_escape_route(const Value& value, const std::string& path) {
  spec_.escape_route = read_flag(value, path);
}

void DoorReader::read_accessible(const Value& value, const std::string& path) {
  spec_.accessible = read_flag(value, path);
}

void DoorReader::read_existing_opening(const Value& value, const std::string& path) {
  spec_.existing_opening = read_flag(value, path);
}

void DoorReader::read_fire_rated(const Value& value, const std::string& path) {
  if (read_flag(value, path))
    read_.problem(path,
                  "a fire-rated leaf is not worked or altered from here: it, its hinges and its "
                  "lock are prepared as its listing says (NFPA 80 lets little be done at the job); "
                  "ask its maker and the authority, and leave it to them");
}

void DoorReader::read_cutters(const Value& value, const std::string& path) {
  if (value.kind != Value::Kind::list || value.list.empty() || value.list.size() > kMostCutters) {
    read_.wrong_type(value, path, "a list of cutter widths; write such as [8, 10, 12, 16]");
    return;
  }
  for (std::size_t i = 0; i < value.list.size(); ++i)
    if (const auto cutter = read_.length(value.list[i], child_path(path, i), kAboveZero))
      spec_.cutters.push_back(*cutter);
  std::sort(spec_.cutters.begin(), spec_.cutters.end());
}

/// The units a document states for itself, read before its lengths.
std::optional<Unit> stated_units(const Value& document, ValueReader& reader) {
  const Value* units = document.find("units");
  if (units == nullptr) return {};
  const auto word = reader.choice(*units, "/units", kUnitWords);
  return word && *word == 1 ? Unit::inch : Unit::mm;
}

template <typename Field>
void take_over(Field& field, const Field& shops, bool silent) {
  if (!silent) return;
  field = shops;
  field.by_shop = true;
}

template <typename Word>
void take_word(Chosen<Word>& word, const Chosen<Word>& from) {
  if (!word.word) word = from;
}

/// Fills what is not said of a panel from what is said of others, as it was said; of another kind
/// they say nothing of it. One of the words for its faces stands for all of them.
void fill_panel(PanelSpec& panel, PanelSpec from) {
  if (panel.kind.word && panel.its_kind() != from.its_kind()) return;
  take_word(panel.kind, from.kind);
  if (panel.material.empty()) panel.material = from.material;
  for (const SizeKey& key : kSizeKeys) {
    if (!key.key.starts_with(kOfPanel)) continue;
    Stated& its = panel_size(panel, key);
    if (!its.size) its = panel_size(from, key);
  }
  if (!panel.chooses_face()) {
    panel.rebate = from.rebate;
    panel.raised = from.raised;
    panel.flush = from.flush;
  }
  take_word(panel.profile, from.profile);
  take_word(panel.grain, from.grain);
  take_word(panel.held, from.held);
}

/// The same, all of it said by a shop file.
PanelSpec by_shop(PanelSpec panel) {
  for (const SizeKey& key : kSizeKeys)
    if (key.key.starts_with(kOfPanel))
      panel_size(panel, key).by_shop = panel_size(panel, key).size.has_value();
  const auto mark = [](auto& chosen) { chosen.by_shop = chosen.word.has_value(); };
  mark(panel.kind);
  mark(panel.rebate);
  mark(panel.raised);
  mark(panel.flush);
  mark(panel.profile);
  mark(panel.grain);
  mark(panel.held);
  return panel;
}

}  // namespace

std::string muntin_key(const std::string& key) {
  constexpr std::string_view kOtherName = "mullion_";
  const std::size_t at = key.rfind(kOtherName);
  return at == std::string::npos
             ? key
             : key.substr(0, at) + "muntin_" + key.substr(at + kOtherName.size());
}

std::string written_key(const DoorSpec& spec, const std::string& key) {
  if (std::find(spec.mullions.begin(), spec.mullions.end(), key) == spec.mullions.end()) return key;
  const std::size_t at = key.rfind("muntin_");
  return key.substr(0, at) + "mullion_" + key.substr(at + 7);
}

std::string_view rail_line_word(RailLine line) {
  return kRailLineWords[static_cast<std::size_t>(line)];
}

std::string_view ends_word(Ends ends) {
  return kEndsWords[static_cast<std::size_t>(ends)];
}

std::string_view edge_word(EdgeKind edge) {
  return kEdgeWords[static_cast<std::size_t>(edge)];
}

std::span<const std::string_view> edge_words() {
  return kEdgeWords;
}

std::span<const std::string_view> moulding_words() {
  return kMouldingWords;
}

std::span<const std::string_view> moulded_faces_words() {
  return kMouldedFacesWords;
}

const std::vector<std::string_view>& pin_place_words() {
  static const std::vector<std::string_view> kWords = {"corner", "middle", "both"};
  return kWords;
}

std::string_view held_word(HeldAt held) {
  return kHeldWords[static_cast<std::size_t>(held)];
}

std::string_view panel_kind_word(PanelKind kind) {
  return kPanelKindWords[static_cast<std::size_t>(kind)];
}

std::span<const SizeKey> door_size_keys() {
  return kSizeKeys;
}

Stated& panel_size(PanelSpec& panel, const SizeKey& key) {
  return panel.*static_cast<Stated PanelSpec::*>(key.size);
}

PanelSpec panels_of_tier(const DoorSpec& spec, std::size_t tier) {
  PanelSpec panel = spec.tiers.at(tier);
  fill_panel(panel, spec);
  return panel;
}

bool states(const PanelSpec& panel, std::string_view key) {
  for (const SizeKey& size : kSizeKeys)
    if (size.key == key)
      return (panel.*static_cast<Stated PanelSpec::*>(size.size)).size.has_value();
  if (key == "panel.kind") return panel.kind.word.has_value();
  if (key == "panel.material") return !panel.material.empty();
  if (key == "panel.rebate") return panel.rebate.word.has_value();
  if (key == "panel.raised") return panel.raised.word.has_value();
  if (key == "panel.flush") return panel.flush.word.has_value();
  if (key == "panel.raise.profile") return panel.profile.word.has_value();
  if (key == "panel.grain") return panel.grain.word.has_value();
  return key == "panel.held" && panel.held.word.has_value();
}

std::span<const std::string_view> door_spread_keys() {
  return kSpreadKeys;
}

DoorReading read_door_spec(const Value& document, Reader reader, std::optional<Unit> units) {
  ValueReader unit_reader(units);
  const auto stated = stated_units(document, unit_reader);
  DoorReading reading = DoorReader(reader, stated ? stated : units).read(document);
  reading.spec.units_by_shop = !stated && units;
  std::vector<Problem> problems = unit_reader.take_problems();
  reading.problems.insert(reading.problems.begin(), problems.begin(), problems.end());
  return reading;
}

namespace {

void take_words(DoorSpec& spec, const DoorSpec& shop) {
  if (shop.edge.word) take_over(spec.edge, shop.edge, !spec.edge.word);
  if (shop.moulding.word) take_over(spec.moulding, shop.moulding, !spec.moulding.word);
  if (shop.moulded_faces.word)
    take_over(spec.moulded_faces, shop.moulded_faces, !spec.moulded_faces.word);
  if (shop.ends.word) take_over(spec.ends, shop.ends, !spec.ends.word);
  if (shop.pin_at.word) take_over(spec.pin_at, shop.pin_at, !spec.pin_at.word);
  if (shop.arch_shape.word) take_over(spec.arch_shape, shop.arch_shape, !spec.arch_shape.word);
  if (shop.arch_at.word) take_over(spec.arch_at, shop.arch_at, !spec.arch_at.word);
  if (shop.meets.word) take_over(spec.meets, shop.meets, !spec.meets.word);
  if (shop.active.word) take_over(spec.active, shop.active, !spec.active.word);
  if (shop.hangs.word) take_over(spec.hangs, shop.hangs, !spec.hangs.word);
}

void take_fittings(DoorSpec& spec, const DoorSpec& shop) {
  if (shop.hinges && !spec.hinges) {
    spec.hinges = shop.hinges;
    spec.hinges_by_shop = true;
  }
  spec.of_hinges = spec.of_hinges || shop.of_hinges;
  spec.of_lock = spec.of_lock || shop.of_lock;
  spec.of_bored_lock = spec.of_bored_lock || shop.of_bored_lock;
  if (spec.hinge_places.empty() && !shop.hinge_places.empty()) {
    spec.hinge_places = shop.hinge_places;
    spec.hinge_places_by_shop = true;
  }
  if (spec.fittings.each.empty() && !shop.fittings.each.empty()) {
    spec.fittings = shop.fittings;
    spec.fittings.by_shop = true;
  }
}

/// What a shop says of edges of one kind is not of another's.
void forget_shops_edge(DoorSpec& spec) {
  for (Stated* size : {&spec.edge_width, &spec.edge_depth, &spec.edge_fillet})
    if (size->by_shop) *size = {};
  if (spec.moulding.by_shop) spec.moulding = {};
  if (spec.moulded_faces.by_shop) spec.moulded_faces = {};
}

}  // namespace

void overlay(DoorSpec& spec, const DoorSpec& shop) {
  for (const SizeKey& key : kSizeKeys) {
    if (key.key.starts_with(kOfPanel)) continue;
    const Stated& shops = shop.*key.size;
    if (shops.size) take_over(spec.*key.size, shops, !(spec.*key.size).size);
  }
  if (!shop.rails.rails.empty()) take_over(spec.rails, shop.rails, spec.rails.rails.empty());
  fill_panel(spec, by_shop(shop));
  for (std::size_t place = 0; place < spec.joints.size(); ++place)
    if (shop.joints[place].word)
      take_over(spec.joints[place], shop.joints[place], !spec.joints[place].word);
  take_words(spec, shop);
  if (shop.pins_each && !spec.pins_each) {
    spec.pins_each = shop.pins_each;
    spec.pins_each_by_shop = true;
  }
  take_fittings(spec, shop);
  if (spec.panels.index() == 0 && shop.panels.index() != 0) {
    spec.panels = shop.panels;
    spec.panels_by_shop = true;
  }
  if (spec.name.empty()) spec.name = shop.name;
  spec.cutters = shop.cutters;
  if (shop.edge.word && spec.edge.word != shop.edge.word) forget_shops_edge(spec);
}

}  // namespace haunch
