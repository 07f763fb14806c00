#include "checks.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "alike.h"
#include "boundaries.h"
#include "carrying.h"
#include "family.h"
#include "front_lines.h"
#include "seasons.h"
#include "worktops.h"

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

namespace {

void measure_joints(Bench& bench, MeasuredOver where) {
  const Assembly& assembly = bench.assembly;
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
}

}  // namespace

Bench bench_of(const Assembly& assembly, Unit unit, MeasuredOver where) {
  Bench bench{assembly, limits_in(unit), solids_of(assembly), {}, {}, {}};
  measure_joints(bench, where);
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

/// What of an assembly a family looks at; what comes later takes what comes before.
enum class LooksAt : unsigned char { blanks, wood, measures };

struct CheckFamily {
  LooksAt at;
  void (*check)(Bench& bench, Unit unit, const Job* job);  // job: of what is no job's, null
  std::vector<const Rule*> (*rules)();
};

template <void (*kCheck)(Bench&)>
void of_bench(Bench& bench, Unit, const Job*) {
  kCheck(bench);
}

template <std::vector<const Rule*> (*kOne)(), std::vector<const Rule*> (*kOther)()>
std::vector<const Rule*> rules_of_both() {
  std::vector<const Rule*> rules = kOne();
  for (const Rule* rule : kOther())
    rules.push_back(rule);
  return rules;
}

/// In the order in which they are told.
constexpr CheckFamily kFamilies[] = {
    {LooksAt::wood, of_bench<check_whole>, rules_of_whole},
    {LooksAt::measures, of_bench<check_fits>, rules_of_fits},
    {LooksAt::measures, of_bench<check_walls>, rules_of_walls},
    {LooksAt::measures, of_bench<check_proportions>, rules_of_proportions},
    {LooksAt::blanks,
     [](Bench& bench, Unit unit, const Job* job) {
       if (job != nullptr) check_leaves(bench, unit, job->service);
     },
     rules_of_leaves},
    {LooksAt::measures,
     [](Bench& bench, Unit unit, const Job* job) {
       if (job != nullptr && job->usual_year) check_usual_year(bench, *job->usual_year, unit);
     },
     // What is fixed across the grain is told of at the moistures of a usual year too.
     rules_of_both<rules_of_usual_year, rules_of_fixings>},
    {LooksAt::measures, of_bench<check_pins>, rules_of_pins},
    {LooksAt::wood, of_bench<check_clashes>, rules_of_clashes},
    {LooksAt::wood, of_bench<check_hanging>, rules_of_hanging},
    {LooksAt::wood, of_bench<check_meetings>, rules_of_meetings},
    {LooksAt::wood, [](Bench& bench, Unit, const Job*) { check_laps(bench, bench.assembly); },
     rules_of_laps},
    {LooksAt::wood, of_bench<check_as_found>, rules_of_as_found},
    {LooksAt::measures, of_bench<check_glazing>, rules_of_glazing},
    // A front that swings passes what is beside it as a leaf that hangs does.
    {LooksAt::wood, of_bench<check_fronts>, rules_of_both<rules_of_fronts, rules_of_hanging>},
    {LooksAt::wood,
     [](Bench& bench, Unit, const Job* job) {
       const RunWork* run = job != nullptr ? as_run(*job) : nullptr;
       if (run != nullptr) check_boundaries(bench, run->surroundings());
     },
     rules_of_boundaries},
    {LooksAt::wood, of_bench<check_worktops>, rules_of_worktops},
    {LooksAt::wood, of_bench<check_front_lines>, rules_of_front_lines},
    {LooksAt::wood, of_bench<check_loose_pieces>, rules_of_loose_pieces},
    {LooksAt::wood, of_bench<check_pin_rows>, rules_of_pin_rows},
    {LooksAt::wood, of_bench<check_screws>, rules_of_screws},
    {LooksAt::measures,
     [](Bench& bench, Unit, const Job* job) {
       if (job != nullptr) check_shelves(bench, *job);
     },
     rules_of_shelves},
    {LooksAt::wood, [](Bench& bench, Unit, const Job* job) { check_standing(bench, job); },
     rules_of_standing},
    {LooksAt::measures, of_bench<check_tails>, rules_of_tails},
    {LooksAt::wood, of_bench<check_seen_joints>, rules_of_seen_joints},
    {LooksAt::blanks,
     [](Bench& bench, Unit, const Job* job) {
       if (job != nullptr) check_carrying(bench, *job);
     },
     rules_of_carrying}};

/// Puts on the bench what is not there yet.
void lay_out(Bench& bench, LooksAt at) {
  const Assembly& assembly = bench.assembly;
  if (bench.solids.empty() && at == LooksAt::blanks)
    for (const Piece& piece : assembly.pieces)
      bench.solids.push_back({placed_blank(piece), {}});
  const bool has_wood = !bench.solids.empty() && !bench.solids.front().wood.empty();
  if (at >= LooksAt::wood && !has_wood) bench.solids = solids_of(assembly);
  if (at == LooksAt::measures && bench.measures.empty())
    measure_joints(bench, MeasuredOver::all_over);
}

std::vector<Finding> found_by(Bench& bench, const std::vector<bool>& families, const Job& job) {
  LooksAt at = LooksAt::blanks;
  for (std::size_t i = 0; i < families.size(); ++i)
    if (families[i]) at = std::max(at, kFamilies[i].at);
  lay_out(bench, at);
  for (std::size_t i = 0; i < families.size(); ++i)
    if (families[i]) kFamilies[i].check(bench, job.unit, &job);
  return std::exchange(bench.findings, {});
}

std::vector<Finding> check_all(const Assembly& assembly, Unit unit, const Job* job) {
  Bench bench = bench_of(assembly, unit);
  bench.findings.reserve(assembly.joints.size() * 10);
  for (const CheckFamily& family : kFamilies)
    family.check(bench, unit, job);
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
  return GradualChecks(assembly, job).all();
}

ChecksOf::ChecksOf(const std::vector<Finding>& findings) {
  for (const CheckFamily& family : kFamilies) {
    const std::vector<const Rule*> rules = family.rules();
    families_.push_back(std::any_of(findings.begin(), findings.end(), [&](const Finding& it) {
      return std::find(rules.begin(), rules.end(), it.rule) != rules.end();
    }));
  }
  moved_ = std::any_of(findings.begin(), findings.end(),
                       [](const Finding& finding) { return finding.moisture.has_value(); });
}

GradualChecks::GradualChecks(const Assembly& assembly, const Job& job)
    : assembly_(assembly),
      job_(job),
      bench_(std::make_unique<Bench>(Bench{assembly, limits_in(job.unit), {}, {}, {}, {}})) {}

GradualChecks::~GradualChecks() = default;

const std::vector<Finding>& GradualChecks::moved() {
  if (!moved_)
    moved_ = job_.season ? check_moved(assembly_, *job_.season, job_.unit) : std::vector<Finding>();
  return *moved_;
}

std::vector<Finding> GradualChecks::some(const ChecksOf& checks) {
  std::vector<Finding> findings = found_by(*bench_, checks.families_, job_);
  if (checks.moved_) findings.insert(findings.end(), moved().begin(), moved().end());
  return findings;
}

std::vector<Finding> GradualChecks::all() {
  std::vector<Finding> findings =
      found_by(*bench_, std::vector<bool>(std::size(kFamilies), true), job_);
  findings.insert(findings.end(), moved().begin(), moved().end());
  return findings;
}

std::vector<const Rule*> all_rules() {
  std::vector<const Rule*> rules;
  for (const auto& family :
       {rules_of_whole(),   rules_of_fits(),        rules_of_walls(),        rules_of_proportions(),
        rules_of_leaves(),  rules_of_usual_year(),  rules_of_pins(),         rules_of_clashes(),
        rules_of_hanging(), rules_of_meetings(),    rules_of_laps(),         rules_of_as_found(),
        rules_of_glazing(), rules_of_fronts(),      rules_of_loose_pieces(), rules_of_pin_rows(),
        rules_of_screws(),  rules_of_shelves(),     rules_of_standing(),     rules_of_tails(),
        rules_of_fixings(), rules_of_seen_joints(), rules_of_boundaries(),   rules_of_mitres(),
        rules_of_carrying()})
    rules.insert(rules.end(), family.begin(), family.end());
  return rules;
}

}  // namespace haunch
