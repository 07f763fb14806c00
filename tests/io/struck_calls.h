// The system's calls, with something done at each of them.
#pragma once

#include <unistd.h>

#include <cerrno>
#include <functional>
#include <memory>

#include "output_file.h"

/// What comes of the call `number` (from 1, over all calls): 0, or the errno that it fails with.
using Strike = std::function<int(int number)>;

/// The real calls, each struck before it is made; one that fails is not made, but for close.
inline haunch::SystemCalls struck_calls(const Strike& strike) {
  const auto count = std::make_shared<int>(0);
  const auto fails = [count, strike] {
    const int error = strike(++*count);
    if (error != 0) errno = error;
    return error != 0;
  };
  const haunch::SystemCalls real = haunch::SystemCalls::real();
  haunch::SystemCalls calls;
  calls.open = [=](const char* path, int flags, mode_t mode) {
    return fails() ? -1 : real.open(path, flags, mode);
  };
  calls.write = [=](int file, const void* bytes, std::size_t size) {
    return fails() ? ssize_t{-1} : real.write(file, bytes, size);
  };
  calls.fsync = [=](int file) { return fails() ? -1 : real.fsync(file); };
  calls.close = [=](int file) {
    const bool failed = fails();
    const int error = errno;
    const int result = real.close(file);
    if (failed) errno = error;
    return failed ? -1 : result;
  };
  calls.rename = [=](const char* from, const char* to) {
    return fails() ? -1 : real.rename(from, to);
  };
  calls.link = [=](const char* from, const char* to) { return fails() ? -1 : real.link(from, to); };
  calls.unlink = [=](const char* path) { return fails() ? -1 : real.unlink(path); };
  return calls;
}
