#include "stock_source.h"

#include <fcntl.h>

#include <cerrno>
#include <memory>
#include <utility>

#include "feed.h"
#include "file_place.h"
#include "json_reader.h"
#include "single_file.h"

namespace haunch {
namespace {

std::optional<std::string> table_bytes(const std::string& file, const std::string& what,
                                       Complaints& complaints) {
  if (is_folder(file)) {
    complaints.note(FileFault{file, "is a folder; " + what + " is wanted"});
    return {};
  }
  const int descriptor = ::open(file.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor < 0) {
    complaints.note(system_fault(file, "cannot be opened", errno));
    return {};
  }
  Feed feed(descriptor, true);
  while (feed.waiting().size() <= kMaxDocumentBytes && feed.fill()) {
  }
  if (feed.error() != 0) {
    complaints.note(system_fault(file, "cannot be read", feed.error()));
    return {};
  }
  std::string text = feed.take_all();
  if (text.size() <= kMaxDocumentBytes) return text;
  complaints.note({{file, 1, 1, "", "is over 64 MiB; " + what + " is shorter"}});
  return {};
}

/// What was read, unless there is anything wrong with it.
std::optional<ReadStock> accepted(std::optional<Record> record, StockReading reading,
                                  Complaints& complaints) {
  if (!complaints.note(record->place(reading.problems)) || !reading.file) return {};
  return ReadStock{std::move(*reading.file), std::move(*record)};
}

}  // namespace

std::optional<Record> read_table(const std::string& file, const std::string& what,
                                 Complaints& complaints) {
  auto text = table_bytes(file, what, complaints);
  if (!text) return {};
  Record record;
  record.source = file;
  record.text = std::make_shared<SourceText>();
  record.text->text = std::move(*text);
  return record;
}

std::optional<ReadStock> read_stock_file(const std::string& file, int standard_input,
                                         Complaints& complaints) {
  if (file.ends_with(".csv")) {
    std::optional<Record> record = read_table(file, "a stock file", complaints);
    if (!record) return {};
    StockReading reading = read_stock_csv(record->text->text);
    return accepted(std::move(record), std::move(reading), complaints);
  }
  SingleObject single = read_single(file, "a stock file", false, standard_input);
  for (const FileFault& fault : single.faults)
    complaints.note(fault);
  if (!complaints.note(single.problems) || !single.record) return {};
  StockReading reading = read_stock(*single.record->item);
  return accepted(std::move(single.record), std::move(reading), complaints);
}

}  // namespace haunch
