#include "remedy.h"

#include <algorithm>
#include <array>
#include <utility>

#include "checks.h"

namespace haunch {
namespace {

/// Numbers of steps to try, rising; between two of them the least is found by halving.
constexpr std::array<std::int64_t, 16> kReach{1,  2,  3,  4,   6,   8,   12,  16,
                                              24, 32, 64, 128, 256, 512, 768, 1024};
constexpr std::size_t kProbes =
    8;  // a size that moves no figure in doubt within so many tries is let be

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

/// One lever, one way.
struct Push {
  const Lever* lever;
  bool up;
  std::int64_t failed = 0;  // steps known not to do
  bool alive = true;
  bool moved = false;  // some figure in doubt answered to it
};

class RemedySearch {
 public:
  RemedySearch(const Job& job, const std::vector<Finding>& findings)
      : job_(job), findings_(findings), levers_(job.levers()), best_(findings.size()) {
    for (std::size_t i = 0; i < findings.size(); ++i)
      if (findings[i].status != Status::ok) open_.push_back(i);
    for (const Lever& lever : levers_)
      for (const bool up : {false, true})
        pushes_.push_back({&lever, up});
  }

  std::vector<std::optional<Remedy>> search() {
    for (std::size_t reach = 0; reach < kReach.size() && !open_.empty(); ++reach)
      for (Push& push : pushes_)
        try_push(push, reach);
    std::vector<std::optional<Remedy>> remedies(findings_.size());
    for (std::size_t i = 0; i < remedies.size(); ++i)
      if (best_[i])
        remedies[i] = Remedy{best_[i]->lever->key, best_[i]->lever->value, best_[i]->to};
    return remedies;
  }

 private:
  struct Found {
    const Lever* lever;
    Length to;
    Length change;
  };

  Length value_after(const Push& push, std::int64_t steps) const {
    const Length change = push.lever->step * steps;
    return push.up ? push.lever->value + change : push.lever->value - change;
  }

  /// The findings with the lever so many steps further; empty where the job can't be worked so.
  std::vector<Finding> work(const Push& push, std::int64_t steps) const {
    const Length value = value_after(push, steps);
    if (value < push.lever->least) return {};
    const Worked worked = job_.with(*push.lever, value)->work();
    if (!worked.problems.empty()) return {};
    return check_assembly(worked.assembly, job_.unit);
  }

  bool does(const std::vector<Finding>& trial, std::size_t wanted) const {
    if (trial.empty()) return false;
    const Finding* now = find_same(trial, findings_[wanted]);
    return (now == nullptr || now->status == Status::ok) && !is_worse(findings_, trial);
  }

  bool could_better(const Push& push, std::int64_t steps) const {
    return std::any_of(open_.begin(), open_.end(), [&](std::size_t i) {
      return !best_[i] || push.lever->step * steps < best_[i]->change;
    });
  }

  void try_push(Push& push, std::size_t reach) {
    const std::int64_t steps = kReach[reach];
    if (!push.alive) return;
    if (!could_better(push, push.failed + 1) || (reach >= kProbes && !push.moved)) {
      push.alive = false;
      return;
    }
    const std::vector<Finding> trial = work(push, steps);
    push.alive = !trial.empty();
    for (const std::size_t i : open_) {
      const Finding* now = find_same(trial, findings_[i]);
      push.moved |=
          now == nullptr || now->value != findings_[i].value || now->status != findings_[i].status;
      if (does(trial, i)) note(i, push, least_steps(push, i, steps));
    }
    push.failed = steps;
  }

  /// The least number of steps above push.failed, up to `steps`, that does; `steps` is known to.
  std::int64_t least_steps(const Push& push, std::size_t wanted, std::int64_t steps) const {
    std::int64_t fails = push.failed;
    while (steps - fails > 1) {
      const std::int64_t middle = fails + (steps - fails) / 2;
      (does(work(push, middle), wanted) ? steps : fails) = middle;
    }
    return steps;
  }

  void note(std::size_t wanted, const Push& push, std::int64_t steps) {
    const Length change = push.lever->step * steps;
    if (!best_[wanted] || change < best_[wanted]->change)
      best_[wanted] = Found{push.lever, value_after(push, steps), change};
  }

  const Job& job_;
  const std::vector<Finding>& findings_;
  std::vector<Lever> levers_;
  std::vector<std::size_t> open_;  // findings that want a remedy
  std::vector<Push> pushes_;
  std::vector<std::optional<Found>> best_;  // of each finding
};

}  // namespace

std::vector<std::optional<Remedy>> find_remedies(const Job& job,
                                                 const std::vector<Finding>& findings) {
  const bool all_ok = std::all_of(findings.begin(), findings.end(),
                                  [](const Finding& it) { return it.status == Status::ok; });
  if (all_ok) return std::vector<std::optional<Remedy>>(findings.size());
  return RemedySearch(job, findings).search();
}

}  // namespace haunch
