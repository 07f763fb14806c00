#include "haunch/work.h"

#include "json_reader.h"
#include "report.h"

namespace haunch {
namespace {

/// Works the item at `path` of a document.
void work_item(WorkedSpec& worked, std::vector<Problem>& problems, const Value& item,
               const std::string& path, const std::string& default_id) {
  const auto take = [&](std::vector<Problem> found) {
    for (Problem& problem : found)
      problems.push_back({path + problem.path, std::move(problem.message), problem.offset});
  };
  JobReading reading = read_job(item, nullptr, default_id);
  take(std::move(reading.problems));
  if (!reading.job) return;
  ItemOutcome outcome = report_item(std::move(reading.job), {.checks = true});
  take(std::move(outcome.problems));
  if (!outcome.report) return;
  ItemReport& report = *outcome.report;
  worked.items.push_back({report.job->id, std::move(report.wood),
                          static_cast<std::size_t>(report.count_of(Status::fail)),
                          static_cast<std::size_t>(report.count_of(Status::caution))});
}

}  // namespace

WorkedSpec work_spec(std::string_view json) {
  WorkedSpec worked;
  Reading reading = read_json(json);
  std::vector<Problem> problems = std::move(reading.problems);
  if (reading.value && problems.empty()) {
    const Value& document = *reading.value;
    if (document.kind != Value::Kind::list) work_item(worked, problems, document, "", "item");
    for (std::size_t i = 0; i < document.list.size(); ++i)
      work_item(worked, problems, document.list[i], child_path("", i),
                "item-" + std::to_string(i + 1));
  }
  for (const Problem& problem : problems) {
    const std::size_t offset = problem.offset  ? *problem.offset
                               : reading.value ? offset_of(*reading.value, problem.path)
                                               : 0;
    const TextPlace place = place_in(json, offset);
    worked.faults.push_back({place.line, place.column, problem.path, problem.message});
  }
  return worked;
}

}  // namespace haunch
