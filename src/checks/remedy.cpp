#include "remedy.h"

#include <algorithm>
#include <array>
#include <iterator>
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
/// How often what is left is shared out among the findings whose search has not come to its end.
constexpr int kRounds = 4;
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

std::vector<std::string> names_of_pieces(const Assembly& wood) {
  std::vector<std::string> names;
  for (const Piece& piece : wood.pieces)
    names.push_back(piece.name);
  return names;
}

std::vector<JointKind> kinds_of_joints(const Assembly& wood) {
  std::vector<JointKind> kinds;
  for (const Joint& joint : wood.joints)
    kinds.push_back(joint.kind);
  return kinds;
}

/// Those that are not ok, what fails first.
std::vector<std::size_t> doubts_of(const std::vector<Finding>& findings) {
  std::vector<std::size_t> doubts;
  for (const Status status : {Status::fail, Status::caution})
    for (std::size_t i = 0; i < findings.size(); ++i)
      if (findings[i].status == status) doubts.push_back(i);
  return doubts;
}

std::vector<Finding> chosen_of(const std::vector<Finding>& findings,
                               const std::vector<std::size_t>& chosen) {
  std::vector<Finding> found;
  for (const std::size_t number : chosen)
    found.push_back(findings[number]);
  return found;
}

/// What a job is before anything is changed.
struct Before {
  const Job& job;
  const std::vector<Finding>& findings;
  std::vector<std::size_t> doubts;  // those of the findings that are not ok
  ChecksOf checks;                  // that found these
  std::vector<JointKind> joint_kinds;
  std::vector<std::string> names;  // of its pieces

  Before(const Job& its_job, const std::vector<Finding>& its_findings, const Assembly& wood)
      : job(its_job),
        findings(its_findings),
        doubts(doubts_of(its_findings)),
        checks(chosen_of(its_findings, doubts)),
        joint_kinds(kinds_of_joints(wood)),
        names(names_of_pieces(wood)) {}

  const Finding& doubt(std::size_t number) const { return findings[doubts[number]]; }
};

/// Whether a lever is told to be of a piece that a finding speaks of.
bool is_of_its_pieces(const Before& before, const Finding& finding, const Lever& lever) {
  return !lever.what.empty() &&
         std::any_of(finding.parts.begin(), finding.parts.end(),
                     [&](std::size_t part) { return before.names[part].ends_with(lever.what); });
}

/// What became of a finding; nothing, where it is gone.
struct Figure {
  Status status = Status::ok;
  Length value;
  std::optional<Length> ok_min, ok_max;

  bool is_that_of(const Finding& finding) const {
    return value == finding.value && ok_min == finding.ok_min && ok_max == finding.ok_max;
  }
};

/// A job with one lever moved, checked. Of its findings only the figures are kept of what was not
/// ok before: one lever serves many findings, and there may be thousands of tries.
struct Trial {
  bool can_be_worked = false;                  // and is joined as before
  bool worse = false;                          // something is, than before: seen where any doubt
                                               // is put right
  std::vector<std::optional<Figure>> figures;  // of each of the doubts
};

/// Working a job costs, beside what is measured of its wood.
void spend_on_working(const Assembly& wood) {
  constexpr std::size_t kOfPiece = 500;
  constexpr std::size_t kOfFeature = 200;
  for (const Piece& piece : wood.pieces)
    spend_effort(kOfPiece + kOfFeature * piece.features.size());
}

Trial tried(const Before& before, const Lever& lever, Length value) {
  Trial trial;
  const auto changed = before.job.with(lever, value);
  const Worked worked = changed->work();
  spend_on_working(worked.assembly);
  if (!worked.problems.empty() || kinds_of_joints(worked.assembly) != before.joint_kinds)
    return trial;
  GradualChecks checks(worked.assembly, *changed);
  const std::vector<Finding> findings = checks.some(before.checks);
  trial.can_be_worked = true;
  for (const std::size_t doubt : before.doubts) {
    const Finding* now = find_same(findings, before.findings[doubt], doubt);
    trial.figures.push_back(
        now == nullptr ? std::nullopt
                       : std::optional(Figure{now->status, now->value, now->ok_min, now->ok_max}));
  }
  const auto is_right = [](const auto& it) { return !it || it->status == Status::ok; };
  if (std::any_of(trial.figures.begin(), trial.figures.end(), is_right))
    trial.worse = is_worse(before.findings, checks.all());
  return trial;
}

