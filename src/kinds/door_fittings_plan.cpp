#include <fmt/core.h>

#include <algorithm>

#include "door_plan_steps.h"
#include "fittings.h"

namespace haunch {
namespace {

/// As DoorLedger::take, of a place: says where the fitting goes as its figure rises.
Length take_place(DoorLedger& ledger, SizeKey key, Length fallback, std::string_view why,
                  Moves moves) {
  const Length place = ledger.take(key, fallback, why);
  ledger.levers.back().moves = moves;
  return place;
}

// ---- hinges

/// One for each 30 in (762 mm) of height or part of it, two at least (hardware guides).
int usual_hinges(Length height) {
  constexpr Length kEach = Length::from_inch_parts(30);
  int number = 2;
  while (kEach * number < height)
    ++number;
  return number;
}

/// By the leaf's thickness and width (hinge tables): under 1 1/2 in thick 3 1/2 in, wide ones 4;
/// up to 1 15/16 in 4 1/2, 5 over 36 in wide, 6 over 48; thicker ones 5, 6 over 42. Those are house
/// doors.
Length usual_hinge_length(const FramePlan& frame) {
  const auto sixteenths = [](std::int64_t parts) { return Length::from_inch_parts(parts, 16); };
  const auto wider_than = [&](std::int64_t inches) {
    return frame.width > Length::from_inch_parts(inches);
  };
  if (frame.thickness < sixteenths(24)) return wider_than(32) ? sixteenths(64) : sixteenths(56);
  if (frame.thickness > sixteenths(31)) return wider_than(42) ? sixteenths(96) : sixteenths(80);
  if (wider_than(48)) return sixteenths(96);
  return wider_than(36) ? sixteenths(80) : sixteenths(72);
}

/// From the lowest hinge to the highest at equal distances.
std::vector<Length> hinge_feet(Length lowest, Length highest, int number) {
  if (number == 1) return {lowest};
  std::vector<Length> feet;
  for (int i = 0; i < number; ++i)
    feet.push_back(lowest + floor_divide((highest - lowest) * i, number - 1));
  return feet;
}

void demand_narrow_hinges(DoorLedger& ledger, const DoorPlan& plan, const HingePlan& hinges) {
  if (hinges.width > plan.frame.thickness)
    ledger.problem({"hinges.width"},
                   fmt::format("a hinge {} wide does not go on an edge of {}; make it narrower",
                               ledger.say(hinges.width), ledger.say(plan.frame.thickness)));
  const Length stile = plan.fittings.hangs_left ? plan.frame.stile_left : plan.frame.stile_right;
  if (hinges.thickness >= stile)
    ledger.problem({"hinges.thickness"},
                   fmt::format("a hinge let in {} goes through a stile of {}; make it thinner",
                               ledger.say(hinges.thickness), ledger.say(stile)));
}

void demand_hinges_on_leaf(DoorLedger& ledger, const DoorPlan& plan, const HingePlan& hinges) {
  const Length top = hinges.feet.back() + hinges.length;
  if (top > plan.frame.edge_height() || hinges.feet.front() > hinges.feet.back())
    ledger.problem({"hinges.from_top", "hinges.from_foot", "hinges.length"},
                   fmt::format("the hinges reach from {} to {} of a leaf {} high; move them",
                               ledger.say(hinges.feet.front()), ledger.say(top),
                               ledger.say(plan.frame.edge_height())));
  for (std::size_t i = 1; i < hinges.feet.size(); ++i)
    if (hinges.feet[i] < hinges.feet[i - 1] + hinges.length) {
      ledger.problem({"hinges.from_foot", "hinges.from_top", "hinges.length"},
                     fmt::format("{} hinges of {} stand in each other; have fewer, or shorter ones",
                                 hinges.feet.size(), ledger.say(hinges.length)));
      return;
    }
}

/// From the top of the leaf's edge to the top rail's inner edge.
Length line_of_top_rail(const FramePlan& frame) {
  return std::max(frame.edge_height() - frame.rails.front().low, Length());
}

/// Hinges as they are shared out from the foot to the top.
void share_hinges_out(DoorLedger& ledger, DoorPlan& plan, HingePlan& hinges) {
  const FramePlan& frame = plan.frame;
  const bool house = ledger.defaults.house;
  const int number = ledger.spec.count("hinges.number").value_or(usual_hinges(frame.height));
  if (!ledger.stated("hinges.number").stated)
    ledger.assume("hinges.number", number,
                  "one for each 30 in (762 mm) of height or part of it, two at least (hardware "
                  "guides)");
  if (ledger.stated("hinges.number").by_shop) ledger.note_shop("hinges.number", number);
  const std::string_view in_line = "in line with the rail's inner edge (Fairham, Noyes)";
  const Length from_top =
      take_place(ledger, "hinges.from_top",
                 house ? ledger.defaults.house_hinge_from_top : line_of_top_rail(frame),
                 house ? "6 in below the top (trade practice)" : in_line, Moves::down);
  const Length from_foot =
      take_place(ledger, "hinges.from_foot",
                 house ? ledger.defaults.house_hinge_from_foot : frame.rails.back().width,
                 house ? "9 in above the foot (trade practice)" : in_line, Moves::up);
  hinges.feet = hinge_feet(from_foot, frame.edge_height() - from_top - hinges.length, number);
  demand_hinges_on_leaf(ledger, plan, hinges);
}

/// A hinge that the spec places: its number there, and its foot.
struct PlacedHinge {
  std::size_t number;
  Length foot;

