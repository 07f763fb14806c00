#include <unistd.h>

#include <cerrno>
#include <exception>
#include <new>

#include "commands.h"
#include "output_file.h"

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
    case Command::brief_help:
    case Command::full_help:
    case Command::version:
      return run_help(invocation, streams);
    default:
      return run_report(invocation, streams);
  }
}

}  // namespace

void complain(const std::string& lines, const Streams& streams) {
  std::string_view left = lines;
  while (!left.empty()) {
    const ssize_t written = ::write(streams.err, left.data(), left.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return;
    left.remove_prefix(static_cast<std::size_t>(written));
  }
}

ExitStatus write_result(const std::string& text, const Invocation& invocation,
                        const Streams& streams) {
  OutputFile file(invocation.output, streams.out);
  file.append(text);
  file.finish();
  if (!file.fault()) return kDone;
  complain(file.fault()->file + ": error: " + file.fault()->words + "\n", streams);
  return kFileFault;
}

ExitStatus run(const std::vector<std::string>& arguments, const Streams& streams) {
  try {
    if (arguments.empty() && isatty(streams.out) == 0) {
      complain("haunch: error: no spec is named; give a file, a folder, or - for standard input\n",
               streams);
      return kBadSpec;
    }
    const auto read = read_command_line(arguments);
    if (const auto* error = std::get_if<UsageError>(&read)) {
      complain("haunch: error: " + error->message + "\n", streams);
      return kBadSpec;
    }
    return dispatch(std::get<Invocation>(read), streams);
  } catch (const std::bad_alloc&) {
    complain("haunch: fault: out of memory\n", streams);
  } catch (const std::exception& fault) {
    complain(std::string("haunch: fault: ") + fault.what() +
                 "; this is a fault of the program, please report it with the spec\n",
             streams);
  }
  return kProgramFault;
}

}  // namespace haunch
