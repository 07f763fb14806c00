#include <string>
#include <vector>

#include "commands.h"
#include "complaints.h"
#include "explain.h"
#include "explain_csv.h"
#include "explain_json.h"
#include "explain_page.h"
#include "item_reading.h"
#include "shops.h"
#include "spec_source.h"

namespace haunch {
namespace {

std::string usage_fault(const Invocation& invocation) {
  if (invocation.words.empty())
    return "explain: no spec is named; give a file, or - for standard input";
  if (invocation.words.size() > 2)
    return "explain: takes one spec and what of it to explain; \"" + invocation.words[2] +
           "\" is one too many";
  return {};
}

/// All items of one spec, one after the other.
class ExplainRun {
 public:
  ExplainRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        source_({invocation.words.front()}, streams.in, invocation.ways),
        what_(invocation.words.size() > 1 ? invocation.words[1] : ""),
        shops_(invocation, streams),
        complaints_(streams) {}

  ExitStatus run() {
    if (!complaints_.can_read(source_) || !shops_.take(source_.files(), complaints_))
      return complaints_.status();
    while (auto record = source_.next()) {
      if (record->fault)
        complaints_.note(*record->fault);
      else
        explain_item(*record);
    }
    if (text_.empty()) return complaints_.status();
    if (invocation_.view.format == Format::json) text_ += kExplainJsonEnd;
    write_result(text_, invocation_, streams_, files_read(source_, shops_), complaints_);
    return complaints_.status();
  }

 private:
  void explain_item(Record& record) {
    std::vector<Problem> problems;
    if (record.item && !record.spoilt) {
      const std::optional<OtherItems> others = others_of(record, shops_);
      ExplainOutcome outcome =
          explain(record, shops_.of(record.source), others ? &*others : nullptr);
      problems = std::move(outcome.problems);
      if (outcome.explanation) add(*outcome.explanation);
    }
    complaints_.note(record.place(problems));
  }

  void add(const Explanation& explanation) {
    if (!what_.empty() && meant_by(explanation, what_).empty()) {
      const std::string nearest = nearest_to(explanation, what_);
      complaints_.refuse("explain: " + explanation.id + " has nothing called \"" + what_ + "\"; " +
                         (nearest.empty() ? "leave it out to see all that is stated"
                                          : "did you mean " + nearest + "?"));
      return;
    }
    const View& view = invocation_.view;
    const Unit unit = view.unit.value_or(explanation.unit);
    const bool first = text_.empty();
    if (view.format == Format::json) {
      if (first) text_ += explain_json_head();
      append_explanation_json(text_, explanation, what_, unit, first);
    } else if (view.format == Format::csv) {
      append_explanation_csv(text_, explanation, what_, unit, view.csv);
    } else {
      text_ += (first ? "" : "\n") + explain_page(explanation, what_, view);
    }
  }

  const Invocation& invocation_;
  const Streams& streams_;
  SpecSource source_;
  std::string what_;
  std::string text_;
  Shops shops_;
  Complaints complaints_;
};

}  // namespace

ExitStatus run_explain(const Invocation& invocation, const Streams& streams) {
  const std::string fault = usage_fault(invocation);
  if (!fault.empty()) return Complaints(streams).refuse(fault);
  return ExplainRun(invocation, streams).run();
}

}  // namespace haunch
