#include <string>
#include <utility>
#include <vector>

#include "commands.h"
#include "complaints.h"
#include "item_reading.h"
#include "kind.h"
#include "order_sheet.h"
#include "shops.h"
#include "spec_merge.h"
#include "spec_source.h"
#include "spec_text.h"

namespace haunch {
namespace {

/// Writes specs out, each with what it is like and with what the command line sets, one a line or
/// as a sheet. What cannot be read is told, and left out.
class SpecsRun {
 public:
  SpecsRun(const Invocation& invocation, const Streams& streams)
      : invocation_(invocation),
        streams_(streams),
        source_(invocation.words, streams.in, invocation.ways),
        shops_(invocation, streams),
        complaints_(streams) {}

  ExitStatus run() {
    if (!complaints_.can_read(source_) || !shops_.take(source_.files(), complaints_))
      return complaints_.status();
    OutputFile file(invocation_.output, streams_.out, inputs());
    while (auto record = source_.next()) {
      if (record->fault) {
        complaints_.note(*record->fault);
        break;
      }
      take(*record, file);
    }
    if (complaints_.status() >= kFileFault) return complaints_.status();
    file.spare(inputs());
    if (is_sheet()) file.append(sheet_of(items_, invocation_.view.csv), Content::data);
    if (worked_ > 0 || !file.is_named()) file.finish();
    complaints_.note(file);
    return complaints_.status();
  }

 private:
  bool is_sheet() const { return invocation_.view.format == Format::csv; }

  void take(Record& record, OutputFile& file) {
    JobReading reading;
    if (record.item) reading = read_item(record, shops_);
    complaints_.note(record.place(reading.problems));
    if (record.spoilt || !reading.job || !reading.problems.empty()) return;
    ++worked_;
    Value item = std::move(*record.item);
    name(item, reading.job->id);
    if (is_sheet())
      items_.push_back(std::move(item));
    else
      file.append(spec_line(item) + "\n");
  }

  /// Under the name that it has where it stands, wherever it goes.
  static void name(Value& item, const std::string& id) {
    if (item.find("id") != nullptr) return;
    Value value;
    value.kind = Value::Kind::text;
    value.text = id;
    item.entries.insert(item.entries.begin(), {"id", 0, std::move(value)});
  }

  std::vector<FileIdentity> inputs() const {
    return identities_of(files_read(source_, shops_), streams_);
  }

  const Invocation& invocation_;
  const Streams& streams_;
  SpecSource source_;
  Shops shops_;
  std::vector<Value> items_;  // of a sheet
  std::size_t worked_ = 0;
  Complaints complaints_;
};

}  // namespace

ExitStatus run_specs(const Invocation& invocation, const Streams& streams) {
  if (invocation.words.empty())
    return Complaints(streams).refuse(
        "specs: no spec is named; give a file, a folder, or - for standard input");
  return SpecsRun(invocation, streams).run();
}

}  // namespace haunch
