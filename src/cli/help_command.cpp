#include "command_table.h"
#include "commands.h"
#include "help_text.h"

namespace haunch {

ExitStatus run_help(const Invocation& invocation, const Streams& streams) {
  const auto text = [&]() -> std::string {
    if (invocation.command == Command::version) return version_text();
    if (invocation.command == Command::brief_help) return brief_help();
    if (invocation.words.empty()) return full_help();
    const std::string& word = invocation.words.front();
    if (word == "man") return man_page();
    if (is_shell(word)) return completions_for(word);
    const auto* row = std::find_if(std::begin(kCommands), std::end(kCommands),
                                   [&](const CommandRow& it) { return it.name == word; });
    return row != std::end(kCommands) ? command_help(row->command) : full_help();
  };
  return write_result(text(), invocation, streams);
}

}  // namespace haunch