/// One lever moved one way, by whole steps, and what was found each time.
class Push {
 public:
  Push(const Before& before, Allowance& allowance, const Lever& lever, bool up)
      : before_(before), allowance_(allowance), lever_(lever), up_(up) {}

  const Lever& lever() const { return lever_; }
  bool moves_something() const { return lever_.moves != Moves::nothing; }
  std::span<const std::int64_t> probes() const {
    return moves_something() ? std::span<const std::int64_t>(kMoveProbes) : kProbes;
  }
  Touches touches() const { return lever_.touches(); }
  Length change(std::int64_t steps) const {
    const auto value = stepped(steps);
    return value ? std::max(*value - lever_.value, lever_.value - *value) : lever_.step * steps;
  }
  Length value(std::int64_t steps) const { return stepped(steps).value_or(lever_.value); }

  /// What there is no effort left for, or is less than the spec allows, is as what can't be worked.
  const Trial& trial(std::int64_t steps) {
    static const Trial kNone;
    if (const auto before = tried_.find(steps); before != tried_.end()) return before->second;
    if (!is_bearable(steps) || !allowance_.allows()) return kNone;
    return tried_.emplace(steps, tried(before_, lever_, value(steps))).first->second;
  }

  bool was_probed() const { return !tried_.empty(); }

  /// What became of a doubt so many steps on; null when it is gone.
  const Figure* became(std::size_t doubt, std::int64_t steps) {
    const auto& figure = trial(steps).figures[doubt];
    return figure ? &*figure : nullptr;
  }

  /// Whether so many steps put it right and nothing else wrong.
  bool does(std::size_t doubt, std::int64_t steps) {
    if (!trial(steps).can_be_worked || trial(steps).worse) return false;
    const Figure* now = became(doubt, steps);
    return now == nullptr || now->status == Status::ok;
  }

 private:
  /// The size after so many steps: the next ones of those that can be had, where not all can.
  std::optional<Length> stepped(std::int64_t steps) const {
    if (lever_.only.empty())
      return up_ ? lever_.value + lever_.step * steps : lever_.value - lever_.step * steps;
    const auto above = std::upper_bound(lever_.only.begin(), lever_.only.end(), lever_.value);
    const auto below = std::lower_bound(lever_.only.begin(), lever_.only.end(), lever_.value);
    const std::int64_t left = up_ ? lever_.only.end() - above : below - lever_.only.begin();
    if (steps > left) return {};
    return up_ ? *(above + steps - 1) : *(below - steps);
  }

  /// Of a member's width or thickness no more than a third is added or taken away: what differs
  /// more is another design.
  bool is_bearable(std::int64_t steps) const {
    const auto value = stepped(steps);
    if (!value || *value < lever_.least) return false;
    // A depth that is more than doubled is that of another joint.
    if (lever_.key.ends_with("_depth")) return change(steps) <= lever_.value;
    return touches() != Touches::proportion || change(steps) * 3 <= lever_.value;
  }

  const Before& before_;
  Allowance& allowance_;
  const Lever& lever_;
  bool up_;
  std::map<std::int64_t, Trial> tried_;
};

/// How much is changed of what; what spoils a design the least comes first.
using Change = std::pair<Touches, Length>;

/// A push that could put a finding right, and after how many steps if the figure goes on as it
/// began.
struct Prospect {
  Push* push;
  std::int64_t steps;
  std::size_t number;  // of the push

  Change change() const { return {push->touches(), push->change(steps)}; }
};

/// What was found for a finding: so many steps of a push.
struct Answer {
  Push* push;
  std::int64_t steps;

