// Items worked side by side, and taken back in the order they were handed out.
#pragma once

#include <condition_variable>
#include <cstddef>
#include <exception>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "report.h"
#include "report_stream.h"
#include "spec_source.h"

namespace haunch {

/// One item on its way through a run.
struct ItemTask {
  Record record;
  bool follows = false;  // another item was written before it was handed out

  // What became of it.
  std::vector<Problem> problems;
  std::optional<ItemReport> report;
  ToldItem told;  // of the report, if it follows
};

/// Hands that work tasks, each one at a time. Handing out and taking back is for one thread, which
/// so keeps all that goes in order: reading, placing problems, writing. No more than four tasks a
/// hand are under way, however many come.
class Crew {
 public:
  /// One hand is the caller's own: its tasks are worked as they are handed out. So is it where the
  /// system gives no others; else the crew is as many of `hands` as it gives.
  Crew(std::size_t hands, std::function<void(ItemTask&)> work);
  Crew(const Crew&) = delete;
  Crew& operator=(const Crew&) = delete;
  /// Waits for the tasks that are being worked; those that are only handed out are let be.
  ~Crew();

  bool has_room() const { return handed_out_ - taken_back_ < tasks_.size(); }
  bool is_idle() const { return handed_out_ == taken_back_; }
  void hand_out(ItemTask task);
  /// Waits for the task that was handed out first. What its work threw is thrown here.
  ItemTask take_back();

 private:
  struct Slot {
    ItemTask task;
    std::exception_ptr fault;
    bool done = false;
  };

  void hire(std::size_t hands);
  void work_on(const std::stop_token& stop);
  void work(Slot& slot) const;
  Slot& slot_of(std::size_t number) { return tasks_[number % tasks_.size()]; }

  std::function<void(ItemTask&)> work_;
  std::vector<Slot> tasks_;  // a ring
  std::size_t handed_out_ = 0, begun_ = 0, taken_back_ = 0;
  std::mutex mutex_;
  std::condition_variable_any more_, done_;
  std::vector<std::jthread> hands_;  // the last member: they end before what they work with goes
};

}  // namespace haunch
