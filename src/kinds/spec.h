// What one spec or shop file states, by the keys of the table: no defaults, no geometry.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "bought_fitting.h"
#include "document.h"
#include "haunch/length_text.h"
#include "haunch/wood.h"
#include "key.h"
#include "machine.h"
#include "species.h"

namespace haunch {

class KeyValues;

/// What one key was given; of objects, and of what has a reader of its own, only that it was.
struct KeyValue {
  bool stated = false;
  bool by_shop = false;        // the spec is silent, the shop file is not
  std::optional<Length> size;  // of lengths
  int number = 0;              // of counts; a word's place among its words; a flag's 0 or 1
  double figure = 0;           // of moisture in percent, of a load in kg
  std::string text;
  std::vector<KeyValues> items;  // of a list

  /// Whether the spec says it itself.
  bool by_spec() const { return stated && !by_shop; }
};

/// Who stated a value.
enum class SaidBy { nobody, shop, spec };

/// What was stated, by key.
class KeyValues {
 public:
  /// Its value, to be changed.
  KeyValue& edit(Key key) { return values_[key]; }
  const KeyValue& operator[](Key key) const;

  std::optional<Length> size(SizeKey key) const { return (*this)[key].size; }
  std::optional<int> count(Key key) const;
  bool says(Key flag) const { return (*this)[flag].number != 0; }
  const std::string& text(Key key) const { return (*this)[key].text; }
  template <typename Choice>
  std::optional<Choice> word(WordKey<Choice> key) const {
    const KeyValue& its = (*this)[key];
    return its.stated ? std::optional(static_cast<Choice>(its.number)) : std::nullopt;
  }

  /// Sets what the spec says of a key.
  void set(Key key, Length size) { stated_anew(key).size = size; }
  void set(Key key, int number) { stated_anew(key).number = number; }
  void set(Key key, std::string text) { stated_anew(key).text = std::move(text); }
  void set_figure(Key key, double figure) { stated_anew(key).figure = figure; }
  /// Of objects, and of what has a reader of its own.
  void set_stated(Key key) { stated_anew(key); }
  void forget(Key key) { values_.erase(key); }

  /// Who speaks of a key, or of any below it.
  SaidBy said_by(Key key) const;
  bool speaks_of(Key key) const { return said_by(key) != SaidBy::nobody; }

  const std::map<Key, KeyValue>& all() const { return values_; }

 private:
  KeyValue& stated_anew(Key key) {
    KeyValue& its = values_[key] = {};
    its.stated = true;
    return its;
  }

  std::map<Key, KeyValue> values_;
};

struct RailSpec {
  Length width;
  std::string name;
  std::optional<RailLine> line;
  Length height;       // of that line above the leaf's foot
  bool plain = false;  // written as a bare length, without an object around it
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

/// A hinge's foot above that of the leaf, or its top below the leaf's.
struct HingePlace {
  Length distance;
  bool from_top = false;
};

/// One recess of a fitting: a box, or a round hole, which has a diameter.
struct RecessSpec {
  Length start;                 // fitting to its near end, of a hole to its middle
  Length length, width;         // of a box
  Length diameter;              // of a hole; zero: a box
  std::optional<Length> from;   // to its near wall, of a hole to its middle; empty: in the middle
  std::optional<Length> depth;  // empty: right through

  bool is_hole() const { return diameter > Length(); }
};

struct FittingSpec {
  std::string name;
  std::string on;  // the name or the mark of a piece
  Surface into = Surface::face;
  Length at;  // above the leaf's foot, or from its left edge; of what is no leaf's, of the piece's
  std::vector<RecessSpec> recesses;
  bool mirrored = false;  // the same in the piece that stands to the other side as this one does
};

/// One of a shop's fittings, and what it says of whatever takes it.
struct ListedFitting {
  BoughtFitting bought;
  KeyValues said;  // below the key of each use that it can have
};

/// Everything that one document states: values by key, and beside them what is no plain value,
/// empty where it is silent.
struct Spec : KeyValues {
  std::optional<Unit> units;
  bool units_by_shop = false;
  bool units_inferred = false;  // from the sizes, all of which carry their own

  std::vector<RailSpec> rails;  // from the top
  PanelsSpec panels;
  std::vector<KeyValues> tiers;  // of the panels in each tier, from the top
  std::vector<HingePlace> hinge_places;
  std::vector<FittingSpec> fittings;
  std::vector<Dimension> one_setting;
  std::vector<Length> cutters;        // of a shop file only, rising
  std::vector<Machine> machines;      // of a shop file only, in its order
  std::vector<ListedFitting> listed;  // of a shop file only: its hardware
  std::vector<Species> woods;         // its own, then those of the shop file
  std::optional<AsFound> found;       // of an opening that was measured all round
  std::optional<Value> other_work;    // a list of what is no cut, as written
  std::vector<Key> mullions;          // keys of muntins that were written with mullion_
};

/// Fills what an item, whose keys are `of` one kind, leaves open from the shop file, marking it as
/// the shop's.
void overlay(Spec& spec, const Spec& shop, Owners of);

/// The same from what the item itself says of all that are alike: it stays the spec's own.
void take_open(Spec& spec, const Spec& of_all, Owners of);

/// Sets the size of a dotted key, or those of all the keys of a group, as a lever does. Throws
/// std::logic_error where there is no such key.
void set_size(KeyValues& values, std::string_view path, Length value);

/// A role, and the keys that may speak of it alone.
struct RoleKeys {
  std::string_view role;
  Key species;
  WordKey<Sawn> sawn;
};
inline constexpr RoleKeys kRoles[] = {
    {"stile", "species.stile", "grain.stile"},
    {"rail", "species.rail", "grain.rail"},
    {"muntin", "species.muntin", "grain.muntin"},
    {"panel", "species.panel", "grain.panel"},
    {"jamb", "species.jamb", "grain.jamb"},
    {"head", "species.head", "grain.head"},
    {"transom", "species.transom", "grain.transom"},
    {"sill", "species.sill", "grain.sill"},
    {"threshold", "species.threshold", "grain.threshold"},
    {"stop", "species.stop", "grain.stop"},
    {"drawer-front", "species.drawer_front", "grain.drawer_front"},
    {"drawer-box-front", "species.drawer_box_front", "grain.drawer_box_front"},
    {"drawer-side", "species.drawer_side", "grain.drawer_side"},
    {"drawer-back", "species.drawer_back", "grain.drawer_back"},
    {"drawer-bottom", "species.drawer_bottom", "grain.drawer_bottom"},
    {"slip", "species.slip", "grain.slip"}};

/// The wood of each role, as written.
OfRoles<std::string> species_of(const KeyValues& spec);

// ---- panels

inline PanelKind panel_kind(const KeyValues& panel) {
  return panel.word<PanelKind>("panel.kind").value_or(PanelKind::solid);
}
inline bool is_glass(const KeyValues& panel) {
  return panel_kind(panel) >= PanelKind::glass;
}

/// What is said of the panels of one tier, and for want of that of all panels.
KeyValues panels_of_tier(const Spec& spec, std::size_t tier);
/// Sets the panels' values to others.
void set_panels(KeyValues& spec, const KeyValues& panels);

}  // namespace haunch
