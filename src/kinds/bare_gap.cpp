#include "bare_gap.h"

#include <string>
#include <string_view>

namespace haunch {
namespace {

/// By the key as a spec has it.
bool is_gap(std::string_view key) {
  if (key.starts_with("frame.")) key.remove_prefix(6);
  return key == "clearance" || key.starts_with("clearance.") || key == "meeting_clearance" ||
         key == "fronts.gap" || key == "gap";
}

}  // namespace

std::vector<Chain> bare_gap_chains(const Job& job, const std::vector<Assumed>& assumed) {
  std::vector<Chain> chains;
  const Length film = job.finish.film;
  const auto add = [&](const std::string& key, Length finished) {
    if (is_gap(key))
      chains.push_back(
          {key + ", as it is cut", {{"finished", finished}, {"film", film}, {"film", film}}});
  };
  if (film == Length()) return chains;
  for (const Given& it : job.given)
    add(it.key, it.length);
  for (const Assumed& it : assumed)
    if (it.value.kind == AssumedValue::Kind::length) add(it.key, it.value.length);
  return chains;
}

}  // namespace haunch
