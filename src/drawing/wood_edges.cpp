#include "wood_edges.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "skin.h"
#include "spots.h"

namespace haunch {
namespace {

constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();

/// Finds the edges of a shell that lie within a curve. A curve is told by flat faces, one beside
/// the other, each turned on by about as much as the last: three such edges make one.
///
/// A hole's facets are turned by up to 45°, those of what stands proud by less; so that chamfers
/// stay edges.
class CurveFinder {
 public:
  explicit CurveFinder(const Shell& shell)
      : shell_(shell), bends_(shell.edges.size()), slight_(shell.faces.size()) {
    for (std::size_t face = 0; face < shell.faces.size(); ++face) {
      note_uses(face, shell.faces[face].outer);
      for (const ShellLoop& hole : shell.faces[face].holes)
        note_uses(face, hole);
    }
    for (Bend& bend : bends_)
      measure(bend);
    for (std::size_t edge = 0; edge < bends_.size(); ++edge)
      if (may_be_smooth(bends_[edge]))
        for (const std::size_t face : bends_[edge].faces)
          slight_[face].push_back(edge);
  }

  const std::array<std::size_t, 2>& faces_at(std::size_t edge) const { return bends_[edge].faces; }

  bool is_hollow(std::size_t edge) const { return bends_[edge].turn < 0; }
  bool is_smooth(std::size_t edge) const {
    const Bend& bend = bends_[edge];
    if (!may_be_smooth(bend)) return false;
    return 1 + goes_on(edge, bend.faces[0], 2) + goes_on(edge, bend.faces[1], 2) >= 3;
  }

 private:
  /// How the two faces of an edge are turned to each other.
  struct Bend {
    std::array<std::size_t, 2> faces{kNone, kNone};
    Spot along{};
    double turn = 0;  // less than 0 where it is hollow
  };

  void note_uses(std::size_t face, const ShellLoop& loop) {
    for (const EdgeUse& use : loop)
      bends_[use.edge].faces[use.forwards ? 0 : 1] = face;
  }

  void measure(Bend& bend) {
    const auto edge = static_cast<std::size_t>(&bend - bends_.data());
    const ShellEdge& ends = shell_.edges[edge];
    bend.along = minus(shell_.corners[ends.to], shell_.corners[ends.from]);
    const double length = size_of(bend.along);
    for (double& part : bend.along)
      part /= length;
    const Spot& one = shell_.faces[bend.faces[0]].side.normal;
    const Spot& other = shell_.faces[bend.faces[1]].side.normal;
    // The face that runs along the edge forwards lies at its left, seen from outside.
    bend.turn = std::atan2(dot(cross(one, other), bend.along), dot(one, other));
  }

  static bool may_be_smooth(const Bend& bend) {
    constexpr double kDegree = std::numbers::pi / 180;
    return bend.turn > -46 * kDegree && bend.turn < 32 * kDegree;
  }

  /// How many more edges of the same curve follow beyond a face, as far as asked.
  int goes_on(std::size_t from, std::size_t face, int most) const {
    if (most == 0) return 0;
    int longest = 0;
    for (const std::size_t next : slight_[face]) {
      if (next == from || !are_alike(bends_[from], bends_[next])) continue;
      const auto& faces = bends_[next].faces;
      longest =
          std::max(longest, 1 + goes_on(next, faces[0] == face ? faces[1] : faces[0], most - 1));
    }
    return longest;
  }

  static bool are_alike(const Bend& a, const Bend& b) {
    const double ratio = a.turn / b.turn;
    return ratio > 0.35 && ratio < 2.9 && size_of(cross(a.along, b.along)) < 1e-4 &&
           a.faces != b.faces;
  }

