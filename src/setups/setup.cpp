#include "setup.h"

#include <algorithm>
#include <iterator>

#include "first_piece.h"
#include "grouping.h"
#include "joint_tasks.h"
#include "milling.h"
#include "second_face.h"
#include "sequence.h"

namespace haunch {
namespace {

class Planning {
 public:
  Planning(const std::vector<SetupItem>& items, const std::vector<Machine>& machines)
      : items_(items), machines_(machines) {}

  SetupPlan plan() {
    for (std::size_t item = 0; item < items_.size(); ++item) {
      for (Task& task : milling_tasks(items_[item], item))
        tasks_.push_back(std::move(task));
      for (Task& task : joint_tasks(items_[item], item))
        tasks_.push_back(std::move(task));
    }
    grouping_ = group_tasks(items_, tasks_, machines_);
    const Sequence sequence = fewest_stays(stops());
    SetupPlan plan;
    place(sequence.order, plan);
    tell_second_faces(plan.setups, items_);
    plan.count = {static_cast<std::int64_t>(plan.setups.size()),
                  grouping_.different,
                  grouping_.piece_by_piece,
                  static_cast<std::int64_t>(sequence.stays),
                  static_cast<std::int64_t>(machines_used_),
                  sequence.is_fewest};
    return plan;
  }

 private:
  /// What no machine does is done somewhere too: each such process at a place of its own.
  std::size_t place_of(const Task& task, const ShopWay& way) const {
    return way.machine.value_or(machines_.size() + static_cast<std::size_t>(task.process));
  }

  std::vector<Stop> stops() {
    std::vector<Stop> stops;
    std::vector<bool> used(machines_.size() + std::size(kWords<Process>));
    for (const SetupGroup& group : grouping_.groups) {
      const std::size_t first = group.tasks.front();
      const ShopWay& way = grouping_.ways[first];
      const std::size_t machine = place_of(tasks_[first], way);
      used[machine] = true;
      stops.push_back({machine, way.cutter ? *way.cutter + 1 : 0, group.after});
    }
    machines_used_ = static_cast<std::size_t>(std::count(used.begin(), used.end(), true));
    return stops;
  }

  void place(const std::vector<std::size_t>& order, SetupPlan& plan) const {
    std::vector<std::size_t> places(order.size());
    for (std::size_t at = 0; at < order.size(); ++at)
      places[order[at]] = at;
    for (const std::size_t group : order) {
      Setup setup = setup_of(grouping_.groups[group]);
      for (const std::size_t first : grouping_.groups[group].after)
        setup.after.push_back(places[first]);
      std::sort(setup.after.begin(), setup.after.end());
      setup.first_piece = first_piece_of(setup, items_);
      plan.setups.push_back(std::move(setup));
    }
  }

  Setup setup_of(const SetupGroup& group) const {
    const Task& first = tasks_[group.tasks.front()];
    const ShopWay& way = grouping_.ways[group.tasks.front()];
    Setup setup{first.step,  first.process, first.setting.cut, first.setting.settings,
                way.machine, way.cutter,    way.holding,       way.passes};
    setup.through = first.setting.through;
    setup.profile = first.setting.profile;
    for (const std::size_t task : group.tasks)
      setup.pieces.push_back(piece_of(task));
    if (first.step == Step::thickness_over)
      for (const SetupPiece& piece : setup.pieces)
        setup.rest_days = std::max(setup.rest_days, items_[piece.of.item].milling.rest_days);
    return setup;
  }

  SetupPiece piece_of(std::size_t number) const {
    const Task& task = tasks_[number];
    SetupPiece piece{task.of,           task.features,           task.goes_on_with,
                     task.setting.runs, task.setting.both_faces, {}};
    if (task.step == Step::cut) piece.horn = items_[task.of.item].wood->pieces[task.of.piece].horn;
    piece.strips = task.strips;
    piece.size = task.size;
    piece.findings = grouping_.ways[number].findings;
    return piece;
  }

  const std::vector<SetupItem>& items_;
  const std::vector<Machine>& machines_;
  std::vector<Task> tasks_;
  Grouping grouping_;
  std::size_t machines_used_ = 0;
};

}  // namespace

std::string Setup::operation() const {
  if (step != Step::cut && step != Step::fitting) return std::string(word_of(step));
  std::string word(word_of(process));
  if (cut != Cut::whole) word += "-" + std::string(word_of(cut));
  return step == Step::fitting ? word + "-after-glue-up" : word;
}

SetupPlan plan_setups(const std::vector<SetupItem>& items, const std::vector<Machine>& machines) {
  return Planning(items, machines).plan();
}

}  // namespace haunch
