#include "output_file.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <memory>
#include <string>
#include <thread>
#include <vector>

#include "catch.h"
#include "temporary_folder.h"

using haunch::FileIdentity;
using haunch::identity_of;
using haunch::OutputFile;
using haunch::SystemCalls;
using State = haunch::OutputFile::State;

namespace {

using Lines = std::vector<std::string>;

std::string fault_words(const OutputFile& file) {
  return file.fault() ? file.fault()->words : "";
}

mode_t permissions(const std::string& path) {
  struct stat status {};
  REQUIRE(::stat(path.c_str(), &status) == 0);
  return status.st_mode & 0777U;
}

std::string sheet(std::size_t size) {
  std::string text;
  while (text.size() < size)
    text += "left stile 2054 x 118 x 44\n";
  return text;
}

/// The real calls, of which one fails at its `nth` time (from 1) with `error`.
SystemCalls failing(const std::string& call, int nth, int error) {
  SystemCalls calls = SystemCalls::real();
  const auto now = [left = std::make_shared<int>(nth), error] {
    if (--*left != 0) return false;
    errno = error;
    return true;
  };
  const SystemCalls real = calls;
  if (call == "open")
    calls.open = [=](const char* path, int flags, mode_t mode) {
      return now() ? -1 : real.open(path, flags, mode);
    };
  if (call == "write")
    calls.write = [=](int file, const void* bytes, std::size_t count) {
      return now() ? ssize_t{-1} : real.write(file, bytes, count);
    };
  if (call == "fsync") calls.fsync = [=](int file) { return now() ? -1 : real.fsync(file); };
  if (call == "close")
    calls.close = [=](int file) {
      const int result = real.close(file);
      return now() ? -1 : result;
    };
  if (call == "rename")
    calls.rename = [=](const char* from, const char* to) {
      return now() ? -1 : real.rename(from, to);
    };
  return calls;
}

struct Pipe {
  std::array<int, 2> ends{-1, -1};
  Pipe() { REQUIRE(::pipe(ends.data()) == 0); }
  ~Pipe() {
    close_reader();
    ::close(ends[1]);
  }
  Pipe(const Pipe&) = delete;
  Pipe& operator=(const Pipe&) = delete;
  void close_reader() {
    if (ends[0] >= 0) ::close(ends[0]);
    ends[0] = -1;
  }
};

}  // namespace

