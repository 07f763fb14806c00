#include "corner.h"

#include <set>

#include "groove.h"
#include "tenon.h"

namespace haunch::test {
namespace {

constexpr Length kNone;

/// A stretch of thickness with half the play on each side.
Box strip(Length x0, Length x1, Length y0, Length y1, Length from_face, Length width, Length play) {
  const Length beside = floor_half(play);
  return {{x0, y0, from_face + beside}, {x1, y1, from_face + width - (play - beside)}};
}

/// What must be cut from a piece's end so that these boxes stand.
Feature tenon_leaving(std::size_t joint, const Box& end, const std::vector<Box>& standing) {
  return {FeatureKind::tenon, {joint}, less({end}, standing), {}};
}

/// The tenons in the rail's width, from its foot: each {low, high}.
std::vector<std::array<Length, 2>> tenons_of(const CornerSizes& s) {
  const Length low = s.groove_depth;
  const Length high = low + s.tenon_width;
  if (s.gap == kNone) return {{low, high}};
  return {{low, low + mm(20)}, {low + mm(20) + s.gap, high}};
}

Feature groove(const CornerSizes& s, Length length, Length low, std::vector<std::size_t> joints) {
  const Box cut{{kNone, low, s.groove_from_face},
                {length, low + s.groove_depth, s.groove_from_face + s.groove_width}};
  return {FeatureKind::groove, std::move(joints), {cut}, {}};
}

Piece stile(const CornerSizes& s) {
  const Triple blank{s.height(), s.stile, s.thickness};
  Piece piece{"A", "left stile", Role::stile, blank, {{}, {Axis::y, Axis::x, Axis::z}}, {}, {}};
  piece.features.push_back(groove(s, blank[0], s.stile - s.groove_depth, {kPanelLeft}));
  Feature mortise{FeatureKind::mortise, {kTenon}, {}, {}};
  for (const auto& [low, high] : tenons_of(s))
    mortise.cuts.push_back(
        {{s.sight_height + low - s.edge, s.stile - s.tenon_depth - s.bottom, s.mortise_from_face},
         {s.sight_height + high + s.edge, s.stile, s.mortise_from_face + s.mortise_width}});
  piece.features.push_back(mortise);
  return piece;
}

Piece rail(const CornerSizes& s) {
  const Length length = s.width() - s.stile + s.tenon_depth;
  const Length width = s.rail_width();
  Piece piece{"B",
              "rail",
              Role::rail,
              {length, width, s.thickness},
              {{s.stile - s.tenon_depth, s.sight_height, kNone}, {Axis::x, Axis::y, Axis::z}},
              {},
              {}};
  piece.features.push_back(groove(s, length, kNone, {kStub, kPanelTop}));
  const Length haunch = s.tenon_depth - s.haunch_depth;
  const auto tenons = tenons_of(s);
  std::vector<Box> standing;
  for (const auto& [low, high] : tenons)
    standing.push_back(
        strip(kNone, s.tenon_depth, low, high, s.mortise_from_face, s.mortise_width, s.fit));
  for (std::size_t i = 0; i < tenons.size(); ++i)
    standing.push_back(strip(haunch, s.tenon_depth, tenons[i][1],
                             i + 1 < tenons.size() ? tenons[i + 1][0] : width, s.groove_from_face,
                             s.groove_width, s.fit));
  const Box end{{}, {s.tenon_depth, width, s.thickness}};
  piece.features.push_back(tenon_leaving(kTenon, end, standing));
  piece.is_lock_rail = s.is_lock_rail;
  return piece;
}

Piece muntin(const CornerSizes& s) {
  const Length length = s.sight_height + s.stub_depth;
  Piece piece{"C",
              "muntin",
              Role::muntin,
              {length, s.muntin, s.thickness},
              {{s.stile + s.sight_width, kNone, kNone}, {Axis::y, Axis::x, Axis::z}},
              {},
              {}};
  piece.features.push_back(groove(s, length, kNone, {kPanelRight}));
  const Box end{{s.sight_height, kNone, kNone}, {length, s.muntin, s.thickness}};
  piece.features.push_back(tenon_leaving(kStub, end,
                                         {strip(s.sight_height, length, s.groove_depth, s.muntin,
                                                s.groove_from_face, s.groove_width, s.fit)}));
  return piece;
}

Piece panel(const CornerSizes& s) {
  const Length beyond = s.groove_depth - s.panel_gap;
  const Triple blank{s.sight_height + beyond, s.sight_width + beyond * 2,
                     s.groove_width - s.panel_play};
  const Triple origin{s.stile - beyond, kNone, s.groove_from_face + floor_half(s.panel_play)};
  return {"D", "panel", Role::panel, blank, {origin, {Axis::y, Axis::x, Axis::z}}, {}, {}};
}

Joint panel_edge(const CornerSizes& s, std::size_t receives, Heading heading) {
  Joint joint;
  joint.kind = JointKind::panel_in_groove;
  joint.measures = kPanelMeasures;
  joint.receives = receives;
  joint.enters = kPanel;
  joint.heading = heading;
  joint.design = {s.panel_play, {}, s.panel_gap, s.groove_depth - s.panel_gap};
  return joint;
}

Joint tenon_joint(const CornerSizes& s) {
  Joint joint;
  joint.kind = JointKind::mortise_and_tenon;
  joint.measures = kTenonMeasures;
  joint.receives = kStile;
  joint.enters = kRail;
  joint.heading = {Axis::x, false};
  joint.design = {s.fit, s.edge * 2, s.bottom, {}};
  joint.tenon.emplace();
  for (const auto& [low, high] : tenons_of(s))
    joint.tenon->each.push_back({low, high - low});
  joint.tenon->haunches.push_back({s.rail_width() - s.relish, s.relish});
  joint.mortise.emplace();
  return joint;
}

Joint stub_joint(const CornerSizes& s) {
  Joint joint;
  joint.kind = JointKind::stub_tenon;
  joint.measures = kStubMeasures;
  joint.receives = kRail;
  joint.enters = kMuntin;
  joint.heading = {Axis::y, true};
  joint.design = {s.fit, {}, s.groove_depth - s.stub_depth, {}};
  joint.tenon.emplace();
  joint.tenon->each.push_back({s.groove_depth, s.muntin - s.groove_depth});
  return joint;
}

}  // namespace

Assembly corner(const CornerSizes& s) {
  Assembly assembly;
  assembly.size = {s.width(), s.height(), s.thickness};
  const Length clearance = mm(3);
  assembly.fits = {Fit{StandsIn::opening,
                       0,
                       0,
                       s.width() + clearance * 2,
                       s.height() + clearance * 2,
                       {clearance, clearance, clearance, clearance}}};
  assembly.pieces = {stile(s), rail(s), muntin(s), panel(s)};
  assembly.joints = {tenon_joint(s), stub_joint(s), panel_edge(s, kStile, {Axis::x, false}),
                     panel_edge(s, kRail, {Axis::y, true}),
                     panel_edge(s, kMuntin, {Axis::x, true})};
  return assembly;
}

std::vector<Box>& cuts_of(Assembly& assembly, std::size_t piece, std::string_view kind) {
  for (Feature& feature : assembly.pieces[piece].features)
    if (word_of(feature.kind) == kind) return feature.cuts;
  throw std::invalid_argument("no " + std::string(kind));
}

void add_block(Assembly& assembly, const Box& box) {
  const Triple blank{box.extent(0), box.extent(1), box.extent(2)};
  assembly.pieces.push_back({"E", "block", Role::stop, blank, {box.low, {}}, {}, {}});
  assembly.pieces.back().place.axes = {Axis::x, Axis::y, Axis::z};
}

std::string verdict(const Assembly& assembly, Unit unit) {
  std::set<std::string> broken;
  for (const Finding& finding : check_assembly(assembly, unit))
    if (finding.status != Status::ok)
      broken.insert(std::string(finding.rule->check) +
                    (finding.status == Status::fail ? " fail" : " caution"));
  std::string text;
  for (const std::string& each : broken)
    text += (text.empty() ? "" : ", ") + each;
  return text;
}

bool agrees(const std::string& verdict, const std::string& wanted) {
  if (wanted.find("fouling") == std::string::npos) return verdict == wanted;
  for (std::size_t at = 0, end = 0; end != std::string::npos; at = end + 2) {
    end = wanted.find(", ", at);
    if (verdict.find(wanted.substr(at, end - at)) == std::string::npos) return false;
  }
  return true;
}

std::vector<Breakage> all_breakages() {
  std::vector<Breakage> all;
  for (auto* list : {&breakages_of_the_whole, &breakages_of_fits, &breakages_of_walls,
                     &breakages_of_proportions, &breakages_of_edges})
    for (Breakage& row : list())
      all.push_back(std::move(row));
  return all;
}

Breakage doubted(std::string verdict_at, Breakage row) {
  row.verdict_at = std::move(verdict_at);
  return row;
}

void check_breakages(const std::vector<Breakage>& list) {
  for (const Breakage& row : list) {
    INFO(row.says);
    CHECK(verdict(row.at, row.unit) == row.verdict_at);
    const std::string beyond = verdict(row.beyond, row.unit);
    INFO(beyond);
    CHECK(agrees(beyond, row.verdict_beyond));
  }
}

}  // namespace haunch::test
