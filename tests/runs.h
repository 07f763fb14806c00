// Runs of cabinets, for tests.
#pragma once

#include <fmt/format.h>

#include <memory>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "other_items.h"
#include "run_work.h"
#include "vocabulary.h"

namespace haunch::test {

/// A cabinet of that id, as wide as that, 880 high with its toe, 560 deep.
inline std::string case_of(const std::string& id, int width, const std::string& more = {}) {
  const bool has_toe = more.find("\"toe\"") != std::string::npos;
  return fmt::format(
      R"({{"kind": "cabinet", "id": "{}", "units": "mm", {}
          "size": {{"width": {}, "height": 880, "depth": 560}}{}}})",
      id, has_toe ? "" : R"("toe": {"height": 100},)", width, more.empty() ? "" : ", " + more);
}

/// Cabinets by their ids, and what runs read them as.
class Cabinets {
 public:
  Cabinets& with(const std::string& id, int width, const std::string& more = {}) {
    values_.emplace_back(id, value_of(case_of(id, width, more)));
    return *this;
  }
  /// A run that others of these may begin beside.
  Cabinets& with_run(const std::string& id, const std::string& keys) {
    values_.emplace_back(
        id, value_of(R"({"kind": "run", "id": ")" + id + R"(", "units": "mm", )" + keys + "}"));
    return *this;
  }
  JobReading run(const std::string& keys) const {
    OtherItems others;
    for (const auto& [id, value] : values_) {
      others.named.push_back({id, &value, nullptr, id});
      others.ids.push_back(id);
    }
    return read_job_among(
        value_of(R"({"kind": "run", "id": "north", "units": "mm", )" + keys + "}"), nullptr, "run",
        &others);
  }
  std::unique_ptr<Job> job(const std::string& keys) const {
    JobReading reading = run(keys);
    if (!reading.job) throw std::invalid_argument("refused: " + in_lines(reading.problems));
    return std::move(reading.job);
  }
  Worked worked(const std::string& keys) const { return work(*job(keys)); }
  std::string refusal_of(const std::string& keys) const {
    const JobReading reading = run(keys);
    return in_lines(reading.job ? reading.job->work().problems : reading.problems);
  }

 private:
  std::vector<std::pair<std::string, Value>> values_;
};

}  // namespace haunch::test
