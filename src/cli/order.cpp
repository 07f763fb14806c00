#include "order.h"

#include <iterator>
#include <utility>

#include "item_reading.h"
#include "messages.h"

namespace haunch {

void Order::work(const Wanted& wanted, const std::function<void(ItemReport)>& take) {
  while (complaints_.status() < kFileFault) {
    auto record = source_.next();
    if (!record) return;
    if (record->fault) {
      complaints_.note(*record->fault);
      continue;
    }
    if (record->taken) {
      if (!pass_over(*record)) ++tally_.refused;
      continue;
    }
    auto item = worked(*record, wanted);
    if (!item || !admit(*item)) {
      ++tally_.refused;
      continue;
    }
    if (streams_.progress != nullptr) streams_.progress->count();
    take(std::move(*item));
  }
}

std::optional<ItemReport> Order::worked(Record& record, const Wanted& wanted) {
  JobReading reading;
  if (record.item) reading = read_item(record, shops_);
  if (reading.job && also_reads_) add(reading.problems, also_reads_(*reading.job));
  note(record.place(reading.problems));
  if (!reading.problems.empty() || !reading.job || record.spoilt) return {};
  ItemOutcome outcome = report_item(std::move(reading.job), wanted);
  note(record.place(outcome.problems));
  return std::move(outcome.report);
}

/// One that a run takes is told with that; what is wrong with it is told here.
bool Order::pass_over(Record& record) {
  return worked(record, {}).has_value();
}

void Order::note(std::vector<PlacedProblem> problems) {
  complaints_.note(problems);
  std::move(problems.begin(), problems.end(), std::back_inserter(problems_));
}

bool Order::admit(const ItemReport& item) {
  const std::string& id = item.job->id;
  const bool fails = item.worst() == Status::fail;
  if (fails && minds_checks_) {
    complaints_.raise(kCheckFailed);
    if (!invocation_.quiet) complain(id + ": a check fails; 'haunch check' shows it", streams_);
  }
  if (!ids_.insert(id).second) {
    complaints_.refuse("two items are called \"" + id +
                       "\"; their parts could not be told apart: give each its own id");
    return false;
  }
  ++tally_.worked;
  if (fails) ++tally_.failed;
  if (!unit_) unit_ = item.job->unit;
  return true;
}

void Order::sum_up(const std::string& so) const {
  if (tally_.items() < 2 || tally_.refused == 0 || invocation_.quiet) return;
  complain("haunch: " + tally_words(tally_) + "; " + so, streams_);
}

}  // namespace haunch
