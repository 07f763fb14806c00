#include "frame.h"

#include <utility>

#include "frame_plan.h"
#include "frame_set_out.h"
#include "frame_spec.h"
#include "shop.h"

namespace haunch {
namespace {

class FrameJob : public Job {
 public:
  ItemHead head;
  KeyedValues values;

  Worked work() const override {
    PlannedCase planned = plan_frame(head, values, {});
    Worked worked;
    worked.assumed = std::move(planned.assumed);
    worked.problems = std::move(planned.problems);
    worked.rooms = std::move(planned.rooms);
    worked.cautions = std::move(planned.cautions);
    if (worked.problems.empty()) worked.assembly = set_out_frame(planned.plan);
    return worked;
  }

  std::vector<Lever> levers() const override { return plan_frame(head, values, {}).levers; }

  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    auto changed = std::make_unique<FrameJob>(*this);
    KeyValue& its = changed->values[row_of(frame_keys(), lever.key).key];
    its.size = value;
    its.by_shop = false;
    return changed;
  }
};

}  // namespace

JobReading read_frame(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  FrameReading reading = read_frame_spec(item, shop != nullptr ? shop->units() : std::nullopt);
  if (shop != nullptr) take_shop_frame(reading, *shop);
  refuse_fire_rated(reading, "");
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  auto job = std::make_unique<FrameJob>();
  job->kind = "frame";
  name_job(*job, reading.head, default_id);
  job->given = std::move(reading.given);
  job->head = std::move(reading.head);
  job->values = std::move(reading.values);
  return {std::move(job), {}};
}

std::vector<Problem> frame_shop_problems(const Value& shop) {
  ValueReader units({});
  return read_shop_frame(shop, read_units(units, shop)).problems;
}

}  // namespace haunch
