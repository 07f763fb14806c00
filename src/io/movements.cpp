#include "movements.h"

#include <cmath>
#include <functional>
#include <numbers>
#include <set>
#include <utility>

#include "paper.h"

namespace haunch {
namespace {

using Turned = std::function<Triple(const Triple&)>;

Stroke outline(const NotedView& view, const Box& box, const Turned& turned) {
  SpotRun run;
  const auto corner = [&](bool right, bool back) {
    return view.paper(
        turned({right ? box.high[0] : box.low[0], box.low[1], back ? box.high[2] : box.low[2]}));
  };
  for (const auto& [right, back] :
       {std::pair{false, false}, std::pair{true, false}, std::pair{true, true},
        std::pair{false, true}, std::pair{false, false}})
    run.push_back(corner(right, back));
  return {Pen::moving, {run}};
}

/// Open by 90 degrees, and the way that its corner goes there.
void draw_swing(NotedView& view, const Box& box, const Swing& swing) {
  const Triple& pin = swing.pin;
  const bool left = !swing.at_high;
  view.picture().strokes.push_back(outline(view, box, [&](const Triple& at) {
    const Length across = at[0] - pin[0], back = at[2] - pin[2];
    return left ? Triple{pin[0] + back, at[1], pin[2] - across}
                : Triple{pin[0] - back, at[1], pin[2] + across};
  }));
  const ViewSpot centre = view.paper(pin);
  const ViewSpot free_corner =
      view.paper(Triple{left ? box.high[0] : box.low[0], pin[1], box.low[2]});
  const double radius = std::hypot(free_corner.u - centre.u, free_corner.v - centre.v);
  const double start = std::atan2(free_corner.v - centre.v, free_corner.u - centre.u);
  const ViewSpot forward = view.paper(Triple{pin[0], pin[1], pin[2] - whole_mm(100)});
  const double to = std::atan2(forward.v - centre.v, forward.u - centre.u);
  const double quarter = std::remainder(to - start, 2 * std::numbers::pi) > 0
                             ? std::numbers::pi / 2
                             : -std::numbers::pi / 2;
  SpotRun arc;
  for (int i = 0; i <= 24; ++i) {
    const double angle = start + quarter * i / 24;
    arc.push_back({centre.u + radius * std::cos(angle), centre.v + radius * std::sin(angle)});
  }
  view.picture().strokes.push_back({Pen::moving, {arc}});
}

void draw_travel(NotedView& view, const Box& box, const Slide& slide) {
  Box out = box;
  const auto axis = static_cast<std::size_t>(slide.along);
  out.low[axis] += slide.by;
  out.high[axis] += slide.by;
  const auto& [low, high] = view.paper(out);
  view.picture().strokes.push_back(
      {Pen::moving, {{low, {high.u, low.v}, high, {low.u, high.v}, low}}});
}

}  // namespace

void draw_movements(NotedView& view, const CutPlane& plane) {
  const auto axis = static_cast<std::size_t>(plane.across);
  for (const Fit& fit : view.wood().fits) {
    const Box box = placed_blanks(view.wood(), fit.group);
    if (plane.at <= box.low[axis] || plane.at >= box.high[axis]) continue;
    if (const auto* slide = std::get_if<Slide>(&fit.moves)) draw_travel(view, box, *slide);
    const Swing* swing = fit.swing();
    if (swing != nullptr && swing->axis == plane.across) draw_swing(view, box, *swing);
  }
}

void draw_movements_from_above(NotedView& view) {
  std::set<std::pair<Triple, Triple>> drawn;
  for (const Fit& fit : view.wood().fits) {
    Box box = placed_blanks(view.wood(), fit.group);
    box.low[1] = box.high[1] = Length();
    const auto* slide = std::get_if<Slide>(&fit.moves);
    const Swing* swing = fit.swing();
    const bool turns = swing != nullptr && swing->axis == Axis::y;
    if ((slide == nullptr && !turns) || !drawn.insert({box.low, box.high}).second) continue;
    if (turns)
      draw_swing(view, box, *swing);
    else
      draw_travel(view, box, *slide);
  }
}

}  // namespace haunch
