#include "haunch/wood.h"

#include <algorithm>

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

Box placed(const Box& box, const Place& place) {
  Box result;
  for (std::size_t own = 0; own < 3; ++own) {
    const auto axis = static_cast<std::size_t>(place.axes[own]);
    result.low[axis] = place.origin[axis] + box.low[own];
    result.high[axis] = place.origin[axis] + box.high[own];
  }
  return result;
}

Prism placed(const Prism& prism, const Place& place) {
  const auto axis = [&](std::size_t own) { return static_cast<std::size_t>(place.axes[own]); };
  const std::size_t along = axis(prism.along);
  const std::size_t u = axis(prism.along == 0 ? 1 : 0);
  const std::size_t v = axis(prism.along == 2 ? 1 : 2);
  Prism result{along, place.origin[along] + prism.from, place.origin[along] + prism.to, {}};
  for (const Corner& corner : prism.outline) {
    const Corner there{place.origin[u] + corner.u, place.origin[v] + corner.v};
    result.outline.push_back(u < v ? there : Corner{there.v, there.u});
  }
  return result;
}

Box in_own_axes(const Box& box, const Place& place) {
  Box result;
  for (std::size_t own = 0; own < 3; ++own) {
    const auto axis = static_cast<std::size_t>(place.axes[own]);
    result.low[own] = box.low[axis] - place.origin[axis];
    result.high[own] = box.high[axis] - place.origin[axis];
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

Box placed_blanks(const Assembly& assembly, std::size_t first, std::size_t count) {
  Box all = placed_blank(assembly.pieces[first]);
  for (std::size_t number = first + 1; number < first + count; ++number)
    all = around(all, placed_blank(assembly.pieces[number]));
  return all;
}

std::size_t outermost(const Assembly& assembly, std::size_t first, std::size_t count,
                      bool at_right) {
  const auto out = [&](const Piece& piece) {
    const Box blank = placed_blank(piece);
    return at_right ? blank.high[0] : -blank.low[0];
  };
  const auto begin = assembly.pieces.begin() + static_cast<std::ptrdiff_t>(first);
  const auto farthest =
      std::max_element(begin, begin + static_cast<std::ptrdiff_t>(count),
                       [&](const Piece& a, const Piece& b) { return out(a) < out(b); });
  return static_cast<std::size_t>(farthest - assembly.pieces.begin());
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

std::optional<Length> size_of(const Feature& feature, SizeName name) {
  for (const NamedSize& size : feature.sizes)
    if (size.name == name) return size.size;
  return {};
}

}  // namespace haunch
