#include "operation_count.h"

#include <algorithm>
#include <set>
#include <utility>

#include "fitted.h"
#include "operation_names.h"
#include "seen_surface.h"

namespace haunch {
namespace {

WorkGroup group_of(const Setup& setup) {
  if (setup.process == Process::glue || setup.step > Step::cut) return WorkGroup::bench;
  return setup.step == Step::cut ? WorkGroup::machining : WorkGroup::milling;
}

/// Whether glue goes into it: what lies in a groove or rebate free to move is put in dry.
bool is_glued(JointKind kind) {
  switch (kind) {
    case JointKind::panel_in_groove:
    case JointKind::panel_in_rebate:
    case JointKind::glass_in_rebate:
    case JointKind::sealed_unit_in_rebate:
      return false;
    default:
      return true;
  }
}

/// What set-ups of one operation come to while they are added up.
class SetupCounting {
 public:
  SetupCounting(const SetupPlan& plan, const std::vector<HourItem>& items)
      : plan_(plan), items_(items) {
    for (const Setup& setup : plan.setups)
      for (const SetupPiece& piece : setup.pieces)
        strips_[piece.of] = std::max(strips_[piece.of], piece.strips);
  }

  OperationCount count(const std::string& operation) {
    counts_.assign(items_.size(), {});
    joints_.assign(items_.size(), {});
    OperationCount all{operation};
    for (const Setup& setup : plan_.setups)
      if (setup.operation() == operation) {
        all.group = group_of(setup);
        all.setups.push_back(add(setup));
      }
    for (std::size_t item = 0; item < items_.size(); ++item) {
      counts_[item].item = item;
      counts_[item].joints += static_cast<std::int64_t>(joints_[item].size());
      if (counts_[item].pieces > 0) all.items.push_back(counts_[item]);
    }
    return all;
  }

 private:
  SetupPieces add(const Setup& setup) {
    SetupPieces on;
    std::set<PieceOf> met;
    for (const SetupPiece& piece : setup.pieces) {
      ItemCount& count = counts_[piece.of.item];
      if (setup.step == Step::cut || setup.step == Step::fitting) add_runs(setup, piece, count);
      if (!met.insert(piece.of).second) continue;  // from another side of it
      const auto strips = static_cast<std::int64_t>(piece.strips);
      count.pieces += strips;
      on[piece.of.item] += strips;
      add_whole(setup, piece, count);
      if (setup.step == Step::together) add_glued(setup, piece);
    }
    return on;
  }

  const Piece& wood_of(const SetupPiece& piece) const {
    return items_[piece.of.item].item->wood->pieces[piece.of.piece];
  }

  void add_runs(const Setup& setup, const SetupPiece& piece, ItemCount& count) {
    const bool is_all_round = setup.process == Process::raise;
    const Piece& wood = wood_of(piece);
    for (const Run& run : piece.runs) {
      if (!is_all_round) count.metres += run.extent() * (piece.both_faces ? 2 : 1);
      if (run.joint) {
        joints_[piece.of.item].insert(*run.joint);
        continue;
      }
      const auto& served = wood.features[run.feature].joints;
      joints_[piece.of.item].insert(served.begin(), served.end());
    }
  }

  /// Of what is done to a piece as a whole.
  void add_whole(const Setup& setup, const SetupPiece& piece, ItemCount& count) const {
    const auto strips = static_cast<std::int64_t>(piece.strips);
    const auto [length, width, thickness] = piece.size;
    switch (setup.process) {
      case Process::crosscut:
        count.metres += width * strips;
        break;
      case Process::rip:
        count.metres += length * strips;
        break;
      case Process::surface:  // a face and an edge
        count.metres += length * strips;
        add_area(count, length, width + thickness, strips);
        break;
      case Process::thickness:
        count.metres += length * strips;
        add_area(count, length, width, strips);
        break;
      case Process::cut_sheet:
        count.metres += (length + width) * 2;
        add_area(count, length, width, 1);
        break;
      case Process::raise:
        count.metres += (length + width) * (piece.both_faces ? 4 : 2);
        break;
      case Process::glue:
        add_glue(setup, piece, count);
        break;
      default:
        break;
    }
  }

  static void add_area(ItemCount& count, Length length, Length width, std::int64_t times) {
    count.area += lumber::area_of(length * times, width);
  }

  /// Boards edge to edge, and strips on edges.
  void add_glue(const Setup& setup, const SetupPiece& piece, ItemCount& count) const {
    const auto [length, width, thickness] = piece.size;
    if (setup.step == Step::boards_together) {
      const auto lines = static_cast<std::int64_t>(strips_.at(piece.of)) - 1;
      count.joints += lines;
      count.metres += length * lines;
      add_area(count, length, thickness, lines);
    }
    if (setup.step != Step::strips) return;
    for (const EdgeStrip& strip : wood_of(piece).strips) {
      if (!std::any_of(setup.settings.begin(), setup.settings.end(),
                       [&](const NamedSize& size) { return size.size == strip.thickness; }))
        continue;
      const Length along = strip.along == 0 ? length : width;
      ++count.joints;
      count.metres += along;
      add_area(count, along, thickness, 1);
    }
  }

