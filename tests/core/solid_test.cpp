// Taking boxes out of boxes, held against a plain count of cells.
#include "solid.h"

#include <array>
#include <bitset>
#include <random>

#include "vocabulary.h"

namespace haunch::test {
namespace {

constexpr int kSide = 7;  // cells of 1 mm along each axis
constexpr std::size_t kCells = kSide * kSide * kSide;
using Cells = std::bitset<kCells>;

using Random = std::mt19937;

/// A box of whole cells, sometimes reaching out of the space.
Box random_box(Random& random) {
  Box box;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    std::uniform_int_distribution<int> low(-1, kSide - 1);
    const int from = low(random);
    std::uniform_int_distribution<int> size(1, kSide);
    box.low[axis] = mm(from);
    box.high[axis] = mm(from + size(random));
  }
  return box;
}

Cells cells_of(const Box& box) {
  Cells cells;
  std::size_t number = 0;
  for (int x = 0; x < kSide; ++x)
    for (int y = 0; y < kSide; ++y)
      for (int z = 0; z < kSide; ++z, ++number) {
        const std::array<int, 3> at{x, y, z};
        bool inside = true;
        for (std::size_t axis = 0; axis < 3; ++axis)
          inside = inside && mm(at[axis]) >= box.low[axis] && mm(at[axis] + 1) <= box.high[axis];
        cells[number] = inside;
      }
  return cells;
}

/// The cells of disjoint boxes; nothing when two of them share one.
std::optional<Cells> cells_of(const std::vector<Box>& boxes) {
  Cells all;
  for (const Box& box : boxes) {
    const Cells cells = cells_of(box);
    if ((all & cells).any()) return {};
    all |= cells;
  }
  return all;
}

}  // namespace

TEST_CASE("What is left of a box is what no cut took, cell by cell") {
  Random random(1);
  for (int round = 0; round < 2000; ++round) {
    const Box blank{{}, {mm(kSide), mm(kSide), mm(kSide)}};
    std::vector<Box> wood{blank};
    Cells wanted = cells_of(blank);
    for (int cut = 0; cut < 6; ++cut) {
      const Box taken = random_box(random);
      take_out(wood, taken);
      wanted &= ~cells_of(taken);
    }
    REQUIRE(cells_of(wood) == wanted);
    for (const Box& box : wood)
      for (std::size_t axis = 0; axis < 3; ++axis)
        REQUIRE(box.low[axis] < box.high[axis]);
  }
}

TEST_CASE("What two boxes have in common is what both hold, cell by cell") {
  Random random(2);
  const Box space{{}, {mm(kSide), mm(kSide), mm(kSide)}};
  for (int round = 0; round < 5000; ++round) {
    const Box a = *common(random_box(random), space);
    const Box b = *common(random_box(random), space);
    const auto both = common(a, b);
    const Cells wanted = cells_of(a) & cells_of(b);
    REQUIRE(both.has_value() == wanted.any());
    REQUIRE(interiors_meet(a, b) == wanted.any());
    if (both) REQUIRE(cells_of(*both) == wanted);
  }
}

TEST_CASE("Clipping keeps what lies in the region, cell by cell") {
  Random random(3);
  for (int round = 0; round < 1000; ++round) {
    std::vector<Box> wood{Box{{}, {mm(kSide), mm(kSide), mm(kSide)}}};
    take_out(wood, random_box(random));
    take_out(wood, random_box(random));
    const Box region = random_box(random);
    REQUIRE(cells_of(clipped(wood, region)) == (*cells_of(wood) & cells_of(region)));
  }
}

TEST_CASE("A piece's solid is its blank less its cuts, where it stands") {
  // 10 along y, 4 along x, 2 thick, from (1, 2, 3); a mortise in its own axes.
  Piece piece;
  piece.blank = {mm(10), mm(4), mm(2)};
  piece.place = {{mm(1), mm(2), mm(3)}, {Axis::y, Axis::x, Axis::z}};
  piece.features.push_back({FeatureKind::mortise, {}, {box(3, 0, 0, 5, 4, 2)}, {}});
  const Solid solid = solid_of(piece);
  CHECK(solid.blank == box(1, 2, 3, 5, 12, 5));
  const std::vector<Box> wanted{box(1, 2, 3, 5, 5, 5), box(1, 7, 3, 5, 12, 5)};
  CHECK(less(solid.wood.boxes, wanted) == kNoWood);
  CHECK(less(wanted, solid.wood.boxes) == kNoWood);
}

TEST_CASE("Faces, edges and corners are not wood in common") {
  const Box cube = box(0, 0, 0, 2, 2, 2);
  CHECK_FALSE(common(cube, box(2, 0, 0, 4, 2, 2)));
  CHECK_FALSE(common(cube, box(2, 2, 0, 4, 4, 2)));
  CHECK_FALSE(common(cube, box(2, 2, 2, 4, 4, 4)));
  CHECK_FALSE(in_shadow(cube, box(2, 0, 5, 4, 2, 7), 2));
  CHECK(in_shadow(cube, box(1.999, 0, 5, 4, 2, 7), 2));
}

TEST_CASE("A gap is the least distance to what lies beyond, in the shadow") {
  const std::vector<Box> from{box(0, 0, 0, 10, 10, 10)};
  const Way right{0, true};
  const Way left{0, false};
  CHECK(gap(from, {box(13, 0, 0, 20, 10, 10), box(12, 5, 5, 20, 6, 6)}, right) == mm(2));
  CHECK(gap(from, {box(10, 0, 0, 20, 10, 10)}, right) == Length());
  CHECK_FALSE(gap(from, {box(13, 0, 0, 20, 10, 10)}, left));
  CHECK(gap(from, {box(-5, 0, 0, -4, 10, 10)}, left) == mm(4));
  CHECK_FALSE(gap(from, {box(12, 10, 0, 20, 20, 10)}, right));    // beside the shadow
  CHECK_FALSE(gap(from, {box(2, 0, 0, 9, 10, 10)}, right));       // within it, not beyond
  CHECK(gap(from, {box(9, 0, 0, 20, 10, 10)}, right) == -mm(1));  // into it
}

}  // namespace haunch::test
