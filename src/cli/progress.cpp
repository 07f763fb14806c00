#include "progress.h"

#include <unistd.h>

#include <chrono>
#include <system_error>

#include "interrupts.h"

namespace haunch {
namespace {

using namespace std::chrono_literals;

constexpr std::string_view kTakeOff = "\r\x1B[K";

}  // namespace

Progress::Progress(int terminal, bool wanted) : terminal_(terminal) {
  if (!wanted || isatty(terminal) == 0) return;
  const NoInterrupts of_thread;  // they are for the thread that writes files
  try {
    thread_ = std::jthread([this](const std::stop_token& stop) { show_on(stop); });
  } catch (const std::system_error&) {
    // The system gives no thread.
  }
}

Progress::~Progress() {
  thread_.request_stop();
  if (thread_.joinable()) thread_.join();
  still();
}

void Progress::write(const std::string& text) const {
  [[maybe_unused]] const ssize_t written = ::write(terminal_, text.data(), text.size());
}

std::unique_lock<std::mutex> Progress::still() {
  std::unique_lock lock(mutex_);
  if (shown_) write(std::string(kTakeOff));
  shown_ = false;
  return lock;
}

void Progress::show_on(const std::stop_token& stop) {
  std::unique_lock lock(mutex_);
  for (int seconds = 1;; ++seconds) {
    wait_.wait_for(lock, stop, 1s, [] { return false; });
    if (stop.stop_requested()) return;
    const std::size_t done = done_;
    write(std::string(kTakeOff) + "haunch: " +
          (done == 0 ? "" : std::to_string(done) + (done == 1 ? " item, " : " items, ")) +
          std::to_string(seconds) + " s");
    shown_ = true;
  }
}

}  // namespace haunch
