#include "spec_source.h"

#include <fcntl.h>
#include <fmt/core.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <utility>

#include "csv_fields.h"
#include "encoding.h"
#include "feed.h"
#include "file_place.h"
#include "json_reader.h"
#include "order_sheet.h"
#include "shown_text.h"
#include "spec_merge.h"

namespace haunch {
namespace {

constexpr std::string_view kBlanks = " \t\r\n";
constexpr std::size_t kEncodingBytes = 4;  // tell the encoding

std::string join(const std::string& folder, const std::string& name) {
  return folder.ends_with('/') ? folder + name : folder + '/' + name;
}

/// True when `text`, blanks around it aside, is one object from its first brace to its last,
/// whatever stands within.
bool is_whole_object(std::string_view text) {
  const std::size_t last = text.find_last_not_of(kBlanks);
  std::size_t at = after_blanks(text, 0);
  if (at == text.size() || text[at] != '{') return false;
  std::size_t depth = 0;
  for (bool quoted = false; at <= last; ++at) {
    const char c = text[at];
    if (quoted && c == '\\') ++at;
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == '{' || c == '[') ++depth;
    if (c == '}' || c == ']') --depth;
    if (depth == 0) break;
  }
  return at == last;
}

/// The first line of `text` from `at` on that is not blank.
struct Line {
  std::string_view text;
  std::size_t end = 0;  // past its newline
  bool whole = false;   // it has a newline
};
std::optional<Line> line_from(std::string_view text, std::size_t at) {
  const std::size_t start = after_blanks(text, at);
  if (start == text.size()) return std::nullopt;
  const std::size_t newline = text.find('\n', start);
  if (newline == std::string_view::npos) return Line{text.substr(start), text.size(), false};
  return Line{text.substr(start, newline - start), newline + 1, true};
}

bool named_as_lines(const std::string& file) {
  return file.ends_with(".jsonl") || file.ends_with(".ndjson");
}

bool named_as_sheet(const std::string& file) {
  return file.ends_with(".csv") || file.ends_with(".CSV") || file.ends_with(".tsv");
}

/// Whether more of a document is worth waiting for: it is not too long yet, nor are its blanks.
bool may_go_on(const Feed& feed) {
  const std::string_view text = feed.waiting();
  const std::size_t written = text.find_last_not_of(kBlanks) + 1;  // 0 where nothing is
  return text.size() <= kMaxDocumentBytes && text.size() - written <= kMaxBlanks;
}

/// Fills `feed` until it is plain what its file holds, or that it is too long for a document.
bool find_lines(Feed& feed) {
  std::size_t wanted =
      1;  // doubled, so that a long first line is not searched from its start for every piece
  while (may_go_on(feed)) {
    while (feed.waiting().size() < wanted && may_go_on(feed) && feed.fill()) {
    }
    if (foreign_problem(feed.waiting())) return false;
    if (const auto lines = holds_lines(feed.waiting(), feed.ended())) return *lines;
    wanted = std::min(2 * feed.waiting().size(), kMaxDocumentBytes + 1);
  }
  return false;
}

/// The closing word on a document with more problems than were given out.
PlacedProblem rest_of_problems(const std::string& source, SourceText& text) {
  const TextPlace place = place_in(text.text, text.first_withheld);
  return {source, text.lines_before + place.line, place.column, "",
          fmt::format("and {} more", std::exchange(text.withheld, 0))};
}

/// Whether a file that can be read again has some text in it.
bool has_text(const std::string& file, std::string_view text) {
  std::error_code unknown;
  if (!std::filesystem::is_regular_file(file, unknown)) return false;
  const int descriptor = ::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NOCTTY);
  if (descriptor < 0) return false;  // which is told of in its turn
  Feed feed(descriptor, true);
  while (feed.fill()) {
    if (feed.waiting().find(text) != std::string_view::npos) return true;
    feed.take(feed.waiting().size() - std::min(feed.waiting().size(), text.size() - 1));
  }
  return false;
}

