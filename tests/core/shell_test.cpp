// Faces, edges and corners of wood, counted by hand.
#include "shell.h"

#include "shells.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

Wood block(double x, double y, double z) {
  return {{box(0, 0, 0, x, y, z)}, {}};
}

/// A block of 100 x 60 x 40 mm with cuts.
Wood block_less(const std::vector<Box>& cuts) {
  Wood wood = block(100, 60, 40);
  for (const Box& cut : cuts)
    take_out(wood, cut);
  return wood;
}

Shell whole_shell(const Wood& wood) {
  auto shell = shell_of(wood);
  REQUIRE(shell);
  CHECK(faults_of(*shell).empty());
  const double volume = volume_of(Solid{{}, wood});
  CHECK(std::abs(volume_of(*shell) - volume) < 1e-9 * volume);
  return std::move(*shell);
}

std::size_t holes_in(const Shell& shell) {
  std::size_t holes = 0;
  for (const ShellFace& face : shell.faces)
    holes += face.holes.size();
  return holes;
}

}  // namespace

TEST_CASE("A block has 6 faces, 12 edges and 8 corners") {
  const Shell shell = whole_shell(block(100, 60, 40));
  CHECK(shell.faces.size() == 6);
  CHECK(shell.edges.size() == 12);
  CHECK(shell.corners.size() == 8);
  CHECK(shell.bodies == 1);
  CHECK(euler(shell) == 2);
}

TEST_CASE("A blind mortise gives its face a hole, and the wood five faces more") {
  const Shell shell = whole_shell(block_less({box(30, 20, 10, 60, 40, 40)}));
  CHECK(shell.faces.size() == 11);
  CHECK(holes_in(shell) == 1);
  CHECK(euler(shell) == 2);
}

TEST_CASE("A through mortise goes through two faces: Euler's rule comes to 0, of two to -2") {
  const Shell one = whole_shell(block_less({box(30, 20, 0, 60, 40, 40)}));
  CHECK(one.faces.size() == 10);
  CHECK(holes_in(one) == 2);
  CHECK(euler(one) == 0);
  const Shell two =
      whole_shell(block_less({box(10, 20, 0, 40, 40, 40), box(60, 20, 0, 90, 40, 40)}));
  CHECK(holes_in(two) == 4);
  CHECK(euler(two) == -2);
}

TEST_CASE("A tenon has shoulders all round: 11 faces, the shoulder one with a hole") {
  const Shell shell =
      whole_shell(block_less({box(70, 0, 0, 100, 60, 10), box(70, 0, 30, 100, 60, 40),
                              box(70, 0, 10, 100, 12, 30), box(70, 48, 10, 100, 60, 30)}));
  CHECK(shell.faces.size() == 11);
  CHECK(holes_in(shell) == 1);
  CHECK(shell.corners.size() == 16);
}

TEST_CASE("A mortise in a groove: its mouth is a hole in the groove's floor") {
  const Shell shell =
      whole_shell(block_less({box(0, 25, 30, 100, 35, 40), box(40, 25, 5, 60, 35, 40)}));
  // As wide as the groove: it parts the floor in two instead, and two of its walls are the
  // groove's. The block's top in two and five more, the groove's walls, its floor in two, the
  // mortise's ends and bottom.
  CHECK(holes_in(shell) == 0);
  CHECK(shell.faces.size() == 7 + 2 + 2 + 3);
  const Shell narrow =
      whole_shell(block_less({box(0, 25, 30, 100, 35, 40), box(40, 27, 5, 60, 33, 40)}));
  CHECK(holes_in(narrow) == 1);
  CHECK(euler(narrow) == 2);
}

TEST_CASE("A bevel is one face, however many blocks it goes through") {
  Wood wood = block_less({box(30, 40, 30, 60, 60, 40), box(10, 0, 0, 20, 60, 10)});
  const Prism bevel{0, mm(0), mm(100), {{mm(0), mm(40)}, {mm(0), mm(25)}, {mm(20), mm(40)}}};
  take_out(wood, bevel);
  const Shell shell = whole_shell(wood);
  std::size_t sloping = 0;
  for (const ShellFace& face : shell.faces)
    if (std::abs(face.side.normal[1]) < 0.99 && std::abs(face.side.normal[2]) < 0.99 &&
        std::abs(face.side.normal[0]) < 0.99)
      ++sloping;
  CHECK(sloping == 1);
  CHECK(euler(shell) == 2);
}

TEST_CASE("Cuts at opposite faces whose edges cross meet in a corner there") {
  // One at the back left of a line, one at the face below another: what stands between them is 0 mm
  // thick at one point.
  const Shell shell =
      whole_shell(block_less({box(0, 0, 0, 50, 60, 20), box(0, 0, 20, 100, 30, 40)}));
  CHECK(euler(shell) == 2);
  CHECK(shell.bodies == 1);
}

TEST_CASE("Wood that meets along an edge alone is two bodies, each closed") {
  const Shell shell =
      whole_shell(block_less({box(0, 0, 0, 50, 60, 20), box(50, 0, 20, 100, 60, 40)}));
  CHECK(shell.bodies == 2);
  CHECK(shell.faces.size() == 12);
  CHECK(shell.edges.size() == 24);
  CHECK(shell.corners.size() == 16);
  CHECK(euler(shell) == 4);
}

TEST_CASE("Two mortises that meet along an edge leave it there twice, and the wood is one") {
  const Shell shell =
      whole_shell(block_less({box(10, 10, 20, 30, 30, 40), box(30, 30, 20, 50, 50, 40)}));
  CHECK(shell.bodies == 1);
  CHECK(euler(shell) == 2);
}

TEST_CASE("Wood cut in two is two bodies; a void is one more as well") {
  CHECK(whole_shell(block_less({box(40, 0, 0, 60, 60, 40)})).bodies == 2);
  CHECK(whole_shell(block_less({box(40, 20, 10, 60, 40, 30)})).bodies == 2);
}

TEST_CASE("Where there is no wood there is no shell") {
  CHECK_FALSE(shell_of({}));
}

}  // namespace haunch::test
