// Every command and every option, a row each: from these rows come the reading of a command line,
// all help, the man page and what shells complete.
#pragma once

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>

#include "invocation.h"

namespace haunch {

/// The commands that an option goes with.
enum class Goes {
  with_any,
  with_specs,
  with_input,
  with_shop,
  with_reports,
  with_items,
  with_tables,
  with_moisture,
  with_trial,
  with_lumber,
  with_stock,
  with_stages,
  with_check,
  with_paper,
  with_labels,
  with_name,
  with_compare,
  with_quote
};

struct CommandRow {
  std::string_view name;
  Command command;
  std::string_view takes;  // after it on a command line
  std::string_view about;
  std::array<std::string_view, 2> examples;
};

inline constexpr CommandRow kCommands[] = {
    {"sheet",
     Command::sheet,
     "SPEC…",
     "cut list, joinery, checks and what was assumed",
     {"haunch sheet side-door.json", "haunch side-door.json --units in -o side-door.txt"}},
    {"cutlist",
     Command::cutlist,
     "SPEC…",
     "the pieces to cut",
     {"haunch cutlist side-door.json", "haunch cutlist orders/ --format csv -o cuts.csv"}},
    {"joints",
     Command::joints,
     "SPEC…",
     "every mortise, tenon, groove and panel, grouped by machine setting",
     {"haunch joints side-door.json", "haunch joints side-door.json --units in --fraction 32"}},
    {"check",
     Command::check,
     "SPEC…",
     "every check with its figure and limits, and remedies that were tried",
     {"haunch check flour-bin.json", "haunch check orders/ --format json"}},
    {"season",
     Command::season,
     "SPEC…",
     "what the wood does between its driest and its wettest, gaps, weight",
     {"haunch season oven-room.json", "haunch season oven-room.json --format csv"}},
    {"explain",
     Command::explain,
     "SPEC [WHAT]",
     "where the figures of a SPEC come from; or one of it, such as a key, C.length, J1, or the "
     "name "
     "of a check",
     {"haunch explain side-door.json C.length", "haunch explain side-door.json"}},
    {"schema",
     Command::schema,
     "WHICH",
     "the JSON Schema of what goes in: spec, shop, stock; or of what comes out as JSON: report, "
     "lumber, setups, labels, explain, trial, rod, compare, quote, species, moisture, settings (of "
     "shop); "
     "and "
     "sheet: "
     "the columns of a sheet",
     {"haunch schema spec", "haunch schema report -o report.schema.json"}},
    {"specs",
     Command::specs,
     "SPEC…",
     "specs written out, one a line, or with --format csv as a sheet: of a sheet, of those that "
     "are "
     "like others",
     {"haunch specs orders.csv -o orders.jsonl", "haunch specs orders/ --format csv"}},
    {"example",
     Command::example,
     "[NAME…]",
     "a whole spec to start from: of a door, or of a NAME such as frame; with --format csv a sheet",
     {"haunch example cabinet-door", "haunch example --format csv -o orders.csv"}},
    {"species",
     Command::species,
     "[NAME]",
     "woods, how much they move and weigh: all, or those of a NAME",
     {"haunch species oak", "haunch species --format csv"}},
    {"trial",
     Command::trial,
     "SPEC",
     "what caliper readings of a trial joint mean, and what to set: --joint J1 --measured FILE, or "
     "readings as options",
     {"haunch trial side-door.json --joint J1 --tenon 14.9 --mortise 15.05",
      "haunch trial side-door.json --joint J1 --measured readings.json"}},
    {"lumber",
     Command::lumber,
     "SPEC…",
     "what to buy, and how to cut it: of one or more specs, --stock FILE",
     {"haunch lumber side-door.json", "haunch lumber orders/ --stock stock.csv --prefer waste"}},
    {"setups",
     Command::setups,
     "SPEC…",
     "every set-up of saw and machines in order, of one or more specs, with all that is run on it",
     {"haunch setups side-door.json", "haunch setups orders/ --format json -o setups.json"}},
    {"rod",
     Command::rod,
     "SPEC",
     "height and width rod: every mark from one end, in order; --format svg at full size",
     {"haunch rod side-door.json", "haunch rod side-door.json --format svg --paper a4 -o rod.svg"}},
    {"labels",
     Command::labels,
     "SPEC…",
     "a label for every piece: mark, name, size, face side and edge, what it meets; --format html "
     "for stickers",
     {"haunch labels side-door.json --format csv",
      "haunch labels orders/ --format html --sticker 70x36 -o labels.html"}},
    {"compare",
     Command::compare,
     "OLD NEW",
     "what another size changes: pieces, joints, set-ups, checks",
     {"haunch compare side-door.json wider.json", "haunch compare old/ new/ --same -q"}},
    {"draw",
     Command::draw,
     "SPEC…",
     "drawings to scale: each side with its sizes, sections through the joints, and those that "
     "need it taken apart; an SVG, or a folder with one a sheet",
     {"haunch draw side-door.json -o side-door.svg",
      "haunch draw orders/ --paper letter -o drawings"}},
    {"book",
     Command::book,
     "SPEC…",
     "one HTML file of a whole order: drawings, short sheets, set-ups, rods, lumber, seasons, "
     "checks and labels",
     {"haunch book side-door.json -o side-door.html",
      "haunch book orders/ --stock stock.csv -o order.html"}},
    {"quote",
     Command::quote,
     "SPEC…",
     "hours, cost and price of an order: --rates FILE",
     {"haunch quote side-door.json --rates rates.json",
      "haunch quote orders/ --rates rates.json --for customer --format html -o quote.html"}},
    {"solids",
     Command::solids,
     "SPEC…",
     "a new folder with each piece as a solid that other programs read (STEP), a file a piece, "
     "and its worked sides at full size (SVG)",
     {"haunch solids side-door.json -o solids", "haunch solids orders/ -o order-solids"}},
    {"moisture",
     Command::moisture,
     "",
     "what wood comes to in air: --temperature 21 --humidity 45",
     {"haunch moisture --temperature 21 --humidity 45",
      "haunch moisture --temperature 70 --fahrenheit --humidity 45"}},
    {"shop",
     Command::shop,
     "[SPEC…]",
     "which shop file is in force for specs, what it says and where",
     {"haunch shop side-door.json", "haunch shop --shop own.json"}},
    {"help",
     Command::full_help,
     "[COMMAND]",
     "all of this, or one command; man: a man page; bash, zsh or fish: what these shells complete",
     {"haunch help lumber", "haunch help bash"}},
};

struct OptionRow {
  std::string_view names;  // "-o,--output"
  std::string_view value;  // empty: it takes none
  Goes goes;
  std::string_view about;  // empty: told of with the one before

