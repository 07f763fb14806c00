#include "dowel.h"

#include <utility>

#include "groove.h"
#include "joint_rules.h"
#include "marks.h"
#include "round_bore.h"
#include "scribe.h"

namespace haunch {
namespace {

// They are round: across and through the thickness they fit alike.
constexpr std::string_view kTight =
    "a dowel looser than 0.010 in fails in glue (as tenons do); a tighter one than none will not "
    "go home";
constexpr Rule kFit{"dowel-fit", "of play between dowel and hole, through the thickness", kTight};
constexpr Rule kFitAcross{"dowel-fit-across", "of play between dowel and hole, across", kTight};
constexpr Rule kRoom{
    "dowel-room", "from the dowel's end to the hole's bottom",
    "glue needs a place to go: a hole is 1/16 in deeper than its dowel (Fairham 1917)"};

constexpr Measure kBuilt[] = {
    {Figure::cheeks, &kFit, Asked::as_designed, &Limits::loosest_fit},
    {Figure::edges, &kFitAcross, Asked::as_designed, &Limits::loosest_fit},
    {Figure::bottom, &kRoom}};
// Dowels are let in to wood that moves along them and across: what that does to their play, drawn
// in straight lines, would say nothing.
constexpr Measure kMoved[] = {{Figure::bottom, &kRoom, Asked::at_least}};

/// Lets dowels in one after the other. Holes in an edge are told from it as it is before anything
/// is worked there, those in an end from where that stands.
class Doweller {
 public:
  Doweller(Assembly& assembly, const Junction& junction, const DowelDesign& dowels)
      : wood_(assembly),
        junction_(junction),
        dowels_(dowels),
        meet_(stands_at(assembly, junction, {dowels.from_face, dowels.from_face + dowels.bore})),
        corners_(bore_corners(dowels.bore)) {}

  void let_in(Length from_edge, std::optional<Length> receiver_shoulder) {
    const std::size_t dowel = add_dowel(from_edge);
    const Heading in = junction_.heading;
    bore(Junction(wood_, junction_.receives, dowel, in),
         {Length(), meet_ + dowels_.depth + dowels_.bottom}, dowels_.depth, from_edge,
         receiver_shoulder);
    bore(Junction(wood_, junction_.enters, dowel, {in.axis, !in.upwards}),
         {meet_ - dowels_.in_end() - dowels_.bottom, meet_}, dowels_.in_end(), from_edge, {});
    const std::size_t joints = wood_.joints.size();
    wood_.pieces[dowel].features.front().joints = {joints - 2, joints - 1};
  }

 private:
  Length fit() const { return dowels_.bore - dowels_.diameter; }

  std::size_t add_dowel(Length from_edge) {
    const Length half = floor_half(fit());
    const Triple low{meet_ - dowels_.in_end(), from_edge + half, dowels_.from_face + half};
    const Triple high{meet_ + dowels_.depth, low[kAcross] + dowels_.diameter,
                      low[kThrough] + dowels_.diameter};
    const std::size_t number =
        add_piece_of(wood_, "dowel", junction_.enters, Role::dowel,
                     {dowels_.in_end() + dowels_.depth, dowels_.diameter, dowels_.diameter},
                     {junction_.in_assembly({low, high}).low, junction_.axes});
    Piece& piece = wood_.pieces[number];
    piece.features.push_back({FeatureKind::rounding,
                              {},
                              {},
                              {{SizeName::diameter, dowels_.diameter}},
                              rounded_to_peg(piece.blank[0], dowels_.diameter, corners_)});
    return number;
  }

  /// `at`: the joint of the bored piece and the dowel; `in`: from where to where along the way in;
  /// `depth` of the dowel there.
  void bore(const Junction& at, Stretch in, Length depth, Length from_edge,
            std::optional<Length> receiver_shoulder) {
    Piece& bored = wood_.pieces[at.receives];
    const Box hole =
        junction_.own({{in.from, from_edge, dowels_.from_face},
                       {in.to, from_edge + dowels_.bore, dowels_.from_face + dowels_.bore}},
                      bored.place);
    const std::size_t deep = junction_.own_axis(kIn, bored.place);
    MortiseSpan span{hole.low[0], dowels_.bore};
    if (deep == 0) span.from_edge = hole.low[junction_.own_axis(kAcross, bored.place)];
    MortiseSizes mortise{dowels_.bore, hole.extent(deep), dowels_.from_face, {}, {span}};
    mortise.end_radius = floor_half(dowels_.bore);
    std::vector<NamedSize> told{{SizeName::diameter, dowels_.bore},
                                {SizeName::depth, mortise.depth}};
    if (deep == 2) told.push_back({SizeName::from_edge, hole.low[1] + floor_half(dowels_.bore)});
    if (receiver_shoulder) mortise.from_shoulder = hole.low[0] - *receiver_shoulder;
    bored.features.push_back({FeatureKind::dowel_hole,
                              {wood_.joints.size()},
                              {},
                              std::move(told),
                              {round_hole(hole, deep, corners_)}});
    add_joint(at, depth, std::move(mortise));
  }

  void add_joint(const Junction& at, Length depth, MortiseSizes mortise) {
    Joint joint = at.joint(JointKind::dowel, kDowelMeasures);
    joint.has_shoulder = false;
    joint.design.cheeks = joint.design.edges = fit();
    joint.design.bottom = dowels_.bottom;
    joint.tenon = TenonSizes{
        dowels_.diameter, dowels_.diameter, depth, {}, {{Length(), dowels_.diameter}}, {}, {}, {}};
    joint.tenon->edge_radius = floor_half(dowels_.diameter);
    joint.mortise = std::move(mortise);
    wood_.joints.push_back(std::move(joint));
  }

  Assembly& wood_;
  const Junction& junction_;  // of the end and the edge that are held together
  const DowelDesign& dowels_;
  Length meet_;  // past the sight edge, where the two meet
  int corners_;
};

}  // namespace

const Measures kDowelMeasures{kBuilt, kMoved, {}, true};

void Dowels::add_own_pieces(Assembly& assembly, const End& end) const {
  Doweller doweller(assembly, end.junction, dowels_);
  for (const Length from_edge : dowels_.from_edge)
    doweller.let_in(from_edge, end.receiver_shoulder);
}

}  // namespace haunch
