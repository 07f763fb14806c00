// The back of a case.
#include "carcase_setter.h"
#include "groove.h"
#include "leaves.h"

namespace haunch {

void CarcaseSetter::add_back() {
  const BackPlan& back = plan_.back;
  if (back.fit == BackFit::none) return;
  const Area area = plan_.back_area();
  const Triple at{area.left, area.low, plan_.back_face()};
  if (back.made) {
    const std::size_t group = add_group(wood_, *back.made, {at}, "back");
    const BackMembers stiles{outermost(wood_, group, false), outermost(wood_, group, true)};
    return hold_back(stiles);
  }
  const std::size_t piece =
      add("back", Role::back, {area.height(), area.width(), back.stuff.thickness},
          {at, kUprightSheet}, back.stuff);
  hold_back({piece, piece});
}

/// In the sides, by what of it stands at the left and at the right.
void CarcaseSetter::hold_back(const BackMembers& back) {
  switch (plan_.back.fit) {
    case BackFit::grooved:
      return groove_back(back.front());
    case BackFit::rebated:
      return rebate_back(back);
    case BackFit::planted:
      return plant_back(back);
    case BackFit::none:
      return;
  }
}

/// A groove or rebate for the back in the inner face of a piece, right along it.
static GrooveRef work_for_back(Assembly& wood, std::size_t piece, FeatureKind kind,
                               const Box& room) {
  Piece& its = wood.pieces[piece];
  const Box cut = in_own_axes(room, its.place);
  its.features.push_back({kind,
                          {},
                          {cut},
                          {{SizeName::width, cut.extent(1)},
                           {SizeName::depth, cut.extent(2)},
                           {SizeName::from_back, placed_blank(its).high[2] - room.high[2]}}});
  return {piece, its.features.size() - 1};
}

void CarcaseSetter::groove_back(std::size_t back) {
  const BackPlan& plan = plan_.back;
  const Length from = plan_.back_front();
  const Length to = from + plan.groove;
  const auto receive = [&](std::size_t piece, Heading heading) {
    Box room = placed_blank(wood_.pieces[piece]);
    const auto axis = static_cast<std::size_t>(heading.axis);
    room.low[2] = from;
    room.high[2] = to;
    if (heading.upwards)
      room.high[axis] = room.low[axis] + plan.depth;
    else
      room.low[axis] = room.high[axis] - plan.depth;
    const GrooveRef groove = work_for_back(wood_, piece, FeatureKind::groove, room);
    Clearances design;
    design.cheeks = plan.groove - plan.stuff.thickness;
    design.bottom = plan.gap;
    design.bite = plan.depth - plan.gap;
    house_panel(wood_, groove, back, heading, design);
  };
  receive(sides_[0].rear, {Axis::x, false});
  receive(sides_[1].rear, {Axis::x, true});
  if (plan_.bottom == CaseEnd::whole) receive(bottoms_.front(), {Axis::y, false});
  if (plan_.top == CaseEnd::whole) receive(tops_.front(), {Axis::y, true});
}

void CarcaseSetter::rebate_back(const BackMembers& back) {
  const BackPlan& plan = plan_.back;
  for (const bool right : {false, true}) {
    const std::size_t side = sides_[right ? 1 : 0].rear;
    Box room = placed_blank(wood_.pieces[side]);
    room.low[2] = plan_.back_front();
    if (right)
      room.high[0] = room.low[0] + plan.depth;
    else
      room.low[0] = room.high[0] - plan.depth;
    const GrooveRef rebate = work_for_back(wood_, side, FeatureKind::rebate, room);
    Clearances design;
    design.bearing = Length();
    design.bottom = plan.gap;
    design.bite = plan.depth - plan.gap;
    house_panel(wood_, rebate, back[right ? 1 : 0], {Axis::x, right}, design,
                JointKind::panel_in_rebate);
  }
}

void CarcaseSetter::plant_back(const BackMembers& back) {
  for (std::size_t i = 0; i < sides_.size(); ++i) {
    butt(wood_, {Junction(wood_, sides_[i].rear, back[i], {Axis::z, false}, Axis::x)});
    wood_.joints.back().kind = JointKind::planted;
  }
}

}  // namespace haunch
