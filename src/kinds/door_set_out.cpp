#include "door_set_out.h"

#include <utility>

#include "arch_edge.h"
#include "door_joints.h"
#include "fittings.h"
#include "follow.h"
#include "leaves.h"
#include "marks.h"
#include "solid.h"

namespace haunch {
namespace {

constexpr std::array<Axis, 3> kUpright{Axis::y, Axis::x, Axis::z};
constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::y, Axis::z};
constexpr std::size_t kFirstRail = 2;  // after the stiles

/// The grooves along the two edges of a piece; a piece at the outside of the leaf has but one.
struct Grooves {
  GrooveRef low, high;
};

/// Cuts what of a piece stands beside a leaf's body, behind its lip.
void rebate_beside(Piece& piece, const Box& body) {
  const Box blank = placed_blank(piece);
  Feature feature{FeatureKind::lip_rebate, {}, {}, {}};
  Length width;
  Box left = blank;
  left.low[2] = body.low[2];
  for (const std::size_t axis : {std::size_t{0}, std::size_t{1}})
    for (const bool high : {false, true}) {
      Box cut = left;
      (high ? cut.low : cut.high)[axis] = (high ? body.high : body.low)[axis];
      if (cut.low[axis] >= cut.high[axis]) continue;
      width = cut.extent(axis);
      feature.cuts.push_back(in_own_axes(cut, piece.place));
      (high ? left.high : left.low)[axis] = (high ? body.high : body.low)[axis];
    }
  if (feature.cuts.empty()) return;
  feature.sizes = {{SizeName::width, width}, {SizeName::depth, blank.high[2] - body.low[2]}};
  piece.features.push_back(std::move(feature));
}

/// Cuts what of a piece, a tenon or a wedge, comes into the rebate of the meeting stile.
void rebate_at_meeting(Piece& piece, const Box& rebate) {
  const auto within = common(placed_blank(piece), rebate);
  if (!within) return;
  piece.features.push_back(
      {FeatureKind::meeting_rebate,
       {},
       {in_own_axes(*within, piece.place)},
       {{SizeName::width, within->extent(0)}, {SizeName::depth, within->extent(2)}}});
}

/// Sets a leaf out, frame first, then grooves, then joints from the top of the leaf to its foot.
class DoorSetter {
 public:
  explicit DoorSetter(const DoorPlan& plan) : plan_(plan) {
    for (std::size_t i = 0; i < plan.frame.rails.size(); ++i)
      rail_joints_.push_back({joints_of_rail(plan, i, plan.frame.stile_left),
                              joints_of_rail(plan, i, plan.frame.stile_right)});
    muntin_joints_ = joints_of_muntin(plan);
  }

  Assembly set_out() {
    wood_.size = {plan_.frame.width, plan_.frame.height, plan_.frame.thickness};
    wood_.fits = {plan_.frame.opening};
    add_stiles();
    if (plan_.frame.pair) rebate_meeting_stile(*plan_.frame.pair);
    add_rails();
    for (const std::size_t stile : {stiles_.low.piece, stiles_.high.piece})
      rebate_for_lip(stile);
    for (std::size_t rail = 0; rail < rails_.size(); ++rail)
      rebate_outside(kFirstRail + rail);
    if (plan_.frame.head)
      saw_head(wood_, stiles_.low.piece, stiles_.high.piece, kFirstRail, *plan_.frame.head);
    add_muntins();
    join_rails();
    join_muntins();
    for (std::size_t tier = 0; tier < plan_.frame.tiers.size(); ++tier)
      add_panels(tier);
    for (const Own own : kOwnPieces)
      add_own_pieces(own);
    for (std::size_t piece = 0; piece < wood_.pieces.size(); ++piece)
      if (wood_.pieces[piece].role == Role::wedge) rebate_outside(piece);
    let_in(wood_, stiles_.low.piece, stiles_.high.piece, plan_.fittings);
    return std::move(wood_);
  }

