#include "run_cautions.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "run_corner.h"
#include "run_plan.h"

namespace haunch {
namespace {

using What = RunEntry::What;

Unit unit_of(const RunSpec& spec) {
  return spec.own.units.value_or(Unit::mm);
}

/// The cabinet or gap that would be so much narrower, or the filler that would go.
std::string given_up(const WallRunPlan& plan, Unit unit, Length by) {
  std::string words;
  const auto offer = [&](const std::string& what) {
    words += (words.empty() ? "" : ", or ") + what;
  };
  for (const RunMember& member : plan.members)
    if (member.what == What::filler && member.width >= by)
      offer("give up " + member.name + ", " + in_words(member.width, unit) + " wide");
  for (const RunMember& member : plan.members)
    if ((member.what == What::gap || member.what == What::cabinet) && member.width > by)
      offer("make " + member.name + " " + in_words(member.width - by, unit) + " wide, not " +
            in_words(member.width, unit));
  return words;
}

std::optional<Caution> too_long(const WallRunPlan& plan, const RunSpec& spec) {
  const Length spare = plan.spare_left + plan.spare_right;
  if (spare >= Length()) return {};
  const Unit unit = unit_of(spec);
  const WallReading& least =
      *std::min_element(plan.wall.readings.begin(), plan.wall.readings.end(),
                        [](const auto& a, const auto& b) { return a.length < b.length; });
  const bool several = plan.wall.readings.size() > 1;
  const std::string where =
      several ? ", measured " + in_words(least.at, unit) + " above the floor" : "";
  return Caution{"too long",
                 "by " + in_words(-spare, unit) + where + "; " + given_up(plan, unit, -spare)};
}

std::optional<Caution> before_drilling(const WallRunPlan&, const RunSpec&) {
  return Caution{"services in the wall",
                 "find cables and pipes in wall and floor before a hole is drilled; sockets, taps "
                 "and gas are for those who are licensed for them"};
}

std::optional<Caution> fixings(const WallRunPlan&, const RunSpec&) {
  std::string words =
      "each case is fixed to the wall by what the wall is made of, two fixings at least, and to "
      "the "
      "case beside it through the packing; what the fixings carry, and the wall, is for their "
      "maker's figures";
  words += kDecides;
  return Caution{"wall fixings", std::move(words)};
}

std::optional<Caution> until_fixed(const WallRunPlan&, const RunSpec&) {
  return Caution{"until it is fixed",
                 "cases tip with a drawer or a door open: leave fronts off or shut till each is "
                 "screwed to the wall and to its neighbour; carry them with two"};
}

/// From where it begins; the floor's highest point says how high.
std::optional<Caution> order_of_fixing(const WallRunPlan& plan, const RunSpec& spec) {
  const bool from_left = plan.wall.begins_at_left();
  std::vector<std::string> names;
  for (const RunMember& member : plan.members)
    if (member.what == What::cabinet) names.push_back(member.name);
  if (!from_left) std::reverse(names.begin(), names.end());
  std::string words = std::string("from the ") + (from_left ? "left" : "right") + ": ";
  for (std::size_t i = 0; i < names.size(); ++i)
    words += (i == 0 ? "" : ", ") + names[i];
  if (const std::string frames = frame_words(plan, spec); !frames.empty()) words += "; " + frames;
  words += "; then fillers, planed to the wall, and end panels";
  if (plan.worktop) words += "; the worktop last";
  if (plan.floor.empty()) return Caution{"order of fixing", std::move(words)};
  const auto highest =
      std::max_element(plan.floor.begin(), plan.floor.end(),
                       [](const auto& a, const auto& b) { return a.rise < b.rise; });
  return Caution{"order of fixing", "strike a level line from the floor's highest point, " +
                                        in_words(highest->at, unit_of(spec)) +
                                        " from the left end; " + words};
}

/// What was said of its moisture is not lost without a word.
std::optional<Caution> seasons(const WallRunPlan& plan, const RunSpec& spec) {
  std::string names;
  for (const RunMember& member : plan.members)
    if (member.what == What::cabinet && spec.order[*member.entry].taken->job().season)
      names += (names.empty() ? "" : ", ") + member.name;
  if (names.empty()) return {};
  return Caution{"seasons", "what " + names +
                                " goes through over the year is not worked in a run; give its file "
                                "alone, without the run, to see it"};
}

}  // namespace

std::vector<Caution> run_cautions(const WallRunPlan& plan, const RunSpec& spec) {
  std::vector<Caution> all;
  for (const auto caution : {too_long, seasons, order_of_fixing, corner_caution, worktop_caution,
                             toe_caution, lines_caution, before_drilling, fixings, until_fixed})
    if (auto its = caution(plan, spec)) all.push_back(*std::move(its));
  return all;
}

}  // namespace haunch
