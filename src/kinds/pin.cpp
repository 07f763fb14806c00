#include "pin.h"

#include <algorithm>
#include <utility>

#include "marks.h"
#include "round_bore.h"

namespace haunch {
namespace {

/// A stretch of the thickness, from the face side.
struct Layer {
  Length from, to;
};

/// Drives pins in one after the other.
class Pinner {
 public:
  Pinner(Assembly& assembly, std::size_t joint, const PinDesign& pins)
      : wood_(assembly),
        joint_(assembly.joints[joint]),
        pins_(pins),
        in_(static_cast<std::size_t>(joint_.heading.axis)),
        across_(1 - in_),
        thickness_(assembly.pieces[joint_.receives].blank[2]),
        depth_(pins.depth.value_or(thickness_)),
        corners_(bore_corners(pins.diameter)) {
    settle_layers();
  }

  void drive(Length middle) {
    const Length across = wood_.pieces[joint_.enters].place.origin[across_] + middle;
    const Length edge = sight_edge(wood_, joint_);
    const auto from_edge = [&](Length distance) {
      const Length past = joint_.tenon->set_back + distance;
      return joint_.heading.upwards ? edge + past : edge - past;
    };
    const Length in_cheeks = from_edge(pins_.from_shoulder);
    const Length in_tenon = from_edge(pins_.from_shoulder - pins_.draw);
    const std::size_t pin = add_pin(in_cheeks, across);
    bore(joint_.receives, pin, {in_cheeks, across}, cheeks_, {});
    bore(joint_.enters, pin, {in_tenon, across}, tenons_, pins_.draw);
    const std::size_t joints = wood_.joints.size();
    wood_.pieces[pin].features.front().joints = {joints - 2, joints - 1};
  }

 private:
  struct Spot {
    Length in, across;
  };

  /// The tenons through the thickness, and the wood of the mortise's walls as deep as pins go.
  void settle_layers() {
    const TenonSizes& tenon = *joint_.tenon;
    const Length play = joint_.mortise->width - tenon.thickness;
    Length done;
    std::vector<Length> faces{tenon.from_face};
    for (const TenonSpan& each : tenon.each)
      if (each.from_face && *each.from_face > faces.back()) faces.push_back(*each.from_face);
    for (const Length face : faces) {
      tenons_.push_back({face, face + tenon.thickness});
      const Length wall = face - floor_half(play);
      cheeks_.push_back({done, wall});
      done = wall + joint_.mortise->width;
    }
    cheeks_.push_back({done, depth_});
  }

  Corner low_corner(const Spot& spot) const {
    const Length radius = floor_half(pins_.diameter);
    const Length x = (in_ == 0 ? spot.in : spot.across) - radius;
    const Length y = (in_ == 0 ? spot.across : spot.in) - radius;
    return {x, y};
  }

  std::size_t add_pin(Length in, Length across) {
    const Corner low = low_corner({in, across});
    Piece piece;
    piece.mark = piece_mark(wood_.pieces.size());
    piece.name = "pin of " + wood_.pieces[joint_.enters].name;
    piece.role = "pin";
    piece.blank = {depth_, pins_.diameter, pins_.diameter};
    piece.place = {{low.u, low.v, Length()}, {Axis::z, Axis::x, Axis::y}};
    piece.horn = floor_half(pins_.over);
    piece.features.push_back({"rounding",
                              {},
                              {},
                              {{"diameter", pins_.diameter}},
                              rounded_to_fill(depth_, pins_.diameter, corners_)});
    wood_.pieces.push_back(std::move(piece));
    return wood_.pieces.size() - 1;
  }

  /// One hole, wood by wood that it goes through.
  void bore(std::size_t receives, std::size_t pin, const Spot& spot,
            const std::vector<Layer>& layers, std::optional<Length> draw) {
    Piece& bored = wood_.pieces[receives];
    const Corner low = low_corner(spot);
    Box square{{low.u, low.v, Length()}, {low.u, low.v, Length()}};
    square.high[0] += pins_.diameter;
    square.high[1] += pins_.diameter;
    const Box own = in_own_axes(square, bored.place);
    Feature feature{"pin-hole", {wood_.joints.size()}, {}, {{"diameter", pins_.diameter}}};
    for (const Layer& layer : layers)
      feature.prisms.push_back({2, layer.from, layer.to,
                                bore_outline({own.low[0], own.low[1]}, pins_.diameter, corners_)});
    const bool of_tenon = draw.has_value();
    feature.sizes.push_back({"from_shoulder", pins_.from_shoulder - draw.value_or(Length())});
    if (!of_tenon) feature.sizes.push_back({"depth", depth_});
    const Length radius = floor_half(pins_.diameter);
    feature.sizes.push_back(of_tenon ? NamedSize{"from_edge", own.low[1] + radius}
                                     : NamedSize{"from_foot", own.low[0] + radius});
    bored.features.push_back(std::move(feature));
    Joint joint;
    joint.kind = "pin";
    joint.receives = receives;
    joint.enters = pin;
    joint.heading = {Axis::z, true};
    joint.has_shoulder = false;
    joint.design.draw = draw;
    wood_.joints.push_back(std::move(joint));
  }

  Assembly& wood_;
  const Joint joint_;  // a copy: more are added while it is used
  const PinDesign& pins_;
  std::size_t in_, across_;
  Length thickness_, depth_;
  int corners_;
  std::vector<Layer> tenons_, cheeks_;
};

}  // namespace

void pin_joint(Assembly& assembly, std::size_t joint, const PinDesign& pins) {
  Pinner pinner(assembly, joint, pins);
  for (const Length middle : pins.middles)
    pinner.drive(middle);
}

}  // namespace haunch
