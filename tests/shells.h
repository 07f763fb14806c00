// What any closed shell of flat faces holds to.
#pragma once

#include <cmath>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "shell.h"
#include "spots.h"

namespace haunch::test {

/// Corners less edges plus faces less holes: by Euler's rule 2 for each body, less 2 for each hole
/// that goes right through.
inline long euler(const Shell& shell) {
  std::size_t holes = 0;
  for (const ShellFace& face : shell.faces)
    holes += face.holes.size();
  return static_cast<long>(shell.corners.size()) - static_cast<long>(shell.edges.size()) +
         static_cast<long>(shell.faces.size()) - static_cast<long>(holes);
}

/// What is wrong with a shell, in lines: loops that do not close, edges that are not used once each
/// way, corners out of their face's plane, two faces of an edge in one plane.
inline std::string faults_of(const Shell& shell) {
  std::string faults;
  std::vector<std::pair<int, int>> uses(shell.edges.size());
  std::vector<std::vector<const HalfSpace*>> sides(shell.edges.size());
  const auto walk = [&](const ShellFace& face, const ShellLoop& loop) {
    if (loop.size() < 3) faults += "a loop of less than three edges\n";
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const ShellEdge& edge = shell.edges[loop[i].edge];
      const std::size_t end = loop[i].forwards ? edge.to : edge.from;
      if (end != start_of(shell, loop[(i + 1) % loop.size()])) faults += "a loop does not close\n";
      ++(loop[i].forwards ? uses[loop[i].edge].first : uses[loop[i].edge].second);
      sides[loop[i].edge].push_back(&face.side);
      if (std::abs(dot(face.side.normal, shell.corners[end]) - face.side.offset) > 1)
        faults += "a corner is off its face's plane\n";
    }
  };
  for (const ShellFace& face : shell.faces) {
    walk(face, face.outer);
    for (const ShellLoop& hole : face.holes)
      walk(face, hole);
  }
  for (std::size_t edge = 0; edge < uses.size(); ++edge) {
    if (uses[edge] != std::pair(1, 1)) {
      faults += "an edge is not used once each way\n";
      continue;
    }
    // Corners on a grid of 0.001 mm may bend a line by as little as 0.00000001.
    const Spot& one = sides[edge][0]->normal;
    const Spot& other = sides[edge][1]->normal;
    if (size_of(cross(one, other)) < 1e-8 && dot(one, other) > 0)
      faults += "two faces that meet lie in one plane\n";
  }
  return faults;
}

}  // namespace haunch::test
