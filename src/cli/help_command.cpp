#include "commands.h"

namespace haunch {
namespace {

constexpr std::string_view kBrief =
    R"(haunch works out doors before wood is milled: sizes, joints, cut list, checks.

  haunch side-door.json                 the whole sheet, for the bench
  haunch check flour-bin.json           only the checks
  haunch cutlist orders/ --format csv   of a folder, for a spreadsheet
  haunch joints side-door.json --units in

commands: sheet (when none is named), cutlist, joints, check, season;
          species, moisture, trial, lumber, shop, explain;
          schema spec|report|stock|lumber|explain
specs:    JSON files, folders of them, or - for standard input
options:  --format table|json|csv   --units mm|in   --shop FILE   -o FILE
          --fraction N   --csv plain|spreadsheet   -q   -h   --help   --version

The shortest spec: {"kind": "door", "units": "mm",
                    "opening": {"width": 930, "height": 2060}}
)";

constexpr std::string_view kRest = R"(
Commands
  sheet     cut list, joinery, checks and what was assumed
  cutlist   the pieces to cut
  joints    every mortise, tenon, groove and panel, grouped by machine setting
  check     every check with its figure and limits, and remedies that were tried
  season    what the wood does between its driest and its wettest, gaps, weight
  explain   where the figures of a SPEC come from; or one of it, such as a key,
            C.length, J1, or the name of a check
  schema    the JSON Schema of a spec, of the JSON report, of a stock file, of
            what lumber says or of what explain says: spec, report, stock,
            lumber, explain
  species   woods, how much they move and weigh: all, or those of a NAME
  trial     what caliper readings of a trial joint mean, and what to set:
            --joint J1 --measured FILE, or readings as options
  lumber    what to buy, and how to cut it: of one or more specs, --stock FILE
  moisture  what wood comes to in air: --temperature 21 --humidity 45
  shop      which shop file is in force for specs, what it says and where

Specs
  A file holds one item, a JSON array of items, or one item a line. Of a folder
  every *.json but shop.json is read, in the order of their names. A bad spec
  does not stop the others.

Options
  --format table|json|csv  how the result is written; table by default. CSV is
                           one table a command, of sheet the cut list
  --units mm|in            the unit of the result; else that of the spec
  --shop FILE              the shop's own defaults: any key of a spec but
                           opening, id, quantity and note; and cutters. Else
                           the file that HAUNCH_SHOP names, else the shop.json
                           beside each spec; none takes none
  -o, --output FILE        write to FILE, whole or not at all; - for standard
                           output
  --fraction N             inches in tables to 1/N (2 to 512; else 64), what is
                           left over beside it; none for decimal inches
  --csv plain|spreadsheet  spreadsheet: with a byte order mark and CRLF
  --jobs N                 work N items side by side (1 to 64; else 1); what is
                           written stays the same
  --joint J1               the joint of a trial
  --measured FILE          the readings of a trial; or as options, each as often
                           as it was read: --tenon, --tenon-face, --tenon-depth,
                           --tenon-stock, and the same four of --mortise
  --stock FILE             for lumber: boards in hand and for sale, JSON or CSV;
                           without it takings-off only
  --prefer cost|waste|boards
                           what a cutting plan is best by; else cost
  --stages three|two       how often a board is turned on the saw; or a fixed
                           order: crosscut-rip-crosscut, rip-crosscut-rip,
                           crosscut-rip, rip-crosscut
  --effort N               1 to 100: how long a better plan is sought; else 1
  --seed N                 another seed, another search; else 1
  --leftover FILE          write the stock that is left, itself a stock file;
                           only with the plan that takes from it
  --temperature T          of the air, in degrees Celsius, for moisture
  --humidity H             of the air, in percent, for moisture
  --fahrenheit             the temperature is in degrees Fahrenheit
  -q, --quiet              no messages but errors
  -h, --help, --version

Exit status
  0  all is well (cautions included)
  1  a check failed
  2  a spec, the shop file or the command line is wrong
  3  a file could not be read or written
  4  a fault of the program
  141  instead of 0: the reader of a pipe went before it took all

Figures are for orientation. Fire doors, doors on escape routes and glass in
doors are decided by the local code and a licensed professional.
)";

}  // namespace

ExitStatus run_help(const Invocation& invocation, const Streams& streams) {
  std::string text(kBrief);
  if (invocation.command == Command::full_help) text += kRest;
  if (invocation.command == Command::version)
    text = "haunch " HAUNCH_VERSION ", report format haunch-report-1\n";
  return write_result(text, invocation, streams);
}

}  // namespace haunch
