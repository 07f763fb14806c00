#include "run_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <utility>

#include "rounding.h"
#include "run_chains.h"

namespace haunch {
namespace {

using What = RunEntry::What;

std::vector<Length> sizes_of(const Spec& spec, Key list, SizeKey item) {
  std::vector<Length> all;
  for (const KeyValues& its : spec[list].items)
    all.push_back(its.size(item).value_or(Length()));
  return all;
}

/// On the straight line from one reading to the next.
Length between_readings(Length at, Length low, Length low_value, Length high, Length high_value) {
  const double share =
      static_cast<double>((at - low).steps()) / static_cast<double>((high - low).steps());
  return low_value + nearest_step(static_cast<double>((high_value - low_value).steps()) * share);
}

class RunPlanner {
 public:
  explicit RunPlanner(const RunSpec& spec) : spec_(spec), ledger_(spec.own, kRunRoot) {}

  PlannedRun planned() {
    ledger_.note_names();
    settle_corners();
    settle_wall();
    settle_sizes();
    settle_floor();
    demand_cabinets();
    if (ledger_.clean()) {
      list_members();
      close_ends();
      place();
      settle_depth();
      plan_.worktop = plan_worktop(spec_, plan_, ledger_);
      plan_.toe = plan_toe_board(spec_, plan_, ledger_);
      plan_.frames = plan_frames(spec_, plan_, ledger_);
    }
    planned_.take(ledger_);
    if (planned_.problems.empty()) planned_.chains = chains_of(plan_, spec_);
    return std::move(planned_);
  }

 private:
  void settle_wall();
  void settle_corners();
  void settle_sizes();
  void settle_floor();
  void demand_cabinets();
  void list_members();
  void leave_blind();
  void close_corners();
  void close_ends();
  void share_out(Length left_over);
  void place();
  void settle_depth();
  Length before(std::size_t member) const;
  Length used() const;
  bool keeps_width(std::size_t member) const;

