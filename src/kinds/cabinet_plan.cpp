#include "cabinet_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "bare_gap.h"
#include "cabinet_cautions.h"
#include "cabinet_chains.h"
#include "cabinet_planner.h"
#include "door_defaults.h"
#include "drawer_plan.h"
#include "fittings.h"
#include "front_grain.h"

namespace haunch {

static constexpr Length kNone;

static bool has_drawers(const LayoutNode& node) {
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
                                            .rules = rules(),
                                            .share = spec_.share});
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
  plan_.gap = bare_gap(
      ledger_.spec,
      ledger_.take("fronts.gap", inset ? ledger_.pick(2'000, 1, 16) : ledger_.pick(3'000, 1, 8),
                   inset ? "usual round an inset front" : "usual between fronts"));
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
  planned_.take(ledger_);
  return std::move(planned_);
}

PlannedCabinet plan_cabinet(const CabinetSpec& spec) {
  return CabinetPlanner(spec).planned();
}

}  // namespace haunch
