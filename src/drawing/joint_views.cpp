#include "joint_views.h"

#include <algorithm>
#include <optional>
#include <set>
#include <utility>

#include "assembly_order.h"
#include "junction.h"

namespace haunch {
namespace {

constexpr Length kBeside = Length::from_mm(30);  // what is drawn beside a joint
constexpr Length kRest = Length::from_mm(60);    // of a receiver: if no more is left, it is drawn
constexpr Length kPart = Length::from_mm(80);    // of a joint that goes on, as a groove does
constexpr Length kGap = Length::from_mm(20);     // between what is taken apart

bool is_shown(JointKind kind) {
  constexpr JointKind kNot[] = {JointKind::screws, JointKind::planted, JointKind::bead_in_rebate};
  return std::find(std::begin(kNot), std::end(kNot), kind) == std::end(kNot);
}

Length middle(const Box& box, std::size_t axis) {
  return floor_half(box.low[axis] + box.high[axis]);
}

/// Of a panel or a pane, along all of whose edges it is the same.
bool holds_sheet(JointKind kind) {
  constexpr JointKind kAll[] = {JointKind::panel_in_groove, JointKind::panel_in_rebate,
                                JointKind::glass_in_rebate, JointKind::sealed_unit_in_rebate};
  return std::find(std::begin(kAll), std::end(kAll), kind) != std::end(kAll);
}

/// Joints that come to the same sizes are alike, and show the same where they are cut.
struct JointSizes {
  JointKind kind;
  std::vector<Length> sizes, shown;

  friend bool operator==(const JointSizes&, const JointSizes&) = default;
};

/// How one joint is shown. Its boxes are of the junction's axes.
class JointShower {
 public:
  JointShower(const Assembly& wood, std::size_t number)
      : wood_(wood),
        number_(number),
        joint_(wood.joints[number]),
        junction_(wood, joint_),
        receives_(junction_.blank(wood.pieces[joint_.receives])),
        enters_(junction_.blank(wood.pieces[joint_.enters])),
        goes_on_(is_at_long_edge(wood, joint_) || holds_sheet(joint_.kind)) {
    find_fasteners();
    find_core();
    if (core_) find_part();
  }

  /// Whether there is anything to see inside.
  bool has_core() const { return core_.has_value(); }

  JointSizes sizes() const {
    JointSizes all{joint_.kind, {}, shown()};
    const auto add = [&](const Box& box, std::size_t axis) {
      all.sizes.push_back(box.extent(axis));
    };
    for (const std::size_t axis : {kIn, kThrough, kAcross}) {
      if (axis == kAcross && !has_edges()) break;
      add(*core_, axis);
      add(room_, axis);
    }
    for (const std::size_t piece : {joint_.receives, joint_.enters})
      all.sizes.push_back(wood_.pieces[piece].blank[2]);
    all.sizes.push_back(Length::from_steps(static_cast<std::int64_t>(fasteners_.size())));
    if (joint_.tenon) add_tenon(all.sizes, *joint_.tenon);
    if (joint_.mortise) all.sizes.push_back(joint_.mortise->depth);
    return all;
  }

  JointView view() const {
    JointView view{{number_}, {joint_.receives, joint_.enters}, in_sections(), {}, apart()};
    view.pieces.insert(view.pieces.end(), fasteners_.begin(), fasteners_.end());
    for (const std::size_t axis : cut_across())
      view.sections.push_back(cut(axis));
    return view;
  }

 private:
  /// The junction's axes that its sections are square to.
  std::vector<std::size_t> cut_across() const {
    std::vector<std::size_t> axes;
    if (has_edges()) axes.push_back(kThrough);
    axes.push_back(kAcross);
    if (joint_.tenon) axes.push_back(kIn);
    return axes;
  }

  /// The ends of its pieces, and of what is worked on them, wherever a section meets these. One
  /// that is another's mirror image shows the same, but not where the face side becomes the back.
  std::vector<Length> shown() const {
    std::vector<Length> least = shown_mirrored({});
    for (const std::set<std::size_t>& mirrored :
         {std::set<std::size_t>{kAcross}, {kThrough}, {kAcross, kThrough}})
      if (std::none_of(mirrored.begin(), mirrored.end(),
                       [&](std::size_t axis) { return junction_.axes[axis] == Axis::z; }))
        least = std::min(least, shown_mirrored(mirrored));
    return least;
  }

