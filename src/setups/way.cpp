#include "way.h"

#include <algorithm>
#include <iterator>
#include <numeric>
#include <tuple>
#include <utility>

#include "cut_asked.h"

namespace haunch {
namespace {

/// How often a stretch is gone over by what takes so much at a time.
int times(Length all, std::optional<Length> each) {
  if (!each || all <= *each) return 1;
  return static_cast<int>((all.steps() + each->steps() - 1) / each->steps());
}

class CutterChoice {
 public:
  CutterChoice(const std::vector<Cutter>& cutters, const CutAsked& asked)
      : cutters_(cutters), asked_(asked) {}

  void make(ShopWay& way) const {
    if (cutters_.empty()) return;
    const std::vector<std::size_t> shaped = of_its_shape();
    const std::vector<std::size_t> fitting =
        those(shaped, [&](const Cutter& cutter) { return goes_in(cutter); });
    if (fitting.empty()) return lack(way, shaped);
    const std::vector<std::size_t> reaching =
        those(fitting, [&](const Cutter& cutter) { return reaches(cutter); });
    if (reaching.empty()) return fall_short(way, fitting);
    way.cutter = *std::min_element(
        reaching.begin(), reaching.end(),
        [&](std::size_t a, std::size_t b) { return rank(cutters_[a]) < rank(cutters_[b]); });
    way.passes = passes(cutters_[*way.cutter]);
  }

 private:
  template <typename Condition>
  std::vector<std::size_t> those(const std::vector<std::size_t>& among, Condition is) const {
    std::vector<std::size_t> numbers;
    std::copy_if(among.begin(), among.end(), std::back_inserter(numbers),
                 [&](std::size_t number) { return is(cutters_[number]); });
    return numbers;
  }

