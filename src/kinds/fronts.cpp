#include "fronts.h"

#include <fmt/core.h>

#include <algorithm>
#include <string>
#include <utility>

#include "cautions.h"
#include "door.h"
#include "doorset_leaf.h"
#include "drawer_plan.h"
#include "drawer_set_out.h"
#include "front_grain.h"
#include "leaves.h"
#include "marks.h"

namespace haunch {
namespace {

constexpr std::string_view kDoorKey = "fronts.door.";

/// What a leaf's spec says, and for want of it what is said of all doors.
Spec leaf_spec(const CabinetSpec& spec, const FrontPlan& front) {
  Spec leaf = front.node->said;
  leaf.units = spec.own.units;
  take_open(leaf, spec.door, kOfDoor);
  take_from_whole(leaf, spec.own, {"species", "moisture", "grain"});
  leaf.set("use", static_cast<int>(Use::cabinet));
  leaf.set("hangs", static_cast<int>(front.hangs));
  return leaf_in_room(std::move(leaf), {front.at.width(), front.at.height(), {}, {}});
}

/// The same of a drawer.
Spec drawer_spec(const CabinetSpec& spec, const FrontPlan& front) {
  Spec drawer = front.node->said;
  drawer.units = spec.own.units;
  take_open(drawer, spec.own, kOfDrawer);
  take_drawer_woods(drawer);
  return drawer;
}

/// Where a problem of such a spec stands in the cabinet's: at what the node says, or at what is
/// said of all doors.
Problem of_the_cabinet(Problem problem, const CabinetSpec& spec, const FrontPlan& front) {
  const bool drawer = front.kind == FrontKind::drawer;
  const bool made = problem.path.empty() || problem.path.starts_with("/opening") ||
                    problem.path.starts_with("/clearance");
  if (made) {
    problem.message.insert(0, drawer ? "the drawer that closes it: " : "the leaf that closes it: ");
    problem.path = front.node->path;
    return problem;
  }
  std::string key = problem.path.substr(1);
  std::replace(key.begin(), key.end(), '/', '.');
  const std::string of_drawers = std::string(kDrawerRoot);
  if (drawer && key.starts_with(of_drawers)) key.erase(0, of_drawers.size());
  const auto found = find_key(drawer ? of_drawers + key : key);
  const bool by_node = found && front.node->said.said_by(*found) != SaidBy::nobody;
  const bool of_all =
      found && !by_node && (drawer ? spec.own : spec.door).said_by(*found) != SaidBy::nobody;
  if (!by_node && !of_all) {
    problem.message.insert(
        0, fmt::format("the {} that closes it, its {}: ", drawer ? "drawer" : "leaf", key));
    problem.path = front.node->path;
    return problem;
  }
  std::replace(key.begin(), key.end(), '.', '/');
  problem.path = (!of_all  ? front.node->path
                  : drawer ? "/fronts/drawer"
                           : "/fronts/door") +
                 "/" + key;
  return problem;
}

/// What is assumed of one and was not of those before it, under the key of all of them, or
/// where it is another value under its own.
void take_assumed(MadeFronts& made, std::vector<Assumed> its, const FrontPlan& front) {
  const std::string_view root = front.kind == FrontKind::drawer ? kDrawerRoot : kDoorKey;
  for (Assumed& it : its) {
    if (it.key == "units" || it.key == "species" || it.key == "horn") continue;
    if (it.key.starts_with(root)) it.key.erase(0, root.size());
    const std::string of_all = std::string(root) + it.key;
    const auto told = std::find_if(made.assumed.begin(), made.assumed.end(),
                                   [&](const Assumed& known) { return known.key == of_all; });
    if (told != made.assumed.end() && told->value == it.value) continue;
    std::string node = front.node->path.substr(1);
    std::replace(node.begin(), node.end(), '/', '.');
    it.key = told == made.assumed.end() ? of_all : node + "." + it.key;
    const bool again = std::any_of(made.assumed.begin(), made.assumed.end(),
                                   [&](const Assumed& known) { return known.key == it.key; });
    if (!again) made.assumed.push_back(std::move(it));
  }
}

void make_leaf(MadeFronts& made, const CabinetSpec& spec, const FrontPlan& front, Meets meets,
               const Job& job) {
  DoorJob leaf;
  leaf.unit = job.unit;
  leaf.spec = leaf_spec(spec, front);
  leaf.season = job.season;
  if (!leaf.season) leaf.usual_year = usual_year_of(leaf.spec);
  Worked worked = leaf.work();
  for (Problem& problem : worked.problems)
    made.problems.push_back(of_the_cabinet(std::move(problem), spec, front));
  if (!worked.problems.empty()) return;
  take_assumed(made, std::move(worked.assumed), front);
  add_untold(made.cautions, std::move(worked.cautions));
  const Length before = meets == Meets::overlay ? -worked.assembly.size[2] : Length();
  made.all.push_back(
      {&front, std::move(worked.assembly), {front.at.left, front.at.low, before}, {}, {}});
}

/// What a front was laid out to leave in its opening: where it ends on another with nothing
/// between, its part of their gap.
Sides laid_out(const FrontPlan& front) {
  const Area& in = front.sight;
  return {front.at.left - in.left, in.right - front.at.right, in.high - front.at.high,
          front.at.low - in.low};
}

/// What a front that stands in the opening leaves there; of one that lies over it nothing.
std::optional<Sides> room_in_opening(const DrawerPlan& drawer) {
  if (drawer.room.meets != Meets::inset) return {};
  const Box& face = drawer.face;
  return Sides{face.low[0], drawer.room.width - face.high[0], drawer.room.height - face.high[1],
               face.low[1]};
}

/// Where its runners are screwed on, in the cabinet.
std::optional<RunnerHoles> runner_holes(const DrawerPlan& drawer, const Area& sight) {
  const RunnerPlan& runner = drawer.runner;
  if (runner.holes.empty()) return {};
  RunnerHoles holes{
      sight.left, sight.right, sight.low + drawer.box.low[1] + runner.hole_above, {}, runner.hole};
  for (const Length hole : runner.holes)
    holes.depth.push_back(drawer.box.low[2] + hole);
  return holes;
}

/// The case reaches from its front edges to what stands before its back.
void doubt_holes(MadeFronts& made, const CabinetSpec& spec, const CabinetPlan& plan,
                 const FrontPlan& front, const RunnerHoles& holes) {
  const Length radius = floor_half(holes.diameter);
  const auto say = [&](Length length) {
    return in_words(length, spec.own.units.value_or(Unit::mm));
  };
  for (const Length depth : holes.depth) {
    const bool before = depth - radius < plan.carcase.front;
    if (!before && depth + radius <= plan.carcase.back_front()) continue;
    const std::string where =
        before ? fmt::format("{} behind the front of all, and the case begins at {}", say(depth),
                             say(plan.carcase.front))
               : fmt::format("{} behind the front of all, and the case ends at {}", say(depth),
                             say(plan.carcase.back_front()));
    made.problems.push_back(of_the_cabinet({"/runner/holes",
                                            "the middle of a hole of " + say(holes.diameter) +
                                                " stands " + where + "; change its place",
                                            {}},
                                           spec, front));
    return;
  }
}

/// A drawer behind its front, in the opening that the front closes.
void make_drawer(MadeFronts& made, const CabinetSpec& spec, const CabinetPlan& plan,
                 const FrontPlan& front) {
  DrawerRoom room;
  room.width = front.sight.width();
  room.height = front.sight.height();
  room.depth = plan.carcase.back_front();
  room.meets = plan.meets;
  if (plan.meets == Meets::inset)
    room.gap = laid_out(front);
  else
    room.lap = front.lap;
  const Spec its = drawer_spec(spec, front);
  PlannedDrawer planned = plan_drawer(its, room);
  for (Problem& problem : planned.problems)
    made.problems.push_back(of_the_cabinet(std::move(problem), spec, front));
  if (!planned.problems.empty()) return;
  take_assumed(made, std::move(planned.assumed), front);
  add_untold(made.cautions, std::move(planned.cautions));
  const Triple& at = planned.plan.at();
  const auto holes = runner_holes(planned.plan, front.sight);
  if (holes) doubt_holes(made, spec, plan, front, *holes);
  Assembly wood = set_out_drawer(planned.plan);
  const Length rear = at[2] + placed_blanks(wood, 0).high[2];
  made.all.push_back({&front,
                      std::move(wood),
                      {front.sight.left + at[0], front.sight.low + at[1], at[2]},
                      planned.plan.runner.travel,
                      plan.meets == Meets::inset ? plan.carcase.back_face() - rear : Length(),
                      room_in_opening(planned.plan),
                      holes});
}

/// Those along it first, then those across its ends.
std::vector<EdgeStrip> strips_round(const Stuff& strip) {
  std::vector<EdgeStrip> strips;
  for (const std::size_t along : {std::size_t{0}, std::size_t{1}})
    for (const bool high : {false, true})
      if (strip.thickness > Length())
        strips.push_back({along, high, strip.thickness, strip.material});
  return strips;
}

/// A plain board; of a drawer's grain runs level, else upright.
void make_plain(MadeFronts& made, const CabinetPlan& plan, const FrontPlan& front,
                const std::string& name) {
  if (plan.front_strip.thickness * 2 >= std::min(front.at.width(), front.at.height()))
    made.problems.push_back(
        {"/fronts/edge_strip", "two of them are as wide as a front; make them thinner", {}});
  Assembly wood;
  wood.groups = {{GroupKind::front, "front", {}, {}}};
  const Length thickness = plan.front_stuff.thickness;
  wood.size = {front.at.width(), front.at.height(), thickness};
  const std::size_t piece = add_piece(wood, name.empty() ? "front" : name, Role::panel,
                                      {front.at.height(), front.at.width(), thickness},
                                      {{}, {Axis::y, Axis::x, Axis::z}});
  wood.pieces[piece].material = plan.front_stuff.material;
  wood.pieces[piece].matter = plan.front_stuff.matter;
  wood.pieces[piece].strips = strips_round(plan.front_strip);
  const Length before = plan.meets == Meets::overlay ? -thickness : Length();
  made.all.push_back({&front, std::move(wood), {front.at.left, front.at.low, before}, {}, {}});
}

/// How much more it leaves in its opening than it was laid out to: a drawer that swells needs more.
Sides more_than_laid_out(const MadeFront& made) {
  if (!made.room) return {};
  const Sides laid = laid_out(*made.plan);
  return {made.room->left - laid.left, made.room->right - laid.right, made.room->head - laid.head,
          made.room->foot - laid.foot};
}

/// From it to what bounds its opening, or where nothing does to the front beside it.
Sides room_among(const MadeFront& made, const std::vector<MadeFront>& fronts) {
  Sides room = made.plan->room;
  const auto add_more = [&](const Sides& more, bool left, bool right, bool head, bool foot) {
    if (left) room.left += more.left;
    if (right) room.right += more.right;
    if (head) room.head += more.head;
    if (foot) room.foot += more.foot;
  };
  add_more(more_than_laid_out(made), true, true, true, true);
  const Area& own = made.plan->sight;
  for (const MadeFront& other : fronts) {
    const Area& its = other.plan->sight;
    const bool in_column = its.left < own.right && own.left < its.right;
    const bool in_row = its.low < own.high && own.low < its.high;
    const Sides more = more_than_laid_out(other);
    add_more({more.right, more.left, more.foot, more.head}, in_row && its.right == own.left,
             in_row && its.left == own.right, in_column && its.low == own.high,
             in_column && its.high == own.low);
  }
  return room;
}

/// How it stands among others, and how it moves.
Fit fit_of(const MadeFront& made, const std::vector<MadeFront>& fronts, const CabinetPlan& plan) {
  const FrontPlan& front = *made.plan;
  Fit fit;
  fit.stands = StandsIn::front;
  fit.other = kCaseOfCabinet;
  fit.meets = plan.meets;
  fit.room = room_among(made, fronts);
  fit.beside = front.beside;
  fit.lap = front.lap;
  if (front.kind == FrontKind::door || front.kind == FrontKind::pair) {
    // In the middle of the gap beside it, before its face.
    const bool right = front.hangs == Side::right;
    const Length out = floor_half(plan.gap);
    fit.moves = Swing{
        Axis::y,
        {right ? front.at.right + out : front.at.left - out, Length(), made.at[2] - plan.pin_out},
        right};
  }
  if (front.kind == FrontKind::drawer) {
    fit.moves = Slide{Axis::z, -made.travel};
    fit.behind = made.behind;
  }
  return fit;
}

/// The piece of the case that a leaf hangs on.
std::size_t post_of(const FrontPlan& front, const SetOutCarcase& carcase) {
  const bool right = front.hangs == Side::right;
  const std::optional<std::size_t>& its = right ? front.right : front.left;
  return its ? carcase.inner[*its] : carcase.sides[right ? 1 : 0].front;
}

}  // namespace

MadeFronts make_fronts(const CabinetSpec& spec, const CabinetPlan& plan, const Job& job) {
  MadeFronts made;
  const std::vector<FrontStack> stacks = spec.own.says("fronts.grain_runs_on")
                                             ? stacks_of_plain_fronts(plan)
                                             : std::vector<FrontStack>();
  for (const FrontPlan& front : plan.fronts) {
    if (front.kind == FrontKind::fixed)
      make_plain(made, plan, front, in_one_board(stacks, front));
    else if (front.kind == FrontKind::drawer)
      make_drawer(made, spec, plan, front);
    else
      make_leaf(made, spec, front, plan.meets, job);
  }
  return made;
}

std::vector<Problem> hang_fronts(Assembly& cabinet, std::vector<MadeFront> fronts,
                                 const CabinetPlan& plan, const SetOutCarcase& carcase) {
  std::vector<Problem> problems;
  for (MadeFront& front : fronts) {
    Fit fit = fit_of(front, fronts, plan);
    const Length thickness = front.wood.size[2];
    Place at;
    at.origin = front.at;
    const std::size_t group = add_group(cabinet, std::move(front.wood), at, front.plan->path);
    fit.group = group;
    if (plan.hinges && fit.swing() != nullptr)
      let_in_cups(cabinet, group, post_of(*front.plan, carcase), fit.swing()->at_high, *plan.hinges,
                  plan.meets == Meets::inset ? thickness - plan.carcase.front : Length());
    cabinet.fits.push_back(std::move(fit));
    if (!front.holes) continue;
    const std::string side =
        bore_runner_holes(cabinet, std::string(group_name(cabinet.groups[group])), *front.holes);
    if (!side.empty())
      problems.push_back(
          {front.plan->node->path,
           fmt::format("at its {} stands nothing that all screws of its runners go into, "
                       "such as a partition, a side of boards or packing; move or take "
                       "out their \"holes\"",
                       side),
           {}});
  }
  return problems;
}

}  // namespace haunch
