#include "joint_tasks.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <utility>

namespace haunch {
namespace {

/// What is worked on a leaf, frame or case that stands together already: what is let in where it
/// hangs, what is planed to follow, what runs round it.
bool is_fitted(FeatureKind kind) {
  switch (kind) {
    case FeatureKind::arched_head:
    case FeatureKind::planed_taper:
    case FeatureKind::lip_rebate:
    case FeatureKind::meeting_rebate:
    case FeatureKind::bevel:
    case FeatureKind::gain:
    case FeatureKind::bore:
    case FeatureKind::lock_mortise:
    case FeatureKind::faceplate:
    case FeatureKind::strike_mortise:
    case FeatureKind::strike_plate:
    case FeatureKind::recess:
      return true;
    default:
      return false;
  }
}

bool same_side(const Run& a, const Run& b) {
  return a.piece == b.piece && a.side == b.side;
}

void add_once(std::vector<std::size_t>& numbers, std::size_t number) {
  if (std::find(numbers.begin(), numbers.end(), number) == numbers.end()) numbers.push_back(number);
}

class JointTasks {
 public:
  JointTasks(const SetupItem& item, std::size_t number) : item_(item), number_(number) {}

  std::vector<Task> all() {
    for (const Operation& operation : item_.making->operations)
      take(operation);
    claim_features();
    for (std::size_t group = 0; group < item_.wood->groups.size(); ++group)
      glue(group);
    return std::move(tasks_);
  }

 private:
  /// One task for each side of each piece.
  void take(const Operation& operation) {
    const std::size_t first = tasks_.size();
    for (const Run& run : operation.runs) {
      const auto its =
          std::find_if(tasks_.begin() + static_cast<std::ptrdiff_t>(first), tasks_.end(),
                       [&](const Task& task) { return same_side(task.setting.runs.front(), run); });
      Task& task = its == tasks_.end() ? begin(operation, run) : *its;
      task.setting.runs.push_back(run);
      add_once(task.features, run.feature);
    }
  }

  Task& begin(const Operation& operation, const Run& run) {
    Task& task = tasks_.emplace_back();
    task.of = {number_, run.piece};
    task.process = operation.cut == Cut::face_cope || operation.cut == Cut::back_cope
                       ? Process::cope
                       : process_of(operation.makes);
    const Piece& piece = item_.wood->pieces[run.piece];
    // An end with a long and a short shoulder is stepped square.
    if (operation.makes == FeatureKind::scribed_end && piece.features[run.feature].prisms.empty())
      task.process = Process::rebate;
    task.setting = operation;
    task.setting.runs.clear();
    const bool is_beside = item_.wood->groups[piece.group].kind == GroupKind::extras;
    task.step = is_fitted(operation.makes) && !is_beside ? Step::fitting : Step::cut;
    task.size = task.step == Step::fitting ? size_of_whole(*item_.wood, piece) : piece.blank;
    if (task.step == Step::cut) task.size[0] += piece.horn * 2;
    task.group = piece.group;
    return task;
  }

  /// A feature that takes several settings is made by the first of them; the others go on with it.
  void claim_features() {
    std::set<std::pair<std::size_t, std::size_t>> made;
    for (Task& task : tasks_)
      for (const std::size_t feature : std::exchange(task.features, {})) {
        const bool is_new = made.insert({task.of.piece, feature}).second;
        (is_new ? task.features : task.goes_on_with).push_back(feature);
      }
  }

  /// Of what is one piece there is nothing to be glued, nor of what is screwed on along a wall, nor
  /// of what lies beside the work.
  void glue(std::size_t group) {
    const std::vector<std::size_t> pieces = pieces_of(*item_.wood, group);
    const GroupKind kind = item_.wood->groups[group].kind;
    const bool glued = kind != GroupKind::run && kind != GroupKind::extras;
    if (pieces.size() < 2 || !glued) return;
    for (const std::size_t piece : pieces) {
      Task task;
      task.of = {number_, piece};
      task.process = Process::glue;
      task.size = item_.wood->pieces[piece].blank;
      task.step = Step::together;
      task.group = group;
      tasks_.push_back(std::move(task));
    }
  }

  const SetupItem& item_;
  std::size_t number_;
  std::vector<Task> tasks_;
};

}  // namespace

Triple size_of_whole(const Assembly& wood, const Piece& piece) {
  const Box whole = placed_blanks(wood, piece.group);
  Triple size;
  for (std::size_t own = 0; own < size.size(); ++own)
    size[own] = whole.extent(static_cast<std::size_t>(piece.place.axes[own]));
  return size;
}

Process process_of(FeatureKind kind) {
  // As FeatureKind lists them.
  constexpr Process kMadeBy[] = {
      Process::groove,    // groove
      Process::rebate,    // rebate
      Process::mortise,   // mortise
      Process::tenon,     // tenon
      Process::mortise,   // haunching
      Process::house,     // housing
      Process::house,     // lap
      Process::mitre,     // mitre
      Process::groove,    // spline-slot
      Process::bore,      // pin-hole
      Process::bore,      // dowel-hole
      Process::rebate,    // glass-rebate
      Process::mitre,     // moulding-mitre
      Process::cope,      // scribed-end
      Process::mould,     // moulding
      Process::raise,     // raise
      Process::curve,     // arch
      Process::curve,     // arched-head
      Process::curve,     // arched-top
      Process::taper,     // planed-taper
      Process::rebate,    // lip-rebate
      Process::rebate,    // meeting-rebate
      Process::taper,     // bevel
      Process::mould,     // rounding
      Process::taper,     // taper
      Process::taper,     // skew
      Process::recess,    // gain
      Process::bore,      // bore
      Process::mortise,   // lock-mortise
      Process::recess,    // faceplate
      Process::mortise,   // strike-mortise
      Process::recess,    // strike-plate
      Process::recess,    // recess
      Process::rebate,    // tongue
      Process::notch,     // notch
      Process::dovetail,  // tails
      Process::dovetail,  // sockets
      Process::finger,    // fingers
      Process::bore,      // shelf-pin-holes
      Process::bore,      // hinge-cup
      Process::bore,      // screw-hole
      Process::mortise,   // slot
      Process::notch,     // cutout
  };
  static_assert(std::size(kMadeBy) == std::size(kWords<FeatureKind>));
  return kMadeBy[static_cast<std::size_t>(kind)];
}

std::vector<Task> joint_tasks(const SetupItem& item, std::size_t number) {
  return JointTasks(item, number).all();
}

}  // namespace haunch
