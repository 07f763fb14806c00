#include "property_runs.h"

#include <cstdlib>

#include "catch.h"
#include "effort.h"
#include "json_reader.h"
#include "kind.h"

namespace haunch::test {

namespace {

std::optional<std::uint64_t> number_from_environment(const char* name) {
  const char* text = std::getenv(name);
  if (text == nullptr || *text == '\0') return std::nullopt;
  return std::strtoull(text, nullptr, 10);
}

std::string first_of(const std::vector<Problem>& problems) {
  return problems.empty() ? std::string() : problems.front().path + ": " + problems.front().message;
}

}  // namespace

Trial work(const std::string& json) {
  const auto reading = read_json(json);
  if (!reading.value || !reading.problems.empty()) return {{}, first_of(reading.problems)};
  const JobReading item = read_job(*reading.value, nullptr, "door");
  if (!item.job || !item.problems.empty()) return {{}, first_of(item.problems)};
  Worked worked = item.job->work();
  if (!worked.problems.empty()) return {{}, first_of(worked.problems)};
  return {std::move(worked.assembly), {}};
}

Seeds seeds_for(std::uint64_t usual) {
  if (const auto seed = number_from_environment("HAUNCH_TEST_SEED")) return {*seed, 1};
  return {1, static_cast<std::uint64_t>(times_effort(static_cast<std::int64_t>(usual)))};
}

Tally run_over(const Seeds& seeds,
               const std::function<Outcome(std::uint64_t seed, std::string& wrong)>& property) {
  Tally tally;
  int faults = 0;
  for (std::uint64_t i = 0; i < seeds.count && faults < 5; ++i) {
    const std::uint64_t seed = seeds.first + i;
    std::string wrong;
    const Outcome outcome = property(seed, wrong);
    if (outcome == Outcome::worked) ++tally.worked;
    if (outcome == Outcome::refused) ++tally.refused;
    if (outcome == Outcome::aside) ++tally.aside;
    if (wrong.empty()) continue;
    ++faults;
    FAIL_CHECK("HAUNCH_TEST_SEED=" << seed << "\n" << wrong);
  }
  return tally;
}

void require_worked_share(const Tally& tally, std::uint64_t least) {
  INFO(tally.worked << " worked, " << tally.refused << " refused, " << tally.aside << " set aside");
  if (tally.worked + tally.refused + tally.aside > 1) REQUIRE(tally.worked_share() >= least);
}

}  // namespace haunch::test
