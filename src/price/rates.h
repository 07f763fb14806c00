// What a shop's hours and goods cost it, and how long it takes over its work: a rates file, read.
//
// Nothing here has a usual value: what the shop does not say is not known, and is never taken for
// nothing. Shares are parts of one: 0.25.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "haunch/trade.h"
#include "work_time.h"

namespace haunch {

// ---- minutes

/// Where a rate comes from: the shop's own figure, one that jobs have put right, or an example that
/// nobody has timed.
enum class RateSource : unsigned char { own, corrected, example };

template <>
inline constexpr std::string_view kWords<RateSource>[] = {"own", "corrected", "example"};
static_assert(std::size(kWords<RateSource>) == static_cast<std::size_t>(RateSource::example) + 1);

/// By what work is counted.
enum class WorkUnit : unsigned char { piece, metre, joint, square_metre, item, order, trip };

template <>
inline constexpr std::string_view kWords<WorkUnit>[] = {"piece", "metre", "joint", "square_metre",
                                                        "item",  "order", "trip"};
static_assert(std::size(kWords<WorkUnit>) == static_cast<std::size_t>(WorkUnit::trip) + 1);
/// The first so many are those that an operation may have minutes for.
inline constexpr std::size_t kRunUnits = 4;

/// What kind of work it is; a notebook may tell of all of a kind together.
enum class WorkGroup : unsigned char { milling, machining, bench, finish, site };

template <>
inline constexpr std::string_view kWords<WorkGroup>[] = {"milling", "machining", "bench", "finish",
                                                         "site"};
static_assert(std::size(kWords<WorkGroup>) == static_cast<std::size_t>(WorkGroup::site) + 1);

/// What jobs say of a rate. A ratio is minutes taken to minutes planned.
struct Backing {
  int jobs = 0;       // that tell of it, by itself or among other work
  double worth = 0;   // how many jobs they count for: one that tells of more counts for less
  int timed = 0;      // those that tell of it by itself, which alone its spread rests on
  double middle = 1;  // of their ratios to the rate as it stands: their geometric mean
  double spread = 0;  // of the natural logarithms of those ratios: their standard deviation

  friend bool operator==(const Backing&, const Backing&) = default;
};

/// Between which multiples of the rate the true one lies, nine times of ten.
struct RateRange {
  double least = 1, most = 1;
};

/// By Student's t of the jobs that timed it by itself, stretched so far that the rate is within;
/// nothing of fewer than two.
std::optional<RateRange> range_of(const Backing& backing);

/// Where it comes from, and what jobs say of it.
struct RateStanding {
  RateSource source = RateSource::own;
  Backing backing = {};

  friend bool operator==(const RateStanding&, const RateStanding&) = default;
};

/// How long an operation takes. Of several minutes each is for its own, and they add up.
struct OperationRate {
  std::string name;  // "mortise": of that operation, or of all whose names begin with its words
  WorkTime setup;    // each time that a machine is set to it
  std::array<std::optional<WorkTime>, kRunUnits> each = {};  // by WorkUnit
  std::string trade = {};                                    // empty: the one wage
  double machine_hour = 0;  // what the machine costs an hour while it is done, beside the wage
  RateStanding standing = {};

  friend bool operator==(const OperationRate&, const OperationRate&) = default;
};

/// Work that is no cut: survey, drawing, packing, delivery, fixing.
struct OtherWork {
  std::string what;
  WorkTime minutes;
  std::string trade = {};
  double cost = 0;                     // beside the hands: a fare, a permit
  WorkUnit per = WorkUnit::order;      // or trip, item, piece
  int times = 1;                       // for each of them
  WorkGroup group = WorkGroup::bench;  // where the file does not say: of a trip site
  RateStanding standing = {};

  friend bool operator==(const OtherWork&, const OtherWork&) = default;
};

/// What is put on wood, and how.
struct Finish {
  std::string name;  // "oil"
  int coats = 1;
  WorkTime setup;                // each coat of an order
  WorkTime square_metre;         // each coat
  double hours_between = 0;      // of the clock, from one coat to the next
  double cost_square_metre = 0;  // of the stuff, all coats
  std::string trade = {};
  RateStanding standing = {};

  friend bool operator==(const Finish&, const Finish&) = default;
};

// ---- money

struct Trade {
  std::string name;
  double wage = 0;  // an hour

