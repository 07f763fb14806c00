// Wood that slopes: prisms taken out of blocks, gaps along a slope, arches; by hand, and against
// boxes where the slope is none.
#include "polyhedron.h"

#include <cmath>
#include <random>

#include "rounding.h"
#include "vocabulary.h"

namespace haunch::test {
namespace {

constexpr Way kRight{0, true};
constexpr Way kUp{1, true};
constexpr Way kDown{1, false};

Corner at(double u, double v) {
  return {mm(u), mm(v)};
}

/// A block lying along the axes, with a prism taken out of it.
Piece block(const Triple& blank, std::vector<Prism> prisms, const Triple& origin = {}) {
  Piece piece;
  piece.blank = blank;
  piece.place.origin = origin;
  piece.features.push_back({FeatureKind::bevel, {}, {}, {}, std::move(prisms)});
  return piece;
}

/// 100 x 40 x 20, with the upper right half cut off from corner to corner as seen from its face:
/// what is left lies below the line from (0, 40) to (100, 0).
Piece wedge(const Triple& origin = {}) {
  return block({mm(100), mm(40), mm(20)},
               {{2, Length(), mm(20), {at(0, 40), at(100, 0), at(100, 40)}}}, origin);
}

/// The other half of the same block.
Piece counter_wedge(const Triple& origin = {}) {
  return block({mm(100), mm(40), mm(20)},
               {{2, Length(), mm(20), {at(0, 40), at(100, 0), at(0, 0)}}}, origin);
}

/// Corners of an arc over a span of 2 x half, rising from `foot` at its ends, in `parts`.
std::vector<Corner> arc(double half, double rise, double foot, double radius_more, int parts) {
  const double radius = (half * half + rise * rise) / (2 * rise);
  const double middle = foot + rise - radius;
  const double reach = std::asin(half / radius);
  std::vector<Corner> corners;
  for (int i = 0; i <= parts; ++i) {
    const double angle = -reach + 2 * reach * i / parts;
    corners.push_back({nearest_step(1.6e6 * (half + (radius + radius_more) * std::sin(angle))),
                       nearest_step(1.6e6 * (middle + (radius + radius_more) * std::cos(angle)))});
  }
  return corners;
}

bool near(double a, double b, double within) {
  return std::abs(a - b) <= within;
}

}  // namespace

TEST_CASE("A wedge cut off a block from corner to corner leaves half of it") {
  CHECK(near(volume_of(solid_of(wedge())), 40000, 1e-6));
  CHECK(solid_of(wedge()).wood.boxes.empty());
}

TEST_CASE("Wood that a slope does not reach stays boxes") {
  // A bevel of 5 x 5 along the edge of a block 100 x 40 x 20 with a mortise.
  Piece piece = block({mm(100), mm(40), mm(20)},
                      {{0, Length(), mm(100), {at(40, 20), at(35, 20), at(40, 15)}}});
  piece.features.push_back({FeatureKind::mortise, {}, {box(10, 0, 5, 30, 20, 15)}, {}});
  const Solid solid = solid_of(piece);
  CHECK(near(volume_of(solid), 80000 - 100 * 12.5 - 20 * 20 * 10, 1e-6));
  for (const Box& part : solid.wood.boxes)
    CHECK_FALSE(interiors_meet(part, box(0, 35, 15, 100, 40, 20)));
  for (const Polyhedron& block : solid.wood.sloping)
    CHECK(interiors_meet(bounds_of(block), box(0, 35, 15, 100, 40, 20)));
}

TEST_CASE("Two wedges that touch along their slope share no wood and have no gap") {
  const Solid low = solid_of(wedge());
  const Solid high = solid_of(counter_wedge());
  CHECK(depth_of_common(low.wood, high.wood) == Length());
  CHECK(gap(low.wood, high.wood, kUp) == Length());
  CHECK(gap(low.wood, high.wood, kRight) == Length());
  CHECK_FALSE(gap(low.wood, high.wood, kDown));
}

TEST_CASE("A gap between slopes is what one can move along the axis") {
  // The upper half 3 mm higher. The slope falls 40 in 100, so to the right there are 3 * 100 / 40.
  const Solid low = solid_of(wedge());
  const Solid high = solid_of(counter_wedge({Length(), mm(3), Length()}));
  CHECK(gap(low.wood, high.wood, kUp) == mm(3));
  CHECK(gap(low.wood, high.wood, kRight) == mm(7.5));
  CHECK(gap(high.wood, low.wood, kDown) == mm(3));
}

TEST_CASE("A hundredth of a millimetre of wood shared along a slope is found") {
  // Lowered by what puts it 0.01 mm into the slope, square to it: 0.01 / cos, and cos is
  // 100 / hypot(100, 40).
  const double lower = 0.01 * std::hypot(100, 40) / 100;
  const Solid low = solid_of(wedge());
  const Solid high = solid_of(counter_wedge({Length(), nearest_step(-1.6e6 * lower), Length()}));
  const Length shared = depth_of_common(low.wood, high.wood);
  CHECK(near(static_cast<double>(shared.steps()), 16000, 1));
}

TEST_CASE("A bevelled edge comes to the groove's mouth before it comes to its bottom") {
  // A panel 18 thick with a bevel over 40 mm, from 6 thick at its edge to 18: 12 in 40 on the face
  // side. The groove is 8 wide, 10 deep, its near wall 10 from the panel's face side, so that the
  // bevel has 2 mm to the wall at the panel's edge. Pushed in, the bevel reaches the mouth's
  // corner when it is 8 thick there: 2 * 40 / 12 = 6.667 from its edge.
  const Piece panel = block({mm(100), mm(50), mm(18)},
                            {{0, Length(), mm(100), {at(50, 0), at(50, 12), at(10, 0)}}});
  Piece rail;  // above the panel, its sight edge 5 over the panel's edge
  rail.blank = {mm(100), mm(40), mm(30)};
  rail.place.origin = {Length(), mm(55), Length()};
  rail.features.push_back({FeatureKind::groove, {}, {box(0, 0, 10, 100, 10, 18)}, {}});
  const Wood edge = solid_of(panel).wood;
  const Wood wood = solid_of(rail).wood;
  CHECK(gap(edge, wood, kUp) == nearest_step(1.6e6 * (5 + 20.0 / 3)));
}

TEST_CASE("An arched panel fits its arched rail with the same clearance all along") {
  // A span of 600, rise 100: radius 500. The panel's arc has 4 mm less. In 60 parts, each arc
  // lies inside its circle by 500 * (1 - cos(half a part)) = 0.029 at most.
  const std::vector<Corner> mouth = arc(300, 100, 20, 0, 60);
  std::vector<Corner> under = mouth;
  under.push_back(at(600, 0));
  under.push_back(at(0, 0));
  const Piece rail = block({mm(600), mm(160), mm(20)}, {{2, Length(), mm(20), under}});
  std::vector<Corner> over = arc(300, 100, 20, -4, 60);
  const Length left = over.front().u;
  const Length right = over.back().u;
  over.insert(over.begin(), {at(0, 160), at(0, 0), {left, Length()}});
  over.insert(over.end(), {{right, Length()}, at(600, 0), at(600, 160)});
  const Piece panel = block({mm(600), mm(160), mm(20)}, {{2, Length(), mm(20), over}});
  const Solid arch = solid_of(rail);
  const Solid fill = solid_of(panel);
  CHECK(depth_of_common(arch.wood, fill.wood) == Length());
  const auto clearance = gap(fill.wood, arch.wood, kUp);
  REQUIRE(clearance);
  CHECK(near(static_cast<double>(clearance->steps()) / 1.6e6, 4, 0.03));
  // Neither has the ring between the radii 500 and 496, over twice the angle whose sine is 0.6, nor
  // at each foot the strip under the ring's end, 2.4 wide and from 16.8 to 20 high.
  const double ring = std::asin(0.6) * (500 * 500 - 496 * 496);
  const double wanted = 20 * (600 * 160 - ring - 2 * 2.4 * 18.4);
  CHECK(near(volume_of(arch) + volume_of(fill), wanted, 20));
}

TEST_CASE("A hollow outline takes what it surrounds, no more") {
  // A U of 30 x 30 with a tongue 10 wide left standing in its middle, either way round.
  std::vector<Corner> u{at(0, 0),   at(30, 0),  at(30, 30), at(20, 30),
                        at(20, 10), at(10, 10), at(10, 30), at(0, 30)};
  for (int turn = 0; turn < 2; ++turn) {
    const Solid solid = solid_of(block({mm(30), mm(30), mm(5)}, {{2, Length(), mm(5), u}}));
    CHECK(near(volume_of(solid), 10 * 20 * 5, 1e-6));
    const Wood tongue = clipped(solid.wood, box(10, 10, 0, 20, 30, 5));
    CHECK(near(volume_of(Solid{{}, tongue}), 10 * 20 * 5, 1e-6));
    std::reverse(u.begin(), u.end());
  }
}

TEST_CASE("A prism stands where its piece stands, whichever way that is turned") {
  Piece piece = wedge({mm(5), mm(6), mm(7)});
  piece.place.axes = {Axis::y, Axis::x, Axis::z};  // length up, width to the right
  // Left is what lies under the line from (45, 6) to (5, 106).
  const Solid solid = solid_of(piece);
  CHECK(near(volume_of(solid), 40000, 1e-6));
  const Wood at_foot = clipped(solid.wood, box(5, 6, 7, 45, 6.001, 27));
  CHECK(bounds_of(at_foot).front().high[0] == mm(45));
  CHECK(gap(Wood{{box(0, 56, 7, 1, 57, 27)}, {}}, solid.wood, kRight) == mm(4));
  CHECK(gap(Wood{{box(60, 56, 7, 61, 57, 27)}, {}}, solid.wood, {0, false}) ==
        nearest_step(1.6e6 * (60 - 25)));
}

TEST_CASE("A prism with a rectangle for its outline is a cut like any other") {
  std::mt19937 random(4);
  const Triple blank{mm(40), mm(40), mm(40)};
  std::uniform_int_distribution<int> low(-5, 30);
  std::uniform_int_distribution<int> size(3, 25);
  std::uniform_int_distribution<std::size_t> axis(0, 2);
  for (int round = 0; round < 300; ++round) {
    Piece boxes;
    Piece prisms;
    boxes.blank = prisms.blank = blank;
    boxes.features.push_back({FeatureKind::recess, {}, {}, {}});
    prisms.features.push_back({FeatureKind::recess, {}, {}, {}});
    for (int cut = 0; cut < 3; ++cut) {
      Box taken;
      for (std::size_t i = 0; i < 3; ++i) {
        taken.low[i] = mm(low(random));
        taken.high[i] = taken.low[i] + mm(size(random));
      }
      boxes.features[0].cuts.push_back(taken);
      const std::size_t along = axis(random);
      const std::size_t u = along == 0 ? 1 : 0;
      const std::size_t v = along == 2 ? 1 : 2;
      prisms.features[0].prisms.push_back({along,
                                           taken.low[along],
                                           taken.high[along],
                                           {{taken.low[u], taken.low[v]},
                                            {taken.high[u], taken.low[v]},
                                            {taken.high[u], taken.high[v]},
                                            {taken.low[u], taken.high[v]}}});
    }
    const Solid exact = solid_of(boxes);
    const Solid sloped = solid_of(prisms);
    REQUIRE(near(volume_of(exact), volume_of(sloped), 1e-6));
    const Box probe = box(15, 15, 15, 20, 21, 19);
    const Wood block{{probe}, {}};
    for (const Way way : {kRight, Way{0, false}, kUp, kDown, Way{2, true}, Way{2, false}})
      REQUIRE((depth_of_common(block, exact.wood) > Length() ||
               gap(block, exact.wood, way) == gap(block, sloped.wood, way)));
    REQUIRE((depth_of_common(block, exact.wood) == Length()) ==
            (depth_of_common(block, sloped.wood) == Length()));
    REQUIRE(near(volume_of(Solid{{}, clipped(exact.wood, probe)}),
                 volume_of(Solid{{}, clipped(sloped.wood, probe)}), 1e-6));
  }
}

TEST_CASE("Bevels that meet at a corner leave the wood under both") {
  // All four edges of a square 100 x 100 x 20, bevelled over 20 mm by 12 on the face side: the
  // frustum above the edge's 8 mm has 100 x 100 below and 60 x 60 on top.
  std::vector<Prism> bevels;
  for (const std::size_t along : {std::size_t{0}, std::size_t{1}}) {
    bevels.push_back({along, Length(), mm(100), {at(0, 0), at(20, 0), at(0, 12)}});
    bevels.push_back({along, Length(), mm(100), {at(100, 0), at(80, 0), at(100, 12)}});
  }
  const Solid panel = solid_of(block({mm(100), mm(100), mm(20)}, bevels));
  CHECK(near(volume_of(panel), 100 * 100 * 8 + 4 * (10000 + 3600 + 6000), 1e-6));
  CHECK(gap(Wood{{box(0, 0, -10, 100, 100, -1)}, {}}, panel.wood, {2, true}) == mm(1));
  CHECK(gap(Wood{{box(0, 0, -10, 10, 10, -1)}, {}}, panel.wood, {2, true}) == mm(7));
}

}  // namespace haunch::test
