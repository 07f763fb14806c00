#include "doorset.h"

#include <algorithm>
#include <utility>

#include "bare_gap.h"
#include "cautions.h"
#include "door.h"
#include "door_defaults.h"
#include "doorset_leaf.h"
#include "doorset_spec.h"
#include "frame_plan.h"
#include "frame_set_out.h"
#include "leaves.h"
#include "ledger.h"
#include "season_spec.h"
#include "strike.h"
#include "tolerance_spec.h"

namespace haunch {
namespace {

constexpr std::string_view kLeafKey = "leaf.";
constexpr std::size_t kFrameOfSet = 1;  // the group after the whole

/// What is settled of a set besides its frame and its leaves.
struct SetPlan {
  bool hinged_right = false;
  Length pin_out, bevel;
  std::optional<PairKeys> pair;
};

class DoorsetJob : public Job {
 public:
  Spec spec;  // its own keys, and its frame's
  Spec leaf;  // its leaf's, but for what the set says of it
  /// Levers of the leaf that are set, as they are found once its frame is planned.
  std::vector<std::pair<Lever, Length>> leaf_changes;
  bool other_leaf = false;  // it is an alternative of its leaf's

  Worked work() const override;
  std::vector<Lever> levers() const override;
  std::unique_ptr<Job> with(const Lever& lever, Length value) const override;
  std::vector<Alternative> alternatives() const override;

