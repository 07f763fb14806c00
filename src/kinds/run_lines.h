// Lines that go through all cabinets of a run at one height.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "document.h"
#include "haunch/length_text.h"

namespace haunch {

struct Caution;
struct RunSpec;
struct WallRunPlan;

/// One that the spec asks for.
struct RunLine {
  std::string name;  // "top-drawer"
  Length height;     // of the fronts that it goes below
};

/// The lines in a run's spec; what is none of them is refused.
std::vector<RunLine> read_lines(const Value& run, Unit unit, std::vector<Problem>& problems);

/// What setting a line did to a cabinet's layout.
struct SetLine {
  int rows = 0;        // so many were given their height
  bool other = false;  // one of them had said a height of its own
};

/// Makes the fronts of a cabinet's uppermost rows, where these are drawers, as high as the line
/// says: in each column.
SetLine set_line(Value& cabinet, const RunLine& line);

std::optional<Caution> lines_caution(const WallRunPlan& plan, const RunSpec& spec);

}  // namespace haunch
