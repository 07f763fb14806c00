#include "remedy.h"

#include <algorithm>
#include <array>
#include <map>
#include <span>
#include <utility>

#include "checks.h"

namespace haunch {
namespace {

/// Steps by which a lever is first moved, to see what answers to it.
constexpr std::array<std::int64_t, 3> kProbes{1, 4, 16};
/// The same of a fitting's place, whose figure may only answer once it has passed what it clashes
/// with.
constexpr std::array<std::int64_t, 7> kMoveProbes{1, 4, 16, 64, 128, 256, 512};
// Of an item: over these the search would take minutes.
constexpr std::size_t kMostPieces = 300;
constexpr std::size_t kMostSloping = 100'000;
constexpr std::int64_t kFarthest = 4096;  // steps

bool same_place(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.joint == b.joint && a.parts == b.parts && a.moisture == b.moisture &&
         a.fitting == b.fitting;
}

/// The finding of the same place, most likely at the place `likely`.
const Finding* find_same(const std::vector<Finding>& findings, const Finding& wanted,
                         std::size_t likely) {
  if (likely < findings.size() && same_place(findings[likely], wanted)) return &findings[likely];
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [&](const Finding& it) { return same_place(it, wanted); });
  return found == findings.end() ? nullptr : &*found;
}

/// Whether `trial` has something that `before` had better, or did not have.
bool is_worse(const std::vector<Finding>& before, const std::vector<Finding>& trial) {
  for (std::size_t i = 0; i < trial.size(); ++i) {
    const Finding& now = trial[i];
    if (now.status == Status::ok) continue;
    const Finding* then = find_same(before, now, i);
    if (then == nullptr || then->status < now.status) return true;
    if (then->status == now.status && shortfall(now) > shortfall(*then)) return true;
  }
  return false;
}

/// Whether two findings say the same of two places.
bool says_the_same(const Finding& a, const Finding& b) {
  return a.rule == b.rule && a.status == b.status && a.moisture == b.moisture &&
         a.value == b.value && a.min == b.min && a.max == b.max && a.ok_min == b.ok_min &&
         a.ok_max == b.ok_max;
}

std::vector<std::string_view> joint_kinds(const Assembly& wood) {
  std::vector<std::string_view> kinds;
  for (const Joint& joint : wood.joints)
    kinds.push_back(joint.kind);
  return kinds;
}

/// What a job is before anything is changed.
struct Before {
  const Job& job;
  const std::vector<Finding>& findings;
  std::vector<std::string_view> joint_kinds;
};

/// A job with one lever moved, checked. Without findings it can't be worked so, or is joined
/// otherwise.
struct Trial {
  std::vector<Finding> findings;
  bool worse = false;  // something is, than before

  bool can_be_worked() const { return !findings.empty(); }
};

/// One lever moved one way, by whole steps, and what was found each time.
class Push {
 public:
  Push(const Before& before, const Lever& lever, bool up)
      : before_(before), lever_(lever), up_(up) {}

  const Lever& lever() const { return lever_; }
  bool moves_something() const { return lever_.moves != Moves::nothing; }
  std::span<const std::int64_t> probes() const {
    return moves_something() ? std::span<const std::int64_t>(kMoveProbes) : kProbes;
  }
  Length change(std::int64_t steps) const { return lever_.step * steps; }
  Length value(std::int64_t steps) const {
    return up_ ? lever_.value + change(steps) : lever_.value - change(steps);
  }

  const Trial& trial(std::int64_t steps) {
    const auto [place, is_new] = tried_.try_emplace(steps);
    Trial& trial = place->second;
    if (!is_new || value(steps) < lever_.least) return trial;
    const auto changed = before_.job.with(lever_, value(steps));
    const Worked worked = changed->work();
    if (!worked.problems.empty() || joint_kinds(worked.assembly) != before_.joint_kinds)
      return trial;
    trial.findings = check_job(worked.assembly, *changed);
    trial.worse = is_worse(before_.findings, trial.findings);
    return trial;
  }

  /// What became of finding number `wanted` so many steps on; null when it is gone.
  const Finding* became(std::size_t wanted, std::int64_t steps) {
    return find_same(trial(steps).findings, before_.findings[wanted], wanted);
  }

  /// Whether so many steps put it right and nothing else wrong.
  bool does(std::size_t wanted, std::int64_t steps) {
    if (!trial(steps).can_be_worked() || trial(steps).worse) return false;
    const Finding* now = became(wanted, steps);
    return now == nullptr || now->status == Status::ok;
  }

 private:
  const Before& before_;
  const Lever& lever_;
  bool up_;
  std::map<std::int64_t, Trial> tried_;
};

/// A push that could put a finding right, and after how many steps if the figure goes on as it
/// began.
struct Prospect {
  Push* push;
  std::int64_t steps;
};

/// What was found for a finding: so many steps of a push.
struct Answer {
  Push* push;
  std::int64_t steps;

  Length change() const { return push->change(steps); }
  Remedy remedy() const {
    const Lever& lever = push->lever();
    return {lever.key, lever.what, lever.value, push->value(steps), lever.moves};
  }
};

class RemedySearch {
 public:
  RemedySearch(const Job& job, const std::vector<Finding>& findings)
      : before_{job, findings, joint_kinds(job.work().assembly)}, levers_(job.levers()) {
    pushes_.reserve(levers_.size() * 2);
    for (const Lever& lever : levers_)
      for (const bool up : {true, false})
        pushes_.emplace_back(before_, lever, up);
  }

