// Seconds of the processor that each step of a batch takes, beside nlohmann/json parsing the same
// input and printing the same output.
//
// Reads JSON Lines, one spec a line; prints one JSON object.
#include <fmt/format.h>

#include <ctime>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>
#include <string>

#include "checks.h"
#include "json_reader.h"
#include "report.h"
#include "report_json.h"

namespace {

/// Adds the time since it was made to a sum, when it goes.
class Timer {
 public:
  explicit Timer(double& seconds) : seconds_(seconds), begin_(std::clock()) {}
  ~Timer() { seconds_ += static_cast<double>(std::clock() - begin_) / CLOCKS_PER_SEC; }
  Timer(const Timer&) = delete;
  Timer& operator=(const Timer&) = delete;

 private:
  double& seconds_;
  std::clock_t begin_;
};

struct Seconds {
  double read = 0, work = 0, check = 0, report = 0, write = 0;
  double nlohmann_parse = 0, nlohmann_dump = 0;
};

void run_spec(const std::string& line, Seconds& seconds) {
  std::unique_ptr<haunch::Job> job;
  {
    const Timer timer(seconds.read);
    job = haunch::read_job(*haunch::read_json(line).value, nullptr, "item").job;
  }
  haunch::Worked worked;
  {
    const Timer timer(seconds.work);
    worked = job->work();
  }
  {
    const Timer timer(seconds.check);
    haunch::check_assembly(worked.assembly, job->unit);
  }
  haunch::ItemOutcome outcome;
  {
    const Timer timer(seconds.report);
    outcome = haunch::report_item(std::move(job), haunch::wanted_for({}));
  }
  std::string text;
  {
    const Timer timer(seconds.write);
    haunch::append_item_json(text, *outcome.report, haunch::Section::sheet, haunch::Unit::mm, true);
  }
  {
    const Timer timer(seconds.nlohmann_parse);
    const auto spec = nlohmann::json::parse(line);
    if (spec.empty()) std::abort();
  }
  const auto report = nlohmann::json::parse(text);
  {
    const Timer timer(seconds.nlohmann_dump);
    if (report.dump().empty()) std::abort();
  }
}

}  // namespace

int main(int count, char** values) {
  if (count != 2) return 2;
  std::ifstream in(values[1]);
  Seconds seconds;
  std::string line;
  while (std::getline(in, line))
    run_spec(line, seconds);
  fmt::print(
      R"({{"read": {}, "work": {}, "check": {}, "report": {}, "write": {}, "nlohmann_parse": {}, "nlohmann_dump": {}}})",
      seconds.read, seconds.work, seconds.check, seconds.report, seconds.write,
      seconds.nlohmann_parse, seconds.nlohmann_dump);
  std::cout << "\n";
}
