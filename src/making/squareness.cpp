#include "squareness.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "cabinet_work.h"
#include "rounding.h"

namespace haunch {
namespace {

/// Shop practice: 1 mm to a metre of diagonal.
constexpr std::int64_t kOneIn = 1000;

/// The least box round the pieces of some roles in a group.
template <typename IsIt>
std::optional<Box> round_all(const Assembly& wood, std::size_t group, IsIt is_it) {
  std::optional<Box> box;
  for (const Piece& piece : wood.pieces)
    if (piece.group == group && is_it(piece)) {
      const Box its = placed_blank(piece);
      box = box ? around(*box, its) : its;
    }
  return box;
}

bool is_toe(const Piece& piece) {
  return piece.role == Role::toe_board || piece.role == Role::leg;
}

class Rectangles {
 public:
  explicit Rectangles(const Assembly& wood) : wood_(wood) {}

  std::vector<Rectangle> all() {
    for (std::size_t group = 0; group < wood_.groups.size(); ++group)
      of_group(group);
    return std::move(all_);
  }

 private:
  void of_group(std::size_t group) {
    const Group& its = wood_.groups[group];
    switch (its.kind) {
      case GroupKind::carcase:
        return of_case(group);
      case GroupKind::face_frame:
        return of_frame(group);
      case GroupKind::drawer:
        return of_drawer(group);
      case GroupKind::leaf:
        if (its.in && is_cabinet_work(wood_))
          add(group, group_name(its), placed_blanks(wood_, group), is_framed_end(group) ? 2 : 0, 1);
        return;
      default:
        return;
    }
  }

  /// A leaf that goes back from its front, instead of a side.
  bool is_framed_end(std::size_t group) const {
    if (wood_.groups[group].kind != GroupKind::leaf) return false;
    const std::vector<std::size_t> pieces = pieces_of(wood_, group);
    return std::all_of(pieces.begin(), pieces.end(), [&](std::size_t piece) {
      return wood_.pieces[piece].place.axes[2] == Axis::x;
    });
  }

  void add(std::size_t group, const std::string& what, const std::optional<Box>& box,
           std::size_t across, std::size_t up) {
    if (box) all_.push_back({what, group, box->extent(across), box->extent(up)});
  }

  /// From outside over the sides, or framed ends; inside from what closes it below to what does
  /// above.
  void of_case(std::size_t group) {
    const auto sides =
        round_all(wood_, group, [](const Piece& it) { return it.role == Role::side; });
    std::optional<Box> outside = sides;
    for (std::size_t end = 0; end < wood_.groups.size(); ++end)
      if (wood_.groups[end].in == group && is_framed_end(end))
        outside = outside ? around(*outside, placed_blanks(wood_, end)) : placed_blanks(wood_, end);
    const std::string of = group_name(wood_.groups[group]);
    add(group, of + " outside", outside, 0, 1);
    const auto inner = [&](Role role) {
      return round_all(wood_, group, [&](const Piece& it) { return it.role == role; });
    };
    const auto bottom = inner(Role::bottom);
    auto top = inner(Role::top);
    if (!top) top = inner(Role::top_rail);
    if (sides && bottom && top) of_inside(group, *bottom, *top);
    const auto base = round_all(wood_, group, is_toe);
    if (base && base->extent(2) > wood_.pieces[pieces_of(wood_, group).front()].blank[2] * 2)
      add(group, "base", base, 0, 2);
  }

  void of_inside(std::size_t group, const Box& bottom, const Box& top) {
    std::vector<Box> sides;
    for (const Piece& piece : wood_.pieces)
      if (piece.group == group && piece.role == Role::side) sides.push_back(placed_blank(piece));
    Length left = sides.front().high[0];
    Length right = wood_.size[0];
    for (const Box& side : sides)
      left = std::min(left, side.high[0]);
    for (const Box& side : sides)
      if (side.low[0] >= left) right = std::min(right, side.low[0]);
    all_.push_back({group_name(wood_.groups[group]) + " inside", group, right - left,
                    top.low[1] - bottom.high[1]});
  }

  void of_frame(std::size_t group) {
    add(group, "face frame", placed_blanks(wood_, group), 0, 1);
    if (wood_.groups[group].in) return;
    std::size_t number = 0;
    for (const Box& open : wood_.open)
      add(group, "opening " + std::to_string(++number), open, 0, 1);
  }

  /// Over its sides, from the front that these are joined to, to their rear.
  void of_drawer(std::size_t group) {
    auto box =
        round_all(wood_, group, [](const Piece& it) { return it.role == Role::drawer_side; });
    for (const Piece& piece : wood_.pieces) {
      if (piece.group != group || !box) continue;
      const Box its = placed_blank(piece);
      const bool front = piece.role == Role::drawer_front || piece.role == Role::drawer_box_front;
      if (front && its.extent(0) == box->extent(0)) box = around(*box, its);
    }
    add(group, group_name(wood_.groups[group]), box, 0, 2);
  }

  const Assembly& wood_;
  std::vector<Rectangle> all_;
};

}  // namespace

Length Rectangle::diagonal() const {
  return nearest_step(
      std::hypot(static_cast<double>(width.steps()), static_cast<double>(height.steps())));
}

Length Rectangle::may_differ() const {
  return floor_divide(diagonal(), kOneIn);
}

std::vector<Rectangle> rectangles_of(const Assembly& wood) {
  return Rectangles(wood).all();
}

}  // namespace haunch
