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

std::string tally_words(const Tally& tally) {
  std::string words = std::to_string(tally.worked) + " worked";
  if (tally.failed > 0) words += ", " + std::to_string(tally.failed) + " of them failed a check";
  if (tally.refused > 0) words += ", " + std::to_string(tally.refused) + " refused";
  return words;
}

}  // namespace haunch
