// When memory runs out, at whatever allocation, the run ends with status 4 and a word on standard
// error, and no file is half written or left over: with every allocation in turn, that one failing
// alone, and all from it on.
#include <fcntl.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <new>
#include <string>
#include <vector>

#include "../io/temporary_folder.h"
#include "catch.h"
#include "commands.h"
#include "effort.h"

namespace {

enum class Fails { never, once, from_then_on };

Fails fails = Fails::never;
long allocations = 0;  // since arm()
long failing = 0;      // the number of the one that fails, from 1

bool is_refused() {
  ++allocations;
  return (fails == Fails::once && allocations == failing) ||
         (fails == Fails::from_then_on && allocations >= failing);
}

void arm(Fails how, long number) {
  allocations = 0;
  failing = number;
  fails = how;
}

}  // namespace

// Not inlined, else g++ sees free() where it wants delete.
[[gnu::noinline]] void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
  return is_refused() ? nullptr : std::malloc(size == 0 ? 1 : size);
}
void* operator new[](std::size_t size, const std::nothrow_t& nothrow) noexcept {
  return operator new(size, nothrow);
}
[[gnu::noinline]] void* operator new(std::size_t size) {
  if (void* memory = operator new(size, std::nothrow)) return memory;
  throw std::bad_alloc();
}
void* operator new[](std::size_t size) {
  return operator new(size);
}
[[gnu::noinline]] void operator delete(void* memory) noexcept {
  std::free(memory);
}
void operator delete[](void* memory) noexcept {
  operator delete(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  operator delete(memory);
}
void operator delete[](void* memory, std::size_t) noexcept {
  operator delete(memory);
}

namespace {

const std::string kSpec =
    R"({"kind": "door", "id": "hatch", "units": "mm", "species": "European beech", "panels": 1,
        "opening": {"width": 300, "height": 400}, "tenon_depth": 30})";
const std::string kBadSpec = R"({"kind": "dor", "units": "mm", "openin": {"width": "3OO"}})";
const std::string kRack = R"({"units": "mm", "stock": [{"id": "b", "length": 3000, "width": 300,
                              "thickness": 30, "species": "European beech"}]})";

/// One command line, run again and again in one folder.
class Bench {
 public:
  Bench() {
    folder_.write("door.json", kSpec);
    folder_.write("bad.json", kBadSpec);
    folder_.write("rack.json", kRack);
    folder_.write("log", "");
  }

  std::string path(const std::string& name) const { return folder_.path(name); }

  /// Runs it with everything as before.
  haunch::ExitStatus run(const std::vector<std::string>& arguments, Fails how, long number) {
    for (const char* name : {"out.txt", "left.json"})
      folder_.write(name, "last week's");
    take_away("solids");
    std::vector<const char*> values;
    for (const std::string& argument : arguments)
      values.push_back(argument.c_str());
    const int log = ::open(path("log").c_str(), O_RDWR | O_TRUNC);
    const int nothing = ::open("/dev/null", O_RDWR);
    arm(how, number);
    const haunch::ExitStatus status = haunch::run(values, {nothing, nothing, log});
    const long counted = allocations;
    arm(Fails::never, 0);
    allocations = counted;
    ::close(log);
    ::close(nothing);
    return status;
  }

  void take_away(const std::string& name) const { std::filesystem::remove_all(path(name)); }

  std::string message() const { return folder_.read("log"); }
  std::string out() const { return folder_.read("out.txt"); }
  std::string left() const { return folder_.read("left.json"); }
  bool is_clean() const {
    return folder_.names() == std::vector<std::string>{"bad.json", "door.json", "left.json",
                                                       "log",      "out.txt",   "rack.json"};
  }

 private:
  TemporaryFolder folder_{in_memory()};
};

/// Every allocation of a short run, and so many of a long one.
long step_for(long all) {
  return 1 + all / haunch::test::times_effort(1000);
}

}  // namespace

TEST_CASE("without memory a run ends in its own words and leaves every file as it was",
          "[memory]") {
  Bench bench;
  const std::string out = bench.path("out.txt");
  const std::vector<std::vector<std::string>> lines = {
      {"--help", "-o", out},
      {"chekc", bench.path("no.json")},
      {"check", bench.path("bad.json"), "-o", out},
      {"check", bench.path("no.json"), "-o", out},
      {"cutlist", bench.path("door.json"), "-o", bench.path("no/out.txt")},
      {"species", "oke"},
      {"moisture", "--temperature", "21", "--humidity", "45", "-o", out},
      {"trial", bench.path("door.json"), "--joint", "J1", "--tenon", "7.1", "-o", out},
      {"rod", bench.path("door.json"), "--format", "svg", "--paper", "a4", "-o", out},
      {"solids", bench.path("door.json"), "-o", bench.path("solids")},
      {"cutlist", bench.path("door.json"), "-o", out},
      {"cutlist", bench.path("door.json"), bench.path("bad.json"), "--format", "json", "-o", out},
      {"lumber", bench.path("door.json"), "--stock", bench.path("rack.json"), "-o", out,
       "--leftover", bench.path("left.json")}};
  for (const auto& line : lines) {
    const haunch::ExitStatus well = bench.run(line, Fails::never, 0);
    const long all = allocations;
    const std::string result = bench.out();
    const std::string stock = bench.left();
    REQUIRE(well != haunch::kProgramFault);
    for (const Fails how : {Fails::once, Fails::from_then_on})
      for (long number = 1; number <= all; number += step_for(all)) {
        CAPTURE(line, number, all, how == Fails::once);
        const haunch::ExitStatus status = bench.run(line, how, number);
        if (status == well && line.front() == "solids") bench.take_away("solids");
        REQUIRE(bench.is_clean());
        if (status == well && bench.out() == result && bench.left() == stock) continue;
        REQUIRE(status == haunch::kProgramFault);
        REQUIRE(bench.message().ends_with("haunch: fault: out of memory\n"));
        REQUIRE(bench.out() == "last week's");
        REQUIRE(bench.left() == "last week's");
      }
  }
}
