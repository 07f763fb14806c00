#include "remedy.h"

#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include "checks.h"

namespace haunch {
namespace {

/// Steps by which a lever is first moved, to see what answers to it.
constexpr std::array<std::int64_t, 3> kProbes{1, 4, 16};
constexpr std::int64_t kFarthest = 1024;  // steps

bool same_place(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.joint == b.joint && a.parts == b.parts;
}

const Finding* find_same(const std::vector<Finding>& findings, const Finding& wanted) {
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [&](const Finding& it) { return same_place(it, wanted); });
  return found == findings.end() ? nullptr : &*found;
}

/// Whether `trial` has something that `before` had better, or did not have.
bool is_worse(const std::vector<Finding>& before, const std::vector<Finding>& trial) {
  return std::any_of(trial.begin(), trial.end(), [&](const Finding& now) {
    if (now.status == Status::ok) return false;
    const Finding* then = find_same(before, now);
    if (then == nullptr || then->status < now.status) return true;
    return then->status == now.status && shortfall(now) > shortfall(*then);
  });
}

std::vector<std::string_view> joint_kinds(const Assembly& wood) {
  std::vector<std::string_view> kinds;
  for (const Joint& joint : wood.joints)
    kinds.push_back(joint.kind);
  return kinds;
}

/// One lever moved one way, by whole steps, and what was found each time.
class Push {
 public:
  Push(const Job& job, const std::vector<std::string_view>& kinds, const Lever& lever, bool up)
      : job_(job), kinds_(kinds), lever_(lever), up_(up) {}

  const Lever& lever() const { return lever_; }
  Length change(std::int64_t steps) const { return lever_.step * steps; }
  Length value(std::int64_t steps) const {
    return up_ ? lever_.value + change(steps) : lever_.value - change(steps);
  }
  bool can_be_worked(std::int64_t steps) { return !findings(steps).empty(); }

  /// The findings so many steps on; none where the job can't be worked so, or is joined otherwise.
  const std::vector<Finding>& findings(std::int64_t steps) {
    const auto [place, is_new] = tried_.try_emplace(steps);
    if (is_new && value(steps) >= lever_.least) {
      const Worked worked = job_.with(lever_, value(steps))->work();
      if (worked.problems.empty() && joint_kinds(worked.assembly) == kinds_)
        place->second = check_assembly(worked.assembly, job_.unit);
    }
    return place->second;
  }

 private:
  const Job& job_;
  const std::vector<std::string_view>& kinds_;  // of the joints, as the job is
  const Lever& lever_;
  bool up_;
  std::map<std::int64_t, std::vector<Finding>> tried_;
};

/// A push that could put a finding right, and after how many steps if the figure goes on as it
/// began.
struct Prospect {
  Push* push;
  std::int64_t steps;
};

class RemedySearch {
 public:
  RemedySearch(const Job& job, const std::vector<Finding>& findings)
      : findings_(findings), levers_(job.levers()), kinds_(joint_kinds(job.work().assembly)) {
    pushes_.reserve(levers_.size() * 2);
    for (const Lever& lever : levers_)
      for (const bool up : {true, false})
        pushes_.emplace_back(job, kinds_, lever, up);
  }

  std::optional<Remedy> remedy_for(const Finding& finding) {
    std::optional<Remedy> best;
    Length least;
    for (const Prospect& prospect : prospects_for(finding)) {
      if (best && prospect.push->change(prospect.steps) >= least) break;
      const std::int64_t steps = least_steps(finding, prospect);
      if (steps == 0 || (best && prospect.push->change(steps) >= least)) continue;
      least = prospect.push->change(steps);
      const Lever& lever = prospect.push->lever();
      best = Remedy{lever.key, lever.what, lever.value, prospect.push->value(steps)};
    }
    return best;
  }

 private:
  bool does(Push& push, std::int64_t steps, const Finding& finding) const {
    const std::vector<Finding>& trial = push.findings(steps);
    if (trial.empty()) return false;
    const Finding* now = find_same(trial, finding);
    return (now == nullptr || now->status == Status::ok) && !is_worse(findings_, trial);
  }

