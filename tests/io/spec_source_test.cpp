#include "spec_source.h"

#include <fcntl.h>
#include <sys/socket.h>
#include <sys/stat.h>
#include <sys/un.h>
#include <unistd.h>

#include <string>
#include <thread>
#include <vector>

#include "catch.h"
#include "temporary_folder.h"

using haunch::FileFault;
using haunch::holds_lines;
using haunch::PlacedProblem;
using haunch::Problem;
using haunch::Record;
using haunch::SpecSource;

namespace {

using Lines = std::vector<std::string>;

/// Standard input for a test: a pipe into which another thread writes `text`.
class Piped {
 public:
  explicit Piped(std::string text) {
    REQUIRE(::pipe(ends_) == 0);
    writer_ = std::thread([end = ends_[1], text = std::move(text)] {
      std::size_t done = 0;
      while (done < text.size()) {
        const ssize_t written = ::write(end, text.data() + done, text.size() - done);
        if (written <= 0) break;
        done += static_cast<std::size_t>(written);
      }
      ::close(end);
    });
  }
  ~Piped() {
    writer_.join();
    ::close(ends_[0]);
  }
  Piped(const Piped&) = delete;
  Piped& operator=(const Piped&) = delete;
  int descriptor() const { return ends_[0]; }

 private:
  int ends_[2] = {-1, -1};
  std::thread writer_;
};

std::string line_of(const PlacedProblem& problem) {
  return problem.source + ":" + std::to_string(problem.line) + ":" +
         std::to_string(problem.column) + ": " + problem.path + ": " + problem.message;
}

/// What a record holds, in words: its id and item, its problems, its fault.
Lines described(Record record) {
  Lines lines;
  if (record.item) {
    const haunch::Value* width = record.item->find("w");
    lines.push_back(record.default_id + " " + (width != nullptr ? width->text : "?"));
  }
  if (record.text)
    for (const PlacedProblem& problem : record.place({}))
      lines.push_back(line_of(problem));
  if (record.fault) lines.push_back(record.fault->file + " " + record.fault->words);
  return lines;
}

Lines all(SpecSource& source) {
  CHECK(source.check().empty());
  Lines lines;
  while (auto record = source.next())
    for (const std::string& line : described(*record))
      lines.push_back(line);
  return lines;
}

Lines all_of(std::vector<std::string> arguments) {
  SpecSource source(std::move(arguments), -1);
  return all(source);
}

Lines all_of_stdin(const std::string& text) {
  const Piped input(text);
  SpecSource source({"-"}, input.descriptor());
  return all(source);
}

Lines faults_of(std::vector<std::string> arguments, int standard_input = -1) {
  Lines lines;
  for (const FileFault& fault : SpecSource(std::move(arguments), standard_input).check())
    lines.push_back(fault.file + " " + fault.words);
  return lines;
}

std::string many(int count, const std::string& between) {
  std::string text;
  for (int i = 1; i <= count; ++i)
    text += (i == 1 ? "" : between) + "{\"w\": " + std::to_string(i) + "}";
  return text;
}

}  // namespace

TEST_CASE("a file with one item gives it, called after the file", "[spec_source]") {
  const TemporaryFolder folder;
  CHECK(all_of({folder.write("side-door.json", "{\n  \"w\": 930\n}\n")}) == Lines{"side-door 930"});
  CHECK(all_of({folder.write("oven.door", "{\"w\": 930}")}) == Lines{"oven 930"});
}

TEST_CASE("a list gives its items one by one, numbered from 1", "[spec_source]") {
  const TemporaryFolder folder;
  CHECK(all_of({folder.write("week.json", "[" + many(3, ",\n") + "]")}) ==
        Lines{"week-1 1", "week-2 2", "week-3 3"});
  CHECK(all_of({folder.write("one.json", "[{\"w\": 5}]")}) == Lines{"one-1 5"});
}

TEST_CASE("an empty list is told as such", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string file = folder.write("week.json", "\n [ ]");
  CHECK(all_of({file}) == Lines{file + ":2:2: : an empty list; at least one item is needed"});
}

TEST_CASE("one item a line is read by the file's name or its first lines", "[spec_source]") {
  const TemporaryFolder folder;
  CHECK(all_of({folder.write("week.jsonl", many(2, "\n"))}) == Lines{"week-1 1", "week-2 2"});
  CHECK(all_of({folder.write("week.ndjson", many(1, "\n"))}) == Lines{"week-1 1"});
  CHECK(all_of({folder.write("week.json", many(3, "\r\n\r\n") + "\r\n")}) ==
        Lines{"week-1 1", "week-2 2", "week-3 3"});
  CHECK(all_of({folder.write("bom.json", "\xEF\xBB\xBF" + many(2, "\n"))}) ==
        Lines{"bom-1 1", "bom-2 2"});
}

