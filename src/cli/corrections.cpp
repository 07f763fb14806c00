#include "corrections.h"

#include "actuals_file.h"
#include "stock_source.h"

namespace haunch {

std::optional<CorrectedRates> corrections_of(const std::string& file, const Rates& rates,
                                             const std::vector<PlannedJob>& jobs,
                                             Complaints& complaints) {
  std::optional<Record> record = read_table(file, "a notebook of jobs", complaints);
  if (!record) return {};
  const ActualsReading reading = read_actuals(record->text->text);
  if (!complaints.note(record->place(reading.problems))) return {};
  CorrectedRates corrected = corrected_by(rates, reading.rows, jobs);
  if (!complaints.note(record->place(corrected.problems))) return {};
  return corrected;
}

}  // namespace haunch
