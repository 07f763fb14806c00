// How long an order takes: from its set-ups, pieces, joints, surfaces and fittings.
//
//   milling, cuts   from the set-ups: setting up once a run, and minutes a piece, a metre of cut or
//                   a joint
//   together        strips and joints that are glued
//   fitting         what is let in and hung, one by one
//   surfaces        sanded and finished, by the wood that is seen
//   other work      as the rates file and the items have it
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

#include "document.h"
#include "fitted.h"
#include "rates.h"
#include "seen_surface.h"
#include "setup.h"
#include "setup_item.h"

namespace haunch {

/// One item of an order, as far as hands have to do with it. What it points to outlives it.
struct HourItem {
  const SetupItem* item = nullptr;  // as in the plan, at the same place
  std::string finish = {};          // by its name in the rates file; empty: none
  int coats = 0;                    // of it; 0: as the rates file says
  FinishedFaces faces = FinishedFaces::both;
  bool hung = true;                  // what moves is fitted and hung
  std::vector<OtherWork> work = {};  // of its own
};

/// What of a line is of one item, all of its quantity. A set-up that items share is borne by each
/// in proportion to its pieces on it.
struct ItemTime {
  std::size_t item = 0;
  Quantity quantity;
  WorkTime setup, run;
};

/// Which list of a rates file a rate stands in.
enum class RateList : unsigned char { operations, finish, work };

/// What an operation takes, by one of the ways that its rate counts it. `quantity` times `each` is
/// `run`, `setups` times `setup_each` is `setup`, exactly. Lines of one operation follow each
/// other; its set-ups are told in the first.
struct HourLine {
  std::string operation;  // "mortise", "sand", "finish-oil", "survey"
  WorkGroup group = WorkGroup::machining;
  std::string trade = {};
  RateList list = RateList::operations;
  std::string rate = {};  // by whose name there it is reckoned: "tenon" of "tenon-haunch"
  RateStanding standing = {};
  double machine_hour = 0;
  double cost_each = 0;  // of other work, beside the hands
  std::int64_t setups = 0;
  WorkTime setup_each, setup;
  Quantity quantity;
  WorkUnit unit = WorkUnit::piece;
  WorkTime each, run;
  std::int64_t pieces = 0;  // of which it is done; of what has none to speak of: items
  std::vector<ItemTime> items = {};

  WorkTime total() const { return setup + run; }
};

/// An operation that no rate is told for, or none that it could be counted by; and how much of it
/// there is.
struct LackingRate {
  std::string operation;
  std::string rate = {};  // that is told, but comes to nothing: it counts what there is none of
  std::int64_t setups = 0;
  std::array<Quantity, kRunUnits> quantities = {};
};

/// The clock runs on while hands do other work.
struct WaitingTime {
  std::string what;  // "oil: between 3 coats"
  double hours = 0;
};

struct HoursPlan {
  std::vector<HourLine> lines;  // in the order of the work
  WorkTime total;
  std::vector<WaitingTime> waiting;
  std::vector<LackingRate> lacking;  // with any, the lines are not all of the work
};

/// Of all items `quantity` times over: set-ups and what is done once an order are done once.
HoursPlan hours_of(const SetupPlan& plan, const std::vector<HourItem>& items, const Rates& rates,
                   std::int64_t quantity = 1);

/// What is wrong with the rates file for such an order, at "/operations".
std::vector<Problem> problems_of(const HoursPlan& hours);

}  // namespace haunch
