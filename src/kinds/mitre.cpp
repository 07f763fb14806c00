#include "mitre.h"

#include <algorithm>
#include <array>
#include <numbers>
#include <utility>

#include "joint_rules.h"
#include "marks.h"
#include "rounding.h"

namespace haunch {
namespace {

constexpr Rule kClosed{"mitre-closed", "between the two faces of a mitre",
                       "a mitre is glued where its faces close"};
constexpr Rule kSplineFit{"spline-fit", "of play between spline and slot, both sides together",
                          "a spline looser than 0.010 in fails in glue (as tenons do); a tighter "
                          "one than none will not go in"};
constexpr Rule kSplineRoom{"spline-room", "from the spline to its slot's bottom",
                           "the mitre must close before the spline does"};
constexpr Rule kSplineEnds{"spline-ends", "from the spline to its slot, both ways along the corner",
                           "the mitre must close before the spline does"};

constexpr Measure kMitreBuilt[] = {{Figure::seat, &kClosed}};
constexpr Measure kSplineBuilt[] = {
    {Figure::cheeks, &kSplineFit, Asked::as_designed, &Limits::loosest_fit},
    {Figure::bottom, &kSplineRoom},
    {Figure::edges, &kSplineEnds}};
// A slot is cut as a groove is.
constexpr FitSizes kInSlot{Dimension::groove_width, Dimension::tenon_thickness, true, true};

/// A place of a corner: out from the sight corner, across the stile and across the rail.
struct Spot {
  Length p, q;
};

/// A corner between its sight corner and its outer one.
class FrameCorner {
 public:
  FrameCorner(const Assembly& assembly, const Junction& junction) : junction_(junction) {
    const Box stile = junction.blank(assembly.pieces[junction.receives]);
    const Box rail = junction.blank(assembly.pieces[junction.enters]);
    head_ = rail.high[kAcross] == stile.high[kAcross];
    sight_ = head_ ? rail.low[kAcross] : rail.high[kAcross];
  }

  bool at_head() const { return head_; }

  /// Along the way in and across it.
  Corner place(const Spot& spot) const {
    return {spot.p, head_ ? sight_ + spot.q : sight_ - spot.q};
  }

  /// An outline of the corner on a piece, through the thickness from one place to another.
  Prism prism(const std::vector<Spot>& spots, const Piece& piece, Length from, Length to) const {
    Prism prism{kThrough, from, to, {}};
    for (const Spot& spot : spots)
      prism.outline.push_back(place(spot));
    return junction_.own(prism, piece.place);
  }
  /// The same through all of the piece.
  Prism prism(const std::vector<Spot>& spots, const Piece& piece) const {
    const Box blank = junction_.blank(piece);
    return prism(spots, piece, blank.low[kThrough], blank.high[kThrough]);
  }

