#include "cabinet.h"

#include <utility>

#include "cabinet_plan.h"
#include "carcase_set_out.h"
#include "cautions.h"
#include "face_frame_set_out.h"
#include "fittings.h"
#include "front_grain.h"
#include "fronts.h"
#include "layout_spec.h"
#include "leaves.h"
#include "season_spec.h"
#include "shop.h"
#include "solid.h"
#include "spec_reader.h"

namespace haunch {
namespace {

class CabinetJob : public Job {
 public:
  CabinetSpec spec;

  Worked work() const override;
  std::vector<Lever> levers() const override { return plan_cabinet(spec).levers; }
  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    auto changed = std::make_unique<CabinetJob>(*this);
    if (!set_fitting_place(changed->spec.own, lever.key, value))
      set_size(changed->spec.own, lever.key, value);
    return changed;
  }
};

/// Where one sees through it, as is meant: what stands over the case's sides ends at the toe's top;
/// between feet there is nothing.
std::vector<Box> open_by_design(const CabinetPlan& plan) {
  std::vector<Box> open;
  const CarcasePlan& carcase = plan.carcase;
  const auto add = [&](Length from, Length to, Length low, Length high) {
    if (from < to && low < high) open.push_back({{from, low, {}}, {to, high, plan.size[2]}});
  };
  const Length toe = carcase.toe.height;
  const Length right = carcase.over + carcase.width;
  Length aside = carcase.over;
  if (const auto& feet = carcase.toe.feet) {
    aside += feet->from_edge;
    add(aside + feet->width, right - feet->from_edge - feet->width, {}, toe);
  }
  add(carcase.inside_left(), carcase.inside_right(), {}, carcase.toe.clear);
  add({}, aside, {}, toe);
  add(right - (aside - carcase.over), plan.size[0], {}, toe);
  return open;
}

/// The same of a case without a back: what its pieces and its fronts leave of it.
void open_at_back(Assembly& wood, const CarcasePlan& carcase) {
  if (carcase.back.fit != BackFit::none) return;
  std::vector<Box> open{{{carcase.inside_left(), carcase.floor, {}},
                         {carcase.inside_right(), carcase.ceiling(), wood.size[2]}}};
  for (const Piece& piece : wood.pieces) {
    Box shadow = placed_blank(piece);
    shadow.low[2] = Length();
    shadow.high[2] = wood.size[2];
    take_out(open, shadow);
  }
  wood.open.insert(wood.open.end(), open.begin(), open.end());
}

Worked CabinetJob::work() const {
  PlannedCabinet planned = plan_cabinet(spec);
  Worked worked = planned.take_work();
  if (!worked.problems.empty()) return worked;
  MadeFronts fronts = make_fronts(spec, planned.plan, *this);
  worked.problems = std::move(fronts.problems);
  if (!worked.problems.empty()) return worked;
  for (const MadeFront& front : fronts.all)
    if (front.holes) pack_behind(planned.plan.carcase, front.plan->sight, *front.holes);
  for (Assumed& it : fronts.assumed)
    worked.assumed.push_back(std::move(it));
  add_untold(worked.cautions, std::move(fronts.cautions));
  Assembly& wood = worked.assembly;
  wood.groups = {{GroupKind::cabinet, "cabinet", {}, {}}};
  wood.size = planned.plan.size;
  wood.ceiling = spec.own.size("room.height");
  SetOutCarcase carcase = set_out_carcase(planned.plan.carcase);
  add_group(wood, std::move(carcase.wood), {});
  if (planned.plan.frame && !spec.share) {
    Place at;
    at.origin[1] = planned.plan.carcase.toe.height;
    add_group(wood, set_out_face_frame(*planned.plan.frame), at);
  }
  wood.open = open_by_design(planned.plan);
  worked.problems = hang_fronts(wood, std::move(fronts.all), planned.plan, carcase);
  open_at_back(wood, planned.plan.carcase);
  add(worked.problems, let_in_described(wood, spec.own, unit));
  if (season) add(worked.problems, missing_woods(wood, *season));
  if (spec.own.says("fronts.grain_runs_on"))
    add_untold(worked.cautions, told_of_grain(wood, stacks_of_plain_fronts(planned.plan)));
  return worked;
}

/// Reads the keys of a leaf that stand in an object within others.
void read_leaf(ValueReader& read, const Value& item, std::initializer_list<std::string_view> keys,
               Spec& leaf) {
  const Value* its = &item;
  std::string path;
  for (const std::string_view key : keys) {
    its = its->find(key);
    if (its == nullptr) return;
    path = child_path(path, key);
  }
  if (read.is_object(*its, path, "an object; write the keys of a door in it"))
    read_keys(read, *its, path, {.of = kOfDoor, .elsewhere = &said_by_cabinet()}, leaf);
}

}  // namespace

const CabinetSpec* spec_of_cabinet(const Job& job) {
  const auto* cabinet = dynamic_cast<const CabinetJob*>(&job);
  return cabinet == nullptr ? nullptr : &cabinet->spec;
}

std::unique_ptr<Job> with_spec(const Job& cabinet, CabinetSpec spec) {
  auto changed = std::make_unique<CabinetJob>(dynamic_cast<const CabinetJob&>(cabinet));
  changed->spec = std::move(spec);
  return changed;
}

JobReading read_cabinet(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  SpecReading reading = read_spec(
      item, {.of = kOfCabinet, .within = R"({"case": {"thickness": …}})"}, units_of(shop));
  CabinetSpec spec;
  spec.own = std::move(reading.spec);
  spec.door.units = spec.own.units;
  ValueReader read(spec.own.units);
  spec.end.units = spec.back.units = spec.own.units;
  read_leaf(read, item, {"fronts", "door"}, spec.door);
  read_leaf(read, item, {"case", "end"}, spec.end);
  read_leaf(read, item, {"case", "back", "leaf"}, spec.back);
  spec.layout = read_layout(read, item, NodesOf::cabinet);
  for (Given& given : given_lengths(read.take_lengths()))
    reading.given.push_back(std::move(given));
  add(reading.problems, read.take_problems());
  if (shop != nullptr) {
    overlay(spec.own, shop->of_use(Use::cabinet), kOfCabinet);
    if (spec.own["fittings"].by_shop) {  // a shop's are its doors'
      spec.own.forget("fittings");
      spec.own.fittings.clear();
    }
    for (Spec* leaf : {&spec.door, &spec.end, &spec.back}) {
      overlay(*leaf, shop->of_use(Use::cabinet), kOfDoor);
      leaf->forget("finish.film");  // the cabinet's gaps have it
    }
  }
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  auto job = std::make_unique<CabinetJob>();
  SettledSeason season = settle_season(spec.own);
  if (!season.problems.empty()) return {nullptr, std::move(season.problems)};
  job->season = std::move(season.season);
  job->assumed_season = std::move(season.assumed);
  if (!job->season) job->usual_year = usual_season_of_case(spec.own);
  job->kind = "cabinet";
  name_job(*job, spec.own, default_id);
  job->given = std::move(reading.given);
  job->service = {true, false, false};
  job->spec = std::move(spec);
  return {std::move(job), {}};
}

}  // namespace haunch
