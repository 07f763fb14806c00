#include "face_frame.h"

#include <utility>

#include "face_frame_plan.h"
#include "face_frame_set_out.h"
#include "layout_spec.h"
#include "season_spec.h"
#include "shop.h"
#include "spec_reader.h"

namespace haunch {
namespace {

class FaceFrameJob : public Job {
 public:
  Spec spec;
  LayoutNode layout;

  Worked work() const override {
    PlannedFaceFrame planned = plan();
    Worked worked = planned.take_work();
    if (!worked.problems.empty()) return worked;
    worked.assembly = set_out_face_frame(planned.plan);
    if (season) add(worked.problems, missing_woods(worked.assembly, *season));
    return worked;
  }

  std::vector<Lever> levers() const override { return plan().levers; }

  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    auto changed = std::make_unique<FaceFrameJob>(*this);
    set_size(changed->spec, std::string(kFaceFrameRoot) + lever.key, value);
    return changed;
  }

 private:
  PlannedFaceFrame plan() const {
    return plan_face_frame(spec, kFaceFrameRoot, layout,
                           {*spec.size("size.width"), *spec.size("size.height")});
  }
};

}  // namespace

JobReading read_face_frame(const Value& item, const ShopDefaults* shop,
                           std::string_view default_id) {
  SpecReading reading = read_spec(
      item, {.of = kOfFaceFrame, .root = kFaceFrameRoot, .within = R"({"tenon": {"depth": …}})"},
      units_of(shop));
  ValueReader read(reading.spec.units);
  LayoutNode layout = read_layout(read, item, NodesOf::face_frame);
  add(reading.problems, read.take_problems());
  if (shop != nullptr) overlay(reading.spec, shop->of_use(Use::cabinet), kOfFaceFrame);
  if (!reading.problems.empty()) return {nullptr, std::move(reading.problems)};
  auto job = std::make_unique<FaceFrameJob>();
  SettledSeason season = settle_season(reading.spec);
  if (!season.problems.empty()) return {nullptr, std::move(season.problems)};
  job->season = std::move(season.season);
  job->assumed_season = std::move(season.assumed);
  job->kind = "face-frame";
  name_job(*job, reading.spec, default_id);
  job->given = std::move(reading.given);
  job->spec = std::move(reading.spec);
  job->layout = std::move(layout);
  return {std::move(job), {}};
}

}  // namespace haunch
