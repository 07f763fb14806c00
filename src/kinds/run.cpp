#include "run.h"

#include <fmt/core.h>

#include <algorithm>
#include <charconv>
#include <utility>

#include "cautions.h"
#include "run_along.h"
#include "run_cautions.h"
#include "run_corner.h"
#include "run_plan.h"
#include "run_set_out.h"
#include "run_spec.h"
#include "run_work.h"
#include "season_spec.h"

namespace haunch {
namespace {

class WallRunJob : public RunWork {
 public:
  RunSpec spec;

  Worked work() const override {
    PlannedRun planned = plan_run(spec);
    std::vector<Caution> cautions;
    if (planned.problems.empty()) cautions = run_cautions(planned.plan, spec);
    Worked worked = planned.take_work();
    if (!worked.problems.empty()) return worked;
    worked.assembly = set_out_run(planned.plan, spec);
    worked.cautions = std::move(cautions);
    for (const RunEntry& entry : spec.order)
      if (entry.taken) take_from(worked, *entry.taken);
    return worked;
  }

  Surroundings surroundings() const override {
    const PlannedRun planned = plan_run(spec);
    Surroundings around{
        boundaries_of(planned.plan, spec), planned.plan.handle, planes_of(planned.plan, spec), {}};
    for (const bool right : {false, true})
      if (const auto& through = spec.through[right ? 1 : 0])
        around.corners.push_back(through_run(*through, right));
    return around;
  }

  AlongWall along_wall() const override { return along_wall_of(plan_run(spec).plan, spec); }

  std::vector<Lever> levers() const override { return plan_run(spec).levers; }

  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    auto changed = std::make_unique<WallRunJob>(*this);
    if (lever.key.starts_with(kOrder))
      changed->spec.order[place_in(lever.key, kOrder)].width = value;
    else if (lever.key.starts_with(kCutouts))
      changed->spec.own.edit("run.worktop.cutouts")
          .items[place_in(lever.key, kCutouts)]
          .set("run.worktop.cutouts[].from_front", value);
    else
      set_size(changed->spec.own, std::string(kRunRoot) + lever.key, value);
    return changed;
  }

 private:
  static constexpr std::string_view kOrder = "order.";
  static constexpr std::string_view kCutouts = "worktop.cutouts.";

  /// "order.3.gap": the fourth.
  static std::size_t place_in(const std::string& key, std::string_view list) {
    std::size_t place = 0;
    std::from_chars(key.data() + list.size(), key.data() + key.size(), place);
    return place;
  }

  /// What a cabinet tells once is told once of all. That it is the twin of another is its own.
  static void take_from(Worked& worked, const TakenCabinet& taken) {
    std::vector<Caution> cautions = taken.worked().cautions;
    std::erase_if(cautions, [](const Caution& it) { return it.about == "mirrored"; });
    add_untold(worked.cautions, std::move(cautions));
  }
};

/// The woods that its cabinets know besides, each once.
void take_woods(Job& job, const Job& cabinet) {
  for (const Species& wood : cabinet.woods) {
    const bool known = std::any_of(job.woods.begin(), job.woods.end(),
                                   [&](const Species& it) { return it.name == wood.name; });
    if (!known) job.woods.push_back(wood);
  }
}

/// What comes with its cabinets. Of fittings those that all of them take, as others could not be
/// counted apart.
void take_with_it(Job& job, const Job& cabinet, bool first) {
  job.extras.insert(job.extras.end(), cabinet.extras.begin(), cabinet.extras.end());
  if (first) job.fittings = cabinet.fittings;
  std::erase_if(job.fittings, [&](const TakenFitting& taken) {
    return std::none_of(cabinet.fittings.begin(), cabinet.fittings.end(),
                        [&](const TakenFitting& its) {
                          return its.use == taken.use && its.bought.name == taken.bought.name;
                        });
  });
}

}  // namespace

JobReading read_run(const Value& item, const ShopDefaults* shop, std::string_view default_id,
                    const OtherItems* others) {
  RunSpecReading reading = read_run_spec(item, shop, default_id, others);
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  auto job = std::make_unique<WallRunJob>();
  job->kind = "run";
  name_job(*job, reading.spec.own, default_id);
  job->given = std::move(reading.given);
  job->service = {true, false, false};
  for (const RunEntry& entry : reading.spec.order) {
    if (!entry.taken) continue;
    take_with_it(*job, entry.taken->job(), job->takes.empty());
    job->takes.push_back(entry.id);
    take_woods(*job, entry.taken->job());
  }
  job->spec = std::move(reading.spec);
  job->spec.own.woods = job->woods;
  job->usual_year = usual_season_of_case(job->spec.own);
  return {std::move(job), {}};
}

}  // namespace haunch