  Change change() const { return {push->touches(), push->change(steps)}; }
  Remedy remedy() const {
    const Lever& lever = push->lever();
    return {lever.key, lever.what, lever.value, push->value(steps), lever.moves};
  }
};

/// The best answer to a doubt so far.
struct Found {
  std::optional<Answer> best;
  bool all_tried = false;
};

class RemedySearch {
 public:
  RemedySearch(const Job& job, const std::vector<Finding>& findings, Allowance allowance)
      : before_(job, findings, job.work().assembly),
        allowance_(allowance),
        levers_(job.levers()),
        answers_(before_.doubts.size()) {
    pushes_.reserve(levers_.size() * 2);
    for (const Lever& lever : levers_)
      for (const bool up : {true, false})
        pushes_.emplace_back(before_, allowance_, lever, up);
  }

  /// Round after round, until every search has come to its end or there is no effort left.
  void run() {
    for (int round = 0; round < kRounds; ++round) {
      std::vector<std::size_t> waiting;
      for (std::size_t doubt = 0; doubt < answers_.size(); ++doubt)
        if (wants_turn(doubt)) waiting.push_back(doubt);
      auto turns = std::ssize(waiting);
      for (const std::size_t doubt : waiting)
        take_turn(doubt, allowance_.left() / turns--);
    }
    for (std::size_t doubt = 0; doubt < answers_.size(); ++doubt)
      if (wants_turn(doubt) || !answers_[doubt].best) take_after(doubt);
  }

  Remedies remedies() const {
    Remedies found{std::vector<std::optional<Remedy>>(before_.findings.size()),
                   std::vector<bool>(before_.findings.size(), true)};
    for (std::size_t doubt = 0; doubt < answers_.size(); ++doubt) {
      const std::size_t finding = before_.doubts[doubt];
      if (answers_[doubt].best) found.of[finding] = answers_[doubt].best->remedy();
      found.all_tried[finding] = answers_[doubt].all_tried;
    }
    return found;
  }

 private:
  /// The first doubt that says the same of another place, or this one.
  std::size_t leader_of(std::size_t doubt) const {
    for (std::size_t before = 0; before < doubt; ++before)
      if (says_the_same(before_.doubt(before), before_.doubt(doubt))) return before;
    return doubt;
  }

  /// Whether a doubt is to be searched now. What says the same as one before waits for that, and
  /// has the same remedy if it does here too.
  bool wants_turn(std::size_t doubt) {
    if (answers_[doubt].all_tried) return false;
    const std::size_t leader = leader_of(doubt);
    if (leader == doubt) return true;
    if (!answers_[leader].all_tried) return false;
    if (answers_[leader].best && !does(*answers_[leader].best, doubt)) return true;
    answers_[doubt] = answers_[leader];
    return false;
  }

  /// What was found for one before, where the effort ended with that.
  void take_after(std::size_t doubt) {
    const Found& leader = answers_[leader_of(doubt)];
    if (!answers_[doubt].best && leader.best && does(*leader.best, doubt))
      answers_[doubt].best = leader.best;
  }

  static bool does(const Answer& answer, std::size_t doubt) {
    return answer.push->does(doubt, answer.steps);
  }

  void take_turn(std::size_t doubt, std::int64_t share) {
    allowance_.begin_turn(share);
    Found& found = answers_[doubt];
    const std::optional<Answer> answer = search(doubt);
    if (answer && (!found.best || answer->change() < found.best->change())) found.best = answer;
    found.all_tried = !allowance_.refused();
  }

  /// The smallest remedy for a doubt.
  std::optional<Answer> search(std::size_t wanted) {
    if (before_.doubt(wanted).rule->moved_first)
      if (const auto best = best_of(wanted, true)) return best;
    return best_of(wanted, false);
  }

