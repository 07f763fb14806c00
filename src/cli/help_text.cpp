#include "help_text.h"

#include <fmt/core.h>

#include <CLI/Version.hpp>
#include <nlohmann/detail/abi_macros.hpp>

#include "command_table.h"
#include "formats.h"
#include "text_table.h"

namespace haunch {
namespace {

constexpr std::string_view kWhat =
    "haunch works out doors before wood is milled: sizes, joints, cut list, checks.";

constexpr std::string_view kBrief = R"(
  haunch side-door.json                 the whole sheet, for the bench
  haunch check flour-bin.json           only the checks
  haunch cutlist orders/ --format csv   of a folder, for a spreadsheet
  haunch joints side-door.json --units in

commands: sheet (when none is named), cutlist, joints, check, season;
          lumber, setups, rod, labels, compare, trial, species, moisture;
          shop, specs, example, explain;
          schema spec and others; help COMMAND, such as help schema
specs:    JSON files, folders of them, sheets (.csv), or - for standard input
options:  --format table|json|csv   --units mm|in   --shop FILE   -o FILE
          --fraction N   --csv FORM   -q   -h   --help   --version

The shortest spec: {"kind": "door", "units": "mm",
                    "opening": {"width": 930, "height": 2060}}
)";

constexpr std::string_view kSpecs =
    "A file holds one item, a JSON array of items, or one item a line; a sheet (.csv) one "
    "item a row, under a header of keys: id, opening.width. Of a folder every *.json but "
    " shop.json is read, in the order of their names. A bad spec does not stop the others.";

struct ExitRow {
  std::string_view status, about;
};
constexpr ExitRow kExits[] = {
    {"0", "all is well (cautions included)"},
    {"1", "a check failed"},
    {"2", "a spec, the shop file or the command line is wrong"},
    {"3", "a file could not be read or written"},
    {"4", "a fault of the program"},
    {"141", "instead of 0: the reader of a pipe went before it took all"},
};

constexpr std::string_view kLimits =
    "Figures are for orientation. Fire doors, doors on escape routes and glass in doors are "
    "decided by the local code and a licensed professional.";

constexpr std::size_t kNames = 10, kOptionNames = 25;

/// A name, and beside it in a column of its own what it is.
std::string row(std::string_view name, std::string_view about, std::size_t names) {
  const std::size_t indent = 2 + names;
  std::string text = wrapped(about, kPageWidth - indent, 0);
  std::string line = "  " + std::string(name);
  if (name.size() + 2 > names)
    line += "\n" + std::string(indent, ' ');
  else
    line.append(indent - line.size(), ' ');
  for (std::size_t at = text.find('\n'); at != std::string::npos; at = text.find('\n', at + 1))
    if (at + 1 < text.size()) text.insert(at + 1, indent, ' ');
  return line + text + (text.ends_with('\n') ? "" : "\n");
}

std::string option_names(const OptionRow& option) {
  std::string names(option.names);
  if (const std::size_t comma = names.find(','); comma != std::string::npos)
    names.insert(comma + 1, " ");
  return option.value.empty() ? names : names + " " + std::string(option.value);
}

std::string option_row_text(const OptionRow& option) {
  return row(option_names(option), option.about, kOptionNames);
}

const CommandRow& command_row(Command command) {
  return *std::find_if(std::begin(kCommands), std::end(kCommands),
                       [&](const CommandRow& it) { return it.command == command; });
}

std::vector<const OptionRow*> options_of(Command command) {
  std::vector<const OptionRow*> options;
  for (const OptionRow& option : kOptions)
    if (goes_with(option.goes, command)) options.push_back(&option);
  return options;
}

}  // namespace

std::string brief_help() {
  return std::string(kWhat) + "\n" + std::string(kBrief);
}