TEST_CASE("a result appears under its name when it is finished, not before", "[output_file]") {
  const TemporaryFolder folder;
  const std::string text = sheet(200'000);
  OutputFile file(folder.path("sheet.txt"), -1);
  file.append(text);
  CHECK_FALSE(std::filesystem::exists(folder.path("sheet.txt")));
  CHECK(folder.names().size() == 1);
  CHECK(file.finish() == State::finished);
  CHECK(folder.names() == Lines{"sheet.txt"});
  CHECK(folder.read("sheet.txt") == text);
}

TEST_CASE("an empty result is an empty file", "[output_file]") {
  const TemporaryFolder folder;
  CHECK(OutputFile(folder.path("sheet.txt"), -1).finish() == State::finished);
  CHECK(folder.names() == Lines{"sheet.txt"});
  CHECK(folder.read("sheet.txt").empty());
}

TEST_CASE("an unfinished result leaves what was there, and nothing else", "[output_file]") {
  const TemporaryFolder folder;
  folder.write("sheet.txt", "last week's");
  {
    OutputFile file(folder.path("sheet.txt"), -1);
    file.append(sheet(200'000));
  }
  CHECK(folder.names() == Lines{"sheet.txt"});
  CHECK(folder.read("sheet.txt") == "last week's");
}

TEST_CASE("of two files that are settled none is there until it is finished", "[output_file]") {
  const TemporaryFolder folder;
  folder.write("left.json", "last week's");
  {
    OutputFile left(folder.path("left.json"), -1);
    OutputFile plan(folder.path("plan.txt"), -1);
    left.append("new");
    plan.append("cuts");
    CHECK(left.settle() == State::open);
    CHECK(plan.settle() == State::open);
    CHECK(folder.read("left.json") == "last week's");
    CHECK_FALSE(std::filesystem::exists(folder.path("plan.txt")));
    CHECK(left.finish() == State::finished);
  }
  CHECK(folder.names() == Lines{"left.json"});
  CHECK(folder.read("left.json") == "new");
}

TEST_CASE("an interrupt leaves nothing of two unfinished files", "[output_file]") {
  const TemporaryFolder folder;
  const pid_t child = ::fork();
  if (child == 0) {
    ::signal(SIGTERM, SIG_DFL);
    OutputFile left(folder.path("left.json"), -1);
    OutputFile plan(folder.path("plan.txt"), -1);
    left.settle();
    ::raise(SIGTERM);
    ::_exit(0);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  CHECK(WIFSIGNALED(status));
  CHECK(folder.names().empty());
}

TEST_CASE("a file that is written over keeps its permissions", "[output_file]") {
  const TemporaryFolder folder;
  const std::string path = folder.write("sheet.txt", "last week's");
  REQUIRE(::chmod(path.c_str(), 0606) == 0);
  OutputFile file(path, -1);
  file.append("new");
  CHECK(file.finish() == State::finished);
  CHECK(folder.read("sheet.txt") == "new");
  CHECK(permissions(path) == 0606);
}

TEST_CASE("a new file has the permissions the user's mask leaves", "[output_file]") {
  const TemporaryFolder folder;
  const mode_t before = ::umask(027);
  CHECK(OutputFile(folder.path("sheet.txt"), -1).finish() == State::finished);
  ::umask(before);
  CHECK(permissions(folder.path("sheet.txt")) == 0640);
}

TEST_CASE("a link stays a link, and what it points to is written", "[output_file]") {
  const TemporaryFolder folder;
  std::filesystem::create_directory(folder.path("orders"));
  folder.write("orders/week.txt", "last week's");
  std::filesystem::create_symlink("orders/week.txt", folder.path("sheet.txt"));
  std::filesystem::create_symlink("orders/new.txt", folder.path("new.txt"));
  for (const std::string name : {"sheet.txt", "new.txt"}) {
    OutputFile file(folder.path(name), -1);
    file.append("this week's");
    CHECK(file.finish() == State::finished);
    CHECK(std::filesystem::is_symlink(folder.path(name)));
  }
  CHECK(folder.read("orders/week.txt") == "this week's");
  CHECK(folder.read("orders/new.txt") == "this week's");
  CHECK(folder.names() == Lines{"new.txt", "orders", "sheet.txt"});
}

TEST_CASE("an input is not written over, by whatever name", "[output_file]") {
  const TemporaryFolder folder;
  const std::string spec = folder.write("door.json", "{}");
  std::filesystem::create_symlink("door.json", folder.path("link.json"));
  std::filesystem::create_hard_link(spec, folder.path("twin.json"));
  const std::vector<FileIdentity> inputs{*identity_of(spec)};
  for (const std::string name : {"door.json", "link.json", "twin.json"}) {
    OutputFile file(folder.path(name), -1, inputs);
    CHECK(file.state() == State::failed);
    CHECK(file.fault()->file == folder.path(name));
    CHECK(fault_words(file) == "is one of the inputs, and is not written over");
    file.append("x");
    CHECK(file.finish() == State::failed);
  }
  CHECK(folder.read("door.json") == "{}");
  CHECK(OutputFile(folder.path("other.json"), -1, inputs).finish() == State::finished);
}

TEST_CASE("standard output that runs into an input is refused", "[output_file]") {
  const TemporaryFolder folder;
  const std::string spec = folder.write("door.json", "{}");
  const int appending = ::open(spec.c_str(), O_WRONLY | O_APPEND);
  CHECK(fault_words(OutputFile("", appending, {*identity_of(spec)})) ==
        "is one of the inputs, and is not written over");
  ::close(appending);
}

TEST_CASE("what is no ordinary file may be input and output", "[output_file]") {
  CHECK_FALSE(identity_of("/dev/null"));
  CHECK_FALSE(identity_of("/nowhere/at/all"));
  CHECK_FALSE(identity_of(-1));
}

TEST_CASE("a place that cannot be written is told at once, in the system's words",
          "[output_file]") {
  const TemporaryFolder folder;
  const OutputFile missing(folder.path("no/sheet.txt"), -1);
  CHECK(missing.state() == State::failed);
  CHECK(fault_words(missing) == "cannot be written: No such file or directory");
  CHECK(fault_words(OutputFile(folder.path(), -1)) == "cannot be written: Is a directory");
  CHECK(fault_words(OutputFile(folder.write("a", "") + "/b", -1)) ==
        "cannot be opened: Not a directory");
  CHECK(fault_words(OutputFile("", -1)) == "cannot be opened: Bad file descriptor");
  CHECK(fault_words(OutputFile(folder.path(std::string(300, 'x')), -1)) ==
        "cannot be opened: File name too long");
}

TEST_CASE("whichever call fails, the old file stays and nothing is left over", "[output_file]") {
  struct Row {
    std::string call;
    int nth;
    int error;
    std::string words;
  };
  const std::vector<Row> rows{
      {"open", 1, EACCES, "cannot be written: Permission denied"},
      {"write", 1, ENOSPC, "cannot be written: No space left on device"},
      {"write", 2, EDQUOT, "cannot be written: Disk quota exceeded"},
      {"write", 4, EIO, "cannot be written: Input/output error"},
      {"write", 2, EPIPE, "cannot be written: Broken pipe"},
      {"fsync", 1, EIO, "cannot be written: Input/output error"},
      {"close", 1, ENOSPC, "cannot be written: No space left on device"},
      {"rename", 1, EPERM, "cannot be written: Operation not permitted"},
  };
  for (const bool exists : {true, false})
    for (const Row& row : rows) {
      CAPTURE(row.call, row.nth, exists);
      const TemporaryFolder folder;
      if (exists) folder.write("sheet.txt", "last week's");
      OutputFile file(folder.path("sheet.txt"), -1, {}, failing(row.call, row.nth, row.error));
      file.append(sheet(200'000));
      CHECK(file.finish() == State::failed);
      CHECK(file.finish() == State::failed);
      CHECK(file.fault()->file == folder.path("sheet.txt"));
      CHECK(fault_words(file) == row.words);
      CHECK(folder.names() == (exists ? Lines{"sheet.txt"} : Lines{}));
      if (exists) CHECK(folder.read("sheet.txt") == "last week's");
    }
}

TEST_CASE("an interrupted call is made again, and a name that is taken is passed over",
          "[output_file]") {
  for (const std::string call : {"write", "fsync", "close", "open"}) {
    CAPTURE(call);
    const TemporaryFolder folder;
    const std::string text = sheet(200'000);
    OutputFile file(folder.path("sheet.txt"), -1, {},
                    failing(call, 1, call == "open" ? EEXIST : EINTR));
    file.append(text);
    CHECK(file.finish() == State::finished);
    CHECK(folder.read("sheet.txt") == text);
    CHECK(folder.names() == Lines{"sheet.txt"});
  }
}

TEST_CASE("short writes lose nothing", "[output_file]") {
  const TemporaryFolder folder;
  const std::string text = sheet(150'000);
  SystemCalls calls = SystemCalls::real();
  calls.write = [](int file, const void* bytes, std::size_t count) {
    return ::write(file, bytes, std::min<std::size_t>(count, 1'000));
  };
  OutputFile file(folder.path("sheet.txt"), -1, {}, calls);
  file.append(text);
  CHECK(file.finish() == State::finished);
  CHECK(folder.read("sheet.txt") == text);
}

TEST_CASE("a disk that takes no more bytes does not hang the program", "[output_file]") {
  const TemporaryFolder folder;
  SystemCalls calls = SystemCalls::real();
  calls.write = [](int, const void*, std::size_t) { return ssize_t{0}; };
  OutputFile file(folder.path("sheet.txt"), -1, {}, calls);
  file.append("x");
  CHECK(file.finish() == State::failed);
  CHECK(fault_words(file) == "cannot be written: Input/output error");
}

TEST_CASE("without a name the result goes to standard output, which stays open", "[output_file]") {
  Pipe pipe;
  OutputFile file("", pipe.ends[1]);
  file.append("left stile");
  CHECK(file.finish() == State::finished);
  CHECK(::write(pipe.ends[1], "!", 1) == 1);
  std::array<char, 20> read{};
  CHECK(::read(pipe.ends[0], read.data(), read.size()) == 11);
  CHECK(std::string(read.data()) == "left stile!");
}

TEST_CASE("a closed pipe is a quiet end", "[output_file]") {
  Pipe pipe;
  pipe.close_reader();
  OutputFile file("", pipe.ends[1]);
  file.append(sheet(200'000));
  CHECK(file.state() == State::reader_gone);
  CHECK(file.finish() == State::reader_gone);
  CHECK_FALSE(file.fault());
}

TEST_CASE("a pipe that would not wait is waited for", "[output_file]") {
  Pipe pipe;
  REQUIRE(::fcntl(pipe.ends[1], F_SETFL, O_NONBLOCK) == 0);
  const std::string text = sheet(300'000);
  std::string got;
  std::thread reader([&] {
    std::array<char, 4096> piece{};
    while (got.size() < text.size()) {
      const ssize_t count = ::read(pipe.ends[0], piece.data(), piece.size());
      if (count <= 0) break;
      got.append(piece.data(), static_cast<std::size_t>(count));
    }
  });
  OutputFile file("", pipe.ends[1]);
  file.append(text);
  const State state = file.finish();
  reader.join();
  CHECK(state == State::finished);
  CHECK(got == text);
}

TEST_CASE("a full device is a fault in the system's words", "[output_file]") {
  const int full = ::open("/dev/full", O_WRONLY);
  OutputFile standard("", full);
  standard.append("x");
  CHECK(standard.finish() == State::failed);
  CHECK(standard.fault()->file == "<stdout>");
  CHECK(fault_words(standard) == "cannot be written: No space left on device");
  ::close(full);
  OutputFile named("/dev/full", -1);
  named.append("x");
  CHECK(named.finish() == State::failed);
  CHECK(named.fault()->file == "/dev/full");
}

TEST_CASE("a device is written to, not replaced", "[output_file]") {
  OutputFile file("/dev/null", -1);
  file.append("x");
  CHECK(file.finish() == State::finished);
  CHECK(std::filesystem::is_character_file("/dev/null"));
}

TEST_CASE("a named pipe is written to, not replaced", "[output_file]") {
  const TemporaryFolder folder;
  const std::string path = folder.path("pipe");
  REQUIRE(::mkfifo(path.c_str(), 0600) == 0);
  std::string got;
  std::thread reader([&] { got = folder.read("pipe"); });
  OutputFile file(path, -1);
  file.append("left stile");
  CHECK(file.finish() == State::finished);
  reader.join();
  CHECK(got == "left stile");
  CHECK(folder.names() == Lines{"pipe"});
}

TEST_CASE("standard output named as a file is not replaced and keeps what it holds",
          "[output_file]") {
  const TemporaryFolder folder;
  const std::string path = folder.write("log.txt", "before\n");
  const int appending = ::open(path.c_str(), O_WRONLY | O_APPEND);
  OutputFile file(path, appending);
  file.append("after\n");
  CHECK(file.finish() == State::finished);
  ::close(appending);
  CHECK(folder.read("log.txt") == "before\nafter\n");
}

TEST_CASE("an interrupt ends the program and leaves nothing behind", "[output_file]") {
  for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
    CAPTURE(signal);
    const TemporaryFolder folder;
    folder.write("sheet.txt", "last week's");
    const pid_t child = ::fork();
    if (child == 0) {
      ::signal(signal, SIG_DFL);
      OutputFile file(folder.path("sheet.txt"), -1);
      file.append(sheet(100'000));
      if (folder.names().size() != 2) ::_exit(9);
      ::raise(signal);
      ::_exit(0);
    }
    int status = 0;
    REQUIRE(::waitpid(child, &status, 0) == child);
    CHECK(WIFSIGNALED(status));
    CHECK(WTERMSIG(status) == signal);
    CHECK(folder.names() == Lines{"sheet.txt"});
    CHECK(folder.read("sheet.txt") == "last week's");
  }
}

TEST_CASE("a signal that was ignored stays ignored", "[output_file]") {
  const TemporaryFolder folder;
  const pid_t child = ::fork();
  if (child == 0) {
    ::signal(SIGHUP, SIG_IGN);
    OutputFile file(folder.path("sheet.txt"), -1);
    file.append("whole");
    ::raise(SIGHUP);
    ::_exit(file.finish() == State::finished ? 0 : 9);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  CHECK(WIFEXITED(status));
  CHECK(WEXITSTATUS(status) == 0);
  CHECK(folder.read("sheet.txt") == "whole");
}

TEST_CASE("after a result is finished an interrupt does what it did before", "[output_file]") {
  const TemporaryFolder folder;
  struct sigaction before {};
  struct sigaction during {};
  struct sigaction after {};
  ::sigaction(SIGINT, nullptr, &before);
  OutputFile file(folder.path("sheet.txt"), -1);
  ::sigaction(SIGINT, nullptr, &during);
  file.finish();
  ::sigaction(SIGINT, nullptr, &after);
  CHECK(during.sa_handler != before.sa_handler);
  CHECK(after.sa_handler == before.sa_handler);
}
