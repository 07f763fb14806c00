#include "setups_change.h"

#include <map>
#include <tuple>

#include "machine_sets.h"
#include "making_change.h"
#include "order_marks.h"
#include "setups_words.h"
#include "succession.h"

namespace haunch {
namespace {

SetupTold setup_told(const SetupsReport& report, const Setup& setup) {
  SetupTold told{setup.settings,
                 report.machine_name(setup),
                 report.cutter_name(setup),
                 report.holding_name(setup),
                 setup.passes,
                 {},
                 {},
                 {}};
  if (setup.first_piece && setup.first_piece->least && setup.first_piece->most) {
    told.under = setup.first_piece->wanted - *setup.first_piece->least;
    told.over = *setup.first_piece->most - setup.first_piece->wanted;
  }
  for (const SetupPiece& piece : setup.pieces) {
    const std::string& mark = report.piece_of(piece).mark;
    add_once(told.marks,
             report.items.size() == 1 ? mark : order_mark(report.item_of(piece).job->id, mark));
  }
  return told;
}

Changes changes_of(const SetupTold& was, const SetupTold& is) {
  Changes changes;
  changes.add(was.settings, is.settings);
  changes.add("machine", was.machine, is.machine);
  changes.add("cutter", was.cutter, is.cutter);
  changes.add("held", was.holding, is.holding);
  changes.add("passes", std::to_string(was.passes), std::to_string(is.passes));
  changes.add("under_on_first_piece", was.under, is.under);
  changes.add("over_on_first_piece", was.over, is.over);
  return changes;
}

/// All of one order, told as those that go or come.
std::vector<SetupChange> told_of(const SetupsReport& report,
                                 std::optional<SetupTold> SetupChange::*side) {
  std::vector<SetupChange> all;
  for (const Setup& setup : report.plan.setups) {
    all.push_back({setup.operation(), operation_words(setup), {}, {}, {}});
    all.back().*side = setup_told(report, setup);
  }
  return all;
}

/// What is run on a set-up, known again in another order: the operation, the item, of a single one
/// whatever it is called, the piece, its side, and what comes there.
using RunKey = std::tuple<std::string, std::string, std::string, std::size_t, bool, std::string>;

std::vector<RunKey> keys_of(const SetupsReport& report, const Setup& setup) {
  std::vector<RunKey> keys;
  for (const SetupPiece& piece : setup.pieces) {
    const Assembly& wood = report.item_of(piece).wood;
    const std::string item = report.items.size() == 1 ? "" : report.item_of(piece).job->id;
    const auto add = [&](WorkedSide side, std::string comes) {
      keys.emplace_back(setup.operation(), item, key_of(wood, report.piece_of(piece)), side.into,
                        side.from_high, std::move(comes));
    };
    if (piece.runs.empty()) add({}, {});
    for (const Run& run : piece.runs)
      add(run.side, run.joint ? key_of(wood, wood.pieces[wood.joints[*run.joint].enters]) : "");
  }
  return keys;
}

std::vector<Link> links_between(const SetupsReport& was, const SetupsReport& is) {
  std::multimap<RunKey, std::size_t> before;
  for (std::size_t number = 0; number < was.plan.setups.size(); ++number)
    for (RunKey& key : keys_of(was, was.plan.setups[number]))
      before.emplace(std::move(key), number);
  std::vector<Link> links;
  for (std::size_t number = 0; number < is.plan.setups.size(); ++number)
    for (const RunKey& key : keys_of(is, is.plan.setups[number]))
      for (auto [its, end] = before.equal_range(key); its != end; ++its)
        links.push_back({its->second, number});
  return links;
}

}  // namespace

SetupsChange setups_change(const SetupsReport& was, const SetupsReport& is) {
  const std::vector<SetupChange> before = told_of(was, &SetupChange::was);
  const std::vector<SetupChange> after = told_of(is, &SetupChange::is);
  const auto same = [&](std::size_t number, std::size_t other) {
    return before[number].operation == after[other].operation &&
           changes_of(*before[number].was, *after[other].is).empty();
  };
  const Succession found = succession_of(before.size(), after.size(), links_between(was, is), same);
  SetupsChange change{{before.size(), after.size(), 0}, {}};
  for (std::size_t number = 0; number < after.size(); ++number) {
    if (found.stays[number]) {
      ++change.setups.same;
      continue;
    }
    change.changed.push_back(after[number]);
    if (!found.from[number]) continue;
    SetupChange& both = change.changed.back();
    both.was = before[*found.from[number]].was;
    both.changes = changes_of(*both.was, *both.is);
  }
  for (const std::size_t number : found.goes)
    change.changed.push_back(before[number]);
  return change;
}

}  // namespace haunch