  const Shell& shell_;
  std::vector<Bend> bends_;
  std::vector<std::vector<std::size_t>> slight_;  // of each face its edges that may be smooth
};

/// Finds the edges of what is made of layers because it slopes along a curve: of a flight of low
/// steps across the thickness, which is drawn as the slope that it is.
class StepFinder {
 public:
  StepFinder(const Shell& shell, const CurveFinder& curves) : shell_(shell), curves_(curves) {
    for (const ShellFace& face : shell.faces)
      is_riser_.push_back(std::abs(face.side.normal[kThrough]) < kFlat && height_of(face) <= kStep);
    up_.resize(shell.faces.size());
    down_.resize(shell.faces.size());
    for (std::size_t edge = 0; edge < shell.edges.size(); ++edge)
      if (const auto step = step_at(edge)) (step->rises ? up_ : down_)[step->tread] = true;
  }

  bool is_within(std::size_t edge) const {
    const auto step = step_at(edge);
    return step && up_[step->tread] && down_[step->tread];
  }

 private:
  static constexpr std::size_t kThrough = 2;
  static constexpr double kFlat = 1e-9;
  static constexpr double kStep = 0.501 * Length::kStepsPerMm;

  struct Step {
    std::size_t tread;
    bool rises;
  };

  double height_of(const ShellFace& face) const {
    double low = std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::lowest();
    for (const EdgeUse& use : face.outer) {
      const ShellEdge& edge = shell_.edges[use.edge];
      for (const std::size_t corner : {edge.from, edge.to}) {
        low = std::min(low, shell_.corners[corner][kThrough]);
        high = std::max(high, shell_.corners[corner][kThrough]);
      }
    }
    return high - low;
  }

  /// An edge between a low riser and the tread above or below it.
  std::optional<Step> step_at(std::size_t edge) const {
    const auto& faces = curves_.faces_at(edge);
    for (const bool second : {false, true}) {
      const std::size_t riser = faces[second ? 1 : 0];
      const std::size_t tread = faces[second ? 0 : 1];
      if (is_riser_[riser] && std::abs(shell_.faces[tread].side.normal[kThrough]) > 1 - kFlat)
        return Step{tread, curves_.is_hollow(edge)};
    }
    return {};
  }

  const Shell& shell_;
  const CurveFinder& curves_;
  std::vector<bool> is_riser_;   // of each face
  std::vector<bool> up_, down_;  // of each face, whether a low riser goes on from it so
};

std::vector<DrawnEdge> edges_of(const Shell& shell) {
  const CurveFinder curves(shell);
  const StepFinder steps(shell, curves);
  std::vector<DrawnEdge> edges;
  for (std::size_t edge = 0; edge < shell.edges.size(); ++edge) {
    if (steps.is_within(edge)) continue;
    const auto [one, other] = curves.faces_at(edge);
    edges.push_back({shell.corners[shell.edges[edge].from], shell.corners[shell.edges[edge].to],
                     shell.faces[one].side, shell.faces[other].side, LineOf::seen,
                     curves.is_smooth(edge)});
  }
  return edges;
}

void add_edges(std::vector<DrawnEdge>& edges, const Polyhedron& block) {
  for (const Facet& facet : block.facets) {
    const auto corners = block.corners_of(facet);
    for (std::size_t i = 0; i < corners.size(); ++i)
      edges.push_back(
          {corners[i], corners[(i + 1) % corners.size()], facet.side, facet.side, LineOf::seen});
  }
}

}  // namespace

std::vector<DrawnEdge> edges_of(const Wood& wood, const std::optional<Shell>& shell) {
  if (shell) return edges_of(*shell);
  std::vector<DrawnEdge> edges;
  for (const Box& box : wood.boxes)
    add_edges(edges, polyhedron_of(box));
  for (const Polyhedron& block : wood.sloping)
    add_edges(edges, block);
  return edges;
}

bool looks(const HalfSpace& side, Way way, Length at) {
  const double sign = way.upwards ? 1 : -1;
  return side.normal[way.axis] * sign > 1 - 1e-12 &&
         std::abs(side.offset * sign - static_cast<double>(at.steps())) < kOneCorner;
}

}  // namespace haunch