  std::vector<Length> shown_mirrored(const std::set<std::size_t>& mirrored) const {
    std::vector<Length> all;
    for (const std::size_t axis : cut_across()) {
      const CutAway here = cut(axis);
      for (const std::size_t number : {joint_.receives, joint_.enters})
        add_shown(all, here, wood_.pieces[number], {axis, mirrored});
    }
    return all;
  }

  struct ShownAs {
    std::size_t cut_across;
    const std::set<std::size_t>& mirrored;
  };

  void add_shown(std::vector<Length>& all, const CutAway& cut, const Piece& piece,
                 const ShownAs& as) const {
    std::vector<Box> boxes = {placed_blank(piece)};
    for (const Feature& feature : piece.features) {
      if (!is_worked_for_it(feature)) continue;
      for (const Box& box : feature.cuts)
        boxes.push_back(placed(box, piece.place));
      for (const Prism& prism : feature.prisms)
        boxes.push_back(bounds_of(placed(prism, piece.place)));
    }
    std::set<std::vector<Length>> ends;
    for (const Box& box : boxes)
      if (is_met(cut, box)) ends.insert(ends_of(common(box, *cut.region).value_or(box), as));
    for (const std::vector<Length>& its : ends)
      all.insert(all.end(), its.begin(), its.end());
    all.push_back(Length::from_steps(static_cast<std::int64_t>(ends.size())));
  }

  /// Where it begins and ends along the axes that a section shows.
  std::vector<Length> ends_of(const Box& placed, const ShownAs& as) const {
    const Box box = junction_.from_assembly(placed);
    std::vector<Length> ends;
    for (std::size_t axis = 0; axis < 3; ++axis) {
      if (axis == as.cut_across) continue;
      const Length over = enters_.low[axis] + enters_.high[axis];
      const bool turned = as.mirrored.count(axis) > 0;
      ends.push_back(turned ? over - box.high[axis] : box.low[axis]);
      ends.push_back(turned ? over - box.low[axis] : box.high[axis]);
    }
    return ends;
  }

  static bool is_met(const CutAway& cut, const Box& box) {
    const auto across = static_cast<std::size_t>(cut.plane.across);
    return box.low[across] <= cut.plane.at && cut.plane.at < box.high[across] &&
           interiors_meet(box, *cut.region);
  }

  /// For this joint, or all along the piece: not its other joints, nor its fittings.
  bool is_worked_for_it(const Feature& feature) const {
    const bool is_for_it =
        std::find(feature.joints.begin(), feature.joints.end(), number_) != feature.joints.end();
    return is_for_it || (feature.joints.empty() && !feature.fitting);
  }

  static void add_tenon(std::vector<Length>& sizes, const TenonSizes& tenon) {
    std::vector<Length> widths;
    for (const TenonSpan& span : tenon.each)
      widths.push_back(span.width);
    for (const TenonSpan& span : tenon.haunches)
      widths.push_back(-span.width);
    std::sort(widths.begin(), widths.end());
    sizes.insert(sizes.end(), widths.begin(), widths.end());
    for (const Length size : {tenon.thickness, tenon.depth, tenon.from_face, tenon.haunch_depth,
                              tenon.longer_at_face, tenon.longer_at_back, tenon.edge_radius})
      sizes.push_back(size);
  }

  /// Whatever else is of their groups: panels beside a tenon, but not the rail under a drawer.
  std::vector<std::size_t> in_sections() const {
    std::vector<std::size_t> pieces = pieces_of(wood_, wood_.pieces[joint_.receives].group);
    const std::size_t other = wood_.pieces[joint_.enters].group;
    if (other == wood_.pieces[joint_.receives].group) return pieces;
    for (const std::size_t piece : pieces_of(wood_, other))
      pieces.push_back(piece);
    std::sort(pieces.begin(), pieces.end());
    return pieces;
  }

