// Cutting plans: which boards to use and to buy, and how to cut the parts from them.
//
//   what is asked    Want, Stock, Saw, Prefer, Stages: together a CuttingOrder
//   what comes back  Plan: BoardPlan (Cut, Step, Offcut), Unplaced, Totals, Bounds
//   plan             plan_cutting
//   check            faults_of
//
// One order is one material and one thickness; whoever asks has sorted the parts so. All sizes are
// rough sizes. x runs along a board's length (its grain), y across, from its low corner; what lies
// at x with length l takes the wood from x to x + l. The same order gives the same plan everywhere.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "area.h"
#include "haunch/length.h"

namespace haunch::lumber {

// ---- what is asked ------------------------------------------------------------------------------

/// Money in a unit that the costs of an order's boards are whole in: not a cent, as a board of
/// 6 2/3 board feet at 6.50 comes to 43 1/3.
using Money = std::int64_t;

/// One piece wanted. Pieces of equal size are the caller's to list one by one.
struct Want {
  std::string name;        // "side-door/A"
  Length length;           // along the grain, > 0
  Length width;            // > 0
  bool turnable = false;   // no grain of its own: may lie across that of any stock
  std::string group = {};  // pieces of one group come from one board where they can; "" is none
};

/// A stretch of a board's length, over its whole width, that no part may take wood from.
struct Defect {
  Length from, to;  // 0 <= from < to <= the board's length
};

/// Boards or sheets of one size, price and state.
struct Stock {
  std::string id;
  Length length, width;
  std::optional<std::int64_t> count = {};  // empty: as many as wanted
  bool bought = false;  // false: in hand, and its cost is not counted whatever `cost` says
  Money cost = 0;       // of one, >= 0
  Length end_trim;      // taken off each end, the blade's own wood included
  Length edge_trim;     // taken off each edge, the blade's own wood included
  bool grain = true;    // false: any part may be turned on it
  std::vector<Defect> defects = {};  // in any order; they may touch and overlap
};

/// The saw, and what is worth keeping.
struct Saw {
  Length kerf;               // of every cut, >= 0
  Length offcut_length;      // a remainder at least this long
  Length offcut_width;       // and this wide is kept
  bool keep_offcuts = true;  // false: none is
};

/// What the cuts may be, in the order in which they are made. Defects and trim are cut away first;
/// last, a part narrower than its strip or shorter than its section is cut to size.
enum class Stages : unsigned char {
  any_three,              // each board in the better of the two ways with three
  crosscut_rip_crosscut,  // sections, strips of a section, parts of a strip
  rip_crosscut_rip,       // strips, sections of a strip, parts of a section
  any_two,                // each board in the better of the two ways with two
  rip_crosscut,           // strips over the whole length, parts of a strip
  crosscut_rip,           // sections over the whole width, parts of a section
};

/// What a plan is best by. What comes after it: least cost, least stock area used, least waste,
/// fewest boards, as far as they are not it already.
enum class Prefer : unsigned char { cost, waste, boards };

struct CuttingOrder {
  std::vector<Want> wants;
  std::vector<Stock> stock;
  Saw saw = {};
  Stages stages = Stages::any_three;
  Prefer prefer = Prefer::cost;
  int effort = 1;  // work is limited by counts that grow with it, never by the clock; 1 to 100
  std::uint64_t seed = 1;
};

// ---- what comes back ----------------------------------------------------------------------------

/// A rectangle of a board.
struct Spot {
  Length x, y, length, width;