std::string full_help() {
  std::string text = brief_help() + "\nCommands\n";
  for (const CommandRow& command : kCommands)
    text += row(command.name, command.about, kNames);
  text += "\nSpecs\n" + paragraph(kSpecs) + "\nOptions\n";
  for (const OptionRow& option : kOptions)
    if (!option.about.empty()) text += option_row_text(option);
  text += "\nExit status\n";
  for (const ExitRow& exit : kExits)
    text += row(exit.status, exit.about, 5);
  return text + "\n" + wrapped(kLimits, kPageWidth, 0) + "\n";
}

std::string command_help(Command command) {
  const CommandRow& its = command_row(command);
  std::string text = "haunch " + std::string(its.name) + " " + std::string(its.takes) + "\n" +
                     paragraph(its.about) + "\n";
  for (const std::string_view example : its.examples)
    text += "  " + std::string(example) + "\n";
  text += "\nOptions\n";
  for (const OptionRow* option : options_of(command))
    if (!option->about.empty()) text += option_row_text(*option);
  return text;
}

// ---- the man page

namespace {

/// A text as roff has it: hyphens that are typed, and no line that begins like a request.
std::string roff(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c == '-' || c == '\\') out += '\\';
    out += c == '\\' ? 'e' : c;
  }
  return out.starts_with('.') || out.starts_with('\'') ? "\\&" + out : out;
}

std::string tagged(std::string_view tag, std::string_view about) {
  return fmt::format(".TP\n.B {}\n{}\n", roff(tag), roff(about));
}

}  // namespace

std::string man_page() {
  std::string page = fmt::format(
      ".TH HAUNCH 1 \"\" \"haunch {}\"\n.SH NAME\nhaunch \\- doors, worked out before wood is "
      "milled\n.SH SYNOPSIS\n.B haunch\n[\\fICOMMAND\\fR] [\\fISPEC\\fR…] "
      "[\\fIOPTION\\fR…]\n.SH DESCRIPTION\n{}\n.PP\n{}\n.SH COMMANDS\n",
      tool_version(), roff(kWhat), roff(kSpecs));
  for (const CommandRow& command : kCommands)
    page += tagged(std::string(command.name) + " " + std::string(command.takes), command.about);
  page += ".SH OPTIONS\n";
  for (const OptionRow& option : kOptions)
    if (!option.about.empty()) page += tagged(option_names(option), option.about);
  page += ".SH EXIT STATUS\n";
  for (const ExitRow& exit : kExits)
    page += tagged(exit.status, exit.about);
  page += ".SH ENVIRONMENT\n" + tagged("HAUNCH_SHOP", "names the shop file where --shop does not");
  page += ".SH EXAMPLES\n.nf\n";
  for (const CommandRow& command : kCommands)
    for (const std::string_view example : command.examples)
      page += roff(example) + "\n";
  return page + ".fi\n.SH LIMITS\n" + roff(kLimits) + "\n";
}

// ---- what shells complete

