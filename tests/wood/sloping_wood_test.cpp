// Sloping wood by two ways: points asked one by one, and polyhedra.
#include "sloping_wood.h"

#include <algorithm>
#include <cmath>
#include <random>

#include "../shells.h"
#include "shell.h"
#include "solid.h"
#include "vocabulary.h"
#include "wood_oracle.h"

namespace haunch::test {
namespace {

using Random = std::mt19937;

Length whole_mm(Random& random, int low, int high) {
  return mm(std::uniform_int_distribution<int>(low, high)(random));
}

/// A star about a block's middle: a simple outline, mostly hollow, whatever its corners are.
std::vector<Corner> star(Random& random, const Triple& blank, std::size_t u, std::size_t v) {
  const int corners = std::uniform_int_distribution<int>(3, 9)(random);
  std::uniform_real_distribution<double> share(0.1, 0.5);
  std::vector<Corner> outline;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::acos(-1.0) * i / corners;
    const double arm = share(random);
    const auto place = [&](Length size, double part) {
      return floor_multiple(floor_divide(size * std::lround(10000 * (0.5 + part)), 10000),
                            mm(0.001));
    };
    outline.push_back(
        {place(blank[u], arm * std::cos(angle)), place(blank[v], arm * std::sin(angle))});
  }
  return outline;
}

Piece random_piece(Random& random) {
  Piece piece;
  piece.blank = {whole_mm(random, 60, 120), whole_mm(random, 40, 60), whole_mm(random, 20, 40)};
  piece.place.origin = {whole_mm(random, -9, 9), whole_mm(random, -9, 9), whole_mm(random, -9, 9)};
  if (random() % 2 == 0) piece.place.axes = {Axis::y, Axis::x, Axis::z};
  Feature feature{FeatureKind::recess, {}, {}, {}};
  for (int i = 0; i < 2; ++i) {
    const std::size_t along = random() % 3;
    const Length from = whole_mm(random, 0, 9);
    const Length to = piece.blank[along] - whole_mm(random, 0, 9);
    feature.prisms.push_back(
        {along, from, to, star(random, piece.blank, along == 0 ? 1 : 0, along == 2 ? 1 : 2)});
  }
  const Length low = whole_mm(random, 0, 30);
  feature.cuts.push_back({{low, Length(), Length()}, {low + mm(20), mm(20), mm(10)}});
  piece.features.push_back(feature);
  return piece;
}

}  // namespace

TEST_CASE("Wood with two shapes and a box cut out of it is as much by points as by polyhedra") {
  Random random(5);
  for (int round = 0; round < 40; ++round) {
    const Piece piece = random_piece(random);
    const double volume = volume_of(solid_of(piece));
    REQUIRE(std::abs(counted_volume(piece, 64000) - volume) < 0.02 * volume + 100);
  }
}

TEST_CASE("Wood with two shapes and a box cut out of it has a closed shell, as large as it is") {
  Random random(5);
  for (int round = 0; round < 400; ++round) {
    const Solid solid = solid_of(random_piece(random));
    const auto shell = shell_of(solid.wood);
    REQUIRE(shell);
    INFO(faults_of(*shell));
    REQUIRE(faults_of(*shell).empty());
    REQUIRE(std::abs(volume_of(*shell) - volume_of(solid)) < 1e-9 * volume_of(solid));
  }
}

TEST_CASE("What two pieces share is found by points as by polyhedra") {
  Random random(6);
  int sharing = 0;
  for (int round = 0; round < 200; ++round) {
    const Piece a = random_piece(random);
    const Piece b = random_piece(random);
    const bool shared = depth_of_common(solid_of(a).wood, solid_of(b).wood) > Length();
    if (share_at_points(a, b)) {
      ++sharing;
      REQUIRE(shared);
    }
  }
  CHECK(sharing > 20);
}

TEST_CASE("A point off a face is in the wood or out of it by both ways") {
  Random random(7);
  for (int round = 0; round < 30; ++round) {
    const Piece piece = random_piece(random);
    const Solid solid = solid_of(piece);
    for (int i = 0; i < 100; ++i) {
      Box grain;  // 0.01 mm wide; on a face it may be half in
      Point middle{};
      for (std::size_t axis = 0; axis < 3; ++axis) {
        grain.low[axis] = Length::from_steps(static_cast<std::int64_t>(
                              random() % static_cast<unsigned>(solid.blank.extent(axis).steps()))) +
                          solid.blank.low[axis];
        grain.high[axis] = grain.low[axis] + mm(0.01);
        middle[axis] = static_cast<double>((grain.low[axis] + mm(0.005)).steps());
      }
      const double part = volume_of(Solid{grain, clipped(solid.wood, grain)}) / 1e-6;
      if (part < 1e-3) REQUIRE_FALSE(holds(piece, middle));
      if (part > 1 - 1e-3) REQUIRE(holds(piece, middle));
    }
  }
}

TEST_CASE("A slope that begins within the groove stands in its wall, and points find it there") {
  const auto sharing = [](std::string_view tongue) {
    const auto faults = judge(wood(house_mm(
        R"("thickness": 44, "groove_depth": 13, "groove": {"width": 15}, "panels": 2,
           "rail_widths": [118, 118, 230], "panel": {"raised": "both", "raise": {"tongue": )" +
        std::string(tongue) + "}}")));
    return std::count_if(faults.begin(), faults.end(),
                         [](const Fault& it) { return it.kind == FaultKind::shared_wood; });
  };
  CHECK(sharing("13") == 0);
  CHECK(sharing("8") == 8);  // two panels in two stiles and two rails each
}

}  // namespace haunch::test
