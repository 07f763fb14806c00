#include "run_corner.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "ledger.h"
#include "run_plan.h"
#include "value_reader.h"

namespace haunch {
namespace {

constexpr const char* kBeside =
    "begins beside this run itself; one of the two goes through to the wall: take its corner out";

class RunInCorner {
 public:
  RunInCorner(const std::string& id, const std::string& own, const OtherItems* others)
      : id_(id), own_(own), others_(others) {}

  std::shared_ptr<const RunWork> found() {
    if (others_ == nullptr)
      return refuse(
          "is looked for among the specs of one command, and this one takes an item by itself; "
          "give both to 'haunch sheet'");
    if (const std::string circle = in_circle(); !circle.empty()) return refuse(circle);
    const auto is_it = [&](const OtherItem& other) { return other.id == id_; };
    const auto first = std::find_if(others_->named.begin(), others_->named.end(), is_it);
    if (first == others_->named.end()) return refuse(unknown());
    if (std::find_if(first + 1, others_->named.end(), is_it) != others_->named.end())
      return refuse("is the id of two items; give each its own");
    return read(*first);
  }

  std::string refusal;  // words on the id, where nothing was found

 private:
  std::nullptr_t refuse(std::string words) {
    refusal = std::move(words);
    return nullptr;
  }

  /// Each of two that begin beside the other's fronts would have to be there first.
  std::string in_circle() const {
    if (id_ == own_) return "is this run itself; write the id of the one that goes through";
    if (std::find(others_->asked_by.begin(), others_->asked_by.end(), id_) ==
        others_->asked_by.end())
      return {};
    return kBeside;
  }

  bool begins_beside_own(const Value& run) const {
    const Value* corner = run.find("corner");
    if (corner == nullptr || corner->kind != Value::Kind::object) return false;
    return std::any_of(corner->entries.begin(), corner->entries.end(),
                       [&](const Entry& end) { return end.value.text == own_; });
  }

  std::string unknown() const {
    std::vector<std::string_view> ids(others_->ids.begin(), others_->ids.end());
    const std::string_view nearest = nearest_word(id_, ids);
    return nearest.empty()
               ? std::string(
                     "is the id of no item of these specs; name its file too, or put it "
                     "into this one")
               : fmt::format("is the id of no item of these specs; did you mean \"{}\"?", nearest);
  }

  std::shared_ptr<const RunWork> read(const OtherItem& other) {
    OtherItems others = *others_;
    others.asked_by.push_back(own_);
    JobReading reading;
    if (other.item != nullptr)
      reading = read_job_among(*other.item, other.shop, other.default_id, &others);
    if (!reading.job || !reading.problems.empty())
      return refuse(other.item != nullptr && begins_beside_own(*other.item)
                        ? std::string(kBeside)
                        : "has errors of its own; put them right first");
    std::shared_ptr<const Job> job = std::move(reading.job);
    if (as_run(*job) == nullptr)
      return refuse(fmt::format("is a {}; it is a run that goes through in a corner", job->kind));
    return std::static_pointer_cast<const RunWork>(std::move(job));
  }

