#include <optional>
#include <utility>

#include "commands.h"
#include "complaints.h"
#include "crew.h"
#include "item_reading.h"
#include "mended.h"
#include "messages.h"
#include "output_file.h"
#include "report.h"
#include "report_stream.h"
#include "shops.h"
#include "spec_source.h"

namespace haunch {
namespace {

/// One run over all specs: reads, works, writes, and keeps the highest exit status.
class ReportRun {
 public:
  ReportRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        source_(invocation.words, streams.in, invocation.ways),
        pages_(invocation.view),
        shops_(invocation, streams),
        complaints_(streams) {}

  ExitStatus run() {
    if (!complaints_.can_read(source_) || !shops_.take(source_.files(), complaints_))
      return complaints_.status();
    OutputFile file(invocation_.output, streams_.out, inputs());
    Crew crew(invocation_.jobs, [this](ItemTask& task) { work(task); });
    bool more = true;
    while (file.state() == OutputFile::State::open && complaints_.status() < kFileFault) {
      while (more && crew.has_room())
        more = hand_out_next(crew);
      if (crew.is_idle()) {
        end(file);
        break;
      }
      settle(crew.take_back(), file);
    }
    complaints_.note(file);
    if (!mended_.empty() && complaints_.status() < kFileFault) write_mended();
    return complaints_.status();
  }

 private:
  /// With nothing worked a file that is there is worth more than what would replace it; a pipe and
  /// standard output still get their empty table, or JSON with the errors.
  void end(OutputFile& file) {
    file.spare(inputs());
    const bool keeps_file = tally_.nothing_worked() && file.is_named();
    if (!keeps_file)
      for (const std::string& piece : pages_.end(tally_))
        write_out(piece, file);
    if (file.state() != OutputFile::State::open) return;
    sum_up(keeps_file);  // before the file is in place: after that nothing may go wrong any more
    const auto lock = still(streams_);
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
    return identities_of(files_read(source_, shops_), streams_);
  }

  /// False after the last item.
  bool hand_out_next(Crew& crew) {
    auto record = source_.next();
    if (record) crew.hand_out({std::move(*record), pages_.has_items(), {}, {}, {}});
    return record.has_value();
  }

  /// All of an item that needs no other; by several threads at once.
  void work(ItemTask& task) const {
    const Record& record = task.record;
    if (!record.item) return;
    JobReading reading = read_item(record, shops_);
    task.problems = std::move(reading.problems);
    if (!reading.job || record.spoilt) return;
    if (invocation_.view.section == Section::season && !reading.job->season) {
      task.problems.push_back(no_season());
      return;
    }
    const Wanted wanted = record.taken ? Wanted{} : wanted_for(invocation_.view);
    ItemOutcome outcome = report_item(std::move(reading.job), wanted);
    add(task.problems, std::move(outcome.problems));
    task.report = std::move(outcome.report);
    if (task.report && task.follows && !record.taken)
      task.told = pages_.following_item(*task.report);
  }

  void settle(ItemTask task, OutputFile& file) {
    if (task.record.fault) {
      complaints_.note(*task.record.fault);
      return;
    }
    if (task.report) mend(task);
    if (task.report && !task.record.taken)
      write(*task.report,
            pages_.take(task.follows ? std::move(task.told) : pages_.item(*task.report)), file);
    else if (!task.report)
      ++tally_.refused;
    note(task.record.place(task.problems));
  }

  void write_out(const std::string& text, OutputFile& file) const {
    const auto lock = still(streams_);
    file.append(text, content_of(invocation_.view));
  }

  void write(const ItemReport& report, const std::string& text, OutputFile& file) {
    write_out(text, file);
    ++tally_.worked;
    streams_.progress->count();
    if (report.worst() != Status::fail) return;
    ++tally_.failed;
    complaints_.raise(kCheckFailed);
    const Section section = invocation_.view.section;
    const bool shows_checks = section == Section::sheet || section == Section::check;
    if (!shows_checks && !invocation_.quiet)
      complain(report.job->id + ": a check fails; 'haunch check' shows it", streams_);
  }

  void mend(const ItemTask& task) {
    if (invocation_.mended.empty()) return;
    const std::optional<OtherItems> others = others_of(task.record, shops_);
    const std::string told =
        mended_.take(*task.record.item, *task.report, shops_.of(task.record.source),
                     others ? &*others : nullptr);
    if (!told.empty() && !invocation_.quiet) complain(told, streams_);
  }

  void write_mended() {
    OutputFile file(invocation_.mended, streams_.out, inputs());
    file.append(mended_.text());
    file.finish();
    complaints_.note(file);
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
  Shops shops_;
  Mended mended_;
  Tally tally_;
  Complaints complaints_;
};

}  // namespace

ExitStatus run_report(const Invocation& invocation, const Streams& streams) {
  Progress progress(streams.err, !invocation.quiet);
  Streams with_progress = streams;
  with_progress.progress = &progress;
  return ReportRun(invocation, with_progress).run();
}

}  // namespace haunch