  /// The joints in which a piece enters another that is glued up with it.
  void add_glued(const Setup& setup, const SetupPiece& piece) {
    const auto& joints = items_[piece.of.item].item->wood->joints;
    for (std::size_t joint = 0; joint < joints.size(); ++joint)
      if (joints[joint].enters == piece.of.piece && is_glued(joints[joint].kind) &&
          is_on(setup, {piece.of.item, joints[joint].receives}))
        joints_[piece.of.item].insert(joint);
  }

  static bool is_on(const Setup& setup, PieceOf of) {
    return std::any_of(setup.pieces.begin(), setup.pieces.end(),
                       [&](const SetupPiece& piece) { return piece.of == of; });
  }

  const SetupPlan& plan_;
  const std::vector<HourItem>& items_;
  std::map<PieceOf, std::size_t> strips_;
  std::vector<ItemCount> counts_;
  std::vector<std::set<std::size_t>> joints_;
};

/// What is counted by number, by the operations that there are of it.
class NumberCounting {
 public:
  void add(const std::string& operation, WorkGroup group, std::size_t item, std::int64_t number) {
    auto its = std::find_if(all_.begin(), all_.end(), [&](const OperationCount& count) {
      return count.operation == operation;
    });
    if (its == all_.end()) its = all_.insert(its, {operation, group, {{}}, {}});
    its->setups.front()[item] += number;
    if (its->items.empty() || its->items.back().item != item) its->items.push_back({item});
    its->items.back().pieces += number;
  }

  std::vector<OperationCount> take() { return std::move(all_); }

 private:
  std::vector<OperationCount> all_;
};

/// Fitting goods, and hanging what moves.
std::vector<OperationCount> by_number(const std::vector<HourItem>& items) {
  NumberCounting counting;
  for (std::size_t item = 0; item < items.size(); ++item)
    if (items[item].hung)
      for (const FittedGoods& goods : fitted_to(*items[item].item->wood))
        if (goods.by_hand)
          counting.add("fit-" + hyphened(goods.name), WorkGroup::bench, item, goods.number);
  for (std::size_t item = 0; item < items.size(); ++item)
    if (items[item].hung)
      for (const HungGroup& group : hung_in(*items[item].item->wood))
        counting.add("hang-" + std::string(word_of(group.kind)) + (group.in_wall ? "-on-site" : ""),
                     group.in_wall ? WorkGroup::site : WorkGroup::bench, item, group.number);
  return counting.take();
}

}  // namespace

Quantity ItemCount::of(WorkUnit unit) const {
  constexpr std::int64_t kHundredth = 10;  // thousandths
  switch (unit) {
    case WorkUnit::piece:
      return Quantity::of(pieces);
    case WorkUnit::joint:
      return Quantity::of(joints);
    case WorkUnit::metre:
      return {ceiling_multiple(metres, Length::from_mm(10)).steps() / Length::from_mm(10).steps() *
              kHundredth};
    case WorkUnit::square_metre: {
      constexpr lumber::Area kEach = lumber::area_of(Length::from_mm(100), Length::from_mm(100));
      const lumber::Wide begun = (area.square_steps + kEach.square_steps - 1) / kEach.square_steps;
      return Quantity{static_cast<std::int64_t>(begun) * kHundredth} * times;
    }
    default:
      return {};
  }
}

std::int64_t wood_pieces(const std::vector<HourItem>& items, std::size_t item) {
  const auto& pieces = items[item].item->wood->pieces;
  return std::count_if(pieces.begin(), pieces.end(),
                       [](const Piece& piece) { return piece.matter != Matter::glass; });
}

ItemCount surface_count(const std::vector<HourItem>& items, std::size_t item) {
  ItemCount count{item, wood_pieces(items, item)};
  count.area = seen_surface(*items[item].item->wood);
  return count;
}

std::vector<OperationCount> operations_of(const SetupPlan& plan,
                                          const std::vector<HourItem>& items) {
  std::vector<OperationCount> all;
  SetupCounting counting(plan, items);
  for (const Setup& setup : plan.setups) {
    const std::string operation = setup.operation();
    const bool counted = std::any_of(all.begin(), all.end(), [&](const OperationCount& count) {
      return count.operation == operation;
    });
    if (!counted) all.push_back(counting.count(operation));
  }
  for (OperationCount& count : by_number(items))
    all.push_back(std::move(count));
  OperationCount sanding{"sand", WorkGroup::finish, {{}}, {}};
  for (std::size_t item = 0; item < items.size(); ++item) {
    sanding.items.push_back(surface_count(items, item));
    sanding.setups.front()[item] = sanding.items.back().pieces;
  }
  if (!items.empty()) all.push_back(std::move(sanding));
  return all;
}

}  // namespace haunch