  Where key() const { return {"hinges.at", number}; }
};

void demand_placed_on_leaf(DoorLedger& ledger, const DoorPlan& plan, Length length,
                           const std::vector<PlacedHinge>& placed) {
  const auto reach = [&](const PlacedHinge& it) {
    return fmt::format("from {} to {}", ledger.say(it.foot), ledger.say(it.foot + length));
  };
  for (std::size_t i = 0; i < placed.size(); ++i) {
    const PlacedHinge& it = placed[i];
    if (it.foot < Length() || it.foot + length > plan.frame.edge_height())
      ledger.problem({it.key()}, fmt::format("the hinge reaches {}, beyond a leaf {} high; move it",
                                             reach(it), ledger.say(plan.frame.edge_height())));
    else if (i > 0 && it.foot < placed[i - 1].foot + length)
      ledger.problem({it.key()}, fmt::format("the hinge {} stands in the one {}; move one of them",
                                             reach(it), reach(placed[i - 1])));
  }
}

/// What the spec says besides of hinges that it places one by one; of the shop's it makes nothing.
void demand_one_way_of_placing(DoorLedger& ledger) {
  const Spec& spec = ledger.spec;
  for (const Key key : std::initializer_list<Key>{"hinges.from_top", "hinges.from_foot"})
    if (spec[key].by_spec() && !spec["hinges.at"].by_shop)
      ledger.problem({key}, "places hinges that \"at\" places one by one; keep one of the two");
  const auto places = std::ssize(spec.hinge_places);
  const KeyValue& number = spec["hinges.number"];
  if (number.by_spec() && number.number != places)
    ledger.problem({"hinges.number"}, fmt::format("\"at\" places {}, not {}; keep one of the two",
                                                  places, number.number));
}

void place_hinges(DoorLedger& ledger, DoorPlan& plan, HingePlan& hinges) {
  const auto& places = ledger.spec.hinge_places;
  demand_one_way_of_placing(ledger);
  std::vector<PlacedHinge> placed;
  for (std::size_t i = 0; i < places.size(); ++i)
    placed.push_back({i, places[i].from_top
                             ? plan.frame.edge_height() - places[i].distance - hinges.length
                             : places[i].distance});
  std::stable_sort(placed.begin(), placed.end(),
                   [](const PlacedHinge& a, const PlacedHinge& b) { return a.foot < b.foot; });
  demand_placed_on_leaf(ledger, plan, hinges.length, placed);
  for (std::size_t i = 0; i < placed.size(); ++i) {
    const HingePlace& place = places[placed[i].number];
    hinges.feet.push_back(placed[i].foot);
    ledger.add_lever(placed[i].key(), place.distance, true, hinge_name(i, placed.size()));
    ledger.levers.back().moves = place.from_top ? Moves::down : Moves::up;
    if (ledger.stated("hinges.at").by_shop) ledger.note_shop(placed[i].key(), place.distance);
  }
}

void settle_hinges(DoorLedger& ledger, DoorPlan& plan) {
  const FramePlan& frame = plan.frame;
  const bool house = ledger.defaults.house;
  HingePlan hinges;
  hinges.length = ledger.take(
      "hinges.length",
      house ? nearest_multiple(usual_hinge_length(frame), ledger.defaults.whole)
            : ledger.defaults.cabinet_hinge,
      house ? "by the leaf's thickness and width (hinge tables)" : "usual for a cabinet door");
  hinges.thickness =
      ledger.take("hinges.thickness", ledger.defaults.hinge_thickness, "usual for a butt hinge");
  hinges.width = ledger.take(
      "hinges.width",
      std::max(frame.thickness - ledger.defaults.behind_hinge, floor_half(frame.thickness)),
      "so that 6 mm (1/4 in) of the edge stay whole behind it");
  demand_narrow_hinges(ledger, plan, hinges);
  // The spec's own number or ends overrule places of the shop's.
  const Spec& spec = ledger.spec;
  const bool overruled = spec["hinges.at"].by_shop &&
                         (spec["hinges.number"].by_spec() || spec["hinges.from_top"].by_spec() ||
                          spec["hinges.from_foot"].by_spec());
  if (spec.hinge_places.empty() || overruled)
    share_hinges_out(ledger, plan, hinges);
  else
    place_hinges(ledger, plan, hinges);
  plan.fittings.hinges = hinges;
}

// ---- lock

/// A size of the lock that only its maker knows.
Length demand(DoorLedger& ledger, SizeKey key, Key its) {
  if (!ledger.stated(key).stated)
    ledger.problem({its}, fmt::format("\"{}\" is missing; read it off the lock",
                                      key.path().substr(its.path().size() + 1)));
  return ledger.take(key, Length(), "");
}

constexpr std::string_view kTemplate = "the usual bored lock (makers' templates)";

void settle_bored(DoorLedger& ledger, LockPlan& lock) {
  const auto usual = [&](SizeKey key, std::int64_t mm, std::int64_t sixteenths) {
    return ledger.take(key, ledger.pick(mm * 1'000, sixteenths, 16), kTemplate);
  };
  lock.backset = usual("lock.backset", 60, 38);
  lock.bore = {usual("lock.bore.diameter", 54, 34), usual("lock.bore.latch", 25, 16)};
  lock.plate = {usual("lock.faceplate.length", 57, 36), usual("lock.faceplate.width", 25, 16),
                usual("lock.faceplate.thickness", 3, 2)};
}

void settle_mortise_lock(DoorLedger& ledger, LockPlan& lock) {
  const Spec& spec = ledger.spec;
  lock.body = {demand(ledger, "lock.case.height", "lock.case"),
               demand(ledger, "lock.case.depth", "lock.case"),
               demand(ledger, "lock.case.thickness", "lock.case")};
  if (spec.speaks_of("lock.faceplate"))
    lock.plate = {demand(ledger, "lock.faceplate.length", "lock.faceplate"),
                  demand(ledger, "lock.faceplate.width", "lock.faceplate"),
                  demand(ledger, "lock.faceplate.thickness", "lock.faceplate")};
  const bool has_spindle = spec.size("lock.spindle") || spec.size("lock.spindle_above");
  const bool has_key = spec.size("lock.key") || spec.size("lock.key_below");
  if (has_spindle)
    lock.spindle = {lock.height + demand(ledger, "lock.spindle_above", "lock"),
                    demand(ledger, "lock.spindle", "lock")};
  if (has_key)
    lock.key = {lock.height - demand(ledger, "lock.key_below", "lock"),
                demand(ledger, "lock.key", "lock")};
  if (has_spindle || has_key || spec.size("lock.backset"))
    lock.backset = demand(ledger, "lock.backset", "lock");
}

/// What of a bored lock's keys and of a mortise lock's stands together.
void demand_one_lock(DoorLedger& ledger) {
  const Spec& spec = ledger.spec;
  const bool bored = spec["lock.bore"].stated;
  const bool has_case = spec.speaks_of("lock.case");
  if (bored && has_case)
    ledger.problem({"lock.bore"}, "is of a bored lock, \"case\" of a mortise lock; keep one");
  if (!bored && !has_case)
    ledger.problem({"lock"},
                   "what lock it is is missing; give \"case\": {\"height\": …, \"depth\": …, "
                   "\"thickness\": …} of a mortise lock, or \"bore\": {\"diameter\": …} of a bored "
                   "one");
  for (const Key key : std::initializer_list<Key>{"lock.spindle", "lock.spindle_above", "lock.key",
                                                  "lock.key_below"})
    if (bored && ledger.stated(key).stated)
      ledger.problem({key}, "is of a mortise lock; a bored one has no hole for it");
}

void demand_mortise_lock_in_stile(DoorLedger& ledger, const LockPlan& lock, Length stile) {
  const LockCase& body = *lock.body;
  if (body.depth >= stile)
    ledger.problem({"lock.case.depth"},
                   fmt::format("a case {} deep goes through a stile of {}; take a shallower lock, "
                               "or a wider stile",
                               ledger.say(body.depth), ledger.say(stile)));
  else if (lock.backset >= body.depth && lock.backset < stile)
    ledger.problem(
        {"lock.backset"},
        fmt::format("at {} the holes stand beyond a case {} deep; read both off the lock",
                    ledger.say(lock.backset), ledger.say(body.depth)));
}

/// How far the lock reaches up and down from its middle.
std::pair<Length, Length> reach_of(const LockPlan& lock) {
  Length up = lock.body ? floor_half(lock.body->height) : floor_half(lock.bore->diameter);
  if (lock.plate) up = std::max(up, floor_half(lock.plate->length));
  Length down = up;
  if (lock.spindle)
    up = std::max(up, lock.spindle->height - lock.height + floor_half(lock.spindle->diameter));
  if (lock.key)
    down = std::max(down, lock.height - lock.key->height + floor_half(lock.key->diameter));
  return {up, down};
}

void demand_lock_on_leaf(DoorLedger& ledger, const DoorPlan& plan, const LockPlan& lock) {
  const FramePlan& frame = plan.frame;
  const Length stile = plan.fittings.hangs_left ? frame.stile_right : frame.stile_left;
  if (lock.body) demand_mortise_lock_in_stile(ledger, lock, stile);
  const Length half_hole = lock.bore ? floor_half(lock.bore->diameter) : Length();
  if (lock.backset + half_hole >= stile)
    ledger.problem({"lock.backset", "lock.bore.diameter"},
                   fmt::format("at a backset of {} the lock's holes do not go in a stile of {}; "
                               "take a lock of less backset, or a wider stile",
                               ledger.say(lock.backset), ledger.say(stile)));
  const auto [up, down] = reach_of(lock);
  if (lock.height < down || lock.height + up > frame.edge_height())
    ledger.problem({"lock.height"},
                   fmt::format("at {} the lock reaches beyond a leaf {} high; move it",
                               ledger.say(lock.height), ledger.say(frame.edge_height())));
  const Length thick = lock.body ? lock.body->thickness : lock.bore->latch;
  if (std::max(thick, lock.plate ? lock.plate->width : Length()) >= frame.thickness)
    ledger.problem({"lock.case.thickness", "lock.faceplate.width", "lock.bore.latch"},
                   fmt::format("it does not go in a leaf {} thick; take a thinner lock",
                               ledger.say(frame.thickness)));
}

void settle_lock(DoorLedger& ledger, DoorPlan& plan) {
  LockPlan lock;
  lock.height = take_place(ledger, "lock.height", ledger.defaults.lock_height,
                           "38 in above the foot (door-preparation notes)", Moves::up);
  demand_one_lock(ledger);
  if (ledger.stated("lock.bore").stated)
    settle_bored(ledger, lock);
  else if (ledger.spec.speaks_of("lock.case"))
    settle_mortise_lock(ledger, lock);
  if (ledger.clean()) demand_lock_on_leaf(ledger, plan, lock);
  plan.fittings.lock = lock;
}

/// A pair hangs at both sides.
bool hangs_left(DoorLedger& ledger, const FramePlan& frame) {
  if (!frame.pair) return ledger.choose<Side>("hangs", Side::left, ledger.usual()) == Side::left;
  if (ledger.stated("hangs").by_spec())
    ledger.problem({"hangs"}, "a pair hangs at both sides; take it out");
  return !frame.pair->is_right;
}

/// Hinges and locks are let in to square edges that stand in the opening.
void refuse_on_edges(DoorLedger& ledger, const FramePlan& frame) {
  const Spec& spec = ledger.spec;
  const Meets meets = frame.opening.meets;
  const std::string why =
      fmt::format("is set out for an inset leaf only, not for {} one; take it out",
                  meets == Meets::overlay ? "an overlay" : "a rebated");
  if (meets != Meets::inset && spec["hinges"].stated) ledger.problem({"hinges"}, why);
  if (meets != Meets::inset && spec["lock"].stated) ledger.problem({"lock"}, why);
  if (spec["lock"].stated && frame.pair && frame.pair->lap > Length())
    ledger.problem({"lock"},
                   "a lock in rebated meeting stiles is not set out; take it or meeting_lap out");
}

}  // namespace

void settle_fittings(DoorLedger& ledger, DoorPlan& plan) {
  const Spec& spec = ledger.spec;
  const auto sizes_of_wood = std::ssize(ledger.levers);
  refuse_on_edges(ledger, plan.frame);
  if (spec["hinges"].stated || spec["lock"].stated || spec.word<Side>("hangs"))
    plan.fittings.hangs_left = hangs_left(ledger, plan.frame);
  if (spec["hinges"].stated) settle_hinges(ledger, plan);
  if (spec["lock"].stated) settle_lock(ledger, plan);
  if (plan.frame.pair && !plan.frame.pair->laps_in_front()) plan.fittings.lock.reset();
  add_fitting_levers(ledger);
  // Of two remedies as small, the fitting is moved sooner than the joint.
  std::rotate(ledger.levers.begin(), ledger.levers.begin() + sizes_of_wood, ledger.levers.end());
}

}  // namespace haunch
