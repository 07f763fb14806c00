#include "interrupts.h"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstring>

namespace haunch {
namespace {

// Signals that come from outside and end the program. SIGKILL cannot be caught; SIGPIPE and SIGXFSZ
// come as failed writes.
constexpr std::array kInterrupts{SIGINT,  SIGTERM, SIGHUP,  SIGQUIT,   SIGXCPU,
                                 SIGALRM, SIGUSR1, SIGUSR2, SIGVTALRM, SIGPROF};

// What the handler needs, fixed in place: it may run between any two instructions, and may not
// allocate.
constexpr std::size_t kMostLeftovers = 2;
std::array<std::array<char, 4096>, kMostLeftovers> leftover_paths{};
std::array<volatile sig_atomic_t, kMostLeftovers> leftover_there{};
std::array<struct sigaction, kInterrupts.size()> former_actions{};

void unlink_leftovers() {
  for (std::size_t i = 0; i < kMostLeftovers; ++i)
    if (leftover_there[i] != 0) ::unlink(leftover_paths[i].data());
}

extern "C" void remove_leftover(int signal) {
  unlink_leftovers();
  for (std::size_t i = 0; i < kInterrupts.size(); ++i)
    if (kInterrupts[i] == signal) ::sigaction(signal, &former_actions[i], nullptr);
  ::raise(signal);  // comes as soon as this returns, and does what it would have done without us
}

bool any_leftover() {
  return std::any_of(leftover_there.begin(), leftover_there.end(),
                     [](const volatile sig_atomic_t& there) { return there != 0; });
}

}  // namespace

void let_writes_fail() {
  ::signal(SIGPIPE, SIG_IGN);
  ::signal(SIGXFSZ, SIG_IGN);
}

NoInterrupts::NoInterrupts() {
  sigset_t interrupts;
  ::sigemptyset(&interrupts);
  for (const int signal : kInterrupts)
    ::sigaddset(&interrupts, signal);
  ::pthread_sigmask(SIG_BLOCK, &interrupts, &before_);
}

NoInterrupts::~NoInterrupts() {
  ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

void guard(const std::string& path) {
  std::size_t free = 0;
  while (free < kMostLeftovers && leftover_there[free] != 0)
    ++free;
  if (free == kMostLeftovers || path.size() >= leftover_paths[free].size()) return;
  const bool first = !any_leftover();
  std::memcpy(leftover_paths[free].data(), path.c_str(), path.size() + 1);
  leftover_there[free] = 1;
  if (!first) return;
  struct sigaction action {};
  action.sa_handler = remove_leftover;
  ::sigemptyset(&action.sa_mask);
  for (std::size_t i = 0; i < kInterrupts.size(); ++i) {
    ::sigaction(kInterrupts[i], nullptr, &former_actions[i]);
    if (former_actions[i].sa_handler != SIG_IGN) ::sigaction(kInterrupts[i], &action, nullptr);
  }
}

void remove_guarded() {
  unlink_leftovers();
}

void unguard(const std::string& path) {
  bool was_there = false;
  for (std::size_t i = 0; i < kMostLeftovers; ++i) {
    if (leftover_there[i] == 0 || path != leftover_paths[i].data()) continue;
    leftover_there[i] = 0;
    was_there = true;
  }
  if (!was_there || any_leftover()) return;
  for (std::size_t i = 0; i < kInterrupts.size(); ++i)
    ::sigaction(kInterrupts[i], &former_actions[i], nullptr);
}

}  // namespace haunch
