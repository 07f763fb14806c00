#include "frame_set_out.h"

#include <algorithm>
#include <utility>

#include "housing.h"
#include "marks.h"

namespace haunch {
namespace {

// Length, width and thickness of a piece: its width lies from the face to the back of the frame.
constexpr std::array<Axis, 3> kUpright{Axis::y, Axis::z, Axis::x};
constexpr std::array<Axis, 3> kLevel{Axis::x, Axis::z, Axis::y};

// What of an end is fitted between cheeks: of one let in whole the thickness of a level piece, of
// tenons what they have from the frame's face to its back.
constexpr Axis kThickness = Axis::y, kFaceToBack = Axis::z;

/// Sets a frame out: pieces with their rebates, each then joined, and stops.
class FrameSetter {
 public:
  explicit FrameSetter(const CasePlan& plan) : plan_(plan) {}

  Assembly set_out() {
    wood_.groups = {{GroupKind::frame, "frame", {}, {}}};
    wood_.size = {plan_.width, plan_.height, plan_.jamb_width};
    wood_.fits = {Fit{StandsIn::wall, 0, 0, plan_.wall_width, plan_.wall_height, plan_.fitting}};
    wood_.fits.front().found = plan_.found;
    wood_.open = open_rooms(plan_);
    add_jambs();
    add_head();
    if (plan_.transom) add_transom();
    if (plan_.sill) add_sill();
    if (plan_.threshold) add_threshold();
    if (plan_.stop.kind == StopKind::planted) add_stops();
    for (const auto& [end, pins] : pinned_)
      Pins(pins).add_own_pieces(wood_, end);
    return std::move(wood_);
  }

 private:
  bool rebated() const { return plan_.stop.kind == StopKind::rebate; }
  bool tenoned() const { return plan_.head_joint == HeadJoint::tenoned; }
  Length right_jamb() const { return plan_.width - plan_.jamb_thickness; }

  void add_jambs();
  void add_head();
  void add_transom();
  void add_sill();
  void add_threshold();
  void add_stops();
  void rebate_jambs();
  void rebate_level(std::size_t piece);
  std::size_t add_between(Role role, Length low, Length thickness, const EndJoint& joint,
                          Axis through);
  HousingDesign housing() const { return {plan_.housing_depth, plan_.fit_allowance}; }
  Tenons tenons(Strip across) const;
  void join_jambs(std::size_t receives, Heading heading);
  void join_end(const EndJoint& joint, std::size_t receives, std::size_t enters, Heading heading,
                Axis through);
  Strip jamb_tenon(std::size_t jamb) const;
  PinDesign jamb_pins(std::size_t jamb) const;
  void pin_end(std::size_t receives, std::size_t enters, Heading heading, const PinDesign& pins);

