#include "drawer_plan.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "bare_gap.h"
#include "drawer_plan_steps.h"
#include "ledger.h"
#include "materials.h"
#include "moisture.h"
#include "rounding.h"
#include "season_spec.h"
#include "usual_size.h"

namespace haunch {
namespace {

constexpr std::string_view kUsualDrawer = "usual for a drawer";

// ---- what it runs on

constexpr Key kMetalKeys[] = {
    "fronts.drawer.runner.side",        "fronts.drawer.runner.inside_less",
    "fronts.drawer.runner.length",      "fronts.drawer.runner.box_length",
    "fronts.drawer.runner.below",       "fronts.drawer.runner.above",
    "fronts.drawer.runner.needs_depth", "fronts.drawer.runner.holes",
    "fronts.drawer.runner.hole",        "fronts.drawer.runner.hole_above"};

bool has_metal_data(const KeyValues& spec) {
  return std::any_of(std::begin(kMetalKeys), std::end(kMetalKeys),
                     [&](Key key) { return spec[key].stated; });
}

void settle_runner_kind(Ledger& ledger, DrawerPlan& plan) {
  const bool metal = has_metal_data(std::as_const(ledger.spec));
  plan.runner.kind = ledger.choose<RunnerKind>(
      "fronts.drawer.runner.kind", metal ? RunnerKind::metal : RunnerKind::wood,
      metal ? "data of metal runners are said" : "where none of metal are said");
  if (plan.runner.kind == RunnerKind::wood) {
    for (const Key key : kMetalKeys)
      if (ledger.stated(key).by_spec())
        ledger.problem({key}, "is of metal runners; this drawer runs on wooden ones, take it out");
    return;
  }
  for (const SizeKey key : std::initializer_list<SizeKey>{"fronts.drawer.runner.play",
                                                          "fronts.drawer.runner.play_above"})
    if (ledger.stated(key).by_spec())
      ledger.problem({key}, "is of wooden runners; this drawer runs on metal ones, take it out");
  const bool side = ledger.stated("fronts.drawer.runner.side").stated;
  const bool inside = ledger.stated("fronts.drawer.runner.inside_less").stated;
  if (!side && !inside)
    ledger.problem({"fronts.drawer.runner"},
                   "how wide the box must be is on the maker's sheet of its runners, and not "
                   "guessed here; give \"side\", what they take at each side, or \"inside_less\"");
  if (side && inside)
    ledger.problem({"fronts.drawer.runner.inside_less"},
                   "says the same as \"side\"; keep one of the two");
}

void settle_wooden_play(Ledger& ledger, DrawerPlan& plan) {
  RunnerPlan& runner = plan.runner;
  runner.side = ledger.take("fronts.drawer.runner.play", ledger.pick(500, 1, 64),
                            "so that it runs without shaking (trade practice)");
  const bool board = plan.matter == Matter::board;
  const SeasonalPart season = seasonal_part(ledger.spec, Role::drawer_side);
  const Length swells =
      board ? Length()
            : nearest_step(static_cast<double>(plan.room.height.steps()) * season.upwards);
  runner.above =
      ledger.take("fronts.drawer.runner.play_above",
                  ledger.pick(1'000, 1, 32) + ceiling_multiple(swells, ledger.pick(500, 1, 64)),
                  board          ? "board does not move to matter"
                  : season.known ? "1 mm, 1/32 in, in the wettest month"
                                 : "1 mm, 1/32 in, in the wettest month, of most "
                                   "hardwoods: the wood is not named");
}

/// From the maker's sheet. Where the odd step of a width goes does not matter.
void settle_metal_room(Ledger& ledger, DrawerPlan& plan) {
  RunnerPlan& runner = plan.runner;
  const auto inside_less = ledger.spec.size("fronts.drawer.runner.inside_less");
  runner.side = inside_less ? floor_half(*inside_less) - plan.side_thickness
                            : ledger.settle("fronts.drawer.runner.side", {}, {});
  if (runner.side < Length())
    ledger.problem({"fronts.drawer.runner.inside_less", "fronts.drawer.sides.thickness"},
                   fmt::format("leaves no room for sides of {}, two of which must go into it; make "
                               "them thinner",
                               ledger.say(plan.side_thickness)));
  runner.below = ledger.settle("fronts.drawer.runner.below", ledger.pick(6'000, 1, 4),
                               "usual for runners at the sides; their maker's sheet decides");
  runner.above = ledger.settle("fronts.drawer.runner.above", ledger.pick(6'000, 1, 4),
                               "usual for runners at the sides; their maker's sheet decides");
}

// ---- front and box

void settle_front(Ledger& ledger, DrawerPlan& plan) {
  const bool metal = plan.runner.kind == RunnerKind::metal;
  const bool overlay = plan.room.meets == Meets::overlay;
  plan.front = ledger.choose<DrawerFront>(
      "fronts.drawer.front", metal || overlay ? DrawerFront::applied : DrawerFront::in_one,
      metal     ? "usual on metal runners"
      : overlay ? "it lies before the opening"
                : "usual on wooden runners");
  if (!plan.is_applied() && metal)
    ledger.problem({"fronts.drawer.front"},
                   "on metal runners the box is narrower than the opening, and its corners would "
                   "be seen beside it; write \"applied\"");
  if (!plan.is_applied() && overlay)
    ledger.problem({"fronts.drawer.front"},
                   "a front that lies before its opening is wider than the drawer; write "
                   "\"applied\", or let it meet the opening by a lip: \"rebate\"");
  if (plan.is_applied() && plan.room.meets == Meets::rebate)
    ledger.problem({"fronts.drawer.front", "fronts.drawer.meets"},
                   "a front with a lip is worked into the drawer's corners; write \"in-one\", or "
                   "let it be \"overlay\"");
}

void settle_sections(Ledger& ledger, DrawerPlan& plan) {
  plan.material = ledger.spec.text("fronts.drawer.material");
  plan.matter = is_sheet_goods(plan.material) ? Matter::board : Matter::wood;
  if (plan.matter == Matter::wood) plan.material.clear();
  plan.side_thickness =
      ledger.take("fronts.drawer.sides.thickness", ledger.pick(12'000, 1, 2), kUsualDrawer);
  plan.back_thickness =
      ledger.take("fronts.drawer.back_thickness", plan.side_thickness, "as thick as the sides");
  plan.front_thickness =
      ledger.take("fronts.drawer.front_thickness", ledger.pick(20'000, 3, 4), kUsualDrawer);
  if (plan.is_applied())
    plan.box_front_thickness = ledger.take("fronts.drawer.box_front_thickness", plan.side_thickness,
                                           "as thick as the sides");
  else if (ledger.stated("fronts.drawer.box_front_thickness").by_spec())
    ledger.problem({"fronts.drawer.box_front_thickness"},
                   "this drawer has but one front, worked into its corners; take it out");
  if (plan.room.meets != Meets::rebate || plan.is_applied()) return;
  plan.lip = ledger.take("fronts.drawer.lip_thickness", floor_half(plan.front_thickness),
                         "half of the front");
  if (plan.lip >= plan.front_thickness)
    ledger.problem(
        {"fronts.drawer.lip_thickness", "fronts.drawer.front_thickness"},
        fmt::format("a lip of {} leaves nothing behind it in a front of {}; make it less",
                    ledger.say(plan.lip), ledger.say(plan.front_thickness)));
}

/// Of an applied front that stands in its opening.
Sides front_gap(Ledger& ledger, const DrawerRoom& room) {
  if (room.gap) return *room.gap;
  const Length gap =
      bare_gap(ledger.spec, ledger.settle("fronts.drawer.gap", ledger.pick(2'000, 1, 16),
                                          "usual for fronts that stand in their openings"));
  return {gap, gap, gap, gap};
}

/// The face, from side to side and from foot to head; how it stands to the back comes later.
Box face_of(Ledger& ledger, const DrawerPlan& plan) {
  const DrawerRoom& room = plan.room;
  const bool over = room.meets != Meets::inset;
  if (!plan.is_applied() && ledger.stated("fronts.drawer.gap").by_spec())
    ledger.problem({"fronts.drawer.gap"},
                   "is of an applied front; round this one is the play of its runners, \"play\" "
                   "and \"play_above\" under \"runner\"");
  const RunnerPlan& runner = plan.runner;
  const Sides in = over ? Sides{-room.lap.left, -room.lap.right, -room.lap.head, -room.lap.foot}
                   : plan.is_applied() ? front_gap(ledger, room)
                                       : Sides{runner.side, runner.side, runner.above, Length()};
  const Length from = room.meets == Meets::overlay  ? -plan.front_thickness
                      : room.meets == Meets::rebate ? -plan.lip
                                                    : Length();
  return {{in.left, in.foot, from},
          {room.width - in.right, room.height - in.head, from + plan.front_thickness}};
}

std::vector<Length> sizes_in(const KeyValue& list, SizeKey item) {
  std::vector<Length> sizes;
  for (const KeyValues& its : list.items)
    if (const auto size = its.size(item)) sizes.push_back(*size);
  return sizes;
}

/// The heights that the shop makes sides in, where nothing nearer says how high these are.
std::vector<Length> made_heights(const Ledger& ledger) {
  const KeyValue& one = ledger.stated("fronts.drawer.sides.height");
  const KeyValue& all = ledger.stated("fronts.drawer.sides.heights");
  if (one.stated && (one.by_spec() || all.by_shop)) return {};
  return sizes_in(all, "fronts.drawer.sides.heights[]");
}

/// The highest of them that goes in.
Length height_among(Ledger& ledger, const std::vector<Length>& heights, Length room, Length most) {
  std::optional<Length> highest;
  for (const Length height : heights)
    if (height <= most && (!highest || height > *highest)) highest = height;
  if (highest) {
    ledger.assume("fronts.drawer.sides.height", *highest,
                  fmt::format("the highest of \"heights\" that goes into {}", ledger.say(most)));
    return *highest;
  }
  const Length lowest = *std::min_element(heights.begin(), heights.end());
  ledger.problem({"fronts.drawer.sides.heights"},
                 fmt::format("none of them goes in: above and below the sides is to be left {} of "
                             "the opening's {}, and the lowest of them, {}, is {} too high",
                             ledger.say(room - most), ledger.say(room), ledger.say(lowest),
                             ledger.say(lowest - most)));
  return most;
}

void settle_height(Ledger& ledger, DrawerPlan& plan) {
  const RunnerPlan& runner = plan.runner;
  const Length most = plan.room.height - runner.below - runner.above;
  const std::vector<Length> made = made_heights(ledger);
  const Length height =
      !made.empty() ? height_among(ledger, made, plan.room.height, most)
                    : ledger.settle("fronts.drawer.sides.height", most,
                                    plan.is_applied() ? "what the runners leave of the opening"
                                                      : "what its play leaves of the opening");
  if (height > most)
    ledger.problem({"fronts.drawer.sides.height"},
                   fmt::format("sides of {} do not go into an opening of {}, of which {} is to be "
                               "left above and below; make them at most {}",
                               ledger.say(height), ledger.say(plan.room.height),
                               ledger.say(runner.below + runner.above), ledger.say(most)));
  plan.box.low[1] = runner.below;
  plan.box.high[1] = runner.below + height;
}

// ---- how long it is

/// The longest of a series of metal runners that goes in.
Length usual_runner(const Ledger& ledger, Length room) {
  return floor_multiple(room - ledger.pick(3'000, 1, 8), ledger.pick(50'000, 2, 1));
}

void settle_metal_length(Ledger& ledger, DrawerPlan& plan) {
  RunnerPlan& runner = plan.runner;
  const Length room = plan.room.depth - plan.box.low[2];
  runner.length = ledger.settle("fronts.drawer.runner.length", usual_runner(ledger, room),
                                "the longest by 50 mm, 2 in, that goes in");
  const Length needs =
      ledger.settle("fronts.drawer.runner.needs_depth", runner.length + ledger.pick(3'000, 1, 8),
                    "3 mm, 1/8 in, more than their length");
  if (runner.length <= Length() || needs > room)
    ledger.problem(
        {"fronts.drawer.runner.needs_depth", "fronts.drawer.runner.length", "opening.depth"},
        fmt::format("runners of {} need {} behind the front, and there are {}; take "
                    "shorter ones",
                    ledger.say(runner.length), ledger.say(needs), ledger.say(room)));
  const Length length =
      ledger.settle("fronts.drawer.runner.box_length", runner.length, "as long as its runners");
  plan.box.high[2] = plan.box.low[2] + length;
  runner.travel = ledger.settle("fronts.drawer.runner.travel", runner.length,
                                "as long as its runners: they come out whole");
}

void settle_wooden_length(Ledger& ledger, DrawerPlan& plan) {
  const Length room = plan.room.depth - plan.face.low[2];
  const Length length =
      ledger.settle("fronts.drawer.length", room - ledger.pick(10'000, 3, 8),
                    "what the opening's depth leaves, less 10 mm, 3/8 in, behind it");
  if (length > room)
    ledger.problem({"fronts.drawer.length", "opening.depth"},
                   fmt::format("a drawer of {} from the front's face on does not go into {}; make "
                               "it shorter",
                               ledger.say(length), ledger.say(room)));
  plan.box.high[2] =
      plan.face.low[2] + length - (plan.bottom.under_back ? plan.bottom.overhang : Length());
  plan.runner.travel =
      ledger.settle("fronts.drawer.runner.travel",
                    floor_multiple(floor_divide(length * 3, 4), ledger.pick(1'000, 1, 16)),
                    "three quarters of the drawer, so that it does not tip out");
}

void settle_length(Ledger& ledger, DrawerPlan& plan) {
  plan.box.low[2] = plan.is_applied() ? plan.face.high[2] : plan.face.low[2];
  if (plan.runner.kind == RunnerKind::wood) return settle_wooden_length(ledger, plan);
  if (ledger.stated("fronts.drawer.length").by_spec())
    ledger.problem({"fronts.drawer.length"},
                   "on metal runners the box is as long as they ask for: give \"box_length\" under "
                   "\"runner\"");
  settle_metal_length(ledger, plan);
}

/// Once the box is settled.
void settle_runner_holes(Ledger& ledger, DrawerPlan& plan) {
  RunnerPlan& runner = plan.runner;
  runner.holes =
      sizes_in(ledger.stated("fronts.drawer.runner.holes"), "fronts.drawer.runner.holes[]");
  if (runner.holes.empty()) {
    for (const Key key :
         std::initializer_list<Key>{"fronts.drawer.runner.hole", "fronts.drawer.runner.hole_above"})
      if (ledger.stated(key).by_spec())
        ledger.problem({key},
                       "is of screw holes; say where they are bored by \"holes\", or take "
                       "it out");
    return;
  }
  runner.hole = ledger.settle("fronts.drawer.runner.hole", ledger.pick(5'000, 3, 16),
                              "usual for screws of runners; their maker's sheet decides");
  const Length height = plan.box.extent(1);
  runner.hole_above = ledger.settle("fronts.drawer.runner.hole_above", floor_half(height),
                                    "half the box's height: runners in the middle of its sides");
  if (runner.hole_above > height)
    ledger.problem({"fronts.drawer.runner.hole_above"},
                   fmt::format("the row stands above the box, which is {} high; make it less",
                               ledger.say(height)));
}

// ---- the whole

void doubt_whole(Ledger& ledger, const DrawerPlan& plan) {
  const Length inside = plan.box.extent(0) - plan.side_thickness * 2;
  if (inside <= Length())
    ledger.problem({"fronts.drawer.sides.thickness", "opening.width"},
                   fmt::format("between sides of {} nothing is left of the opening's {}",
                               ledger.say(plan.side_thickness), ledger.say(plan.room.width)));
  if (plan.box.extent(1) <= Length() || plan.face.extent(1) <= Length())
    ledger.problem({"opening.height"}, "leaves nothing for the drawer; make it more");
  if (plan.box.extent(2) - plan.joined_thickness() - plan.back_thickness <= Length())
    ledger.problem({"fronts.drawer.length", "fronts.drawer.runner.box_length", "opening.depth"},
                   "between front and back nothing is left; make it longer");
}

void settle(Ledger& ledger, DrawerPlan& plan) {
  settle_runner_kind(ledger, plan);
  settle_front(ledger, plan);
  settle_sections(ledger, plan);
  if (!ledger.clean()) return;
  if (plan.runner.kind == RunnerKind::wood)
    settle_wooden_play(ledger, plan);
  else
    settle_metal_room(ledger, plan);
  plan.face = face_of(ledger, plan);
  plan.box.low[0] = plan.runner.side;
  plan.box.high[0] = plan.room.width - plan.runner.side;
  settle_height(ledger, plan);
  plan.fit_allowance = ledger.take("fronts.drawer.corner.fit_allowance", ledger.pick(100, 1, 128),
                                   "usual for such a joint");
  if (plan.is_applied() || plan.bottom.under_back)
    plan.screw =
        ledger.take("fronts.drawer.screw", ledger.pick(4'500, 3, 16), "for screws of 4 mm, No. 8");
  settle_bottom(ledger, plan);
  if (!ledger.clean()) return;
  settle_length(ledger, plan);
  settle_runner_holes(ledger, plan);
  doubt_whole(ledger, plan);
  if (!ledger.clean()) return;
  doubt_bottom(ledger, plan);
  if (ledger.clean()) settle_corners(ledger, plan);
}

std::vector<NamedRoom> rooms_of(const DrawerPlan& plan) {
  const Length back_low = plan.bottom.top();
  return {{"opening", plan.room.width, plan.room.height},
          {"front", plan.face.extent(0), plan.face.extent(1)},
          {"drawer over its sides", plan.box.extent(0), plan.box.extent(1)},
          {"inside", plan.box.extent(0) - plan.side_thickness * 2, plan.box.extent(1) - back_low}};
}

/// The room that the spec of a drawer alone speaks of.
DrawerRoom stated_room(Ledger& ledger) {
  DrawerRoom room{ledger.spec.size("opening.width").value_or(Length()),
                  ledger.spec.size("opening.height").value_or(Length()),
                  ledger.spec.size("opening.depth").value_or(Length()),
                  ledger.choose<Meets>("fronts.drawer.meets", Meets::inset, kUsualDrawer),
                  {},
                  {}};
  if (room.meets == Meets::inset) {
    if (ledger.spec.said_by("fronts.drawer.lap") == SaidBy::spec)
      ledger.problem({"fronts.drawer.lap"},
                     "this front stands in its opening; take it out, or say how it meets that: "
                     "\"overlay\" or \"rebate\"");
    return room;
  }
  const Length usual =
      ledger.spec.size("fronts.drawer.lap.left").value_or(ledger.pick(10'000, 3, 8));
  ledger.settle_group("fronts.drawer.lap",
                      {{"fronts.drawer.lap.left", &room.lap.left, usual},
                       {"fronts.drawer.lap.right", &room.lap.right, usual},
                       {"fronts.drawer.lap.head", &room.lap.head, usual},
                       {"fronts.drawer.lap.foot", &room.lap.foot, usual}},
                      "usual for a drawer, or as at the left");
  return room;
}

PlannedDrawer planned(Ledger ledger, const DrawerRoom& room) {
  PlannedDrawer planned;
  planned.plan.room = room;
  settle(ledger, planned.plan);
  planned.take(ledger);
  if (!planned.problems.empty()) return planned;
  planned.rooms = rooms_of(planned.plan);
  planned.chains = chains_of(planned.plan);
  if (planned.plan.cutter)
    planned.cautions.push_back(told_of_cutter(*planned.plan.cutter, ledger.unit));
  return planned;
}

}  // namespace

SeasonalPart seasonal_part(const Spec& spec, Role role) {
  return seasonal_part(spec, species_of(spec).of(role));
}

bool runs_on_wood(const Spec& spec) {
  const bool metal = has_metal_data(spec);
  return spec.word<RunnerKind>("fronts.drawer.runner.kind")
             .value_or(metal ? RunnerKind::metal : RunnerKind::wood) == RunnerKind::wood;
}

PlannedDrawer plan_drawer(const Spec& spec, const DrawerRoom& room) {
  Ledger ledger(spec);
  return planned(std::move(ledger), room);
}

PlannedDrawer plan_drawer(const Spec& spec) {
  Ledger ledger(spec, kDrawerRoot);
  ledger.note_names();
  if (ledger.stated("fronts.drawer.runner.holes").by_spec())
    ledger.problem({"fronts.drawer.runner.holes"},
                   "are bored in the sides of a cabinet, and this drawer is alone; take it out");
  const DrawerRoom room = stated_room(ledger);
  return planned(std::move(ledger), room);
}

void take_drawer_woods(Spec& spec) {
  const auto take = [&](const std::string& material, std::initializer_list<Key> roles) {
    if (material.empty() || is_sheet_goods(material)) return;
    for (const Key role : roles)
      if (!spec[role].stated) spec.set(role, material);
  };
  take(spec.text("fronts.drawer.material"),
       {"species.drawer_box_front", "species.drawer_side", "species.drawer_back"});
  take(spec.text("fronts.drawer.bottom.material"), {"species.drawer_bottom"});
}

}  // namespace haunch
