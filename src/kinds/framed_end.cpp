#include "framed_end.h"

#include <string>
#include <utility>
#include <variant>

#include "door.h"
#include "door_defaults.h"
#include "doorset_leaf.h"

namespace haunch {
namespace {

constexpr std::string_view kEndKey = "case.end.";

/// Where a problem of its spec stands in the cabinet's.
Problem of_the_case(Problem problem) {
  const bool of_its_room = problem.path.empty() || problem.path.starts_with("/opening") ||
                           problem.path.starts_with("/clearance");
  if (of_its_room) problem.message.insert(0, "a framed end: ");
  problem.path = of_its_room ? "/case/ends" : "/case/end" + problem.path;
  return problem;
}

bool is_of_the_whole(const Assumed& assumed) {
  return assumed.key == "units" || assumed.key == "species" || assumed.key == "horn";
}

/// Rows of pins are bored in its stiles: where nothing is said there is no rail in their way.
void take_two_rails(Spec& end) {
  if (!end.rails.empty() || !std::holds_alternative<std::monostate>(end.panels)) return;
  const Length usual = door_defaults(end.units.value_or(Unit::mm), Use::cabinet).stile;
  const RailSpec rail{usual, {}, {}, {}, true};
  end.rails = {rail, rail};
}

}  // namespace

MadeEnd make_framed_end(const CabinetSpec& spec, Length depth, Length height) {
  Spec end = spec.end;
  end.units = spec.own.units;
  take_from_whole(end, spec.own, {"species"});
  end.set("use", static_cast<int>(Use::cabinet));
  take_two_rails(end);
  DoorJob leaf;
  leaf.unit = spec.own.units.value_or(Unit::mm);
  leaf.spec = leaf_in_room(std::move(end), {depth, height, {}, {}});
  Worked worked = leaf.work();
  MadeEnd made;
  made.wood = std::move(worked.assembly);
  for (Assumed& it : worked.assumed) {
    if (is_of_the_whole(it)) continue;
    it.key.insert(0, kEndKey);
    made.assumed.push_back(std::move(it));
  }
  for (Problem& problem : worked.problems)
    made.problems.push_back(of_the_case(std::move(problem)));
  return made;
}

}  // namespace haunch
