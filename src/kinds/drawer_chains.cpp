// The chains of a drawer: how its box stands in the opening.
#include "drawer_plan_steps.h"

namespace haunch {
namespace {

Chain across(const DrawerPlan& plan) {
  const Length side = plan.side_thickness;
  return {"across the opening, from the left",
          {{"beside the box", plan.box.low[0]},
           {"left side", side},
           {"inside", plan.box.extent(0) - side * 2},
           {"right side", side},
           {"beside the box", plan.room.width - plan.box.high[0]}}};
}

Chain upwards(const DrawerPlan& plan) {
  const Length bottom = plan.bottom.top();
  Chain chain{"up, from the opening's lower edge", {}};
  if (plan.box.low[1] > Length()) chain.links.push_back({"below the box", plan.box.low[1]});
  chain.links.push_back({"to the bottom's upper side", bottom});
  chain.links.push_back({"inside", plan.box.extent(1) - bottom});
  chain.links.push_back({"above the sides", plan.room.height - plan.box.high[1]});
  return chain;
}

Chain to_the_back(const DrawerPlan& plan) {
  Chain chain{"from the front's face to the back",
              {{plan.is_applied() ? "front" : "front, with its corners", plan.front_thickness}}};
  if (plan.is_applied()) chain.links.push_back({"box front", plan.box_front_thickness});
  const Length back = plan.box.high[2] - plan.back_corner.set_in - plan.back_thickness;
  chain.links.push_back({"inside", back - plan.box.low[2] - plan.joined_thickness()});
  chain.links.push_back({"back", plan.back_thickness});
  if (back + plan.back_thickness < plan.rear())
    chain.links.push_back({"sides or bottom behind it", plan.rear() - back - plan.back_thickness});
  chain.links.push_back({"free behind", plan.room.depth - plan.rear()});
  return chain;
}

}  // namespace

std::vector<Chain> chains_of(const DrawerPlan& plan) {
  return {across(plan), upwards(plan), to_the_back(plan)};
}

}  // namespace haunch
