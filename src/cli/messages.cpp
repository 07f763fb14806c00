#include "messages.h"

namespace haunch {

std::string error_line(const PlacedProblem& problem) {
  return problem.source + ":" + std::to_string(problem.line) + ":" +
         std::to_string(problem.column) +
         ": error: " + (problem.path.empty() ? "" : problem.path + ": ") + problem.message;
}

std::string error_line(const FileFault& fault) {
  return fault.file + ": error: " + fault.words;
}

}  // namespace haunch
