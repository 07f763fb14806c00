// The set-ups of an order: what its page, JSON and CSV are views of.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "report.h"
#include "setup.h"
#include "text_table.h"

namespace haunch {

struct SetupsReport {
  Unit unit = Unit::mm;
  std::vector<ItemReport> items;
  std::vector<Machine> machines;
  std::string shop;  // the file that tells of them; empty: they are the usual ones
  SetupPlan plan;

  const ItemReport& item_of(const SetupPiece& piece) const { return items[piece.of.item]; }
  const Piece& piece_of(const SetupPiece& piece) const {
    return item_of(piece).wood.pieces[piece.of.piece];
  }
  std::int64_t count_of(const SetupPiece& piece) const { return item_of(piece).job->quantity; }
  /// Of a process that no machine does: "no machine".
  std::string machine_name(const Setup& setup) const;
  std::string cutter_name(const Setup& setup) const;   // empty: nothing is told
  std::string holding_name(const Setup& setup) const;  // empty: as the machinist likes
  /// Whether anything stands against a set-up.
  bool has_findings() const;
};

/// "S3" of the third.
std::string setup_id(std::size_t number);

/// What is wanted of each item.
inline constexpr Wanted kWantedForSetups{.checks = true, .cutlist = false, .making = true};

/// `machines`: empty where no shop file tells of any.
SetupsReport report_setups(std::vector<ItemReport> items, std::vector<Machine> machines,
                           std::string shop, Unit unit);

std::string setups_json(const SetupsReport& report, Unit unit);
std::string setups_csv(const SetupsReport& report, Unit unit, CsvProfile profile);
std::string setups_page(const SetupsReport& report, const LengthPrinter& lengths);

}  // namespace haunch
