// How far a long run is, on standard error where that is a terminal.
#pragma once

#include <atomic>
#include <condition_variable>
#include <cstddef>
#include <mutex>
#include <string>
#include <thread>

namespace haunch {

/// A line that shows after a second and is gone when something else is written, or all is done. A
/// result hangs in no way on it; without a thread for it there is none.
class Progress {
 public:
  /// On `terminal`; nothing where it is none or where it is not wanted.
  Progress(int terminal, bool wanted);
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress();

  /// One item more is done.
  void count() { ++done_; }
  /// Takes the line off, and keeps it off as long as this is held.
  std::unique_lock<std::mutex> still();

 private:
  void show_on(const std::stop_token& stop);
  void write(const std::string& text) const;

  int terminal_;
  std::atomic<std::size_t> done_ = 0;
  bool shown_ = false;
  std::mutex mutex_;
  std::condition_variable_any wait_;
  std::jthread thread_;  // the last member: it ends before what it works with goes
};

}  // namespace haunch