/// Sets keys in an item whose own text goes up to `end`.
void set_keys(Record& record, const SetKeys& set, std::uint32_t end) {
  std::uint32_t start = end;
  if (!record.others.empty()) {
    const OtherText& last = record.others.back();
    start = last.start + static_cast<std::uint32_t>(last.text->size()) + 1;
  }
  record.others.push_back({set.source, set.text, start});
  for (const SetKey& each : set.keys) {
    if (!each.value) {
      drop_key(*record.item, each.steps);
      continue;
    }
    Value value = *each.value;
    shift(value, start);
    set_key(*record.item, each.steps, start + each.offset, std::move(value));
  }
}

}  // namespace

std::optional<bool> holds_lines(std::string_view head, bool complete) {
  const std::optional<bool> unless_more = complete ? std::optional(false) : std::nullopt;
  const auto first = line_from(head, start_of(head));
  if (!first) return unless_more;
  if (first->text[0] != '{') return false;
  if (!first->whole) return unless_more;
  const auto second = line_from(head, first->end);
  if (!second) return unless_more;
  if (is_whole_object(first->text)) return true;
  if (!second->whole && !complete) return std::nullopt;
  if (!is_whole_object(second->text)) return false;
  const auto third = line_from(head, second->end);
  if (third) return third->text[0] == '{';
  return complete ? std::optional(true) : std::nullopt;
}

void Record::place(std::vector<PlacedProblem>& placed, const Problem& problem,
                   const std::string& whose) {
  const std::size_t offset = problem.offset ? *problem.offset
                             : item         ? offset_of(*item, problem.path)
                                            : 0;
  if (text->reported == kMaxProblems) {
    if (text->withheld++ == 0) text->first_withheld = offset;
    return;
  }
  PlacedProblem at = placed_at(static_cast<std::uint32_t>(offset), problem);
  at.path = whose + problem.path;
  const bool of_header = text->separator != 0 && at.line == 1;
  if (of_header && !text->told_of_header.emplace(offset, at.message).second) return;
  ++text->reported;
  placed.push_back(std::move(at));
}

/// Where a problem stands: in the text of the item, or in one that it took values from.
PlacedProblem Record::placed_at(std::uint32_t offset, const Problem& problem) const {
  const auto other = std::find_if(others.rbegin(), others.rend(),
                                  [&](const OtherText& each) { return each.start <= offset; });
  if (other != others.rend()) {
    const TextPlace place = place_in(*other->text, offset - other->start);
    return {other->source, place.line, place.column, "", problem.message};
  }
  if (text->separator == 0) {
    const TextPlace place = place_in(text->text, offset);
    return {source, text->lines_before + place.line, place.column, "", problem.message};
  }
  const CsvCell cell = cell_at(text->text, offset, text->separator);
  const std::string row = std::to_string(cell.row);
  const std::string_view step = std::string_view(problem.path).substr(problem.path.empty() ? 0 : 1);
  const bool of_row =
      !problem.offset && item && item->find(step.substr(0, step.find('/'))) == nullptr;
  return {source, cell.row, cell.column, "",
          problem.message +
              (of_row ? " (row " + row : " (cell " + column_letters(cell.column - 1) + row) + ")"};
}

std::string Record::place_text(std::size_t offset) const {
  const PlacedProblem at = placed_at(static_cast<std::uint32_t>(offset), {});
  return at.source + ":" + std::to_string(at.line) + ":" + std::to_string(at.column);
}

std::vector<PlacedProblem> Record::place(const std::vector<Problem>& found) {
  std::vector<PlacedProblem> placed;
  for (const Problem& problem : std::exchange(text_problems, {}))
    place(placed, problem, "");  // their paths begin with the index already
  for (const Problem& problem : found)
    place(placed, problem, index ? child_path("", *index) : "");
  if (ends_text && text->withheld > 0) placed.push_back(rest_of_problems(source, *text));
  return placed;
}

