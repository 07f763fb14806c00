// What is left of a piece, told by volume.
#include "volume.h"

#include "solid.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// 100 x 50 x 20.
Piece board() {
  Piece piece;
  piece.blank = {mm(100), mm(50), mm(20)};
  return piece;
}

/// A square hole, its side 4, 10 deep from the face side; set over by half of that, as it slopes.
Prism hole(double x, double y) {
  return {2,
          mm(0),
          mm(10),
          {{mm(x), mm(y - 2)}, {mm(x + 2), mm(y)}, {mm(x), mm(y + 2)}, {mm(x - 2), mm(y)}}};
}

Feature bored(std::vector<Prism> prisms) {
  Feature feature;
  feature.prisms = std::move(prisms);
  return feature;
}

}  // namespace

TEST_CASE("of a plain board all is left, and of a groove what it takes") {
  Piece piece = board();
  CHECK(volume_left(piece) == Approx(100000));
  piece.features.push_back({FeatureKind::groove, {}, {box(0, 45, 5, 100, 50, 11)}, {}});
  CHECK(volume_left(piece) == Approx(100000 - 100 * 5 * 6));
}

TEST_CASE("holes in the midst of wood take their own volume, 8 x 10 each") {
  Piece piece = board();
  piece.features.push_back(bored({hole(20, 20), hole(40, 20), hole(60, 20)}));
  CHECK(volume_left(piece) == Approx(100000 - 3 * 80));
}

TEST_CASE("what two holes both take is taken once, and air is not taken at all") {
  Piece piece = board();
  piece.features.push_back(bored({hole(20, 20), hole(20, 20), hole(0, 20)}));
  CHECK(volume_left(piece) == Approx(100000 - 80 - 40));
  piece.features.push_back({FeatureKind::groove, {}, {box(0, 18, 0, 100, 22, 4)}, {}});
  CHECK(volume_left(piece) == Approx(volume_of(solid_of(piece, Fittings::let_in))));
}

}  // namespace haunch::test
