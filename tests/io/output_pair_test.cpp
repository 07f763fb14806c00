// A cutting plan and the stock that it leaves: the stock is never taken off for a plan that is not
// there.
#include "output_pair.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <filesystem>
#include <string>
#include <vector>

#include "catch.h"
#include "struck_calls.h"
#include "temporary_folder.h"

using haunch::OutputFile;
using haunch::SystemCalls;
using haunch::write_both;
using State = haunch::OutputFile::State;

namespace {

using Names = std::vector<std::string>;

constexpr int kMostCalls = 40;  // more than two files take

/// What is in the rack, and on the bench: "" where there is no file.
struct Papers {
  std::string plan, stock;
  friend bool operator==(const Papers&, const Papers&) = default;
};

const Papers kNew{"this week's plan", "what is left"};

/// A folder with last week's papers, or none.
class Shop {
 public:
  explicit Shop(bool has_papers) : before_(has_papers ? Papers{"last week's", "full"} : Papers{}) {
    if (has_papers) {
      folder_.write("plan.txt", before_.plan);
      folder_.write("left.json", before_.stock);
    }
  }

  /// Plans; true unless a plan stays that could not be taken back.
  bool plan(const SystemCalls& calls) const {
    OutputFile plan(folder_.path("plan.txt"), -1, {}, calls);
    OutputFile left(folder_.path("left.json"), -1, {}, calls);
    return write_both({plan, kNew.plan}, {left, kNew.stock});
  }

  Papers papers() const { return {folder_.read("plan.txt"), folder_.read("left.json")}; }
  const Papers& before() const { return before_; }
  std::string path(const std::string& name) const { return folder_.path(name); }
  /// Nothing but the papers themselves.
  bool is_tidy() const {
    for (const std::string& name : folder_.names())
      if (name != "plan.txt" && name != "left.json") return false;
    return true;
  }

 private:
  TemporaryFolder folder_{in_memory()};
  Papers before_;
};

/// How a child ends that plans with those calls.
int status_of_child(const Shop& shop, int signal, const SystemCalls& calls) {
  const pid_t child = ::fork();
  if (child == 0) {
    ::signal(signal, SIG_DFL);  // not as the tests' own program has it
    shop.plan(calls);
    ::_exit(0);
  }
  int status = 0;
  REQUIRE(::waitpid(child, &status, 0) == child);
  return status;
}

SystemCalls signalled(int number, int signal) {
  return struck_calls([=](int call) {
    if (call == number) ::raise(signal);
    return 0;
  });
}

}  // namespace

TEST_CASE("the plan and what it leaves come together", "[output_pair]") {
  for (const bool there : {false, true}) {
    const Shop shop(there);
    CHECK(shop.plan(SystemCalls::real()));
    CHECK(shop.papers() == kNew);
    CHECK(shop.is_tidy());
  }
}

TEST_CASE("whichever call fails, and with what: both are there, or both as before",
          "[output_pair]") {
  for (const bool there : {false, true})
    for (const int error : {ENOSPC, EIO, EACCES, EROFS, EDQUOT, EINTR, EFBIG, EPERM, ENOENT, EXDEV})
      for (int number = 1; number <= kMostCalls; ++number) {
        CAPTURE(there, error, number);
        const Shop shop(there);
        CHECK(shop.plan(struck_calls([=](int call) { return call == number ? error : 0; })));
        if (shop.papers() == kNew) continue;  // with a call that does not matter, or made again
        CHECK(shop.papers() == shop.before());
        CHECK(shop.is_tidy());
      }
}

TEST_CASE("when nothing works any more from some call on, the stock is not taken off",
          "[output_pair]") {
  for (const bool there : {false, true})
    for (int number = 1; number <= kMostCalls; ++number) {
      CAPTURE(there, number);
      const Shop shop(there);
      const bool whole = shop.plan(struck_calls([=](int call) { return call < number ? 0 : EIO; }));
      if (shop.papers() == kNew || shop.papers() == shop.before()) continue;
      CHECK_FALSE(whole);  // and it is said
      CHECK(shop.papers() == Papers{kNew.plan, shop.before().stock});
    }
}

TEST_CASE("a signal at whichever call leaves both, or both as before, and nothing else",
          "[output_pair]") {
  for (const int signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGALRM, SIGUSR1, SIGXCPU})
    for (int number = 1; number <= kMostCalls; ++number) {
      CAPTURE(signal, number);
      const Shop shop(number % 2 == 0);
      const int status = status_of_child(shop, signal, signalled(number, signal));
      const Papers papers = shop.papers();
      CHECK((papers == kNew || papers == shop.before()));
      CHECK((WIFSIGNALED(status) || papers == kNew));
      CHECK(shop.is_tidy());
    }
}

TEST_CASE("killed outright at whichever call, there is no stock without its plan",
          "[output_pair]") {
  for (const bool there : {false, true})
    for (int number = 1; number <= kMostCalls; ++number) {
      CAPTURE(there, number);
      const Shop shop(there);
      status_of_child(shop, SIGKILL, signalled(number, SIGKILL));
      const Papers papers = shop.papers();
      CHECK((papers == kNew || papers.stock == shop.before().stock));
      CHECK((papers.plan == kNew.plan || papers.plan == shop.before().plan));
    }
}

TEST_CASE("a plan that its reader does not take whole takes nothing off the stock",
          "[output_pair]") {
  const Shop shop(true);
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  ::close(ends[0]);
  for (const std::string& text : {kNew.plan, std::string(500'000, 'x')}) {
    OutputFile plan("", ends[1]);
    OutputFile left(shop.path("left.json"), -1);
    CHECK(write_both({plan, text}, {left, kNew.stock}));
    CHECK(plan.state() == State::reader_gone);
    CHECK(left.state() == State::open);
    CHECK(shop.papers().stock == "full");
  }
  ::close(ends[1]);
  CHECK(shop.is_tidy());
}

TEST_CASE("a plan that standard output does not take takes nothing off the stock",
          "[output_pair]") {
  const Shop shop(true);
  const int full = ::open("/dev/full", O_WRONLY);
  {
    OutputFile plan("-", full);
    OutputFile left(shop.path("left.json"), -1);
    write_both({plan, kNew.plan}, {left, kNew.stock});
    CHECK(plan.state() == State::failed);
  }
  ::close(full);
  CHECK(shop.papers().stock == "full");
  CHECK(shop.is_tidy());
}

TEST_CASE("stock that goes to standard output goes there after the plan is in place",
          "[output_pair]") {
  const Shop shop(true);
  std::array<int, 2> ends{};
  REQUIRE(::pipe(ends.data()) == 0);
  for (const bool is_read : {true, false}) {
    if (!is_read) ::close(ends[0]);
    OutputFile plan(is_read ? shop.path("plan.txt") : shop.path("no/plan.txt"), -1);
    OutputFile left("-", ends[1]);
    write_both({plan, kNew.plan}, {left, kNew.stock});
    if (!is_read) {
      CHECK(left.state() == State::open);  // not a byte, as there is no plan
      continue;
    }
    std::array<char, 40> read{};
    CHECK(::read(ends[0], read.data(), read.size()) == static_cast<ssize_t>(kNew.stock.size()));
    CHECK(std::string(read.data()) == kNew.stock);
    CHECK(shop.papers().plan == kNew.plan);
  }
  ::close(ends[1]);
}
