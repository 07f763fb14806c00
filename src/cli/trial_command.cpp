#include <algorithm>
#include <optional>
#include <utility>

#include "commands.h"
#include "complaints.h"
#include "item_reading.h"
#include "report.h"
#include "shops.h"
#include "single_file.h"
#include "spec_source.h"
#include "trial_csv.h"
#include "trial_json.h"
#include "trial_options.h"
#include "trial_page.h"
#include "trial_reading.h"

namespace haunch {
namespace {

std::string usage_fault(const Invocation& invocation) {
  if (invocation.words.size() != 1)
    return invocation.words.empty()
               ? "trial: no spec is named; give a file, or - for standard input"
               : "trial: takes one spec; \"" + invocation.words[1] + "\" is one too many";
  if (invocation.joint.empty())
    return "trial: which joint is not told; add --joint J1 ('haunch joints' lists them)";
  if (invocation.measured.empty() && invocation.readings.empty())
    return "trial: nothing is measured; add --measured FILE, or readings such as --tenon 14.9";
  if (!invocation.measured.empty() && !invocation.readings.empty())
    return invocation.readings.front().option +
           ": goes without --measured; put all readings into the file, or give all as options";
  if (invocation.measured == "-" && invocation.words.front() == "-")
    return "trial: the spec and the readings cannot both come from standard input";
  return {};
}

/// The words for a joint that there is none of.
std::string no_such_joint(const std::string& id, std::size_t joints) {
  return "--joint: \"" + id + "\" is no joint of it; " +
         (joints == 0 ? "it has none" : "it has J1 to " + joint_id(joints - 1));
}

/// Readings that were given as options, as a file of readings would hold them.
class OptionReadings {
 public:
  explicit OptionReadings(const JointDesign& design) : design_(design) {
    document_.kind = Value::Kind::object;
  }

  void add(const GivenReading& given) {
    const auto* option =
        std::find_if(kTrialOptions.begin(), kTrialOptions.end(),
                     [&](const TrialOption& each) { return each.option == given.option; });
    if (option == kTrialOptions.end()) return;
    Value reading;
    reading.kind = Value::Kind::text;
    reading.text = given.value;
    Value& part = member(document_, part_name(option->part), Value::Kind::object);
    member(part, option->key, Value::Kind::list).list.push_back(std::move(reading));
  }
  const Value& document() const { return document_; }

  /// The option that a problem at `path` is about; empty: several of them.
  std::string_view option_at(std::string_view path) const {
    for (const TrialOption& each : kTrialOptions) {
      const std::string whole = "/" + part_name(each.part) + "/" + std::string(each.key);
      if (path.starts_with(whole + "/")) return each.option;
    }
    return {};
  }

 private:
  std::string part_name(TrialPart part) const {
    switch (part) {
      case TrialPart::tenon_piece:
        return std::string(design_.tenon_role);
      case TrialPart::mortise_piece:
        return std::string(design_.mortise_role);
      case TrialPart::tenon:
        return "tenon";
      case TrialPart::mortise:
        return design_.stub ? "groove" : "mortise";
    }
    return {};
  }

  static Value& member(Value& object, std::string_view key, Value::Kind kind) {
    for (Entry& entry : object.entries)
      if (entry.key == key) return entry.value;
    Value value;
    value.kind = kind;
    object.entries.push_back({std::string(key), 0, std::move(value)});
    return object.entries.back().value;
  }

  const JointDesign& design_;
  Value document_;
};

/// One trial: reads the shop file, the spec and the readings, and writes what they come to.
class TrialRun {
 public:
  TrialRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        shops_(invocation, streams),
        complaints_(streams) {}

  ExitStatus run() {
    const std::string fault = usage_fault(invocation_);
    if (!fault.empty()) return complaints_.refuse(fault);
    if (!shops_.take(invocation_.words, complaints_) || !read_spec()) return complaints_.status();
    const auto number = joint_number();
    if (!number) return complaints_.refuse(no_such_joint(invocation_.joint, wood_.joints.size()));
    const auto design = trial_design(wood_, *number);
    if (!design)
      return complaints_.refuse("--joint: no trial is known for joint " + invocation_.joint);
    const auto readings =
        invocation_.measured.empty() ? readings_of_options(*design) : readings_of_file(*design);
    if (!readings) return complaints_.status();
    return report(report_trial(job_->id, wood_, *number, *design, *readings, job_->unit));
  }