namespace {

/// "mm in" of "mm|in"; of "N" nothing.
std::string words_of(const OptionRow& option) {
  std::string words(option.value);
  if (words.find('|') == std::string::npos) return {};
  std::replace(words.begin(), words.end(), '|', ' ');
  return words;
}

std::string command_names() {
  std::string names;
  for (const CommandRow& command : kCommands)
    names += (names.empty() ? "" : " ") + std::string(command.name);
  return names;
}

/// "--output -o", of all that go with a command.
std::string option_names_of(Command command) {
  std::string names;
  for (const OptionRow* option : options_of(command))
    names += (names.empty() ? "" : " ") +
             std::string(option->long_name().empty() ? option->names : option->long_name());
  return names;
}

std::string bash_completions() {
  std::string text =
      "# Words of haunch for bash.\n_haunch() {\n"
      "  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}\n"
      "  case $before in\n";
  for (const OptionRow& option : kOptions)
    if (const std::string words = words_of(option); !words.empty())
      text += fmt::format("    {}) COMPREPLY=($(compgen -W \"{}\" -- \"$word\")); return ;;\n",
                          option.long_name(), words);
  text += "  esac\n  local options\n  case ${COMP_WORDS[1]} in\n";
  for (const CommandRow& command : kCommands)
    text +=
        fmt::format("    {}) options=\"{}\" ;;\n", command.name, option_names_of(command.command));
  text += fmt::format(
      "    *) options=\"{}\" ;;\n  esac\n"
      "  if [[ $word == -* ]]; then COMPREPLY=($(compgen -W \"$options\" -- \"$word\"))\n"
      "  elif (( COMP_CWORD == 1 )); then COMPREPLY=($(compgen -W \"{}\" -- \"$word\") $(compgen "
      "-f "
      "-- \"$word\"))\n"
      "  else COMPREPLY=($(compgen -f -- \"$word\")); fi\n}}\n"
      "complete -o filenames -F _haunch haunch\n",
      option_names_of(Command::sheet), command_names());
  return text;
}

/// In single quotes, as zsh and fish take a text.
std::string quoted(std::string_view text) {
  std::string out;
  for (const char c : text)
    out += c == '\'' ? std::string("’") : std::string(1, c);
  return "'" + out + "'";
}

std::string zsh_completions() {
  std::string text = "#compdef haunch\n# Words of haunch for zsh.\nlocal -a commands\ncommands=(\n";
  for (const CommandRow& command : kCommands)
    text += "  " + quoted(std::string(command.name) + ":" + std::string(command.about)) + "\n";
  text += ")\n_arguments \\\n";
  for (const OptionRow& option : kOptions) {
    const std::string_view name = option.long_name().empty() ? option.names : option.long_name();
    std::string what;
    if (!option.value.empty()) {
      const std::string words = words_of(option);
      what = ":value:" + (words.empty() ? std::string("_files") : "(" + words + ")");
    }
    text += "  " + quoted(std::string(name) + what) + " \\\n";
  }
  return text + "  '1: :{_describe command commands; _files}' \\\n  '*:spec:_files'\n";
}

std::string fish_completions() {
  std::string text = "# Words of haunch for fish.\n";
  for (const CommandRow& command : kCommands)
    text += fmt::format("complete -c haunch -n __fish_use_subcommand -a {} -d {}\n", command.name,
                        quoted(command.about));
  for (const OptionRow& option : kOptions) {
    text += "complete -c haunch";
    if (option.short_name().size() == 2) text += fmt::format(" -s {}", option.short_name()[1]);
    if (!option.long_name().empty()) text += fmt::format(" -l {}", option.long_name().substr(2));
    if (const std::string words = words_of(option); !words.empty())
      text += " -x -a " + quoted(words);
    else if (!option.value.empty())
      text += " -r";
    text += (option.about.empty() ? "" : " -d " + quoted(option.about)) + "\n";
  }
  return text;
}

}  // namespace

bool is_shell(std::string_view word) {
  return word == "bash" || word == "zsh" || word == "fish";
}

std::string completions_for(std::string_view shell) {
  return shell == "bash"  ? bash_completions()
         : shell == "zsh" ? zsh_completions()
                          : fish_completions();
}

namespace {

std::string format_names() {
  std::string names;
  for (const DocumentFormat* format : kFormats)
    names += (names.empty() ? "" : ", ") + std::string(format->name);
  return names;
}

}  // namespace

std::string version_text() {
  return fmt::format("haunch {}; formats {}; with CLI11 {}, fmt {}.{}.{}, nlohmann/json {}.{}.{}\n",
                     tool_version(), format_names(), CLI11_VERSION, FMT_VERSION / 10000,
                     FMT_VERSION / 100 % 100, FMT_VERSION % 100, NLOHMANN_JSON_VERSION_MAJOR,
                     NLOHMANN_JSON_VERSION_MINOR, NLOHMANN_JSON_VERSION_PATCH);
}

}  // namespace haunch
