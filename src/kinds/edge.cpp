#include "edge.h"

#include <algorithm>
#include <array>
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

/// Outlines are drawn as at a low edge and the face side, then turned to where they belong.
Corner corner(const Triple& blank, std::size_t u_axis, Length u, Length deep, bool at_high,
              bool at_back) {
  return {at_high ? blank[u_axis] - u : u, at_back ? blank[2] - deep : deep};
}

}  // namespace

std::vector<MouldingPoint> moulding_outline(const EdgeDesign& edge) {
  std::vector<MouldingPoint> outline{{edge.width, Length()}};
  if (edge.fillet > Length()) outline.push_back({edge.width, edge.fillet});
  if (edge.profile != Moulding::bevel) add_quarter(outline, edge);
  outline.push_back({Length(), edge.depth});
  return outline;
}

void stick(Assembly& assembly, std::size_t piece, Edge edge, const EdgeDesign& design) {
  Piece& its = assembly.pieces[piece];
  const auto outline = moulding_outline(design);
  Feature feature{"moulding", {}, {}, {{"width", design.width}, {"depth", design.depth}}};
  if (design.fillet > Length()) feature.sizes.push_back({"fillet", design.fillet});
  if (design.profile == Moulding::ovolo) feature.sizes.push_back({"radius", design.width});
  if (design.profile == Moulding::cove) feature.sizes.push_back({"hollow_radius", design.width});
  for (const bool at_back : {false, true}) {
    if (at_back && !design.moulded_back()) continue;
    Prism prism{0, Length(), its.blank[0], {}};
    const auto add = [&](Length from_edge, Length deep) {
      prism.outline.push_back(corner(its.blank, 1, from_edge, deep, edge == Edge::high, at_back));
    };
    for (const MouldingPoint& point : outline)
      add(point.from_edge, point.deep);
    add(Length(), Length());
    feature.prisms.push_back(std::move(prism));
  }
  its.features.push_back(std::move(feature));
}

Cope cope_of(const Triple& blank, const EdgeDesign& edge, Length depth, Length cheek, bool high_end,
             bool at_back) {
  Cope cope;
  const auto box = [&](Length from, Length to, Length shallow, Length deep) {
    if (from >= to || shallow >= deep) return;
    const Corner a = corner(blank, 0, from, shallow, high_end, at_back);
    const Corner b = corner(blank, 0, to, deep, high_end, at_back);
    cope.cuts.push_back({{std::min(a.u, b.u), Length(), std::min(a.v, b.v)},
                         {std::max(a.u, b.u), blank[1], std::max(a.v, b.v)}});
  };
  box(Length(), depth - edge.width, Length(), cheek);
  box(depth - edge.width, depth, edge.depth, cheek);
  Prism prism{1, Length(), blank[1], {}};
  const auto add = [&](Length from_edge, Length deep) {
    prism.outline.push_back(corner(blank, 0, depth - from_edge, deep, high_end, at_back));
  };
  for (const MouldingPoint& point : moulding_outline(edge))
    if (point.deep > Length() || edge.fillet == Length()) add(point.from_edge, point.deep);
  add(edge.width, edge.depth);
  cope.prisms.push_back(std::move(prism));
  return cope;
}

namespace {

/// A place in the leaf's plane, along the way in and across it.
struct PlanePoint {
  Length in, across;
};

/// A triangle of the leaf's plane over a piece's whole thickness, in its own axes.
Prism triangle(const Piece& piece, Heading heading, const std::array<PlanePoint, 3>& points) {
  Prism prism{2, Length(), piece.blank[2], {}};
  const auto in = static_cast<std::size_t>(heading.axis);
  const auto own = [&](std::size_t axis, const PlanePoint& point) {
    const auto lies = static_cast<std::size_t>(piece.place.axes[axis]);
    return (lies == in ? point.in : point.across) - piece.place.origin[lies];
  };
  for (const PlanePoint& point : points)
    prism.outline.push_back({own(0, point), own(1, point)});
  return prism;
}

}  // namespace

void mitre_moulding(Assembly& assembly, std::size_t receives, std::size_t enters, Heading heading,
                    Length width, MitredEdges edges) {
  Piece& receiver = assembly.pieces[receives];
  Piece& enterer = assembly.pieces[enters];
  const auto in = static_cast<std::size_t>(heading.axis);
  const std::size_t across = 1 - in;
  const Box blank = placed_blank(receiver);
  const Length edge = heading.upwards ? blank.low[in] : blank.high[in];
  const Length inner = heading.upwards ? edge + width : edge - width;
  const Box entering = placed_blank(enterer);
  const Length low = entering.low[across];
  const Length high = entering.high[across];
  Feature away{"moulding-mitre", {assembly.joints.size()}, {}, {{"depth", width}}};
  Feature end{"moulding-mitre", {assembly.joints.size()}, {}, {{"depth", width}}};
  const auto corner_at = [&](Length sight, Length past) {
    away.prisms.push_back(
        triangle(receiver, heading, {{{edge, sight}, {edge, past}, {inner, past}}}));
    end.prisms.push_back(
        triangle(enterer, heading, {{{edge, sight}, {inner, sight}, {inner, past}}}));
  };
  if (edges.low) corner_at(low, low + width);
  if (edges.high) corner_at(high, high - width);
  Box strip = blank;
  strip.low[in] = std::min(edge, inner);
  strip.high[in] = std::max(edge, inner);
  strip.low[across] = edges.low ? low + width : low;
  strip.high[across] = edges.high ? high - width : high;
  away.cuts.push_back(in_own_axes(strip, receiver.place));
  receiver.features.push_back(std::move(away));
  enterer.features.push_back(std::move(end));
}

}  // namespace haunch
