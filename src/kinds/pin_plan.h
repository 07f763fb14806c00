// Pins through the tenons of whatever has some: their sizes, where they stand across a tenon, and
// what there is no room for.
#pragma once

#include <string>
#include <string_view>

#include "door_defaults.h"
#include "ledger.h"
#include "pin.h"
#include "tenon.h"

namespace haunch {

/// The keys that say how pins are made, and those that they hang on.
struct PinKeys {
  Key pin;
  Key number;
  SizeKey diameter, from_shoulder, offset, depth, over;
  Key tenon_depth, mortise_from_face, thickness;
};

/// What is usual of them.
struct PinUsual {
  Length diameter;
  std::string_view why_diameter;
  Length draw;
  std::string_view why_draw;
  Length whole;  // marks go to the nearest of these
};

/// Of a leaf and of what is jointed as one.
PinUsual usual_pins(const DoorDefaults& defaults, bool softwood);

/// What all pins of a piece of work go through.
struct PinnedWood {
  Length thickness;
  Length tenon_depth;      // of the shortest
  Length longer;           // how far a shoulder stands on past the one that pins are told from
  std::string_view where;  // what that is: " from the shoulder that stands on past it"
};

PinDesign settle_pin_sizes(Ledger& ledger, const PinKeys& keys, const PinUsual& usual,
                           const PinnedWood& wood);

/// A tenon to be pinned; `name`: of its piece.
struct TenonToPin {
  const TenonDesign& tenon;
  const MortiseDesign& mortise;
  Length depth;  // from the shoulder to its end
  std::string name;
};

/// The pins of these sizes as they stand across it.
PinDesign pins_across(Ledger& ledger, const PinKeys& keys, const PinUsual& usual, PinDesign pins,
                      const TenonToPin& at, Length thickness);

}  // namespace haunch