  const std::string& id_;
  const std::string& own_;
  const OtherItems* others_;
};

/// How far the foremost of some pieces stands before the wall; nothing where there are none.
template <typename Wanted>
std::optional<Length> foremost(const Assembly& wood, const WallPlanes& planes,
                               const Wanted& wanted) {
  std::optional<Length> most;
  for (std::size_t i = 0; i < wood.pieces.size(); ++i) {
    if (!wanted(i)) continue;
    const Length out = planes.back - placed_blank(wood.pieces[i]).low[2];
    most = most ? std::max(*most, out) : out;
  }
  return most;
}

bool is_within_front(const Assembly& wood, std::size_t piece) {
  for (std::optional<std::size_t> group = wood.pieces[piece].group; group;
       group = wood.groups[*group].in)
    for (const Fit& fit : wood.fits)
      if (fit.stands == StandsIn::front && fit.group == *group) return true;
  return false;
}

bool is_blind_panel(const Piece& piece) {
  return piece.role == Role::filler && piece.name.ends_with("blind panel");
}

/// Whether a blind case goes towards the wall at that end.
bool ends_blind(const Surroundings& around, bool at_right) {
  return std::any_of(around.boundaries.begin(), around.boundaries.end(), [&](const auto& it) {
    return it.open && it.name == (at_right ? "right end" : "left end");
  });
}

/// Whether a filler lets what is drawn out beside it pass the other run's handles, and what is
/// behind it.
std::string corner_words(const RunCornerPlan& corner, const RunMember& filler,
                         const WallRunPlan& plan, Unit unit) {
  const auto say = [&](Length length) { return in_words(length, unit); };
  const Length proud = corner.least_filler(Length());
  const Length over = filler.width - proud;
  std::string words = corner.with +
                      " goes through to the wall, and this run begins at the fronts " +
                      "of its cases, " + say(corner.cases) + " from the wall; " + filler.name +
                      ", " + say(filler.width) + " wide, ";
  if (over >= Length())
    words +=
        "passes its fronts and handles, which stand " + say(proud) + " over it, by " + say(over);
  else
    words += "is too narrow by " + say(-over) + " for what is drawn out beside it: fronts and " +
             "handles of " + corner.with + " stand " + say(proud) +
             " over it, and so wide would do";
  words += "; the corner behind it, " + say(plan.size[2] + plan.behind) + " by " +
           say(corner.cases + filler.width) + ", ";
  return words + (corner.blind ? "is reached from the blind case of " + corner.with + " alone"
                               : "is dead: no blind case of " + corner.with + " goes into it");
}

}  // namespace

std::shared_ptr<const RunWork> run_in_corner(const std::string& id, const std::string& path,
                                             const std::string& own, const OtherItems* others,
                                             std::vector<Problem>& problems) {
  RunInCorner corner(id, own, others);
  std::shared_ptr<const RunWork> found = corner.found();
  if (!found) problems.push_back({path, fmt::format("\"{}\" {}", id, corner.refusal), {}});
  return found;
}

std::optional<RunCornerPlan> plan_corner(const RunWork* through, bool at_right, Ledger& ledger) {
  if (through == nullptr) return {};
  const Key key = at_right ? Key("run.corner.right") : Key("run.corner.left");
  const Worked worked = through->work();
  if (!worked.problems.empty()) {
    ledger.problem(
        {Where(key)},
        fmt::format("\"{}\" cannot be worked; put its own errors right first", through->id));
    return {};
  }
  const Assembly& wood = worked.assembly;
  const Surroundings around = through->surroundings();
  const auto of_top = [&](std::size_t i) { return wood.pieces[i].role == Role::worktop; };
  const auto of_toe = [&](std::size_t i) { return wood.pieces[i].role == Role::toe_board; };
  const auto reach = [&](const auto& wanted) { return foremost(wood, around.planes, wanted); };
  RunCornerPlan corner;
  corner.with = through->id;
  corner.cases = reach([&](std::size_t i) {
                   return !of_top(i) && !is_within_front(wood, i);
                 }).value_or(Length());
  corner.fronts = reach([&](std::size_t i) { return !of_top(i); }).value_or(corner.cases);
  corner.worktop = reach(of_top).value_or(corner.fronts);
  corner.toe = reach(of_toe).value_or(corner.cases);
  corner.handle = around.handle;
  corner.blind = ends_blind(around, !at_right);
  return corner;
}

bool is_blind(const Assembly& cabinet, bool at_right) {
  return std::any_of(cabinet.pieces.begin(), cabinet.pieces.end(), [&](const Piece& piece) {
    const Box box = placed_blank(piece);
    return is_blind_panel(piece) && (box.low[0] + box.high[0] > cabinet.size[0]) == at_right;
  });
}

ThroughRun through_run(const RunWork& through, bool at_right) {
  const Surroundings around = through.surroundings();
  return {through.id, through.work().assembly, around.planes, around.handle, at_right};
}

std::optional<Caution> corner_caution(const WallRunPlan& plan, const RunSpec& spec) {
  const Unit unit = spec.own.units.value_or(Unit::mm);
  std::string words;
  for (const bool right : {false, true})
    if (const auto& corner = plan.corners[right ? 1 : 0])
      words +=
          (words.empty() ? "" : "; ") +
          corner_words(*corner, right ? plan.members.back() : plan.members.front(), plan, unit);
  if (words.empty()) return {};
  return Caution{"corner", words +
                               "; put up first the run that goes through, and screw the filler "
                               "to the case beside it and to what it meets there"};
}

Place place_in_corner(const ThroughRun& through, const WallPlanes& planes) {
  const WallPlanes& its = through.planes;
  const Length up = planes.level - its.level;
  Place place;
  place.axes = {Axis::z, Axis::y, Axis::x};
  if (through.at_right) {
    place.origin = {planes.right - its.back, up, planes.back + its.left};
    place.backwards = {true, false, false};
  } else {
    place.origin = {planes.left + its.back, up, planes.back - its.right};
    place.backwards = {false, false, true};
  }
  return place;
}

}  // namespace haunch
