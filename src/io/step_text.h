// A solid as text that other programs read: ISO 10303-21, application protocol 242, in millimetres.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "shell.h"

namespace haunch {

/// What is told of a solid beside its shape.
struct StepPart {
  std::string id;                  // "side-door A"
  std::string name;                // "left stile"
  std::vector<std::string> about;  // at the head of the file, in lines
};

/// One closed solid with flat faces and straight edges. The same solid gives the same bytes: no
/// time and no author stands in it.
std::string step_text(const StepPart& part, const Shell& shell);

/// Text as it stands in such a file, with its quotes: ASCII, other letters by their numbers.
std::string step_string(std::string_view text);

}  // namespace haunch
