// Views and sections of random work against the independent opinion on its wood: what is nearest on
// each line of sight, and what a plane meets. HAUNCH_TEST_SEED=n runs the spec with that seed
// again.
#include <cstdint>
#include <map>
#include <set>

#include "../setups/examples.h"
#include "../wood/frame_draw.h"
#include "../wood/property_runs.h"
#include "../wood/random_cabinet.h"
#include "../wood/random_spec.h"
#include "../wood/sloping_wood.h"
#include "../wood/wood_oracle.h"
#include "joint_views.h"
#include "views.h"

namespace haunch::test {
namespace {

using Steps = std::int64_t;

Steps steps_of(double millimetres) {
  return std::llround(millimetres * Length::kStepsPerMm);
}

/// A piece whose axes all run forwards, with the same wood: the second opinion knows no other.
Piece forwards(Piece piece) {
  for (std::size_t own = 0; own < 3; ++own) {
    if (!piece.place.backwards[own]) continue;
    Length& origin = piece.place.origin[static_cast<std::size_t>(piece.place.axes[own])];
    origin = origin - piece.blank[own];
    piece.place.backwards[own] = false;
    const auto turned = [&](Length at) { return piece.blank[own] - at; };
    for (Feature& feature : piece.features) {
      for (Box& cut : feature.cuts) {
        const Length low = turned(cut.high[own]);
        cut.high[own] = turned(cut.low[own]);
        cut.low[own] = low;
      }
      for (Prism& prism : feature.prisms) {
        const Length from = turned(prism.to);
        if (prism.along == own) prism.to = turned(prism.from);
        if (prism.along == own) prism.from = from;
        for (Corner& corner : prism.outline) {
          if (across_axes(prism.along).u == own) corner.u = turned(corner.u);
          if (across_axes(prism.along).v == own) corner.v = turned(corner.v);
        }
      }
    }
  }
  return piece;
}

/// Its pieces that are square all over.
Assembly square_pieces(const Assembly& all) {
  Assembly square;
  for (const Piece& piece : all.pieces)
    if (!has_slopes(piece)) square.pieces.push_back(forwards(piece));
  return square;
}

/// A look along an axis, in steps: which axes run to the right and up, and whether backwards.
struct Straight {
  ViewedFrom from;
  std::size_t right, up, near;
  bool right_back, towards_high;  // towards_high: what has higher figures is nearer
};

constexpr Straight kLooks[] = {{ViewedFrom::front, 0, 1, 2, false, false},
                               {ViewedFrom::back, 0, 1, 2, true, true},
                               {ViewedFrom::left, 2, 1, 0, true, false},
                               {ViewedFrom::right, 2, 1, 0, false, true},
                               {ViewedFrom::above, 0, 2, 1, false, true}};

/// What is nearest to the viewer: the piece, from 1 on, and how near.
struct Nearest {
  std::size_t piece = 0;
  Steps near = 0;

  friend bool operator==(const Nearest&, const Nearest&) = default;
};

/// The view divided into cells by all faces of all blocks, each with what is nearest there.
class SightGrid {
 public:
  SightGrid(const std::vector<Wood>& woods, const Straight& look) {
    for (const Wood& wood : woods)
      for (const Block& block : wood.blocks) {
        const Rectangle seen = seen_of(block, look);
        us_.insert({seen.low_u, seen.high_u});
        vs_.insert({seen.low_v, seen.high_v});
      }
    u_.assign(us_.begin(), us_.end());
    v_.assign(vs_.begin(), vs_.end());
    cells_.resize(u_.size() * v_.size());
    for (std::size_t piece = 0; piece < woods.size(); ++piece)
      for (const Block& block : woods[piece].blocks)
        put(seen_of(block, look), piece + 1);
  }

  /// Every border between two cells where what is nearest differs, as keys of place and stretch.
  template <typename Look>
  void borders(const Look& look) const {
    for (std::size_t i = 0; i < u_.size(); ++i)
      for (std::size_t j = 0; j + 1 < v_.size(); ++j)
        look(true, u_[i], v_[j], v_[j + 1], at(i, j), i == 0 ? Nearest() : at(i - 1, j));
    for (std::size_t j = 0; j < v_.size(); ++j)
      for (std::size_t i = 0; i + 1 < u_.size(); ++i)
        look(false, v_[j], u_[i], u_[i + 1], at(i, j), j == 0 ? Nearest() : at(i, j - 1));
  }