 private:
  int leaves() const { return spec.count("leaves").value_or(1); }
  SetPlan settle_set(Ledger& ledger) const;
  PairKeys settle_pair(Ledger& ledger) const;
  /// The leaf by itself, as large as the frame lets it be.
  DoorJob leaf_job(const CasePlan& plan, const SetPlan& set) const;
  DoorJob leaf_job() const;
  Worked work_leaf(const DoorJob& job) const;
  PlannedCase plan_case(Length leaf_thickness) const;
  void doubt_edges(std::vector<Problem>& problems, const SetPlan& set, const Assembly& hung) const;
  void hang_leaves(Assembly& wood, const CasePlan& plan, const SetPlan& set, Assembly its) const;
  std::optional<StrikePlan> strike_for(Ledger& ledger, const CasePlan& plan, const SetPlan& set,
                                       const Assembly& its) const;
};

void add(std::vector<Assumed>& all, std::vector<Assumed> more, std::string_view before) {
  for (Assumed& it : more) {
    it.key.insert(0, before);
    all.push_back(std::move(it));
  }
}

/// A leaf's job that was changed.
const DoorJob& as_door(const Job& job) {
  return static_cast<const DoorJob&>(job);
}

bool has_lip(const CasePlan& plan) {
  return plan.lip.across() + plan.lip.head > Length();
}

PlannedCase DoorsetJob::plan_case(Length leaf_thickness) const {
  PlannedCase planned = plan_frame(spec, {}, HungLeaves{leaf_thickness, leaves()});
  if (planned.problems.empty() && has_lip(planned.plan) && planned.plan.stop.reveal > Length())
    planned.problems.push_back(
        {"/frame/reveal", "the lip of a rebated leaf lies on the frame's face; take it out", {}});
  return planned;
}

PairKeys DoorsetJob::settle_pair(Ledger& ledger) const {
  PairKeys pair;
  pair.clearance = bare_gap(
      ledger.spec, ledger.take("meeting_clearance", ledger.pick(3'000, 1, 8), "usual in a pair"));
  pair.lap = ledger.take("meeting_lap", Length(), "square meeting stiles");
  if (pair.lap > Length())
    pair.rest = ledger.take("meeting_rest", ledger.pick(1'500, 1, 16), "usual in a pair");
  else if (ledger.stated("meeting_rest").stated)
    ledger.problem({"meeting_rest"},
                   "square meeting stiles have no rebate; give meeting_lap, or take it out");
  if (pair.lap > Length() || ledger.stated("active").stated || leaf.speaks_of("lock"))
    pair.right_first =
        ledger.choose<Side>("active", Side::right, "usual where nothing is said") == Side::right;
  return pair;
}

SetPlan DoorsetJob::settle_set(Ledger& ledger) const {
  SetPlan set;
  if (leaves() == 2) set.pair = settle_pair(ledger);
  set.hinged_right = !set.pair && leaf.word<Side>("hangs") == Side::right;
  set.pin_out = ledger.take("pin_out", ledger.pick(6'000, 1, 4), "half a usual hinge's knuckle");
  set.bevel = ledger.take("lock_bevel", Length(), "a square lock edge");
  if (set.pair && set.pair->lap > Length() && set.bevel > Length())
    ledger.problem({"lock_bevel"},
                   "rebated meeting stiles are set out square; take it out, or meeting_lap");
  for (const Key key :
       std::initializer_list<Key>{"meeting_clearance", "meeting_lap", "meeting_rest", "active"})
    if (!set.pair && ledger.stated(key).stated)
      ledger.problem({key}, "one leaf meets no other; give \"leaves\": 2, or take it out");
  return set;
}

DoorJob DoorsetJob::leaf_job(const CasePlan& plan, const SetPlan& set) const {
  DoorJob job;
  job.unit = unit;
  job.season = season;
  job.usual_year = usual_year;
  job.spec = leaf_in_room(leaf, {plan.leaf_width, plan.leaf_height, set.pair, plan.lip});
  for (const auto& [lever, value] : leaf_changes)
    job.spec = as_door(*job.with(lever, value)).spec;
  return job;
}

DoorJob DoorsetJob::leaf_job() const {
  Ledger ledger(spec);
  return leaf_job(plan_case(Length::from_steps(1)).plan, settle_set(ledger));
}

Worked DoorsetJob::work_leaf(const DoorJob& job) const {
  Worked worked;
  worked.problems = contradictions(job.spec, {});
  if (worked.problems.empty()) worked = job.work();
  for (Problem& problem : worked.problems)
    problem = of_the_set(std::move(problem));
  return worked;
}

/// What is assumed of the leaf, but for what the set says of it.
std::vector<Assumed> of_leaf(std::vector<Assumed> assumed) {
  std::erase_if(assumed, [](const Assumed& it) {
    return it.key == "units" || it.key == "species" || it.key == "horn";
  });
  return assumed;
}

/// The face of a jamb that the leaf's edge looks at.
Across jamb_face(const CasePlan& plan, bool right) {
  const Length face = plan.jamb_thickness - plan.stop.rebate();
  if (right) return {kRightJamb, plan.width - face, false};
  return {kLeftJamb, face, true};
}

/// How the two leaves of a pair meet; null of one leaf.
const Fit* meeting_of(const Assembly& wood) {
  const std::vector<const Fit*> meetings = fits_that_stand(wood, StandsIn::beside);
  return meetings.empty() ? nullptr : meetings.front();
}

/// How a leaf hangs in its frame: the gaps that it was designed to have, and its hinges' pin.
Fit hanging_in(const CasePlan& plan, const SetPlan& set, Length lip, bool hinged_right) {
  const bool right_of_pair = set.pair && hinged_right;
  const bool left_of_pair = set.pair && !hinged_right;
  Fit hung;
  hung.stands = StandsIn::group;
  hung.other = kFrameOfSet;
  hung.room = plan.clearance;
  if (right_of_pair) hung.room.left = set.pair->clearance;
  if (left_of_pair) hung.room.right = set.pair->clearance;
  hung.behind = plan.stop.gap;
  // The leaf that laps before the other rests on it as on a stop.
  if (set.pair && set.pair->lap > Length() && set.pair->right_first == hinged_right)
    hung.behind = std::min(hung.behind, set.pair->rest);
  hung.lip = lip;
  if (lip > Length()) hung.meets = Meets::rebate;
  const auto over = [](Length its, Length gap) { return its > Length() ? its - gap : Length(); };
  hung.lap = {over(right_of_pair ? Length() : plan.lip.left, hung.room.left),
              over(left_of_pair ? Length() : plan.lip.right, hung.room.right),
              over(plan.lip.head, hung.room.head),
              {}};
  // In the middle of the hinges' gap, or at the edge of the lip.
  const Triple place = plan.leaf_place();
  const Length out =
      lip > Length() ? Length() : floor_half(hinged_right ? hung.room.right : hung.room.left);
  const Length pin_x = hinged_right ? place[0] + plan.leaf_width + out : place[0] - out;
  hung.moves = Swing{Axis::y, {pin_x, Length(), place[2] - lip - set.pin_out}, hinged_right};
  return hung;
}

void DoorsetJob::hang_leaves(Assembly& wood, const CasePlan& plan, const SetPlan& set,
                             Assembly its) const {
  const Length lip = its.fits.front().lip;
  Place at;
  at.origin = plan.leaf_place();
  at.origin[2] -= lip;
  const std::size_t first = add_group(wood, std::move(its), at);
  std::optional<std::size_t> right;  // of a pair
  if (const Fit* meeting = meeting_of(wood)) right = neighbours_of(wood, *meeting).right;
  for (std::size_t group = first; group < wood.groups.size(); ++group) {
    if (wood.groups[group].kind != GroupKind::leaf) continue;
    const bool hinged_right = right ? right == group : set.hinged_right;
    Fit hung = hanging_in(plan, set, lip, hinged_right);
    hung.group = group;
    bevel_lock_edge(wood, hung, set.bevel);
    let_in_hinges(wood, jamb_face(plan, hinged_right), group);
    wood.fits.push_back(std::move(hung));
  }
}

/// The strike of the set's lock, if it has one.
std::optional<StrikePlan> DoorsetJob::strike_for(Ledger& ledger, const CasePlan& plan,
                                                 const SetPlan& set, const Assembly& its) const {
  if (const auto lock = lock_of(its)) {
    Length thick = plan.jamb_thickness - plan.stop.rebate();
    if (set.pair) {
      const std::size_t other = outermost(its, meeting_of(its)->other, set.pair->right_first);
      thick = its.pieces[other].blank[1];
    }
    return settle_strike(ledger, *lock, thick);
  }
  for (const Key key : AllKeys())
    if (key.is_below("strike") && ledger.stated(key).size)
      ledger.problem({key},
                     "is of a lock's strike, and the leaf has no lock; give it one: "
                     "\"leaf\": {\"lock\": …}");
  return {};
}

/// What the edge of the leaf with the lock looks at.
Across across_from_lock(const Assembly& wood, const CasePlan& plan, const SetPlan& set) {
  if (!set.pair) return jamb_face(plan, !set.hinged_right);
  const std::size_t stile = outermost(wood, meeting_of(wood)->other, set.pair->right_first);
  const Box blank = placed_blank(wood.pieces[stile]);
  return {stile, set.pair->right_first ? blank.high[0] : blank.low[0], set.pair->right_first};
}

/// Of a pair the lock is in the leaf that opens first.
std::size_t leaf_with_lock(const Assembly& wood) {
  const Fit* meeting = meeting_of(wood);
  return meeting != nullptr ? meeting->group : wood.groups.size() - 1;
}

/// A set of which so far only the frame is made.
Assembly set_round(Assembly frame) {
  Assembly set;
  set.groups = {{GroupKind::set, "set", {}, {}}};
  set.size = frame.size;
  add_group(set, std::move(frame), {});
  return set;
}

/// What cannot be of the leaf's edges, and of seasons beside them.
void DoorsetJob::doubt_edges(std::vector<Problem>& problems, const SetPlan& set,
                             const Assembly& hung) const {
  const Length thickness = hung.size[2];
  const Length lip = hung.fits.front().lip;
  if (set.bevel >= thickness)
    problems.push_back({"/lock_bevel",
                        in_words(set.bevel, unit) + " is not less than the leaf's thickness of " +
                            in_words(thickness, unit) + "; make it less",
                        {}});
  if (lip > Length() && set.bevel > Length())
    problems.push_back(
        {"/lock_bevel", "a rebated leaf is set out with square edges; take it out", {}});
  if (!hung.beyond.empty())
    problems.push_back({"/leaf/arch/at",
                        "the frame's head is straight, and a leaf with an arched top would not "
                        "fill it; say \"underside\", or work the leaf alone: \"kind\": \"door\"",
                        {}});
  if (season && (lip > Length() || (set.pair && set.pair->lap > Length())))
    problems.push_back({"/moisture",
                        "seasons of leaves that lap their frame or each other are worked of "
                        "the leaves alone: \"kind\": \"door\"; take it out",
                        {}});
}

Worked DoorsetJob::work() const {
  Worked worked;
  Ledger ledger(spec);
  const SetPlan set = settle_set(ledger);
  // The leaf's width and height do not hang on its thickness, so that it can be worked first.
  PlannedCase planned = plan_case(Length::from_steps(1));
  worked.problems = ledger.problems;
  add(worked.problems, std::move(planned.problems));
  if (!worked.problems.empty()) return worked;
  Worked hung = work_leaf(leaf_job(planned.plan, set));
  worked.problems = std::move(hung.problems);
  if (!worked.problems.empty()) return worked;
  const Length thickness = hung.assembly.size[2];
  const Length lip = hung.assembly.fits.front().lip;
  doubt_edges(worked.problems, set, hung.assembly);
  planned = plan_case(thickness - lip);
  add(worked.problems, std::move(planned.problems));
  const auto strike = strike_for(ledger, planned.plan, set, hung.assembly);
  add(worked.problems, std::move(ledger.problems));
  if (!worked.problems.empty()) return worked;
  worked.assembly = set_round(set_out_frame(planned.plan));
  worked.assumed = std::move(ledger.assumed);
  add(worked.assumed, std::move(planned.assumed), "");
  add(worked.assumed, of_leaf(std::move(hung.assumed)), kLeafKey);
  worked.rooms = std::move(planned.rooms);
  worked.cautions = std::move(planned.cautions);
  add_untold(worked.cautions, std::move(hung.cautions));
  worked.assembly.open = open_beside_leaves(planned.plan);
  hang_leaves(worked.assembly, planned.plan, set, std::move(hung.assembly));
  if (season) worked.problems = missing_woods(worked.assembly, *season);
  if (!strike) return worked;
  const Across across = across_from_lock(worked.assembly, planned.plan, set);
  if (!let_in_strike(worked.assembly, across, leaf_with_lock(worked.assembly), *strike))
    worked.problems.push_back(
        {ledger.stated("strike.height").stated ? "/strike/height" : "/strike",
         "at " + in_words(strike->middle, unit) + " the strike reaches beyond the " +
             worked.assembly.pieces[across.piece].name + "; move it, or make it smaller",
         {}});
  return worked;
}

std::vector<Lever> DoorsetJob::levers() const {
  Ledger ledger(spec);
  const SetPlan set = settle_set(ledger);
  const PlannedCase planned = plan_case(Length::from_steps(1));
  const DoorJob its = leaf_job(planned.plan, set);
  strike_for(ledger, planned.plan, set, its.work().assembly);
  std::vector<Lever> levers = std::move(ledger.levers);
  levers.insert(levers.end(), planned.levers.begin(), planned.levers.end());
  for (Lever& lever : its.levers()) {
    if (lever.key.starts_with("meeting")) continue;
    lever.key.insert(0, kLeafKey);
    levers.push_back(std::move(lever));
  }
  return levers;
}

std::vector<Alternative> DoorsetJob::alternatives() const {
  std::vector<Alternative> all;
  if (!season || other_leaf) return all;
  for (Alternative& its : leaf_job().alternatives()) {
    auto changed = std::make_unique<DoorsetJob>(*this);
    changed->other_leaf = true;
    changed->leaf = as_door(*its.job).spec;
    changed->leaf_changes.clear();
    changed->season = its.job->season;
    const bool of_set = its.key.starts_with("grain") || its.key.starts_with("moisture");
    all.push_back(
        {(of_set ? "" : std::string(kLeafKey)) + its.key, its.from, its.to, std::move(changed)});
  }
  return all;
}

std::unique_ptr<Job> DoorsetJob::with(const Lever& lever, Length value) const {
  auto changed = std::make_unique<DoorsetJob>(*this);
  if (!lever.key.starts_with(kLeafKey)) {
    set_size(changed->spec, lever.key, value);
    return changed;
  }
  Lever of_leaf = lever;
  of_leaf.key.erase(0, kLeafKey.size());
  changed->leaf_changes.emplace_back(std::move(of_leaf), value);
  return changed;
}

}  // namespace

namespace {

/// What the set is for goes by its height where it is not stated; frame and leaf are then for the
/// same.
void settle_use(Job& job, DoorsetReading& reading) {
  const KeyValue& stated = reading.spec["use"];
  const Use use = reading.spec.word<Use>("use").value_or(usual_use(stated_height(reading.spec)));
  if (!stated.by_spec())
    job.assumed_names.push_back({"use", std::string(word_of(use)),
                                 stated.by_shop ? "the shop file" : std::string(why_usual(use))});
  for (Spec* each : {&reading.spec, &reading.leaf})
    each->set("use", static_cast<int>(use));
}

}  // namespace

JobReading read_doorset(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  DoorsetReading reading = read_doorset_spec(item, shop);
  SettledSeason season;
  if (reading.problems.empty()) season = settle_season(reading.leaf);
  add(reading.problems, std::move(season.problems));
  auto job = std::make_unique<DoorsetJob>();
  if (reading.problems.empty()) take_tolerances(*job, reading.leaf, reading.problems);
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  job->kind = "doorset";
  name_job(*job, reading.spec, default_id);
  settle_use(*job, reading);
  job->given = std::move(reading.given);
  job->service = {reading.leaf.word<Use>("use") == Use::cabinet,
                  reading.spec.says("frame.exterior"),
                  reading.spec.says("frame.accessible") || reading.leaf.says("accessible")};
  job->spec = std::move(reading.spec);
  job->leaf = std::move(reading.leaf);
  job->season = std::move(season.season);
  job->assumed_season = std::move(season.assumed);
  take_usual_year(*job, job->leaf);
  return {std::move(job), {}};
}

}  // namespace haunch
