#include "doorset.h"

#include <algorithm>
#include <utility>

#include "doorset_leaf.h"
#include "doorset_spec.h"
#include "frame_plan.h"
#include "frame_set_out.h"
#include "key_ledger.h"
#include "share.h"
#include "shop.h"
#include "strike.h"

namespace haunch {
namespace {

constexpr std::string_view kFrameKey = "frame.";
constexpr std::string_view kLeafKey = "leaf.";

/// What is settled of a set besides its frame and its leaves.
struct SetPlan {
  bool hinged_right = false;
  Length pin_out, bevel;
  Length meeting;
  bool pair = false;
  bool active_right = false;  // of a pair, the leaf with the lock

  /// Whether a leaf, by its number from the left, may have a lock.
  bool locks(std::size_t leaf) const { return !pair || active_right == (leaf == 1); }
};

/// One leaf, worked.
struct WorkedLeaf {
  std::unique_ptr<Job> job;
  Worked worked;
};

class DoorsetJob : public Job {
 public:
  ItemHead head;
  KeyedValues frame_values, values;
  int leaves = 1;
  Value leaf;  // the keys of its leaf
  const ShopDefaults* shop = nullptr;
  std::vector<std::pair<Lever, Length>> leaf_changes;
  std::optional<std::size_t> leaf_alternative;  // one of its leaf's, by its number

  Worked work() const override;
  /// What its leaf's spec gives, as far as it can be told.
  std::vector<Given> given_of_leaf() const;
  std::vector<Lever> levers() const override;
  std::unique_ptr<Job> with(const Lever& lever, Length value) const override;
  std::vector<Alternative> alternatives() const override;

