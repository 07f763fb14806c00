#include "precedence.h"

#include <algorithm>
#include <iterator>
#include <map>

namespace haunch {
namespace {

struct Pair {
  FeatureKind first, then;
};

/// What of one piece is worked before what. Mortises first, tenons are set to them; what is cut
/// across an end before what runs along the grain, which takes the torn corner away; curves before
/// what follows them; mouldings before they are mitred; the groove before the raise beside it,
/// while the face is still whole to lie on.
///
/// Mortises before grooves: Griffith, Essentials of Woodworking (1908), section 108; Noyes,
/// Handwork in Wood (1910), ploughs first. Copes before mouldings: Woodworker's Journal. All others
/// are trade practice.
constexpr Pair kPairs[] = {
    {FeatureKind::mortise, FeatureKind::tenon},
    {FeatureKind::mortise, FeatureKind::groove},
    {FeatureKind::mortise, FeatureKind::rebate},
    {FeatureKind::mortise, FeatureKind::glass_rebate},
    {FeatureKind::mortise, FeatureKind::moulding},
    {FeatureKind::mortise, FeatureKind::arch},
    {FeatureKind::mortise, FeatureKind::taper},
    {FeatureKind::mortise, FeatureKind::pin_hole},
    {FeatureKind::dowel_hole, FeatureKind::groove},
    {FeatureKind::dowel_hole, FeatureKind::rebate},
    {FeatureKind::dowel_hole, FeatureKind::glass_rebate},
    {FeatureKind::dowel_hole, FeatureKind::moulding},
    {FeatureKind::scribed_end, FeatureKind::mortise},
    {FeatureKind::scribed_end, FeatureKind::dowel_hole},
    {FeatureKind::scribed_end, FeatureKind::moulding},
    {FeatureKind::haunching, FeatureKind::tenon},
    {FeatureKind::haunching, FeatureKind::glass_rebate},
    {FeatureKind::haunching, FeatureKind::moulding},
    {FeatureKind::tenon, FeatureKind::groove},
    {FeatureKind::tenon, FeatureKind::rebate},
    {FeatureKind::tenon, FeatureKind::glass_rebate},
    {FeatureKind::tenon, FeatureKind::moulding},
    {FeatureKind::tenon, FeatureKind::arch},
    {FeatureKind::tenon, FeatureKind::arched_top},
    {FeatureKind::tenon, FeatureKind::pin_hole},
    {FeatureKind::lap, FeatureKind::groove},
    {FeatureKind::lap, FeatureKind::rebate},
    {FeatureKind::lap, FeatureKind::glass_rebate},
    {FeatureKind::lap, FeatureKind::moulding},
    {FeatureKind::mitre, FeatureKind::spline_slot},
    {FeatureKind::mitre, FeatureKind::groove},
    {FeatureKind::housing, FeatureKind::groove},
    {FeatureKind::housing, FeatureKind::rebate},
    {FeatureKind::tails, FeatureKind::sockets},
    {FeatureKind::tails, FeatureKind::groove},
    {FeatureKind::sockets, FeatureKind::groove},
    {FeatureKind::fingers, FeatureKind::groove},
    {FeatureKind::arch, FeatureKind::groove},
    {FeatureKind::arch, FeatureKind::rebate},
    {FeatureKind::arch, FeatureKind::glass_rebate},
    {FeatureKind::arch, FeatureKind::moulding},
    {FeatureKind::groove, FeatureKind::raise},
    {FeatureKind::groove, FeatureKind::notch},
    {FeatureKind::rebate, FeatureKind::raise},
    {FeatureKind::moulding, FeatureKind::moulding_mitre},
    {FeatureKind::raise, FeatureKind::arched_top},
    {FeatureKind::lip_rebate, FeatureKind::gain},
    {FeatureKind::meeting_rebate, FeatureKind::lock_mortise},
    {FeatureKind::planed_taper, FeatureKind::bevel},
    {FeatureKind::planed_taper, FeatureKind::gain},
    {FeatureKind::bevel, FeatureKind::lock_mortise},
    {FeatureKind::lock_mortise, FeatureKind::bore},
    {FeatureKind::lock_mortise, FeatureKind::faceplate},
    {FeatureKind::strike_mortise, FeatureKind::strike_plate},
};

bool comes_first(FeatureKind first, FeatureKind then) {
  return std::any_of(std::begin(kPairs), std::end(kPairs),
                     [&](const Pair& it) { return it.first == first && it.then == then; });
}

class Precedence {
 public:
  Precedence(const std::vector<SetupItem>& items, const std::vector<Task>& tasks)
      : items_(items), tasks_(tasks), before_(tasks.size()) {
    for (std::size_t task = 0; task < tasks.size(); ++task) {
      of_piece_[tasks[task].of].push_back(task);
      if (tasks[task].step == Step::together)
        of_group_[{tasks[task].of.item, tasks[task].group}].push_back(task);
    }
  }