TEST_CASE("standard input is read like a file and its items are called item", "[spec_source]") {
  CHECK(all_of_stdin("{\"w\": 1}") == Lines{"item 1"});
  CHECK(all_of_stdin("[" + many(2, ",") + "]") == Lines{"item-1 1", "item-2 2"});
  CHECK(all_of_stdin(many(2, "\n") + "\n") == Lines{"item-1 1", "item-2 2"});
  CHECK(all_of_stdin("") == Lines{"<stdin>:1:1: : nothing stands here; a spec begins with '{'"});
}

TEST_CASE("a broken line is told and leaves its neighbours alone", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string file = folder.write(
      "week.jsonl", "{\"w\": 1}\n\n{\"w\": [}\n{\"w\": \"3\n{\"w\": 4}\n{\"w\": 5, \"w\": 6}");
  CHECK(all_of({file}) ==
        Lines{
            "week-1 1",
            file + ":3:8: /w: '}' stands here, but the '[' at column 7 is open; ']' would be right",
            file + ":4:7: /w: the text is not closed; '\"' is missing",
            "week-4 4",
            "week-5 5",
            file + ":6:10: /w: repeated key; it stands already at column 2",
        });
}

TEST_CASE("a broken first line does not make one document of the lines", "[spec_source]") {
  CHECK(
      all_of_stdin("{\"w\": [1}\n{\"w\": 2}\n{\"w\": 3}\n") ==
      Lines{"<stdin>:1:9: /w: '}' stands here, but the '[' at column 7 is open; ']' would be right",
            "item-2 2", "item-3 3"});
  CHECK(all_of_stdin("{\"w\": \"1}\n{\"w\": 2}") ==
        Lines{"<stdin>:1:7: /w: the text is not closed; '\"' is missing", "item-2 2"});
}

TEST_CASE("the first lines tell lines from one document", "[spec_source]") {
  using Answer = std::optional<bool>;
  const Answer more;
  struct Row {
    std::string head;
    Answer so_far;
    Answer complete;
  };
  const std::vector<Row> rows{
      {"", more, false},
      {" \n\n", more, false},
      {"[", false, false},
      {"x", false, false},
      {"{\"a\": 1}", more, false},
      {"{\"a\": 1}\n \n", more, false},
      {"{\"a\": 1}\n{", true, true},
      {"\xEF\xBB\xBF{\"a\": 1}\n{", true, true},
      {"{\"a\": \"}\\\"\"}\nx", true, true},
      {"{\"a\": 1} {\"a\": 2}\n{\"a\": 3} 4\n", false, false},
      {"{\n", more, false},
      {"{\n\"a\": 1\n}", false, false},
      {"{\"a\":\n{\"b\": 1}\n}", false, false},
      {"{\"a\":\n{\"b\": 1},\n\"c\": 1}", false, false},
      {"{\"a\":\n{\"b\": 1}", more, true},
      {"{\"a\":\n{\"b\": 1}\n", more, true},
      {"{\"a\":\n{\"b\": 1}\n{", true, true},
      {"{\"a\":\n{\"b\": 1", more, false},
  };
  for (const Row& row : rows) {
    CAPTURE(row.head);
    CHECK(holds_lines(row.head, false) == row.so_far);
    CHECK(holds_lines(row.head, true) == row.complete);
  }
}

TEST_CASE("a file without any item is told as such", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string file = folder.write("week.jsonl", "");
  CHECK(all_of({file}) == Lines{file + ":1:1: : nothing stands here; a spec begins with '{'"});
}

TEST_CASE("a file in UTF-16 is named as such, lines or not", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string text("\xFF\xFE{\0}\0\n\0{\0}\0", 12);
  const std::string lines = folder.write("week.jsonl", text);
  CHECK(all_of({lines}) == Lines{lines + ":1:1: : the text is UTF-16; save it as UTF-8"});
  CHECK(all_of_stdin(text) == Lines{"<stdin>:1:1: : the text is UTF-16; save it as UTF-8"});
}

TEST_CASE("a folder gives its *.json in byte-wise order of names", "[spec_source]") {
  const TemporaryFolder folder;
  for (const char* name : {"b.json", "a.json", "B.json", "\xC3\xA4.json", "a-1.json"})
    folder.write(name, "{\"w\": 1}");
  folder.write("notes.txt", "no spec");
  folder.write(".hidden.json", "no spec");
  folder.write("week.jsonl", "no spec");
  std::filesystem::create_directory(folder.path("older.json"));
  CHECK(all_of({folder.path()}) == Lines{"B 1", "a-1 1", "a 1", "b 1", "\xC3\xA4 1"});
}