 private:
  SetPlan settle_set(KeyLedger& ledger) const;
  std::vector<Length> leaf_widths(const CasePlan& plan, const SetPlan& set) const;
  WorkedLeaf work_leaf(const CasePlan& plan, Length width, bool mirrored) const;
  PlannedCase plan_case(Length leaf_thickness) const;
  void hang_leaves(Worked& worked, const CasePlan& plan, const SetPlan& set,
                   std::vector<WorkedLeaf> hung) const;
  std::optional<StrikePlan> strike_for(KeyLedger& ledger, const CasePlan& plan, const SetPlan& set,
                                       const std::vector<WorkedLeaf>& hung) const;
};

void add_below(std::vector<Assumed>& all, std::vector<Assumed> more, std::string_view before) {
  for (Assumed& it : more) {
    if (it.key != "units" && it.key != "species") it.key.insert(0, before);
    all.push_back(std::move(it));
  }
}

void add_below(std::vector<Problem>& all, std::vector<Problem> more, std::string_view before) {
  for (Problem& it : more) {
    it.path.insert(0, before);
    all.push_back(std::move(it));
  }
}

PlannedCase DoorsetJob::plan_case(Length leaf_thickness) const {
  PlannedCase planned = plan_frame(head, frame_values, HungLeaves{leaf_thickness, leaves});
  if (planned.problems.empty() && planned.plan.lip.across() + planned.plan.lip.head > Length())
    planned.problems.push_back({frame_values.of("lip.left").stated() ? "/lip" : "/rule",
                                "the leaf of a set has square edges; leave the lip, or the rule "
                                "for rebated leaves, out",
                                {}});
  return planned;
}

SetPlan DoorsetJob::settle_set(KeyLedger& ledger) const {
  SetPlan set;
  set.pair = leaves == 2;
  set.hinged_right = !set.pair && hangs_right(&leaf, shop != nullptr ? &shop->values() : nullptr);
  set.pin_out = ledger.take("pin_out", ledger.pick(6'000, 1, 4), "half a usual hinge's knuckle");
  set.bevel = ledger.take("lock_bevel", Length(), "a square lock edge");
  if (set.pair)
    set.meeting = ledger.take("meeting_clearance", ledger.pick(3'000, 1, 8), "usual in a pair");
  else
    for (const std::string_view key : {"meeting_clearance", "active"})
      if (values.of(key).stated())
        ledger.problem({key}, "one leaf meets no other; give \"leaves\": 2, or take it out");
  if (set.pair && leaf_speaks_of(leaf, shop != nullptr ? &shop->values() : nullptr, "lock"))
    set.active_right = ledger.choose("active", 1, "usual where nothing is said") == 1;
  return set;
}

std::vector<Length> DoorsetJob::leaf_widths(const CasePlan& plan, const SetPlan& set) const {
  if (!set.pair) return {plan.leaf_width};
  return share_evenly(plan.leaf_width - set.meeting, 2);
}

WorkedLeaf DoorsetJob::work_leaf(const CasePlan& plan, Length width, bool mirrored) const {
  WorkedLeaf result;
  const Value document =
      leaf_document(&leaf, {width, plan.leaf_height, leaves == 2, mirrored}, head);
  JobReading reading = read_job(document, shop, id);
  if (!reading.job) {
    result.worked.problems = std::move(reading.problems);
  } else {
    if (leaf_alternative)
      reading.job = std::move(reading.job->alternatives().at(*leaf_alternative).job);
    for (const auto& [lever, value] : leaf_changes)
      reading.job = reading.job->with(lever, value);
    result.worked = reading.job->work();
    result.job = std::move(reading.job);
  }
  for (Problem& problem : result.worked.problems)
    problem = of_the_set(std::move(problem));
  return result;
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

void DoorsetJob::hang_leaves(Worked& worked, const CasePlan& plan, const SetPlan& set,
                             std::vector<WorkedLeaf> hung) const {
  Triple place = plan.leaf_place();
  for (std::size_t i = 0; i < hung.size(); ++i) {
    Assembly& wood = hung[i].worked.assembly;
    const bool last = i + 1 == hung.size();
    Hanging room;
    room.left = i == 0 ? plan.clearance.left : set.meeting;
    room.right = last ? plan.clearance.right : set.meeting;
    room.head = plan.clearance.head;
    room.foot = plan.clearance.foot;
    room.stop = plan.stop.gap;
    room.hinged_right = set.pair ? i == 1 : set.hinged_right;
    const Length hinge_gap = room.hinged_right ? room.right : room.left;
    const Length edge = room.hinged_right ? place[0] + wood.size[0] : place[0];
    room.pin_x = room.hinged_right ? edge + floor_half(hinge_gap) : edge - floor_half(hinge_gap);
    room.pin_z = place[2] - set.pin_out;
    bevel_lock_edge(wood, !room.hinged_right, set.bevel);
    const Length next = place[0] + wood.size[0] + set.meeting;
    if (!last)
      worked.assembly.open.push_back({{next - set.meeting, place[1], Length()},
                                      {next, place[1] + wood.size[1], plan.leaf_thickness}});
    hang(worked.assembly, std::move(wood), place,
         set.pair ? (i == 0 ? "left leaf, " : "right leaf, ") : "", room);
    let_in_hinges(worked.assembly, jamb_face(plan, room.hinged_right), worked.assembly.hung.back());
    place[0] = next;
  }
}

/// The strike of the set's lock, if it has one.
std::optional<StrikePlan> DoorsetJob::strike_for(KeyLedger& ledger, const CasePlan& plan,
                                                 const SetPlan& set,
                                                 const std::vector<WorkedLeaf>& hung) const {
  const std::size_t locks = set.pair && set.active_right ? 1 : 0;
  const auto lock = lock_of(hung[locks].worked.assembly);
  if (lock) {
    const Assembly& other = hung[hung.size() - 1 - locks].worked.assembly;
    const Length thick =
        set.pair ? other.pieces[edge_stile(other, 0, other.pieces.size(), locks == 1)].blank[1]
                 : plan.jamb_thickness - plan.stop.rebate();
    return settle_strike(ledger, *lock, thick);
  }
  for (const KeyRow& row : doorset_keys().rows)
    if (row.key.starts_with("strike.") && values.of(row.key).stated())
      ledger.problem({row.key},
                     "is of a lock's strike, and the leaf has no lock; give it one: "
                     "\"leaf\": {\"lock\": …}");
  return {};
}

/// What the edge of the leaf with the lock looks at.
Across across_from_lock(const Assembly& wood, const CasePlan& plan, const SetPlan& set) {
  if (!set.pair) return jamb_face(plan, !set.hinged_right);
  const Hanging& other = wood.hung[set.active_right ? 0 : 1];
  const std::size_t stile = edge_stile(wood, other.first, other.count, set.active_right);
  const Box blank = placed_blank(wood.pieces[stile]);
  return {stile, set.active_right ? blank.high[0] : blank.low[0], set.active_right};
}

Worked DoorsetJob::work() const {
  Worked worked;
  KeyLedger ledger(doorset_keys(), values, unit);
  const SetPlan set = settle_set(ledger);
  // The leaf's width and height do not hang on its thickness, so that it can be worked first.
  PlannedCase planned = plan_case(Length::from_steps(1));
  worked.problems = ledger.problems;
  add_below(worked.problems, std::move(planned.problems), "/frame");
  if (!worked.problems.empty()) return worked;
  std::vector<WorkedLeaf> hung;
  for (const Length width : leaf_widths(planned.plan, set)) {
    if (width <= Length())
      return {{}, {}, {{"/meeting_clearance", "leaves no leaves; make it less", {}}}, {}, {}};
    hung.push_back(work_leaf(planned.plan, width, !hung.empty()));
    worked.problems = hung.back().worked.problems;
    if (!worked.problems.empty()) return worked;
    if (!set.locks(hung.size() - 1)) take_lock_out(hung.back().worked.assembly);
  }
  const Length thickness = hung.front().worked.assembly.size[2];
  if (set.bevel >= thickness)
    worked.problems.push_back({"/lock_bevel",
                               in_words(set.bevel, unit) +
                                   " is not less than the leaf's thickness of " +
                                   in_words(thickness, unit) + "; make it less",
                               {}});
  planned = plan_case(thickness);
  add_below(worked.problems, std::move(planned.problems), "/frame");
  const auto strike = strike_for(ledger, planned.plan, set, hung);
  add_below(worked.problems, std::move(ledger.problems), "");
  if (!worked.problems.empty()) return worked;
  worked.assembly = set_out_frame(planned.plan);
  worked.assembly.what = "set";
  worked.assumed = std::move(ledger.assumed);
  add_below(worked.assumed, std::move(planned.assumed), kFrameKey);
  add_below(worked.assumed, of_leaf(hung.front().worked.assumed), kLeafKey);
  worked.rooms = std::move(planned.rooms);
  worked.cautions = std::move(planned.cautions);
  worked.assembly.open = open_beside_leaves(planned.plan);
  hang_leaves(worked, planned.plan, set, std::move(hung));
  if (!strike) return worked;
  const Across across = across_from_lock(worked.assembly, planned.plan, set);
  if (!let_in_strike(worked.assembly, across,
                     worked.assembly.hung[set.pair && set.active_right ? 1 : 0], *strike))
    worked.problems.push_back(
        {values.of("strike.height").stated() ? "/strike/height" : "/strike",
         "at " + in_words(strike->middle, unit) + " the strike reaches beyond the " +
             worked.assembly.pieces[across.piece].name + "; move it, or make it smaller",
         {}});
  return worked;
}

std::vector<Given> DoorsetJob::given_of_leaf() const {
  const PlannedCase planned = plan_case(Length::from_steps(1));
  if (!planned.problems.empty()) return {};
  const WorkedLeaf one = work_leaf(planned.plan, planned.plan.leaf_width, false);
  std::vector<Given> of_leaf;
  if (!one.job) return of_leaf;
  for (const Given& it : one.job->given)
    if (!it.key.starts_with("opening") && !it.key.starts_with("clearance"))
      of_leaf.push_back({std::string(kLeafKey) + it.key, it.written, it.length});
  return of_leaf;
}

std::vector<Lever> DoorsetJob::levers() const {
  std::vector<Lever> levers;
  KeyLedger ledger(doorset_keys(), values, unit);
  const SetPlan set = settle_set(ledger);
  const PlannedCase planned = plan_case(Length::from_steps(1));
  std::vector<WorkedLeaf> hung;
  for (const Length width : leaf_widths(planned.plan, set))
    hung.push_back(work_leaf(planned.plan, width, !hung.empty()));
  strike_for(ledger, planned.plan, set, hung);
  const auto add = [&](std::vector<Lever> more, std::string_view before) {
    for (Lever& lever : more) {
      lever.key.insert(0, before);
      levers.push_back(std::move(lever));
    }
  };
  add(std::move(ledger.levers), "");
  add(planned.levers, kFrameKey);
  add(hung.front().job->levers(), kLeafKey);
  return levers;
}

std::vector<Alternative> DoorsetJob::alternatives() const {
  std::vector<Alternative> all;
  const PlannedCase planned = plan_case(Length::from_steps(1));
  if (!season || leaf_alternative || !planned.problems.empty()) return all;
  KeyLedger ledger(doorset_keys(), values, unit);
  const SetPlan set = settle_set(ledger);
  const WorkedLeaf hung = work_leaf(planned.plan, leaf_widths(planned.plan, set).front(), false);
  if (!hung.job) return all;
  std::vector<Alternative> of_leaf = hung.job->alternatives();
  for (std::size_t number = 0; number < of_leaf.size(); ++number) {
    Alternative& its = of_leaf[number];
    auto changed = std::make_unique<DoorsetJob>(*this);
    changed->leaf_alternative = number;
    changed->season = its.job->season;
    const bool of_set = its.key.starts_with("grain") || its.key.starts_with("moisture");
    all.push_back(
        {(of_set ? "" : std::string(kLeafKey)) + its.key, its.from, its.to, std::move(changed)});
  }
  return all;
}

std::unique_ptr<Job> DoorsetJob::with(const Lever& lever, Length value) const {
  auto changed = std::make_unique<DoorsetJob>(*this);
  if (lever.key.starts_with(kLeafKey)) {
    Lever inner = lever;
    inner.key.erase(0, kLeafKey.size());
    changed->leaf_changes.emplace_back(std::move(inner), value);
    return changed;
  }
  const bool of_frame = lever.key.starts_with(kFrameKey);
  const KeyTable& table = of_frame ? frame_keys() : doorset_keys();
  const std::string key = of_frame ? lever.key.substr(kFrameKey.size()) : lever.key;
  KeyedValues& changing = of_frame ? changed->frame_values : changed->values;
  changing[row_of(table, key).key].size = value;
  return changed;
}

SettledSeason season_of(const DoorsetReading& reading, const ShopDefaults* shop) {
  SeasonSpec spec = reading.season;
  if (!reading.frame.head.species_by_shop) spec.species.all = reading.frame.head.species;
  SeasonSpec shops;
  if (shop != nullptr) {
    ValueReader read(shop->units());
    shops = read_season_spec(read, shop->values());
  }
  return settle_season(spec, shops);
}

}  // namespace

JobReading read_doorset(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  DoorsetReading reading = read_doorset_spec(item, shop);
  SettledSeason season;
  if (reading.problems.empty()) season = season_of(reading, shop);
  for (Problem& problem : season.problems)
    reading.problems.push_back(std::move(problem));
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  auto job = std::make_unique<DoorsetJob>();
  job->kind = "doorset";
  name_job(*job, reading.frame.head, default_id);
  job->given = std::move(reading.frame.given);
  job->head = std::move(reading.frame.head);
  job->frame_values = std::move(reading.frame.values);
  job->values = std::move(reading.values);
  job->leaves = reading.leaves;
  job->leaf.kind = Value::Kind::object;
  if (reading.leaf != nullptr) job->leaf = *reading.leaf;
  // Its panels' gaps are chosen for the season.
  for (const char* key : {"moisture", "grain"})
    if (const Value* its = item.find(key); its != nullptr)
      job->leaf.entries.push_back({key, 0, *its});
  job->season = std::move(season.season);
  job->assumed_season = std::move(season.assumed);
  job->shop = shop;
  for (Given& it : job->given_of_leaf())
    job->given.push_back(std::move(it));
  return {std::move(job), {}};
}

std::vector<Problem> doorset_shop_problems(const Value& shop) {
  static_cast<void>(shop);
  return {};
}

}  // namespace haunch
