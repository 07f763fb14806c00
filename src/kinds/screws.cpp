#include "screws.h"

#include "joint_rules.h"
#include "round_bore.h"

namespace haunch {
namespace {

// A pocket slants by four in fifteen, 14.9 degrees: the 15 of pocket jigs, in whole figures.
constexpr std::int64_t kRun = 15, kRise = 4;

/// How far a screw's line has come towards the back, so far before the end.
Length slanted(Length before_end) {
  return floor_divide(before_end * kRise, kRun);
}

constexpr Measure kBuilt[] = {kShouldersHome[0]};
constexpr Measure kMoved[] = {kShouldersShut[0]};

/// Bores for the screws of one end.
class Borer {
 public:
  Borer(Assembly& assembly, const Junction& junction, const ScrewDesign& screws)
      : junction_(junction),
        screws_(screws),
        number_(assembly.joints.size()),
        receiver_(assembly.pieces[junction.receives]),
        enterer_(assembly.pieces[junction.enters]) {}

  /// The screw's line comes out of the end in the middle of its thickness. What is wide as the head
  /// ends square before the end, and is drawn square across: it is no wider anywhere.
  void pocket(Length middle) {
    const Box end = junction_.blank(enterer_);
    const Length back = end.high[kThrough];
    const Length centre = end.low[kThrough] + floor_half(end.extent(kThrough));
    const auto at = [&](Length before, Length beside) {
      return Corner{-before, centre + slanted(before) + beside};
    };
    const auto before_back = [&](Length beside) {
      return floor_divide((back - centre - beside) * kRun, kRise);
    };
    const auto slot = [&](Length wide, std::vector<Corner> outline) {
      const Length half = floor_half(wide);
      return junction_.own(Prism{kAcross, middle - half, middle - half + wide, std::move(outline)},
                           enterer_.place);
    };
    const Length head = floor_half(screws_.head);
    const Length hole = floor_half(screws_.hole);
    Feature feature{FeatureKind::screw_hole, {number_}, {}, {}};
    feature.prisms = {slot(screws_.head, {at(screws_.seat, -head),
                                          {-before_back(-head), back},
                                          {-before_back(head), back},
                                          at(screws_.seat, head)}),
                      slot(screws_.hole, {at(Length(), -hole), at(screws_.seat, -hole),
                                          at(screws_.seat, hole), at(Length(), hole)})};
    feature.sizes = {{SizeName::diameter, screws_.hole},
                     {SizeName::width, screws_.head},
                     {SizeName::from_shoulder, screws_.seat},
                     {SizeName::from_edge, middle}};
    enterer_.features.push_back(std::move(feature));
  }

  /// Straight through the receiver, from its far edge.
  void plug(Length middle) {
    const Box across = junction_.blank(receiver_);
    const Box end = junction_.blank(enterer_);
    const Length centre = end.low[kThrough] + floor_half(end.extent(kThrough));
    const auto hole = [&](Piece& piece, Length from, Length to, Length wide) {
      const Length half = floor_half(wide);
      const Box box{{from, middle - half, centre - half},
                    {to, middle - half + wide, centre - half + wide}};
      piece.features.push_back(
          {FeatureKind::screw_hole,
           {number_},
           {},
           {{SizeName::diameter, wide}, {SizeName::depth, to - from}},
           {round_hole(junction_.own(box, piece.place), junction_.own_axis(kIn, piece.place),
                       bore_corners(wide))}});
    };
    const Length sunk = across.high[kIn] - screws_.seat;
    hole(receiver_, Length(), sunk, screws_.hole);
    hole(receiver_, sunk, across.high[kIn], screws_.head);
    hole(enterer_, -screws_.pilot, Length(), screws_.hole);
  }

 private:
  const Junction& junction_;
  const ScrewDesign& screws_;
  std::size_t number_;
  Piece& receiver_;
  Piece& enterer_;
};

}  // namespace

const Measures kScrewMeasures{kBuilt, kMoved};

bool ScrewDesign::fits(Length thickness) const {
  return floor_half(thickness) + slanted(seat) + floor_half(head) < thickness;
}

void Screws::cut(Assembly& assembly, const End& end) const {
  Borer borer(assembly, end.junction, screws_);
  for (const Length middle : screws_.middles)
    screws_.by == ScrewsBy::pocket ? borer.pocket(middle) : borer.plug(middle);
  assembly.joints.push_back(end.junction.joint(JointKind::screws, kScrewMeasures));
}

}  // namespace haunch
