#include "machine_spec.h"

namespace haunch {
namespace {

Cutter cutter_of(const KeyValues& item) {
  return {item.text("machines[].cutters[].name"), item.size("machines[].cutters[].width"),
          item.size("machines[].cutters[].reach"), item.size("machines[].cutters[].step")};
}

Holding holding_of(const KeyValues& item) {
  Holding holding;
  holding.name = item.text("machines[].holds[].name");
  holding.worked = item.word<WorkedLooks>("machines[].holds[].worked").value_or(WorkedLooks::up);
  holding.datum = item.word<DatumLies>("machines[].holds[].datum").value_or(DatumLies::at_fence);
  holding.size = {
      {{item.size("machines[].holds[].length.least"), item.size("machines[].holds[].length.most")},
       {item.size("machines[].holds[].width.least"), item.size("machines[].holds[].width.most")},
       {item.size("machines[].holds[].thickness.least"),
        item.size("machines[].holds[].thickness.most")}}};
  holding.room_below = item.size("machines[].holds[].room_below");
  return holding;
}

Machine machine_of(const KeyValues& item) {
  Machine machine;
  machine.name = item.text("machines[].name");
  for (const KeyValues& process : item["machines[].does"].items)
    if (const auto its = process.word<Process>("machines[].does[]")) machine.does.push_back(*its);
  for (const KeyValues& cutter : item["machines[].cutters"].items)
    machine.cutters.push_back(cutter_of(cutter));
  for (const KeyValues& holding : item["machines[].holds"].items)
    machine.holds.push_back(holding_of(holding));
  machine.smallest = {item.size("machines[].smallest.length"),
                      item.size("machines[].smallest.width"),
                      item.size("machines[].smallest.thickness")};
  machine.set_minutes = item["machines[].set_minutes"].figure;
  machine.piece_minutes = item["machines[].piece_minutes"].figure;
  machine.metre_minutes = item["machines[].metre_minutes"].figure;
  return machine;
}

}  // namespace

std::vector<Machine> machines_of(const std::vector<KeyValues>& items) {
  std::vector<Machine> machines;
  for (const KeyValues& item : items)
    machines.push_back(machine_of(item));
  return machines;
}

}  // namespace haunch
