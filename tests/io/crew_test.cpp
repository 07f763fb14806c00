#include "crew.h"

#include <signal.h>

#include <atomic>
#include <stdexcept>
#include <string>

#include "catch.h"

using namespace haunch;

namespace {

ItemTask task(const std::string& id) {
  ItemTask made;
  made.record.default_id = id;
  return made;
}

/// The ids of `count` tasks, numbered, in the order in which they came back.
std::string in_turn(std::size_t hands, int count, const std::function<void(ItemTask&)>& work) {
  Crew crew(hands, work);
  std::string ids;
  for (int handed_out = 0; handed_out < count || !crew.is_idle();) {
    while (handed_out < count && crew.has_room())
      crew.hand_out(task(std::to_string(handed_out++)));
    ids += crew.take_back().told.text;
  }
  return ids;
}

}  // namespace

TEST_CASE("what is done first waits for its turn", "[crew]") {
  std::atomic<bool> second_done = false;
  const auto work = [&second_done](ItemTask& task) {
    while (task.record.default_id == "0" && !second_done) {
    }
    second_done = second_done || task.record.default_id == "1";
    task.told.text = task.record.default_id;
  };
  CHECK(in_turn(2, 10, work) == "0123456789");
  CHECK(in_turn(5, 10, work) == "0123456789");
}

TEST_CASE("one hand works each task as it comes", "[crew]") {
  const auto here = std::this_thread::get_id();
  bool elsewhere = false;
  in_turn(1, 3, [&](ItemTask&) { elsewhere |= std::this_thread::get_id() != here; });
  CHECK_FALSE(elsewhere);
  Crew crew(1, [](ItemTask&) {});
  crew.hand_out(task("0"));
  CHECK_FALSE(crew.has_room());
}

TEST_CASE("what a task throws is thrown in its turn", "[crew]") {
  for (const std::size_t hands : {std::size_t{1}, std::size_t{3}}) {
    Crew crew(hands, [](ItemTask& task) {
      if (task.record.default_id != "0") throw std::runtime_error(task.record.default_id);
    });
    crew.hand_out(task("0"));
    if (hands == 1) CHECK_NOTHROW(crew.take_back());
    crew.hand_out(task("1"));
    if (hands > 1) CHECK_NOTHROW(crew.take_back());
    CHECK_THROWS_WITH(crew.take_back(), "1");
  }
}

TEST_CASE("a crew that is let go ends with what is in hand", "[crew]") {
  std::atomic<int> worked = 0;
  {
    Crew crew(2, [&worked](ItemTask&) { ++worked; });
    while (crew.has_room())
      crew.hand_out(task("0"));
  }
  CHECK(worked <= 8);
}

TEST_CASE("interrupts come to the thread that writes, none to the hands", "[crew]") {
  std::atomic<bool> open = false;
  in_turn(2, 4, [&open](ItemTask&) {
    sigset_t blocked;
    pthread_sigmask(SIG_SETMASK, nullptr, &blocked);
    if (sigismember(&blocked, SIGINT) == 0) open = true;
  });
  CHECK_FALSE(open);
}
