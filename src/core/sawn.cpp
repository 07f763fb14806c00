#include "sawn.h"

namespace haunch {
namespace {

constexpr Length kThinStrip = Length::from_mm_thousandths(500);

}  // namespace

Triple sawn_sizes(const Piece& piece) {
  Triple sizes = piece.blank;
  for (const Feature& feature : piece.features) {
    if (feature.kind != FeatureKind::skew) continue;
    sizes[0] = size_of(feature, SizeName::length).value_or(sizes[0]);
    sizes[1] = size_of(feature, SizeName::width).value_or(sizes[1]);
  }
  return sizes;
}

Triple cut_sizes(const Piece& piece) {
  Triple sizes = sawn_sizes(piece);
  for (const EdgeStrip& strip : piece.strips)
    if (strip.thickness > kThinStrip) sizes[strip.along == 0 ? 1 : 0] -= strip.thickness;
  return sizes;
}

}  // namespace haunch
