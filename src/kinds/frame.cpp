#include "frame.h"

#include <utility>

#include "frame_plan.h"
#include "frame_set_out.h"
#include "opening_spec.h"
#include "shop.h"
#include "spec_reader.h"

namespace haunch {
namespace {

class FrameJob : public Job {
 public:
  Spec spec;

  Worked work() const override {
    PlannedCase planned = plan_frame(spec, kFrameRoot, {});
    Worked worked = planned.take_work();
    if (worked.problems.empty()) worked.assembly = set_out_frame(planned.plan);
    return worked;
  }

  std::vector<Lever> levers() const override { return plan_frame(spec, kFrameRoot, {}).levers; }

  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    auto changed = std::make_unique<FrameJob>(*this);
    set_size(changed->spec, std::string(kFrameRoot) + lever.key, value);
    return changed;
  }
};

}  // namespace

JobReading read_frame(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  SpecReading reading =
      read_spec(item, {.of = kOfFrame, .root = kFrameRoot, .within = R"({"stop": {"depth": …}})"},
                units_of(shop));
  if (reading.problems.empty())
    add(reading.problems, take_found_opening(reading.spec, kWallOpening, kFrameRoot));
  if (shop != nullptr)
    overlay(reading.spec, shop->of_use(use_of(reading.spec, *shop, stated_height(reading.spec))),
            kOfFrame);
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  auto job = std::make_unique<FrameJob>();
  job->kind = "frame";
  name_job(*job, reading.spec, default_id);
  job->given = std::move(reading.given);
  job->spec = std::move(reading.spec);
  return {std::move(job), {}};
}

}  // namespace haunch