SpecSource::SpecSource(std::vector<std::string> arguments, int standard_input, SourceWays ways)
    : arguments_(std::move(arguments)), standard_input_(standard_input), ways_(std::move(ways)) {}

SpecSource::~SpecSource() = default;

std::vector<FileFault> SpecSource::check() {
  std::vector<FileFault> faults;
  for (const std::string& argument : arguments_) {
    if (argument != "-" && is_folder(argument)) {
      add_folder(argument, faults);
    } else if (argument == "-" && std::find(files_.begin(), files_.end(), "-") != files_.end()) {
      faults.push_back({"<stdin>", "is named twice, but can be read only once"});
    } else {
      files_.push_back(argument);
    }
  }
  for (const std::string& file : files_)
    if (auto fault = fault_of(file)) faults.push_back(std::move(*fault));
  return faults;
}

void SpecSource::add_folder(const std::string& folder, std::vector<FileFault>& faults) {
  std::error_code error;
  std::vector<std::string> names;
  bool has_shop_file = false;
  for (std::filesystem::directory_iterator entry(folder, error), end; !error && entry != end;
       entry.increment(error)) {
    const std::string name = entry->path().filename();
    std::error_code unknown;  // a link that leads nowhere is a file to complain of
    if (name == kShopFileName) has_shop_file = true;
    if (name.ends_with(".json") && name != kShopFileName && !name.starts_with('.') &&
        (entry->is_regular_file(unknown) || !entry->exists(unknown)))
      names.push_back(name);
  }
  if (error) {
    faults.push_back(system_fault(folder, "cannot be read", error.value()));
  } else if (names.empty()) {
    faults.push_back(
        {folder, has_shop_file ? "holds no *.json file but a shop file" : "holds no *.json file"});
  }
  std::sort(names.begin(), names.end());
  for (const std::string& name : names)
    files_.push_back(join(folder, name));
}

std::optional<FileFault> SpecSource::fault_of(const std::string& file) const {
  const bool standard = file == "-";
  const std::string name = standard ? "<stdin>" : file;
  struct stat status {};
  if ((standard ? ::fstat(standard_input_, &status) : ::stat(file.c_str(), &status)) != 0)
    return system_fault(name, "cannot be opened", errno);
  if (S_ISDIR(status.st_mode)) return FileFault{name, "is a folder"};
  if (standard) return std::nullopt;
  if (S_ISSOCK(status.st_mode) || S_ISBLK(status.st_mode))
    return FileFault{name, "is neither a file nor a folder"};
  if (::access(file.c_str(), R_OK) != 0) return system_fault(name, "cannot be opened", errno);
  return std::nullopt;
}

std::optional<Record> SpecSource::next() {
  if (!begun_) {
    begun_ = true;
    holds_ = ways_.runs && may_hold_runs();
    while (holds_) {
      auto record = read_next();
      if (!record) break;
      held_.push_back(std::move(*record));
    }
    link_runs(held_);
  }
  if (!holds_) return read_next();
  if (held_.empty()) return std::nullopt;
  Record record = std::move(held_.front());
  held_.pop_front();
  return record;
}

/// A run says its kind itself, so that bytes are enough to know where there can be none.
bool SpecSource::may_hold_runs() {
  return std::any_of(files_.begin(), files_.end(), [this](const std::string& file) {
    return file == "-" ? may_be_piped_in() : has_text(file, kRunInQuotes);
  });
}

/// Of what is typed in nothing is held.
bool SpecSource::may_be_piped_in() {
  if (::isatty(standard_input_) != 0) return false;
  piped_ = std::make_unique<Feed>(standard_input_, false);
  while (piped_->waiting().size() <= kHeldForRuns && piped_->fill()) {
  }
  return piped_->ended() && piped_->waiting().find(kRunInQuotes) != std::string_view::npos;
}

