#include "machine_spec.h"

#include <algorithm>
#include <iterator>

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

class MachineCheck {
 public:
  MachineCheck(ValueReader& read, const Value& written, const Machine& machine, std::string path)
      : read_(read), written_(written), machine_(machine), path_(std::move(path)) {}

  void name(const std::vector<Machine>& before) {
    const bool taken = std::any_of(before.begin(), before.end(), [&](const Machine& other) {
      return other.name == machine_.name;
    });
    if (taken && !machine_.name.empty())
      read_.problem(child_path(path_, "name"), "\"" + machine_.name +
                                                   "\" is the name of another machine too; give "
                                                   "each its own");
  }

  void processes() {
    const Value* list = written_.find("does");
    if (list == nullptr) return;
    const auto same = [](const Value& value) {
      return [&value](const Value& other) { return other.text == value.text; };
    };
    const auto& all = list->list;
    for (auto its = all.begin(); its != all.end(); ++its)
      if (its->kind == Value::Kind::text && std::any_of(all.begin(), its, same(*its)))
        read_.problem(child_path(child_path(path_, "does"),
                                 static_cast<std::size_t>(std::distance(all.begin(), its))),
                      as_written(*its) + " stands here twice; keep one");
  }

  void holds() {
    const Value* list = written_.find("holds");
    if (list == nullptr || list->list.size() != machine_.holds.size()) return;
    for (std::size_t i = 0; i < machine_.holds.size(); ++i) {
      const std::string path = child_path(child_path(path_, "holds"), i);
      ranges(machine_.holds[i], list->list[i], path);
      datum(machine_.holds[i], path);
    }
  }

 private:
  void ranges(const Holding& holding, const Value& written, const std::string& path) {
    constexpr std::string_view kKeys[] = {"length", "width", "thickness"};
    for (std::size_t i = 0; i < std::size(kKeys); ++i) {
      const SizeRange& range = holding.size[i];
      if (!range.least || !range.most || *range.least <= *range.most) continue;
      const Value& its = *written.find(kKeys[i]);
      read_.problem(child_path(child_path(path, kKeys[i]), "least"),
                    as_written(*its.find("least")) + " is more than \"most\", " +
                        as_written(*its.find("most")) + "; nothing goes into it");
    }
  }

  void datum(const Holding& holding, const std::string& path) {
    if (holding.worked == WorkedLooks::sideways || holding.datum == DatumLies::at_fence) return;
    read_.problem(child_path(path, "datum"),
                  "the table is under what is worked up or down, so that its datum is at the "
                  "fence; write \"fence\", or \"worked\": \"sideways\"");
  }

  ValueReader& read_;
  const Value& written_;
  const Machine& machine_;
  std::string path_;
};

}  // namespace

std::vector<Machine> machines_of(const std::vector<KeyValues>& items) {
  std::vector<Machine> machines;
  for (const KeyValues& item : items)
    machines.push_back(machine_of(item));
  return machines;
}

void check_machines(ValueReader& read, const Value& list, const std::vector<Machine>& machines,
                    const std::string& path) {
  for (std::size_t i = 0; i < machines.size(); ++i) {
    MachineCheck check(read, list.list[i], machines[i], child_path(path, i));
    check.name({machines.begin(), machines.begin() + static_cast<std::ptrdiff_t>(i)});
    check.processes();
    check.holds();
  }
}

}  // namespace haunch
