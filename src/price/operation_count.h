// How much there is of each operation in an order: what rates are multiplied by.
//
//   pieces          that are run at a set-up; before glue-up each strip of a panel by itself
//   metres          of cut: along a board that is ripped, planed or thicknessed, across one that is
//                   crosscut, round a sheet or a raised panel, along the runs of a groove or a
//                   mortise, along a glue line. Passes over the same cut are not counted apart.
//   joints          that the cut is for; of boards their glue lines; of a glue-up the joints in it,
//                   without panels and glass, which are put in dry
//   square metres   that are planed, or glued, or of sanding and finishing seen
#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "area.h"
#include "hours.h"

namespace haunch {

/// Of one item, once.
struct ItemCount {
  std::size_t item = 0;
  std::int64_t pieces = 0;
  std::int64_t joints = 0;
  Length metres = {};
  lumber::Area area = {};
  std::int64_t times = 1;  // that the area is gone over

  /// Metres and square metres that are begun count as hundredths of them.
  Quantity of(WorkUnit unit) const;
};

/// How many pieces of each item a set-up runs, by item.
using SetupPieces = std::map<std::size_t, std::int64_t>;

struct OperationCount {
  std::string operation;
  WorkGroup group = WorkGroup::machining;
  std::vector<SetupPieces> setups = {};
  std::vector<ItemCount> items = {};
};

/// In the order of the work: of the set-ups, then fitting, hanging and sanding.
std::vector<OperationCount> operations_of(const SetupPlan& plan,
                                          const std::vector<HourItem>& items);

/// Pieces of wood and board.
std::int64_t wood_pieces(const std::vector<HourItem>& items, std::size_t item);

/// The pieces and their seen surface.
ItemCount surface_count(const std::vector<HourItem>& items, std::size_t item);

}  // namespace haunch
