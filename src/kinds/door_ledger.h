// The book of a door, with what is usual for it.
#pragma once

#include <string>
#include <vector>

#include "door_defaults.h"
#include "ledger.h"

namespace haunch {

class DoorLedger : public Ledger {
 public:
  explicit DoorLedger(const Spec& stated_spec)
      : Ledger(stated_spec), use(use_of(stated_spec)), defaults(door_defaults(unit, use)) {}

  const Use use;
  const DoorDefaults defaults;

  /// "usual for a house door"
  std::string usual() const {
    return defaults.house ? "usual for a house door" : "usual for a cabinet door";
  }
  /// The shop's cutters, else the usual ones.
  const std::vector<Length>& cutters() const {
    return spec.cutters.empty() ? defaults.cutters : spec.cutters;
  }
};

}  // namespace haunch