  /// Where there is none, straight ones, unless it is to be one of the shape.
  std::vector<std::size_t> of_its_shape() const {
    std::vector<std::size_t> all(cutters_.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    const auto shaped = [&](std::string_view shape) {
      return those(all, [&](const Cutter& cutter) {
        const bool named =
            shape_of(cutter.name) == shape || (!shape.empty() && cutter.name.starts_with(shape));
        return named && !(asked_.round_ends && is_chisel(cutter.name));
      });
    };
    std::vector<std::size_t> its = shaped(asked_.shape);
    return its.empty() && !asked_.shape_needed ? shaped({}) : its;
  }

  bool goes_in(const Cutter& cutter) const {
    if (!cutter.width || !asked_.width) return true;
    if (asked_.fit == WidthAsked::exactly) return *cutter.width == *asked_.width;
    return asked_.fit == WidthAsked::any || *cutter.width <= *asked_.width;
  }

  bool reaches(const Cutter& cutter) const {
    return !cutter.reach || *cutter.reach >= asked_.reach;
  }

  int passes(const Cutter& cutter) const {
    const int across = asked_.width ? times(*asked_.width, cutter.width) : 1;
    return across * times(asked_.depth, cutter.step);
  }

  /// The lowest is taken.
  std::tuple<bool, int, Length> rank(const Cutter& cutter) const {
    const bool just = asked_.width && cutter.width == asked_.width;
    return {!just, passes(cutter), -cutter.width.value_or(Length())};
  }

  /// None goes in: the nearest is told of.
  void lack(ShopWay& way, const std::vector<std::size_t>& shaped) const {
    if (shaped.empty()) return way.findings.push_back({WayFault::cutter_missing, {}, {}});
    const auto off = [&](std::size_t number) {
      const Length more = *cutters_[number].width - *asked_.width;
      return std::max(more, -more);
    };
    way.cutter = *std::min_element(shaped.begin(), shaped.end(),
                                   [&](std::size_t a, std::size_t b) { return off(a) < off(b); });
    const bool exactly = asked_.fit == WidthAsked::exactly;
    way.findings.push_back({exactly ? WayFault::cutter_missing : WayFault::cutter_wide,
                            *cutters_[*way.cutter].width, *asked_.width});
  }

  void fall_short(ShopWay& way, const std::vector<std::size_t>& fitting) const {
    way.cutter = *std::max_element(
        fitting.begin(), fitting.end(),
        [&](std::size_t a, std::size_t b) { return cutters_[a].reach < cutters_[b].reach; });
    const Cutter& longest = cutters_[*way.cutter];
    way.passes = passes(longest);
    way.findings.push_back({WayFault::cutter_short, *longest.reach, asked_.reach});
  }

  const std::vector<Cutter>& cutters_;
  const CutAsked& asked_;
};

/// What keeps a piece out of a way of holding it.
std::vector<WayFinding> against(const Holding& holding, const Task& task) {
  std::vector<WayFinding> findings;
  for (std::size_t along = 0; along < 3; ++along) {
    const SizeRange& range = holding.size[along];
    if (range.least && task.size[along] < *range.least)
      findings.push_back({WayFault::not_held, task.size[along], *range.least, along});
    if (range.most && task.size[along] > *range.most)
      findings.push_back({WayFault::not_held, task.size[along], *range.most, along});
  }
  const bool runs_along = task.process == Process::groove || task.process == Process::rebate ||
                          task.process == Process::mould;
  if (runs_along && task.setting.has(SizeName::along_curve) && holding.worked != WorkedLooks::up)
    findings.push_back({WayFault::curved, {}, {}});
  const bool stands =
      holding.worked == WorkedLooks::up && !task.setting.runs.empty() && task.side().into == 0;
  if (stands && holding.room_below && task.size[0] > *holding.room_below)
    findings.push_back({WayFault::no_room, task.size[0], *holding.room_below});
  return findings;
}

/// The first that takes it; else the one that the least is against, of which the first is told.
void hold(ShopWay& way, const Machine& machine, const Task& task) {
  std::vector<WayFinding> least;
  for (std::size_t number = 0; number < machine.holds.size(); ++number) {
    std::vector<WayFinding> its = against(machine.holds[number], task);
    if (way.holding && its.size() >= least.size()) continue;
    way.holding = number;
    least = std::move(its);
    if (least.empty()) return;
  }
  if (!least.empty()) way.findings.push_back(least.front());
}

void mind_smallest(ShopWay& way, const Machine& machine, const Task& task) {
  constexpr WayFault kFaults[] = {WayFault::piece_short, WayFault::piece_narrow,
                                  WayFault::piece_thin};
  for (std::size_t along = 0; along < 3; ++along)
    if (machine.smallest[along] && task.size[along] < *machine.smallest[along])
      way.findings.push_back({kFaults[along], task.size[along], *machine.smallest[along], along});
}

/// A sheet is run along its longer side, wherever its length lies.
Task as_run(Task task) {
  if (task.process == Process::cut_sheet && task.size[0] < task.size[1])
    std::swap(task.size[0], task.size[1]);
  return task;
}

ShopWay way_at(const Machine& machine, const Task& task) {
  ShopWay way;
  hold(way, machine, task);
  mind_smallest(way, machine, task);
  const Holding* held = way.holding ? &machine.holds[*way.holding] : nullptr;
  const CutAsked asked = cut_asked(task, held);
  CutterChoice(machine.cutters, asked).make(way);
  return way;
}

bool does(const Machine& machine, Process process) {
  return std::find(machine.does.begin(), machine.does.end(), process) != machine.does.end();
}

ShopWay first_way(const Task& task, const std::vector<Machine>& machines) {
  ShopWay best;
  for (std::size_t number = 0; number < machines.size(); ++number) {
    if (!does(machines[number], task.process)) continue;
    ShopWay way = way_at(machines[number], task);
    if (best.machine && way.findings.size() >= best.findings.size()) continue;
    best = std::move(way);
    best.machine = number;
    if (best.findings.empty()) return best;
  }
  if (!best.machine) best.findings.push_back({WayFault::no_machine, {}, {}});
  return best;
}

/// With which other size of the cut or the piece the machine may do after all: the nearest cutter's
/// own, or for a short piece the length that runs safely, to be cut off after, as manuals of
/// spindle moulders have it (see usual_machines.cpp). Nothing where none would help. Whether it
/// does is for the caller to try.
std::optional<NamedSize> other_size(const WayFinding& finding, const Task& task) {
  switch (finding.fault) {
    case WayFault::cutter_wide:
      return NamedSize{SizeName::width, finding.value};
    case WayFault::cutter_missing:
      if (finding.value == Length()) return {};
      return NamedSize{SizeName::diameter, finding.value};
    case WayFault::cutter_short:
      if (!task.setting.has(SizeName::depth)) return {};
      return NamedSize{SizeName::depth, finding.value * (task.setting.through ? 2 : 1)};
    case WayFault::piece_short:
      // At its end nothing can be worked before it is cut to length.
      if (task.side().into == 0 && !task.setting.runs.empty()) return {};
      return NamedSize{SizeName::length, finding.limit};
    default:
      return {};
  }
}

Task with(Task task, const NamedSize& other) {
  if (other.name == SizeName::length) {
    task.size[0] = other.size;
    return task;
  }
  for (NamedSize& size : task.setting.settings)
    if (size.name == other.name) size.size = other.size;
  return task;
}

}  // namespace

ShopWay way_for(const Task& asked, const std::vector<Machine>& machines) {
  const Task task = as_run(asked);
  ShopWay way = first_way(task, machines);
  if (!way.machine) return way;
  for (WayFinding& finding : way.findings) {
    const std::optional<NamedSize> other = other_size(finding, task);
    if (other && way_at(machines[*way.machine], with(task, *other)).findings.empty())
      finding.remedy = other;
  }
  return way;
}

}  // namespace haunch
