#include "carcase_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "materials.h"

namespace haunch {
namespace {

constexpr std::string_view kUsualCase = "usual for a case";
constexpr std::string_view kUsualBack = "usual for a back";

Length whole(const Ledger& ledger) {
  return ledger.pick(1'000, 1, 16);
}

// ---- what it is made of

Stuff stuff_of(Ledger& ledger, Key material, SizeKey thickness, const Stuff& usual,
               std::string_view why) {
  Stuff stuff;
  const std::string& said = ledger.spec.text(material);
  stuff.material = said.empty() ? usual.material : said;
  if (said.empty()) ledger.assume(material, stuff.material, why);
  if (!said.empty() && ledger.stated(material).by_shop) ledger.note_shop(material, stuff.material);
  stuff.matter = matter_of(stuff.material);
  stuff.thickness = ledger.take(thickness, usual.thickness, why);
  return stuff;
}

void settle_stuff(Ledger& ledger, CarcasePlan& plan) {
  plan.stuff = stuff_of(ledger, "case.material", "case.thickness",
                        {"birch plywood", Matter::board, ledger.pick(18'000, 23, 32)}, kUsualCase);
}

// ---- how its parts meet

/// A share of a thickness, down to whole millimetres or sixteenths.
Length part_of(const Ledger& ledger, Length thickness, int share) {
  return std::max(floor_multiple(floor_divide(thickness, share), whole(ledger)), whole(ledger));
}

void settle_joints(Ledger& ledger, CarcasePlan& plan) {
  const Length thickness = plan.stuff.thickness;
  plan.joint = ledger.choose<CaseJoint>("case.joint", CaseJoint::housed, kUsualCase);
  plan.allowance = ledger.take("case.fit_allowance", ledger.pick(100, 1, 128),
                               "so that what is housed or grooved goes home");
  const bool let_in = plan.joint != CaseJoint::butted && plan.joint != CaseJoint::dowel;
  if (let_in) {
    plan.joint_depth =
        ledger.take("case.joint_depth", part_of(ledger, thickness, 3),
                    "a third of the thickness (trade practice: a quarter to a third)");
    plan.opposed_depth =
        ledger.stated("case.joint_depth").stated ? plan.joint_depth : part_of(ledger, thickness, 4);
  }
  if (plan.joint == CaseJoint::stopped_housing)
    plan.stop = ledger.take("case.stop", ledger.pick(12'000, 1, 2),
                            "so that the housing is not seen from the front");
  if (plan.joint == CaseJoint::tongued) {
    plan.tongue = ledger.take("case.tongue", part_of(ledger, thickness, 2),
                              "half the thickness, flush with the lower or left face");
    plan.below_tongue = ledger.pick(500, 1, 64);
  }
  if (let_in && plan.joint_depth >= thickness)
    ledger.problem({"case.joint_depth"},
                   fmt::format("{} is not less than the thickness of {}; leave wood behind",
                               ledger.say(plan.joint_depth), ledger.say(thickness)));
}

void settle_ends(Ledger& ledger, CarcasePlan& plan) {
  plan.top = ledger.choose<CaseEnd>("case.top", CaseEnd::whole, kUsualCase);
  plan.bottom = ledger.choose<CaseEnd>("case.bottom", CaseEnd::whole, kUsualCase);
  if (plan.top == CaseEnd::rails || plan.bottom == CaseEnd::rails)
    plan.rail_width = ledger.take("case.rail_width", ledger.pick(100'000, 4, 1),
                                  "room for screws into a worktop");
}

// ---- back

void settle_back(Ledger& ledger, CarcasePlan& plan) {
  BackPlan& back = plan.back;
  back.fit = ledger.choose<BackFit>("case.back.fit", BackFit::grooved, kUsualBack);
  if (back.fit == BackFit::none) return;
  back.stuff =
      stuff_of(ledger, "case.back.material", "case.back.thickness",
               {plan.stuff.material, plan.stuff.matter, ledger.pick(6'000, 1, 4)}, kUsualBack);
  if (back.fit == BackFit::planted) return;
  const Length usual =
      plan.joint_depth > Length() ? plan.joint_depth : part_of(ledger, plan.stuff.thickness, 3);
  back.depth = ledger.take("case.back.depth", usual, "as deep as the case's joints");
  back.gap = ledger.take(
      "case.back.gap", back.fit == BackFit::grooved ? ledger.pick(1'000, 1, 32) : Length(),
      back.fit == BackFit::grooved ? "so that it goes in" : "it closes the case");
  if (back.fit == BackFit::grooved) {
    back.groove = back.stuff.thickness + plan.allowance;
    back.from_back = ledger.take("case.back.from_back", ledger.pick(12'000, 1, 2),
                                 "room for a rail behind it, and to scribe the sides to a wall");
  }
  if (back.depth >= plan.stuff.thickness || back.gap >= back.depth)
    ledger.problem({"case.back.depth", "case.back.gap"},
                   fmt::format("a back that stands {} deep less {} in sides of {} cannot be; leave "
                               "wood behind, and some of the back within",
                               ledger.say(back.depth), ledger.say(back.gap),
                               ledger.say(plan.stuff.thickness)));
}

// ---- toe

void settle_toe(Ledger& ledger, CarcasePlan& plan) {
  ToePlan& toe = plan.toe;
  const bool stated = ledger.spec.speaks_of("toe");
  toe.by = ledger.choose<ToeBy>("toe.by", stated ? ToeBy::notched : ToeBy::none,
                                stated ? "usual for a toe" : "it stands or hangs on its sides");
  if (!toe.is_there()) return;
  toe.height = ledger.take("toe.height", ledger.pick(100'000, 4, 1), "usual for a toe");
  toe.setback = ledger.take("toe.setback", ledger.pick(60'000, 5, 2), "room for toes");
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
  return is_sheet_goods(material) ? Matter::board : Matter::wood;
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

CarcasePlan settle_carcase(Ledger& ledger) {
  CarcasePlan plan;
  settle_stuff(ledger, plan);
  settle_joints(ledger, plan);
  settle_ends(ledger, plan);
  settle_back(ledger, plan);
  settle_toe(ledger, plan);
  return plan;
}

}  // namespace haunch
