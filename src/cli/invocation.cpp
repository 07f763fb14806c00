#include "invocation.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <bit>
#include <optional>
#include <utility>

#include "document.h"

namespace haunch {
namespace {

struct CommandName {
  std::string_view name;
  Command command;
};

constexpr std::array kCommands = {
    CommandName{"sheet", Command::sheet},   CommandName{"cutlist", Command::cutlist},
    CommandName{"joints", Command::joints}, CommandName{"check", Command::check},
    CommandName{"schema", Command::schema},
};

constexpr int kFinestFraction = 512;

/// The options as written, before they are understood.
struct RawOptions {
  std::string format = "table";
  std::string units;
  std::string csv = "plain";
  std::string fraction = "64";
  std::vector<std::string> words;
  std::vector<std::string> output, shop;  // as often as given
  bool quiet = false, brief_help = false, full_help = false, version = false;
};

void declare(CLI::App& app, RawOptions& raw) {
  app.set_help_flag();
  app.add_option("words", raw.words);
  app.add_option("--format", raw.format);
  app.add_option("--units", raw.units);
  app.add_option("--csv", raw.csv);
  app.add_option("--fraction", raw.fraction);
  app.add_option("-o,--output", raw.output)->expected(1)->take_all();
  app.add_option("--shop", raw.shop)->expected(1)->take_all();
  app.add_flag("-q,--quiet", raw.quiet);
  app.add_flag("-h", raw.brief_help);
  app.add_flag("--help", raw.full_help);
  app.add_flag("--version", raw.version);
}

std::vector<std::string_view> names_of(const std::vector<std::string>& names) {
  return {names.begin(), names.end()};
}

std::string unknown_option(const CLI::App& app, const std::string& option) {
  std::vector<std::string> known;
  for (const CLI::Option* each : app.get_options())
    for (const std::string& name : each->get_lnames())
      known.push_back("--" + name);
  const std::string name = option.substr(0, option.find('='));
  const std::string_view nearest = nearest_word(name, names_of(known));
  return "unknown option " + name +
         (nearest.empty() ? "; 'haunch -h' lists the options"
                          : "; did you mean " + std::string(nearest) + "?");
}

/// The place of `word` among `legal`, or what is wrong with it.
std::variant<std::size_t, UsageError> pick(std::string_view option, const std::string& word,
                                           const std::vector<std::string_view>& legal) {
  const auto found = std::find(legal.begin(), legal.end(), word);
  if (found != legal.end()) return static_cast<std::size_t>(found - legal.begin());
  std::string all;
  for (const std::string_view each : legal)
    all += (all.empty() ? "" : each == legal.back() ? " or " : ", ") + std::string(each);
  const std::string_view nearest = nearest_word(word, legal);
  return UsageError{
      std::string(option) + ": \"" + word + "\" is not known; " +
      (nearest.empty() ? "write " + all : "did you mean " + std::string(nearest) + "?")};
}

std::optional<UsageError> understand_view(const RawOptions& raw, View& view) {
  const auto format = pick("--format", raw.format, {"table", "json", "csv"});
  if (const auto* error = std::get_if<UsageError>(&format)) return *error;
  view.format = static_cast<Format>(std::get<std::size_t>(format));
  const auto csv = pick("--csv", raw.csv, {"plain", "spreadsheet"});
  if (const auto* error = std::get_if<UsageError>(&csv)) return *error;
  view.for_spreadsheet = std::get<std::size_t>(csv) == 1;
  if (!raw.units.empty()) {
    const auto units = pick("--units", raw.units, {"mm", "in"});
    if (const auto* error = std::get_if<UsageError>(&units)) return *error;
    view.unit = std::get<std::size_t>(units) == 0 ? Unit::mm : Unit::inch;
  }
  int fraction = 0;
  const bool is_number = CLI::detail::lexical_cast(raw.fraction, fraction);
  const bool is_power = fraction > 0 && fraction <= kFinestFraction &&
                        std::has_single_bit(static_cast<unsigned>(fraction));
  if (raw.fraction != "none" && (!is_number || !is_power))
    return UsageError{"--fraction: \"" + raw.fraction +
                      "\" is no denominator; write 2, 4, 8 … to 512, or none for decimal inches"};
  view.lengths.inch_denominator = raw.fraction == "none" ? 0 : fraction;
  return {};
}

std::optional<UsageError> understand_command(Invocation& invocation) {
  std::vector<std::string>& words = invocation.words;
  const auto named =
      words.empty() ? kCommands.end()
                    : std::find_if(kCommands.begin(), kCommands.end(),
                                   [&](const CommandName& it) { return it.name == words.front(); });
  if (named != kCommands.end()) {
    invocation.command = named->command;
    words.erase(words.begin());
  }
  if (invocation.command == Command::schema) {
    if (words.size() == 1 && (words.front() == "spec" || words.front() == "report")) return {};
    return UsageError{"schema: say which, 'haunch schema spec' or 'haunch schema report'"};
  }
  if (words.empty() && named != kCommands.end())
    return UsageError{std::string(named->name) +
                      ": no spec is named; give a file, a folder, or - for standard input"};
  if (words.empty()) invocation.command = Command::brief_help;
  constexpr std::array kSections = {Section::sheet, Section::cutlist, Section::joints,
                                    Section::check};
  if (invocation.command <= Command::check)
    invocation.view.section = kSections[static_cast<std::size_t>(invocation.command)];
  return {};
}

std::variant<Invocation, UsageError> understand(const RawOptions& raw) {
  Invocation invocation;
  invocation.words = raw.words;
  invocation.quiet = raw.quiet;
  if (raw.full_help || raw.brief_help || raw.version) {
    invocation.command = raw.full_help    ? Command::full_help
                         : raw.brief_help ? Command::brief_help
                                          : Command::version;
    return invocation;
  }
  if (raw.output.size() > 1) return UsageError{"-o: given twice; results go to one file"};
  if (raw.shop.size() > 1) return UsageError{"--shop: given twice; there is one shop file"};
  if (!raw.output.empty()) invocation.output = raw.output.front();
  if (!raw.shop.empty()) invocation.shop = raw.shop.front();
  if (!raw.output.empty() && invocation.output.empty())
    return UsageError{"-o: the file's name is empty"};
  if (const auto error = understand_view(raw, invocation.view)) return *error;
  if (const auto error = understand_command(invocation)) return *error;
  if (raw.words.empty())
    return UsageError{"no spec is named; give a file, a folder, or - for standard input"};
  return invocation;
}

}  // namespace

std::variant<Invocation, UsageError> read_command_line(const std::vector<std::string>& arguments) {
  if (arguments.empty()) {
    Invocation invocation;
    invocation.command = Command::brief_help;
    return invocation;
  }
  CLI::App app;
  RawOptions raw;
  declare(app, raw);
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 takes them
  try {
    app.parse(std::move(reversed));
  } catch (const CLI::ExtrasError&) {
    return UsageError{
        unknown_option(app, app.remaining().empty() ? std::string() : app.remaining().front())};
  } catch (const CLI::ParseError& error) {
    return UsageError{error.what()};
  }
  return understand(raw);
}

}  // namespace haunch