  const RunSpec& spec_;
  Ledger ledger_;
  PlannedRun planned_;
  WallRunPlan& plan_ = planned_.plan;
};

void RunPlanner::settle_wall() {
  RunWall& wall = plan_.wall;
  const std::vector<Length> lengths = sizes_of(spec_.own, "run.wall.lengths", "run.wall.lengths[]");
  std::vector<Length> at = sizes_of(spec_.own, "run.wall.at", "run.wall.at[]");
  at.resize(lengths.size());
  for (std::size_t i = 0; i < lengths.size(); ++i)
    wall.readings.push_back({at[i], lengths[i]});
  wall.least = *std::min_element(lengths.begin(), lengths.end());
  const auto end = [&](WordKey<RunEnd> key, bool right) {
    return plan_.corners[right ? 1 : 0]
               ? RunEnd::corner
               : ledger_.choose<RunEnd>(key, RunEnd::wall, "usual where nothing is said");
  };
  wall.left = end("run.wall.left", false);
  wall.right = end("run.wall.right", true);
  const bool out = std::any_of(lengths.begin(), lengths.end(),
                               [&](Length length) { return length != wall.least; });
  if (!out) return;
  if (wall.left != RunEnd::wall && wall.right != RunEnd::wall)
    return ledger_.problem({"run.wall.lengths"},
                           "differ, but neither end is a wall that could be out; give one length, "
                           "or say which end is a wall");
  const bool two = wall.left == wall.right;
  const Side usual = two || wall.left != RunEnd::wall ? Side::left : Side::right;
  wall.out_at_right =
      ledger_.choose<Side>("run.wall.plumb", usual,
                           two ? "of two walls the left one is taken to be upright"
                           : wall.left == RunEnd::corner || wall.right == RunEnd::corner
                               ? "the end in the corner begins beside fronts that are set up plumb"
                               : "the end without a wall is set up plumb") == Side::left;
  if ((wall.out_at_right ? wall.right : wall.left) == RunEnd::corner)
    ledger_.problem({"run.wall.plumb"},
                    "leaves the end in the corner to be out, and the other run's cases stand plumb "
                    "there; say the other end");
  if ((wall.out_at_right ? wall.right : wall.left) == RunEnd::free)
    ledger_.problem({"run.wall.plumb"},
                    "leaves the free end to be out, and it is cabinets that end there; say the "
                    "other end");
}

void RunPlanner::settle_corners() {
  for (const bool right : {false, true})
    plan_.corners[right ? 1 : 0] = plan_corner(spec_.through[right ? 1 : 0].get(), right, ledger_);
}

void RunPlanner::settle_sizes() {
  const Length usual = ledger_.pick(3'000, 1, 8);
  const std::string_view why = "usual between cases, packed where they are screwed together";
  // Behind a frame the cases are as wide as what is packed between them leaves.
  plan_.between = spec_.frames.empty() ? ledger_.take("run.between", usual, why)
                                       : ledger_.settle("run.between", usual, why);
  plan_.scribe = ledger_.take("run.scribe", ledger_.pick(12'000, 1, 2),
                              "the least that a filler at a wall can be planed to");
  plan_.behind = ledger_.settle("run.void", Length(), "the cases stand against the wall");
  plan_.handle = ledger_.settle("run.handle", ledger_.pick(35'000, 11, 8), "usual of handles");
  plan_.filler_thickness =
      ledger_.settle("run.fillers.thickness", ledger_.pick(20'000, 3, 4), "usual of fronts");
  plan_.filler_material = spec_.own.text("run.fillers.material");
  plan_.end_panel_material = spec_.own.text("run.end_panels.material");
}

void RunPlanner::settle_floor() {
  const std::vector<Length> at = sizes_of(spec_.own, "run.floor.at", "run.floor.at[]");
  const std::vector<Length> rise = sizes_of(spec_.own, "run.floor.rise", "run.floor.rise[]");
  for (std::size_t i = 0; i < at.size(); ++i)
    plan_.floor.push_back({at[i], rise[i]});
}

/// What is wrong with one is told where it stands.
void RunPlanner::demand_cabinets() {
  bool any = false;
  for (std::size_t i = 0; i < spec_.order.size(); ++i) {
    const RunEntry& entry = spec_.order[i];
    if (entry.what != What::cabinet || !entry.taken) continue;
    any = true;
    const std::vector<Problem>& problems = entry.taken->worked().problems;
    if (problems.empty()) continue;
    const auto& lines = entry.taken->set_lines;
    const bool lined =
        std::any_of(lines.begin(), lines.end(), [](const SetLine& it) { return it.rows > 0; });
    ledger_.problem(
        {{"run.order", i}},
        in_one_frame(spec_, i, i) ? fmt::format("\"{}\" cannot be worked behind its frame: {}",
                                                entry.id, problems.front().message)
        : lined ? fmt::format("\"{}\" cannot be worked with the run's lines: {}", entry.id,
                              problems.front().message)
                : fmt::format("\"{}\" cannot be worked; put its own errors right first", entry.id));
  }
  if (!any) ledger_.problem({"run.order"}, "names no cabinet; a run has one at least");
}

/// In words: what is put in a gap, or that nothing is.
std::string gap_words(const RunEntry& entry) {
  return entry.purpose.empty() ? "gap" : "gap for the " + entry.purpose;
}

void RunPlanner::list_members() {
  std::map<std::string, int> times;
  int panels = 0;
  for (std::size_t i = 0; i < spec_.order.size(); ++i) {
    const RunEntry& entry = spec_.order[i];
    RunMember member{entry.what, i, {}, {}, {}, entry.width};
    if (entry.what == What::cabinet) {
      const int time = ++times[entry.id];
      member.path = entry.id + (time == 1 ? "" : "-" + std::to_string(time));
      member.name = member.path;
      member.width = entry.taken->worked().assembly.size[0];
    }
    if (entry.what == What::gap) member.name = gap_words(entry);
    if (entry.what == What::end_panel) member.name = fmt::format("end panel {}", ++panels);
    plan_.members.push_back(std::move(member));
  }
}

/// Packing stands between two cases, and nowhere else; behind one frame it is a part of them.
Length RunPlanner::before(std::size_t member) const {
  const bool cases = member > 0 && plan_.members[member].what == What::cabinet &&
                     plan_.members[member - 1].what == What::cabinet;
  if (!cases || in_one_frame(spec_, *plan_.members[member - 1].entry, *plan_.members[member].entry))
    return {};
  return plan_.between;
}

Length RunPlanner::used() const {
  Length all = plan_.in_corner(false) + plan_.in_corner(true);
  for (std::size_t i = 0; i < plan_.members.size(); ++i)
    all += before(i) + plan_.members[i].width;
  return all;
}

/// Whether a filler at a wall is as wide as it is said, as another one takes what is left over.
bool RunPlanner::keeps_width(std::size_t member) const {
  const RunMember& its = plan_.members[member];
  const RunMember& other = its.at_left_wall ? plan_.members.back() : plan_.members.front();
  return its.entry && &other != &its && (other.at_left_wall || other.at_right_wall) && !other.entry;
}

/// A blind case goes into its corner, and what is left between it and the wall shows nowhere.
void RunPlanner::leave_blind() {
  const auto leave = [&](RunEnd& end, const RunMember& last, bool right) {
    if (end == RunEnd::wall && last.what == What::cabinet &&
        is_blind(spec_.order[*last.entry].taken->worked().assembly, right))
      end = RunEnd::blind;
  };
  leave(plan_.wall.left, plan_.members.front(), false);
  leave(plan_.wall.right, plan_.members.back(), true);
}

/// A filler in each corner: that which the order names there, else one beside which fronts are
/// drawn out past the other run's handles.
void RunPlanner::close_corners() {
  const Length play = ledger_.pick(5'000, 1, 4);
  for (const bool right : {false, true}) {
    const auto& corner = plan_.corners[right ? 1 : 0];
    if (!corner) continue;
    auto& members = plan_.members;
    const RunMember& last = right ? members.back() : members.front();
    if (last.what != What::filler)
      members.insert(right ? members.end() : members.begin(),
                     RunMember{What::filler, {}, {}, {}, {}, corner->least_filler(play)});
    (right ? members.back() : members.front()).in_corner = true;
  }
}

/// Fillers stand at walls: those that the order names there, and one more at each other wall.
void RunPlanner::close_ends() {
  leave_blind();
  close_corners();
  auto& members = plan_.members;
  const Length left_over = plan_.wall.least - used();
  const auto is_filler = [](const RunMember& it) { return it.what == What::filler; };
  const bool left = plan_.wall.left == RunEnd::wall;
  const bool right = plan_.wall.right == RunEnd::wall;
  int missing = (left && !is_filler(members.front())) + (right && !is_filler(members.back()));
  // A filler that is narrower than it can be planed is not made.
  if (missing > 0 && left_over < plan_.scribe * missing)
    missing = left_over >= plan_.scribe ? 1 : 0;
  const auto make = [&](auto where, bool at_left) {
    if (missing-- <= 0) return;
    members.insert(where, RunMember{What::filler, {}, {}, {}, {}, {}, at_left, !at_left});
  };
  if (left && !is_filler(members.front())) make(members.begin(), true);
  if (right && !is_filler(members.back())) make(members.end(), false);
  if (left && is_filler(members.front())) members.front().at_left_wall = true;
  if (right && is_filler(members.back())) members.back().at_right_wall = true;
  int number = 0;
  for (RunMember& member : members)
    if (is_filler(member)) member.name = fmt::format("filler {}", ++number);
  share_out(left_over);
}

/// What is left over goes to the fillers at walls in equal parts, in whole mm or 1/16 in but for
/// the last; where there is none it stays open.
void RunPlanner::share_out(Length left_over) {
  std::vector<RunMember*> takers;
  for (std::size_t i = 0; i < plan_.members.size(); ++i)
    if ((plan_.members[i].at_left_wall || plan_.members[i].at_right_wall) && !keeps_width(i))
      takers.push_back(&plan_.members[i]);
  if (takers.empty() && left_over >= Length())
    for (RunMember& member : plan_.members)
      if (member.in_corner) takers.push_back(&member);
  if (takers.empty() || left_over < Length()) {
    const bool from_left = plan_.wall.left != RunEnd::blind &&
                           (plan_.wall.left != RunEnd::wall || plan_.wall.right == RunEnd::wall ||
                            plan_.wall.right == RunEnd::blind);
    (from_left ? plan_.spare_right : plan_.spare_left) = left_over;
    return;
  }
  const Length unit = ledger_.pick(1'000, 1, 16);
  for (std::size_t i = 0; i < takers.size(); ++i) {
    const auto others = static_cast<std::int64_t>(takers.size() - i);
    const Length share =
        others == 1 ? left_over : floor_multiple(floor_divide(left_over, others), unit);
    takers[i]->width += share;
    left_over -= share;
  }
}

void RunPlanner::place() {
  Length along = plan_.spare_left + plan_.in_corner(false);
  for (std::size_t i = 0; i < plan_.members.size(); ++i) {
    along += before(i);
    plan_.members[i].left = along;
    along += plan_.members[i].width;
    const RunMember& member = plan_.members[i];
    if (!member.entry || member.what == What::cabinet) continue;
    const std::string_view key = member.what == What::filler ? ".filler"
                                 : member.what == What::gap  ? ".gap"
                                                             : ".end_panel";
    ledger_.add_lever({"run.order", *member.entry, key}, spec_.order[*member.entry].width, false,
                      member.name);
  }
  plan_.size[0] = plan_.wall.least;
}

void RunPlanner::settle_depth() {
  for (const RunEntry& entry : spec_.order) {
    if (!entry.taken) continue;
    const Triple& size = entry.taken->worked().assembly.size;
    plan_.size[1] = std::max(plan_.size[1], size[1]);
    plan_.size[2] = std::max(plan_.size[2], size[2]);
  }
}

}  // namespace

bool RunWall::begins_at_left() const {
  const auto in_corner = [](RunEnd end) { return end == RunEnd::corner || end == RunEnd::blind; };
  if (in_corner(left) != in_corner(right)) return in_corner(left);
  return out_at_right;
}

Length RunWall::length_at(Length height) const {
  if (height <= readings.front().at) return readings.front().length;
  for (std::size_t i = 1; i < readings.size(); ++i)
    if (height <= readings[i].at)
      return between_readings(height, readings[i - 1].at, readings[i - 1].length, readings[i].at,
                              readings[i].length);
  return readings.back().length;
}

Length RunWall::least_back(Length low, Length high) const {
  Length back = std::min(back_at(low), back_at(high));
  for (const WallReading& reading : readings)
    if (reading.at > low && reading.at < high) back = std::min(back, back_at(reading.at));
  return back;
}

Length WallRunPlan::packed_at(Length along) const {
  if (floor.empty()) return {};
  Length highest;
  for (const FloorReading& reading : floor)
    highest = std::max(highest, reading.rise);
  if (along <= floor.front().at) return highest - floor.front().rise;
  for (std::size_t i = 1; i < floor.size(); ++i)
    if (along <= floor[i].at)
      return highest - between_readings(along, floor[i - 1].at, floor[i - 1].rise, floor[i].at,
                                        floor[i].rise);
  return highest - floor.back().rise;
}

PlannedRun plan_run(const RunSpec& spec) {
  return RunPlanner(spec).planned();
}

}  // namespace haunch
