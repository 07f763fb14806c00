#include <algorithm>
#include <optional>
#include <utility>

#include "commands.h"
#include "messages.h"
#include "output_file.h"
#include "report.h"
#include "report_stream.h"
#include "single_file.h"
#include "spec_source.h"

namespace haunch {
namespace {

/// One run over all specs: reads, works, writes, and keeps the highest exit status.
class ReportRun {
 public:
  ReportRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        source_(invocation.words, streams.in),
        pages_(invocation.view) {}

  ExitStatus run() {
    if (!sources_can_be_read() || !take_shop_file()) return status_;
    OutputFile file(invocation_.output, streams_.out, inputs());
    while (file.state() == OutputFile::State::open && status_ < kFileFault) {
      auto record = source_.next();
      if (!record) {
        file.append(pages_.end(errors_));
        file.finish();
        break;
      }
      take(*record, file);
    }
    if (file.fault()) note(*file.fault());
    return status_;
  }

 private:
  void raise(ExitStatus status) { status_ = std::max(status_, status); }

  void note(const FileFault& fault) {
    raise(kFileFault);
    complain(error_line(fault), streams_);
  }

  void note(const std::vector<PlacedProblem>& problems) {
    if (!problems.empty()) raise(kBadSpec);
    for (const PlacedProblem& problem : problems)
      complain(error_line(problem), streams_);
    errors_.insert(errors_.end(), problems.begin(), problems.end());
  }

  bool sources_can_be_read() {
    for (const FileFault& fault : source_.check())
      note(fault);
    return status_ < kFileFault;
  }

  std::vector<FileIdentity> inputs() const {
    std::vector<FileIdentity> identities;
    std::vector<std::string> files = source_.files();
    if (!invocation_.shop.empty()) files.push_back(invocation_.shop);
    for (const std::string& file : files)
      if (const auto identity = file == "-" ? identity_of(streams_.in) : identity_of(file))
        identities.push_back(*identity);
    return identities;
  }

  /// False when the shop file can't be used; then nothing is worked.
  bool take_shop_file() {
    if (invocation_.shop.empty()) return true;
    ShopFile file = read_shop_file(invocation_.shop, streams_.in);
    for (const FileFault& fault : file.faults)
      note(fault);
    note(file.problems);
    shop_ = std::move(file.shop);
    return status_ < kBadSpec;
  }

  void take(Record& record, OutputFile& file) {
    if (record.fault) {
      note(*record.fault);
      return;
    }
    std::vector<PlacedProblem> problems = record.problems;
    if (record.item) {
      JobReading reading = read_job(*record.item, shop_ ? &*shop_ : nullptr, record.default_id);
      add(problems, record.place(reading.problems));
      if (reading.job && !record.spoilt) work(std::move(reading.job), record, problems, file);
    }
    note(problems);
  }

  static void add(std::vector<PlacedProblem>& problems, const std::vector<PlacedProblem>& more) {
    problems.insert(problems.end(), more.begin(), more.end());
  }

  void work(std::unique_ptr<Job> job, Record& record, std::vector<PlacedProblem>& problems,
            OutputFile& file) {
    const Section section = invocation_.view.section;
    const bool shows_checks = section == Section::sheet || section == Section::check;
    if (section == Section::season && !job->season) {
      add(problems, record.place({no_season()}));
      return;
    }
    const ItemOutcome outcome = report_item(std::move(job), shows_checks);
    add(problems, record.place(outcome.problems));
    if (!outcome.report) return;
    file.append(pages_.item(*outcome.report));
    if (outcome.report->worst() != Status::fail) return;
    raise(kCheckFailed);
    if (!shows_checks && !invocation_.quiet)
      complain(outcome.report->job->id + ": a check fails; 'haunch check' shows it\n", streams_);
  }

  static Problem no_season() {
    return {"",
            "\"moisture\" is missing, so it has no seasons; write such as \"moisture\": "
            "{\"build\": 8, \"low\": 6, \"high\": 13}",
            {}};
  }

  const Invocation& invocation_;
  const Streams& streams_;
  SpecSource source_;
  ReportStream pages_;
  std::optional<ShopDefaults> shop_;
  std::vector<PlacedProblem> errors_;
  ExitStatus status_ = kDone;
};

}  // namespace

ExitStatus run_report(const Invocation& invocation, const Streams& streams) {
  return ReportRun(invocation, streams).run();
}

}  // namespace haunch