  friend bool operator==(const Spot&, const Spot&) = default;
};

/// A part in its place.
struct Cut {
  std::size_t want = 0;  // index into CuttingOrder::wants
  Spot spot;             // at its rough size
  bool turned = false;   // its length lies across the board
};

enum class StepKind : unsigned char {
  crosscut,  // from edge to edge of the piece, at a place along the length
  rip,       // from end to end of the piece, at a place across the width
};

enum class StepReason : unsigned char {
  trim,     // an end or edge of the board comes off
  defect,   // a defect is cut away
  section,  // the first cut of the pattern
  strip,    // the second
  part,     // the third
  to_size,  // a part comes to its size out of a wider strip or a longer section
};

/// One through cut. Before it `piece` is in one piece; after it there are what lay below `from` and
/// what lay above `to` (either may be nothing), and the wood between is dust.
struct Step {
  StepKind kind = StepKind::crosscut;
  StepReason reason = StepReason::section;
  Spot piece;       // what lies on the saw, as it came from the steps before
  Length from, to;  // along x for a crosscut, along y for a rip; to - from is the kerf, or less
                    // where the piece ends within the blade
};

/// One board or sheet, cut up.
struct BoardPlan {
  std::size_t stock = 0;  // index into CuttingOrder::stock
  std::int64_t copy = 0;  // which of them: 0, 1 …; each is used once at most
  std::vector<Cut> cuts;  // in the order in which the steps make them
  std::vector<Step> steps;
  std::vector<Spot> offcuts;  // kept, each a piece that the steps leave
};

enum class Lack : unsigned char {
  size,   // it fits in none of the stock
  count,  // it fits, but the stock ran out
};

/// A part that the plan does not cut.
struct Unplaced {
  std::size_t want = 0;
  Lack why = Lack::size;
  // The stock that would do: the least size of it, trim included, for this part alone.
  Length stock_length, stock_width;
};

/// Why an order cannot be cut from stock in limited number.
struct Shortage {
  enum class Kind : unsigned char {
    pieces,    // of one size: so many wanted, the stock yields at most so many
    area,      // in square mm, with a kerf for each part
    linear,    // by dual prices: a proof without a count that can be told; both are 0
    unproven,  // the search placed no more, which is no proof; both are 0
  };
  Kind kind = Kind::unproven;
  std::size_t want = 0;  // pieces: one of that size
  std::int64_t wanted = 0;
  std::int64_t at_most = 0;
};

/// Where the stock went: used = parts + kerf + trim + offcuts + scrap, exactly. `kerf` is the dust
/// of all cuts, those of trim among them.
struct Totals {
  Money cost = 0;  // of what must be bought
  std::int64_t boards = 0;
  std::int64_t boards_bought = 0;
  Area area_bought;
  Area area_used;  // boards in hand and bought, whole
  Area parts, kerf, trim, offcuts;
  Area scrap;  // the rest, defects too
};

/// What `plan` and the bounds of a plan count in.
enum class Measure : unsigned char {
  money,
  square_mm,  // of stock used, each board to the whole square mm; also for Prefer::cost when the
              // plan costs nothing
  boards,
};

enum class BoundKind : unsigned char { area, whole_boards, linear, dual_whole };

/// How far from the best possible a plan can be. No way of cutting all the placed parts, at these
/// sizes and in the stages allowed, comes under `best`.
struct Bounds {
  Measure measure = Measure::money;
  std::int64_t plan = 0;                   // what the plan comes to
  std::int64_t area = 0;                   // cheapest stock by area, in parts of boards
  std::int64_t whole_boards = 0;           // the same in whole boards
  std::optional<std::int64_t> linear;      // over all patterns, in parts of boards
  std::optional<std::int64_t> dual_whole;  // the same duals, in whole boards
  std::int64_t best = 0;                   // the greatest of these
  BoundKind binding = BoundKind::area;     // the first that gives it
  double boards_above = 0;                 // (plan - best) / the dearest board used
  bool proven = false;                     // plan == best
  std::int64_t least_area_square_mm = 0;   // of stock, by area, whatever `measure` is
};

struct Plan {
  std::vector<BoardPlan> boards;          // by stock, then copy
  std::vector<Unplaced> unplaced;         // in the order of the wants
  std::optional<Shortage> shortage;       // when some part lacks stock by count
  std::vector<std::string> split_groups;  // groups whose pieces come from more than one board
  Totals totals;
  Bounds bounds;
  std::int64_t work = 0;  // of the search, counted: about a nanosecond each
};

// ---- plan and check -----------------------------------------------------------------------------

/// The program's own check found a fault in a plan of its own: no plan is better than a wrong one.
class PlanFault : public std::logic_error {
 public:
  using std::logic_error::logic_error;
};

/// The plan. Requires of the order what the comments on its fields say, and names of stock that
/// differ; throws std::invalid_argument otherwise. Throws PlanFault rather than return a plan that
/// `faults_of` objects to.
Plan plan_cutting(const CuttingOrder& order);

/// What is wrong with a plan for this order, one clause each; none when it is right. Looks at the
/// places, the steps and the sums, and knows nothing of how the plan was made.
std::vector<std::string> faults_of(const Plan& plan, const CuttingOrder& order);

}  // namespace haunch::lumber
