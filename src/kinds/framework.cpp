#include "framework.h"

#include <algorithm>
#include <string>
#include <utility>
#include <variant>

#include "door.h"
#include "door_defaults.h"
#include "doorset_leaf.h"
#include "season_spec.h"

namespace haunch {
namespace {

std::string path_of(std::string_view dotted) {
  std::string path = "/" + std::string(dotted);
  std::replace(path.begin(), path.end(), '.', '/');
  return path;
}

/// Where a problem of its spec stands in the cabinet's.
Problem of_the_case(Problem problem, const FrameworkPart& part) {
  const bool of_its_room = problem.path.empty() || problem.path.starts_with("/opening") ||
                           problem.path.starts_with("/clearance");
  if (of_its_room) problem.message.insert(0, std::string(part.what) + ": ");
  problem.path = of_its_room ? path_of(part.asked) : path_of(part.keys) + problem.path;
  return problem;
}

bool is_of_the_whole(const Assumed& assumed) {
  return assumed.key == "units" || assumed.key == "species" || assumed.key == "horn";
}

/// Rows of pins are bored in the stiles of ends: where nothing is said there is no rail in their
/// way.
void take_two_rails(Spec& end) {
  if (!end.rails.empty() || !std::holds_alternative<std::monostate>(end.panels)) return;
  const Length usual = door_defaults(end.units.value_or(Unit::mm), Use::cabinet).stile;
  const RailSpec rail{usual, {}, {}, {}, true};
  end.rails = {rail, rail};
}

}  // namespace

MadeFramework make_framework(const CabinetSpec& cabinet, Spec its, const FrameworkPart& part,
                             Length width, Length height) {
  its.units = cabinet.own.units;
  take_from_whole(its, cabinet.own, {"species", "moisture", "grain"});
  its.set("use", static_cast<int>(Use::cabinet));
  take_two_rails(its);
  DoorJob leaf;
  leaf.unit = cabinet.own.units.value_or(Unit::mm);
  leaf.spec = leaf_in_room(std::move(its), {width, height, {}, {}});
  leaf.season = settle_season(cabinet.own).season;
  if (!leaf.season) leaf.usual_year = usual_year_of(leaf.spec);
  Worked worked = leaf.work();
  MadeFramework made;
  made.wood = std::move(worked.assembly);
  for (Assumed& it : worked.assumed) {
    if (is_of_the_whole(it)) continue;
    it.key.insert(0, std::string(part.keys) + ".");
    made.assumed.push_back(std::move(it));
  }
  for (Problem& problem : worked.problems)
    made.problems.push_back(of_the_case(std::move(problem), part));
  return made;
}

}  // namespace haunch
