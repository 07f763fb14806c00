// Tasks for tests, in short: what is cut, in a piece of which size, in millimetres.
#pragma once

#include "../vocabulary.h"
#include "task.h"

namespace haunch::test {

inline Triple size_mm(double length, double width, double thickness) {
  return {mm(length), mm(width), mm(thickness)};
}

/// A stile of a house door.
inline Triple stile() {
  return size_mm(2054, 118, 44);
}

inline Task task(Process process, FeatureKind makes, const Triple& size, std::size_t into,
                 std::vector<NamedSize> settings) {
  Task it;
  it.process = process;
  it.size = size;
  it.setting.makes = makes;
  it.setting.settings = std::move(settings);
  Run run;
  run.side = {into, true};
  it.setting.runs = {run};
  return it;
}

inline Task mortise(double width, double depth, const Triple& size = stile()) {
  return task(Process::mortise, FeatureKind::mortise, size, 1,
              {{SizeName::width, mm(width)}, {SizeName::depth, mm(depth)}});
}

inline Task groove(double width, double depth, const Triple& size = stile()) {
  return task(Process::groove, FeatureKind::groove, size, 1,
              {{SizeName::width, mm(width)}, {SizeName::depth, mm(depth)}});
}

inline Task hole(double diameter, double depth, const Triple& size = stile(),
                 std::size_t into = 1) {
  return task(Process::bore, FeatureKind::dowel_hole, size, into,
              {{SizeName::diameter, mm(diameter)}, {SizeName::depth, mm(depth)}});
}

/// A tenon 14 thick in the middle of a rail 42 thick.
inline Task tenon(double depth, const Triple& size = size_mm(840, 118, 42)) {
  return task(
      Process::tenon, FeatureKind::tenon, size, 0,
      {{SizeName::thickness, mm(14)}, {SizeName::depth, mm(depth)}, {SizeName::from_face, mm(14)}});
}

}  // namespace haunch::test
