// Help, the man page and what shells complete, all from the table of commands and options.
#pragma once

#include <string>

#include "invocation.h"

namespace haunch {

/// In at most 24 lines of 80 columns.
std::string brief_help();
/// That, and every command and option.
std::string full_help();
/// What one command does, the options that go with it, two examples.
std::string command_help(Command command);

/// In the macros of man(7).
std::string man_page();

/// The shells that haunch can complete words for: "bash", "zsh", "fish".
bool is_shell(std::string_view word);
/// A script for one of them.
std::string completions_for(std::string_view shell);

std::string version_text();

}  // namespace haunch
