// The commands, each in a file of its own.
#pragma once

#include <mutex>
#include <span>
#include <string>
#include <string_view>

#include "exit_status.h"
#include "invocation.h"
#include "progress.h"

namespace haunch {

/// The descriptors that a run reads from and writes to.
struct Streams {
  int in = 0;
  int out = 1;
  int err = 2;
  Progress* progress = nullptr;  // shown on `err` while something is worked
};

/// Keeps the progress of a run out of the way of what is written, as long as it is held.
std::unique_lock<std::mutex> still(const Streams& streams);

/// sheet, cutlist, joints and check.
ExitStatus run_report(const Invocation& invocation, const Streams& streams);
ExitStatus run_schema(const Invocation& invocation, const Streams& streams);
ExitStatus run_species(const Invocation& invocation, const Streams& streams);
ExitStatus run_trial(const Invocation& invocation, const Streams& streams);
ExitStatus run_lumber(const Invocation& invocation, const Streams& streams);
ExitStatus run_setups(const Invocation& invocation, const Streams& streams);
ExitStatus run_rod(const Invocation& invocation, const Streams& streams);
ExitStatus run_labels(const Invocation& invocation, const Streams& streams);
ExitStatus run_compare(const Invocation& invocation, const Streams& streams);
ExitStatus run_draw(const Invocation& invocation, const Streams& streams);
ExitStatus run_book(const Invocation& invocation, const Streams& streams);
ExitStatus run_quote(const Invocation& invocation, const Streams& streams);
ExitStatus run_solids(const Invocation& invocation, const Streams& streams);
ExitStatus run_example(const Invocation& invocation, const Streams& streams);
ExitStatus run_specs(const Invocation& invocation, const Streams& streams);
ExitStatus run_shop(const Invocation& invocation, const Streams& streams);
ExitStatus run_explain(const Invocation& invocation, const Streams& streams);
ExitStatus run_moisture(const Invocation& invocation, const Streams& streams);
ExitStatus run_help(const Invocation& invocation, const Streams& streams);

/// Everything, from the arguments of main(), the program's name left out, to the exit status; no
/// exception escapes.
ExitStatus run(std::span<const char* const> arguments, const Streams& streams);

/// Writes a result, over none of the files that it came from; tells of a fault.
ExitStatus write_result(const std::string& text, const Invocation& invocation,
                        const Streams& streams, const std::vector<std::string>& inputs = {});

/// Writes one line to standard error, as far as that can be done, so that a terminal shows whatever
/// stands in it and acts on nothing. All messages go this way.
void complain(std::string_view line, const Streams& streams);

}  // namespace haunch
