// Fits: every clearance of every joint, measured in the wood, against its design and the trade's
// limits.
#include <algorithm>
#include <cstdlib>

#include "family.h"

namespace haunch {
namespace {

constexpr Rule kCheeks{"cheek-fit", "of play between tenon and mortise cheeks, both together",
                       "a joint looser than 0.010 in fails in glue (teaching-shop tests); a "
                       "tighter one than none will not go home"};
constexpr Rule kStubCheeks{"stub-fit", "of play between stub and groove, both cheeks together",
                           "a stub looser than 0.010 in fails in glue (teaching-shop tests); a "
                           "tighter one than none will not go home"};
constexpr Rule kEdges{"edge-fit", "of play at the tenon's edges, both together",
                      "the tenon must go in without forcing the stile's end; over 1/16 in at each "
                      "edge it does not keep its place (trade practice)"};
constexpr Rule kEdge{"one-edge-fit", "of play at the tenon's one edge that has wood beside it",
                     "it must go in without forcing, and is planed flush at the other (trade "
                     "practice)"};
constexpr Rule kWedge{"wedge-fit", "between wedge and mortise",
                      "a wedge holds by bearing along the whole of its slope (trade practice)"};
constexpr Rule kBottom{"bottom-clearance", "from the tenon's end to the mortise's bottom",
                       "glue and air need a place to go, and the shoulder must close first"};
constexpr Rule kSeat{"shoulder-seat", "between shoulder and sight edge",
                     "the joint is home when its shoulder closes"};
constexpr Rule kLongSeat{"long-shoulder-seat", "between the long shoulder and what it stands on",
                         "of a long and a short shoulder both must close together"};
constexpr Rule kHaunch{"haunch-room", "between haunch and groove bottom",
                       "the shoulder must seat before the haunch does"};
constexpr Rule kPanelCheeks{
    "panel-play", "of play between panel edge and groove, both sides together",
    "a tongue that pinches cannot move; one with over 1/32 in rattles (trade practice)"};
constexpr Rule kPanelRoom{"panel-room", "between panel edge and groove bottom",
                          "a panel that bottoms when it swells forces the frame apart"};
constexpr Rule kPanelBed{"panel-bed", "between panel and the rebate it lies in",
                         "a panel rests on its rebate all round, or light and draught come in"};
constexpr Rule kPanelBite{
    "panel-bite", "of panel edge in its groove",
    "with less than 3 mm (1/8 in) a panel drops out when it shrinks (trade practice)"};

constexpr Rule kHousingFit{"housing-fit", "of play between what is housed and its housing",
                           "a housing tighter than none will not go home, one looser than 0.010 in "
                           "shows and rocks (trade practice)"};
constexpr Rule kHousingEnd{"housed-home", "from the housed end to the housing's bottom",
                           "the joint is home when its end stands on the bottom"};
constexpr Rule kBearing{"housed-bearing", "between what is housed and the ledge it rests on",
                        "a head must rest on its jambs over their whole width"};

// Of wood that has moved since it was glued.
constexpr Rule kMovedEdges{"edge-swell", "of play at the edges of tenon or lap, both together",
                           "one that swells against the wood at its edges presses on the glue; the "
                           "wood gives a little (trade practice)"};
constexpr Rule kMovedCheeks{"cheek-swell",
                            "of play between tenon and mortise cheeks, both together",
                            "a tenon that outgrows its mortise presses its cheeks apart"};
constexpr Rule kMovedSeat{
    "shoulder-move", "between shoulder and sight edge",
    "past 0.8 mm (1/32 in) a shoulder opens to be seen, or presses on the piece it stands on (gap "
    "of the Custom grade, ANSI/AWI 0620-2024)"};

// Of dowels, which are round: across and through the thickness they fit alike.
constexpr std::string_view kDowelTight =
    "a dowel looser than 0.010 in fails in glue (as tenons do); a tighter one than none will not "
    "go home";
constexpr Rule kDowelFit{"dowel-fit", "of play between dowel and hole, through the thickness",
                         kDowelTight};
constexpr Rule kDowelFitAcross{"dowel-fit-across", "of play between dowel and hole, across",
                               kDowelTight};
constexpr Rule kDowelBottom{
    "dowel-room", "from the dowel's end to the hole's bottom",
    "glue needs a place to go: a hole is 1/16 in deeper than its dowel (Fairham 1917)"};

constexpr Rule kLapSeat{"half-lap-seat", "between the two halves of a lap",
                        "glue holds a lap only where its halves lie on each other"};
constexpr Rule kLapEdge{"half-lap-shoulder", "between the edge of a lap and the shoulder beside it",
                        "at a corner both shoulders close"};
constexpr Rule kLapFit{"half-lap-fit", "of play at the edges of a lap, both together",
                       "a lap tighter than none will not go in, one looser than 0.010 in shows "
                       "(trade practice)"};

constexpr Rule kMitre{"mitre-closed", "between the two faces of a mitre",
                      "a mitre is glued where its faces close"};
constexpr Rule kSplineFit{"spline-fit", "of play between spline and slot, both sides together",
                          "a spline looser than 0.010 in fails in glue (as tenons do); a tighter "
                          "one than none will not go in"};
constexpr Rule kSplineRoom{"spline-room", "from the spline to its slot's bottom",
                           "the mitre must close before the spline does"};
constexpr Rule kSplineEnds{"spline-ends", "from the spline to its slot, both ways along the corner",
                           "the mitre must close before the spline does"};
constexpr Rule kMovedLongSeat{
    "long-shoulder-move", "between the long shoulder and what it stands on",
    "past 0.8 mm (1/32 in) a shoulder opens to be seen, or presses on the piece it stands on (gap "
    "of the Custom grade, ANSI/AWI 0620-2024)"};

constexpr Rule kPanelWedge{
    "panel-wedge", "that a panel edge can go in before its slope meets the groove's mouth",
    "a slope that meets the mouth before the edge meets the bottom wedges the frame apart when the "
    "panel swells (trade practice)"};

/// As designed, exactly; and what the trade asks besides.
Bounds as_designed(std::optional<Length> design) {
  Bounds bounds;
  bounds.fail_min = bounds.fail_max = design;
  return bounds;
}

/// Where something slopes, measures are to the nearest step, and of more than one slope a few off.
/// What lies so near to its design is as designed.
std::optional<Length> near_design(const Bench& bench, const Joint& joint,
                                  std::optional<Length> figure, std::optional<Length> design) {
  constexpr std::int64_t kRounding = 10;
  const bool slopes = !bench.solids[joint.receives].wood.sloping.empty() ||
                      !bench.solids[joint.enters].wood.sloping.empty();
  if (!slopes || !figure || !design) return figure;
  return std::abs((*figure - *design).steps()) <= kRounding ? design : figure;
}

void check_dowel(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  const auto fit = [&](std::optional<Length> design) {
    Bounds bounds = as_designed(design);
    bounds.caution_max = bench.limits.loosest_fit;
    return bounds;
  };
  report(bench, kDowelFit, parts, number, found.cheeks, fit(joint.design.cheeks));
  report(bench, kDowelFitAcross, parts, number, found.edges, fit(joint.design.edges));
  report(bench, kDowelBottom, parts, number, found.bottom, as_designed(joint.design.bottom));
}

void check_mitre(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  report(bench, kMitre, {joint.receives, joint.enters}, number, bench.measures[number].seat,
         as_designed(Length()));
}

void check_spline(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  Bounds fit = as_designed(joint.design.cheeks);
  fit.caution_max = bench.limits.loosest_fit;
  report(bench, kSplineFit, parts, number, found.cheeks, fit);
  report(bench, kSplineRoom, parts, number, found.bottom, as_designed(joint.design.bottom));
  report(bench, kSplineEnds, parts, number, found.edges, as_designed(joint.design.edges));
}

void check_lap(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  report(bench, kLapSeat, parts, number, found.bearing, as_designed(joint.design.bearing));
  report(bench, kSeat, parts, number, found.seat, as_designed(Length()));
  if (joint.design.edge)
    report(bench, kLapEdge, parts, number, found.edge, as_designed(joint.design.edge));
  if (!joint.design.edges) return;
  Bounds play = as_designed(joint.design.edges);
  play.caution_max = bench.limits.loosest_fit;
  report(bench, kLapFit, parts, number, found.edges, play);
}

void check_tenon(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  Bounds cheeks = as_designed(joint.design.cheeks);
  cheeks.caution_max = bench.limits.loosest_fit;
  if (joint.design.cheeks)
    report(bench, joint.mortise ? kCheeks : kStubCheeks, parts, number,
           near_design(bench, joint, found.cheeks, joint.design.cheeks), cheeks);
  Bounds edges = as_designed(joint.design.edges);
  edges.caution_max = bench.limits.loosest_edges;
  if (joint.design.edges)
    report(bench, kEdges, parts, number, near_design(bench, joint, found.edges, joint.design.edges),
           edges);
  if (joint.design.edge)
    report(bench, joint.tenon ? kEdge : kWedge, parts, number,
           near_design(bench, joint, found.edge, joint.design.edge),
           as_designed(joint.design.edge));
  if (joint.design.bottom)
    report(bench, kBottom, parts, number, found.bottom, as_designed(joint.design.bottom));
  if (joint.has_shoulder) report(bench, kSeat, parts, number, found.seat, as_designed(Length()));
  if (joint.has_shoulder && found.long_seat)
    report(bench, kLongSeat, parts, number, found.long_seat, as_designed(Length()));
  if (joint.tenon && !joint.tenon->haunches.empty())
    report(bench, kHaunch, parts, number, found.haunch, Bounds{Length(), {}, {}, {}});
}

/// The end of a piece let whole into another: it has no shoulder.
void check_housed(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  if (joint.design.cheeks) {
    Bounds play = as_designed(joint.design.cheeks);
    play.caution_max = bench.limits.loosest_fit;
    report(bench, kHousingFit, parts, number, found.cheeks, play);
  }
  if (joint.design.bearing)
    report(bench, kBearing, parts, number, found.bearing, as_designed(joint.design.bearing));
  report(bench, kHousingEnd, parts, number, found.bottom, as_designed(joint.design.bottom));
}

/// How far a panel can go in before anything but its edge meets the piece that it stands in.
std::optional<Length> free_of_slope(const JointMeasure& found) {
  if (!found.seat || !found.haunch) return found.seat ? found.seat : found.haunch;
  return std::min(*found.seat, *found.haunch);
}

void check_panel_edge(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  report(bench, kPanelBite, parts, number, found.reach,
         Bounds{bench.limits.least_bite, {}, {}, {}});
  if (found.reach <= Length())
    return;  // the edge is out of its groove: there is no play and no room
  Bounds play = as_designed(joint.design.cheeks);
  play.caution_max = bench.limits.loosest_panel;
  if (joint.design.cheeks) report(bench, kPanelCheeks, parts, number, found.cheeks, play);
  if (joint.design.bearing)
    report(bench, kPanelBed, parts, number, found.bearing, as_designed(joint.design.bearing));
  report(bench, kPanelRoom, parts, number, found.bottom, as_designed(joint.design.bottom));
  const bool slopes = !bench.solids[joint.enters].wood.sloping.empty();
  if (const auto free = free_of_slope(found); slopes && free && found.bottom)
    report(bench, kPanelWedge, parts, number, free, Bounds{found.bottom, {}, {}, {}});
}

/// What lies within a few steps of zero is zero: moved wood is rounded to the step, piece by piece.
std::optional<Length> settled(std::optional<Length> figure) {
  constexpr std::int64_t kRounding = 100;
  if (figure && std::abs(figure->steps()) <= kRounding) return Length();
  return figure;
}

void check_moved_tenon(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  const Bounds not_pressed{{}, {}, Length(), {}};
  // Dowels are let in to wood that moves along them and across: what that does to their play, drawn
  // in straight lines, would say nothing.
  const bool dowel = joint.kind == JointKind::dowel;
  if (joint.design.cheeks && !dowel)
    report(bench, kMovedCheeks, parts, number, settled(found.cheeks), not_pressed);
  const bool wedged = joint.mortise && joint.mortise->flare;  // and so presses on its wedges
  if (joint.design.edges && !dowel && !wedged)
    report(bench, kMovedEdges, parts, number, settled(found.edges), not_pressed);
  if (joint.design.bottom)
    report(bench, dowel ? kDowelBottom : kBottom, parts, number, settled(found.bottom),
           Bounds{Length(), {}, {}, {}});
  const Length most = bench.limits.shut_shoulder;
  if (joint.has_shoulder)
    report(bench, kMovedSeat, parts, number, settled(found.seat), Bounds{{}, {}, -most, most});
  if (joint.has_shoulder && found.long_seat)
    report(bench, kMovedLongSeat, parts, number, settled(found.long_seat),
           Bounds{{}, {}, -most, most});
}

void check_moved_panel_edge(Bench& bench, std::size_t number) {
  const Joint& joint = bench.assembly.joints[number];
  const JointMeasure& found = bench.measures[number];
  const std::vector<std::size_t> parts{joint.receives, joint.enters};
  report(bench, kPanelBite, parts, number, found.reach,
         Bounds{bench.limits.least_bite, {}, {}, {}});
  if (found.reach <= Length()) return;
  const Bounds some{Length(), {}, {}, {}};
  const auto room = settled(found.bottom);
  report(bench, kPanelRoom, parts, number, room, some);
  if (room && *room < Length()) return;  // past the groove's bottom there is no play to speak of
  if (joint.design.cheeks) report(bench, kPanelCheeks, parts, number, settled(found.cheeks), some);
}

}  // namespace

void check_moved_fits(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    if (is_glazing(bench, bench.assembly.joints[number])) continue;
    if (bench.assembly.joints[number].design.bite)
      check_moved_panel_edge(bench, number);
    else
      check_moved_tenon(bench, number);
  }
}

