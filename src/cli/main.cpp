#include <unistd.h>

#include <exception>
#include <new>
#include <span>
#include <string_view>

#include "commands.h"
#include "interrupts.h"

namespace {

/// Whether what ends the program is want of memory. Without memory for an exception there is none.
bool is_out_of_memory() {
  if (!std::current_exception()) return true;
  try {
    throw;
  } catch (const std::bad_alloc&) {
    return true;
  } catch (...) {
    return false;
  }
}

/// What no handler could catch ends as what one does catch: in words, with the status of a fault,
/// and nothing left over.
[[noreturn]] void end_by_fault() {
  const std::string_view words =
      is_out_of_memory()
          ? "haunch: fault: out of memory\n"
          : "haunch: fault: a fault of the program, please report it with the spec\n";
  haunch::remove_guarded();
  [[maybe_unused]] const ssize_t told = ::write(STDERR_FILENO, words.data(), words.size());
  ::_exit(haunch::kProgramFault);
}

/// Before the other constructors of static objects, CLI11's among them, which allocate.
[[gnu::constructor(101)]] void take_care_of_faults() {
  std::set_terminate(end_by_fault);
}

}  // namespace

int main(int count, char** values) {
  const std::span<const char* const> all(values, static_cast<std::size_t>(count));
  return haunch::run(all.empty() ? all : all.subspan(1), haunch::Streams());
}
