// In which order set-ups come: against every order there is.
#include "sequence.h"

#include <algorithm>
#include <numeric>

#include "../catch.h"
#include "../wood/random_spec.h"

namespace haunch {
namespace {

using test::Dice;

std::size_t stays_of(const std::vector<Stop>& stops, const std::vector<std::size_t>& order) {
  std::size_t stays = 0;
  for (std::size_t at = 0; at < order.size(); ++at)
    if (at == 0 || stops[order[at]].machine != stops[order[at - 1]].machine) ++stays;
  return stays;
}

bool is_allowed(const std::vector<Stop>& stops, const std::vector<std::size_t>& order) {
  std::vector<std::size_t> place(order.size());
  for (std::size_t at = 0; at < order.size(); ++at)
    place[order[at]] = at;
  for (std::size_t stop = 0; stop < stops.size(); ++stop)
    for (const std::size_t first : stops[stop].after)
      if (place[first] > place[stop]) return false;
  return true;
}

std::size_t fewest_of_all_orders(const std::vector<Stop>& stops) {
  std::vector<std::size_t> order(stops.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::size_t fewest = stops.size();
  do {
    if (is_allowed(stops, order)) fewest = std::min(fewest, stays_of(stops, order));
  } while (std::next_permutation(order.begin(), order.end()));
  return fewest;
}

std::vector<Stop> random_stops(Dice& dice) {
  std::vector<Stop> stops(static_cast<std::size_t>(dice.between(1, 7)));
  for (std::size_t stop = 0; stop < stops.size(); ++stop) {
    stops[stop].machine = static_cast<std::size_t>(dice.between(0, 2));
    stops[stop].cutter = static_cast<std::size_t>(dice.between(0, 1));
    for (std::size_t first = 0; first < stop; ++first)
      if (dice.chance(30)) stops[stop].after.push_back(first);
  }
  return stops;
}

TEST_CASE("No order of a few set-ups comes to its machines less often than the one that is told") {
  for (std::uint64_t seed = 1; seed <= 300; ++seed) {
    INFO("seed " << seed);
    Dice dice(seed);
    const std::vector<Stop> stops = random_stops(dice);
    const Sequence sequence = fewest_stays(stops);
    REQUIRE(sequence.order.size() == stops.size());
    CHECK(is_allowed(stops, sequence.order));
    CHECK(sequence.stays == stays_of(stops, sequence.order));
    CHECK(sequence.is_fewest);
    CHECK(sequence.stays == fewest_of_all_orders(stops));
  }
}

TEST_CASE("At one machine all of a cutter is done before the next is put in, where that can be") {
  const std::vector<Stop> stops{{0, 1, {}}, {0, 2, {}}, {0, 1, {}}, {0, 2, {0}}};
  CHECK(fewest_stays(stops).order == std::vector<std::size_t>{0, 2, 1, 3});
}

TEST_CASE("Nothing to do takes no order") {
  CHECK(fewest_stays({}).order.empty());
}

}  // namespace
}  // namespace haunch