 private:
  struct Rectangle {
    Steps low_u, high_u, low_v, high_v, near;
  };

  static Rectangle seen_of(const Block& block, const Straight& look) {
    Rectangle seen{block.low[look.right], block.high[look.right], block.low[look.up],
                   block.high[look.up],
                   look.towards_high ? block.high[look.near] : -block.low[look.near]};
    if (look.right_back) seen = {-seen.high_u, -seen.low_u, seen.low_v, seen.high_v, seen.near};
    return seen;
  }

  void put(const Rectangle& seen, std::size_t piece) {
    const auto place = [](const std::vector<Steps>& all, Steps it) {
      return static_cast<std::size_t>(std::lower_bound(all.begin(), all.end(), it) - all.begin());
    };
    for (std::size_t i = place(u_, seen.low_u); i < place(u_, seen.high_u); ++i)
      for (std::size_t j = place(v_, seen.low_v); j < place(v_, seen.high_v); ++j) {
        Nearest& cell = cells_[i * v_.size() + j];
        if (cell.piece == 0 || seen.near > cell.near) cell = {piece, seen.near};
      }
  }

  const Nearest& at(std::size_t i, std::size_t j) const { return cells_[i * v_.size() + j]; }

  std::set<Steps> us_, vs_;
  std::vector<Steps> u_, v_;
  std::vector<Nearest> cells_;
};

/// The seen lines of a view that run upright or level: by their place, from where to where.
class SeenLines {
 public:
  explicit SeenLines(const LineView& view) {
    for (const ViewLine& line : view.lines) {
      if (line.of != LineOf::seen) continue;
      const bool upright = std::abs(line.from.u - line.to.u) < 1e-6;
      if (!upright && std::abs(line.from.v - line.to.v) > 1e-6) ++slanted;
      const auto [low, high] =
          upright ? std::minmax(line.from.v, line.to.v) : std::minmax(line.from.u, line.to.u);
      all_[{upright, steps_of(upright ? line.from.u : line.from.v)}].push_back(
          {steps_of(low), steps_of(high)});
    }
  }

  bool holds(bool upright, Steps place, Steps along) const {
    const auto found = all_.lower_bound({upright, place - 2});
    for (auto it = found; it != all_.end() && it->first <= std::pair(upright, place + 2); ++it)
      for (const auto& [low, high] : it->second)
        if (low <= along && along <= high) return true;
    return false;
  }

  int slanted = 0;

 private:
  std::map<std::pair<bool, Steps>, std::vector<std::pair<Steps, Steps>>> all_;
};

constexpr Steps kTooNarrow = 16'000;  // 0.01 mm: what is no wider need not be drawn

/// Where a view's lines are not just the borders of what is nearest.
std::string view_faults(const Assembly& square, const Straight& look) {
  const SightGrid grid(wood_of(square), look);
  const SeenLines seen(view_of(drawn_of(square), sight_from(look.from), HiddenLines::left_out));
  std::string faults;
  if (seen.slanted > 0) faults += "slanted lines\n";
  grid.borders([&](bool upright, Steps place, Steps low, Steps high, const Nearest& one,
                   const Nearest& other) {
    if (high - low < kTooNarrow || faults.size() > 500) return;
    const bool is_line = seen.holds(upright, place, (low + high) / 2);
    if (is_line == (one != other)) return;
    faults += std::string(is_line ? "a line too many" : "no line") + " from " +
              std::to_string(static_cast<int>(look.from)) + (upright ? " at u " : " at v ") +
              std::to_string(static_cast<double>(place) / Length::kStepsPerMm) + " from " +
              std::to_string(static_cast<double>(low) / Length::kStepsPerMm) + " to " +
              std::to_string(static_cast<double>(high) / Length::kStepsPerMm) + "\n";
  });
  return faults;
}

/// A face of a block, which is met first along a line of sight.
struct Met {
  std::size_t piece = 0;  // from 1 on
  std::size_t axis = 0;   // across which it lies
  Steps at = 0;

  friend bool operator==(const Met&, const Met&) = default;
};

/// Looks along slanted lines of sight at blocks.
class SlantedLook {
 public:
  SlantedLook(const std::vector<Wood>& woods, const Sight& sight) : woods_(woods), sight_(sight) {}

