#include "drawer.h"

#include <utility>

#include "drawer_plan.h"
#include "drawer_set_out.h"
#include "season_spec.h"
#include "shop.h"
#include "spec_reader.h"

namespace haunch {
namespace {

class DrawerJob : public Job {
 public:
  Spec spec;

  Worked work() const override {
    PlannedDrawer planned = plan_drawer(spec);
    Worked worked = planned.take_work();
    if (worked.problems.empty()) worked.assembly = set_out_drawer(planned.plan);
    if (season) add(worked.problems, missing_woods(worked.assembly, *season));
    return worked;
  }

  std::vector<Lever> levers() const override { return plan_drawer(spec).levers; }

  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    auto changed = std::make_unique<DrawerJob>(*this);
    set_size(changed->spec, std::string(kDrawerRoot) + lever.key, value);
    return changed;
  }
};

}  // namespace

JobReading read_drawer(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  SpecReading reading = read_spec(
      item, {.of = kOfDrawer, .root = kDrawerRoot, .within = R"({"sides": {"thickness": …}})"},
      units_of(shop));
  Spec& spec = reading.spec;
  if (shop != nullptr) overlay(spec, shop->cabinet, kOfDrawer);
  take_drawer_woods(spec);
  auto job = std::make_unique<DrawerJob>();
  if (reading.problems.empty()) {
    SettledSeason season = settle_season(spec);
    add(reading.problems, std::move(season.problems));
    job->season = std::move(season.season);
    job->assumed_season = std::move(season.assumed);
  }
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  job->kind = "drawer";
  name_job(*job, spec, default_id);
  job->given = std::move(reading.given);
  job->service.cabinet = true;
  job->spec = std::move(spec);
  return {std::move(job), {}};
}

}  // namespace haunch
