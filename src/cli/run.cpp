#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <exception>
#include <initializer_list>
#include <new>

#include "commands.h"
#include "complaints.h"
#include "interrupts.h"
#include "output_file.h"
#include "shown_text.h"
#include "terminal.h"

namespace haunch {
namespace {

ExitStatus dispatch(const Invocation& invocation, const Streams& streams) {
  switch (invocation.command) {
    case Command::schema:
      return run_schema(invocation, streams);
    case Command::species:
      return run_species(invocation, streams);
    case Command::moisture:
      return run_moisture(invocation, streams);
    case Command::trial:
      return run_trial(invocation, streams);
    case Command::lumber:
      return run_lumber(invocation, streams);
    case Command::setups:
      return run_setups(invocation, streams);
    case Command::rod:
      return run_rod(invocation, streams);
    case Command::labels:
      return run_labels(invocation, streams);
    case Command::compare:
      return run_compare(invocation, streams);
    case Command::draw:
      return run_draw(invocation, streams);
    case Command::book:
      return run_book(invocation, streams);
    case Command::quote:
      return run_quote(invocation, streams);
    case Command::solids:
      return run_solids(invocation, streams);
    case Command::example:
      return run_example(invocation, streams);
    case Command::specs:
      return run_specs(invocation, streams);
    case Command::shop:
      return run_shop(invocation, streams);
    case Command::explain:
      return run_explain(invocation, streams);
    case Command::brief_help:
    case Command::full_help:
    case Command::version:
      return run_help(invocation, streams);
    default:
      return run_report(invocation, streams);
  }
}

/// No page is made narrower for a terminal; it then breaks lines itself.
constexpr std::size_t kNarrowestPage = 60;

void write_all(std::string_view bytes, const Streams& streams) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(streams.err, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
}

/// Like complain(), without allocating anything: there may be no memory left.
void tell_fault(std::initializer_list<std::string_view> words, const Streams& streams) {
  for (std::string_view each : words)
    while (!each.empty())
      write_all(take_shown(each, Newlines::shown), streams);
  write_all("\n", streams);
}

/// A variable of the environment that is set, and not to nothing.
bool is_set(const char* name) {
  const char* value = std::getenv(name);  // NOLINT(concurrency-mt-unsafe): never set here
  return value != nullptr && *value != '\0';
}

bool wants_emphasis(const Invocation& invocation, const Streams& streams) {
  if (invocation.color != Color::automatic) return invocation.color == Color::always;
  const char* terminal = std::getenv("TERM");  // NOLINT(concurrency-mt-unsafe): never set here
  const bool is_dumb = terminal != nullptr && std::string_view(terminal) == "dumb";
  return is_standard_output(invocation.output) && isatty(streams.out) != 0 && !is_set("NO_COLOR") &&
         !is_dumb;
}

ExitStatus understand(const std::vector<std::string>& arguments, const Streams& streams) {
  if (arguments.empty() && isatty(streams.out) == 0)
    return Complaints(streams).refuse(
        "no spec is named; give a file, a folder, or - for standard input");
  auto read = read_command_line(arguments);
  if (const auto* error = std::get_if<UsageError>(&read))
    return Complaints(streams).refuse(error->message);
  auto& invocation = std::get<Invocation>(read);
  invocation.view.emphasis = wants_emphasis(invocation, streams);
  if (invocation.output.empty())
    if (const auto columns = terminal_columns(streams.out))
      invocation.view.page_width = std::clamp(*columns, kNarrowestPage, invocation.view.page_width);
  return dispatch(invocation, streams);
}

}  // namespace

std::unique_lock<std::mutex> still(const Streams& streams) {
  return streams.progress == nullptr ? std::unique_lock<std::mutex>() : streams.progress->still();
}

void complain(std::string_view line, const Streams& streams) {
  const auto lock = still(streams);
  write_all(shown_text(line, Newlines::shown) + "\n", streams);
}

ExitStatus write_result(const std::string& text, const Invocation& invocation,
                        const Streams& streams, const std::vector<std::string>& inputs) {
  Complaints complaints(streams);
  write_result(text, invocation, streams, inputs, complaints);
  return complaints.status();
}

ExitStatus run(std::span<const char* const> arguments, const Streams& streams) {
  try {
    let_writes_fail();
    return understand({arguments.begin(), arguments.end()}, streams);
  } catch (const std::bad_alloc&) {
    tell_fault({"haunch: fault: out of memory"}, streams);
  } catch (const std::exception& fault) {
    tell_fault({"haunch: fault: ", fault.what(),
                "; this is a fault of the program, please report it with the spec"},
               streams);
  }
  return kProgramFault;
}

}  // namespace haunch