TEST_CASE("files of a folder are named with it in front", "[spec_source]") {
  const TemporaryFolder folder;
  folder.write("a.json", "{}");
  SpecSource source({folder.path() + "/", folder.path()}, -1);
  CHECK(source.check().empty());
  CHECK(source.files() == Lines{folder.path("a.json"), folder.path("a.json")});
}

TEST_CASE("specs follow one another in the order given", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string b = folder.write("b.json", "{\"w\": 2}");
  const std::string a = folder.write("a.json", "[{\"w\": 1}]");
  const Piped input("{\"w\": 3}\n{\"w\": 4}\n");
  SpecSource source({b, "-", a}, input.descriptor());
  CHECK(all(source) == Lines{"b 2", "item-1 3", "item-2 4", "a-1 1"});
}

TEST_CASE("what cannot be read is told before anything is read", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string missing = folder.path("missing.json");
  CHECK(faults_of({missing}) == Lines{missing + " cannot be opened: No such file or directory"});
  CHECK(faults_of({folder.path()}) == Lines{folder.path() + " holds no *.json file"});
  const std::string file = folder.write("a.json", "{}");
  CHECK(faults_of({file + "/b.json"}) == Lines{file + "/b.json cannot be opened: Not a directory"});
  CHECK(faults_of({"-"}) == Lines{"<stdin> cannot be opened: Bad file descriptor"});
  CHECK(faults_of({file}).empty());
}

TEST_CASE("a link that leads nowhere is told, in a folder too", "[spec_source]") {
  const TemporaryFolder folder;
  std::filesystem::create_symlink("nowhere", folder.path("a.json"));
  CHECK(faults_of({folder.path()}) ==
        Lines{folder.path("a.json") + " cannot be opened: No such file or directory"});
}

