// Where specs come from: files, folders and standard input, item by item.
#pragma once

#include <cstddef>
#include <deque>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document.h"
#include "file_fault.h"
#include "likes.h"
#include "run_links.h"

namespace haunch {

class Feed;
class OrderSheet;

/// A problem with its place, as messages and reports give it.
struct PlacedProblem {
  std::string source;  // the file as named, or "<stdin>"
  std::size_t line = 1;
  std::size_t column = 1;
  std::string path;  // in the whole document: of an element of a list with its index in front
  std::string message;

  friend bool operator==(const PlacedProblem&, const PlacedProblem&) = default;
};

/// The shop file of the specs beside it has this name, and is none of them.
inline constexpr std::string_view kShopFileName = "shop.json";

/// The text of one document, a whole file or one line of JSON Lines, and how much of it was
/// complained of.
struct SourceText {
  std::string text;
  std::size_t lines_before = 0;
  std::size_t reported = 0;
  std::size_t withheld = 0;
  std::size_t first_withheld = 0;  // its offset
  char separator = 0;              // of a sheet, whose places are rows and columns; else 0
  std::set<std::pair<std::uint32_t, std::string>> told_of_header;  // of a sheet: once for all rows
};

/// A key that is set in every spec, or left out.
struct SetKey {
  std::vector<std::string> steps;
  std::optional<Value> value;  // none: it is left out
  std::uint32_t offset = 0;    // of the key
};

/// Keys that are set, and the text that says so: of `--with` one a line.
struct SetKeys {
  std::vector<SetKey> keys;
  std::shared_ptr<const std::string> text;
  std::string source = "--with";
};

/// How what is read is to be taken.
struct SourceWays {
  bool specs = false;              // "like" is followed, and keys are set
  bool sheets = false;             // all is read as sheets, whatever its name
  bool runs = false;               // runs get the items that they name, wherever those stand
  std::vector<SetKeys> with = {};  // in this order, later ones over earlier ones
};

/// One item as it was found. It may outlive its source.
struct Record {
  std::string source;
  std::string default_id;     // for an item that has no id of its own
  std::optional<Value> item;  // absent when the text gives none
  /// Its text has problems: there may be an item to search for more of them, but it is not worked.
  bool spoilt = false;
  std::vector<Problem> text_problems;  // of its text, until they are placed
  /// The source could not be read, or no further. Nothing else but `source` is set then.
  std::optional<FileFault> fault;
  /// Of a run, the items that it names, where that was looked for.
  std::shared_ptr<const NamedItems> named;
  bool taken = false;  // by a run, which tells of it

  /// Places what is wrong with its text, and what reading or working the item found. Of one
  /// document no more than kMaxProblems are given out, so that its records are to be placed in
  /// their order; behind those of the last comes the number of the rest.
  std::vector<PlacedProblem> place(const std::vector<Problem>& found);

  /// "side-door.json:6:30": where what lies at an offset was written, in the text of the item or in
  /// one that it took values from.
  std::string place_text(std::size_t offset) const;

  std::shared_ptr<SourceText> text;
  std::vector<OtherText> others;     // what else its values come from
  bool ends_text = true;             // nothing of the same document follows
  std::optional<std::size_t> index;  // in the list that is its document

 private:
  void place(std::vector<PlacedProblem>& placed, const Problem& problem, const std::string& whose);
  PlacedProblem placed_at(std::uint32_t offset, const Problem& problem) const;
};

/// The items of all specs named on a command line, one after the other, in the order given.
///
/// A file holds one item, a list of items, or one item a line (JSON Lines). Lines are cut before
/// any of them is read, so that a broken one leaves its neighbours alone, and no more than one is
/// held at a time; but where runs are wanted and some file may hold one, all are.
class SpecSource {
 public:
  /// `arguments`: files, folders (all their *.json but shop.json and hidden ones, in byte-wise
  /// order of names, folders within left out), or "-" for the descriptor `standard_input`.
  SpecSource(std::vector<std::string> arguments, int standard_input, SourceWays ways = {});
  ~SpecSource();

  /// What cannot be read at all. To be called once, before next().
  std::vector<FileFault> check();

  /// The files found by check(), "-" among them if it was named.
  const std::vector<std::string>& files() const { return files_; }
  /// Other specs that items were like, up to now.
  std::vector<std::string> files_taken() const { return likes_.files(); }

  /// The next item, or nothing after the last.
  std::optional<Record> next();

 private:
  bool may_hold_runs();
  bool may_be_piped_in();
  std::optional<Record> read_next();
  void add_folder(const std::string& folder, std::vector<FileFault>& faults);
  std::optional<FileFault> fault_of(const std::string& file) const;
  std::optional<Record> open(const std::string& file);
  std::optional<Record> read_document(Feed& feed);
  std::optional<Record> next_line();
  Record next_element();
  Record overlong_line();
  Record read_line(std::string_view line);
  Record start_record(std::string text);
  void take(Record& record, std::optional<Value> item, std::vector<Problem> problems);
  void settle(Record& record);
  std::optional<Record> open_sheet(Feed& feed);
  std::optional<Record> next_row();
  Record fault_record(const std::string& what, int error) const;
  std::string numbered_id() { return stem_ + "-" + std::to_string(++items_); }

  std::vector<std::string> arguments_;
  int standard_input_;
  SourceWays ways_;
  Likes likes_;
  std::vector<std::string> files_;
  std::size_t next_file_ = 0;
  bool begun_ = false;
  bool holds_ = false;  // all records, from the first on
  std::deque<Record> held_;
  std::unique_ptr<Feed> piped_;  // standard input, of which some was read before its turn

  // The file at hand.
  std::string source_;
  std::string stem_;
  std::unique_ptr<Feed> lines_;  // while its lines are read
  std::size_t lines_taken_ = 0;
  std::size_t items_ = 0;             // of a list or of lines, given out so far
  std::shared_ptr<SourceText> text_;  // the document given out last

  std::unique_ptr<OrderSheet> sheet_;  // while its rows are given out
  std::optional<Record> row_;          // the one to be given out next

  // Elements of a list not given out yet.
  std::vector<Value> elements_;
  std::vector<Problem> element_problems_;
  std::size_t next_element_ = 0;
  std::size_t next_problem_ = 0;
};

/// Whether a file that begins with `head` (all of it, if `complete`) holds one item a line;
/// nothing: more of it must be seen. It does if its first line that is not blank is one whole
/// object and another follows; or if that line is a broken object, the second is a whole one, and
/// the third, if any, begins one.
std::optional<bool> holds_lines(std::string_view head, bool complete);

}  // namespace haunch