  /// What goes into both, or into the receiver just here; and a bead that holds glass.
  void find_fasteners() {
    const Box here = around(enters_, receives_);
    for (const Joint& other : wood_.joints) {
      const Piece& piece = wood_.pieces[other.enters];
      const bool holds = is_fastener(piece.role) || other.kind == JointKind::bead_in_rebate;
      if (!holds || other.receives != joint_.receives || other.enters == joint_.enters) continue;
      const Box its = junction_.blank(piece);
      const bool is_here = goes_into(other.enters, joint_.enters) ||
                           (piece.role == Role::wedge && interiors_meet(its, enters_)) ||
                           (piece.role == Role::bead && apart_by(its, enters_) <= Length());
      if (is_here && interiors_meet(its, here)) fasteners_.push_back(other.enters);
    }
  }

  bool goes_into(std::size_t fastener, std::size_t piece) const {
    return std::any_of(wood_.joints.begin(), wood_.joints.end(), [&](const Joint& it) {
      return it.enters == fastener && it.receives == piece;
    });
  }

  /// What is looked at in the middle: of what stands in the receiver that which reaches in deepest,
  /// and of several the largest; but where the two are held together by a dowel, a loose tenon or
  /// a spline, that. And the room that all of it takes.
  void find_core() {
    const Wood inside = clipped(solid_of(wood_.pieces[joint_.enters]).wood,
                                placed_blank(wood_.pieces[joint_.receives]));
    for (const Box& block : bounds_of(inside)) {
      const Box its = junction_.from_assembly(block);
      room_ = core_ ? around(room_, its) : its;
      if (!core_ || reach(its) > reach(*core_)) core_ = its;
    }
    bool is_fastener = false;
    for (const std::size_t fastener : fasteners_) {
      const Role role = wood_.pieces[fastener].role;
      if (role != Role::dowel && role != Role::loose_tenon && role != Role::spline) continue;
      const Box its = junction_.blank(wood_.pieces[fastener]);
      room_ = core_ ? around(room_, its) : its;
      if (!is_fastener) core_ = its;
      is_fastener = true;
    }
  }

  /// How deep a block of what enters goes in, and how large its end is.
  static std::pair<Length, double> reach(const Box& block) {
    const auto steps = [&](std::size_t axis) {
      return static_cast<double>(block.extent(axis).steps());
    };
    return {block.high[kIn], steps(kAcross) * steps(kThrough)};
  }

  /// What of it is drawn across: of what goes on a part, from its middle or where it begins.
  void find_part() {
    part_ = fits_between_edges() ? around(room_, enters_) : room_;
    const bool is_whole = fits_between_edges() || part_.extent(kAcross) <= kPart;
    if (is_whole && !goes_on_) {
      part_.low[kAcross] = part_.low[kAcross] - kBeside;
      part_.high[kAcross] = part_.high[kAcross] + kBeside;
      return;
    }
    part_.low[kAcross] =
        goes_on_ ? middle(*core_, kAcross) - floor_half(kPart) : part_.low[kAcross] - kBeside;
    part_.high[kAcross] = part_.low[kAcross] + kPart;
  }

  bool fits_between_edges() const { return joint_.tenon || joint_.tails || !fasteners_.empty(); }

  /// Whether its width shows something: that is fitted, or it stops before where both end.
  bool has_edges() const {
    if (goes_on_) return false;
    const auto both = common(receives_, enters_);
    return fits_between_edges() || joint_.kind == JointKind::mitre ||
           (both && room_.extent(kAcross) < both->extent(kAcross));
  }

  /// From a little before the shoulder on to the receiver's far edge, where that is near.
  Box region() const {
    Box region = part_;
    const Length far = std::max(receives_.high[kIn], room_.high[kIn]);
    region.low[kIn] = std::min(room_.low[kIn], Length()) - kBeside;
    region.high[kIn] = far - room_.high[kIn] > kRest ? room_.high[kIn] + kBeside : far;
    region.low[kThrough] =
        std::max(room_.low[kThrough] - kBeside, around(enters_, receives_).low[kThrough]);
    region.high[kThrough] =
        std::min(room_.high[kThrough] + kBeside, around(enters_, receives_).high[kThrough]);
    return region;
  }

