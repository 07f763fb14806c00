#include "seasons.h"

#include <algorithm>
#include <utility>

#include "family.h"

namespace haunch {
namespace {

/// The wood at one moisture, measured. The bench looks at the assembly, which stays where it is.
struct State {
  Assembly wood;
  std::optional<Bench> bench;
};

PanelState panel_state(const Bench& bench, std::size_t piece) {
  PanelState state;
  state.width = bench.assembly.pieces[piece].blank[1];
  bool first = true;
  for (std::size_t number = 0; number < bench.assembly.joints.size(); ++number) {
    const Joint& joint = bench.assembly.joints[number];
    if (joint.enters != piece || !joint.design.bite || !is_at_long_edge(bench.assembly, joint))
      continue;
    const JointMeasure& found = bench.measures[number];
    const Length gap = found.bottom.value_or(Length());
    state.gap = first ? gap : std::min(state.gap, gap);
    state.bite = first ? found.reach : std::min(state.bite, found.reach);
    first = false;
  }
  return state;
}

LeafState leaf_state(const Bench& bench, const Assembly& built) {
  const Fit& fit = *fit_in_opening(built);
  const SideGaps gaps = side_gaps(bench.solids, fit);
  return {fit.width - gaps.left - gaps.right, fit.height - gaps.head - gaps.foot, gaps};
}

Length glued_width(const JointMeasure& found) {
  Length width;
  for (const Length each : found.widths)
    width = std::max(width, each);
  return width;
}

std::vector<std::size_t> panels_of(const Assembly& wood) {
  std::vector<std::size_t> panels;
  for (const Joint& joint : wood.joints)
    if (joint.design.bite && std::find(panels.begin(), panels.end(), joint.enters) == panels.end())
      panels.push_back(joint.enters);
  return panels;
}

void tabulate_leaves(SeasonReport& report, const AtEach<State>& states, const Assembly& built) {
  for (const Fit* hung : fits_that_stand(built, StandsIn::group)) {
    LeafSeason leaf{hung->group, {}};
    for (std::size_t i = 0; i < states.size(); ++i)
      leaf.at[i] = hung_state(*states[i].bench, *hung);
    report.leaves.push_back(leaf);
  }
  if (!report.leaves.empty() || fit_in_opening(built) == nullptr) return;
  LeafSeason leaf;
  for (std::size_t i = 0; i < states.size(); ++i)
    leaf.at[i] = leaf_state(*states[i].bench, built);
  report.leaves.push_back(leaf);
}

/// Boards of a case that are of wood.
bool is_board_of_case(const Assembly& built, const Piece& piece) {
  return piece.matter == Matter::wood && built.groups[piece.group].kind == GroupKind::carcase &&
         (piece.role == Role::side || piece.role == Role::top || piece.role == Role::bottom ||
          piece.role == Role::partition || piece.role == Role::shelf || piece.role == Role::back);
}

void tabulate_case(SeasonReport& report, const AtEach<State>& states, const Assembly& built) {
  for (std::size_t piece = 0; piece < built.pieces.size(); ++piece) {
    if (!is_board_of_case(built, built.pieces[piece])) continue;
    WidthSeason row{piece, {}};
    for (std::size_t i = 0; i < states.size(); ++i)
      row.width[i] = states[i].wood.pieces[piece].blank[1];
    report.widths.push_back(row);
  }
  for (const Fit* fit : fits_that_stand(built, StandsIn::front)) {
    FrontSeason row{fit->group, {}};
    for (std::size_t i = 0; i < states.size(); ++i)
      row.at[i] = front_state(*states[i].bench, *fit);
    report.fronts.push_back(row);
  }
}

void tabulate_mitres(SeasonReport& report, const AtEach<State>& states, const Assembly& built) {
  for (std::size_t number = 0; number < built.joints.size(); ++number) {
    if (built.joints[number].kind != JointKind::mitre) continue;
    MitreSeason row{number, {}};
    for (std::size_t i = 0; i < states.size(); ++i)
      row.at[i] = mitre_state(states[i].wood, number);
    report.mitres.push_back(row);
  }
}

void tabulate(SeasonReport& report, const AtEach<State>& states, const Assembly& built) {
  for (const std::size_t piece : panels_of(built)) {
    PanelSeason row{piece, {}};
    for (std::size_t i = 0; i < states.size(); ++i)
      row.at[i] = panel_state(*states[i].bench, piece);
    report.panels.push_back(row);
  }
  for (std::size_t number = 0; number < built.joints.size(); ++number) {
    if (!built.joints[number].mortise || built.joints[number].kind == JointKind::dowel) continue;
    TenonSeason row{number, {}};
    for (std::size_t i = 0; i < states.size(); ++i)
      row.width[i] = glued_width(states[i].bench->measures[number]);
    report.tenons.push_back(row);
  }
  tabulate_mitres(report, states, built);
  tabulate_leaves(report, states, built);
  tabulate_case(report, states, built);
}

/// Puts the wood of one moisture on the bench and checks it.
void check_at(State& state, const Assembly& built, const Season& season, double percent,
              Unit unit) {
  state.wood = at_moisture(built, season, percent);
  hang_anew(state.wood);
  seat_anew(state.wood, built);
  Bench& bench = state.bench.emplace(bench_of(state.wood, unit, MeasuredOver::middle));
  bench.moisture = percent;
  check_moved_whole(bench, built);
  check_fits(bench);
  check_moved_hanging(bench);
  check_moved_meetings(bench);
  check_laps(bench, built);
  check_moved_glazing(bench);
  check_moved_mitres(bench);
  check_moved_fronts(bench);
  check_fixings(bench, built, state.wood);
}

}  // namespace

std::vector<Finding> check_moved(const Assembly& built, const Season& season, Unit unit) {
  std::vector<Finding> findings;
  for (const double percent : other_moistures(season.moisture)) {
    State state;
    check_at(state, built, season, percent, unit);
    findings.insert(findings.end(), state.bench->findings.begin(), state.bench->findings.end());
  }
  return findings;
}

SeasonReport check_seasons(const Assembly& built, const Season& season, Unit unit) {
  const Moisture& moisture = season.moisture;
  const AtEach<double> percents{moisture.low, moisture.build, moisture.high};
  AtEach<State> states;
  SeasonReport report;
  report.moisture = moisture;
  report.widest_glued = limits_in(unit).widest_glued;
  for (std::size_t i = 0; i < states.size(); ++i) {
    State& state = states[i];
    if (percents[i] == moisture.build) {
      state.wood = built;
      state.bench.emplace(bench_of(state.wood, unit));
      continue;
    }
    check_at(state, built, season, percents[i], unit);
    report.findings.insert(report.findings.end(), state.bench->findings.begin(),
                           state.bench->findings.end());
  }
  tabulate(report, states, built);
  return report;
}

}  // namespace haunch
