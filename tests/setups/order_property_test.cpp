// Three hundred random orders (times HAUNCH_TEST_EFFORT): doors, cabinets, face frames and drawers
// together. HAUNCH_TEST_SEED=n runs the one with that seed again.

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "../vocabulary.h"
#include "../wood/property_runs.h"
#include "../wood/random_cabinet.h"
#include "../wood/random_spec.h"
#include "setups_report.h"

namespace haunch::test {
namespace {

std::string random_item(Dice& dice) {
  const auto seed = static_cast<std::uint64_t>(dice.between(1, 1'000'000));
  if (dice.chance(40)) return random_cabinet(seed).json;
  return to_json(random_door(seed, Keys::some), {Unit::mm, seed, false, true});
}

/// Nothing where none of it can be worked.
std::vector<ItemReport> random_order(Dice& dice) {
  std::vector<ItemReport> items;
  const std::int64_t count = dice.between(1, 5);
  for (std::int64_t i = 0; i < count; ++i) {
    JobReading reading =
        read_job(value_of(random_item(dice)), nullptr, fmt::format("item-{}", i + 1));
    if (!reading.job || !reading.problems.empty()) continue;
    reading.job->id = fmt::format("item-{}", i + 1);
    ItemOutcome outcome = report_item(std::move(reading.job), {.checks = false, .making = true});
    if (outcome.report) items.push_back(std::move(*outcome.report));
  }
  return items;
}

/// Where each piece's tasks of some sort are run, by place in the order.
using Places = std::map<std::pair<std::size_t, std::size_t>, std::vector<std::size_t>>;

struct Order {
  const SetupsReport& report;
  std::string& wrong;

  void every_feature_once() const {
    std::map<std::tuple<std::size_t, std::size_t, std::size_t>, int> made;
    for (const Setup& setup : report.plan.setups)
      for (const SetupPiece& piece : setup.pieces)
        for (const std::size_t feature : piece.features)
          ++made[{piece.of.item, piece.of.piece, feature}];
    for (std::size_t item = 0; item < report.items.size(); ++item) {
      const auto& pieces = report.items[item].wood.pieces;
      for (std::size_t piece = 0; piece < pieces.size(); ++piece)
        for (std::size_t feature = 0; feature < pieces[piece].features.size(); ++feature)
          if (const int times = made[{item, piece, feature}]; times != 1)
            wrong += fmt::format("{} of {} is made {} times\n",
                                 word_of(pieces[piece].features[feature].kind), pieces[piece].name,
                                 times);
    }
  }

  void after_what_it_needs() const {
    for (std::size_t at = 0; at < report.plan.setups.size(); ++at)
      for (const std::size_t first : report.plan.setups[at].after)
        if (first >= at) wrong += fmt::format("{} comes after {}\n", setup_id(first), setup_id(at));
  }

  Places places_of(Step step) const {
    Places places;
    for (std::size_t at = 0; at < report.plan.setups.size(); ++at)
      if (report.plan.setups[at].step == step)
        for (const SetupPiece& piece : report.plan.setups[at].pieces)
          places[{piece.of.item, piece.of.piece}].push_back(at);
    return places;
  }

  void step_before(Step first, Step then) const {
    const Places before = places_of(first);
    for (const auto& [piece, places] : places_of(then))
      if (const auto its = before.find(piece); its != before.end())
        if (its->second.back() >= places.front())
          wrong += fmt::format("{} after {}\n", word_of(first), word_of(then));
  }

  /// Told once more: which feature of a piece is made before which.
  void kind_before(FeatureKind first, FeatureKind then) const {
    std::map<std::pair<std::size_t, std::size_t>, std::size_t> last;
    for (std::size_t at = 0; at < report.plan.setups.size(); ++at)
      for (const SetupPiece& piece : report.plan.setups[at].pieces) {
        const auto& features = report.piece_of(piece).features;
        for (const Run& run : piece.runs) {
          const std::pair of{piece.of.item, piece.of.piece};
          if (features[run.feature].kind == then) last[of] = at;
          if (features[run.feature].kind == first && last.contains(of) && last[of] < at)
            wrong += fmt::format("{} after {} on {}\n", word_of(first), word_of(then),
                                 report.piece_of(piece).name);
        }
      }
  }

  void none_twice() const {
    std::set<std::string> settings;
    for (const Setup& setup : report.plan.setups) {
      std::string all = fmt::format("{} {} {} {}", setup.operation(), report.machine_name(setup),
                                    report.cutter_name(setup), report.holding_name(setup));
      for (const NamedSize& size : setup.settings)
        all += fmt::format(" {} {}", word_of(size.name), size.size.steps());
      if (setup.through) all += " through";
      if (setup.step == Step::together)
        all += fmt::format(" {} {}", setup.pieces.front().of.item,
                           report.piece_of(setup.pieces.front()).group);
      if (!settings.insert(all).second) wrong += "twice: " + all + "\n";
    }
  }

  void counts_hold() const {
    const SetupCount& count = report.plan.count;
    if (count.setups < count.lower_bound) wrong += "fewer set-ups than the bound\n";
    if (count.piece_by_piece < count.setups) wrong += "piece by piece takes fewer set-ups\n";
    if (count.machine_changes < count.fewest_machine_changes)
      wrong += "fewer changes than machines\n";
  }
};

TEST_CASE("In a random order every feature is made once, after all that it needs") {
  std::uint64_t at_bound = 0, orders = 0;
  const Tally tally = run_over(seeds_for(300), [&](std::uint64_t seed, std::string& wrong) {
    Dice dice(seed);
    std::vector<ItemReport> items = random_order(dice);
    if (items.empty()) return Outcome::refused;
    const SetupsReport report = report_setups(std::move(items), {}, "", Unit::mm);
    const Order order{report, wrong};
    order.every_feature_once();
    order.after_what_it_needs();
    constexpr Step kSteps[] = {
        Step::length_over,    Step::width_over,      Step::face_and_edge_over,
        Step::thickness_over, Step::boards_together, Step::thickness,
        Step::width,          Step::length,          Step::cut,
        Step::together,       Step::fitting};
    for (std::size_t i = 1; i < std::size(kSteps); ++i)
      order.step_before(kSteps[i - 1], kSteps[i]);
    order.kind_before(FeatureKind::mortise, FeatureKind::groove);
    order.kind_before(FeatureKind::tenon, FeatureKind::moulding);
    order.kind_before(FeatureKind::arch, FeatureKind::groove);
    order.kind_before(FeatureKind::groove, FeatureKind::raise);
    order.none_twice();
    order.counts_hold();
    ++orders;
    if (report.plan.count.setups == report.plan.count.lower_bound) ++at_bound;
    return Outcome::worked;
  });
  require_worked_share(tally, 60);
  CHECK(at_bound * 10 >= orders * 9);
}

}  // namespace
}  // namespace haunch::test
