// The set-ups of an order: what its page, JSON and CSV are views of.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "lie.h"
#include "page_part.h"
#include "report.h"
#include "setup.h"
#include "spec_source.h"
#include "tally.h"
#include "text_table.h"

namespace haunch {

struct SetupsReport {
  Unit unit = Unit::mm;
  std::vector<ItemReport> items;
  std::vector<Machine> machines;
  std::string shop;  // the file that tells of them; empty: they are the usual ones
  SetupPlan plan;
  Tally tally;                        // how many items it tells of, and how many were refused
  std::vector<PlacedProblem> errors;  // of those

  const ItemReport& item_of(const SetupPiece& piece) const { return items[piece.of.item]; }
  const Piece& piece_of(const SetupPiece& piece) const {
    return item_of(piece).wood.pieces[piece.of.piece];
  }
  std::int64_t count_of(const SetupPiece& piece) const { return item_of(piece).job->quantity; }
  /// Of a process that no machine does: "no machine".
  std::string machine_name(const Setup& setup) const;
  std::string cutter_name(const Setup& setup) const;  // empty: nothing is told
  /// Null: it is held as the machinist likes.
  const Holding* holding_of(const Setup& setup) const;
  std::string holding_name(const Setup& setup) const;  // empty where there is none
  /// How a piece lies for what is worked at one side of it; nothing where no holding is told.
  std::optional<Lie> lie_of(const Setup& setup, const SetupPiece& piece, const Run& run) const;
  /// Whether anything stands against a set-up.
  bool has_findings() const;
};

/// "S3" of the third.
std::string setup_id(std::size_t number);

/// The items as set-ups are planned from them. The report outlives them.
std::vector<SetupItem> setup_items(const std::vector<ItemReport>& items);

/// What is wanted of each item.
inline constexpr Wanted kWantedForSetups{.checks = true, .cutlist = false, .making = true};

/// `shop`: empty where no shop file tells of machines. Without machines usual ones are taken.
SetupsReport report_setups(std::vector<ItemReport> items, std::vector<Machine> machines,
                           std::string shop, Unit unit);

std::string setups_json(const SetupsReport& report, Unit unit);
std::string setups_csv(const SetupsReport& report, Unit unit, CsvProfile profile);
/// What a page tells of them.
struct SetupsText {
  PageText head;
  PageParts parts;  // set-ups that follow on each other at one machine and do the same
  PageText cautions;
};
SetupsText setups_text(const SetupsReport& report, const LengthPrinter& lengths);
std::string setups_page(const SetupsReport& report, const LengthPrinter& lengths);

}  // namespace haunch
