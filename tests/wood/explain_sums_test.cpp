// Explanations add up: over random specs each figure that is told as a sum is that sum, every part
// and joint is told of, and what is called built in stays the same whatever is stated.
#include <cmath>

#include "catch.h"
#include "explain.h"
#include "frame_draw.h"
#include "json_reader.h"
#include "property_runs.h"
#include "random_spec.h"

namespace haunch::test {
namespace {

std::optional<Explanation> explained(const std::string& text) {
  Record record;
  record.source = "spec";
  record.default_id = "item";
  record.item = read_json(text).value;
  record.text = std::make_shared<SourceText>();
  record.text->text = text;
  return explain(record, nullptr).explanation;
}

/// In steps; a sum of fractions may be less than a step off.
std::string wrong_sums(const Explanation& all) {
  std::string wrong;
  std::size_t sums = 0, figures = 0;
  for (const ExplainedValue& value : all.values) {
    if (value.what.size() > 1 && value.what[0] >= 'A' && value.what[0] <= 'Z') ++figures;
    if (value.terms.empty()) continue;
    ++sums;
    long double sum = 0;
    for (const Term& term : value.terms)
      sum += static_cast<long double>(all.values[term.value].value.length.steps()) *
             static_cast<long double>(term.factor.over) /
             static_cast<long double>(term.factor.under);
    if (std::abs(sum - static_cast<long double>(value.value.length.steps())) >= 1)
      wrong += value.what + " is not the sum of its terms\n";
  }
  if (sums * 3 < figures) wrong += "few figures are told as sums\n";
  return wrong;
}

Outcome judge(const std::string& spec, std::string& wrong) {
  const auto explanation = explained(spec);
  if (!explanation) return Outcome::refused;
  wrong = wrong_sums(*explanation);
  if (!wrong.empty()) wrong += spec;
  return Outcome::worked;
}

}  // namespace

TEST_CASE("figures of random doors are the sums that are told of them", "[explain][property]") {
  const Tally tally = run_over(seeds_for(10), [](std::uint64_t seed, std::string& wrong) {
    const DoorSpec spec = random_door(seed, Keys::all);
    return judge(to_json(spec, {spec.unit, seed, false, true}), wrong);
  });
  require_worked_share(tally, 40);
}

TEST_CASE("figures of random sets are the sums that are told of them", "[explain][property]") {
  const Tally tally = run_over(seeds_for(4), [](std::uint64_t seed, std::string& wrong) {
    return judge(FrameDraw(seed).set(), wrong);
  });
  require_worked_share(tally, 40);
}

}  // namespace haunch::test
