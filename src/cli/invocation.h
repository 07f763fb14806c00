// What a command line asks for.
#pragma once

#include <cstddef>
#include <string>
#include <variant>
#include <vector>

#include "lumber_report.h"
#include "spec_source.h"
#include "view.h"

namespace haunch {

enum class Command {
  sheet,
  cutlist,
  joints,
  check,
  season,
  schema,
  species,
  moisture,
  trial,
  lumber,
  setups,
  rod,
  labels,
  compare,
  draw,
  book,
  quote,
  solids,
  shop,
  explain,
  example,
  specs,
  brief_help,
  full_help,
  version
};

/// A reading that was given as an option: "--tenon", "14.9".
struct GivenReading {
  std::string option;
  std::string value;
};

/// What is asked of a quote, as written; empty: not given.
struct QuoteWishes {
  std::string rates, variants, quantity, actual, corrected;
  std::string audience;  // "customer" or "shop"
  std::string as;        // "invoice"
  std::string number, date, stages;
};

/// When words stand out on a page.
enum class Color { automatic, always, never };

struct Invocation {
  Command command = Command::sheet;
  View view;
  std::vector<std::string> words;      // specs; of schema, which one; of species, what to look for
  std::string output;                  // empty: standard output
  std::string shop;                    // "none": none; empty: not given
  std::string joint, measured;         // of trial; empty: not given
  std::vector<GivenReading> readings;  // of trial, in the order of their options
  std::string temperature, humidity;   // of moisture, as written; empty: not given
  std::string stock, leftover, parts;  // of lumber; empty: not given
  LumberWishes lumber;
  std::size_t jobs = 1;  // items worked side by side
  bool fahrenheit = false;
  std::string mended;                 // of check; empty: not given
  std::string paper, sticker, order;  // of what is printed; empty: not given
  std::string margin, gap;            // of labels; empty: not given
  QuoteWishes quote;
  bool same = false;  // of compare: any difference is as a check that fails
  SourceWays ways;
  bool quiet = false;
  Color color = Color::automatic;
};

/// A command line that can't be taken: what is wrong and what would be right.
struct UsageError {
  std::string message;
};

/// Reads the arguments, the program's name left out.
std::variant<Invocation, UsageError> read_command_line(const std::vector<std::string>& arguments);

}  // namespace haunch
