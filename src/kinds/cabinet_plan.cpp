#include "cabinet_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <utility>

#include "cabinet_cautions.h"
#include "cabinet_chains.h"
#include "door_defaults.h"
#include "drawer_plan.h"
#include "fittings.h"
#include "framework.h"
#include "front_grain.h"
#include "ledger.h"

namespace haunch {
namespace {

constexpr Length kNone;

/// Settles a cabinet step by step; each rests on what the ones before it put into the plan.
class CabinetPlanner {
 public:
  explicit CabinetPlanner(const CabinetSpec& spec) : spec_(spec), ledger_(spec.own) {}

  PlannedCabinet planned();

 private:
  void settle_size();
  void settle_frame();
  void place_case();
  void demand_room_for_tails();
  void make_framed_ends();
  void make_framed_back();
  std::optional<Assembly> framework(Spec its, const FrameworkPart& part, Length width,
                                    Length height);
  void settle_fronts();
  void settle_front_strip();
  LayoutRules rules() const;
  void divide();
  void settle_blind(const Sides& reach);
  void doubt_blind();
  void place_inner();
  std::optional<std::size_t> stands_on(Bound bound, const Divider& divider, std::string_view end);
  Area inner_area(const Divider& divider, const InnerPlan& inner) const;
  void mark_opposed();
  void place_shelves();
  void place_shelves(const LaidOpening& opening);
  void fix_shelves(const LaidOpening& opening, int count, ShelfJoint joint);
  void refuse_shelves(const LayoutNode& node, int count, Length thickness, Length height);
  Stuff shelf_stuff(const LayoutNode& node) const;
  Length front_within(const LayoutNode& node) const;
  Length front_thickness(const LayoutNode& node) const;
  std::optional<std::size_t> inner_at(Bound bound) const;
  Area clear_behind(const LaidOpening& opening) const;
  ShelfLoad load_of(const LayoutNode& node);
  void place_runs();
  void place_runs(const LaidOpening& opening, bool right);
  void hold_in_front(RunPlan& run);
  void list_fronts();
  void add_front(const LaidOpening& opening, FrontKind kind, const Area& at, Side hangs);
  void look_beside();
  void doubt_grain();
  std::string next_path(FrontKind kind);

