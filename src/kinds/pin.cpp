#include "pin.h"

#include <utility>

#include "junction.h"
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
        junction_(assembly, joint_),
        depth_(pins.depth.value_or(
            junction_.blank(assembly.pieces[joint_.receives]).extent(kThrough))),
        corners_(bore_corners(pins.diameter)) {
    settle_layers();
  }

  void drive(Length middle) {
    const Length in_cheeks = joint_.tenon->set_back + pins_.from_shoulder;
    const std::size_t pin = add_pin({in_cheeks, middle});
    bore(joint_.receives, pin, {in_cheeks, middle}, cheeks_, {});
    bore(joint_.enters, pin, {in_cheeks - pins_.draw, middle}, tenons_, pins_.draw);
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

  /// What a hole takes of a layer.
  Box hole(const Spot& middle, const Layer& layer) const {
    const Length radius = floor_half(pins_.diameter);
    const Triple low{middle.in - radius, middle.across - radius, layer.from};
    return {low, {low[kIn] + pins_.diameter, low[kAcross] + pins_.diameter, layer.to}};
  }

  std::size_t add_pin(const Spot& middle) {
    const Box room = junction_.in_assembly(hole(middle, {Length(), depth_}));
    const std::size_t number = add_piece_of(
        wood_, "pin", joint_.enters, Role::pin, {depth_, pins_.diameter, pins_.diameter},
        {room.low, {junction_.axes[kThrough], junction_.axes[kIn], junction_.axes[kAcross]}});
    Piece& piece = wood_.pieces[number];
    piece.horn = floor_half(pins_.over);
    piece.features.push_back({FeatureKind::rounding,
                              {},
                              {},
                              {{SizeName::diameter, pins_.diameter}},
                              rounded_to_fill(depth_, pins_.diameter, corners_)});
    return number;
  }

  /// One hole, wood by wood that it goes through.
  void bore(std::size_t receives, std::size_t pin, const Spot& middle,
            const std::vector<Layer>& layers, std::optional<Length> draw) {
    Piece& bored = wood_.pieces[receives];
    const std::size_t through = junction_.own_axis(kThrough, bored.place);
    Feature feature{
        FeatureKind::pin_hole, {wood_.joints.size()}, {}, {{SizeName::diameter, pins_.diameter}}};
    Box own;
    for (const Layer& layer : layers) {
      own = junction_.own(hole(middle, layer), bored.place);
      feature.prisms.push_back(round_hole(own, through, corners_));
    }
    const bool of_tenon = draw.has_value();
    feature.sizes.push_back(
        {SizeName::from_shoulder, pins_.from_shoulder - draw.value_or(Length())});
    if (!of_tenon) feature.sizes.push_back({SizeName::depth, depth_});
    const Length radius = floor_half(pins_.diameter);
    const Length across = own.low[junction_.own_axis(kAcross, bored.place)] + radius;
    feature.sizes.push_back({of_tenon ? SizeName::from_edge : SizeName::from_foot, across});
    bored.features.push_back(std::move(feature));
    Joint joint =
        Junction(wood_, receives, pin, {junction_.axes[kThrough], true}).joint(JointKind::pin, {});
    joint.has_shoulder = false;
    joint.design.draw = draw;
    wood_.joints.push_back(std::move(joint));
  }

  Assembly& wood_;
  const Joint joint_;  // a copy: more are added while it is used
  const PinDesign& pins_;
  Junction junction_;  // of the tenon and its mortise
  Length depth_;
  int corners_;
  std::vector<Layer> tenons_, cheeks_;
};

}  // namespace

void Pins::add_own_pieces(Assembly& assembly, const End& end) const {
  Pinner pinner(assembly, end.joint, pins_);
  for (const Length middle : pins_.middles)
    pinner.drive(middle);
}

}  // namespace haunch
