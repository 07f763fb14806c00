#include "run_toe.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "ledger.h"
#include "marks.h"
#include "run_plan.h"

namespace haunch {
namespace {

using What = RunEntry::What;

constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::y, Axis::z};

class ToePlanner {
 public:
  ToePlanner(const RunSpec& spec, const WallRunPlan& plan, Ledger& ledger)
      : spec_(spec), plan_(plan), ledger_(ledger) {}

  std::optional<ToeBoardPlan> planned() {
    for (std::size_t i = 0; i < plan_.members.size(); ++i)
      if (plan_.members[i].what == What::cabinet) look_at(i);
    if (!first_) {
      ledger_.problem({"run.toe"}, "no cabinet of this run has a toe board of its own to replace");
      return {};
    }
    doubt_between();
    board_.left = end(*first_, false);
    board_.right = end(last_, true);
    settle_foot();
    return std::move(board_);
  }

 private:
  void look_at(std::size_t member);
  void doubt_between();
  Length end(std::size_t member, bool right) const;
  void settle_foot();

  const RunSpec& spec_;
  const WallRunPlan& plan_;
  Ledger& ledger_;
  ToeBoardPlan board_;
  std::optional<std::size_t> first_;
  std::size_t last_ = 0;
  std::vector<std::size_t> without_;
};

/// Before the sides where a case's own board stands between them, else where that stands.
void ToePlanner::look_at(std::size_t member) {
  const Assembly& wood = spec_.order[*plan_.members[member].entry].taken->worked().assembly;
  const auto own = own_toe_board(wood);
  if (!own) return without_.push_back(member);
  const Piece& piece = wood.pieces[*own];
  const Box blank = placed_blank(piece);
  const bool between = blank.extent(0) < wood.size[0];
  const Length top = seen_height(wood, *own);
  const Length thickness = first_ ? board_.thickness : piece.blank[2];
  const Length set_back =
      plan_.size[2] - wood.size[2] + blank.low[2] - (between ? thickness : Length());
  if (!first_) {
    first_ = member;
    board_.top = top;
    board_.set_back = set_back;
    board_.thickness = thickness;
    board_.material = piece.material;
    const std::string& wood_of_it =
        spec_.order[*plan_.members[member].entry].taken->job().species.of(Role::toe_board);
    if (board_.material.empty() && wood_of_it != spelt(species_of(spec_.own).of(Role::toe_board)))
      board_.material = wood_of_it;
    board_.matter = piece.matter;
  } else if (set_back != board_.set_back || top != board_.top) {
    ledger_.problem({"run.toe"},
                    fmt::format("stands in one line: before \"{}\" it would be {} high and {} set "
                                "back, before \"{}\" {} and {}; give both the same toe",
                                plan_.members[*first_].name, ledger_.say(board_.top),
                                ledger_.say(board_.set_back), plan_.members[member].name,
                                ledger_.say(top), ledger_.say(set_back)));
  } else if (set_back < Length()) {
    ledger_.problem({"run.toe"}, "stands before the fronts; give the cabinets' toes more setback");
  }
  last_ = member;
}

void ToePlanner::doubt_between() {
  for (const std::size_t member : without_)
    if (member > *first_ && member < last_)
      ledger_.problem({"run.toe"},
                      fmt::format("does not pass \"{}\", which has no toe board of its own; give "
                                  "it one",
                                  plan_.members[member].name));
}

/// On below fillers, to a wall where nothing stands before that.
Length ToePlanner::end(std::size_t member, bool right) const {
  const auto& all = plan_.members;
  const RunWall& wall = plan_.wall;
  std::size_t last = member;
  const auto is_outer = [&] { return last == (right ? all.size() - 1 : 0); };
  while (!is_outer() && all[right ? last + 1 : last - 1].what == What::filler)
    last = right ? last + 1 : last - 1;
  if (is_outer() && (right ? wall.right : wall.left) == RunEnd::wall) {
    const bool out = wall.out_at_right == right;
    const Length back = out ? wall.least_back(Length(), board_.top) : Length();
    return right ? wall.least + back : -back;
  }
  if (const auto& corner = plan_.corners[right ? 1 : 0]; is_outer() && corner)
    return right ? wall.least - corner->toe : corner->toe;
  return right ? all[last].right() : all[last].left;
}

void ToePlanner::settle_foot() {
  const auto add = [&](Length at) { board_.foot.push_back({at, plan_.packed_at(at)}); };
  add(board_.left);
  for (const FloorReading& reading : plan_.floor)
    if (reading.at > board_.left && reading.at < board_.right) add(reading.at);
  add(board_.right);
  for (const FloorBelow& it : board_.foot)
    board_.below = std::max(board_.below, it.below);
}

/// What is cut for no joint but those that go is gone with them.
void forget_joints(Piece& piece, const std::vector<std::optional<std::size_t>>& now) {
  std::erase_if(piece.features, [&](const Feature& feature) {
    return !feature.joints.empty() &&
           std::none_of(feature.joints.begin(), feature.joints.end(),
                        [&](std::size_t joint) { return now[joint].has_value(); });
  });
  for (Feature& feature : piece.features) {
    std::erase_if(feature.joints, [&](std::size_t joint) { return !now[joint]; });
    for (std::size_t& joint : feature.joints)
      joint = *now[joint];
  }
}

/// What is left of it between its top and the floor, from the blank's low edge up.
Feature planed_foot(const ToeBoardPlan& board) {
  Feature feature{FeatureKind::planed_taper, {}, {}, {{SizeName::depth, board.below}}};
  Length deepest;
  for (std::size_t i = 1; i < board.foot.size(); ++i) {
    const Length low = board.below - board.foot[i - 1].below;
    const Length high = board.below - board.foot[i].below;
    deepest = std::max({deepest, low, high});
    if (low == Length() && high == Length()) continue;
    const Length from = board.foot[i - 1].at - board.left, to = board.foot[i].at - board.left;
    std::vector<Corner> outline{{from, Length()}, {to, Length()}};
    if (high > Length()) outline.push_back({to, high});
    if (low > Length()) outline.push_back({from, low});
    feature.prisms.push_back({2, Length(), board.thickness, std::move(outline)});
  }
  feature.sizes = {{SizeName::depth, deepest}};
  return feature;
}

}  // namespace

