// Where pieces and groups lie: any way round, and one inside another.
#include <algorithm>

#include "catch.h"
#include "haunch/wood.h"

namespace haunch::test {
namespace {

Length mm(std::int64_t count) {
  return Length::from_mm_thousandths(count * 1000);
}

Box box(std::int64_t x0, std::int64_t y0, std::int64_t z0, std::int64_t x1, std::int64_t y1,
        std::int64_t z1) {
  return {{mm(x0), mm(y0), mm(z0)}, {mm(x1), mm(y1), mm(z1)}};
}

/// All 48: six orders of the axes, each of them forwards or backwards.
std::vector<Place> all_places() {
  std::vector<Place> places;
  std::array<Axis, 3> axes{Axis::x, Axis::y, Axis::z};
  do {
    for (const bool a : {false, true})
      for (const bool b : {false, true})
        for (const bool c : {false, true})
          places.push_back({{mm(100), mm(-20), mm(7)}, axes, {a, b, c}});
  } while (std::next_permutation(axes.begin(), axes.end()));
  return places;
}

const Box kBox = box(1, 2, 3, 11, 22, 33);

TEST_CASE("A box keeps its sizes however it lies, and comes back as it was") {
  REQUIRE(all_places().size() == 48);
  for (const Place& place : all_places()) {
    const Box there = placed(kBox, place);
    for (std::size_t own = 0; own < 3; ++own)
      CHECK(there.extent(static_cast<std::size_t>(place.axes[own])) == kBox.extent(own));
    CHECK(in_own_axes(there, place) == kBox);
  }
}

TEST_CASE("An axis that runs backwards is measured from the far side") {
  // A drawer's side, seen from the drawer's front: its length runs into the case.
  const Place place{{mm(100), mm(0), mm(500)}, {Axis::z, Axis::y, Axis::x}, {true, false, false}};
  CHECK(placed(kBox, place) == box(103, 2, 489, 133, 22, 499));
}

TEST_CASE("What lies in a group lies with it, whichever way the group is turned") {
  for (const Place& inner : all_places())
    for (const Place& outer : all_places())
      CHECK(placed(kBox, placed(inner, outer)) == placed(placed(kBox, inner), outer));
}

TEST_CASE("A slope lies within the box round it, whichever way it is turned") {
  for (std::size_t along = 0; along < 3; ++along)
    for (const Place& place : all_places()) {
      const Prism there = placed(
          Prism{along, mm(1), mm(5), {{mm(0), mm(0)}, {mm(8), mm(0)}, {mm(0), mm(3)}}}, place);
      Box own{{}, {}};
      const std::size_t u = along == 0 ? 1 : 0;
      const std::size_t v = along == 2 ? 1 : 2;
      own.low[along] = mm(1);
      own.high[along] = mm(5);
      own.high[u] = mm(8);
      own.high[v] = mm(3);
      const Box round = placed(own, place);
      const std::size_t there_u = there.along == 0 ? 1 : 0;
      const std::size_t there_v = there.along == 2 ? 1 : 2;
      CHECK(there.from == round.low[there.along]);
      CHECK(there.to == round.high[there.along]);
      for (const Corner& corner : there.outline) {
        CHECK((corner.u == round.low[there_u] || corner.u == round.high[there_u]));
        CHECK((corner.v == round.low[there_v] || corner.v == round.high[there_v]));
      }
    }
}

}  // namespace
}  // namespace haunch::test
