// The surface that is sanded and finished, by wood of which it can be told by hand.
#include "seen_surface.h"

#include "priced.h"

namespace haunch {
namespace {

using namespace test;

/// A block of wood as it stands, its length along x.
Piece block(const Box& at) {
  Piece piece;
  piece.blank = {at.extent(0), at.extent(1), at.extent(2)};
  piece.place.origin = at.low;
  return piece;
}

/// In square millimetres.
double surface(const std::vector<Box>& blocks) {
  Assembly wood;
  for (const Box& each : blocks)
    wood.pieces.push_back(block(each));
  return lumber::square_mm(seen_surface(wood));
}

TEST_CASE("Of one board all six sides are seen") {
  CHECK(surface({box(0, 0, 0, 100, 50, 20)}) == 2 * (100 * 50 + 100 * 20 + 50 * 20));
}

TEST_CASE("What lies against another is not seen, of either") {
  // Two boards edge to edge are as one of twice the width.
  CHECK(surface({box(0, 0, 0, 100, 50, 20), box(0, 50, 0, 100, 100, 20)}) ==
        surface({box(0, 0, 0, 100, 100, 20)}));
  // A block on a board covers as much of it as it stands on.
  CHECK(surface({box(0, 0, 0, 100, 100, 20), box(40, 40, 20, 60, 60, 50)}) ==
        surface({box(0, 0, 0, 100, 100, 20)}) + 4 * 20 * 30);
}

TEST_CASE("What goes into another is seen from its shoulder on, and flush faces but once") {
  // A rail whose tenon of 30 is in a stile as thick: as if it were cut off at the shoulder.
  CHECK(surface({box(0, 0, 0, 60, 400, 20), box(30, 100, 0, 300, 160, 20)}) ==
        surface({box(0, 0, 0, 60, 400, 20), box(60, 100, 0, 300, 160, 20)}));
  // A dowel within is not seen at all.
  CHECK(surface({box(0, 0, 0, 60, 400, 20), box(10, 10, 5, 50, 20, 15)}) ==
        surface({box(0, 0, 0, 60, 400, 20)}));
}

TEST_CASE("A gap is seen into") {
  CHECK(surface({box(0, 0, 0, 100, 50, 20), box(0, 51, 0, 100, 100, 20)}) >
        surface({box(0, 0, 0, 100, 100, 20)}));
}

TEST_CASE("Glass is not finished, and hides what it lies against") {
  Assembly wood;
  wood.pieces = {block(box(0, 0, 0, 100, 100, 20)), block(box(0, 0, 20, 100, 100, 24))};
  wood.pieces[1].matter = Matter::glass;
  CHECK(lumber::square_mm(seen_surface(wood)) == 100 * 100 + 4 * 100 * 20);
}

TEST_CASE("Of no wood is more seen than its pieces have") {
  for (const auto& file : std::filesystem::directory_iterator(HAUNCH_EXAMPLES)) {
    if (file.path().extension() != ".json") continue;
    std::stringstream text;
    text << std::ifstream(file.path()).rdbuf();
    if (text.str().starts_with('[')) continue;  // several items, one of which takes the others
    const Assembly wood = test::wood(text.str());
    double most = 0;
    for (const Piece& piece : wood.pieces) {
      Assembly alone;
      alone.pieces = {piece};
      most += lumber::square_mm(seen_surface(alone));
    }
    INFO(file.path());
    CHECK(lumber::square_mm(seen_surface(wood)) > 0);
    CHECK(lumber::square_mm(seen_surface(wood)) < most);
  }
}

}  // namespace
}  // namespace haunch