  Met meet(const ViewSpot& spot) const {
    // The directions of a sight are at right angles.
    Point from{};
    for (std::size_t axis = 0; axis < 3; ++axis)
      from[axis] =
          (spot.u * sight_.right[axis] + spot.v * sight_.up[axis]) / 1.5 * Length::kStepsPerMm;
    Met met;
    double nearest = -1e300;
    for (std::size_t piece = 0; piece < woods_.size(); ++piece)
      for (const Block& block : woods_[piece].blocks)
        if (const auto [axis, near] = enter(block, from); axis < 3 && near > nearest) {
          nearest = near;
          met = {piece + 1, axis, sight_.towards[axis] > 0 ? block.high[axis] : block.low[axis]};
        }
    return met;
  }

 private:
  /// Where a line of sight comes in: through which face, and how near. Axis 3: nowhere.
  std::pair<std::size_t, double> enter(const Block& block, const Point& from) const {
    double near = 1e300;
    double far = -1e300;
    std::size_t through = 3;
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const auto low = static_cast<double>(block.low[axis]);
      const auto high = static_cast<double>(block.high[axis]);
      const double at_low = (low - from[axis]) / sight_.towards[axis];
      const double at_high = (high - from[axis]) / sight_.towards[axis];
      const auto [a, b] = std::minmax(at_low, at_high);
      if (b < near) through = axis;
      near = std::min(near, b);
      far = std::max(far, a);
    }
    return {far < near ? through : 3, near};
  }