  /// "--output" of "-o,--output"; of "-h" nothing.
  constexpr std::string_view long_name() const {
    return names.substr(std::min(names.find("--"), names.size()));
  }
  constexpr std::string_view short_name() const { return names.substr(0, names.find(',')); }
};

inline constexpr OptionRow kOptions[] = {
    {"--format", "table|json|csv", Goes::with_tables,
     "how the result is written; table by default. CSV is one table a command, of sheet the cut "
     "list; of rod and lumber svg too, of labels and quote html"},
    {"--units", "mm|in", Goes::with_specs, "the unit of the result; else that of the spec"},
    {"--shop", "FILE", Goes::with_shop,
     "the shop's own defaults: any key of a spec but opening, id, quantity and note; and cutters. "
     "Else the file that HAUNCH_SHOP names, else the shop.json beside each spec; none takes none"},
    {"-o,--output", "FILE", Goes::with_any,
     "write to FILE, whole or not at all; - for standard output; of solids, and of draw without "
     ".svg, a new folder"},
    {"--with", "KEY=VALUE", Goes::with_input,
     "set a key of every spec for this run, as often as is wanted: --with clearance.foot=6; KEY= "
     "leaves it out"},
    {"--input", "json|csv", Goes::with_input,
     "csv: all that is named is a sheet, whatever its name"},
    {"--mended", "FILE", Goes::with_check,
     "of check: write the specs to FILE with the remedies taken that were printed"},
    {"--fraction", "N", Goes::with_reports,
     "inches in tables to 1/N (2 to 512; else 64), what is left over beside it; none for decimal "
     "inches"},
    {"--decimals", "N", Goes::with_reports,
     "millimetres in tables to N decimals at most (1 to 3); else 1 on pages for the bench, but all "
     "with --full; what is cut to fit to 0.01"},
    {"--csv", "plain|spreadsheet|semicolon", Goes::with_tables,
     "spreadsheet: with a byte order mark and CRLF; semicolon: so too, with semicolons between "
     "columns and decimal commas"},
    {"--full", "", Goes::with_items,
     "a sheet with every check that passes, and all that was given and assumed"},
    {"--jobs", "N", Goes::with_items,
     "work N items side by side (1 to 64; else 1); what is written stays the same"},
    {"--joint", "J1", Goes::with_trial, "the joint of a trial"},
    {"--measured", "FILE", Goes::with_trial,
     "the readings of a trial; or as options, each as often as it was read: --tenon, --tenon-face, "
     "--tenon-depth, --tenon-stock, and the same four of --mortise"},
    {"--tenon", "T", Goes::with_trial, ""},
    {"--tenon-face", "T", Goes::with_trial, ""},
    {"--tenon-depth", "T", Goes::with_trial, ""},
    {"--tenon-stock", "T", Goes::with_trial, ""},
    {"--mortise", "T", Goes::with_trial, ""},
    {"--mortise-face", "T", Goes::with_trial, ""},
    {"--mortise-depth", "T", Goes::with_trial, ""},
    {"--mortise-stock", "T", Goes::with_trial, ""},
    {"--stock", "FILE", Goes::with_stock,
     "boards in hand and for sale, JSON or CSV; without it takings-off only"},
    {"--parts", "FILE", Goes::with_lumber,
     "for lumber: a plain cut list, CSV or JSON, with the parts of specs or alone"},
    {"--prefer", "cost|waste|boards", Goes::with_lumber,
     "what a cutting plan is best by; else cost"},
    {"--stages", "three|two", Goes::with_stages,
     "of lumber: how often a board is turned on the saw; or a fixed order: crosscut-rip-crosscut, "
     "rip-crosscut-rip, crosscut-rip, rip-crosscut. Of quote: the shares in percent that a price "
     "is "
     "paid in, as 40,50,10"},
    {"--effort", "N", Goes::with_lumber, "1 to 100: how long a better plan is sought; else 1"},
    {"--seed", "N", Goes::with_lumber, "another seed, another search; else 1"},
    {"--leftover", "FILE", Goes::with_lumber,
     "write the stock that is left, itself a stock file; only with the plan that takes from it"},
    {"--paper", "a4|letter", Goes::with_paper,
     "the sheets that drawings, books, rods and lumber as svg and labels as html are printed on"},
    {"--sticker", "WxH", Goes::with_labels,
     "of labels as html: width and height of one sticker, such as \"2 5/8 x 1 in\"; else 70x36. In "
     "millimetres unless --units or the size itself says inches"},
    {"--margin", "WxH", Goes::with_labels,
     "what the stickers leave free of the sheet at the sides and at head and foot; they stand in "
     "the middle. Else 0"},
    {"--gap", "WxH", Goes::with_labels, "between stickers, across and down; else 0"},
    {"--order", "NAME", Goes::with_name, "the order's name, on every label or on the book"},
    {"--same", "", Goes::with_compare, "any difference ends with 1, as a check that fails does"},
    {"--rates", "FILE", Goes::with_quote,
     "of quote: what the shop's hours and goods cost, as JSON"},
    {"--variants", "FILE", Goes::with_quote,
     "of quote: the order again with other keys, side by side: JSON"},
    {"--quantity", "N,N", Goes::with_quote, "of quote: the order so many times, side by side"},
    {"--actual", "FILE", Goes::with_quote, "of quote: the hours that earlier jobs took, as CSV"},
    {"--corrected", "FILE", Goes::with_quote,
     "of quote: write the rates that come of them to FILE"},
    {"--for", "customer|shop", Goes::with_quote,
     "of quote: what a customer sees, without costs, hours and rates; else all"},
    {"--as", "invoice", Goes::with_quote, "of quote: the customer's bill"},
    {"--number", "N", Goes::with_quote, "the bill's number"},
    {"--date", "D", Goes::with_quote, "the day that a quote or bill bears, as 2031-05-17"},
    {"--temperature", "T", Goes::with_moisture, "of the air, in degrees Celsius, for moisture"},
    {"--humidity", "H", Goes::with_moisture, "of the air, in percent, for moisture"},
    {"--fahrenheit", "", Goes::with_moisture, "the temperature is in degrees Fahrenheit"},
    {"--color", "auto|always|never", Goes::with_any,
     "FAIL and cautions stand out: auto, on a terminal, unless NO_COLOR is set; always, in files "
     "and "
     "pipes too"},
    {"-q,--quiet", "", Goes::with_any, "no messages but errors"},
    {"-h", "", Goes::with_any, "this in short"},
    {"--help", "", Goes::with_any, "all of it; after a command what goes with that"},
    {"--version", "", Goes::with_any, "which haunch this is, its formats and its libraries"},
};

/// The row of an option; one that there is none of does not build.
consteval const OptionRow& option_row(std::string_view names) {
  for (const OptionRow& row : kOptions)
    if (row.names == names) return row;
  throw "no such option in cli/command_table.h";
}

/// What tells of all items of an order together.
constexpr bool is_for_order(Command command) {
  return command >= Command::setups && command <= Command::quote;
}

constexpr bool goes_with(Goes goes, Command command) {
  const bool is_report = command <= Command::season;
  switch (goes) {
    case Goes::with_any:
      return true;
    case Goes::with_specs:
      return is_report || command == Command::trial || command == Command::lumber ||
             command == Command::explain || is_for_order(command);
    case Goes::with_input:
      return is_report || command == Command::trial || command == Command::lumber ||
             command == Command::explain || command == Command::specs ||
             command == Command::solids || is_for_order(command);
    case Goes::with_check:
      return command == Command::check;
    case Goes::with_shop:
      return is_report || command == Command::specs || command == Command::trial ||
             command == Command::species || command == Command::lumber ||
             command == Command::shop || command == Command::explain ||
             command == Command::solids || is_for_order(command);
    case Goes::with_reports:
      return is_report || command == Command::lumber || command == Command::explain ||
             is_for_order(command);
    case Goes::with_items:
      return is_report;
    case Goes::with_lumber:
      return command == Command::lumber;
    case Goes::with_stock:
      return command == Command::lumber || command == Command::book || command == Command::quote;
    case Goes::with_stages:
      return command == Command::lumber || command == Command::quote;
    case Goes::with_quote:
      return command == Command::quote;
    case Goes::with_paper:
      return command == Command::rod || command == Command::labels || command == Command::draw ||
             command == Command::book || command == Command::lumber;
    case Goes::with_labels:
      return command == Command::labels;
    case Goes::with_name:
      return command == Command::labels || command == Command::book;
    case Goes::with_compare:
      return command == Command::compare;
    case Goes::with_trial:
      return command == Command::trial;
    case Goes::with_tables:
      return is_report ||
             (command >= Command::species && command < Command::brief_help &&
              command != Command::solids && command != Command::draw && command != Command::book);
    case Goes::with_moisture:
      return command == Command::moisture;
  }
  return false;
}

constexpr std::string_view goes_words(Goes goes) {
  switch (goes) {
    case Goes::with_moisture:
      return "moisture";
    case Goes::with_trial:
      return "trial";
    case Goes::with_lumber:
      return "lumber";
    case Goes::with_stock:
      return "lumber, book and quote";
    case Goes::with_stages:
      return "lumber and quote";
    case Goes::with_quote:
      return "quote";
    case Goes::with_reports:
      return "what prints lengths of a spec";
    case Goes::with_items:
      return "sheet, cutlist, joints, check and season";
    case Goes::with_check:
      return "check";
    case Goes::with_paper:
      return "draw, book, rod, lumber and labels";
    case Goes::with_labels:
      return "labels";
    case Goes::with_name:
      return "labels and book";
    case Goes::with_compare:
      return "compare";
    case Goes::with_input:
      return "what reads a spec";
    case Goes::with_specs:
      return "what works a spec";
    case Goes::with_shop:
      return "what works a spec, and species";
    default:
      return "what prints a table";
  }
}

}  // namespace haunch
