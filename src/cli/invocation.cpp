#include "invocation.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <bit>
#include <charconv>
#include <optional>
#include <utility>

#include "command_table.h"
#include "document.h"
#include "dotted_keys.h"
#include "file_place.h"
#include "help_text.h"
#include "order_sheet.h"
#include "output_file.h"
#include "schemas.h"
#include "trial_options.h"

namespace haunch {
namespace {

constexpr unsigned kFinestFraction = 512;
constexpr std::uint64_t kMostJobs = 64;

/// An option that takes a value: as often as it was given.
struct RawValue {
  const OptionRow& row;
  std::vector<std::string> given = {};

  bool is_given() const { return !given.empty(); }
  std::string value_or(std::string_view fallback) const {
    return given.empty() ? std::string(fallback) : given.front();
  }
  std::string short_name() const { return std::string(row.short_name()); }
};

/// The options as written, before they are understood.
struct RawOptions {
  RawValue format{option_row("--format")}, units{option_row("--units")}, csv{option_row("--csv")},
      fraction{option_row("--fraction")}, decimals{option_row("--decimals")},
      color{option_row("--color")}, output{option_row("-o,--output")}, shop{option_row("--shop")},
      temperature{option_row("--temperature")}, humidity{option_row("--humidity")},
      joint{option_row("--joint")}, measured{option_row("--measured")},
      stock{option_row("--stock")}, leftover{option_row("--leftover")},
      prefer{option_row("--prefer")}, stages{option_row("--stages")},
      effort{option_row("--effort")}, seed{option_row("--seed")}, jobs{option_row("--jobs")},
      input{option_row("--input")}, mended{option_row("--mended")}, parts{option_row("--parts")},
      paper{option_row("--paper")}, sticker{option_row("--sticker")}, order{option_row("--order")},
      margin{option_row("--margin")}, gap{option_row("--gap")}, rates{option_row("--rates")},
      variants{option_row("--variants")}, quantity{option_row("--quantity")},
      actual{option_row("--actual")}, corrected{option_row("--corrected")},
      audience{option_row("--for")}, as{option_row("--as")}, number{option_row("--number")},
      date{option_row("--date")};
  RawValue with{option_row("--with")};  // as often as there are keys
  std::vector<RawValue>
      readings;  // of trial, one for each of its options, given as often as there are readings
  std::vector<std::string> words;
  bool fahrenheit = false, full = false, same = false;
  bool quiet = false, brief_help = false, full_help = false, version = false;

