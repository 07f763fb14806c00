#include "carcase_set_out.h"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>

#include "dovetail.h"
#include "dowel.h"
#include "end_joint.h"
#include "groove.h"
#include "housing.h"
#include "leaves.h"
#include "marks.h"
#include "screwed_on.h"
#include "tongue.h"

namespace haunch {
namespace {

// Length, width and thickness: of what is in the case the width lies from front to back, of what
// closes it in front or behind its thickness.
constexpr std::array<Axis, 3> kUpright{Axis::y, Axis::z, Axis::x};
constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::z, Axis::y};
constexpr std::array<Axis, 3> kUprightSheet{Axis::y, Axis::x, Axis::z};
constexpr std::array<Axis, 3> kLevelBoard{Axis::x, Axis::y, Axis::z};

constexpr Length kNone;

/// Where on what receives it a piece ends: between its ends, or at one of them, where nothing is
/// left for a housing to stand in.
enum class Meeting : unsigned char { between, at_low_end, at_high_end };

/// Of the stiles of a group the foremost, or the one at the rear.
std::size_t stile_of(const Assembly& wood, std::size_t group, bool rear) {
  std::optional<std::size_t> found;
  for (const std::size_t number : pieces_of(wood, group)) {
    if (wood.pieces[number].role != Role::stile) continue;
    const auto place = [&](std::size_t its) { return placed_blank(wood.pieces[its]).low[2]; };
    if (!found || (rear ? place(number) > place(*found) : place(number) < place(*found)))
      found = number;
  }
  return found.value_or(0);
}

/// Sets a case out: sides, what closes it, what stands in it, its back.
class CarcaseSetter {
 public:
  explicit CarcaseSetter(const CarcasePlan& plan) : plan_(plan) {}

  SetOutCarcase set_out() {
    wood_.groups = {{GroupKind::carcase, "case", {}, {}}};
    wood_.size = {plan_.over + plan_.width, plan_.height, plan_.rear()};
    add_sides();
    add_end(plan_.bottom, "bottom", Role::bottom, plan_.floor - plan_.stuff.thickness,
            plan_.bottom_at_end() ? Meeting::at_low_end : Meeting::between);
    add_end(plan_.top, "top", Role::top, plan_.ceiling(), Meeting::at_high_end);
    for (const InnerPlan& inner : plan_.inner)
      add_inner(inner);
    add_back();
    add_toe();
    add_blind();
    for (const RunPlan& run : plan_.runs)
      add_run(run);
    for (const LooseShelves& shelves : plan_.loose)
      add_loose(shelves);
    add_hanging();
    for (const Joined& its : with_own_)
      its.joint->add_own_pieces(wood_, its.end);
    add_strips();
    return {std::move(wood_), sides_, std::move(inner_)};
  }

 private:
  /// What the ends of a piece stand on: of an upright one two rails maybe, or nothing.
  struct Ends {
    std::vector<std::size_t> low, high;
    Meeting meeting = Meeting::between;
    bool low_opposed = false, high_opposed = false;
    std::optional<Strip> groove = {};     // in it, for the back
    std::optional<CaseJoint> own = {};    // its joint, if that is not the case's
    std::optional<Stuff> its_stuff = {};  // the same of what it is made of
  };
  /// What of the back stands at the left and at the right: of a framed one its stiles.
  using BackMembers = std::array<std::size_t, 2>;
  /// An end whose joint has pieces of its own.
  struct Joined {
    std::unique_ptr<const EndJoint> joint;
    End end;
  };

  void add_sides();
  void add_framed_ends();
  void add_end(CaseEnd end, const std::string& name, Role role, Length low, Meeting meeting);
  void add_inner(const InnerPlan& inner);
  void add_back();
  void groove_back(std::size_t back);
  void hold_back(const BackMembers& back);
  void rebate_back(const BackMembers& back);
  void plant_back(const BackMembers& back);
  void add_toe();
  void add_base();
  void add_feet();
  void add_blind();
  void add_hanging();
  void add_strips();
  void add_run(const RunPlan& run);
  void screw_on_run(const RunPlan& run, const Junction& junction, std::size_t joint);
  void hang_on(std::size_t piece, std::size_t on);
  void add_loose(const LooseShelves& shelves);
  std::size_t add(const std::string& name, Role role, const Triple& blank, const Place& place,
                  const Stuff& stuff);
  std::size_t add_level(const std::string& name, Role role, const Area& at, Length front,
                        Length rear, const Ends& ends);
  std::size_t add_upright(const std::string& name, Role role, const Area& at, const Ends& ends);
  void join_ends(std::size_t piece, Axis along, const Ends& ends);
  std::unique_ptr<const EndJoint> joint(const Ends& ends, bool high_end, const Strip& across) const;
  Length reach(const Ends& ends, bool high_end) const;
  std::string numbered(Role role) const;

