// Wood left beside the holes of screws that hold members together.
#include <algorithm>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kWall{"screw-wall", "of wood beside a screw's hole or below its head",
                     "under 3/16 in (4.8 mm) wood splits as the screw is driven; board "
                     "does not (trade practice)"};

constexpr Length kThin = Length::from_inch_parts(3, 16);

/// The least from a hole to a side of its piece that it does not come out of.
std::optional<Length> least_beside(const Piece& piece, const Feature& feature) {
  std::optional<Length> least;
  for (const Prism& prism : feature.prisms) {
    const Box hole = bounds_of(prism);
    for (std::size_t axis = 0; axis < 3; ++axis)
      for (const Length left : {hole.low[axis], piece.blank[axis] - hole.high[axis]})
        if (left > Length() && (!least || left < *least)) least = left;
  }
  return least;
}

}  // namespace

void check_screws(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.pieces.size(); ++number) {
    const Piece& piece = bench.assembly.pieces[number];
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::screw_hole && !feature.fitting)
        report(bench, kWall, {number}, feature.joints.front(), least_beside(piece, feature),
               Bounds{bench.limits.least_wood,
                      {},
                      piece.matter == Matter::wood ? std::optional(kThin) : std::nullopt,
                      {}});
  }
}

std::vector<const Rule*> rules_of_screws() {
  return {&kWall};
}

}  // namespace haunch
