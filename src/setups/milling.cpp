#include "milling.h"

#include "glue_up.h"
#include "joint_tasks.h"
#include "sawn.h"

namespace haunch {
namespace {

/// Turned or bought as rod.
bool is_rod(Role role) {
  return role == Role::dowel || role == Role::pin;
}

class PieceMilling {
 public:
  PieceMilling(std::vector<Task>& tasks, const SetupItem& item, PieceOf of)
      : tasks_(tasks),
        rule_(item.milling),
        of_(of),
        wood_(*item.wood),
        piece_(item.wood->pieces[of.piece]),
        size_(cut_sizes(piece_)) {
    size_[0] += piece_.horn * 2;
  }

  /// Milled over size, rested and milled again, as what sawing sets free in a board moves it after
  /// that and not before (Fine Woodworking 165 has this order). Strips are glued while still over
  /// thick, so that the second milling takes their steps away too (Noyes 1910 surfaces after
  /// glueing).
  void solid() {
    const Triple over{up(size_[0] + rule_.allowances.length, rule_.strips.step),
                      up(size_[1] + rule_.allowances.width, rule_.strips.step),
                      up(size_[2] + rule_.allowances.face, rule_.step_through)};
    const Length widest = piece_.role == Role::panel ? rule_.strips.widest : rule_.widest_board;
    const bool glued = over[1] > widest;
    const lumber::Strips strips = glued ? strips_of(over[1], widest) : lumber::Strips{1, over[1]};
    first_milling({over[0], strips.width, over[2]}, strips.count);
    if (glued)
      add(Step::boards_together, Process::glue, {{SizeName::width, over[1]}}, over);
    else
      add(Step::face_and_edge, Process::surface, {}, over);
    add(Step::thickness, Process::thickness, {{SizeName::thickness, size_[2]}}, over);
    add(Step::width, Process::rip, {{SizeName::width, size_[1]}}, {over[0], over[1], size_[2]});
    to_length();
  }

  void to_length() { add(Step::length, Process::crosscut, {{SizeName::length, size_[0]}}, size_); }

  void sheet() {
    add(Step::sheet, Process::cut_sheet,
        {{SizeName::length, size_[0]}, {SizeName::width, size_[1]}}, size_);
  }

  /// Once what has them is glued up.
  void saw_off_horns() {
    if (piece_.horn == Length()) return;
    const Length left = size_[0] - piece_.horn * 2;
    Triple whole = size_of_whole(wood_, piece_);
    whole[0] += piece_.horn * 2;
    add(Step::fitting, Process::crosscut, {{SizeName::length, left}}, whole);
  }

  void strips() {
    for (const EdgeStrip& strip : piece_.strips)
      add(Step::strips, Process::glue, {{SizeName::thickness, strip.thickness}}, size_);
  }

 private:
  static Length up(Length size, Length step) { return -floor_multiple(-size, step); }

  /// Of the piece, or of each of the strips that it is glued up of.
  void first_milling(const Triple& over, std::size_t strips) {
    const std::size_t first = tasks_.size();
    add(Step::length_over, Process::crosscut, {{SizeName::length, over[0]}}, over);
    add(Step::width_over, Process::rip, {{SizeName::width, over[1]}}, over);
    add(Step::face_and_edge_over, Process::surface, {}, over);
    add(Step::thickness_over, Process::thickness, {{SizeName::thickness, over[2]}}, over);
    for (std::size_t task = first; task < tasks_.size(); ++task)
      tasks_[task].strips = strips;
  }

  /// The fewest that make it up.
  lumber::Strips strips_of(Length wanted, Length widest) const {
    lumber::StripRule rule = rule_.strips;
    rule.widest = widest;
    return lumber::strips_for(wanted, rule, widest + rule.jointing * 2)
        .value_or(lumber::Strips{1, wanted});
  }

  void add(Step step, Process process, std::vector<NamedSize> settings, const Triple& size) {
    Task task;
    task.of = of_;
    task.process = process;
    task.setting.settings = std::move(settings);
    task.size = size;
    task.step = step;
    task.group = piece_.group;
    tasks_.push_back(std::move(task));
  }

  std::vector<Task>& tasks_;
  const MillingRule& rule_;
  PieceOf of_;
  const Assembly& wood_;
  const Piece& piece_;
  Triple size_;
};

}  // namespace

MillingRule usual_milling(Unit unit) {
  const bool mm = unit == Unit::mm;
  return {lumber::usual_allowances(unit), lumber::usual_strips(unit),
          mm ? Length::from_mm(250) : Length::from_inch_parts(10),
          mm ? Length::from_mm_thousandths(500) : Length::from_inch_parts(1, 32)};
}

std::vector<Task> milling_tasks(const SetupItem& item, std::size_t number) {
  std::vector<Task> tasks;
  const auto& pieces = item.wood->pieces;
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    PieceMilling milling(tasks, item, {number, piece});
    if (pieces[piece].matter == Matter::glass) continue;
    if (pieces[piece].matter == Matter::board)
      milling.sheet();
    else if (is_rod(pieces[piece].role))
      milling.to_length();
    else
      milling.solid();
    milling.strips();
    milling.saw_off_horns();
  }
  return tasks;
}

}  // namespace haunch
