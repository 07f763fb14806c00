#include "drawer_set_out.h"

#include <algorithm>
#include <array>
#include <memory>
#include <utility>

#include "dovetail.h"
#include "dowel.h"
#include "finger.h"
#include "groove.h"
#include "housing.h"
#include "marks.h"
#include "screwed_on.h"
#include "tongue.h"

namespace haunch {
namespace {

// Length, width and thickness of a piece.
constexpr std::array<Axis, 3> kFacing{Axis::x, Axis::y, Axis::z};     // front and back
constexpr std::array<Axis, 3> kFromFront{Axis::z, Axis::y, Axis::x};  // sides and slips
constexpr std::array<Axis, 3> kFlat{Axis::x, Axis::z, Axis::y};       // a bottom, grain level

/// Whether the sides come out at the far face of what they go into.
bool reaches_face(const CornerPlan& corner, Length thickness) {
  return !corner.tails.empty() && corner.length == thickness;
}

/// Sets a drawer out: pieces, corners, then the bottom and what holds it. Places are the drawer's.
class DrawerSetter {
 public:
  explicit DrawerSetter(const DrawerPlan& plan) : plan_(plan), box_(plan.box) {
    for (std::size_t axis = 0; axis < 3; ++axis) {
      box_.low[axis] -= plan.at()[axis];
      box_.high[axis] -= plan.at()[axis];
    }
  }

  Assembly set_out() {
    wood_.groups = {{GroupKind::drawer, "drawer", {}, {}}};
    wood_.size = {plan_.face.extent(0), plan_.face.extent(1), plan_.rear() - plan_.face.low[2]};
    stand_in_opening();
    add_front();
    add_sides();
    add_back();
    join_corners();
    if (plan_.bottom.fit == BottomFit::slips) add_slips();
    add_bottom();
    if (plan_.is_applied()) fix_front();
    return std::move(wood_);
  }

 private:
  void stand_in_opening();
  void add_front();
  void add_sides();
  void add_back();
  void join_corners();
  void add_slips();
  void add_bottom();
  void fix_front();
  void work_lip();
  void join(bool in_front, bool right);
  void stand_in_grooves(std::size_t bottom);
  void hold_at_back(std::size_t bottom);
  GrooveRef groove_beside(std::size_t piece, bool right);
  GrooveRef groove_across(std::size_t piece, bool at_back);
  std::unique_ptr<const EndJoint> joint_for(const CornerPlan& corner, bool in_front,
                                            bool right) const;
  DowelDesign dowels_for(const CornerPlan& corner, bool in_front) const;

  /// What the sides are joined to in front: the front, or that of the box.
  std::size_t joined() const { return plan_.is_applied() ? box_front_ : front_; }
  std::size_t side(bool right) const { return right ? right_side_ : left_side_; }
  /// The inner faces of front and back.
  Length behind_front() const { return box_.low[2] + plan_.joined_thickness(); }
  Length before_back() const {
    return box_.high[2] - plan_.back_corner.set_in - plan_.back_thickness;
  }
  /// How far front or back go into the sides, where the sides do not go into them.
  Length into_sides(const CornerPlan& corner, bool in_front) const;
  bool enter(const CornerPlan& corner, bool in_front) const {
    return sides_enter(plan_, corner, in_front);
  }
  std::size_t add(const std::string& name, Role role, const Box& room,
                  const std::array<Axis, 3>& axes);