 private:
  const EndJoint& joint_of(std::size_t rail) const { return *rail_joints_[rail].left.front(); }
  Length left_reach(std::size_t rail) const { return joint_of(rail).reach(); }
  Length right_reach(std::size_t rail) const { return rail_joints_[rail].right.front()->reach(); }
  Length stile_length(bool right) const {
    const auto& head = plan_.frame.head;
    if (!head) return plan_.frame.height;
    return right ? head->right_length : head->left_length;
  }
  Length inside_width() const {
    return plan_.frame.width - plan_.frame.stile_left - plan_.frame.stile_right;
  }

  /// Which of a rail's shoulders its mortises are told from, where the two differ.
  std::string_view shoulder() const {
    if (plan_.edge.rebated()) return "face";
    if (plan_.edge.kind != EdgeKind::coped) return {};
    return plan_.edge.moulded_back() ? "sight line" : "back";
  }
  GrooveRef work_edge(std::size_t piece, Edge edge, std::optional<Stretch> stretch = {}) {
    if (plan_.edge.moulded()) stick(wood_, piece, edge, plan_.edge);
    const FeatureKind kind = plan_.edge.rebated() ? FeatureKind::rebate : FeatureKind::groove;
    return work_along_edge(wood_, piece, edge, kind, plan_.groove, stretch);
  }

  GrooveRef work_arch(std::size_t rail, const Arch& arch) {
    saw_arch(wood_, rail, arch);
    if (plan_.edge.moulded()) stick_along_arch(wood_, rail, arch, plan_.edge, plan_.edge.width);
    if (plan_.panels.front().glass && !plan_.edge.rebated()) return {rail, 0};  // it has its own
    const FeatureKind kind = plan_.edge.rebated() ? FeatureKind::rebate : FeatureKind::groove;
    return work_along_arch(wood_, rail, arch, kind, plan_.groove, past_arch(plan_.groove.depth));
  }
  /// How far what is worked so deep along the arch goes on past the stiles' sight edges: where the
  /// rail itself stands there.
  Length past_arch(Length depth) const {
    return plan_.edge.rebated() || joint_of(0).runs_on() ? depth : plan_.edge.set_back();
  }

  void add_stiles();
  void rebate_meeting_stile(const PairPlan& pair);
  void rebate_for_lip(std::size_t piece);
  void rebate_outside(std::size_t piece);
  void add_rails();
  void add_muntins();
  void join_rails();
  void join_muntins();
  void add_panels(std::size_t tier);
  Light light_of(std::size_t tier, std::size_t light);
  void add_glass(std::size_t tier);
  void join_end(const EndJoints& joints, const GrooveRef& receives, std::size_t enters,
                Heading heading, std::optional<Length> receiver_shoulder);
  void add_own_pieces(Own own);
  std::optional<Stretch> stile_stretch(bool right) const;
  std::optional<Stretch> rail_stretch(std::size_t rail) const;
  std::string numbered(const std::string& name, std::size_t number, std::size_t count,
                       std::size_t tier) const;
  std::string rail_key(std::size_t rail) const;
  std::size_t add_panel(std::size_t tier, std::size_t number);

  const DoorPlan& plan_;
  Assembly wood_;
  Grooves stiles_;                             // low: of the left stile; high: of the right one
  std::optional<Box> meeting_rebate_;          // in the leaf
  std::vector<Grooves> rails_;                 // from the top
  std::vector<std::vector<Grooves>> muntins_;  // of each tier, from the left