  const CarcasePlan& plan_;
  Assembly wood_;
  std::array<SideMembers, 2> sides_;
  std::vector<std::size_t> inner_;  // the pieces of plan_.inner
  std::vector<std::size_t> bottoms_, tops_;
  std::vector<Joined> with_own_;
};

std::size_t CarcaseSetter::add(const std::string& name, Role role, const Triple& blank,
                               const Place& place, const Stuff& stuff) {
  const std::size_t number = add_piece(wood_, name, role, blank, place);
  wood_.pieces[number].material = stuff.material;
  wood_.pieces[number].matter = stuff.matter;
  return number;
}

void CarcaseSetter::add_sides() {
  if (plan_.end) return add_framed_ends();
  const Length thickness = plan_.stuff.thickness;
  const Triple blank{plan_.height - plan_.foot(), plan_.depth, thickness};
  for (const bool right : {false, true}) {
    const std::size_t side =
        add(right ? "right side" : "left side", Role::side, blank,
            {{right ? plan_.inside_right() : plan_.over, plan_.foot(), plan_.front}, kUpright},
            plan_.stuff);
    sides_[right ? 1 : 0] = {side, side};
  }
}

/// Each turned so that its face looks outwards: the left one's right stile is the front one.
void CarcaseSetter::add_framed_ends() {
  for (const bool right : {false, true}) {
    Place at;
    at.axes = {Axis::z, Axis::y, Axis::x};
    at.backwards = {!right, false, right};
    at.origin = {right ? plan_.over + plan_.width : plan_.over, plan_.foot(),
                 right ? plan_.front : plan_.rear()};
    const std::size_t group = add_group(wood_, *plan_.end, at, right ? "right-side" : "left-side");
    sides_[right ? 1 : 0] = {stile_of(wood_, group, false), stile_of(wood_, group, true)};
  }
}

/// Dowels in such a stretch of the end of what is so thick. Where another end stands on the other
/// face, the holes of the two are moved apart: the lower or left one's to the front.
DowelDesign dowels_in(const CarcasePlan& plan, const Strip& across, Length thickness,
                      std::optional<bool> opposed_at_high) {
  const CaseDowels& dowels = *plan.dowels;
  DowelDesign design{dowels.bore,
                     dowels.diameter,
                     dowels.depth,
                     dowels.bottom,
                     floor_half(thickness - dowels.bore),
                     dowels.across(across.high - across.low)};
  const Length aside = !opposed_at_high ? kNone : *opposed_at_high ? -dowels.bore : dowels.bore;
  for (Length& wall : design.from_edge)
    wall += across.low + aside;
  design.depth_in_end = dowels.depth_in_end;
  return design;
}

/// How such a stretch of an end meets what it stands on. At the end of a side, where a housing
/// would have nothing above it or below, it is a rebate.
std::unique_ptr<const EndJoint> CarcaseSetter::joint(const Ends& ends, bool high_end,
                                                     const Strip& across) const {
  const bool opposed = high_end ? ends.high_opposed : ends.low_opposed;
  const CaseJoint kind = ends.own.value_or(plan_.joint);
  if (kind == CaseJoint::butted) return std::make_unique<Butt>();
  if (kind == CaseJoint::dowel)
    return std::make_unique<Dowels>(dowels_in(plan_, across,
                                              ends.its_stuff.value_or(plan_.stuff).thickness,
                                              opposed ? std::optional(high_end) : std::nullopt));
  const Length depth = opposed ? plan_.opposed_depth : plan_.joint_depth;
  const bool between = ends.meeting == Meeting::between;
  if (kind == CaseJoint::lapped_dovetail && !between)
    return std::make_unique<Dovetail>(
        DovetailDesign{plan_.tails->across(across.high - across.low, ends.groove),
                       plan_.tails->length, plan_.tails->spread});
  if (!between) return std::make_unique<RebatedCorner>(depth, ends.meeting == Meeting::at_low_end);
  if (kind == CaseJoint::tongued)
    return std::make_unique<Tongue>(TongueDesign{depth - plan_.below_tongue, plan_.tongue, kNone,
                                                 plan_.allowance, plan_.below_tongue});
  const Length stop = kind == CaseJoint::stopped_housing ? plan_.stop : kNone;
  return std::make_unique<Housing>(HousingDesign{depth, plan_.allowance, stop, plan_.round_stop});
}

/// How far an end goes into what it stands on.
Length CarcaseSetter::reach(const Ends& ends, bool high_end) const {
  if ((high_end ? ends.high : ends.low).empty()) return kNone;
  return joint(ends, high_end, {kNone, plan_.whole_width()})->reach();
}

void CarcaseSetter::join_ends(std::size_t piece, Axis along, const Ends& ends) {
  const Axis through = along == Axis::x ? Axis::y : Axis::x;
  const auto join = [&](std::size_t receiver, bool upwards) {
    const End end{Junction(wood_, receiver, piece, {along, upwards}, through)};
    const Box under = end.junction.blank(wood_.pieces[receiver]);
    const Box its = end.junction.blank(wood_.pieces[piece]);
    auto made = joint(ends, upwards,
                      {std::max(under.low[kAcross], its.low[kAcross]),
                       std::min(under.high[kAcross], its.high[kAcross])});
    made->cut(wood_, end);
    if (made->own_pieces() != Own::none) with_own_.push_back({std::move(made), end});
  };
  for (const std::size_t receiver : ends.low)
    join(receiver, false);
  for (const std::size_t receiver : ends.high)
    join(receiver, true);
}

std::size_t CarcaseSetter::add_level(const std::string& name, Role role, const Area& at,
                                     Length front, Length rear, const Ends& ends) {
  const Length left = reach(ends, false);
  const std::size_t piece =
      add(name, role, {at.width() + left + reach(ends, true), rear - front, at.height()},
          {{at.left - left, at.low, front}, kLevel}, ends.its_stuff.value_or(plan_.stuff));
  join_ends(piece, Axis::x, ends);
  return piece;
}

std::size_t CarcaseSetter::add_upright(const std::string& name, Role role, const Area& at,
                                       const Ends& ends) {
  const Length below = reach(ends, false);
  const std::size_t piece =
      add(name, role,
          {at.height() + below + reach(ends, true), plan_.back_front() - plan_.front, at.width()},
          {{at.left, at.low - below, plan_.front}, kUpright}, plan_.stuff);
  join_ends(piece, Axis::y, ends);
  return piece;
}

/// A whole bottom or top, or two rails that lie flat, the rear one before the back.
void CarcaseSetter::add_end(CaseEnd end, const std::string& name, Role role, Length low,
                            Meeting meeting) {
  const Area at{plan_.inside_left(), plan_.inside_right(), low, low + plan_.stuff.thickness};
  Ends ends{sides_[0].all(), sides_[1].all(), meeting};
  std::vector<std::size_t>& made = role == Role::top ? tops_ : bottoms_;
  if (end == CaseEnd::whole) {
    ends.groove = plan_.back_groove();
    made = {add_level(name, role, at, plan_.front, plan_.front + plan_.whole_width(), ends)};
  }
  if (end != CaseEnd::rails) return;
  const Length rear = plan_.back_front();
  made = {
      add_level("front " + name + " rail", Role::top_rail, at, plan_.front,
                plan_.front + plan_.rail_width, ends),
      add_level("rear " + name + " rail", Role::top_rail, at, rear - plan_.rail_width, rear, ends)};
}

/// "shelf 2": counted as they are set out.
std::string CarcaseSetter::numbered(Role role) const {
  std::size_t before = 0;
  for (const Piece& piece : wood_.pieces)
    before += piece.role == role ? 1 : 0;
  std::string name(word_of(role));
  if (const std::size_t dash = name.find('-'); dash != std::string::npos) name[dash] = ' ';
  return name + " " + std::to_string(before + 1);
}

void CarcaseSetter::add_inner(const InnerPlan& inner) {
  const auto receivers = [&](const std::optional<std::size_t>& its,
                             const std::vector<std::size_t>& otherwise) {
    return its ? std::vector<std::size_t>{inner_[*its]} : otherwise;
  };
  const Ends ends{receivers(inner.low, inner.upright ? bottoms_ : sides_[0].all()),
                  receivers(inner.high, inner.upright ? tops_ : sides_[1].all()),
                  Meeting::between,
                  inner.low_opposed,
                  inner.high_opposed,
                  {},
                  inner.joint,
                  inner.stuff};
  const Length rear =
      inner.role == Role::drawer_rail ? plan_.front + plan_.rail_width : plan_.back_front();
  inner_.push_back(inner.upright ? add_upright(numbered(inner.role), inner.role, inner.at, ends)
                                 : add_level(numbered(inner.role), inner.role, inner.at,
                                             plan_.front + inner.set_back, rear, ends));
  if (inner.load) wood_.pieces[inner_.back()].load = inner.load->of(inner.at.width());
}

// ---- back

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
GrooveRef work_for_back(Assembly& wood, std::size_t piece, FeatureKind kind, const Box& room) {
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

// ---- toe and loose shelves

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

/// Along the edges that are seen: in front where no frame lies before them, and at the rear of what
/// no back covers there.
void CarcaseSetter::add_strips() {
  const StripPlan& strips = plan_.strips;
  const bool covered = plan_.back.fit == BackFit::planted;
  for (Piece& piece : wood_.pieces) {
    const bool in_case = piece.role == Role::side || piece.role == Role::top ||
                         piece.role == Role::bottom || piece.role == Role::partition ||
                         piece.role == Role::shelf || piece.role == Role::top_rail;
    if (!in_case || piece.matter != Matter::board) continue;
    const Box box = placed_blank(piece);
    const bool seen = piece.loose || (!plan_.is_framed() && box.low[2] < plan_.back_front());
    const bool foremost = piece.role != Role::top_rail || box.low[2] == plan_.front;
    if (strips.front > kNone && seen && foremost)
      piece.strips.push_back({0, false, strips.front, strips.material});
    if (strips.rear > kNone && box.high[2] == plan_.rear() && !covered)
      piece.strips.push_back({0, true, strips.rear, strips.material});
  }
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

/// Planted on the face of what bounds the drawer's room, or standing in the housing of the rail
/// before it, which goes on behind that.
void CarcaseSetter::add_run(const RunPlan& run) {
  const Length length = plan_.back_front() - run.front - run.behind;
  const Length high = run.at.height();
  const Length deep = run.at.width() + run.depth;
  // What is broader than high is of a board that lies flat, and moves so.
  const bool flat = plan_.season.upwards > 0 && deep > high;
  constexpr std::array<Axis, 3> kOnEdge{Axis::z, Axis::y, Axis::x};
  constexpr std::array<Axis, 3> kFlat{Axis::z, Axis::x, Axis::y};
  const std::size_t strip =
      add(numbered(run.role), run.role, {length, flat ? deep : high, flat ? high : deep},
          {{run.at.left - (run.right ? kNone : run.depth), run.at.low, run.front},
           flat ? kFlat : kOnEdge},
          plan_.stuff);
  const auto stands = [&](std::size_t on) {
    return End{Junction(wood_, on, strip, {Axis::x, run.right}, Axis::y)};
  };
  const SideMembers& side = sides_[run.right ? 1 : 0];
  const std::size_t first = wood_.joints.size();
  const std::size_t bearer = run.fixed ? inner_[*run.fixed] : side.front;
  screw_on_run(run, Junction(wood_, bearer, strip, {Axis::x, run.right}, Axis::z), first);
  if (run.depth > kNone)
    return Housing(HousingDesign{run.depth, plan_.allowance}).cut(wood_, stands(bearer));
  for (const std::size_t on : run.fixed ? std::vector{inner_[*run.fixed]} : side.all()) {
    butt(wood_, stands(on));
    wood_.joints.back().kind = JointKind::planted;
  }
}

/// Its joint, which comes next, is held by these.
void CarcaseSetter::screw_on_run(const RunPlan& run, const Junction& junction, std::size_t joint) {
  for (const RunScrew& screw : run.screws)
    bore_screws(wood_, junction,
                {false, plan_.screw, screw.slot, {{floor_half(run.at.height()), screw.at}}}, joint);
}

void CarcaseSetter::add_loose(const LooseShelves& shelves) {
  const auto bound = [&](const std::optional<std::size_t>& inner, const SideMembers& side) {
    return inner ? SideMembers{inner_[*inner], inner_[*inner]} : side;
  };
  const auto bore = [&](const SideMembers& its, bool looks_right) {
    bore_row(wood_.pieces[its.front], looks_right, shelves.pins, shelves.pins.front);
    bore_row(wood_.pieces[its.rear], looks_right, shelves.pins, shelves.pins.rear);
  };
  bore(bound(shelves.left, sides_[0]), true);
  bore(bound(shelves.right, sides_[1]), false);
  for (const std::size_t hole : shelves.pins.used) {
    const std::size_t shelf =
        add(numbered(Role::shelf), Role::shelf,
            {shelves.room.width() - shelves.play, plan_.back_front() - shelves.front - shelves.play,
             shelves.stuff.thickness},
            {{shelves.room.left + floor_half(shelves.play), shelves.pins.underside(hole),
              shelves.front},
             kLevel},
            shelves.stuff);
    wood_.pieces[shelf].loose = true;
    wood_.pieces[shelf].load = shelves.load.of(wood_.pieces[shelf].blank[0]);
  }
}

}  // namespace

SetOutCarcase set_out_carcase(const CarcasePlan& plan) {
  return CarcaseSetter(plan).set_out();
}

}  // namespace haunch