std::optional<ToeBoardPlan> plan_toe_board(const RunSpec& spec, const WallRunPlan& plan,
                                           Ledger& ledger) {
  if (ledger.spec.word<RunToe>("run.toe") != RunToe::one_board) return {};
  return ToePlanner(spec, plan, ledger).planned();
}

std::optional<std::size_t> own_toe_board(const Assembly& cabinet) {
  std::optional<std::size_t> own;
  for (std::size_t i = 0; i < cabinet.pieces.size(); ++i) {
    if (cabinet.pieces[i].role != Role::toe_board) continue;
    if (own) return {};  // one of the boards of a base, which stands by itself
    own = i;
  }
  return own;
}

Length seen_height(const Assembly& cabinet, std::size_t board) {
  Length top = placed_blank(cabinet.pieces[board]).high[1];
  for (const Piece& piece : cabinet.pieces)
    for (const Feature& feature : piece.features)
      if (feature.kind == FeatureKind::notch)
        for (const Box& cut : feature.cuts) {
          const Box notch = placed(cut, piece.place);
          if (notch.low[1] == Length()) top = std::min(top, notch.high[1]);
        }
  return top;
}

void leave_out(Assembly& wood, std::size_t piece) {
  std::vector<std::optional<std::size_t>> now(wood.joints.size());
  std::vector<Joint> kept;
  for (std::size_t i = 0; i < wood.joints.size(); ++i) {
    Joint& joint = wood.joints[i];
    if (joint.receives == piece || joint.enters == piece) continue;
    now[i] = kept.size();
    joint.receives -= joint.receives > piece;
    joint.enters -= joint.enters > piece;
    kept.push_back(std::move(joint));
  }
  wood.joints = std::move(kept);
  wood.pieces.erase(wood.pieces.begin() + static_cast<std::ptrdiff_t>(piece));
  for (Piece& each : wood.pieces)
    forget_joints(each, now);
}

void add_toe_board(Assembly& wood, const ToeBoardPlan& board, const Triple& zero) {
  Place place;
  place.origin = {board.left - zero[0], -board.below - zero[1], board.set_back - zero[2]};
  place.axes = kLevel;
  const std::size_t number =
      add_piece(wood, "toe board", Role::toe_board,
                {board.right - board.left, board.top + board.below, board.thickness}, place);
  Piece& piece = wood.pieces[number];
  piece.material = board.material;
  piece.matter = board.matter;
  Feature foot = planed_foot(board);
  if (!foot.prisms.empty()) piece.features.push_back(std::move(foot));
}

std::optional<Caution> toe_caution(const WallRunPlan& plan, const RunSpec& spec) {
  if (!plan.toe) return {};
  const ToeBoardPlan& board = *plan.toe;
  const Unit unit = spec.own.units.value_or(Unit::mm);
  std::string words = "in one piece, " + in_words(board.right - board.left, unit) +
                      " long, its face " + in_words(board.set_back, unit) +
                      " behind the front of the deepest case";
  if (board.below > Length()) {
    words += "; its foot is scribed to the floor, which leaves of its height, from its left end, ";
    for (std::size_t i = 0; i < board.foot.size(); ++i)
      words += (i == 0 ? "" : ", ") + in_words(board.top + board.foot[i].below, unit) + " at " +
               in_words(board.foot[i].at - board.left, unit);
  }
  words += "; screwed from where it does not show, so that it comes off again";
  return Caution{"toe board", std::move(words)};
}

}  // namespace haunch
