// A door with every size settled: what the spec states, and the trade's or the shop's defaults for
// the rest.
#pragma once

#include <string>
#include <vector>

#include "door_spec.h"
#include "groove.h"
#include "kind.h"
#include "tenon.h"

namespace haunch {

struct RailPlan {
  Length width;
  Length low;  // its lower edge above the leaf's foot
  std::string name;
};

/// The space between two rails, and the sight widths of the panels across it.
struct TierPlan {
  Strip height;
  std::vector<Strip> sights;  // from the left
};

struct PanelPlan {
  Length thickness;
  Length tongue;     // thickness of its edge
  Length allowance;  // groove width minus tongue, as designed
  Length gap_across, gap_along;
  Rebate rebate = Rebate::back;
  bool rebated = false;
  Grain grain = Grain::upright;
};

/// Every size of a leaf of grooved frame and panels.
struct DoorPlan {
  Length width, height, thickness;
  Opening opening;
  Length stile_left, stile_right;
  std::vector<RailPlan> rails;  // from the top
  std::vector<TierPlan> tiers;  // from the top
  Length muntin_width;
  GrooveDesign groove;
  std::vector<TenonDesign> rail_tenons;  // of each rail, both ends alike
  MortiseDesign rail_mortise;
  TenonDesign muntin_tenon;
  MortiseDesign muntin_mortise;
  PanelPlan panel;
  Length horn;
};

struct PlannedDoor {
  DoorPlan plan;
  std::vector<Assumed> assumed;
  std::vector<Lever> levers;
  std::vector<Problem> problems;  // when there are any, the plan is not to be used
};

/// Settles every size. The unit is that of the spec, millimetres where it has none.
PlannedDoor plan_door(const DoorSpec& spec);

/// What a spec says that cannot all be true, told from its values alone: panels over tiers, three
/// sizes of one fit. A matter whose values could not be read (they have a problem in `reading`
/// already) is left alone.
std::vector<Problem> contradictions(const DoorSpec& spec, const std::vector<Problem>& reading);

}  // namespace haunch
