#include "season_remedy.h"

#include <algorithm>
#include <utility>

#include "checks.h"

namespace haunch {
namespace {

constexpr int kDeepest = 60;  // steps of the groove's depth

/// What fails of joints and panels at other moistures, which these remedies are for, and all else.
struct Fails {
  std::int64_t in_season = 0, besides = 0;
};

Fails fails_of(const std::vector<Finding>& findings) {
  Fails fails;
  for (const Finding& finding : findings)
    if (finding.status == Status::fail)
      ++(finding.moisture && finding.joint ? fails.in_season : fails.besides);
  return fails;
}

bool helps(const Job& changed, const Fails& before) {
  const Worked worked = changed.work();
  if (!worked.problems.empty()) return false;
  const Fails now = fails_of(check_job(worked.assembly, changed));
  return now.in_season == 0 && now.besides <= before.besides;
}

/// The least deepening of the panel groove that helps, else the last one tried.
std::vector<SeasonRemedy> deeper_groove(const Job& job, const Fails& before, Allowance& allowance) {
  const std::vector<Lever> levers = job.levers();
  const auto lever = std::find_if(levers.begin(), levers.end(),
                                  [](const Lever& it) { return it.key.ends_with("groove_depth"); });
  if (lever == levers.end()) return {};
  SeasonRemedy remedy{lever->key, in_words(lever->value, job.unit), {}, false};
  for (int steps = 1; steps <= kDeepest && !remedy.helps; ++steps) {
    if (!allowance.allows()) break;
    const Length depth = lever->value + lever->step * steps;
    remedy.to = in_words(depth, job.unit);
    remedy.helps = helps(*job.with(*lever, depth), before);
  }
  if (remedy.to.empty()) return {};
  return {remedy};
}

/// What else the job knows of, each once; of several of one key the first that helps, else the
/// last.
void try_alternatives(std::vector<SeasonRemedy>& remedies, const Job& job, const Fails& before,
                      Allowance& allowance) {
  for (Alternative& alternative : job.alternatives()) {
    const auto same = std::find_if(remedies.begin(), remedies.end(), [&](const SeasonRemedy& it) {
      return it.key == alternative.key;
    });
    if (same != remedies.end() && same->helps) continue;
    if (!allowance.allows()) return;
    SeasonRemedy tried{alternative.key, alternative.from, alternative.to,
                       helps(*alternative.job, before)};
    if (same == remedies.end())
      remedies.push_back(std::move(tried));
    else
      *same = std::move(tried);
  }
}

}  // namespace

SeasonRemedies find_season_remedies(const Job& job, const std::vector<Finding>& findings,
                                    std::int64_t one_try, std::int64_t most) {
  const Fails before = fails_of(findings);
  if (before.in_season == 0) return {};
  Allowance allowance(most, one_try);
  allowance.begin_turn(most / 2);
  SeasonRemedies remedies{deeper_groove(job, before, allowance), !allowance.refused()};
  allowance.begin_turn(allowance.left());
  try_alternatives(remedies.tried, job, before, allowance);
  remedies.all_tried = remedies.all_tried && !allowance.refused();
  return remedies;
}

}  // namespace haunch
