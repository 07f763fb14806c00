#include "groove.h"

#include <utility>

#include "joint_rules.h"
#include "junction.h"

namespace haunch {

namespace {

constexpr Rule kBite{"panel-bite", "of panel edge in its groove",
                     "with less than 3 mm (1/8 in) a panel drops out when it shrinks (trade "
                     "practice)"};
constexpr Rule kPlay{
    "panel-play", "of play between panel edge and groove, both sides together",
    "a tongue that pinches cannot move; one with over 1/32 in rattles (trade practice)"};
constexpr Rule kBed{"panel-bed", "between panel and the rebate it lies in",
                    "a panel rests on its rebate all round, or light and draught come in"};
constexpr Rule kRoom{"panel-room", "between panel edge and groove bottom",
                     "a panel that bottoms when it swells forces the frame apart"};
constexpr Rule kWedge{
    "panel-wedge", "that a panel edge can go in before its slope meets the groove's mouth",
    "a slope that meets the mouth before the edge meets the bottom wedges the frame apart when the "
    "panel swells (trade practice)"};

constexpr Measure kBuilt[] = {{Figure::bite, &kBite, Asked::at_least, &Limits::least_bite},
                              {Figure::cheeks, &kPlay, Asked::as_designed, &Limits::loosest_panel},
                              {Figure::bearing, &kBed},
                              {Figure::bottom, &kRoom},
                              {Figure::slope, &kWedge, Asked::past_bottom}};
constexpr Measure kMoved[] = {{Figure::bite, &kBite, Asked::at_least, &Limits::least_bite},
                              {Figure::bottom, &kRoom, Asked::at_least},
                              {Figure::cheeks, &kPlay, Asked::at_least}};
constexpr FitSizes kTongue{Dimension::groove_width, Dimension::panel_tongue, false};

}  // namespace

const Measures kPanelMeasures{kBuilt, kMoved, kTongue};

GrooveRef work_along_edge(Assembly& assembly, std::size_t piece, Edge edge, FeatureKind kind,
                          const GrooveDesign& groove, std::optional<Stretch> stretch) {
  Piece& grooved = assembly.pieces[piece];
  const Length width = grooved.blank[1];
  Box cut{{Length(), Length(), groove.from_face},
          {grooved.blank[0], groove.depth, groove.from_face + groove.width}};
  if (stretch) {
    cut.low[0] = stretch->from;
    cut.high[0] = stretch->to;
  }
  if (edge == Edge::high) {
    cut.low[1] = width - groove.depth;
    cut.high[1] = width;
  }
  grooved.features.push_back({kind,
                              {},
                              {cut},
                              {{SizeName::width, groove.width},
                               {SizeName::depth, groove.depth},
                               {SizeName::from_face, groove.from_face}}});
  return {piece, grooved.features.size() - 1};
}

void rebate_round(Piece& panel, Length width, Length from, Length to) {
  const Length none;
  const Length length = panel.blank[0];
  const Length across = panel.blank[1];
  panel.features.push_back({FeatureKind::rebate,
                            {},
                            {Box{{none, none, from}, {length, width, to}},
                             Box{{none, across - width, from}, {length, across, to}},
                             Box{{none, width, from}, {width, across - width, to}},
                             Box{{length - width, width, from}, {length, across - width, to}}},
                            {{SizeName::width, width}, {SizeName::depth, to - from}}});
}

void house_panel(Assembly& assembly, const GrooveRef& groove, std::size_t panel, Heading heading,
                 const Clearances& design, JointKind kind) {
  Joint joint = Junction(assembly, groove.piece, panel, heading).joint(kind, kPanelMeasures);
  joint.design = design;
  assembly.pieces[groove.piece].features[groove.feature].joints.push_back(assembly.joints.size());
  assembly.joints.push_back(std::move(joint));
}

}  // namespace haunch
