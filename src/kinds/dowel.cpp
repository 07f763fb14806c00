#include "dowel.h"

#include <algorithm>
#include <utility>

#include "marks.h"
#include "round_bore.h"

namespace haunch {
namespace {

/// Where a peg or hole stands: a box of the assembly, from where the two pieces meet on.
Box reaching_in(Length meet, Heading heading, Length depth, std::size_t across, const Corner& low,
                Length wide) {
  const auto in = static_cast<std::size_t>(heading.axis);
  Box box;
  box.low[in] = heading.upwards ? meet : meet - depth;
  box.high[in] = box.low[in] + depth;
  box.low[across] = low.u;
  box.high[across] = low.u + wide;
  box.low[2] = low.v;
  box.high[2] = low.v + wide;
  return box;
}

Prism round_hole(const Box& box, std::size_t along, int corners) {
  const std::size_t u = along == 0 ? 1 : 0;
  const std::size_t v = 3 - along - u;
  return {along, box.low[along], box.high[along],
          bore_outline({box.low[u], box.low[v]}, box.extent(u), corners)};
}

/// Lets dowels in one after the other.
class Doweller {
 public:
  Doweller(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
           const DowelDesign& dowels)
      : wood_(assembly),
        receives_(receives),
        enters_(enters),
        heading_(heading),
        dowels_(dowels),
        across_(static_cast<std::size_t>(assembly.pieces[enters].place.axes[1])),
        corners_(bore_corners(dowels.bore)) {
    const Box blank = placed_blank(assembly.pieces[enters]);
    const auto in = static_cast<std::size_t>(heading.axis);
    meet_ = heading.upwards ? blank.high[in] : blank.low[in];
    beside_ = blank.low[across_];
  }

  void let_in(Length from_edge, std::optional<Length> receiver_shoulder) {
    const std::size_t dowel = add_dowel(from_edge);
    bore(receives_, dowel, heading_, from_edge, receiver_shoulder);
    bore(enters_, dowel, {heading_.axis, !heading_.upwards}, from_edge, {});
    const std::size_t joints = wood_.joints.size();
    wood_.pieces[dowel].features.front().joints = {joints - 2, joints - 1};
  }

 private:
  Length fit() const { return dowels_.bore - dowels_.diameter; }

  std::size_t add_dowel(Length from_edge) {
    const Piece& held = wood_.pieces[enters_];
    const auto in = static_cast<std::size_t>(heading_.axis);
    Piece piece;
    piece.mark = piece_mark(wood_.pieces.size());
    piece.name = "dowel of " + held.name;
    piece.role = "dowel";
    piece.blank = {dowels_.depth * 2, dowels_.diameter, dowels_.diameter};
    piece.place.axes = held.place.axes;
    piece.place.origin[in] = meet_ - dowels_.depth;
    piece.place.origin[across_] = beside_ + from_edge + floor_half(fit());
    piece.place.origin[2] = dowels_.from_face + floor_half(fit());
    piece.features.push_back({"rounding",
                              {},
                              {},
                              {{"diameter", dowels_.diameter}},
                              rounded_to_peg(piece.blank[0], dowels_.diameter, corners_)});
    wood_.pieces.push_back(std::move(piece));
    return wood_.pieces.size() - 1;
  }

  void bore(std::size_t receives, std::size_t dowel, Heading heading, Length from_edge,
            std::optional<Length> receiver_shoulder) {
    Piece& bored = wood_.pieces[receives];
    const Length depth = dowels_.depth + dowels_.bottom;
    const Box hole =
        in_own_axes(reaching_in(meet_, heading, depth, across_,
                                {beside_ + from_edge, dowels_.from_face}, dowels_.bore),
                    bored.place);
    const bool in_end = bored.place.axes[0] == heading.axis;
    const std::size_t along = in_end ? 1 : 0;
    MortiseSpan span{hole.low[0], dowels_.bore};
    if (in_end) span.from_edge = hole.low[1];
    MortiseSizes mortise{dowels_.bore, depth, dowels_.from_face, {}, {span}};
    mortise.end_radius = floor_half(dowels_.bore);
    if (receiver_shoulder) mortise.from_shoulder = hole.low[0] - *receiver_shoulder;
    bored.features.push_back({"dowel-hole",
                              {wood_.joints.size()},
                              {},
                              {{"diameter", dowels_.bore}, {"depth", depth}},
                              {round_hole(hole, 1 - along, corners_)}});
    add_joint(receives, dowel, heading, std::move(mortise));
  }

  void add_joint(std::size_t receives, std::size_t dowel, Heading heading, MortiseSizes mortise) {
    Joint joint;
    joint.kind = "dowel";
    joint.receives = receives;
    joint.enters = dowel;
    joint.heading = heading;
    joint.has_shoulder = false;
    joint.design.cheeks = joint.design.edges = fit();
    joint.design.bottom = dowels_.bottom;
    joint.tenon = TenonSizes{dowels_.diameter,
                             dowels_.diameter,
                             dowels_.depth,
                             {},
                             {{Length(), dowels_.diameter}},
                             {},
                             {},
                             {}};
    joint.tenon->edge_radius = floor_half(dowels_.diameter);
    joint.mortise = std::move(mortise);
    wood_.joints.push_back(std::move(joint));
  }

  Assembly& wood_;
  std::size_t receives_, enters_;
  Heading heading_;
  const DowelDesign& dowels_;
  std::size_t across_;
  int corners_;
  Length meet_, beside_;  // where end and edge meet; the low edge of the piece whose end is held
};

}  // namespace

void join_by_dowels(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
                    const DowelDesign& dowels, std::optional<Length> receiver_shoulder) {
  Doweller doweller(assembly, receives, enters, heading, dowels);
  for (const Length from_edge : dowels.from_edge)
    doweller.let_in(from_edge, receiver_shoulder);
}

}  // namespace haunch