  Before all() {
    for (const auto& [piece, its] : of_piece_)
      along(its);
    for (std::size_t task = 0; task < tasks_.size(); ++task)
      mortise_first(task);
    for (const auto& [group, its] : of_group_)
      parts_first(group.first, group.second);
    for (auto& each : before_) {
      std::sort(each.begin(), each.end());
      each.erase(std::unique(each.begin(), each.end()), each.end());
    }
    return std::move(before_);
  }

 private:
  using GroupOf = std::pair<std::size_t, std::size_t>;  // of which item, which

  /// Step by step, each after all of the one before; of cuts some after others.
  void along(const std::vector<std::size_t>& its) {
    for (const std::size_t then : its)
      for (const std::size_t first : its)
        if (goes_before(tasks_[first], tasks_[then])) before_[then].push_back(first);
  }

  static bool goes_before(const Task& first, const Task& then) {
    if (first.step != then.step) return first.step < then.step;
    if (first.step == Step::fitting && first.process == Process::crosscut)
      return then.process != Process::crosscut;  // places are told from ends without horns
    const bool is_cut = first.step == Step::cut || first.step == Step::fitting;
    return is_cut && comes_first(first.setting.makes, then.setting.makes);
  }

  /// A tenon is set by a trial in its mortise; what is fitted waits for all of its group.
  void mortise_first(std::size_t number) {
    const Task& task = tasks_[number];
    if (task.step == Step::fitting) wait_for(number, {task.of.item, task.group});
    if (task.process != Process::tenon && task.process != Process::cope) return;
    for (const Run& run : task.setting.runs) {
      if (!run.joint) continue;
      const Joint& joint = items_[task.of.item].wood->joints[*run.joint];
      for (const std::size_t other : of_piece_[{task.of.item, joint.receives}])
        if (tasks_[other].process == Process::mortise && serves(tasks_[other], *run.joint))
          before_[number].push_back(other);
    }
  }

  static bool serves(const Task& task, std::size_t joint) {
    return std::any_of(task.setting.runs.begin(), task.setting.runs.end(),
                       [&](const Run& run) { return run.joint == joint; });
  }

  void wait_for(std::size_t task, const GroupOf& group) {
    const auto& its = of_group_[group];
    before_[task].insert(before_[task].end(), its.begin(), its.end());
  }

  /// What is put together of other groups needs them whole.
  void parts_first(std::size_t item, std::size_t group) {
    const SetupItem& of = items_[item];
    for (const GroupOrder& order : of.orders) {
      if (order.group != group) continue;
      for (const AssemblyStep& step : order.steps)
        for (const std::size_t piece : step.pieces)
          if (const std::size_t part = of.wood->pieces[piece].group; part != group)
            for (const std::size_t task : of_group_[{item, group}])
              wait_for(task, {item, part});
    }
  }

  const std::vector<SetupItem>& items_;
  const std::vector<Task>& tasks_;
  Before before_;
  std::map<PieceOf, std::vector<std::size_t>> of_piece_;
  std::map<GroupOf, std::vector<std::size_t>> of_group_;
};

}  // namespace

Before precedence(const std::vector<SetupItem>& items, const std::vector<Task>& tasks) {
  return Precedence(items, tasks).all();
}

}  // namespace haunch
