#include "sloping_wood.h"

#include <algorithm>
#include <cmath>
#include <random>

namespace haunch::test {
namespace {

double steps(Length length) {
  return static_cast<double>(length.steps());
}

/// A point of the assembly in a piece's own axes, and back.
Point own(const Piece& piece, const Point& point) {
  Point result{};
  for (std::size_t i = 0; i < 3; ++i) {
    const auto axis = static_cast<std::size_t>(piece.place.axes[i]);
    result[i] = point[axis] - steps(piece.place.origin[axis]);
  }
  return result;
}

Point in_assembly(const Piece& piece, const Point& point) {
  Point result{};
  for (std::size_t i = 0; i < 3; ++i) {
    const auto axis = static_cast<std::size_t>(piece.place.axes[i]);
    result[axis] = point[i] + steps(piece.place.origin[axis]);
  }
  return result;
}

bool inside(const Triple& low, const Triple& high, const Point& at) {
  for (std::size_t i = 0; i < 3; ++i)
    if (at[i] < steps(low[i]) || at[i] > steps(high[i])) return false;
  return true;
}

std::array<std::size_t, 2> drawn_on(const Prism& prism) {
  if (prism.along == 0) return {1, 2};
  if (prism.along == 1) return {0, 2};
  return {0, 1};
}

/// Counts the sides that a ray towards higher u meets.
bool inside(const Prism& prism, const Point& at) {
  if (at[prism.along] < steps(prism.from) || at[prism.along] > steps(prism.to)) return false;
  const auto [u, v] = drawn_on(prism);
  bool odd = false;
  for (std::size_t i = 0, last = prism.outline.size() - 1; i < prism.outline.size(); last = i++) {
    const double v1 = steps(prism.outline[last].v);
    const double v2 = steps(prism.outline[i].v);
    if ((v1 > at[v]) == (v2 > at[v])) continue;
    const double u1 = steps(prism.outline[last].u);
    const double u2 = steps(prism.outline[i].u);
    if (at[u] < u1 + (u2 - u1) * (at[v] - v1) / (v2 - v1)) odd = !odd;
  }
  return odd;
}

using Random = std::mt19937_64;

double between(Random& random, double low, double high) {
  return std::uniform_real_distribution<double>(low, high)(random);
}

/// Whether one of the points beside a piece's slopes is held by both.
bool share_beside_slopes(const Piece& piece, const Piece& other, Random& random) {
  constexpr double kBeside = 3200;  // 0.002 mm
  constexpr int kPoints = 20;       // for each side and way
  for (const Feature& feature : piece.features) {
    for (const Prism& prism : feature.prisms) {
      const auto [u, v] = drawn_on(prism);
      for (std::size_t i = 0; i < prism.outline.size(); ++i) {
        const Corner& a = prism.outline[i];
        const Corner& b = prism.outline[(i + 1) % prism.outline.size()];
        const double run = steps(b.u - a.u);
        const double rise = steps(b.v - a.v);
        const double length = std::hypot(run, rise);
        for (int point = 0; point < 2 * kPoints; ++point) {
          const double share = between(random, 0, 1);
          const double off = point % 2 == 0 ? kBeside : -kBeside;
          Point at{};
          at[prism.along] = between(random, steps(prism.from), steps(prism.to));
          at[u] = steps(a.u) + share * run + off * rise / length;
          at[v] = steps(a.v) + share * rise - off * run / length;
          const Point there = in_assembly(piece, at);
          if (holds(piece, there) && holds(other, there)) return true;
        }
      }
    }
  }
  return false;
}

}  // namespace

bool has_slopes(const Piece& piece) {
  return std::any_of(piece.features.begin(), piece.features.end(),
                     [](const Feature& it) { return !it.prisms.empty(); });
}

bool holds(const Piece& piece, const Point& point) {
  const Point at = own(piece, point);
  if (!inside(Triple{}, piece.blank, at)) return false;
  for (const Feature& feature : piece.features) {
    for (const Box& cut : feature.cuts)
      if (inside(cut.low, cut.high, at)) return false;
    for (const Prism& prism : feature.prisms)
      if (inside(prism, at)) return false;
  }
  return true;
}

bool share_at_points(const Piece& a, const Piece& b) {
  constexpr int kPoints = 500;
  Random random(1);
  const Box of_a = placed_blank(a);
  const Box of_b = placed_blank(b);
  for (int i = 0; i < kPoints; ++i) {
    Point at{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const double low = steps(std::max(of_a.low[axis], of_b.low[axis]));
      const double high = steps(std::min(of_a.high[axis], of_b.high[axis]));
      if (low >= high) return false;
      at[axis] = between(random, low, high);
    }
    if (holds(a, at) && holds(b, at)) return true;
  }
  return share_beside_slopes(a, b, random) || share_beside_slopes(b, a, random);
}

bool just_one_holds(const Piece& a, const Piece& b, const Box& where) {
  constexpr int kPoints = 200;
  Random random(2);
  for (int i = 0; i < kPoints; ++i) {
    Point at{};
    for (std::size_t axis = 0; axis < 3; ++axis)
      at[axis] = between(random, steps(where.low[axis]), steps(where.high[axis]));
    if (holds(a, at) == holds(b, at)) return false;
  }
  return true;
}

double counted_volume(const Piece& piece, int points) {
  const int side = static_cast<int>(std::ceil(std::cbrt(points)));
  long held = 0;
  for (int i = 0; i < side; ++i) {
    for (int j = 0; j < side; ++j) {
      for (int k = 0; k < side; ++k) {
        const Point at{(i + 0.5) / side * steps(piece.blank[0]),
                       (j + 0.5) / side * steps(piece.blank[1]),
                       (k + 0.5) / side * steps(piece.blank[2])};
        if (holds(piece, in_assembly(piece, at))) ++held;
      }
    }
  }
  double volume = static_cast<double>(held) / (static_cast<double>(side) * side * side);
  for (const Length length : piece.blank)
    volume *= steps(length) / static_cast<double>(Length::kStepsPerMm);
  return volume;
}

bool lies_within(const Prism& prism, const Piece& piece) {
  if (prism.along > 2 || prism.outline.size() < 3 || prism.from >= prism.to) return false;
  const auto [u, v] = drawn_on(prism);
  const auto fits = [&](Length place, std::size_t axis) {
    return place >= Length() && place <= piece.blank[axis];
  };
  return fits(prism.from, prism.along) && fits(prism.to, prism.along) &&
         std::all_of(
             prism.outline.begin(), prism.outline.end(),
             [&, u = u, v = v](const Corner& it) { return fits(it.u, u) && fits(it.v, v); });
}

}  // namespace haunch::test
