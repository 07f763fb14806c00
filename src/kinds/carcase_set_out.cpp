#include "carcase_set_out.h"

#include <algorithm>
#include <memory>
#include <string>
#include <utility>

#include "carcase_setter.h"
#include "dovetail.h"
#include "dowel.h"
#include "housing.h"
#include "leaves.h"
#include "marks.h"
#include "screwed_on.h"
#include "tongue.h"

namespace haunch {

static constexpr Length kNone;

/// Of the stiles of a group the foremost, or the one at the rear.
static std::size_t stile_of(const Assembly& wood, std::size_t group, bool rear) {
  std::optional<std::size_t> found;
  for (const std::size_t number : pieces_of(wood, group)) {
    if (wood.pieces[number].role != Role::stile) continue;
    const auto place = [&](std::size_t its) { return placed_blank(wood.pieces[its]).low[2]; };
    if (!found || (rear ? place(number) > place(*found) : place(number) < place(*found)))
      found = number;
  }
  return found.value_or(0);
}

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

SetOutCarcase set_out_carcase(const CarcasePlan& plan) {
  return CarcaseSetter(plan).set_out();
}

}  // namespace haunch
