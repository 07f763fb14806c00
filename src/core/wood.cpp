#include "haunch/wood.h"

#include <algorithm>
#include <tuple>

namespace haunch {

bool interiors_meet(const Box& a, const Box& b) {
  for (std::size_t axis = 0; axis < 3; ++axis)
    if (a.high[axis] <= b.low[axis] || b.high[axis] <= a.low[axis]) return false;
  return true;
}

bool is_at_long_edge(const Assembly& assembly, const Joint& joint) {
  return joint.heading.axis == assembly.pieces[joint.enters].place.axes[1];
}

Length sight_edge(const Assembly& assembly, const Joint& joint) {
  const auto axis = static_cast<std::size_t>(joint.heading.axis);
  const Box blank = placed_blank(assembly.pieces[joint.receives]);
  return joint.heading.upwards ? blank.low[axis] : blank.high[axis];
}

const Box* cut_for(const Assembly& assembly, std::size_t joint) {
  for (const Feature& feature : assembly.pieces[assembly.joints[joint].receives].features) {
    const auto& served = feature.joints;
    if (std::find(served.begin(), served.end(), joint) != served.end() && !feature.cuts.empty())
      return &feature.cuts.front();
  }
  return nullptr;
}

std::string joint_id(std::size_t joint) {
  return "J" + std::to_string(joint + 1);
}

std::string group_name(const Group& group) {
  std::string name = group.path;
  std::replace(name.begin(), name.end(), '-', ' ');
  return name;
}

std::vector<const Fit*> fits_that_stand(const Assembly& assembly, StandsIn stands) {
  std::vector<const Fit*> found;
  for (const Fit& fit : assembly.fits)
    if (fit.stands == stands) found.push_back(&fit);
  return found;
}

const Fit* fit_in_opening(const Assembly& assembly) {
  for (const Fit& fit : assembly.fits)
    if (fit.stands == StandsIn::wall || fit.stands == StandsIn::opening) return &fit;
  return nullptr;
}

Neighbours neighbours_of(const Assembly& assembly, const Fit& beside) {
  const auto left = [&](std::size_t group) { return assembly.groups[group].at.origin[0]; };
  if (left(beside.group) < left(beside.other)) return {beside.group, beside.other};
  return {beside.other, beside.group};
}

const Fit* hanging_of(const Assembly& assembly, std::size_t piece) {
  for (const Fit& fit : assembly.fits)
    if (fit.stands == StandsIn::group && fit.group == assembly.pieces[piece].group) return &fit;
  return nullptr;
}

std::vector<std::size_t> pieces_of(const Assembly& assembly, std::size_t group) {
  std::vector<std::size_t> pieces;
  for (std::size_t number = 0; number < assembly.pieces.size(); ++number)
    if (assembly.pieces[number].group == group) pieces.push_back(number);
  return pieces;
}

namespace {

/// A place on one of the axes of what lies at `place`, told on the assembly's.
Length out(Length at, std::size_t own, const Place& place) {
  const Length origin = place.origin[static_cast<std::size_t>(place.axes[own])];
  return place.backwards[own] ? origin - at : origin + at;
}

Length back_in(Length at, std::size_t own, const Place& place) {
  const Length origin = place.origin[static_cast<std::size_t>(place.axes[own])];
  return place.backwards[own] ? origin - at : at - origin;
}

}  // namespace

Box placed(const Box& box, const Place& place) {
  Box result;
  for (std::size_t own = 0; own < 3; ++own) {
    const auto axis = static_cast<std::size_t>(place.axes[own]);
    std::tie(result.low[axis], result.high[axis]) =
        std::minmax({out(box.low[own], own, place), out(box.high[own], own, place)});
  }
  return result;
}

Prism placed(const Prism& prism, const Place& place) {
  const auto [own_u, own_v] = across_axes(prism.along);
  Prism result;
  result.along = static_cast<std::size_t>(place.axes[prism.along]);
  std::tie(result.from, result.to) =
      std::minmax({out(prism.from, prism.along, place), out(prism.to, prism.along, place)});
  const bool in_order = place.axes[own_u] < place.axes[own_v];
  for (const Corner& corner : prism.outline) {
    const Corner there{out(corner.u, own_u, place), out(corner.v, own_v, place)};
    result.outline.push_back(in_order ? there : Corner{there.v, there.u});
  }
  return result;
}

Place placed(const Place& inner, const Place& outer) {
  Place result;
  for (std::size_t own = 0; own < 3; ++own) {
    const auto its = static_cast<std::size_t>(inner.axes[own]);
    result.axes[own] = outer.axes[its];
    result.backwards[own] = inner.backwards[own] != outer.backwards[its];
    result.origin[static_cast<std::size_t>(outer.axes[own])] = out(inner.origin[own], own, outer);
  }
  return result;
}

Box in_own_axes(const Box& box, const Place& place) {
  Box result;
  for (std::size_t own = 0; own < 3; ++own) {
    const auto axis = static_cast<std::size_t>(place.axes[own]);
    std::tie(result.low[own], result.high[own]) =
        std::minmax({back_in(box.low[axis], own, place), back_in(box.high[axis], own, place)});
  }
  return result;
}

Box placed_blank(const Piece& piece) {
  return placed(Box{{}, piece.blank}, piece.place);
}

Box around(const Box& a, const Box& b) {
  Box both;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    both.low[axis] = std::min(a.low[axis], b.low[axis]);
    both.high[axis] = std::max(a.high[axis], b.high[axis]);
  }
  return both;
}