  std::optional<Answer> best_of(std::size_t wanted, bool of_moves) {
    std::optional<Answer> best;
    for (const Prospect& prospect : prospects_for(wanted, of_moves)) {
      if (best && prospect.change() >= best->change()) break;
      const std::int64_t steps = least_steps(wanted, prospect);
      const Answer answer{prospect.push, steps};
      if (steps > 0 && (!best || answer.change() < best->change())) best = answer;
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
    const auto probes = push.probes();
    for (auto tried = probes.rbegin(); tried != probes.rend(); ++tried) {
      if (!push.trial(*tried).can_be_worked) continue;
      const Figure* now = push.became(wanted, *tried);
      return now == nullptr || !now->is_that_of(before_.doubt(wanted));
    }
    return false;
  }

  /// How many steps it takes if the figure goes on as it did over the first `tried`.
  double steps_at_pace(Push& push, std::int64_t tried, std::size_t wanted) const {
    if (!push.trial(tried).can_be_worked) return kFarthest + 1;
    const Figure* now = push.became(wanted, tried);
    if (now == nullptr || now->status == Status::ok) return static_cast<double>(tried);
    const Length missing = off_limits(before_.doubt(wanted));
    const Length gained = missing - off_limits(*now);
    if (gained <= Length()) return kFarthest + 1;
    return static_cast<double>(missing.steps()) / static_cast<double>(gained.steps()) *
           static_cast<double>(tried);
  }

  /// How far a figure lies outside the limits within which it is ok.
  template <typename Told>
  static Length off_limits(const Told& finding) {
    if (finding.ok_max && finding.value > *finding.ok_max) return finding.value - *finding.ok_max;
    if (finding.ok_min && finding.value < *finding.ok_min) return *finding.ok_min - finding.value;
    return {};
  }

  /// The levers by the number of their first push, those of a finding's own pieces first: should
  /// there be no effort for all, theirs is the likeliest remedy.
  std::vector<std::size_t> in_turn_for(std::size_t wanted) const {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < pushes_.size(); i += 2)
      order.push_back(i);
    std::stable_partition(order.begin(), order.end(), [&](std::size_t i) {
      return is_of_its_pieces(before_, before_.doubt(wanted), pushes_[i].lever());
    });
    return order;
  }

  /// Those worth following, the least change first. A lever that moves nothing one way is not tried
  /// the other.
  std::vector<Prospect> prospects_for(std::size_t wanted, bool of_moves) {
    std::vector<Prospect> prospects;
    for (const std::size_t i : in_turn_for(wanted)) {
      Push& up = pushes_[i];
      if (of_moves && !up.moves_something()) continue;
      if (!up.was_probed() && !allowance_.allows_in_half()) break;
      if (up.trial(up.probes().back()).can_be_worked && !answers(up, wanted)) continue;
      for (const std::size_t number : {i, i + 1})
        if (const std::int64_t steps = steps_needed(pushes_[number], wanted); steps > 0)
          prospects.push_back({&pushes_[number], steps, number});
    }
    std::sort(prospects.begin(), prospects.end(), [](const Prospect& a, const Prospect& b) {
      return std::pair(a.change(), a.number) < std::pair(b.change(), b.number);
    });
    return prospects;
  }

  /// The least number of steps that does, near the expected one; 0 for none. Beyond twice what the
  /// pace promised, and twice the reach of the first tries, it is followed no further: the figure
  /// does not go in a straight line then, and may never come.
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
  Allowance allowance_;
  std::vector<Lever> levers_;
  std::vector<Push> pushes_;  // of each lever up, then down
  std::vector<Found> answers_;
};

}  // namespace

bool Remedies::complete() const {
  return std::find(all_tried.begin(), all_tried.end(), false) == all_tried.end();
}

Remedies find_remedies(const Job& job, const std::vector<Finding>& findings, std::int64_t one_try,
                       std::int64_t most) {
  const bool all_is_well =
      std::all_of(findings.begin(), findings.end(),
                  [](const Finding& finding) { return finding.status == Status::ok; });
  if (all_is_well)
    return {std::vector<std::optional<Remedy>>(findings.size()),
            std::vector<bool>(findings.size(), true)};
  RemedySearch search(job, findings, Allowance(most, one_try));
  search.run();
  return search.remedies();
}

}  // namespace haunch
