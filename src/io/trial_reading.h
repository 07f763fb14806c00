// Reading what was measured of a trial cut, as strictly as a spec.
//
//   {"rail": {"thickness": [44.02, 43.98]}, "stile": {"thickness": 44},
//    "tenon": {"from_face": 14.6, "thickness": [14.93, 14.95, 14.91], "depth": 70.2},
//    "mortise": {"width": {"mean": 15.02, "spread": 0.03, "count": 12}, "from_face": 14.5}}
//
// The pieces go by their roles, as the joint has them ("muntin" and "rail" of a muntin's tenon).
// Of a panel: {"panel": {"remaining": [9.1, {"thickness": 9, "at": 120}], "cup": 0.4,
// "hollow": "first", "removed": 4}}. Beside either: "units", "caliper", "fit", "note".
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "document.h"
#include "panel_trial.h"
#include "trial.h"

namespace haunch {

using TrialDesign = std::variant<JointDesign, PanelDesign>;
using TrialReadings = std::variant<JointReadings, PanelReadings>;

struct TrialReading {
  std::optional<TrialReadings> readings;  // of the design's kind; nothing with problems
  std::vector<Problem> problems;
};

/// A design of the joint for which a trial was cut; nothing of a joint that none can be cut for.
std::optional<TrialDesign> trial_design(const Assembly& wood, std::size_t joint);

/// `unit` is the item's, for what the readings leave open: bare numbers, caliper error and band.
/// Readings that contradict one another are a problem, with the sum shown.
/// `band` is the fit that the spec or its shop wants, if they say; the readings may say otherwise.
TrialReading read_trial(const Value& measured, const TrialDesign& design, Unit unit,
                        const std::optional<FitBand>& band = {});

}  // namespace haunch
