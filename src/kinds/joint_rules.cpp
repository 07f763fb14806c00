#include "joint_rules.h"

#include <algorithm>

#include "dovetail.h"
#include "dowel.h"
#include "finger.h"
#include "groove.h"
#include "half_lap.h"
#include "housing.h"
#include "mitre.h"
#include "screws.h"
#include "tenon.h"
#include "tongue.h"
#include "wedge.h"

namespace haunch {

std::vector<const Rule*> rules_of_joints() {
  std::vector<const Rule*> rules;
  for (const Measures* joint :
       {&kTenonMeasures, &kWedgedTenonMeasures, &kStubMeasures, &kLooseTenonMeasures,
        &kButtMeasures, &kWedgeMeasures, &kDowelMeasures, &kLapMeasures, &kMitreMeasures,
        &kSplineMeasures, &kScrewMeasures, &kHousingMeasures, &kTongueMeasures, &kDovetailMeasures,
        &kLappedDovetailMeasures, &kFingerMeasures, &kPanelMeasures})
    for (const auto rows : {joint->built, joint->moved})
      for (const Measure& row : rows)
        if (std::find(rules.begin(), rules.end(), row.rule) == rules.end())
          rules.push_back(row.rule);
  return rules;
}

}  // namespace haunch
