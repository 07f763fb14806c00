#include "sequence.h"

#include <algorithm>
#include <set>
#include <utility>

namespace haunch {
namespace {

/// What is done of all stops, and in which order.
struct State {
  std::vector<bool> done;
  std::vector<std::size_t> waits_for;  // of each stop, how many are not done
  std::vector<std::size_t> order;
};

class Search {
 public:
  explicit Search(const std::vector<Stop>& stops) : stops_(stops), then_(stops.size()) {
    for (std::size_t stop = 0; stop < stops.size(); ++stop)
      for (const std::size_t first : stops[stop].after)
        then_[first].push_back(stop);
  }

  /// Stay by stay. It is enough to ask to which machine next: who stops a stay sooner has done a
  /// part of what could be done in it, and nothing is ever hindered by what was done before. So the
  /// first state that is at its end has the fewest stays, if none was dropped on the way.
  Sequence run() {
    std::vector<State> states{begin()};
    Sequence best;
    bool all_kept = true;
    while (states.front().order.size() < stops_.size()) {
      states = after_a_stay(states);
      ++best.stays;
      all_kept = all_kept && states.size() <= kStates;
      keep_furthest(states);
    }
    best.order = states.front().order;
    best.is_fewest = all_kept || best.stays == machines();
    return best;
  }

 private:
  State begin() const {
    State state{std::vector<bool>(stops_.size()), {}, {}};
    for (const Stop& stop : stops_)
      state.waits_for.push_back(stop.after.size());
    return state;
  }

  std::size_t machines() const {
    std::set<std::size_t> all;
    for (const Stop& stop : stops_)
      all.insert(stop.machine);
    return all.size();
  }

  /// The furthest first: once one is at the end it is the best.
  static void keep_furthest(std::vector<State>& states) {
    std::stable_sort(states.begin(), states.end(), [](const State& a, const State& b) {
      return a.order.size() > b.order.size();
    });
    if (states.size() > kStates) states.resize(kStates);
  }

  /// States after a stay at each machine where something can be done. Of those that have done the
  /// same one is kept.
  std::vector<State> after_a_stay(const std::vector<State>& states) const {
    std::vector<State> next;
    std::set<std::vector<bool>> seen;
    for (const State& state : states)
      for (const std::size_t machine : machines_ready(state)) {
        State after = state;
        stay(after, machine);
        if (seen.insert(after.done).second) next.push_back(std::move(after));
      }
    return next;
  }

  bool is_ready(const State& state, std::size_t stop) const {
    return !state.done[stop] && state.waits_for[stop] == 0;
  }

  std::set<std::size_t> machines_ready(const State& state) const {
    std::set<std::size_t> ready;
    for (std::size_t stop = 0; stop < stops_.size(); ++stop)
      if (is_ready(state, stop)) ready.insert(stops_[stop].machine);
    return ready;
  }

  /// All that can be done there, the cutter changed as late as can be.
  void stay(State& state, std::size_t machine) const {
    std::set<std::pair<std::size_t, std::size_t>> ready;  // by cutter, then in their order
    for (std::size_t stop = 0; stop < stops_.size(); ++stop)
      if (stops_[stop].machine == machine && is_ready(state, stop))
        ready.insert({stops_[stop].cutter, stop});
    std::size_t cutter = ready.begin()->first;
    while (!ready.empty()) {
      auto its = ready.lower_bound({cutter, 0});
      if (its == ready.end() || its->first != cutter) its = ready.begin();
      const auto [its_cutter, stop] = *its;
      ready.erase(its);
      cutter = its_cutter;
      state.done[stop] = true;
      state.order.push_back(stop);
      for (const std::size_t then : then_[stop])
        if (--state.waits_for[then] == 0 && stops_[then].machine == machine)
          ready.insert({stops_[then].cutter, then});
    }
  }

  const std::vector<Stop>& stops_;
  std::vector<std::vector<std::size_t>> then_;
};

}  // namespace

Sequence fewest_stays(const std::vector<Stop>& stops) {
  if (stops.empty()) return {{}, 0, true};
  return Search(stops).run();
}

}  // namespace haunch
