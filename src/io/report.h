// The report of one item: what tables, JSON and CSV are views of.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "assembly_order.h"
#include "finding.h"
#include "hardware.h"
#include "kind.h"
#include "making.h"
#include "remedy.h"
#include "season_remedy.h"
#include "seasons.h"
#include "squareness.h"
#include "surface.h"
#include "tolerance.h"
#include "view.h"
#include "weight.h"

namespace haunch {

/// A strip glued to an edge of a piece.
struct CutStrip {
  std::string edge;  // "front", "left"
  Length thickness;
  std::string material;
  bool across = false;  // at an end, as long as the piece is wide

  friend bool operator==(const CutStrip&, const CutStrip&) = default;
};

/// Pieces that are cut alike, for all of an item's quantity.
struct CutRow {
  Role part = Role::stile;         // of each
  std::vector<std::string> marks;  // in one item
  std::int64_t quantity = 0;
  Length length, saw_length, width, thickness;  // saw_length: with horns, less strips at its ends
  std::string_view grain;   // of panels: "upright" or "level"; of glass "none"; else "along"
  std::string material;     // the species, or what it is else; empty: not told
  bool arched = false;      // the blank of what is sawn to a curve
  std::string called = {};  // in words: the piece's own name, of several what they are: "stiles"
  Length saw_width = {};    // less strips along it
  std::vector<CutStrip> strips = {};
};

/// Strip of one kind, all of it.
struct StripTotal {
  std::string material;
  Length thickness;
  Length width;   // of the edges, which it is wider than
  Length length;  // of the edges
};
std::vector<StripTotal> strip_totals(const std::vector<CutRow>& cuts);

/// How what was made piece by piece is put together.
struct Together {
  std::vector<Rectangle> rectangles;
  std::vector<GroupOrder> orders;
  std::vector<Hardware> hardware;
};

/// One item, worked and checked.
struct ItemReport {
  std::unique_ptr<Job> job;
  Assembly wood;
  std::vector<Assumed> assumed;
  std::vector<NamedRoom> rooms;
  std::vector<Chain> chains;
  std::vector<Caution> cautions;
  std::vector<CutRow> cutlist;
  std::optional<Making> making;     // where its joinery is told
  Together together;                // with it, but of a leaf or frame that is all there is
  std::optional<FitForecast> fits;  // where the spec or the shop speaks of tolerances
  std::vector<Finding> findings;
  std::optional<Weights> weights;                 // with the checks
  std::optional<SeasonReport> seasons;            // where the spec or the shop speaks of moisture
  std::optional<SeasonRemedies> season_remedies;  // where they were looked for; so the others
  std::optional<Remedies> remedies;               // of each finding

  Status worst() const;
  std::int64_t count_of(Status status) const;  // of its findings
};

/// An item's report, or the problems that stand against it.
struct ItemOutcome {
  std::optional<ItemReport> report;
  std::vector<Problem> problems;
};

/// What of a report is wanted, beside the wood. Checks are what its verdict comes
/// from; for remedies the job is worked and checked again at every try.
struct Wanted {
  bool checks = false;
  bool cutlist = false;
  bool making = false;           // how its pieces are worked
  bool fits = false;             // a forecast, where the spec or the shop speaks of tolerances
  bool remedies = false;         // of each finding
  bool season_remedies = false;  // of wood that does not bear its seasons
};

/// What a view prints, or takes its exit status from.
Wanted wanted_for(const View& view);

/// Works a job, and checks it if that is wanted.
ItemOutcome report_item(std::unique_ptr<Job> job, Wanted wanted);

/// Of one piece of one item.
CutRow cut_row_of(const Piece& piece, const Job& job);

/// Pieces of one role, material and grain whose sizes agree within 0.001 mm, merged at the
/// smallest, in the order of their marks.
std::vector<CutRow> cut_list(const Assembly& wood, const Job& job);

/// Whether what is made goes back from its front, so that its third size is a depth.
bool goes_back(const Assembly& wood);

/// "stiles", "loose tenons", "shelves"
std::string several_of(Role role);

/// Whether all but marks and quantity is the same of two rows, within 0.001 mm.
bool cut_alike(const CutRow& a, const CutRow& b);
/// Puts another that is cut alike to a row, at the smaller sizes.
void merge(CutRow& row, const CutRow& other);

/// The side of a piece that lies across one of its own axes, at the low or the high end of it, as
/// the piece stands in its assembly.
Surface side_of(const Piece& piece, WorkedSide side);

/// "at 13 % moisture: ", of what is not as built.
std::string moisture_text(const Finding& finding);

/// What a finding says, in words: the figure, its limit, and unless it is ok why it matters.
std::string finding_message(const Finding& finding, Unit unit);

std::vector<std::string> marks_of(const Assembly& wood, const std::vector<std::size_t>& pieces);

/// Marks in a row: "A B".
std::string joined(const std::vector<std::string>& marks);

/// Whether not all remedies of a finding, or of an item, were tried: that none was found says
/// little then, and a smaller one may do.
bool search_stopped(const ItemReport& report, std::size_t finding);

/// Whether all was tried.
enum class Search : unsigned char { complete, stopped };

template <>
inline constexpr std::string_view kWords<Search>[] = {"complete", "stopped"};

constexpr Search search_of(bool all_tried) {
  return all_tried ? Search::complete : Search::stopped;
}

/// What a remedy says, in words.
std::string remedy_message(const Remedy& remedy, Unit unit);

}  // namespace haunch
