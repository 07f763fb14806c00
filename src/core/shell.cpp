#include "shell.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>

#include "skin.h"
#include "spots.h"

namespace haunch {
namespace {

constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();

Spot scaled(const Spot& spot, double by) {
  return {spot[0] * by, spot[1] * by, spot[2] * by};
}

/// How far one direction is turned from another about a third, from 0 to a full turn.
double turned(const Spot& from, const Spot& to, const Spot& about) {
  const double angle = std::atan2(dot(cross(from, to), about), dot(from, to));
  return angle < 0 ? angle + 2 * std::acos(-1.0) : angle;
}

/// The edges of a skin with what follows each round its face, and which other runs along it.
class Weave {
 public:
  explicit Weave(const Skin& skin)
      : skin_(skin), next_(skin.edges.size(), kNone), mate_(skin.edges.size(), kNone) {}

  /// False where something is left over.
  bool tie() { return tie_mates() && tie_next(); }

  std::size_t size() const { return next_.size(); }
  std::size_t next(std::size_t edge) const { return next_[edge]; }
  std::size_t mate(std::size_t edge) const { return mate_[edge]; }
  const SkinEdge& edge(std::size_t edge) const { return skin_.edges[edge]; }
  const Spot& start(std::size_t edge) const { return skin_.corners[skin_.edges[edge].from]; }
  Spot way(std::size_t edge) const {
    return minus(skin_.corners[skin_.edges[edge].to], start(edge));
  }
  HalfSpace looks(std::size_t edge) const {
    const HalfSpace& plane = skin_.planes[skin_.edges[edge].plane];
    const double sign = skin_.edges[edge].along_normal ? 1 : -1;
    return {scaled(plane.normal, sign), plane.offset * sign};
  }

 private:
  bool tie_mates() {
    std::map<std::pair<std::size_t, std::size_t>, std::vector<std::size_t>> meet;
    for (std::size_t i = 0; i < size(); ++i)
      meet[std::minmax(edge(i).from, edge(i).to)].push_back(i);
    return std::all_of(meet.begin(), meet.end(), [&](auto& it) { return pair_up(it.second); });
  }

  /// Round an edge wood and air take turns. The two faces that hold the same wood between them go
  /// together.
  bool pair_up(std::vector<std::size_t>& around) {
    if (around.size() % 2 != 0) return false;
    const Spot axis = way(around.front());
    const auto into_face = [&](std::size_t it) { return cross(looks(it).normal, way(it)); };
    const Spot first = into_face(around.front());
    std::vector<std::pair<double, std::size_t>> turns;
    for (const std::size_t it : around)
      turns.emplace_back(it == around.front() ? 0 : turned(first, into_face(it), axis), it);
    std::sort(turns.begin(), turns.end());
    for (std::size_t i = 0; i < turns.size(); ++i) {
      const std::size_t it = turns[i].second;
      const std::size_t beside = turns[(i + 1) % turns.size()].second;
      if ((edge(it).from == edge(beside).from)) return false;
      // One that runs against the axis has its wood where the angle grows.
      if (edge(it).from == edge(around.front()).from) continue;
      mate_[it] = beside;
      mate_[beside] = it;
    }
    return true;
  }

  using Place = std::tuple<std::size_t, bool, std::size_t>;  // plane, which way, corner

  bool tie_next() {
    std::map<Place, std::vector<std::size_t>> leave;
    for (std::size_t i = 0; i < size(); ++i)
      leave[{edge(i).plane, edge(i).along_normal, edge(i).from}].push_back(i);
    for (std::size_t i = 0; i < size(); ++i) {
      const auto found = leave.find({edge(i).plane, edge(i).along_normal, edge(i).to});
      if (found == leave.end()) return false;
      next_[i] = leftmost(i, found->second);
    }
    std::vector<bool> follows(size());
    for (const std::size_t next : next_) {
      if (follows[next]) return false;
      follows[next] = true;
    }
    return true;
  }

