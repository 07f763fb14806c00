// What changes at the saw and at the machines from an old item to a new one: what the pages, JSON
// and CSV of compare are views of.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "making_change.h"
#include "report.h"
#include "setups_change.h"

namespace haunch {

/// What of a report is compared.
inline constexpr Wanted kCompared{.checks = true, .cutlist = true, .making = true};

/// A piece, known again by its key; what it was cut to and is cut to, each for one item.
struct PieceChange {
  std::string key;                // "leaf/tier-1/panel-2"
  std::optional<CutRow> was, is;  // with one mark, and called by the piece's own name
  Changes cut;                    // its sizes and between its shoulders; what it is made of
  bool worked_otherwise = false;  // something on it comes, goes or changes
  bool from_old = false;          // it can be cut from the one that is cut already

  Turn turn() const { return turn_of(was, is); }
  const CutRow& any() const { return is ? *is : *was; }
};

/// A piece that goes by another mark.
struct MarkChange {
  std::string key, name, was, is;
};

struct JointTold {
  std::string id;  // "J3"
  JointKind kind = JointKind::butt;
  std::string receives, enters;  // marks
};

/// A joint, known again by the pieces that it joins: one that comes or goes, is of another kind, or
/// has other play.
struct JointChange {
  std::optional<JointTold> was, is;
  Changes changes;

  Turn turn() const { return turn_of(was, is); }
  const JointTold& any() const { return is ? *is : *was; }
};

struct CheckTold {
  Finding finding;
  std::string marks;  // "A C"
  std::string joint;  // its id; empty: of none
};

/// A check whose status turns, or that fails in both; one that comes or goes, unless it is ok.
struct CheckChange {
  std::optional<CheckTold> was, is;

  /// Stays: it fails in both.
  Turn turn() const;
  const CheckTold& any() const { return is ? *is : *was; }
};

/// Of what is bought, how many.
struct NumberChange {
  std::string what;            // "hinges with a cup of", before its size
  std::optional<Length> size;  // by which it is bought
  std::int64_t was = 0, is = 0;
};

/// In kg; nothing where it is not known.
struct WeightChange {
  std::string of;     // the path of what it is of: "leaf"
  bool whole = true;  // else a leaf of it, that both have
  std::optional<double> was, is;
};

/// "48.2"; empty where it is not known.
std::string kilograms_text(const std::optional<double>& weight);

struct ItemComparison {
  std::string was_id, is_id;
  Unit unit = Unit::mm;  // of the new one
  std::int64_t was_quantity = 1, is_quantity = 1;
  std::string is_kind;                      // in words
  Triple size;                              // of the new one
  std::string_view third_size;              // "thickness", "depth"
  Changes whole;                            // kind and sizes
  Tallied pieces;                           // the same: cut and worked alike
  std::size_t cut_alike = 0;                // of both: cut alike, however they are worked
  std::vector<PieceChange> changed_pieces;  // in the new one's order, those that go behind
  std::vector<MarkChange> marks;
  MakingChange making;
  Tallied joints;
  std::vector<JointChange> changed_joints;
  Tallied checks;  // the same: of the same status
  std::vector<CheckChange> changed_checks;
  Tallied hardware;  // sorts of it
  std::vector<NumberChange> changed_hardware;
  std::vector<WeightChange> changed_weights;
  bool weight_known = false;  // of the new one

  /// Nothing differs but ids.
  bool is_same() const;
};

ItemComparison compare(const ItemReport& was, const ItemReport& is);

/// An item that only one of two orders has.
struct LoneItem {
  std::string id;
  std::int64_t quantity = 1;
  std::size_t pieces = 0;
};

struct Comparison {
  std::vector<ItemComparison> items;  // of both, in the new order's order
  std::vector<LoneItem> come, gone;
  SetupsChange setups;  // of both orders

  bool is_same() const;
};

/// Items are known again by their ids; a single one is compared with a single one, whatever they
/// are called.
Comparison compare(const SetupsReport& was, const SetupsReport& is);

}  // namespace haunch
