#include "messages.h"

#include <algorithm>

namespace haunch {

std::string one_line(std::string text) {
  std::replace_if(
      text.begin(), text.end(),
      [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }, ' ');
  return text;
}

std::string error_line(const PlacedProblem& problem) {
  return one_line(problem.source + ":" + std::to_string(problem.line) + ":" +
                  std::to_string(problem.column) + ": error: " +
                  (problem.path.empty() ? "" : problem.path + ": ") + problem.message) +
         "\n";
}

std::string error_line(const FileFault& fault) {
  return one_line(fault.file + ": error: " + fault.words) + "\n";
}

}  // namespace haunch