  RawOptions() {
    for (const TrialOption& reading : kTrialOptions)
      readings.push_back(
          {*std::find_if(std::begin(kOptions), std::end(kOptions),
                         [&](const OptionRow& option) { return option.names == reading.option; })});
  }
  /// Those that are given once.
  std::vector<RawValue*> single_values() {
    return {&format,      &units,    &csv,    &fraction, &decimals, &color,    &output, &shop,
            &temperature, &humidity, &joint,  &measured, &stock,    &leftover, &prefer, &stages,
            &effort,      &seed,     &jobs,   &input,    &mended,   &parts,    &paper,  &sticker,
            &order,       &margin,   &gap,    &rates,    &variants, &quantity, &actual, &corrected,
            &audience,    &as,       &number, &date};
  }
  std::vector<RawValue*> values() {
    std::vector<RawValue*> all = single_values();
    all.push_back(&with);
    for (RawValue& reading : readings)
      all.push_back(&reading);
    return all;
  }
  struct Flag {
    const OptionRow& row;
    bool* given;
  };
  std::array<Flag, 7> flags() {
    return {{{option_row("--full"), &full},
             {option_row("--same"), &same},
             {option_row("--fahrenheit"), &fahrenheit},
             {option_row("-q,--quiet"), &quiet},
             {option_row("-h"), &brief_help},
             {option_row("--help"), &full_help},
             {option_row("--version"), &version}}};
  }
};

/// Whether an option "-o,--output" may stand among the arguments: as a word, perhaps with its value
/// behind it, or as one of several letters.
bool may_be_among(const std::vector<std::string>& arguments, const OptionRow& option) {
  const std::string_view word = option.long_name();
  const bool has_letter = word != option.names;
  return std::any_of(arguments.begin(), arguments.end(), [&](const std::string& argument) {
    if (argument.starts_with("--")) return !word.empty() && argument.starts_with(word);
    return has_letter && argument.starts_with('-') &&
           argument.find(option.names[1], 1) != std::string::npos;
  });
}

/// Only what may stand there is declared: of all options that would be a tenth of a short run.
void declare(CLI::App& app, RawOptions& raw, const std::vector<std::string>& arguments) {
  app.set_help_flag();
  app.add_option("words", raw.words);
  for (RawValue* value : raw.values())
    if (may_be_among(arguments, value->row))
      app.add_option(std::string(value->row.names), value->given)
          ->take_all()
          ->allow_extra_args(false);
  for (const auto& [row, given] : raw.flags())
    if (may_be_among(arguments, row)) app.add_flag(std::string(row.names), *given);
}

/// `rest` is what was left of an option: all of it, or of `-help` after its known letter "-elp".
std::string unknown_option(const std::vector<std::string>& arguments, const std::string& rest) {
  const auto whole =
      std::find_if(arguments.begin(), arguments.end(), [&](const std::string& argument) {
        const bool bundle = argument.size() > rest.size() && argument.starts_with('-') &&
                            !argument.starts_with("--");
        return argument == rest ||
               (bundle && rest.size() > 1 && argument.ends_with(rest.substr(1)));
      });
  const std::string option = whole == arguments.end() ? rest : *whole;
  std::vector<std::string_view> known;
  for (const OptionRow& row : kOptions)
    if (!row.long_name().empty()) known.push_back(row.long_name());
  const std::string name = option.substr(0, option.find('='));
  const std::string dashed = name.starts_with("--") ? name : "-" + name;
  const std::string_view nearest = nearest_word(dashed, known);
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

/// What is wrong with how often a value was given, or with an empty one.
std::optional<UsageError> value_fault(RawOptions& raw) {
  for (const RawValue* value : raw.single_values()) {
    if (value->given.size() > 1) return UsageError{value->short_name() + ": given twice; keep one"};
    if (value->is_given() && value->given.front().empty())
      return UsageError{value->short_name() +
                        ": its value is empty; leave the option out, or give one"};
  }
  return {};
}

/// An option that has nothing to do with the command.
std::optional<UsageError> misplaced_option(RawOptions& raw, Command command) {
  for (const RawValue* value : raw.values())
    if (value->is_given() && !goes_with(value->row.goes, command))
      return UsageError{value->short_name() + ": goes with " +
                        std::string(goes_words(value->row.goes)) + "; leave it out here"};
  for (const auto& [row, given] : raw.flags())
    if (*given && !goes_with(row.goes, command))
      return UsageError{std::string(row.names) + ": goes with " +
                        std::string(goes_words(row.goes)) + "; leave it out here"};
  return {};
}

std::optional<UsageError> understand_fraction(const RawOptions& raw, View& view) {
  const std::string word = raw.fraction.value_or("64");
  unsigned fraction = 0;
  const auto [end, fault] = std::from_chars(word.data(), word.data() + word.size(), fraction);
  const bool is_number =
      fault == std::errc() && end == word.data() + word.size() && word.front() != '0';
  const bool is_power =
      fraction > 1 && fraction <= kFinestFraction && std::has_single_bit(fraction);
  if (word != "none" && (!is_number || !is_power))
    return UsageError{"--fraction: \"" + word +
                      "\" is no denominator; write 2, 4, 8 … to 512, or none for decimal inches"};
  view.lengths.inch_denominator = word == "none" ? 0 : static_cast<int>(fraction);
  return {};
}

struct FormatRow {
  std::string_view word;
  Format format;
};

/// Those that a command is written in.
std::vector<FormatRow> formats_of(Command command) {
  std::vector<FormatRow> formats{
      {"table", Format::table}, {"json", Format::json}, {"csv", Format::csv}};
  if (command == Command::rod || command == Command::lumber)
    formats.push_back({"svg", Format::svg});
  if (command == Command::labels || command == Command::quote)
    formats.push_back({"html", Format::html});
  return formats;
}

std::optional<UsageError> understand_format(const RawOptions& raw, Command command, View& view) {
  const std::vector<FormatRow> formats = formats_of(command);
  std::vector<std::string_view> words;
  for (const FormatRow& row : formats)
    words.push_back(row.word);
  const auto format = pick("--format", raw.format.value_or("table"), words);
  if (const auto* error = std::get_if<UsageError>(&format)) return *error;
  view.format = formats[std::get<std::size_t>(format)].format;
  return {};
}

std::optional<UsageError> understand_view(const RawOptions& raw, Command command, View& view) {
  if (auto error = understand_format(raw, command, view)) return error;
  const auto csv = pick("--csv", raw.csv.value_or("plain"), {"plain", "spreadsheet", "semicolon"});
  if (const auto* error = std::get_if<UsageError>(&csv)) return *error;
  view.csv = static_cast<CsvProfile>(std::get<std::size_t>(csv));
  if (raw.csv.is_given() && view.format != Format::csv)
    return UsageError{"--csv: goes with --format csv; give both"};
  if (raw.units.is_given()) {
    const auto units = pick("--units", raw.units.given.front(), {"mm", "in"});
    if (const auto* error = std::get_if<UsageError>(&units)) return *error;
    view.unit = std::get<std::size_t>(units) == 0 ? Unit::mm : Unit::inch;
  }
  return understand_fraction(raw, view);
}

std::optional<UsageError> understand_paper(const RawOptions& raw, Invocation& invocation) {
  if (!raw.paper.is_given()) return {};
  const auto paper = pick("--paper", raw.paper.given.front(), {"a4", "letter"});
  if (const auto* error = std::get_if<UsageError>(&paper)) return *error;
  invocation.paper = raw.paper.given.front();
  return {};
}

/// A whole number from `least` to `most`, given as an option.
std::variant<std::uint64_t, UsageError> whole_option(const RawValue& raw, std::uint64_t least,
                                                     std::uint64_t most) {
  const std::string word = raw.value_or("1");
  std::uint64_t number = 0;
  const auto [end, fault] = std::from_chars(word.data(), word.data() + word.size(), number);
  if (fault != std::errc() || end != word.data() + word.size() || number < least || number > most)
    return UsageError{raw.short_name() + ": \"" + word +
                      "\" is not taken; write a whole number from " + std::to_string(least) +
                      " to " + std::to_string(most)};
  return number;
}

std::optional<UsageError> understand_lumber(const RawOptions& raw, Invocation& invocation) {
  constexpr std::uint64_t kMostEffort = 100;
  constexpr std::uint64_t kMostSeed = 999'999'999;
  invocation.stock = raw.stock.value_or("");
  invocation.leftover = raw.leftover.value_or("");
  invocation.parts = raw.parts.value_or("");
  const auto prefer = pick("--prefer", raw.prefer.value_or("cost"), {"cost", "waste", "boards"});
  if (const auto* error = std::get_if<UsageError>(&prefer)) return *error;
  invocation.lumber.prefer = static_cast<lumber::Prefer>(std::get<std::size_t>(prefer));
  if (invocation.command == Command::quote) return {};
  const auto stages = pick("--stages", raw.stages.value_or("three"),
                           {"three", "crosscut-rip-crosscut", "rip-crosscut-rip", "two",
                            "rip-crosscut", "crosscut-rip"});
  if (const auto* error = std::get_if<UsageError>(&stages)) return *error;
  invocation.lumber.stages = static_cast<lumber::Stages>(std::get<std::size_t>(stages));
  const auto effort = whole_option(raw.effort, 1, kMostEffort);
  if (const auto* error = std::get_if<UsageError>(&effort)) return *error;
  invocation.lumber.effort = static_cast<int>(std::get<std::uint64_t>(effort));
  const auto seed = whole_option(raw.seed, 0, kMostSeed);
  if (const auto* error = std::get_if<UsageError>(&seed)) return *error;
  invocation.lumber.seed = std::get<std::uint64_t>(seed);
  return {};
}

std::optional<UsageError> understand_quote(const RawOptions& raw, Invocation& invocation) {
  if (invocation.command != Command::quote) return {};  // misplaced_option() tells of them there
  QuoteWishes& quote = invocation.quote;
  const auto audience = pick("--for", raw.audience.value_or("shop"), {"customer", "shop"});
  if (const auto* error = std::get_if<UsageError>(&audience)) return *error;
  const auto as = pick("--as", raw.as.value_or("invoice"), {"invoice"});
  if (const auto* error = std::get_if<UsageError>(&as)) return *error;
  quote.audience = raw.audience.value_or("");
  quote.as = raw.as.value_or("");
  quote.rates = raw.rates.value_or("");
  quote.variants = raw.variants.value_or("");
  quote.quantity = raw.quantity.value_or("");
  quote.actual = raw.actual.value_or("");
  quote.corrected = raw.corrected.value_or("");
  quote.number = raw.number.value_or("");
  quote.date = raw.date.value_or("");
  quote.stages = raw.stages.value_or("");
  return {};
}

/// The keys that are set, and their text, one a line.
std::variant<SetKeys, UsageError> understand_with(const std::vector<std::string>& given) {
  SetKeys set;
  std::string text;
  for (const std::string& each : given) {
    const std::size_t sign = each.find('=');
    const auto steps =
        sign == std::string::npos ? std::nullopt : steps_of(std::string_view(each).substr(0, sign));
    if (!steps || each.find_first_of("\r\n") != std::string::npos)
      return UsageError{"--with: \"" + each +
                        "\" sets no key; write KEY=VALUE, such as groove_depth=6"};
    const auto start = static_cast<std::uint32_t>(text.size());
    SetKey key{*steps, {}, start};
    if (sign + 1 < each.size())
      key.value = plain_value(each.substr(sign + 1), start + static_cast<std::uint32_t>(sign) + 1,
                              holds_words(*steps));
    set.keys.push_back(std::move(key));
    text += each + "\n";
  }
  set.text = std::make_shared<const std::string>(std::move(text));
  return set;
}

std::optional<UsageError> understand_ways(const RawOptions& raw, SourceWays& ways) {
  ways.specs = ways.runs = true;
  const auto input = pick("--input", raw.input.value_or("json"), {"json", "csv"});
  if (const auto* error = std::get_if<UsageError>(&input)) return *error;
  ways.sheets = std::get<std::size_t>(input) == 1;
  auto with = understand_with(raw.with.given);
  if (const auto* error = std::get_if<UsageError>(&with)) return *error;
  if (!raw.with.given.empty()) ways.with = {std::move(std::get<SetKeys>(with))};
  return {};
}

const CommandRow* command_named(std::string_view word) {
  const auto* row = std::find_if(std::begin(kCommands), std::end(kCommands),
                                 [&](const CommandRow& it) { return it.name == word; });
  return row != std::end(kCommands) ? row : nullptr;
}

/// "; did you mean cutlist?"
std::string nearest_command(std::string_view word) {
  std::vector<std::string_view> names;
  for (const CommandRow& command : kCommands)
    names.push_back(command.name);
  const std::string_view nearest = nearest_word(word, names);
  return nearest.empty() ? "; 'haunch -h' lists the commands"
                         : "; did you mean " + std::string(nearest) + "?";
}

/// A first word that is no file, and does not look like one's name.
std::optional<UsageError> unknown_command(const std::string& word) {
  if (word.find_first_of("./-") != std::string::npos || !is_absent(word)) return {};
  return UsageError{"\"" + word + "\" is neither a command nor a file" + nearest_command(word)};
}

/// `haunch help WORD`.
std::optional<UsageError> unknown_topic(const std::vector<std::string>& words) {
  if (words.empty() || command_named(words.front()) != nullptr || words.front() == "man" ||
      is_shell(words.front()))
    return {};
  return UsageError{"help: \"" + words.front() + "\" is no command" +
                    nearest_command(words.front())};
}

std::optional<UsageError> unknown_schema(const std::vector<std::string>& words) {
  std::vector<std::string_view> known;
  for (const SchemaRow& row : kSchemas)
    known.push_back(row.name);
  if (words.size() == 1 && std::find(known.begin(), known.end(), words.front()) != known.end())
    return {};
  const std::string_view meant =
      words.size() == 1 ? nearest_word(words.front(), known) : std::string_view();
  if (!meant.empty())
    return UsageError{"schema: \"" + words.front() + "\" is not known; did you mean " +
                      std::string(meant) + "?"};
  return UsageError{"schema: say which: 'haunch schema spec', " + schema_names(1)};
}

std::optional<UsageError> understand_command(Invocation& invocation) {
  std::vector<std::string>& words = invocation.words;
  const CommandRow* named = words.empty() ? nullptr : command_named(words.front());
  if (named != nullptr) {
    invocation.command = named->command;
    words.erase(words.begin());
    if (invocation.command == Command::full_help) return unknown_topic(words);
  } else if (!words.empty()) {
    if (auto error = unknown_command(words.front())) return error;
  }
  if (invocation.command == Command::schema) return unknown_schema(words);
  if (invocation.command >= Command::species && named != nullptr) return {};
  if (words.empty() && named != nullptr)
    return UsageError{std::string(named->name) +
                      ": no spec is named; give a file, a folder, or - for standard input"};
  if (words.empty()) invocation.command = Command::brief_help;
  constexpr std::array kSections = {Section::sheet, Section::cutlist, Section::joints,
                                    Section::check, Section::season};
  if (invocation.command <= Command::season)
    invocation.view.section = kSections[static_cast<std::size_t>(invocation.command)];
  return {};
}

/// What is taken as it is written, to be understood where it is used.
void take_words(const RawOptions& raw, Invocation& invocation) {
  invocation.output = raw.output.value_or("");
  invocation.shop = raw.shop.value_or("");
  invocation.temperature = raw.temperature.value_or("");
  invocation.humidity = raw.humidity.value_or("");
  invocation.fahrenheit = raw.fahrenheit;
  invocation.mended = raw.mended.value_or("");
  invocation.sticker = raw.sticker.value_or("");
  invocation.order = raw.order.value_or("");
  invocation.margin = raw.margin.value_or("");
  invocation.gap = raw.gap.value_or("");
  invocation.same = raw.same;
  invocation.view.full = raw.full;
  invocation.view.on_paper = !invocation.output.empty() && invocation.output != "-";
  invocation.joint = raw.joint.value_or("");
  invocation.measured = raw.measured.value_or("");
  for (const RawValue& reading : raw.readings)
    for (const std::string& value : reading.given)
      invocation.readings.push_back({std::string(reading.row.names), value});
}

/// What is there, but does not go together.
std::optional<UsageError> contradiction(const Invocation& invocation) {
  if (!invocation.mended.empty() && is_standard_output(invocation.mended))
    return UsageError{"--mended: names no file; give the one that the spec is to be written to"};
  if (is_one_file(invocation.mended, invocation.output))
    return UsageError{"--mended: is the file of -o too; give each its own"};
  if (invocation.shop == "-" &&
      std::find(invocation.words.begin(), invocation.words.end(), "-") != invocation.words.end())
    return UsageError{"--shop: the shop file and a spec cannot both come from standard input"};
  return {};
}

bool is_for_bench(const Invocation& invocation) {
  return !invocation.view.full &&
         (invocation.command <= Command::joints || invocation.command == Command::lumber ||
          is_for_order(invocation.command));
}

/// Pages for the bench have figures that can be set and marked, all others have all of them.
std::optional<UsageError> understand_decimals(const RawOptions& raw, Invocation& invocation) {
  LengthStyle& lengths = invocation.view.lengths;
  const bool bench = is_for_bench(invocation);
  if (!raw.decimals.is_given()) {
    lengths.decimals = bench ? 1 : 3;
    lengths.all_left_over = !bench;
    return {};
  }
  const auto decimals = whole_option(raw.decimals, 1, 3);
  if (const auto* error = std::get_if<UsageError>(&decimals)) return *error;
  lengths.decimals = static_cast<int>(std::get<std::uint64_t>(decimals));
  lengths.all_left_over = !bench || lengths.decimals == 3;
  return {};
}

/// What asks for help or the version: nothing else on the line is looked at.
void understand_help(const RawOptions& raw, Invocation& invocation) {
  invocation.command = raw.full_help    ? Command::full_help
                       : raw.brief_help ? Command::brief_help
                                        : Command::version;
  const bool names_command = !raw.words.empty() && command_named(raw.words.front()) != nullptr;
  invocation.words.resize(names_command ? 1 : 0);  // only help of a command looks at it
}

std::optional<UsageError> understand_color(const RawOptions& raw, Invocation& invocation) {
  const auto color = pick("--color", raw.color.value_or("auto"), {"auto", "always", "never"});
  if (const auto* error = std::get_if<UsageError>(&color)) return *error;
  invocation.color = static_cast<Color>(std::get<std::size_t>(color));
  return {};
}

std::optional<UsageError> understand_jobs(const RawOptions& raw, Invocation& invocation) {
  const auto jobs = whole_option(raw.jobs, 1, kMostJobs);
  if (const auto* error = std::get_if<UsageError>(&jobs)) return *error;
  invocation.jobs = std::get<std::uint64_t>(jobs);
  return {};
}

std::optional<UsageError> spec_missing(const Invocation& invocation) {
  const bool wants_spec =
      invocation.command <= Command::season || invocation.command == Command::brief_help;
  if (!wants_spec || !invocation.words.empty()) return {};
  return UsageError{"no spec is named; give a file, a folder, or - for standard input"};
}

/// All options in turn; the first that cannot be taken is told.
std::optional<UsageError> understand_options(RawOptions& raw, Invocation& invocation) {
  if (auto error = value_fault(raw)) return error;
  take_words(raw, invocation);
  if (auto error = understand_color(raw, invocation)) return error;
  if (auto error = understand_jobs(raw, invocation)) return error;
  if (auto error = understand_ways(raw, invocation.ways)) return error;
  if (auto error = understand_command(invocation)) return error;
  if (auto error = understand_lumber(raw, invocation)) return error;
  if (auto error = understand_quote(raw, invocation)) return error;
  if (auto error = understand_view(raw, invocation.command, invocation.view)) return error;
  if (auto error = understand_paper(raw, invocation)) return error;
  if (auto error = understand_decimals(raw, invocation)) return error;
  if (auto error = spec_missing(invocation)) return error;
  if (auto error = misplaced_option(raw, invocation.command)) return error;
  return contradiction(invocation);
}

std::variant<Invocation, UsageError> understand(RawOptions& raw) {
  Invocation invocation;
  invocation.words = raw.words;
  invocation.quiet = raw.quiet;
  if (raw.full_help || raw.brief_help || raw.version)
    understand_help(raw, invocation);
  else if (const auto error = understand_options(raw, invocation))
    return *error;
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
  declare(app, raw, arguments);
  std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 takes them
  try {
    app.parse(std::move(reversed));
  } catch (const CLI::ExtrasError&) {
    return UsageError{unknown_option(
        arguments, app.remaining().empty() ? std::string() : app.remaining().front())};
  } catch (const CLI::ArgumentMismatch& error) {
    const std::string words = error.what();
    return UsageError{words.substr(0, words.find(':')) + ": wants a value after it"};
  } catch (const CLI::ParseError& error) {
    return UsageError{error.what()};
  }
  return understand(raw);
}

}  // namespace haunch
