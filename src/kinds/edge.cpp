#include "edge.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "arc.h"
#include "rounding.h"

namespace haunch {
namespace {

/// A quarter round between (width, fillet) and (0, depth), its ends left out.
void add_quarter(std::vector<MouldingPoint>& outline, const EdgeDesign& edge) {
  const auto radius = static_cast<double>(edge.width.steps());
  const double quarter = std::numbers::pi / 2;
  const int parts = chords_of(radius, quarter);
  for (int i = 1; i < parts; ++i) {
    const Length run = nearest_step(radius * std::sin(quarter * i / parts));
    const Length rise = nearest_step(radius * (1 - std::cos(quarter * i / parts)));
    if (edge.profile == Moulding::ovolo)
      outline.push_back({edge.width - run, edge.fillet + rise});
    else
      outline.push_back({edge.width - rise, edge.fillet + run});
  }
}

}  // namespace

std::vector<MouldingPoint> moulding_outline(const EdgeDesign& edge) {
  if (edge.own) return edge.own->outline;
  std::vector<MouldingPoint> outline{{edge.width, Length()}};
  if (edge.fillet > Length()) outline.push_back({edge.width, edge.fillet});
  if (edge.profile != Moulding::bevel) add_quarter(outline, edge);
  outline.push_back({Length(), edge.depth});
  return outline;
}

namespace {

/// The two sides of a bead's round, which comes up to the face between them: the quirk beside it,
/// and what is taken off the sight edge.
std::vector<std::vector<MouldingPoint>> bead_cuts(const EdgeDesign& edge) {
  const Length radius = edge.depth;
  const Length crown = edge.width - edge.fillet - radius;  // from the sight edge
  std::vector<MouldingPoint> quirk{{edge.width, Length()}, {edge.width, radius}};
  std::vector<MouldingPoint> nose{{Length(), Length()}};
  const auto steps = static_cast<double>(radius.steps());
  const double quarter = std::numbers::pi / 2;
  const int parts = chords_of(steps, quarter);
  for (int i = 0; i <= parts; ++i) {
    const Length run = nearest_step(steps * std::cos(quarter * i / parts));
    const Length deep = radius - nearest_step(steps * std::sin(quarter * i / parts));
    nose.push_back({crown - run, deep});
    quirk.push_back({crown + run, deep});
  }
  return {std::move(quirk), std::move(nose)};
}

/// Of a moulding, as a sheet tells them.
std::vector<NamedSize> moulding_sizes(const EdgeDesign& edge) {
  std::vector<NamedSize> sizes{{SizeName::width, edge.width}, {SizeName::depth, edge.depth}};
  const auto add = [&](SizeName name, Length size) { sizes.push_back({name, size}); };
  const bool bead = edge.profile == Moulding::bead && !edge.own;
  if (bead) {
    add(SizeName::radius, edge.depth);
    add(SizeName::quirk, edge.fillet);
  } else if (edge.fillet > Length()) {
    add(SizeName::fillet, edge.fillet);
  }
  if (edge.own) {
    if (edge.own->round) add(SizeName::radius, *edge.own->round);
    if (edge.own->hollow) add(SizeName::hollow_radius, *edge.own->hollow);
    return sizes;
  }
  if (edge.profile == Moulding::ovolo) add(SizeName::radius, edge.width);
  if (edge.profile == Moulding::cove) add(SizeName::hollow_radius, edge.width);
  return sizes;
}

}  // namespace

std::vector<std::vector<MouldingPoint>> moulding_cuts(const EdgeDesign& edge) {
  if (edge.profile == Moulding::bead && !edge.own) return bead_cuts(edge);
  std::vector<MouldingPoint> outline = moulding_outline(edge);
  outline.push_back({Length(), Length()});
  return {std::move(outline)};
}

Feature moulding_of(const EdgeDesign& design) {
  Feature feature{FeatureKind::moulding, {}, {}, moulding_sizes(design)};
  if (design.own) {
    feature.profile = design.own->name;
    feature.corners = design.own->corners;
  }
  return feature;
}

void stick(Assembly& assembly, std::size_t piece, Edge edge, const EdgeDesign& design) {
  Piece& its = assembly.pieces[piece];
  Feature feature = moulding_of(design);
  for (const bool at_back : {false, true}) {
    if (at_back && !design.moulded_back()) continue;
    for (const auto& outline : moulding_cuts(design)) {
      Prism prism{0, Length(), its.blank[0], {}};
      for (const auto& [from_edge, deep] : outline)
        prism.outline.push_back({edge == Edge::high ? its.blank[1] - from_edge : from_edge,
                                 at_back ? its.blank[2] - deep : deep});
      feature.prisms.push_back(std::move(prism));
    }
  }
  its.features.push_back(std::move(feature));
}

void mitre_moulding(Assembly& assembly, const Junction& junction, Length width, MitredEdges edges,
                    std::optional<Strip> through) {
  Piece& receiver = assembly.pieces[junction.receives];
  Piece& enterer = assembly.pieces[junction.enters];
  const Box entering = junction.blank(enterer);
  const Strip thick = through.value_or(Strip{entering.low[kThrough], entering.high[kThrough]});
  const Length none;
  const Length low = entering.low[kAcross];
  const Length high = entering.high[kAcross];
  Feature away{
      FeatureKind::moulding_mitre, {assembly.joints.size()}, {}, {{SizeName::depth, width}}};
  Feature end{
      FeatureKind::moulding_mitre, {assembly.joints.size()}, {}, {{SizeName::depth, width}}};
  const auto triangle = [&](const Piece& piece, std::vector<Corner> corners) {
    return junction.own(Prism{kThrough, thick.low, thick.high, std::move(corners)}, piece.place);
  };
  const auto corner_at = [&](Length edge, Length sight, Length past) {
    std::vector<Corner> beyond{{none, sight}};
    if (sight != edge) beyond.push_back({none, edge});
    beyond.insert(beyond.end(), {{width, edge}, {width, past}});
    if (past != edge) end.prisms.push_back(triangle(enterer, std::move(beyond)));
    if (past != sight)
      away.prisms.push_back(triangle(receiver, {{none, sight}, {none, past}, {width, past}}));
  };
  const MitreOverArch at_low =
      edges.arch ? (*edges.arch)[junction.heading.upwards ? 1 : 0] : MitreOverArch{none, width};
  if (edges.arch) away.sizes.push_back({SizeName::rise, at_low.past - at_low.sight});
  if (edges.low) corner_at(low, low + at_low.sight, low + at_low.past);
  if (edges.high) corner_at(high, high, high - width);
  const Box strip{{none, edges.low ? low + at_low.past : low, thick.low},
                  {width, edges.high ? high - width : high, thick.high}};
  away.cuts.push_back(junction.own(strip, receiver.place));
  receiver.features.push_back(std::move(away));
  enterer.features.push_back(std::move(end));
}

void stand(Assembly& assembly, const End& end, const FlatEnd& flat) {
  if (flat.set_back > Length()) mitre_moulding(assembly, end.junction, flat.set_back, flat.mitred);
  butt(assembly, end);
}

}  // namespace haunch
