#include "face_bore.h"

#include <utility>

#include "round_bore.h"

namespace haunch {

void bore(Piece& piece, const FaceBore& hole) {
  const Length radius = floor_half(hole.diameter);
  const Length from = hole.from_high ? piece.blank[2] - hole.depth : Length();
  const Triple low{hole.along - radius, hole.across - radius, from};
  Feature feature;
  feature.kind = hole.kind;
  feature.fitting = Fitting{hole.name, 2, hole.from_high};
  feature.prisms = {
      round_hole({low, {low[0] + hole.diameter, low[1] + hole.diameter, low[2] + hole.depth}}, 2,
                 bore_corners(hole.diameter))};
  feature.sizes = {{SizeName::diameter, hole.diameter},
                   {SizeName::depth, hole.depth},
                   {hole.told_along, hole.along},
                   hole.told};
  piece.features.push_back(std::move(feature));
}

}  // namespace haunch