  /// The face lies at the left, as far as the first edge that leaves the corner there.
  std::size_t leftmost(std::size_t from, const std::vector<std::size_t>& leave) const {
    if (leave.size() == 1) return leave.front();
    const Spot back = scaled(way(from), -1);
    const Spot about = scaled(looks(from).normal, -1);
    return *std::min_element(leave.begin(), leave.end(), [&](std::size_t a, std::size_t b) {
      return turned(back, way(a), about) < turned(back, way(b), about);
    });
  }

  const Skin& skin_;
  std::vector<std::size_t> next_, mate_;
};

/// A loop of a face before it is known whose: where it lies, and what it encloses.
struct Round {
  std::size_t first = 0;  // edge of the weave
  double area = 0;        // twice; of a hole less than 0
  ShellLoop loop;
};

/// Makes a shell of a weave.
class ShellMaker {
 public:
  explicit ShellMaker(const Weave& weave)
      : weave_(weave), corner_(weave.size(), kNone), use_(weave.size()) {}

  Shell make() {
    find_corners();
    find_edges();
    find_faces();
    shell_.bodies = count_bodies();
    return std::move(shell_);
  }

 private:
  /// The edges that leave one corner, round it in turn. Where only two do, and straight on, it is
  /// no corner.
  void find_corners() {
    std::vector<bool> seen(weave_.size());
    for (std::size_t i = 0; i < weave_.size(); ++i) {
      if (seen[i]) continue;
      std::vector<std::size_t> leave;
      for (std::size_t it = i; !seen[it]; it = weave_.next(weave_.mate(it))) {
        seen[it] = true;
        leave.push_back(it);
      }
      if (leave.size() == 2 && straight_on(leave[0], leave[1])) continue;
      for (const std::size_t it : leave)
        corner_[it] = shell_.corners.size();
      shell_.corners.push_back(weave_.start(i));
    }
  }

  bool straight_on(std::size_t a, std::size_t b) const {
    const Spot one = weave_.way(a);
    const Spot other = weave_.way(b);
    const double off = size_of(cross(one, other)) / std::max(size_of(one), size_of(other));
    return dot(one, other) < 0 && off < 4 * kOneCorner;
  }

  void find_edges() {
    for (std::size_t i = 0; i < weave_.size(); ++i) {
      if (corner_[i] == kNone) continue;
      std::size_t last = i;
      while (corner_[weave_.next(last)] == kNone)
        last = weave_.next(last);
      const std::size_t back = weave_.mate(last);
      if (back < i) {
        use_[i] = {use_[back].edge, false};
        continue;
      }
      use_[i] = {shell_.edges.size(), true};
      shell_.edges.push_back({corner_[i], corner_[weave_.next(last)]});
    }
  }

  Round round_from(std::size_t first) const {
    Round round{first, 0, {}};
    const HalfSpace side = weave_.looks(first);
    std::size_t it = first;
    do {
      if (corner_[it] != kNone) round.loop.push_back(use_[it]);
      const Spot arm = minus(weave_.start(it), weave_.start(first));
      round.area += dot(cross(arm, weave_.way(it)), side.normal);
      it = weave_.next(it);
    } while (it != first);
    return round;
  }

  void find_faces() {
    std::vector<bool> seen(weave_.size());
    std::map<std::pair<std::size_t, bool>, std::vector<Round>> in_plane;
    for (std::size_t i = 0; i < weave_.size(); ++i) {
      if (seen[i]) continue;
      for (std::size_t it = i; !seen[it]; it = weave_.next(it))
        seen[it] = true;
      in_plane[{weave_.edge(i).plane, weave_.edge(i).along_normal}].push_back(round_from(i));
    }
    for (auto& [plane, rounds] : in_plane)
      add_faces(rounds);
  }