 private:
  const Junction& junction_;
  bool head_ = false;
  Length sight_;
};

Spot mirrored(const Spot& spot) {
  return {spot.q, spot.p};
}

/// The slot in the stile; the rail's is its mirror image. Beyond the mitre it goes on a little, so
/// that nothing is left there.
std::vector<Spot> slot_in_stile(const SplineDesign& design) {
  const Length near = design.from;
  const Length far = design.from + design.run;
  const Length in = design.reach;
  const Length room = design.room;
  return {{near - room, near},
          {near + in, near - in - room},
          {far + in + room, far - in},
          {far, far + room}};
}

/// The spline's corners: on the stile's side near and far, on the rail's far and near.
std::array<Spot, 4> spline_corners(const SplineDesign& design) {
  const Length near = design.from;
  const Length far = design.from + design.run;
  const Length in = design.reach;
  return {Spot{near + in, near - in}, Spot{far + in, far - in}, Spot{far - in, far + in},
          Spot{near - in, near + in}};
}

/// A slip that lies askew in a blank with level and upright sides, whose four corners are cut off.
std::size_t add_spline(Assembly& assembly, const Junction& junction, const FrameCorner& corner,
                       const SplineDesign& design) {
  const Length low = design.from - design.reach;
  const Length high = design.from + design.run + design.reach;
  const Corner one = corner.place({low, low});
  const Corner other = corner.place({high, high});
  const Length face = design.from_face + floor_half(design.slot_width - design.thickness);
  const Box room{{one.u, std::min(one.v, other.v), face},
                 {other.u, std::max(one.v, other.v), face + design.thickness}};
  const std::size_t number = add_piece_of(assembly, "spline", junction.enters, Role::spline,
                                          {high - low, high - low, design.thickness},
                                          {junction.in_assembly(room).low, junction.axes});
  Piece& piece = assembly.pieces[number];
  const std::array<Spot, 4> corners = spline_corners(design);
  const std::array<Spot, 4> outside{Spot{low, low}, Spot{high, low}, Spot{high, high},
                                    Spot{low, high}};
  const std::size_t joints = assembly.joints.size();
  Feature feature{
      FeatureKind::skew,
      {joints, joints + 1},
      {},
      {{SizeName::length, design.depth * 2}, {SizeName::width, along_mitre(design.run)}}};
  for (std::size_t i = 0; i < corners.size(); ++i)
    feature.prisms.push_back(corner.prism({outside[i], corners[i], corners[(i + 3) % 4]}, piece));
  piece.features.push_back(std::move(feature));
  return number;
}

void cut_slot(Assembly& assembly, const FrameCorner& corner, std::size_t number, bool in_stile,
              const SplineDesign& design) {
  Piece& piece = assembly.pieces[number];
  std::vector<Spot> spots = slot_in_stile(design);
  if (!in_stile) std::transform(spots.begin(), spots.end(), spots.begin(), mirrored);
  const Length half_room = floor_half(design.room);
  piece.features.push_back(
      {FeatureKind::spline_slot,
       {assembly.joints.size()},
       {},
       {{SizeName::width, design.slot_width},
        {SizeName::depth, along_mitre(design.reach + half_room)},
        {SizeName::length, along_mitre(design.run + design.room)},
        {SizeName::from_corner, along_mitre(design.from - half_room)},
        {SizeName::from_face, design.from_face}},
       {corner.prism(spots, piece, design.from_face, design.from_face + design.slot_width)}});
}

void join_spline(Assembly& assembly, const Junction& junction, const SplineDesign& design) {
  Joint joint = junction.joint(JointKind::mitre_spline, kSplineMeasures);
  joint.has_shoulder = false;
  joint.design.cheeks = design.slot_width - design.thickness;
  joint.design.edges = design.room * 2;
  joint.design.bottom = design.room;
  assembly.joints.push_back(std::move(joint));
}

}  // namespace

Feature mitred_ends(const Triple& blank, bool long_side_low) {
  return mitred_ends(blank, long_side_low, blank[1], blank[1]);
}

Feature mitred_ends(const Triple& blank, bool long_side_low, Length at_low, Length at_high) {
  const Length none;
  const Length length = blank[0];
  const Length wide = blank[1];
  const Length sharp = long_side_low ? none : wide;
  const Length blunt = long_side_low ? wide : none;
  Feature feature{FeatureKind::mitre, {}, {}, {{SizeName::width, wide}}};
  feature.prisms = {
      {2, none, blank[2], {{none, sharp}, {none, blunt}, {at_low, blunt}}},
      {2, none, blank[2], {{length, sharp}, {length, blunt}, {length - at_high, blunt}}}};
  return feature;
}

const Measures kMitreMeasures{kMitreBuilt, {}};
const Measures kSplineMeasures{kSplineBuilt, {}, kInSlot};

Length along_mitre(Length level) {
  return nearest_step(static_cast<double>(level.steps()) * std::numbers::sqrt2);
}

Length level_of(Length along_mitre) {
  return nearest_step(static_cast<double>(along_mitre.steps()) / std::numbers::sqrt2);
}

void Mitre::cut(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  const FrameCorner corner(assembly, junction);
  const Length none;
  const std::size_t number = assembly.joints.size();
  const auto saw = [&](std::size_t piece, const Spot& beyond) {
    Piece& its = assembly.pieces[piece];
    its.features.push_back({FeatureKind::mitre,
                            {number},
                            {},
                            {{SizeName::width, width_}},
                            {corner.prism({{none, none}, {width_, width_}, beyond}, its)}});
  };
  saw(junction.receives, {none, width_});
  saw(junction.enters, {width_, none});
  Joint joint = junction.joint(JointKind::mitre, kMitreMeasures);
  joint.has_shoulder = false;
  assembly.joints.push_back(std::move(joint));
}

void Mitre::add_own_pieces(Assembly& assembly, const End& end) const {
  const Junction& junction = end.junction;
  const FrameCorner corner(assembly, junction);
  const std::size_t number = add_spline(assembly, junction, corner, spline_);
  cut_slot(assembly, corner, junction.receives, true, spline_);
  join_spline(assembly, Junction(assembly, junction.receives, number, junction.heading), spline_);
  cut_slot(assembly, corner, junction.enters, false, spline_);
  const Heading in_rail{junction.axes[kAcross], corner.at_head()};
  join_spline(assembly, Junction(assembly, junction.enters, number, in_rail), spline_);
}

}  // namespace haunch
