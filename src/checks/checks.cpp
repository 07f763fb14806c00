#include "checks.h"

#include <algorithm>

#include "alike.h"
#include "family.h"
#include "seasons.h"

namespace haunch {
namespace {

Status worst(const Bounds& bounds, Length value) {
  if ((bounds.fail_min && value < *bounds.fail_min) ||
      (bounds.fail_max && value > *bounds.fail_max))
    return Status::fail;
  if ((bounds.caution_min && value < *bounds.caution_min) ||
      (bounds.caution_max && value > *bounds.caution_max))
    return Status::caution;
  return Status::ok;
}

}  // namespace

Length shortfall(const Finding& finding) {
  if (finding.min && finding.value < *finding.min) return *finding.min - finding.value;
  if (finding.max && finding.value > *finding.max) return finding.value - *finding.max;
  return {};
}

void report(Bench& bench, const Rule& rule, std::vector<std::size_t> parts,
            std::optional<std::size_t> joint, std::optional<Length> value, const Bounds& bounds) {
  const Status status = value ? worst(bounds, *value) : Status::fail;
  const auto& ok_min = bounds.caution_min ? bounds.caution_min : bounds.fail_min;
  const auto& ok_max = bounds.caution_max ? bounds.caution_max : bounds.fail_max;
  // Told is the limit that was broken; of what is ok, the one that it was nearest to break.
  const bool fails = status == Status::fail;
  const bool doubted = status == Status::caution;
  const auto& min = fails ? bounds.fail_min : doubted ? bounds.caution_min : ok_min;
  const auto& max = fails ? bounds.fail_max : doubted ? bounds.caution_max : ok_max;
  bench.findings.push_back({&rule,
                            status,
                            std::move(parts),
                            joint,
                            value.value_or(Length()),
                            bench.moisture,
                            value.has_value(),
                            min,
                            max,
                            ok_min,
                            ok_max,
                            {}});
}

Bench bench_of(const Assembly& assembly, Unit unit, MeasuredOver where) {
  Bench bench{assembly, limits_in(unit), solids_of(assembly), {}, {}, {}};
  bench.measures.reserve(assembly.joints.size());
  Looks looks(assembly);
  for (std::size_t number = 0; number < assembly.joints.size(); ++number) {
    const Joint& joint = assembly.joints[number];
    std::size_t same = 0;
    while (same < number && !looks.are_alike(same, number))
      ++same;
    bench.measures.push_back(same < number ? bench.measures[same]
                                           : measure(joint, bench.solids[joint.receives],
                                                     bench.solids[joint.enters], where));
  }
  return bench;
}

Wood wood_of(const Bench& bench, std::size_t group) {
  Wood all;
  for (const std::size_t piece : pieces_of(bench.assembly, group))
    add(all, bench.solids[piece].wood);
  return all;
}

std::size_t first_of(const Assembly& assembly, std::size_t group) {
  const auto first = std::find_if(assembly.pieces.begin(), assembly.pieces.end(),
                                  [&](const Piece& piece) { return piece.group == group; });
  return static_cast<std::size_t>(first - assembly.pieces.begin());
}

namespace {

std::vector<Finding> check_all(const Assembly& assembly, Unit unit, const Job* job) {
  Bench bench = bench_of(assembly, unit);
  bench.findings.reserve(assembly.joints.size() * 10);
  check_whole(bench);
  check_fits(bench);
  check_walls(bench);
  check_proportions(bench);
  if (job != nullptr) check_leaves(bench, unit, job->service);
  if (job != nullptr && job->usual_year) check_usual_year(bench, *job->usual_year, unit);
  check_pins(bench);
  check_clashes(bench);
  check_hanging(bench);
  check_meetings(bench);
  check_laps(bench, assembly);
  check_as_found(bench);
  check_glazing(bench);
  check_fronts(bench);
  check_loose_pieces(bench);
  check_pin_rows(bench);
  check_screws(bench);
  if (job != nullptr) check_shelves(bench, *job);
  check_standing(bench, job);
  check_tails(bench);
  return std::move(bench.findings);
}

}  // namespace

std::vector<Finding> check_assembly(const Assembly& assembly, Unit unit) {
  return check_all(assembly, unit, nullptr);
}

std::vector<Finding> check_built(const Assembly& assembly, const Job& job) {
  return check_all(assembly, job.unit, &job);
}

std::vector<Finding> check_job(const Assembly& assembly, const Job& job) {
  std::vector<Finding> findings = check_built(assembly, job);
  if (!job.season) return findings;
  for (Finding& finding : check_moved(assembly, *job.season, job.unit))
    findings.push_back(std::move(finding));
  return findings;
}

std::vector<const Rule*> all_rules() {
  std::vector<const Rule*> rules;
  for (const auto& family :
       {rules_of_whole(),   rules_of_fits(),       rules_of_walls(),        rules_of_proportions(),
        rules_of_leaves(),  rules_of_usual_year(), rules_of_pins(),         rules_of_clashes(),
        rules_of_hanging(), rules_of_meetings(),   rules_of_laps(),         rules_of_as_found(),
        rules_of_glazing(), rules_of_fronts(),     rules_of_loose_pieces(), rules_of_pin_rows(),
        rules_of_screws(),  rules_of_shelves(),    rules_of_standing(),     rules_of_tails(),
        rules_of_fixings()})
    rules.insert(rules.end(), family.begin(), family.end());
  return rules;
}

}  // namespace haunch