  /// The smallest remedy for finding number `wanted`. What says the same of another place has the
  /// same, if that does here too.
  std::optional<Answer> answer_for(std::size_t wanted) {
    const Finding& finding = before_.findings[wanted];
    const auto alike = std::find_if(answered_.begin(), answered_.end(), [&](const auto& it) {
      return says_the_same(before_.findings[it.first], finding);
    });
    if (alike != answered_.end() &&
        (!alike->second || alike->second->push->does(wanted, alike->second->steps)))
      return alike->second;
    const std::optional<Answer> answer = search(wanted);
    if (alike == answered_.end()) answered_.emplace_back(wanted, answer);
    return answer;
  }

 private:
  std::optional<Answer> search(std::size_t wanted) {
    if (before_.findings[wanted].rule->moved_first)
      if (const auto best = best_of(wanted, true)) return best;
    return best_of(wanted, false);
  }

  std::optional<Answer> best_of(std::size_t wanted, bool of_moves) {
    std::optional<Answer> best;
    for (const Prospect& prospect : prospects_for(wanted, of_moves)) {
      if (best && prospect.push->change(prospect.steps) >= best->change()) break;
      const std::int64_t steps = least_steps(wanted, prospect);
      if (steps > 0 && (!best || prospect.push->change(steps) < best->change()))
        best = Answer{prospect.push, steps};
    }
    return best;
  }

  /// How many steps a push may need for a finding, at the best pace of a few first tries; 0 when
  /// none brings it nearer.
  std::int64_t steps_needed(Push& push, std::size_t wanted) const {
    if (!answers(push, wanted)) return 0;
    double least = kFarthest + 1;
    for (const std::int64_t tried : push.probes())
      least = std::min(least, steps_at_pace(push, tried, wanted));
    return least > kFarthest ? 0 : std::max<std::int64_t>(static_cast<std::int64_t>(least), 1);
  }

  /// Whether a finding's figure or its limits change at all with the longest of the first tries
  /// that can be worked.
  bool answers(Push& push, std::size_t wanted) const {
    const Finding& finding = before_.findings[wanted];
    const auto probes = push.probes();
    for (auto tried = probes.rbegin(); tried != probes.rend(); ++tried) {
      if (!push.trial(*tried).can_be_worked()) continue;
      const Finding* now = push.became(wanted, *tried);
      return now == nullptr || now->value != finding.value || now->ok_min != finding.ok_min ||
             now->ok_max != finding.ok_max;
    }
    return false;
  }

  /// How many steps it takes if the figure goes on as it did over the first `tried`.
  double steps_at_pace(Push& push, std::int64_t tried, std::size_t wanted) const {
    if (!push.trial(tried).can_be_worked()) return kFarthest + 1;
    const Finding* now = push.became(wanted, tried);
    if (now == nullptr || now->status == Status::ok) return static_cast<double>(tried);
    const Length missing = off_limits(before_.findings[wanted]);
    const Length gained = missing - off_limits(*now);
    if (gained <= Length()) return kFarthest + 1;
    return static_cast<double>(missing.steps()) / static_cast<double>(gained.steps()) *
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
  std::vector<Prospect> prospects_for(std::size_t wanted, bool of_moves) {
    std::vector<Prospect> prospects;
    for (std::size_t i = 0; i < pushes_.size(); i += 2) {
      Push& up = pushes_[i];
      if (of_moves && !up.moves_something()) continue;
      if (up.trial(up.probes().back()).can_be_worked() && !answers(up, wanted)) continue;
      for (Push* push : {&up, &pushes_[i + 1]})
        if (const std::int64_t steps = steps_needed(*push, wanted); steps > 0)
          prospects.push_back({push, steps});
    }
    std::stable_sort(prospects.begin(), prospects.end(), [](const Prospect& a, const Prospect& b) {
      return a.push->change(a.steps) < b.push->change(b.steps);
    });
    return prospects;
  }

  /// The least number of steps that does, near the expected one; 0 for none.
  static std::int64_t least_steps(std::size_t wanted, const Prospect& prospect) {
    Push& push = *prospect.push;
    std::int64_t fails = 0;
    std::int64_t steps = prospect.steps;
    for (std::int64_t stride = 1; !push.does(wanted, steps); stride *= 2) {
      fails = steps;
      steps += stride;
      if (steps > 2 * prospect.steps + 2 * kProbes.back() || steps > kFarthest) return 0;
    }
    if (steps - fails > 1 && !push.does(wanted, steps - 1))
      return steps;  // as a straight line has it
    while (steps - fails > 1) {
      const std::int64_t middle = fails + (steps - fails) / 2;
      (push.does(wanted, middle) ? steps : fails) = middle;
    }
    return steps;
  }

  Before before_;
  std::vector<Lever> levers_;
  std::vector<Push> pushes_;  // of each lever up, then down
  std::vector<std::pair<std::size_t, std::optional<Answer>>>
      answered_;  // one finding of each that say the same
};

}  // namespace

bool too_much_to_search(const Job& job) {
  const Assembly wood = job.work().assembly;
  return wood.pieces.size() > kMostPieces || sloping_effort(wood) > kMostSloping;
}

std::vector<std::optional<Remedy>> find_remedies(const Job& job,
                                                 const std::vector<Finding>& findings) {
  std::vector<std::optional<Remedy>> remedies(findings.size());
  std::optional<RemedySearch> search;
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (findings[i].status == Status::ok) continue;
    if (!search && too_much_to_search(job)) return {};
    if (!search) search.emplace(job, findings);
    if (const auto answer = search->answer_for(i)) remedies[i] = answer->remedy();
  }
  return remedies;
}

}  // namespace haunch