  void add_faces(std::vector<Round>& rounds) {
    std::stable_sort(rounds.begin(), rounds.end(),
                     [](const Round& a, const Round& b) { return a.area > b.area; });
    const std::size_t first = shell_.faces.size();
    std::vector<std::size_t> starts;
    for (Round& round : rounds) {
      if (round.area > 0) {
        shell_.faces.push_back({weave_.looks(round.first), std::move(round.loop), {}});
        starts.push_back(round.first);
        continue;
      }
      // The smallest that it lies in.
      std::size_t face = starts.size();
      while (face > 1 && !lies_in(round.first, starts[face - 1]))
        --face;
      shell_.faces[first + face - 1].holes.push_back(std::move(round.loop));
    }
  }

  /// Whether a loop lies in another of its plane, by the middle of its first edge.
  bool lies_in(std::size_t inner, std::size_t outer) const {
    const Spot normal = weave_.looks(outer).normal;
    const auto steepest = std::max_element(
        normal.begin(), normal.end(), [](double a, double b) { return std::abs(a) < std::abs(b); });
    const auto [u, v] = across_axes(static_cast<std::size_t>(steepest - normal.begin()));
    const Spot way = weave_.way(inner);
    const double at_u = weave_.start(inner)[u] + way[u] / 2;
    const double at_v = weave_.start(inner)[v] + way[v] / 2;
    bool inside = false;
    std::size_t it = outer;
    do {
      const Spot& a = weave_.start(it);
      const Spot& b = weave_.start(weave_.next(it));
      if ((a[v] > at_v) != (b[v] > at_v) &&
          at_u < a[u] + (at_v - a[v]) / (b[v] - a[v]) * (b[u] - a[u]))
        inside = !inside;
      it = weave_.next(it);
    } while (it != outer);
    return inside;
  }

  /// Faces that meet in an edge hang together, and so do the loops of one face.
  std::size_t count_bodies() const {
    std::vector<std::size_t> part(shell_.edges.size());
    std::iota(part.begin(), part.end(), std::size_t{0});
    const auto root = [&](std::size_t it) {
      while (part[it] != it)
        it = part[it] = part[part[it]];
      return it;
    };
    for (const ShellFace& face : shell_.faces) {
      const std::size_t first = root(face.outer.front().edge);
      for (const EdgeUse& use : face.outer)
        part[root(use.edge)] = first;
      for (const ShellLoop& hole : face.holes)
        for (const EdgeUse& use : hole)
          part[root(use.edge)] = root(first);
    }
    std::size_t bodies = 0;
    for (std::size_t edge = 0; edge < part.size(); ++edge)
      if (part[edge] == edge) ++bodies;
    return bodies;
  }

  const Weave& weave_;
  std::vector<std::size_t> corner_;  // that each edge of the weave starts from, of the shell
  std::vector<EdgeUse> use_;         // that each edge of the weave from a corner is the start of
  Shell shell_;
};

/// Six times the volume between the origin and a loop of flat faces' edges.
double loop_moment(const Shell& shell, const ShellLoop& loop, const Spot& origin) {
  double sum = 0;
  const Spot first = minus(shell.corners[start_of(shell, loop.front())], origin);
  for (std::size_t i = 1; i + 1 < loop.size(); ++i) {
    const Spot one = minus(shell.corners[start_of(shell, loop[i])], origin);
    const Spot other = minus(shell.corners[start_of(shell, loop[i + 1])], origin);
    sum += dot(first, cross(one, other));
  }
  return sum;
}

}  // namespace

std::optional<Shell> shell_of(const Wood& wood) {
  if (wood.empty()) return {};
  const auto skin = skin_of(wood);
  if (!skin || skin->edges.empty()) return {};
  Weave weave(*skin);
  if (!weave.tie()) return {};
  return ShellMaker(weave).make();
}

double volume_of(const Shell& shell) {
  double sum = 0;
  for (const ShellFace& face : shell.faces) {
    sum += loop_moment(shell, face.outer, shell.corners.front());
    for (const ShellLoop& hole : face.holes)
      sum += loop_moment(shell, hole, shell.corners.front());
  }
  const auto steps = static_cast<double>(Length::kStepsPerMm);
  return sum / 6 / steps / steps / steps;
}

}  // namespace haunch