TEST_CASE("a socket is neither file nor folder", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string path = folder.path("socket");
  sockaddr_un address{};
  address.sun_family = AF_UNIX;
  path.copy(address.sun_path, sizeof address.sun_path - 1);
  const int socket = ::socket(AF_UNIX, SOCK_STREAM, 0);
  REQUIRE(::bind(socket, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0);
  CHECK(faults_of({path}) == Lines{path + " is neither a file nor a folder"});
  ::close(socket);
}

TEST_CASE("standard input is read only once, and is no folder", "[spec_source]") {
  const TemporaryFolder folder;
  const int descriptor = ::open(folder.path().c_str(), O_RDONLY);
  CHECK(faults_of({"-"}, descriptor) == Lines{"<stdin> is a folder"});
  ::close(descriptor);
  const Piped input("{}");
  CHECK(faults_of({"-", "-"}, input.descriptor()) ==
        Lines{"<stdin> is named twice, but can be read only once"});
}

TEST_CASE("a file that fails in reading or has gone is a fault, and the next one is read",
          "[spec_source]") {
  const TemporaryFolder folder;
  const std::string gone = folder.write("gone.json", "{}");
  const std::string last = folder.write("last.json", "{\"w\": 7}");
  SpecSource source({"/proc/self/mem", gone, last}, -1);
  CHECK(source.check().empty());
  std::filesystem::remove(gone);
  Lines lines;
  while (auto record = source.next())
    for (const std::string& line : described(*record))
      lines.push_back(line);
  CHECK(lines == Lines{"/proc/self/mem cannot be read: Input/output error",
                       gone + " cannot be opened: No such file or directory", "last 7"});
}

TEST_CASE("a named pipe is read like a file", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string path = folder.path("pipe");
  REQUIRE(::mkfifo(path.c_str(), 0600) == 0);
  std::thread writer([&] { folder.write("pipe", many(2, "\n")); });
  CHECK(all_of({path}) == Lines{"pipe-1 1", "pipe-2 2"});
  writer.join();
}

TEST_CASE("what working an item found is placed in its file", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string file = folder.write("week.json", "[{\"w\": 1},\n {\"w\": {\"x\": 2}}]");
  SpecSource source({file}, -1);
  CHECK(source.check().empty());
  const auto first = source.next();
  auto second = source.next();
  REQUIRE(second);
  CHECK(second->place({{"/w/x", "too wide", {}}, {"", "no opening", {}}, {"/w", "odd key", 3}}) ==
        std::vector<PlacedProblem>{{file, 2, 14, "/1/w/x", "too wide"},
                                   {file, 2, 2, "/1", "no opening"},
                                   {file, 1, 4, "/1/w", "odd key"}});
}

TEST_CASE("what working a line found is placed on its line, even when the source has gone on",
          "[spec_source]") {
  const Piped input("{\"w\": 1}\n\n{\"w\":  2}\n{\"w\": 3}\n");
  SpecSource source({"-"}, input.descriptor());
  CHECK(source.check().empty());
  auto first = source.next();
  auto second = source.next();
  auto third = source.next();
  REQUIRE(third);
  CHECK_FALSE(source.next());
  CHECK(second->place({{"/w", "too wide", {}}}) ==
        std::vector<PlacedProblem>{{"<stdin>", 3, 8, "/w", "too wide"}});
  CHECK(first->place({{"/w", "too wide", {}}}) ==
        std::vector<PlacedProblem>{{"<stdin>", 1, 7, "/w", "too wide"}});
}

TEST_CASE("a repeated key spoils its own item of a list only", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string file =
      folder.write("week.json", "[{\"w\": 1}, {\"w\": 2, \"w\": 3}, {\"w\": 4}]");
  CHECK(all_of({file}) == Lines{"week-1 1", "week-2 2",
                                file + ":1:21: /1/w: repeated key; it stands already at column 13",
                                "week-3 4"});
}

TEST_CASE("twenty problems of a document are told, then how many more", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string file = folder.write("week.json", "[" + many(30, ",\n") + "]");
  SpecSource source({file, folder.write("last.json", "{\"w\": 1}")}, -1);
  CHECK(source.check().empty());
  Lines lines;
  while (auto record = source.next()) {
    if (record->default_id == "last") continue;
    for (const PlacedProblem& problem : record->place({{"/w", "too wide", {}}}))
      lines.push_back(line_of(problem));
  }
  REQUIRE(lines.size() == 21);
  CHECK(lines[0] == file + ":1:8: /0/w: too wide");
  CHECK(lines[19] == file + ":20:7: /19/w: too wide");
  CHECK(lines[20] == file + ":21:7: : and 10 more");
}

TEST_CASE("problems that reading found count among the twenty, wherever they stand",
          "[spec_source]") {
  std::string text = "[{\"w\": 1";
  for (int i = 0; i < 30; ++i)
    text += ", \"w\": 1";
  text += "},\n{\"w\": 1}, {\"w\": 1, \"w\": 2}]";
  const TemporaryFolder folder;
  const std::string file = folder.write("week.json", text);
  SpecSource source({file}, -1);
  CHECK(source.check().empty());
  CHECK(source.next()->place({}).size() == 20);
  CHECK(source.next()->place({}).empty());
  auto third = source.next();
  CHECK(third->spoilt);
  CHECK(described(*third).back() == file + ":1:171: : and 11 more");
  CHECK_FALSE(source.next());
}

TEST_CASE("of JSON Lines each line has its own twenty", "[spec_source]") {
  std::string line = "{\"w\": 1";
  for (int i = 0; i < 22; ++i)
    line += ", \"w\": 1";
  line += "}\n";
  const Lines lines = all_of_stdin(line + line);
  REQUIRE(lines.size() == 2 * 22);
  CHECK(lines[21] == "<stdin>:1:170: : and 2 more");
  CHECK(lines[43] == "<stdin>:2:170: : and 2 more");
}

TEST_CASE("a document over 64 MiB is refused without reading it all", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string letters(100'000'000, 'x');
  const std::string file = folder.write("letters.json", letters);
  CHECK(all_of({file}) == Lines{file + ":1:1: : more than 64 MiB in one document"});
}

TEST_CASE("a document is refused as soon as its blanks are over a million", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string blanks(1'000'001, '\n');
  const std::string file = folder.write("blanks.json", blanks + blanks + "rubbish");
  CHECK(all_of({file}) ==
        Lines{file + ":1:1: : a stretch of blanks of more than 1000000 characters"});
  const std::string tail = folder.write("tail.json", "{\"w\": 1}" + blanks);
  CHECK(all_of({tail}) ==
        Lines{tail + ":1:9: : a stretch of blanks of more than 1000000 characters"});
}

TEST_CASE("a line over 64 MiB is refused and the next one is read", "[spec_source]") {
  const TemporaryFolder folder;
  const std::string file = folder.write(
      "week.jsonl", "{\"w\": 1}\n{\"w\": \"" + std::string(70'000'000, 'x') + "\"}\n{\"w\": 3}\n");
  CHECK(all_of({file}) ==
        Lines{"week-1 1", file + ":2:1: : more than 64 MiB in one line", "week-3 3"});
}

TEST_CASE("lines longer than what is read at once stay whole", "[spec_source]") {
  std::string text;
  for (int i = 1; i <= 40; ++i)
    text += "{\"x\": \"" + std::string(9'000, 'x') + "\", \"w\": " + std::to_string(i) + "}\n";
  const Lines lines = all_of_stdin(text);
  REQUIRE(lines.size() == 40);
  for (std::size_t i = 0; i < lines.size(); ++i)
    CHECK(lines[i] == "item-" + std::to_string(i + 1) + " " + std::to_string(i + 1));
}
