#include "run_worktop.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "carcase_plan.h"
#include "ledger.h"
#include "marks.h"
#include "run_plan.h"
#include "solid.h"

namespace haunch {
namespace {

using What = RunEntry::What;

/// Seen from above: along the wall, from its front edge back, its face up.
constexpr std::array<Axis, 3> kLying{Axis::x, Axis::z, Axis::y};

/// Longer than this it is told to be measured on its way in: an ordinary door's height, ours.
constexpr Length kHandy = Length::from_mm(2'400);

class WorktopPlanner {
 public:
  WorktopPlanner(const RunSpec& spec, const WallRunPlan& plan, Ledger& ledger)
      : spec_(spec), plan_(plan), ledger_(ledger) {}

  WorktopPlan planned() {
    top_.thickness = ledger_.spec.size("run.worktop.thickness").value_or(Length());
    top_.material = ledger_.spec.text("run.worktop.material");
    settle_height();
    settle_ends();
    top_.before = ledger_.settle("run.worktop.overhang.front", ledger_.pick(25'000, 1, 1),
                                 "usual before the fronts");
    top_.depth = top_.before + plan_.size[2] + plan_.behind;
    const std::size_t cutouts = ledger_.spec["run.worktop.cutouts"].items.size();
    for (std::size_t i = 0; i < cutouts; ++i)
      add_cutout(i);
    return std::move(top_);
  }

 private:
  void settle_height();
  void doubt_overhang(bool right);
  void settle_ends();
  void add_cutout(std::size_t number);

  const RunSpec& spec_;
  const WallRunPlan& plan_;
  Ledger& ledger_;
  WorktopPlan top_;
};

/// It lies on all cases, so that they have to be of one height.
void WorktopPlanner::settle_height() {
  top_.low = plan_.size[1];
  for (const RunMember& member : plan_.members) {
    if (member.what != What::cabinet) continue;
    const Length high = spec_.order[*member.entry].taken->worked().assembly.size[1];
    if (high != top_.low)
      ledger_.problem({"run.worktop"},
                      fmt::format("lies on cases of one height: \"{}\" is {} high, the highest {}; "
                                  "give a run of its own to what is higher or lower",
                                  member.name, ledger_.say(high), ledger_.say(top_.low)));
  }
}

/// Over its end stands what ends free alone.
void WorktopPlanner::doubt_overhang(bool right) {
  const SizeKey key =
      right ? SizeKey("run.worktop.overhang.right") : SizeKey("run.worktop.overhang.left");
  const RunEnd end = right ? plan_.wall.right : plan_.wall.left;
  const auto said = ledger_.spec.size(key);
  if (end == RunEnd::free || !said || *said == Length()) return;
  const std::string side = right ? "right" : "left";
  ledger_.problem(
      {key}, end == RunEnd::corner
                 ? fmt::format("the worktop ends at the other run there, and stands over nothing; "
                               "take it out")
                 : fmt::format("the worktop goes to the wall there, and stands over nothing; take "
                               "it out, or write \"wall\": {{\"{}\": \"free\"}}",
                               side));
}

void WorktopPlanner::settle_ends() {
  const RunWall& wall = plan_.wall;
  const auto goes_to_wall = [](RunEnd end) { return end == RunEnd::wall || end == RunEnd::blind; };
  top_.at_left_wall = goes_to_wall(wall.left);
  top_.at_right_wall = goes_to_wall(wall.right);
  const Length back = wall.least_back(top_.low, top_.low + top_.thickness);
  top_.left = wall.out_at_right ? Length() : -back;
  top_.right = wall.least + (wall.out_at_right ? back : Length());
  for (const bool right : {false, true})
    doubt_overhang(right);
  if (wall.left == RunEnd::free)
    top_.left = plan_.members.front().left -
                ledger_.settle("run.worktop.overhang.left", Length(), "flush with the end");
  if (wall.right == RunEnd::free)
    top_.right = plan_.members.back().right() +
                 ledger_.settle("run.worktop.overhang.right", Length(), "flush with the end");
  if (const auto& corner = plan_.corners[0]) top_.left = corner->worktop;
  if (const auto& corner = plan_.corners[1]) top_.right = wall.least - corner->worktop;
}

void WorktopPlanner::add_cutout(std::size_t number) {
  const KeyValues& its = ledger_.spec["run.worktop.cutouts"].items[number];
  WorktopCutout cutout;
  cutout.over = its.text("run.worktop.cutouts[].over");
  cutout.width = its.size("run.worktop.cutouts[].width").value_or(Length());
  cutout.depth = its.size("run.worktop.cutouts[].depth").value_or(Length());
  const auto refuse = [&](std::string_view key, std::string message) {
    ledger_.problem({{"run.worktop.cutouts", number, key}}, std::move(message));
  };
  const auto over = std::find_if(
      plan_.members.begin(), plan_.members.end(),
      [&](const RunMember& it) { return it.what == What::cabinet && it.path == cutout.over; });
  if (over == plan_.members.end())
    return refuse(".over", fmt::format("no cabinet of this run is called \"{}\"", cutout.over));
  if (cutout.depth >= top_.depth)
    return refuse(".depth", fmt::format("leaves nothing of a worktop {} deep; write less",
                                        ledger_.say(top_.depth)));
  cutout.from_left = over->left + floor_half(over->width - cutout.width) - top_.left;
  const Length middle = floor_half(top_.depth - cutout.depth);
  if (const auto said = its.size("run.worktop.cutouts[].from_front")) {
    cutout.from_front = *said;
    ledger_.add_lever({"run.worktop.cutouts", number, ".from_front"}, *said, false,
                      "cut-out over " + cutout.over);
  } else {
    cutout.from_front = middle;
    ledger_.assume({"run.worktop.cutouts", number, ".from_front"}, middle,
                   "in the middle of the worktop's depth");
  }
  if (cutout.from_front + cutout.depth >= top_.depth)
    return refuse(".from_front", fmt::format("leaves nothing behind it of a worktop {} deep; "
                                             "write less",
                                             ledger_.say(top_.depth)));
  if (cutout.from_left <= Length() || cutout.from_left + cutout.width >= top_.length())
    return refuse(".width", fmt::format("leaves nothing of a worktop {} long; write less",
                                        ledger_.say(top_.length())));
  top_.cutouts.push_back(std::move(cutout));
}

/// The reading that was taken nearest to a height.
const WallReading& nearest_reading(const RunWall& wall, Length height) {
  const auto off = [&](const WallReading& it) {
    return it.at > height ? it.at - height : height - it.at;
  };
  return *std::min_element(wall.readings.begin(), wall.readings.end(),
                           [&](const auto& a, const auto& b) { return off(a) < off(b); });
}

/// What its length rests on, where it goes to a wall that was measured.
std::string length_words(const WorktopPlan& top, const RunWall& wall, Unit unit) {
  std::string words = in_words(top.length(), unit) + " long, " + in_words(top.depth, unit) +
                      " deep, " + in_words(top.thickness, unit) + " thick";
  if (!top.at_left_wall && !top.at_right_wall) return words;
  const std::string end = top.at_left_wall && top.at_right_wall ? "at both ends"
                          : top.at_left_wall                    ? "at its left end"
                                                                : "at its right end";
  words +=
      "; it goes to the wall " + end + " and is scribed there: saw it longer by what that takes";
  if (wall.readings.size() == 1) return words;
  const WallReading& reading = nearest_reading(wall, top.low);
  return words + "; its length is the wall's between the readings, the nearest of which is " +
         in_words(reading.length, unit) + " at " + in_words(reading.at, unit);
}

}  // namespace

std::optional<WorktopPlan> plan_worktop(const RunSpec& spec, const WallRunPlan& plan,
                                        Ledger& ledger) {
  if (!spec.own["run.worktop"].stated) return {};
  return WorktopPlanner(spec, plan, ledger).planned();
}

void add_worktop(Assembly& wood, const WorktopPlan& worktop, const Triple& zero) {
  Place place;
  place.origin = {worktop.left - zero[0], worktop.low + worktop.thickness - zero[1],
                  -worktop.before - zero[2]};
  place.axes = kLying;
  place.backwards = {false, false, true};
  const std::size_t number = add_piece(wood, "worktop", Role::worktop,
                                       {worktop.length(), worktop.depth, worktop.thickness}, place);
  Piece& piece = wood.pieces[number];
  piece.material = worktop.material;
  if (!worktop.material.empty()) piece.matter = matter_of(worktop.material);
  for (const WorktopCutout& cutout : worktop.cutouts) {
    const Box box{
        {cutout.from_left, cutout.from_front, Length()},
        {cutout.from_left + cutout.width, cutout.from_front + cutout.depth, worktop.thickness}};
    piece.features.push_back({FeatureKind::cutout,
                              {},
                              {box},
                              {{SizeName::length, cutout.width},
                               {SizeName::width, cutout.depth},
                               {SizeName::from_foot, cutout.from_left},
                               {SizeName::from_front, cutout.from_front}}});
  }
}

std::vector<Chain> worktop_chains(const WorktopPlan& worktop) {
  std::vector<WorktopCutout> cutouts = worktop.cutouts;
  std::sort(cutouts.begin(), cutouts.end(),
            [](const auto& a, const auto& b) { return a.from_left < b.from_left; });
  Chain along{"along the worktop, from its left end", {}};
  std::vector<Chain> chains;
  Length end;
  for (const WorktopCutout& cutout : cutouts) {
    const std::string name = "cut-out over " + cutout.over;
    along.links.push_back({"worktop", cutout.from_left - end});
    along.links.push_back({name, cutout.width});
    end = cutout.from_left + cutout.width;
    chains.push_back({"worktop at the " + name + ", from its front edge",
                      {{"worktop", cutout.from_front},
                       {name, cutout.depth},
                       {"worktop", worktop.depth - cutout.from_front - cutout.depth}}});
  }
  along.links.push_back({"worktop", worktop.length() - end});
  chains.insert(chains.begin(), std::move(along));
  return chains;
}

std::optional<Caution> worktop_caution(const WallRunPlan& plan, const RunSpec& spec) {
  if (!plan.worktop) return {};
  const WorktopPlan& top = *plan.worktop;
  const Unit unit = spec.own.units.value_or(Unit::mm);
  std::string words = length_words(top, plan.wall, unit);
  if (top.material.empty() || matter_of(top.material) == Matter::wood)
    words +=
        "; of solid wood it is glued up of strips, and is fixed so that its depth can move: tight "
        "at the front, behind by buttons or through slots across the grain, never glued down";
  if (!top.cutouts.empty())
    words +=
        "; saw cut-outs by the template of what goes in, with corners bored round first, and seal "
        "their edges";
  if (top.length() > kHandy)
    words += "; over " + in_words(unit == Unit::mm ? kHandy : Length::from_inch_parts(96), unit) +
             " long: see that a board of it is to be had, and that it goes through the door and "
             "round the stair, else it is joined on site";
  return Caution{"worktop", std::move(words)};
}

}  // namespace haunch
