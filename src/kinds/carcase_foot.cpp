// What lifts a case off the floor, what it hangs on, and what closes it in a corner.
#include <algorithm>

#include "carcase_setter.h"
#include "screwed_on.h"

namespace haunch {

static constexpr Length kNone;

/// Notches the sides, or stands the case on a base of its own, and closes the front below it.
void CarcaseSetter::add_toe() {
  const ToePlan& toe = plan_.toe;
  if (!toe.is_there()) return;
  const Length thickness = plan_.stuff.thickness;
  if (toe.feet) return add_feet();
  if (toe.by == ToeBy::base) return add_base();
  const bool notched = toe.by == ToeBy::notched;
  const Length left = notched ? plan_.inside_left() : plan_.over;
  const Length right = notched ? plan_.inside_right() : plan_.over + plan_.width;
  const Length high = notched ? plan_.floor - thickness : toe.height;
  const std::size_t board =
      add("toe board", Role::toe_board, {right - left, high - toe.clear, thickness},
          {{left, toe.clear, std::max(toe.setback, plan_.front)}, kLevelBoard}, plan_.stuff);
  if (!bottoms_.empty()) hang_on(board, bottoms_.front());
  if (!notched) return;
  const Length into = toe.setback - plan_.front;
  for (const bool at_right : {false, true}) {
    const std::size_t side = sides_[at_right ? 1 : 0].front;
    Piece& piece = wood_.pieces[side];
    if (into > Length()) {
      Box notch = placed_blank(piece);
      notch.high[1] = notch.low[1] + toe.height;
      notch.high[2] = notch.low[2] + into;
      piece.features.push_back({FeatureKind::notch,
                                {},
                                {in_own_axes(notch, piece.place)},
                                {{SizeName::length, toe.height}, {SizeName::depth, into}}});
    }
    butt(wood_, {Junction(wood_, side, board, {Axis::x, at_right}, Axis::z)});
  }
}

/// A board of wood on edge that is glued below what swells and shrinks beside it: there it is held,
/// and moves away from it.
void CarcaseSetter::hang_on(std::size_t piece, std::size_t on) {
  if (wood_.pieces[piece].matter != Matter::wood) return;
  butt(wood_, {Junction(wood_, on, piece, {Axis::y, true}, Axis::z)});
  wood_.joints.back().kind = JointKind::planted;
  wood_.pieces[piece].held = Held::high_edge;
}

/// A block below each corner.
void CarcaseSetter::add_feet() {
  const FeetPlan& feet = *plan_.toe.feet;
  const Length right = plan_.over + plan_.width - feet.from_edge - feet.width;
  const Length rear = plan_.rear() - feet.from_edge - feet.width;
  for (const bool behind : {false, true})
    for (const bool at_right : {false, true}) {
      const Length x = at_right ? right : plan_.over + feet.from_edge;
      const Length z = behind ? rear : plan_.front + feet.from_edge;
      const std::string name =
          std::string(behind ? "rear" : "front") + (at_right ? " right foot" : " left foot");
      const std::size_t foot = add(name, Role::leg, {plan_.toe.height, feet.width, feet.width},
                                   {{x, Length(), z}, kUprightSheet}, plan_.stuff);
      if (bottoms_.empty()) continue;
      butt(wood_, {Junction(wood_, bottoms_[behind ? bottoms_.size() - 1 : 0], foot,
                            {Axis::y, true}, Axis::x)});
      wood_.joints.back().kind = JointKind::planted;
    }
}

/// Panel and filler stand flush with the front edges, between bottom and top.
void CarcaseSetter::add_blind() {
  if (!plan_.blind) return;
  const BlindPlan& blind = *plan_.blind;
  const Length low = plan_.bottom == CaseEnd::none ? plan_.foot() : plan_.floor;
  const Length high = plan_.ceiling() - low;
  const Length panel = blind.width - plan_.side_thickness();
  const auto stand = [&](const std::string& name, Length left, Length width) {
    return add(name, Role::filler, {high, width, plan_.stuff.thickness},
               {{left, low, plan_.front}, kUprightSheet}, plan_.stuff);
  };
  const Length side = blind.right ? plan_.inside_right() : plan_.inside_left();
  const std::size_t beside = stand("blind panel", blind.right ? side - panel : side, panel);
  const std::size_t filler =
      stand("filler", blind.right ? side - panel - blind.filler : side + panel, blind.filler);
  butt(wood_, {Junction(wood_, sides_[blind.right ? 1 : 0].front, beside, {Axis::x, blind.right},
                        Axis::z)});
  butt(wood_, {Junction(wood_, beside, filler, {Axis::x, blind.right}, Axis::z)});
}

/// A rail below the top, behind the back; of two cleats the other, below it, is the wall's.
void CarcaseSetter::add_hanging() {
  if (!plan_.hanging) return;
  const Length thickness = plan_.stuff.thickness;
  const Length high = plan_.hanging->height;
  const Length width = plan_.inside_right() - plan_.inside_left();
  const Length low = plan_.ceiling() - high;
  const Length behind = plan_.rear() - thickness;
  const auto add_board = [&](const std::string& name, Length foot) {
    return add(name, Role::cleat, {width, high, thickness},
               {{plan_.inside_left(), foot, behind}, kLevelBoard}, plan_.stuff);
  };
  const bool cleat = plan_.hanging->cleat;
  const std::size_t rail = add_board(cleat ? "hanging cleat" : "hanging rail", low);
  for (const bool at_right : {false, true})
    butt(wood_,
         {Junction(wood_, sides_[at_right ? 1 : 0].rear, rail, {Axis::x, at_right}, Axis::z)});
  if (!tops_.empty()) hang_on(rail, tops_.back());
  if (!cleat) return;
  // Both are bevelled by 45 degrees, so that the case's hooks behind the wall's.
  const std::size_t wall = add_board("wall cleat", low + thickness - high);
  const auto bevel = [&](std::size_t piece, std::vector<Corner> outline) {
    wood_.pieces[piece].features.push_back({FeatureKind::bevel,
                                            {},
                                            {},
                                            {{SizeName::depth, thickness}},
                                            {Prism{0, kNone, width, std::move(outline)}}});
  };
  bevel(rail, {{kNone, kNone}, {thickness, kNone}, {kNone, thickness}});
  bevel(wall, {{high, thickness}, {high - thickness, thickness}, {high, kNone}});
}

/// A frame of four boards below the case.
void CarcaseSetter::add_base() {
  const ToePlan& toe = plan_.toe;
  const Length thickness = plan_.stuff.thickness;
  const Length front = std::max(toe.setback, plan_.front);
  const Length rear = plan_.rear() - thickness;
  const Triple across{plan_.width, toe.height, thickness};
  const std::size_t fore = add("toe board", Role::toe_board, across,
                               {{plan_.over, Length(), front}, kLevelBoard}, plan_.stuff);
  const std::size_t hind = add("rear base board", Role::toe_board, across,
                               {{plan_.over, Length(), rear}, kLevelBoard}, plan_.stuff);
  for (const std::size_t board : {fore, hind})
    hang_on(board, sides_[0].front);
  constexpr std::array<Axis, 3> kInwards{Axis::z, Axis::y, Axis::x};
  for (const bool right : {false, true}) {
    const std::size_t end =
        add(right ? "right base board" : "left base board", Role::toe_board,
            {rear - front - thickness, toe.height, thickness},
            {{right ? plan_.inside_right() : plan_.over, Length(), front + thickness}, kInwards},
            plan_.stuff);
    butt(wood_, {Junction(wood_, fore, end, {Axis::z, false}, Axis::x)});
    butt(wood_, {Junction(wood_, hind, end, {Axis::z, true}, Axis::x)});
  }
}

}  // namespace haunch
