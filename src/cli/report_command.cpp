#include <optional>
#include <utility>

#include "commands.h"
#include "complaints.h"
#include "messages.h"
#include "output_file.h"
#include "report.h"
#include "report_stream.h"
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
        pages_(invocation.view),
        complaints_(streams) {}

  ExitStatus run() {
    if (!complaints_.can_read(source_) || !complaints_.take_shop_file(invocation_.shop, shop_))
      return complaints_.status();
    OutputFile file(invocation_.output, streams_.out, inputs());
    while (file.state() == OutputFile::State::open && complaints_.status() < kFileFault) {
      auto record = source_.next();
      if (!record) {
        end(file);
        break;
      }
      take(*record, file);
    }
    complaints_.note(file);
    return complaints_.status();
  }

 private:
  /// With nothing worked a file that is there is worth more than what would replace it; a pipe and
  /// standard output still get their empty table, or JSON with the errors.
  void end(OutputFile& file) {
    const bool keeps_file = tally_.nothing_worked() && file.is_named();
    if (!keeps_file)
      for (const std::string& piece : pages_.end(tally_))
        file.append(piece, content_of(invocation_.view.format));
    if (file.state() != OutputFile::State::open) return;
    sum_up(keeps_file);  // before the file is in place: after that nothing may go wrong any more
    if (!keeps_file) file.finish();
  }

  /// Lines about single items may be a long way up by now.
  void sum_up(bool keeps_file) const {
    const bool worth_it = tally_.items() > 1 && (tally_.refused > 0 || tally_.failed > 1);
    if (invocation_.quiet || !(keeps_file || worth_it)) return;
    complain("haunch: " + tally_words(tally_) +
                 (keeps_file ? "; " + invocation_.output + " is not written" : ""),
             streams_);
  }

  void note(const std::vector<PlacedProblem>& problems) {
    complaints_.note(problems);
    pages_.note(problems);
  }

  std::vector<FileIdentity> inputs() const {
    std::vector<std::string> files = source_.files();
    files.push_back(invocation_.shop);
    return identities_of(files, streams_);
  }

  void take(Record& record, OutputFile& file) {
    if (record.fault) {
      complaints_.note(*record.fault);
      return;
    }
    std::vector<PlacedProblem> problems = record.problems;
    const std::size_t worked_before = tally_.worked;
    if (record.item) {
      JobReading reading = read_job(*record.item, shop_ ? &*shop_ : nullptr, record.default_id);
      add(problems, record.place(reading.problems));
      if (reading.job && !record.spoilt) work(std::move(reading.job), record, problems, file);
    }
    if (record.is_item() && tally_.worked == worked_before) ++tally_.refused;
    note(problems);
  }

  static void add(std::vector<PlacedProblem>& problems, const std::vector<PlacedProblem>& more) {
    problems.insert(problems.end(), more.begin(), more.end());
  }

  void work(std::unique_ptr<Job> job, Record& record, std::vector<PlacedProblem>& problems,
            OutputFile& file) {
    const Section section = invocation_.view.section;
    if (section == Section::season && !job->season) {
      add(problems, record.place({no_season()}));
      return;
    }
    const ItemOutcome outcome = report_item(std::move(job), wanted_for(invocation_.view));
    add(problems, record.place(outcome.problems));
    if (!outcome.report) return;
    file.append(pages_.item(*outcome.report), content_of(invocation_.view.format));
    ++tally_.worked;
    if (outcome.report->worst() != Status::fail) return;
    ++tally_.failed;
    complaints_.raise(kCheckFailed);
    const bool shows_checks = section == Section::sheet || section == Section::check;
    if (!shows_checks && !invocation_.quiet)
      complain(outcome.report->job->id + ": a check fails; 'haunch check' shows it", streams_);
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
  Tally tally_;
  Complaints complaints_;
};

}  // namespace

ExitStatus run_report(const Invocation& invocation, const Streams& streams) {
  return ReportRun(invocation, streams).run();
}

}  // namespace haunch
