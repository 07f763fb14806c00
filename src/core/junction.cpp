#include "junction.h"

#include <algorithm>

#include "own_axes.h"

namespace haunch {
namespace {

std::size_t number(Axis axis) {
  return static_cast<std::size_t>(axis);
}

}  // namespace

Junction::Junction(const Assembly& assembly, std::size_t receiving, std::size_t entering,
                   Heading way, std::optional<Axis> through)
    : receives(receiving), enters(entering), heading(way) {
  const Piece& piece = assembly.pieces[entering];
  const Axis thin = through.value_or(piece.place.axes[2]);
  axes = {way.axis, static_cast<Axis>(3 - number(way.axis) - number(thin)), thin};
  origin = piece.place.origin;
  const Box receiver = placed_blank(assembly.pieces[receiving]);
  origin[number(way.axis)] =
      way.upwards ? receiver.low[number(way.axis)] : receiver.high[number(way.axis)];
}

Joint Junction::joint(JointKind kind, const Measures& measures) const {
  Joint joint;
  joint.kind = kind;
  joint.receives = receives;
  joint.enters = enters;
  joint.heading = heading;
  joint.through = axes[kThrough];
  joint.measures = measures;
  return joint;
}

Box Junction::in_assembly(const Box& here) const {
  Box box;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const std::size_t there = number(axes[axis]);
    const bool against = runs_against(axis);
    box.low[there] = origin[there] + (against ? -here.high[axis] : here.low[axis]);
    box.high[there] = origin[there] + (against ? -here.low[axis] : here.high[axis]);
  }
  return box;
}

Box Junction::from_assembly(const Box& box) const {
  Box here;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const std::size_t there = number(axes[axis]);
    const bool against = runs_against(axis);
    here.low[axis] = against ? origin[there] - box.high[there] : box.low[there] - origin[there];
    here.high[axis] = against ? origin[there] - box.low[there] : box.high[there] - origin[there];
  }
  return here;
}

Length Junction::here_at(std::size_t axis, Length there) const {
  const Length from = origin[number(axes[axis])];
  return runs_against(axis) ? from - there : there - from;
}

Prism Junction::from_assembly(const Prism& prism) const {
  const auto here = [&](std::size_t there) {
    return static_cast<std::size_t>(std::find(axes.begin(), axes.end(), static_cast<Axis>(there)) -
                                    axes.begin());
  };
  const auto [u, v] = across_axes(prism.along);
  const std::size_t along = here(prism.along);
  const Length from = here_at(along, prism.from);
  const Length to = here_at(along, prism.to);
  Prism its{along, std::min(from, to), std::max(from, to), {}};
  const bool in_order = here(u) < here(v);
  for (const Corner& corner : prism.outline) {
    const Corner at{here_at(here(u), corner.u), here_at(here(v), corner.v)};
    its.outline.push_back(in_order ? at : Corner{at.v, at.u});
  }
  return its;
}

std::size_t Junction::own_axis(std::size_t axis, const Place& place) const {
  return haunch::own_axis(place, axes[axis]);
}

Length Junction::own_at(std::size_t axis, Length at, const Place& place) const {
  const std::size_t there = number(axes[axis]);
  return origin[there] + (runs_against(axis) ? -at : at) - place.origin[there];
}

Prism Junction::own(const Prism& here, const Place& place) const {
  const auto [u, v] = across_axes(here.along);
  const Length from = own_at(here.along, here.from, place);
  const Length to = own_at(here.along, here.to, place);
  Prism prism{own_axis(here.along, place), std::min(from, to), std::max(from, to), {}};
  const bool in_order = own_axis(u, place) < own_axis(v, place);
  for (const Corner& corner : here.outline) {
    const Corner there{own_at(u, corner.u, place), own_at(v, corner.v, place)};
    prism.outline.push_back(in_order ? there : Corner{there.v, there.u});
  }
  return prism;
}

}  // namespace haunch
