// An order as the search sees it: equal parts in kinds, equal boards in kinds, clear spans, prices.
//
//   PartKind, Span, BoardKind, Model
//   model_of        an order's model
//   yard_of         boards alone, of several thicknesses, to which parts are added
//   fits            whether a part lies within a board's clear spans
//
// Kerf and trim vanish here: a part is a kerf longer and wider than it is, a span too, and parts so
// enlarged pack side by side exactly where the real ones do with the blade between them.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "cutting.h"

namespace haunch::lumber {

/// Parts that are cut alike. Sizes in steps, kerf included.
struct PartKind {
  std::int64_t length = 0, width = 0;
  bool turnable = false;
  std::size_t thickness = 0;       // it comes from boards of this one alone
  std::vector<std::size_t> wants;  // indices, in their order

  std::int64_t demand() const { return static_cast<std::int64_t>(wants.size()); }
};

/// A part as it lies on a board.
struct Item {
  std::uint32_t kind = 0;
  bool turned = false;

  friend bool operator==(const Item&, const Item&) = default;
  friend auto operator<=>(const Item&, const Item&) = default;
};

/// A stretch of a board clear of trim and defects, in steps.
struct Span {
  std::int64_t start = 0;   // along the board
  std::int64_t length = 0;  // kerf included

  friend bool operator==(const Span&, const Span&) = default;
};

/// Some boards of one stock.
struct Source {
  std::size_t stock = 0;
  std::optional<std::int64_t> count;
};

/// Boards that are alike in all that a plan can tell.
struct BoardKind {
  Length length, width;          // whole
  std::int64_t start_y = 0;      // where the clear width starts, in steps
  std::int64_t clear_width = 0;  // kerf included
  std::vector<Span> spans;
  bool grain = true;
  bool bought = false;
  Money cost = 0;                     // 0 in hand
  std::optional<std::int64_t> limit;  // all sources together; never more than there are parts
  std::vector<Source> sources;        // in the order of the stock
  std::size_t thickness = 0;          // an order of one thickness has 0 only
  std::int64_t price = 0;             // in the measure of the plan
  double weight = 0;  // > 0: the price with the tie-breakers mixed in, for searching

  Area area() const { return area_of(length, width); }
  /// In square steps, kerf included: what enlarged parts can cover.
  double clear_area() const;
};

struct Model {
  std::int64_t kerf = 0;
  std::vector<PartKind> parts;
  std::vector<BoardKind> boards;     // only those that some part fits
  std::vector<std::size_t> too_big;  // wants that fit no stock
  Measure measure = Measure::money;
  bool single_row = false;  // no two parts lie side by side across any board: all in a row
  bool u_along = true, u_across = true;  // how a span may be looked at: see View
  bool three_stages = true;

  std::int64_t demand() const;  // of all parts
};

/// The model. Throws std::invalid_argument when the order breaks a rule of its fields.
Model model_of(const CuttingOrder& order);

/// The boards of several thicknesses, with no parts yet.
Model yard_of(const std::vector<std::vector<Stock>>& stock, Length kerf, Stages stages,
              Measure measure);
/// Leaves out the boards that no part fits, and sees whether all lies in rows.
void fit_boards(Model& model);

/// A part of the order's, kerf included, along and across a board.
std::int64_t along(const PartKind& part, bool turned);
std::int64_t across(const PartKind& part, bool turned);

/// Whether the part lies within the board this way: as the grain allows, and in a clear span.
bool fits(const PartKind& part, bool turned, const BoardKind& board);
bool fits_some_way(const PartKind& part, const BoardKind& board);

/// The same model measured otherwise: prices and weights set again.
void set_prices(Model& model, Measure measure);

}  // namespace haunch::lumber
