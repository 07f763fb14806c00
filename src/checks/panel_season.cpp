// Solid panels over a usual year, where nothing is said of moisture: what is measured in the wood
// as built, less what its panels swell, or with what they shrink.
#include <algorithm>
#include <map>

#include "family.h"
#include "rounding.h"
#include "season.h"
#include "season_swelling.h"

namespace haunch {
namespace {

constexpr Rule kRoom{
    "panel-season", "left between the panel's edge and the groove's bottom",
    "solid panels swell and shrink over a usual year in a heated house, from 6 to 12 % where built "
    "at 8 % (Wood Handbook 2010; Swedish trade handbook), and one without room forces its frame "
    "apart; a wider gap, quarter-sawn boards or narrower panels let it",
    false, "too little room for the panel's edge in its groove, which wants"};
constexpr Rule kBite{
    "panel-season-bite", "of panel edge in its groove",
    "solid panels shrink over a usual year in a heated house, to 6 % where built at 8 % (Wood "
    "Handbook 2010; Swedish trade handbook), and under 3 mm (1/8 in) an edge comes out of its "
    "groove"};

/// The long-grain edges of a panel as measured when built.
struct Edges {
  Length room, bite;  // where they are least
  std::size_t count = 0;
};

std::map<std::size_t, Edges> panels_of(const Bench& bench) {
  std::map<std::size_t, Edges> panels;
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    const JointMeasure& found = bench.measures[number];
    if (!joint.design.bite || bench.assembly.pieces[joint.enters].matter != Matter::wood ||
        is_glazing(bench, joint) || !found.bottom || !is_at_long_edge(bench.assembly, joint))
      continue;
    Edges& edges = panels[joint.enters];
    edges.room = edges.count == 0 ? *found.bottom : std::min(edges.room, *found.bottom);
    edges.bite = edges.count == 0 ? found.reach : std::min(edges.bite, found.reach);
    ++edges.count;
  }
  return panels;
}

/// How far one edge of a panel goes out when it grows by so much; one that is pinned at an edge
/// moves at the other alone.
Length at_edge(const Piece& panel, Length growth) {
  const bool at_one = panel.held == Held::low_edge || panel.held == Held::high_edge;
  return at_one ? growth : floor_half(growth);
}

/// No finer than movement is known, and never told larger than it is: to 0.1 mm or 0.005 in.
Length shown(Length length, Unit unit) {
  return floor_multiple(length, unit == Unit::mm ? Length::from_mm_thousandths(100)
                                                 : Length::from_inch_parts(5, 1000));
}

}  // namespace

void check_usual_year(Bench& bench, const Season& usual, Unit unit) {
  const std::map<std::size_t, Edges> panels = panels_of(bench);
  const bool fixed = holds_across(bench.assembly);
  if (panels.empty() && !fixed) return;
  for (const double percent : other_moistures(usual.moisture)) {
    bench.moisture = percent;
    if (fixed) check_fixings(bench, bench.assembly, at_moisture(bench.assembly, usual, percent));
    for (const auto& [piece, edges] : panels) {
      const Piece& panel = bench.assembly.pieces[piece];
      const Length width = swollen(panel.blank[1], swelling_at(panel, usual, percent).width);
      const Length out = at_edge(panel, width - panel.blank[1]);
      if (percent > usual.moisture.build)
        report(bench, kRoom, {piece}, {}, shown(edges.room - out, unit),
               Bounds{{}, {}, Length(), {}});
      else
        report(bench, kBite, {piece}, {}, shown(edges.bite + out, unit),
               Bounds{{}, {}, bench.limits.least_bite, {}});
    }
  }
  bench.moisture.reset();
}

std::vector<const Rule*> rules_of_usual_year() {
  return {&kRoom, &kBite};
}

}  // namespace haunch
