#include "arch_outline.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "own_axes.h"
#include "rounding.h"

namespace haunch {
namespace {

/// How far beyond a sight edge, and at most `past`, a curve stands above its rail's lower edge.
Length reach_over_foot(const Arch& arch, Length outward, Length past, bool right) {
  const Length crown = arch.springing + arch.rise;
  const auto steps = [](Length length) { return static_cast<double>(length.steps()); };
  const double radius = arch.radius() + steps(outward);
  const double down = steps(arch.foot() - crown) + arch.radius();  // the foot over the middle
  const double out = std::sqrt(std::max(radius * radius - down * down, 0.0));
  const Length to_end = right ? arch.end(true) - arch.middle() : arch.middle() - arch.end(false);
  const Length beyond = Length::from_steps(static_cast<std::int64_t>(out)) - to_end;
  return std::clamp(beyond, Length(), past);
}

/// Both ends of a curve beyond the sight edges.
struct Reach {
  Length left, right;
};

Reach reach_of(const Arch& arch, Length outward, const Reach& most) {
  return {reach_over_foot(arch, outward, most.left, false),
          reach_over_foot(arch, outward, most.right, true)};
}

}  // namespace

std::vector<Corner> line_to_ends(const Arch& arch, Length outward, Length from, Length to,
                                 Heights heights) {
  return arch_line(arch, outward, from, to, heights,
                   {arch.angle_at(outward, from), arch.angle_at(outward, to)});
}

std::vector<Corner> ring(const Arch& arch, const Curves& curves, Length past) {
  const Length left = arch.left;
  const Length right = arch.end(true);
  const Reach out = reach_of(arch, curves.outer, {past, past});
  std::vector<Corner> outline =
      line_to_ends(arch, curves.outer, left - out.left, right + out.right, Heights::up);
  const auto add = [&](const Corner& corner) {
    const Corner& last = outline.back();
    if (last.u != corner.u || last.v != corner.v) outline.push_back(corner);
  };
  const bool at_edge = curves.inner == Length();
  const Reach in = at_edge ? Reach{} : reach_of(arch, curves.inner, out);
  if (out.right > in.right) {
    add({right + out.right, arch.foot()});
    add({right + in.right, arch.foot()});
  }
  const auto under = line_to_ends(arch, curves.inner, left - in.left, right + in.right,
                                  at_edge ? Heights::up : Heights::down);
  std::for_each(under.rbegin(), under.rend(), add);
  if (out.left > in.left) {
    add({left - in.left, arch.foot()});
    add({left - out.left, arch.foot()});
  }
  return outline;
}

std::vector<std::vector<Corner>> above(const std::vector<Corner>& line, Length top) {
  const auto crown = std::max_element(line.begin(), line.end(),
                                      [](const Corner& a, const Corner& b) { return a.v < b.v; });
  std::vector<Corner> left(line.begin(), crown + 1);
  std::vector<Corner> right(crown, line.end());
  if (crown->v < top) left.push_back({crown->u, top});
  left.push_back({line.front().u, top});
  right.push_back({line.back().u, top});
  if (crown->v < top) right.push_back({crown->u, top});
  std::vector<std::vector<Corner>> parts;
  if (crown != line.begin()) parts.push_back(std::move(left));
  if (crown + 1 != line.end()) parts.push_back(std::move(right));
  return parts;
}

Prism across_thickness(std::vector<Corner> outline, const Piece& piece, Length from, Length to) {
  for (Corner& corner : outline)
    corner = in_own_axes(corner, piece.place);
  return {2, from, to, std::move(outline)};
}

}  // namespace haunch