void check_fits(Bench& bench) {
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (is_glazing(bench, joint)) continue;
    if (joint.design.bite)
      check_panel_edge(bench, number);
    else if (joint.kind == JointKind::pin)
      continue;  // a pin fills its hole, and draws: see check_pins
    else if (joint.kind == JointKind::dowel)
      check_dowel(bench, number);
    else if (joint.kind == JointKind::half_lap)
      check_lap(bench, number);
    else if (joint.kind == JointKind::mitre)
      check_mitre(bench, number);
    else if (joint.kind == JointKind::mitre_spline)
      check_spline(bench, number);
    else if (!joint.tenon && joint.design.bottom)
      check_housed(bench, number);
    else
      check_tenon(bench, number);
  }
}

std::vector<const Rule*> rules_of_fits() {
  return {&kCheeks,     &kStubCheeks,    &kEdges,       &kEdge,        &kWedge,
          &kBottom,     &kSeat,          &kHaunch,      &kPanelCheeks, &kPanelRoom,
          &kPanelBite,  &kPanelWedge,    &kMovedCheeks, &kMovedEdges,  &kMovedSeat,
          &kLongSeat,   &kMovedLongSeat, &kPanelBed,    &kHousingFit,  &kHousingEnd,
          &kBearing,    &kMitre,         &kSplineFit,   &kSplineRoom,  &kSplineEnds,
          &kLapSeat,    &kLapEdge,       &kLapFit,      &kDowelFit,    &kDowelFitAcross,
          &kDowelBottom};
}

}  // namespace haunch