  const CabinetSpec& spec_;
  Ledger ledger_;
  PlannedCabinet planned_;
  CabinetPlan& plan_ = planned_.plan;
  std::map<std::size_t, std::size_t> inner_of_;  // of dividers that have a piece
  std::map<FrontKind, int> counts_;
  Length shelf_play_;
  PinHoles pin_holes_;
};

bool has_drawers(const LayoutNode& node) {
  return (node.division == Division::none && node.front() == FrontKind::drawer) ||
         std::any_of(node.nodes.begin(), node.nodes.end(), has_drawers);
}

// ---- sizes

void CabinetPlanner::settle_size() {
  plan_.size = {ledger_.take("size.width", {}, {}), ledger_.take("size.height", {}, {}),
                ledger_.take("size.depth", {}, {})};
}

/// The frame before the case, which divides the front; its foot stands on the toe's top.
void CabinetPlanner::settle_frame() {
  if (ledger_.spec.said_by("face_frame") != SaidBy::spec) return;
  if (ledger_.spec.speaks_of("blind"))
    ledger_.problem({"blind"},
                    "with a face frame the blind part is its stile; take it out, and write "
                    "\"stile_width\" for that side as wide as blind part and filler");
  const Length toe = plan_.carcase.toe.height;
  PlannedFaceFrame frame = plan_face_frame(spec_.own, {}, spec_.layout,
                                           {.width = plan_.size[0],
                                            .height = plan_.size[1] - toe,
                                            .in_cabinet = true,
                                            .rules = rules()});
  for (Assumed& it : frame.assumed)
    ledger_.assumed.push_back(std::move(it));
  for (Lever& it : frame.levers)
    ledger_.levers.push_back(std::move(it));
  add(ledger_.problems, std::move(frame.problems));
  plan_.frame = std::move(frame.plan);
  plan_.layout = raised(plan_.frame->layout, toe);
}

void CabinetPlanner::place_case() {
  CarcasePlan& carcase = plan_.carcase;
  const Length behind = carcase.back.fit == BackFit::planted ? carcase.back.stuff.thickness : kNone;
  if (plan_.frame) {
    carcase.front = plan_.frame->thickness;
    carcase.over = plan_.frame->over.left;
  }
  carcase.width = plan_.size[0] - (plan_.frame ? plan_.frame->over.across() : kNone);
  carcase.height = plan_.size[1];
  carcase.depth = plan_.size[2] - carcase.front - behind;
  make_framed_ends();
  // Flush with the frame's bottom rail, so that what stands behind it slides out.
  const Length rail = plan_.frame ? plan_.frame->foot() : kNone;
  carcase.floor = carcase.toe.height + std::max(rail, carcase.stuff.thickness);
  const Length inside = carcase.inside_right() - carcase.inside_left();
  if (inside <= kNone)
    ledger_.problem({"size.width", "case.thickness"},
                    fmt::format("two sides of {} leave nothing between them; make it wider",
                                ledger_.say(carcase.stuff.thickness)));
  if (carcase.ceiling() <= carcase.floor)
    ledger_.problem({"size.height", "toe.height"},
                    "toe, bottom and top leave nothing between them; make it higher");
  if (carcase.rail_width == kNone && runs_on_wood(ledger_.spec) && has_drawers(spec_.layout))
    carcase.rail_width = ledger_.take("case.rail_width", ledger_.pick(100'000, 4, 1),
                                      "for the rails between drawers");
  make_framed_back();
  demand_room_for_tails();
  if (carcase.back_front() <= carcase.front + carcase.rail_width)
    ledger_.problem({"size.depth", "case.back.from_back"},
                    "what stands before the back leaves no depth in the case; make it deeper");
}

void CabinetPlanner::make_framed_ends() {
  CarcasePlan& carcase = plan_.carcase;
  if (!carcase.framed_ends || carcase.depth <= kNone || carcase.height <= carcase.foot()) return;
  carcase.end = framework(spec_.end, {"a framed end", "case.end", "case.ends"}, carcase.depth,
                          carcase.height - carcase.foot());
}

void CabinetPlanner::make_framed_back() {
  BackPlan& back = plan_.carcase.back;
  if (!back.framed || back.fit == BackFit::none) return;
  const Area area = plan_.carcase.back_area();
  if (area.width() <= kNone || area.height() <= kNone) return;
  Spec leaf = spec_.back;
  leaf.set("thickness", back.stuff.thickness);
  back.made = framework(std::move(leaf), {"a framed back", "case.back.leaf", "case.back.made"},
                        area.width(), area.height());
}

std::optional<Assembly> CabinetPlanner::framework(Spec its, const FrameworkPart& part, Length width,
                                                  Length height) {
  MadeFramework made = make_framework(spec_, std::move(its), part, width, height);
  for (Assumed& it : made.assumed)
    ledger_.assumed.push_back(std::move(it));
  const bool clean = made.problems.empty();
  add(ledger_.problems, std::move(made.problems));
  return clean ? std::optional(std::move(made.wood)) : std::nullopt;
}

/// Of what ends with the sides.
void CabinetPlanner::demand_room_for_tails() {
  const CarcasePlan& carcase = plan_.carcase;
  if (!carcase.tails) return;
  const auto demand = [&](CaseEnd end) {
    if (end == CaseEnd::none) return;
    const bool whole = end == CaseEnd::whole;
    const Length width = whole ? carcase.whole_width() : carcase.rail_width;
    if (carcase.tails->across(width, whole ? carcase.back_groove() : std::nullopt).empty())
      ledger_.problem({"case.tails.number", "case.tails.half_pin", "case.tails.pin", "size.depth"},
                      fmt::format("its pins and half pins leave no tails in {}; make them less, or "
                                  "fewer",
                                  ledger_.say(width)));
  };
  demand(carcase.top);
  if (carcase.bottom_at_end()) demand(carcase.bottom);
}

void CabinetPlanner::settle_fronts() {
  const bool framed = ledger_.spec.said_by("face_frame") == SaidBy::spec;
  plan_.meets =
      ledger_.choose<Meets>("fronts.meets", framed ? Meets::inset : Meets::overlay,
                            framed ? "usual with a face frame" : "usual without a face frame");
  const bool inset = plan_.meets == Meets::inset;
  plan_.gap =
      ledger_.take("fronts.gap", inset ? ledger_.pick(2'000, 1, 16) : ledger_.pick(3'000, 1, 8),
                   inset ? "usual round an inset front" : "usual between fronts");
  if (ledger_.spec.speaks_of("fronts.hinges")) plan_.hinges = settle_cup_hinges(ledger_);
  plan_.pin_out = ledger_.pick(6'000, 1, 4);
  plan_.front_stuff.thickness =
      ledger_.take("fronts.thickness", ledger_.pick(20'000, 3, 4), "usual for a front");
  plan_.front_stuff.material = ledger_.spec.text("fronts.material");
  if (!plan_.front_stuff.material.empty())
    plan_.front_stuff.matter = matter_of(plan_.front_stuff.material);
  settle_front_strip();
}

/// Round plain fronts of board.
void CabinetPlanner::settle_front_strip() {
  if (!ledger_.spec.speaks_of("fronts.edge_strip")) return;
  Stuff& strip = plan_.front_strip;
  const Stuff& front = plan_.front_stuff;
  strip.thickness = ledger_.settle("fronts.edge_strip.thickness", kNone, "none is said");
  strip.material = ledger_.spec.text("fronts.edge_strip.material");
  if (strip.material.empty()) {
    strip.material = front.material;
    ledger_.assume("fronts.edge_strip.material", front.material, "as the fronts");
  }
  if (front.matter == Matter::board) return;
  strip.thickness = kNone;
  if (ledger_.spec.said_by("fronts.edge_strip") == SaidBy::spec)
    ledger_.problem({"fronts.edge_strip"},
                    "is for plain fronts of board, and these are of wood; take it out, or say by "
                    "\"material\" what board they are of");
}

// ---- what divides it

/// Of a case without a frame what stands between its parts is as thick as its stuff.
LayoutRules CabinetPlanner::rules() const {
  LayoutRules rules;
  rules.unit = ledger_.unit;
  rules.meets = plan_.meets;
  rules.gap = plan_.gap;
  rules.upright = rules.level = plan_.carcase.stuff.thickness;
  rules.framed = false;
  rules.wooden_runners = runs_on_wood(ledger_.spec);
  return rules;
}

/// Beside it a filler stands as wide as is said beside the front that lies over it.
void CabinetPlanner::settle_blind(const Sides& reach) {
  if (!ledger_.spec.speaks_of("blind")) return;
  CarcasePlan& carcase = plan_.carcase;
  BlindPlan blind;
  blind.right = ledger_.spec.word<Side>("blind.side") == Side::right;
  blind.width = ledger_.spec.size("blind.width").value_or(Length());
  blind.filler =
      ledger_.settle("blind.filler", ledger_.pick(50'000, 2, 1), "usual beside a corner") +
      std::max(kNone, blind.right ? reach.right : reach.left);
  const Length side = carcase.side_thickness();
  if (blind.width <= side || carcase.width - blind.width - blind.filler <= side)
    ledger_.problem({"blind.width", "blind.filler", "size.width"},
                    fmt::format("{} and a filler of {} leave nothing of {} between sides of {}",
                                ledger_.say(blind.width), ledger_.say(blind.filler),
                                ledger_.say(carcase.width), ledger_.say(side)));
  else
    carcase.blind = blind;
}

/// What cannot stand beside a blind part: there is but a filler there.
void CabinetPlanner::doubt_blind() {
  const auto& blind = plan_.carcase.blind;
  if (!blind) return;
  for (const LaidOpening& opening : plan_.layout.openings) {
    const bool beside = blind->right ? !opening.by.right : !opening.by.left;
    const FrontKind front = opening.node->front();
    if (!beside) continue;
    if (front == FrontKind::drawer)
      ledger_.problems.push_back({opening.node->path,
                                  "beside a blind part a drawer has nothing to run on; put a "
                                  "partition between them: \"columns\", the first of them narrow",
                                  {}});
    const Side hangs = opening.node->said.word<Side>("hangs").value_or(Side::left);
    const bool on_it = front == FrontKind::pair ||
                       (front == FrontKind::door && (hangs == Side::right) == blind->right);
    if (plan_.hinges && on_it)
      ledger_.problems.push_back({opening.node->path,
                                  "the plates of its hinges have no side to stand on beside a "
                                  "blind part; let it hang from the other side",
                                  {}});
  }
}

void CabinetPlanner::divide() {
  const CarcasePlan& carcase = plan_.carcase;
  const Length thickness = carcase.stuff.thickness;
  LayoutRules its = rules();
  its.reach = reach_over({thickness, thickness, plan_.size[1] - carcase.ceiling(), thickness},
                         plan_.meets, plan_.gap);
  settle_blind(its.reach);
  plan_.layout =
      resolve(spec_.layout,
              {carcase.sight_left(), carcase.sight_right(), carcase.floor, carcase.ceiling()}, its);
  add(ledger_.problems, plan_.layout.problems);
  doubt_blind();
}

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

static bool has_loose_shelves(const LayoutNode& node) {
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
static bool assumes_books(const CabinetPlan& plan, const LayoutNode& layout) {
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

// ---- fronts

std::string CabinetPlanner::next_path(FrontKind kind) {
  const FrontKind counted = kind == FrontKind::pair ? FrontKind::door : kind;
  const std::string_view word = counted == FrontKind::fixed ? "front" : word_of(counted);
  return fmt::format("{}-{}", word, ++counts_[counted]);
}

void CabinetPlanner::add_front(const LaidOpening& opening, FrontKind kind, const Area& at,
                               Side hangs) {
  FrontPlan front;
  front.node = opening.node;
  front.kind = kind;
  front.at = at;
  front.sight = opening.sight;
  front.hangs = hangs;
  front.path = next_path(kind);
  front.left = inner_at(opening.by.left);
  front.right = inner_at(opening.by.right);
  front.room = {plan_.gap, plan_.gap, plan_.gap, plan_.gap};
  if (plan_.meets == Meets::overlay) front.lap = opening.reach;
  plan_.fronts.push_back(std::move(front));
}

void CabinetPlanner::list_fronts() {
  for (const LaidOpening& opening : plan_.layout.openings) {
    const FrontKind kind = opening.node->front();
    const Area at = opening.front();
    if (kind == FrontKind::none) continue;
    if (at.width() <= plan_.gap || at.height() <= kNone) {
      ledger_.problems.push_back({opening.node->path,
                                  fmt::format("leaves {} by {} for its front; give it more room",
                                              ledger_.say(at.width()), ledger_.say(at.height())),
                                  {}});
      continue;
    }
    if (kind != FrontKind::pair) {
      const Side hangs = opening.node->said.word<Side>("hangs").value_or(Side::left);
      add_front(opening, kind, at, hangs);
      continue;
    }
    const Length half = floor_half(at.width() - plan_.gap);
    add_front(opening, kind, {at.left, at.left + half, at.low, at.high}, Side::left);
    add_front(opening, kind, {at.left + half + plan_.gap, at.right, at.low, at.high}, Side::right);
  }
}

/// Whether a front has another beside it, and how far away; of those that lie over the front, what
/// has none beside it has no gap to be measured.
void CabinetPlanner::look_beside() {
  for (FrontPlan& front : plan_.fronts) {
    std::optional<Length> left, right, head, foot;
    const auto nearer = [](std::optional<Length>& nearest, Length gap) {
      if (gap >= kNone && (!nearest || gap < *nearest)) nearest = gap;
    };
    for (const FrontPlan& other : plan_.fronts) {
      if (&other == &front) continue;
      const Area& a = front.at;
      const Area& b = other.at;
      if (a.low < b.high && b.low < a.high) {
        nearer(left, a.left - b.right);
        nearer(right, b.left - a.right);
      }
      if (a.left < b.right && b.left < a.right) {
        nearer(head, b.low - a.high);
        nearer(foot, a.low - b.high);
      }
    }
    const auto take = [&](std::optional<Length> gap, Length& room, bool& beside) {
      const bool near = gap && *gap <= plan_.gap * 2;
      if (plan_.meets == Meets::overlay) beside = near;
      if (near) room = *gap;
    };
    take(left, front.room.left, front.beside.left);
    take(right, front.room.right, front.beside.right);
    take(head, front.room.head, front.beside.head);
    take(foot, front.room.foot, front.beside.foot);
  }
}

/// Grain runs on from front to front where some stand so.
void CabinetPlanner::doubt_grain() {
  const Key key = "fronts.grain_runs_on";
  if (!ledger_.spec.says(key) || ledger_.stated(key).by_shop) return;
  if (stacks_of_plain_fronts(plan_).empty())
    ledger_.problem({key},
                    "no two plain fronts of one width stand one above the other; take it out");
}

PlannedCabinet CabinetPlanner::planned() {
  add_fitting_levers(ledger_);  // of two remedies as small, the fitting is moved sooner
  settle_size();
  plan_.carcase = settle_carcase(ledger_);
  settle_fronts();
  if (ledger_.clean()) settle_frame();
  if (ledger_.clean()) place_case();
  if (has_loose_shelves(spec_.layout))
    shelf_play_ = ledger_.take("case.shelf_play", ledger_.pick(3'000, 1, 8),
                               "so that they go in and come out");
  if (ledger_.clean() && !plan_.frame) divide();
  if (ledger_.clean()) {
    place_inner();
    place_shelves();
    mark_opposed();
    refuse_idle_joints(ledger_, plan_.carcase);
    place_runs();
    list_fronts();
    look_beside();
    doubt_grain();
    planned_.chains = chains_of(plan_);
    planned_.cautions = cabinet_cautions(plan_);
    if (assumes_books(plan_, spec_.layout))
      ledger_.assume("layout", std::string("shelves carry books"),
                     "no load is said: 30 kg on a metre, 20 lb on a running foot (a shop "
                     "magazine's figure)");
  }
  ledger_.note_names();
  planned_.assumed = std::move(ledger_.assumed);
  planned_.levers = std::move(ledger_.levers);
  planned_.problems = std::move(ledger_.problems);
  return std::move(planned_);
}

}  // namespace

PlannedCabinet plan_cabinet(const CabinetSpec& spec) {
  return CabinetPlanner(spec).planned();
}

}  // namespace haunch
