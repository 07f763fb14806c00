#include "carcase_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "materials.h"

namespace haunch {
namespace {

constexpr std::string_view kUsualCase = "usual for a case";
constexpr std::string_view kUsualBack = "usual for a back";
constexpr std::string_view kStillBack =
    "it does not move to matter; a wood may be named in its place";
constexpr std::string_view kUsualFeet = "usual for feet";

Length whole(const Ledger& ledger) {
  return ledger.pick(1'000, 1, 16);
}

// ---- what it is made of

Stuff stuff_of(Ledger& ledger, Key material, SizeKey thickness, const Stuff& usual,
               std::string_view why, std::string_view why_such = {}) {
  Stuff stuff;
  const std::string& said = ledger.spec.text(material);
  stuff.material = said.empty() ? usual.material : said;
  if (said.empty()) ledger.assume(material, stuff.material, why_such.empty() ? why : why_such);
  if (!said.empty() && ledger.stated(material).by_shop) ledger.note_shop(material, stuff.material);
  stuff.matter = matter_of(stuff.material);
  stuff.thickness = ledger.take(thickness, usual.thickness, why);
  return stuff;
}

void settle_stuff(Ledger& ledger, CarcasePlan& plan) {
  plan.stuff = stuff_of(ledger, "case.material", "case.thickness",
                        {"birch plywood", Matter::board, ledger.pick(18'000, 23, 32)}, kUsualCase);
  if (plan.stuff.matter == Matter::wood)
    plan.season = seasonal_part(ledger.spec, plan.stuff.material);
  plan.screw = ledger.spec.size("fronts.drawer.screw").value_or(ledger.pick(4'500, 3, 16));
}

// ---- how its parts meet

/// A share of a thickness, down to whole millimetres or sixteenths.
Length part_of(const Ledger& ledger, Length thickness, int share) {
  return std::max(floor_multiple(floor_divide(thickness, share), whole(ledger)), whole(ledger));
}

/// Of holes in so thick a face: with what is left below each dowel, and so much behind.
void settle_dowels(Ledger& ledger, CarcasePlan& plan) {
  const Length thickness = plan.stuff.thickness;
  CaseDowels dowels;
  dowels.bottom = ledger.pick(500, 1, 64);
  dowels.bore = ledger.take("case.dowels.diameter", ledger.pick(8'000, 5, 16),
                            "usual in boards of 16 to 22 mm, 5/8 to 7/8 in (trade practice)");
  dowels.diameter = dowels.bore - plan.allowance;
  const Length behind = ledger.pick(5'000, 3, 16) + dowels.bottom;
  dowels.depth =
      ledger.take("case.dowels.depth",
                  std::max(floor_multiple(thickness - behind, whole(ledger)), whole(ledger)),
                  "what leaves 5 mm, 3/16 in, behind its hole");
  dowels.depth_in_end =
      ledger.take("case.dowels.depth_in_end", dowels.bore * 3, "three times as deep as thick");
  dowels.from_edge = ledger.take("case.dowels.from_edge", ledger.pick(40'000, 3, 2),
                                 "near the edges, where ends would open");
  dowels.spacing = ledger.settle("case.dowels.spacing", ledger.pick(150'000, 6, 1),
                                 "usual in a case (trade practice)");
  if (dowels.bore >= thickness || dowels.depth + dowels.bottom >= thickness)
    ledger.problem({"case.dowels.depth", "case.dowels.diameter", "case.thickness"},
                   fmt::format("holes of {}, {} deep, come out of what is {} thick; make them less",
                               ledger.say(dowels.bore), ledger.say(dowels.depth + dowels.bottom),
                               ledger.say(thickness)));
  plan.dowels = dowels;
}

void settle_tails(Ledger& ledger, CarcasePlan& plan) {
  const Length thickness = plan.stuff.thickness;
  const Length lap = ledger.take("case.lap", part_of(ledger, thickness, 4),
                                 "a quarter of the thickness: tails are three quarters (trade "
                                 "article)");
  if (lap >= thickness)
    ledger.problem({"case.lap"},
                   fmt::format("a lap of {} leaves nothing behind it in {}; make it less",
                               ledger.say(lap), ledger.say(thickness)));
  CaseTails tails;
  tails.settled =
      settle_tails(ledger,
                   {"case.tails.number", "case.tails.slope", "case.tails.widest", "case.tails.pin",
                    "case.tails.half_pin"},
                   {part_of(ledger, thickness, 2), "half of the thickness (trade practice)",
                    ledger.pick(45'000, 7, 4)});
  tails.length = thickness - lap;
  tails.spread = floor_divide(tails.length, tails.settled.slope);
  plan.tails = tails;
}

/// How far housings, rebates and tongues with what holds them go in.
void settle_depth(Ledger& ledger, CarcasePlan& plan) {
  const Length thickness = plan.stuff.thickness;
  plan.joint_depth = ledger.take("case.joint_depth", part_of(ledger, thickness, 3),
                                 "a third of the thickness (trade practice: a quarter to a third)");
  plan.opposed_depth =
      ledger.stated("case.joint_depth").stated ? plan.joint_depth : part_of(ledger, thickness, 4);
  if (plan.joint_depth >= thickness)
    ledger.problem({"case.joint_depth"},
                   fmt::format("{} is not less than the thickness of {}; leave wood behind",
                               ledger.say(plan.joint_depth), ledger.say(thickness)));
}

void settle_joints(Ledger& ledger, CarcasePlan& plan) {
  plan.framed_ends =
      ledger.choose<CaseSides>("case.ends", CaseSides::boards, kUsualCase) == CaseSides::framed;
  plan.joint = ledger.choose<CaseJoint>(
      "case.joint", plan.framed_ends ? CaseJoint::butted : CaseJoint::housed,
      plan.framed_ends ? "usual between framed ends: held by screws or cleats" : kUsualCase);
  if (plan.framed_ends && plan.joint != CaseJoint::butted && plan.joint != CaseJoint::dowel)
    ledger.problem({"case.joint"},
                   "what is let in to a framed end would run out beside its panel; write "
                   "\"butted\" or \"dowel\"");
  const bool wood = plan.stuff.matter == Matter::wood;
  plan.allowance =
      ledger.take("case.fit_allowance", wood ? ledger.pick(200, 1, 128) : ledger.pick(100, 1, 128),
                  wood ? "so that what is housed or grooved goes home, and may swell"
                       : "so that what is housed or grooved goes home");
  settle_case_joint(ledger, plan, plan.joint);
}

void settle_ends(Ledger& ledger, CarcasePlan& plan) {
  plan.top = ledger.choose<CaseEnd>("case.top", CaseEnd::whole, kUsualCase);
  plan.bottom = ledger.choose<CaseEnd>("case.bottom", CaseEnd::whole, kUsualCase);
  if (plan.top == CaseEnd::rails || plan.bottom == CaseEnd::rails)
    plan.rail_width = ledger.take("case.rail_width", ledger.pick(100'000, 4, 1),
                                  "room for screws into a worktop");
}

// ---- back

/// How deep a back stands in the sides, and what is left there. Boards as one panel swell and
/// shrink half at each side: they want room, and are to stay in their grooves, as far as the sides
/// are thick enough for it.
void settle_depth_of_back(Ledger& ledger, CarcasePlan& plan) {
  BackPlan& back = plan.back;
  const bool grooved = back.fit == BackFit::grooved;
  const Length thickness = plan.stuff.thickness;
  // One sees through the room below tongues, were it not behind the back.
  const bool tongued = plan.joint == CaseJoint::tongued;
  const Length usual_depth =
      (plan.joint_depth > Length() ? plan.joint_depth : part_of(ledger, thickness, 3)) +
      (tongued ? whole(ledger) : Length());
  const Length usual_gap = grooved ? ledger.pick(1'000, 1, 32) : Length();
  if (back.stuff.matter != Matter::wood || back.framed) {
    back.depth = ledger.take("case.back.depth", usual_depth,
                             tongued ? "deeper than the housings of tongues, which it closes"
                                     : "as deep as the case's joints");
    back.gap = ledger.take("case.back.gap", usual_gap,
                           grooved ? "so that it goes in" : "it closes the case");
    return;
  }
  const SeasonalPart season = seasonal_part(ledger.spec, back.stuff.material);
  const Length width = ledger.spec.size("size.width").value_or(Length()) - thickness;
  const Length step = ledger.pick(500, 1, 64);
  const Length swells = ceiling_multiple(floor_half(season.swells(width)), step);
  const Length shrinks = ceiling_multiple(floor_half(season.shrinks(width)), step);
  const Length bite = ledger.pick(3'000, 1, 8);
  const Length wanted = ceiling_multiple(usual_gap + swells + shrinks + bite, whole(ledger));
  back.depth = ledger.take("case.back.depth",
                           std::max(std::min(wanted, part_of(ledger, thickness, 2)), usual_depth),
                           "so that a back of wood may move in it, at most half of the sides");
  const Length most = std::max(back.depth - shrinks - bite, usual_gap);
  back.gap = ledger.take("case.back.gap", std::min(usual_gap + swells, most),
                         "room for a back of wood in the wettest month, as far as it then stays in "
                         "at its driest");
}

void settle_back(Ledger& ledger, CarcasePlan& plan) {
  BackPlan& back = plan.back;
  back.framed = ledger.choose<CaseSides>("case.back.made", CaseSides::boards, kUsualBack) ==
                CaseSides::framed;
  const bool rebated = back.framed || plan.framed_ends;
  const bool both = back.framed && plan.framed_ends;
  back.fit = ledger.choose<BackFit>("case.back.fit",
                                    both      ? BackFit::planted
                                    : rebated ? BackFit::rebated
                                              : BackFit::grooved,
                                    both ? "rebates so wide would cut the mortises of framed ends"
                                    : back.framed ? "a framework is too thick for grooves"
                                    : plan.framed_ends
                                        ? "its grooves would meet the mortises of framed ends"
                                        : kUsualBack);
  if (back.framed && back.fit != BackFit::rebated && back.fit != BackFit::planted)
    ledger.problem({"case.back.fit", "case.back.made"},
                   "a framed back lies in rebates or is planted; write \"rebated\" or \"planted\"");
  if (back.fit == BackFit::none) return;
  const bool wood = plan.stuff.matter == Matter::wood;
  if (back.framed)
    back.stuff.thickness =
        ledger.take("case.back.thickness", ledger.pick(20'000, 3, 4), "usual for a framework");
  else
    back.stuff = stuff_of(
        ledger, "case.back.material", "case.back.thickness",
        {wood ? "birch plywood" : plan.stuff.material, Matter::board, ledger.pick(6'000, 1, 4)},
        kUsualBack, wood ? kStillBack : kUsualBack);
  if (back.fit == BackFit::planted) return;
  settle_depth_of_back(ledger, plan);
  if (back.fit == BackFit::grooved) {
    back.groove = back.stuff.thickness + plan.allowance;
    const bool hangs = ledger.spec.speaks_of("hanging");
    back.from_back =
        ledger.take("case.back.from_back", hangs ? plan.stuff.thickness : ledger.pick(12'000, 1, 2),
                    hangs ? "room for what it hangs on behind it"
                          : "room for a rail behind it, and to scribe the sides to a wall");
  }
  if (back.depth >= plan.stuff.thickness || back.gap >= back.depth)
    ledger.problem({"case.back.depth", "case.back.gap"},
                   fmt::format("a back that stands {} deep less {} in sides of {} cannot be; leave "
                               "wood behind, and some of the back within",
                               ledger.say(back.depth), ledger.say(back.gap),
                               ledger.say(plan.stuff.thickness)));
}

// ---- toe

/// A case on feet stands off the floor as one on legs does.
void settle_feet(Ledger& ledger, CarcasePlan& plan) {
  if (ledger.spec.said_by("toe") == SaidBy::spec)
    ledger.problem({"feet"}, "it stands on feet or on a toe; keep one of the two");
  if (plan.bottom == CaseEnd::none)
    ledger.problem({"feet", "case.bottom"},
                   "there is no bottom that feet could stand below; write \"whole\" or \"rails\"");
  plan.toe.by = ToeBy::legs;
  plan.toe.height = ledger.take("feet.height", ledger.pick(60'000, 5, 2), kUsualFeet);
  FeetPlan feet;
  feet.width = ledger.take("feet.width", ledger.pick(60'000, 5, 2), kUsualFeet);
  feet.from_edge = ledger.take("feet.from_edge", ledger.pick(20'000, 3, 4), kUsualFeet);
  plan.toe.feet = feet;
}

void settle_toe(Ledger& ledger, CarcasePlan& plan) {
  if (ledger.spec.speaks_of("feet")) return settle_feet(ledger, plan);
  ToePlan& toe = plan.toe;
  const bool stated = ledger.spec.speaks_of("toe");
  toe.by = ledger.choose<ToeBy>("toe.by",
                                !stated            ? ToeBy::none
                                : plan.framed_ends ? ToeBy::base
                                                   : ToeBy::notched,
                                !stated ? "it stands or hangs on its sides"
                                : plan.framed_ends
                                    ? "a notch would cut the joints at the foot of framed ends"
                                    : "usual for a toe");
  if (plan.framed_ends && toe.by == ToeBy::notched)
    ledger.problem({"toe.by"},
                   "a notch would cut the joint of stile and rail at the foot of a framed end; "
                   "write \"base\" or \"legs\"");
  if (!toe.is_there()) return;
  toe.height = ledger.take("toe.height", ledger.pick(100'000, 4, 1), "usual for a toe");
  if (toe.by == ToeBy::notched)
    toe.clear = ceiling_multiple(plan.season.swells(toe.height), ledger.pick(500, 1, 64));
  toe.setback = ledger.take("toe.setback", ledger.pick(60'000, 5, 2), "room for toes");
}

// ---- edges, and what it hangs on

void settle_strips(Ledger& ledger, CarcasePlan& plan) {
  if (!ledger.spec.speaks_of("case.edge_strip")) return;
  StripPlan& strips = plan.strips;
  strips.front = ledger.spec.size("case.edge_strip.front").value_or(Length());
  strips.rear = ledger.spec.size("case.edge_strip.rear").value_or(Length());
  if (strips.front + strips.rear >= plan.stuff.thickness * 2)
    ledger.problem(
        {"case.edge_strip.front", "case.edge_strip.rear"},
        fmt::format("strips of {} in all are no edges of stuff of {}: under twice as "
                    "much can be glued to it",
                    ledger.say(strips.front + strips.rear), ledger.say(plan.stuff.thickness)));
  const std::string& material = ledger.spec.text("case.edge_strip.material");
  strips.material = material.empty() ? plan.stuff.material : material;
}

/// A rail or cleats of the case's own stuff, behind the back.
void settle_hanging(Ledger& ledger, CarcasePlan& plan) {
  if (!ledger.spec.speaks_of("hanging")) return;
  const auto cleat = ledger.spec.size("hanging.cleat");
  plan.hanging = HangingPlan{cleat.has_value(),
                             cleat.value_or(ledger.spec.size("hanging.rail").value_or(Length()))};
  const Length thickness = plan.stuff.thickness;
  if (plan.back.fit != BackFit::grooved || plan.back.from_back < thickness)
    ledger.problem(
        {"hanging"},
        fmt::format("what it hangs on stands behind a grooved back, and there {} are left for its "
                    "{}; write \"fit\": \"grooved\" and \"from_back\": {} under \"back\"",
                    ledger.say(plan.back.fit == BackFit::grooved ? plan.back.from_back : Length()),
                    ledger.say(thickness), ledger.say(thickness)));
  if (plan.hanging->height <= thickness * 2)
    ledger.problem({cleat ? Where("hanging.cleat") : Where("hanging.rail")},
                   fmt::format("is too low for screws into a wall; give more than twice its "
                               "thickness of {}",
                               ledger.say(thickness)));
}

// ---- what shelves carry

/// What a metre of shelf carries, in kg: books 20 lb on a running foot (a shop magazine's figure),
/// the others estimates of the trade.
constexpr struct {
  Load load;
  double kg;
} kLoads[] = {{Load::books, 30}, {Load::clothes, 20}, {Load::crockery, 60}};

}  // namespace

double ShelfLoad::of(Length length) const {
  const double metres = static_cast<double>(length.steps()) / Length::kStepsPerMm / 1000;
  return each_metre ? kg * metres : kg;
}

ShelfLoad usual_load(Load load) {
  for (const auto& its : kLoads)
    if (its.load == load) return {its.kg, true};
  return {};
}

Matter matter_of(std::string_view material) {
  if (material == "glass" || material.ends_with(" glass")) return Matter::glass;
  return is_sheet_goods(material) ? Matter::board : Matter::wood;
}

Length CarcasePlan::back_face() const {
  const bool grooved = back.fit == BackFit::grooved;
  return back_front() + (grooved ? floor_half(back.groove - back.stuff.thickness) : Length());
}

Length CarcasePlan::back_front() const {
  switch (back.fit) {
    case BackFit::grooved:
      return rear() - back.from_back - back.groove;
    case BackFit::rebated:
      return rear() - back.stuff.thickness;
    case BackFit::planted:
    case BackFit::none:
      break;
  }
  return rear();
}

Area CarcasePlan::back_area() const {
  const Length within = back.depth - back.gap;  // of the sides; a planted one lies over them
  const Length aside = back.fit == BackFit::planted ? side_thickness() : within;
  const bool grooved = back.fit == BackFit::grooved;
  Area area{inside_left() - aside, inside_right() + aside, floor - stuff.thickness, height};
  if (grooved && bottom == CaseEnd::whole) area.low = floor - within;
  if (grooved && top == CaseEnd::whole) area.high = ceiling() + within;
  return area;
}

Length CarcasePlan::whole_width() const {
  return (back.fit == BackFit::rebated ? back_front() : rear()) - front;
}

std::optional<Strip> CarcasePlan::back_groove() const {
  if (back.fit != BackFit::grooved) return {};
  const Length low = back_front() - front;
  return Strip{low, low + back.groove};
}

std::vector<Length> CaseDowels::across(Length width) const {
  const Length first = std::min(from_edge, floor_divide(width, 4));
  const Length between = width - first * 2;
  const std::int64_t gaps =
      std::max<std::int64_t>(1, (between.steps() + spacing.steps() - 1) / spacing.steps());
  std::vector<Length> walls;
  for (std::int64_t i = 0; i <= gaps; ++i)
    walls.push_back(first + floor_divide(between * i, static_cast<int>(gaps)) - floor_half(bore));
  return walls;
}

std::vector<Strip> CaseTails::across(Length width, std::optional<Strip> groove) const {
  TailSpacing spacing = settled.spacing;
  spacing.between = {Length(), width};
  spacing.spread = spread;
  spacing.groove = groove;
  return space_tails(spacing);
}

void settle_case_joint(Ledger& ledger, CarcasePlan& plan, CaseJoint joint) {
  const bool let_in = joint != CaseJoint::butted && joint != CaseJoint::dowel;
  if (let_in && plan.joint_depth == Length()) settle_depth(ledger, plan);
  plan.round_stop = !ledger.spec.cutters.empty();
  if (joint == CaseJoint::stopped_housing && plan.stop == Length())
    plan.stop = ledger.take("case.stop", ledger.pick(12'000, 1, 2),
                            "so that the housing is not seen from the front");
  if (joint == CaseJoint::tongued && plan.tongue == Length()) {
    plan.tongue = ledger.take("case.tongue", part_of(ledger, plan.stuff.thickness, 2),
                              "half the thickness, flush with the lower or left face");
    plan.below_tongue = ledger.pick(500, 1, 64);
  }
  if (joint == CaseJoint::dowel && !plan.dowels) settle_dowels(ledger, plan);
  if (joint == CaseJoint::lapped_dovetail && !plan.tails) settle_tails(ledger, plan);
}

void refuse_idle_joints(Ledger& ledger, const CarcasePlan& plan) {
  const auto refuse = [&](Key key, bool has, std::string_view why) {
    if (!has && ledger.spec.said_by(key) == SaidBy::spec)
      ledger.problem({key}, fmt::format("has no part in this case: {}; take it out", why));
  };
  refuse("case.dowels", plan.dowels.has_value(), "it has no dowels");
  refuse("case.tails", plan.tails.has_value(), "it has no dovetails");
  refuse("case.lap", plan.tails.has_value(), "it has no dovetails");
}

CarcasePlan settle_carcase(Ledger& ledger) {
  CarcasePlan plan;
  settle_stuff(ledger, plan);
  settle_joints(ledger, plan);
  settle_ends(ledger, plan);
  settle_back(ledger, plan);
  settle_toe(ledger, plan);
  settle_strips(ledger, plan);
  settle_hanging(ledger, plan);
  return plan;
}

}  // namespace haunch
