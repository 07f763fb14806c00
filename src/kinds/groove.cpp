#include "groove.h"

#include <utility>

#include "junction.h"

namespace haunch {

namespace {

/// Takes a box out along the whole length of an edge.
GrooveRef work_along(Assembly& assembly, std::size_t piece, Edge edge, const GrooveDesign& groove,
                     FeatureKind kind, std::optional<Stretch> stretch = {}) {
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

}  // namespace

GrooveRef plough(Assembly& assembly, std::size_t piece, Edge edge, const GrooveDesign& groove,
                 std::optional<Stretch> stretch) {
  return work_along(assembly, piece, edge, groove, FeatureKind::groove, stretch);
}

GrooveRef rebate_edge(Assembly& assembly, std::size_t piece, Edge edge,
                      const GrooveDesign& groove) {
  return work_along(assembly, piece, edge, groove, FeatureKind::rebate);
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
  Joint joint = Junction(assembly, groove.piece, panel, heading).joint(kind);
  joint.design = design;
  assembly.pieces[groove.piece].features[groove.feature].joints.push_back(assembly.joints.size());
  assembly.joints.push_back(std::move(joint));
}

}  // namespace haunch
