// What stands in the case of a cabinet: partitions, shelves, what drawers run on.
#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "cabinet_planner.h"
#include "door_defaults.h"
#include "drawer_plan.h"
#include "fittings.h"

namespace haunch {

static constexpr Length kNone;

/// The piece on which an end of a divider stands; where there is none, the case.
std::optional<std::size_t> CabinetPlanner::stands_on(Bound bound, const Divider& divider,
                                                     std::string_view end) {
  if (const auto piece = inner_at(bound); piece || !bound) return piece;
  ledger_.problems.push_back(
      {divider.path,
       fmt::format("what stands between its parts has nothing to stand on at its {}; write "
                   "\"between\": \"{}\" in the list beside it",
                   end, divider.upright ? "shelf" : "partition"),
       {}});
  return {};
}

/// Between what its ends stand on; its other sides as the layout has them: behind a mullion in the
/// middle, behind a rail with its upper face flush.
Area CabinetPlanner::inner_area(const Divider& divider, const InnerPlan& inner) const {
  const CarcasePlan& carcase = plan_.carcase;
  const std::vector<InnerPlan>& all = carcase.inner;
  const Length thickness = carcase.stuff.thickness;
  Area at = divider.at;
  if (plan_.frame && inner.upright) {
    at.left += floor_half(divider.at.width() - thickness);
    at.right = at.left + thickness;
  } else if (plan_.frame) {
    at.low = at.high - thickness;
  }
  if (inner.upright) {
    at.low = inner.low ? all[*inner.low].at.high : carcase.floor;
    at.high = inner.high ? all[*inner.high].at.low : carcase.ceiling();
  } else {
    at.left = inner.low ? all[*inner.low].at.right : carcase.inside_left();
    at.right = inner.high ? all[*inner.high].at.left : carcase.inside_right();
  }
  return at;
}

void CabinetPlanner::place_inner() {
  for (std::size_t number = 0; number < plan_.layout.dividers.size(); ++number) {
    const Divider& divider = plan_.layout.dividers[number];
    // A rail of the frame has nothing behind it; in a case without one it is a piece of the case.
    if (divider.kind == Between::none || (plan_.frame && divider.kind == Between::rail)) continue;
    InnerPlan inner;
    inner.upright = divider.upright;
    inner.role = divider.upright                 ? Role::partition
                 : divider.kind == Between::rail ? Role::drawer_rail
                                                 : Role::shelf;
    inner.low = divider.upright ? stands_on(divider.by.foot, divider, "foot")
                                : stands_on(divider.by.left, divider, "left");
    inner.high = divider.upright ? stands_on(divider.by.head, divider, "head")
                                 : stands_on(divider.by.right, divider, "right");
    if (inner.role == Role::shelf) inner.load = usual_load(Load::books);
    inner.at = inner_area(divider, inner);
    inner_of_[number] = plan_.carcase.inner.size();
    plan_.carcase.inner.push_back(inner);
  }
}

/// Two that are housed in one piece from both its faces at one place leave less wood between them.
void CabinetPlanner::mark_opposed() {
  std::vector<InnerPlan>& all = plan_.carcase.inner;
  for (InnerPlan& one : all)
    for (InnerPlan& other : all) {
      if (one.upright != other.upright || !one.high || one.high != other.low) continue;
      const bool apart = one.upright
                             ? one.at.right <= other.at.left || other.at.right <= one.at.left
                             : one.at.high <= other.at.low || other.at.high <= one.at.low;
      if (!apart) one.high_opposed = other.low_opposed = true;
    }
}

// ---- shelves

bool has_loose_shelves(const LayoutNode& node) {
  const bool fixed =
      node.said.word<ShelfJoint>("layout_node.shelves.joint").value_or(ShelfJoint::loose) !=
      ShelfJoint::loose;
  return (!fixed && node.said.count("layout_node.shelves.count").value_or(0) > 0) ||
         std::any_of(node.nodes.begin(), node.nodes.end(), has_loose_shelves);
}

static bool has_unloaded_shelves(const LayoutNode& node) {
  return (node.said.count("layout_node.shelves.count").value_or(0) > 0 &&
          !node.said["layout_node.shelves.load"].stated) ||
         std::any_of(node.nodes.begin(), node.nodes.end(), has_unloaded_shelves);
}

/// Whether some shelf carries what was not said: a fixed one, or loose ones without a load.
bool assumes_books(const CabinetPlan& plan, const LayoutNode& layout) {
  const auto& inner = plan.carcase.inner;
  return std::any_of(inner.begin(), inner.end(),
                     [](const InnerPlan& it) { return it.load.has_value() && !it.joint; }) ||
         has_unloaded_shelves(layout);
}

ShelfLoad CabinetPlanner::load_of(const LayoutNode& node) {
  const KeyValue& said = node.said["layout_node.shelves.load"];
  if (said.stated && said.text.empty()) return {said.figure, false};
  for (const Load load : {Load::books, Load::clothes, Load::crockery})
    if (said.text == word_of(load)) return usual_load(load);
  return usual_load(Load::books);
}

/// The piece that bounds an opening, if that is not the case itself.
std::optional<std::size_t> CabinetPlanner::inner_at(Bound bound) const {
  const auto found = bound ? inner_of_.find(*bound) : inner_of_.end();
  return found == inner_of_.end() ? std::nullopt : std::optional(found->second);
}

/// The room behind an opening: between the faces of what bounds it.
Area CabinetPlanner::clear_behind(const LaidOpening& opening) const {
  const CarcasePlan& carcase = plan_.carcase;
  const auto its = [&](Bound bound) -> const InnerPlan* {
    const auto piece = inner_at(bound);
    return piece ? &carcase.inner[*piece] : nullptr;
  };
  Area room = opening.sight;
  if (!opening.by.left) room.left = carcase.inside_left();
  if (!opening.by.right) room.right = carcase.inside_right();
  if (!opening.by.foot) room.low = carcase.floor;
  if (!opening.by.head) room.high = carcase.ceiling();
  if (const InnerPlan* piece = its(opening.by.left)) room.left = piece->at.right;
  if (const InnerPlan* piece = its(opening.by.right)) room.right = piece->at.left;
  if (const InnerPlan* piece = its(opening.by.foot)) room.low = piece->at.high;
  if (const InnerPlan* piece = its(opening.by.head)) room.high = piece->at.low;
  return room;
}

/// What the shelves of a node are made of.
Stuff CabinetPlanner::shelf_stuff(const LayoutNode& node) const {
  Stuff stuff = plan_.carcase.stuff;
  if (const auto thickness = node.said.size("layout_node.shelves.thickness"))
    stuff.thickness = *thickness;
  if (const std::string& material = node.said.text("layout_node.shelves.material");
      !material.empty()) {
    stuff.material = material;
    stuff.matter = matter_of(material);
  }
  return stuff;
}

/// Where what stands in an opening begins, behind the front of all: behind a front that stands in
/// it, else at the case's front edges.
Length CabinetPlanner::front_within(const LayoutNode& node) const {
  const bool behind_front = plan_.meets == Meets::inset && node.front() != FrontKind::none;
  return plan_.carcase.front + (behind_front ? front_thickness(node) : kNone);
}

/// How thick what closes a node is: a leaf as it says itself, or as all doors do.
Length CabinetPlanner::front_thickness(const LayoutNode& node) const {
  const FrontKind kind = node.front();
  const bool leaf = kind == FrontKind::door || kind == FrontKind::pair;
  if (!leaf) return plan_.front_stuff.thickness;
  if (const auto its = node.said.size("thickness")) return *its;
  return spec_.door.size("thickness").value_or(door_defaults(ledger_.unit, Use::cabinet).thickness);
}

void CabinetPlanner::refuse_shelves(const LayoutNode& node, int count, Length thickness,
                                    Length height) {
  ledger_.problems.push_back(
      {child_path(node.path, "shelves"),
       fmt::format("{} shelves of {} leave no room between them in {}; write fewer", count,
                   ledger_.say(thickness), ledger_.say(height)),
       {}});
}

/// The joint of a case that a fixed shelf is asked to have.
static CaseJoint joint_of(ShelfJoint joint) {
  switch (joint) {
    case ShelfJoint::loose:
    case ShelfJoint::housed:
      break;
    case ShelfJoint::stopped_housing:
      return CaseJoint::stopped_housing;
    case ShelfJoint::tongued:
      return CaseJoint::tongued;
    case ShelfJoint::dowel:
      return CaseJoint::dowel;
    case ShelfJoint::butted:
      return CaseJoint::butted;
  }
  return CaseJoint::housed;
}

/// Fixed ones, the same height apart; what is left of a step is above them.
void CabinetPlanner::fix_shelves(const LaidOpening& opening, int count, ShelfJoint joint) {
  const LayoutNode& node = *opening.node;
  CarcasePlan& carcase = plan_.carcase;
  const Area room = clear_behind(opening);
  InnerPlan shelf;
  shelf.low = inner_at(opening.by.left);
  shelf.high = inner_at(opening.by.right);
  shelf.set_back = front_within(node) - carcase.front;
  // A door is to close on the case alone.
  if (node.front() != FrontKind::none) shelf.set_back += ledger_.pick(3'000, 1, 8);
  shelf.joint = joint_of(joint);
  // One that stands back would leave the front of a housing open.
  if (shelf.set_back > kNone && joint == ShelfJoint::housed)
    shelf.joint = CaseJoint::stopped_housing;
  if (shelf.set_back > kNone && joint == ShelfJoint::tongued)
    ledger_.problems.push_back({child_path(node.path, "shelves"),
                                "the housings of tongues would stay open before shelves that stand "
                                "behind a front; write \"joint\": \"stopped-housing\"",
                                {}});
  settle_case_joint(ledger_, carcase, *shelf.joint);
  shelf.stuff = shelf_stuff(node);
  shelf.load = load_of(node);
  const Length thickness = shelf.stuff->thickness;
  const Length apart = floor_divide(room.height() - thickness * count, count + 1);
  if (apart <= kNone) return refuse_shelves(node, count, thickness, room.height());
  for (int number = 1; number <= count; ++number) {
    const Length low = room.low + apart * number + thickness * (number - 1);
    shelf.at = {room.left, room.right, low, low + thickness};
    carcase.inner.push_back(shelf);
  }
}

void CabinetPlanner::place_shelves(const LaidOpening& opening) {
  const LayoutNode& node = *opening.node;
  const CarcasePlan& carcase = plan_.carcase;
  const int count = node.said.count("layout_node.shelves.count").value_or(0);
  if (count == 0) return;
  const auto joint = node.said.word<ShelfJoint>("layout_node.shelves.joint");
  if (joint && *joint != ShelfJoint::loose) return fix_shelves(opening, count, *joint);
  LooseShelves shelves;
  shelves.room = clear_behind(opening);
  shelves.count = count;
  shelves.stuff = shelf_stuff(node);
  shelves.load = load_of(node);
  shelves.play = shelf_play_;
  shelves.left = inner_at(opening.by.left);
  shelves.right = inner_at(opening.by.right);
  const Length front = front_within(node);
  shelves.front = front + shelves.play;
  if (shelves.room.height() <= shelves.stuff.thickness * count)
    refuse_shelves(node, count, shelves.stuff.thickness, shelves.room.height());
  else
    shelves.pins = rows_for(pin_holes_, count, shelves.stuff.thickness, shelves.room.low,
                            shelves.room.high, front, carcase.back_front());
  // In the middle of a usual stile; the groove for its panel is at its inner edge.
  if (carcase.end) shelves.pins.rear = carcase.rear() - ledger_.pick(28'000, 9, 8);
  plan_.carcase.loose.push_back(std::move(shelves));
}

/// Whether pins are bored in both faces of some partition.
static bool pins_meet_in_partitions(const ResolvedLayout& layout) {
  const auto has_loose = [](const LaidOpening& it) { return has_loose_shelves(*it.node); };
  return std::any_of(layout.openings.begin(), layout.openings.end(), [&](const LaidOpening& one) {
    return has_loose(one) && one.by.right &&
           std::any_of(layout.openings.begin(), layout.openings.end(),
                       [&](const LaidOpening& other) {
                         return has_loose(other) && other.by.left == one.by.right;
                       });
  });
}

void CabinetPlanner::place_shelves() {
  if (has_loose_shelves(spec_.layout))
    pin_holes_ =
        settle_pin_holes(ledger_, plan_.hinges,
                         {plan_.carcase.stuff.thickness, pins_meet_in_partitions(plan_.layout),
                          plan_.carcase.framed_ends});
  for (const LaidOpening& opening : plan_.layout.openings)
    place_shelves(opening);
}

// ---- what drawers run on

/// On metal runners what stands between the case and the sight edge is packed out. On wooden ones a
/// drawer stands on the bottom or a shelf, or on strips behind a rail, which hold the one below
/// down too; beside the sight edge it is led.
void CabinetPlanner::place_runs(const LaidOpening& opening, bool right) {
  CarcasePlan& carcase = plan_.carcase;
  const Area room = clear_behind(opening);
  const Area& sight = opening.sight;
  const Length bound = right ? room.right : room.left;
  const Length edge = right ? sight.right : sight.left;
  const Length thickness = carcase.stuff.thickness;
  const auto into = [&](Length by) { return right ? edge - by : edge + by; };
  const auto fixed = inner_at(right ? opening.by.right : opening.by.left);
  // From the face of what bounds the room to `to`.
  const auto add = [&](Role role, Length to, Length low, Length high, Length front,
                       Length depth = {}) {
    if (bound == to || low >= high) return;
    const Area at{right ? to : bound, right ? bound : to, low, high};
    carcase.runs.push_back({role, right, at, front, fixed, depth});
  };
  const Length low_strip = ledger_.pick(60'000, 5, 2);
  if (!runs_on_wood(ledger_.spec))
    return add(Role::packing, edge, sight.low, std::min(sight.low + low_strip, sight.high),
               carcase.front);
  const Length broad = ledger_.pick(30'000, 5, 4);
  const auto rail_of = [&](Bound bounding) -> const Divider* {
    if (!bounding) return nullptr;
    const Divider& its = plan_.layout.dividers[*bounding];
    return its.kind == Between::rail ? &its : nullptr;
  };
  const Length behind_rail = plan_.frame ? carcase.front : carcase.front + carcase.rail_width;
  if (const Divider* rail = rail_of(opening.by.foot)) {
    const auto piece = inner_at(opening.by.foot);  // of a case without a frame
    // The housing of a tongue is narrower than a runner.
    const bool housed = piece && carcase.joint != CaseJoint::tongued;
    const Length depth = housed ? carcase.depth_at(carcase.inner[*piece], right) : kNone;
    add(Role::runner, into(broad), rail->at.low, rail->at.high, behind_rail, depth);
  }
  if (plan_.frame && !opening.by.head)
    add(Role::kicker, into(broad), sight.high, std::min(sight.high + thickness, carcase.ceiling()),
        carcase.front);
  add(Role::guide, edge, sight.low, std::min(sight.low + thickness, sight.high), carcase.front);
}

void CabinetPlanner::place_runs() {
  for (const LaidOpening& opening : plan_.layout.openings)
    if (opening.node->front() == FrontKind::drawer)
      for (const bool right : {false, true})
        place_runs(opening, right);
  if (plan_.carcase.stuff.matter != Matter::wood) return;
  for (RunPlan& run : plan_.carcase.runs)
    if (run.fixed || !plan_.carcase.framed_ends) hold_in_front(run);
}

/// Of a strip across a side of wood: free of what is before and behind it, and of what it would
/// else lie on or below, for that swells too; a screw that holds it at its front, and slots behind.
void CabinetPlanner::hold_in_front(RunPlan& run) {
  const CarcasePlan& carcase = plan_.carcase;
  const Length step = ledger_.pick(500, 1, 64);
  run.behind = ceiling_multiple(carcase.season.shrinks(carcase.back_front()), step * 2);
  run.front += step;
  if (run.role == Role::guide) run.at.low += step;
  if (run.role == Role::kicker && run.at.high == carcase.ceiling()) run.at.high -= step;
  const Length length = carcase.back_front() - run.front - run.behind;
  const Length end = ledger_.pick(25'000, 1, 1);
  const Length apart = ledger_.pick(200'000, 8, 1);
  if (length < end * 2) return;
  const Length between = length - end * 2;
  const std::int64_t gaps =
      std::max<std::int64_t>(1, (between.steps() + apart.steps() - 1) / apart.steps());
  for (std::int64_t i = 0; i <= gaps; ++i) {
    const Length behind_first = floor_divide(between * i, gaps);
    run.screws.push_back(
        {end + behind_first, ceiling_multiple(carcase.season.either_way(behind_first) * 2, step)});
  }
}

}  // namespace haunch