std::optional<Record> SpecSource::read_next() {
  while (true) {
    if (next_element_ < elements_.size()) return next_element();
    if (row_) return next_row();
    if (!lines_ && next_file_ == files_.size()) return std::nullopt;
    std::optional<Record> record = lines_ ? next_line() : open(files_[next_file_++]);
    if (record) return record;
  }
}

/// Opens a file and gives its one item; nothing if it holds lines or a list of items, which follow.
std::optional<Record> SpecSource::open(const std::string& file) {
  const bool standard = file == "-";
  source_ = standard ? "<stdin>" : file;
  stem_ =
      standard ? "item" : shown_text(std::filesystem::path(file).stem().string(), Newlines::shown);
  items_ = 0;
  lines_taken_ = 0;
  text_.reset();
  elements_.clear();
  next_element_ = 0;
  const int descriptor =
      standard ? standard_input_ : ::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NOCTTY);
  if (descriptor < 0) return fault_record("cannot be opened", errno);
  auto feed =
      standard && piped_ ? std::move(piped_) : std::make_unique<Feed>(descriptor, !standard);
  while (feed->waiting().size() < kEncodingBytes && feed->fill()) {
  }
  if (ways_.specs && (ways_.sheets || named_as_sheet(file))) return open_sheet(*feed);
  const bool foreign = foreign_problem(feed->waiting()).has_value();
  if (foreign || !(named_as_lines(file) || find_lines(*feed))) return read_document(*feed);
  lines_ = std::move(feed);
  return std::nullopt;
}

std::optional<Record> SpecSource::read_document(Feed& feed) {
  while (may_go_on(feed) && feed.fill()) {
  }
  if (feed.error() != 0) return fault_record("cannot be read", feed.error());
  Record record = start_record(feed.take_all());
  record.default_id = stem_;
  Reading reading = read_json(text_->text);
  if (reading.value && reading.value->kind == Value::Kind::list) {
    elements_ = std::move(reading.value->list);
    element_problems_ = std::move(reading.problems);
    next_problem_ = 0;
    if (!elements_.empty()) return std::nullopt;
    record.text_problems = {
        {"", "an empty list; at least one item is needed", reading.value->offset}};
    return record;
  }
  take(record, std::move(reading.value), std::move(reading.problems));
  return record;
}

/// Reads a sheet whole and gives what is wrong with it; nothing if it has rows, which follow.
std::optional<Record> SpecSource::open_sheet(Feed& feed) {
  while (feed.waiting().size() <= kMaxDocumentBytes && feed.fill()) {
  }
  if (feed.error() != 0) return fault_record("cannot be read", feed.error());
  Record record = start_record(feed.take_all());
  record.default_id = stem_;
  sheet_ = std::make_unique<OrderSheet>(text_->text);
  text_->separator = sheet_->separator();
  std::vector<Problem> problems = sheet_->take_problems();
  const bool readable = problems.empty();
  if (readable) next_row();
  if (row_) return std::nullopt;
  if (readable) problems.push_back({"", "no row follows the first, which names the keys", 0});
  take(record, {}, std::move(problems));
  return record;
}

/// Gives the row at hand, and has the next one ready: whether there is one is told with each.
std::optional<Record> SpecSource::next_row() {
  std::optional<Record> given = std::exchange(row_, std::nullopt);
  if (auto row = sheet_->next()) {
    row_.emplace();
    row_->source = source_;
    row_->text = text_;
    row_->default_id = numbered_id();
    row_->ends_text = false;
    take(*row_, std::move(row->item), std::move(row->problems));
  } else if (given) {
    given->ends_text = true;
  }
  return given;
}

