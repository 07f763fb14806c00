// Every length of a report's parts, joints and operations, under the name that it is asked for by.
#pragma once

#include <string>
#include <vector>

#include "report.h"

namespace haunch {

struct NamedLength {
  std::string name;  // as the JSON has it, a part by its mark: "C.length", "J1.tenon.width"
  Length length;

  friend bool operator==(const NamedLength&, const NamedLength&) = default;
};

/// `report` has its making. They are taken from the report's own JSON, so that none is forgotten.
std::vector<NamedLength> figures_of(const ItemReport& report);

}  // namespace haunch
