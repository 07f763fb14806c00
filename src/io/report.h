// The report of one item: what tables, JSON and CSV are views of.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "finding.h"
#include "kind.h"
#include "remedy.h"
#include "season_remedy.h"
#include "seasons.h"
#include "tolerance.h"

namespace haunch {

/// Pieces that are cut alike, for all of an item's quantity.
struct CutRow {
  std::string_view part;           // their role
  std::vector<std::string> marks;  // in one item
  std::int64_t quantity = 0;
  Length length, saw_length, width, thickness;
  std::string_view grain;  // of panels: "upright" or "level"; of glass "none"; else "along"
  std::string material;    // the species, or what it is else; empty: not told
};

/// One item, worked and checked.
struct ItemReport {
  std::unique_ptr<Job> job;
  Assembly wood;
  std::vector<Assumed> assumed;
  std::vector<NamedRoom> rooms;
  std::vector<Caution> cautions;
  std::vector<CutRow> cutlist;
  std::optional<FitForecast> fits;  // where the spec or the shop speaks of tolerances
  std::vector<Finding> findings;
  std::optional<SeasonReport> seasons;          // where the spec or the shop speaks of moisture
  std::vector<SeasonRemedy> season_remedies;    // where its wood does not bear them
  std::vector<std::optional<Remedy>> remedies;  // of each finding; empty when none were looked for

  Status worst() const;
};

/// An item's report, or the problems that stand against it.
struct ItemOutcome {
  std::optional<ItemReport> report;
  std::vector<Problem> problems;
};

/// What is to be tried for what is not ok; each try works and checks the job again.
struct Tries {
  bool remedies = false;         // of each finding
  bool season_remedies = false;  // of wood that does not bear its seasons
};

/// Works and checks a job.
ItemOutcome report_item(std::unique_ptr<Job> job, Tries tries);

/// Pieces of one role, material and grain whose sizes agree within 0.001 mm, merged at the
/// smallest, in the order of their marks.
std::vector<CutRow> cut_list(const Assembly& wood, const Job& job);

/// What a piece of a job is made of: its own material, else the species of its role.
const std::string& material_of(const Piece& piece, const Job& job);

/// The side of a piece that a fitting is let in to, as the piece stands in its assembly: "face",
/// "left" …
std::string_view side_name(const Piece& piece, const Fitting& fitting);

/// "at 13 % moisture: ", of what is not as built.
std::string moisture_text(const Finding& finding);

/// What a finding says, in words: the figure, its limit, and unless it is ok why it matters.
std::string finding_message(const Finding& finding, Unit unit);

/// Marks in a row: "A B".
std::string joined(const std::vector<std::string>& marks);

std::string_view status_word(Status status);

/// What a remedy says, in words.
std::string remedy_message(const Remedy& remedy, Unit unit);

}  // namespace haunch
