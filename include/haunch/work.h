// Specs worked in a program of one's own: the way into the library.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/wood.h"

namespace haunch {

/// One item of a spec: its wood, and how many of its checks fail or caution.
struct WorkedItem {
  std::string id;
  Assembly wood;
  std::size_t fails = 0, cautions = 0;
};

/// What is wrong with a spec: where in its text, counted from 1, and as a JSON Pointer.
struct SpecFault {
  std::size_t line = 1, column = 1;
  std::string path;
  std::string message;
};

struct WorkedSpec {
  std::vector<WorkedItem> items;  // those that could be worked, in the order of the text
  std::vector<SpecFault> faults;
};

/// Works and checks a spec: JSON text in UTF-8 of one item, or a list of items. An item without an
/// id is called "item", and in a list by its number, "item-1". Of a shop file nothing is known
/// here. Throws std::bad_alloc only.
WorkedSpec work_spec(std::string_view json);

}  // namespace haunch
