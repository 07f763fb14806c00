#include "door.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "door_plan.h"
#include "door_set_out.h"
#include "door_spec.h"
#include "shop.h"

namespace haunch {
namespace {

constexpr std::string_view kRailKey = "rail_widths.";

class DoorJob : public Job {
 public:
  DoorSpec spec;

  Worked work() const override {
    PlannedDoor planned = plan_door(spec);
    Worked worked;
    worked.assumed = std::move(planned.assumed);
    worked.problems = std::move(planned.problems);
    if (worked.problems.empty()) worked.assembly = set_out_door(planned.plan);
    return worked;
  }

  std::vector<Lever> levers() const override { return plan_door(spec).levers; }

  std::unique_ptr<Job> with(const Lever& lever, Length value) const override {
    auto changed = std::make_unique<DoorJob>(*this);
    if (lever.key.starts_with(kRailKey))
      set_rail(changed->spec, lever.key.substr(kRailKey.size()), value);
    else
      set_size(changed->spec, muntin_key(lever.key), value);
    return changed;
  }

 private:
  static void set_size(DoorSpec& spec, std::string_view key, Length value) {
    for (const SizeKey& size : door_size_keys())
      if (size.key == key || size.key.starts_with(std::string(key) + "."))
        spec.*size.size = {value, false};
  }

  /// `place` is what follows "rail_widths.": a number, or a number and what of that rail is set.
  void set_rail(DoorSpec& changed, std::string_view place, Length value) const {
    if (changed.rails.rails.empty()) changed.rails.rails = planned_rails();
    std::size_t number = 0;
    const auto [end, fault] = std::from_chars(place.data(), place.data() + place.size(), number);
    RailSpec& rail = changed.rails.rails.at(number);
    const std::string_view what(end, static_cast<std::size_t>(place.data() + place.size() - end));
    for (const RailLine line : {RailLine::top, RailLine::centre, RailLine::bottom}) {
      if (what != "." + std::string(rail_line_word(line))) continue;
      rail.line = line;
      rail.height = value;
      return;
    }
    rail.width = value;
  }

  std::vector<RailSpec> planned_rails() const {
    std::vector<RailSpec> rails;
    for (const RailPlan& planned : plan_door(spec).plan.frame.rails) {
      RailSpec rail;
      rail.width = planned.width;
      rail.plain = true;
      rails.push_back(rail);
    }
    return rails;
  }
};

void add(std::vector<Problem>& problems, std::vector<Problem> more) {
  for (Problem& problem : more)
    problems.push_back(std::move(problem));
}

std::unique_ptr<Job> make_job(DoorSpec spec, std::vector<Given> given,
                              std::string_view default_id) {
  auto job = std::make_unique<DoorJob>();
  job->kind = "door";
  job->id = spec.id.empty() ? std::string(default_id) : spec.id;
  if (spec.id.empty())
    job->assumed_names.push_back({"id", job->id, "made from the name of its file"});
  if (!spec.quantity) job->assumed_names.push_back({"quantity", 1, "one, where nothing is said"});
  job->name = spec.name.empty() ? "door" : spec.name;
  job->note = spec.note;
  job->species = spec.species;
  job->quantity = spec.quantity.value_or(1);
  job->unit = spec.units.value_or(Unit::mm);
  job->given = std::move(given);
  job->spec = std::move(spec);
  return job;
}

}  // namespace

JobReading read_door(const Value& item, const ShopDefaults* shop, std::string_view default_id) {
  DoorReading reading =
      read_door_spec(item, Reader::spec, shop != nullptr ? shop->units() : std::nullopt);
  std::optional<ToleranceSpec> shop_tolerances;
  if (shop != nullptr) {
    DoorReading shops = read_door_spec(shop->values(), Reader::shop, {});
    overlay(reading.spec, shops.spec);
    shop_tolerances = std::move(shops.tolerances);
  }
  std::vector<Problem>& problems = reading.problems;
  add(problems, contradictions(reading.spec, problems));
  SettledTolerances settled;
  const bool speaks_of_them = reading.tolerances || shop_tolerances;
  if (speaks_of_them && problems.empty())
    settled = settle_tolerances(reading.tolerances.value_or(ToleranceSpec()),
                                shop_tolerances ? &*shop_tolerances : nullptr,
                                reading.spec.units.value_or(Unit::mm));
  add(problems, std::move(settled.problems));
  if (!problems.empty()) return {nullptr, std::move(problems)};
  auto job = make_job(std::move(reading.spec), std::move(reading.given), default_id);
  if (speaks_of_them) job->tolerances = settled.tolerances;
  job->assumed_tolerances = std::move(settled.assumed);
  return {std::move(job), {}};
}

std::vector<Problem> door_shop_problems(const Value& shop) {
  DoorReading reading = read_door_spec(shop, Reader::shop, {});
  const DoorSpec& spec = reading.spec;
  const bool three =
      spec.mortise_width.size && spec.tenon_thickness.size && spec.fit_allowance.size;
  if (three && *spec.mortise_width.size - *spec.tenon_thickness.size != *spec.fit_allowance.size)
    reading.problems.push_back(
        {"/fit_allowance",
         "does not agree with mortise.width and tenon.thickness; give two of the three",
         {}});
  if (reading.tolerances && reading.problems.empty())
    add(reading.problems,
        settle_tolerances(*reading.tolerances, nullptr, spec.units.value_or(Unit::mm)).problems);
  return std::move(reading.problems);
}

}  // namespace haunch