  struct RailJoints {
    EndJoints left, right;
  };
  std::vector<RailJoints> rail_joints_;  // from the top
  EndJoints muntin_joints_;              // of each end of each
  struct JoinedEnd {
    End end;
    const EndJoints& joints;
  };
  std::vector<JoinedEnd> joined_;
};

void DoorSetter::add_stiles() {
  const Length none;
  const Length thickness = plan_.frame.thickness;
  const std::size_t left = add_piece(wood_, "left stile", Role::stile,
                                     {stile_length(false), plan_.frame.stile_left, thickness},
                                     {{none, none, none}, kUpright});
  const std::size_t right = add_piece(
      wood_, "right stile", Role::stile, {stile_length(true), plan_.frame.stile_right, thickness},
      {{plan_.frame.width - plan_.frame.stile_right, none, none}, kUpright});
  wood_.pieces[left].horn = wood_.pieces[right].horn = plan_.frame.horn;
  stiles_.low = work_edge(left, Edge::high, stile_stretch(false));
  stiles_.high = work_edge(right, Edge::low, stile_stretch(true));
}

/// The rebate that lets the other leaf lap before this one, or behind it.
void DoorSetter::rebate_meeting_stile(const PairPlan& pair) {
  if (pair.lap == Length()) return;
  Piece& stile = wood_.pieces[pair.is_right ? stiles_.low.piece : stiles_.high.piece];
  const Length thickness = plan_.frame.thickness;
  const Length front = pair.front(thickness);
  Box cut{{Length(), Length(), Length()}, {stile.blank[0], pair.lap, front + pair.rest}};
  if (pair.laps_in_front()) {
    cut.low[2] = front;
    cut.high[2] = thickness;
  }
  if (!pair.is_right) {
    cut.low[1] = stile.blank[1] - pair.lap;
    cut.high[1] = stile.blank[1];
  }
  meeting_rebate_ = placed(cut, stile.place);
  stile.features.push_back({FeatureKind::meeting_rebate,
                            {},
                            {cut},
                            {{SizeName::width, pair.lap}, {SizeName::depth, cut.extent(2)}}});
}

void DoorSetter::add_rails() {
  for (std::size_t i = 0; i < plan_.frame.rails.size(); ++i) {
    const RailPlan& rail = plan_.frame.rails[i];
    const Length length = left_reach(i) + inside_width() + right_reach(i);
    const std::size_t piece =
        add_piece(wood_, rail.name, Role::rail, {length, rail.width, plan_.frame.thickness},
                  {{plan_.frame.stile_left - left_reach(i), rail.low, Length()}, kLevel});
    wood_.pieces[piece].is_lock_rail = rail.is_lock_rail;
    wood_.pieces[piece].key = rail_key(i);
    if (plan_.rail_mortises[i].through) wood_.pieces[piece].horn = plan_.join.over;
    Grooves grooves;
    if (i == 0 && plan_.frame.arch)
      grooves.low = work_arch(piece, *plan_.frame.arch);
    else if (i + 1 < plan_.frame.rails.size())
      grooves.low = work_edge(piece, Edge::low, rail_stretch(i));
    if (i > 0) grooves.high = work_edge(piece, Edge::high, rail_stretch(i));
    rails_.push_back(grooves);
  }
}

/// A rail keeps its key whatever its name is, and however many others there are.
std::string DoorSetter::rail_key(std::size_t rail) const {
  if (rail == 0) return "top-rail";
  if (rail + 1 == plan_.frame.rails.size()) return "bottom-rail";
  return "middle-rail-" + std::to_string(rail);
}

/// "tier-1/muntin-2": with its numbers even where there is only one.
std::string key_in_tier(std::size_t tier, const char* what, std::size_t number) {
  return "tier-" + std::to_string(tier + 1) + "/" + what + "-" + std::to_string(number + 1);
}

/// "muntin 2, tier 1", without what there is only one of.
std::string DoorSetter::numbered(const std::string& name, std::size_t number, std::size_t count,
                                 std::size_t tier) const {
  std::string text = name;
  if (count > 1) text += " " + std::to_string(number + 1);
  if (plan_.frame.tiers.size() > 1) text += ", tier " + std::to_string(tier + 1);
  return text;
}

/// The rebate round the back of the leaf, worked after glue-up, that leaves its lip.
void DoorSetter::rebate_for_lip(std::size_t piece) {
  const FramePlan& frame = plan_.frame;
  if (frame.opening.meets != Meets::rebate) return;
  Piece& its = wood_.pieces[piece];
  const bool arched = frame.head && frame.lip.head > Length();
  const Length head = arched ? Length() : frame.lip.head;
  rebate_beside(its, {{frame.lip.left, frame.lip.foot, frame.lip_thickness},
                      {frame.width - frame.lip.right, frame.height - head, frame.thickness}});
  if (arched && (its.role == Role::stile || piece == kFirstRail))
    rebate_for_arched_lip(its, *frame.head, frame.lip_thickness);
}

/// What rebates that are worked after glue-up take of what comes out at the leaf's edges there.
void DoorSetter::rebate_outside(std::size_t piece) {
  rebate_for_lip(piece);
  if (meeting_rebate_) rebate_at_meeting(wood_.pieces[piece], *meeting_rebate_);
}

void DoorSetter::add_muntins() {
  for (std::size_t i = 0; i < plan_.frame.tiers.size(); ++i) {
    const TierPlan& tier = plan_.frame.tiers[i];
    const Length depth = muntin_joints_.front()->reach();
    const Length length = tier.height.high - tier.height.low + depth * 2;
    muntins_.emplace_back();
    for (std::size_t n = 0; n + 1 < tier.sights.size(); ++n) {
      const std::size_t piece =
          add_piece(wood_, numbered("muntin", n, tier.sights.size() - 1, i), Role::muntin,
                    {length, plan_.frame.muntin_width, plan_.frame.thickness},
                    {{tier.sights[n].high, tier.height.low - depth, Length()}, kUpright});
      wood_.pieces[piece].key = key_in_tier(i, "muntin", n);
      const GrooveRef low = work_edge(piece, Edge::low);
      muntins_.back().push_back({low, work_edge(piece, Edge::high)});
    }
  }
}

/// A groove that comes out at a stile's end is filled there by a haunch; where there is none, it
/// stops behind the rail, at the depth of the rail's own groove.
std::optional<Stretch> DoorSetter::stile_stretch(bool right) const {
  const bool open_head = joint_of(0).fills_groove();
  const bool open_foot = joint_of(plan_.frame.rails.size() - 1).fills_groove();
  if (open_head && open_foot) return {};
  const RailPlan& top = plan_.frame.rails.front();
  const RailPlan& bottom = plan_.frame.rails.back();
  const Length into = plan_.groove.depth;
  return Stretch{open_foot ? Length() : bottom.low + bottom.width - into,
                 open_head ? plan_.frame.height
                           : top.low + plan_.frame.worked_over_end(into, Length(), right)};
}

/// A groove that came out at the end of a lap would show in the stile's edge; it stops behind the
/// stile's own.
std::optional<Stretch> DoorSetter::rail_stretch(std::size_t rail) const {
  if (!joint_of(rail).runs_on() || joint_of(rail).fills_groove()) return {};
  const Length into = plan_.groove.depth;
  return Stretch{left_reach(rail) - into, left_reach(rail) + inside_width() + into};
}

void DoorSetter::join_end(const EndJoints& joints, const GrooveRef& receives, std::size_t enters,
                          Heading heading, std::optional<Length> receiver_shoulder) {
  End end{Junction(wood_, receives.piece, enters, heading), receives.feature, receiver_shoulder,
          shoulder()};
  join(wood_, end, joints);
  joined_.push_back({end, joints});
}

void DoorSetter::add_own_pieces(Own own) {
  for (const auto& [end, joints] : joined_)
    for (const auto& joint : joints)
      if (joint->own_pieces() == own) joint->add_own_pieces(wood_, end);
}

void DoorSetter::join_rails() {
  for (std::size_t i = 0; i < rails_.size(); ++i) {
    join_end(rail_joints_[i].left, stiles_.low, kFirstRail + i, {Axis::x, false}, {});
    join_end(rail_joints_[i].right, stiles_.high, kFirstRail + i, {Axis::x, true}, {});
  }
}

void DoorSetter::join_muntins() {
  const auto shoulder_of = [&](std::size_t rail) {
    return left_reach(rail) - joint_of(rail).set_back();
  };
  for (std::size_t i = 0; i < muntins_.size(); ++i)
    for (const Grooves& muntin : muntins_[i]) {
      join_end(muntin_joints_, rails_[i].low, muntin.low.piece, {Axis::y, true}, shoulder_of(i));
      join_end(muntin_joints_, rails_[i + 1].high, muntin.low.piece, {Axis::y, false},
               shoulder_of(i + 1));
    }
}

/// A light and the rebates about it: of rebated edges their own, else the groove opened at the
/// back.
Light DoorSetter::light_of(std::size_t tier, std::size_t light) {
  const std::vector<Grooves>& muntins = muntins_[tier];
  const bool first = light == 0;
  const bool last = light == muntins.size();
  const GrooveRef left = first ? stiles_.low : muntins[light - 1].high;
  const GrooveRef right = last ? stiles_.high : muntins[light].low;
  const GlassDesign& glass = *plan_.panels[tier].glass;
  const Strip wide = plan_.frame.tiers[tier].sights[light];
  const Strip high = plan_.frame.tiers[tier].height;
  const Length beyond = glass.rebate;
  // Corners are the stiles' beside them, and the rails' where a muntin stands or where the rail
  // itself runs on over the stile. What a mitred moulding's shoulder stands past the sight edge is
  // of the piece that ends there.
  const Length past = std::min(plan_.edge.set_back(), beyond);
  const auto level = [&](std::size_t rail) {
    const Length into_stile = joint_of(rail).runs_on() ? beyond : past;
    return Strip{wide.low - (first ? into_stile : beyond),
                 wide.high + (last ? into_stile : beyond)};
  };
  const Arch* arch = tier == 0 && plan_.frame.arch ? &*plan_.frame.arch : nullptr;
  const auto upright = [&](bool stile, bool at_right) {
    const Length into_rail = stile ? beyond : past;
    return Strip{high.low - into_rail,
                 arch != nullptr ? low_end(*arch, beyond, at_right) : high.high + into_rail};
  };
  const auto side = [&](const GrooveRef& groove, Edge edge, Strip along,
                        std::optional<Length> shoulder) {
    const bool own = plan_.edge.rebated();
    return LightSide{own ? groove : rebate_for_glass(wood_, groove.piece, edge, along, glass),
                     beyond, shoulder};
  };
  const std::optional<Length> in_muntin = muntin_joints_.front()->reach();
  const auto head = [&] {
    if (arch == nullptr || plan_.edge.rebated())
      return side(rails_[tier].low, Edge::low, level(tier), left_reach(tier));
    return LightSide{
        work_along_arch(wood_, rails_[tier].low.piece, *arch, FeatureKind::glass_rebate,
                        {beyond, plan_.frame.thickness - glass.front, glass.front},
                        std::min(past_arch(beyond), beyond)),
        beyond};
  };
  return {side(left, Edge::high, upright(first, false), first ? std::nullopt : in_muntin),
          side(right, Edge::low, upright(last, true), last ? std::nullopt : in_muntin),
          head(),
          side(rails_[tier + 1].high, Edge::high, level(tier + 1), left_reach(tier + 1)),
          wide,
          high,
          arch};
}

/// Puts glass in, light by light.
void DoorSetter::add_glass(std::size_t tier) {
  const std::size_t lights = plan_.frame.tiers[tier].sights.size();
  for (std::size_t n = 0; n < lights; ++n) {
    const Light light = light_of(tier, n);
    if (light.arch != nullptr && !plan_.edge.rebated())
      for (const LightSide& side : {light.left, light.right})
        rise_with_arch(wood_, side.rebate, *light.arch, side.depth);
    glaze(wood_, light, *plan_.panels[tier].glass, numbered("", n, lights, tier),
          key_in_tier(tier, "glass", n));
  }
}

void DoorSetter::add_panels(std::size_t tier) {
  if (plan_.panels[tier].glass) return add_glass(tier);
  const std::vector<Grooves>& muntins = muntins_[tier];
  const PanelPlan& panel = plan_.panels[tier];
  const Length thickness = panel.has_waste() ? panel.tongue : panel.thickness;
  // A panel thinner than its tongue is designed to be as thick, and fails its check.
  const Length cheeks =
      panel.thickness < panel.tongue ? panel.allowance : plan_.groove.width - thickness;
  const auto design = [&](Length gap) {
    const Length bite = plan_.groove.depth - gap;
    return plan_.edge.rebated() ? Clearances{{}, {}, gap, bite, Length()}
                                : Clearances{cheeks, {}, gap, bite};
  };
  const JointKind kind =
      plan_.edge.rebated() ? JointKind::panel_in_rebate : JointKind::panel_in_groove;
  const Clearances sides = design(panel.gap_at_sides());
  const Clearances ends = design(panel.gap_at_ends());
  for (std::size_t n = 0; n <= muntins.size(); ++n) {
    const std::size_t piece = add_panel(tier, n);
    const std::size_t first_joint = wood_.joints.size();
    house_panel(wood_, n == 0 ? stiles_.low : muntins[n - 1].high, piece, {Axis::x, false}, sides,
                kind);
    house_panel(wood_, n == muntins.size() ? stiles_.high : muntins[n].low, piece, {Axis::x, true},
                sides, kind);
    const bool arched = tier == 0 && plan_.frame.arch;
    house_panel(wood_, rails_[tier].low, piece, {Axis::y, true},
                arched ? design(panel.gap_at_arch()) : ends, kind);
    wood_.joints.back().arched = arched;
    house_panel(wood_, rails_[tier + 1].high, piece, {Axis::y, false}, ends, kind);
    for (Feature& rebate : wood_.pieces[piece].features)
      for (std::size_t joint = first_joint; joint < wood_.joints.size(); ++joint)
        rebate.joints.push_back(joint);
  }
}

std::size_t DoorSetter::add_panel(std::size_t tier, std::size_t number) {
  const PanelPlan& panel = plan_.panels[tier];
  const bool upright = panel.grain == Grain::upright;
  const Strip wide = plan_.frame.tiers[tier].sights[number];
  const Strip high = plan_.frame.tiers[tier].height;
  const Length beyond_x = plan_.groove.depth - panel.gap_at_sides();
  const Length beyond_y = plan_.groove.depth - panel.gap_at_ends();
  const Length width = wide.high - wide.low + beyond_x * 2;
  const Arch* arch = tier == 0 && plan_.frame.arch ? &*plan_.frame.arch : nullptr;
  const Length up_to_arch = plan_.groove.depth - panel.gap_at_arch();
  const Length height = high.high - high.low + beyond_y +
                        (arch != nullptr ? plan_.frame.arched(0) + up_to_arch : beyond_y);
  const Length tongue = panel.has_waste() ? panel.tongue : panel.thickness;
  const Length waste = panel.thickness - tongue;
  const Length front = panel.front_waste;
  const Length before_tongue =
      plan_.edge.rebated() ? Length() : floor_half(plan_.groove.width - tongue);
  const Length face = plan_.groove.from_face + before_tongue - front;
  const Place place{{wide.low - beyond_x, high.low - beyond_y, face}, upright ? kUpright : kLevel};
  const std::size_t piece = add_piece(
      wood_, numbered("panel", number, plan_.frame.tiers[tier].sights.size(), tier), Role::panel,
      upright ? Triple{height, width, panel.thickness} : Triple{width, height, panel.thickness},
      place);
  Piece& its = wood_.pieces[piece];
  its.key = key_in_tier(tier, "panel", number);
  its.held = panel.held;
  its.matter = panel.kind == PanelKind::board ? Matter::board : Matter::wood;
  its.material = panel.material;
  const Length behind_tongue = plan_.groove.width - tongue - before_tongue;
  const auto raise = [&](Length depth, bool at_back, Length play) {
    if (arch != nullptr)
      raise_round_arch(its, *arch, up_to_arch, *panel.raise, depth, at_back, play);
    else
      raise_round(its, *panel.raise, depth, at_back, play);
  };
  if (panel.raise && front > Length()) raise(front, false, before_tongue);
  if (panel.raise && front < waste) raise(waste - front, true, behind_tongue);
  const auto rebate = [&](Length from, Length to) {
    if (arch != nullptr)
      rebate_round_arch(its, *arch, up_to_arch, plan_.groove.depth, from, to);
    else
      rebate_round(its, plan_.groove.depth, from, to);
  };
  if (!panel.raise && front > Length()) rebate(Length(), front);
  if (!panel.raise && front < waste) rebate(front + tongue, panel.thickness);
  if (arch != nullptr) cut_arched_top(its, *arch, up_to_arch);
  return piece;
}

/// How the leaf that opens first meets the other.
Fit meeting_of(const PairPlan& pair, std::size_t left, std::size_t right) {
  Fit fit;
  fit.stands = StandsIn::beside;
  fit.group = pair.right_first ? right : left;
  fit.other = pair.right_first ? left : right;
  (pair.right_first ? fit.room.left : fit.room.right) = pair.clearance;
  if (pair.lap == Length()) return fit;
  fit.meets = Meets::rebate;
  (pair.right_first ? fit.lap.left : fit.lap.right) = pair.lap - pair.clearance;
  fit.behind = pair.rest;
  return fit;
}

/// One curve over both leaves. Where its crown is between them they end a hair below it, and so
/// does what they lap over.
void top_of_pair(Assembly& whole, const FramePlan& left, const FramePlan& right,
                 const Assembly& left_leaf, const Assembly& right_leaf) {
  const Length crown = whole.size[1];
  whole.size[1] = std::max(left_leaf.size[1], right_leaf.size[1]);
  Fit& fit = whole.fits.front();
  if (fit.meets != Meets::inset) fit.lap.head -= crown - whole.size[1];
  fit.arch = opening_line(*left.head, right.head->corners());
  whole.beyond = left_leaf.beyond;
  for (Prism prism : right_leaf.beyond) {
    for (Corner& corner : prism.outline)
      corner.u += left.pair->width - right.width;
    whole.beyond.push_back(std::move(prism));
  }
}

}  // namespace

Assembly set_out_door(const DoorPlan& plan) {
  Assembly leaf = DoorSetter(plan).set_out();
  plane_to_follow(leaf);
  return leaf;
}

Assembly set_out_pair(const DoorPlan& left, const DoorPlan& right) {
  const PairPlan& pair = *left.frame.pair;
  Assembly whole;
  whole.groups = {{GroupKind::pair, "pair", {}, {}}};
  whole.size = {pair.width, left.frame.height, left.frame.thickness};
  Assembly left_leaf = set_out_door(left);
  Assembly right_leaf = set_out_door(right);
  whole.fits = {left_leaf.fits.front()};
  if (left.frame.head) top_of_pair(whole, left.frame, right.frame, left_leaf, right_leaf);
  Place at;
  const std::size_t at_left = add_group(whole, std::move(left_leaf), at, "left-leaf");
  at.origin[0] = pair.width - right.frame.width;
  const std::size_t at_right = add_group(whole, std::move(right_leaf), at, "right-leaf");
  whole.fits.push_back(meeting_of(pair, at_left, at_right));
  return whole;
}

}  // namespace haunch
