// What must hold of any bytes that are taken for a spec: a report that can be read back, or
// problems, never a crash.
#pragma once

#include <cstdint>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <string>

#include "json_reader.h"
#include "report.h"
#include "report_csv.h"
#include "report_json.h"
#include "report_page.h"

namespace haunch {

/// More pieces than this, or more that slopes, only make the fuzzer slow.
inline constexpr std::size_t kMostFuzzedPieces = 300;
inline constexpr std::size_t kMostFuzzedSloping = 20'000;

inline bool is_small(const Assembly& wood) {
  return wood.pieces.size() <= kMostFuzzedPieces && sloping_effort(wood) <= kMostFuzzedSloping;
}

inline void spec_target(const std::uint8_t* bytes, std::size_t size) {
  const Reading reading = read_json(std::string(bytes, bytes + size));
  if (!reading.value) return;
  JobReading job = read_job(*reading.value, nullptr, "fuzzed");
  if ((job.job == nullptr) == job.problems.empty()) std::abort();
  if (!job.job || !is_small(job.job->work().assembly)) return;
  const ItemOutcome outcome = report_item(
      std::move(job.job), {.checks = true, .cutlist = true, .making = true, .fits = true});
  if (outcome.report.has_value() == !outcome.problems.empty()) std::abort();
  if (!outcome.report) return;
  std::string text;
  append_item_json(text, *outcome.report, Section::sheet, Unit::inch, true);
  if (nlohmann::json::parse(text).at("parts").size() != outcome.report->wood.pieces.size())
    std::abort();
  append_item_csv(text, *outcome.report, Section::joints, Unit::mm, CsvProfile::plain);
  View view;
  view.full = true;
  if (item_page(*outcome.report, view, Unit::mm).empty()) std::abort();
}

}  // namespace haunch
