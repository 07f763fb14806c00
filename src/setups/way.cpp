#include "way.h"

#include <algorithm>

namespace haunch {

Way way_for(const Task& task, const std::vector<Machine>& machines) {
  Way way;
  const auto does = [&](const Machine& machine) {
    return std::find(machine.does.begin(), machine.does.end(), task.process) != machine.does.end();
  };
  const auto its = std::find_if(machines.begin(), machines.end(), does);
  if (its == machines.end())
    way.findings.push_back({WayFault::no_machine, {}, {}});
  else
    way.machine = static_cast<std::size_t>(its - machines.begin());
  return way;
}

std::vector<Machine> usual_machines(Unit) {
  const auto machine = [](std::string name, std::vector<Process> does) {
    Machine it;
    it.name = std::move(name);
    it.does = std::move(does);
    return it;
  };
  return {
      machine("crosscut saw", {Process::crosscut, Process::mitre}),
      machine("table saw", {Process::rip, Process::cut_sheet, Process::tenon, Process::finger}),
      machine("surface planer", {Process::surface}),
      machine("thicknesser", {Process::thickness}),
      machine("mortiser", {Process::mortise}),
      machine("router table", {Process::groove, Process::rebate, Process::cope, Process::house,
                               Process::mould, Process::raise}),
      machine("bandsaw", {Process::curve, Process::taper}),
      machine("drill press", {Process::bore}),
      machine("bench", {Process::recess, Process::dovetail, Process::notch, Process::glue}),
  };
}

}  // namespace haunch