  friend bool operator==(const Trade&, const Trade&) = default;
};

enum class PricedBy : unsigned char { piece, metre, square_metre, cubic_metre, board_foot };

template <>
inline constexpr std::string_view kWords<PricedBy>[] = {"piece", "metre", "square_metre",
                                                        "cubic_metre", "board_foot"};
static_assert(std::size(kWords<PricedBy>) == static_cast<std::size_t>(PricedBy::board_foot) + 1);

/// What is bought. A name stands for all whose words begin with its words: "hinges" for "hinges
/// with flaps 100 mm".
struct Goods {
  std::string name;
  double price = 0;
  PricedBy per = PricedBy::piece;
  double least = 0;  // charged for each, however small
  RateSource source = RateSource::own;

  friend bool operator==(const Goods&, const Goods&) = default;
};

/// Exactly one of them.
struct Overhead {
  std::optional<double> per_hour;  // that can be billed
  std::optional<double> share;     // of the cost that it is borne by

  friend bool operator==(const Overhead&, const Overhead&) = default;
};

/// What is put on the cost of each heading.
struct Markup {
  double wood = 0, sheet = 0, bought_in = 0, labour = 0;
  bool by_heading = false;  // else they are all one

  friend bool operator==(const Markup&, const Markup&) = default;
};

struct TaxLine {
  std::string what;
  double share = 0;  // of the price

  friend bool operator==(const TaxLine&, const TaxLine&) = default;
};

enum class RoundingWay : unsigned char { nearest, up };

template <>
inline constexpr std::string_view kWords<RoundingWay>[] = {"nearest", "up"};

/// To whole multiples of `to`, more than 0.
struct PriceRounding {
  double to = 0.01;
  RoundingWay way = RoundingWay::nearest;

  friend bool operator==(const PriceRounding&, const PriceRounding&) = default;
};

/// How much of the wood that is bought gets into the work. What is lost, 1 - `share`, is a share of
/// what is bought (0.7: buy net / 0.7), or is added to what is needed (0.7: buy net x 1.3).
struct Yield {
  double share = 1;  // more than 0, at most 1
  bool of_bought = true;

  double to_buy(double net) const { return of_bought ? net / share : net * (2 - share); }
  friend bool operator==(const Yield&, const Yield&) = default;
};

/// A rates file.
struct Rates {
  std::string currency;
  std::string note = {};
  RateSource source = RateSource::own;  // of all that do not say theirs

  std::optional<double> wage;  // an hour; or
  std::vector<Trade> trades;   // by name. With both, the wage is of what names no trade.
  double burden = 0;           // on a wage, as a share of it
  double billable = 1;         // of the hours that are paid; 0 leaves none to ask for
  std::vector<OtherWork> work;
  std::optional<Overhead> overhead;
  std::optional<double> margin;  // below 1; or
  std::optional<Markup> markup;
  std::vector<TaxLine> tax;
  PriceRounding rounding;
  double contingency = 0;  // a share of the cost
  std::vector<OperationRate> operations;
  std::vector<Finish> finish;
  std::vector<Goods> fittings, glass, sheet, bought_in, wood;
  std::optional<Yield> yield;
  std::optional<double> trial_piece_mm;  // how long a piece is that a set-up is tried on
  std::optional<double> hours_a_week;

  // What a customer's paper says beside the price.
  std::vector<std::string> letterhead;  // lines: who asks for it
  std::optional<int> valid_days;        // how long a quote holds
  std::vector<std::string> not_included;

  /// What an hour of a trade is paid; of an empty name the wage. Requires it to be known.
  double wage_of(std::string_view trade) const;
  /// What it costs as an hour that can be billed: the wage with its burden, over the billable
  /// share. Nothing where no hour can be.
  std::optional<double> labour_hour(std::string_view trade) const;
  /// Null where there is none.
  const Finish* finish_called(std::string_view name) const;

  friend bool operator==(const Rates&, const Rates&) = default;
};

/// The rate of an operation: of that name, else of the name with its last word taken off, and so
/// on: "tenon-face-cheek", "tenon-face", "tenon". Null where there is none.
const OperationRate* rate_of(const Rates& rates, std::string_view operation);

/// What is bought under a name, found by its words in the same way; null where there is none.
const Goods* goods_called(const std::vector<Goods>& goods, std::string_view name);

}  // namespace haunch
