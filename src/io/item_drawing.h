// What is drawn of an item: of one that is made as a whole all of it, of a run first that and then
// each of its cabinets by itself.
#pragma once

#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "along_wall.h"
#include "joint_details.h"
#include "leaves.h"
#include "report.h"
#include "sheet_layout.h"
#include "text_table.h"
#include "whole_views.h"

namespace haunch {

/// What has sheets of its own.
struct DrawnPart {
  std::string name;                 // of a cabinet in a run: "cabinet till"; else empty
  std::vector<std::size_t> pieces;  // of the item's, rising
  bool along_wall = false;          // a run as a whole

  // As it is drawn by itself; what its cuts tell is in its own axes.
  const Assembly* wood = nullptr;
  const std::vector<Chain>* chains = nullptr;
  const std::vector<NamedRoom>* rooms = nullptr;
  const std::vector<DrawnWood>* woods = nullptr;
  std::vector<LetteredCut> cuts;  // that the elevation tells of
  std::optional<LetteredCut> meeting;

  std::vector<LetteredJoint> joints;  // as they stand in the item
};

/// The drawing of one item, which outlives it, as do the lengths. The report has its making.
class ItemDrawing {
 public:
  ItemDrawing(const ItemReport& item, const LengthPrinter& lengths);
  ItemDrawing(const ItemDrawing&) = delete;
  ItemDrawing& operator=(const ItemDrawing&) = delete;

  /// In the order of their sheets.
  const std::vector<DrawnPart>& parts() const { return parts_; }
  /// None larger than `room`.
  std::vector<SheetBlock> blocks(const DrawnPart& part, const Extent& room) const;

 private:
  /// A cabinet, taken out of a run.
  struct Alone {
    AloneGroup group;
    std::vector<DrawnWood> woods;
    TakenPart taken;
  };

  void take_whole();
  void take_run();
  void take_cabinet(const AlongStand& stand);
  void letter_whole(DrawnPart& part);
  void letter_joints();
  std::size_t part_of(const JointView& view) const;
  LetteredCut lettered(LetteredCut cut);
  std::vector<SheetBlock> run_blocks(const Extent& room) const;
  std::vector<SheetBlock> whole_blocks(const DrawnPart& part, const Extent& room) const;
  SheetBlock meeting_block(const DrawnPart& part, const Extent& room) const;

  const ItemReport& item_;
  const LengthPrinter& lengths_;
  std::vector<DrawnWood> woods_;  // of the item's pieces
  std::deque<Alone> alone_;
  std::optional<AlongWall> wall_;
  std::vector<DrawnPart> parts_;
  std::size_t lettered_ = 0;
};

}  // namespace haunch