 private:
  /// The one object of a file, called `what` in messages; nothing if that can't be had.
  std::optional<Record> read_one(const std::string& file, const std::string& what,
                                 bool may_be_listed, const SourceWays& ways = {}) {
    SingleObject single = read_single(file, what, may_be_listed, streams_.in, ways);
    for (const FileFault& fault : single.faults)
      complaints_.note(fault);
    complaints_.note(single.problems);
    return std::move(single.record);
  }

  bool read_spec() {
    auto record =
        read_one(invocation_.words.front(), "the spec of a trial", true, invocation_.ways);
    if (!record) return false;
    for (const OtherText& other : record->others)
      taken_.push_back(other.source);
    JobReading reading = read_item(*record, shops_);
    if (!complaints_.note(record->place(reading.problems)) || !reading.job) return false;
    ItemOutcome outcome = report_item(std::move(reading.job), {});
    if (!complaints_.note(record->place(outcome.problems)) || !outcome.report) return false;
    job_ = std::move(outcome.report->job);
    wood_ = std::move(outcome.report->wood);
    return true;
  }

  /// The fit that the spec or the shop file wants.
  std::optional<FitBand> band() const {
    if (!job_->tolerances) return {};
    return job_->tolerances->fit;
  }

  std::optional<std::size_t> joint_number() const {
    for (std::size_t i = 0; i < wood_.joints.size(); ++i)
      if (joint_id(i) == invocation_.joint) return i;
    return {};
  }

  std::optional<TrialReadings> readings_of_file(const TrialDesign& design) {
    auto record = read_one(invocation_.measured, "a file of readings", false);
    if (!record) return {};
    TrialReading reading = read_trial(*record->item, design, job_->unit, band());
    if (!complaints_.note(record->place(reading.problems))) return {};
    return std::move(reading.readings);
  }

  std::optional<TrialReadings> readings_of_options(const TrialDesign& design) {
    const auto* joint = std::get_if<JointDesign>(&design);
    if (joint == nullptr) {
      complaints_.refuse("joint " + invocation_.joint +
                         " is a panel's; its readings come in a file, with --measured");
      return {};
    }
    OptionReadings given(*joint);
    for (const GivenReading& each : invocation_.readings)
      given.add(each);
    TrialReading reading = read_trial(given.document(), design, job_->unit, band());
    for (const Problem& problem : reading.problems) {
      const std::string option(given.option_at(problem.path));
      complaints_.refuse((option.empty() ? "" : option + ": ") + problem.message);
    }
    return std::move(reading.readings);
  }

  std::vector<std::string> inputs() const {
    std::vector<std::string> files = shops_.files();
    files.insert(files.end(), {invocation_.words.front(), invocation_.measured});
    files.insert(files.end(), taken_.begin(), taken_.end());
    return files;
  }

  std::string text_of(const TrialReport& trial, Unit unit) const {
    const View& view = invocation_.view;
    if (view.format == Format::json) return trial_json(trial, unit, job_->unit);
    if (view.format == Format::csv) return trial_csv(trial, unit, job_->unit, view.csv);
    return trial_page(trial, job_->unit, LengthPrinter(unit, LengthStyle{0}));
  }

  ExitStatus report(const TrialReport& trial) {
    const Unit unit = invocation_.view.unit.value_or(job_->unit);
    write_result(text_of(trial, unit), invocation_, streams_, inputs(), complaints_);
    if (trial.fails()) complaints_.raise(kCheckFailed);
    return complaints_.status();
  }

  const Invocation& invocation_;
  const Streams& streams_;
  Shops shops_;
  std::vector<std::string> taken_;  // what else the spec's values come from
  std::unique_ptr<Job> job_;
  Assembly wood_;
  Complaints complaints_;
};

}  // namespace

ExitStatus run_trial(const Invocation& invocation, const Streams& streams) {
  return TrialRun(invocation, streams).run();
}

}  // namespace haunch