  /// A section square to one of the junction's axes. Upright work is looked at from its front, its
  /// left and from above; across a tenon in the way that it goes in.
  CutAway cut(std::size_t axis) const {
    const Axis across = junction_.axes[axis];
    const auto number = static_cast<std::size_t>(across);
    Box core = *core_;
    Box near = region();
    if (axis == kAcross) {
      if (!fits_between_edges()) core = part_;
      // What stands farther off is no part of it.
      near.low[axis] = std::max(near.low[axis], middle(core, axis) - kPart);
      near.high[axis] = std::min(near.high[axis], middle(core, axis) + kPart);
    }
    const bool upwards = axis == kIn ? joint_.heading.upwards : across != Axis::y;
    return {{across, middle(junction_.in_assembly(core), number), upwards},
            junction_.in_assembly(near)};
  }

  TakenApart apart() const {
    const Heading way = way_home(wood_, number_);
    const auto axis = static_cast<std::size_t>(way.axis);
    TakenApart apart;
    if (way.axis == Axis::x) apart.nearest.right = !way.upwards;
    if (way.axis == Axis::y) apart.nearest.above = !way.upwards;
    if (way.axis == Axis::z) apart.nearest.front = way.upwards;
    if (opens_at_back()) apart.nearest.front = false;
    apart.region = junction_.in_assembly(region());
    const Length out = junction_.in_assembly(room_).extent(axis) + kGap;
    const Length back = way.upwards ? -out : out;
    apart.pieces.push_back({joint_.receives, {}});
    apart.pieces.push_back({joint_.enters, {}});
    apart.pieces.back().by[axis] = back;
    for (const std::size_t fastener : fasteners_)
      apart.pieces.push_back({fastener, fastener_out(fastener, way, back)});
    return apart;
  }

  /// Whether what it lies in is a rebate of the receiver's back.
  bool opens_at_back() const {
    const Box* cut = cut_for(wood_, number_);
    if (cut == nullptr || !holds_sheet(joint_.kind) || joint_.through != Axis::z) return false;
    const Piece& receives = wood_.pieces[joint_.receives];
    const Box room = placed(*cut, receives.place);
    const Box blank = placed_blank(receives);
    return room.high[2] == blank.high[2] && room.low[2] > blank.low[2];
  }

  /// What goes into both the same way stays half-way between them; a pin or a wedge is drawn out
  /// as it was driven in.
  Triple fastener_out(std::size_t fastener, const Heading& way, Length back) const {
    Triple by;
    for (const Joint& other : wood_.joints) {
      if (other.enters != fastener || other.receives != joint_.receives) continue;
      const auto axis = static_cast<std::size_t>(other.heading.axis);
      if (other.heading.axis == way.axis && goes_into(fastener, joint_.enters)) {
        by[axis] = floor_half(back);
        continue;
      }
      const Length out = placed_blank(wood_.pieces[fastener]).extent(axis) + kGap;
      by[axis] = other.heading.upwards ? -out : out;
    }
    return by;
  }

  const Assembly& wood_;
  std::size_t number_;
  const Joint& joint_;
  Junction junction_;
  Box receives_, enters_;
  bool goes_on_;
  std::vector<std::size_t> fasteners_;
  std::optional<Box> core_;
  Box room_, part_;
};

/// What is shown with the joint of the pieces that it goes into.
bool is_part_of_another(const Assembly& wood, const Joint& joint) {
  return is_fastener(wood.pieces[joint.enters].role);
}

}  // namespace

std::vector<JointView> joint_views(const Assembly& assembly) {
  std::vector<JointView> views;
  std::vector<std::pair<JointSizes, std::size_t>> known;
  for (std::size_t number = 0; number < assembly.joints.size(); ++number) {
    const Joint& joint = assembly.joints[number];
    if (!is_shown(joint.kind) || is_part_of_another(assembly, joint)) continue;
    const JointShower shower(assembly, number);
    if (!shower.has_core()) continue;
    const JointSizes sizes = shower.sizes();
    const auto found =
        std::find_if(known.begin(), known.end(), [&](const auto& it) { return it.first == sizes; });
    if (found != known.end()) {
      views[found->second].joints.push_back(number);
      continue;
    }
    known.emplace_back(sizes, views.size());
    views.push_back(shower.view());
  }
  return views;
}

}  // namespace haunch
