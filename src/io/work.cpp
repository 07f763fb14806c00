#include "haunch/work.h"

#include <deque>
#include <optional>
#include <utility>

#include "json_reader.h"
#include "other_items.h"
#include "report.h"
#include "spec_source.h"

namespace haunch {
namespace {

/// The items that one names.
std::optional<OtherItems> others_of(const Record& record) {
  if (!record.named) return {};
  OtherItems others{{}, record.named->ids};
  for (const NamedItem& named : record.named->named)
    others.named.push_back({named.id, named.item.get(), nullptr, named.default_id});
  return others;
}

/// Works the item at `path` of a document. One that a run takes is told with that.
void work_item(WorkedSpec& worked, std::vector<Problem>& problems, const Record& record,
               const std::string& path) {
  const auto take = [&](std::vector<Problem> found) {
    for (Problem& problem : found)
      problems.push_back({path + problem.path, std::move(problem.message), problem.offset});
  };
  const std::optional<OtherItems> others = others_of(record);
  JobReading reading =
      read_job_among(*record.item, nullptr, record.default_id, others ? &*others : nullptr);
  take(std::move(reading.problems));
  if (!reading.job) return;
  ItemOutcome outcome = report_item(std::move(reading.job), {.checks = true});
  take(std::move(outcome.problems));
  if (!outcome.report || record.taken) return;
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
    const bool listed = document.kind == Value::Kind::list;
    std::deque<Record> records(listed ? document.list.size() : 1);
    for (std::size_t i = 0; i < records.size(); ++i) {
      records[i].item = listed ? document.list[i] : document;
      records[i].default_id = listed ? "item-" + std::to_string(i + 1) : "item";
    }
    link_runs(records);
    for (std::size_t i = 0; i < records.size(); ++i)
      work_item(worked, problems, records[i], listed ? child_path("", i) : "");
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