  const DrawerPlan& plan_;
  Box box_;  // of the plan, in the drawer's axes
  Assembly wood_;
  std::size_t front_ = 0, box_front_ = 0, left_side_ = 0, right_side_ = 0, back_ = 0;
  std::vector<std::size_t> slips_;
};

void DrawerSetter::stand_in_opening() {
  const DrawerRoom& room = plan_.room;
  Fit fit{StandsIn::opening, 0, 0, room.width, room.height};
  fit.meets = room.meets;
  const Box& in = room.meets == Meets::inset ? plan_.face : plan_.box;
  fit.room = {in.low[0], room.width - in.high[0], room.height - in.high[1], in.low[1]};
  if (room.meets != Meets::inset) fit.lap = room.lap;
  fit.lip = plan_.lip;
  fit.moves = Slide{Axis::z, -plan_.runner.travel};
  wood_.fits = {fit};
}

std::size_t DrawerSetter::add(const std::string& name, Role role, const Box& room,
                              const std::array<Axis, 3>& axes) {
  Triple blank;
  for (std::size_t own = 0; own < 3; ++own)
    blank[own] = room.extent(static_cast<std::size_t>(axes[own]));
  const std::size_t number = add_piece(wood_, name, role, blank, {room.low, axes});
  if (role == Role::drawer_front || role == Role::drawer_bottom) return number;
  wood_.pieces[number].matter = plan_.matter;
  wood_.pieces[number].material = plan_.material;
  return number;
}

Length DrawerSetter::into_sides(const CornerPlan& corner, bool in_front) const {
  return enter(corner, in_front) ? plan_.side_thickness : corner.length;
}

void DrawerSetter::add_front() {
  const Length none;
  front_ =
      add("front", Role::drawer_front,
          {{none, none, none}, {wood_.size[0], wood_.size[1], plan_.front_thickness}}, kFacing);
  if (plan_.lip > Length()) work_lip();
  if (!plan_.is_applied()) return;
  const Length in = plan_.side_thickness - into_sides(plan_.front_corner, true);
  box_front_ = add("box front", Role::drawer_box_front,
                   {{box_.low[0] + in, box_.low[1], box_.low[2]},
                    {box_.high[0] - in, box_.high[1], behind_front()}},
                   kFacing);
}

/// What stands in the opening is cut away to that all round; the lip lies before its edges.
void DrawerSetter::work_lip() {
  Piece& front = wood_.pieces[front_];
  const Length none;
  const Box body{{box_.low[0], box_.low[1], none}, {box_.high[0], box_.high[1], none}};
  const Length width = wood_.size[0];
  const Length height = wood_.size[1];
  Feature rebate{
      FeatureKind::lip_rebate, {}, {}, {{SizeName::depth, plan_.front_thickness - plan_.lip}}};
  const auto cut = [&](Length x0, Length y0, Length x1, Length y1) {
    const Box box{{x0, y0, plan_.lip}, {x1, y1, plan_.front_thickness}};
    if (x1 > x0 && y1 > y0) rebate.cuts.push_back(box);
  };
  cut(none, none, body.low[0], height);
  cut(body.high[0], none, width, height);
  cut(body.low[0], none, body.high[0], body.low[1]);
  cut(body.low[0], plan_.room.height - plan_.runner.above - plan_.at()[1], body.high[0], height);
  front.features.push_back(std::move(rebate));
}

void DrawerSetter::add_sides() {
  const Length front_end =
      enter(plan_.front_corner, true) ? behind_front() - plan_.front_corner.length : box_.low[2];
  const Length back_end =
      enter(plan_.back_corner, false) ? before_back() + plan_.back_corner.length : box_.high[2];
  const auto side_at = [&](const std::string& name, Length left) {
    return add(
        name, Role::drawer_side,
        {{left, box_.low[1], front_end}, {left + plan_.side_thickness, box_.high[1], back_end}},
        kFromFront);
  };
  left_side_ = side_at("left side", box_.low[0]);
  right_side_ = side_at("right side", box_.high[0] - plan_.side_thickness);
}

void DrawerSetter::add_back() {
  const Length in = plan_.side_thickness - into_sides(plan_.back_corner, false);
  back_ = add("back", Role::drawer_back,
              {{box_.low[0] + in, box_.low[1] + plan_.back_low(), before_back()},
               {box_.high[0] - in, box_.high[1], before_back() + plan_.back_thickness}},
              kFacing);
}

// ---- corners

std::unique_ptr<const EndJoint> DrawerSetter::joint_for(const CornerPlan& corner, bool in_front,
                                                        bool right) const {
  const Length allowance = plan_.fit_allowance;
  const bool sides = enter(corner, in_front);
  const Length thickness = sides      ? plan_.side_thickness
                           : in_front ? plan_.joined_thickness()
                                      : plan_.back_thickness;
  // The lip beside a tongue is outside: at left and right of the sides, in front of a box front,
  // behind a back.
  const bool at_high = sides ? !right : in_front;
  switch (corner.joint) {
    case DrawerCorner::lapped_dovetail:
    case DrawerCorner::dovetail:
      return std::make_unique<Dovetail>(DovetailDesign{corner.tails, corner.length, corner.spread});
    case DrawerCorner::finger:
      return std::make_unique<Fingers>(FingerDesign{corner.tails, allowance}, corner.length);
    case DrawerCorner::rebated:
      return std::make_unique<RebatedCorner>(corner.length, in_front && !right);
    case DrawerCorner::housed:
      return std::make_unique<Housing>(HousingDesign{corner.length, allowance});
    case DrawerCorner::tongued:
      return std::make_unique<Tongue>(TongueDesign{corner.length, corner.tongue,
                                                   at_high ? thickness - corner.tongue : Length(),
                                                   allowance, corner.room});
    case DrawerCorner::dowel:
      break;
  }
  return std::make_unique<Dowels>(dowels_for(corner, in_front));
}

/// Evenly over what is joined, clear of the groove; the outer ones twice as far from its edges as
/// they are thick.
DowelDesign DrawerSetter::dowels_for(const CornerPlan& corner, bool in_front) const {
  const DrawerBottomPlan& bottom = plan_.bottom;
  const Length thickness = enter(corner, in_front) ? plan_.side_thickness
                           : in_front              ? plan_.joined_thickness()
                                                   : plan_.back_thickness;
  const bool grooved = in_front || !bottom.under_back;
  const Length low = (grooved ? bottom.top() : Length()) + corner.dowel * 2;
  const Length height = box_.extent(1) - (in_front ? Length() : plan_.back_low());
  const Length room = height - low - corner.dowel * 3;
  const std::int64_t more = std::max<std::int64_t>(1, room.steps() / (corner.dowel * 10).steps());
  DowelDesign design{corner.dowel, corner.dowel - plan_.fit_allowance,   corner.dowel_depth,
                     corner.room,  floor_half(thickness - corner.dowel), {}};
  for (std::int64_t i = 0; i <= more; ++i)
    design.from_edge.push_back(low + floor_divide(room * i, more));
  return design;
}

void DrawerSetter::join(bool in_front, bool right) {
  const CornerPlan& corner = in_front ? plan_.front_corner : plan_.back_corner;
  const std::size_t across = in_front ? joined() : back_;
  const auto joint = joint_for(corner, in_front, right);
  const End end = enter(corner, in_front)
                      ? End{Junction(wood_, across, side(right), {Axis::z, !in_front}, Axis::x)}
                      : End{Junction(wood_, side(right), across, {Axis::x, right}, Axis::z)};
  joint->cut(wood_, end);
  joint->add_own_pieces(wood_, end);
}

void DrawerSetter::join_corners() {
  for (const bool in_front : {true, false})
    for (const bool right : {false, true})
      join(in_front, right);
}

// ---- the bottom

/// A groove in the inner face of what stands at a side.
GrooveRef DrawerSetter::groove_beside(std::size_t piece, bool right) {
  const DrawerBottomPlan& bottom = plan_.bottom;
  Piece& grooved = wood_.pieces[piece];
  // Where the sides come through the front, or a back that the bottom does not run under, it would
  // be seen at their ends.
  const bool stops_in_front = reaches_face(plan_.front_corner, plan_.joined_thickness());
  const bool stops_at_back =
      !bottom.under_back && reaches_face(plan_.back_corner, plan_.back_thickness);
  const Length start = grooved.place.origin[2];
  const Length from =
      stops_in_front ? std::max(start, behind_front() - bottom.groove_depth) : start;
  const Length to = stops_at_back ? before_back() + bottom.groove_depth : start + grooved.blank[0];
  const Length in = grooved.blank[2] - bottom.groove_depth;
  const Box cut{{from - start, bottom.from_edge, right ? Length() : in},
                {to - start, bottom.from_edge + bottom.groove_width(),
                 right ? bottom.groove_depth : grooved.blank[2]}};
  grooved.features.push_back({FeatureKind::groove,
                              {},
                              {cut},
                              {{SizeName::width, bottom.groove_width()},
                               {SizeName::depth, bottom.groove_depth},
                               {SizeName::from_edge, bottom.from_edge}}});
  return {piece, grooved.features.size() - 1};
}

/// The same in the inner face of front or back, from end to end of it.
GrooveRef DrawerSetter::groove_across(std::size_t piece, bool at_back) {
  const DrawerBottomPlan& bottom = plan_.bottom;
  Piece& grooved = wood_.pieces[piece];
  const Length low = box_.low[1] + bottom.from_edge - grooved.place.origin[1];
  const Length in = grooved.blank[2] - bottom.groove_depth;
  grooved.features.push_back({FeatureKind::groove,
                              {},
                              {{{Length(), low, at_back ? Length() : in},
                                {grooved.blank[0], low + bottom.groove_width(),
                                 at_back ? bottom.groove_depth : grooved.blank[2]}}},
                              {{SizeName::width, bottom.groove_width()},
                               {SizeName::depth, bottom.groove_depth},
                               {SizeName::from_edge, low}}});
  return {piece, grooved.features.size() - 1};
}

void DrawerSetter::add_slips() {
  const DrawerBottomPlan& bottom = plan_.bottom;
  for (const bool right : {false, true}) {
    const Length inner = right ? box_.high[0] - plan_.side_thickness - bottom.slip_width
                               : box_.low[0] + plan_.side_thickness;
    slips_.push_back(
        add(right ? "right slip" : "left slip", Role::slip,
            {{inner, box_.low[1], behind_front()},
             {inner + bottom.slip_width, box_.low[1] + bottom.slip_height, before_back()}},
            kFromFront));
    wood_.joints.push_back(Junction(wood_, side(right), slips_.back(), {Axis::x, right}, Axis::y)
                               .joint(JointKind::planted, kButtMeasures));
  }
}

void DrawerSetter::add_bottom() {
  const DrawerBottomPlan& bottom = plan_.bottom;
  const bool slips = bottom.fit == BottomFit::slips;
  const Length beside = plan_.side_thickness + (slips ? bottom.slip_width : Length());
  const Length low = box_.low[1] + bottom.from_edge;
  const std::size_t number =
      add("bottom", Role::drawer_bottom,
          {{box_.low[0] + beside - bottom.bite(), low, behind_front() - bottom.bite()},
           {box_.high[0] - beside + bottom.bite(), low + bottom.thickness,
            bottom.under_back ? box_.high[2] + bottom.overhang : before_back() + bottom.bite()}},
          kFlat);
  Piece& piece = wood_.pieces[number];
  piece.matter = bottom.matter;
  piece.material = bottom.material;
  piece.held = Held::low_edge;
  stand_in_grooves(number);
  if (bottom.under_back) hold_at_back(number);
}

void DrawerSetter::stand_in_grooves(std::size_t bottom) {
  Clearances design;
  design.cheeks = plan_.bottom.allowance;
  design.bottom = plan_.bottom.gap;
  design.bite = plan_.bottom.bite();
  const auto house = [&](const GrooveRef& groove, Heading heading) {
    house_panel(wood_, groove, bottom, heading, design);
  };
  house(groove_across(joined(), false), {Axis::z, false});
  for (const bool right : {false, true})
    house(groove_beside(slips_.empty() ? side(right) : slips_[right ? 1 : 0], right),
          {Axis::x, right});
  if (!plan_.bottom.under_back) house(groove_across(back_, true), {Axis::z, true});
}

/// The back stands on it. Screws from below, one in the middle and one towards each end.
void DrawerSetter::hold_at_back(std::size_t bottom) {
  const Junction junction(wood_, back_, bottom, {Axis::y, true}, Axis::z);
  const Length middle = floor_half(wood_.pieces[bottom].blank[0]);
  const Length third = floor_divide(wood_.pieces[bottom].blank[0], 3);
  const Length behind =
      before_back() + floor_half(plan_.back_thickness) - wood_.pieces[bottom].place.origin[2];
  screw_on(wood_, junction,
           {false,
            plan_.screw,
            plan_.bottom.slot,
            {{middle - third, behind}, {middle, behind}, {middle + third, behind}}});
}

// ---- an applied front

void DrawerSetter::fix_front() {
  const Junction junction(wood_, box_front_, front_, {Axis::z, true}, Axis::y);
  const Box box = placed_blank(wood_.pieces[box_front_]);
  const Length in = plan_.side_thickness + plan_.screw * 6;
  const Length up = floor_divide(box.extent(1), 4);
  ScrewedOnDesign design{true, plan_.screw, {}, {}};
  for (const Length across : {box_.low[0] + in, box_.high[0] - in})
    for (const Length height : {box.low[1] + up, box.high[1] - up})
      design.screws.push_back({across, height});
  screw_on(wood_, junction, design);
}

}  // namespace

Assembly set_out_drawer(const DrawerPlan& plan) {
  return DrawerSetter(plan).set_out();
}

}  // namespace haunch