Record SpecSource::next_element() {
  Record record;
  record.source = source_;
  record.text = text_;
  record.default_id = numbered_id();
  const std::size_t index = next_element_++;
  record.index = index;
  std::vector<Problem> own;
  const bool last = next_element_ == elements_.size();
  while (next_problem_ < element_problems_.size() &&
         (last || *element_problems_[next_problem_].offset < elements_[next_element_].offset))
    own.push_back(std::move(element_problems_[next_problem_++]));
  take(record, std::move(elements_[index]), std::move(own));
  record.ends_text = last;
  return record;
}

std::optional<Record> SpecSource::next_line() {
  std::size_t searched = 0;
  std::size_t newline = lines_->waiting().find('\n');
  while (newline == std::string_view::npos) {
    searched = lines_->waiting().size();
    if (searched > kMaxDocumentBytes) return overlong_line();
    if (!lines_->fill()) break;
    newline = lines_->waiting().find('\n', searched);
  }
  if (lines_->error() != 0) {
    const int error = lines_->error();
    lines_.reset();
    return fault_record("cannot be read", error);
  }
  const std::string_view line = lines_->waiting().substr(0, newline);
  const bool last = newline == std::string_view::npos;
  std::optional<Record> record;
  if (after_blanks(line, start_of(line)) < line.size() || (last && items_ == 0))
    record = read_line(line);
  ++lines_taken_;
  lines_->take(last ? line.size() : line.size() + 1);
  if (last) lines_.reset();
  return record;
}

Record SpecSource::read_line(std::string_view line) {
  Record record = start_record(std::string(line));
  record.default_id = numbered_id();
  Reading reading = read_json(text_->text);
  take(record, std::move(reading.value), std::move(reading.problems));
  return record;
}

/// A line too long to be held: what is wrong with it, the rest of it passed over.
Record SpecSource::overlong_line() {
  Record record = start_record("");
  record.default_id = numbered_id();
  record.text_problems = {
      {"", fmt::format("more than {} MiB in one line", kMaxDocumentBytes >> 20), 0}};
  std::size_t newline = std::string_view::npos;
  do {
    lines_->take(lines_->waiting().size());
    if (!lines_->fill()) return record;
    newline = lines_->waiting().find('\n');
  } while (newline == std::string_view::npos);
  lines_->take(newline + 1);
  ++lines_taken_;
  return record;
}

void SpecSource::take(Record& record, std::optional<Value> item, std::vector<Problem> problems) {
  record.item = std::move(item);
  record.spoilt = !problems.empty();
  record.text_problems = std::move(problems);
  if (ways_.specs && record.item && record.item->kind == Value::Kind::object) settle(record);
}

/// What the item is like comes under it, and what the command line sets over it.
void SpecSource::settle(Record& record) {
  Value& item = *record.item;
  const auto end = static_cast<std::uint32_t>(record.text->text.size()) + 1;
  const bool is_row = record.text->separator != 0;
  std::vector<Problem> problems =
      likes_.take(item, record.source, end, is_row ? Lists::by_place : Lists::whole, record.others);
  if (is_row && problems.empty()) problems = gaps_in(item);
  for (const SetKeys& set : ways_.with)
    set_keys(record, set, end);
  if (!ways_.with.empty() && problems.empty()) problems = gaps_in(item);
  const bool is_whole = problems.empty();
  record.spoilt = record.spoilt || !is_whole;
  for (Problem& problem : problems) {
    problem.offset = offset_of(item, problem.path);
    if (record.index) problem.path = child_path("", *record.index) + problem.path;
  }
  if (!is_whole) record.item.reset();  // what is wrong with it besides may come of that
  add(record.text_problems, std::move(problems));
}

Record SpecSource::start_record(std::string text) {
  text_ = std::make_shared<SourceText>();
  text_->text = std::move(text);
  text_->lines_before = lines_taken_;
  Record record;
  record.source = source_;
  record.text = text_;
  return record;
}

Record SpecSource::fault_record(const std::string& what, int error) const {
  Record record;
  record.source = source_;
  record.fault = system_fault(source_, what, error);
  return record;
}

}  // namespace haunch