  const std::vector<Wood>& woods_;
  const Sight& sight_;
};

bool cross_each_other(const ViewLine& line, const ViewSpot& a, const ViewSpot& b) {
  const auto side = [](const ViewSpot& from, const ViewSpot& to, const ViewSpot& spot) {
    return (to.u - from.u) * (spot.v - from.v) - (to.v - from.v) * (spot.u - from.u) > 0;
  };
  return side(line.from, line.to, a) != side(line.from, line.to, b) &&
         side(a, b, line.from) != side(a, b, line.to);
}

std::string spot_text(const ViewSpot& spot) {
  return std::to_string(spot.u) + ", " + std::to_string(spot.v);
}

/// On a slanted view: the two sides of each line are not the same face, and from one face to
/// another there is a line.
std::string slanted_faults(const Assembly& square, Dice& dice) {
  const Sight sight = slanted_sight({dice.chance(50), dice.chance(50), dice.chance(50)});
  const std::vector<Wood> woods = wood_of(square);
  const SlantedLook look(woods, sight);
  const LineView view = view_of(drawn_of(square), sight, HiddenLines::left_out);
  std::string faults;
  for (const ViewLine& line : view.lines) {
    const double length = length_of(line);
    if (length < 0.2) continue;
    const ViewSpot off{(line.from.v - line.to.v) / length * 0.002,
                       (line.to.u - line.from.u) / length * 0.002};
    const double share = 0.3819;
    const ViewSpot on{line.from.u + share * (line.to.u - line.from.u),
                      line.from.v + share * (line.to.v - line.from.v)};
    if (look.meet({on.u + off.u, on.v + off.v}) == look.meet({on.u - off.u, on.v - off.v}))
      faults += "a line too many at " + spot_text(on) + "\n";
  }
  const Extent extent = *extent_of(view);
  const auto somewhere = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(dice.between(1, 999'999)) / 1e6;
  };
  for (int i = 0; i < 200; ++i) {
    const ViewSpot a{somewhere(extent.low.u, extent.high.u),
                     somewhere(extent.low.v, extent.high.v)};
    const ViewSpot b{a.u + somewhere(-15, 15), a.v + somewhere(-15, 15)};
    if (look.meet(a) == look.meet(b)) continue;
    if (std::none_of(view.lines.begin(), view.lines.end(),
                     [&](const ViewLine& line) { return cross_each_other(line, a, b); }))
      faults += "no line between " + spot_text(a) + " and " + spot_text(b) + "\n";
  }
  return faults;
}

/// Lines of one view that lie on each other.
std::string doubled(const LineView& view) {
  std::map<std::pair<bool, Steps>, std::vector<std::pair<double, double>>> straight;
  for (const ViewLine& line : view.lines) {
    const bool upright = std::abs(line.from.u - line.to.u) < 1e-6;
    if (!upright && std::abs(line.from.v - line.to.v) > 1e-6) continue;
    const auto along =
        upright ? std::minmax(line.from.v, line.to.v) : std::minmax(line.from.u, line.to.u);
    straight[{upright, steps_of(upright ? line.from.u : line.from.v)}].push_back(
        {along.first, along.second});
  }
  std::string faults;
  for (auto& [place, stretches] : straight) {
    std::sort(stretches.begin(), stretches.end());
    for (std::size_t i = 1; i < stretches.size(); ++i)
      if (stretches[i].first < stretches[i - 1].second - 0.001) faults += "two lines in one\n";
  }
  return faults;
}

double seen_length(const std::vector<DrawnWood>& drawn, const Sight& sight) {
  double length = 0;
  for (const DrawnWood& wood : drawn)
    for (const DrawnEdge& edge : wood.edges)
      length += length_of({LineOf::seen, seen_at(sight, edge.from), seen_at(sight, edge.to), 0});
  return length;
}

/// That no line is drawn twice, and seen and hidden ones together are no longer than the edges.
std::string line_faults(const std::vector<DrawnWood>& drawn, const Sight& sight) {
  const LineView view = view_of(drawn, sight, HiddenLines::drawn);
  double length = 0;
  for (const ViewLine& line : view.lines)
    length += length_of(line);
  return doubled(view) +
         (length > seen_length(drawn, sight) + 0.01 ? "more lines than edges\n" : "");
}

/// Where the cut areas of a square assembly are not what a plane meets of its blocks.
std::string section_faults(const Assembly& square, const CutPlane& plane) {
  const auto axis = static_cast<std::size_t>(plane.across);
  const auto [u, v] = across_axes(axis);
  const std::vector<Wood> woods = wood_of(square);
  std::vector<double> wanted(woods.size());
  for (std::size_t piece = 0; piece < woods.size(); ++piece)
    for (const Block& block : woods[piece].blocks) {
      const Steps at = plane.at.steps();
      if (plane.looks_upwards ? block.low[axis] > at || block.high[axis] <= at
                              : block.low[axis] >= at || block.high[axis] < at)
        continue;
      wanted[piece] += static_cast<double>(block.high[u] - block.low[u]) / Length::kStepsPerMm *
                       static_cast<double>(block.high[v] - block.low[v]) / Length::kStepsPerMm;
    }
  for (const CutArea& area : section_of(drawn_of(square), {plane, {}}).areas)
    wanted[area.piece] -= area_of(area);
  std::string faults;
  for (std::size_t piece = 0; piece < wanted.size(); ++piece)
    if (std::abs(wanted[piece]) > 1e-3)
      faults += "piece " + std::to_string(piece) + ": " + std::to_string(wanted[piece]) +
                " mm2 of its section are missing\n";
  return faults;
}

/// Planes between pieces, through them and in their faces.
std::vector<CutPlane> some_planes(const Assembly& square, Dice& dice) {
  std::vector<CutPlane> planes;
  for (int i = 0; i < 4; ++i) {
    const auto axis = static_cast<std::size_t>(dice.between(0, 2));
    const Box blank = placed_blank(square.pieces[static_cast<std::size_t>(
        dice.between(0, static_cast<std::int64_t>(square.pieces.size()) - 1))]);
    const Length at =
        i % 2 == 0
            ? blank.low[axis]
            : Length::from_steps(dice.between(blank.low[axis].steps(), blank.high[axis].steps()));
    planes.push_back({static_cast<Axis>(axis), at, dice.chance(50)});
  }
  return planes;
}

/// Where the first line that a level or upright stroke meets on a view is not where wood begins:
/// looked for by points, a hair inside and outside of it.
std::string outline_faults(const Assembly& all, Dice& dice) {
  constexpr double kHair = 0.02 * Length::kStepsPerMm;
  const LineView view =
      view_of(drawn_of(all), sight_from(ViewedFrom::front), HiddenLines::left_out);
  const Extent extent = *extent_of(view);
  std::vector<Piece> pieces;
  for (const Piece& piece : all.pieces)
    pieces.push_back(forwards(piece));
  const auto is_wood = [&](double u, double v) {
    for (const Piece& piece : pieces) {
      const Box blank = placed_blank(piece);
      for (int i = 0; i < 64; ++i) {
        const double z = static_cast<double>(blank.low[2].steps()) +
                         (i + 0.37) / 64 * static_cast<double>(blank.extent(2).steps());
        if (holds(piece, {u, v, z})) return true;
      }
    }
    return false;
  };
  std::string faults;
  for (int stroke = 0; stroke < 12; ++stroke) {
    const double v =
        extent.low.v + extent.height() * static_cast<double>(dice.between(1, 9999)) / 10000;
    double first = extent.high.u;
    for (const ViewLine& line : view.lines)
      if ((line.from.v > v) != (line.to.v > v))
        first = std::min(first, line.from.u + (v - line.from.v) / (line.to.v - line.from.v) *
                                                  (line.to.u - line.from.u));
    const double u = first * Length::kStepsPerMm;
    if (is_wood(u - kHair, v * Length::kStepsPerMm) || !is_wood(u + kHair, v * Length::kStepsPerMm))
      faults += "at a height of " + std::to_string(v) + " wood does not begin at " +
                std::to_string(first) + "\n";
  }
  return faults;
}

/// Joints whose sections cut neither of their pieces, or which do not come apart.
std::string joint_faults(const Assembly& all) {
  const auto drawn = drawn_of(all);
  std::string faults;
  for (const JointView& view : joint_views(all)) {
    const Joint& joint = all.joints[view.joints.front()];
    std::set<std::size_t> cut;
    for (const CutAway& section : view.sections)
      for (const CutArea& area : section_of(drawn, section).areas)
        cut.insert(area.piece);
    std::vector<haunch::Wood> parts;
    for (const MovedPiece& moved : view.apart.pieces)
      if (auto part = within(drawn[moved.piece], view.apart.region)) {
        move_by(*part, moved.by);
        parts.push_back(std::move(part->wood));
      }
    if (cut.count(joint.receives) == 0 || cut.count(joint.enters) == 0 || parts.size() < 2 ||
        depth_of_common(parts[0], parts[1]) > Length())
      faults += joint_id(view.joints.front()) + " is not shown\n";
  }
  return faults;
}

std::string faults_of(const Assembly& all, std::uint64_t seed) {
  Dice dice(seed);
  std::string faults = outline_faults(all, dice) + joint_faults(all);
  faults += line_faults(drawn_of(all), sight_from(ViewedFrom::front));
  faults += line_faults(drawn_of(all), slanted_sight({}));
  const Assembly square = square_pieces(all);
  if (square.pieces.empty()) return faults;
  faults += view_faults(square, kLooks[dice.between(0, 4)]);
  faults += view_faults(square, kLooks[0]);
  faults += slanted_faults(square, dice);
  for (const CutPlane& plane : some_planes(square, dice))
    faults += section_faults(square, plane);
  return faults;
}

Outcome try_views(const std::string& json, std::uint64_t seed, std::string& wrong) {
  const Trial trial = work(json);
  if (!trial.assembly) return Outcome::refused;
  wrong += faults_of(*trial.assembly, seed);
  return Outcome::worked;
}

}  // namespace

TEST_CASE("Views and sections of every example show its wood") {
  std::uint64_t seed = 0;
  for (const Assembly& wood : all_examples())
    CHECK(faults_of(wood, ++seed).empty());
}

TEST_CASE("Views and sections of random doors show their wood") {
  require_worked_share(run_over(seeds_for(40),
                                [](std::uint64_t seed, std::string& wrong) {
                                  const DoorSpec spec = random_door(seed, Keys::some);
                                  return try_views(to_json(spec, {spec.unit, seed}), seed, wrong);
                                }),
                       40);
}

TEST_CASE("Views and sections of random sets show their wood") {
  require_worked_share(run_over(seeds_for(12),
                                [](std::uint64_t seed, std::string& wrong) {
                                  return try_views(FrameDraw(seed).set(), seed, wrong);
                                }),
                       40);
}

TEST_CASE("Views and sections of random cabinets show their wood") {
  require_worked_share(run_over(seeds_for(16),
                                [](std::uint64_t seed, std::string& wrong) {
                                  return try_views(random_cabinet(seed).json, seed, wrong);
                                }),
                       40);
}

}  // namespace haunch::test