  /// How many steps a push may need for a finding, at the best pace of a few first tries; 0 when
  /// none brings it nearer.
  static std::int64_t steps_needed(Push& push, const Finding& finding) {
    if (!answers(push, finding)) return 0;
    double least = kFarthest + 1;
    for (const std::int64_t tried : kProbes)
      least = std::min(least, steps_at_pace(push, tried, finding));
    return least > kFarthest ? 0 : std::max<std::int64_t>(static_cast<std::int64_t>(least), 1);
  }

  /// Whether a finding's figure or its limits change at all with the longest of the first tries
  /// that can be worked.
  static bool answers(Push& push, const Finding& finding) {
    for (auto tried = kProbes.rbegin(); tried != kProbes.rend(); ++tried) {
      if (!push.can_be_worked(*tried)) continue;
      const Finding* now = find_same(push.findings(*tried), finding);
      return now == nullptr || now->value != finding.value || now->ok_min != finding.ok_min ||
             now->ok_max != finding.ok_max;
    }
    return false;
  }

  /// How many steps it takes if the figure goes on as it did over the first `tried`.
  static double steps_at_pace(Push& push, std::int64_t tried, const Finding& finding) {
    if (push.findings(tried).empty()) return kFarthest + 1;
    const Finding* now = find_same(push.findings(tried), finding);
    if (now == nullptr || now->status == Status::ok) return static_cast<double>(tried);
    const Length wanted = off_limits(finding);
    const Length gained = wanted - off_limits(*now);
    if (gained <= Length()) return kFarthest + 1;
    return static_cast<double>(wanted.steps()) / static_cast<double>(gained.steps()) *
           static_cast<double>(tried);
  }

  /// How far a figure lies outside the limits within which it is ok.
  static Length off_limits(const Finding& finding) {
    if (finding.ok_max && finding.value > *finding.ok_max) return finding.value - *finding.ok_max;
    if (finding.ok_min && finding.value < *finding.ok_min) return *finding.ok_min - finding.value;
    return {};
  }

  /// Those worth following, the least change first. A lever that moves nothing one way is not tried
  /// the other.
  std::vector<Prospect> prospects_for(const Finding& finding) {
    std::vector<Prospect> prospects;
    for (std::size_t i = 0; i < pushes_.size(); i += 2) {
      Push& up = pushes_[i];
      Push& down = pushes_[i + 1];
      if (up.can_be_worked(kProbes.back()) && !answers(up, finding)) continue;
      for (Push* push : {&up, &down})
        if (const std::int64_t steps = steps_needed(*push, finding); steps > 0)
          prospects.push_back({push, steps});
    }
    std::stable_sort(prospects.begin(), prospects.end(), [](const Prospect& a, const Prospect& b) {
      return a.push->change(a.steps) < b.push->change(b.steps);
    });
    return prospects;
  }

  /// The least number of steps that does, near the expected one; 0 for none.
  std::int64_t least_steps(const Finding& finding, const Prospect& prospect) const {
    Push& push = *prospect.push;
    std::int64_t fails = 0;
    std::int64_t steps = prospect.steps;
    for (std::int64_t stride = 1; !does(push, steps, finding); stride *= 2) {
      fails = steps;
      steps += stride;
      if (steps > 2 * prospect.steps + 2 * kProbes.back() || steps > kFarthest) return 0;
    }
    if (steps - fails > 1 && !does(push, steps - 1, finding))
      return steps;  // as a straight line has it
    while (steps - fails > 1) {
      const std::int64_t middle = fails + (steps - fails) / 2;
      (does(push, middle, finding) ? steps : fails) = middle;
    }
    return steps;
  }

  const std::vector<Finding>& findings_;
  std::vector<Lever> levers_;
  std::vector<std::string_view> kinds_;
  std::vector<Push> pushes_;  // of each lever up, then down
};

}  // namespace

std::vector<std::optional<Remedy>> find_remedies(const Job& job,
                                                 const std::vector<Finding>& findings) {
  std::vector<std::optional<Remedy>> remedies(findings.size());
  std::optional<RemedySearch> search;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].status == Status::ok) continue;
    if (!search) search.emplace(job, findings);
    remedies[i] = search->remedy_for(findings[i]);
  }
  return remedies;
}

}  // namespace haunch
