#include "item_drawing.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include "edge_details.h"
#include "joinery_parts.h"
#include "run_views.h"
#include "run_work.h"

namespace haunch {
namespace {

/// "a", "b" …, "z", "aa": without those that look like figures.
std::string letters_of(std::size_t number) {
  constexpr std::string_view kLetters = "abcdefghjkmnpqrstuvwxyz";
  std::string letters(1, kLetters[number % kLetters.size()]);
  return number < kLetters.size() ? letters : letters_of(number / kLetters.size() - 1) + letters;
}

bool has_room(const Picture& picture, const Extent& room) {
  const Extent extent = extent_of(picture).value_or(Extent());
  return extent.width() <= room.width() && extent.height() <= room.height();
}

/// Views at the largest of these scales at which each has room.
template <typename AtScale>
std::vector<SheetBlock> largest(std::initializer_list<int> scales, const Extent& room,
                                const AtScale& at_scale) {
  std::vector<SheetBlock> blocks;
  for (const int one_to : scales) {
    const PaperScale scale{one_to};
    blocks.clear();
    for (const WholeView& view : at_scale(scale))
      blocks.push_back(
          {titled(view.picture, {view.letter, view.title + ", " + scale_text(scale), view.words},
                  room.width()),
           scale});
    if (std::all_of(blocks.begin(), blocks.end(),
                    [&](const SheetBlock& block) { return has_room(block.picture, room); }))
      break;
  }
  return blocks;
}

/// After the elevation.
void add_words(std::vector<SheetBlock>& blocks, const std::string& title,
               const std::vector<std::string>& words) {
  constexpr double kNarrow = 44;  // beside the elevation of a door
  if (words.empty()) return;
  const PaperScale scale = blocks.front().scale;
  blocks.insert(blocks.begin() + 1, {titled({}, {"", title, words, true}, kNarrow), scale});
}

/// The same cut of what stands with its own zero there.
LetteredCut seen_from(LetteredCut its, const Triple& zero) {
  its.cut.plane.at -= zero[static_cast<std::size_t>(its.cut.plane.across)];
  if (its.cut.region)
    for (std::size_t axis = 0; axis < 3; ++axis) {
      its.cut.region->low[axis] -= zero[axis];
      its.cut.region->high[axis] -= zero[axis];
    }
  return its;
}

}  // namespace

ItemDrawing::ItemDrawing(const ItemReport& item, const LengthPrinter& lengths)
    : item_(item), lengths_(lengths), woods_(drawn_of(item.wood)) {
  if (as_run(*item.job) != nullptr)
    take_run();
  else
    take_whole();
  letter_joints();
}

void ItemDrawing::take_whole() {
  DrawnPart part;
  for (std::size_t piece = 0; piece < item_.wood.pieces.size(); ++piece)
    part.pieces.push_back(piece);
  part.wood = &item_.wood;
  part.chains = &item_.chains;
  part.rooms = &item_.rooms;
  part.woods = &woods_;
  letter_whole(part);
  parts_.push_back(std::move(part));
}

/// What is made between its cabinets and beside them is drawn with the whole.
void ItemDrawing::take_run() {
  wall_ = as_run(*item_.job)->along_wall();
  DrawnPart run;
  run.along_wall = true;
  parts_.push_back(std::move(run));
  for (const AlongStand& stand : wall_->stands)
    if (stand.what == AlongStand::What::cabinet) take_cabinet(stand);
  std::vector<bool> taken(item_.wood.pieces.size());
  for (const Alone& alone : alone_)
    for (const std::size_t piece : alone.group.pieces)
      taken[piece] = true;
  for (std::size_t piece = 0; piece < taken.size(); ++piece)
    if (!taken[piece]) parts_.front().pieces.push_back(piece);
}

void ItemDrawing::take_cabinet(const AlongStand& stand) {
  const std::vector<Group>& groups = item_.wood.groups;
  const auto group = std::find_if(groups.begin(), groups.end(),
                                  [&](const Group& its) { return its.path == stand.part.path; });
  const Box& room = stand.part.room;
  Alone& alone = alone_.emplace_back();
  alone.taken = stand.part;
  alone.group = group_alone(item_.wood, static_cast<std::size_t>(group - groups.begin()), room);
  const Triple to_zero{-room.low[0], -room.low[1], -room.low[2]};
  for (std::size_t i = 0; i < alone.group.pieces.size(); ++i) {
    DrawnWood wood = woods_[alone.group.pieces[i]];
    wood.piece = i;
    move_by(wood, to_zero);
    alone.woods.push_back(std::move(wood));
  }
  DrawnPart part;
  part.name = "cabinet " + stand.name;
  part.pieces = alone.group.pieces;
  part.wood = &alone.group.wood;
  part.chains = &alone.taken.chains;
  part.rooms = &alone.taken.rooms;
  part.woods = &alone.woods;
  letter_whole(part);
  parts_.push_back(std::move(part));
}

LetteredCut ItemDrawing::lettered(LetteredCut cut) {
  cut.letter = letters_of(lettered_++);
  return cut;
}

void ItemDrawing::letter_whole(DrawnPart& part) {
  for (LetteredCut& cut : whole_cuts(*part.wood))
    part.cuts.push_back(lettered(std::move(cut)));
  if (auto cut = meeting_cut(*part.wood)) {
    part.meeting = lettered(std::move(*cut));
    part.cuts.push_back(*part.meeting);
  }
}

/// Each with the first part that has it.
void ItemDrawing::letter_joints() {
  for (JointView& view : joint_views(item_.wood)) {
    DrawnPart& part = parts_[part_of(view)];
    LetteredJoint& joint = part.joints.emplace_back();
    joint.view = std::move(view);
    for (const CutAway& cut : joint.view.sections)
      joint.cuts.push_back(lettered({"", cut}));
    if (joint.cuts.empty() || part.along_wall) continue;
    const bool is_alone = part.wood != &item_.wood;
    const std::size_t number = static_cast<std::size_t>(&part - parts_.data());
    part.cuts.push_back(is_alone ? seen_from(joint.cuts.front(), alone_[number - 1].taken.room.low)
                                 : joint.cuts.front());
  }
}

std::size_t ItemDrawing::part_of(const JointView& view) const {
  const std::size_t piece = item_.wood.joints[view.joints.front()].receives;
  const auto part = std::find_if(parts_.begin(), parts_.end(), [&](const DrawnPart& its) {
    return std::binary_search(its.pieces.begin(), its.pieces.end(), piece);
  });
  return static_cast<std::size_t>(part - parts_.begin());
}

std::vector<SheetBlock> ItemDrawing::run_blocks(const Extent& room) const {
  const RunViews views(item_, *wall_, woods_, lengths_);
  std::vector<SheetBlock> blocks = largest({1, 2, 5, 10, 20, 50, 100}, room,
                                           [&](PaperScale scale) { return views.at_scale(scale); });
  blocks.push_back({titled({}, {"", "order of fixing", fixing_words(item_, *wall_, lengths_), true},
                           room.width()),
                    blocks.front().scale});
  return blocks;
}

std::vector<SheetBlock> ItemDrawing::whole_blocks(const DrawnPart& part, const Extent& room) const {
  const WholeViews views({*part.wood, *part.chains, *part.rooms}, *part.woods, part.cuts, lengths_);
  std::vector<SheetBlock> blocks =
      largest({1, 2, 5, 10, 20, 50}, room, [&](PaperScale scale) { return views.at_scale(scale); });
  if (part.meeting) blocks.push_back(meeting_block(part, room));
  const bool is_alone = part.wood != &item_.wood;
  const std::vector<std::string> let_in =
      is_alone ? fitting_lines(*part.wood, making_of(*part.wood), lengths_)
               : fitting_lines(*part.wood, *item_.making, lengths_);
  add_words(blocks, "let in", let_in);
  add_words(blocks, "arches", arch_lines(*part.wood, lengths_));
  return blocks;
}

SheetBlock ItemDrawing::meeting_block(const DrawnPart& part, const Extent& room) const {
  return largest({1, 2, 5}, room,
                 [&](PaperScale scale) {
                   return std::vector{
                       meeting_view(*part.wood, *part.woods, *part.meeting, lengths_, scale)};
                 })
      .front();
}

std::vector<SheetBlock> ItemDrawing::blocks(const DrawnPart& part, const Extent& room) const {
  std::vector<SheetBlock> blocks = part.along_wall ? run_blocks(room) : whole_blocks(part, room);
  for (EdgeDetail& detail : edge_details(item_, lengths_, room))
    if (std::binary_search(part.pieces.begin(), part.pieces.end(), detail.piece))
      blocks.push_back(std::move(detail.block));
  for (SheetBlock& block : joint_details(item_, woods_, part.joints, lengths_, room))
    blocks.push_back(std::move(block));
  return blocks;
}

}  // namespace haunch