Box placed_blanks(const Assembly& assembly, std::size_t group) {
  std::optional<Box> all;
  for (const Piece& piece : assembly.pieces)
    if (piece.group == group) all = all ? around(*all, placed_blank(piece)) : placed_blank(piece);
  return all.value_or(Box());
}

Taper taper_along(const std::array<Length, 3>& side, bool follow) {
  if (!follow) return {};
  const auto in = [](Length beyond) { return std::max(Length(), -beyond); };
  Taper taper{in(side[0]), in(side[2])};
  const Length lacks = in(side[1]) * 2 - taper.first - taper.last;
  if (lacks <= Length()) return taper;
  // The end where the opening is narrower takes it, so that the other still comes to the edge.
  if (side[0] == side[2])
    return {taper.first + lacks - floor_half(lacks), taper.last + floor_half(lacks)};
  (side[0] < side[2] ? taper.first : taper.last) += lacks;
  return taper;
}

std::array<Length, 3> gaps_along(const std::array<Length, 3>& side, Length room, bool follow) {
  const Taper taper = taper_along(side, follow);
  return {room + side[0] + taper.first, room + side[1] + floor_half(taper.first + taper.last),
          room + side[2] + taper.last};
}

std::size_t outermost(const Assembly& assembly, std::size_t group, bool at_right) {
  const auto out_at = [&](std::size_t number) {
    const Box blank = placed_blank(assembly.pieces[number]);
    return at_right ? blank.high[0] : -blank.low[0];
  };
  const std::vector<std::size_t> pieces = pieces_of(assembly, group);
  return *std::max_element(pieces.begin(), pieces.end(),
                           [&](std::size_t a, std::size_t b) { return out_at(a) < out_at(b); });
}

std::size_t sloping_effort(const Assembly& assembly) {
  std::size_t effort = 0;
  for (const Piece& piece : assembly.pieces) {
    std::size_t sides = 0;
    for (const Feature& feature : piece.features)
      for (const Prism& prism : feature.prisms)
        sides += prism.outline.size();
    effort += sides * sides;
  }
  return effort;
}

std::optional<Length> size_of(std::span<const NamedSize> sizes, SizeName name) {
  for (const NamedSize& size : sizes)
    if (size.name == name) return size.size;
  return {};
}

}  // namespace haunch
