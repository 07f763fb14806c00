#include "sawn.h"

namespace haunch {

Triple sawn_sizes(const Piece& piece) {
  Triple sizes = piece.blank;
  for (const Feature& feature : piece.features) {
    if (feature.kind != FeatureKind::skew) continue;
    sizes[0] = size_of(feature, SizeName::length).value_or(sizes[0]);
    sizes[1] = size_of(feature, SizeName::width).value_or(sizes[1]);
  }
  return sizes;
}

}  // namespace haunch
