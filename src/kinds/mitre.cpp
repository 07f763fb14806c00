#include "mitre.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "marks.h"
#include "own_axes.h"
#include "rounding.h"

namespace haunch {
namespace {

/// A place of a corner: out from the sight corner, across the stile and across the rail.
struct Spot {
  Length p, q;
};

/// A corner of the leaf, between its sight corner and its outer one.
class FrameCorner {
 public:
  FrameCorner(const Assembly& assembly, std::size_t stile, std::size_t rail, Heading heading)
      : right_(heading.upwards) {
    const Box upright = placed_blank(assembly.pieces[stile]);
    const Box level = placed_blank(assembly.pieces[rail]);
    head_ = level.high[1] == upright.high[1];
    x_ = right_ ? upright.low[0] : upright.high[0];
    y_ = head_ ? level.low[1] : level.high[1];
    width_ = upright.extent(0);
  }

  bool at_head() const { return head_; }
  bool at_right() const { return right_; }
  Length width() const { return width_; }

  /// In the assembly, along x and y.
  Corner place(const Spot& spot) const {
    return {right_ ? x_ + spot.p : x_ - spot.p, head_ ? y_ + spot.q : y_ - spot.q};
  }

  /// An outline of the corner on a piece, through its thickness from one place to another.
  Prism prism(const std::vector<Spot>& spots, const Piece& piece, Length from, Length to) const {
    Prism prism{2, from, to, {}};
    for (const Spot& spot : spots)
      prism.outline.push_back(in_own_axes(place(spot), piece.place));
    return prism;
  }

 private:
  bool right_, head_ = false;
  Length x_, y_, width_;
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
Piece spline_piece(const Assembly& assembly, const FrameCorner& corner, const SplineDesign& design,
                   const Piece& rail) {
  const Length low = design.from - design.reach;
  const Length high = design.from + design.run + design.reach;
  const Corner one = corner.place({low, low});
  const Corner other = corner.place({high, high});
  Piece piece;
  piece.mark = piece_mark(assembly.pieces.size());
  piece.name = std::string("spline of ") + rail.name;
  piece.role = "spline";
  piece.blank = {high - low, high - low, design.thickness};
  piece.place = {{std::min(one.u, other.u), std::min(one.v, other.v),
                  design.from_face + floor_half(design.slot_width - design.thickness)},
                 {Axis::x, Axis::y, Axis::z}};
  const std::array<Spot, 4> corners = spline_corners(design);
  const std::array<Spot, 4> outside{Spot{low, low}, Spot{high, low}, Spot{high, high},
                                    Spot{low, high}};
  Feature feature{
      "skew", {}, {}, {{"length", design.depth * 2}, {"width", along_mitre(design.run)}}};
  for (std::size_t i = 0; i < corners.size(); ++i)
    feature.prisms.push_back(corner.prism({outside[i], corners[i], corners[(i + 3) % 4]}, piece,
                                          Length(), piece.blank[2]));
  piece.features.push_back(std::move(feature));
  return piece;
}

void cut_slot(Assembly& assembly, const FrameCorner& corner, std::size_t number, bool in_stile,
              const SplineDesign& design) {
  Piece& piece = assembly.pieces[number];
  std::vector<Spot> spots = slot_in_stile(design);
  if (!in_stile) std::transform(spots.begin(), spots.end(), spots.begin(), mirrored);
  const Length half_room = floor_half(design.room);
  piece.features.push_back(
      {"spline-slot",
       {assembly.joints.size()},
       {},
       {{"width", design.slot_width},
        {"depth", along_mitre(design.reach + half_room)},
        {"length", along_mitre(design.run + design.room)},
        {"from_corner", along_mitre(design.from - half_room)},
        {"from_face", design.from_face}},
       {corner.prism(spots, piece, design.from_face, design.from_face + design.slot_width)}});
}

void join_spline(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
                 const SplineDesign& design) {
  Joint joint;
  joint.kind = "mitre-spline";
  joint.receives = receives;
  joint.enters = enters;
  joint.heading = heading;
  joint.has_shoulder = false;
  joint.design.cheeks = design.slot_width - design.thickness;
  joint.design.edges = design.room * 2;
  joint.design.bottom = design.room;
  assembly.joints.push_back(std::move(joint));
}

}  // namespace

Length along_mitre(Length level) {
  return nearest_step(static_cast<double>(level.steps()) * std::numbers::sqrt2);
}

Length level_of(Length along_mitre) {
  return nearest_step(static_cast<double>(along_mitre.steps()) / std::numbers::sqrt2);
}

void mitre(Assembly& assembly, std::size_t stile, std::size_t rail, Heading heading) {
  const FrameCorner corner(assembly, stile, rail, heading);
  const Length none;
  const Length width = corner.width();
  const std::size_t number = assembly.joints.size();
  const auto cut = [&](std::size_t piece, const Spot& beyond) {
    Piece& its = assembly.pieces[piece];
    its.features.push_back(
        {"mitre",
         {number},
         {},
         {{"width", width}},
         {corner.prism({{none, none}, {width, width}, beyond}, its, none, its.blank[2])}});
  };
  cut(stile, {none, width});
  cut(rail, {width, none});
  Joint joint;
  joint.kind = "mitre";
  joint.receives = stile;
  joint.enters = rail;
  joint.heading = heading;
  joint.has_shoulder = false;
  assembly.joints.push_back(std::move(joint));
}

void spline(Assembly& assembly, std::size_t stile, std::size_t rail, Heading heading,
            const SplineDesign& design) {
  const FrameCorner corner(assembly, stile, rail, heading);
  const std::size_t number = assembly.pieces.size();
  Piece piece = spline_piece(assembly, corner, design, assembly.pieces[rail]);
  const std::size_t joints = assembly.joints.size();
  piece.features.front().joints = {joints, joints + 1};
  assembly.pieces.push_back(std::move(piece));
  cut_slot(assembly, corner, stile, true, design);
  join_spline(assembly, stile, number, heading, design);
  cut_slot(assembly, corner, rail, false, design);
  join_spline(assembly, rail, number, {Axis::y, corner.at_head()}, design);
}

}  // namespace haunch
