// Signals that would end the program in the middle of a file.
#pragma once

#include <signal.h>

#include <string>

namespace haunch {

/// Makes a pipe without a reader, and a file over the limit (ulimit -f), failed writes instead of
/// the end of the process.
void let_writes_fail();

/// Keeps interrupts waiting while it lives.
class NoInterrupts {
 public:
  NoInterrupts();
  ~NoInterrupts();
  NoInterrupts(const NoInterrupts&) = delete;
  NoInterrupts& operator=(const NoInterrupts&) = delete;

 private:
  sigset_t before_{};
};

/// From here on an interrupt removes `path` before it does what it would have done. One that was
/// ignored (nohup) stays ignored. Two files at a time at most. Allocates nothing.
void guard(const std::string& path);
void unguard(const std::string& path);
/// Removes what is guarded: the program is about to end. Allocates nothing.
void remove_guarded();

}  // namespace haunch