  const CasePlan& plan_;
  Assembly wood_;
  std::size_t head_ = 0;
  struct Pinned {
    End end;
    PinDesign pins;
  };
  std::vector<Pinned> pinned_;  // their marks come after those of all else
};

void FrameSetter::add_jambs() {
  const Length low = plan_.sill ? *plan_.sill - plan_.tenon.depth : Length();
  const Length high = tenoned() ? plan_.head_low() + plan_.tenon.depth : plan_.height;
  const Triple blank{high - low, plan_.jamb_width, plan_.jamb_thickness};
  add_piece(wood_, "left jamb", Role::jamb, blank, {{Length(), low, Length()}, kUpright});
  add_piece(wood_, "right jamb", Role::jamb, blank, {{right_jamb(), low, Length()}, kUpright});
  if (rebated()) rebate_jambs();
}

/// A piece between the jambs, joined to both.
std::size_t FrameSetter::add_between(Role role, Length low, Length thickness, const EndJoint& joint,
                                     Axis through) {
  const Length reach = joint.reach();
  const std::size_t piece =
      add_piece(wood_, std::string(word_of(role)), role,
                {plan_.sight_width() + reach * 2, plan_.jamb_width, thickness},
                {{plan_.jamb_thickness - reach, low, Length()}, kLevel});
  if (rebated()) rebate_level(piece);
  for (const bool right : {false, true}) {
    const std::size_t jamb = right ? kRightJamb : kLeftJamb;
    join_end(joint, jamb, piece, {Axis::x, right}, through);
    if (role == Role::transom) pin_end(jamb, piece, {Axis::x, right}, plan_.tenon.transom_pins);
  }
  return piece;
}

void FrameSetter::add_head() {
  const Length low = plan_.head_low();
  const Length thickness = plan_.head_thickness;
  if (plan_.head_joint == HeadJoint::rebated) {
    head_ = add_between(Role::head, low, thickness, RebatedCorner(plan_.housing_depth), kThickness);
  } else if (!tenoned()) {
    head_ = add_between(Role::head, low, thickness, Housing(housing()), kThickness);
  } else {
    head_ = add_piece(wood_, "head", Role::head, {plan_.width, plan_.jamb_width, thickness},
                      {{Length(), low, Length()}, kLevel});
    wood_.pieces[head_].horn = plan_.horn;
    if (rebated()) rebate_level(head_);
    join_jambs(head_, {Axis::y, true});
  }
}

void FrameSetter::add_transom() {
  const Length low = plan_.lintel_low();
  const Length thickness = plan_.transom->thickness;
  // All that its rebate leaves of the transom is tenon: it stands between the jambs, not at their
  // ends.
  if (tenoned())
    add_between(Role::transom, low, thickness, tenons(plan_.transom_strip()), kFaceToBack);
  else
    add_between(Role::transom, low, thickness, Housing(housing()), kThickness);
}

void FrameSetter::add_sill() {
  const std::size_t sill =
      add_piece(wood_, "sill", Role::sill, {plan_.width, plan_.jamb_width, *plan_.sill},
                {{Length(), Length(), Length()}, kLevel});
  wood_.pieces[sill].horn = tenoned() ? plan_.horn : Length();
  join_jambs(sill, {Axis::y, false});
}

void FrameSetter::add_threshold() {
  add_piece(wood_, "threshold", Role::threshold,
            {plan_.sight_width(), plan_.jamb_width, *plan_.threshold},
            {{plan_.jamb_thickness, Length(), Length()}, kLevel});
}

/// Of the left jamb all is the right one's mirror image.
Strip FrameSetter::jamb_tenon(std::size_t jamb) const {
  const Strip right = plan_.jamb_strip();
  const Length thickness = plan_.jamb_thickness;
  return jamb == kLeftJamb ? Strip{thickness - right.high, thickness - right.low} : right;
}

PinDesign FrameSetter::jamb_pins(std::size_t jamb) const {
  PinDesign pins = plan_.tenon.jamb_pins;
  if (jamb == kLeftJamb) {
    for (Length& middle : pins.middles)
      middle = plan_.jamb_thickness - middle;
    std::reverse(pins.middles.begin(), pins.middles.end());
  }
  return pins;
}

Tenons FrameSetter::tenons(Strip across) const {
  const FrameTenon& sizes = plan_.tenon;
  TenonDesign design;
  design.layout.tenons = {across};
  design.depth = sizes.depth;
  design.thickness = sizes.thickness;
  design.from_face = sizes.from_face;
  return {design, sizes.mortise};
}

void FrameSetter::join_jambs(std::size_t receives, Heading heading) {
  for (const std::size_t jamb : {kLeftJamb, kRightJamb}) {
    join_end(tenons(jamb_tenon(jamb)), receives, jamb, heading, kFaceToBack);
    pin_end(receives, jamb, heading, jamb_pins(jamb));
  }
}

/// Pins for the joint that was made last, to be driven in once all else stands.
void FrameSetter::pin_end(std::size_t receives, std::size_t enters, Heading heading,
                          const PinDesign& pins) {
  if (pins.empty()) return;
  End end{Junction(wood_, receives, enters, heading, kFaceToBack)};
  end.joint = wood_.joints.size() - 1;
  pinned_.push_back({end, pins});
}

void FrameSetter::join_end(const EndJoint& joint, std::size_t receives, std::size_t enters,
                           Heading heading, Axis through) {
  const bool has_foot_tenon = plan_.sill && wood_.pieces[receives].role == Role::jamb;
  joint.cut(wood_, {Junction(wood_, receives, enters, heading, through), 0,
                    has_foot_tenon ? std::optional(plan_.tenon.depth) : std::nullopt});
}

/// The rebate that the leaf shuts into, along the lower edge of a head or transom. Where its ends
/// are housed it stops at the rebates of the jambs.
void FrameSetter::rebate_level(std::size_t piece) {
  const Length depth = plan_.stop.depth;
  const Length end = tenoned() ? Length() : std::max(plan_.housing_depth - depth, Length());
  Piece& level = wood_.pieces[piece];
  level.features.push_back(
      {FeatureKind::rebate,
       {},
       {Box{{end, Length(), Length()}, {level.blank[0] - end, plan_.stop_from_face(), depth}}},
       {{SizeName::width, plan_.stop_from_face()}, {SizeName::depth, depth}}});
}

/// Those of the jambs stop at the top of a threshold, which stands between the jambs as they are
/// behind their rebates.
void FrameSetter::rebate_jambs() {
  const Length depth = plan_.stop.depth;
  const Length width = plan_.stop_from_face();
  const Length foot = plan_.threshold.value_or(Length());
  for (const std::size_t jamb : {kLeftJamb, kRightJamb}) {
    Piece& piece = wood_.pieces[jamb];
    const Length from = jamb == kLeftJamb ? plan_.jamb_thickness - depth : Length();
    piece.features.push_back({FeatureKind::rebate,
                              {},
                              {Box{{foot, Length(), from}, {piece.blank[0], width, from + depth}}},
                              {{SizeName::width, width}, {SizeName::depth, depth}}});
  }
}

void FrameSetter::add_stops() {
  const StopPlan& stop = plan_.stop;
  const Length back = plan_.stop_from_face();
  const Length high = plan_.lintel_low() - stop.depth;
  const Length left = plan_.jamb_thickness;
  const Triple upright{high - plan_.base(), stop.width, stop.depth};
  add_piece(wood_, "left stop", Role::stop, upright, {{left, plan_.base(), back}, kUpright});
  add_piece(wood_, "right stop", Role::stop, upright,
            {{right_jamb() - stop.depth, plan_.base(), back}, kUpright});
  add_piece(wood_, "head stop", Role::stop, {plan_.sight_width(), stop.width, stop.depth},
            {{left, high, back}, kLevel});
}

}  // namespace

Assembly set_out_frame(const CasePlan& plan) {
  return FrameSetter(plan).set_out();
}

std::vector<Box> open_rooms(const CasePlan& plan) {
  const Length planted = plan.stop.planted();
  const Length left = plan.jamb_thickness;
  const Length right = plan.width - plan.jamb_thickness;
  std::vector<Box> rooms{{{left + planted, plan.base(), Length()},
                          {right - planted, plan.lintel_low() - planted, plan.jamb_width}}};
  if (plan.transom)
    rooms.push_back({{left, plan.head_low() - plan.transom->light, Length()},
                     {right, plan.head_low(), plan.jamb_width}});
  if (plan.above_head() > Length())
    rooms.push_back(
        {{left, plan.height - plan.above_head(), Length()}, {right, plan.height, plan.jamb_width}});
  return rooms;
}

std::vector<Box> open_beside_leaves(const CasePlan& plan) {
  std::vector<Box> rooms = open_rooms(plan);
  rooms.front().high[1] = plan.base() + plan.clearance.foot;
  if (plan.clearance.foot == Length()) rooms.erase(rooms.begin());
  return rooms;
}

}  // namespace haunch
