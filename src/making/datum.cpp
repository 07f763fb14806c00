#include "datum.h"

#include <algorithm>

namespace haunch {
namespace {

/// Whether a feature opens at an edge of its piece, away from both faces or all along it, as
/// grooves, rebates and mortises do.
bool opens_at_edge(const Piece& piece, const Feature& feature, bool high) {
  const Length edge = high ? piece.blank[1] : Length();
  const bool at_end = feature.kind == FeatureKind::tenon || feature.kind == FeatureKind::tails ||
                      feature.kind == FeatureKind::lap || feature.kind == FeatureKind::mitre;
  return !at_end && std::any_of(feature.cuts.begin(), feature.cuts.end(), [&](const Box& cut) {
    return (high ? cut.high[1] : cut.low[1]) == edge && cut.extent(1) < piece.blank[1];
  });
}

std::ptrdiff_t worked_at(const Piece& piece, bool high) {
  return std::count_if(piece.features.begin(), piece.features.end(),
                       [&](const Feature& it) { return opens_at_edge(piece, it, high); });
}

}  // namespace

Datum datum_of(const Piece& piece) {
  return {worked_at(piece, true) > worked_at(piece, false)};
}

}  // namespace haunch
