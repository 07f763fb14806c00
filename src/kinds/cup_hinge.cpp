#include "cup_hinge.h"

#include <fmt/core.h>

#include <algorithm>
#include <string>
#include <utility>

#include "face_bore.h"

namespace haunch {
namespace {

// A plate's two screws, above and below its middle, in holes of the usual system.
constexpr Length kPlateHole = Length::from_mm(5);
constexpr Length kPlateDepth = Length::from_mm(12);
constexpr Length kPlateScrew = Length::from_mm(16);

/// Where a cup goes that would stand at a rail within the leaf, whose joint it would cut: as near
/// above it or below as leaves its own radius free.
Length beside_rails(const Assembly& assembly, std::size_t leaf, Length height, Length diameter) {
  for (const std::size_t number : pieces_of(assembly, leaf)) {
    const Piece& rail = assembly.pieces[number];
    if (rail.role != Role::rail) continue;
    const Box at = placed_blank(rail);
    if (height <= at.low[1] - diameter || height >= at.high[1] + diameter) continue;
    return height - at.low[1] < at.high[1] - height ? at.low[1] - diameter : at.high[1] + diameter;
  }
  return height;
}

}  // namespace

CupHinges settle_cup_hinges(Ledger& ledger) {
  CupHinges hinges;
  hinges.number = ledger.spec.count("fronts.hinges.number");
  constexpr std::string_view kUsual = "usual for such a hinge; see its maker's sheet";
  hinges.diameter = ledger.take("fronts.hinges.cup.diameter", Length::from_mm(35), kUsual);
  hinges.depth = ledger.take("fronts.hinges.cup.depth", Length::from_mm(13), kUsual);
  hinges.from_edge = ledger.take("fronts.hinges.cup.from_edge", Length::from_mm(5), kUsual);
  hinges.from_end = ledger.take("fronts.hinges.from_end", ledger.pick(80'000, 3, 1), kUsual);
  hinges.plate = ledger.take("fronts.hinges.plate", Length::from_mm(37), kUsual);
  return hinges;
}

int usual_cup_hinges(Length height) {
  int number = 2;
  while (number < 5 && height > Length::from_inch_parts(20) * number)
    ++number;
  return number;
}

void let_in_cups(Assembly& assembly, std::size_t leaf, std::size_t post, bool hinged_right,
                 const CupHinges& hinges, Length behind) {
  Piece& stile = assembly.pieces[outermost(assembly, leaf, hinged_right)];
  Piece& stands = assembly.pieces[post];
  const int number = hinges.number.value_or(usual_cup_hinges(stile.blank[0]));
  const Length between = stile.blank[0] - hinges.from_end * 2;
  const Length in = hinges.from_edge + floor_half(hinges.diameter);
  const Box leaf_box = placed_blank(stile);
  const Box beyond = placed_blank(stands);
  for (int i = 0; i < number; ++i) {
    const std::string name = fmt::format("{}, hinge {}", group_name(assembly.groups[leaf]), i + 1);
    const Length even = leaf_box.low[1] + hinges.from_end + floor_divide(between * i, number - 1);
    const bool outer = i == 0 || i + 1 == number;
    const Length height = outer ? even : beside_rails(assembly, leaf, even, hinges.diameter);
    const Length beside = hinged_right ? leaf_box.high[0] - in : leaf_box.low[0] + in;
    bore(stile, {FeatureKind::hinge_cup,
                 name,
                 2,
                 false,
                 {beside, height, Length()},
                 hinges.diameter,
                 hinges.depth,
                 {{SizeName::from_foot, height - leaf_box.low[1]}, {SizeName::from_edge, in}}});
    const Length across = behind + hinges.plate;
    for (const Length screw : {-kPlateScrew, kPlateScrew}) {
      const Length at = height + screw;
      bore(stands, {FeatureKind::screw_hole,
                    name,
                    0,
                    hinged_right,
                    {Length(), at, beyond.low[2] + across},
                    kPlateHole,
                    kPlateDepth,
                    {{SizeName::from_foot, at - beyond.low[1]}, {SizeName::from_front, across}}});
    }
  }
}

}  // namespace haunch
