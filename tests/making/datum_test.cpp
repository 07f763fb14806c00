// Which face and which edge of a piece are marked, by the custom of the bench.
#include "datum.h"

#include <array>
#include <map>
#include <utility>

#include "bench.h"
#include "mates.h"
#include "report.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

/// "front, right": the face side and the face edge of a piece as it stands, by its name.
std::map<std::string, std::string> marked(const std::string& spec) {
  const Assembly all = wood(spec);
  std::map<std::string, std::string> sides;
  for (const Piece& piece : all.pieces) {
    const Datum datum = datum_of(piece);
    const Surface face = side_of(piece, {2, datum.face_high});
    const Surface edge = side_of(piece, {1, datum.edge_high});
    const auto word = [](Surface side) {
      return side == Surface::face ? "front" : std::string(word_of(side));
    };
    sides[piece.name] = word(face) + ", " + word(edge);
  }
  return sides;
}

std::string cabinet(std::string_view more) {
  return R"({"kind": "cabinet", "units": "mm", "size": {"width": 600, "height": 800, "depth": 400}, )" +
         std::string(more) + "}";
}

std::size_t numbered(const Assembly& all, std::string_view name) {
  for (std::size_t number = 0; number < all.pieces.size(); ++number)
    if (all.pieces[number].name == name) return number;
  FAIL("no such piece");
  return 0;
}

}  // namespace

TEST_CASE("A leaf's face edges look into it, its face sides to the front") {
  auto sides = marked(house_mm(R"("panels": 4)"));
  CHECK(sides["left stile"] == "front, right");
  CHECK(sides["right stile"] == "front, left");
  CHECK(sides["top rail"] == "front, lower");
  CHECK(sides["bottom rail"] == "front, upper");
  CHECK(sides["lock rail"] == "front, lower");
  CHECK(sides["muntin, tier 1"] == "front, left");
}

TEST_CASE("Hinges and a lock in the outer edges do not make face edges of those") {
  auto sides = marked(house_mm(
      R"("hangs": "left", "lock": {"height": 1100, "case": {"height": 165, "depth": 80, "thickness": 14}},
      "hinges": {"number": 3, "length": 100, "width": 38, "thickness": 3})"));
  CHECK(sides["left stile"] == "front, right");
  CHECK(sides["right stile"] == "front, left");
}

TEST_CASE("The stiles of a pair are marked leaf by leaf") {
  auto sides = marked(
      R"({"kind": "door", "units": "mm", "opening": {"width": 1600, "height": 2060}, "leaves": 2})");
  CHECK(sides["left leaf, left stile"] == "front, right");
  CHECK(sides["left leaf, right stile"] == "front, left");
  CHECK(sides["right leaf, left stile"] == "front, right");
}

TEST_CASE("A lining's face sides look at the way through, its face edges to the front") {
  auto sides = marked(
      R"({"kind": "frame", "units": "mm", "leaf": {"width": 838, "height": 1981}, "jamb_width": 115})");
  CHECK(sides["left jamb"] == "right, front");
  CHECK(sides["right jamb"] == "left, front");
  CHECK(sides["head"] == "lower, front");
}

TEST_CASE(
    "A case is marked inside, its face edges to the front, though its back is let in behind") {
  auto sides = marked(cabinet(
      R"("case": {"thickness": 18, "back": {"fit": "rebated"}}, "layout": {"shelves": 1})"));
  CHECK(sides["left side"] == "right, front");
  CHECK(sides["right side"] == "left, front");
  CHECK(sides["bottom"] == "upper, front");
  CHECK(sides["shelf 1"] == "upper, front");
}

TEST_CASE("A drawer's sides are marked inside, gauged from below, where its bottom goes") {
  auto sides = marked(
      R"({"kind": "drawer", "units": "mm", "opening": {"width": 400, "height": 150, "depth": 450}})");
  CHECK(sides["left side"] == "right, lower");
  CHECK(sides["right side"] == "left, lower");
  CHECK(sides["front"] == "front, lower");
}

TEST_CASE("Two pieces that meet in several joints of one kind are mates once") {
  const Assembly all = wood(house_mm());
  const std::vector<Mate> mates = mates_of(all, numbered(all, "left stile"));
  std::map<std::pair<std::string, JointKind>, std::size_t> found;
  for (const Mate& mate : mates)
    ++found[{all.pieces[mate.piece].name, mate.kind}];
  for (const auto& [mate, times] : found)
    CHECK(times == 1);
  CHECK(found.count({"top rail", JointKind::mortise_and_tenon}) == 1);
  CHECK(found.count({"right stile", JointKind::mortise_and_tenon}) == 0);
}

/// How a direction of a piece's own axes runs along the assembly, or on the bench: +1 or -1 along
/// one axis.
std::array<int, 3> runs(const Place& place, std::size_t own) {
  std::array<int, 3> way{};
  way[static_cast<std::size_t>(place.axes[own])] = place.backwards[own] ? -1 : 1;
  return way;
}

int handed(const Place& place) {
  const auto a = runs(place, 0), b = runs(place, 1), c = runs(place, 2);
  return a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) +
         a[2] * (b[0] * c[1] - b[1] * c[0]);
}

TEST_CASE("On the bench a piece lies face side up, and is never its own mirror image") {
  // Seen from the face side x runs to the right, y up and z away: turned to axes that are
  // right-handed, one of the three changes over.
  for (const std::string& spec :
       {house_mm(),
        cabinet(R"("case": {"thickness": 18}, "layout": {"front": "none", "shelves": 2})"),
        cabinet(R"("layout": {"rows": [{"front": "drawer"}, {"front": "door"}]})")})
    for (const Piece& piece : wood(spec).pieces) {
      INFO(piece.name);
      const Place bench = on_bench(piece);
      CHECK(handed(bench) == -handed(piece.place));
      CHECK(bench.axes == Place().axes);
      CHECK_FALSE(bench.backwards[0]);
      CHECK(bench.backwards[2] != datum_of(piece).face_high);
      Piece alone = piece;
      alone.place = bench;
      CHECK(placed_blank(alone).low == Triple{});
    }
}

}  // namespace haunch::test
