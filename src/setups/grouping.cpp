#include "grouping.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace haunch {
namespace {

/// No machine is set finer: what is shared out differs by the odd step.
constexpr Length kFinest = Length::from_mm_thousandths(1);

/// All that a machine is set to. Of what is glued up: which group of which item.
struct Setting {
  Step step;
  Process process;
  Cut cut;
  bool through;
  std::string profile;
  std::optional<std::size_t> machine, cutter, holding;
  std::vector<std::pair<SizeName, Length>> sizes;
  std::optional<std::pair<std::size_t, std::size_t>> group;

  auto all() const {
    return std::tie(step, process, cut, through, profile, machine, cutter, holding, sizes, group);
  }
  friend bool operator<(const Setting& a, const Setting& b) { return a.all() < b.all(); }
};

Setting setting_of(const Task& task, const ShopWay& way) {
  Setting setting{task.step,
                  task.process,
                  task.setting.cut,
                  task.setting.through,
                  task.setting.profile,
                  way.machine,
                  way.cutter,
                  way.holding,
                  {},
                  {}};
  for (const NamedSize& size : task.setting.settings)
    setting.sizes.emplace_back(size.name, nearest_multiple(size.size, kFinest));
  if (task.step == Step::together) setting.group = {task.of.item, task.group};
  return setting;
}

/// Runs settings one after the other, each with all its tasks once nothing is in their way. Where
/// settings wait for each other one of them is run twice.
class Peeling {
 public:
  Peeling(const Before& before, std::vector<std::size_t> setting_of, std::size_t settings)
      : before_(before),
        setting_of_(std::move(setting_of)),
        open_(settings),
        waits_for_(before.size()),
        then_(before.size()),
        ready_(settings),
        group_of_(before.size()) {
    for (std::size_t task = 0; task < before.size(); ++task) {
      open_[setting_of_[task]].insert(task);
      for (const std::size_t first : before[task])
        if (setting_of_[first] != setting_of_[task]) {
          ++waits_for_[task];
          then_[first].push_back(task);
        }
      if (waits_for_[task] == 0) ++ready_[setting_of_[task]];
    }
    for (std::size_t setting = 0; setting < settings; ++setting)
      offer(setting);
  }

  /// A setting of which nothing waits is run first: it need not be run again. Where there is none,
  /// each has tasks that wait for another's; the one with the most that do not is split, since
  /// those may be what the others wait for. That is a good guess, and no proof of the fewest.
  std::vector<SetupGroup> all() {
    while (true) {
      std::size_t setting = 0;
      if (!whole_.empty()) {
        setting = *whole_.begin();
      } else {
        const auto most = std::max_element(ready_.begin(), ready_.end());
        if (most == ready_.end() || *most == 0) break;
        setting = static_cast<std::size_t>(most - ready_.begin());
      }
      run(setting);
    }
    return std::move(groups_);
  }

 private:
  void offer(std::size_t setting) {
    if (!open_[setting].empty() && ready_[setting] == open_[setting].size()) whole_.insert(setting);
  }

  void run(std::size_t setting) {
    SetupGroup group;
    for (const std::size_t task : open_[setting])
      if (waits_for_[task] == 0) group.tasks.push_back(task);
    for (const std::size_t task : group.tasks) {
      open_[setting].erase(task);
      group_of_[task] = groups_.size();
    }
    ready_[setting] = 0;
    whole_.erase(setting);
    group.after = needed_by(group);
    groups_.push_back(group);
    for (const std::size_t task : group.tasks)
      for (const std::size_t then : then_[task])
        if (--waits_for_[then] == 0) {
          ++ready_[setting_of_[then]];
          offer(setting_of_[then]);
        }
  }

  std::vector<std::size_t> needed_by(const SetupGroup& group) const {
    std::set<std::size_t> needed;
    for (const std::size_t task : group.tasks)
      for (const std::size_t first : before_[task])
        if (setting_of_[first] != setting_of_[task]) needed.insert(group_of_[first]);
    return {needed.begin(), needed.end()};
  }

  const Before& before_;
  std::vector<std::size_t> setting_of_;      // of each task
  std::vector<std::set<std::size_t>> open_;  // of each setting the tasks not run
  std::vector<std::size_t> waits_for_;       // of each task, how many
  std::vector<std::vector<std::size_t>> then_;
  std::vector<std::size_t> ready_;  // of each setting, how many open tasks wait for none
  std::set<std::size_t> whole_;     // settings of which all do
  std::vector<std::size_t> group_of_;
  std::vector<SetupGroup> groups_;
};

/// How often a machine would be set were each piece finished before the next is begun.
std::int64_t piece_by_piece(const std::vector<SetupItem>& items, const std::vector<Task>& tasks,
                            const std::vector<std::size_t>& setting_of) {
  std::set<std::tuple<PieceOf, std::size_t>> each;
  std::int64_t count = 0;
  for (std::size_t task = 0; task < tasks.size(); ++task) {
    const bool is_new = each.insert({tasks[task].of, setting_of[task]}).second;
    if (is_new) count += items[tasks[task].of.item].quantity;
  }
  return count;
}

}  // namespace

Grouping group_tasks(const std::vector<SetupItem>& items, const std::vector<Task>& tasks,
                     const std::vector<Machine>& machines) {
  Grouping grouping;
  std::map<Setting, std::size_t> numbers;
  for (const Task& task : tasks) {
    grouping.ways.push_back(way_for(task, machines));
    numbers.emplace(setting_of(task, grouping.ways.back()), 0);
  }
  std::size_t next = 0;
  for (auto& [setting, number] : numbers)
    number = next++;
  std::vector<std::size_t> setting_numbers;
  for (std::size_t task = 0; task < tasks.size(); ++task)
    setting_numbers.push_back(numbers.at(setting_of(tasks[task], grouping.ways[task])));
  grouping.different = static_cast<std::int64_t>(numbers.size());
  grouping.piece_by_piece = piece_by_piece(items, tasks, setting_numbers);
  grouping.groups = Peeling(precedence(items, tasks), std::move(setting_numbers), next).all();
  return grouping;
}

}  // namespace haunch
